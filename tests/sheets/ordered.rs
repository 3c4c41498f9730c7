//! What the page of sheets says of lumber is what the order list says.

use crate::desk::length;
use crate::to_lay::Site;
use duckboard::draw::Canvas;
use duckboard::draw::sheets::SheetPage;
use duckboard::engine::geometry::Turn;
use duckboard::engine::job::{Fact, SpanRating};
use duckboard::engine::orders::{is_of, lines, lines_with};
use duckboard::engine::particular::{Part, list, stated};
use duckboard::engine::place::JoistNumber;
use duckboard::engine::survey::Run;
use duckboard::engine::take::Units;
use duckboard::engine::units::tape::BareUnit;

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

/// The old joists' own breadth counts, as the thinnest was measured.
#[test]
fn sheets_end_on_joists_as_thin_as_the_thinnest_was_measured() {
    let thick = |says: &[(Part, &str)]| {
        let mut site = Site::rectangle(Run::AcrossFirstSide).all_comes_out();
        for (part, typed) in says {
            site.desk.log(stated(part.clone(), &list::BREADTH, typed, BareUnit::Inches).unwrap());
        }
        site.floors().0[0].case.as_ref().unwrap().asked.joist_width
    };
    let joist_4 = Part::Joist(JoistNumber::new(4).unwrap());
    assert_eq!(thick(&[]), 24, "1 1/2 in is assumed, in sixteenths");
    assert_eq!(thick(&[(Part::Joists, "1 5/8")]), 26);
    assert_eq!(thick(&[(Part::Joists, "1 5/8"), (joist_4, "1 1/4")]), 20);
}

/// 24 in from joist to joist: past the first one what comes out lies on the bay at the wall too.
#[test]
fn the_bay_at_a_wall_is_bridged_too_where_the_floor_comes_out_there() {
    let says = |first: &str, opening: Option<[i32; 4]>| {
        let sides = ["12'", "10'", "12'", "10'"].map(|side| (side, Turn::Right));
        let mut site = Site::new(&sides, Run::AcrossFirstSide, 1);
        let joists = *site.desk.job().now.joists().keys().next().unwrap();
        site.desk.withdraw(joists);
        site.desk.joists(site.room, Run::AcrossFirstSide, first, "16", 5);
        let mut site = match opening {
            Some(inches) => site.opening(inches),
            None => site.all_comes_out(),
        };
        site.desk.log(Fact::SpanRating(SpanRating::new(48).unwrap()));
        site.floors().1.into_iter().find(|doubt| doubt.contains("may not span"))
    };
    // The last of five stands 64 in beyond the first: to the far wall it is 80 in less that.
    assert_eq!(says("32", None), None);
    assert_eq!(says("48", None), None);
    assert!(says("48 1/16", None).unwrap().contains("48 1/16\" apart"));
    assert!(says("31 15/16", None).unwrap().contains("48 1/16\" apart"), "and at the far wall");
    assert_eq!(says("60", Some([60, 20, 32, 40])), None, "nothing comes out by the wall");
    assert!(says("60", Some([59, 20, 32, 40])).is_some());
}

#[test]
fn a_rating_is_for_two_bays_and_one_alone_is_asked_about() {
    let asks = |across: [i32; 2]| {
        let [from, long] = across;
        let mut site = Site::rectangle(Run::AcrossFirstSide).opening([from, 30, long, 40]);
        site.desk.log(Fact::SpanRating(SpanRating::new(16).unwrap()));
        site.floors().1.iter().any(|doubt| doubt.contains("one bay"))
    };
    // Joists at 16, 32, 48 in.
    assert!(asks([16, 16]) && asks([20, 8]));
    assert!(!asks([16, 17]) && !asks([15, 17]) && !asks([16, 32]));
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
