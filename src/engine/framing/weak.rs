//! Joists that lost more than a third of their depth or breadth, by what was logged alone: for
//! cautions, which know no schedule.

use super::damage::{AWL_ERROR, BEYOND_SOFT, Damage, DamageKind};
use super::spots::SoftAt;
use crate::engine::job::Job;
use crate::engine::particular::{Part, Particulars, list};
use crate::engine::units::Length;
use crate::order;

/// How deep and broad a joist is taken to be that nobody measured: of what is found under
/// floors the smallest that is common (judgement).
const NOT_MEASURED: [Length; 2] = [Length::sixty_fourths(352), Length::sixty_fourths(96)];

/// Joists, or all of them, whose soft spots and cuts take more than a third of the depth or the
/// breadth, as if they lay across from each other. Source:
/// [`Source::EngineerLooks`](crate::engine::sources::Source::EngineerLooks).
pub fn lost_a_third(job: &Job) -> Vec<&Part> {
    let damaged = job.now.damages().values().map(|spot| &spot.value.of);
    let mut joists: Vec<_> = damaged.filter(|part| matches!(part, Part::Joist(_) | Part::Joists)).collect();
    order::sort(&mut joists);
    joists.dedup();
    joists.retain(|part| is_weak(job, part));
    joists
}

fn is_weak(job: &Job, part: &Part) -> bool {
    let said = Particulars::of(job);
    let [depth, breadth] = [(&list::DEPTH, NOT_MEASURED[0]), (&list::BREADTH, NOT_MEASURED[1])]
        .map(|(item, usual)| said.length_of_joist(part, item).unwrap_or(usual));
    let spots = || job.now.damages().values().map(|spot| spot.value).filter(|spot| spot.of == *part);
    let worst = |takes: &dyn Fn(&Damage) -> bool| {
        let depths = spots().filter(|spot| takes(spot)).filter_map(Damage::depth);
        depths.max().filter(|depth| depth.is_positive())
    };
    let soft = |at: SoftAt| {
        let takes = |spot: &Damage| spot.kind == DamageKind::Soft && spot.face.map(SoftAt::from) == Some(at);
        worst(&takes).map_or(Length::ZERO, |depth| depth + BEYOND_SOFT)
    };
    // At an end, or nobody said where: as if at an edge.
    let unplaced = |spot: &Damage| {
        let at = spot.face.map(SoftAt::from);
        spot.kind == DamageKind::Soft && !at.is_some_and(|at| at.is_edge() || at.is_side())
    };
    let unplaced = worst(&unplaced).map_or(Length::ZERO, |depth| depth + BEYOND_SOFT);
    let of_kind = |kind: DamageKind| worst(&|spot| spot.kind == kind).unwrap_or(Length::ZERO);
    let edges = (soft(SoftAt::UpperEdge) + soft(SoftAt::LowerEdge)).max(unplaced) + of_kind(DamageKind::Notch);
    let sides = soft(SoftAt::NearSide) + soft(SoftAt::FarSide);
    let is_more = |lost: Length, of: Length| lost.is_positive() && (lost + AWL_ERROR) * 3 > of;
    is_more(edges, depth) || is_more(sides, breadth) || of_kind(DamageKind::Hole) * 3 > depth
}
