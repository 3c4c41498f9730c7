//! Nails or screws, by the spacing at edges and between.

use super::lines::Line;
use crate::engine::sheets::to_lay::length;
#[cfg(doc)]
use crate::engine::sources::Source;
use crate::engine::units::Length;

/// From one fastener to the next, and from an edge to the first ([`Source::FastenerSchedule`],
/// [`Source::EdgeDistance`]).
const SPACING: Spacing =
    Spacing { edge: Length::inches(6), field: Length::inches(12), from_edges: Length::sixty_fourths(24) };

/// How far fasteners stand apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Spacing {
    /// Where a sheet ends, and on blocks.
    pub edge: Length,
    /// On joists in between.
    pub field: Length,
    /// From an edge to the first one.
    pub from_edges: Length,
}

impl Spacing {
    /// How many a sheet takes along an end so wide.
    pub fn on_an_end(self, width: Length) -> usize {
        spaces(width - self.from_edges * 2, self.edge) + 1
    }

    /// How many along a joist in between.
    pub fn on_a_joist(self, width: Length) -> usize {
        spaces(width - self.from_edges * 2, self.field) + 1
    }
}

/// Steps no longer than `most` that go over a length.
fn spaces(length: Length, most: Length) -> usize {
    let (length, most) = (length.to_nm().max(0), most.to_nm().max(1));
    usize::try_from((length + most - 1) / most).unwrap_or(0)
}

/// The rule in words, what to add ([`Source::FastenerWaste`]), and what may touch treated
/// wood ([`Source::Corrosion`]).
pub const RULE: &str = "Every 6 in at ends and on blocks, 12 in on joists between, 3/8 in from edges; add a tenth for \
                        waste. Into treated wood: hot-dip galvanized, stainless, silicon bronze or copper.";

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
    match line {
        Line::End(width) => SPACING.on_an_end(length(width)),
        Line::Inner(width) => SPACING.on_a_joist(length(width)),
        // The joists at its ends have theirs.
        Line::Open(bay) => spaces(length(bay.to - bay.from), SPACING.edge).saturating_sub(1),
        Line::Tongued(_) => 0,
    }
}

/// By caliper: sheets of 3/4 in by name measure up to 0.781 in, those of 1 in up to 5 %
/// more than that ([`Source::PanelThickness`]). Deformed nails are the rows of sheets that
/// are subfloor and underlayment in one; subfloor alone has common ones. Source:
/// [`Source::FastenerSchedule`].
fn size(thickness: Option<Length>) -> &'static str {
    match thickness {
        None => "8d common up to 1 in thick; deformed, 6d up to 3/4 in, where they are underlayment too",
        Some(thickness) if thickness <= Length::sixty_fourths(50) => {
            "8d common, or 6d deformed where they are underlayment too"
        }
        Some(thickness) if thickness <= Length::sixty_fourths(68) => {
            "8d common, or 8d deformed where they are underlayment too"
        }
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
        // Rows of R602.3(1) as scanned [P]: 6d deformed stands in the combination rows alone.
        for thickness in [46, 50] {
            assert_eq!(of(thickness), "8d common, or 6d deformed where they are underlayment too", "{thickness}");
        }
        for thickness in [51, 68] {
            assert_eq!(of(thickness), "8d common, or 8d deformed where they are underlayment too", "{thickness}");
        }
        assert_eq!(of(69), "10d common or 8d deformed");
        assert!(size(None).starts_with("8d common"));
    }
}
