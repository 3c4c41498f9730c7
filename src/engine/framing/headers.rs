//! Headers over framed openings and their tail joists: what rules ask of them.

use super::since::Since;
use crate::engine::job::Job;
use crate::engine::particular::{Part, Particulars, list};
use crate::engine::sources::Source;
use crate::engine::take::Units;
use crate::engine::units::Length;

/// Joists at a header's ends may be single where the header lies no farther from their
/// bearing ([`Source::SingleTrimmer`]).
pub const SINGLE_TRIMMER: Length = Length::feet(3);
/// A longer header is doubled, and so are the joists at its ends ([`Source::Headers`]).
pub const DOUBLE_HEADER: Length = Length::feet(4);
/// A longer header is hung ([`Source::Headers`]).
pub const HUNG_HEADER: Length = Length::feet(6);
/// Tail joists longer than this are held ([`Source::Headers`]).
pub const HELD_TAIL: Length = Length::feet(12);

/// The name of the check that says that a header and its tail joists are as they are asked to be.
/// It never changes.
pub const HEADER_DONE: &str = "header_done";

/// What a header asks for that nobody said it has.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HeaderAsk {
    /// In words.
    pub words: String,
    /// What it rests on.
    pub source: Source,
    /// What ends it.
    pub ended_by: HeaderEnd,
}

/// What ends it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum HeaderEnd {
    /// That the joists at its ends are doubled.
    Doubling,
    /// A measurement.
    Measuring,
    /// The check.
    Check,
}

impl HeaderAsk {
    fn new(words: &str, source: Source, ended_by: HeaderEnd) -> Self {
        Self { words: words.to_owned(), source, ended_by }
    }
}

/// What a framed opening asks for by what was said of it.
///
/// `to_bearing` is from the header to the nearer bearing of the joists at its ends.
pub fn header_asks(span: Length, to_bearing: Option<Length>, trimmers: Option<&str>) -> Vec<HeaderAsk> {
    let mut asks = Vec::new();
    if trimmers != Some("doubled") {
        let double = |words, source| HeaderAsk::new(words, source, HeaderEnd::Doubling);
        asks.extend(match to_bearing {
            _ if span > DOUBLE_HEADER => Some(double("over 4 ft the joists at its ends are doubled", Source::Headers)),
            None => Some(HeaderAsk::new(
                "measure from it to the nearer bearing: the joists at its ends may be single only within 3 ft",
                Source::SingleTrimmer,
                HeaderEnd::Measuring,
            )),
            Some(far) if far > SINGLE_TRIMMER => Some(double(
                "it lies farther than 3 ft from the bearing: double the joists at its ends",
                Source::SingleTrimmer,
            )),
            Some(_) => None,
        });
    }
    let done = |words| HeaderAsk::new(words, Source::Headers, HeaderEnd::Check);
    asks.extend((span > DOUBLE_HEADER).then(|| done("over 4 ft it is doubled")));
    asks.extend((span > HUNG_HEADER).then(|| done("over 6 ft it is hung, or stands on a wall or beam")));
    asks
}

/// What is still asked of headers and tail joists, each named.
pub fn headers(job: &Job, units: Units) -> Vec<HeaderAsk> {
    let asks = asked(job, units);
    let is_done = Since::yes_to(job, HEADER_DONE).is_some_and(|said| said.is_after(since(job)));
    asks.into_iter().filter(|ask| ask.ended_by != HeaderEnd::Check || !is_done).collect()
}

/// Is the check asked for, answered or not?
pub fn asks_for_header_done(job: &Job) -> bool {
    asked(job, Units::default()).iter().any(|ask| ask.ended_by == HeaderEnd::Check)
}

/// By the worst that may have been said last.
fn asked(job: &Job, units: Units) -> Vec<HeaderAsk> {
    let said = Particulars::of(job);
    let longest = |item| said.lengths(&Part::House, item).into_iter().max();
    let of_header = longest(&list::HEADER_SPAN).map(|span| {
        let named = move |ask: HeaderAsk| HeaderAsk {
            words: format!("Header of {}: {}", units.length(span), ask.words),
            ..ask
        };
        let doubled = Some("doubled").filter(|_| are_trimmers_doubled(job));
        header_asks(span, longest(&list::HEADER_TO_BEARING), doubled).into_iter().map(named)
    });
    // Whoever says something of a header says that there is one.
    let is_spoken_of = [&list::HEADER_TO_BEARING, &list::TRIMMERS].map(|item| said.get(&Part::House, item).is_some());
    let unmeasured = (of_header.is_none() && is_spoken_of.contains(&true))
        .then(|| HeaderAsk::new("Measure the longest header's span", Source::Headers, HeaderEnd::Measuring));
    let tail = longest(&list::TAIL_JOIST).filter(|tail| *tail > HELD_TAIL);
    let of_tail = tail.map(|tail| {
        let words = format!("Tail joists of {}: hangers or a ledger", units.length(tail));
        HeaderAsk { words, source: Source::Headers, ended_by: HeaderEnd::Check }
    });
    of_header.into_iter().flatten().chain(unmeasured).chain(of_tail).collect()
}

fn are_trimmers_doubled(job: &Job) -> bool {
    let trimmers = Particulars::of(job).all_words(&Part::House, &list::TRIMMERS);
    !trimmers.is_empty() && trimmers.iter().all(|words| *words == "doubled")
}

/// Since a header and its tail joists are as long as they are.
fn since(job: &Job) -> Since {
    let said = Particulars::of(job);
    let items = [&list::HEADER_SPAN, &list::TAIL_JOIST].into_iter();
    Since::all(items.flat_map(|item| said.last_words(&Part::House, item)).map(|it| Since::of(&it)))
}
