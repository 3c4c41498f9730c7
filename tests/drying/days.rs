//! What is said of days: none that is past is still to come.

use crate::{FIRST, SECOND, Site, mc, spot, time};
use chrono::TimeDelta;
use duckboard::engine::drying::Outlook;
use duckboard::engine::entry::{Stamp, Time};
use duckboard::engine::job::Fact;
use duckboard::engine::units::Typed;

/// Joist 1 read at these two times in drier air, then a visit in air of 70 % that read joist 4.
fn then_a_visit(second: &str, visit: &str) -> Site {
    let mut site = Site::new();
    let (place, other) = (site.place(spot(1, "3'")), site.place(spot(4, "3'")));
    site.air("60");
    site.read(place, "26");
    site.visit(second);
    site.air("60");
    site.read(place, "22");
    site.visit(visit);
    site.air("70");
    site.read(other, "15");
    site
}

fn range(site: &Site) -> (Time, Option<Time>) {
    let Outlook::Between(first, latest) = site.outlook(0) else { panic!("{:?}", site.outlook(0)) };
    (first, latest)
}

/// Something that says nothing of wood is logged at this time, in the visit that nobody ended.
fn logs_a_title(site: &mut Site, at: Time) {
    let visit = site.desk.pen.visit();
    site.desk.pen.stamp_from(Stamp { at, visit, ..crate::desk::stamp() });
    site.desk.log(Fact::Title(crate::desk::label("Invented")));
}

#[test]
fn no_day_and_no_other_air_is_before_the_visit_and_what_was_not_read_in_it_is_asked_for() {
    let visit = "2026-12-20T08:00:00-05:00";
    let site = then_a_visit("2026-10-09T08:00:00-05:00", visit);
    let (first, latest) = range(&site);
    assert_eq!(first, time(visit));
    assert!(latest.is_none_or(|latest| latest > time(visit)), "{latest:?}");
    let other = site.forecasts().other_air;
    assert!(!other.is_empty() && other.iter().all(|it| it.all_by.is_none_or(|by| by > time(visit))), "{other:?}");
    let card = site.card();
    assert!(card.headline.starts_with("Perhaps already"), "{}", card.headline);
    let asks = card.lines.iter().any(|line| line.text.contains("not read in this visit: 1 of 2 places"));
    assert!(asks, "{card:?}");
    assert!(!format!("{card:?}").contains("2026-10-"), "no day of October: {card:?}");
}

#[test]
fn the_last_day_counts_from_the_visit_or_from_the_last_reading_whichever_is_later() {
    let after = |visit: &str| range(&then_a_visit(SECOND, visit)).1.unwrap() - time(SECOND);
    let at_once = after(SECOND);
    let days =
        [("2026-10-19T08:01:00-05:00", TimeDelta::minutes(1)), ("2026-11-08T08:00:00-05:00", TimeDelta::days(20))];
    for (visit, later) in days {
        assert_eq!(after(visit) - at_once, later, "{visit}");
    }
    // A clock that was behind when the visit was begun moves nothing to before the reading.
    let behind = range(&then_a_visit(SECOND, "2026-10-18T08:00:00-05:00")).1.unwrap() - time(SECOND);
    assert_eq!(behind, at_once);
}

#[test]
fn what_was_read_in_this_visit_is_not_asked_for_again() {
    // Begun at the minute of the reading, and a minute after it.
    for (visit, is_old) in [(SECOND, false), ("2026-10-19T08:01:00-05:00", true)] {
        let site = then_a_visit(SECOND, visit);
        let place = site.forecasts().places.into_iter().find(|it| it.place == site.places[0]).unwrap();
        assert_eq!((place.is_old, place.is_to_be_read_again()), (is_old, is_old), "{visit}");
    }
    // Nobody began another visit: three days later it is of this one no more.
    for (at, is_old) in [("2026-10-22T08:00:00-05:00", false), ("2026-10-22T08:01:00-05:00", true)] {
        let mut site = Site::read_twice("64", &[["27", "23"]]);
        logs_a_title(&mut site, time(at));
        assert_eq!(site.forecasts().places[0].is_old, is_old, "{at}");
        let is_asked = site.card().lines.iter().any(|line| line.text.starts_with("Read again what was not read"));
        assert_eq!(is_asked, is_old, "{at}");
    }
    // What is dry is not asked for.
    let mut site = Site::read_twice("64", &[["18", "12"]]);
    site.visit("2026-11-20T08:00:00-05:00");
    site.air("64");
    assert!(site.forecasts().places[0].is_old && !site.forecasts().places[0].is_to_be_read_again());
}

#[test]
fn a_range_that_is_past_is_no_range_and_one_that_is_not_begins_at_the_latest_entry() {
    let read = || Site::read_twice("64", &[["27", "23"]]);
    let (first, latest) = range(&read());
    let latest = latest.unwrap();
    let at = |now: Time| {
        let mut site = read();
        logs_a_title(&mut site, now);
        (site.outlook(0), site)
    };
    let minute = TimeDelta::minutes(1);
    for now in [first - minute, first, first + minute, latest - minute, latest] {
        let (outlook, site) = at(now);
        assert_eq!(outlook, Outlook::Between(first.max(now), Some(latest)), "{now}");
        assert_eq!(site.card().headline.starts_with("Perhaps already"), first <= now, "{}", site.card().headline);
        let by = site.forecasts().other_air[0].all_by.unwrap();
        assert!((now..=latest).contains(&by), "{by} {now}: drier air begins now and makes it no later");
    }
    let (outlook, site) = at(latest + minute);
    assert_eq!(outlook, Outlook::Passed);
    assert!(site.card().headline.contains("read it again"), "{}", site.card().headline);
    assert!(site.forecasts().other_air.iter().all(|it| it.all_by.is_none()), "nobody can say what it is now");
}

#[test]
fn a_place_that_passed_its_last_day_comes_before_those_with_a_day_to_come() {
    let mut site = Site::read_twice("64", &[["27", "20"], ["27", "24"]]);
    let Outlook::Between(_, Some(latest)) = site.outlook(0) else { panic!("{:?}", site.outlook(0)) };
    let Outlook::Between(_, Some(slower)) = site.outlook(1) else { panic!("{:?}", site.outlook(1)) };
    assert!(latest < slower);
    logs_a_title(&mut site, latest + TimeDelta::minutes(1));
    let order: Vec<_> = site.forecasts().places.iter().map(|it| it.place).collect();
    assert_eq!(order, [site.places[0], site.places[1]]);
    assert_eq!(site.outlook(0), Outlook::Passed);
}

#[test]
fn of_two_crawl_airs_of_one_visit_the_damper_dates_the_drying_and_that_is_said() {
    let with = |airs: &[&str]| {
        let mut site = Site::read_twice(airs[0], &[["27", "23"]]);
        airs[1..].iter().for_each(|damp| site.air(damp));
        site
    };
    let doubts = |site: &Site| {
        let figure = duckboard::engine::drying::forecasts(site.desk.job());
        figure.as_known().unwrap().doubts.join("\n")
    };
    let says = |site: &Site| doubts(site).contains("from 60.0 % at 60.0 °F to 80.0 % at 60.0 °F: the dampest counts");
    let damp = with(&["80"]);
    for airs in [["80", "60"], ["60", "80"]] {
        let both = with(&airs);
        assert_eq!(both.forecasts().end, damp.forecasts().end, "{airs:?}");
        assert_eq!(both.outlook(0), damp.outlook(0), "{airs:?}");
        assert!(says(&both), "{airs:?}");
    }
    assert!(!says(&damp) && !says(&with(&["80", "80"])));
    assert!(with(&["60"]).forecasts().end < damp.forecasts().end);
    let is_unlikely = |airs: &[&str]| doubts(&with(airs)).contains("drier than air under a house is likely to be");
    assert!(is_unlikely(&["29.9"]) && !is_unlikely(&["30"]) && !is_unlikely(&["29.9", "29"]));
    // Of another visit it says nothing.
    let mut site = with(&["80"]);
    site.visit("2026-10-26T08:00:00-05:00");
    site.air("60");
    assert_eq!(site.forecasts().end, with(&["60"]).forecasts().end);
}

#[test]
fn air_of_more_than_three_days_before_in_a_visit_that_nobody_ended_counts_no_more() {
    let ends = ["2026-10-22T08:00:00-05:00", "2026-10-22T08:00:01-05:00"].map(|at| {
        let mut site = Site::read_twice("80", &[["27", "23"]]);
        let visit = site.desk.pen.visit();
        site.desk.pen.stamp_from(Stamp { at: time(at), visit, ..crate::desk::stamp() });
        site.air("60");
        site.forecasts().end
    });
    let of = |damp| Site::read_twice(damp, &[["27", "23"]]).forecasts().end;
    assert_eq!(ends, [of("80"), of("60")]);
}

/// The limit is where the air holds it: it never gets there, whatever is past.
#[test]
fn air_that_holds_wood_above_its_limit_is_never_and_not_passed() {
    let mut site = Site::read_twice("64", &[["27", "23"]]);
    let end = site.forecasts().end;
    for (limit, is_never) in
        [(end.to_percent() - 0.001, true), (end.to_percent(), true), (end.to_percent() + 0.5, false)]
    {
        site.desk.log(Fact::FramingLimit(Typed::new("limit", mc(limit))));
        logs_a_title(&mut site, time(FIRST));
        assert_eq!(site.outlook(0) == Outlook::Never, is_never, "{limit}");
    }
}
