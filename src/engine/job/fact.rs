//! Facts about the job: what is said once and may be said again. The latest counts.

use crate::engine::entry::Label;
use crate::engine::units::{Length, Typed};
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
    /// What is seen from above and from below alike, so that both count the same way.
    CommonMark(Label),
    /// The wall from which distances along the joists are measured.
    MeasuredFrom(Label),
    /// Put away, or taken out again.
    Archived(bool),
    /// The job is an invented sample, and says so wherever it is shown.
    InventedSample,
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
}
