//! A layout as a page: what is said, the plan, and a drawing with its cuts for each sheet.

use super::needed::{Needed, needed};
use super::plan::runs_across;
use super::{cutting, layout_plan};
use crate::draw::{Canvas, Drawing};
use crate::engine::describe::counted;
use crate::engine::job::SheetEdge;
use crate::engine::orders::Line;
use crate::engine::sheets::cut_list::{Blank, Cut, Rectangle, SheetPlan, Way};
use crate::engine::sheets::layout::{Corner, Layout, MOST_ON_HAND, Trim};
use crate::engine::sheets::stock::Span;
use crate::engine::sheets::to_lay::length;
use crate::engine::sheets::{CutList, FloorSearch, Outcome, TakeOff, ToLay};
use crate::engine::take::Units;

/// Everything that a layout's page shows, in its order.
#[derive(Debug, Clone, PartialEq)]
pub struct SheetPage {
    /// Which floor.
    pub name: String,
    /// How many sheets, or that there is no layout.
    pub headline: String,
    /// Whether fewer are possible, and of how many pieces; or why there is none.
    pub line: String,
    /// The pieces on the floor.
    pub plan: Option<Drawing>,
    /// What else it takes.
    pub needed: Vec<Needed>,
    /// How each sheet is cut.
    pub sheets: Vec<CutSheet>,
}

/// A sheet's part of the page.
#[derive(Debug, Clone, PartialEq)]
pub struct CutSheet {
    /// Which sheet it is, and what comes out of it.
    pub title: String,
    /// How it is cut, if it is.
    pub drawing: Option<Drawing>,
    /// Its cuts in words, in order.
    pub cuts: Vec<String>,
}

impl SheetPage {
    /// The page of what a search has come to, once that is something. What is to be ordered
    /// is the job's order list.
    pub fn of(search: &FloorSearch, ordered: &[Line], units: Units, canvas: Canvas) -> Option<Self> {
        match search.outcome() {
            Outcome::Nothing => None,
            Outcome::Laid { layout, bound } => Self::laid(&search.floor, layout, bound, (ordered, units), canvas),
            Outcome::NotLaid(why) => Some(Self {
                name: search.floor.name.clone(),
                headline: "not laid".to_owned(),
                line: why,
                plan: None,
                needed: Vec::new(),
                sheets: Vec::new(),
            }),
        }
    }

    fn laid(
        floor: &ToLay,
        layout: &Layout,
        bound: u32,
        (ordered, units): (&[Line], Units),
        canvas: Canvas,
    ) -> Option<Self> {
        let case = floor.case.as_ref().ok()?;
        let list = CutList::of(case, layout);
        let sheets = list.sheets.iter().map(|plan| {
            let name = floor.name_of(plan.blank);
            CutSheet {
                title: title(&name, plan, units),
                drawing: (!plan.is_laid_whole()).then(|| cutting(plan, &name, units, half_height(canvas))),
                cuts: plan
                    .cuts
                    .iter()
                    .map(|cut| words(cut, plan, units))
                    .chain(trimming(plan, units))
                    .chain(factory_edges(plan, case.asked.sheet.width, floor.stock.edge))
                    .collect(),
            }
        });
        Some(Self {
            name: floor.name.clone(),
            headline: counted(layout.sheets() as usize, "sheet"),
            line: line(floor, layout, &list, bound),
            plan: Some(layout_plan(floor, &list, units, canvas)),
            needed: needed(&TakeOff::of(case, &list, &floor.stock), ordered, units),
            sheets: sheets.collect(),
        })
    }
}

/// A sheet is half as wide as it is long.
const fn half_height(canvas: Canvas) -> Canvas {
    Canvas { height_px: canvas.width_px / 2 + 40, ..canvas }
}

fn line(floor: &ToLay, layout: &Layout, list: &CutList, bound: u32) -> String {
    let span = match &floor.stock.span {
        Span::MayNot(words) => format!("{words} Apart from that, "),
        Span::Does | Span::Ask(_) => String::new(),
    };
    let proof = if bound == layout.sheets() {
        "no layout takes fewer".to_owned()
    } else {
        format!("{bound} or more are needed; whether fewer than {} do is not known", layout.sheets())
    };
    let way = if runs_across(floor.run) { "along side 1" } else { "square to side 1" };
    let used = list.sheets.iter().filter(|plan| matches!(plan.blank, Blank::OnHand(_))).count();
    let on_hand = match layout.on_hand {
        0 => String::new(),
        all if all < MOST_ON_HAND => format!("; {used} of {all} on hand used"),
        all => {
            format!("; {used} on hand used, the {all} largest looked at; with any smaller ones it may be fewer sheets")
        }
    };
    format!("{span}{proof}; {}, sheets {way}{on_hand}", counted(layout.pieces.len(), "piece"))
}

/// "Sheet 2: pieces 4, 7"; of what is on hand also how large it is.
fn title(name: &str, plan: &SheetPlan, units: Units) -> String {
    let numbers: Vec<_> = plan.pieces.iter().map(|piece| piece.number.to_string()).collect();
    let pieces = if numbers.len() == 1 { "piece" } else { "pieces" };
    let uncut = if plan.is_laid_whole() { ", uncut" } else { "" };
    let size = match plan.blank {
        Blank::Sheet(_) => String::new(),
        Blank::OnHand(_) => {
            format!(" ({} × {})", units.length(length(plan.size.length)), units.length(length(plan.size.width)))
        }
    };
    format!("{name}{size}: {pieces} {}{uncut}", numbers.join(", "))
}

/// "Trim piece 7 from 2' along, 0 up, to 2' along, 1' up", once it is cut out.
fn trimming(plan: &SheetPlan, units: Units) -> impl Iterator<Item = String> {
    let spot =
        move |(along, up): Corner| format!("{} along, {} up", units.length(length(along)), units.length(length(up)));
    plan.pieces.iter().flat_map(move |piece| {
        let line =
            move |trim: &Trim| format!("Trim piece {} from {} to {}", piece.number, spot(trim.from), spot(trim.to));
        piece.form.trims.iter().map(line)
    })
}

/// Where a tongue has to meet a groove, what the saw has to leave.
fn factory_edges(plan: &SheetPlan, face: i32, edge: SheetEdge) -> Option<String> {
    if edge == SheetEdge::Square {
        return None;
    }
    if plan.size.width < face {
        return Some("This was ripped before: see that it has the tongue or groove that its place needs.".to_owned());
    }
    if !plan.is_ripped() {
        return None;
    }
    let abreast: Vec<_> = plan.abreast().iter().map(usize::to_string).collect();
    Some(if abreast.is_empty() {
        "Rip the wall side off: tongue or groove stays where the next course joins.".to_owned()
    } else {
        let pieces = abreast.join(" and ");
        format!(
            "Pieces {pieces} lie side by side: one keeps the tongue, one the groove. See that each suits its place."
        )
    })
}

/// "Crosscut at 5' 4" from the left end", on what, if it is not the whole sheet.
fn words(cut: &Cut, plan: &SheetPlan, units: Units) -> String {
    let at = units.length(length(cut.at));
    let Rectangle { length: long, width, .. } = cut.of;
    let of = if cut.of == plan.whole() {
        "the sheet".to_owned()
    } else {
        format!("the part of {} × {}", units.length(length(long)), units.length(length(width)))
    };
    match cut.way {
        Way::Crosscut => format!("Crosscut {of} at {at} from its left end"),
        Way::Rip => format!("Rip {of} at {at} from its lower edge"),
    }
}
