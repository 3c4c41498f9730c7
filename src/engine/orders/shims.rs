//! Shims as they are sold: flat ones of a few thicknesses, laid on one another.

use super::needs::{A_TENTH, Needed, Section, told};
use crate::engine::describe::counted;
use crate::engine::figure::{Figure, Known, Need};
use crate::engine::job::Job;
use crate::engine::sources::Source;
use crate::engine::survey::{LevelPlan, level_plan};
use crate::engine::take::Units;
use crate::engine::units::Length;
use crate::engine::units::tape::{LengthStyle, ShownUnit, format};

/// A sixteenth: what shims are counted in.
const SIXTEENTH: Length = Length::sixty_fourths(4);

/// How thick flat shims are, in sixteenths, the thickest first: 1/4, 1/8 and 1/16 in (common
/// practice, no source).
const SOLD: [i64; 3] = [4, 2, 1];

/// How many of each thickness every station of a plan takes together, each brought up to the
/// next sixteenth with the fewest; those that none is needed of are left out.
pub fn flat_shims(plan: &LevelPlan) -> Vec<(Length, usize)> {
    let mut counts = SOLD.map(|sixteenths| (SIXTEENTH * sixteenths, 0));
    for shim in plan.each_shim() {
        let mut left = shim.up_to(SIXTEENTH);
        for (thick, count) in &mut counts {
            let of_it = left.to_nm() / thick.to_nm();
            left = left - *thick * of_it;
            *count += usize::try_from(of_it).unwrap_or(0);
        }
    }
    counts.into_iter().filter(|(_, count)| *count > 0).collect()
}

/// A line for each thickness that is needed: none where the plane is not reached, since another one
/// takes other shims.
pub(super) fn shims(job: &Job, units: Units, open: &mut Vec<String>) -> Vec<Needed> {
    let known = level_plan(job, units);
    let Some(Known { value: plan, assumed, .. }) = known.as_known() else {
        if let Figure::Missing(needs) = &known {
            let again: Vec<_> =
                needs.iter().filter(|need| matches!(need, Need::LevelsAgain | Need::PlaneAgain)).collect();
            open.extend(again.into_iter().map(|need| told("Shims", &[*need])));
        }
        return Vec::new();
    };
    let above: Vec<_> = plan.above().map(|station| station.name.as_str()).collect();
    if !above.is_empty() {
        open.push(format!(
            "Shims: above the plane, and nothing is planed off: {}. Bring joists to a higher plane, or have an engineer look.",
            above.join("; ")
        ));
        return Vec::new();
    }
    let places = plan.each_shim().count();
    let from = format!(
        "{} of {} stations; the thickest {}, all together {}",
        places,
        plan.stations.len(),
        units.length(plan.thickest().up_to(SIXTEENTH)),
        units.length(plan.shims())
    );
    let line = |(thick, count): (Length, usize)| {
        // In inches, whatever the phone shows: prices and stock know a line by its name.
        let inches = format(thick, LengthStyle { unit: ShownUnit::Inches, ..LengthStyle::default() });
        let name = format!("Flat shims, {} thick", inches.text);
        Needed::counted(Section::Framing, name, count, "shim")
            .because(from.clone(), &[Source::Shims])
            .assuming(assumed)
            .with_waste(A_TENTH)
    };
    flat_shims(plan).into_iter().map(line).collect()
}

/// The same in one line of words: "3 of 1/4 in, 1 of 1/8 in".
pub fn in_words(plan: &LevelPlan, units: Units) -> Option<String> {
    let flat: Vec<_> = flat_shims(plan);
    let each = flat.iter().map(|(thick, count)| format!("{} of {}", counted(*count, "shim"), units.length(*thick)));
    (!flat.is_empty()).then(|| each.collect::<Vec<_>>().join(", "))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::survey::Station;
    use crate::engine::survey::level_plan::Plane;

    /// A plan whose stations take so many sixty-fourths.
    fn plan(sixty_fourths: &[i32]) -> LevelPlan {
        let stations = sixty_fourths.iter().map(|count| Station::that_takes(Length::sixty_fourths(*count))).collect();
        let zero = Length::ZERO;
        LevelPlan { plane: Plane::HighJoist, stations, out_of_level: zero, slope: zero, flatness: Vec::new() }
    }

    fn sixteenths(plan: &LevelPlan) -> Vec<(i64, usize)> {
        flat_shims(plan).into_iter().map(|(thick, count)| (thick.to_nm() / SIXTEENTH.to_nm(), count)).collect()
    }

    /// Computed by hand: 7/16 is 1/4, 1/8 and 1/16.
    #[test]
    fn a_station_takes_the_fewest_flat_shims_that_reach_it() {
        assert_eq!(sixteenths(&plan(&[28])), [(4, 1), (2, 1), (1, 1)]);
        assert_eq!(sixteenths(&plan(&[16, 32, -8, 0])), [(4, 3)]);
    }

    #[test]
    fn what_is_over_a_sixteenth_takes_the_next() {
        assert_eq!(sixteenths(&plan(&[3])), [(1, 1)]);
        assert_eq!(sixteenths(&plan(&[4])), [(1, 1)]);
        assert_eq!(sixteenths(&plan(&[5])), [(2, 1)]);
        assert_eq!(sixteenths(&plan(&[0, -1])), []);
    }
}
