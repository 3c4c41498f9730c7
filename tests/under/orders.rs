use crate::desk::Desk;
use crate::house::{house, inches, joist, sound_house};
use duckboard::engine::condition::{Condition, Finding};
use duckboard::engine::entry::Label;
use duckboard::engine::framing::DamageKind;
use duckboard::engine::job::{HandOver, Record};
use duckboard::engine::moisture::Answer;
use duckboard::engine::orders::{Change, Line, OrderList, order_list, to_order};
use duckboard::engine::origin::Check;
use duckboard::engine::particular::list::*;
use duckboard::engine::particular::{Part, stated};
use duckboard::engine::place::{Element, Face, JoistNumber, Place, Position};
use duckboard::engine::take::Units;
use duckboard::engine::units::Amount;
use duckboard::engine::units::tape::BareUnit;
use proptest::prelude::*;
use std::collections::BTreeSet;

pub fn list(desk: &Desk) -> OrderList {
    order_list(&desk.book, Units::default())
}

fn line(desk: &Desk, name: &str) -> Line {
    let lines = list(desk).lines;
    let found = lines.iter().find(|line| line.needed.name == name);
    found.unwrap_or_else(|| panic!("{name} is not among {:?}", names(desk))).clone()
}

pub fn names(desk: &Desk) -> Vec<String> {
    list(desk).lines.into_iter().map(|line| line.needed.name).collect()
}

fn order(name: &str) -> Part {
    Part::Order(Label::new(name).unwrap())
}

const SHEETS: &str = "Sheets 4' × 8'";

#[test]
fn what_cannot_be_told_yet_is_named_and_not_guessed() {
    let desk = Desk::new();
    let list = list(&desk);
    assert!(list.lines.is_empty(), "{:?}", list.lines);
    assert!(
        list.open[0].contains("place the opening") && list.open[0].contains("lay out the joists"),
        "{:?}",
        list.open
    );
    assert!(names(&house()).contains(&SHEETS.to_owned()));
}

#[test]
fn lumber_of_one_kind_is_cut_together() {
    let mut desk = sound_house();
    for number in [2, 7] {
        desk.says(joist(number), &SOFT_FACE, "lower edge");
    }
    desk.says(joist(2), &SOFT_DEPTH, "1/2");
    desk.says(joist(2), &SOFT_LENGTH, "1'");
    desk.says(joist(7), &SOFT_LENGTH, "6'");
    desk.says(joist(7), &SOFT_DEPTH, "1/2");
    // Each 10 ft and two bearings of 1 1/2 in: 10 ft 3 in, out of sticks of 12 ft.
    let sisters = line(&desk, "2 in lumber 7 1/4\" deep, 12 ft");
    assert_eq!(sisters.to_order, Amount::whole(2));
    assert_eq!(line(&desk, "Joist hangers").to_order, Amount::whole(2), "two for the one that is replaced");
    desk.log(duckboard::engine::job::Fact::BlockLumber(Label::new("2 × 8").unwrap()));
    desk.says(Part::House, &SISTER_LUMBER, "2 × 8");
    let together = list(&desk).lines.into_iter().filter(|line| line.needed.name.starts_with("2 × 8, "));
    let from: Vec<_> = together.flat_map(|line| line.needed.from).collect();
    assert!(
        from.iter().any(|from| from.contains("joist 2: sister")) && from.iter().any(|from| from.contains("blocks"))
    );
}

#[test]
fn a_gutter_that_does_not_take_the_water_is_named_and_not_ordered() {
    let ordered = |takes: &str| {
        let mut desk = house();
        for (item, typed) in [(ROOF_AREA, "1000"), (RAIN, "6.8"), (DOWNSPOUT, "6"), (EAVE, "24'")] {
            desk.says(Part::House, &item, typed);
        }
        desk.says(Part::House, &PITCH, "6 to 8/12");
        desk.says(Part::House, &GUTTER, "5 in K-style");
        desk.says(Part::House, &GUTTER_TAKES, takes);
        let list = list(&desk);
        let is_named =
            list.open.iter().any(|open| open.starts_with("Gutter, 5 in K-style: it does not take the water"));
        (list.lines.iter().any(|line| line.needed.name.starts_with("Gutter")), is_named)
    };
    assert_eq!(ordered("6000"), (false, true));
    assert_eq!(ordered("8000"), (true, false));
}

#[test]
fn what_was_assumed_for_a_line_stands_on_it() {
    let mut desk = house();
    for (item, typed) in
        [(COVERED, "yes"), (VENT_AREA, "50"), (ROOF_AREA, "1000"), (RAIN, "1"), (DOWNSPOUT, "6"), (EAVE, "24'")]
    {
        desk.says(Part::House, &item, typed);
    }
    let says = |desk: &Desk, name: &str| line(desk, name).needed.from.join("; ");
    let room = "the ground is as large as the box around this room";
    for name in ["Ground cover", "Seam tape", "Seal along walls and piers"] {
        let from = says(&desk, name);
        assert!(from.contains(room) && from.contains("roll length: 100' 0\""), "{name}: {from}");
    }
    let vents = says(&desk, "Foundation vents");
    assert!(vents.contains(room) && vents.contains("vents of 1/150 of the floor"), "{vents}");
    for name in ["Gutter, 5 in K-style", "Downspouts", "Downspout extensions"] {
        assert!(says(&desk, name).contains("a roof of 12/12 or more"), "{name}");
    }
    // Said, nothing is assumed.
    desk.says(Part::House, &GROUND_LENGTH, "40'");
    desk.says(Part::House, &GROUND_WIDTH, "30'");
    desk.says(Part::House, &PITCH, "4 to 5/12");
    desk.says(Part::House, &VENT_RATIO, "1/150");
    for name in ["Foundation vents", "Downspouts"] {
        assert!(!says(&desk, name).contains("assumed"), "{name}");
    }
    assert!(!says(&desk, "Ground cover").contains(room));
    // A fan as well.
    let mut desk = house();
    desk.says(Part::House, &AIR_WAY, "exhaust fan");
    desk.log(duckboard::engine::job::Fact::CrawlHeight(crate::desk::length("24")));
    let list = list(&desk);
    let fan = list.lines.iter().find(|line| line.needed.name.starts_with("Exhaust fan")).unwrap();
    assert!(fan.needed.from.join("; ").contains(room));
}

/// A table of which nobody says whose it is buys nothing.
#[test]
fn a_gutter_that_nobody_named_is_not_ordered_by_the_name_of_another() {
    let mut desk = house();
    for (item, typed) in [(ROOF_AREA, "1000"), (RAIN, "1"), (DOWNSPOUT, "6"), (EAVE, "24'"), (GUTTER_TAKES, "4000")] {
        desk.says(Part::House, &item, typed);
    }
    assert!(!names(&desk).iter().any(|name| name.starts_with("Gutter")), "{:?}", names(&desk));
    assert!(list(&desk).open.iter().any(|open| open.starts_with("Gutter: only its own table was stated")));
    desk.says(Part::House, &GUTTER, "6 in K-style");
    assert!(names(&desk).contains(&"Gutter, 6 in K-style".to_owned()));
}

#[test]
fn a_cover_that_closing_asks_for_and_nobody_ordered_is_named() {
    let is_named = |covered: Option<&str>, answers: &[&str]| {
        let mut desk = house();
        if let Some(covered) = covered {
            desk.says(Part::House, &COVERED, covered);
        }
        for of in answers {
            desk.log(Check { of: crate::desk::label(of), answer: Answer::Yes });
        }
        list(&desk).open.iter().any(|open| open.starts_with("Ground cover: before the floor is closed"))
    };
    assert!(is_named(None, &[]), "nobody looked");
    assert!(!is_named(Some("yes"), &[]) && !is_named(Some("no"), &[]), "it was said");
    assert!(!is_named(None, &["ground_covered_now"]));
    assert!(is_named(None, &["ground_covered_now", "bare_soil"]), "bare again");
}

/// It went over the girder in one piece: what is sold may not be as long, and nobody measured the lap.
#[test]
fn a_joist_that_went_through_is_ordered_for_each_span_and_its_sister_for_the_first() {
    let mut desk = sound_house();
    for number in [2, 7] {
        desk.says(joist(number), &OVER_GIRDER, "goes through");
        desk.says(joist(number), &NEXT_SPAN, "8'");
        desk.says(joist(number), &SOFT_FACE, "lower edge");
        desk.says(joist(number), &SOFT_DEPTH, "1/2");
    }
    desk.says(joist(2), &SOFT_LENGTH, "1'");
    desk.says(joist(7), &SOFT_LENGTH, "6'");
    let list = list(&desk);
    let from: BTreeSet<_> = list.lines.iter().flat_map(|line| line.needed.from.clone()).collect();
    let counted = |words: &str| from.iter().filter(|from| from.starts_with(words)).cloned().collect::<Vec<_>>();
    assert_eq!(counted("joist 2: sister"), ["joist 2: sister, 10' 3\", from bearing to bearing"]);
    assert_eq!(counted("stamped"), ["stamped Douglas fir-larch #2"], "as they were counted");
    let new = [
        "joist 7: new, 10' 3\", from bearing to bearing",
        "joist 7: new, 8' 3\", from bearing to bearing, past the girder",
    ];
    assert_eq!(counted("joist 7: new"), new);
    for words in ["its sister is counted along the first span alone", "a new one is counted for each span"] {
        assert!(list.open.iter().any(|open| open.contains(words)), "{:?}", list.open);
    }
}

/// A ripped board's stamp counts no longer (grading rules, from memory).
#[test]
fn lumber_that_is_ripped_is_listed_with_the_loss_of_its_stamp() {
    let of_depth = |depth: &str| {
        let mut desk = sound_house();
        for number in [2, 5] {
            desk.says(joist(number), &SOFT_FACE, "lower edge");
            desk.says(joist(number), &SOFT_DEPTH, "1/2");
            desk.says(joist(number), &SOFT_LENGTH, "1'");
        }
        desk.says(Part::House, &SISTER_LUMBER, "2 × 10 No. 2");
        desk.says(Part::House, &SISTER_DEPTH, depth);
        let open = list(&desk).open;
        let told: Vec<_> = open.iter().filter(|open| open.contains("its old stamp no longer counts")).collect();
        let is_told =
            told.iter().all(|open| open.starts_with("Joists 2, 5: have 2 × 10 No. 2, ripped to 7 1/4\" graded anew"));
        assert!(is_told && told.len() < 2, "once, with both: {open:?}");
        told.len() == 1
    };
    assert!(of_depth("9 1/4") && of_depth("7 17/64") && !of_depth("7 1/4") && !of_depth("7 15/64"));
}

/// Sonoma bulletin B-27 on R317 \[P\]: galvanized by dipping, stainless, silicon bronze, copper.
#[test]
fn what_touches_treated_wood_is_said_and_cuts_of_it_are_treated() {
    let mut desk = sound_house();
    desk.says(joist(2), &SOFT_LENGTH, "1'");
    desk.says(joist(7), &SOFT_LENGTH, "6'");
    for number in [2, 7] {
        desk.says(joist(number), &SOFT_FACE, "lower edge");
        desk.says(joist(number), &SOFT_DEPTH, "1/2");
    }
    let says = |line: &Line, words: &str| line.needed.from.iter().any(|from| from.contains(words));
    for name in ["Joist hangers", "Structural screws", "Floor fasteners"] {
        let line = line(&desk, name);
        assert!(says(&line, "hot-dip galvanized or stainless"), "{name}: {:?}", line.needed.from);
    }
    let cuts = |desk: &Desk| {
        let lines = list(desk).lines.into_iter().filter(|line| line.needed.name.starts_with("2 × 8"));
        lines.map(|line| says(&line, "cut after treatment get a preservative")).collect::<Vec<_>>()
    };
    for (lumber, treated) in [("2 × 8 No. 2", false), ("2 × 8 untreated", false), ("2 × 8 No. 2, treated", true)] {
        desk.says(Part::House, &SISTER_LUMBER, lumber);
        assert!(!cuts(&desk).is_empty() && cuts(&desk).iter().all(|said| *said == treated), "{lumber}");
    }
}

/// The fan's line says what it can do: backdraft, carbon monoxide, radon; and what it has to
/// have and is not said to is open.
#[test]
fn a_fan_on_the_list_carries_its_cautions_and_what_it_still_asks_for() {
    let mut desk = house();
    desk.log(duckboard::engine::job::Fact::CrawlHeight(inches("24")));
    desk.says(Part::House, &GROUND_LENGTH, "25'");
    desk.says(Part::House, &GROUND_WIDTH, "10'");
    let of = |desk: &Desk, name: &str| line(desk, name).needed.from.join(" ");
    desk.says(Part::House, &AIR_WAY, "exhaust fan");
    let fan = of(&desk, "Exhaust fan, 5 cfm");
    for words in ["flue gas", "carbon monoxide", "4 pCi/L", "air path", "tests the draft"] {
        assert!(fan.contains(words), "{words}: {fan}");
    }
    let open = |desk: &Desk| {
        let open = list(desk).open.into_iter().filter(|open| open.starts_with("Exhaust fan, 5 cfm: "));
        open.collect::<Vec<_>>()
    };
    assert_eq!(open(&desk).len(), 4, "{:?}", open(&desk));
    for (item, word) in [(COVERED, "yes"), (AIR_PATH, "yes"), (WALLS_INSULATED, "yes"), (FUEL_BURNED, "none")] {
        desk.says(Part::House, &item, word);
    }
    // A cover on the list does not lie yet.
    assert!(open(&desk).len() == 1 && open(&desk)[0].contains("nobody said yet that it is"), "{:?}", open(&desk));
    desk.log(Check { of: Label::fitted("ground_covered_now"), answer: Answer::Yes });
    assert!(open(&desk).is_empty(), "{:?}", open(&desk));
    desk.says(Part::House, &FUEL_BURNED, "yes");
    assert!(open(&desk)[0].contains("test the draft at the worst pull"), "{:?}", open(&desk));
    desk.says(Part::House, &AIR_WAY, "supply from the house");
    assert!(!of(&desk, "Supply duct, 5 cfm").contains("flue gas"));
}

#[test]
fn a_piece_longer_than_lumber_is_named_and_the_rest_is_ordered() {
    let mut desk = sound_house();
    for number in [2, 7] {
        desk.says(joist(number), &SOFT_FACE, "lower edge");
        desk.says(joist(number), &SOFT_DEPTH, "1/2");
        desk.says(joist(number), &SOFT_LENGTH, "1'");
    }
    desk.says(joist(7), &CLEAR_SPAN, "16'");
    desk.says(joist(7), &DEPTH, "11 1/4");
    desk.says(Part::House, &SISTER_DEPTH, "11 1/4");
    assert!(names(&desk).contains(&"2 in lumber 7 1/4\" deep, 12 ft".to_owned()), "{:?}", names(&desk));
    assert!(
        list(&desk).open.iter().any(|open| open.contains("16' 3\" is longer than 16 ft")),
        "{:?}",
        list(&desk).open
    );
}

#[test]
fn joists_for_an_engineer_are_open_and_not_ordered() {
    let mut desk = sound_house();
    desk.says(joist(2), &SOFT_DEPTH, "3");
    desk.says(joist(2), &SOFT_FACE, "lower edge");
    assert!(!names(&desk).iter().any(|name| name.contains("lumber 7 1/4")), "{:?}", names(&desk));
    assert!(list(&desk).open.iter().any(|open| open.contains("Lumber of joist 2: it waits for an engineer")));
}

/// Joist 4 of a sound house after something was found and done: the lines of its lumber, hangers
/// and screws, and what is open about it.
fn for_joist_4(change: impl FnOnce(&mut Desk)) -> (Vec<String>, Vec<String>) {
    let mut desk = sound_house();
    change(&mut desk);
    let list = list(&desk);
    let is_its = |line: &&Line| {
        line.needed.name == "Structural screws"
            || line.needed.name == "Joist hangers"
            || line.needed.from.iter().any(|from| from.starts_with("joist 4:"))
    };
    let lines = list.lines.iter().filter(is_its).map(|line| line.needed.name.clone()).collect();
    let open = list.open.into_iter().filter(|open| open.contains("oist 4")).collect();
    (lines, open)
}

fn rot(desk: &mut Desk) {
    let position = Position::OnJoist { joist: JoistNumber::new(4).unwrap(), along: Some(inches("4'")) };
    let place = desk.log(Place { element: Element::Joist, position, face: None, height: None, chalk: None });
    desk.log(Condition { place: Some(place), finding: Finding::Rotten, note: None });
}

fn soft(desk: &mut Desk, stretch: Option<(&str, &str)>) {
    desk.spot(4, DamageKind::Soft, stretch, Some(Face::LowerEdge), "1/2");
}

#[test]
fn no_sister_is_ordered_that_ends_nothing_and_what_to_say_first_is_named() {
    let (lines, open) = for_joist_4(rot);
    assert!(lines.is_empty() && open.len() == 1, "{lines:?} {open:?}");
    assert!(open[0].contains("Say from where to where, how deep") && open[0].contains("No sister is ordered"));
    let (lines, open) = for_joist_4(|desk| soft(desk, None));
    assert!(lines.is_empty() && open[0].contains("log it again from where to where it is soft"), "{lines:?} {open:?}");
    let (lines, open) = for_joist_4(|desk| soft(desk, Some(("2'", "3'"))));
    assert!(lines.len() == 2 && open.is_empty(), "{lines:?} {open:?}");
    // Beside a joist that comes out no sister is asked for.
    let (lines, open) = for_joist_4(|desk| {
        rot(desk);
        soft(desk, Some(("1'", "9'")));
    });
    assert!(lines.len() == 2 && open.is_empty(), "{lines:?} {open:?}");
}

#[test]
fn what_is_done_is_not_ordered_again() {
    let after = |finds: fn(&mut Desk), done: &'static [&'static str]| {
        for_joist_4(|desk| {
            finds(desk);
            done.iter().for_each(|done| desk.does(joist(4), done));
        })
    };
    let none = (Vec::new(), Vec::new());
    let is_soft: fn(&mut Desk) = |desk| soft(desk, Some(("2'", "3'")));
    let is_most: fn(&mut Desk) = |desk| soft(desk, Some(("1'", "9'")));
    let bears_on_little: fn(&mut Desk) = |desk| {
        desk.says(joist(4), &BEARING, "1");
    };
    let both: fn(&mut Desk) = |desk| {
        soft(desk, Some(("2'", "3'")));
        desk.says(joist(4), &BEARING, "1");
    };
    let engineers: fn(&mut Desk) = |desk| {
        desk.says(joist(4), &CLEAR_SPAN, "20'");
    };
    assert_eq!(after(is_soft, &["sistered"]), none);
    assert_eq!(after(is_most, &["replaced"]), none);
    assert_eq!(after(bears_on_little, &["ends mended"]), none);
    assert_eq!(after(engineers, &["as the engineer says"]), none);
    let count = |finds, done| after(finds, done).0.len();
    assert_eq!([count(is_soft, &[]), count(is_most, &[]), count(bears_on_little, &[]), count(both, &[])], [2, 2, 1, 3]);
    assert_eq!([count(is_most, &["sistered"]), count(is_soft, &["sistered", "not yet"])], [2, 2], "that ends nothing");
    // Of several things only what is left.
    assert_eq!(after(both, &["sistered"]).0, ["Joist hangers"]);
    assert_eq!(count(both, &["ends mended"]), 2);
    assert!(!after(both, &["ends mended"]).0.contains(&"Joist hangers".to_owned()));
    assert_eq!(after(both, &["sistered", "ends mended"]), none);
}

#[test]
fn stock_and_waste_are_taken_into_account_and_kept_apart() {
    let mut desk = house();
    let screws = line(&desk, "Floor fasteners");
    assert_eq!((screws.waste, screws.is_waste_stated), (Amount::whole(10), false));
    desk.says(order("Floor fasteners"), &WASTE, "0");
    desk.says(order("Floor fasteners"), &ON_HAND, "10");
    let fewer = line(&desk, "Floor fasteners");
    assert_eq!(fewer.needed.amount, screws.needed.amount);
    assert_eq!(fewer.to_order.get(), screws.needed.amount.get() - 10.0);
    desk.says(Part::House, &BOX, "100");
    let boxes = line(&desk, "Floor fasteners, boxes of 100");
    assert_eq!((boxes.needed.unit.label(), boxes.on_hand), ("box", Amount::whole(0)), "pieces are no boxes");
}

#[test]
fn what_changed_since_the_file_was_sent_is_marked() {
    let mut desk = house();
    assert_eq!(line(&desk, SHEETS).change, None);
    desk.log(HandOver { revision: 1, with_photos: false, with_client: true, entries: None });
    assert_eq!(list(&desk).sent, None, "nothing was said since: there is no other list to compare with");
    desk.says(order(SHEETS), &ON_HAND, "1");
    let before = line(&house(), SHEETS).to_order;
    assert_eq!(line(&desk, SHEETS).change, Some(Change::Was(before)));
    assert_eq!(line(&desk, "Floor fasteners").change, Some(Change::Same));
    desk.says(Part::House, &COVERED, "yes");
    assert_eq!(line(&desk, "Ground cover").change, Some(Change::New));
    desk.log(HandOver { revision: 2, with_photos: false, with_client: true, entries: None });
    assert_eq!(list(&desk).sent, Some(1), "whoever opens revision 2 has seen revision 1");
    desk.says(Part::House, &COVERED, "no");
    let list = list(&desk);
    assert_eq!((list.sent, list.dropped.contains(&"Ground cover".to_owned())), (Some(2), true));
}

/// Another phone logged before the file was sent, by its count, and gave its log later.
#[test]
fn what_came_in_late_from_another_phone_is_not_said_to_have_been_sent() {
    let changes = |entries_more: usize, comes_late: bool| {
        let mut desk = house();
        let before = u32::try_from(desk.book.log().len() - entries_more).unwrap();
        desk.log(HandOver { revision: 1, with_photos: false, with_client: true, entries: Some(before) });
        if comes_late {
            let mut phone = crate::desk::other_phone();
            desk.book
                .add(Record::of(phone.record(stated(joist(4), &DONE, "sistered", BareUnit::Inches).unwrap())).unwrap());
        }
        desk.says(order(SHEETS), &ON_HAND, "1");
        let open = list(&desk).open.iter().filter(|open| open.contains("came in since")).count();
        (line(&desk, "Floor fasteners").change, open)
    };
    assert_eq!(changes(0, false), (Some(Change::Same), 0));
    assert_eq!(changes(0, true), (None, 1));
    assert_eq!(changes(1, false), (None, 1));
}

/// The last thing that happens: then nothing has a greater count than that the file was sent.
#[test]
fn what_comes_in_late_is_told_before_anything_else_is_said() {
    let sent = |entries_more: usize, comes_late: bool, again: bool| {
        let mut desk = house();
        desk.log(HandOver { revision: 1, with_photos: false, with_client: true, entries: Some(log_length(&desk)) });
        desk.says(order(SHEETS), &ON_HAND, "1");
        let entries = Some(log_length(&desk) - u32::try_from(entries_more).unwrap());
        desk.log(HandOver { revision: 2, with_photos: false, with_client: true, entries });
        if comes_late {
            let mut phone = crate::desk::other_phone();
            desk.book
                .add(Record::of(phone.record(stated(joist(4), &DONE, "sistered", BareUnit::Inches).unwrap())).unwrap());
        }
        if again {
            let entries = Some(log_length(&desk));
            desk.log(HandOver { revision: 3, with_photos: false, with_client: true, entries });
        }
        let list = list(&desk);
        let told = list.open.iter().find(|open| open.contains("came in since")).cloned();
        (list.sent, told)
    };
    let cannot_be_told = |revision: u32| {
        let why = "cannot be told: 1 entry of another phone came in since.";
        (Some(revision), Some(format!("What changed since r{revision} was sent {why}")))
    };
    assert_eq!(sent(0, false, false), (Some(1), None), "whoever opens revision 2 has seen revision 1");
    assert_eq!(sent(0, true, false), cannot_be_told(2));
    assert_eq!(sent(1, false, false), cannot_be_told(2));
    assert_eq!(sent(0, true, true), cannot_be_told(2), "revision 3 has it, and whoever opens that has seen revision 2");
}

fn log_length(desk: &Desk) -> u32 {
    u32::try_from(desk.book.log().len()).unwrap()
}

#[test]
fn prices_stand_beside_their_lines_and_are_never_invented() {
    let mut desk = house();
    assert!(list(&desk).lines.iter().all(|line| line.price.is_none()));
    desk.says(order(SHEETS), &PRICE, "41.5");
    assert_eq!(line(&desk, SHEETS).price, Some(Amount::thousandths(41_500)));
}

proptest! {
    #[test]
    fn orders_cover_the_need_and_no_more(needed in 0..500_000_u32, waste in 0..50_u32, on_hand in 0..600_000_u32) {
        let [needed, on_hand] = [needed, on_hand].map(Amount::thousandths);
        let order = to_order(needed, Amount::whole(waste), on_hand, true);
        let wanted = needed.get() * (1.0 + f64::from(waste) / 100.0);
        prop_assert_eq!(i64::from(order) % 1000, 0);
        prop_assert!(order.get() + on_hand.get() >= wanted - 1e-6);
        prop_assert!(order.get() < (wanted - on_hand.get()).max(0.0) + 1.002);
        prop_assert!(to_order(needed, Amount::whole(waste + 1), on_hand, true) >= order);
    }
}

#[test]
fn a_cover_that_lies_is_not_ordered_again() {
    let rolls = |covered_now: Option<Answer>| {
        let mut desk = house();
        desk.says(Part::House, &COVERED, "yes");
        if let Some(answer) = covered_now {
            desk.log(Check { of: crate::desk::label("ground_covered_now"), answer });
        }
        list(&desk).lines.iter().filter(|line| line.needed.name == "Ground cover").count()
    };
    assert_eq!(
        [rolls(None), rolls(Some(Answer::No)), rolls(Some(Answer::Unknown)), rolls(Some(Answer::Yes))],
        [1, 1, 1, 0]
    );
}
