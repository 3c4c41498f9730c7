//! From a job to the floors that sheets are laid on: what comes out, cut back to
//! joists, and the rules of laying.

use super::cut_list::Blank;
use super::inset::inset;
use super::layout::{Case, Corner, Request, Sheet};
use super::refused::{disagrees, in_words};
use super::spare::Spare;
use super::stock::{SOURCES, Stock};
use crate::engine::entry::EntryId;
use crate::engine::figure::{Figure, Known, Need, Why};
use crate::engine::geometry::{Outline, Point, Rect};
use crate::engine::job::Job;
#[cfg(doc)]
use crate::engine::sources::Source;
use crate::engine::survey::shape::Standing;
use crate::engine::survey::{CutBack, CutLines, Floor, Framing, Joists, Run, Shape};
use crate::engine::units::Length;
use crate::engine::units::tape::{LengthStyle, format};

/// A sixteenth of an inch, what layouts count in.
const SIXTEENTH: Length = Length::sixty_fourths(4);

/// The narrowest course at an edge ([`Source::NarrowPanels`]).
const LEAST_RIP: Length = Length::inches(24);
/// The fewest bays under a piece ([`Source::PanelLaying`]).
const LEAST_BAYS: usize = 2;
/// Joints of neighbouring courses are on different joists ([`Source::PanelLaying`]).
const STAGGER: usize = 1;

/// A floor to be laid, and where it lies on the plan.
#[derive(Debug, Clone)]
pub struct ToLay {
    /// What it is called.
    pub name: String,
    /// What is asked of the layout, or in words what keeps it from being asked.
    pub case: Result<Case, String>,
    /// The floor as it was placed.
    pub placed: Vec<Point>,
    /// The floor as it is cut: an opening's ends on joist centers.
    pub cut_back: Vec<Point>,
    /// Which way the joists run.
    pub run: Run,
    /// What it is laid of.
    pub stock: Stock,
    /// What is on hand for it, as the case has it: of what goes before, the names.
    pub on_hand: Vec<String>,
    /// Where the layout's nought lies. Its y goes up the page where its x goes across,
    /// so that a sheet drawn with its y upwards lies as it does on the floor.
    origin: Point,
}

impl ToLay {
    fn new(name: String, placed: Vec<Point>, cut_back: Vec<Point>, run: Run, stock: &Stock) -> Self {
        let (least, most) = (Rect::around(&cut_back).least(), Rect::around(&cut_back).most());
        let origin = match run {
            Run::AcrossFirstSide => Point::new(least.x, most.y),
            Run::AlongFirstSide => least,
        };
        Self {
            name,
            case: Err(String::new()),
            placed,
            cut_back,
            run,
            stock: stock.clone(),
            on_hand: Vec::new(),
            origin,
        }
    }

    /// The same floor, laid of what is on hand before any sheet.
    pub fn given(mut self, on_hand: &[Spare]) -> Self {
        if let Ok(case) = &mut self.case {
            case.asked.on_hand = on_hand.iter().map(|spare| spare.size).collect();
            self.on_hand = on_hand.iter().map(|spare| spare.name.clone()).collect();
        }
        self
    }

    /// What something that pieces are cut from is called.
    pub fn name_of(&self, blank: Blank) -> String {
        match blank {
            Blank::Sheet(number) => format!("Sheet {number}"),
            Blank::OnHand(at) => self.on_hand.get(at).cloned().unwrap_or_default(),
        }
    }

    /// The nearest point of the layout to one of the plan.
    fn in_layout(&self, point: Point) -> Corner {
        let (right, down) = (point.x - self.origin.x, point.y - self.origin.y);
        match self.run {
            Run::AcrossFirstSide => (nearest_sixteenth(right), nearest_sixteenth(-down)),
            Run::AlongFirstSide => (nearest_sixteenth(down), nearest_sixteenth(right)),
        }
    }

    /// Where a point of the layout lies on the plan.
    pub fn on_plan(&self, (x, y): Corner) -> Point {
        let (across, along) = (length(x), length(y));
        match self.run {
            Run::AcrossFirstSide => Point::new(self.origin.x + across, self.origin.y - along),
            Run::AlongFirstSide => Point::new(self.origin.x + along, self.origin.y + across),
        }
    }
}

/// A length of a layout.
pub fn length(sixteenths: i32) -> Length {
    SIXTEENTH * i64::from(sixteenths)
}

/// What comes out of the job's room, each part as a floor to lay: the whole floor, or
/// every opening. Sheets run square to the joists.
///
/// An opening is cut back to the next joist centers, so that old and new floor both
/// bear. Its sizes are taken down to the sixteenth; joists, and the corners of a room,
/// to the nearest.
///
/// Source: [`Source::PanelLaying`], [`Source::NarrowPanels`], [`Source::SawKerf`],
/// [`Source::CutBack`].
pub fn to_lay(job: &Job) -> Figure<Vec<ToLay>> {
    let walked = Floor::of(job);
    let standing = walked.clone().map(|floor| Shape::standing(job, floor));
    let disagrees = walked.as_ref().zip(standing.as_ref()).and_then(|(floor, standing)| disagrees(floor, standing));
    let shape = standing.and_then(Standing::known);
    let outline = shape.as_ref().map(|shape| shape.outline.clone());
    let floor = shape.map(|shape| shape.floor).or(walked);
    let joists = floor.as_ref().and_then(|floor| floor.joists.clone());
    let comes_out = floor.as_ref().is_some_and(|floor| floor.whole.is_some() || !floor.openings.is_empty());
    let (Some(floor), Some(joists), true) = (floor, joists, comes_out) else {
        return Figure::without([(!comes_out, Need::Opening), (job.now.joists().is_empty(), Need::Joists)]);
    };
    let outline = outline.or_else(|| floor.outline.clone().ok());
    let stock = Stock::of(job, &floor);
    let mut doubts = stock.doubts.clone();
    doubts.extend(joists.out_of_order().map(out_of_order));
    let mut laying = Laying { job, floor: &floor, outline, disagrees, joists: &joists, stock: &stock, doubts };
    let Some((value, used)) = laying.floors() else { return Figure::Missing(vec![Need::RoomOutline]) };
    let doubts = laying.doubts;
    let in_turn = (value.len() > 1).then_some(IN_TURN);
    let rules = RULES.into_iter().chain(in_turn).map(str::to_owned);
    let assumed = stock.assumed.iter().cloned().chain(rules).collect();
    Figure::Known(Known { value, assumed, doubts, why: why(&joists, &stock, used) })
}

/// The rules that nobody was asked about.
const RULES: [&str; 3] = [
    "no course narrower than 24 in, where the floor itself is not",
    "each piece over two bays or more, where the floor itself is, its joints on joists",
    "joints of neighboring courses on different joists",
];

/// How several floors share what is on hand.
const IN_TURN: &str = "floors laid in turn, each first of what the ones before leave";

fn why(joists: &Framing, stock: &Stock, used: Vec<EntryId>) -> Why {
    let Joists { run, spacing, count, .. } = &joists.laid_out;
    let measured = match joists.measured.len() {
        0 => String::new(),
        some => format!(", {some} as measured one by one"),
    };
    Why::rule("Sheets across the joists, joints on joists, cut from edge to edge", &SOURCES)
        .with("joists", format!("{}, {} apart, {count} of them{measured}", run.label(), spacing.typed))
        .with("sheet", format!("{} × {}", stock.sheet.width.typed, stock.sheet.length.typed))
        .using(used.into_iter().chain([joists.id]).chain(joists.measured.values().map(|(id, _)| *id)))
}

fn out_of_order(joist: u16) -> String {
    format!("Joist {joist} is no farther from corner 1 than joist {}: measure both again.", joist - 1)
}

/// A sheet's end bears on so much of a joist at least (common practice, no source).
pub const LEAST_BEARING: Length = Length::sixty_fourths(32);

/// Making floors of a room.
struct Laying<'a> {
    job: &'a Job,
    floor: &'a Floor,
    outline: Option<Outline>,
    /// What disagrees so far that nothing is laid on it.
    disagrees: Option<String>,
    joists: &'a Framing,
    stock: &'a Stock,
    doubts: Vec<String>,
}

impl Laying<'_> {
    /// Every floor, and the entries behind them; none when the whole floor comes out of
    /// a room that has no outline yet.
    fn floors(&mut self) -> Option<(Vec<ToLay>, Vec<EntryId>)> {
        if let Some(whole) = self.floor.whole {
            let corners = match (&self.outline, &self.disagrees) {
                (Some(outline), _) => outline.corners().to_vec(),
                // There is no outline, and it is said why.
                (None, Some(_)) => self.floor.walk.corners(),
                (None, None) => return None,
            };
            self.doubts.push("At walls the ends of courses need a joist, a ledger or a header under them.".to_owned());
            let floor = self.asked("The whole floor".to_owned(), corners.clone(), corners, None);
            return Some((vec![floor], vec![whole]));
        }
        let count = self.floor.openings.len();
        let lines = CutLines::of(self.job, self.floor, self.outline.as_ref());
        let said = lines.iter().filter_map(|line| Some(CutBack::of(self.job, line.opening)?.0));
        let used = lines.iter().map(|line| line.opening).chain(said).collect();
        let floors = (1..).zip(&lines).map(|(number, lines)| {
            let name = if count > 1 { format!("Opening {number}") } else { "The opening".to_owned() };
            if !lines.bears {
                self.doubts.push(
                    "An end of the opening has no joist center under it: it needs a ledger, a sister or a header."
                        .to_owned(),
                );
            }
            if lines.is_too_wide {
                self.doubts.push(format!("{name} cannot be cut back as wide as stated: the room ends before."));
            }
            // Its ends lie on joists' centers, but for the gap.
            let bears = self.stock.joist.half() - self.stock.edge_gap;
            self.asked(name, lines.placed.corners().to_vec(), lines.cut.corners().to_vec(), Some(bears))
        });
        Some((floors.collect(), used))
    }

    /// A floor to lay, whose ends bear on so much of a joist, if they do not end at walls.
    fn asked(&mut self, name: String, placed: Vec<Point>, cut_back: Vec<Point>, bears: Option<Length>) -> ToLay {
        let mut floor = ToLay::new(name, placed, cut_back, self.joists.run(), self.stock);
        let gap = format(self.stock.edge_gap, LengthStyle::default());
        let gone =
            || format!("a gap of {} around the sheets leaves nothing of it; a smaller one would do", gap.unmarked());
        if let Some(disagrees) = &self.disagrees {
            floor.case = Err(disagrees.clone());
            return floor;
        }
        if let Some(why) = self.bears_on_too_little(bears) {
            floor.case = Err(why);
            return floor;
        }
        let request = self.request(&floor).ok_or_else(gone);
        floor.case = request.and_then(|request| Case::new(request).map_err(|faults| in_words(&floor, &faults)));
        floor
    }

    /// Why sheets with these gaps would not bear on joists so thick.
    fn bears_on_too_little(&self, at_ends: Option<Length>) -> Option<String> {
        let (joist, gap) = (self.stock.joist, self.stock.gap);
        let both = [
            (at_ends, "around the sheets", joist.half() - LEAST_BEARING),
            (Some((joist - gap).half()), "between sheets", joist - LEAST_BEARING * 2),
        ];
        let words = |length: Length| format(length.max(Length::ZERO), LengthStyle::default()).unmarked().to_owned();
        let (bears, at, most) =
            both.into_iter().find_map(|(bears, at, most)| Some((bears.filter(|it| *it < LEAST_BEARING)?, at, most)))?;
        Some(format!(
            "the gap {at} leaves their ends {} on joists {} thick, where {} is asked for (common practice, no source); a \
             gap of up to {} would do",
            words(bears),
            words(joist),
            words(LEAST_BEARING),
            words(most)
        ))
    }

    fn request(&mut self, floor: &ToLay) -> Option<Request> {
        let bounds = Rect::around(&floor.cut_back);
        let run = self.joists.run();
        let in_layout = |point: &Point| floor.in_layout(*point);
        let is_rectangle = floor.cut_back == bounds.corners();
        let outline: Vec<Corner> = if is_rectangle {
            // What is cut has to fit: down to the sixteenth.
            let (x, y) = (whole_sixteenths(bounds.width()), whole_sixteenths(bounds.height()));
            let (x, y) = if run == Run::AcrossFirstSide { (x, y) } else { (y, x) };
            vec![(0, 0), (x, 0), (x, y), (0, y)]
        } else {
            floor.cut_back.iter().map(in_layout).collect()
        };
        let holes = self.holes(floor, bounds).iter().map(|hole| hole.iter().map(in_layout).collect()).collect();
        let (least, most) =
            outline.iter().fold((i32::MAX, i32::MIN), |(least, most), (x, _)| (least.min(*x), most.max(*x)));
        let start = run.across(floor.origin);
        let centers = self.joists.centers().map(|center| nearest_sixteenth(center - start));
        let mut under: Vec<_> = centers.filter(|center| (least..=most).contains(center)).collect();
        under.sort_unstable();
        under.dedup();
        let stock = self.stock;
        let sheet =
            Sheet { length: whole_sixteenths(stock.sheet.length.value), width: whole_sixteenths(stock.face_width()) };
        Some(Request {
            outline: inset(&outline, nearest_sixteenth(stock.edge_gap))?,
            holes,
            joists: under,
            joist_width: nearest_sixteenth(stock.joist),
            sheet,
            on_hand: Vec::new(),
            // Half of it goes to either side of a joist's center.
            gap: 2 * nearest_sixteenth(stock.gap.half()),
            kerf: nearest_sixteenth(stock.kerf),
            // A sheet narrower than that is laid whole.
            min_rip: nearest_sixteenth(LEAST_RIP).min(sheet.width),
            min_bays: LEAST_BAYS,
            stagger: STAGGER,
        })
    }

    /// What stands in a floor, as large as no sheet may cover. What stands at its edge
    /// is left to be measured as a jog of the room.
    fn holes(&mut self, floor: &ToLay, bounds: Rect) -> Vec<Vec<Point>> {
        let outline = Outline::new(floor.cut_back.clone()).ok();
        let mut holes = Vec::new();
        for (_, rect) in &self.floor.obstacles {
            let grown = rect.grown(self.stock.edge_gap);
            let is_inside = |outline: &Outline| outline.holds_rect(grown.grown(self.stock.edge_gap + SIXTEENTH));
            if outline.as_ref().is_some_and(is_inside) {
                holes.push(grown.corners().to_vec());
            } else if grown.overlaps(bounds) {
                self.doubts.push(
                    "Something stands at the edge of this floor and is not left out: measure it as a jog of the walls."
                        .to_owned(),
                );
            }
        }
        holes
    }
}

/// Down to the sixteenth: what is cut has to fit.
pub(super) fn whole_sixteenths(length: Length) -> i32 {
    i32::try_from(length.to_nm().div_euclid(SIXTEENTH.to_nm())).unwrap_or(i32::MAX)
}

fn nearest_sixteenth(length: Length) -> i32 {
    whole_sixteenths(length.to_nearest(SIXTEENTH))
}
