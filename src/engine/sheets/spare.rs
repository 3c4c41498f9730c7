//! What is on hand beside whole sheets: what the job says is there, and what floors
//! leave to the next.

use super::CutList;
use super::cut_list::Blank;
use super::layout::{Case, Layout, MOST_ON_HAND, Sheet};
use super::to_lay::{ToLay, whole_sixteenths};
use crate::engine::describe::in_sentence;
use crate::engine::job::{Job, SheetEdge};

/// A part of a sheet that can be laid before any sheet is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Spare {
    /// What it is called.
    pub name: String,
    /// Its size, no larger than a sheet's.
    pub size: Sheet,
}

/// What the job says is on hand. What is larger than a sheet counts as one.
pub fn on_hand(job: &Job, sheet: Sheet) -> Vec<Spare> {
    let pieces = (1..).zip(job.now.on_hand().values());
    largest(pieces.map(|(number, piece)| Spare {
        name: format!("On hand {number}"),
        size: Sheet {
            length: whole_sixteenths(piece.value.length.value).min(sheet.length),
            width: whole_sixteenths(piece.value.width.value).min(sheet.width),
        },
    }))
}

/// What a floor leaves to the next: what of `had` it did not need, and its offcuts. Of
/// tongue and groove only those of the whole width: the others lack an edge.
pub fn left_over(floor: &ToLay, case: &Case, layout: &Layout, had: Vec<Spare>) -> Vec<Spare> {
    let list = CutList::of(case, layout);
    let is_used = |at: usize| list.sheets.iter().any(|plan| plan.blank == Blank::OnHand(at));
    let unused = had.into_iter().enumerate().filter(|(at, _)| !is_used(*at)).map(|(_, spare)| spare);
    let keeps_edges = |width: i32| floor.stock.edge == SheetEdge::Square || width == case.asked.sheet.width;
    let offcuts = list.sheets.iter().flat_map(|plan| {
        let name = format!("Left of {}, {}", in_sentence(&floor.name), in_sentence(&floor.name_of(plan.blank)));
        plan.offcuts
            .iter()
            .filter(|offcut| keeps_edges(offcut.width))
            .map(move |offcut| Spare { name: name.clone(), size: Sheet { length: offcut.length, width: offcut.width } })
    });
    largest(unused.chain(offcuts))
}

/// As many as a search takes, the largest; in the order that they came. Wherever there are so
/// many, whoever shows a proof says that it counts on those.
fn largest(spares: impl Iterator<Item = Spare>) -> Vec<Spare> {
    let mut spares: Vec<_> = spares.filter(|spare| spare.size.length > 0 && spare.size.width > 0).collect();
    let area = |spare: &Spare| i64::from(spare.size.length) * i64::from(spare.size.width);
    while spares.len() > MOST_ON_HAND {
        let smallest = spares.iter().enumerate().rev().min_by_key(|(_, spare)| area(spare)).map(|(at, _)| at);
        smallest.map(|at| spares.remove(at));
    }
    spares
}
