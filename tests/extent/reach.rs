//! Floor that no reading reaches: nothing is told of it, and it is read first.

use super::{Site, known_of};
use crate::desk::{Desk, percent};
use duckboard::engine::extent::{CLOSE, Cell, Extent, Group, REACH, Untold};
use duckboard::engine::geometry::{Point, Turn};
use duckboard::engine::moisture::{Material, Meter, Reading, Sensing, Shown, Wood};
use duckboard::engine::place::{Element, JoistNumber, Place, Position};
use duckboard::engine::survey::{Run, WholeFloor, propose};
use duckboard::engine::units::{Area, Length};

/// An invented room on joists 16 in apart.
fn room(width: &str, height: &str, joists: u16) -> Site {
    let mut desk = Desk::new();
    let (room, _) = desk.room(&[width, height, width, height].map(|side| (side, Turn::Right)));
    desk.joists(room, Run::AcrossFirstSide, "16", "16", joists);
    Site { desk }
}

/// 24 by 20 ft.
fn large() -> Site {
    room("24'", "20'", 17)
}

fn read_all(site: &mut Site, joists: &[u16], alongs: &[&str], shown: impl Fn(u16, &str) -> String) {
    for joist in joists {
        for along in alongs {
            site.joist(*joist, along, &shown(*joist, along));
        }
    }
}

fn unread(extent: &Extent) -> f64 {
    match extent.wet {
        Err(Untold::Unread(unread)) => unread.to_square_feet(),
        other => panic!("{other:?}"),
    }
}

/// 11 % and a plume of 18 points about joist 3, 4 ft along, which is over 19 % on 40.7 sq ft.
fn plume(joist: u16, along: &str) -> String {
    let [x, y] = [f64::from(joist) * 4.0 / 3.0 - 4.0, along.trim_end_matches('\'').parse::<f64>().unwrap() - 4.0];
    format!("{:.1}", 11.0 + 18.0 * libm::exp(-(x * x + y * y) / 16.0))
}

#[test]
fn readings_within_one_leak_say_nothing_of_the_rest_of_the_floor() {
    for (joists, alongs) in
        [(&[2, 3, 4][..], &["3'", "5'"][..]), (&[2, 3, 4], &["3'", "4'", "5'"]), (&[2, 4, 5], &["3'", "5'"])]
    {
        let mut site = large();
        read_all(&mut site, joists, alongs, plume);
        let known = known_of(&site).value;
        // At most a circle about each reading's corner of the clump is reached.
        assert!(unread(&known) > 350.0, "{}", unread(&known));
        let next = known.next.unwrap();
        assert!(known.spots.iter().all(|spot| (spot.at - next.at).length() > REACH), "{next:?}");
    }
}

#[test]
fn dry_readings_by_the_hatch_say_nothing_of_the_far_wall_however_many_they_are() {
    for joists in [&[1, 3, 5][..], &[1, 5, 9, 13], &[1, 4, 7, 10, 13, 16, 17]] {
        let mut site = large();
        read_all(&mut site, joists, &["2'", "5'", "8'"], |_, _| "11".to_owned());
        let known = known_of(&site).value;
        // All from 12 ft on: 24 by 8 ft.
        assert!(unread(&known) > 185.0, "{joists:?}: {}", unread(&known));
        assert!(known.next.unwrap().along >= Length::feet(11), "{:?}", known.next);
    }
}

/// Wet 4 ft along the far wall, and sharply bounded: who gets a range has read it.
#[test]
fn a_range_is_told_only_where_every_wall_was_read_within_reach() {
    let mut site = large();
    let mut extent = known_of_first(&mut site);
    let mut taken = 6;
    while let Err(Untold::Unread(_)) = extent.wet {
        let next = extent.next.unwrap();
        let is_wet = next.at.y > Length::feet(16);
        site.joist(next.joist.get(), &format!("{}'", next.along.to_feet()), if is_wet { "26" } else { "11" });
        extent = known_of(&site).value;
        taken += 1;
        assert!(taken < 50, "it comes to an end");
    }
    let wet = extent.wet.unwrap();
    let over = extent.spots.iter().filter(|spot| spot.corrected.corrected.bound() > extent.limit).count();
    assert!(over >= 3, "{over} of {taken}");
    let range = wet.at_least.to_square_feet()..=wet.at_most.to_square_feet();
    assert!(range.contains(&96.0), "{range:?} after {taken}");
}

fn known_of_first(site: &mut Site) -> Extent {
    read_all(site, &[1, 3, 5], &["2'", "5'"], |_, _| "11".to_owned());
    known_of(site).value
}

#[test]
fn floor_is_reached_to_the_foot_that_is_said_and_no_farther() {
    let mut site = room("16'", "12'", 11);
    read_all(&mut site, &[2, 6, 10], &["3'", "9'"], |_, _| "12".to_owned());
    let extent = known_of(&site).value;
    assert!(extent.wet.is_ok());
    for cell in extent.grid.floor() {
        let nearest = extent.spots.iter().map(|spot| (spot.at - cell.at).length()).min().unwrap();
        assert_eq!(cell.is_reached, nearest <= REACH, "{cell:?}");
    }
    // With one reading moved off, a corner is out of reach, and nothing is drawn of it.
    let mut site = room("16'", "12'", 11);
    read_all(&mut site, &[2, 6], &["3'", "9'"], |_, _| "12".to_owned());
    read_all(&mut site, &[10], &["3'", "7'"], |_, _| "12".to_owned());
    let extent = known_of(&site).value;
    let out: Vec<_> = extent.grid.floor().filter(|cell| !cell.is_reached).collect();
    assert!(!out.is_empty() && out.iter().all(|cell| cell.support == 0.0));
    let unread = extent.wet.unwrap().unread.to_square_feet();
    assert!((unread - out.len() as f64 * of_cell(&extent)).abs() < 1e-3);
}

/// Square feet of a cell in a room of 16 by 12 ft.
fn of_cell(extent: &Extent) -> f64 {
    192.0 / extent.grid.floor().count() as f64
}

/// A twentieth of 192 sq ft is 9.6.
#[test]
fn a_corner_that_nobody_read_counts_as_wet_and_more_than_a_corner_is_not_told() {
    let with = |last: &str| {
        let mut site = room("16'", "12'", 11);
        read_all(&mut site, &[2, 6], &["3'", "9'"], |_, _| "12".to_owned());
        read_all(&mut site, &[10], &["3'", last], |_, _| "12".to_owned());
        known_of(&site).value
    };
    let (all, corner) = (with("9'").wet.unwrap(), with("7'").wet.unwrap());
    assert_eq!((all.unread, all.at_least, corner.at_least), (Area::ZERO, Area::ZERO, Area::ZERO));
    let corner_unread = corner.unread.to_square_feet();
    assert!((5.0..=9.6).contains(&corner_unread), "{corner_unread}");
    assert!(corner.at_most >= all.at_most + corner.unread, "{corner:?} {all:?}");
    let more = unread(&with("6'"));
    assert!((9.6..=15.0).contains(&more), "{more}");
}

/// A reading 4 ft from a cell's middle reaches it; a sixty-fourth of an inch farther it does not.
#[test]
fn a_reading_reaches_just_so_far() {
    let mut site = large();
    let middle = known_of_first(&mut site).grid.floor().last().unwrap().at;
    for (by, reached) in [(-1, true), (0, true), (1, false)] {
        let mut site = large();
        known_of_first(&mut site);
        let right = middle.x - REACH - Length::sixty_fourths(by);
        let typed = |length: Length| duckboard::engine::units::Typed::new("", length);
        let position = Position::OnPlan { right: typed(right), down: typed(middle.y) };
        let place = Place { element: Element::Joist, position, face: None, height: None, chalk: None };
        let place = site.desk.log(place);
        let wood = Wood { material: Material::Solid, species: None };
        let meter = Some(site.desk.pins());
        site.desk.log(Reading { meter, ..Reading::new(place, Shown::Percent(percent("12")), wood) });
        let extent = known_of(&site).value;
        let cell = extent.grid.floor().find(|cell| cell.at == middle).unwrap();
        assert_eq!(cell.is_reached, reached, "{by}");
    }
}

#[test]
fn at_least_stands_on_floor_close_to_readings_over_the_limit() {
    let with = |shown: &str| {
        let mut site = room("16'", "12'", 11);
        read_all(&mut site, &[1, 3, 5, 7, 9, 11], &["2'", "6'", "10'"], |_, _| shown.to_owned());
        known_of(&site).value
    };
    let extent = with("26");
    let is_close = |at: Point| extent.spots.iter().any(|spot| (spot.at - at).length() <= CLOSE);
    let count = extent.grid.floor().filter(|cell| is_close(cell.at)).count() as f64;
    let close = 192.0 * count / extent.grid.floor().count() as f64;
    let at_least = extent.wet.unwrap().at_least.to_square_feet();
    assert!(at_least <= close + 1e-6 && close < 192.0, "{at_least} {close}");
    assert!(at_least > 0.8 * close, "all of them are wet: {at_least} {close}");
    for (shown, stands) in [("18.9", false), ("19", false), ("19.1", true)] {
        assert_eq!(with(shown).wet.unwrap().at_least > Area::ZERO, stands, "{shown}");
    }
}

fn sill(site: &mut Site, joist: u16, shown: Shown, material: Material, sensing: Sensing) {
    let position = Position::OnJoist { joist: JoistNumber::new(joist).unwrap(), along: Some(crate::desk::length("0")) };
    let place = Place { element: Element::Sill, position, face: None, height: None, chalk: None };
    let place = site.desk.log(place);
    let pins = site.desk.pins();
    let pins = site.desk.job().now.meters().get(&pins).unwrap().value.clone();
    let meter = Some(site.desk.log(Meter { sensing, ..pins }));
    site.desk.log(Reading { meter, ..Reading::new(place, shown, Wood { material, species: None }) });
}

fn dry_joists() -> Site {
    let mut site = room("16'", "12'", 11);
    read_all(&mut site, &[2, 6, 10], &["3'", "9'"], |_, _| "11".to_owned());
    site
}

/// Treated wood reads up to 2 points high, and framing's limit is 19 %.
#[test]
fn treated_wood_is_drawn_as_it_reads_and_at_least_wet_where_its_salts_do_not_explain_it() {
    let with = |shown: Shown, material: Material| {
        let mut site = dry_joists();
        [1, 6, 11].into_iter().for_each(|joist| sill(&mut site, joist, shown.clone(), material, Sensing::Pin));
        known_of(&site)
    };
    let percent = |text| Shown::Percent(percent(text));
    for (shown, is_wet) in
        [(percent("19"), false), (percent("21"), false), (percent("21.1"), true), (percent("30"), true)]
    {
        let (treated, untreated) = (with(shown.clone(), Material::Treated), with(shown, Material::Solid));
        let [one, other] = [&treated, &untreated].map(|known| known.value.wet.unwrap());
        assert_eq!((treated.value.spots.len(), one.area, one.at_most), (9, other.area, other.at_most));
        assert_eq!(one.at_least > Area::ZERO, is_wet, "{one:?}");
        assert!(treated.doubts.iter().any(|doubt| doubt.contains("may be 1 to 2 % drier: 3")), "{:?}", treated.doubts);
    }
    let soaked = with(Shown::OverMaximum, Material::Treated).value.wet.unwrap();
    assert!(soaked.opening.is_some() && soaked.at_most.to_square_feet() >= 20.0, "{soaked:?}");
}

/// Nobody says how much too high glue and a pinless meter read: such wood may be wet, and may not.
#[test]
fn at_most_stands_over_panel_and_pinless_readings_past_their_scale() {
    let dry = known_of(&dry_joists()).value.wet.unwrap();
    for (material, sensing) in [(Material::Plywood, Sensing::Pin), (Material::Solid, Sensing::Pinless)] {
        let mut site = dry_joists();
        sill(&mut site, 6, Shown::OverMaximum, material, sensing);
        let known = known_of(&site);
        let wet = known.value.wet.unwrap();
        assert_eq!((wet.area, wet.at_least, known.value.spots.len()), (dry.area, dry.at_least, 6));
        assert!(wet.at_most > dry.at_most, "{wet:?}");
        assert!(known.doubts.iter().any(|doubt| doubt.contains("over the limit: 1")), "{:?}", known.doubts);
    }
}

/// An L of 240 sq ft, all of it wet: the largest opening in it is 20 by 8 ft.
#[test]
fn an_opening_says_what_it_leaves_wet() {
    let mut desk = Desk::new();
    let ell = [
        ("20'", Turn::Right),
        ("8'", Turn::Right),
        ("10'", Turn::Left),
        ("8'", Turn::Right),
        ("10'", Turn::Right),
        ("16'", Turn::Right),
    ];
    let (room, _) = desk.room(&ell);
    desk.joists(room, Run::AcrossFirstSide, "16", "16", 14);
    let mut site = Site { desk };
    read_all(&mut site, &[1, 4, 7, 10, 13], &["3'", "6'"], |_, _| "26".to_owned());
    read_all(&mut site, &[1, 4, 7], &["10'", "14'"], |_, _| "27".to_owned());
    let extent = known_of(&site).value;
    let wet = extent.wet.unwrap();
    let (opening, left) = (wet.opening.unwrap(), wet.left.to_square_feet());
    let of_floor = 240.0 / extent.grid.floor().count() as f64;
    let is_left = |cell: &&Cell| cell.chance >= 0.5 && !opening.contains(cell.at);
    let cells = extent.grid.floor().filter(is_left).count() as f64;
    assert!(left > 70.0 && (left - cells * of_floor).abs() < 1e-3, "{left} and {cells}");
    assert_eq!(Some(opening), propose(&extent.floor, &extent.outline, opening), "as large as it goes");
    // Where all of the floor comes out, nothing is left.
    site.desk.log(WholeFloor { room });
    let whole = known_of(&site).value.wet.unwrap();
    assert_eq!((whole.area, whole.opening, whole.left), (wet.area, None, Area::ZERO));
    // Nor where the opening takes all.
    let known = Site::one_wet_corner().extent(Group::Framing).value.wet.unwrap();
    assert!(known.opening.is_some());
    assert_eq!(known.left, Area::ZERO);
}
