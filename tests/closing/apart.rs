//! What two phones said apart, so that nobody can tell which came last.

use crate::desk::{label, length, percent, stamp};
use crate::house::joist;
use crate::phones::{BETWEEN, CHRISTMAS, lines_of, logs_apart, logs_late_apart, pen_at, says};
use crate::{Site, after, time};
use duckboard::engine::condition::Finding;
use duckboard::engine::entry::{DeviceId, Stamp};
use duckboard::engine::job::{Added, Fact, Observation, Pen, Record, Visit};
use duckboard::engine::moisture::{Material, Reading, Shown, Species, Wood};
use duckboard::engine::particular::{Item, Part, list, stated};
use duckboard::engine::units::tape::BareUnit;

/// Joists that bear at 16 in may not at 24: which of two layouts is so nobody can tell.
#[test]
fn joists_that_two_phones_laid_out_differently_keep_the_floor_open() {
    let site = after(|site| {
        let mut joists = site.desk.job().now.joists().values().next().unwrap().value.clone();
        site.desk.log(joists.clone());
        joists.spacing = length("24");
        logs_apart(site, CHRISTMAS, joists);
    });
    says(&site.in_the_way(), "nobody can tell which came last");
}

/// Another phone, that did not know, says something of a member after one phone said that it was
/// replaced.
#[test]
fn what_may_have_been_found_after_it_was_mended_keeps_the_floor_open() {
    let is_apart = |part: Part, item: &Item, word: &str| {
        let said = stated(part.clone(), item, word, BareUnit::Inches).unwrap();
        let lines = lines_of(|site| {
            site.desk.says(part, &list::DONE, "replaced");
            logs_apart(site, CHRISTMAS, said);
        });
        lines.iter().any(|line| line.contains("nobody can tell whether it was mended"))
    };
    let girder = |word| is_apart(Part::Girder(1), &list::STATE, word);
    assert_eq!(["decayed", "cracked", "sound"].map(girder), [true, true, false]);
    let awl = |word| is_apart(joist(4), &list::AWL, word);
    assert_eq!(["goes in", "cannot reach", "stops everywhere"].map(awl), [true, true, false]);
    assert!(!is_apart(joist(4), &list::CUTS, "cannot see"), "a question, and nothing that was found");
}

#[test]
fn what_two_phones_call_the_job_is_nothing_that_closing_waits_for() {
    let lines = lines_of(|site| {
        site.desk.log(Fact::Title(label("Blue house")));
        logs_apart(site, CHRISTMAS, Fact::Title(label("The blue one")));
    });
    assert!(!lines.iter().any(|line| line.contains("two phones say")), "{lines:#?}");
}

/// Nobody can tell whether it is of before this visit.
#[test]
fn a_wet_reading_that_was_logged_after_this_visit_began_counts_whichever_visit_it_is_of() {
    let wet = |site: &mut Site, late: bool| {
        let wood = Wood { material: Material::Solid, species: Some(Species::DouglasFir) };
        let meter = Some(site.desk.pins());
        let reading = Reading { meter, ..Reading::new(site.places[3], Shown::Percent(percent("41")), wood) };
        if late { logs_late_apart(site, reading) } else { logs_apart(site, BETWEEN, reading) }
    };
    says(&lines_of(|site| wet(site, true)), "too wet: Joist 4");
    let surely_older = lines_of(|site| wet(site, false));
    assert!(!surely_older.iter().any(|line| line.contains("too wet")), "{surely_older:#?}");
}

/// What is bought, and how it is cut, closes no floor; what is said of the floor may.
#[test]
fn what_two_phones_say_apart_of_the_order_list_and_the_saw_keeps_nothing_open() {
    let apart = |one: Observation, other: Observation| {
        lines_of(|site| {
            site.desk.log(one);
            logs_apart(site, CHRISTMAS, other);
        })
        .into_iter()
        .any(|line| line.starts_with("two phones say"))
    };
    let line = || Part::Order(label("Old floor"));
    for (item, words) in [(&list::ON_HAND, ["3", "2"]), (&list::PRICE, ["10", "12"])] {
        let [one, other] = words.map(|typed| stated(line(), item, typed, BareUnit::Inches).unwrap().into());
        assert!(!apart(one, other), "{}", item.what);
    }
    let facts: [fn(_) -> Fact; 4] = [Fact::Kerf, Fact::SheetGap, Fact::EdgeGap, Fact::SheetThickness];
    for fact in facts {
        assert!(!apart(fact(length("1/8")).into(), fact(length("3/16")).into()));
    }
    let of_joists = |typed| Fact::JoistThickness(length(typed)).into();
    assert!(apart(of_joists("1 1/2"), of_joists("1 5/8")));
}

/// Two phones that lay out the same joists, however it was typed, say the same.
#[test]
fn joists_that_two_phones_laid_out_alike_are_no_two() {
    let site = after(|site| {
        let mut joists = site.desk.job().now.joists().values().next().unwrap().value.clone();
        site.desk.log(joists.clone());
        joists.spacing = length("1' 4");
        logs_apart(site, CHRISTMAS, joists);
    });
    assert!(!site.in_the_way().iter().any(|line| line.starts_with("two phones say")), "{:#?}", site.in_the_way());
}

/// The other phone begins a visit by a clock two days ahead. Once that is taken back, what was
/// logged into it by the right clock is in order.
#[test]
fn a_visit_that_was_begun_by_a_wrong_clock_and_is_taken_back_holds_nothing() {
    let lines = |taken_back: bool| {
        lines_of(|site| {
            let mut pen = pen_at(site, "2026-10-28T08:00:00-05:00");
            let visit = pen.record(Visit { purpose: label("help") });
            let id = visit.id;
            assert_eq!(site.desk.book.add(Record::of(visit).unwrap()), Added::New);
            site.desk.pen =
                Pen::new(site.desk.book.log(), stamp_device(site), Stamp { visit: Some(id), ..site_stamp() });
            site.finds(Finding::Stained, None);
            if taken_back {
                site.desk.withdraw(id);
            }
        })
    };
    let is_told = |lines: &[String]| lines.iter().any(|line| line.contains("dated before the visit of it was begun"));
    assert!(is_told(&lines(false)) && !is_told(&lines(true)), "{:#?}", lines(true));
}

fn stamp_device(site: &Site) -> DeviceId {
    site.desk.book.log().records().next().unwrap().id().device
}

fn site_stamp() -> Stamp {
    Stamp { at: time("2026-10-26T08:30:00-05:00"), ..stamp() }
}
