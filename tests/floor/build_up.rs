//! The old floor's layers, and the step to the new one.

use super::*;
use duckboard::engine::condition::{Condition, Finding};
use duckboard::engine::results::answers;
use duckboard::engine::sheets::at_the_saw;
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
