//! Drying and the decision to close: pace, days, and every condition.
#![allow(clippy::indexing_slicing, clippy::panic, clippy::unwrap_used, reason = "a test fails by panicking")]

#[path = "closing/decision.rs"]
mod decision;
mod desk;
#[path = "under/house.rs"]
mod house;

use desk::{Desk, length, percent};
use duckboard::engine::air::{AirLocation, AirReading};
use duckboard::engine::closing::{CloseIn, Decision, Limits, Verdict, close_in, verdict};
use duckboard::engine::condition::{Condition, Finding};
use duckboard::engine::drying::{Forecasts, Outlook, Still, fit, forecasts};
use duckboard::engine::entry::{EntryId, Label, Time};
use duckboard::engine::figure::{Figure, Known, Need};
use duckboard::engine::geometry::Turn;
use duckboard::engine::moisture::{Answer, Corrected, Material, Reading, Shown, Species, Stands, Wood};
use duckboard::engine::origin::Check;
use duckboard::engine::particular::{Part, list};
use duckboard::engine::place::{Element, JoistNumber, Place, Position};
use duckboard::engine::survey::Run;
use duckboard::engine::take::Units;
use duckboard::engine::units::MoistureContent;
use duckboard::engine::units::decimal::{Scale, parse_relative_humidity, parse_temperature};
use proptest::prelude::*;

fn mc(percent: f64) -> MoistureContent {
    MoistureContent::from_percent_f64(percent)
}

proptest! {
    /// Wood that dries exactly so gives its own pace back, from any readings of it.
    #[test]
    fn the_pace_of_wood_that_dries_exactly_is_found(
        end in 8.0..14.0_f64, above in 2.0..13.0_f64, pace in 0.01..0.2_f64, days in prop::collection::vec(0.5..9.0_f64, 1..5),
    ) {
        let mut day = 0.0;
        let at = |day: f64| mc(end + above * libm::exp(-pace * day));
        let mut readings = vec![(0.0, at(0.0))];
        for step in days {
            day += step;
            readings.push((day, at(day)));
        }
        let drying = fit(mc(end), &readings).unwrap();
        prop_assert!((drying.a_day() - pace).abs() < 1e-3 + 1e-3 * pace, "{} {pace}", drying.a_day());
        let target = mc(end + above / 2.0);
        let expected = libm::log(2.0) / pace;
        prop_assert!((drying.days_to(target).unwrap() - expected).abs() < 0.02 * expected + 0.01);
        prop_assert_eq!(drying.days_to(mc(end)), None, "it never gets there");
    }
}

#[test]
fn wood_that_does_not_dry_has_no_pace_and_says_why() {
    assert_eq!(fit(mc(12.0), &[(0.0, mc(20.0))]), Err(Still::TooFew));
    assert_eq!(fit(mc(12.0), &[(0.0, mc(20.0)), (0.0, mc(19.0))]), Err(Still::TooFew));
    assert_eq!(fit(mc(12.0), &[(0.0, mc(20.0)), (7.0, mc(21.0))]), Err(Still::NotDrying));
    assert_eq!(fit(mc(12.0), &[(0.0, mc(20.0)), (7.0, mc(11.0))]), Err(Still::BelowItsEnd));
    // Free water goes otherwise: only the last two count, by the days since the first.
    let drying = fit(mc(12.0), &[(0.0, mc(35.0)), (5.0, mc(24.0)), (12.0, mc(18.0))]).unwrap();
    assert!(drying.days_to(mc(18.0)).is_some_and(|days| (days - 12.0).abs() < 1e-6));
}

#[test]
fn other_air_moves_the_end_and_keeps_the_pace() {
    let drying = fit(mc(14.0), &[(0.0, mc(24.0)), (7.0, mc(20.0))]).unwrap();
    let [same, drier] = [14.0, 9.0].map(|end| drying.onwards(mc(20.0), mc(end)).unwrap().days_to(mc(16.0)).unwrap());
    assert!((same + 7.0 - drying.days_to(mc(16.0)).unwrap()).abs() < 1e-6, "the same air from the last reading on");
    assert!(drier < same);
    assert_eq!(drying.onwards(mc(20.0), mc(30.0)), None);
}

/// An invented room on joists, and two visits three weeks apart.
struct Site {
    desk: Desk,
    places: Vec<EntryId>,
}

fn time(text: &str) -> Time {
    chrono::DateTime::parse_from_rfc3339(text).unwrap()
}

impl Site {
    fn new() -> Self {
        let mut desk = Desk::new();
        let sides = [("12'", Turn::Right), ("10'", Turn::Right), ("12'", Turn::Right), ("10'", Turn::Right)];
        let (room, sides) = desk.room(&sides);
        desk.joists(room, Run::AcrossFirstSide, "16", "16", 8);
        desk.opening(sides[0], ["40", "24", "40", "48"]);
        house::make_sound(&mut desk, 8);
        desk.says(Part::House, &list::GIRDER_NEAR, "no");
        let mut site = Self { desk, places: Vec::new() };
        site.visit("2026-10-05T08:00:00-05:00");
        for joist in 1..=6 {
            let position = Position::OnJoist { joist: JoistNumber::new(joist).unwrap(), along: Some(length("3'")) };
            let place = Place { element: Element::Joist, position, face: None, height: None, chalk: None };
            let place = site.desk.log(place);
            site.places.push(place);
        }
        site
    }

    fn visit(&mut self, at: &str) {
        let stamp = duckboard::engine::entry::Stamp { at: time(at), ..desk::stamp() };
        self.desk.pen.stamp_from(stamp);
        self.desk.visit("read");
    }

    /// All places alike, one after the other.
    fn reads(&mut self, shown: [&str; 6]) {
        for (place, shown) in self.places.clone().into_iter().zip(shown) {
            self.read(place, shown, Material::Solid);
        }
    }

    fn read(&mut self, place: EntryId, shown: &str, material: Material) {
        self.read_of(place, shown, Wood { material, species: Some(Species::DouglasFir) });
    }

    fn read_of(&mut self, place: EntryId, shown: &str, wood: Wood) {
        let meter = Some(self.desk.pins());
        self.desk.log(Reading { meter, ..Reading::new(place, Shown::Percent(percent(shown)), wood) });
    }

    fn crawl_air(&mut self, warmth: &str, damp: &str) {
        let temperature = parse_temperature(warmth, Scale::Fahrenheit).unwrap();
        let humidity = parse_relative_humidity(damp).unwrap();
        self.desk.log(AirReading { location: AirLocation::Crawl, temperature, humidity });
    }

    fn answers(&mut self, answers: &[(&str, Answer)]) {
        for (of, answer) in answers {
            self.desk.log(Check { of: Label::fitted(of), answer: *answer });
        }
    }

    /// Ground moisture, found and covered.
    fn dealt_with(&mut self) {
        self.answers(&[
            ("bare_soil", Answer::Yes),
            ("damp_soil", Answer::Yes),
            ("dew_beads", Answer::Yes),
            ("cold_months", Answer::Yes),
            ("dealt_with.ground", Answer::Yes),
            ("ground_covered_now", Answer::Yes),
        ]);
    }

    /// A place on a member at a joist.
    fn place(&mut self, element: Element, joist: u16) -> EntryId {
        let position = Position::OnJoist { joist: JoistNumber::new(joist).unwrap(), along: Some(length("3'")) };
        self.desk.log(Place { element, position, face: None, height: None, chalk: None })
    }

    fn finds(&mut self, finding: Finding, place: Option<EntryId>) {
        self.desk.log(Condition { place, finding, note: None });
    }

    fn ready() -> Self {
        let mut site = Self::new();
        site.crawl_air("60", "84");
        site.reads(["22", "24", "25", "23", "21", "18"]);
        site.visit("2026-10-26T08:00:00-05:00");
        site.crawl_air("57", "64");
        site.reads(["14", "15", "15.5", "15", "14", "13"]);
        let boards = site.place(Element::SubfloorBelow, 2);
        site.read(boards, "9", Material::Solid);
        site.dealt_with();
        site
    }

    fn close_in(&self) -> Known<CloseIn> {
        close_in(self.desk.job(), Units::default())
    }

    fn decision(&self) -> Decision {
        self.close_in().value.decision
    }

    /// Each thing in the way: "what: what ends it".
    fn in_the_way(&self) -> Vec<String> {
        let conditions = self.close_in().value.conditions;
        let all = conditions.iter().flat_map(|condition| &condition.in_the_way);
        all.map(|it| format!("{}: {}", it.what, it.ends)).collect()
    }

    fn forecasts(&self) -> Forecasts {
        forecasts(self.desk.job()).as_known().unwrap().value.clone()
    }
}

#[test]
fn the_day_is_a_range_that_the_meters_error_makes() {
    let mut site = Site::new();
    site.crawl_air("60", "84");
    site.reads(["22", "27", "25", "23", "21", "18"]);
    let Figure::Missing(needs) = forecasts(site.desk.job()) else { panic!("one visit has no pace") };
    assert_eq!(needs, [Need::SecondReading]);
    site.visit("2026-10-19T08:00:00-05:00");
    site.crawl_air("57", "64");
    site.reads(["19.5", "23", "22", "23.2", "20", "17"]);
    let forecasts = site.forecasts();
    let outlook = |place: usize| forecasts.places.iter().find(|it| it.place == site.places[place]).unwrap().outlook;
    let Outlook::Between(earliest, Some(latest)) = outlook(1) else { panic!("{:?}", outlook(1)) };
    assert!(earliest < latest && earliest > time("2026-10-19T08:00:00-05:00"), "{earliest} {latest}");
    assert_eq!(outlook(5), Outlook::There);
    assert!(matches!(outlook(3), Outlook::Unknown(Still::NotDrying)), "{:?}", outlook(3));
    // Air at 64 % is as dry as over covered soil: only a dehumidifier speeds it.
    let [drier] = forecasts.other_air.as_slice() else { panic!("{:?}", forecasts.other_air) };
    assert!(drier.with.contains("dehumidifier") && drier.end < forecasts.end);
    assert!(drier.slowest.is_some_and(|day| day < latest), "{drier:?}");
}

#[test]
fn air_that_holds_wood_above_its_limit_never_gets_there() {
    let mut site = Site::new();
    site.crawl_air("60", "92");
    site.reads(["26", "27", "25", "26", "25", "25"]);
    site.visit("2026-10-19T08:00:00-05:00");
    site.crawl_air("60", "92");
    site.reads(["25", "26", "24", "25", "24", "24"]);
    assert!(site.forecasts().places.iter().all(|it| it.outlook == Outlook::Never), "{:?}", site.forecasts());
}

#[test]
fn a_reading_is_held_to_its_limit_in_words() {
    let reading = |percent: f64, over_maximum: bool, relative: bool| {
        let stands = if over_maximum { Stands::Over } else { Stands::At };
        Corrected { relative, ..Corrected::as_shown(stands(mc(percent))) }
    };
    let limit = Limits::of(Desk::new().job()).framing.at;
    let verdicts = [12.0, 17.5, 19.5, 22.0, 28.0].map(|percent| verdict(&reading(percent, false, false), limit));
    assert_eq!(verdicts, [Verdict::Dry, Verdict::Close, Verdict::Over, Verdict::Wet, Verdict::Soaked]);
    assert_eq!(verdict(&reading(22.0, true, false), limit), Verdict::Soaked);
    assert_eq!(verdict(&reading(40.0, false, true), limit), Verdict::Relative, "of no limit, however high");
}
