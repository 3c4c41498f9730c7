//! What the job's facts say: for each the latest statement.

use super::fact::{Fact, SheetEdge, SheetSize, SpanRating, Venting, Year};
use super::fold::Job;
use super::when::{ONE_MORNING, When, last_words};
use crate::engine::entry::{EntryId, Label, Time};
use crate::engine::geometry::Heading;
use crate::engine::units::{Length, MoistureContent, Typed};
use std::mem::discriminant;

/// Defines a question to the facts: the latest statement of one variant.
macro_rules! latest {
    ($($(#[$docs:meta])* $name:ident -> $variant:ident($type:ty);)*) => {
        impl Job {
            $($(#[$docs])*
            pub fn $name(&self) -> Option<&$type> {
                self.latest_fact(|fact| match fact {
                    Fact::$variant(value) => Some(value),
                    _ => None,
                })
            })*
        }
    };
}

latest! {
    /// What the job is called.
    title -> Title(Label);
    /// The office's number for it.
    office_number -> OfficeNumber(Label);
    /// Where it is, in words.
    site -> Site(Label);
    /// From the ground to the joists' lower edge.
    crawl_height -> CrawlHeight(Typed<Length>);
    /// What is seen from above and from below alike.
    common_mark -> CommonMark(Label);
    /// The wall that distances along the joists are measured from.
    measured_from -> MeasuredFrom(Label);
    /// Which way on the plan north lies.
    north -> North(Heading);
    /// The sheets to be laid, if somebody has said.
    stated_sheet -> Sheet(SheetSize);
    /// How thick they are.
    sheet_thickness -> SheetThickness(Typed<Length>);
    /// What their long edges are like.
    sheet_edge -> SheetEdge(SheetEdge);
    /// What spacing of joists they are rated for.
    span_rating -> SpanRating(SpanRating);
    /// What is left between two of them.
    sheet_gap -> SheetGap(Typed<Length>);
    /// What is left between them and what stands around the floor.
    edge_gap -> EdgeGap(Typed<Length>);
    /// What the saw takes.
    kerf -> Kerf(Typed<Length>);
    /// How thick the joists are.
    joist_thickness -> JoistThickness(Typed<Length>);
    /// What blocks are cut of.
    block_lumber -> BlockLumber(Label);
    /// How well the tape reads.
    tape_within -> TapeWithin(Typed<Length>);
    /// How well the laser reads.
    laser_within -> LaserWithin(Typed<Length>);
    /// How well lengths are paced.
    paces_within -> PacesWithin(Typed<Length>);
}

impl Job {
    /// The title as a heading shows it.
    pub fn heading(&self) -> String {
        let named = self.title().filter(|title| !title.is_empty()).map(ToString::to_string);
        let numbered = || self.office_number().map(|number| format!("Job {number}"));
        named.or_else(numbered).unwrap_or_else(|| "Untitled job".to_owned())
    }

    /// When the house was built: of what may be the last word, the oldest.
    pub fn year_built(&self) -> Option<&Year> {
        self.last_words(|fact| if let Fact::YearBuilt(year) = fact { Some(year) } else { None }).min()
    }

    /// How the crawl space gets its air: unvented, which takes more care, if that may be the last word.
    pub fn venting(&self) -> Option<&Venting> {
        let said = self.last_words(|fact| if let Fact::Venting(venting) = fact { Some(venting) } else { None });
        said.max_by_key(|venting| **venting == Venting::Unvented)
    }

    /// From the ground to the joists' lower edge: the least that may be the last word.
    pub fn least_crawl_height(&self) -> Option<&Typed<Length>> {
        let said = self.last_words(|fact| if let Fact::CrawlHeight(height) = fact { Some(height) } else { None });
        said.min_by_key(|height| height.value)
    }

    /// Up to which moisture content framing may be closed in: the lowest that may be the last word.
    pub fn framing_limit(&self) -> Option<&Typed<MoistureContent>> {
        let said = self.last_words(|fact| if let Fact::FramingLimit(limit) = fact { Some(limit) } else { None });
        said.min_by_key(|limit| limit.value)
    }

    /// The same of a subfloor under finished wood.
    pub fn subfloor_limit(&self) -> Option<&Typed<MoistureContent>> {
        let said = self.last_words(|fact| if let Fact::SubfloorLimit(limit) = fact { Some(limit) } else { None });
        said.min_by_key(|limit| limit.value)
    }

    /// What is said of a fact, as text; none where two phones say different things and nobody can
    /// tell which came last: it has to be said again.
    pub fn surely(&self, read: &dyn Fn(&Fact) -> Option<String>) -> Option<String> {
        let said = self.now.facts().values().filter_map(|it| Some((it.when(), (it.value, read(it.value)?))));
        let mut said = last_words(said);
        let (last, text) = said.pop()?;
        said.iter().all(|(other, _)| other.says_the_same(last)).then_some(text)
    }

    /// The latest statement of what `like` states, whatever that says of it.
    pub fn latest_like(&self, like: &Fact) -> Option<&Fact> {
        self.latest_fact(|fact| (discriminant(fact) == discriminant(like)).then_some(fact))
    }

    /// Is it put away?
    pub fn is_archived(&self) -> bool {
        self.latest_fact(|fact| match fact {
            Fact::Archived(archived) => Some(archived),
            _ => None,
        })
        .copied()
        .unwrap_or(false)
    }

    /// Was any part of it invented? Once said, it stays said: no later statement can
    /// pass invented data off as measured.
    pub fn is_invented(&self) -> bool {
        self.now.facts().values().any(|thing| *thing.value == Fact::InventedSample)
    }

    /// The latest visit, and its number counted from one. Of two phones the one that logged
    /// more has the greater count: only its clock tells that its visit was the later one.
    pub fn current_visit(&self) -> Option<(EntryId, usize)> {
        let mut visits = self.now.visits().iter().map(|(id, visit)| visit.begun(*id));
        let first = visits.next()?;
        let is_later = |one: When, next: When| one.id.device == next.id.device || next.at >= one.at;
        let last = visits.fold(first, |last, next| if is_later(last, next) { next } else { last });
        Some((last.id, self.visit_number(last.id)?))
    }

    /// Was something said in a visit, or since that was begun in one that another phone began on the
    /// same morning? Neither knew of the other's. `own` is the visit of what was said, at that time.
    pub fn is_of_visit(&self, visit: Option<EntryId>, own: Option<EntryId>, at: Time) -> bool {
        let begun = |id: EntryId| Some(self.now.visits().get(&id)?.stamp.at);
        let is_of_one_morning = |visit: EntryId, own: EntryId| {
            let both = begun(visit).zip(begun(own)).filter(|_| own.device != visit.device);
            both.is_some_and(|(begun, its)| (begun - its).abs() <= ONE_MORNING && at >= begun)
        };
        visit == own || visit.zip(own).is_some_and(|(visit, own)| is_of_one_morning(visit, own))
    }

    /// A visit's number, counted from one.
    pub fn visit_number(&self, visit: EntryId) -> Option<usize> {
        self.now.visits().keys().position(|id| *id == visit).map(|before| before + 1)
    }

    /// What may be the last word on what a fact states.
    fn last_words<'a, T: 'a>(&'a self, pick: impl Fn(&'a Fact) -> Option<&'a T>) -> impl Iterator<Item = &'a T> {
        last_words(self.now.facts().values().filter_map(|it| Some((it.when(), pick(it.value)?)))).into_iter()
    }

    fn latest_fact<'a, T: ?Sized>(&'a self, pick: impl Fn(&'a Fact) -> Option<&'a T>) -> Option<&'a T> {
        self.now.facts().values().rev().find_map(|thing| pick(thing.value))
    }
}
