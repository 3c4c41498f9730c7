//! The sheets, the saw and the rules of laying: as stated, or else as usual.

use crate::engine::job::{Job, SheetEdge, SheetSize};
use crate::engine::particular::{Part, Particulars, list};
use crate::engine::place::JoistNumber;
use crate::engine::sources::Source;
use crate::engine::survey::{Floor, Framing};
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
    /// What stands against their spanning these joists, or is to be asked for.
    pub span: Span,
    /// What was taken as usual.
    pub assumed: Vec<String>,
    /// What does not suit.
    pub doubts: Vec<String>,
}

/// Do sheets span these joists, as far as it was said?
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Span {
    /// Their stamp says so.
    Does,
    /// Nobody stated their stamp: what to ask for.
    Ask(String),
    /// They may not, and why.
    MayNot(String),
}

impl Span {
    /// In a sentence; none where they do.
    pub fn words(&self) -> Option<&str> {
        match self {
            Self::Does => None,
            Self::Ask(words) | Self::MayNot(words) => Some(words),
        }
    }
}

impl Stock {
    /// What the job says of sheets to be laid on a floor's joists.
    pub fn of(job: &Job, floor: &Floor) -> Self {
        let mut assumed = Vec::new();
        let mut usual = |said: Option<Length>, otherwise: Length, words: &str| {
            said.unwrap_or_else(|| {
                assumed.push(words.to_owned());
                otherwise
            })
        };
        let said = |typed: Option<&Typed<Length>>| typed.map(|typed| typed.value);
        let gap = usual(said(job.sheet_gap()), GAP, "1/8 in between sheets at all ends and edges");
        let edge_gap = usual(said(job.edge_gap()), EDGE_GAP, "1/16 in around them, half a gap over a joist center");
        let kerf = usual(said(job.kerf()), KERF, "1/8 in for the saw");
        let joist = usual(thinnest(job, floor), JOIST_THICKNESS, "joists 1 1/2 in thick");
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
        let span = span(job, floor);
        let doubts = doubts(job, &span);
        Self { sheet, edge, thickness, gap, edge_gap, kerf, joist, block_lumber, span, assumed, doubts }
    }

    /// The width that one sheet covers.
    pub fn face_width(&self) -> Length {
        match self.edge {
            SheetEdge::Square => self.sheet.width.value,
            SheetEdge::TongueAndGroove => self.sheet.width.value - TONGUE,
        }
    }
}

/// How thick the thinnest of the joists is that anybody said: of the sheets' joists, or of any
/// of them as it was measured.
fn thinnest(job: &Job, floor: &Floor) -> Option<Length> {
    let said = Particulars::of(job);
    let count = floor.joists.as_ref().map_or(0, Framing::count);
    let joists = (1..=count).filter_map(JoistNumber::new).map(Part::Joist);
    let measured = joists.filter_map(|part| said.length_of_joist(&part, &list::BREADTH));
    measured.chain(job.joist_thickness().map(|typed| typed.value)).min()
}

/// What is to be asked where sheets lie from one joist to the next and no farther
/// ([`Source::PanelLaying`]; of thickness without a stamp from memory).
pub const ONE_BAY: &str = "An opening between two joists next to each other is one bay, and how far sheets go, by their \
                           rating or by their thickness, is for two or more: open it to one more joist, or ask the \
                           sheets' maker.";

/// Source: as [`spacing_by_thickness`]. A patch over one bay is named whatever else was said.
fn span(job: &Job, floor: &Floor) -> Span {
    let by_spacing = by_spacing(job, floor);
    if floor.fewest_bays() != Some(1) {
        return by_spacing;
    }
    match by_spacing {
        Span::Does => Span::Ask(ONE_BAY.to_owned()),
        Span::Ask(words) => Span::Ask(format!("{words} {ONE_BAY}")),
        Span::MayNot(words) => Span::MayNot(format!("{words} {ONE_BAY}")),
    }
}

/// By how far apart the joists are, as if sheets lay over two bays or more.
fn by_spacing(job: &Job, floor: &Floor) -> Span {
    let widest = floor.widest_bay().unwrap_or_default();
    let inches = |length: Length| {
        let style = LengthStyle { unit: ShownUnit::Inches, ..LengthStyle::default() };
        format(length, style).unmarked().to_string()
    };
    let apart = inches(widest);
    let too_thin = |thickness: Length| spacing_by_thickness(thickness).is_none_or(|unrated| unrated.if_rated < widest);
    match (job.span_rating(), job.sheet_thickness()) {
        (Some(rating), _) if rating.spacing() >= widest => Span::Does,
        (Some(rating), _) => Span::MayNot(format!(
            "Sheets rated {} in on center do not suit joists {apart} apart: they may not span them.",
            u16::from(*rating)
        )),
        (None, Some(thickness)) if too_thin(thickness.value) => Span::MayNot(format!(
            "Sheets {} thick with no stamp stated may not span joists {apart} apart.",
            thickness.typed
        )),
        (None, _) => Span::Ask(format!("Take sheets rated for joists {apart} on center or more: none is stated.")),
    }
}

/// What does not suit these joists.
fn doubts(job: &Job, span: &Span) -> Vec<String> {
    let mut doubts: Vec<_> = span.words().map(str::to_owned).into_iter().collect();
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

/// How far apart joists may be under sheets of a thickness that no stamp rates.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Unrated {
    /// Whatever wood they are of; none if that is not enough.
    pub any_wood: Option<Length>,
    /// If they are rated as single-floor sheets after all, and only the stamp is not to be
    /// read. Never less.
    pub if_rated: Length,
}

/// How far apart joists may be under sheets of a thickness, by caliper, where no stamp says
/// so; none for what is thinner than any.
///
/// Who cannot see a stamp cannot know that a sheet is rated: the table of the weakest wood
/// governs, and what rated sheets would bridge is only what the stamp may yet say. Source:
/// [`Source::PlywoodBySpecies`] for any wood, by its sizes as named, which is never kinder
/// than their tolerances; [`Source::PanelSpans`] with least thicknesses by
/// [`Source::PanelThickness`] for rated ones.
pub fn spacing_by_thickness(thickness: Length) -> Option<Unrated> {
    let most = |rows: &[(i64, i32)]| {
        let is_so_thick = |thousandths: i64| thickness.to_nm() >= thousandths * (Length::INCH.to_nm() / 1000);
        rows.iter().find(|(least, _)| is_so_thick(*least)).map(|(_, inches)| Length::inches(*inches))
    };
    // Thousandths of an inch: 1 and 3/4 in, the thickest that any group of species asks for.
    let any_wood = most(&[(1000, 24), (750, 16)]);
    // The least that 1 1/8, 7/8, 23/32 and 19/32 in measure.
    let if_rated = most(&[(1069, 48), (831, 32), (688, 24), (563, 16)])?;
    Some(Unrated { any_wood, if_rated })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Of so many thousandths of an inch: under any wood, and if rated.
    fn inches(thousandths: i64) -> Option<(Option<i64>, i64)> {
        let whole = |length: Length| length.to_nm() / Length::INCH.to_nm();
        let unrated = spacing_by_thickness(Length::nm(thousandths * 25_400))?;
        Some((unrated.any_wood.map(whole), whole(unrated.if_rated)))
    }

    /// Each row from just under its least. SPS 327.31-B asks 3/4 in at 16 in and 1 in at 24 in
    /// of the weakest group \[P\]; R503.2.1.1(1) is as recalled.
    #[test]
    fn no_thickness_bridges_more_than_its_table_says() {
        assert_eq!(inches(562), None);
        assert_eq!((inches(563), inches(687)), (Some((None, 16)), Some((None, 16))));
        assert_eq!((inches(688), inches(749)), (Some((None, 24)), Some((None, 24))));
        assert_eq!((inches(750), inches(830)), (Some((Some(16), 24)), Some((Some(16), 24))));
        assert_eq!((inches(831), inches(999)), (Some((Some(16), 32)), Some((Some(16), 32))));
        assert_eq!((inches(1000), inches(1068)), (Some((Some(24), 32)), Some((Some(24), 32))));
        assert_eq!((inches(1069), inches(2000)), (Some((Some(24), 48)), Some((Some(24), 48))));
    }

    #[test]
    fn a_stamp_never_takes_away_from_what_any_wood_bridges() {
        for thousandths in 500..1200 {
            if let Some((Some(any_wood), if_rated)) = inches(thousandths) {
                assert!(any_wood <= if_rated, "{thousandths}");
            }
        }
    }
}
