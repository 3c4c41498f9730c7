//! The layouts of a class gone through one by one, until none that is wanted is left.

use super::super::case::Case;
use super::super::joints::{Agreed, agree};
use super::super::options::Ways;
use super::super::packing::Packing;
use super::super::plan::Layout;
use super::candidate::Candidate;
use super::exhaust::{Exhaust, Next};
use super::hope::Wanted;

/// How often what is out of the question is looked for again. What is not found out stays in.
const MOST_SIFTINGS: usize = 4;

/// The search of a class one by one.
#[derive(Debug, Clone)]
pub struct OneByOne {
    exhaust: Exhaust,
    /// The sets of pieces that it goes through, where those are not the candidate's ways.
    sets: Option<Ways>,
    /// No layout that is wanted costs more.
    limit: i64,
    /// Could each so far be decided, and do they stand for the whole class?
    pub decides: bool,
}

/// What one step of looking one by one came to.
pub enum Found {
    /// A layout that is wanted.
    Layout(Box<Layout>),
    /// None at this step.
    Nothing,
    /// There is nothing left to go through.
    Exhausted,
}

impl OneByOne {
    pub fn new(candidate: &mut Candidate, wanted: Wanted) -> Self {
        let (toll, tolls) = match wanted.pieces {
            None => (0, 0),
            Some(pieces) => {
                let toll = candidate.best_toll(wanted.sheets).0;
                (toll, toll.saturating_mul(pieces as i64))
            }
        };
        let limit = candidate.proof().most(wanted.sheets).saturating_add(tolls);
        let prices = candidate.prices(toll);
        // The pieces that a layout within the limit can have are fewer than the ways to put
        // their joints, and can be listed where those are too many.
        let sets = match wanted.pieces {
            None => Ways::sets_within(&candidate.scheme, &prices, limit, &candidate.limits())
                .map(|sets| candidate.in_question(sets, wanted.sheets)),
            Some(_) if candidate.ways.are_all => None,
            Some(_) => Ways::sets_within(&candidate.scheme, &prices, limit, &candidate.limits()),
        };
        let listed = sets.as_ref().unwrap_or(&candidate.ways);
        let decides = listed.are_all && !candidate.bounder.leaves_some_out();
        Self { exhaust: Exhaust::new(listed, listed.costs(&prices), limit, &candidate.limits()), sets, limit, decides }
    }

    /// About how much memory it takes.
    pub fn bytes(&self) -> usize {
        self.exhaust.bytes() + self.sets.as_ref().map_or(0, Ways::bytes)
    }

    /// What was done so far: a measure of the work.
    pub fn work(&self) -> u64 {
        self.exhaust.work
    }

    pub fn next(&mut self, candidate: &mut Candidate, wanted: Wanted, case: &Case) -> Found {
        let limits = candidate.limits();
        for _ in 0..limits.beginnings_a_step.max(1) {
            let ways = self.sets.as_ref().unwrap_or(&candidate.ways);
            let found = match self.exhaust.next(ways, self.limit) {
                Next::Working => continue,
                Next::Nothing => return Found::Exhausted,
                Next::Joints(joints) => joints,
            };
            let kinds = ways.kinds(&found);
            if !wanted.allows(kinds.len()) {
                continue;
            }
            // Fewer pieces are worth less effort than a sheet.
            let effort = if wanted.pieces.is_some() { limits.effort } else { limits.effort_for_each };
            let filled = match candidate.pack(kinds, wanted.sheets, effort) {
                Some(Packing::Packed(filled)) => filled,
                Some(Packing::Impossible) => return Found::Nothing,
                Some(Packing::Unknown) | None => {
                    self.decides = false;
                    return Found::Nothing;
                }
            };
            let joints = match &self.sets {
                None => Agreed::On(candidate.ways.joints(&found)),
                Some(sets) => {
                    let pieces: Vec<_> =
                        (0..).zip(&found).filter_map(|(course, way)| sets.kinds_of(course, *way)).collect();
                    agree(&candidate.scheme, case.asked.stagger, &pieces, limits.joints_tried)
                }
            };
            let layout = match &joints {
                Agreed::On(joints) => candidate.layout(case, joints, &filled),
                Agreed::Nothing => return Found::Nothing,
                Agreed::Unknown => None,
            };
            let Some(layout) = layout else {
                self.decides = false;
                return Found::Nothing;
            };
            return Found::Layout(Box::new(layout));
        }
        let is_enough = self.exhaust.looked_at() > limits.beginnings;
        self.decides &= !is_enough;
        if is_enough { Found::Exhausted } else { Found::Nothing }
    }
}

impl Candidate {
    /// What is left of sets of pieces without those that have a piece that no layout out of
    /// so many sheets can have. The less is left the less there is to spare, and the more
    /// is out of the question.
    fn in_question(&mut self, mut sets: Ways, sheets: u32) -> Ways {
        for _ in 0..MOST_SIFTINGS {
            let kinds = sets.all_kinds();
            let Some(least) = sets.least(&self.proof().prices).filter(|_| kinds.len() <= self.limits().sifted) else {
                break;
            };
            let is_out = self.bounder.out_of_question(&kinds, sheets, least);
            if !is_out.contains(&true) {
                break;
            }
            sets = sets.without(&is_out);
        }
        sets
    }
}
