//! Results: nothing is said of the empty job, and what is said of the sample is what a
//! pencil comes to.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::panic, reason = "tests may fail loudly")]

mod desk;

use desk::{Desk, length, spot};
use duckboard::engine::air::{AirLocation, AirReading, SurfaceReading};
use duckboard::engine::entry::{DeviceId, EntryId};
use duckboard::engine::figure::{Figure, Known, Need};
use duckboard::engine::job::{Book, Job, Record};
use duckboard::engine::moisture::{Material, Reading, Shown, Wood};
use duckboard::engine::results::{self, Answer, Said};
use duckboard::engine::sample;
use duckboard::engine::sources::{Mark, Source};
use duckboard::engine::take::Units;
use duckboard::engine::units::{MoistureContent, RelativeHumidity, Temperature, Typed};
use std::collections::BTreeSet;

fn sample_book() -> Book {
    Book::of(sample::entries(DeviceId::new(7)).into_iter().map(|entry| Record::of(entry).unwrap()))
}

fn answers(job: &Job) -> Vec<Answer> {
    results::every_answer(job, Units::default())
}

fn answer(job: &Job, name: &str) -> Figure<Said> {
    answers(job).into_iter().find(|answer| answer.name == name).unwrap_or_else(|| panic!("no answer {name}")).said
}

fn known(job: &Job, name: &str) -> Known<Said> {
    match answer(job, name) {
        Figure::Known(known) => known,
        Figure::Missing(needs) => panic!("{name} is missing {needs:?}"),
    }
}

fn said(job: &Job, name: &str) -> (String, String) {
    let said = known(job, name).value;
    (said.headline, said.line)
}

#[test]
fn names_are_unique_and_every_answer_has_a_title() {
    let answers = answers(&Job::default());
    let names: BTreeSet<_> = answers.iter().map(|answer| answer.name).collect();
    assert_eq!(names.len(), answers.len());
    assert!(answers.iter().all(|answer| !answer.title.is_empty()));
}

#[test]
fn of_the_empty_job_nothing_is_said_but_what_to_measure() {
    let needs: Vec<_> = answers(&Job::default())
        .into_iter()
        .map(|answer| match answer.said {
            Figure::Missing(needs) => (answer.name, needs),
            Figure::Known(known) => panic!("{} of nothing: {known:?}", answer.name),
        })
        .collect();
    let expected = [
        ("sheets_by_area", vec![Need::Opening]),
        ("opening_area", vec![Need::Opening]),
        ("room_area", vec![Need::RoomOutline]),
        ("old_floor", vec![Need::Layers]),
        ("agreement", vec![Need::RoomOutline]),
        ("closing_error", vec![Need::RoomOutline]),
        ("wettest", vec![Need::Reading]),
        ("crawl_emc", vec![Need::CrawlAir]),
        ("crawl_dew_point", vec![Need::CrawlAir]),
        ("outdoor_air", vec![Need::OutdoorAir, Need::CrawlAir]),
    ];
    assert_eq!(needs, expected);
}

#[test]
fn of_the_sample_everything_is_known_with_its_rule_sources_and_entries() {
    let book = sample_book();
    for Answer { name, said, .. } in answers(book.job()) {
        let Figure::Known(Known { value, why, .. }) = said else { panic!("{name}: {said:?}") };
        assert!(!value.headline.is_empty(), "{name}");
        assert!(!why.rule.is_empty() && !why.sources.is_empty() && !why.inputs.is_empty(), "{name}: {why:?}");
        assert!(!why.used.is_empty(), "{name} was made of nothing");
        assert!(why.used.iter().all(|id| book.job().now.get(*id).is_some()), "{name} names entries that stand");
    }
}

/// The sample's figures, each by hand.
mod by_hand {
    use super::*;

    #[test]
    fn areas_and_sheets() {
        let book = sample_book();
        // 4 ft × 5 ft 2 in = 48 × 62 = 2976 sq in; / 144 = 20.67 sq ft. / 32 = 0.65: 1 sheet.
        assert_eq!(said(book.job(), "opening_area").0, "20.7 sq ft");
        assert_eq!(said(book.job(), "sheets_by_area").0, "1 sheet by area");
        // An upper leg of 140.375 × 73 in and a lower one of 92.25 × 45 in:
        // 10 247.375 + 4 151.25 = 14 398.625 sq in; / 144 = 99.99 sq ft.
        assert_eq!(said(book.job(), "room_area").0, "100.0 sq ft");
    }

    #[test]
    fn the_closing_error() {
        // Down the page 73 + 45 = 118 in, and back up 118.125 in: 1/8 in over. The way round is
        // 140.375 + 73 + 48.125 + 45 + 92.25 + 118.125 = 516.875 in; / 0.125 = 4135.
        let expected = ("To 1/8\"".to_owned(), "1 in 4135 of the way round.".to_owned());
        assert_eq!(said(sample_book().job(), "closing_error"), expected);
    }

    #[test]
    fn the_wettest_wood() {
        // Of the second visit the highest shown is 19.5 % at joist 4, 8' 1" along, the wood at
        // 56 °F = 13.33 °C: two thirds of the way from the chart's column for 10 °C to that for
        // 15 °C. Rows 18 and 20 both say 2.2 and 1.2 there ([P2], FPL-GTR-6 fig. 5 digitized):
        // 2.2 - 2/3 × 1.0 = 1.53. The scale is for this wood. 19.5 + 1.53 = 21.03 %.
        let expected = ("21.0 %".to_owned(), "Joist 4, lower edge, 8' 1\" along.".to_owned());
        assert_eq!(said(sample_book().job(), "wettest"), expected);
    }

    #[test]
    fn what_the_crawl_air_leaves_in_wood() {
        // Wood Handbook eq. 4-5 ([P2]) at 57 °F = 13.889 °C and h = 0.70: W = 369.52, K = 0.81470,
        // K1 = 6.0813, K2 = 2.4188. Kh = 0.57029. Kh / (1 - Kh) = 1.3271.
        // (K1 Kh + 2 K1 K2 K²h²) / (1 + K1 Kh + K1 K2 K²h²) = 13.0357 / 9.2519 = 1.4090.
        // 1800 / 369.52 × (1.3271 + 1.4090) = 13.33 %.
        assert_eq!(said(sample_book().job(), "crawl_emc").0, "13.3 %");
    }

    #[test]
    fn where_the_airs_condense_and_which_holds_more() {
        let book = sample_book();
        // Magnus, 17.625 and 243.04 ([P2]). Crawl: ln 0.70 + 17.625 × 13.889 / 256.929 =
        // -0.35667 + 0.95276 = 0.59609; 243.04 × 0.59609 / (17.625 - 0.59609) = 8.507 °C = 47.31 °F.
        assert_eq!(said(book.job(), "crawl_dew_point").0, "47.3 °F");
        // Outdoors, 49 °F = 9.444 °C at 64 %: -0.44629 + 0.65928 = 0.21299; 2.973 °C = 37.35 °F.
        // Vapor at 610.94 × e to those: 1108.9 and 756.0 Pa, so 48.2 and 32.7 grains/lb: out holds less.
        let (headline, line) = said(book.job(), "outdoor_air");
        assert_eq!(headline, "It can, while the air outdoors is like this");
        assert!(line.starts_with("Outdoor air condenses at 37.4 °F.") && line.contains("cover the soil"), "{line}");
        let inputs = known(book.job(), "outdoor_air").why.inputs;
        for grains in ["48.2 grains/lb", "32.7 grains/lb"] {
            assert!(inputs.iter().any(|(_, value)| value.contains(grains)), "{inputs:?}");
        }
    }

    #[test]
    fn the_marks_are_those_of_the_sources() {
        let book = sample_book();
        let mark = |name| known(book.job(), name).why.mark().unwrap();
        assert_eq!(mark("sheets_by_area"), Mark::Practice);
        // The sample misses its start by 1/8 in: how that is shared out goes by accuracies from memory.
        assert_eq!(mark("room_area"), Mark::Memory);
        assert_eq!(mark("crawl_emc"), Mark::Secondary);
        assert_eq!(mark("wettest"), Mark::Secondary);
    }
}

/// A job of two visits, logged as it goes.
mod visits {
    use super::*;

    fn percent(shown: u16) -> Shown {
        Shown::Percent(Typed::new(format!("{shown} %"), MoistureContent::percent(shown)))
    }

    fn read(desk: &mut Desk, joist: u16, shown: Shown) -> EntryId {
        let place = desk.log(spot(joist, "5'"));
        let wood = Wood { material: Material::Solid, species: None };
        let meter = Some(desk.pins());
        desk.log(Reading { meter, ..Reading::new(place, shown, wood) })
    }

    fn air(desk: &mut Desk, location: AirLocation, fahrenheit: i32, humidity: u16) -> EntryId {
        let temperature = Typed::new(format!("{fahrenheit} °F"), Temperature::fahrenheit(fahrenheit));
        let humidity = Typed::new(format!("{humidity} %"), RelativeHumidity::percent(humidity));
        desk.log(AirReading { location, temperature, humidity })
    }

    fn surface(desk: &mut Desk, fahrenheit: i32) -> EntryId {
        let temperature = Typed::new(format!("{fahrenheit} °F"), Temperature::fahrenheit(fahrenheit));
        desk.log(SurfaceReading { place: None, what: desk::label("cold pipe"), temperature })
    }

    #[test]
    fn the_wettest_wood_is_that_of_the_last_visit_that_read_any() {
        let mut desk = Desk::new();
        desk.visit("one");
        read(&mut desk, 3, percent(26));
        desk.visit("two");
        assert_eq!(said(desk.job(), "wettest").0, "26.0 %");
        read(&mut desk, 4, percent(17));
        let wettest = read(&mut desk, 5, percent(19));
        read(&mut desk, 6, percent(18));
        assert_eq!(said(desk.job(), "wettest"), ("19.0 %".to_owned(), "Joist 5, lower edge, 5' 0\" along.".to_owned()));
        assert_eq!(known(desk.job(), "wettest").why.used, [wettest]);
        desk.withdraw(wettest);
        assert_eq!(said(desk.job(), "wettest").0, "18.0 %");
    }

    /// Where they are farther apart than the 2 % that a meter can be off.
    #[test]
    fn the_wettest_wood_is_that_of_readings_that_stand() {
        for (first, then, wettest) in
            [(30, 12, "30.0 %"), (15, 12, "15.0 %"), (14, 12, "13.0 %"), (90, 12, "over 60.0 %, doubted")]
        {
            let mut desk = Desk::new();
            desk.visit("one");
            read(&mut desk, 5, percent(13));
            let first = read(&mut desk, 3, percent(first));
            let reading = desk.job().now.readings().get(&first).unwrap().value.clone();
            desk.log(Reading { shown: percent(then), ..reading.clone() });
            assert_eq!(said(desk.job(), "wettest").0, wettest);
            desk.visit("two");
            desk.log(Reading { shown: percent(then), ..reading });
            assert_eq!(said(desk.job(), "wettest").0, "12.0 %", "the later visit's");
        }
    }

    #[test]
    fn a_reading_that_may_be_younger_than_the_visit_is_among_the_wettest() {
        for (at, wettest) in [("2026-12-24T08:00:00-06:00", "45.0 %"), ("2026-10-24T08:00:00-06:00", "12.0 %")] {
            let mut desk = Desk::new();
            let first = read(&mut desk, 3, percent(20));
            desk.visit("one");
            let reading = desk.job().now.readings().get(&first).unwrap().value.clone();
            desk.log(Reading { shown: percent(12), ..reading.clone() });
            let mut other = desk::other_phone();
            let at = chrono::DateTime::parse_from_rfc3339(at).unwrap();
            other.stamp_from(duckboard::engine::entry::Stamp { at, ..desk::stamp() });
            desk.book.add(Record::of(other.record(Reading { shown: percent(45), ..reading })).unwrap());
            assert_eq!(said(desk.job(), "wettest").0, wettest, "{at}");
        }
    }

    #[test]
    fn past_the_meters_scale_is_wetter_than_any_number_on_it() {
        let mut desk = Desk::new();
        read(&mut desk, 4, percent(33));
        read(&mut desk, 5, Shown::OverMaximum);
        read(&mut desk, 6, percent(27));
        let expected = ("over the meter's maximum".to_owned(), "Joist 5, lower edge, 5' 0\" along.".to_owned());
        assert_eq!(said(desk.job(), "wettest"), expected);
    }

    #[test]
    fn a_relative_reading_is_the_wettest_only_among_its_like() {
        let mut desk = Desk::new();
        let place = desk.log(spot(2, "5'"));
        let wood = Wood { material: Material::Plywood, species: None };
        let lone = desk.log(Reading::new(place, percent(40), wood));
        assert_eq!(said(desk.job(), "wettest").0, "40.0 % relative, meter not said");
        desk.withdraw(lone);
        let meter = Some(desk.pins());
        desk.log(Reading { meter, ..Reading::new(place, percent(40), wood) });
        assert_eq!(said(desk.job(), "wettest").0, "40.0 % relative");
        read(&mut desk, 4, percent(12));
        assert_eq!(said(desk.job(), "wettest").0, "12.0 %");
        let doubts = known(desk.job(), "wettest").doubts;
        assert!(
            doubts.iter().any(|doubt| doubt == "Readings that are only relative were not compared: 1, up to 40.0 %"),
            "{doubts:?}"
        );
    }

    #[test]
    fn the_wettest_stands_over_relative_readings_that_are_wetter_for_certain() {
        let wettest = |material: Material, shown: Shown| {
            let mut desk = Desk::new();
            read(&mut desk, 4, percent(19));
            let place = desk.log(spot(2, "5'"));
            let meter = Some(desk.pins());
            desk.log(Reading { meter, ..Reading::new(place, shown, Wood { material, species: None }) });
            said(desk.job(), "wettest").0
        };
        let treated = |shown| wettest(Material::Treated, percent(shown));
        assert_eq!([18, 20].map(treated), ["19.0 %", "20.0 %"], "treated wood is no drier for its salts");
        assert_eq!(wettest(Material::Plywood, Shown::OverMaximum), "over the meter's maximum relative");
        assert_eq!(wettest(Material::Plywood, percent(40)), "19.0 %", "nobody knows how high glue reads");
    }

    #[test]
    fn crawl_air_that_was_read_once_and_is_unlikely_is_said_to_be_on_every_figure_of_it() {
        let is_told = |airs: &[u16], name: &str| {
            let mut desk = Desk::new();
            airs.iter().for_each(|humidity| {
                air(&mut desk, AirLocation::Crawl, 60, *humidity);
            });
            let told = "Crawl air reads 29.0 %, drier than air under a house is likely to be: take it back if it was typed wrong, or read it so once more.";
            known(desk.job(), name).doubts.iter().any(|doubt| doubt == told)
        };
        for name in ["crawl_dew_point", "crawl_emc"] {
            assert!(is_told(&[29], name) && !is_told(&[30], name) && !is_told(&[29, 28], name), "{name}");
        }
    }

    #[test]
    fn of_two_airs_of_one_visit_the_damper_counts_whichever_was_read_last_and_it_is_said() {
        let differs = |desk: &Desk, name: &str| {
            known(desk.job(), name).doubts.iter().any(|doubt| doubt.contains("was read 2 times in this visit"))
        };
        for damps in [[90, 60], [60, 90]] {
            let mut desk = Desk::new();
            let read = damps.map(|damp| air(&mut desk, AirLocation::Crawl, 60, damp));
            air(&mut desk, AirLocation::Room, 70, 99);
            let (damper, drier) = if damps[0] == 90 { (read[0], read[1]) } else { (read[1], read[0]) };
            for name in ["crawl_dew_point", "crawl_emc"] {
                assert_eq!(known(desk.job(), name).why.used, [damper], "{name} {damps:?}");
                assert!(differs(&desk, name), "{name} {damps:?}");
            }
            desk.withdraw(damper);
            for name in ["crawl_dew_point", "crawl_emc"] {
                assert_eq!(known(desk.job(), name).why.used, [drier], "{name}: it was taken back");
                assert!(!differs(&desk, name), "{name}");
            }
        }
    }

    /// Warm air at 70 % holds more vapor than cold air at 80, and leaves wood drier.
    #[test]
    fn wood_and_dew_each_go_by_the_air_that_is_worst_for_them() {
        let mut desk = Desk::new();
        let warm = air(&mut desk, AirLocation::Crawl, 80, 70);
        let cold = air(&mut desk, AirLocation::Crawl, 50, 80);
        assert_eq!(known(desk.job(), "crawl_dew_point").why.used, [warm]);
        assert_eq!(known(desk.job(), "crawl_emc").why.used, [cold]);
    }

    /// Crawl air read at 80 % and 60 % of 60 °F, outdoor air at 55 % and 70 %: of the drier crawl air
    /// the damper outdoor air takes nothing away.
    #[test]
    fn of_several_airs_the_two_count_that_decide_against_ventilating() {
        let mut desk = Desk::new();
        air(&mut desk, AirLocation::Crawl, 60, 80);
        let crawl = air(&mut desk, AirLocation::Crawl, 60, 60);
        let outside = air(&mut desk, AirLocation::Outdoors, 60, 70);
        air(&mut desk, AirLocation::Outdoors, 60, 55);
        surface(&mut desk, 59);
        let known = known(desk.job(), "outdoor_air");
        assert_eq!(known.why.used[..2], [outside, crawl]);
        assert_eq!(known.value.headline, "No: outdoor air brings vapor in");
        assert_eq!(known.doubts.iter().filter(|doubt| doubt.contains("2 times in this visit")).count(), 2);
    }

    #[test]
    fn one_air_alone_names_the_other_that_is_missing() {
        let mut desk = Desk::new();
        air(&mut desk, AirLocation::Outdoors, 58, 71);
        assert_eq!(answer(desk.job(), "outdoor_air"), Figure::Missing(vec![Need::CrawlAir]));
    }

    #[test]
    fn wet_air_outdoors_brings_vapor_in() {
        let mut desk = Desk::new();
        // A summer day, 88 °F at 70 %, holds more than a crawl space at 70 °F and 80 %.
        air(&mut desk, AirLocation::Outdoors, 88, 70);
        air(&mut desk, AirLocation::Crawl, 70, 80);
        assert_eq!(said(desk.job(), "outdoor_air").0, "No: outdoor air brings vapor in");
    }

    #[test]
    fn the_coldest_surface_of_the_visit_goes_in_and_is_named() {
        let mut desk = Desk::new();
        desk.visit("one");
        surface(&mut desk, 40);
        desk.visit("two");
        let outside = air(&mut desk, AirLocation::Outdoors, 80, 60);
        let crawl = air(&mut desk, AirLocation::Crawl, 66, 80);
        let used = |desk: &Desk| known(desk.job(), "outdoor_air").why.used;
        let is_unmeasured = |desk: &Desk| {
            known(desk.job(), "outdoor_air").doubts.iter().any(|doubt| doubt.contains("No surface was measured"))
        };
        assert_eq!(used(&desk), [outside, crawl]);
        assert!(is_unmeasured(&desk), "the pipe of the first visit is no longer as cold");
        surface(&mut desk, 61);
        let coldest = surface(&mut desk, 55);
        surface(&mut desk, 58);
        assert_eq!(used(&desk), [outside, crawl, coldest]);
        assert!(!is_unmeasured(&desk));
    }

    #[test]
    fn air_of_an_older_visit_never_answers_for_this_one() {
        let mut desk = Desk::new();
        desk.visit("one");
        air(&mut desk, AirLocation::Outdoors, 80, 60);
        air(&mut desk, AirLocation::Crawl, 66, 80);
        let answered = ["outdoor_air", "crawl_emc", "crawl_dew_point"];
        let told = |desk: &Desk| answered.map(|name| answer(desk.job(), name).value().is_some());
        assert_eq!(told(&desk), [true; 3]);
        desk.visit("two");
        assert_eq!(told(&desk), [false; 3]);
        air(&mut desk, AirLocation::Crawl, 60, 70);
        assert_eq!(told(&desk), [false, true, true]);
        air(&mut desk, AirLocation::Outdoors, 50, 60);
        assert_eq!(told(&desk), [true; 3]);
    }

    #[test]
    fn a_reading_without_a_meter_stands_as_shown_and_says_so() {
        let mut desk = Desk::new();
        let place = desk.log(spot(4, "5'"));
        desk.log(Reading::new(place, percent(20), Wood { material: Material::Solid, species: None }));
        let known = known(desk.job(), "wettest");
        assert!(known.why.rule.starts_with("As shown"));
        assert!(known.doubts.iter().any(|doubt| doubt.contains("say which meter")));
        assert_eq!(results::readings(desk.job()).len(), 1);
    }

    #[test]
    fn wood_that_may_be_wetter_than_the_wettest_is_told_of() {
        // Species not said, so each may read up to 5 points low.
        let others = |shown: u16| {
            let mut desk = Desk::new();
            read(&mut desk, 4, percent(20));
            read(&mut desk, 5, percent(shown));
            assert_eq!(said(desk.job(), "wettest").0, "20.0 %");
            known(desk.job(), "wettest")
                .doubts
                .iter()
                .any(|doubt| doubt.contains("may be wetter than it") && doubt.ends_with(": 1"))
        };
        assert_eq!([14, 15, 16].map(others), [false, false, true]);
    }

    #[test]
    fn sides_that_close_exactly_are_said_to_in_whole_words() {
        use duckboard::engine::geometry::Turn::Right;
        let closes = |last: &str| {
            let mut desk = Desk::new();
            desk.room(&[("12'", Right), ("10'", Right), ("12'", Right), (last, Right)]);
            said(desk.job(), "closing_error")
        };
        let both = |headline: &str, line: &str| (headline.to_owned(), line.to_owned());
        assert_eq!(closes("10'"), both("Exactly", "They end where they began."));
        assert_eq!(closes("9' 11 3/4"), both("To 1/4\"", "1 in 2111 of the way round."));
    }

    #[test]
    fn areas_follow_the_phones_units() {
        use duckboard::engine::units::tape::{LengthStyle, ShownUnit};
        let metric =
            Units { length: LengthStyle { unit: ShownUnit::Metres, ..LengthStyle::default() }, ..Units::default() };
        let mut desk = Desk::new();
        use duckboard::engine::geometry::Turn::Right;
        let (_, sides) = desk.room(&[("3 m", Right), ("2 m", Right), ("3 m", Right), ("2 m", Right)]);
        desk.opening(sides[0], ["0", "0", "1500 mm", "1 m"]);
        let headlines: Vec<_> = results::answers(desk.job(), metric)
            .into_iter()
            .filter(|answer| answer.name.ends_with("_area"))
            .map(|answer| answer.said.value().unwrap().headline.clone())
            .collect();
        // 1.2192 × 2.4384 m = 2.973 m² to a sheet, so 1.5 m² takes one.
        assert_eq!(headlines, ["1 sheet by area", "1.50 m²", "6.00 m²"]);
        assert_eq!(length("1 m").value.to_mm(), 1000.0);
    }

    #[test]
    fn a_measured_surface_brings_its_own_source() {
        let mut desk = Desk::new();
        air(&mut desk, AirLocation::Outdoors, 80, 60);
        air(&mut desk, AirLocation::Crawl, 66, 80);
        surface(&mut desk, 50);
        assert!(known(desk.job(), "outdoor_air").why.sources.contains(&Source::Condensation));
    }
}
