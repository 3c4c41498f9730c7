//! What the page of sheets says of lumber is what the order list says.

use crate::desk::length;
use crate::to_lay::Site;
use duckboard::draw::Canvas;
use duckboard::draw::sheets::SheetPage;
use duckboard::engine::geometry::Turn;
use duckboard::engine::job::{Fact, SpanRating};
use duckboard::engine::orders::{is_of, lines, lines_with};
use duckboard::engine::survey::Run;
use duckboard::engine::take::Units;

const CANVAS: Canvas = Canvas { width_px: 640, height_px: 480 };

#[test]
fn the_page_and_the_list_buy_the_same_sticks() {
    let site = Site::rectangle(Run::AcrossFirstSide).opening([16, 16, 64, 80]).opening([112, 16, 96, 100]);
    let units = Units::default();
    let searches = site.searched();
    let (ordered, _) = lines_with(site.desk.job(), Some(&searches), units);
    assert_eq!(ordered, lines(site.desk.job(), units).0);
    let kind = &searches.floors()[0].floor.stock.block_lumber;
    let sticks: Vec<_> = ordered.iter().filter(|line| is_of(&line.needed, kind)).collect();
    assert!(!sticks.is_empty());
    for floor in searches.floors() {
        let page = SheetPage::of(floor, &ordered, units, CANVAS).unwrap();
        let blocking = page.needed.iter().find(|needed| needed.title == "Blocking").unwrap();
        for line in &sticks {
            let told = format!("{} of {}", line.quantity(), line.needed.name);
            assert!(blocking.lines.iter().any(|said| said.contains(&told)), "{told}: {:?}", blocking.lines);
        }
        let bought = blocking.lines.iter().filter(|said| said.starts_with("To order for the whole job: "));
        assert_eq!(bought.count(), sticks.len());
    }
}

#[test]
fn a_line_is_known_by_its_kind_and_its_feet() {
    let site = Site::rectangle(Run::AcrossFirstSide).opening([16, 16, 64, 80]);
    let (ordered, _) = lines(site.desk.job(), Units::default());
    let is_any = |kind: &str| ordered.iter().any(|line| is_of(&line.needed, kind));
    assert!(is_any("2 in lumber as deep as the joists, treated"));
    assert!(!is_any("2 in lumber as deep as the joists"));
    assert!(!is_any("") && !is_any("Joist hangers"));
}

/// A rating, or a thickness where none is stated, against joists 24 in apart.
#[test]
fn sheets_that_may_not_span_the_joists_are_never_ordered_or_laid_silently() {
    let rated = |inches: u16| Fact::SpanRating(SpanRating::new(inches).unwrap());
    let thick = |typed: &str| Fact::SheetThickness(length(typed));
    let cases = [
        (rated(23), true),
        (rated(24), false),
        (rated(25), false),
        // The least that a sheet rated 24 in measures is 0.688 in.
        (thick("11/16"), true),
        (thick("0.688"), false),
        (thick("23/32"), false),
    ];
    for (fact, may_not) in cases {
        let sides = ["12'", "10'", "12'", "10'"].map(|side| (side, Turn::Right));
        let mut site = Site::new(&sides, Run::AcrossFirstSide, 1);
        let joists = *site.desk.job().now.joists().keys().next().unwrap();
        site.desk.withdraw(joists);
        site.desk.joists(site.room, Run::AcrossFirstSide, "24", "24", 5);
        let mut site = site.all_comes_out();
        site.desk.log(fact.clone());
        let (ordered, open) = lines(site.desk.job(), Units::default());
        let sheets = ordered.iter().find(|line| line.needed.name.starts_with("Sheets")).unwrap();
        let says = |words: &String| words.contains("may not span") && words.contains("24");
        assert_eq!(sheets.needed.from.iter().any(says), may_not, "{fact:?}: {:?}", sheets.needed.from);
        assert_eq!(open.iter().any(says), may_not, "{fact:?}: {open:?}");
        let page = SheetPage::of(&site.searched().floors()[0], &ordered, Units::default(), CANVAS).unwrap();
        assert_eq!(says(&page.line), may_not, "{fact:?}: {}", page.line);
    }
}
