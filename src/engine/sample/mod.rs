//! The sample job: invented from end to end, and marked so wherever it is shown. It
//! is made the way a carpenter would make it, entry by entry through the pen.

mod under;

use super::air::{AirLocation, AirReading};
use super::condition::{Condition, Finding};
use super::entry::{DeviceId, EntryId, Label, Logger, Role, Stamp, Text, Time};
use super::geometry::Turn;
use super::job::{Entry, Fact, Log, Pen, Venting, Visit, Year};
use super::moisture::{Answer, Material, Meter, Reading, Sensing, Shown, Species, Wood};
use super::origin::Check;
use super::place::{Element, Face, JoistNumber, Place, Position};
use super::survey::{AlongFrom, Joists, Layer, LayerKind, Level, Opening, Room, Ruler, Run, Side};
use super::units::decimal::{Scale, parse_moisture_content, parse_relative_humidity, parse_temperature};
use super::units::tape::{self, BareUnit, Sign};
use super::units::{Length, MoistureContent, RelativeHumidity, Temperature, Typed};
use chrono::DateTime;

/// The room's sides: an L over nine joists.
const SIDES: [(&str, Turn); 6] = [
    ("11' 8 3/8\"", Turn::Right),
    ("6' 1\"", Turn::Right),
    ("4' 0 1/8\"", Turn::Left),
    ("3' 9\"", Turn::Right),
    ("7' 8 1/4\"", Turn::Right),
    ("9' 10 1/8\"", Turn::Right),
];

/// Joist, distance from the north wall, shown on the first visit and on the second.
const READINGS: [(u16, &str, &str, &str); 15] = [
    (2, "1' 6\"", "14", "13"),
    (3, "2' 4\"", "16", "14"),
    (4, "2' 4\"", "17", "15"),
    (5, "2' 4\"", "16", "14.5"),
    (7, "3' 2\"", "15", "13.5"),
    (8, "3' 2\"", "13", "12.5"),
    (2, "4' 9\"", "15", "13.5"),
    (3, "5' 1\"", "19", "15.5"),
    (4, "5' 1\"", "24", "17.5"),
    (5, "5' 1\"", "23", "17"),
    (6, "5' 1\"", "19", "15.5"),
    (2, "8' 1\"", "16", "14"),
    (3, "8' 1\"", "21", "16.5"),
    (4, "8' 1\"", "27", "19.5"),
    (5, "8' 1\"", "25", "18.5"),
];

/// Joist, and the laser's reading down to it.
const LEVELS: [(u16, &str); 4] = [(2, "14 1/8\""), (4, "14 5/16\""), (6, "14 3/8\""), (8, "14 3/16\"")];

/// The sample's entries, as if logged on this device.
pub fn entries(device: DeviceId) -> Vec<Entry> {
    let mut sample =
        Sample { pen: Pen::new(&Log::default(), device, stamp("2026-10-05T08:10:00-05:00")), entries: Vec::new() };
    sample.job_facts();
    let visit = sample.add(Visit { purpose: label("Find how far it goes") });
    sample.pen.begin_visit(visit);
    sample.floor();
    let places = sample.first_visit();
    sample.pen.stamp_from(stamp("2026-10-27T09:05:00-05:00"));
    let visit = sample.add(Visit { purpose: label("Read the wood again") });
    sample.pen.begin_visit(visit);
    sample.second_visit(&places);
    sample.entries
}

struct Sample {
    pen: Pen,
    entries: Vec<Entry>,
}

impl Sample {
    fn add(&mut self, observation: impl Into<super::job::Observation>) -> EntryId {
        let entry = self.pen.record(observation);
        let id = entry.id;
        self.entries.push(entry);
        id
    }

    fn job_facts(&mut self) {
        self.add(Fact::InventedSample);
        self.add(Fact::Title(label("Laundry and mud room")));
        self.add(Fact::OfficeNumber(label("SAMPLE-1")));
        self.add(Fact::Site(label("An invented bungalow")));
        if let Ok(year) = Year::new(1958) {
            self.add(Fact::YearBuilt(year));
        }
        self.add(Fact::CrawlHeight(length("26 in")));
        self.add(Fact::Venting(Venting::Vented));
        self.add(Fact::CommonMark(label("hole drilled beside the washer drain")));
        self.add(Fact::MeasuredFrom(label("north wall")));
    }

    fn floor(&mut self) {
        let room = self.add(Room { name: label("Laundry and mud room") });
        let mut after = None;
        let mut first = None;
        for (typed, turn) in SIDES {
            let side = self.add(Side { room, after, length: length(typed), turn, by: Ruler::Tape });
            after = Some(side);
            first = first.or(after);
        }
        if let Some(from) = first {
            let (along, out) = (length("2' 11\""), length("3' 4\""));
            self.add(Opening { from, along, out, length: length("4'"), width: length("5' 2\"") });
        }
        let (first, spacing) = (length("3 in"), length("16 in"));
        self.add(Joists { room, run: Run::AcrossFirstSide, first, spacing, count: 9, along: AlongFrom::FirstCorner });
        self.add(Layer { what: LayerKind::Finish, thickness: length("1/8\"") });
        self.add(Layer { what: LayerKind::DiagonalBoards, thickness: length("25/32\"") });
    }

    fn first_visit(&mut self) -> Vec<EntryId> {
        self.air(AirLocation::Outdoors, "58 °F", "71 %");
        self.air(AirLocation::Crawl, "62 °F", "86 %");
        self.air(AirLocation::Room, "69 °F", "52 %");
        let meter = self.add(Meter {
            label: label("Pin meter, blue tape on it"),
            sensing: Sensing::Pin,
            scale: Some(Species::DouglasFir),
            reference: Some(temperature("70 °F")),
            corrects_temperature: Answer::No,
            corrects_species: Answer::No,
            minimum: None,
            maximum: Some(moisture("30 %")),
        });
        let mut places = Vec::new();
        for (joist, along, shown, _) in READINGS {
            let place = self.add(joist_edge(joist, Some(along)));
            self.reading(place, meter, shown, "60 °F");
            places.push(place);
        }
        self.findings(&places);
        self.checks();
        for (joist, drop) in LEVELS {
            let place = self.add(Place { face: Some(Face::UpperEdge), ..joist_edge(joist, Some("5'")) });
            self.add(Level { place, drop: length(drop) });
        }
        self.under_the_house();
        places
    }

    fn findings(&mut self, places: &[EntryId]) {
        let found = [
            (8, Finding::Soft),
            (13, Finding::Rotten),
            (14, Finding::Soft),
            (9, Finding::Stained),
            (4, Finding::Wire),
            (13, Finding::WasherAbove),
        ];
        for (place, finding) in found {
            if let Some(place) = places.get(place) {
                self.add(Condition { place: Some(*place), finding, note: None });
            }
        }
    }

    /// The washer stands over the wettest joists, and is not to blame.
    fn checks(&mut self) {
        let answers = [
            ("bare_soil", Answer::Yes),
            ("damp_soil", Answer::Yes),
            ("water_on_soil", Answer::No),
            ("after_rain", Answer::No),
            ("meter_turns", Answer::No),
            ("wet_in_use", Answer::No),
            ("wet_fitting", Answer::No),
            ("dew_beads", Answer::Yes),
            ("cooled_above", Answer::Unknown),
        ];
        for (of, answer) in answers {
            self.add(Check { of: label(of), answer });
        }
    }

    fn second_visit(&mut self, places: &[EntryId]) {
        self.air(AirLocation::Outdoors, "49 °F", "64 %");
        self.air(AirLocation::Crawl, "57 °F", "70 %");
        let meter = self.entries.iter().find(|entry| is_meter(entry)).map(|entry| entry.id);
        for (place, (_, _, _, shown)) in places.iter().zip(READINGS) {
            if let Some(meter) = meter {
                self.reading(*place, meter, shown, "56 °F");
            }
        }
    }

    fn air(&mut self, location: AirLocation, warmth: &str, damp: &str) {
        self.add(AirReading { location, temperature: temperature(warmth), humidity: humidity(damp) });
    }

    fn reading(&mut self, place: EntryId, meter: EntryId, shown: &str, warmth: &str) {
        let wood = Wood { material: Material::Solid, species: Some(Species::DouglasFir) };
        self.add(Reading {
            meter: Some(meter),
            wood_temperature: Some(temperature(warmth)),
            ..Reading::new(place, Shown::Percent(moisture(shown)), wood)
        });
    }
}

const fn is_meter(entry: &Entry) -> bool {
    matches!(&entry.act, super::job::Act::Record(super::job::Observation::Meter(_)))
}

fn joist_edge(joist: u16, along: Option<&str>) -> Place {
    Place {
        element: Element::Joist,
        position: Position::OnJoist {
            joist: JoistNumber::new(joist).unwrap_or(JoistNumber::FIRST),
            along: along.map(length),
        },
        face: Some(Face::LowerEdge),
        height: None,
        chalk: None,
    }
}

fn stamp(at: &str) -> Stamp {
    let by = Logger { initials: Text::fitted("QZ"), role: Role::CrewLead };
    Stamp { at: time(at), by, visit: None }
}

fn time(text: &str) -> Time {
    DateTime::parse_from_rfc3339(text).unwrap_or_default()
}

fn label(text: &str) -> Label {
    Label::fitted(text)
}

// The sample's own texts are all good, which a test holds true; should one not be, it
// reads as zero rather than panicking.

fn length(text: &str) -> Typed<Length> {
    tape::parse(text, BareUnit::Inches, Sign::Refused).unwrap_or_else(|_| Typed::new(text, Length::ZERO))
}

fn temperature(text: &str) -> Typed<Temperature> {
    parse_temperature(text, Scale::Fahrenheit).unwrap_or_else(|_| Typed::new(text, Temperature::celsius(0)))
}

fn moisture(text: &str) -> Typed<MoistureContent> {
    parse_moisture_content(text).unwrap_or_else(|_| Typed::new(text, MoistureContent::percent(0)))
}

fn humidity(text: &str) -> Typed<RelativeHumidity> {
    parse_relative_humidity(text).unwrap_or_else(|_| Typed::new(text, RelativeHumidity::percent(0)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::job::{Book, Record};
    use crate::engine::survey::{closing_error, room_area};

    fn book() -> Book {
        Book::of(entries(DeviceId::new(7)).into_iter().map(|entry| Record::of(entry).unwrap()))
    }

    #[test]
    fn the_sample_says_that_it_is_invented() {
        assert!(book().job().is_invented());
    }

    #[test]
    fn every_text_of_the_sample_says_a_value() {
        let book = book();
        let job = book.job();
        assert!(job.faults.is_empty());
        assert!(job.now.sides().values().all(|side| side.value.length.value.is_positive()));
        assert!(job.now.levels().values().all(|level| level.value.drop.value.is_positive()));
        assert_eq!(job.now.readings().len(), 2 * READINGS.len());
        assert!(job.now.readings().values().all(|reading| match &reading.value.shown {
            Shown::Percent(shown) => shown.value > MoistureContent::percent(5),
            Shown::OverMaximum | Shown::UnderMinimum => false,
        }));
    }

    #[test]
    fn the_second_visit_reads_the_same_places_again() {
        let book = book();
        let job = book.job();
        assert_eq!(job.now.visits().len(), 2);
        for place in job.now.readings().values().map(|reading| reading.value.place) {
            assert_eq!(job.now.readings().values().filter(|reading| reading.value.place == place).count(), 2);
        }
    }

    #[test]
    fn the_room_is_an_ell_that_closes_to_an_eighth() {
        let book = book();
        let error = closing_error(book.job());
        assert_eq!(error.value().unwrap().misclosure(), Length::sixty_fourths(8));
        // By hand, in inches: 140.375 × 73 + 92.25 × 45 = 14 398.6 sq in, and a sliver of
        // 92.25 × 0.125 / 2 where the closing side slants.
        let area = room_area(book.job()).value().unwrap().to_square_feet();
        assert!((area - 14_398.6 / 144.0).abs() < 0.1, "{area}");
    }
}
