//! Cards, order list and report say the same of shims and vents: all read one result.

use crate::desk::Desk;
use crate::house::{house, inches};
use duckboard::draw::Canvas;
use duckboard::draw::under::under;
use duckboard::engine::job::Fact;
use duckboard::engine::orders::{Line, order_list};
use duckboard::engine::particular::Part;
use duckboard::engine::particular::list::*;
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
