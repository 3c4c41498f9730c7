//! Cards, order list and report say the same of shims and vents: all read one result.

use crate::desk::Desk;
use crate::house::{house, inches};
use duckboard::draw::Canvas;
use duckboard::draw::under::under;
use duckboard::engine::job::{Fact, SpanRating};
use duckboard::engine::orders::{Line, order_list};
use duckboard::engine::particular::Part;
use duckboard::engine::particular::list::*;
use duckboard::engine::sheets::to_lay;
use duckboard::engine::survey::Opening;
use duckboard::engine::take::Units;
use duckboard::engine::units::Amount;

fn ordered(desk: &Desk, named: &str) -> Vec<Line> {
    let lines = order_list(&desk.book, Units::default()).lines;
    lines.into_iter().filter(|line| line.needed.name.starts_with(named)).collect()
}

/// The card of that title: its headline and all its lines.
fn card(desk: &Desk, title: &str) -> String {
    let cards = under(desk.job(), Units::default(), Canvas { width_px: 340, height_px: 280 });
    let card = cards.into_iter().find(|card| card.title == title).unwrap();
    card.lines.into_iter().fold(card.headline, |text, line| text + "\n" + &line.text)
}

/// Drops of 14 1/8, 14 5/16, 14 3/8 and 14 3/16 to the high joist: shims of 3/16, 1/4 and
/// 1/16 in. Computed by hand: 3/16 is 1/8 and 1/16; so 1 of 1/4, 1 of 1/8, 2 of 1/16.
#[test]
fn the_card_of_levels_counts_the_shims_that_the_order_list_buys() {
    let mut desk = house();
    for (joist, drop) in [(2, "14 1/8"), (4, "14 5/16"), (6, "14 3/8"), (8, "14 3/16")] {
        desk.reads_level(joist, "5'", drop);
    }
    let card = card(&desk, "How level are the joists?");
    let lines = ordered(&desk, "Flat shims, ");
    let counts: Vec<_> = lines.iter().map(|line| (line.needed.name.as_str(), line.needed.amount)).collect();
    let one = |name, count| (name, Amount::whole(count));
    let thick = ["Flat shims, 1/4\" thick", "Flat shims, 1/8\" thick", "Flat shims, 1/16\" thick"];
    assert_eq!(counts, [one(thick[0], 1), one(thick[1], 1), one(thick[2], 2)]);
    assert!(card.contains("flat shims: 1 shim of 1/4\", 1 shim of 1/8\", 2 shims of 1/16\", and waste"), "{card}");
    assert!(lines.iter().all(|line| line.to_order >= line.needed.amount));
}

#[test]
fn the_card_of_air_counts_the_vents_that_the_order_list_buys() {
    let mut desk = house();
    for (item, typed) in [(GROUND_LENGTH, "25'"), (GROUND_WIDTH, "10'"), (VENT_AREA, "50")] {
        desk.says(Part::House, &item, typed);
    }
    let lines = ordered(&desk, "Foundation vents");
    assert_eq!(lines.len(), 1);
    assert_eq!(lines[0].to_order, Amount::whole(5));
    assert!(card(&desk, "Air under the house").starts_with("5 vents\n"));
}

/// Nine joists 16 in apart, no stamp: 3/4 in bridges them whatever its wood, 19/32 in if it is
/// rated, 1/2 in is thinner than any.
#[test]
fn sheets_without_a_stamp_are_held_to_the_weakest_wood() {
    let says = |typed: &str| {
        let mut desk = house();
        desk.log(Fact::SheetThickness(inches(typed)));
        card(&desk, "Do the sheets bridge the joists?")
    };
    assert!(says("3/4").starts_with("As a rule\n"), "{}", says("3/4"));
    for typed in ["23/32", "19/32"] {
        assert!(says(typed).starts_with("Not enough to say\nNext: look for the stamp."), "{}", says(typed));
    }
    assert!(says("1/2").starts_with("No, without a stamp\n"), "{}", says("1/2"));
}

/// Joists 3 and 4 are 40 and 56 in from the corner: an opening between them is one bay, and what
/// sheets go to is for two or more.
#[test]
fn a_patch_over_one_bay_is_named_whether_or_not_a_rating_is_said() {
    const ONE_BAY: &str = "is one bay";
    let says = |along: &str, long: &str, fact: Option<Fact>| {
        let mut desk = house();
        let (id, opening) = desk.job().now.openings().iter().next().map(|(id, it)| (*id, it.value.clone())).unwrap();
        desk.correct(id, Opening { along: inches(along), length: inches(long), ..opening });
        fact.into_iter().for_each(|fact| {
            desk.log(fact);
        });
        let card = card(&desk, "Do the sheets bridge the joists?");
        let stock = to_lay(desk.job()).as_known().unwrap().doubts.concat();
        let listed =
            ordered(&desk, "Sheets").into_iter().flat_map(|line| line.needed.from).collect::<Vec<_>>().concat();
        let is_named = [&card, &stock, &listed].map(|words| words.contains(ONE_BAY));
        (card.lines().next().unwrap().to_owned(), is_named)
    };
    let thick = |typed| Some(Fact::SheetThickness(inches(typed)));
    let rated = |on_center| Some(Fact::SpanRating(SpanRating::new(on_center).unwrap()));
    for fact in [None, rated(16), rated(24), thick("3/4"), thick("23/32"), thick("1/2")] {
        let (headline, is_named) = says("44", "8", fact.clone());
        assert_eq!(is_named, [true; 3], "{fact:?}");
        assert!(["Not enough to say", "No, without a stamp"].contains(&headline.as_str()), "{fact:?}: {headline}");
        // From 40 in to 57 it lies over joist 4 too.
        assert_eq!(says("44", "13", fact.clone()).1, [false; 3], "{fact:?}");
        assert_eq!(says("44", "12", fact.clone()).1, [true; 3], "{fact:?}");
    }
    assert_eq!(says("44", "13", thick("3/4")).0, "As a rule");
}
