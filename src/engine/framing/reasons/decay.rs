//! Soft wood, insects and splits.

use super::cuts::beyond;
use super::notches::{notched_of_breadth, notches};
use super::reason;
use super::unknown::is_sawn;
use crate::engine::condition::Finding;
use crate::engine::framing::damage::{AWL_ERROR, BEYOND_SOFT};
use crate::engine::framing::joist::Joist;
use crate::engine::framing::member::Awl;
use crate::engine::framing::schedule::{Fate, NEW, NEW_ALONE, Reason};
use crate::engine::framing::since::Since;
use crate::engine::framing::spots::{Goes, NotchAt, Soft, SoftAt};
use crate::engine::sources::Source;
use crate::engine::take::Units;
use crate::engine::units::Length;

/// Rot that begins no farther from a bearing counts as rot in it: it runs on along the wood past
/// where an awl finds it (judgement).
pub const RUNS_ON: Length = Length::inches(6);

/// What was found on it, wherever along it.
pub(super) fn of_findings(joist: &Joist) -> Vec<Reason> {
    let found = joist.since.found;
    let mut reasons = Vec::new();
    if joist.has(Finding::Insects) {
        let words = "insects: have them named, and probe the galleries";
        reasons.push(reason(Fate::Open, Source::InsectsNamed, found, words).ended_by(&NEW_ALONE));
    }
    if joist.has(Finding::Strands) {
        let words = "strands or fans of a fungus that carries its own water: have it named, and cut out what it has";
        reasons.push(reason(Fate::Engineer, Source::DecayFans, found, words));
    }
    if joist.has(Finding::Cracked) {
        reasons.push(reason(Fate::Engineer, Source::EngineerLooks, found, "found split or broken"));
    }
    reasons
}

/// Its soft spots.
pub(super) fn reasons(joist: &Joist, units: Units) -> Vec<Reason> {
    let mut reasons: Vec<_> = joist.spots.soft.iter().filter_map(|soft| one_spot(joist, soft, units)).collect();
    let bad = joist.spots.soft.iter().filter(|soft| soft.goes != Goes::Nowhere);
    reasons.extend(bad.filter_map(|soft| {
        let beyond = beyond("soft", &soft.stretch, joist, units)?;
        Some(Reason { since: beyond.since.and(soft.since), ..beyond })
    }));
    reasons
}

fn one_spot(joist: &Joist, soft: &Soft, units: Units) -> Option<Reason> {
    let open = |words: String| Some(reason(Fate::Open, Source::SoftCountsNothing, soft.since, words).ended_by(&NEW));
    let place = place(joist, soft, units);
    match soft.goes {
        Goes::Nowhere => None,
        Goes::CannotReach => open(format!(
            "soft{place}{}, where an awl can't reach: look again once the floor is open, and log there how deep the awl \
             goes in, 0 where it stops{}",
            at_face(soft),
            take_back(soft)
        ))
        .map(|reason| reason.ended_by(&NEW_ALONE)),
        Goes::NotSaid if was_probed_hard(joist, soft) => {
            open(format!("found soft{place}, yet the awl stops there: log how deep it goes in, or take back which is wrong"))
        }
        Goes::NotSaid => {
            open(format!("found soft{place}: log that spot, from where to where, how deep, on which side"))
        }
        Goes::Rotten if !is_sawn(joist) => Some(damaged(joist, soft.since)),
        Goes::Rotten => Some(rotten(joist, soft, &place)),
        Goes::In(_) if joist.member.is_some() && !is_sawn(joist) => Some(damaged(joist, soft.since)),
        Goes::In(depth) => Some(soft_wood(joist, soft, depth, units)),
    }
}

/// A spot that nobody placed may be anywhere: no later one stands for it.
fn take_back(soft: &Soft) -> &'static str {
    let is_placed = soft.stretch.from.or(soft.stretch.to).is_some();
    match (is_placed, soft.at) {
        (true, Some(_)) => "",
        (false, _) => "; then take this one back, of which nobody said where it is",
        (true, None) => "; then take this one back, of which nobody said on which side it is",
    }
}

/// At which side of it an awl has to be pushed in: ", lower edge".
fn at_face(soft: &Soft) -> String {
    soft.at.map_or_else(String::new, |at| format!(", {}", at.label()))
}

/// Which finding it is: " at 4' 0\"", " at its end".
fn place(joist: &Joist, soft: &Soft, units: Units) -> String {
    match soft.stretch.from {
        _ if is_at_bearing(joist, soft) => " at its end".to_owned(),
        Some(along) => format!(" at {}", units.length(along)),
        None => ", nobody said where along it".to_owned(),
    }
}

/// Is it where the joist bears, or may it be: at an end by its face, or by how far along it is?
fn is_at_bearing(joist: &Joist, soft: &Soft) -> bool {
    let reaches = |(from, to): (Length, Length)| {
        from <= RUNS_ON || joist.clear.is_some_and(|clear| from <= clear + RUNS_ON && to >= clear - RUNS_ON)
    };
    soft.at == Some(SoftAt::End) || soft.stretch.ends().is_some_and(reaches)
}

/// Nobody said how deep it goes or how far: it may leave nothing for a sister to lie on, so
/// that no sister ends it.
fn rotten(joist: &Joist, soft: &Soft, place: &str) -> Reason {
    const SAY: &str = "Say from where to where, how deep and on which side";
    let judged =
        |fate, words: String| reason(fate, Source::JoistRepair, soft.since.and(joist.since.span), words).ended_by(&NEW);
    match soft.stretch.from {
        _ if is_at_bearing(joist, soft) => judged(Fate::Replace, format!("found rotten{place}, where it bears. {SAY}")),
        None => judged(Fate::Replace, format!("found rotten{place}: it may be where it bears. {SAY}")),
        Some(_) => judged(Fate::Sister, format!("found rotten{place}: a sister at least. {SAY}")),
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
fn damaged(joist: &Joist, since: Since) -> Reason {
    let what = joist.member.map_or("it", |member| member.label());
    let words = format!("{what} that is soft: its maker or an engineer decides");
    reason(Fate::Engineer, Source::EngineerLooks, since.and(joist.since.member), words)
}

/// What so much soft wood comes to. Where a measurement is missing that could make it
/// worse, that is asked for, and nothing milder is said or ends it.
fn soft_wood(joist: &Joist, soft: &Soft, depth: Length, units: Units) -> Reason {
    let words =
        format!("soft {} deep: {} of it counts as nothing", units.length(depth), units.length(depth + BEYOND_SOFT));
    // A notch that changes nothing of it brings no decay back that was seen to.
    let since = Since::all([joist.spots.soft_since(), joist.since.section, joist.since.span]);
    let judged = |fate, source, words| reason(fate, source, since, words);
    let open = |what: &str| judged(Fate::Open, Source::EngineerLooks, format!("{words}; {what}")).ended_by(&NEW);
    let bears = || judged(Fate::Replace, Source::JoistRepair, format!("{words}, at its end, where it bears"));
    let is_at_bearing = is_at_bearing(joist, soft);
    let (lost, notched, of) = match soft.at {
        Some(SoftAt::End) => return bears(),
        None if is_at_bearing => return bears(),
        None if soft.stretch.from.is_some() => return open("log it again there, at an edge, a side or an end"),
        None => {
            return open("log it again, at an edge, a side or an end and from where to where, and take this one back");
        }
        Some(SoftAt::NearSide | SoftAt::FarSide) => (lost_of_breadth(joist), notched_of_breadth(joist), joist.breadth),
        Some(SoftAt::UpperEdge | SoftAt::LowerEdge) => (lost_of_depth(joist), deepest_notch(joist), joist.depth),
    };
    let Some(of) = of else {
        return if is_at_bearing { bears() } else { open("measure its breadth and depth, to tell what part that is") };
    };
    let is_a_third = |lost: Length| (lost + AWL_ERROR) * 3 > of;
    if is_a_third(lost + notched) {
        let words = format!("{words}: with all that it lost there, a third or more");
        let judged = judged(Fate::Engineer, Source::EngineerLooks, words);
        let cuts = if is_a_third(lost) { Since::ALWAYS } else { joist.spots.cuts_since() };
        return Reason { since: judged.since.and(cuts), ..judged };
    }
    if is_at_bearing {
        return bears();
    }
    let is_most = joist.clear.map(|clear| soft_along(joist) * 2 >= clear);
    match is_most.filter(|is_most| *is_most || soft.stretch.long().is_some()) {
        Some(true) => judged(Fate::Replace, Source::JoistRepair, format!("{words}, along half its span or more")),
        Some(false) => judged(
            Fate::Sister,
            Source::JoistRepair,
            format!("{words}; dry it and cut the rot out before it is sistered"),
        ),
        None => judged(
            Fate::Sister,
            Source::JoistRepair,
            format!("{words}; a sister at least: log it again from where to where it is soft, and take this one back"),
        )
        .ended_by(&NEW),
    }
}

/// How much of its length is soft, all spots together: those that overlap count once, and one
/// that nobody placed as if it overlapped none.
fn soft_along(joist: &Joist) -> Length {
    let bad = || joist.spots.soft.iter().filter(|soft| soft.goes != Goes::Nowhere).map(|soft| soft.stretch);
    let mut placed: Vec<_> = bad().filter_map(|stretch| stretch.ends()).collect();
    placed.sort_unstable();
    let unplaced = bad().filter(|stretch| stretch.ends().is_none()).filter_map(|stretch| stretch.long());
    let mut all = unplaced.fold(Length::ZERO, |all, long| all + long);
    let mut end = None;
    for (from, to) in placed {
        let from = end.map_or(from, |end| from.max(end));
        all = all + (to - from).max(Length::ZERO);
        end = end.max(Some(to));
    }
    all
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
    let notches = notches(joist);
    let inside = notches.iter().filter(|notch| !notch.is_in_side() && notch.part(joist) != Some(NotchAt::End));
    inside.filter_map(|notch| notch.depth).max().unwrap_or(Length::ZERO)
}

/// The deepest soft spot of which nobody said at which side it is.
pub(super) fn lost_somewhere(joist: &Joist) -> Length {
    let unplaced = joist.spots.soft.iter().filter(|soft| soft.at.is_none());
    let depths =
        unplaced.filter_map(|soft| if let Goes::In(depth) = soft.goes { Some(depth + BEYOND_SOFT) } else { None });
    depths.max().unwrap_or(Length::ZERO)
}
