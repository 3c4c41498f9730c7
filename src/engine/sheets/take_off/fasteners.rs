//! Nails or screws, by the spacing at edges and between.

use super::lines::Line;
#[cfg(doc)]
use crate::engine::sources::Source;
use crate::engine::units::Length;

/// From one fastener to the next where a sheet ends, in sixteenths ([`Source::FastenerSchedule`]).
const AT_EDGES: usize = 6 * 16;
/// On joists in between.
const IN_THE_FIELD: usize = 12 * 16;
/// From an edge to the first one ([`Source::EdgeDistance`]).
const FROM_THE_EDGE: i32 = 6;

/// The rule in words, and what to add ([`Source::FastenerWaste`]).
pub const RULE: &str =
    "Every 6 in at ends and on blocks, 12 in on joists between, 3/8 in from edges; add a tenth for waste.";

/// How many fasteners, and of what size.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Fasteners {
    /// How many.
    pub count: usize,
    /// What the schedule names for sheets so thick.
    pub size: &'static str,
}

impl Fasteners {
    pub(super) fn along(lines: &[Line], thickness: Option<Length>) -> Self {
        Self { count: lines.iter().map(|line| on(*line)).sum(), size: size(thickness) }
    }
}

/// How many one line takes.
fn on(line: Line) -> usize {
    let spaces = |length: i32, spacing: usize| usize::try_from(length).unwrap_or(0).div_ceil(spacing);
    match line {
        Line::End(length) => spaces(length - 2 * FROM_THE_EDGE, AT_EDGES) + 1,
        Line::Inner(length) => spaces(length - 2 * FROM_THE_EDGE, IN_THE_FIELD) + 1,
        // The joists at its ends have theirs.
        Line::Open(bay) => spaces(bay.to - bay.from, AT_EDGES).saturating_sub(1),
        Line::Tongued(_) => 0,
    }
}

/// By caliper: sheets of 3/4 in by name measure up to 0.781 in, those of 1 in up to 5 %
/// more than that (PS 1-19, as quoted on a public page [P]). Source:
/// [`Source::FastenerSchedule`].
fn size(thickness: Option<Length>) -> &'static str {
    match thickness {
        None => "6d deformed or 8d common up to 3/4 in thick, 8d above",
        Some(thickness) if thickness <= Length::sixty_fourths(50) => "6d deformed or 8d common",
        Some(thickness) if thickness <= Length::sixty_fourths(68) => "8d common or deformed",
        Some(_) => "10d common or 8d deformed",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A sheet of 4 × 8 ft, tongue and groove, 3/8 in from edges, 6 in at ends and 12 in
    /// between: 53, 43, 38 and 33 on joists 12, 16, 19.2 and 24 in apart (computed).
    #[test]
    fn a_sheet_takes_what_the_schedule_says() {
        for (inner, count) in [(7, 53), (5, 43), (4, 38), (3, 33)] {
            let mut lines = vec![Line::End(768), Line::End(768)];
            lines.extend(std::iter::repeat_n(Line::Inner(768), inner));
            assert_eq!(Fasteners::along(&lines, None).count, count, "{inner} joists between the ends");
        }
    }

    #[test]
    fn sizes_go_by_thickness() {
        let of = |sixty_fourths| size(Some(Length::sixty_fourths(sixty_fourths)));
        assert_eq!(of(46), "6d deformed or 8d common");
        assert_eq!(of(64), "8d common or deformed");
        assert_eq!(of(72), "10d common or 8d deformed");
    }
}
