//! The old floor's layers, and the step to the new one.

use super::*;
use duckboard::engine::condition::{Condition, Finding};
use duckboard::engine::results::answers;
use duckboard::engine::sheets::at_the_saw;
use duckboard::engine::survey::build_up::Step;
use duckboard::engine::survey::{Layer, LayerKind, build_up};
use duckboard::engine::take::Units;

fn layer(desk: &mut Desk, what: LayerKind, thickness: &str) {
    desk.log(Layer { what, thickness: length(thickness) });
}

fn says(desk: &Desk) -> (String, String) {
    let answers = answers(desk.job(), Units::default());
    let old_floor = answers.into_iter().find(|answer| answer.name == "old_floor").unwrap();
    let said = known(old_floor.said).value;
    (said.headline, said.line)
}

#[test]
fn layers_add_up_and_new_sheets_are_compared_with_what_carries() {
    let mut desk = Desk::new();
    assert_eq!(build_up(desk.job()), Figure::Missing(vec![Need::Layers]));
    layer(&mut desk, LayerKind::Finish, "3/16");
    layer(&mut desk, LayerKind::DiagonalBoards, "3/4");
    let thick = "15/16\" thick: cut no deeper".to_owned();
    let next = "Measure the new sheets' thickness and the old boards or panel for the step at the seam.".to_owned();
    assert_eq!(says(&desk), (thick.clone(), next));
    for (sheet, line) in [
        ("23/32", "The new sheets lie 1/32\" below the old subfloor: shim the joists."),
        ("3/4", "The new sheets come flush with the old subfloor."),
        ("7/8", "The new sheets stand 1/8\" above the old subfloor."),
    ] {
        desk.log(Fact::SheetThickness(length(sheet)));
        assert_eq!(says(&desk), (thick.clone(), line.to_owned()));
    }
}

/// Boards of 3/4 in that two people measured, or one at two spots.
#[test]
fn a_layer_that_was_logged_twice_never_takes_the_blade_deeper() {
    for (again, least) in [("3/4", "3/4"), ("49/64", "3/4"), ("47/64", "47/64")] {
        for what in [LayerKind::Boards, LayerKind::DiagonalBoards] {
            let mut desk = Desk::new();
            layer(&mut desk, LayerKind::Finish, "3/16");
            layer(&mut desk, LayerKind::Boards, "3/4");
            layer(&mut desk, what, again);
            desk.log(Fact::SheetThickness(length("3/4")));
            let known = known(build_up(desk.job())).value;
            assert_eq!(known.least, length("3/16").value + length(least).value, "{again}");
            assert_eq!(known.most, length("15/16").value + length(again).value);
            assert_eq!((known.step, known.asks.len()), (Step::NotKnown, 1));
            assert!(
                at_the_saw(desk.job(), Units::default())[1].contains(&format!("blade {} deep", shown(known.least)))
            );
        }
    }
}

fn shown(length: Length) -> String {
    use duckboard::engine::survey::build_up::by_caliper;
    duckboard::engine::units::tape::format(length, by_caliper(Units::default().length)).to_string()
}

/// A finish doubled leaves the step as it is.
#[test]
fn a_step_is_told_where_only_what_lies_on_the_subfloor_was_logged_twice() {
    let mut desk = Desk::new();
    layer(&mut desk, LayerKind::Finish, "3/16");
    layer(&mut desk, LayerKind::Finish, "3/16");
    layer(&mut desk, LayerKind::Boards, "3/4");
    desk.log(Fact::SheetThickness(length("3/4")));
    let known = known(build_up(desk.job())).value;
    assert_eq!((known.step, known.least), (Step::Is(Length::ZERO), length("15/16").value));
    assert!(
        says(&desk).0 == "Cut no deeper than 15/16\"" && says(&desk).1.contains("finished floor"),
        "{:?}",
        says(&desk)
    );
}

#[test]
fn layers_of_two_phones_are_asked_about_and_the_thinner_floor_counts() {
    for (theirs, least) in [("5/8", "5/8"), ("3/4", "3/4"), ("7/8", "3/4")] {
        let mut desk = Desk::new();
        layer(&mut desk, LayerKind::Boards, "3/4");
        let other = other_phone().record(Layer { what: LayerKind::Panel, thickness: length(theirs) });
        desk.book.add(Record::of(other).unwrap());
        let known = known(build_up(desk.job())).value;
        assert_eq!((known.least, known.asks.len()), (length(least).value, 1), "{theirs}");
        assert!(says(&desk).1.starts_with("Two phones logged layers"), "{:?}", says(&desk));
    }
}

#[test]
fn the_saw_is_told_how_deep_and_what_runs_below() {
    let mut desk = Desk::new();
    assert!(at_the_saw(desk.job(), Units::default())[1].contains("as deep as the old floor was measured and no more"));
    layer(&mut desk, LayerKind::Panel, "1/2");
    layer(&mut desk, LayerKind::Boards, "3/4");
    assert!(
        at_the_saw(desk.job(), Units::default())[1]
            .contains("blade 1 1/4\" deep, as the old floor was measured and no more")
    );
    let place = desk.log(spot(4, "5'"));
    for (place, finding) in [(Some(place), Finding::Wire), (None, Finding::Pipe), (Some(place), Finding::Soft)] {
        desk.log(Condition { place, finding, note: None });
    }
    let told = "Seen beneath, and there may be more: Wire in bay at Joist 4, lower edge, 5' 0\" along; Pipe in bay.";
    assert_eq!(at_the_saw(desk.job(), Units::default())[2], told);
}
