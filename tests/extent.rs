//! How far wet wood goes: kriging held to another program, and to laws.
#![allow(clippy::indexing_slicing, clippy::panic, clippy::unwrap_used, reason = "a test fails by panicking")]

mod desk;
#[path = "extent/doubtful.rs"]
mod doubtful;
#[path = "extent/reach.rs"]
mod reach;

use desk::{Desk, length, percent};
use duckboard::engine::air::Air;
use duckboard::engine::air::mould::{Climate, MouldIndex, Sensitivity, days_until_seen, index_after};
use duckboard::engine::entry::EntryId;
use duckboard::engine::extent::kriging::Kriging;
use duckboard::engine::extent::variogram::{Sample, Variogram};
use duckboard::engine::extent::{Extent, FROM_END, Group, Untold};
use duckboard::engine::figure::{Figure, Known, Need};
use duckboard::engine::geometry::Turn;
use duckboard::engine::job::Fact;
use duckboard::engine::moisture::{Material, Meter, Reading, Sensing, Shown, Species, Wood};
use duckboard::engine::place::{Element, JoistNumber, Place, Position};
use duckboard::engine::sources::Mark;
use duckboard::engine::survey::Run;
use duckboard::engine::units::{Length, RelativeHumidity, Temperature};
use proptest::prelude::*;
use serde::Deserialize;

#[derive(Deserialize)]
struct Fields {
    fields: Vec<RandomField>,
}

#[derive(Deserialize)]
struct RandomField {
    nugget: f64,
    sill: f64,
    range: f64,
    samples: Vec<[f64; 3]>,
    places: Vec<[f64; 4]>,
}

fn sample([x, y, value]: [f64; 3]) -> Sample {
    Sample { at: [x, y], value, unsure: 0.0 }
}

/// Fixture: PyKrige, see tests/oracles/kriging.py; mark X.
#[test]
fn kriging_guesses_what_another_program_guesses() {
    let fields: Fields = serde_json::from_str(include_str!("fixtures/kriging.json")).unwrap();
    for RandomField { nugget, sill, range, samples, places } in fields.fields {
        let variogram = Variogram { nugget, sill, range };
        let kriging = Kriging::new(samples.into_iter().map(sample).collect(), variogram).unwrap();
        for [x, y, value, variance] in places {
            let asked = kriging.ask([x, y]);
            assert!((asked.value - value).abs() < 1e-6, "{} {value}", asked.value);
            // That program's variance is of a reading there, which has the nugget too.
            assert!((asked.variance + nugget - variance).abs() < 1e-6, "{} {variance}", asked.variance);
        }
    }
}

/// Fixture: scipy's integrator, see tests/oracles/mould.py; mark X.
#[test]
fn mold_grows_as_another_integrator_has_it() {
    #[derive(Deserialize)]
    struct Mould {
        rows: Vec<(String, i32, u16, f64)>,
    }
    let mould: Mould = serde_json::from_str(include_str!("fixtures/mould.json")).unwrap();
    for (class, celsius, humidity, after) in mould.rows {
        let sensitivity = match class.as_str() {
            "vs" => Sensitivity::Very,
            "s" => Sensitivity::Sensitive,
            "mr" => Sensitivity::Medium,
            _ => Sensitivity::Resistant,
        };
        let climate = Climate::new(Temperature::celsius(celsius), RelativeHumidity::percent(humidity), sensitivity);
        let hourly = (0..120 * 24).fold(MouldIndex::default(), |index, _| index.after_an_hour(&climate)).get();
        assert!((hourly - after).abs() < 0.02, "{class} {celsius} {humidity}: {hourly} {after}");
        // The closed form says when it comes to what it came to, unless it is at its end.
        if after > 0.0 && after < climate.highest() - 0.05 {
            let days = climate.days_to(after).unwrap();
            assert!((days - 120.0).abs() < 0.5, "{class} {celsius} {humidity}: {days} days");
        }
    }
}

#[test]
fn mold_falls_back_in_dry_spells_and_never_below_nothing() {
    let damp = Climate::new(Temperature::celsius(20), RelativeHumidity::percent(97), Sensitivity::Very);
    let dry = Climate::new(Temperature::celsius(20), RelativeHumidity::percent(50), Sensitivity::Very);
    let grown = (0..240).fold(MouldIndex::default(), |index, _| index.after_an_hour(&damp));
    let hours = |count: usize| (0..count).fold(grown, |index, _| index.after_an_hour(&dry)).get();
    assert!(hours(6) < grown.get() && (hours(6) - hours(24)).abs() < 1e-12 && hours(48) < hours(24));
    assert!((0..50_000).fold(grown, |index, _| index.after_an_hour(&dry)).get() == 0.0);
    assert_eq!(dry.days_to(1.0), None);
}

#[test]
fn mold_over_visits_is_the_same_as_hour_by_hour() {
    let air = |percent| Air { temperature: Temperature::celsius(18), humidity: RelativeHumidity::percent(percent) };
    let index = index_after(&[(240, air(95)), (30, air(60)), (100, air(92))]).get();
    let hourly = [(240, 95), (30, 60), (100, 92)].into_iter().fold(MouldIndex::default(), |index, (hours, percent)| {
        let climate =
            Climate::new(Temperature::celsius(18), RelativeHumidity::percent(percent), Sensitivity::Sensitive);
        (0..hours).fold(index, |index, _| index.after_an_hour(&climate))
    });
    assert_eq!(index, hourly.get());
    assert!(index > 0.0);
    let days = days_until_seen(Temperature::celsius(20), air(60));
    assert_eq!((days.value, days.why.mark()), (None, Some(Mark::Secondary)));
}

fn samples() -> impl Strategy<Value = Vec<Sample>> {
    let sample = (0.0..20.0_f64, 0.0..14.0_f64, 8.0..30.0_f64).prop_map(|(x, y, value)| Sample {
        at: [x, y],
        value,
        unsure: 0.0,
    });
    prop::collection::vec(sample, 6..24)
}

proptest! {
    #[test]
    fn where_readings_lie_and_in_which_order_they_come_changes_no_guess(
        samples in samples(), at in (0.0..20.0_f64, 0.0..14.0_f64), by in (-9.0..9.0_f64, -9.0..9.0_f64),
    ) {
        let variogram = Variogram { nugget: 1.5, sill: 9.0, range: 8.0 };
        let asked = Kriging::new(samples.clone(), variogram).unwrap().ask([at.0, at.1]);
        let moved = samples.iter().rev().map(|it| Sample { at: [it.at[0] + by.0, it.at[1] + by.1], ..*it });
        let moved = Kriging::new(moved.collect(), variogram).unwrap().ask([at.0 + by.0, at.1 + by.1]);
        prop_assert!((asked.value - moved.value).abs() < 1e-6 && (asked.variance - moved.variance).abs() < 1e-6);
    }

    #[test]
    fn readings_that_all_agree_say_the_same_everywhere(samples in samples(), at in (0.0..20.0_f64, 0.0..14.0_f64)) {
        let alike: Vec<_> = samples.into_iter().map(|sample| Sample { value: 17.0, ..sample }).collect();
        let kriging = Kriging::new(alike.clone(), Variogram { nugget: 1.0, sill: 9.0, range: 6.0 }).unwrap();
        prop_assert!((kriging.ask([at.0, at.1]).value - 17.0).abs() < 1e-9);
    }

    #[test]
    fn one_reading_more_never_makes_a_place_less_sure(samples in samples(), at in (0.0..20.0_f64, 0.0..14.0_f64)) {
        let variogram = Variogram { nugget: 1.0, sill: 9.0, range: 6.0 };
        let mut fewer = samples.clone();
        fewer.pop();
        let before = Kriging::new(fewer, variogram).unwrap().ask([at.0, at.1]);
        let after = Kriging::new(samples, variogram).unwrap().ask([at.0, at.1]);
        prop_assert!(after.variance <= before.variance + 1e-9);
    }
}

/// An invented room of 16 × 12 ft on joists 16 in apart, and readings in it.
struct Site {
    desk: Desk,
}

impl Site {
    fn new() -> Self {
        let mut desk = Desk::new();
        let sides = [("16'", Turn::Right), ("12'", Turn::Right), ("16'", Turn::Right), ("12'", Turn::Right)];
        let (room, _) = desk.room(&sides);
        desk.joists(room, Run::AcrossFirstSide, "16", "16", 11);
        Self { desk }
    }

    fn read(&mut self, element: Element, joist: u16, along: &str, shown: &str, material: Material) -> EntryId {
        let position = Position::OnJoist { joist: JoistNumber::new(joist).unwrap(), along: Some(length(along)) };
        let place = self.desk.log(Place { element, position, face: None, height: None, chalk: None });
        let wood = Wood { material, species: Some(Species::DouglasFir) };
        let shown = Shown::Percent(percent(shown));
        let meter = Some(self.desk.pins());
        self.desk.log(Reading { meter, ..Reading::new(place, shown, wood) })
    }

    fn joist(&mut self, joist: u16, along: &str, shown: &str) -> EntryId {
        self.read(Element::Joist, joist, along, shown, Material::Solid)
    }

    /// Wet about joist 3, 3 ft along; dry elsewhere.
    fn one_wet_corner() -> Self {
        let mut site = Self::new();
        for (joist, along, shown) in [
            (2, "2'", "24"),
            (3, "3'", "27"),
            (4, "2'", "25"),
            (3, "5'", "20"),
            (6, "3'", "16"),
            (6, "8'", "12"),
            (9, "2'", "12"),
            (10, "6'", "12"),
            (9, "10'", "11"),
            (2, "10'", "13"),
            (2, "6'", "14"),
            (6, "11'", "12"),
            (11, "2'", "12"),
            (11, "9'", "12"),
        ] {
            site.joist(joist, along, shown);
        }
        site
    }

    fn extent(&self, group: Group) -> Known<Extent> {
        match Extent::of(self.desk.job(), group) {
            Figure::Known(known) => known,
            Figure::Missing(needs) => panic!("{needs:?}"),
        }
    }
}

fn known_of(site: &Site) -> Known<Extent> {
    site.extent(Group::Framing)
}

#[test]
fn wet_wood_is_drawn_out_between_its_readings_with_a_range() {
    let known = Site::one_wet_corner().extent(Group::Framing);
    let wet = known.value.wet.unwrap();
    assert!(wet.at_least <= wet.area && wet.area <= wet.at_most);
    let feet = wet.area.to_square_feet();
    assert!((6.0..60.0).contains(&feet), "{feet} of 192 sq ft");
    let opening = wet.opening.unwrap();
    let centers: Vec<_> = (1..=11).map(|joist| Length::inches(16 * joist)).collect();
    assert!(centers.contains(&opening.most().x), "{opening:?}");
    assert!(opening.least().x < centers[0], "no joist lies before the first: it stays where the wet ends");
    assert!(known.doubts.is_empty(), "{:?}", known.doubts);
}

#[test]
fn the_next_reading_is_where_wet_ends_and_not_where_that_is_known() {
    let known = Site::one_wet_corner().extent(Group::Framing);
    let next = known.value.next.unwrap();
    let nearest = known.value.spots.iter().map(|spot| (spot.at - next.at).length()).min().unwrap();
    assert!(nearest >= Length::inches(12), "no place is read twice: {next:?}");
    assert!(next.joist.get() <= 8, "the far dry end is settled: {next:?}");
}

#[test]
fn a_stated_limit_moves_the_edge() {
    let mut site = Site::one_wet_corner();
    let before = site.extent(Group::Framing).value.wet.unwrap().area;
    site.desk.log(Fact::FramingLimit(percent("15")));
    assert!(site.extent(Group::Framing).value.wet.unwrap().area > before);
}

#[test]
fn fewer_than_six_readings_are_weighed_by_distance_and_that_is_said() {
    let mut site = Site::new();
    site.joist(3, "3'", "25");
    site.joist(4, "4'", "22");
    let known = site.extent(Group::Framing);
    assert!(known.doubts[0].contains("2 of the 6"), "{:?}", known.doubts);
    assert_eq!(known.value.wet, Err(Untold::TooFew), "no area without knowing how readings go together");
    // Where most is unread.
    assert!(known.value.next.unwrap().joist.get() >= 8, "{:?}", known.value.next);
}

/// Whatever a pinless meter shows later, it is no percentage of the same wood.
#[test]
fn what_is_relative_takes_no_number_off_the_map() {
    let mut site = Site::one_wet_corner();
    let before = known_of(&site).value.wet;
    let wet: Vec<_> = site.desk.job().now.readings().values().take(4).map(|reading| reading.value.place).collect();
    site.desk.visit("by plate");
    for place in wet {
        let wood = Wood { material: Material::Solid, species: Some(Species::DouglasFir) };
        let meter = site.desk.pins();
        let pins = site.desk.job().now.meters().get(&meter).unwrap().value.clone();
        let plate = site.desk.log(Meter { sensing: Sensing::Pinless, ..pins });
        let shown = Shown::Percent(percent("14"));
        site.desk.log(Reading { meter: Some(plate), ..Reading::new(place, shown, wood) });
    }
    assert_eq!(known_of(&site).value.wet, before);
}

#[test]
fn what_does_not_mix_is_kept_apart_and_what_is_relative_is_left_out() {
    let mut site = Site::one_wet_corner();
    site.read(Element::SubfloorBelow, 3, "3'", "30", Material::Solid);
    site.read(Element::SubfloorBelow, 4, "3'", "21", Material::Osb);
    assert_eq!(site.extent(Group::Framing).value.spots.len(), 14);
    let below = site.extent(Group::Underside);
    assert_eq!(below.value.spots.len(), 1);
    assert!(below.doubts.iter().any(|doubt| doubt.contains("relative are left out: 1")), "{:?}", below.doubts);
    let Figure::Missing(needs) = Extent::of(site.desk.job(), Group::Top) else { panic!("nothing was read there") };
    assert_eq!(needs, [Need::Reading]);
}

/// Two readings over the limit stand for the floor that lies nearest to them, whatever
/// their neighbors say.
#[test]
fn at_most_is_never_less_than_what_readings_over_the_limit_stand_for() {
    let mut site = Site::new();
    for (joist, along, shown) in [
        (2, "2'", "12"),
        (2, "10'", "12"),
        (5, "6'", "20.6"),
        (6, "6'", "12"),
        (8, "2'", "12"),
        (8, "10'", "24.8"),
        (10, "6'", "12"),
        (11, "2'", "12"),
        (11, "10'", "12"),
        (2, "6'", "12"),
        (5, "11'", "12"),
        (5, "1'", "12"),
    ] {
        site.joist(joist, along, shown);
    }
    let known = site.extent(Group::Framing).value;
    let is_over = |at| {
        let nearest = known.spots.iter().min_by_key(|spot| (spot.at - at).length()).unwrap();
        nearest.corrected.corrected.bound() > known.limit
    };
    let cells = known.grid.floor().filter(|cell| is_over(cell.at)).count() as f64;
    let stand_for = 192.0 * cells / known.grid.floor().count() as f64;
    let wet = known.wet.unwrap();
    assert!(stand_for > 20.0 && wet.at_most.to_square_feet() >= stand_for - 1e-6, "{wet:?} {stand_for}");
    assert!(wet.at_least <= wet.area && wet.area <= wet.at_most);
}

/// Whatever the readings: about is the sum of the cells' chances, between the two ends.
#[test]
fn about_is_the_sum_of_the_chances() {
    for limit in ["13", "19", "26"] {
        let mut site = Site::one_wet_corner();
        site.desk.log(Fact::FramingLimit(percent(limit)));
        let known = site.extent(Group::Framing).value;
        let (sum, count) = known.grid.floor().fold((0.0, 0.0), |(sum, count), cell| (sum + cell.chance, count + 1.0));
        let wet = known.wet.unwrap();
        assert!((wet.area.to_square_feet() - 192.0 * sum / count).abs() < 1e-6, "{limit}");
        assert!(wet.at_least <= wet.area && wet.area <= wet.at_most && wet.at_most.to_square_feet() <= 192.0 + 1e-6);
        assert!(known.grid.floor().all(|cell| (0.0..=1.0).contains(&cell.chance)));
    }
}

/// Six dry readings do not say that the rest is dry.
#[test]
fn dry_readings_leave_room_for_wet_wood_between_them() {
    let mut site = Site::new();
    for (joist, along) in [(2, "3'"), (6, "3'"), (10, "3'"), (2, "9'"), (6, "9'"), (10, "9'")] {
        site.joist(joist, along, "12");
    }
    let wet = site.extent(Group::Framing).value.wet.unwrap();
    assert_eq!(wet.at_least.to_square_feet().round(), 0.0);
    assert!(wet.at_most.to_square_feet() > 10.0, "{wet:?}");
    assert_eq!(wet.opening, None, "nothing is offered to be cut out");
}

#[test]
fn the_same_readings_give_the_same_map() {
    let [one, other] = [0, 1].map(|_| Site::one_wet_corner().extent(Group::Framing).value);
    assert_eq!((one.grid, one.wet, one.next), (other.grid, other.wet, other.next));
}

#[test]
fn readings_without_a_position_never_make_a_map() {
    let mut site = Site::new();
    for joist in 1..=8 {
        let position = Position::OnJoist { joist: JoistNumber::new(joist).unwrap(), along: None };
        let place = Place { element: Element::Joist, position, face: None, height: None, chalk: None };
        let place = site.desk.log(place);
        let wood = Wood { material: Material::Solid, species: None };
        let shown = Shown::Percent(percent("25"));
        site.desk.log(Reading::new(place, shown, wood));
    }
    let Figure::Missing(needs) = Extent::of(site.desk.job(), Group::Framing) else { panic!("a map of nothing") };
    assert_eq!(needs, [Need::ReadingPlace]);
    // Five that are placed are weighed by distance, and the eight are told of.
    for (joist, along) in [(2, "3'"), (6, "3'"), (10, "3'"), (2, "9'"), (6, "9'")] {
        site.joist(joist, along, "12");
    }
    let known = site.extent(Group::Framing);
    assert_eq!((known.value.spots.len(), known.value.wet), (5, Err(Untold::TooFew)));
    assert!(
        known.doubts.iter().any(|doubt| doubt.contains("nowhere on the plan are left out: 8")),
        "{:?}",
        known.doubts
    );
    site.joist(10, "9'", "12");
    assert!(site.extent(Group::Framing).value.wet.is_ok(), "from six on");
}

/// Of one visit the wetter, where they are farther apart than the 2 % that a meter can be off;
/// of a later visit the later, whatever was before.
#[test]
fn of_two_readings_of_a_place_that_contradict_each_other_the_map_shows_the_wetter() {
    for (shown, then, stands) in
        [("30", "12", "30"), ("14.1", "12", "14.1"), ("14", "12", "12"), ("12", "30", "30"), ("3.9", "12", "12")]
    {
        let mut site = Site::one_wet_corner();
        site.desk.visit("one");
        let first = site.joist(7, "5'", shown);
        let reading = site.desk.job().now.readings().get(&first).unwrap().value.clone();
        let with = |shown: &str| Reading { shown: Shown::Percent(percent(shown)), ..reading.clone() };
        site.desk.log(with(then));
        let of_place = |site: &Site| {
            let is_it = |id: &EntryId| site.desk.job().now.readings().get(id).unwrap().value.place == reading.place;
            let known = site.extent(Group::Framing).value;
            known.spots.iter().find(|spot| is_it(&spot.reading)).unwrap().corrected.corrected.bound()
        };
        assert_eq!(of_place(&site), percent(stands).value, "{shown} {then}");
        site.desk.visit("two");
        let at = desk::stamp().at + chrono::TimeDelta::days(7);
        site.desk.pen.stamp_from(desk::stamp_of(at, site.desk.pen.visit()));
        site.desk.log(with("11"));
        assert_eq!(of_place(&site), percent("11").value, "{shown} {then}");
    }
}

/// A reading past the scale is at least that wet: no number, and never less wet than one.
#[test]
fn past_the_meters_scale_is_at_least_that_wet_on_the_map() {
    let with = |shown: Shown| {
        let mut site = Site::new();
        let wood = Wood { material: Material::Solid, species: Some(Species::DouglasFir) };
        for (joist, along) in [(2, "3'"), (10, "3'"), (2, "9'"), (6, "9'"), (10, "9'")] {
            site.joist(joist, along, "12");
        }
        let place = site.desk.log(desk::spot(6, "3'"));
        let meter = Some(site.desk.pins());
        site.desk.log(Reading { meter, ..Reading::new(place, shown, wood) });
        site.extent(Group::Framing).value
    };
    let (past, number) = (with(Shown::OverMaximum), with(Shown::Percent(percent("28"))));
    assert!(
        past.spots.iter().any(|spot| spot.corrected.corrected.is_over())
            && number.spots.iter().all(|spot| !spot.corrected.corrected.is_over())
    );
    assert!(past.wet.unwrap().area >= number.wet.unwrap().area);
    assert!(past.wet.unwrap().at_most >= number.wet.unwrap().at_most);
}

/// In rooms of many sizes, read anywhere: a foot from either end, a foot from what was read.
#[test]
fn the_next_reading_never_lies_at_a_joists_end_nor_where_one_was_taken() {
    for (at, readings) in [1, 4, 6, 9].into_iter().enumerate() {
        let mut site = Site::new();
        for n in 0..readings {
            let along = format!("{}", 9 + (n * 41 + at as u16 * 17) % 126);
            site.joist(1 + (n * 4) % 11, &along, ["12", "21", "15"][usize::from(n) % 3]);
        }
        let known = site.extent(Group::Framing).value;
        let next = known.next.unwrap();
        assert!((FROM_END..=Length::feet(12) - FROM_END).contains(&next.along), "{readings}: {next:?}");
        assert_eq!(next.along, next.along.to_nearest(Length::FOOT), "what is told is what was looked at");
        assert!(known.spots.iter().all(|spot| (spot.at - next.at).length() >= Length::feet(1)), "{readings}: {next:?}");
    }
}

#[test]
fn a_room_that_is_not_measured_is_said_to_be_taken_from_its_readings() {
    let mut desk = Desk::new();
    let (room, _) = desk.room(&[("16'", Turn::Right)]);
    desk.joists(room, Run::AcrossFirstSide, "16", "16", 11);
    let mut site = Site { desk };
    for (joist, along) in [(2, "3'"), (10, "3'"), (2, "9'"), (6, "9'"), (10, "9'"), (6, "3'")] {
        site.joist(joist, along, "21");
    }
    let known = site.extent(Group::Framing);
    assert!(known.assumed.iter().any(|it| it.contains("not measured") && it.contains("2 ft around")), "{known:?}");
    assert!(Site::one_wet_corner().extent(Group::Framing).assumed.is_empty());
}
