//! Why a floor cannot be laid out as it is, in a carpenter's words: feet and inches on the
//! plan, where a layout counts sixteenths of its own.

use super::layout::{Corner, Fault};
use super::to_lay::{ToLay, length};
use crate::engine::units::Length;
use crate::engine::units::tape::{LengthStyle, format};

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
