//! The sheets, the saw and the rules of laying: as stated, or else as usual.

use crate::engine::job::{Job, SheetEdge, SheetSize};
use crate::engine::sources::Source;
use crate::engine::survey::Framing;
use crate::engine::units::tape::{LengthStyle, ShownUnit, format};
use crate::engine::units::{Length, Typed};

/// Between any two sheets, at ends and edges ([`Source::PanelLaying`]).
const GAP: Length = Length::sixty_fourths(8);
/// Around sheets: half a gap, so that a joint over a joist center gets a whole one
/// between new and old floor (common practice, no source).
const EDGE_GAP: Length = Length::sixty_fourths(4);
/// What the saw takes ([`Source::SawKerf`]).
pub const KERF: Length = Length::sixty_fourths(8);
/// A joist's thickness, of lumber of 2 in by name ([`Source::JoistThickness`]).
const JOIST_THICKNESS: Length = Length::sixty_fourths(96);
/// What blocks are cut of unless somebody says ([`Source::Blocks`]).
const BLOCK_LUMBER: &str = "2 in lumber as deep as the joists, treated";
/// What a tongue takes off the face that sheets of 4 ft cover ([`Source::TongueAndGroove`]).
const TONGUE: Length = Length::sixty_fourths(32);

/// What sheets are laid of, and what of it nobody has said.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stock {
    /// As bought.
    pub sheet: SheetSize,
    /// What their long edges are like.
    pub edge: SheetEdge,
    /// How thick they are, if somebody measured.
    pub thickness: Option<Length>,
    /// Between two sheets.
    pub gap: Length,
    /// Around them.
    pub edge_gap: Length,
    /// What the saw takes.
    pub kerf: Length,
    /// How thick joists are.
    pub joist: Length,
    /// What blocks are cut of: section, grade, treatment.
    pub block_lumber: String,
    /// What was taken as usual.
    pub assumed: Vec<String>,
    /// What does not suit.
    pub doubts: Vec<String>,
}

impl Stock {
    /// What the job says of sheets to be laid on these joists.
    pub fn of(job: &Job, joists: &Framing) -> Self {
        let mut assumed = Vec::new();
        let mut usual = |said: Option<&Typed<Length>>, otherwise: Length, words: &str| match said {
            Some(said) => said.value,
            None => {
                assumed.push(words.to_owned());
                otherwise
            }
        };
        let gap = usual(job.sheet_gap(), GAP, "1/8 in between sheets at all ends and edges");
        let edge_gap = usual(job.edge_gap(), EDGE_GAP, "1/16 in around them, half a gap over a joist center");
        let kerf = usual(job.kerf(), KERF, "1/8 in for the saw");
        let joist = usual(job.joist_thickness(), JOIST_THICKNESS, "joists 1 1/2 in thick");
        let sheet = job.stated_sheet().cloned().unwrap_or_else(|| {
            assumed.push("4 × 8 ft sheets, strong axis the long way".to_owned());
            SheetSize::four_by_eight()
        });
        let edge = job.sheet_edge().copied().unwrap_or_else(|| {
            assumed.push("square edges".to_owned());
            SheetEdge::Square
        });
        if edge == SheetEdge::TongueAndGroove {
            assumed.push("a tongue takes 1/2 in off the width that a sheet covers: see its label".to_owned());
        }
        let block_lumber = match job.block_lumber().filter(|lumber| !lumber.is_empty()) {
            Some(stated) => stated.to_string(),
            None => {
                assumed.push(format!("blocks of {BLOCK_LUMBER}"));
                BLOCK_LUMBER.to_owned()
            }
        };
        let thickness = job.sheet_thickness().map(|thickness| thickness.value);
        Self { sheet, edge, thickness, gap, edge_gap, kerf, joist, block_lumber, assumed, doubts: doubts(job, joists) }
    }

    /// The width that one sheet covers.
    pub fn face_width(&self) -> Length {
        match self.edge {
            SheetEdge::Square => self.sheet.width.value,
            SheetEdge::TongueAndGroove => self.sheet.width.value - TONGUE,
        }
    }
}

/// What does not suit these joists.
fn doubts(job: &Job, joists: &Framing) -> Vec<String> {
    let widest = joists.widest_spacing();
    let apart = format(widest, LengthStyle { unit: ShownUnit::Inches, ..LengthStyle::default() });
    let apart = apart.unmarked();
    let mut doubts = Vec::new();
    match job.span_rating() {
        None => {
            doubts.push(format!("Take sheets rated for joists {apart} on center or more: none is stated."));
        }
        Some(rating) if rating.spacing() < widest => {
            doubts.push(format!("Sheets rated {} in on center do not suit joists {apart} apart.", u16::from(*rating)));
        }
        Some(_) => {}
    }
    if job.sheet_edge() == Some(&SheetEdge::TongueAndGroove) {
        doubts.push("Where sheets meet along their length a factory edge is needed: rip the wall side.".to_owned());
    }
    doubts
}

/// What everything about stock rests on.
pub const SOURCES: [Source; 6] = [
    Source::PanelLaying,
    Source::NarrowPanels,
    Source::SawKerf,
    Source::CutBack,
    Source::TongueAndGroove,
    Source::JoistThickness,
];

/// How far apart joists may be under single-floor sheets of a thickness, by caliper, where
/// no stamp says so; none for what is thinner than any. Source: [`Source::PanelSpans`],
/// least thicknesses by [`Source::PanelThickness`].
pub fn spacing_by_thickness(thickness: Length) -> Option<Length> {
    // Thousandths of an inch: the least that 1 1/8, 7/8, 23/32 and 19/32 in measure.
    let rows = [(1069, 48), (831, 32), (688, 24), (563, 16)];
    let is_so_thick = |thousandths: i64| thickness.to_nm() >= thousandths * (Length::INCH.to_nm() / 1000);
    rows.into_iter().find(|(least, _)| is_so_thick(*least)).map(|(_, inches)| Length::inches(inches))
}
