//! What the results ask for, line by line.

use super::{carriers, lumber, shims, treated, under};
use crate::engine::closing::said_apart;
use crate::engine::describe::{capital, counted, several};
use crate::engine::figure::{Figure, Need};
use crate::engine::geometry::{Outline, Point};
use crate::engine::job::{Job, SheetEdge};
use crate::engine::particular::{Part, Particulars, list};
use crate::engine::sheets::layout::Layout;
use crate::engine::sheets::stock::Span;
use crate::engine::sheets::take_off::{adhesive, fasteners};
use crate::engine::sheets::{CutList, Outcome, Searches, TakeOff, ToLay, to_lay};
use crate::engine::sources::Source;
use crate::engine::survey::{build_up, disagreement};
use crate::engine::take::Units;
use crate::engine::units::{Amount, Area, Length};

/// What is added for waste to what is not laid out piece by piece, percent
/// (common practice, no source).
pub(super) const A_TENTH: Amount = Amount::whole(10);

/// Something that is needed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Needed {
    /// Its name, by which waste, stock and prices know it.
    pub name: String,
    /// Which part of the list it belongs to.
    pub section: Section,
    /// How much, before waste.
    pub amount: Amount,
    /// Of what.
    pub unit: Unit,
    /// What is usually added for waste.
    pub usual_waste: Amount,
    /// How that comes about, in words.
    pub from: Vec<String>,
    /// What it rests on.
    pub sources: Vec<Source>,
}

/// A part of the list.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Section {
    /// What comes out first.
    TakeOut,
    /// Sheets and what holds them.
    Floor,
    /// Lumber and what holds it.
    Framing,
    /// The ground, and the air over it.
    Ground,
    /// The roof's water.
    Roof,
}

/// What is counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unit {
    /// Whole things, called so.
    Each(&'static str),
    /// Running feet.
    Feet,
    /// Square feet.
    SquareFeet,
    /// Cubic feet.
    CubicFeet,
}

impl Section {
    /// All, in order.
    pub const ALL: [Self; 5] = [Self::TakeOut, Self::Floor, Self::Framing, Self::Ground, Self::Roof];

    /// The words.
    pub const fn label(self) -> &'static str {
        match self {
            Self::TakeOut => "Take out and carry away",
            Self::Floor => "Floor",
            Self::Framing => "Framing",
            Self::Ground => "Ground and air",
            Self::Roof => "Roof water",
        }
    }
}

impl Unit {
    /// The word.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Each(word) => word,
            Self::Feet => "ft",
            Self::SquareFeet => "sq ft",
            Self::CubicFeet => "cu ft",
        }
    }

    /// So much of it, in words and to a tenth: "3 sheets", "26.4 ft".
    pub fn count(self, amount: Amount) -> String {
        let tenths = format!("{:.1}", amount.get());
        let tenths = tenths.trim_end_matches(".0");
        match self {
            Self::Each(word) if amount == Amount::whole(1) => format!("1 {word}"),
            Self::Each(word) => format!("{tenths} {}", several(word)),
            Self::Feet | Self::SquareFeet | Self::CubicFeet => format!("{tenths} {}", self.label()),
        }
    }

    /// Does it come in whole ones?
    pub const fn is_whole(self) -> bool {
        matches!(self, Self::Each(_))
    }
}

impl Needed {
    pub(super) fn new(section: Section, name: impl Into<String>, amount: Amount, unit: Unit) -> Self {
        let name = name.into();
        Self { name, section, amount, unit, usual_waste: Amount::whole(0), from: Vec::new(), sources: Vec::new() }
    }

    pub(super) fn counted(section: Section, name: impl Into<String>, count: usize, word: &'static str) -> Self {
        Self::new(section, name, Amount::whole(u32::try_from(count).unwrap_or(u32::MAX)), Unit::Each(word))
    }

    /// What was assumed for it goes with it, wherever the list goes.
    #[must_use]
    pub(super) fn assuming(self, assumed: &[String]) -> Self {
        if assumed.is_empty() { self } else { self.because(format!("assumed: {}", assumed.join("; ")), &[]) }
    }

    #[must_use]
    pub(super) fn because(mut self, from: impl Into<String>, sources: &[Source]) -> Self {
        self.from.push(from.into());
        for source in sources {
            if !self.sources.contains(source) {
                self.sources.push(*source);
            }
        }
        self
    }

    #[must_use]
    pub(super) const fn with_waste(mut self, percent: Amount) -> Self {
        self.usual_waste = percent;
        self
    }
}

/// Everything that is needed, and what cannot be told yet.
pub fn needs(job: &Job, searches: Option<&Searches>, units: Units) -> (Vec<Needed>, Vec<String>) {
    let mut open = Vec::new();
    let laid = searches.map(laid).unwrap_or_default();
    if searches.is_none() {
        open.extend(match to_lay(job) {
            Figure::Missing(needs) => Some(told("Sheets", &needs)),
            Figure::Known(_) => None,
        });
    }
    let unlaid = searches.map_or(&[][..], Searches::floors).iter().filter_map(|search| match search.outcome() {
        Outcome::Laid { .. } => None,
        Outcome::NotLaid(why) => Some(format!("{}: {why}", search.floor.name)),
        Outcome::Nothing => Some(format!("{}: no layout yet.", search.floor.name)),
    });
    open.extend(unlaid);
    let spans = laid.first().map(|laid| &laid.floor.stock.span);
    open.extend(spans.and_then(|span| if let Span::MayNot(words) = span { Some(words.clone()) } else { None }));
    let mut needed = take_out(job, searches, units);
    needed.extend(floor(&laid, job));
    needed.extend(lumber::lumber(job, &laid, units, &mut open));
    open.extend(carriers::not_counted(job, units));
    needed.extend(shims::shims(job, units, &mut open));
    needed.extend(under::ground(job, units, &mut open));
    needed.extend(under::roof(job, units, &mut open));
    // What is counted by a word that may not be the last.
    open.extend(said_apart(job, units).into_iter().map(|it| format!("{}: {}.", capital(&it.what), it.ends)));
    (needed, open)
}

/// What is missing for something, in a sentence.
pub(super) fn told(what: &str, needs: &[Need]) -> String {
    let words: Vec<_> = needs.iter().map(|need| need.words()).collect();
    format!("{what}: {}.", words.join("; "))
}

/// A floor with its layout, and what laying it takes.
pub(super) struct Laid<'a> {
    pub(super) floor: &'a ToLay,
    layout: &'a Layout,
    bound: u32,
    pub(super) takes: TakeOff,
}

fn laid(searches: &Searches) -> Vec<Laid<'_>> {
    let floors = searches.floors().iter().filter_map(|search| {
        let Outcome::Laid { layout, bound } = search.outcome() else { return None };
        let case = search.floor.case.as_ref().ok()?;
        let takes = TakeOff::of(case, &CutList::of(case, layout), &search.floor.stock);
        Some(Laid { floor: &search.floor, layout, bound, takes })
    });
    floors.collect()
}

/// The old floor: as large as it is cut, as thick as its layers. Nothing is worked out of an
/// outline that disagrees with itself too far.
fn take_out(job: &Job, searches: Option<&Searches>, units: Units) -> Vec<Needed> {
    if disagreement(job).stops() {
        return Vec::new();
    }
    let floors = searches.map_or(&[][..], Searches::floors);
    let areas = floors.iter().map(|search| polygon(&search.floor.cut_back));
    let area = areas.fold(Area::ZERO, |sum, area| sum + area);
    if area == Area::ZERO {
        return Vec::new();
    }
    let square_feet = Amount::nearest(area.to_square_feet());
    let layers: Vec<_> = job.now.layers().values().map(|layer| layer.value.what.label()).collect();
    let floor = Needed::new(Section::TakeOut, "Old floor", square_feet, Unit::SquareFeet)
        .because("cut back to joist centers", &[Source::CutBack]);
    let floor = layers.into_iter().fold(floor, |floor, layer| floor.because(layer, &[]));
    let mut needed = vec![floor];
    if let Figure::Known(layers) = build_up(job) {
        let (most, asks) = (layers.value.most, &layers.value.asks);
        let volume = area.to_square_feet() * most.to_feet();
        let at_most = if asks.is_empty() { "" } else { " at most, since layers were logged more than once" };
        let from = format!("{} thick{at_most}, as it lies: loose it takes more room", units.length(most));
        needed.push(
            Needed::new(Section::TakeOut, "To carry away", Amount::nearest(volume), Unit::CubicFeet)
                .because(from, &[Source::Geometry]),
        );
    }
    needed
}

fn polygon(corners: &[Point]) -> Area {
    Outline::new(corners.to_vec()).map_or(Area::ZERO, |outline| outline.area())
}

fn floor(laid: &[Laid<'_>], job: &Job) -> Vec<Needed> {
    let Some(first) = laid.first() else { return Vec::new() };
    let stock = &first.floor.stock;
    let thickness = job.sheet_thickness().map_or(String::new(), |thickness| format!(", {}", thickness.typed));
    let edge = if stock.edge == SheetEdge::TongueAndGroove { ", tongue and groove" } else { "" };
    let name = format!("Sheets {} × {}{thickness}{edge}", stock.sheet.width.typed, stock.sheet.length.typed);
    let count: u32 = laid.iter().map(|laid| laid.layout.sheets()).sum();
    let sheets = Needed::new(Section::Floor, name, Amount::whole(count), Unit::Each("sheet"));
    let sheets = laid.iter().fold(sheets, |sheets, laid| {
        let proof = if laid.bound == laid.layout.sheets() { "proven fewest" } else { "fewer may do" };
        let pieces = laid.layout.pieces.len();
        let count = counted(laid.layout.sheets() as usize, "sheet");
        let of = format!("{}: {count} for {}, {proof}", laid.floor.name, counted(pieces, "piece"));
        sheets.because(of, &[Source::PanelLaying])
    });
    let sheets = match stock.span.words() {
        Some(words) => sheets.because(words.trim_end_matches('.'), &[Source::PanelSpans]),
        None => sheets,
    };
    let bead = laid.iter().fold(Length::ZERO, |sum, laid| sum + laid.takes.adhesive.bead);
    let tubes = adhesive::tubes(bead);
    let glue = Needed::new(
        Section::Floor,
        format!("Subfloor adhesive, {} fl oz", adhesive::TUBE_FLUID_OUNCES),
        Amount::whole(tubes),
        Unit::Each("tube"),
    )
    .because(format!("{:.0} ft of bead", bead.to_feet()), &[Source::GlueBead, Source::GlueUnderEnds]);
    let held: usize = laid.iter().map(|laid| laid.takes.fasteners.count).sum();
    vec![sheets, glue, boxed(job, held, first.takes.fasteners)]
}

/// Fasteners by the box, once somebody says what a box holds.
fn boxed(job: &Job, count: usize, of: fasteners::Fasteners) -> Needed {
    let said = Particulars::of(job).amount(&Part::House, &list::BOX);
    let sources = [Source::FastenerSchedule, Source::EdgeDistance, Source::FastenerWaste];
    // What is counted otherwise is another line: stock and prices of the one are none of the other.
    let needed = match said {
        None => Needed::counted(Section::Floor, "Floor fasteners", count, "piece").because("say what a box holds", &[]),
        Some(in_a_box) => {
            let boxes = count as f64 / in_a_box.get().max(1.0);
            let name = format!("Floor fasteners, boxes of {}", in_a_box.shown());
            Needed::new(Section::Floor, name, Amount::nearest(boxes), Unit::Each("box"))
        }
    };
    let needed = needed.because(format!("{count} by the schedule: {}", of.size), &sources);
    needed.because(treated::METAL, &treated::SOURCES).with_waste(A_TENTH)
}
