//! How often wood is at its limit on a day that the forecast's range holds.

use super::desk::{Desk, spot, stamp};
use super::map::median;
use chrono::TimeDelta;
use duckboard::engine::air::{AirLocation, AirReading, equilibrium_moisture};
use duckboard::engine::drying::{Forecast, Outlook, forecasts};
use duckboard::engine::entry::{Stamp, Time};
use duckboard::engine::extent::Random;
use duckboard::engine::moisture::{Material, Reading, Shown, Species, Wood};
use duckboard::engine::units::decimal::{Scale, parse_relative_humidity, parse_temperature};
use duckboard::engine::units::{MoistureContent, Typed};
use std::fmt;

/// The limit of framing.
const LIMIT: f64 = 19.0;

/// A meter's error from reading to reading, and its own in all of them, percent points.
const METER: f64 = 1.0;
const BIAS: f64 = 1.5;

/// Invented wood that dries in steady air.
struct Drying {
    humidity: u32,
    end: f64,
    above: f64,
    a_day: f64,
}

/// What came of so many places read so often.
#[derive(Default)]
pub struct Outcome {
    given: usize,
    inside: usize,
    open: usize,
    there_before: usize,
    widths: Vec<f64>,
    there: usize,
    there_falsely: usize,
    close: usize,
    other: usize,
}

impl Drying {
    fn new(random: &mut Random) -> Self {
        let humidity = 60 + (random.part() * 20.0) as u32;
        let (warmth, humid) =
            (parse_temperature("60", Scale::Fahrenheit), parse_relative_humidity(&humidity.to_string()));
        let end = equilibrium_moisture(warmth.unwrap().value, humid.unwrap().value).to_percent();
        let above = 21.0 + 6.5 * random.part() - end;
        Self { humidity, end, above, a_day: libm::pow(60.0 / 8.0, random.part()) / 60.0 }
    }

    fn holds(&self, day: f64) -> f64 {
        self.end + self.above * libm::exp(-self.a_day * day)
    }

    fn dry_on(&self) -> f64 {
        libm::log(self.above / (LIMIT - self.end)) / self.a_day
    }

    fn forecast(&self, days: &[f64], shown: &[f64]) -> Option<Forecast> {
        let mut desk = Desk::new();
        let place = desk.log(spot(3, "3'"));
        for (day, shown) in days.iter().zip(shown) {
            desk.pen.stamp_from(Stamp { at: at(*day), ..stamp() });
            desk.visit("read");
            let temperature = parse_temperature("60", Scale::Fahrenheit).unwrap();
            let humidity = parse_relative_humidity(&self.humidity.to_string()).unwrap();
            desk.log(AirReading { location: AirLocation::Crawl, temperature, humidity });
            let wood = Wood { material: Material::Solid, species: Some(Species::DouglasFir) };
            let shown = Shown::Percent(Typed::new("", MoistureContent::from_percent_f64(*shown)));
            let meter = Some(desk.pins());
            desk.log(Reading { meter, ..Reading::new(place, shown, wood) });
        }
        forecasts(desk.job()).value().map(|forecasts| forecasts.places[0].clone())
    }
}

fn at(day: f64) -> Time {
    stamp().at + TimeDelta::minutes((day * 1440.0) as i64)
}

impl Outcome {
    /// As many runs as give so many ranges.
    pub fn of(set: u64, visits: usize, ranges: usize) -> Self {
        let mut outcome = Self::default();
        for run in 0.. {
            if outcome.given == ranges {
                break;
            }
            let mut random = Random::starting_at(set * 2_000_003 + run * 6007 + visits as u64 * 15_485_863);
            let wood = Drying::new(&mut random);
            let bias = BIAS * random.normal();
            let (mut day, mut days, mut shown) = (0.0, Vec::new(), Vec::new());
            for _ in 0..visits {
                days.push(day);
                let off = bias + METER * random.normal();
                shown.push(libm::round((wood.holds(day) + off) * 10.0) / 10.0);
                day += libm::round(5.0 + 9.0 * random.part());
            }
            let last = days[visits - 1];
            outcome.count(&wood, last, wood.forecast(&days, &shown).map(|forecast| forecast.outlook));
        }
        outcome
    }

    fn count(&mut self, wood: &Drying, last: f64, outlook: Option<Outlook>) {
        match outlook {
            Some(Outlook::Between(first, latest)) => {
                let is_from_now = first == at(last);
                let truth = at(wood.dry_on());
                self.given += 1;
                self.there_before += usize::from(wood.dry_on() < last);
                self.inside +=
                    usize::from((is_from_now || truth >= first) && latest.is_none_or(|latest| truth <= latest));
                match latest {
                    Some(latest) => self.widths.push((latest - first).num_minutes() as f64 / 1440.0),
                    None => self.open += 1,
                }
            }
            Some(Outlook::There) => {
                self.there += 1;
                self.there_falsely += usize::from(wood.holds(last) > LIMIT);
            }
            Some(Outlook::Close) => self.close += 1,
            _ => self.other += 1,
        }
    }

    /// Do at least nine of ten ranges hold the true day?
    pub fn is_honest(&self) -> bool {
        self.inside * 10 >= self.given * 9
    }
}

impl fmt::Display for Outcome {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { given, inside, open, there_before, there, there_falsely, close, other, .. } = self;
        write!(
            f,
            "given {given:3}  inside {inside:3}  width {:4.1} days  (open {open}, dry before the last reading \
             {there_before}) | there {there}, of those still over {there_falsely}; close {close}; not told {other}",
            median(&self.widths)
        )
    }
}
