//! How few sheets there can be for a class of courses.
//!
//! **The proof.** Give each kind of piece a price. If no sheet can be cut into pieces
//! worth more than `F` together, and no permitted layout's pieces are worth less than
//! `z`, then no layout comes out of fewer than `z / F` sheets. `F` is a knapsack
//! ([`super::knapsack`]), exact for every guillotine cutting; `z` is a cheapest way
//! through the courses ([`super::options`]), exact for joints, spans and stagger. Both
//! are summed up in whole numbers, so the bound holds whatever the prices are. Pieces on
//! hand have an `F` each, and what they can hold comes off `z` first. Good
//! prices come from a linear programme ([`super::master`]) that grows by the cuttings
//! and layouts which contradict its last prices.

use super::case::{Case, Sheet};
use super::courses::is_sliver;
use super::knapsack::Knapsack;
use super::limits::Limits;
use super::master::Master;
use super::options::{Cheapest, Joints, Ways};
use super::region::twice_the_area;
use super::scheme::{Kind, Scheme};
use std::collections::{BTreeSet, VecDeque};

/// Prices are whole; this is the price of a whole sheet.
pub const SHEET_PRICE: i64 = 1 << 24;

/// No layout with so many courses takes fewer sheets, by the floor's area alone: at once,
/// before anything is taken apart.
///
/// What pieces cover is the floor less its gaps: one between any two courses, and one at
/// each joint, of which a course has no more than its joists over the fewest bays. A
/// sheet grown by a kerf holds no more than its area of pieces.
pub fn by_floor(case: &Case, courses: usize) -> u32 {
    let asked = &case.asked;
    let whole = i64::from(asked.sheet.length + asked.kerf) * i64::from(asked.sheet.width + asked.kerf);
    let across = || asked.outline.iter().map(|corner| i64::from(corner.0));
    let width = across().max().unwrap_or(0) - across().min().unwrap_or(0);
    let joints = courses * (asked.joists.len() / asked.min_bays.max(1));
    let along_joints = joints as i64 * i64::from(asked.sheet.width);
    let gaps = i64::from(asked.gap) * (courses.saturating_sub(1) as i64 * width + along_joints);
    let holes: i64 = asked.holes.iter().map(|hole| twice_the_area(hole).abs()).sum();
    let grown = |piece: &Sheet| i64::from(piece.length + asked.kerf) * i64::from(piece.width + asked.kerf);
    let on_hand: i64 = asked.on_hand.iter().map(grown).sum();
    let covered = ((twice_the_area(&asked.outline).abs() - holes) / 2 - gaps).max(1);
    u32::try_from(((covered - on_hand).max(0) + whole - 1) / whole.max(1)).unwrap_or(1)
}

/// Looks for prices that prove more and more sheets.
#[derive(Debug, Clone)]
pub struct Bounder {
    knapsack: Knapsack,
    /// None once no better prices can be found, or with too many kinds of pieces.
    master: Option<Master>,
    /// Which kinds have a price.
    priced: Vec<bool>,
    /// The best so far.
    pub proof: Proof,
    /// Other prices: what they prove of all layouts is less, of some it is more.
    pool: VecDeque<Proof>,
    /// How many rounds in a row the programme was left unsolved, and how many there were.
    unsolved: u32,
    rounds: u32,
    /// What was done so far, by what it takes: a measure of the work.
    work: u64,
    limits: Limits,
}

/// Prices, and what they prove.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Proof {
    /// What each kind of piece costs.
    pub prices: Vec<i64>,
    /// The most that one sheet's pieces cost.
    pub most_on_sheet: i64,
    /// The most that the pieces out of each part on hand cost.
    pub most_on_hand: Vec<i64>,
    /// The least that a layout's pieces cost.
    pub least_layout: i64,
}

impl Proof {
    /// No layout takes fewer sheets.
    pub fn sheets(&self) -> u32 {
        if self.most_on_sheet <= 0 {
            return 0;
        }
        let left = self.left_for_sheets();
        let (whole, rest) = (left / self.most_on_sheet, left % self.most_on_sheet);
        (whole + i64::from(rest > 0)) as u32
    }

    /// The same before it is rounded up, for comparing proofs.
    pub fn in_fractions(&self) -> f64 {
        if self.most_on_sheet <= 0 { 0.0 } else { self.left_for_sheets() as f64 / self.most_on_sheet as f64 }
    }

    /// The most that all pieces out of what is on hand and of so many sheets cost.
    pub fn most(&self, sheets: u32) -> i64 {
        self.most_on_hand.iter().sum::<i64>() + self.most_on_sheet * i64::from(sheets)
    }

    /// What a kind costs.
    pub fn price(&self, kind: u16) -> i64 {
        self.prices.get(usize::from(kind)).copied().unwrap_or_default()
    }

    /// What all of some kinds cost together.
    pub fn of_all(&self, kinds: &[u16]) -> i64 {
        kinds.iter().map(|kind| self.price(*kind)).sum()
    }

    fn left_for_sheets(&self) -> i64 {
        (self.least_layout - self.most(0)).max(0)
    }

    /// What prices prove, with the dearest filling of each blank, the sheet's last.
    fn of(prices: Vec<i64>, dearest: &[(i64, Vec<(u16, u16)>)], least_layout: i64) -> Self {
        let mut most: Vec<_> = dearest.iter().map(|(price, _)| *price).collect();
        let most_on_sheet = most.pop().unwrap_or_default();
        Self { prices, most_on_sheet, most_on_hand: most, least_layout }
    }
}

/// The least that a layout's pieces can cost, and such pieces in order.
struct LeastLayout {
    price: i64,
    kinds: Vec<u16>,
    /// Its joints, if neighbouring courses agree.
    joints: Option<Joints>,
}

impl Bounder {
    /// Begins with prices by area. None if no joints suit the courses.
    pub fn new(case: &Case, scheme: &Scheme, ways: &Ways, drop_slivers: bool) -> Option<Self> {
        let priced: Vec<_> = scheme.kinds.iter().map(|kind| !(drop_slivers && is_sliver(case, kind.height))).collect();
        let mut knapsack = Knapsack::new(case, scheme, |kind| priced.get(kind).copied().unwrap_or_default());
        let prices = by_area(case, scheme, &priced);
        let dearest = knapsack.best(&prices);
        let least = cheapest(scheme, ways, &prices)?;
        let kinds = scheme.kinds.len();
        let master = (kinds <= case.limits.programmed)
            .then(|| Master::new(kinds, &counted(&least.kinds), case.asked.on_hand.len()));
        let proof = Proof::of(prices, &dearest, least.price);
        Some(Self {
            knapsack,
            master,
            priced,
            proof,
            pool: VecDeque::new(),
            unsolved: 0,
            rounds: 0,
            work: 8 * ways.work(),
            limits: case.limits,
        })
    }

    /// Takes up what was proven of the same class before.
    pub fn resume(&mut self, proof: Proof, is_open: bool) {
        self.offer(proof);
        if !is_open {
            self.close();
        }
    }

    /// Looks for no better prices.
    fn close(&mut self) {
        self.work += self.master.take().map_or(0, |master| master.work);
    }

    /// May better prices still be found?
    pub fn is_open(&self) -> bool {
        self.master.is_some()
    }

    /// Is there no hope to prove that it takes more than so many sheets? Then a mix of
    /// cuttings and layouts is known that takes no more.
    pub fn is_hopeless(&self, sheets: u32) -> bool {
        self.master.as_ref().is_none_or(|master| self.rounds > 0 && master.value() <= f64::from(sheets))
    }

    /// What was done so far.
    pub fn work(&self) -> u64 {
        self.work + self.knapsack.work + self.master.as_ref().map_or(0, |master| master.work)
    }

    /// About how much memory it takes.
    pub fn bytes(&self) -> usize {
        self.knapsack.bytes()
            + self.master.as_ref().map_or(0, Master::bytes)
            + self.priced.len() * (9 + 8 * self.pool.len())
    }

    /// Tries the prices of another class, each kind at the price of the one most like it.
    /// Any prices prove something, and neighbouring classes are nearly the same.
    pub fn inherit(&mut self, scheme: &Scheme, ways: &Ways, prices: &[(Kind, i64)]) {
        let price = |(kind, priced): (&Kind, &bool)| {
            let unlike = |other: &Kind| kind.width.abs_diff(other.width) + kind.height.abs_diff(other.height);
            let like = prices.iter().min_by_key(|(other, _)| unlike(other));
            like.filter(|_| *priced).map_or(0, |(_, price)| *price)
        };
        let prices: Vec<_> = scheme.kinds.iter().zip(&self.priced).map(price).collect();
        let dearest = self.knapsack.best(&prices);
        let Some(least) = cheapest(scheme, ways, &prices) else { return };
        if let Some(master) = &mut self.master {
            for (blank, (_, cutting)) in dearest.iter().enumerate() {
                master.add_cutting(blank, cutting);
            }
            master.add_layout(&counted(&least.kinds));
        }
        self.offer(Proof::of(prices, &dearest, least.price));
    }

    fn offer(&mut self, mut proof: Proof) {
        if proof.in_fractions() > self.proof.in_fractions() {
            std::mem::swap(&mut proof, &mut self.proof);
        }
        self.pool.push_back(proof);
        if self.pool.len() > self.limits.pooled {
            self.pool.pop_front();
        }
    }

    /// All prices that are kept, those that prove most first.
    pub fn proofs(&self) -> impl Iterator<Item = &Proof> {
        std::iter::once(&self.proof).chain(&self.pool)
    }

    /// Looks for prices by which the pieces of one layout do not come out of so many
    /// sheets; says whether there are such.
    pub fn refutes(&mut self, on_hand: usize, pieces: &[u16], sheets: u32) -> bool {
        let kinds = self.priced.len();
        if kinds > self.limits.programmed {
            return false;
        }
        // The same programme with this one layout to choose from.
        let mut master = Master::new(kinds, &counted(pieces), on_hand);
        let mut tightest: Option<(f64, Proof)> = None;
        let mut refutes = false;
        for _ in 0..self.limits.rounds_for_one {
            master.solve(self.limits.steps_a_round);
            let (prices, shares) = self.whole_prices(&master);
            let dearest = self.knapsack.best(&prices);
            let is_new = add_cuttings(&mut master, &dearest, &shares);
            // Of other layouts these prices say nothing.
            let proof = Proof::of(prices, &dearest, 0);
            let (worth, most) = (proof.of_all(pieces), proof.most(sheets));
            refutes = worth > most;
            let tight = worth as f64 / most.max(1) as f64;
            if tightest.as_ref().is_none_or(|(before, _)| tight > *before) {
                tightest = Some((tight, proof));
            }
            if refutes || !is_new {
                break;
            }
        }
        self.work += master.work;
        if let Some((_, proof)) = tightest {
            self.pool.push_front(proof);
            self.pool.truncate(self.limits.pooled);
        }
        refutes
    }

    /// Which of some kinds cannot be in any layout that comes out of so many sheets and
    /// costs `least` or more.
    ///
    /// Such a layout has no more than so much to spare, and each of its sheets wastes no
    /// more than that. A kind whose every filling wastes more is out. To see that, it is
    /// made dearer by a little more than there is to spare: if the dearest filling is then
    /// worth as much as before, none with that kind comes near it.
    pub fn out_of_question(&mut self, kinds: &BTreeSet<u16>, sheets: u32, least: i64) -> Vec<bool> {
        let mut is_out = vec![false; self.priced.len()];
        let dearer = (self.proof.most(sheets) - least).max(0) + 1;
        let most: Vec<_> = self.proof.most_on_hand.iter().copied().chain([self.proof.most_on_sheet]).collect();
        for kind in kinds {
            let mut prices = self.proof.prices.clone();
            let (Some(price), Some(is_out)) = (prices.get_mut(usize::from(*kind)), is_out.get_mut(usize::from(*kind)))
            else {
                continue;
            };
            *price += dearer;
            let dearest = self.knapsack.values(&prices);
            *is_out = dearest.iter().zip(&most).all(|(dearest, most)| dearest <= most);
        }
        is_out
    }

    /// The programme's prices in whole numbers, and what a filling of each blank has to be
    /// worth to be new: of a part on hand its share's price.
    fn whole_prices(&self, master: &Master) -> (Vec<i64>, Vec<f64>) {
        let duals = master.prices();
        let (kinds, others) = duals.split_at(self.priced.len());
        let shares = others.iter().skip(1).map(|share| -share).chain([1.0]).collect();
        // No piece is worth more than the sheet that it comes out of.
        let whole = |(price, priced): (&f64, &bool)| {
            if *priced { (price.clamp(0.0, 1.0) * SHEET_PRICE as f64) as i64 } else { 0 }
        };
        (kinds.iter().zip(&self.priced).map(whole).collect(), shares)
    }

    /// Are there pieces that have no price, since their size depends on the member?
    pub fn leaves_some_out(&self) -> bool {
        self.priced.contains(&false)
    }

    /// One round: prices, and the cutting and the layout that contradict them most.
    /// Returns that layout's joints, if its neighbouring courses agree.
    pub fn step(&mut self, scheme: &Scheme, ways: &Ways) -> Option<Joints> {
        let mut master = self.master.take()?;
        self.rounds += 1;
        let is_solved = master.solve(self.limits.steps_a_round);
        let worth = master.prices().get(self.priced.len()).copied().unwrap_or_default();
        let (prices, shares) = self.whole_prices(&master);
        let dearest = self.knapsack.best(&prices);
        let LeastLayout { price, kinds, joints } = cheapest(scheme, ways, &prices)?;
        self.work += ways.work();
        let proof = Proof::of(prices, &dearest, price);
        let is_cheap = (price as f64) < worth * SHEET_PRICE as f64 * (1.0 - 1e-6) - 1.0;
        let is_cutting_new = add_cuttings(&mut master, &dearest, &shares);
        let is_layout_new = is_cheap && master.add_layout(&counted(&kinds));
        // Left unsolved in so many steps, it goes on in the next round, but not for ever: as
        // long as it is solved each round adds a cutting or a layout, of which there are so
        // many. Where it is not, its fractions have drifted too far for better prices.
        self.unsolved = if is_solved { 0 } else { self.unsolved + 1 };
        let may_go_on = is_cutting_new || is_layout_new || (1..self.limits.unsolved).contains(&self.unsolved);
        if may_go_on && master.columns() <= self.limits.columns {
            self.master = Some(master);
        } else {
            self.work += master.work;
        }
        self.offer(proof);
        joints
    }
}

/// Adds the cuttings that contradict the prices; says whether any was new.
fn add_cuttings(master: &mut Master, dearest: &[(i64, Vec<(u16, u16)>)], shares: &[f64]) -> bool {
    let beyond = |value: i64, than: f64| value as f64 > than * SHEET_PRICE as f64 * (1.0 + 1e-6) + 1.0;
    let mut is_new = false;
    for (blank, ((price, cutting), share)) in dearest.iter().zip(shares).enumerate() {
        is_new |= beyond(*price, *share) && master.add_cutting(blank, cutting);
    }
    is_new
}

/// The least that a layout's pieces can cost; none if no joints suit the courses. Where
/// not every way is listed, or they are too many to compare, neighbouring courses need not
/// agree: that can only be cheaper.
fn cheapest(scheme: &Scheme, ways: &Ways, prices: &[i64]) -> Option<LeastLayout> {
    let found = if ways.are_all { ways.cheapest(&ways.costs(prices)) } else { Cheapest::Unknown };
    match found {
        Cheapest::Are(joints) => {
            Some(LeastLayout { price: joints.price, kinds: ways.kinds(&joints.ways), joints: Some(joints) })
        }
        Cheapest::Nothing => None,
        Cheapest::Unknown => {
            let (price, kinds) = scheme.cheapest(prices);
            Some(LeastLayout { price, kinds, joints: None })
        }
    }
}

/// Each kind once, and how often it is there.
pub fn counted(kinds: &[u16]) -> Vec<(u16, u16)> {
    kinds.chunk_by(|a, b| a == b).filter_map(|same| Some((*same.first()?, same.len() as u16))).collect()
}

/// Pieces by their area, each grown by a kerf, against the sheet's.
fn by_area(case: &Case, scheme: &Scheme, priced: &[bool]) -> Vec<i64> {
    let kerf = case.asked.kerf;
    let area = |width: i32, height: i32| i64::from(width + kerf) * i64::from(height + kerf);
    let whole = area(case.asked.sheet.length, case.asked.sheet.width).max(1);
    let price = |width, height| (i128::from(area(width, height)) * i128::from(SHEET_PRICE) / i128::from(whole)) as i64;
    let kinds = scheme.kinds.iter().zip(priced);
    kinds.map(|(kind, priced)| if *priced { price(kind.width, kind.height) } else { 0 }).collect()
}
