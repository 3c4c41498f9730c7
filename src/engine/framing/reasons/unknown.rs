//! What nobody said of a joist, and what its readings leave open.

use super::{reason, said_apart};
use crate::engine::framing::joist::{Joist, Reads};
use crate::engine::framing::member::{Awl, CutsSaid, MemberType};
use crate::engine::framing::schedule::{ENGINEER, Fate, NEW, NEW_ALONE, Reason};
use crate::engine::framing::since::Since;
use crate::engine::framing::spots::Goes;
use crate::engine::sources::Source;
use crate::engine::take::Units;
use crate::engine::units::Length;

/// Probed so close to a bearing, a joist was probed at that end (judgement).
pub const AT_AN_END: Length = Length::FOOT;

pub(super) fn reasons(joist: &Joist, units: Units) -> Vec<Reason> {
    let since = joist.since;
    let open = |source, since, words: String| reason(Fate::Open, source, since, words).ended_by(&NEW);
    let mut reasons = Vec::new();
    // Of a joist of which that is not known, nobody knows that a new one of its kind and size
    // spans, bears and holds its cuts as is asked.
    if joist.member.is_none() {
        let words = "say what it is: sawn lumber, I-joist, LVL or other engineered wood, glulam or truss";
        reasons.push(open(Source::SpanMethod, since.member, words.to_owned()).ended_by(&ENGINEER));
    }
    let missing = unmeasured(joist);
    if !missing.is_empty() {
        let words = format!("measure {}", missing.join(", "));
        let since = since.section.and(joist.laid_since());
        reasons.push(open(Source::SpanMethod, since, words).ended_by(&ENGINEER));
    }
    let probed = unprobed(joist).map(|words| open(Source::SoftCountsNothing, joist.spots.awl_since, words));
    // That nobody said where it is soft an engineer sees; where nobody probed is as if nobody could.
    let went_in = joist.spots.awl == Some(Awl::GoesIn);
    reasons.extend(probed.map(|it| if went_in { it } else { it.ended_by(&NEW_ALONE) }));
    let cuts = unseen_cuts(joist).map(|words| open(Source::JoistCuts, since.cuts, words));
    reasons.extend(cuts.map(|it| it.ended_by(&NEW_ALONE)));
    if joist.spots.is_unplaced {
        let words = "distances along it are from the first corner, and nobody can tell where it begins: close the room";
        reasons.push(open(Source::JoistCuts, joist.spots.since(), words.to_owned()));
    }
    reasons.extend(said_apart(&joist.said_apart, ("it", "its ")));
    reasons.extend(past_its_span(joist, units));
    reasons.extend(unread(joist));
    reasons
}

/// What carries the floor past the span that was measured, where that ends before the floor does.
fn past_its_span(joist: &Joist, units: Units) -> Option<Reason> {
    let open = |since, words: String| Some(reason(Fate::Open, Source::SpanMethod, since, words).ended_by(&ENGINEER));
    if joist.hangs_in_the_air() {
        let since = Since::all([joist.since.span, joist.since.over_girder, joist.since.walls]);
        let words = "its clear span is far shorter than the room along it, and it is said to reach no girder: measure \
                     its span again, or say how it goes on over the girder";
        return open(since, words.to_owned());
    }
    let past = joist.past.filter(|past| !past.is_seen_to)?;
    let words = format!(
        "what comes out reaches past its measured span of {}, and what carries the floor there is not known here: have \
         that measured, probed and read in a job of its own, or looked at by an engineer, and answer the check",
        units.length(past.ends_at)
    );
    open(past.since, words)
}

fn unmeasured(joist: &Joist) -> Vec<&'static str> {
    let bears_by_length = joist.bearing_asked().is_some();
    let needs = [
        (joist.breadth.is_none(), "its breadth"),
        (joist.depth.is_none(), "its depth"),
        (joist.clear.is_none(), "its clear span"),
        (lacks_its_next_span(joist), "its next clear span, past the girder that it goes through over"),
        (joist.bearing.is_none() && bears_by_length, "what it bears on at its shorter end"),
    ];
    needs.into_iter().filter(|(is_missing, _)| *is_missing).map(|(_, what)| what).collect()
}

/// Does it go on over another span, and nobody measured that?
fn lacks_its_next_span(joist: &Joist) -> bool {
    joist.goes_through() && joist.next_clear.is_none()
}

/// Both ends and the middle, by one word or by spots that lie there.
fn unprobed(joist: &Joist) -> Option<String> {
    match joist.spots.awl {
        Some(Awl::Stops) => return None,
        Some(Awl::GoesIn) if !joist.spots.awl_asks_where => return None,
        Some(Awl::GoesIn) => return Some("the awl goes in: log where and how deep".to_owned()),
        Some(Awl::CannotReach) => {
            return Some("an awl can't reach it: probe it once the floor is open".to_owned());
        }
        None => {}
    }
    let unprobed: Vec<_> = joist.clear.map(|clear| left_out(joist, clear)).unwrap_or_default();
    match unprobed.as_slice() {
        [] if joist.clear.is_some() => None,
        some if some.len() == PARTS.len() || joist.clear.is_none() => {
            Some("probe both ends and the middle, and say how deep the awl goes in, 0 if it stops".to_owned())
        }
        some => Some(format!("probe {} too", some.join(" and "))),
    }
}

const PARTS: [&str; 3] = ["the end at the wall that distances are from", "the middle", "the other end"];

/// The parts of a joist that no awl was pushed into.
fn left_out(joist: &Joist, clear: Length) -> Vec<&'static str> {
    // One stretch that runs past the span says that its other end is elsewhere.
    let is_there = |from: Length, to: Length, (begins, ends): (Length, Length)| {
        begins <= to && ends >= from && (to < clear || ends <= clear)
    };
    let probed = |from: Length, to: Length| {
        let mut spots = joist.spots.soft.iter().filter(|soft| matches!(soft.goes, Goes::Nowhere | Goes::In(_)));
        spots.any(|soft| soft.stretch.ends().is_some_and(|stretch| is_there(from, to, stretch)))
    };
    let third = Length::from_inches(clear.to_inches() / 3.0);
    let spans = [(Length::ZERO, AT_AN_END), (third, third * 2), (clear - AT_AN_END, clear)];
    let parts = PARTS.into_iter().zip(spans);
    parts.filter(|(_, (from, to))| !probed(*from, *to)).map(|(name, _)| name).collect()
}

fn unseen_cuts(joist: &Joist) -> Option<String> {
    // Nothing may be cut out of engineered wood by rule: its cuts are judged one by one.
    let words = match joist.spots.cuts {
        Some(CutsSaid::None | CutsSaid::AllLogged) => return None,
        Some(CutsSaid::Hidden) => "its notches and holes can't be seen: look once the floor is open",
        None if joist.new_since.is_some() => {
            "say whether the new joist has notches or holes, where it was got in over its supports too, and log each"
        }
        None => "say whether it has notches or holes, and log each",
    };
    Some(words.to_owned())
}

/// A joist that nobody read is not dry, and neither is one that reads too close to tell.
fn unread(joist: &Joist) -> Option<Reason> {
    let (source, words) = match joist.reads {
        Reads::Dry => return None,
        Reads::Unread => (Source::DryLumber, "read it with pins: nobody has"),
        Reads::Doubted => (Source::MeterAccuracy, "its reading is a number that nobody believes: read it again"),
        Reads::Loose => (
            Source::MeterAccuracy,
            "its reading can't be counted on: say which meter it is from and what it was read on, or read it again where \
             the wood is warmer",
        ),
        Reads::RelativeOnly => {
            (Source::DryLumber, "its reading is relative only, and says nothing of 19 %: read it with pins")
        }
        Reads::Close => (
            Source::MeterAccuracy,
            "it reads too close to 19 % to tell, by the meter or by its wood: say its species and how warm it is, or let \
             it dry on, and read it again",
        ),
        Reads::RelativelyWet => {
            (Source::DryLumber, "it reads over 19 % by a reading that is relative only: read it with pins")
        }
        Reads::Wet => (Source::DryLumber, "it reads over 19 %: dry it, then read and probe it again"),
    };
    Some(reason(Fate::Open, source, joist.since.reads, words).ended_by(&NEW_ALONE))
}

/// Is it sawn lumber, by what was said?
pub(super) fn is_sawn(joist: &Joist) -> bool {
    joist.member == Some(MemberType::Sawn)
}
