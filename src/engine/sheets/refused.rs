//! Why a floor cannot be laid out as it is, in a carpenter's words: feet and inches on the
//! plan, where a layout counts sixteenths of its own.

use super::layout::{Corner, Fault};
use super::to_lay::{ToLay, length};
use crate::engine::geometry::{Problem, Segment};
use crate::engine::survey::Floor;
use crate::engine::survey::adjust::Unfixed;
use crate::engine::survey::disagreement::{STOPS_AT, of_standing};
use crate::engine::survey::shape::Standing;
use crate::engine::units::Length;
use crate::engine::units::tape::{LengthStyle, format};

/// What a room's measurements say against each other, while nothing is laid on them; none
/// while something may be.
pub fn disagrees(floor: &Floor, standing: &Standing) -> Option<String> {
    let disagreement = of_standing(floor, standing);
    let says = disagreement.says().filter(|_| disagreement.stops())?;
    let at = match standing {
        Standing::Unfixed(Unfixed::Crossed(Problem::Crossing { first, second })) => crossing(floor, *first, *second),
        _ => None,
    };
    let most = tape(STOPS_AT);
    Some(format!(
        "{says}{}; sheets are laid once the room agrees with itself to less than {most}",
        at.unwrap_or_default()
    ))
}

/// Where two sides cross as they were walked, if they do: "; they cross 3' 2" from corner 1".
fn crossing(floor: &Floor, first: usize, second: usize) -> Option<String> {
    let corners = floor.walk.corners();
    let side = |number: usize| {
        let from = *corners.get(number)?;
        Some(Segment { from, to: *corners.get(number + 1)? })
    };
    let (one, other) = (side(first)?, side(second)?);
    let [from, to] = [one.from, one.to].map(|end| other.hand(end).to_square_feet());
    let along = from / (from - to);
    let at = one.length().scaled(along);
    (0.0..=1.0)
        .contains(&along)
        .then(|| format!("; they cross {} from corner {}", tape(at.to_nearest(A_FRACTION)), first + 1))
}

/// To an eighth: where to look, not where to cut.
const A_FRACTION: Length = Length::sixty_fourths(8);

/// What is wrong with a floor.
pub fn in_words(floor: &ToLay, faults: &[Fault]) -> String {
    faults.iter().map(|fault| of_one(floor, fault)).collect::<Vec<_>>().join("; ")
}

fn of_one(floor: &ToLay, fault: &Fault) -> String {
    match fault {
        Fault::Crossing { near } => {
            format!("its sides cross or touch near {}; measure again there", spot(floor, *near))
        }
        Fault::TooFar { at } => format!("it reaches {} from its corner", tape(length(*at))),
        Fault::TooManyCourses { across, most } => {
            format!("it is {} across its sheets; up to {} will do", tape(length(*across)), tape(length(*most)))
        }
        Fault::JoistTwice { at } => {
            let from_corner = floor.run.across(floor.on_plan((*at, 0)));
            format!("two joists are {} from corner 1", tape(from_corner))
        }
        Fault::Size { what, is, least, most } => {
            let [is, least, most] = [*is, *least, *most].map(|size| tape(length(size)));
            format!("the {what} is {is}; from {least} to {most} will do")
        }
        Fault::OddGap { gap } => {
            format!("the gap is {}; an even number of sixteenths has a middle", tape(length(*gap)))
        }
        Fault::TooFewCorners { .. }
        | Fault::TooManyCorners { .. }
        | Fault::TooManyJoists { .. }
        | Fault::TooManyOnHand { .. } => fault.to_string(),
    }
}

/// "12' 3" right of corner 1 and 4' below it", as the plan lies.
fn spot(floor: &ToLay, corner: Corner) -> String {
    let point = floor.on_plan(corner);
    let side = |at: Length, forwards: &str, backwards: &str| {
        format!("{} {}", tape(at.abs()), if at < Length::ZERO { backwards } else { forwards })
    };
    format!("{} and {} from corner 1", side(point.x, "right", "left"), side(point.y, "down", "up"))
}

/// A length in feet and inches.
pub fn tape(length: Length) -> String {
    format(length, LengthStyle::default()).unmarked().to_owned()
}
