//! What comes out of a job becomes floors to lay.

use crate::job_samples::{self, FIRST_PHONE};
use crate::laid;
use duckboard::engine::entry::{EntryId, Label, Role};
use duckboard::engine::figure::{Figure, Need};
use duckboard::engine::geometry::{Point, Rect, Turn};
use duckboard::engine::job::{Book, Fact, Job, Observation, Record, SheetEdge, SpanRating};
use duckboard::engine::sheets::layout::{Case, Corner, Request, Sheet, check, form};
use duckboard::engine::sheets::{ToLay, to_lay};
use duckboard::engine::survey::{Joists, Obstacle, ObstacleKind, Opening, Room, Ruler, Run, Side, WholeFloor};
use duckboard::engine::units::{Length, Typed};

fn inches(inches: i32) -> Typed<Length> {
    Typed::new(format!("{inches}\""), Length::inches(inches))
}

fn at(x: i32, y: i32) -> Point {
    Point::new(Length::inches(x), Length::inches(y))
}

/// An invented room, and what comes out of it.
struct Desk {
    book: Book,
    room: EntryId,
    first: EntryId,
}

impl Desk {
    /// Sides in inches, joists every 16 in from the first corner.
    fn new(sides: &[(i32, Turn)], run: Run, count: u16) -> Self {
        let book = Book::default();
        let mut pen = job_samples::pen(&book, FIRST_PHONE, "QZ", Role::Carpenter);
        let room = pen.record(Room { name: Label::new("Invented room").unwrap() });
        let mut desk = Self { book, room: room.id, first: room.id };
        let mut entries = vec![room];
        let mut after = None;
        for (side, turn) in sides {
            let by = Ruler::Tape;
            let side = pen.record(Side { room: desk.room, after, length: inches(*side), turn: *turn, by });
            if after.is_none() {
                desk.first = side.id;
            }
            after = Some(side.id);
            entries.push(side);
        }
        entries.push(pen.record(Joists { room: desk.room, run, first: inches(16), spacing: inches(16), count }));
        for entry in entries {
            desk.book.add(Record::of(entry).unwrap());
        }
        desk
    }

    /// A room of 20 × 15 ft.
    fn rectangle(run: Run) -> Self {
        let sides = [240, 180, 240, 180].map(|side| (side, Turn::Right));
        Self::new(&sides, run, if run == Run::AcrossFirstSide { 14 } else { 11 })
    }

    fn record(&mut self, what: impl Into<Observation>) {
        let mut pen = job_samples::pen(&self.book, FIRST_PHONE, "QZ", Role::Carpenter);
        self.book.add(Record::of(pen.record(what)).unwrap());
    }

    /// Along, out, length and width from the first corner, in inches.
    fn placed(&self, [along, out, length, width]: [i32; 4]) -> Opening {
        let [along, out, length, width] = [along, out, length, width].map(inches);
        Opening { from: self.first, along, out, length, width }
    }

    fn opening(mut self, placed: [i32; 4]) -> Self {
        self.record(self.placed(placed));
        self
    }

    fn job(&self) -> &Job {
        self.book.job()
    }

    /// The floors, and what is doubtful about them.
    fn floors(&self) -> (Vec<ToLay>, Vec<String>) {
        let figure = to_lay(self.job());
        let known = figure.as_known().unwrap();
        (known.value.clone(), known.doubts.clone())
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
    let desk = Desk::rectangle(Run::AcrossFirstSide).opening([20, 30, 100, 60]);
    let (floors, doubts) = desk.floors();
    assert_eq!(reach(&floors[0].cut_back), (at(16, 30), at(128, 90)));
    assert_eq!(reach(&floors[0].placed), (at(20, 30), at(120, 90)));
    let unrated = "Take sheets rated for joists 16\" on center or more: none is stated.";
    assert_eq!(doubts, [unrated]);
}

#[test]
fn joists_the_other_way_turn_the_layout_and_not_the_plan() {
    let floor = Desk::rectangle(Run::AlongFirstSide).opening([20, 20, 100, 60]).floor();
    assert_eq!(reach(&floor.cut_back), (at(20, 16), at(120, 80)));
    let case = floor.case.as_ref().unwrap();
    // A sixteenth of an inch is left around the sheets.
    assert_eq!(case.asked.outline[2], (64 * 16 - 1, 100 * 16 - 1), "x runs across the joists");
    assert_eq!(floor.on_plan((0, 0)), at(20, 16));
    assert_eq!(floor.on_plan((16, 32)), at(22, 17));
}

#[test]
fn y_of_a_layout_runs_up_the_page_where_its_x_runs_across() {
    let floor = Desk::rectangle(Run::AcrossFirstSide).opening([20, 30, 100, 60]).floor();
    assert_eq!(floor.on_plan((0, 0)), at(16, 90));
    assert_eq!(floor.on_plan((16, 32)), at(17, 88));
}

#[test]
fn where_the_room_ends_the_opening_stays_and_a_doubt_says_so() {
    let (floors, doubts) = Desk::rectangle(Run::AcrossFirstSide).opening([0, 0, 100, 60]).floors();
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
    let desk = Desk::rectangle(Run::AcrossFirstSide).opening([16, 16, 64, 48]).opening([128, 96, 48, 60]);
    let (floors, doubts) = desk.floors();
    assert_eq!(floors.iter().map(|floor| floor.name.as_str()).collect::<Vec<_>>(), ["Opening 1", "Opening 2"]);
    assert_eq!(reach(&floors[1].cut_back), (at(128, 96), at(176, 156)));
    assert!(doubts.iter().any(|doubt| doubt.contains("one by one")), "{doubts:?}");
}

#[test]
fn what_stands_in_the_floor_is_left_out_and_what_stands_at_its_edge_is_told() {
    let mut desk = Desk::rectangle(Run::AcrossFirstSide).opening([16, 16, 160, 120]);
    desk.record(Obstacle { what: ObstacleKind::Post, takes: desk.placed([60, 60, 6, 6]) });
    let floor = desk.floor();
    let case = floor.case.as_ref().unwrap();
    let hole: Vec<_> = case.asked.holes[0].iter().map(|corner| floor.on_plan(*corner)).collect();
    let sixteenth = Length::sixty_fourths(4);
    assert_eq!(reach(&hole), {
        let (least, most) = (at(60, 60), at(66, 66));
        (Point::new(least.x - sixteenth, least.y - sixteenth), Point::new(most.x + sixteenth, most.y + sixteenth))
    });
    let layout = laid(case);
    assert_eq!(check(case, &layout), Ok(layout.cut));
    desk.record(Obstacle { what: ObstacleKind::Chimney, takes: desk.placed([10, 60, 20, 20]) });
    let (floors, doubts) = desk.floors();
    assert_eq!(floors[0].case.as_ref().unwrap().asked.holes.len(), 1);
    assert!(doubts.iter().any(|doubt| doubt.contains("stands at the edge")), "{doubts:?}");
}

fn twice_the_area(ring: &[Corner]) -> i64 {
    let pairs = ring.iter().zip(ring.iter().cycle().skip(1));
    pairs.map(|(a, b)| i64::from(a.0) * i64::from(b.1) - i64::from(a.1) * i64::from(b.0)).sum()
}

fn a_whole_floor_out_of_square() -> Desk {
    // An L of 16 × 14 ft, its last side an inch longer than square walls allow.
    let sides = [
        (192, Turn::Right),
        (96, Turn::Right),
        (72, Turn::Left),
        (72, Turn::Right),
        (120, Turn::Right),
        (169, Turn::Right),
    ];
    let mut desk = Desk::new(&sides, Run::AcrossFirstSide, 11);
    desk.record(WholeFloor { room: desk.room });
    desk
}

#[test]
fn a_whole_floor_follows_the_walls_as_adjusted() {
    let desk = a_whole_floor_out_of_square();
    let floor = desk.floor();
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
    let mut desk = Desk::new(&[(192, Turn::Right), (96, Turn::Right)], Run::AcrossFirstSide, 11);
    desk.record(WholeFloor { room: desk.room });
    assert_eq!(to_lay(desk.job()).value().map(Vec::len), None);
    let Figure::Missing(needs) = to_lay(desk.job()) else { panic!("no outline is known") };
    assert_eq!(needs, [Need::RoomOutline]);
}

#[test]
fn what_is_said_of_the_sheets_counts() {
    let mut desk = Desk::rectangle(Run::AcrossFirstSide).opening([16, 16, 160, 120]);
    desk.record(Fact::SheetEdge(SheetEdge::TongueAndGroove));
    desk.record(Fact::SpanRating(SpanRating::new(12).unwrap()));
    desk.record(Fact::SheetGap(inches(0)));
    desk.record(Fact::EdgeGap(inches(1)));
    desk.record(Fact::Kerf(Typed::new("1/4\"", Length::sixty_fourths(16))));
    desk.record(Fact::JoistThickness(inches(2)));
    let (floors, doubts) = desk.floors();
    let asked = &floors[0].case.as_ref().unwrap().asked;
    // Half an inch less than 4 ft.
    assert_eq!((asked.sheet.length, asked.sheet.width), (1536, 760));
    assert_eq!((asked.gap, asked.kerf, asked.joist_width), (0, 4, 32));
    assert_eq!(asked.outline[0], (16, 16));
    assert!(doubts.iter().any(|doubt| doubt.contains("rated 12 in")), "{doubts:?}");
    assert!(doubts.iter().any(|doubt| doubt.contains("factory edge")), "{doubts:?}");
    desk.record(Fact::SpanRating(SpanRating::new(24).unwrap()));
    assert!(!desk.floors().1.iter().any(|doubt| doubt.contains("rated")), "24 in suits 16 in");
}

#[test]
fn a_piece_around_a_corner_is_trimmed_along_two_lines() {
    // A floor of 64 × 40 in with 16 × 8 in off its upper right: one piece, whatever is laid.
    let outline = vec![(0, 0), (1024, 0), (1024, 512), (768, 512), (768, 640), (0, 640)];
    let file = Request {
        outline,
        holes: Vec::new(),
        joists: vec![256, 512, 768],
        joist_width: 24,
        sheet: Sheet { length: 1536, width: 768 },
        gap: 2,
        kerf: 2,
        min_rip: 384,
        min_bays: 2,
        stagger: 1,
    };
    let case = Case::new(file).unwrap();
    let layout = laid(&case);
    assert_eq!(layout.pieces.len(), 1);
    let form = form(&case, &layout, &layout.pieces[0]);
    let trims: Vec<_> = form.trims.iter().map(|trim| (trim.from, trim.to)).collect();
    assert_eq!(trims, [((768, 512), (768, 640)), ((768, 512), (1024, 512))]);
    assert_eq!(form.strips.iter().map(|strip| twice_the_area(strip)).sum::<i64>(), 2 * (1024 * 640 - 256 * 128));
}
