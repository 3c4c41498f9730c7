//! How every result answers: with a value and its reasons, or with what is missing.

use super::entry::EntryId;
use super::sources::{Mark, Source};

/// The answer of a calculation. Nothing stores one: it is computed when asked for.
#[derive(Debug, Clone, PartialEq)]
pub enum Figure<T> {
    /// There is a value.
    Known(Known<T>),
    /// There is not enough to say; each need names what to go and measure.
    Missing(Vec<Need>),
}

/// A value with all that a reader needs to trust or doubt it.
#[derive(Debug, Clone, PartialEq)]
pub struct Known<T> {
    /// The value, unrounded.
    pub value: T,
    /// What was assumed for want of a measurement.
    pub assumed: Vec<String>,
    /// What to bear in mind: outside a valid range, relative only, and the like.
    pub doubts: Vec<String>,
    /// The rule, its sources, the inputs.
    pub why: Why,
}

/// The reasons of a figure.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Why {
    /// The rule in one sentence.
    pub rule: String,
    /// Where the rule and its numbers come from.
    pub sources: Vec<Source>,
    /// The inputs as name and shown value.
    pub inputs: Vec<(String, String)>,
    /// The entries that went in.
    pub used: Vec<EntryId>,
}

/// Something to go and measure or say, for want of which a figure is missing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Need {
    /// The room's sides, until they come round.
    RoomOutline,
    /// One more measurement of the room: which one, the question on the tape says.
    FixedOutline,
    /// The opening's offsets and size.
    Opening,
    /// The old floor's layers, by caliper.
    Layers,
    /// The joists: which way, the first center, the spacing.
    Joists,
    /// Crawl space air: temperature and humidity.
    CrawlAir,
    /// Room air.
    RoomAir,
    /// Outdoor air.
    OutdoorAir,
    /// A moisture reading.
    Reading,
    /// A level reading at two places or more.
    Levels,
    /// Levels as near to each other as joists of one floor are, the same by every phone.
    LevelsAgain,
    /// What joists are brought to, of which two phones say different things.
    PlaneAgain,
    /// Where a reading was taken.
    ReadingPlace,
    /// Questions of the checklist.
    Checks,
    /// A place read a second time, on another day.
    SecondReading,
    /// How long and wide the ground under the house is.
    Ground,
    /// A roll that the ground can be covered with.
    Roll,
    /// What one vent lets through.
    VentLabel,
    /// How high the space under the house is.
    CrawlHeight,
    /// The roof's plan area.
    RoofArea,
    /// The hardest rain.
    Rain,
    /// A downspout's section.
    Downspout,
}

impl Need {
    /// What to go and do, in a carpenter's words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::RoomOutline => "measure the sides of the room until they come round",
            Self::FixedOutline => "measure a diagonal of the room: something is not fixed yet",
            Self::Opening => "place the opening: its corner, offsets and size",
            Self::Layers => "measure the old floor's layers from the top down, by caliper",
            Self::Joists => "lay out the joists: which way they run, the first center, the spacing",
            Self::CrawlAir => "read the air in the crawl space",
            Self::RoomAir => "read the air in the room",
            Self::OutdoorAir => "read the air outdoors",
            Self::Reading => "take a moisture reading",
            Self::ReadingPlace => "say where the readings were taken: which joist, and how far along",
            Self::SecondReading => "read the same places again on another day",
            Self::Checks => "answer what you can of the checklist",
            Self::Ground => "say how long and wide the ground under the house is",
            Self::Roll => "state a roll longer than a strip of the ground, and wider than a lap",
            Self::VentLabel => "read one vent's net free area off its label",
            Self::CrawlHeight => "measure from the ground up to the joists",
            Self::RoofArea => "say the roof's plan area that drains to this wall",
            Self::Rain => "look up the design rain of the place, in inches an hour over 5 minutes",
            Self::Downspout => "say one downspout's section",
            Self::Levels => "read the level at two places or more, on joists' upper edges",
            Self::PlaneAgain => "two phones say differently what joists are brought to: say it again",
            Self::LevelsAgain => {
                "read the levels again, from one beam: one lies farther off than joists of one floor do, or two phones read \
                 one spot differently"
            }
        }
    }
}

impl<T> Figure<T> {
    /// A value with its reasons, nothing assumed and nothing doubtful.
    pub const fn known(value: T, why: Why) -> Self {
        Self::Known(Known { value, assumed: Vec::new(), doubts: Vec::new(), why })
    }

    /// Those of the needs that are not met.
    pub fn without(needs: impl IntoIterator<Item = (bool, Need)>) -> Self {
        Self::Missing(needs.into_iter().filter(|(is_missing, _)| *is_missing).map(|(_, need)| need).collect())
    }

    /// The same answer, its value put otherwise.
    pub fn map<U>(self, put: impl FnOnce(&T) -> U) -> Figure<U> {
        match self {
            Self::Known(Known { value, assumed, doubts, why }) => {
                Figure::Known(Known { value: put(&value), assumed, doubts, why })
            }
            Self::Missing(needs) => Figure::Missing(needs),
        }
    }

    /// The value, if there is one.
    pub const fn value(&self) -> Option<&T> {
        match self {
            Self::Known(known) => Some(&known.value),
            Self::Missing(_) => None,
        }
    }

    /// The value with its reasons, if there is one.
    pub const fn as_known(&self) -> Option<&Known<T>> {
        match self {
            Self::Known(known) => Some(known),
            Self::Missing(_) => None,
        }
    }
}

impl Why {
    /// A rule with its sources.
    pub fn rule(rule: impl Into<String>, sources: &[Source]) -> Self {
        Self { rule: rule.into(), sources: sources.to_vec(), ..Self::default() }
    }

    /// With one more input, by name and shown value.
    #[must_use]
    pub fn with(mut self, name: impl Into<String>, value: impl Into<String>) -> Self {
        self.inputs.push((name.into(), value.into()));
        self
    }

    /// With the entries that went in.
    #[must_use]
    pub fn using(mut self, entries: impl IntoIterator<Item = EntryId>) -> Self {
        self.used.extend(entries);
        self
    }

    /// The weakest mark among the sources: a chain is as published as its weakest link.
    pub fn mark(&self) -> Option<Mark> {
        self.sources.iter().map(|source| source.citation().mark).max()
    }
}
