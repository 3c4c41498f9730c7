//! What comes out, and how far that reaches.

use crate::{after, held_by};
use duckboard::engine::survey::WholeFloor;

#[test]
fn without_knowing_what_comes_out_and_where_the_joists_are_nothing_is_ready() {
    held_by(
        |site| {
            let opening = *site.desk.job().now.openings().keys().next().unwrap();
            site.desk.withdraw(opening);
        },
        "nobody said what comes out",
    );
    held_by(
        |site| {
            let joists = *site.desk.job().now.joists().keys().next().unwrap();
            site.desk.withdraw(joists);
        },
        "the joists are not laid out",
    );
    let whole = after(|site| {
        let room = *site.desk.job().now.rooms().keys().next().unwrap();
        site.desk.log(WholeFloor { room });
    });
    assert!(whole.in_the_way().iter().any(|line| line.contains("joist 7, 8")), "{:#?}", whole.in_the_way());
    assert!(!whole.in_the_way().iter().any(|line| line.contains("floor that stays")), "{:#?}", whole.in_the_way());
}
