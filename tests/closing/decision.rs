//! Closing is everything else's conclusion: the decision as a whole.

use crate::house::joist;
use crate::{Site, after, drop_, held_by, length};
use duckboard::engine::closing::{Decision, close_in};
use duckboard::engine::condition::{Condition, Finding};
use duckboard::engine::entry::DeviceId;
use duckboard::engine::job::{Added, Book, Fact, Record};
use duckboard::engine::particular::list;
use duckboard::engine::sample;
use duckboard::engine::take::Units;

/// A floor over wood too close to the soil may be closed, and not without a word of it.
#[test]
fn what_the_page_below_finds_against_the_rules_is_said_beside_ready() {
    let says = |inches: &'static str| {
        let site = after(|site| drop_(site.desk.log(Fact::CrawlHeight(length(inches)))));
        let known = close_in(site.desk.job(), Units::default());
        assert!(known.value.decision.is_ready(), "{:#?}", site.in_the_way());
        known.doubts.iter().any(|doubt| doubt.contains("Joists to soil"))
    };
    assert!(says("17 15/16") && !says("18"));
}

#[test]
fn a_floor_with_everything_settled_is_ready() {
    let site = Site::ready();
    assert_eq!((site.decision(), site.in_the_way()), (Decision::Ready, Vec::new()));
    let known = site.close_in();
    assert!(known.value.conditions.iter().all(|condition| condition.holds() == Some(true)));
    assert!(known.doubts.iter().any(|doubt| doubt.contains("at depth")), "{:?}", known.doubts);
    let read_last = *site.desk.job().now.readings().keys().next_back().unwrap();
    assert!(known.why.used.contains(&read_last), "what it rests on is named");
}

#[test]
fn an_empty_job_is_not_ready_and_says_what_to_do() {
    let desk = crate::desk::Desk::new();
    let known = close_in(desk.job(), Units::default());
    assert!(matches!(known.value.decision, Decision::NotEnough(_)), "{:?}", known.value.decision);
}

/// What was in the way and known counts as well as what nobody knows.
#[test]
fn the_headline_counts_what_is_in_the_way() {
    let labels = [Decision::NotYet(1), Decision::NotYet(3), Decision::NotEnough(1)].map(Decision::label);
    assert_eq!(
        labels,
        ["Not yet: 1 thing in the way", "Not yet: 3 things in the way", "Not enough to say: 1 thing to find out"]
    );
    let site = after(|site| {
        site.finds(Finding::Mould, None);
        site.desk.says(joist(3), &list::AWL, "cannot reach");
    });
    assert_eq!(site.decision(), Decision::NotYet(2), "{:#?}", site.in_the_way());
    let site = after(|site| drop_(site.desk.says(joist(3), &list::AWL, "cannot reach")));
    assert_eq!(site.decision(), Decision::NotEnough(1), "{:#?}", site.in_the_way());
}

/// What an entry of a later version says may matter: nobody here knows.
#[test]
fn an_entry_that_this_build_cannot_read_keeps_it_open() {
    let mut site = Site::ready();
    let id = site.desk.next_id();
    let json = serde_json::to_string(&site.desk.pen.record(Fact::Archived(false))).unwrap();
    let json = json.replace("\"fact\"", "\"ghost\"");
    let record = Record::read(&json).unwrap();
    assert_eq!((record.id(), site.desk.book.add(record)), (id, Added::New));
    assert!(
        site.in_the_way()[0].contains("1 entry that this build cannot read wholly, for it does not know: ghost"),
        "{:#?}",
        site.in_the_way()
    );
}

/// As a later version may write it: what is known of it counts, and what is not may matter.
#[test]
fn a_field_that_this_build_does_not_know_keeps_it_open() {
    let mut site = Site::ready();
    let condition = Condition { place: Some(site.places[3]), finding: Finding::Sound, note: None };
    let json = serde_json::to_string(&site.desk.pen.record(condition)).unwrap();
    let json = json.replace("\"sound\"", "\"sound\",\"but\":\"rotten inside\"");
    assert_eq!(site.desk.book.add(Record::read(&json).unwrap()), Added::New);
    assert_eq!(site.desk.job().now.conditions().len(), 1);
    assert_eq!(
        site.in_the_way(),
        [
            "1 entry that this build cannot read wholly, for it does not know: but: open the job with the newer Duckboard"
        ]
    );
}

/// Left out of a file, or damaged: it may say anything.
#[test]
fn an_entry_that_is_known_to_be_and_is_not_here_keeps_it_open_until_it_comes() {
    let mut site = Site::ready();
    let entry = Record::of(site.desk.pen.record(Fact::Archived(false))).unwrap();
    assert_eq!(site.desk.book.add(Record::absent(entry.id())), Added::New);
    assert_eq!(site.decision(), Decision::NotEnough(1));
    assert_eq!(
        site.in_the_way(),
        ["1 entry not here: left out of a file, or damaged: open the file of the phone that has the rest"]
    );
    assert_eq!(site.desk.book.add(entry), Added::New);
    assert!(site.decision().is_ready(), "{:#?}", site.in_the_way());
}

#[test]
fn corrections_that_disagree_keep_it_open() {
    held_by(
        |site| {
            let (id, reading) =
                site.desk.job().now.readings().iter().next().map(|(id, it)| (*id, it.value.clone())).unwrap();
            site.desk.correct(id, reading.clone());
            site.desk.correct(id, reading);
        },
        "two people corrected differently",
    );
}

/// Invented: at the second visit joists are wet still, one is rotten, and bare soil lies below.
#[test]
fn the_sample_is_not_closed_yet() {
    let book = Book::of(sample::entries(DeviceId::new(7)).into_iter().map(|entry| Record::of(entry).unwrap()));
    let known = close_in(book.job(), Units::default());
    assert!(matches!(known.value.decision, Decision::NotYet(_)));
    let failed = known.value.conditions.iter().filter(|it| it.holds() == Some(false)).count();
    assert_eq!(failed, 5, "{:?}", known.value.conditions);
}
