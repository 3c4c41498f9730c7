//! The room's shape: the outline that fits everything measured of it best.

use super::adjust::{Accuracy, Adjusted, Checked, House, Measured, Network, Observation, Unfixed, adjust};
use super::{Floor, Offset, Ruler, Trust};
use crate::engine::entry::{EntryId, Label};
use crate::engine::geometry::{Outline, Point, Turn};
use crate::engine::job::Job;
use crate::engine::particular::{Part, Particular, Particulars, Value, list};
use crate::engine::units::{Angle, Length};

/// More corners than this are drawn as they were walked: an adjustment takes the third
/// power of them.
pub const MOST_ADJUSTED: usize = 60;

/// A corner this near to where it was walked to is there: rounding alone moved it.
const ROUNDING: Length = Length::nm(50);

/// A room's adjusted outline. Derived, never kept.
#[derive(Debug, Clone, PartialEq)]
pub struct Shape {
    /// The room, its openings placed from the adjusted corners.
    pub floor: Floor,
    /// The corners in walking order: the first at the origin, the first side along x.
    pub corners: Vec<Point>,
    /// The outline through them.
    pub outline: Outline,
    /// How everything fits.
    pub adjusted: Adjusted,
    /// The entry behind each observation; none behind a corner that nobody spoke of.
    pub entries: Vec<Option<EntryId>>,
}

/// What there is of a room's shape.
#[derive(Debug, Clone, PartialEq)]
pub enum Standing {
    /// Its sides have not turned once round, or there are more than [`MOST_ADJUSTED`].
    AsWalked,
    /// They have, and the measurements do not fix it, or fix what is no outline.
    Unfixed(Unfixed),
    /// It is known.
    Known(Box<Shape>),
}

impl Shape {
    /// The shape of the job's room, if it has one.
    pub fn of(job: &Job) -> Option<Self> {
        Floor::of(job).and_then(|floor| Self::standing(job, floor).known())
    }

    /// What there is of the shape of a room.
    pub fn standing(job: &Job, floor: Floor) -> Standing {
        if floor.walk.turned_round().is_none() || floor.sides.len() > MOST_ADJUSTED {
            return Standing::AsWalked;
        }
        let (observations, entries): (Vec<_>, Vec<_>) = observations(job, &floor).into_iter().unzip();
        let turns = floor.walk.steps().iter().map(|step| step.turn).collect();
        let adjusted = match adjust(&Network { turns, observations, house: House::said_of(job) }) {
            Ok(adjusted) => adjusted,
            Err(unfixed) => return Standing::Unfixed(unfixed),
        };
        let corners = unless_rounded(&adjusted.corners, &floor.walk.corners());
        match Outline::new(corners.clone()) {
            Ok(outline) => {
                let floor = floor.placed(job, corners.clone());
                Standing::Known(Box::new(Self { floor, corners, outline, adjusted, entries }))
            }
            Err(problems) => Standing::Unfixed(problems.first().map_or(Unfixed::Restless, |it| Unfixed::Crossed(*it))),
        }
    }

    /// Was anything measured beyond the sides?
    pub fn is_checked(&self) -> bool {
        self.entries.iter().flatten().count() > self.floor.sides.len()
    }

    /// Was anything measured across the room, which says how square it is?
    pub fn is_crossed(&self) -> bool {
        let across = |checked: &Checked| {
            matches!(checked.measured, Measured::Diagonal(..) | Measured::Offset(_) | Measured::Along(_))
        };
        self.adjusted.checked.iter().any(across)
    }
}

impl Shape {
    /// How well things were measured, as far as nobody has said.
    pub fn assumed(&self, job: &Job) -> Vec<String> {
        let sides = self.floor.sides.iter().filter_map(|side| Some(job.now.sides().get(side)?.value.by));
        let counts = |id: &EntryId| self.entries.contains(&Some(*id));
        let ties = job.now.ties().iter().filter(|(id, _)| counts(id)).map(|(_, tie)| tie.value.by);
        let offsets = job.now.offsets().iter().filter(|(id, _)| counts(id)).map(|(_, offset)| offset.value.by);
        let used: Vec<_> = sides.chain(ties).chain(offsets).collect();
        let unstated = Ruler::ALL.into_iter().filter(|ruler| used.contains(ruler) && ruler.stated(job).is_none());
        let rulers = unstated.map(|ruler| ruler.usually().to_owned());
        let squareness = self.adjusted.squareness.map(|squareness| {
            let sigma = squareness.sigma.to_degrees();
            if squareness.is_measured {
                format!("corners off square by {sigma:.1}° in the main, as the measurements fit best")
            } else {
                format!("corners built square within {sigma:.1}°")
            }
        });
        rulers.chain(squareness).collect()
    }
}

impl Standing {
    /// What is wrong with it, in a carpenter's words.
    pub fn complaint(&self) -> Option<String> {
        match self {
            Self::AsWalked => None,
            Self::Unfixed(unfixed) => Some(unfixed.to_string()),
            Self::Known(shape) => shape.adjusted.verdict.as_ref().map(ToString::to_string),
        }
    }

    /// The shape, if it is known.
    pub fn known(self) -> Option<Shape> {
        match self {
            Self::Known(shape) => Some(*shape),
            Self::AsWalked | Self::Unfixed(_) => None,
        }
    }
}

impl House {
    /// What somebody said last of how square the house is: nothing where two phones said both.
    pub fn said_of(job: &Job) -> Self {
        let said = Particulars::of(job).all_words(&Part::House, &list::CORNERS);
        let is = |house: &Self| !said.is_empty() && said.iter().all(|said| *said == house.label());
        [Self::Square, Self::OutOfSquare].into_iter().find(is).unwrap_or_default()
    }

    /// That as somebody says it; none for what nobody says.
    pub fn as_said(self) -> Option<Particular> {
        let is = Value::Words(Label::fitted(self.label()));
        let particular = Particular { of: Part::House, what: Label::fitted(list::CORNERS.what), is };
        (self != Self::Unsaid).then_some(particular)
    }
}

/// Where the walk closes by itself, its corners are exact; the adjusted ones are not.
fn unless_rounded(adjusted: &[Point], walked: &[Point]) -> Vec<Point> {
    let pairs = || adjusted.iter().zip(walked);
    let is_there = |(one, other): (&Point, &Point)| (*one - *other).length() <= ROUNDING;
    if pairs().all(is_there) { pairs().map(|(_, walked)| *walked).collect() } else { adjusted.to_vec() }
}

/// Everything measured of a room, and the entry behind each.
fn observations(job: &Job, floor: &Floor) -> Vec<(Observation, Option<EntryId>)> {
    let count = floor.sides.len();
    let number = |side: EntryId| floor.sides.iter().position(|other| *other == side);
    let sides = floor.sides.iter().enumerate().filter_map(|(from, id)| {
        let side = &job.now.sides().get(id)?.value;
        let (is, to) = (side.length.value, (from + 1) % count);
        Some((Observation::Distance { from, to, is, sigma: side.by.accuracy(job).of(is) }, Some(*id)))
    });
    let ties = job.now.ties().iter().filter_map(|(id, tie)| {
        let (tie, is) = (&tie.value, tie.value.length.value);
        let (from, to) = (number(tie.from)?, number(tie.to)?);
        (from != to).then(|| (Observation::Distance { from, to, is, sigma: tie.by.accuracy(job).of(is) }, Some(*id)))
    });
    let offsets = job.now.offsets().iter().filter_map(|(id, offset)| {
        let Offset { along, out, side, by, .. } = &offset.value;
        let [of, from, to] = [offset.value.of, offset.value.from, offset.value.to].map(number);
        let (of, from, to) = (of?, from?, to?);
        let sigma = |is: Length| by.accuracy(job).of(is);
        let along = Observation::Along { of, from, to, is: along.value, sigma: sigma(along.value) };
        let right = if *side == Turn::Right { out.value } else { -out.value };
        let out = Observation::Offset { of, from, to, is: right, sigma: sigma(right) };
        (of != from && from != to).then_some([(along, Some(*id)), (out, Some(*id))])
    });
    let corners = floor.walk.steps().iter().enumerate().filter_map(|(side, step)| {
        let at = (side + 1) % count;
        let said = floor.sides.get(at).and_then(|side| Floor::corner(job, *side));
        let is = step.turn;
        let observation = match said.map(|(_, corner)| corner) {
            None => Observation::Built { at, is },
            Some(corner) => believed(corner, at, is)?,
        };
        Some((observation, said.map(|(id, _)| id)))
    });
    sides.chain(ties).chain(offsets.flatten()).chain(corners).collect()
}

/// What was said of a corner, as far as it is believed.
const fn believed(corner: &super::Corner, at: usize, is: Angle) -> Option<Observation> {
    match (corner.trust, &corner.angle) {
        (Trust::Released, _) => None,
        (Trust::Checked, _) => Some(Observation::Angle { at, is, sigma: Accuracy::CHECKED }),
        (Trust::Built, None) => Some(Observation::Built { at, is }),
        (Trust::Built, Some(_)) => Some(Observation::Angle { at, is, sigma: Accuracy::ANGLE_FINDER }),
    }
}
