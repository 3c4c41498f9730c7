//! What is missing from a log, or said in words that this build does not have.

use crate::desk::label;
use crate::house::joist;
use crate::{Site, after, held_by};
use duckboard::engine::closing::{CloseIn, close_in};
use duckboard::engine::condition::Finding;
use duckboard::engine::figure::Known;
use duckboard::engine::framing::DamageKind;
use duckboard::engine::job::{Book, Record};
use duckboard::engine::moisture::{Answer, Material};
use duckboard::engine::particular::{Part, Particular, Value, list};
use duckboard::engine::place::{Element, Face};
use duckboard::engine::take::Units;

fn says(site: &mut Site, of: Part, what: &str, words: &str) {
    site.desk.log(Particular { of, what: label(what), is: Value::Words(label(words)) });
}

/// A later build may add a word, an item or a question without a kind of entry for it.
#[test]
fn words_and_questions_that_no_list_has_keep_the_floor_open() {
    let beyond = |words: &str| format!("1 word that no list of this build has: {words}");
    held_by(|site| says(site, joist(4), "fire damage", "charred"), &beyond("Joist 4, fire damage: charred"));
    held_by(|site| says(site, joist(4), list::AWL.what, "goes in at one end"), "goes in at one end");
    held_by(|site| says(site, Part::House, "smell", "gas"), "smell: gas");
    held_by(|site| site.answers(&[("gas_smell", Answer::Yes)]), &beyond("gas_smell"));
    let site = after(|site| {
        says(site, joist(4), "fire damage", "charred");
        let last = *site.desk.job().now.particulars().keys().next_back().unwrap();
        site.desk.withdraw(last);
    });
    assert!(site.decision().is_ready(), "taken back");
}

/// Every entry takes the count after the greatest that its phone knew of.
#[test]
fn an_entry_that_the_counts_prove_and_that_is_not_here_keeps_the_floor_open() {
    let mut site = Site::ready();
    site.finds(Finding::Rotten, Some(site.places[3]));
    let rotten = *site.desk.job().now.conditions().keys().next_back().unwrap();
    site.answers(&[("read_at_depth", Answer::No)]);
    let all = site.desk.book.log().records();
    let book = Book::of(all.filter(|record| record.id() != rotten).cloned().collect::<Vec<Record>>());
    let Known { value: CloseIn { decision, conditions, .. }, .. } = close_in(book.job(), Units::default());
    let lines: Vec<_> = conditions.iter().flat_map(|it| &it.in_the_way).map(|it| it.what.as_str()).collect();
    assert!(!decision.is_ready() && lines == ["1 entry not here: left out of a file, or damaged"], "{lines:?}");
}

/// The floor is ready on 26 October; joists and ground were looked at on the 5th and the 26th.
#[test]
fn what_was_looked_at_more_than_three_months_before_the_visit_is_looked_at_again() {
    let read_in = |day: &'static str| {
        move |site: &mut Site| {
            site.visit(day);
            site.crawl_air("57", "64");
            site.reads(["14", "15", "15.5", "15", "14", "13"]);
            let boards = site.place(Element::SubfloorBelow, 2);
            site.read(boards, "9", Material::Solid);
        }
    };
    let in_the_way = |day| after(read_in(day)).in_the_way().concat();
    // What makes the house sound is stamped 25 November; the visits of the others are in autumn.
    assert_eq!(in_the_way("2027-01-26T08:00:00-05:00"), "");
    let just_over = in_the_way("2027-01-26T08:00:01-05:00");
    for asks in ["Is it dealt with: ground moisture?", "Is all soil covered now, laps and edges sealed?"] {
        assert!(just_over.contains(asks), "{asks}: {just_over}");
    }
    let years_later = in_the_way("2029-10-20T08:00:00-05:00");
    for words in ["joists 1, 2, 3, 4, 5, 6", "that no girder is near", "Is all soil covered now"] {
        assert!(years_later.contains(words), "{words}: {years_later}");
    }
    let again = after(|site| {
        read_in("2029-10-20T08:00:00-05:00")(site);
        for number in 1..=6 {
            site.desk.says(joist(number), &list::AWL, "stops everywhere");
        }
        site.desk.says(Part::House, &list::GIRDER_NEAR, "no");
        site.answers(&[("dealt_with.ground", Answer::Yes), ("ground_covered_now", Answer::Yes)]);
    });
    assert!(again.decision().is_ready(), "{:#?}", again.in_the_way());
}

/// Ninety-two days, to the second.
#[test]
fn joists_and_what_carries_them_are_as_old_as_they_were_looked_at_last() {
    let looked_at = |at: &'static str, and: fn(&mut Site)| {
        let site = after(|site| {
            site.at(at);
            for number in 1..=6 {
                site.desk.says(joist(number), &list::AWL, "stops everywhere");
            }
            site.desk.says(Part::House, &list::GIRDER_NEAR, "yes");
            site.desk.says(Part::Girder(1), &list::STATE, "sound");
            site.desk.says(Part::Girder(1), &list::PLIES_END, "over piers");
            site.answers(&[("dealt_with.ground", Answer::Yes), ("ground_covered_now", Answer::Yes)]);
            and(site);
            site.visit("2027-04-01T08:00:00-05:00");
        });
        let lines = site.in_the_way();
        let old =
            lines.iter().filter_map(|line| line.strip_prefix("looked at more than three months before this visit: "));
        old.map(|line| line.split(": ").next().unwrap()).collect::<Vec<_>>().join("; ")
    };
    assert_eq!(looked_at("2026-12-30T08:00:00-05:00", |_| ()), "");
    let old = looked_at("2026-12-30T07:59:59-05:00", |_| ());
    assert_eq!(old, "joists 1, 2, 3, 4, 5, 6; girder 1; \"Is it dealt with");
    let mended = looked_at("2026-12-30T07:59:59-05:00", |site| {
        site.at("2026-12-30T08:00:00-05:00");
        site.desk.says(Part::Girder(1), &list::DONE, "replaced");
        site.desk.says(joist(3), &list::DONE, "sistered");
        site.answers(&[("ground_covered_now", Answer::Yes)]);
    });
    assert_eq!(mended, "joists 1, 2, 4, 5, 6; \"Is it dealt with");
}

/// By spots and places it is the same as by a word.
#[test]
fn awls_of_years_ago_are_pushed_in_again_however_they_were_logged() {
    const YEARS_LATER: &str = "2029-10-20T08:00:00-05:00";
    let in_spots = |site: &mut Site| {
        for number in 1..=6 {
            let word = site.desk.says(joist(number), &list::AWL, "stops everywhere");
            site.desk.withdraw(word);
            let job = site.desk.job();
            let words = job
                .now
                .particulars()
                .iter()
                .filter(|(_, it)| it.value.of == joist(number) && it.value.what.as_str() == list::AWL.what);
            for id in words.map(|(id, _)| *id).collect::<Vec<_>>() {
                site.desk.withdraw(id);
            }
            for stretch in [("0", "6"), ("55", "65"), ("112", "114")] {
                site.desk.spot(number, DamageKind::Soft, Some(stretch), Some(Face::LowerEdge), "0");
            }
        }
    };
    let lines = |change: &dyn Fn(&mut Site), again: bool| {
        let site = after(|site| {
            in_spots(site);
            change(site);
            site.visit(YEARS_LATER);
            if again {
                in_spots(site);
            }
        });
        site.in_the_way().into_iter().filter(|line| line.contains("three months before")).collect::<Vec<_>>()
    };
    let nothing = |_: &mut Site| ();
    let probed = "joists 1, 2, 3, 4, 5, 6: probe each again, and say how the awl does";
    assert!(lines(&nothing, false)[0].ends_with(probed), "{:#?}", lines(&nothing, false));
    assert!(!lines(&nothing, true).iter().any(|line| line.contains("joists")), "{:#?}", lines(&nothing, true));
    let girder = |site: &mut Site| {
        site.desk.says(Part::House, &list::GIRDER_NEAR, "yes");
        let at = site.place(Element::Girder, 3);
        site.finds(Finding::Sound, Some(at));
    };
    assert!(lines(&girder, true)[0].contains("the girder there: look again"), "{:#?}", lines(&girder, true));
}

/// A question that no page asks any more cannot be answered again.
#[test]
fn an_old_answer_counts_only_while_it_is_asked_for() {
    let site = after(|site| {
        site.finds(Finding::Mould, None);
        let mold = *site.desk.job().now.conditions().keys().next_back().unwrap();
        site.answers(&[("gone.mold", Answer::Yes)]);
        site.desk.withdraw(mold);
        site.visit("2029-10-20T08:00:00-05:00");
    });
    assert!(!site.in_the_way().iter().any(|line| line.contains("mold")), "{:#?}", site.in_the_way());
}

/// Soil that was looked at and not bare may be bare a season later.
#[test]
fn that_no_soil_is_bare_is_as_old_as_it_was_seen_last() {
    let seen = |visit: &'static str| {
        let site = after(|site| {
            let ground = ["bare_soil", "damp_soil", "dew_beads", "cold_months"].map(|name| (name, Answer::No));
            site.visit("2026-12-30T08:00:00-05:00");
            site.answers(&ground);
            site.visit(visit);
        });
        site.in_the_way().into_iter().any(|line| line.contains("whether soil is bare: look again"))
    };
    assert_eq!(["2027-04-01T08:00:00-05:00", "2027-04-01T08:00:01-05:00"].map(seen), [false, true]);
}
