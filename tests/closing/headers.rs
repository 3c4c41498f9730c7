//! Headers over framed openings: what the framing page asks of one holds closing too.

use crate::{Site, after, drop_, held_by, ready};
use duckboard::engine::framing::headers::{HEADER_DONE, asks_for_header_done};
use duckboard::engine::moisture::Answer;
use duckboard::engine::particular::{Part, list};

/// A header so long, so far from the bearing of the joists at its ends, which are so.
fn header(site: &mut Site, span: &str, to_bearing: Option<&str>, trimmers: Option<&str>) {
    site.desk.says(Part::House, &list::HEADER_SPAN, span);
    to_bearing.into_iter().for_each(|far| {
        site.desk.says(Part::House, &list::HEADER_TO_BEARING, far);
    });
    trimmers.into_iter().for_each(|trimmers| {
        site.desk.says(Part::House, &list::TRIMMERS, trimmers);
    });
}

fn lines(span: &str, to_bearing: Option<&str>, trimmers: Option<&str>) -> Vec<String> {
    let site = after(|site| header(site, span, to_bearing, trimmers));
    assert_eq!(site.decision().is_ready(), site.in_the_way().is_empty());
    site.in_the_way()
}

/// A header of up to 4 ft hangs on single joists only within 3 ft of their bearing (IRC
/// R802.9 (2024), the like rule for roofs, as quoted \[P2\]).
#[test]
fn a_short_header_hangs_on_single_joists_only_near_their_bearing() {
    for trimmers in [None, Some("single")] {
        assert!(lines("4'", Some("3'"), trimmers).is_empty());
        assert!(lines("4'", Some("3' 1/16"), trimmers)[0].contains("double the joists at its ends"), "{trimmers:?}");
        assert!(lines("4'", None, trimmers)[0].contains("measure from it to the nearer bearing"), "{trimmers:?}");
    }
    assert!(lines("4'", None, Some("doubled")).is_empty() && lines("3' 6", Some("6'"), Some("doubled")).is_empty());
    held_by(|site| header(site, "3' 6", Some("6'"), Some("single")), "They are single");
    held_by(|site| header(site, "3' 6", Some("6'"), None), "Nobody said that they are doubled");
}

/// Over 4 ft it and the joists at its ends are doubled, over 6 ft it is hung (WCD 1 (2001), p. 8
/// \[P\]).
#[test]
fn a_long_header_is_doubled_and_hung_and_so_are_the_joists_at_its_ends() {
    let count = |span| lines(span, Some("1'"), Some("doubled")).len();
    assert_eq!(["4'", "4' 1/16", "6'", "6' 1/16"].map(count), [0, 1, 1, 2]);
    assert_eq!(lines("8'", Some("6'"), None).len(), 3, "nobody said what its joists are");
    held_by(|site| header(site, "4' 1/16", None, Some("single")), "They are single");
    held_by(|site| header(site, "8'", None, Some("doubled")), "Header of 8' 0\": over 6 ft it is hung");
    held_by(
        |site| {
            header(site, "8'", None, None);
            site.answers(&[(HEADER_DONE, Answer::Yes)]);
        },
        "Nobody said that they are doubled",
    );
}

/// Tail joists over 12 ft are held (WCD 1 (2001), p. 8 \[P\]).
#[test]
fn long_tail_joists_are_held() {
    let tail = |long: &'static str| move |site: &mut Site| drop_(site.desk.says(Part::House, &list::TAIL_JOIST, long));
    ready(tail("12'"));
    held_by(tail("12' 1/16"), "Tail joists of 12' 0 1/16\": hangers or a ledger");
    ready(|site| {
        tail("12' 1/16")(site);
        site.answers(&[(HEADER_DONE, Answer::Yes)]);
    });
}

#[test]
fn what_is_asked_of_a_header_is_ended_by_saying_that_it_is_so() {
    let long = |site: &mut Site| header(site, "8'", None, Some("doubled"));
    assert!(asks_for_header_done(after(long).desk.job()) && !asks_for_header_done(Site::ready().desk.job()));
    ready(|site| {
        long(site);
        site.answers(&[(HEADER_DONE, Answer::No), (HEADER_DONE, Answer::Yes)]);
    });
    for answer in [Answer::No, Answer::Unknown] {
        held_by(
            |site| {
                long(site);
                site.answers(&[(HEADER_DONE, Answer::Yes), (HEADER_DONE, answer)]);
            },
            "see that it is so",
        );
    }
    held_by(
        |site| {
            long(site);
            site.answers(&[(HEADER_DONE, Answer::Yes)]);
            header(site, "9'", None, None);
        },
        "Header of 9' 0\"",
    );
}

/// Whoever says something of a header says that there is one.
#[test]
fn a_header_of_which_nobody_said_how_long_it_is_is_measured() {
    for (item, typed) in [(&list::TRIMMERS, "single"), (&list::HEADER_TO_BEARING, "8'")] {
        held_by(|site| drop_(site.desk.says(Part::House, item, typed)), "Measure the longest header's span");
    }
    assert!(lines("4'", Some("3'"), Some("single")).is_empty());
}
