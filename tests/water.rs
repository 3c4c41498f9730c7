//! The water page: every card answers or says what to do, with its reasons and marks.
#![allow(clippy::indexing_slicing, clippy::panic, clippy::unwrap_used, reason = "a test fails by panicking")]

#[path = "water/air.rs"]
mod air;
mod desk;

use desk::{Desk, length, percent};
use duckboard::draw::card::{Ask, Card, Tone};
use duckboard::draw::water::water;
use duckboard::draw::{Canvas, Item, Role, svg};
use duckboard::draw::{View, job_plan, plan};
use duckboard::engine::condition::{Condition, Finding};
use duckboard::engine::entry::{DeviceId, Label};
use duckboard::engine::geometry::Turn;
use duckboard::engine::job::{Book, Fact, Job, Observation, Record};
use duckboard::engine::moisture::{Answer, Material, Meter, Reading, Sensing, Shown, Species, Wood};
use duckboard::engine::origin::Check;
use duckboard::engine::place::{Element, JoistNumber, Place, Position};
use duckboard::engine::sample;
use duckboard::engine::survey::{AlongFrom, Joists, Run};
use duckboard::engine::take::Units;
use duckboard::file::tables::{printed, readings as rows};

const CANVAS: Canvas = Canvas { width_px: 358, height_px: 300 };

fn sample_book() -> Book {
    Book::of(sample::entries(DeviceId::new(7)).into_iter().map(|entry| Record::of(entry).unwrap()))
}

fn page(job: &Job) -> Vec<Card> {
    water(job, Units::default(), CANVAS)
}

fn card(job: &Job, title: &str) -> Card {
    let cards = page(job);
    let titles: Vec<_> = cards.iter().map(|card| card.title.clone()).collect();
    cards.into_iter().find(|card| card.title.starts_with(title)).unwrap_or_else(|| panic!("{titles:?}"))
}

fn said(card: &Card) -> String {
    card.lines.iter().map(|line| line.text.as_str()).collect::<Vec<_>>().join("\n")
}

/// Every mark's words, as a figure shows them.
const MARKS: [&str; 5] =
    ["published", "published, seen as quoted", "computed here", "from memory", "common practice, no source"];

#[test]
fn every_answer_has_its_reasons_with_a_mark() {
    let book = sample_book();
    for card in page(book.job()).iter().filter(|card| !["Checklist", "Next check"].contains(&&*card.title)) {
        let small: Vec<_> = card.lines.iter().filter(|line| line.tone == Tone::Small).collect();
        let has_mark = |text: &str| MARKS.iter().any(|mark| text.contains(&format!("{mark})")));
        assert!(small.iter().any(|line| has_mark(&line.text)), "{}: {small:?}", card.title);
    }
}

/// The report is printed from the same cards, without their buttons.
#[test]
fn the_next_check_names_its_question_where_nobody_can_tap() {
    let card = card(sample_book().job(), "Next check");
    assert_eq!(card.asks.len(), 1);
    assert!(card.headline.ends_with('?'), "{card:?}");
    assert_eq!(card.headline, card.asks[0].asks);
}

#[test]
fn a_job_that_knows_nothing_says_what_to_do_on_every_card() {
    let desk = Desk::new();
    for card in page(desk.job()) {
        assert!(!card.headline.is_empty() || !card.asks.is_empty(), "{card:?}");
        assert_ne!(card.headline, "Close", "nothing is closed unread");
        let next = card.lines.iter().filter(|line| line.tone == Tone::Next);
        next.for_each(|line| assert!(!line.text.starts_with("Next"), "the page says that by itself: {}", line.text));
    }
    let asks = card(desk.job(), "Checklist").asks;
    assert!(asks.len() > 15 && !asks.iter().any(Ask::is_answered));
}

#[test]
fn the_map_is_drawn_with_its_readings_its_limit_and_the_next_reading() {
    let book = sample_book();
    let card = card(book.job(), "How far does it go? Framing");
    let drawing = card.drawing.unwrap();
    let count = |role: Role| drawing.items.iter().filter(|item| item.role() == role).count();
    assert_eq!((count(Role::Reading), count(Role::Cursor)), (15, 1));
    assert!(count(Role::MapCell) > 50 && count(Role::Contour) > 5);
    let strengths = drawing
        .items
        .iter()
        .filter_map(|item| if let Item::Area { percent, .. } = item { Some(*percent) } else { None });
    let (least, most) = strengths.fold((100, 0), |(least, most), it| (least.min(it), most.max(it)));
    assert!(least < most && most <= 85, "it fades where nothing supports it: {least} to {most}");
    assert!(roxmltree::Document::parse(&svg::write(&drawing)).is_ok());
    let said = said_next(book.job());
    assert!(said.contains("from the north wall"), "in a carpenter's words");
    assert!(said.contains("Read joist") && !said.contains("Next"), "what to do, and the page says next: {said}");
}

fn said_next(job: &Job) -> String {
    said(&card(job, "How far does it go? Framing"))
}

#[test]
fn the_opening_that_is_offered_takes_all_wet_out_once_it_is_accepted() {
    let mut desk = Desk::of(Book::of(sample_book().log().records().cloned()));
    let offered = |desk: &Desk| card(desk.job(), "How far does it go? Framing").act;
    assert!(offered(&desk).is_none(), "all of it lies in the opening that is logged");
    let logged = *desk.job().now.openings().keys().next().unwrap();
    desk.withdraw(logged);
    let act = offered(&desk).unwrap();
    let Observation::Opening(opening) = &act.logs else { panic!("{act:?}") };
    assert!(opening.length.value.is_positive() && opening.width.value.is_positive());
    desk.log(act.logs.clone());
    assert_eq!(desk.job().now.openings().len(), 1);
    assert!(offered(&desk).is_none());
}

/// 24 by 20 ft, read only by the hatch: the far half may be dry, and may be all wet.
#[test]
fn the_map_says_how_much_of_the_floor_nobody_read_instead_of_how_much_is_wet() {
    let mut desk = Desk::new();
    let (room, _) = desk.room(&["24'", "20'", "24'", "20'"].map(|side| (side, Turn::Right)));
    desk.joists(room, Run::AcrossFirstSide, "16", "16", 17);
    let wood = Wood { material: Material::Solid, species: Some(Species::DouglasFir) };
    let meter = Some(desk.pins());
    for (joist, along, shown) in
        [(2, "3'", "24"), (3, "3'", "25"), (4, "3'", "19"), (2, "5'", "26"), (3, "5'", "12"), (4, "5'", "12")]
    {
        let place = desk.log(desk::spot(joist, along));
        desk.log(Reading { meter, ..Reading::new(place, Shown::Percent(percent(shown)), wood) });
    }
    let card = card(desk.job(), "How far does it go? Framing");
    assert_eq!(card.headline, "Not told: part of the floor is unread");
    assert!(card.act.is_none(), "no opening rests on floor that nobody read");
    let says = said(&card);
    assert!(says.contains("No reading within 4' 0\" of ") && says.contains("it may all be wet there"), "{says}");
    assert!(says.contains("Over 19 %: 3 of 6 readings.") && says.contains("Read joist"), "{says}");
    assert!(!says.contains("At least") && !says.contains("at most"), "{says}");
    assert!(card.drawing.unwrap().title.contains("of the floor unread"));
}

/// An L of 240 sq ft, all of it wet.
#[test]
fn the_card_says_what_the_offered_opening_leaves_wet() {
    let mut desk = Desk::new();
    let (r, l) = (Turn::Right, Turn::Left);
    let (room, _) = desk.room(&[("20'", r), ("8'", r), ("10'", l), ("8'", r), ("10'", r), ("16'", r)]);
    desk.joists(room, Run::AcrossFirstSide, "16", "16", 14);
    let wood = Wood { material: Material::Solid, species: Some(Species::DouglasFir) };
    let meter = Some(desk.pins());
    let near = [1, 4, 7, 10, 13].into_iter().flat_map(|joist| [(joist, "3'"), (joist, "6'")]);
    for (joist, along) in near.chain([1, 4, 7].into_iter().flat_map(|joist| [(joist, "10'"), (joist, "14'")])) {
        let place = desk.log(desk::spot(joist, along));
        desk.log(Reading { meter, ..Reading::new(place, Shown::Percent(percent("27")), wood) });
    }
    let offered = |desk: &Desk| card(desk.job(), "How far does it go? Framing");
    let first = offered(&desk);
    assert!(said(&first).contains("The opening below leaves ") && said(&first).contains("open that as well"));
    desk.log(first.act.unwrap().logs);
    // The rest is offered next, and then nothing is left.
    let second = offered(&desk);
    assert!(!said(&second).contains("The opening below leaves "), "{}", said(&second));
    desk.log(second.act.unwrap().logs);
    let third = offered(&desk);
    assert!(third.act.is_none() && !said(&third).contains("rather wet than not"), "{}", said(&third));
}

/// An L whose joists 8 to 14 start at side 3, 8 ft south of the wall at the first corner.
#[test]
fn the_next_reading_is_so_far_from_the_wall_that_its_joist_meets() {
    let mut desk = Desk::new();
    let (r, l) = (Turn::Right, Turn::Left);
    let (room, _) = desk.room(&[("10'", r), ("8'", l), ("10'", r), ("8'", r), ("20'", r), ("16'", r)]);
    let (first, spacing) = (length("16"), length("16"));
    desk.log(Joists { room, run: Run::AcrossFirstSide, first, spacing, count: 14, along: AlongFrom::Wall });
    desk.log(Fact::MeasuredFrom(Label::fitted("north wall")));
    let wood = Wood { material: Material::Solid, species: Some(Species::DouglasFir) };
    let meter = Some(desk.pins());
    let read = |desk: &mut Desk, joist, along| {
        let place = desk.log(desk::spot(joist, along));
        desk.log(Reading { meter, ..Reading::new(place, Shown::Percent(percent("12")), wood) });
    };
    for (joist, along) in [(2, "3'"), (6, "3'"), (2, "8'"), (6, "8'"), (2, "13'"), (6, "13'")] {
        read(&mut desk, joist, along);
    }
    let next = |desk: &Desk| said(&card(desk.job(), "How far does it go? Framing"));
    assert!(next(&desk).contains("from side 3.") && !next(&desk).contains("north"), "{}", next(&desk));
    for (joist, along) in [(9, "4'"), (12, "2'"), (12, "6'"), (14, "4'")] {
        read(&mut desk, joist, along);
    }
    desk.log(Joists {
        room,
        run: Run::AcrossFirstSide,
        first: length("16"),
        spacing: length("16"),
        count: 7,
        along: AlongFrom::Wall,
    });
    assert!(next(&desk).contains("from the north wall."), "{}", next(&desk));
}

#[test]
fn decayed_wood_is_for_the_probe_whatever_the_meter_says() {
    let mut desk = Desk::new();
    let position = Position::OnJoist { joist: JoistNumber::new(2).unwrap(), along: Some(length("3'")) };
    let place = desk.log(Place { element: Element::Joist, position, face: None, height: None, chalk: None });
    let shown = Shown::Percent(percent("13"));
    let wood = Wood { material: Material::Solid, species: None };
    desk.log(Reading::new(place, shown, wood));
    assert!(!said(&card(desk.job(), "What do the readings say?")).contains("probe"));
    desk.log(Condition { place: Some(place), finding: Finding::Rotten, note: None });
    assert!(said(&card(desk.job(), "What do the readings say?")).contains("probe it"));
}

#[test]
fn ventilating_is_judged_by_vapor_and_by_where_wood_would_end() {
    let book = sample_book();
    // 49 °F and 64 % outdoors against 57 °F and 70 %: drier, and wood ends near 9 %.
    let card = card(book.job(), "Would it dry by ventilating alone?");
    assert!(card.headline.starts_with("It can"), "{}", card.headline);
    assert!(said(&card).contains("grains of vapor"), "{}", said(&card));
}

/// What stands or lies bare below gives vapor that no reading of the air counts.
#[test]
fn ventilating_alone_is_not_said_to_dry_over_soil_that_nobody_saw_covered() {
    let mut desk = Desk::of(sample_book());
    let says = |desk: &Desk| said(&card(desk.job(), "Would it dry by ventilating alone?"));
    assert!(says(&desk).contains("cover the soil first"), "{}", says(&desk));
    desk.log(Check { of: desk::label("ground_covered_now"), answer: Answer::Yes });
    assert!(!says(&desk).contains("cover the soil first"), "{}", says(&desk));
}

fn said_of_water(desk: &mut Desk, answers: &[(&str, Answer)]) -> Card {
    for (of, answer) in answers {
        desk.log(Check { of: Label::fitted(of), answer: *answer });
    }
    card(desk.job(), "Where does the water come from?")
}

/// It said "cover the soil" first, over water that stood on it.
#[test]
fn of_standing_water_on_bare_soil_the_page_leads_the_water_away_first() {
    let mut desk = Desk::new();
    let yes = ["water_on_soil", "bare_soil", "damp_soil", "after_rain", "wall_marks", "dew_beads"];
    let card = said_of_water(&mut desk, &yes.map(|name| (name, Answer::Yes)));
    assert!(card.headline.starts_with("Standing or running water below"), "{}", card.headline);
    let steps: Vec<_> = card.lines.iter().filter(|line| line.tone == Tone::Next).map(|line| &line.text).collect();
    assert!(steps[0].starts_with("Lead the water away before anything is covered"), "{steps:?}");
    let covers = steps.iter().position(|step| step.contains("cover the soil"));
    assert!(covers.is_none_or(|at| at > 0 && steps[at].starts_with("First lead away any water")), "{steps:?}");
}

#[test]
fn what_is_likely_by_two_answers_is_no_headline_yet() {
    let mut desk = Desk::new();
    let two = [("under_appliance", Answer::Yes), ("wet_in_cycle", Answer::Yes)];
    assert_eq!(said_of_water(&mut desk, &two).headline, "Not enough to say");
    let more = [("meter_turns", Answer::No)];
    assert_eq!(said_of_water(&mut desk, &more).headline, "Leaking appliance");
}

/// Invented: a room of 12 by 10 ft whose joists are hem-fir, read on the Douglas-fir scale.
fn read_room(shown: &[Shown]) -> Desk {
    let mut desk = Desk::new();
    let (room, _) = desk.room(&["12'", "10'", "12'", "10'"].map(|side| (side, Turn::Right)));
    desk.joists(room, Run::AcrossFirstSide, "8", "16", 8);
    let meter = desk.log(Meter {
        label: desk::label("pins"),
        sensing: Sensing::Pin,
        scale: Some(Species::DouglasFir),
        reference: None,
        corrects_temperature: Answer::Yes,
        corrects_species: Answer::No,
        minimum: Some(percent("6")),
        maximum: Some(percent("30")),
    });
    let wood = Wood { material: Material::Solid, species: Some(Species::HemFir) };
    for (joist, shown) in (1..).zip(shown) {
        let place = desk.log(desk::spot(joist, "5'"));
        desk.log(Reading { meter: Some(meter), ..Reading::new(place, shown.clone(), wood) });
    }
    desk
}

/// The texts on the discs of a drawing, in order.
fn on_discs(items: &[Item]) -> Vec<String> {
    let mut texts: Vec<_> = items
        .iter()
        .filter_map(|item| match item {
            Item::Text { text, role: Role::OnLight | Role::OnDark, .. } => Some(text.clone()),
            _ => None,
        })
        .collect();
    texts.sort();
    texts
}

#[test]
fn one_reading_is_one_number_on_plan_map_table_and_csv() {
    let shown = ["18", "17.5", "21", "16.2", "12.34", "9"].map(|text| Shown::Percent(percent(text)));
    let desk = read_room(&shown);
    let job = desk.job();
    let drawn = plan(&job_plan::of(job, Units::default(), None), CANVAS, View { from_below: false });
    let map = card(job, "How far does it go? Framing").drawing.unwrap();
    assert_eq!(on_discs(&drawn.items), on_discs(&map.items), "the plan and the map of one report");

    let table = &printed(job, Units::default())[1];
    assert_eq!(table.columns[1..3], ["As shown", "Corrected"]);
    for (row, printed) in rows(job).iter().zip(&table.rows) {
        assert_eq!((&printed[1], &printed[2]), (&row.shown, &row.corrected));
        assert_eq!(row.corrected, format!("{} %", row.corrected_percent.clone().unwrap()));
        // The card names places that are not plainly dry: those within 2 points of 19 %.
        let is_named = row.corrected_percent.clone().unwrap().parse::<f64>().unwrap() > 17.0;
        assert_eq!(said(&card(job, "What do the readings say?")).contains(&row.corrected), is_named);
    }
    // On drawings the same numbers, rounded again: half up.
    let mut rounded: Vec<_> = rows(job)
        .iter()
        .map(|row| (row.corrected_percent.clone().unwrap().parse::<f64>().unwrap() + 0.5).floor().to_string())
        .collect();
    rounded.sort();
    assert_eq!(on_discs(&drawn.items), rounded);
    // 18 on the Douglas-fir scale is 19.2 in California red fir (from memory), wherever it stands.
    assert_eq!((rows(job)[0].shown.as_str(), rows(job)[0].corrected.as_str()), ("18 %", "19.2 %"));
}

/// On panels a reading compares with its like alone.
#[test]
fn what_is_only_relative_is_no_number_for_a_sum() {
    let mut desk = read_room(&[Shown::Percent(percent("16"))]);
    let meter = desk.job().now.meters().first().map(|(id, _)| *id);
    for (joist, material) in (2..).zip([Material::Solid, Material::Treated, Material::Plywood, Material::Osb]) {
        let place = desk.log(desk::spot(joist, "5'"));
        let wood = Wood { material, species: None };
        desk.log(Reading { meter, ..Reading::new(place, Shown::Percent(percent("16")), wood) });
    }
    for row in rows(desk.job()).iter().skip(1) {
        assert_eq!(row.corrected_percent.is_none(), row.corrected.contains("relative"), "{row:?}");
    }
    let numbers: Vec<_> = rows(desk.job()).iter().map(|row| row.corrected_percent.is_some()).collect();
    assert!(numbers[0] && numbers[2] && !numbers[3], "{:?}", rows(desk.job()));
}

#[test]
fn off_the_scale_no_page_shows_a_number() {
    let shown = [Shown::OverMaximum, Shown::UnderMinimum, Shown::Percent(percent("31")), Shown::Percent(percent("18"))];
    let desk = read_room(&shown);
    let job = desk.job();
    let drawn = plan(&job_plan::of(job, Units::default(), None), CANVAS, View { from_below: false });
    let map = card(job, "How far does it go? Framing").drawing.unwrap();
    // What is not believed is on the plan, as doubted, and never on the map.
    assert_eq!(on_discs(&drawn.items), ["19", "over", "over", "under"]);
    assert_eq!(on_discs(&map.items), ["19", "over", "under"]);
    let rows = rows(job);
    let corrected: Vec<_> = rows.iter().map(|row| (row.corrected.as_str(), row.corrected_percent.as_deref())).collect();
    let off = [
        ("over the meter's maximum", None),
        ("under the meter's minimum", None),
        ("over 30.0 %, doubted", None),
        ("19.2 %", Some("19.2")),
    ];
    assert_eq!(corrected, off);
    let wettest = duckboard::engine::results::every_answer(job, Units::default());
    let wettest = wettest.iter().find(|answer| answer.name == "wettest").unwrap().said.value().unwrap();
    assert!(wettest.headline.starts_with("over"), "{}", wettest.headline);
}

#[test]
fn a_plan_with_numbers_says_below_it_what_they_are_and_one_without_says_nothing() {
    let legend = |desk: &Desk| {
        let drawn = plan(&job_plan::of(desk.job(), Units::default(), None), CANVAS, View { from_below: false });
        assert!(drawn.unplaced.is_empty(), "{:?}", drawn.unplaced);
        drawn.items.iter().find_map(|item| match item {
            Item::Text { text, at, .. } if text.contains("% moisture") => Some((text.clone(), at.y)),
            _ => None,
        })
    };
    let (says, y) = legend(&read_room(&[Shown::Percent(percent("18"))])).unwrap();
    assert_eq!(says, "% moisture, corrected");
    assert!(y > 280.0 && y < 300.0, "at the foot: {y}");
    assert_eq!(legend(&read_room(&[])), None);
}

#[test]
fn page_and_plan_show_the_wetter_of_two_readings_of_one_visit_that_contradict_each_other() {
    for (shown, then, stands) in [("30", "12", "30.0 %"), ("14.1", "12", "14.1 %"), ("14", "12", "12.0 %")] {
        let mut desk = Desk::new();
        let (room, _) = desk.room(&[("16'", Turn::Right)]);
        desk.joists(room, Run::AcrossFirstSide, "16", "16", 11);
        desk.visit("one");
        let (place, meter) = (desk.log(desk::spot(3, "3'")), Some(desk.pins()));
        let wood = Wood { material: Material::Solid, species: Some(Species::DouglasFir) };
        for shown in [shown, then] {
            desk.log(Reading { meter, ..Reading::new(place, Shown::Percent(percent(shown)), wood) });
        }
        let reads = card(desk.job(), "What do the readings say?");
        let is_over = stands == "30.0 %";
        assert_eq!(reads.headline, if is_over { "1 of 1 over the limit" } else { "None is over its limit" });
        let drawn = job_plan::of(desk.job(), Units::default(), None).readings;
        assert_eq!(drawn.len(), 1);
        assert_eq!(drawn[0].moisture, percent(stands.trim_end_matches(" %")).value, "{shown} {then}");
    }
}
