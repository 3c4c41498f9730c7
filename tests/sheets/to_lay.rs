//! What comes out of a job becomes floors to lay.

use crate::desk::{Desk, length};
use crate::job_samples;
use crate::{asked, laid};
use duckboard::draw::Canvas;
use duckboard::draw::sheets::SheetPage;
use duckboard::engine::entry::{EntryId, Label};
use duckboard::engine::figure::{Figure, Need};
use duckboard::engine::geometry::{Point, Rect, Turn};
use duckboard::engine::job::{Fact, Job, SheetEdge, SpanRating};
use duckboard::engine::place::JoistNumber;
use duckboard::engine::sheets::layout::{Case, Corner, check, form, twice_the_area};
use duckboard::engine::sheets::{FloorSearch, Outcome, Searches, ToLay, to_lay};
use duckboard::engine::survey::{CutBack, JoistCenter, Obstacle, ObstacleKind, Opening, Run, WholeFloor};
use duckboard::engine::take::Units;
use duckboard::engine::units::Length;

const R: Turn = Turn::Right;
const L: Turn = Turn::Left;

fn at(x: i32, y: i32) -> Point {
    Point::new(Length::inches(x), Length::inches(y))
}

/// An invented room, joists every 16 in from its first corner, and what comes out of it.
pub struct Site {
    pub desk: Desk,
    pub room: EntryId,
    pub first: EntryId,
}

impl Site {
    pub fn new(sides: &[(&str, Turn)], run: Run, joists: u16) -> Self {
        let mut desk = Desk::new();
        let (room, sides) = desk.room(sides);
        desk.joists(room, run, "16", "16", joists);
        Self { desk, room, first: sides[0] }
    }

    /// A room of 20 × 15 ft.
    pub fn rectangle(run: Run) -> Self {
        let sides = [("20'", R), ("15'", R), ("20'", R), ("15'", R)];
        Self::new(&sides, run, if run == Run::AcrossFirstSide { 14 } else { 11 })
    }

    /// Along, out, length and width from the first corner, in inches.
    fn placed(&self, inches: [i32; 4]) -> Opening {
        let [along, out, length, width] = inches.map(|inches| length(&inches.to_string()));
        Opening { from: self.first, along, out, length, width }
    }

    pub fn opening(mut self, inches: [i32; 4]) -> Self {
        self.desk.log(self.placed(inches));
        self
    }

    fn obstacle(&mut self, what: ObstacleKind, inches: [i32; 4]) {
        self.desk.log(Obstacle { what, takes: self.placed(inches) });
    }

    pub fn all_comes_out(mut self) -> Self {
        self.desk.log(WholeFloor { room: self.room });
        self
    }

    /// The floors, and what is doubtful about them.
    pub fn floors(&self) -> (Vec<ToLay>, Vec<String>) {
        let figure = to_lay(self.desk.job());
        let known = figure.as_known().unwrap();
        (known.value.clone(), known.doubts.clone())
    }

    /// The floors, all searched to the end.
    pub fn searched(&self) -> Searches {
        let mut searches = Searches::new(self.desk.job(), self.floors().0);
        while searches.step() {}
        searches
    }

    /// The only floor.
    fn floor(&self) -> ToLay {
        let (floors, _) = self.floors();
        assert_eq!(floors.len(), 1);
        floors[0].clone()
    }
}

/// The corners of the least rectangle around.
fn reach(corners: &[Point]) -> (Point, Point) {
    let rect = Rect::around(corners);
    (rect.least(), rect.most())
}

#[test]
fn an_empty_job_says_what_to_measure() {
    let Figure::Missing(needs) = to_lay(&Job::default()) else { panic!("nothing is known") };
    assert_eq!(needs, [Need::Opening, Need::Joists]);
}

#[test]
fn ends_go_out_to_the_next_joist_centers_and_edges_stay() {
    let site = Site::rectangle(Run::AcrossFirstSide).opening([20, 30, 100, 60]);
    let (floors, doubts) = site.floors();
    assert_eq!(reach(&floors[0].cut_back), (at(16, 30), at(128, 90)));
    assert_eq!(reach(&floors[0].placed), (at(20, 30), at(120, 90)));
    let unrated = "Take sheets rated for joists 16\" on center or more: none is stated.";
    assert_eq!(doubts, [unrated]);
}

/// Joists of 1 1/2 in: half of one, less the gap around; and the half of what a gap between leaves.
#[test]
fn sheets_whose_gaps_leave_them_on_too_little_of_a_joist_are_not_laid() {
    let opening = |site: Site| site.opening([20, 30, 100, 60]);
    let is_laid = |site: Site, fact: Fact| {
        let mut site = site;
        site.desk.log(fact);
        site.floor().case
    };
    let rectangle = || Site::rectangle(Run::AcrossFirstSide);
    let around = |gap| is_laid(opening(rectangle()), Fact::EdgeGap(length(gap)));
    assert!(around("1/4").is_ok());
    for gap in ["17/64", "3/4", "2"] {
        assert!(around(gap).unwrap_err().contains("a gap of up to 1/4\" would do"), "{gap}");
    }
    let between = |gap| is_laid(opening(rectangle()), Fact::SheetGap(length(gap)));
    assert!(between("1/2").is_ok());
    assert!(between("33/64").unwrap_err().contains("a gap of up to 1/2\" would do"));
    // At walls no joist's center is the end.
    assert!(is_laid(rectangle().all_comes_out(), Fact::EdgeGap(length("1"))).is_ok());
    let thick = |gap| {
        let mut site = opening(rectangle());
        site.desk.log(Fact::JoistThickness(length("2")));
        is_laid(site, Fact::EdgeGap(length(gap)))
    };
    assert!(thick("1/2").is_ok() && thick("33/64").is_err());
}

#[test]
fn joists_the_other_way_turn_the_layout_and_not_the_plan() {
    let floor = Site::rectangle(Run::AlongFirstSide).opening([20, 20, 100, 60]).floor();
    assert_eq!(reach(&floor.cut_back), (at(20, 16), at(120, 80)));
    let case = floor.case.as_ref().unwrap();
    // A sixteenth of an inch is left around the sheets.
    assert_eq!(case.asked.outline[2], (64 * 16 - 1, 100 * 16 - 1), "x runs across the joists");
    assert_eq!(floor.on_plan((0, 0)), at(20, 16));
    assert_eq!(floor.on_plan((16, 32)), at(22, 17));
}

#[test]
fn y_of_a_layout_runs_up_the_page_where_its_x_runs_across() {
    let floor = Site::rectangle(Run::AcrossFirstSide).opening([20, 30, 100, 60]).floor();
    assert_eq!(floor.on_plan((0, 0)), at(16, 90));
    assert_eq!(floor.on_plan((16, 32)), at(17, 88));
}

#[test]
fn where_the_room_ends_the_opening_stays_and_a_doubt_says_so() {
    let (floors, doubts) = Site::rectangle(Run::AcrossFirstSide).opening([0, 0, 100, 60]).floors();
    assert_eq!(reach(&floors[0].cut_back), (at(0, 0), at(112, 60)));
    assert!(doubts.iter().any(|doubt| doubt.contains("ledger")), "{doubts:?}");
}

#[test]
fn the_samples_opening_is_laid_by_the_rules() {
    let figure = to_lay(job_samples::first_book().job());
    let known = figure.as_known().unwrap();
    let case = known.value[0].case.as_ref().unwrap();
    let layout = laid(case);
    assert_eq!(check(case, &layout), Ok(layout.cut));
    assert!(known.assumed.iter().any(|rule| rule.contains("24 in")), "the rules are told: {:?}", known.assumed);
}

#[test]
fn every_opening_is_a_floor_of_its_own() {
    let site = Site::rectangle(Run::AcrossFirstSide).opening([16, 16, 64, 48]).opening([128, 96, 48, 60]);
    let (floors, _) = site.floors();
    assert_eq!(floors.iter().map(|floor| floor.name.as_str()).collect::<Vec<_>>(), ["Opening 1", "Opening 2"]);
    assert_eq!(reach(&floors[1].cut_back), (at(128, 96), at(176, 156)));
    let figure = to_lay(site.desk.job());
    let assumed = &figure.as_known().unwrap().assumed;
    assert!(assumed.iter().any(|rule| rule.contains("laid in turn")), "{assumed:?}");
}

#[test]
fn what_stands_in_the_floor_is_left_out_and_what_stands_at_its_edge_is_told() {
    let mut site = Site::rectangle(Run::AcrossFirstSide).opening([16, 16, 160, 120]);
    site.obstacle(ObstacleKind::Post, [60, 60, 6, 6]);
    let floor = site.floor();
    let case = floor.case.as_ref().unwrap();
    let hole: Vec<_> = case.asked.holes[0].iter().map(|corner| floor.on_plan(*corner)).collect();
    let sixteenth = Length::sixty_fourths(4);
    assert_eq!(reach(&hole), {
        let (least, most) = (at(60, 60), at(66, 66));
        (Point::new(least.x - sixteenth, least.y - sixteenth), Point::new(most.x + sixteenth, most.y + sixteenth))
    });
    let layout = laid(case);
    assert_eq!(check(case, &layout), Ok(layout.cut));
    site.obstacle(ObstacleKind::Chimney, [10, 60, 20, 20]);
    let (floors, doubts) = site.floors();
    assert_eq!(floors[0].case.as_ref().unwrap().asked.holes.len(), 1);
    assert!(doubts.iter().any(|doubt| doubt.contains("stands at the edge")), "{doubts:?}");
}

#[test]
fn a_whole_floor_follows_the_walls_as_adjusted() {
    // An L of 16 × 14 ft, its last side an inch longer than square walls allow.
    let sides = [("16'", R), ("8'", R), ("6'", L), ("6'", R), ("10'", R), ("14' 1\"", R)];
    let floor = Site::new(&sides, Run::AcrossFirstSide, 11).all_comes_out().floor();
    assert_eq!(floor.name, "The whole floor");
    let case = floor.case.as_ref().unwrap();
    assert_eq!(case.asked.outline.len(), 6);
    let slants = |(a, b): (&Corner, &Corner)| a.0 != b.0 && a.1 != b.1;
    let ring = &case.asked.outline;
    assert!(ring.iter().zip(ring.iter().cycle().skip(1)).any(slants), "{ring:?}");
    let layout = laid(case);
    assert_eq!(check(case, &layout), Ok(layout.cut));
    let forms: Vec<_> = layout.pieces.iter().map(|piece| form(case, &layout, piece)).collect();
    assert!(forms.iter().any(|form| !form.trims.is_empty()), "a slanting wall trims something");
    // What pieces cover is the floor, but for a gap along each course and each joint.
    let covered: i64 = forms.iter().flat_map(|form| &form.strips).map(|strip| twice_the_area(strip)).sum();
    let floor = twice_the_area(&case.asked.outline).abs();
    let pieces = i64::try_from(layout.pieces.len()).unwrap();
    let courses = i64::try_from(layout.levels.len()).unwrap();
    let gaps = 2 * i64::from(case.asked.gap) * (courses * 3072 + pieces * 768);
    assert!(covered <= floor && covered >= floor - gaps, "{covered} of {floor}");
}

#[test]
fn without_an_outline_a_whole_floor_asks_for_it() {
    let site = Site::new(&[("16'", R), ("8'", R)], Run::AcrossFirstSide, 11).all_comes_out();
    let Figure::Missing(needs) = to_lay(site.desk.job()) else { panic!("no outline is known") };
    assert_eq!(needs, [Need::RoomOutline]);
}

#[test]
fn what_is_said_of_the_sheets_counts() {
    let mut site = Site::rectangle(Run::AcrossFirstSide).opening([16, 16, 160, 120]);
    for fact in [
        Fact::SheetEdge(SheetEdge::TongueAndGroove),
        Fact::SpanRating(SpanRating::new(12).unwrap()),
        Fact::SheetGap(length("0")),
        Fact::EdgeGap(length("1/2")),
        Fact::Kerf(length("1/4")),
        Fact::JoistThickness(length("2")),
        Fact::BlockLumber(Label::fitted("2 × 8 No. 2, treated")),
    ] {
        site.desk.log(fact);
    }
    let (floors, doubts) = site.floors();
    let asked = &floors[0].case.as_ref().unwrap().asked;
    // Half an inch less than 4 ft.
    assert_eq!((asked.sheet.length, asked.sheet.width), (1536, 760));
    assert_eq!((asked.gap, asked.kerf, asked.joist_width), (0, 4, 32));
    assert_eq!(asked.outline[0], (8, 8));
    assert_eq!(floors[0].stock.block_lumber, "2 × 8 No. 2, treated");
    assert!(doubts.iter().any(|doubt| doubt.contains("rated 12 in")), "{doubts:?}");
    assert!(doubts.iter().any(|doubt| doubt.contains("factory edge")), "{doubts:?}");
    site.desk.log(Fact::SpanRating(SpanRating::new(24).unwrap()));
    assert!(!site.floors().1.iter().any(|doubt| doubt.contains("rated")), "24 in suits 16 in");
}

#[test]
fn an_opening_is_laid_as_wide_as_it_is_ripped() {
    let mut site = Site::rectangle(Run::AcrossFirstSide).opening([20, 16, 64, 30]);
    let opening = *site.desk.job().now.openings().first().unwrap().0;
    let rip = |width| CutBack { opening, width: Some(length(width)), finish: None };
    site.desk.log(rip("48"));
    assert_eq!(site.floor().cut_back, [at(16, 16), at(96, 16), at(96, 64), at(16, 64)]);
    site.desk.log(rip("40'"));
    let (_, doubts) = site.floors();
    let told = "The opening cannot be cut back as wide as stated: the room ends before.".to_owned();
    assert!(doubts.contains(&told), "{doubts:?}");
}

#[test]
fn joists_lie_where_they_were_measured() {
    let mut site = Site::rectangle(Run::AcrossFirstSide).all_comes_out();
    let of = *site.desk.job().now.joists().first().unwrap().0;
    let mut measure = |joist, text| {
        let joist = JoistNumber::new(joist).unwrap();
        site.desk.log(JoistCenter { of, joist, center: length(text) });
        site.floors()
    };
    let (floors, doubts) = measure(2, "33 5/8");
    let joists = &floors[0].case.as_ref().unwrap().asked.joists;
    assert_eq!(joists[..3], [256, 538, 768], "in sixteenths");
    assert!(doubts.iter().any(|doubt| doubt.contains("rated for joists 17 5/8\"")), "{doubts:?}");

    let (floors, doubts) = measure(3, "30");
    assert!(floors[0].case.is_ok());
    assert!(doubts.contains(&"Joist 3 is no farther from corner 1 than joist 2: measure both again.".to_owned()));
}

#[test]
fn ripped_tongue_and_groove_sheets_say_which_edge_stays() {
    let mut site = Site::rectangle(Run::AcrossFirstSide).opening([16, 16, 64, 80]);
    let says = |site: &Site| {
        let canvas = Canvas { width_px: 640, height_px: 480 };
        let page = SheetPage::of(&site.searched().floors()[0], &[], Units::default(), canvas).unwrap();
        page.sheets.into_iter().flat_map(|sheet| sheet.cuts).filter(|cut| cut.contains("tongue")).count()
    };
    assert_eq!(says(&site), 0);
    site.desk.log(Fact::SheetEdge(SheetEdge::TongueAndGroove));
    assert!(says(&site) > 0);
}

#[test]
fn a_piece_around_a_corner_is_trimmed_along_two_lines() {
    // A floor of 64 × 40 in with 16 × 8 in off its upper right: one piece, whatever is laid.
    let outline = vec![(0, 0), (1024, 0), (1024, 512), (768, 512), (768, 640), (0, 640)];
    let case = Case::new(asked(outline, vec![256, 512, 768])).unwrap();
    let layout = laid(&case);
    assert_eq!(layout.pieces.len(), 1);
    let form = form(&case, &layout, &layout.pieces[0]);
    let trims: Vec<_> = form.trims.iter().map(|trim| (trim.from, trim.to)).collect();
    assert_eq!(trims, [((768, 512), (768, 640)), ((768, 512), (1024, 512))]);
    assert_eq!(form.strips.iter().map(|strip| twice_the_area(strip)).sum::<i64>(), 2 * (1024 * 640 - 256 * 128));
}

#[test]
fn a_floor_that_cannot_be_laid_says_why_and_the_others_are_laid() {
    let mut site = Site::rectangle(Run::AcrossFirstSide).opening([16, 16, 64, 48]).opening([128, 96, 48, 10]);
    site.desk.log(Fact::EdgeGap(length("6")));
    // So thick that sheets bear on them all the same.
    site.desk.log(Fact::JoistThickness(length("13")));
    let searches = site.searched();
    let outcomes = searches.floors();
    let fewest = |search: &FloorSearch| match search.outcome() {
        Outcome::Laid { layout, bound } => (layout.sheets(), bound),
        other => panic!("{other:?}"),
    };
    assert_eq!(fewest(&outcomes[0]), (1, 1));
    let Outcome::NotLaid(why) = outcomes[1].outcome() else { panic!("10 in less 12 in are no floor") };
    assert!(why.starts_with("This floor cannot be laid out: "), "{why}");
}

#[test]
fn joists_too_far_apart_for_a_sheet_have_no_layout() {
    let mut desk = Desk::new();
    let (room, sides) = desk.room(&[("20'", R), ("15'", R), ("20'", R), ("15'", R)]);
    desk.joists(room, Run::AcrossFirstSide, "9'", "9'", 2);
    let site = Site { desk, room, first: sides[0] }.all_comes_out();
    let searches = site.searched();
    let Outcome::NotLaid(why) = searches.floors()[0].outcome() else { panic!("a sheet is 8 ft long") };
    assert!(
        why.contains("a bay of 9' 0\", wider than a sheet bridges")
            && why.contains(" in each bay wider than 4' 0\"; then "),
        "{why}"
    );
}
