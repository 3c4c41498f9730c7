//! The decision to close, and what a reading says against its limit.
#![allow(clippy::indexing_slicing, clippy::panic, clippy::unwrap_used, reason = "a test fails by panicking")]

#[path = "closing/air.rs"]
mod air;
#[path = "closing/apart.rs"]
mod apart;
#[path = "closing/asked.rs"]
mod asked;
#[path = "closing/carriers.rs"]
mod carriers;
#[path = "closing/decision.rs"]
mod decision;
mod desk;
#[path = "closing/headers.rs"]
mod headers;
#[path = "under/house.rs"]
mod house;
#[path = "closing/members.rs"]
mod members;
#[path = "closing/past.rs"]
mod past;
#[path = "closing/phones.rs"]
mod phones;
#[path = "closing/reach.rs"]
mod reach;
#[path = "closing/readings.rs"]
mod readings;
#[path = "closing/standing.rs"]
mod standing;
#[path = "closing/stays.rs"]
mod stays;
#[path = "closing/trust.rs"]
mod trust;
#[path = "closing/visits.rs"]
mod visits;
#[path = "closing/water.rs"]
mod water;
#[path = "closing/words.rs"]
mod words;

use desk::{Desk, length, percent};
use duckboard::engine::air::{AirLocation, AirReading};
use duckboard::engine::closing::{CloseIn, Decision, Limits, Verdict, close_in, verdict};
use duckboard::engine::condition::{Condition, Finding};
use duckboard::engine::entry::{EntryId, JobId, Label, Time};
use duckboard::engine::figure::Known;
use duckboard::engine::geometry::Turn;
use duckboard::engine::job::Fact;
use duckboard::engine::moisture::{Answer, Corrected, Material, Meter, Reading, Shown, Species, Stands, Unsaid, Wood};
use duckboard::engine::origin::Check;
use duckboard::engine::particular::{Part, list};
use duckboard::engine::place::{Element, JoistNumber, Place, Position};
use duckboard::engine::survey::Run;
use duckboard::engine::take::Units;
use duckboard::engine::units::MoistureContent;
use duckboard::engine::units::decimal::{Scale, parse_relative_humidity, parse_temperature};
use duckboard::file::{JobFile, Made, Snapshot, write};

fn mc(percent: f64) -> MoistureContent {
    MoistureContent::from_percent_f64(percent)
}

/// An invented room on joists, and two visits three weeks apart.
struct Site {
    desk: Desk,
    places: Vec<EntryId>,
}

fn time(text: &str) -> Time {
    chrono::DateTime::parse_from_rfc3339(text).unwrap()
}

impl Site {
    fn new() -> Self {
        let mut desk = Desk::new();
        let sides = [("12'", Turn::Right), ("10'", Turn::Right), ("12'", Turn::Right), ("10'", Turn::Right)];
        let (room, sides) = desk.room(&sides);
        desk.joists(room, Run::AcrossFirstSide, "16", "16", 8);
        desk.opening(sides[0], ["40", "24", "40", "48"]);
        house::make_sound(&mut desk, 8);
        desk.says(Part::House, &list::GIRDER_NEAR, "no");
        let mut site = Self { desk, places: Vec::new() };
        site.visit("2026-10-05T08:00:00-05:00");
        for joist in 1..=6 {
            let position = Position::OnJoist { joist: JoistNumber::new(joist).unwrap(), along: Some(length("3'")) };
            let place = Place { element: Element::Joist, position, face: None, height: None, chalk: None };
            let place = site.desk.log(place);
            site.places.push(place);
        }
        site
    }

    fn visit(&mut self, at: &str) {
        self.desk.pen.stamp_from(duckboard::engine::entry::Stamp { at: time(at), ..desk::stamp() });
        self.desk.visit("read");
    }

    /// Goes on at this time.
    fn at(&mut self, at: &str) {
        let visit = self.desk.pen.visit();
        self.desk.pen.stamp_from(duckboard::engine::entry::Stamp { at: time(at), visit, ..desk::stamp() });
    }

    /// All places alike, one after the other.
    fn reads(&mut self, shown: [&str; 6]) {
        for (place, shown) in self.places.clone().into_iter().zip(shown) {
            self.read(place, shown, Material::Solid);
        }
    }

    fn read(&mut self, place: EntryId, shown: &str, material: Material) {
        self.read_of(place, shown, Wood { material, species: Some(Species::DouglasFir) });
    }

    fn reads_under_minimum(&mut self, place: EntryId, material: Material) {
        let meter = Some(self.desk.pins());
        let wood = Wood { material, species: None };
        self.desk.log(Reading { meter, ..Reading::new(place, Shown::UnderMinimum, wood) });
    }

    fn read_of(&mut self, place: EntryId, shown: &str, wood: Wood) {
        let meter = Some(self.desk.pins());
        self.desk.log(Reading { meter, ..Reading::new(place, Shown::Percent(percent(shown)), wood) });
    }

    /// With a meter that leaves it to us how warm the wood is.
    fn read_at(&mut self, place: EntryId, shown: &str, fahrenheit: &str) {
        let pins = self.desk.pins();
        let pins = self.desk.job().now.meters().get(&pins).unwrap().value.clone();
        let meter = Some(self.desk.log(Meter { corrects_temperature: Answer::No, ..pins }));
        let wood_temperature = parse_temperature(fahrenheit, Scale::Fahrenheit).ok();
        let wood = Wood { material: Material::Solid, species: Some(Species::DouglasFir) };
        let shown = Shown::Percent(percent(shown));
        self.desk.log(Reading { meter, wood_temperature, ..Reading::new(place, shown, wood) });
    }

    fn crawl_air(&mut self, warmth: &str, damp: &str) {
        self.air(AirLocation::Crawl, warmth, damp);
    }

    fn air(&mut self, location: AirLocation, warmth: &str, damp: &str) {
        let temperature = parse_temperature(warmth, Scale::Fahrenheit).unwrap();
        let humidity = parse_relative_humidity(damp).unwrap();
        self.desk.log(AirReading { location, temperature, humidity });
    }

    fn answers(&mut self, answers: &[(&str, Answer)]) {
        for (of, answer) in answers {
            self.desk.log(Check { of: Label::fitted(of), answer: *answer });
        }
    }

    /// Ground moisture, found and covered.
    fn dealt_with(&mut self) {
        self.answers(&[
            ("bare_soil", Answer::Yes),
            ("damp_soil", Answer::Yes),
            ("dew_beads", Answer::Yes),
            ("cold_months", Answer::Yes),
            ("dealt_with.ground", Answer::Yes),
        ]);
    }

    /// A place on a member at a joist.
    fn place(&mut self, element: Element, joist: u16) -> EntryId {
        let position = Position::OnJoist { joist: JoistNumber::new(joist).unwrap(), along: Some(length("3'")) };
        self.desk.log(Place { element, position, face: None, height: None, chalk: None })
    }

    fn finds(&mut self, finding: Finding, place: Option<EntryId>) {
        self.desk.log(Condition { place, finding, note: None });
    }

    fn ready() -> Self {
        let mut site = Self::all_but_the_soil();
        site.answers(&[("ground_covered_now", Answer::Yes)]);
        site
    }

    fn all_but_the_soil() -> Self {
        let mut site = Self::before_the_last_visit();
        site.read_dry();
        site
    }

    /// With what the first visit read, and nothing of the last.
    fn before_the_last_visit() -> Self {
        let mut site = Self::new();
        site.crawl_air("60", "84");
        site.reads(["22", "24", "25", "23", "21", "18"]);
        site
    }

    /// Everything is read dry in the last visit, and the source dealt with.
    fn read_dry(&mut self) {
        self.visit("2026-10-26T08:00:00-05:00");
        self.crawl_air("57", "64");
        self.reads(["14", "15", "15.5", "15", "14", "13"]);
        let boards = self.place(Element::SubfloorBelow, 2);
        self.read(boards, "9", Material::Solid);
        self.dealt_with();
    }

    /// The last visit, and the soil covered.
    fn seen_to(&mut self) {
        self.read_dry();
        self.answers(&[("ground_covered_now", Answer::Yes)]);
    }

    fn close_in(&self) -> Known<CloseIn> {
        close_in(self.desk.job(), Units::default())
    }

    fn decision(&self) -> Decision {
        self.close_in().value.decision
    }

    /// Each thing in the way: "what: what ends it".
    fn in_the_way(&self) -> Vec<String> {
        let conditions = self.close_in().value.conditions;
        let all = conditions.iter().flat_map(|condition| &condition.in_the_way);
        all.map(|it| format!("{}: {}", it.what, it.ends)).collect()
    }
}

fn after(change: impl FnOnce(&mut Site)) -> Site {
    let mut site = Site::ready();
    change(&mut site);
    site
}

/// The floor is not ready, and a line says so in these words.
#[track_caller]
fn held_by(change: impl FnOnce(&mut Site), words: &str) {
    let site = after(change);
    let lines = site.in_the_way();
    assert!(!site.decision().is_ready(), "ready, though: {words}");
    assert!(lines.iter().any(|line| line.contains(words)), "{words}: {lines:#?}");
}

#[track_caller]
fn ready(change: impl FnOnce(&mut Site)) {
    let site = after(change);
    assert!(site.decision().is_ready(), "{:#?}", site.in_the_way());
}

fn drop_<T>(_: T) {}

/// The walk in a browser opens this house. It is kept anew by
/// `KEEP_JOB_FILE=1 cargo test --test closing as_it_was_kept`.
#[test]
fn the_house_with_only_its_soil_bare_is_as_it_was_kept() {
    let mut site = Site::all_but_the_soil();
    site.desk.log(Fact::Title(Label::fitted("Dry house")));
    assert_eq!(site.decision(), Decision::NotYet(1), "{:#?}", site.in_the_way());
    let file = JobFile::of(&site.desk.book, JobId::new(7), 1, Made::here(time("2026-10-26T16:00:00-05:00")));
    let written: String = write::parts(&file, &Snapshot::none()).collect();
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/fixtures/closing/all-but-the-soil.json");
    if std::env::var_os("KEEP_JOB_FILE").is_some() {
        std::fs::write(path, &written).unwrap();
    }
    assert!(written == std::fs::read_to_string(path).unwrap(), "another house is kept");
}

#[test]
fn a_reading_is_held_to_its_limit_in_words() {
    let reading = |percent: f64, over_maximum: bool, relative: bool| {
        let stands = if over_maximum { Stands::Over } else { Stands::At };
        Corrected { relative, ..Corrected::as_shown(stands(mc(percent))) }
    };
    let limit = Limits::of(Desk::new().job()).framing.at;
    let verdicts = [12.0, 17.5, 19.5, 22.0, 28.0].map(|percent| verdict(&reading(percent, false, false), limit));
    assert_eq!(verdicts, [Verdict::Dry, Verdict::Close, Verdict::Over, Verdict::Wet, Verdict::Soaked]);
    let loose = |percent| Corrected { unsaid: Some(Unsaid::Meter), ..reading(percent, false, false) };
    let verdicts = [12.0, 19.0, 19.1, 22.0].map(|percent| verdict(&loose(percent), limit));
    assert_eq!(
        verdicts,
        [Verdict::Loose, Verdict::Loose, Verdict::Over, Verdict::Wet],
        "too wet it may be all the same"
    );
    assert_eq!(verdict(&reading(22.0, false, false), mc(22.0)), Verdict::Close, "at a limit is not over it");
    assert_eq!(verdict(&reading(22.0, true, false), limit), Verdict::Soaked);
    assert_eq!(verdict(&reading(40.0, false, true), limit), Verdict::Relative, "of no limit, however high");
    let treated = |percent| Corrected { may_read_high: Some(mc(2.0)), ..reading(percent, false, false) };
    let verdicts = [17.0, 19.0, 19.1, 21.0, 21.1, 28.0].map(|percent| verdict(&treated(percent), limit));
    assert_eq!(verdicts[..3], [Verdict::Dry, Verdict::Close, Verdict::OverBySalts]);
    assert_eq!(verdicts[3..], [Verdict::OverBySalts, Verdict::Wet, Verdict::Soaked]);
    assert!(Verdict::Dry.words().contains("by more than") && Verdict::Close.words().contains("read it again"));
}
