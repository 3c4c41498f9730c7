//! Soft wood, insects and splits.

use super::reason;
use super::unknown::is_sawn;
use crate::engine::condition::Finding;
use crate::engine::framing::joist::Joist;
use crate::engine::framing::member::Awl;
use crate::engine::framing::schedule::{Fate, Reason};
use crate::engine::framing::spots::{Goes, NotchAt, Soft, SoftAt};
use crate::engine::sources::Source;
use crate::engine::take::Units;
use crate::engine::units::Length;

/// What counts as lost beyond what an awl finds soft ([`Source::SoftCountsNothing`]).
pub const BEYOND_SOFT: Length = Length::sixty_fourths(16);
/// How far an awl's depth can be off: as good as a third is a third (judgement).
pub const AWL_ERROR: Length = Length::sixty_fourths(4);

pub(super) fn reasons(joist: &Joist, units: Units) -> Vec<Reason> {
    let mut reasons = Vec::new();
    if joist.has(Finding::Insects) {
        reasons.push(reason(Fate::Open, Source::InsectsNamed, "insects: have them named, and probe the galleries"));
    }
    if joist.has(Finding::Strands) {
        let words = "strands or fans of a fungus that carries its own water: have it named, and cut out what it has";
        reasons.push(reason(Fate::Engineer, Source::DecayFans, words));
    }
    if joist.has(Finding::Cracked) {
        reasons.push(reason(Fate::Engineer, Source::EngineerLooks, "found split or broken"));
    }
    reasons.extend(joist.spots.soft.iter().filter_map(|soft| one_spot(joist, soft, units)));
    reasons
}

fn one_spot(joist: &Joist, soft: &Soft, units: Units) -> Option<Reason> {
    let open = |words: &str| Some(reason(Fate::Open, Source::SoftCountsNothing, words));
    match soft.goes {
        Goes::Nowhere => None,
        Goes::CannotReach => open("soft where an awl can't reach: look again once the floor is open"),
        Goes::NotSaid if was_probed_hard(joist, soft) => open("found soft, yet the awl stops there: probe it again"),
        Goes::NotSaid => open("found soft: say from where to where, how deep and on which side"),
        Goes::Rotten if !is_sawn(joist) => Some(damaged(joist)),
        Goes::Rotten => Some(reason(
            Fate::Sister,
            Source::JoistRepair,
            "found rotten: a sister at least. Say from where to where, how deep and on which side",
        )),
        Goes::In(_) if joist.member.is_some() && !is_sawn(joist) => Some(damaged(joist)),
        Goes::In(depth) => Some(soft_wood(joist, soft, depth, units)),
    }
}

fn was_probed_hard(joist: &Joist, found: &Soft) -> bool {
    if joist.spots.awl == Some(Awl::Stops) {
        return true;
    }
    let mut hard = joist.spots.soft.iter().filter(|soft| soft.goes == Goes::Nowhere);
    hard.any(|soft| soft.stretch.meets(&found.stretch))
}

/// Engineered wood that is damaged at all.
fn damaged(joist: &Joist) -> Reason {
    let what = joist.member.map_or("it", |member| member.label());
    reason(Fate::Engineer, Source::EngineerLooks, format!("{what} that is soft: its maker or an engineer decides"))
}

/// What so much soft wood comes to. Where a measurement is missing that could make it
/// worse, that is asked for, and nothing milder is said.
fn soft_wood(joist: &Joist, soft: &Soft, depth: Length, units: Units) -> Reason {
    let words =
        format!("soft {} deep: {} of it counts as nothing", units.length(depth), units.length(depth + BEYOND_SOFT));
    let open = |what: &str| reason(Fate::Open, Source::EngineerLooks, format!("{words}; {what}"));
    let (lost, of) = match soft.at {
        None => return open("say where: an edge, a side or an end"),
        Some(SoftAt::End) => {
            return reason(Fate::Replace, Source::JoistRepair, format!("{words}, at its end, where it bears"));
        }
        Some(SoftAt::NearSide | SoftAt::FarSide) => (lost_of_breadth(joist), joist.breadth),
        Some(SoftAt::UpperEdge | SoftAt::LowerEdge) => (lost_of_depth(joist) + deepest_notch(joist), joist.depth),
    };
    let Some(of) = of else { return open("measure its breadth and depth, to tell what part that is") };
    if (lost + AWL_ERROR) * 3 > of {
        return reason(
            Fate::Engineer,
            Source::EngineerLooks,
            format!("{words}: with all that it lost there, a third or more"),
        );
    }
    let is_most = soft.stretch.long().zip(joist.clear).map(|(long, clear)| long * 2 >= clear);
    match is_most {
        Some(true) => reason(Fate::Replace, Source::JoistRepair, format!("{words}, along half its span or more")),
        Some(false) => reason(
            Fate::Sister,
            Source::JoistRepair,
            format!("{words}; dry it and cut the rot out before it is sistered"),
        ),
        None => reason(
            Fate::Sister,
            Source::JoistRepair,
            format!("{words}; a sister at least: say from where to where it is soft"),
        ),
    }
}

/// What the soft spots at some sides take together: the worst of each side, as if they lay
/// across from each other.
fn lost(joist: &Joist, sides: [SoftAt; 2]) -> Length {
    let worst = |side: SoftAt| {
        let at_side = joist.spots.soft.iter().filter(|soft| soft.at == Some(side));
        let depths = at_side.filter_map(|soft| match soft.goes {
            Goes::In(depth) => Some(depth + BEYOND_SOFT),
            Goes::Nowhere | Goes::NotSaid | Goes::Rotten | Goes::CannotReach => None,
        });
        depths.max().unwrap_or(Length::ZERO)
    };
    sides.into_iter().map(worst).fold(Length::ZERO, |all, one| all + one)
}

/// What soft spots take of the depth.
pub(super) fn lost_of_depth(joist: &Joist) -> Length {
    lost(joist, [SoftAt::UpperEdge, SoftAt::LowerEdge])
}

/// What soft spots take of the breadth.
pub(super) fn lost_of_breadth(joist: &Joist) -> Length {
    lost(joist, [SoftAt::NearSide, SoftAt::FarSide])
}

/// A notch takes of the same depth as decay at an edge, wherever it is but at an end.
fn deepest_notch(joist: &Joist) -> Length {
    let inside = joist.spots.notches.iter().filter(|notch| notch.part(joist.clear) != Some(NotchAt::End));
    inside.filter_map(|notch| notch.depth).max().unwrap_or(Length::ZERO)
}

/// The deepest soft spot of which nobody said at which side it is.
pub(super) fn lost_somewhere(joist: &Joist) -> Length {
    let unplaced = joist.spots.soft.iter().filter(|soft| soft.at.is_none());
    let depths =
        unplaced.filter_map(|soft| if let Goes::In(depth) = soft.goes { Some(depth + BEYOND_SOFT) } else { None });
    depths.max().unwrap_or(Length::ZERO)
}
