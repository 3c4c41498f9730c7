//! What is taken on the canvas, so that no text covers another.

use super::Spot;
use super::px::{PxBox, Stroke, Way};

/// Clear space kept around a text.
const AIR: f64 = 2.0;
/// Half the thickness of a wall's line.
const HALF_WALL: f64 = 1.5;
/// Parallel strings keep at least this much apart.
const STRING_GAP: f64 = 10.0;
/// Places for a led text are tried on a grid of this many steps each way,
const LEADER_STEPS: i32 = 14;
/// of this many pixels each.
const LEADER_STEP: f64 = 8.0;
/// What crossing a string costs, in such steps.
const CROSSING_COST: f64 = 3.0;
/// A shorter leader would not be seen as one.
const LEADER_LEAST: f64 = 14.0;

/// The canvas with what has been put on it.
#[derive(Debug, Clone)]
pub(super) struct Paper {
    sheet: PxBox,
    walls: Vec<Stroke>,
    /// The corners of a closed room.
    room: Vec<Spot>,
    texts: Vec<PxBox>,
    marks: Vec<PxBox>,
    strings: Vec<Stroke>,
    /// Ticks, witness lines and leaders: texts keep off them, strings may cross them.
    lines: Vec<Stroke>,
}

/// A place for a text away from what it names, and the line that ties it there.
#[derive(Debug, Clone, Copy)]
pub(super) struct Led {
    pub(super) area: PxBox,
    pub(super) leader: Stroke,
    /// What it costs: longer and crossing more is worse.
    pub(super) cost: f64,
}

/// Where a led text may stand.
#[derive(Debug, Clone, Copy)]
pub(super) enum Region {
    /// Outside the closed room, or anywhere if none is closed.
    Outdoors,
    /// Inside the closed room.
    Indoors,
    /// On the side that this way points to.
    Ahead(Way),
}

impl Paper {
    pub(super) const fn new(sheet: PxBox, walls: Vec<Stroke>, room: Vec<Spot>) -> Self {
        Self { sheet, walls, room, texts: Vec::new(), marks: Vec::new(), strings: Vec::new(), lines: Vec::new() }
    }

    pub(super) fn take_text(&mut self, area: PxBox) {
        self.texts.push(area);
    }

    pub(super) fn take_mark(&mut self, area: PxBox) {
        self.marks.push(area);
    }

    pub(super) fn take_string(&mut self, string: Stroke) {
        self.strings.push(string);
    }

    pub(super) fn take_line(&mut self, line: Stroke) {
        self.lines.push(line);
    }

    /// Does a text lie on no reading, cursor or other mark?
    pub(super) fn is_off_marks(&self, area: PxBox) -> bool {
        !self.marks.iter().any(|mark| mark.overlaps(area))
    }

    /// Is there room for a text, inside the walls or outside?
    pub(super) fn has_room_for(&self, area: PxBox) -> bool {
        let aired = area.grown(AIR);
        area.is_within(self.sheet)
            && !self.texts.iter().chain(&self.marks).any(|taken| taken.overlaps(aired))
            && !self.walls.iter().any(|wall| area.grown(HALF_WALL).is_hit_by(*wall))
            && !self.strings.iter().chain(&self.lines).any(|line| area.grown(1.0).is_hit_by(*line))
    }

    /// Is there room for a text outside the walls?
    pub(super) fn has_room_outside_for(&self, area: PxBox) -> bool {
        self.has_room_for(area) && !self.is_indoors(area.middle())
    }

    /// May a dimension string run here: outside the walls, off the texts and not
    /// hard by another string?
    pub(super) fn lets_string_run(&self, string: Stroke) -> bool {
        let inner = string.stretched(-1.0);
        self.lets_line_run(string)
            && string.bounds().is_within(self.sheet)
            && !self.is_indoors(string.middle())
            && !self.walls.iter().any(|wall| inner.crowds(*wall, STRING_GAP))
            && !self.strings.iter().any(|other| inner.crowds(*other, STRING_GAP))
    }

    /// May a thin line run here: off the texts and through no wall?
    pub(super) fn lets_line_run(&self, line: Stroke) -> bool {
        !self.is_walled_off(line) && self.is_off_texts(line)
    }

    /// Does a line pass through no text?
    pub(super) fn is_off_texts(&self, line: Stroke) -> bool {
        !self.texts.iter().any(|text| text.is_hit_by(line))
    }

    /// Does a line pass through a wall? Its ends may touch walls.
    pub(super) fn is_walled_off(&self, line: Stroke) -> bool {
        let inner = line.stretched(-1.0);
        self.walls.iter().any(|wall| inner.crosses(*wall))
    }

    /// How many strings a line crosses.
    pub(super) fn crossings(&self, line: Stroke) -> usize {
        self.strings.iter().filter(|string| line.crosses(**string)).count()
    }

    /// The best place near `from` but away from it for a text of the given size.
    pub(super) fn led_from(&self, from: Spot, region: Region, width: f64, height: f64) -> Option<Led> {
        let steps = || (-LEADER_STEPS..=LEADER_STEPS).map(|step| f64::from(step) * LEADER_STEP);
        let offs = steps().flat_map(|down| steps().map(move |across| (across, down)));
        let middles = offs.map(|(across, down)| Spot { x: from.x + across, y: from.y + down });
        middles
            .filter_map(|middle| self.try_led(from, region, PxBox::around(middle, width, height)))
            .min_by(|a, b| a.cost.total_cmp(&b.cost))
    }

    /// A box of the given size in the first corner of the sheet that is free, from
    /// the top right on.
    pub(super) fn free_corner(&self, width: f64, height: f64) -> Option<PxBox> {
        let inner = self.sheet.grown(-AIR);
        let (across, down) = (width / 2.0, height / 2.0);
        let xs = [inner.right - across, inner.left + across];
        let ys = [inner.top + down, inner.bottom - down];
        let corners = ys.into_iter().flat_map(|y| xs.map(|x| Spot { x, y }));
        corners.map(|middle| PxBox::around(middle, width, height)).find(|area| self.has_room_outside_for(*area))
    }

    fn try_led(&self, from: Spot, region: Region, area: PxBox) -> Option<Led> {
        let leader = Stroke::new(from, area.grown(1.0).nearest(from));
        // A leader that ends short of its text might end short of a wall between them.
        let to_text = Stroke::new(from, area.nearest(from));
        let is_in_region = match region {
            Region::Outdoors => !self.is_indoors(area.middle()),
            Region::Indoors => self.is_indoors(area.middle()),
            Region::Ahead(way) => Stroke::new(from, area.middle()).heads(way),
        };
        let fits =
            is_in_region && self.has_room_for(area) && leader.length() >= LEADER_LEAST && self.lets_line_run(to_text);
        fits.then(|| {
            let crossed = self.crossings(leader) as f64 * CROSSING_COST;
            Led { area, leader, cost: leader.length() / LEADER_STEP + crossed }
        })
    }

    /// Is a spot inside the closed room? A ray to the right passes the walls an odd
    /// number of times.
    fn is_indoors(&self, spot: Spot) -> bool {
        let ends = self.room.iter().cycle().skip(1);
        let passed = self.room.iter().zip(ends).filter(|(from, to)| {
            let level = (from.y <= spot.y) != (to.y <= spot.y);
            level && from.x + (to.x - from.x) * (spot.y - from.y) / (to.y - from.y) > spot.x
        });
        passed.count() % 2 == 1
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn spot(x: f64, y: f64) -> Spot {
        Spot { x, y }
    }

    /// A square room in the middle of a sheet of 300 by 300.
    fn paper() -> Paper {
        let room = vec![spot(100.0, 100.0), spot(200.0, 100.0), spot(200.0, 200.0), spot(100.0, 200.0)];
        let walls = (0..4).map(|n| Stroke::new(room[n], room[(n + 1) % 4])).collect();
        Paper::new(PxBox { left: 0.0, top: 0.0, right: 300.0, bottom: 300.0 }, walls, room)
    }

    #[test]
    fn a_text_keeps_off_walls_other_texts_and_the_edge() {
        let mut paper = paper();
        let free = PxBox::around(spot(150.0, 50.0), 40.0, 13.0);
        assert!(paper.has_room_outside_for(free));
        assert!(!paper.has_room_for(PxBox::around(spot(150.0, 100.0), 40.0, 13.0)), "on a wall");
        assert!(!paper.has_room_for(PxBox::around(spot(10.0, 50.0), 40.0, 13.0)), "over the edge");
        let inside = PxBox::around(spot(150.0, 150.0), 40.0, 13.0);
        assert!(paper.has_room_for(inside) && !paper.has_room_outside_for(inside));
        paper.take_text(free);
        assert!(!paper.has_room_for(PxBox::around(spot(150.0, 64.0), 40.0, 13.0)), "too near a text");
    }

    #[test]
    fn a_string_stays_outside_and_off_other_strings() {
        let mut paper = paper();
        let string = Stroke::new(spot(100.0, 80.0), spot(200.0, 80.0));
        assert!(paper.lets_string_run(string));
        assert!(!paper.lets_string_run(string.moved(Way { x: 0.0, y: 1.0 }, 40.0)), "inside the room");
        assert!(!paper.lets_string_run(Stroke::new(spot(150.0, 80.0), spot(150.0, 130.0))), "through a wall");
        paper.take_string(string);
        assert!(!paper.lets_string_run(string.moved(Way { x: 0.0, y: 1.0 }, 5.0)), "hard by another");
        assert_eq!(paper.crossings(Stroke::new(spot(150.0, 70.0), spot(150.0, 90.0))), 1);
    }

    #[test]
    fn a_led_text_lies_where_it_is_asked_to_and_its_leader_meets_no_wall() {
        let near_wall = spot(150.0, 98.0);
        let led = paper().led_from(near_wall, Region::Outdoors, 40.0, 13.0).unwrap();
        assert!(led.area.bottom < 98.0 && paper().has_room_outside_for(led.area));
        let led = paper().led_from(spot(150.0, 102.0), Region::Indoors, 40.0, 13.0).unwrap();
        assert!(led.area.top > 102.0 && !paper().has_room_outside_for(led.area));
        let left = Way { x: -1.0, y: 0.0 };
        let led = paper().led_from(near_wall, Region::Ahead(left), 40.0, 13.0).unwrap();
        assert!(led.area.middle().x < 150.0);
        assert!(paper().led_from(spot(150.0, 150.0), Region::Outdoors, 40.0, 13.0).is_none(), "walled in");
    }
}
