//! Facts about the job: what is said once and may be said again. The latest counts.

use crate::engine::entry::Label;
use crate::engine::geometry::Heading;
use crate::engine::units::{Length, MoistureContent, Typed};
use serde::{Deserialize, Serialize};

/// Something said about the job as a whole.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Fact {
    /// What the job is called.
    Title(Label),
    /// The office's number for it.
    OfficeNumber(Label),
    /// Where it is, in words. A client detail.
    Site(Label),
    /// The year that the house was built.
    YearBuilt(Year),
    /// From the ground to the joists' lower edge.
    CrawlHeight(Typed<Length>),
    /// How the crawl space gets its air.
    Venting(Venting),
    /// The sheets to be laid.
    Sheet(SheetSize),
    /// How thick they are, by caliper.
    SheetThickness(Typed<Length>),
    /// What their long edges are like.
    SheetEdge(SheetEdge),
    /// The span rating stamped on them: the most that joists may be apart, in inches.
    SpanRating(SpanRating),
    /// Left between two sheets.
    SheetGap(Typed<Length>),
    /// Left between sheets and what stands around the floor.
    EdgeGap(Typed<Length>),
    /// What the saw takes.
    Kerf(Typed<Length>),
    /// How thick the joists are.
    JoistThickness(Typed<Length>),
    /// What blocks are cut of: section, grade and treatment, as lumber is asked for.
    BlockLumber(Label),
    /// Up to which moisture content framing may be closed in.
    FramingLimit(Typed<MoistureContent>),
    /// The same of a subfloor under finished wood.
    SubfloorLimit(Typed<MoistureContent>),
    /// What two readings in three of the tape are off by at most: its standard deviation,
    /// beside what grows with the length.
    TapeWithin(Typed<Length>),
    /// The laser's.
    LaserWithin(Typed<Length>),
    /// That of paces.
    PacesWithin(Typed<Length>),
    /// What is seen from above and from below alike, so that both count the same way.
    CommonMark(Label),
    /// The wall from which distances along the joists are measured.
    MeasuredFrom(Label),
    /// Which way on the plan north lies, named as if north were up.
    North(Heading),
    /// Put away, or taken out again.
    Archived(bool),
    /// The job is an invented sample, and says so wherever it is shown.
    InventedSample,
}

impl Fact {
    /// The length that it says, and what that is of; none for what is no length, or two.
    pub const fn length(&self) -> Option<(&'static str, &Typed<Length>)> {
        match self {
            Self::CrawlHeight(length) => Some(("Crawl height", length)),
            Self::SheetThickness(length) => Some(("Sheet thickness, by caliper", length)),
            Self::SheetGap(length) => Some(("Gap between sheets", length)),
            Self::EdgeGap(length) => Some(("Gap around sheets", length)),
            Self::Kerf(length) => Some(("Saw kerf", length)),
            Self::JoistThickness(length) => Some(("Joist thickness", length)),
            Self::TapeWithin(length) => Some(("Tape, usually within", length)),
            Self::LaserWithin(length) => Some(("Laser, usually within", length)),
            Self::PacesWithin(length) => Some(("Paces, usually within", length)),
            _ => None,
        }
    }
}

/// A year in which a house can have been built.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(try_from = "u16", into = "u16")]
pub struct Year(#[cfg_attr(not(target_arch = "wasm32"), schemars(range(min = 1600, max = 2200)))] u16);

impl Year {
    /// A year from 1600 to 2200.
    ///
    /// # Errors
    /// A sentence that says what is accepted.
    pub fn new(year: u16) -> Result<Self, String> {
        if (1600..=2200).contains(&year) {
            Ok(Self(year))
        } else {
            Err(format!("year built {year}: 1600 to 2200 is accepted"))
        }
    }

    /// The year.
    pub const fn get(self) -> u16 {
        self.0
    }
}

impl TryFrom<u16> for Year {
    type Error = String;
    fn try_from(year: u16) -> Result<Self, String> {
        Self::new(year)
    }
}

impl From<Year> for u16 {
    fn from(year: Year) -> Self {
        year.0
    }
}

/// How a crawl space gets its air.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Venting {
    /// Openings to the outdoors.
    Vented,
    /// None.
    Unvented,
}

impl Venting {
    /// Both, in the order that a choice shows them.
    pub const ALL: [Self; 2] = [Self::Vented, Self::Unvented];

    /// The word.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Vented => "vented",
            Self::Unvented => "unvented",
        }
    }
}

/// What the long edges of a sheet are like.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum SheetEdge {
    /// Cut square.
    Square,
    /// A tongue along the one, a groove along the other.
    TongueAndGroove,
}

impl SheetEdge {
    /// Both, in the order that a choice shows them.
    pub const ALL: [Self; 2] = [Self::Square, Self::TongueAndGroove];

    /// The word.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Square => "square edges",
            Self::TongueAndGroove => "tongue and groove",
        }
    }
}

/// The floor spacing that sheets are rated for, in inches on center. Ratings of single
/// floors run from 16 to 48 (APA form E30V, 2011 [P]); more is accepted for others.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(try_from = "u16", into = "u16")]
pub struct SpanRating(#[cfg_attr(not(target_arch = "wasm32"), schemars(range(min = 8, max = 60)))] u16);

impl SpanRating {
    /// From 8 to 60 inches.
    ///
    /// # Errors
    /// A sentence that says what is accepted.
    pub fn new(inches: u16) -> Result<Self, String> {
        if (8..=60).contains(&inches) {
            Ok(Self(inches))
        } else {
            Err(format!("span rating {inches}: 8 to 60 inches on center is accepted"))
        }
    }

    /// The most that joists may be apart.
    pub fn spacing(self) -> Length {
        Length::inches(i32::from(self.0))
    }
}

impl TryFrom<u16> for SpanRating {
    type Error = String;
    fn try_from(inches: u16) -> Result<Self, String> {
        Self::new(inches)
    }
}

impl From<SpanRating> for u16 {
    fn from(rating: SpanRating) -> Self {
        rating.0
    }
}

/// The size of a sheet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct SheetSize {
    /// The short way.
    pub width: Typed<Length>,
    /// The long way.
    pub length: Typed<Length>,
}

impl SheetSize {
    /// The usual 4 × 8 ft sheet.
    pub fn four_by_eight() -> Self {
        Self { width: Typed::new("4'", Length::feet(4)), length: Typed::new("8'", Length::feet(8)) }
    }
}

/// A visit to the job: entries made during it name it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Visit {
    /// What it is for.
    #[serde(default, skip_serializing_if = "Label::is_empty")]
    pub purpose: Label,
}

/// A caution that somebody has read.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Acknowledgement {
    /// The caution's name in the data file.
    pub caution: Label,
}

/// The job file was handed over.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct HandOver {
    /// The file's revision.
    pub revision: u32,
    /// Were the photos in it?
    pub with_photos: bool,
    /// Were the client's details in it?
    pub with_client: bool,
    /// How many entries the log had, so that it can be told whether another phone's, merged
    /// since, count as if they had been in it. None before format 1.6.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub entries: Option<u32>,
}
