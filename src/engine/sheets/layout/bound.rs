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
use super::master::Master;
use super::options::{Joints, Ways};
use super::region::twice_the_area;
use super::scheme::{Kind, Scheme};

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

/// After so many rounds in a row without a solution none is waited for.
const MOST_UNSOLVED: u32 = 20;

/// Looks for prices that prove more and more sheets.
#[derive(Debug, Clone)]
pub struct Bounder {
    knapsack: Knapsack,
    master: Master,
    /// Which kinds have a price.
    priced: Vec<bool>,
    /// The best so far.
    pub proof: Proof,
    /// Whether better prices may still be found.
    pub is_open: bool,
    /// How many rounds in a row the programme was left unsolved.
    unsolved: u32,
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

impl Bounder {
    /// Begins with prices by area. None if no joints suit the courses.
    pub fn new(case: &Case, scheme: &Scheme, ways: &Ways, drop_slivers: bool) -> Option<Self> {
        let priced: Vec<_> = scheme.kinds.iter().map(|kind| !(drop_slivers && is_sliver(case, kind.height))).collect();
        let knapsack = Knapsack::new(case, scheme, |kind| priced.get(kind).copied().unwrap_or_default());
        let prices = by_area(case, scheme, &priced);
        let dearest = knapsack.best(&prices);
        let (least_layout, needs, _) = cheapest(scheme, ways, &prices)?;
        let master = Master::new(scheme.kinds.len(), &counted(&needs), case.asked.on_hand.len());
        let proof = Proof::of(prices, &dearest, least_layout);
        Some(Self { knapsack, master, priced, proof, is_open: true, unsolved: 0 })
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
        let Some((least_layout, needs, _)) = cheapest(scheme, ways, &prices) else { return };
        for (blank, (_, cutting)) in dearest.iter().enumerate() {
            self.master.add_cutting(blank, cutting);
        }
        self.master.add_layout(&counted(&needs));
        self.offer(Proof::of(prices, &dearest, least_layout));
    }

    fn offer(&mut self, proof: Proof) {
        if proof.in_fractions() > self.proof.in_fractions() {
            self.proof = proof;
        }
    }

    /// Are there pieces that have no price, since their size depends on the member?
    pub fn leaves_some_out(&self) -> bool {
        self.priced.contains(&false)
    }

    /// One round: prices, and the cutting and the layout that contradict them most.
    /// Returns that layout's joints, if its neighbouring courses agree.
    pub fn step(&mut self, scheme: &Scheme, ways: &Ways) -> Option<Joints> {
        let is_solved = self.master.solve(400);
        let duals = self.master.prices();
        let (kinds, others) = duals.split_at(self.priced.len());
        let worth = others.first().copied().unwrap_or_default();
        // What a filling has to be worth to be new: of a part on hand its share's price.
        let shares = others.iter().skip(1).map(|share| -share).chain([1.0]);
        let whole = |(price, priced): (&f64, &bool)| {
            if *priced { (price.max(0.0) * SHEET_PRICE as f64) as i64 } else { 0 }
        };
        let prices: Vec<_> = kinds.iter().zip(&self.priced).map(whole).collect();
        let dearest = self.knapsack.best(&prices);
        let (least_layout, needs, joints) = cheapest(scheme, ways, &prices)?;
        let proof = Proof::of(prices, &dearest, least_layout);
        let beyond = |value: i64, than: f64| value as f64 > than * SHEET_PRICE as f64 * (1.0 + 1e-6) + 1.0;
        let is_cheap = (least_layout as f64) < worth * SHEET_PRICE as f64 * (1.0 - 1e-6) - 1.0;
        let mut is_cutting_new = false;
        for (blank, ((price, cutting), share)) in dearest.iter().zip(shares).enumerate() {
            is_cutting_new |= beyond(*price, share) && self.master.add_cutting(blank, cutting);
        }
        let is_layout_new = is_cheap && self.master.add_layout(&counted(&needs));
        // What contradicts the prices and is a column already is there for the programme to
        // find; where it does not, its fractions have drifted too far for better prices.
        self.unsolved = if is_solved { 0 } else { self.unsolved + 1 };
        self.is_open = is_cutting_new || is_layout_new || (1..MOST_UNSOLVED).contains(&self.unsolved);
        self.offer(proof);
        joints
    }
}

/// The least that a layout's pieces can cost, and such pieces in order. Where not every
/// way is listed, neighbouring courses need not agree: that can only be cheaper.
fn cheapest(scheme: &Scheme, ways: &Ways, prices: &[i64]) -> Option<(i64, Vec<u16>, Option<Joints>)> {
    if !ways.are_all {
        let (price, kinds) = scheme.cheapest(prices);
        return Some((price, kinds, None));
    }
    let joints = ways.cheapest(&ways.costs(prices))?;
    Some((joints.price, ways.kinds(&joints.ways), Some(joints)))
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
