//! Would outdoor air dry the crawl space? One answer for every page.

use super::air::{Settles, Surface, VisitAir};
use crate::engine::air::venting::at_surface;
use crate::engine::air::{AtSurface, Venting, venting};
use crate::engine::closing::{Limits, is_covered_now};
use crate::engine::figure::{Figure, Known};
use crate::engine::job::Job;
use crate::engine::origin::is_seen_now;

/// What is asked, on every page.
pub const ASKS: &str = "Would it dry by ventilating alone?";

/// What outdoor air would do, and whether that dries the wood.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Ventilating {
    /// What it does to the crawl space's air.
    pub venting: Venting,
    /// What it does at the wood; none where nobody read how cold the wood is.
    pub at_wood: Option<AtSurface>,
    /// The surface that it condenses on, the coldest.
    pub wets: Option<Surface>,
    /// The answer.
    pub says: Dries,
    /// Does the ground give vapor, as far as anybody knows?
    pub is_ground_open: bool,
}

/// Does outdoor air dry it?
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Dries {
    /// It condenses on the wood.
    WetsWood,
    /// It holds as much vapor as the crawl air, or more.
    BringsVapor,
    /// It condenses on something colder than the wood.
    WetsSurface,
    /// Wood ends over its limit in it.
    StaysOver,
    /// Water stands below, which gives vapor all the time.
    WaterStands,
    /// Nobody read how cold the wood is.
    NotKnown,
    /// Wood ends under its limit in it, by less than a meter can be off.
    Close,
    /// It does, as long as it is like this.
    Can,
}

impl Dries {
    /// The words.
    pub const fn label(self) -> &'static str {
        match self {
            Self::WetsWood => "No: outdoor air would wet the wood",
            Self::BringsVapor => "No: outdoor air brings vapor in",
            Self::WetsSurface => "No: outdoor air would wet what is cold",
            Self::StaysOver => "No: wood would stay over its limit in it",
            Self::WaterStands => "Not while water stands below: lead it away first",
            Self::NotKnown => "Not known: nobody read how cold the wood is",
            Self::Close => "Not surely: wood would end close to its limit in it",
            Self::Can => "It can, while the air outdoors is like this",
        }
    }
}

/// What is bare below, in words.
const WETTED: &str = "This counts the vapor in the air alone. Bare soil and standing water give more all the time: lead \
     water away and cover the soil first.";

impl Ventilating {
    /// What to see to first, where outdoor air would dry the wood if the ground gave no vapor.
    pub fn is_open_below(&self) -> Option<&'static str> {
        let counts = matches!(self.says, Dries::WaterStands | Dries::NotKnown | Dries::Close | Dries::Can);
        (counts && self.is_ground_open).then_some(WETTED)
    }
}

/// Would outdoor air, as it was read in this visit, dry the crawl space's wood?
///
/// Of several readings in the visit the worst count: outdoors the fullest, in the crawl space
/// the emptiest. Source: [`Source::Venting`], [`Source::Condensation`],
/// [`Source::EquilibriumMoisture`].
///
/// [`Source::Venting`]: crate::engine::sources::Source::Venting
/// [`Source::Condensation`]: crate::engine::sources::Source::Condensation
/// [`Source::EquilibriumMoisture`]: crate::engine::sources::Source::EquilibriumMoisture
pub fn ventilating(job: &Job) -> Figure<Ventilating> {
    let read = VisitAir::of(job);
    let (outside, crawl, coldest) = (read.outdoors.fullest(), read.crawl.emptiest(), read.coldest());
    let figure = venting(outside.map(|(_, air)| air), crawl.map(|(_, air)| air), coldest.map(|it| it.warmth), None);
    let known = match figure {
        Figure::Known(known) => known,
        Figure::Missing(needs) => return Figure::Missing(needs),
    };
    let Known { value: venting, assumed, mut doubts, mut why } = known;
    // What was not said to be wood and is warmer than the air is a hot pipe for all that is known.
    let is_as_cold = |it: &Surface| crawl.is_some_and(|(_, crawl)| it.warmth <= crawl.temperature);
    let wood = read.coldest_wood().or(coldest.filter(is_as_cold));
    if wood.is_some_and(|it| !it.is_wood) {
        doubts.push("No surface was said to be wood: the coldest is taken for it".to_owned());
    }
    let is_said = wood.is_some_and(|it| it.is_wood);
    let at_wood = wood.zip(outside).map(|(wood, (_, air))| at_surface(wood.warmth, air));
    if let Some(wood) = wood.filter(|wood| Some(wood.id) != coldest.map(|it| it.id)) {
        why = why.with("coldest wood", crate::engine::air::shown::temperature(wood.warmth)).using([wood.id]);
    }
    let used = [outside.map(|(id, _)| id), crawl.map(|(id, _)| id), coldest.map(|it| it.id)];
    why = why.using(used.into_iter().flatten());
    doubts.extend(read.outdoors.doubts("the one with most vapor"));
    doubts.extend(read.crawl.doubts("the one with least vapor"));
    let wets = coldest.filter(|_| venting.at_surface.is_some_and(|there| there.condenses));
    let says = match at_wood {
        Some(there) if is_said && there.condenses => Dries::WetsWood,
        _ if !venting.removes_vapour() => Dries::BringsVapor,
        _ if wets.is_some() => Dries::WetsSurface,
        there => at_dry_ground(job, there),
    };
    let is_ground_open = is_water_below(job) || is_covered_now(job) != Some(true);
    Figure::Known(Known { value: Ventilating { venting, at_wood, wets, says, is_ground_open }, assumed, doubts, why })
}

/// What is said where outdoor air takes vapor away and wets nothing.
fn at_dry_ground(job: &Job, at_wood: Option<AtSurface>) -> Dries {
    let settles = at_wood.map(|there| Settles::of(there.equilibrium, Limits::of(job).framing.at));
    match settles {
        Some(Settles::Over) => Dries::StaysOver,
        _ if is_water_below(job) => Dries::WaterStands,
        None => Dries::NotKnown,
        Some(Settles::Close) => Dries::Close,
        Some(Settles::Under) => Dries::Can,
    }
}

fn is_water_below(job: &Job) -> bool {
    is_seen_now(job, "water_on_soil")
}
