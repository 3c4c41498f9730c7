//! How far apart what carries a floor stands: joists, and beyond the outer ones the walls.

use super::{Floor, Framing};
use crate::engine::geometry::Rect;
use crate::engine::place::JoistNumber;
use crate::engine::units::Length;

impl Floor {
    /// From the first joist's center back to the farthest wall, and from the last one's on.
    /// None without joists or an outline.
    fn wall_bays(&self) -> Option<(Length, Length)> {
        let joists = self.joists.as_ref()?;
        let corners = self.outline.as_ref().ok()?.corners().iter();
        let across = corners.map(|corner| joists.run().across(*corner));
        let (least, most) = (across.clone().min()?, across.max()?);
        let (first, last) = outer(joists);
        Some(((first - least).max(Length::ZERO), (most - last).max(Length::ZERO)))
    }

    /// The widest bay under what comes out: from joist to joist anywhere, and from an outer
    /// joist to the wall where something comes out there.
    pub fn widest_bay(&self) -> Option<Length> {
        let joists = self.joists.as_ref()?;
        let (first, last) = outer(joists);
        let reaches = |is_past: &dyn Fn((Length, Length)) -> bool| {
            self.whole.is_some() || self.openings.iter().any(|(_, opening)| is_past(across(joists, opening)))
        };
        let (before, beyond) = self.wall_bays().unwrap_or_default();
        let before = reaches(&|(from, _)| from < first).then_some(before);
        let beyond = reaches(&|(_, to)| to > last).then_some(beyond);
        before.into_iter().chain(beyond).chain([joists.widest_spacing()]).max()
    }

    /// How wide a strip of floor a joist carries: half of each bay beside it, by a wall too. None
    /// without joists.
    pub fn carried_by(&self, joist: JoistNumber) -> Option<Length> {
        let joists = self.joists.as_ref()?;
        let number = joist.get();
        let (before, beyond) = self.wall_bays().unwrap_or_default();
        let here = joists.center(number);
        let before = if number > 1 { here - joists.center(number - 1) } else { before };
        let beyond = if number < joists.count() { joists.center(number + 1) - here } else { beyond };
        Some((before + beyond).half())
    }

    /// The fewest bays that an opening comes to once it is cut back to joists; none where no
    /// opening comes out.
    pub fn fewest_bays(&self) -> Option<usize> {
        let joists = self.joists.as_ref()?;
        let bays = self.openings.iter().map(|(_, opening)| {
            let (from, to) = across(joists, opening);
            joists.centers().filter(|center| *center > from && *center < to).count() + 1
        });
        bays.min().filter(|_| self.whole.is_none())
    }
}

fn outer(joists: &Framing) -> (Length, Length) {
    (joists.center(1), joists.center(joists.count()))
}

fn across(joists: &Framing, opening: &Rect) -> (Length, Length) {
    let (one, other) = (joists.run().across(opening.least()), joists.run().across(opening.most()));
    (one.min(other), one.max(other))
}
