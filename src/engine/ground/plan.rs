//! What the job asks of its ground and air: the cover, and the vents or what stands in for
//! them.

use super::cover::{Cover, Roll, cover};
use super::vents::{Unvented, Vents, unvented, vents};
use super::worse::Worse;
use crate::engine::figure::{Figure, Known, Need};
use crate::engine::geometry::Rect;
use crate::engine::job::{Job, Venting};
use crate::engine::particular::{Part, Particulars, list};
use crate::engine::sources::Source;
use crate::engine::survey::Shape;
use crate::engine::take::Units;
use crate::engine::units::{Area, Length};

pub use crate::engine::closing::is_covered_now;

/// Corners of a house ([`Source::VentArea`]): one vent near each.
const CORNERS: u32 = 4;
/// Floor for a part of vents over bare ground ([`Source::VentArea`]).
const BARE: u32 = 150;
/// Around a pier of masonry blocks 16 in square (common practice, no source).
const AROUND_A_PIER: Length = Length::inches(64);

/// How the space under the house gets its air.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AirWay {
    /// Openings to the outside.
    Vents,
    /// A fan that takes air out.
    Exhaust,
    /// Air out of the house.
    Supply,
    /// A dehumidifier.
    Dehumidifier,
}

/// Is the ground to lie under a cover? What is to be is no fact yet: see [`is_covered_now`].
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Covered {
    /// It was said to.
    Yes,
    /// It was said not to.
    No,
    /// Nobody said, or two phones said both. That is never taken for covered.
    NotSaid,
}

/// The ground under the house.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Ground {
    /// The longer way.
    pub length: Length,
    /// The shorter way.
    pub width: Length,
    /// What was assumed of it.
    pub assumed: Option<String>,
}

impl Ground {
    /// As it was stated, of two phones the larger, or else as large as the box around the room
    /// above it.
    pub fn of(job: &Job) -> Option<Self> {
        let mut said = Worse::of(Particulars::of(job));
        let stated = [&list::GROUND_LENGTH, &list::GROUND_WIDTH].map(|item| said.longest(item));
        if let [Some(one), Some(other)] = stated {
            return Some(Self { length: one.max(other), width: one.min(other), assumed: said.assumed() });
        }
        // Of the one way alone nothing can be said: the other is asked for.
        if stated.iter().any(Option::is_some) {
            return None;
        }
        let outline = Shape::of(job)?.outline;
        let bounds = Rect::around(outline.corners());
        let (one, other) = (bounds.width(), bounds.height());
        let assumed = Some("the ground is as large as the box around this room".to_owned());
        Some(Self { length: one.max(other), width: one.min(other), assumed })
    }

    /// How large it is.
    pub fn area(&self) -> Area {
        Area::from_square_inches(self.length.to_inches() * self.width.to_inches())
    }
}

impl AirWay {
    /// All, that first which asks for the most care.
    const ALL: [Self; 4] = [Self::Exhaust, Self::Supply, Self::Dehumidifier, Self::Vents];

    fn said(words: &str) -> Self {
        match words {
            "exhaust fan" => Self::Exhaust,
            "supply from the house" => Self::Supply,
            "dehumidifier" => Self::Dehumidifier,
            _ => Self::Vents,
        }
    }

    /// Each that may have been chosen last, that first which asks for the most care: of two
    /// phones that chose differently neither may be the later one.
    pub fn each_chosen(job: &Job) -> Vec<Self> {
        let said = Particulars::of(job).all_words(&Part::House, &list::AIR_WAY);
        let said: Vec<_> = said.into_iter().map(Self::said).collect();
        Self::ALL.into_iter().filter(|way| said.contains(way)).collect()
    }

    /// The one that was chosen.
    pub fn chosen(job: &Job) -> Option<Self> {
        Self::each_chosen(job).first().copied()
    }

    /// The one that was chosen; until then vents, or exhaust, which asks for the most, where
    /// there are none.
    pub fn of(job: &Job) -> Self {
        Self::chosen(job).unwrap_or(match job.venting() {
            Some(Venting::Unvented) => Self::Exhaust,
            Some(Venting::Vented) | None => Self::Vents,
        })
    }
}

impl Covered {
    /// As it was said, and not as some rule would have it.
    pub fn of(job: &Job) -> Self {
        let said = Particulars::of(job).all_words(&Part::House, &list::COVERED);
        match (said.contains(&"yes"), said.contains(&"no")) {
            (true, false) => Self::Yes,
            (false, true) => Self::No,
            (false, false) | (true, true) => Self::NotSaid,
        }
    }

    /// What was said, in words.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Yes => "to be covered",
            Self::No => "said not to be covered",
            Self::NotSaid => "not said to be covered",
        }
    }
}

/// Is a cover to be bought? As stated; for an unvented space, which has to have one, unless
/// somebody says no.
pub fn wants_cover(job: &Job) -> bool {
    match Covered::of(job) {
        Covered::Yes => true,
        Covered::No => false,
        Covered::NotSaid => AirWay::of(job) != AirWay::Vents,
    }
}

/// What a cover of the ground takes. Source: [`Source::GroundCover`], [`Source::RadonLap`].
pub fn cover_for(job: &Job, units: Units) -> Figure<Cover> {
    let Some(ground) = Ground::of(job) else { return Figure::Missing(vec![Need::Ground]) };
    let mut said = Worse::of(Particulars::of(job));
    let mut assumed: Vec<_> = ground.assumed.clone().into_iter().collect();
    let mut or_usual = |said: Option<Length>, item: &list::Item, usual: Length| {
        said.unwrap_or_else(|| {
            assumed.push(format!("{}: {}", item.what, units.length(usual)));
            usual
        })
    };
    let width = or_usual(said.shortest(&list::ROLL_WIDTH), &list::ROLL_WIDTH, Length::feet(10));
    let length = or_usual(said.shortest(&list::ROLL_LENGTH), &list::ROLL_LENGTH, Length::feet(100));
    let up = or_usual(said.longest(&list::TURN_UP), &list::TURN_UP, Length::inches(6));
    let is_radon = said.words(&list::LAP).contains(&"12 in, radon rule");
    let lap = Length::inches(if is_radon { 12 } else { 6 });
    let piers = said.most(&list::PIERS).map_or(0, |piers| i64::from(piers) / 1000);
    assumed.extend(said.assumed());
    let Some(mut known) = cover(ground.length, ground.width, Roll { width, length, lap, up }) else {
        return Figure::Missing(vec![Need::Roll]);
    };
    known.value.seal = known.value.seal + AROUND_A_PIER * piers;
    if is_radon {
        known.why.sources.push(Source::RadonLap);
    }
    if piers > 0 {
        assumed.push("piers are 16 in square (common practice, no source)".to_owned());
    }
    known.why = known.why.with("ground", format!("{} × {}", units.length(ground.length), units.length(ground.width)));
    known.assumed = assumed;
    Figure::Known(known)
}

/// How many vents. Source: [`Source::VentArea`], [`Source::VentAreaStates`].
pub fn vents_for(job: &Job) -> Figure<Vents> {
    let mut said = Worse::of(Particulars::of(job));
    let (ground, each) = (Ground::of(job), said.least(&list::VENT_AREA));
    let (Some(ground), Some(each)) = (&ground, each) else {
        return Figure::without([(ground.is_none(), Need::Ground), (each.is_none(), Need::VentLabel)]);
    };
    let mut assumed: Vec<_> = ground.assumed.clone().into_iter().collect();
    let ratio = Ratio::of(&mut said, Covered::of(job));
    if ratio.is_assumed {
        assumed.push("vents of 1/150 of the floor".to_owned());
    }
    let corners = if is_near_corners(&mut said) { CORNERS } else { 0 };
    assumed.extend(said.assumed());
    let mut known = vents(ground.area(), ratio.one_in, Area::from_square_inches(each.get()), corners);
    known.why.sources.extend(ratio.source);
    known.doubts.extend(ratio.doubt);
    known.doubts.push(Source::VentScreens.noted("Across from each other, so that air goes through, and screened"));
    known.assumed = assumed;
    Figure::Known(known)
}

/// Does one vent stand near each corner? Unless everybody says no.
pub fn has_vents_near_corners(job: &Job) -> bool {
    is_near_corners(&mut Worse::of(Particulars::of(job)))
}

fn is_near_corners(said: &mut Worse<'_>) -> bool {
    let words = said.words(&list::VENT_CORNERS);
    words.is_empty() || words.iter().any(|word| *word != "no")
}

/// Why more vents are counted than were asked for: they are to be fewer than bare ground
/// takes, and nobody said that it is covered.
pub fn too_few_vents(job: &Job) -> Option<String> {
    let ratio = Ratio::of(&mut Worse::of(Particulars::of(job)), Covered::of(job));
    ratio.doubt.filter(|_| ratio.is_refused)
}

/// A vent opening's part of the floor, as far as the ground's cover bears it.
struct Ratio {
    one_in: u32,
    is_assumed: bool,
    is_refused: bool,
    source: Option<Source>,
    doubt: Option<String>,
}

impl Ratio {
    /// What is stated holds only over the cover that its own rule asks for; until the ground
    /// is said to be covered, the ratio of bare ground is taken. Of two phones that of more vents.
    fn of(said: &mut Worse<'_>, covered: Covered) -> Self {
        let stated = said.words(&list::VENT_RATIO);
        let most_vents = ["1/150", "1/300", "1/1500 over a cover"].into_iter().find(|ratio| stated.contains(ratio));
        let (one_in, source, over) = match most_vents {
            Some("1/300") => (300, Some(Source::VentAreaStates), "6 mil, joints lapped 6 in, to the foundation wall"),
            Some("1/1500 over a cover") => (1500, None, "a class I vapor retarder, with air going across"),
            _ => {
                return Self {
                    one_in: BARE,
                    is_assumed: most_vents.is_none(),
                    is_refused: false,
                    source: None,
                    doubt: None,
                };
            }
        };
        if covered == Covered::Yes {
            let doubt = Some(format!("1/{one_in} holds over a cover alone, once it lies: {over}."));
            return Self { one_in, is_assumed: false, is_refused: false, source, doubt };
        }
        let doubt =
            format!("1/{one_in} asks for a cover, {over}. The ground is {}: 1/{BARE} is taken.", covered.label());
        Self { one_in: BARE, is_assumed: false, is_refused: true, source, doubt: Some(doubt) }
    }
}

/// The air of a space without vents. Source: [`Source::UnventedAir`],
/// [`Source::DehumidifierSize`].
pub fn unvented_for(job: &Job) -> Figure<Unvented> {
    let (ground, height) = (Ground::of(job), job.crawl_height().map(|height| height.value));
    let (Some(ground), Some(height)) = (&ground, height) else {
        return Figure::without([(ground.is_none(), Need::Ground), (height.is_none(), Need::CrawlHeight)]);
    };
    let Known { value, mut doubts, why, .. } = unvented(ground.area(), height);
    doubts.push(Source::OutdoorFans.noted("No more than the code's flow of outdoor air"));
    if AirWay::of(job) == AirWay::Dehumidifier {
        doubts.push("Not every edition and state lists a dehumidifier: ask before one is bought.".to_owned());
    }
    Figure::Known(Known { value, assumed: ground.assumed.clone().into_iter().collect(), doubts, why })
}
