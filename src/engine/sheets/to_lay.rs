//! From a job to the floor that sheets are laid on: the opening cut back to joists,
//! and the rules of laying.

use super::layout::{Case, Corner, Fault, Request, Sheet};
use crate::engine::entry::EntryId;
use crate::engine::figure::{Figure, Known, Need, Why};
use crate::engine::geometry::{Point, Rect};
use crate::engine::job::{Job, SheetSize};
use crate::engine::sources::Source;
use crate::engine::survey::{Floor, Joists, Run};
use crate::engine::units::Length;

/// A sixteenth of an inch, what layouts count in.
const SIXTEENTH: Length = Length::sixty_fourths(4);

/// Between any two sheets, at ends and edges ([`Source::PanelLaying`]).
const GAP: Length = Length::sixty_fourths(8);
/// What the saw takes ([`Source::SawKerf`]).
const KERF: Length = Length::sixty_fourths(8);
/// The narrowest course at an edge ([`Source::NarrowPanels`]).
const LEAST_RIP: Length = Length::inches(24);
/// The fewest bays under a piece ([`Source::PanelLaying`]).
const LEAST_BAYS: usize = 2;
/// Joints of neighbouring courses are on different joists ([`Source::PanelLaying`]).
const STAGGER: usize = 1;
/// A joist's thickness, of lumber by its usual name (common practice, no source).
const JOIST_WIDTH: Length = Length::sixty_fourths(96);

/// A floor to be laid, and where it lies on the plan.
#[derive(Debug, Clone)]
pub struct ToLay {
    /// What is asked of the layout, or what keeps it from being asked.
    pub case: Result<Case, Vec<Fault>>,
    /// The opening as it was placed.
    pub placed: Rect,
    /// The opening as it is cut: its ends on joist centers.
    pub cut_back: Rect,
    /// Which way the joists run.
    pub run: Run,
}

impl ToLay {
    /// Where a point of the layout lies on the plan.
    pub fn on_plan(&self, (x, y): Corner) -> Point {
        let (across, along) = (SIXTEENTH * i64::from(x), SIXTEENTH * i64::from(y));
        let least = self.cut_back.least();
        match self.run {
            Run::AcrossFirstSide => Point::new(least.x + across, least.y + along),
            Run::AlongFirstSide => Point::new(least.x + along, least.y + across),
        }
    }
}

/// A length of a layout.
pub fn length(sixteenths: i32) -> Length {
    SIXTEENTH * i64::from(sixteenths)
}

/// The job's first opening as a floor to lay. Sheets run square to the joists.
///
/// The opening is cut back to the next joist centers, so that old and new floor both
/// bear; lengths are taken down to the sixteenth, joists to the nearest.
///
/// Source: [`Source::PanelLaying`], [`Source::NarrowPanels`], [`Source::SawKerf`],
/// [`Source::CutBack`].
pub fn to_lay(job: &Job) -> Figure<ToLay> {
    let floor = Floor::of(job);
    let opening = floor.as_ref().and_then(|floor| floor.openings.first().copied());
    let joists = floor.as_ref().and_then(|floor| floor.joists.as_ref());
    let (Some(floor), Some((id, placed)), Some(joists)) = (&floor, opening, joists) else {
        let needs = [(opening.is_none(), Need::Opening), (joists.is_none(), Need::Joists)];
        return Figure::Missing(needs.into_iter().filter(|(missing, _)| *missing).map(|(_, need)| need).collect());
    };
    let mut doubts = Vec::new();
    let cut_back = cut_back(floor, joists, placed, &mut doubts);
    if floor.openings.len() > 1 {
        doubts.push("Only the first opening is laid out.".to_owned());
    }
    let stated = job.stated_sheet().cloned();
    let mut assumed = Vec::new();
    if stated.is_none() {
        assumed.push("4 × 8 ft sheets, square-edged, strong axis the long way".to_owned());
    }
    assumed.extend(RULES.iter().map(|rule| (*rule).to_owned()));
    let sheet = stated.unwrap_or_else(SheetSize::four_by_eight);
    let request = request(joists, cut_back, &sheet);
    let value = ToLay { case: Case::new(request), placed, cut_back, run: joists.run };
    Figure::Known(Known { value, assumed, doubts, why: why(joists, id, &sheet) })
}

/// The rules that nobody was asked about.
const RULES: [&str; 5] = [
    "1/8 in between sheets at all ends and edges",
    "1/8 in for the saw",
    "no course narrower than 24 in",
    "each piece over two bays or more, its joints on joists",
    "joints of neighbouring courses on different joists; joists 1 1/2 in thick",
];

fn why(joists: &Joists, opening: EntryId, sheet: &SheetSize) -> Why {
    let sources = [Source::PanelLaying, Source::NarrowPanels, Source::SawKerf, Source::CutBack];
    Why::rule("Sheets across the joists, joints on joists, cut from edge to edge", &sources)
        .with("joists", format!("{}, {} apart, {} of them", joists.run.label(), joists.spacing.typed, joists.count))
        .with("sheet", format!("{} × {}", sheet.width.typed, sheet.length.typed))
        .using([opening])
}

/// The opening with its ends moved out to the next joist centers, as far as the room
/// goes.
fn cut_back(floor: &Floor, joists: &Joists, placed: Rect, doubts: &mut Vec<String>) -> Rect {
    let centers = || (1..=joists.count).map(|number| joists.center(number));
    let (least, most) = (across(joists.run, placed.least()), across(joists.run, placed.most()));
    let from = centers().filter(|center| *center <= least).max();
    let to = centers().filter(|center| *center >= most).min();
    let grown = Rect::between(
        with_across(joists.run, placed.least(), from.unwrap_or(least)),
        with_across(joists.run, placed.most(), to.unwrap_or(most)),
    );
    let fits = |rect: &Rect| floor.outline.as_ref().is_ok_and(|outline| outline.holds_rect(*rect));
    let cut_back = grown.filter(|grown| fits(grown) || !fits(&placed)).unwrap_or(placed);
    let on_joist = |at: Length| centers().any(|center| center == at);
    let ends = [across(joists.run, cut_back.least()), across(joists.run, cut_back.most())];
    if !ends.into_iter().all(on_joist) {
        doubts.push(
            "An end of the opening has no joist center under it: it needs a ledger, a sister or a header.".to_owned(),
        );
    }
    cut_back
}

fn across(run: Run, point: Point) -> Length {
    match run {
        Run::AcrossFirstSide => point.x,
        Run::AlongFirstSide => point.y,
    }
}

fn with_across(run: Run, point: Point, at: Length) -> Point {
    match run {
        Run::AcrossFirstSide => Point::new(at, point.y),
        Run::AlongFirstSide => Point::new(point.x, at),
    }
}

fn request(joists: &Joists, cut_back: Rect, sheet: &SheetSize) -> Request {
    let (width, height) = match joists.run {
        Run::AcrossFirstSide => (cut_back.width(), cut_back.height()),
        Run::AlongFirstSide => (cut_back.height(), cut_back.width()),
    };
    let (x, y) = (whole_sixteenths(width), whole_sixteenths(height));
    let origin = across(joists.run, cut_back.least());
    let centers = (1..=joists.count).map(|number| nearest_sixteenth(joists.center(number) - origin));
    let mut under: Vec<_> = centers.filter(|center| (0..=x).contains(center)).collect();
    under.dedup();
    let stock = Sheet { length: whole_sixteenths(sheet.length.value), width: whole_sixteenths(sheet.width.value) };
    Request {
        outline: vec![(0, 0), (x, 0), (x, y), (0, y)],
        holes: Vec::new(),
        joists: under,
        joist_width: nearest_sixteenth(JOIST_WIDTH),
        sheet: stock,
        gap: nearest_sixteenth(GAP),
        kerf: nearest_sixteenth(KERF),
        // A sheet narrower than that is laid whole.
        min_rip: nearest_sixteenth(LEAST_RIP).min(stock.width),
        min_bays: LEAST_BAYS,
        stagger: STAGGER,
    }
}

/// Down to the sixteenth: what is cut has to fit.
fn whole_sixteenths(length: Length) -> i32 {
    i32::try_from(length.to_nm().div_euclid(SIXTEENTH.to_nm())).unwrap_or(i32::MAX)
}

fn nearest_sixteenth(length: Length) -> i32 {
    whole_sixteenths(length.to_nearest(SIXTEENTH))
}
