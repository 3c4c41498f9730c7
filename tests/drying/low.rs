//! Readings that may be low, because nobody said how warm the wood was or which it is.

use crate::desk::percent;
use crate::{FIRST, Site, spot, time};
use chrono::TimeDelta;
use duckboard::engine::drying::Outlook;
use duckboard::engine::entry::Time;
use duckboard::engine::moisture::{Answer, Material, Meter, Reading, Shown, Species, Wood};
use duckboard::engine::units::decimal::{Scale, parse_temperature};

const LAST: &str = "2026-10-26T08:00:00-05:00";

/// What a meter that does not correct for temperature shows, and how warm the wood is, if read.
type Shows<'a> = (&'a str, Option<u16>);

/// One place, read twice three weeks apart in air of 60 °F.
fn read(damp: &str, species: Option<Species>, shown: [Shows<'_>; 2]) -> Outlook {
    let mut site = Site::new();
    let place = site.place(spot(1, "3'"));
    let pins = site.desk.pins();
    let pins = site.desk.job().now.meters().get(&pins).unwrap().value.clone();
    let meter = Some(site.desk.log(Meter { corrects_temperature: Answer::No, ..pins }));
    for (at, (shown, warmth)) in [FIRST, LAST].into_iter().zip(shown) {
        site.visit(at);
        site.air(damp);
        let wood_temperature = warmth.map(|warmth| parse_temperature(&warmth.to_string(), Scale::Fahrenheit).unwrap());
        let wood = Wood { material: Material::Solid, species };
        let reading = Reading::new(site.places[place], Shown::Percent(percent(shown)), wood);
        site.desk.log(Reading { meter, wood_temperature, ..reading });
    }
    site.outlook(place)
}

fn days(outlook: Outlook) -> (Time, Option<Time>) {
    let Outlook::Between(first, latest) = outlook else { panic!("{outlook:?}") };
    (first, latest)
}

const DOUGLAS_FIR: Option<Species> = Some(Species::DouglasFir);

#[test]
fn the_last_day_of_wood_whose_warmth_nobody_read_is_not_before_that_of_any_warmth_it_may_have() {
    for damp in ["50", "64", "75"] {
        for last in ["19.5", "20", "21"] {
            let unread = days(read(damp, DOUGLAS_FIR, [("27", Some(70)), (last, None)])).1;
            let mut held = 0;
            for warmth in (32..=70).step_by(2) {
                let Outlook::Between(_, read) = read(damp, DOUGLAS_FIR, [("27", Some(70)), (last, Some(warmth))])
                else {
                    continue;
                };
                held += 1;
                // The steps between dry and wet are eighths: the very latest may be an hour off.
                let hour = TimeDelta::hours(1);
                let is_held = unread.is_none_or(|unread| read.is_some_and(|read| read <= unread + hour));
                assert!(is_held, "{damp} % {last} % at {warmth} °F: {read:?}, and unread {unread:?}");
            }
            assert!(held > 3, "{damp} % {last} %");
        }
    }
}

#[test]
fn the_first_day_of_wood_whose_warmth_nobody_read_at_first_is_not_after_that_of_any_warmth_it_may_have_had() {
    for first in ["21", "23", "26"] {
        let unread = days(read("50", DOUGLAS_FIR, [(first, None), ("20", Some(70))])).0;
        let is_read = (32..=70).step_by(2).filter_map(|warmth| {
            let outlook = read("50", DOUGLAS_FIR, [(first, Some(warmth)), ("20", Some(70))]);
            if let Outlook::Between(earliest, _) = outlook { Some((warmth, earliest)) } else { None }
        });
        let is_read: Vec<_> = is_read.collect();
        assert!(is_read.len() > 3, "{first}");
        for (warmth, earliest) in is_read {
            assert!(unread <= earliest + TimeDelta::hours(1), "{first} % at {warmth} °F: {earliest}, unread {unread}");
        }
    }
}

/// 20 % read in wood that nobody knows the warmth of may be more than 24 %.
#[test]
fn where_wood_may_not_have_dried_at_all_nobody_can_say_how_late() {
    let latest = |first| days(read("50", DOUGLAS_FIR, [(first, Some(70)), ("20", None)])).1;
    assert_eq!(latest("22"), None);
    assert_eq!(latest("24"), None);
    assert!(latest("27").is_some(), "it dried by more than that");
    assert!(days(read("50", DOUGLAS_FIR, [("22", Some(70)), ("20", Some(70))])).1.is_some(), "its warmth was read");
}

/// Species not said: both readings are low alike, and a first one near 28 % is not lost by that.
#[test]
fn a_reading_that_is_raised_is_not_taken_for_free_water() {
    let latest = |first: f64| {
        let first = format!("{first:.1}");
        days(read("64", None, [(&first, Some(70)), ("21", Some(70))])).1.map(|at| at - time(LAST))
    };
    let all: Vec<_> = [22.9, 23.0, 23.1, 24.9, 25.0, 25.1, 27.0, 27.9].map(|first| latest(first).unwrap()).into();
    let biggest = all.windows(2).map(|pair| (pair[0] - pair[1]).abs()).max().unwrap();
    assert!(biggest < TimeDelta::days(60), "{all:?}");
    let said = days(read("64", DOUGLAS_FIR, [("27", Some(70)), ("21", Some(70))])).1.unwrap() - time(LAST);
    assert!(latest(27.0).unwrap() > said, "it gets there later than wood that is known");
}
