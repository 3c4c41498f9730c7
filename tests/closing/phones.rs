//! Two phones that do not know of each other: nothing is after what it may not have seen.

use crate::desk::{Desk, label, length, percent, stamp};
use crate::house::joist;
use crate::{Site, after, ready, time};
use duckboard::engine::air::{AirLocation, AirReading};
use duckboard::engine::cautions::due;
use duckboard::engine::condition::{Condition, Finding};
use duckboard::engine::entry::{DeviceId, JobId, Stamp};
use duckboard::engine::framing::DamageKind;
use duckboard::engine::job::{Acknowledgement, Added, Fact, Log, Observation, Pen, Record, Venting, Visit, Year};
use duckboard::engine::moisture::{Answer, Material, Reading, Shown, Species, Wood};
use duckboard::engine::origin::Check;
use duckboard::engine::particular::{Item, Part, list, stated};
use duckboard::engine::place::{Element, Face, JoistNumber};
use duckboard::engine::survey::{Corner, CutBack, JoistCenter, Trust};
use duckboard::engine::units::decimal::{Scale, parse_relative_humidity, parse_temperature};
use duckboard::engine::units::tape::BareUnit;
use duckboard::engine::units::{MoistureContent, Typed};
use duckboard::file::{Made, Snapshot, invitation, read, write};

/// The pen of another phone that knows of nothing after the first visit.
pub fn pen_apart(site: &Site, at: &str) -> Pen {
    let first_visit = *site.desk.job().now.visits().keys().next().unwrap();
    let mut log = Log::default();
    let records: Vec<_> = site.desk.book.log().records().cloned().collect();
    for record in records.into_iter().filter(|record| record.id() <= first_visit) {
        log.add(record);
    }
    Pen::new(&log, DeviceId::new(2), Stamp { at: time(at), visit: None, ..stamp() })
}

/// The pen of another phone that knows all that was said until then by this clock.
pub fn pen_at(site: &Site, at: &str) -> Pen {
    Pen::new(site.desk.book.log(), DeviceId::new(2), Stamp { at: time(at), visit: None, ..stamp() })
}

/// It logs this in a visit of its own, and the two are merged: its entries have smaller counts
/// than the first phone's.
pub fn logs_apart(site: &mut Site, at: &str, seen: impl Into<Observation>) {
    let mut pen = pen_apart(site, at);
    let visit = pen.record(Visit { purpose: label("look again") });
    pen.begin_visit(visit.id);
    for entry in [visit, pen.record(seen)] {
        assert_eq!(site.desk.book.add(Record::of(entry).unwrap()), Added::New);
    }
}

/// The same in a visit of its own that was begun before the last one, and logged later by its clock
/// than that.
pub fn logs_late_apart(site: &mut Site, seen: impl Into<Observation>) {
    let mut pen = pen_apart(site, BETWEEN);
    let visit = pen.record(Visit { purpose: label("look again") });
    pen.stamp_from(Stamp { at: time(CHRISTMAS), visit: Some(visit.id), ..stamp() });
    for entry in [visit, pen.record(seen)] {
        assert_eq!(site.desk.book.add(Record::of(entry).unwrap()), Added::New);
    }
}

/// Its second phone reads everything dry, and answers every question.
#[test]
fn a_phone_that_was_invited_does_not_close_over_what_the_first_one_found() {
    let found = |site: &mut Site| {
        site.finds(Finding::Rotten, Some(site.places[3]));
        site.desk.spot(3, DamageKind::Notch, Some(("50", "60")), Some(Face::LowerEdge), "3");
        site.finds(Finding::StandingWater, None);
        site.answers(&[("dryer_duct", Answer::Yes)]);
    };
    let first = after(found);
    let invited = |site: &Site| {
        let file = invitation(&site.desk.book, JobId::new(7), 2, Made::here(time(CHRISTMAS)));
        let text: String = write::parts(&file, &Snapshot::none()).collect();
        let desk = Desk::of(read(text.as_bytes()).unwrap().book());
        let mut second = Site { desk, places: site.places.clone() };
        second.visit(CHRISTMAS);
        second.crawl_air("57", "64");
        second.reads(["14", "15", "15.5", "15", "14", "13"]);
        let boards = second.place(Element::SubfloorBelow, 2);
        second.read(boards, "9", Material::Solid);
        second
    };
    let lines = invited(&first).in_the_way();
    for words in ["joist 4: ", "joist 3: ", "standing water was found", "dryer"] {
        says(&lines, words);
    }
    let due = |site: &Site| due(site.desk.job(), None).iter().map(|caution| caution.name).collect::<Vec<_>>();
    assert_eq!(due(&invited(&first)), due(&first));
    // What it read of cautions stays with it, and is not missed.
    let ready = after(|site| {
        site.desk.log(Acknowledgement { caution: label("shoring") });
        site.finds(Finding::Stained, None);
    });
    assert!(invited(&ready).decision().is_ready(), "{:#?}", invited(&ready).in_the_way());
}

/// A phone that was restored from a backup goes on under the ids of the first one.
#[test]
fn of_two_entries_under_one_id_neither_counts_for_closing_until_both_are_taken_back() {
    for rotten_first in [true, false] {
        let mut site = Site::ready();
        let finds = |site: &Site, finding| {
            let condition = Condition { place: Some(site.places[3]), finding, note: None };
            Record::of(site.desk.pen.clone().record(condition)).unwrap()
        };
        let mut two = [finds(&site, Finding::Rotten), finds(&site, Finding::Sound)];
        if !rotten_first {
            two.reverse();
        }
        let [one, other] = two;
        assert_eq!(site.desk.book.add(one.clone()), Added::New);
        assert_eq!(site.desk.book.add(other), Added::Clash);
        says(&site.in_the_way(), "1 entry said twice in different words under one id: ");
        says(&site.in_the_way(), "at Joist 4");
        site.desk.pen = Pen::new(site.desk.book.log(), one.id().device, stamp());
        site.desk.withdraw(one.id());
        assert!(site.decision().is_ready(), "{:#?}", site.in_the_way());
    }
}

/// The one takes back what the other, not knowing, made worse; each as its app writes it.
#[test]
fn what_one_phone_takes_back_and_another_makes_worse_keeps_the_floor_open() {
    let rotten = |site: &Site| Condition { place: Some(site.places[2]), finding: Finding::Rotten, note: None };
    let lines = lines_of(|site| {
        let id = site.desk.log(Condition { finding: Finding::Soft, ..rotten(site) });
        let mut pen = Pen::new(site.desk.book.log(), DeviceId::new(2), Stamp { at: time(BETWEEN), ..stamp() });
        let worse = pen.correct(vec![id], rotten(site));
        // The first phone logs more, and takes it back later by its clock.
        site.desk.says(joist(5), &list::AWL, "stops everywhere");
        site.desk.withdraw(id);
        assert!(site.decision().is_ready());
        assert_eq!(site.desk.book.add(Record::of(worse).unwrap()), Added::New);
    });
    says(&lines, "two people corrected differently, or one took back");
    says(&lines, "joist 3: ");
}

pub const CHRISTMAS: &str = "2026-12-24T08:00:00-05:00";
pub const BETWEEN: &str = "2026-10-20T08:00:00-05:00";

fn sewage() -> Condition {
    Condition { place: None, finding: Finding::Sewage, note: None }
}

pub fn lines_of(change: impl FnOnce(&mut Site)) -> Vec<String> {
    after(change).in_the_way()
}

#[track_caller]
pub fn says(lines: &[String], words: &str) {
    assert!(lines.iter().any(|line| line.contains(words)), "{words}: {lines:#?}");
}

#[test]
fn an_answer_with_a_greater_count_does_not_answer_what_was_found_later_on_another_phone() {
    let lines = lines_of(|site| {
        site.answers(&[("gone.sewage", Answer::Yes)]);
        logs_apart(site, CHRISTMAS, sewage());
    });
    says(&lines, "sewage was found");
    let lines = lines_of(|site| {
        logs_apart(site, CHRISTMAS, sewage());
        site.answers(&[("gone.sewage", Answer::Yes)]);
    });
    says(&lines, "sewage was found");
}

/// What another phone found before, by its clock, is answered by what is said after.
#[test]
fn an_answer_that_was_given_later_by_count_and_clock_answers_another_phone() {
    let lines = lines_of(|site| {
        logs_apart(site, BETWEEN, sewage());
        site.answers(&[("gone.sewage", Answer::Yes)]);
    });
    assert!(lines.is_empty(), "{lines:#?}");
}

/// At 60 °F and 95 % wood settles over its limit.
#[test]
fn damp_crawl_air_of_another_phone_counts_unless_it_is_surely_older_than_the_visit() {
    let damp = |site: &mut Site, at| {
        let temperature = parse_temperature("60", Scale::Fahrenheit).unwrap();
        let humidity = parse_relative_humidity("95").unwrap();
        logs_apart(site, at, AirReading { location: AirLocation::Crawl, temperature, humidity });
    };
    let later = lines_of(|site| {
        site.crawl_air("55", "60");
        damp(site, CHRISTMAS);
    });
    assert!(later.iter().any(|line| line.contains("crawl air")), "{later:#?}");
    let older = lines_of(|site| damp(site, BETWEEN));
    assert!(older.is_empty(), "{older:#?}");
}

#[test]
fn the_last_visit_is_the_one_that_was_begun_last_and_not_the_one_that_logged_most() {
    let site = after(|site| logs_apart(site, CHRISTMAS, sewage()));
    let (_, number) = site.desk.job().current_visit().unwrap();
    assert_eq!((number, site.desk.job().now.visits().len()), (2, 3));
    says(&site.in_the_way(), "0 of 5 framing readings in this visit");
    let site = after(|site| logs_apart(site, BETWEEN, sewage()));
    assert_eq!(site.desk.job().current_visit().unwrap().1, 3);
}

#[test]
fn of_two_phones_a_sign_of_water_is_dealt_with_only_after_it_was_seen() {
    let smells = || Check { of: label("drain_smell"), answer: Answer::Yes };
    let lines = lines_of(|site| {
        logs_apart(site, CHRISTMAS, smells());
        site.answers(&[("dealt_with.drain", Answer::Yes)]);
    });
    says(&lines, "it smells of sewage or soap");
}

#[test]
fn a_wet_reading_of_another_phone_counts_unless_it_is_surely_older_than_the_visit() {
    let wet = |site: &mut Site| {
        let wood = Wood { material: Material::Solid, species: Some(Species::DouglasFir) };
        let meter = site.desk.job().now.meters().first().map(|(id, _)| *id);
        Reading { meter, ..Reading::new(site.places[3], Shown::Percent(percent("45")), wood) }
    };
    let lines = lines_of(|site| {
        let reading = wet(site);
        logs_apart(site, CHRISTMAS, reading);
    });
    says(&lines, "too wet: Joist 4");
}

/// The first phone's reading of the same place has the greater count, and the other phone never
/// began a visit of its own.
#[test]
fn a_reading_that_another_phone_logs_into_an_old_visit_counts_by_its_clock() {
    let read_at = |at: &'static str| {
        lines_of(|site| {
            let first_visit = *site.desk.job().now.visits().keys().next().unwrap();
            let wood = Wood { material: Material::Solid, species: Some(Species::DouglasFir) };
            let meter = Some(site.desk.pins());
            let shown = Shown::Percent(percent("45"));
            let reading = Reading { meter, ..Reading::new(site.places[3], shown, wood) };
            let stamp = Stamp { at: time(at), visit: Some(first_visit), ..stamp() };
            let mut pen = Pen::new(site.desk.book.log(), DeviceId::new(2), stamp);
            let entry = pen.record(reading);
            assert_eq!(site.desk.book.add(Record::of(entry).unwrap()), Added::New);
        })
    };
    says(&read_at(CHRISTMAS), "too wet: Joist 4");
}

#[test]
fn of_what_two_phones_say_differently_neither_is_the_last_word() {
    let says_apart = |item: Item, typed: &'static str| {
        lines_of(|site| {
            let said = stated(joist(4), &item, typed, BareUnit::Inches).unwrap();
            logs_apart(site, CHRISTMAS, said);
            // The first phone's word, with the greater count, is older.
            site.desk.says(joist(4), &list::AWL, "stops everywhere");
            site.desk.says(joist(4), &list::BEARING, "3 1/2");
        })
    };
    says(
        &says_apart(list::AWL, "goes in"),
        "two phones say \"Joist 4, awl: goes in\" and \"Joist 4, awl: stops everywhere\"",
    );
    says(&says_apart(list::BEARING, "0"), "two phones say \"Joist 4, bearing: 0");
    let same = says_apart(list::AWL, "stops everywhere");
    assert!(!same.iter().any(|line| line.contains("two phones")), "{same:#?}");
}

/// The first phone's facts have the greater count, and are older by the clock.
#[test]
fn of_what_two_phones_say_of_the_job_the_graver_counts_and_the_floor_stays_open() {
    let apart = |at: &'static str, first: Fact, other: Fact| {
        after(move |site| {
            logs_apart(site, at, other);
            site.desk.log(first);
        })
    };
    let year = |year| Fact::YearBuilt(Year::new(year).unwrap());
    let limits: [fn(_) -> Fact; 2] = [Fact::FramingLimit, Fact::SubfloorLimit];
    let of = |site: &Site| {
        let job = site.desk.job();
        let limit = |limit: Option<&Typed<MoistureContent>>| limit.map(|limit| limit.value.to_percent());
        let limits = (limit(job.framing_limit()), limit(job.subfloor_limit()));
        (job.year_built().copied(), job.venting().copied(), limits)
    };
    for (old, new) in [(1948, 1995), (1995, 1948)] {
        let site = apart(CHRISTMAS, year(new), year(old));
        assert_eq!(of(&site).0, Some(Year::new(1948).unwrap()));
        says(&site.in_the_way(), &format!("two phones say \"built in {old}\" and \"built in {new}\""));
        let later = apart(BETWEEN, year(new), year(old));
        assert_eq!(of(&later).0, Some(Year::new(new).unwrap()), "said later by count and clock");
        assert!(later.decision().is_ready(), "{:#?}", later.in_the_way());
    }
    for (old, new) in [(Venting::Vented, Venting::Unvented), (Venting::Unvented, Venting::Vented)] {
        let site = apart(CHRISTMAS, Fact::Venting(new), Fact::Venting(old));
        assert_eq!(of(&site).1, Some(Venting::Unvented));
        says(&site.in_the_way(), "two phones say \"crawl space");
        assert_eq!(of(&apart(BETWEEN, Fact::Venting(new), Fact::Venting(old))).1, Some(new));
        let names: Vec<_> = due(site.desk.job(), None).iter().map(|caution| caution.name).collect();
        assert!(names.contains(&"radon"), "{names:?}");
    }
    for (old, new) in [("15", "19"), ("19", "15")] {
        for limit in limits {
            let site = apart(CHRISTMAS, limit(percent(new)), limit(percent(old)));
            let (framing, subfloor) = of(&site).2;
            assert_eq!(framing.or(subfloor), Some(15.0));
            says(&site.in_the_way(), "two phones say");
        }
    }
    let same = apart(CHRISTMAS, year(1995), year(1995));
    assert!(!same.in_the_way().iter().any(|line| line.contains("two phones")));
}

#[test]
fn of_what_two_phones_say_of_a_cut_a_joist_or_a_corner_neither_is_the_last_word() {
    let apart = |say: fn(&Site, &str) -> Observation| {
        lines_of(|site| {
            let (one, other) = (say(site, "1"), say(site, "2"));
            logs_apart(site, CHRISTMAS, one);
            site.desk.log(other);
        })
    };
    let cut_back = |site: &Site, inches: &str| {
        let opening = *site.desk.job().now.openings().first().unwrap().0;
        CutBack { opening, width: None, finish: Some(length(inches)) }.into()
    };
    let center = |site: &Site, inches: &str| {
        let of = *site.desk.job().now.joists().first().unwrap().0;
        JoistCenter { of, joist: JoistNumber::new(8).unwrap(), center: length(&format!("127 {inches}/16")) }.into()
    };
    let corner = |site: &Site, trust: &str| {
        let at = *site.desk.job().now.sides().first().unwrap().0;
        Corner { at, angle: None, trust: if trust == "1" { Trust::Built } else { Trust::Checked } }.into()
    };
    for say in [cut_back as fn(&Site, &str) -> Observation, center, corner] {
        says(&apart(say), "and nobody can tell which came last");
    }
}

/// The visit was begun at 8. What was done by a right clock may still be older.
#[test]
fn a_clock_that_is_behind_the_visit_that_it_logs_into_tells_nothing_of_two_phones() {
    let logs_at = |at: &'static str, device: DeviceId| {
        lines_of(|site| {
            let visit = site.desk.pen.visit();
            let mut pen = Pen::new(site.desk.book.log(), device, Stamp { at: time(at), visit, ..stamp() });
            let entry = pen.record(sewage());
            site.answers(&[("shower_wet", Answer::No), ("gone.sewage", Answer::Yes)]);
            assert_eq!(site.desk.book.add(Record::of(entry).unwrap()), Added::New);
        })
    };
    let other = DeviceId::new(2);
    let is_told =
        |lines: &[String]| lines.iter().any(|line| line.contains("1 entry dated before the visit of it was begun"));
    let told = ["2020-01-01T00:10:00-05:00", "2026-10-26T06:59:59-05:00", "2026-10-26T07:00:00-05:00"]
        .map(|at| is_told(&logs_at(at, other)));
    assert_eq!(told, [true, true, false]);
}

/// On one phone the count tells, whatever its clock says.
#[test]
fn a_wrong_clock_of_the_only_phone_keeps_nothing_open() {
    ready(|site| {
        let visit = site.desk.pen.visit();
        site.desk.pen.stamp_from(Stamp { at: time("2026-10-26T06:00:00-05:00"), visit, ..stamp() });
        site.finds(Finding::Stained, Some(site.places[1]));
    });
}

#[test]
fn what_is_done_answers_nothing_that_another_phone_found_and_it_did_not_know_of() {
    let found_apart = |at: &'static str, element: Element| {
        lines_of(|site| {
            let place = if element == Element::Joist { site.places[3] } else { site.place(element, 4) };
            let part = if element == Element::Joist { joist(4) } else { Part::Sill };
            let mut pen = Pen::new(site.desk.book.log(), DeviceId::new(2), Stamp { at: time(at), ..stamp() });
            let entry = pen.record(Condition { place: Some(place), finding: Finding::Rotten, note: None });
            assert_eq!(site.desk.book.add(Record::of(entry).unwrap()), Added::New);
            // Two entries, so that the second has the greater count for sure.
            site.desk.says(part.clone(), &list::DONE, "not yet");
            site.desk.says(part, &list::DONE, "replaced");
        })
    };
    let words = "nobody can tell whether it was mended after what another phone found";
    for (element, name) in [(Element::Joist, "joist 4: "), (Element::Sill, "sill: ")] {
        says(&found_apart(CHRISTMAS, element), &format!("{name}{words}"));
        let before = found_apart(BETWEEN, element);
        assert!(!before.iter().any(|line| line.contains(words)), "{before:#?}");
    }
}
