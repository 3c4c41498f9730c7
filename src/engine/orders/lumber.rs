//! Blocks, sisters and new joists, cut from lumber as it is sold, and what holds them.

use super::needs::{A_TENTH, Laid, Needed, Section};
use super::treated;
use crate::engine::describe::{capital, counted};
use crate::engine::framing::joist::Along;
use crate::engine::framing::schedule::named;
use crate::engine::framing::{Fate, Judged, Reason, schedule};
use crate::engine::job::Job;
use crate::engine::particular::{Part, Particulars, list};
use crate::engine::sheets::stock;
use crate::engine::sheets::take_off::{LONGEST_SOLD, Stick, cut_from_sticks};
use crate::engine::sources::Source;
use crate::engine::take::Units;
use crate::engine::units::Length;
use crate::engine::units::tape::{LengthStyle, ShownUnit, format};
use std::collections::BTreeMap;

/// From one pair of screws to the next along a sister ([`Source::SisterScrews`]).
const SCREWS_APART: Length = Length::FOOT;

/// What is cut of one kind of lumber, and for what.
#[derive(Default)]
struct Cuts {
    lengths: Vec<Length>,
    from: Vec<String>,
    sources: Vec<Source>,
}

/// Lumber by what it is: section, grade and treatment; everything that is cut of the same is
/// cut together.
pub(super) fn lumber(job: &Job, laid: &[Laid<'_>], units: Units, open: &mut Vec<String>) -> Vec<Needed> {
    let mut by_kind: BTreeMap<String, Cuts> = BTreeMap::new();
    for laid in laid {
        let blocks = &laid.takes.blocking.blocks;
        if !blocks.is_empty() {
            let cuts = by_kind.entry(laid.takes.block_lumber.clone()).or_default();
            cuts.lengths.extend(blocks.iter().map(|block| block.length));
            cuts.from.push(format!("{}: {}", laid.floor.name, counted(blocks.len(), "block")));
            cuts.sources.push(Source::Blocks);
        }
    }
    let judged = schedule(job, units).value().cloned().unwrap_or_default();
    sisters(job, &judged, units, &mut by_kind, open);
    let kerf = job.kerf().map_or(stock::KERF, |kerf| kerf.value);
    let mut needed: Vec<_> =
        by_kind.into_iter().flat_map(|(kind, cuts)| sticks(&kind, &cuts, kerf, units, open)).collect();
    open.extend(judged.iter().flat_map(ends_not_counted));
    needed.extend(hangers(&judged));
    needed.extend(screws(&judged));
    needed
}

/// Joists still to be sistered or replaced, each from bearing to bearing.
fn sisters(job: &Job, judged: &[Judged], units: Units, by_kind: &mut BTreeMap<String, Cuts>, open: &mut Vec<String>) {
    let of = |fate: Fate| judged.iter().filter(|it| it.asks_for() == fate).map(number).collect::<Vec<_>>();
    let (waiting, unknown) = (of(Fate::Engineer), of(Fate::Open));
    if !waiting.is_empty() {
        open.push(format!("Lumber of {}: it waits for an engineer.", named(&waiting)));
    }
    if !unknown.is_empty() {
        open.push(format!("Lumber of {}: not enough to say whether any is needed.", named(&unknown)));
    }
    // Joists of which the same is to be said stand in one line.
    let mut to_settle: BTreeMap<String, Vec<String>> = BTreeMap::new();
    for it in judged.iter().filter(|it| matches!(it.asks_for(), Fate::Sister | Fate::Replace)) {
        if let Some(first) = said_first(it) {
            open.push(format!("Joist {}: {}. No sister is ordered before that.", number(it), first.words));
            continue;
        }
        let (Some(clear), Some(depth)) = (it.joist.clear, it.joist.depth) else {
            open.push(format!("Joist {}: measure its depth and clear span, for its lumber.", number(it)));
            continue;
        };
        let (kind, beside) = sister_lumber(job, depth);
        if let Some(words) = beside {
            to_settle.entry(words).or_default().push(number(it));
        }
        let cuts = by_kind.entry(kind).or_default();
        cuts.from.extend(stamped(job).filter(|stamped| !cuts.from.contains(stamped)));
        let what = if it.asks_for() == Fate::Replace { "new" } else { "sister" };
        for (along, length) in lengths(clear, it) {
            let past = if along == Along::Next { ", past the girder" } else { "" };
            cuts.lengths.push(length);
            cuts.from.push(format!(
                "joist {}: {what}, {}, from bearing to bearing{past}",
                number(it),
                units.length(length)
            ));
            cuts.sources.push(Source::JoistRepair);
        }
        if it.joist.goes_through() {
            open.push(goes_through(it));
        }
    }
    open.extend(to_settle.iter().map(|(words, numbers)| format!("{}: {words}.", capital(&named(numbers)))));
}

/// The stamp that sisters and new joists were counted with.
fn stamped(job: &Job) -> Option<String> {
    let said = |item| Particulars::of(job).words(&Part::House, item).filter(|words| *words != "unknown");
    let stamp: Vec<_> = [&list::SISTER_SPECIES, &list::SISTER_GRADE].into_iter().filter_map(said).collect();
    (!stamp.is_empty()).then(|| format!("stamped {}", stamp.join(" ")))
}

/// What has to be said or chosen before a sister ends anything of this joist.
fn said_first(judged: &Judged) -> Option<&Reason> {
    judged.unsettled().find(|reason| reason.wants_a_sister_yet()).filter(|_| judged.asks_for() == Fate::Sister)
}

/// A sister lies along the span that asks for one. What a new joist takes the place of may have gone
/// through over the girder: then one is bought for each span, to lap or be tied there.
fn lengths(clear: Length, judged: &Judged) -> Vec<(Along, Length)> {
    let both = [Along::First, Along::Next];
    let asked = if judged.asks_for() == Fate::Replace { both.to_vec() } else { judged.wants_sisters_along() };
    let length = |along| match along {
        Along::First => Some(clear),
        Along::Next => judged.joist.clear_along(along),
    };
    asked.into_iter().filter_map(|along| Some((along, from_bearing_to_bearing(length(along)?, judged)))).collect()
}

fn goes_through(judged: &Judged) -> String {
    let number = number(judged);
    let counted = match (judged.asks_for(), judged.wants_sisters_along().as_slice()) {
        (Fate::Replace, _) => "a new one is counted for each span, with nothing for a lap there",
        (_, [Along::Next]) => "its sister is counted along its span past the girder alone",
        (_, [_, _]) => "a sister is counted along each span",
        _ => "its sister is counted along the first span alone",
    };
    format!("Joist {number} goes through over the girder: {counted}.")
}

/// What a sister or a new joist of that depth is cut of, and what has to be settled before
/// that is ordered: one is as deep as the joist that it stands beside or in place of.
fn sister_lumber(job: &Job, depth: Length) -> (String, Option<String>) {
    // In inches, whatever the phone shows: prices and stock know a line by its name.
    let inches = |length| format(length, LengthStyle { unit: ShownUnit::Inches, ..LengthStyle::default() }).text;
    let as_deep = || format!("2 in lumber {} deep", inches(depth));
    let said = Particulars::of(job);
    let stated = said.words(&Part::House, &list::SISTER_LUMBER);
    match (stated, said.length(&Part::House, &list::SISTER_DEPTH)) {
        (None, _) => (as_deep(), None),
        (Some(stated), None) => {
            (stated.to_owned(), Some(format!("measure how deep \"{stated}\" is: it has to be {}", inches(depth))))
        }
        (Some(stated), Some(sold)) if sold < depth => {
            let words = format!(
                "\"{stated}\" is {} deep, and {} is asked for: none is ordered of it",
                inches(sold),
                inches(depth)
            );
            (as_deep(), Some(words))
        }
        (Some(stated), Some(sold)) if sold > depth => {
            let ripped = format!("{stated}, ripped to {}", inches(depth));
            let words = Source::RippedLumber.noted(&format!("have {ripped} graded anew"));
            (ripped, Some(words))
        }
        (Some(stated), Some(_)) => (stated.to_owned(), None),
    }
}

fn from_bearing_to_bearing(clear: Length, judged: &Judged) -> Length {
    clear + judged.joist.bearing_asked().unwrap_or(Length::ZERO) * 2
}

fn number(judged: &Judged) -> String {
    judged.joist.number.get().to_string()
}

/// What is bought of one kind: a line for each length.
fn sticks(kind: &str, cuts: &Cuts, kerf: Length, units: Units, open: &mut Vec<String>) -> Vec<Needed> {
    let (sold, long): (Vec<_>, Vec<_>) = cuts.lengths.iter().copied().partition(|length| *length <= LONGEST_SOLD);
    open.extend(long.into_iter().map(|length| {
        format!("{kind}: {} is longer than {:.0} ft. Order it to length.", units.length(length), LONGEST_SOLD.to_feet())
    }));
    let Some(bought) = cut_from_sticks(&sold, kerf) else { return Vec::new() };
    let mut by_length: BTreeMap<i32, Vec<&Stick>> = BTreeMap::new();
    for stick in &bought.sticks {
        by_length.entry(stick.feet).or_default().push(stick);
    }
    let proof = if bought.is_least { "fewer feet do not do" } else { "fewer feet may do" };
    let line = |(feet, sticks): (i32, Vec<&Stick>)| {
        let count = sticks.iter().map(|stick| stick.count).sum();
        let needed = Needed::counted(Section::Framing, format!("{}, {feet} ft", short(kind)), count, "stick");
        let needed = cuts.from.iter().fold(needed, |needed, from| needed.because(from.clone(), &cuts.sources));
        let cut = sticks.iter().map(|stick| cut_from(stick, units));
        let needed = cut.fold(needed, |needed, cut| needed.because(cut, &[Source::LumberLengths]));
        let needed = needed.because(format!("{} ft in all: {proof}", bought.feet()), &[]);
        if treated::is_treated(kind) { needed.because(treated::CUTS, &treated::SOURCES) } else { needed }
    };
    by_length.into_iter().map(line).collect()
}

/// A kind of lumber in a line's name. Names are held to 80 characters: the length is never
/// what is cut off.
fn short(kind: &str) -> String {
    kind.chars().take(72).collect()
}

/// Is it a line of sticks of this kind of lumber?
pub fn is_of(needed: &Needed, kind: &str) -> bool {
    let feet = needed.name.strip_prefix(&short(kind)).and_then(|rest| rest.strip_prefix(", "));
    let feet = feet.and_then(|rest| rest.strip_suffix(" ft"));
    needed.section == Section::Framing && feet.is_some_and(|feet| feet.chars().all(|digit| digit.is_ascii_digit()))
}

fn cut_from(stick: &Stick, units: Units) -> String {
    let each = if stick.count > 1 { "each of " } else { "" };
    format!("from {each}{}: {}", stick.count, stick.cuts_in_words(units))
}

/// What else its ends ask for: no rule here says how many blocks or ties that takes.
fn ends_not_counted(judged: &Judged) -> impl Iterator<Item = String> {
    // Nobody knows what an engineer has done with its ends.
    let waits = judged.asks_for() == Fate::Engineer;
    let is_counted = move |reason: &Reason| !waits && matches!(reason.source, Source::Bearing | Source::SillBearing);
    let ends = judged.unsettled().filter(move |reason| reason.fate == Fate::Mend && !is_counted(reason));
    ends.map(|reason| format!("Joist {}: {}. What that takes is not counted here.", number(judged), reason.words))
}

/// Two for a joist that is replaced, one for an end that bears on too little.
fn hangers(judged: &[Judged]) -> Option<Needed> {
    let replaced = judged.iter().filter(|it| it.asks_for() == Fate::Replace).count();
    let wants_its_ends = |it: &&Judged| {
        matches!(it.asks_for(), Fate::Mend | Fate::Sister) && it.unsettled().any(|reason| reason.fate == Fate::Mend)
    };
    let short = judged.iter().filter(wants_its_ends).filter(|it| it.joist.is_short_of_bearing()).count();
    let count = 2 * replaced + short;
    let from = format!("{} replaced, {} on too little", counted(replaced, "joist"), counted(short, "end"));
    (count > 0).then(|| {
        Needed::counted(Section::Framing, "Joist hangers", count, "hanger")
            .because(from, &[Source::Hangers])
            .because(treated::METAL, &treated::SOURCES)
    })
}

fn screws(judged: &[Judged]) -> Option<Needed> {
    let sisters = judged.iter().filter(|it| it.asks_for() == Fate::Sister && said_first(it).is_none());
    let of = |it: &Judged| it.joist.clear.map(|clear| lengths(clear, it)).unwrap_or_default();
    let lengths: Vec<_> = sisters.flat_map(of).map(|(_, length)| length).collect();
    let pairs = |length: &Length| length.up_to(SCREWS_APART).to_nm() / SCREWS_APART.to_nm() + 1;
    let count: i64 = lengths.iter().map(|length| 2 * pairs(length)).sum();
    let from = format!("{}, a pair every 12 in", counted(lengths.len(), "sister"));
    (count > 0).then(|| {
        Needed::counted(Section::Framing, "Structural screws", usize::try_from(count).unwrap_or(0), "screw")
            .because(from, &[Source::SisterScrews])
            .because(treated::METAL, &treated::SOURCES)
            .with_waste(A_TENTH)
    })
}
