//! What nobody said of a joist, and what its readings leave open.

use super::probed::unprobed;
use super::{reason, said_apart};
use crate::engine::framing::joist::{Joist, Reads};
use crate::engine::framing::member::{Awl, CutsSaid, MemberType};
use crate::engine::framing::schedule::{ENGINEER, Fate, NEW, NEW_ALONE, Reason};
use crate::engine::framing::since::Since;
use crate::engine::sources::Source;
use crate::engine::take::Units;

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
        let since = Since::all([since.section, since.span, since.over_girder, since.bearing, joist.laid_since()]);
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
