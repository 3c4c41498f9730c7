//! Sizes: two lengths with a cross between, as sheets are called.
//!
//! The trade says `4 x 8` and means feet; a field whose bare numbers are inches would make a
//! card of that. So bare numbers of a size are never in the field's unit alone: they are
//! read as feet or inches only where the other reading is no size at all.

use super::{BareUnit, Problem, Sign, parse};
use crate::engine::units::{Length, Typed};
use std::fmt;

/// No piece is called by a size below this on either side: what is less is feet (a
/// judgement, no source).
const LEAST: Length = Length::FOOT;

/// No piece is called by a side beyond this: what would be more in feet is inches (a
/// judgement, no source).
const MOST: Length = Length::feet(24);

/// Why a size was refused.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum SizeProblem {
    /// There is no cross, or more than one.
    NoCross {
        /// As typed.
        typed: String,
    },
    /// One of the two is no length.
    Side(Problem),
    /// A bare number could be in feet or in inches, or neither would do.
    Unclear {
        /// As typed.
        typed: String,
    },
}

impl fmt::Display for SizeProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoCross { typed } => write!(f, "“{typed}” is not two lengths with one × between. Type 4' × 8'"),
            Self::Side(problem) => problem.fmt(f),
            Self::Unclear { typed } => {
                write!(f, "“{typed}”: feet or inches? Type 4' × 8' or 48\" × 96\", each with its mark")
            }
        }
    }
}

impl std::error::Error for SizeProblem {}

/// The two lengths that `text` says, in its order. Where lengths are in feet and inches, `4 x 8` is
/// 4 feet by 8 feet and `48 x 96` is in inches; what could be either is refused. Metric
/// fields read bare numbers as they always do.
///
/// # Errors
/// [`SizeProblem`].
pub fn parse_size(text: &str, bare: BareUnit) -> Result<[Typed<Length>; 2], SizeProblem> {
    let typed = text.trim();
    let sides = apart(typed).ok_or_else(|| SizeProblem::NoCross { typed: typed.to_owned() })?;
    let read = |text: &str| parse(text, bare, Sign::Refused).map_err(SizeProblem::Side);
    let [one, other] = [read(sides[0])?, read(sides[1])?];
    let is_bare = |side: &str, read: &Typed<Length>| bare == BareUnit::Inches && read.typed != side.trim();
    let bare_sides = [is_bare(sides[0], &one), is_bare(sides[1], &other)];
    if bare_sides == [false, false] {
        return Ok([one, other]);
    }
    let with = |unit: &str| {
        let side = |at: bool, side: &str, read: &Typed<Length>| {
            let text = format!("{} {unit}", side.trim());
            if at { parse(&text, bare, Sign::Refused).ok() } else { Some(read.clone()) }
        };
        let size = [side(bare_sides[0], sides[0], &one)?, side(bare_sides[1], sides[1], &other)?];
        size.iter().all(|side| (LEAST..=MOST).contains(&side.value)).then_some(size)
    };
    match (with("ft"), with("in")) {
        (Some(size), None) | (None, Some(size)) => Ok(size),
        (None, None) | (Some(_), Some(_)) => Err(SizeProblem::Unclear { typed: typed.to_owned() }),
    }
}

/// Does a word, in small letters, stand between the two lengths of a size?
pub(super) fn is_between(word: &str) -> bool {
    matches!(word, "x" | "by")
}

/// What stands before and after the one cross.
fn apart(text: &str) -> Option<[&str; 2]> {
    let mut pieces = text.split(['×', 'x', 'X']);
    let sides = [pieces.next()?, pieces.next()?];
    pieces.next().is_none().then_some(sides)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> Result<[f64; 2], String> {
        let size = parse_size(text, BareUnit::Inches).map_err(|problem| problem.to_string())?;
        Ok(size.map(|side| side.value.to_inches()))
    }

    #[test]
    fn four_by_eight_is_never_inches() {
        for text in ["4 x 8", "4x8", "4 × 8", "4' x 8'", "4 X 8'", "48 x 96", "48\" × 8'", " 4 ft x 96 in "] {
            assert_eq!(read(text), Ok([48.0, 96.0]), "{text}");
        }
    }

    #[test]
    fn what_is_kept_means_the_same_in_every_field() {
        for bare in BareUnit::ALL {
            let [width, length] = parse_size("4 x 8", BareUnit::Inches).unwrap();
            assert_eq!((width.typed.as_str(), length.typed.as_str()), ("4 ft", "8 ft"));
            assert_eq!(parse(&width.typed, bare, Sign::Refused).unwrap().value, Length::feet(4));
        }
    }

    #[test]
    fn a_foot_is_the_least_side_and_24_ft_the_most() {
        // Just under a foot in inches is feet; at a foot both would do up to 24 ft.
        assert_eq!(read("11 x 11"), Ok([132.0, 132.0]));
        assert!(read("12 x 12").unwrap_err().contains("feet or inches?"));
        assert!(read("24 x 24").unwrap_err().contains("feet or inches?"));
        assert_eq!(read("24 x 25"), Ok([24.0, 25.0]));
        // One side small and one large is neither.
        assert!(read("4 x 96").unwrap_err().contains("feet or inches?"));
        // Beside a side with its mark a bare one may be in either.
        assert!(read("4' x 20").unwrap_err().contains("feet or inches?"));
    }

    #[test]
    fn marked_sides_are_as_they_are_marked() {
        assert_eq!(read("4\" x 8\""), Ok([4.0, 8.0]), "somebody who marks inches means them");
        let [width, length] = parse_size("1220 x 2440", BareUnit::Millimetres).unwrap();
        assert_eq!((width.value, length.value), (Length::mm(1220), Length::mm(2440)));
    }

    #[test]
    fn what_is_no_size_says_what_would_do() {
        for text in ["4", "4 x 8 x 10", ""] {
            assert!(read(text).unwrap_err().contains("Type 4' × 8'"), "{text}");
        }
        assert!(read("4 x wide").unwrap_err().contains("wide"));
        assert!(read("x 8").unwrap_err().contains("nothing entered"));
    }
}
