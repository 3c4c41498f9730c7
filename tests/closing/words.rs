//! What two phones say of the house that did not know of each other: the worse counts where a
//! rule is held to it, and lengths are compared by what they come to.

use crate::desk::{length, percent, stamp};
use crate::house::joist;
use crate::phones::{logs_apart, says};
use crate::{Site, after, time};
use duckboard::draw::Canvas;
use duckboard::draw::card::{Act, Field};
use duckboard::draw::under::under;
use duckboard::engine::entry::{Label, Stamp};
use duckboard::engine::ground::checks::{Check, checks, unvented_checks};
use duckboard::engine::ground::plan::{AirWay, Covered, is_covered_now};
use duckboard::engine::ground::rain::led_away;
use duckboard::engine::job::{Fact, Observation, SheetSize};
use duckboard::engine::moisture::Answer;
use duckboard::engine::orders::lines;
use duckboard::engine::origin::{Check as Question, is_answered};
use duckboard::engine::particular::{Item, Part, list, stated};
use duckboard::engine::place::JoistNumber;
use duckboard::engine::survey::{Corner, CutBack, JoistCenter, Trust};
use duckboard::engine::take::Units;
use duckboard::engine::units::decimal::parse_angle;
use duckboard::engine::units::tape::BareUnit;

/// By its clock the other phone says it after the first one, which has the greater count.
const LATER: &str = "2026-12-24T08:00:00-06:00";
/// Before the first phone says it, in its second visit.
const BEFORE: &str = "2026-10-20T08:00:00-05:00";

fn of_house(item: &Item, typed: &str) -> Observation {
    stated(Part::House, item, typed, BareUnit::Inches).unwrap().into()
}

/// The first phone says one word, the other phone at this time another.
fn apart(at: &str, item: &Item, first: &str, other: &str) -> Site {
    after(|site| {
        logs_apart(site, at, of_house(item, other));
        site.desk.says(Part::House, item, first);
    })
}

fn holds(checks: &[Check], what: &str) -> Option<bool> {
    checks.iter().find(|check| check.what == what).unwrap().holds
}

#[test]
fn of_what_two_phones_say_of_the_ground_the_worse_is_held_to_the_rules() {
    let units = Units::default;
    let cases: [(&Item, &str, &str, &str); 4] = [
        (&list::GIRDER_CLEARANCE, "Girders to soil", "12", "11 15/16"),
        (&list::SILL_CLEARANCE, "Sills to outside ground", "8", "7 15/16"),
        (&list::POST_CLEARANCE, "Posts to soil", "8 1/16", "8"),
        (&list::GIRDER_END_AIR, "Girder ends in outer walls", "1/2", "7/16"),
    ];
    for (item, what, good, bad) in cases {
        let holds = |at, first, other| holds(&checks(apart(at, item, first, other).desk.job(), units()), what);
        assert_eq!(holds(LATER, good, bad), Some(false), "{what}: the other phone measured less");
        assert_eq!(holds(LATER, bad, good), Some(false), "{what}: the first phone did");
        assert_eq!(holds(BEFORE, good, bad), Some(true), "{what}: the first phone's is surely the last");
        assert_eq!(holds(LATER, good, good), Some(true), "{what}: both measured the same");
    }
    let crawl = |at, first: &'static str, other: &'static str| {
        let site = after(|site| {
            logs_apart(site, at, Fact::CrawlHeight(length(other)));
            site.desk.log(Fact::CrawlHeight(length(first)));
        });
        holds(&checks(site.desk.job(), units()), "Joists to soil")
    };
    let less = "17 15/16";
    assert_eq!([crawl(LATER, "18", less), crawl(LATER, less, "18")], [Some(false); 2]);
    assert_eq!([crawl(BEFORE, "18", less), crawl(LATER, "18", "18")], [Some(true); 2]);
}

#[test]
fn of_what_two_phones_say_of_the_roofs_water_the_worse_is_held_to_the_rules() {
    for (item, what, good, bad) in [
        (&list::DISCHARGE, "Water lands", "5'", "4' 11 15/16"),
        (&list::FALL, "Ground falls in its first 10 ft", "6", "5 15/16"),
    ] {
        let holds =
            |at, first, other| holds(&led_away(apart(at, item, first, other).desk.job(), Units::default()), what);
        assert_eq!([holds(LATER, good, bad), holds(LATER, bad, good)], [Some(false); 2], "{what}");
        assert_eq!([holds(BEFORE, good, bad), holds(LATER, good, good)], [Some(true); 2], "{what}");
    }
}

/// The page marks no answer, and whoever reads what closing waits for finds the question open.
#[test]
fn a_check_that_two_phones_answered_differently_is_open_again() {
    let given = |at: &str, first, other| {
        let of = || Label::fitted("read_at_depth");
        let site = after(|site| {
            logs_apart(site, at, Question { of: of(), answer: other });
            site.answers(&[("read_at_depth", first)]);
        });
        let is_doubted = site.close_in().doubts.iter().any(|doubt| doubt.contains("read the wettest places at depth"));
        (is_answered(site.desk.job(), "read_at_depth"), is_doubted)
    };
    let (yes, no) = (Answer::Yes, Answer::No);
    assert_eq!([given(LATER, yes, no), given(LATER, no, yes)], [(None, true); 2]);
    assert_eq!(given(LATER, yes, yes), (Some(yes), false));
    assert_eq!([given(BEFORE, yes, no), given(BEFORE, no, yes)], [(Some(yes), false), (Some(no), true)]);
}

#[test]
fn of_what_two_phones_say_of_the_way_in_and_girder_ends_the_worse_is_held_to_the_rules() {
    let check = |what: &'static str, item: &'static Item, first: &str, other: &str, beside: &[(Item, &str)]| {
        let mut site = apart(LATER, item, first, other);
        for (item, typed) in beside {
            site.desk.says(Part::House, item, typed);
        }
        holds(&checks(site.desk.job(), Units::default()), what)
    };
    // 16 x 24 in through a wall, 18 x 24 in through a floor.
    let sides = [(list::ACCESS_WIDTH, "17"), (list::ACCESS_LENGTH, "24")];
    for (first, other, holds) in [("wall", "floor", false), ("floor", "wall", false), ("wall", "wall", true)] {
        assert_eq!(check("Access", &list::ACCESS, first, other, &sides), Some(holds), "{first} and {other}");
    }
    let ends = |first, other| check("Girder ends in outer walls", &list::GIRDER_ENDS, first, other, &[]);
    assert_eq!([ends("not in masonry", "in masonry"), ends("in masonry", "not in masonry")], [None; 2]);
    assert_eq!(ends("not in masonry", "not in masonry"), Some(true));
}

#[test]
fn of_what_two_phones_say_of_a_space_without_vents_the_worse_is_held_to_the_rules() {
    let check = |what: &'static str, item: &'static Item, first: &str, other: &str| {
        let mut site = apart(LATER, item, first, other);
        site.desk.says(Part::House, &list::AIR_WAY, "exhaust fan");
        holds(&unvented_checks(site.desk.job(), Units::default()), what)
    };
    let cases: [(&str, &Item, &str, &str); 4] = [
        ("Air path down from the rooms", &list::AIR_PATH, "yes", "no"),
        ("Outer walls insulated", &list::WALLS_INSULATED, "yes", "no"),
        ("Draft of water heater, furnace, stove", &list::FUEL_BURNED, "none", "yes"),
        ("Draft of water heater, furnace, stove", &list::FUEL_BURNED, "yes, draft tested", "yes"),
    ];
    for (what, item, good, bad) in cases {
        assert_eq!([check(what, item, good, bad), check(what, item, bad, good)], [Some(false); 2], "{what}");
        assert_eq!(check(what, item, good, good), Some(true), "{what}");
    }
}

#[test]
fn a_way_of_the_air_or_a_cover_that_two_phones_said_differently_is_bought_by_neither_word() {
    let listed = |site: &Site| {
        let (lines, open) = lines(site.desk.job(), Units::default());
        (lines.into_iter().map(|line| line.needed.name).collect::<Vec<_>>(), open)
    };
    for (first, other) in
        [("dehumidifier", "exhaust fan"), ("exhaust fan", "vents"), ("vents", "supply from the house")]
    {
        let mut site = apart(LATER, &list::AIR_WAY, first, other);
        let gravest = if [first, other].contains(&"exhaust fan") { AirWay::Exhaust } else { AirWay::Supply };
        assert_eq!(AirWay::of(site.desk.job()), gravest, "{first} and {other}");
        site.desk.says(Part::House, &list::VENT_AREA, "50");
        site.desk.log(Fact::CrawlHeight(length("24")));
        let (names, open) = listed(&site);
        let is_air = |name: &String| ["fan", "duct", "vents", "Dehumidifier"].iter().any(|word| name.contains(word));
        assert!(!names.iter().any(is_air), "{names:?}");
        says(&open, "Air under the house: two phones chose differently");
        says(&open, &format!("Two phones say \"House, air: {other}\" and \"House, air: {first}\""));
    }
    for (first, other) in [("yes", "no"), ("no", "yes")] {
        assert_eq!(Covered::of(apart(LATER, &list::COVERED, first, other).desk.job()), Covered::NotSaid);
    }
    assert_eq!(Covered::of(apart(LATER, &list::COVERED, "yes", "yes").desk.job()), Covered::Yes);
    assert_eq!(Covered::of(apart(BEFORE, &list::COVERED, "yes", "no").desk.job()), Covered::Yes);
}

/// The soil was bare at the first phone's first visit, and covered. By its clock the other phone
/// sees it bare later; the first one, which does not know, says no and covered with greater counts.
#[test]
fn soil_that_another_phone_saw_bare_since_is_covered_on_no_page_and_no_list() {
    let said = |at: &str, name: &str, answer: Answer| {
        let check = |name: &str, answer| Question { of: Label::fitted(name), answer };
        let mut site = after(|site| {
            logs_apart(site, at, check(name, answer));
            site.answers(&[("bare_soil", Answer::No), ("ground_covered_now", Answer::Yes)]);
        });
        let house = [(list::COVERED, "yes"), (list::GROUND_LENGTH, "30'"), (list::GROUND_WIDTH, "20'")];
        for (item, typed) in house.into_iter().chain([(list::POST_CLEARANCE, "9")]) {
            site.desk.says(Part::House, &item, typed);
        }
        let job = site.desk.job();
        let is_listed = lines(job, Units::default()).0.iter().any(|line| line.needed.name == "Ground cover");
        let posts = holds(&checks(job, Units::default()), "Posts to soil");
        let is_open = site.in_the_way().iter().any(|line| line.contains("soil"));
        assert_eq!(is_open, is_covered_now(job) != Some(true), "closing says the same");
        (is_covered_now(job), posts, is_listed)
    };
    let (bare, covered) = ((Some(false), Some(false), true), (Some(true), Some(true), false));
    assert_eq!(said(LATER, "bare_soil", Answer::Yes), bare);
    assert_eq!(said(BEFORE, "bare_soil", Answer::Yes), covered, "surely before");
    assert_eq!(said(LATER, "ground_covered_now", Answer::No), bare);
    assert_eq!(said(BEFORE, "ground_covered_now", Answer::No), covered);
    assert_eq!(said(LATER, "ground_covered_now", Answer::Yes), covered, "both say so");
    assert_eq!(said(LATER, "bare_soil", Answer::No), covered);
}

/// As closing has it: what is not bare for now was not covered.
#[test]
fn soil_that_was_seen_bare_is_covered_by_no_answer_of_a_later_visit_that_it_is_not_bare() {
    let covered = |another: bool| {
        let site = after(|site| {
            site.answers(&[("ground_covered_now", Answer::Yes), ("bare_soil", Answer::Yes)]);
            if another {
                site.visit("2026-12-20T08:30:00-05:00");
            }
            site.answers(&[("bare_soil", Answer::No)]);
        });
        is_covered_now(site.desk.job())
    };
    assert_eq!([covered(false), covered(true)], [Some(true), Some(false)]);
    let asked_again = after(|site| {
        site.answers(&[("ground_covered_now", Answer::No), ("ground_covered_now", Answer::Unknown)]);
    });
    assert_eq!(is_covered_now(asked_again.desk.job()), Some(false), "a \"don't know\" covers no bare soil");
}

#[test]
fn the_order_list_names_every_word_that_may_not_be_the_last() {
    let open = |site: &Site| lines(site.desk.job(), Units::default()).1;
    let site = apart(LATER, &list::LIVE_LOAD, "40", "60");
    says(&open(&site), "Two phones say \"House, live load: 60\" and \"House, live load: 40\", and nobody can tell");
    let surely = apart(BEFORE, &list::LIVE_LOAD, "40", "60");
    assert!(!open(&surely).iter().any(|line| line.contains("wo phones")), "{:?}", open(&surely));
}

/// 10' is 120 in, and 120 1/16 in is not.
#[test]
fn what_was_typed_otherwise_and_comes_to_the_same_is_no_other_word() {
    let lines_of = |first: Observation, other: Observation| {
        after(|site| {
            logs_apart(site, LATER, other);
            site.desk.log(first);
        })
        .in_the_way()
    };
    let is_apart = |first: Observation, other: Observation| {
        lines_of(first, other).iter().any(|line| line.starts_with("two phones say"))
    };
    let span = |typed: &str| stated(joist(4), &list::CLEAR_SPAN, typed, BareUnit::Inches).unwrap().into();
    assert!(!is_apart(span("10'"), span("120")) && is_apart(span("10'"), span("120 1/16")));
    let load = |typed: &str| of_house(&list::LIVE_LOAD, typed);
    assert!(!is_apart(load("40"), load("40.0")) && is_apart(load("40"), load("40.5")));
    let site = Site::ready();
    let opening = *site.desk.job().now.openings().first().unwrap().0;
    let cut_back = |typed: &str| CutBack { opening, width: None, finish: Some(length(typed)) }.into();
    assert!(!is_apart(cut_back("1'"), cut_back("12")) && is_apart(cut_back("1'"), cut_back("12 1/16")));
    let of = *site.desk.job().now.joists().first().unwrap().0;
    let center = |typed: &str| JoistCenter { of, joist: JoistNumber::new(8).unwrap(), center: length(typed) }.into();
    assert!(!is_apart(center("10' 7 15/16"), center("127 15/16")) && is_apart(center("127 15/16"), center("128")));
    let height = |typed: &str| Fact::CrawlHeight(length(typed)).into();
    assert!(!is_apart(height("2'"), height("24")) && is_apart(height("2'"), height("24 1/16")));
    let limits: [fn(_) -> Fact; 2] = [Fact::FramingLimit, Fact::SubfloorLimit];
    for limit in limits {
        let limit = |typed: &str| limit(percent(typed)).into();
        assert!(!is_apart(limit("15"), limit("15.0")) && is_apart(limit("15"), limit("15.1")));
        assert!(is_apart(limit("15"), limit("14.9")));
    }
    let sheet = |width: &str, long: &str| Fact::Sheet(SheetSize { width: length(width), length: length(long) }).into();
    let is_same = |one: Observation, other: Observation| one.says_the_same(&other);
    assert!(is_same(sheet("4'", "8'"), sheet("48", "96")));
    assert!(!is_same(sheet("4'", "8'"), sheet("48 1/16", "96")) && !is_same(sheet("4'", "8'"), sheet("48", "96 1/16")));
    let at = *site.desk.job().now.sides().first().unwrap().0;
    let corner = |degrees: &str, trust| Corner { at, angle: parse_angle(degrees).ok(), trust }.into();
    assert!(!is_apart(corner("91", Trust::Built), corner("91.0", Trust::Built)));
    assert!(is_apart(corner("91", Trust::Built), corner("91.1", Trust::Built)));
    assert!(is_apart(corner("91", Trust::Built), corner("91", Trust::Checked)));
    // The joists' page asks the same.
    let apart_on_page = |first: &'static str, other: &'static str| {
        let site = after(|site| {
            logs_apart(site, LATER, stated(joist(4), &list::CLEAR_SPAN, other, BareUnit::Inches).unwrap());
            site.desk.says(joist(4), &list::CLEAR_SPAN, first);
            site.answers(&[("shower_wet", Answer::No)]);
        });
        crate::house::says(&crate::house::one(&site.desk, 4), "two phones say different things of it")
    };
    assert!(!apart_on_page("10'", "120"));
    assert!(apart_on_page("10'", "120 1/16"));
}

/// The form's field of an item of a part, and the answers to one that are marked as given.
fn in_form(site: &Site, of: &Part, item: &Item) -> (Option<Field>, Vec<String>) {
    let key = serde_json::to_string(&(of, item.what)).unwrap();
    let cards = under(site.desk.job(), Units::default(), Canvas { width_px: 340, height_px: 280 });
    let field = cards.iter().flat_map(|card| &card.fields).find(|field| field.key == key).cloned();
    let asks = cards.iter().flat_map(|card| &card.asks).flat_map(|ask| &ask.answers);
    let is_of =
        |act: &Act| matches!(&act.logs, Observation::Particular(it) if it.of == *of && it.what.as_str() == item.what);
    (field, asks.filter(|(act, is_so)| *is_so && is_of(act)).map(|(act, _)| act.label.clone()).collect())
}

/// A form logs what is not in its field already: what has to be said again is in none.
#[test]
fn what_two_phones_said_differently_is_asked_again_by_an_empty_field_and_no_marked_answer() {
    let field = |at, first, other| in_form(&apart(at, &list::LIVE_LOAD, first, other), &Part::House, &list::LIVE_LOAD);
    let typed = |at, first, other| field(at, first, other).0.map(|field| (field.typed, field.again)).unwrap();
    let is = |typed: &str, again: &str| (typed.to_owned(), again.to_owned());
    assert_eq!(typed(LATER, "40", "60"), is("", "40 or 60"));
    assert_eq!(typed(BEFORE, "40", "60"), is("40", ""), "surely the last");
    assert_eq!(typed(LATER, "40", "40.0"), is("40", ""), "the same");
    let marked = |at, first, other| in_form(&apart(at, &list::GRADE, first, other), &Part::House, &list::GRADE).1;
    assert!(marked(LATER, "#2", "#3").is_empty());
    assert_eq!([marked(BEFORE, "#2", "#3"), marked(LATER, "#2", "#2")], [["#2"], ["#2"]]);
    // Said again, as it was or not, it is in the field.
    for again in ["40", "60"] {
        let mut site = apart(LATER, &list::LIVE_LOAD, "40", "60");
        site.desk.pen.stamp_from(stamp_at("2026-12-25T08:00:00-06:00"));
        site.desk.says(Part::House, &list::LIVE_LOAD, again);
        assert_eq!(in_form(&site, &Part::House, &list::LIVE_LOAD).0.unwrap().typed, again);
        assert!(!site.in_the_way().iter().any(|line| line.starts_with("two phones say")));
    }
}

#[test]
fn what_was_measured_of_a_joist_that_was_replaced_is_asked_again_by_an_empty_field() {
    let own = |item: &Item, typed: &str, done: &str| {
        let site = after(|site| {
            site.desk.says(joist(3), item, typed);
            site.desk.says(joist(3), &list::DONE, done);
        });
        let field = in_form(&site, &joist(3), item).0.unwrap();
        (field.typed, field.again, field.shared)
    };
    let is = |typed: &str, again: &str, shared: &str| (typed.to_owned(), again.to_owned(), shared.to_owned());
    for (item, typed, all) in [
        (&list::BEARING, "3 in", "3 1/2 in"),
        (&list::DEPTH, "7 in", "7 1/4 in"),
        (&list::BREADTH, "1 3/4 in", "1 1/2 in"),
    ] {
        assert_eq!(own(item, typed, "replaced"), is("", typed, ""), "{}", item.what);
        assert_eq!(own(item, typed, "sistered"), is(typed, "", all), "{}", item.what);
        let measured_since = after(|site| {
            site.desk.says(joist(3), &list::DONE, "replaced");
            site.desk.says(joist(3), item, typed);
        });
        assert_eq!(in_form(&measured_since, &joist(3), item).0.unwrap().typed, typed, "{}", item.what);
    }
    assert_eq!(own(&list::CLEAR_SPAN, "9'", "replaced"), is("9'", "", "10'"), "the walls stand where they stood");
}

#[test]
fn a_fact_that_two_phones_said_differently_is_said_surely_by_neither() {
    let height = |at: &str, first: &'static str, other: &'static str| {
        let site = after(|site| {
            logs_apart(site, at, Fact::CrawlHeight(length(other)));
            site.desk.log(Fact::CrawlHeight(length(first)));
        });
        let read =
            |fact: &Fact| fact.length().filter(|_| matches!(fact, Fact::CrawlHeight(_))).map(|it| it.1.typed.clone());
        site.desk.job().surely(&read)
    };
    assert_eq!(height(LATER, "24", "18"), None);
    assert_eq!(height(BEFORE, "24 in", "18").as_deref(), Some("24 in"));
    assert_eq!(height(LATER, "24 in", "2'").as_deref(), Some("24 in"), "the same");
}

fn stamp_at(at: &str) -> Stamp {
    Stamp { at: time(at), ..stamp() }
}
