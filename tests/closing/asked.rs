//! What a line says ends it can be done: every check is asked on the page, and its yes ends the line.

use crate::house::joist;
use crate::{Site, after};
use duckboard::draw::Canvas;
use duckboard::draw::water::water;
use duckboard::engine::framing::done::SISTERS_BEYOND;
use duckboard::engine::framing::headers::HEADER_DONE;
use duckboard::engine::framing::past::PAST_SPANS;
use duckboard::engine::job::Observation;
use duckboard::engine::particular::{Part, list};
use duckboard::engine::take::Units;

/// Taps yes under the page's question of that name; was it asked?
fn taps_yes(site: &mut Site, name: &str) -> bool {
    let cards = water(site.desk.job(), Units::default(), Canvas { width_px: 340, height_px: 280 });
    let answers = cards.into_iter().flat_map(|card| card.asks).flat_map(|ask| ask.answers);
    let is_it = |logs: &Observation| matches!(logs, Observation::Check(check) if check.of.as_str() == name);
    let yes = answers.map(|(act, _)| act).find(|act| act.label == "yes" && is_it(&act.logs));
    let is_asked = yes.is_some();
    yes.into_iter().for_each(|act| {
        site.desk.log(act.logs);
    });
    is_asked
}

fn girder(site: &mut Site, over: &str, clear: &str) {
    site.desk.says(Part::House, &list::GIRDER_NEAR, "yes");
    site.desk.says(Part::Girder(1), &list::STATE, "sound");
    site.desk.says(Part::Girder(1), &list::PLIES_END, "over piers");
    site.desk.says(joist(4), &list::OVER_GIRDER, over);
    site.desk.says(joist(4), &list::CLEAR_SPAN, clear);
}

fn past(site: &mut Site) {
    girder(site, "butts, tied", "5'");
}

fn header(site: &mut Site) {
    site.desk.says(Part::House, &list::HEADER_SPAN, "8'");
    site.desk.says(Part::House, &list::TRIMMERS, "doubled");
}

/// DFL #2 does not span 14' 6"; with a sister of the same it does.
fn beyond(site: &mut Site) {
    girder(site, "goes through", "10'");
    site.desk.says(joist(4), &list::NEXT_SPAN, "14' 6");
    site.desk.says(joist(4), &list::DONE, "sistered");
}

#[test]
fn a_check_that_a_line_asks_for_is_on_the_page_and_ends_it() {
    for (name, change) in [(PAST_SPANS, past as fn(&mut Site)), (HEADER_DONE, header), (SISTERS_BEYOND, beyond)] {
        let mut site = after(change);
        let lines = site.in_the_way();
        assert!(!lines.is_empty() && lines.iter().all(|line| line.contains("answer the check")), "{name}: {lines:#?}");
        assert!(taps_yes(&mut site, name), "{name} is not asked");
        assert!(site.decision().is_ready(), "{name}: {:#?}", site.in_the_way());
        assert!(!taps_yes(&mut Site::ready(), name), "{name} is asked of nobody else");
    }
}
