//! Which job calls for which caution.

use super::*;
use crate::engine::air::{AirLocation, AirReading};
use crate::engine::condition::{Condition, Finding};
use crate::engine::entry::{DeviceId, EntryId, Logger, Role, Text};
use crate::engine::framing::{Damage, DamageKind, Depth};
use crate::engine::job::{Book, Entry, Fact, Log, Observation, Pen, Record, Venting, Visit, Year};
use crate::engine::moisture::{Answer, Material, Reading, Shown, Wood};
use crate::engine::origin::Check;
use crate::engine::particular::{Part, Particular, Value};
use crate::engine::place::{Element, Face, JoistNumber, Place, Position};
use crate::engine::sample;
use crate::engine::survey::{Opening, WholeFloor};
use crate::engine::units::{Length, RelativeHumidity, Temperature, Typed};
use chrono::DateTime;
use std::collections::BTreeSet;

mod apart;
mod damage;
mod read;

/// A job that is written as it goes.
struct Desk {
    pen: Pen,
    book: Book,
}

impl Desk {
    fn new() -> Self {
        let pen = Pen::new(&Log::default(), DeviceId::new(1), stamp("QZ", "2026-11-25T08:15:00-06:00"));
        Self { pen, book: Book::default() }
    }

    fn with(mut self, observation: impl Into<Observation>) -> Self {
        self.log(observation);
        self
    }

    fn log(&mut self, observation: impl Into<Observation>) -> EntryId {
        let entry = self.pen.record(observation);
        self.keep(entry)
    }

    fn withdraw(&mut self, of: EntryId) -> EntryId {
        let entry = self.pen.take_back(of, self.book.job());
        self.keep(entry)
    }

    fn keep(&mut self, entry: Entry) -> EntryId {
        let id = entry.id;
        self.book.add(Record::of(entry).unwrap());
        id
    }

    /// A finding at a joist or another element.
    fn finding(mut self, element: Element, joist: u16, finding: Finding) -> Self {
        let place = self.log(place(element, joist));
        self.with(Condition { place: Some(place), finding, note: None })
    }

    fn due(&self) -> Vec<&'static str> {
        due(self.book.job(), None).into_iter().map(|caution| caution.name).collect()
    }

    fn is_due(&self, name: &str) -> bool {
        self.due().contains(&name)
    }
}

fn stamp(initials: &str, at: &str) -> Stamp {
    let by = Logger { initials: Text::new(initials).unwrap(), role: Role::CrewLead };
    Stamp { at: DateTime::parse_from_rfc3339(at).unwrap(), by, visit: None }
}

fn place(element: Element, joist: u16) -> Place {
    let position = Position::OnJoist { joist: JoistNumber::new(joist).unwrap(), along: None };
    Place { element, position, face: None, height: None, chalk: None }
}

fn opening() -> Opening {
    let from = EntryId { count: 1, device: DeviceId::new(1) };
    let feet = |feet| Typed::new(format!("{feet}'"), Length::feet(feet));
    Opening { from, along: feet(0), out: feet(0), length: feet(4), width: feet(8) }
}

fn found(finding: Finding) -> Condition {
    Condition { place: None, finding, note: None }
}

fn built(year: u16) -> Fact {
    Fact::YearBuilt(Year::new(year).unwrap())
}

/// A wet old house where everything is wrong.
fn everything() -> Desk {
    let mut desk = Desk::new().with(Fact::Venting(Venting::Vented)).with(opening()).with(built(1931));
    for finding in Finding::OF_WOOD.into_iter().chain(Finding::AROUND) {
        desk.log(found(finding));
    }
    desk.log(said(Part::Joist(JoistNumber::FIRST), "soft depth", inches("2 in", 2)));
    desk.log(said(Part::House, "eave", inches("24'", 288)));
    desk.log(said(Part::House, "air", word("exhaust fan")));
    desk.log(check("dryer_duct", Answer::Yes));
    let place = desk.log(place(Element::Sill, 1));
    let wood = Wood { material: Material::Treated, species: None };
    desk.with(Reading::new(place, Shown::OverMaximum, wood))
}

#[test]
fn the_empty_job_calls_for_none_and_a_bad_one_for_all() {
    assert!(Desk::new().due().is_empty());
    let all: Vec<_> = CAUTIONS.iter().map(|caution| caution.name).collect();
    assert_eq!(everything().due(), all);
}

#[test]
fn names_are_unique_and_fit_what_is_kept() {
    let names: BTreeSet<_> = CAUTIONS.iter().map(|caution| caution.name).collect();
    assert_eq!(names.len(), CAUTIONS.len());
    for caution in CAUTIONS {
        assert!(caution.name.bytes().all(|byte| byte.is_ascii_lowercase() || byte == b'_'), "{}", caution.name);
        assert_eq!(caution.acknowledgement().caution.as_str(), caution.name);
        assert_eq!(named(caution.name), Some(caution));
    }
    assert_eq!(named("dragons"), None);
}

#[test]
fn every_caution_has_words_and_a_source() {
    for caution in CAUTIONS {
        assert!(!caution.title.is_empty() && !caution.sources.is_empty(), "{}", caution.name);
        assert!(caution.words.ends_with('.') && caution.words.len() < 400, "{}", caution.name);
        assert!(!caution.words.contains("  ") && !caution.words.contains('!'), "{}", caution.name);
    }
}

#[test]
fn the_worst_come_first() {
    assert!(CAUTIONS.is_sorted_by_key(|caution| caution.severity));
    let desk = everything();
    assert!(due(desk.book.job(), None).is_sorted_by_key(|caution| caution.severity));
}

#[test]
fn the_report_names_everybody_who_read_a_caution_and_keeps_what_is_due() {
    let mut desk = Desk::new().with(found(Finding::Mould)).with(found(Finding::Sewage));
    let mold = named("mold").unwrap();
    desk.log(mold.acknowledgement());
    desk.pen.stamp_from(stamp("WX", "2026-11-25T09:00:00-06:00"));
    desk.log(mold.acknowledgement());
    let raised = all_triggered(desk.book.job());
    let names: Vec<_> = raised.iter().map(|raised| raised.caution.name).collect();
    assert_eq!(names, ["sewage", "mold"]);
    assert!(raised[0].read.is_empty());
    let readers: Vec<_> = raised[1].read.iter().map(|stamp| stamp.by.initials.as_str()).collect();
    assert_eq!(readers, ["QZ", "WX"]);
    assert_eq!(raised[1].read[1].at.to_rfc3339(), "2026-11-25T09:00:00-06:00");
    assert_eq!(raised[1].because, "Found: mold.");
}

#[test]
fn what_is_chosen_or_probed_calls_for_its_cautions_as_what_is_found_does() {
    let is_due = |said: Observation, name: &str| Desk::new().with(said).is_due(name);
    let house = |what: &str, is: &str| said(Part::House, what, word(is)).into();
    assert!(is_due(house("air", "vents"), "silica") && !is_due(house("air", "dehumidifier"), "silica"));
    assert!(is_due(house("sister lumber", "2x8 treated"), "treated_dust"));
    assert!(!is_due(house("sister lumber", "2x8 untreated"), "treated_dust"));
    assert!(is_due(check("ground_covered_now", Answer::Yes).into(), "radon"));
    let awl = said(Part::Joist(JoistNumber::FIRST), "awl", word("stops everywhere"));
    assert!(is_due(awl.into(), "crawl_entry"), "nobody probes a joist from above");
    assert!(!is_due(said(Part::Joists, "depth", inches("7 1/4 in", 7)).into(), "crawl_entry"));
}

#[test]
fn reading_one_caution_leaves_another_of_the_same_cause_due() {
    let mut desk = Desk::new().with(opening()).with(built(2004));
    assert_eq!(desk.due(), ["blind_cut", "engines", "hole_cover"]);
    desk.log(named("blind_cut").unwrap().acknowledgement());
    assert_eq!(desk.due(), ["engines", "hole_cover"]);
    desk = desk.with(found(Finding::Wire));
    let due = ["wire_or_pipe", "engines", "hole_cover", "nail_plates"];
    assert_eq!(desk.due(), due, "a wire found since brings new cautions");
}

#[test]
fn a_caution_goes_with_what_called_for_it() {
    let mut desk = Desk::new();
    let mold = desk.log(found(Finding::Mould));
    assert!(desk.is_due("mold"));
    desk.withdraw(mold);
    assert!(desk.due().is_empty());
}

#[test]
fn an_unknown_year_is_an_old_one_and_a_bare_year_cuts_nothing() {
    let unknown = Desk::new().with(opening());
    assert!(unknown.is_due("lead") && unknown.is_due("asbestos"));
    let raised = all_triggered(unknown.book.job());
    let lead = raised.iter().find(|raised| raised.caution.name == "lead").unwrap();
    assert_eq!(lead.because, "An opening is to be cut, and nobody has said when the house was built.");
    assert!(Desk::new().with(built(1931)).due().is_empty());
}

#[test]
fn the_years_are_those_of_the_rules() {
    // Lead: before 1978 (40 CFR 745, [P]). Asbestos: before 1980 ([C]), by some pages
    // before 1986 ([P2]); the more careful one is asked.
    let due = |year, name| Desk::new().with(opening()).with(built(year)).is_due(name);
    assert!(due(1977, "lead") && !due(1978, "lead"));
    assert!(due(1985, "asbestos") && !due(1986, "asbestos"));
    // Pipes and furnaces: older houses (CPSC 453, [P]); the year is that of the floors ([C]).
    let below = |year| Desk::new().with(place(Element::Joist, 4)).with(built(year)).is_due("asbestos_pipes");
    assert!(below(1985) && !below(1986));
    assert!(Desk::new().with(place(Element::Joist, 4)).is_due("asbestos_pipes"), "nobody said the year");
    assert!(!Desk::new().with(opening()).with(built(1931)).is_due("asbestos_pipes"), "nobody works below");
}

/// What a particular says of the house, as a form would.
fn word(word: &str) -> Value {
    Value::Words(Label::new(word).unwrap())
}

#[test]
fn a_fan_that_pulls_air_out_is_cautioned_about_until_another_way_is_chosen() {
    let air = |way: &str| said(Part::House, "air", word(way));
    assert!(!Desk::new().is_due("exhaust_fan"));
    for way in ["vents", "supply from the house", "dehumidifier"] {
        assert!(!Desk::new().with(air(way)).is_due("exhaust_fan"), "{way}");
    }
    let desk = Desk::new().with(air("exhaust fan"));
    assert!(desk.is_due("exhaust_fan"));
    assert!(!desk.with(air("dehumidifier")).is_due("exhaust_fan"), "what was said last counts");
    let unvented = Desk::new().with(Fact::Venting(Venting::Unvented));
    assert!(unvented.is_due("exhaust_fan"), "nobody chose anything else yet");
    assert!(!unvented.with(air("supply from the house")).is_due("exhaust_fan"));
    assert!(!Desk::new().with(Fact::Venting(Venting::Vented)).is_due("exhaust_fan"));
}

#[test]
fn radon_is_named_when_the_ground_or_its_air_is_to_change() {
    assert!(!Desk::new().with(Fact::Venting(Venting::Vented)).is_due("radon"));
    assert!(Desk::new().with(Fact::Venting(Venting::Unvented)).is_due("radon"));
    assert!(Desk::new().with(said(Part::House, "air", word("vents"))).is_due("radon"));
    assert!(Desk::new().with(said(Part::House, "ground cover", word("yes"))).is_due("radon"));
    assert!(!Desk::new().with(said(Part::House, "roof pitch", word("flat to 3/12"))).is_due("radon"));
}

#[test]
fn engines_heat_and_droppings_go_with_work_below_and_engines_with_cuts_too() {
    let below = Desk::new().with(place(Element::Joist, 4));
    let above = Desk::new().with(place(Element::FinishedFloor, 4));
    let cut = Desk::new().with(opening());
    for (name, with_cuts) in [("engines", true), ("heat_and_rescue", false), ("rodents", false)] {
        assert!(below.is_due(name) && !above.is_due(name) && !Desk::new().is_due(name), "{name}");
        assert_eq!(cut.is_due(name), with_cuts, "{name}");
    }
}

#[test]
fn wires_pipes_holes_and_notches_bring_nail_plates() {
    for finding in [Finding::Wire, Finding::Pipe] {
        assert!(Desk::new().with(found(finding)).is_due("nail_plates"), "{finding:?}");
    }
    assert!(!Desk::new().with(found(Finding::ColdRun)).is_due("nail_plates"));
    let joist = || Part::Joist(JoistNumber::FIRST);
    for what in ["hole", "notch depth"] {
        assert!(!Desk::new().with(said(joist(), what, inches("0 in", 0))).is_due("nail_plates"), "{what}");
        assert!(Desk::new().with(said(joist(), what, inches("1 in", 1))).is_due("nail_plates"), "{what}");
    }
}

#[test]
fn going_under_shows_in_any_fact_of_the_crawl_space() {
    let air = |location| {
        let temperature = Typed::new("60 °F", Temperature::fahrenheit(60));
        AirReading { location, temperature, humidity: Typed::new("80 %", RelativeHumidity::percent(80)) }
    };
    let height = Fact::CrawlHeight(Typed::new("26 in", Length::inches(26)));
    let below = ["crawl_entry", "engines", "heat_and_rescue", "rodents", "asbestos_pipes"];
    assert_eq!(Desk::new().with(height).due(), below);
    assert_eq!(Desk::new().with(air(AirLocation::Crawl)).due(), below);
    assert_eq!(Desk::new().with(place(Element::Joist, 4)).due(), below);
    for above in [Element::SubfloorAbove, Element::FinishedFloor] {
        assert!(Desk::new().with(place(above, 4)).due().is_empty());
    }
    assert!(Desk::new().with(air(AirLocation::Room)).with(air(AirLocation::Outdoors)).due().is_empty());
}

#[test]
fn rot_in_framing_is_for_an_engineer_and_in_a_sheet_it_is_not() {
    let weak = |element, finding| Desk::new().finding(element, 4, finding).is_due("weak_framing");
    assert!(weak(Element::Joist, Finding::Rotten) && weak(Element::RimJoist, Finding::Cracked));
    assert!(!weak(Element::SubfloorBelow, Finding::Rotten) && !weak(Element::Joist, Finding::Stained));
    assert!(weak(Element::Girder, Finding::Soft) && weak(Element::Sill, Finding::Soft));
    assert!(!weak(Element::Joist, Finding::Soft), "one soft joist is what the job is about");
    let nowhere = Desk::new().with(found(Finding::Rotten));
    assert!(nowhere.is_due("weak_framing"), "rot that nobody placed may be in the framing");
}

#[test]
fn three_soft_joists_are_for_an_engineer_and_one_soft_in_three_places_is_not() {
    // More than two: [C], common practice, no source.
    let soft = |joists: &[u16]| {
        let desk = joists.iter().fold(Desk::new(), |desk, joist| desk.finding(Element::Joist, *joist, Finding::Soft));
        desk.is_due("weak_framing")
    };
    assert!(soft(&[3, 4, 6]));
    assert!(!soft(&[3, 4]));
    assert!(!soft(&[3, 3, 3]));
}

#[test]
fn the_sample_job_calls_for_what_an_old_wet_floor_calls_for() {
    let records = sample::entries(DeviceId::new(7)).into_iter().map(|entry| Record::of(entry).unwrap());
    let book = Book::of(records);
    let names: Vec<_> = due(book.job(), None).into_iter().map(|caution| caution.name).collect();
    let expected = [
        "crawl_entry",
        "wire_or_pipe",
        "blind_cut",
        "engines",
        "heat_and_rescue",
        "weak_framing",
        "shoring",
        "roof_edge",
        "hole_cover",
        "rodents",
        "nail_plates",
        "asbestos",
        "asbestos_pipes",
        "lead",
        "radon",
        "silica",
    ];
    assert_eq!(names, expected);
}

fn said(of: Part, what: &str, is: Value) -> Particular {
    Particular { of, what: Label::new(what).unwrap(), is }
}

fn inches(typed: &str, inches: i32) -> Value {
    Value::Length(Typed::new(typed, Length::inches(inches)))
}

#[test]
fn soft_joists_that_are_to_be_cut_are_shored_first() {
    let joist = Part::Joist(JoistNumber::new(3).unwrap());
    let sound = Desk::new().with(said(joist.clone(), "soft depth", inches("0 in", 0)));
    assert!(!sound.is_due("shoring"));
    assert!(sound.with(said(joist, "soft depth", inches("1 in", 1))).is_due("shoring"));
}

#[test]
fn a_bare_wire_and_strands_of_a_fungus_have_cautions_of_their_own() {
    assert!(Desk::new().with(found(Finding::BareWire)).is_due("bare_wire"));
    assert!(!Desk::new().with(found(Finding::Wire)).is_due("bare_wire"));
    assert!(Desk::new().with(found(Finding::Strands)).is_due("strands"));
    assert!(!Desk::new().with(found(Finding::Mould)).is_due("strands"));
}

#[test]
fn gutters_bring_the_roofs_edge() {
    assert!(Desk::new().with(said(Part::House, "eave", inches("24'", 288))).is_due("roof_edge"));
}

#[test]
fn a_support_that_is_not_sound_is_an_engineers_until_somebody_says_otherwise() {
    let state = |word: &str| said(Part::Pier(2), "state", Value::Words(Label::new(word).unwrap()));
    let desk = Desk::new().with(state("sound"));
    assert!(!desk.is_due("weak_framing"));
    let desk = desk.with(state("settled"));
    assert!(desk.is_due("weak_framing"));
    assert!(!desk.with(state("sound")).is_due("weak_framing"));
}

fn check(name: &str, answer: Answer) -> Check {
    Check { of: Label::new(name).unwrap(), answer }
}

#[test]
fn whatever_comes_out_of_the_floor_brings_the_cautions_of_a_cut() {
    let room = EntryId { count: 1, device: DeviceId::new(1) };
    let (opening, whole) = (Desk::new().with(opening()), Desk::new().with(WholeFloor { room }));
    let due = ["blind_cut", "engines", "hole_cover", "asbestos", "lead"];
    assert_eq!((opening.due(), whole.due()), (due.to_vec(), due.to_vec()));
    assert!(!Desk::new().with(WholeFloor { room }).with(built(2004)).is_due("lead"));
    let because = &all_triggered(whole.book.job())[0].because;
    assert_eq!(because, "The whole floor is to come out.");
}
