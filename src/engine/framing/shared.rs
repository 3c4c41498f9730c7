//! What all joists share: loads, stamps, spacing, and what sisters are.

use super::apart::{OF_SISTERS, of_all_said_apart, of_sisters_said_apart};
use super::design::{Edition, Stamp};
use super::section::Section;
use super::since::Since;
use super::span::Loads;
use crate::engine::job::Job;
use crate::engine::particular::{Part, Particulars, Value, list};
use crate::engine::sources::Source;
use crate::engine::survey::Floor;
use crate::engine::units::{Amount, Length};

/// The name of the check that says that joists which were laid out anew are numbered as before. It
/// never changes.
pub const SAME_JOISTS: &str = "same_joists";

/// Rooms where people live ([`Source::SpanMethod`]).
const USUAL: Loads = Loads { live: 40.0, dead: 10.0 };
/// What rooms are for that carry less than [`USUAL`] ([`Source::LiveLoads`]).
const SLEPT_IN: &str = "rooms that are slept in and nothing else, by their live load";

/// What all joists share.
#[derive(Debug, Clone, PartialEq)]
pub struct Shared {
    /// The widest distance between centers.
    pub spacing: Length,
    /// What the floor is to carry.
    pub loads: Loads,
    /// What the old joists are stamped.
    pub stamp: Stamp,
    /// What sisters and new joists are stamped.
    pub sister_stamp: Stamp,
    /// By whose design values.
    pub edition: Edition,
    /// Are the old joists treated through incisions? Where nobody said it, no joist stays that would
    /// not do incised.
    pub is_incised: Option<bool>,
    /// Are sisters and new joists? Where nobody said it, none does that would not do incised.
    pub sister_is_incised: Option<bool>,
    /// The section that sisters are cut of, if both ways were measured.
    pub sister: Option<Section>,
    /// How many joists there are: three or more share a load.
    pub count: u16,
    /// Is it to carry tile, and nobody said that the floor is heavier than one without?
    pub tile_not_weighed: bool,
    /// Of what of all joists two phones say different things, and nobody can tell which came last.
    pub said_apart: Vec<&'static str>,
    /// The same of sisters.
    pub sisters_said_apart: Vec<&'static str>,
    /// What nobody said, and is taken to be so.
    pub assumed: Vec<String>,
    /// Since loads, stamps and spacing are as they are.
    pub since: Since,
    /// Since loads and spacing are as they are.
    pub loaded_since: Since,
    /// Since sisters are as they are.
    pub sister_since: Since,
    /// Since joists are numbered as they are: laid out anew they may be others, unless the check says
    /// that every number still means the same one.
    pub numbered: Since,
}

impl Shared {
    /// What the job says; spacing by the joists as laid out, none without those.
    pub fn of(job: &Job) -> Option<Self> {
        let said = Particulars::of(job);
        let words = |item| said.words(&Part::House, item);
        let framing = Floor::of(job).and_then(|floor| floor.joists)?;
        let spacing = Some(framing.widest_spacing()).filter(|spacing| spacing.is_positive())?;
        let mut assumed = Vec::new();
        let [live, dead] = [(&list::LIVE_LOAD, USUAL.live), (&list::DEAD_LOAD, USUAL.dead)].map(|(item, usual)| {
            said.amount(&Part::House, item).map_or_else(
                || {
                    assumed.push(format!("{} of {usual} psf", item.what));
                    usual
                },
                Amount::get,
            )
        });
        if live < USUAL.live {
            assumed.push(Source::LiveLoads.noted(SLEPT_IN));
        }
        let is_tile = words(&list::COVERING).is_some_and(|covering| covering.starts_with("tile"));
        let edition = match words(&list::EDITION) {
            Some("before 2013") => Edition::Before2013,
            Some(_) => Edition::Since2013,
            None => {
                assumed.push("design values of 2013 and later".to_owned());
                Edition::Since2013
            }
        };
        let is_incised = words(&list::INCISED).map(is_yes);
        let sister_is_incised = words(&list::SISTER_INCISED).map(is_yes);
        let unsaid = [(is_incised, "old joists"), (sister_is_incised, "new joists")];
        let unsaid = unsaid.into_iter().filter(|(said, _)| said.is_none());
        assumed.extend(unsaid.map(|(_, which)| format!("{which} that are not incised")));
        let house = |items: &[&list::Item]| Since::all(items.iter().map(|item| Since::stood(said, &Part::House, item)));
        let laid_out = Since::laid_out(job);
        let is_same = Since::yes_to(job, SAME_JOISTS).is_some_and(|said| said.is_after(laid_out));
        let centers = Since::all(job.now.joist_centers().values().map(|thing| Since::of(&thing)));
        let stamps = [&list::SPECIES, &list::GRADE, &list::EDITION, &list::INCISED];
        let weighs = [&list::LIVE_LOAD, &list::DEAD_LOAD, &list::COVERING];
        let loaded_since = Since::all([house(&weighs), centers, laid_out]);
        Some(Self {
            since: house(&stamps).and(loaded_since),
            loaded_since,
            sister_since: house(&OF_SISTERS),
            said_apart: of_all_said_apart(job),
            sisters_said_apart: of_sisters_said_apart(said),
            numbered: if is_same { Since::ALWAYS } else { laid_out },
            spacing,
            loads: Loads { live, dead },
            tile_not_weighed: is_tile && dead <= USUAL.dead,
            stamp: Stamp::said(words(&list::SPECIES), words(&list::GRADE)),
            sister_stamp: Stamp::said(words(&list::SISTER_SPECIES), words(&list::SISTER_GRADE)),
            edition,
            is_incised,
            sister_is_incised,
            sister: sister(said),
            count: framing.count(),
            assumed,
        })
    }
}

impl Shared {
    /// As sisters were said to be when one was put in; none if they are said to be the same now.
    /// What nobody had said then is as it was said since; what was said to be unknown is.
    pub(super) fn as_put_in(&self, job: &Job, put_in: Since) -> Option<Self> {
        let said = Particulars::of(job);
        let then = |item: &list::Item| value_then(said, item, put_in).or_else(|| said.get(&Part::House, item));
        let is_other = |item: &&list::Item| {
            then(item).zip(said.get(&Part::House, item)).is_some_and(|(then, now)| !then.says_the_same(now))
        };
        OF_SISTERS.iter().find(|item| is_other(item))?;
        let words = |item| then(item).map(Value::typed);
        let length = |item| match then(item)? {
            Value::Length(typed) => Some(typed.value),
            Value::Amount(_) | Value::Words(_) => None,
        };
        let section = length(&list::SISTER_BREADTH).zip(length(&list::SISTER_DEPTH));
        Some(Self {
            sister: section.map(|(breadth, depth)| Section { breadth, depth }),
            sister_stamp: Stamp::said(words(&list::SISTER_SPECIES), words(&list::SISTER_GRADE)),
            sister_is_incised: words(&list::SISTER_INCISED).map(is_yes),
            ..self.clone()
        })
    }
}

fn is_yes(said: &str) -> bool {
    said == "yes"
}

/// What was last said of sisters before one was put in.
fn value_then<'a>(said: Particulars<'a>, item: &list::Item, put_in: Since) -> Option<&'a Value> {
    let mut all = said.each(&Part::House, item).filter(|it| put_in.is_after(Since::of(it)));
    all.next_back().map(|it| &it.value.is)
}

/// What sisters are cut of, if both ways were measured.
pub(super) fn sister(said: Particulars<'_>) -> Option<Section> {
    let length = |item| said.length(&Part::House, item);
    Some(Section { breadth: length(&list::SISTER_BREADTH)?, depth: length(&list::SISTER_DEPTH)? })
}
