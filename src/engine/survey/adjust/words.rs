//! The verdict in a carpenter's words. Sides and corners are counted from 1.

use super::network::{Measured, Off};
use super::rest::Unfixed;
use super::snoop::{Suspect, Verdict};
use crate::engine::units::tape::{LengthStyle, format};
use std::fmt;

impl fmt::Display for Measured {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Side(side) => write!(f, "side {}", side + 1),
            Self::Diagonal(from, to) => write!(f, "the diagonal from corner {} to corner {}", from + 1, to + 1),
            Self::Corner(corner) => write!(f, "the turn at corner {}", corner + 1),
            Self::Offset(corner) => write!(f, "the offset of corner {}", corner + 1),
            Self::Along(corner) => write!(f, "the distance of corner {} along its line", corner + 1),
        }
    }
}

impl fmt::Display for Off {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::By(length) => f.write_str(format(length.abs(), LengthStyle::default()).unmarked()),
            Self::Turned(angle) => write!(f, "{:.1}°", angle.to_degrees().abs()),
        }
    }
}

impl fmt::Display for Suspect {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} (by {})", self.measured, self.off)
    }
}

impl fmt::Display for Verdict {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.suspects.as_slice() {
            [] => Ok(()),
            [one] => write!(f, "{} disagrees with the rest by {}; measure it again", one.measured, one.off),
            several => {
                let names: Vec<_> = several.iter().map(ToString::to_string).collect();
                let another = if self.may_be_another { " or, less likely, another one" } else { "" };
                write!(f, "one of these disagrees with the rest: {}{another}; measure them again", names.join(", "))?;
                match &self.would_tell {
                    Some(measured) => write!(f, ", or measure {measured}, which tells them apart"),
                    None => Ok(()),
                }
            }
        }
    }
}

impl fmt::Display for Unfixed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Unsound => write!(f, "an outline takes three corners or more, and measurements between them"),
            Self::Contradicted(odd) => {
                write!(f, "{} contradicts the rest by {}; measure it again", odd.measured, odd.off)
            }
            Self::Crossed(problem) => write!(f, "{problem} in the outline that fits best; measure these again"),
            Self::Restless => write!(f, "the measurements contradict each other too far for any outline"),
            Self::Loose { corner, would_fix } => {
                write!(f, "corner {} is not fixed yet", corner + 1)?;
                let names: Vec<_> = would_fix.iter().take(3).map(ToString::to_string).collect();
                if names.is_empty() { Ok(()) } else { write!(f, "; measure {}", names.join(" or ")) }
            }
        }
    }
}
