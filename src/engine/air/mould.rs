//! The mold index: how mold comes and goes on a surface that stays damp. A risk, and
//! no prediction.
//!
//! The model is Hukka and Viitanen's (1999), with the classes of sensitivity that Ojanen
//! and Viitanen gave it in 2010 ([`Source::MouldIndex`]). Index 1 is a start that a
//! microscope finds, 3 the first that eyes see, 6 full cover.

use super::{Air, surface};
use crate::engine::figure::{Known, Why};
use crate::engine::sources::Source;
use crate::engine::units::{RelativeHumidity, Temperature};

/// How readily something molds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sensitivity {
    /// Sawn pine sapwood.
    Very,
    /// Planed wood, panels, spruce.
    Sensitive,
    /// Medium resistant.
    Medium,
    /// Resistant.
    Resistant,
}

/// The name of the surface's temperature among what went in.
pub const SURFACE: &str = "surface";

/// The index from which mold is seen with bare eyes.
pub const FIRST_SEEN: f64 = 3.0;

/// How sharply growth ends towards its limit; dimensionless, of the model.
const SHARPNESS: f64 = 2.3;

/// Constants of a class.
struct Class {
    /// Growth below an index of 1, and from there on.
    pace: [f64; 2],
    /// Of the highest index, by how far the humidity is over the critical one.
    highest: [f64; 3],
    /// The critical humidity of warm surfaces, percent.
    least_humidity: f64,
    /// How fast the index falls in dry spells, against the original model.
    decline: f64,
}

impl Sensitivity {
    const fn class(self) -> Class {
        let (pace, highest, least_humidity, decline) = match self {
            Self::Very => ([1.0, 2.0], [1.0, 7.0, 2.0], 80.0, 1.0),
            Self::Sensitive => ([0.578, 0.386], [0.3, 6.0, 1.0], 80.0, 0.5),
            Self::Medium => ([0.072, 0.097], [0.0, 5.0, 1.5], 85.0, 0.25),
            Self::Resistant => ([0.033, 0.014], [0.0, 3.0, 1.0], 85.0, 0.1),
        };
        Class { pace, highest, least_humidity, decline }
    }
}

/// Mold on a surface of one class at one temperature and humidity.
#[derive(Debug, Clone, Copy)]
pub struct Climate {
    /// Weeks that an index of 1 takes on the class that the model began with; none
    /// where nothing grows.
    weeks: Option<f64>,
    /// The highest index that it comes to.
    highest: f64,
    pace: [f64; 2],
    decline: f64,
}

impl Climate {
    /// At a surface's temperature and the humidity of the air against it.
    pub fn new(surface: Temperature, humidity: RelativeHumidity, sensitivity: Sensitivity) -> Self {
        let (celsius, percent) = (surface.to_celsius(), humidity.to_percent());
        let Class { pace, highest: [a, b, c], least_humidity, decline } = sensitivity.class();
        let critical = critical_humidity(celsius, least_humidity);
        let over = (critical - percent) / (critical - 100.0);
        let grows = celsius > 0.0 && celsius < 50.0 && percent >= critical;
        let weeks = grows.then(|| libm::exp(-0.68 * libm::log(celsius) - 13.9 * libm::log(percent) + 66.02));
        Self { weeks, highest: (a + b * over - c * over * over).max(0.0), pace, decline }
    }

    /// The highest index that it comes to; dimensionless.
    pub fn highest(&self) -> f64 {
        self.highest
    }

    /// Days from no mold to an index, by the growth's closed form; none if it never
    /// comes to that.
    pub fn days_to(&self, index: f64) -> Option<f64> {
        let weeks = self.weeks.filter(|_| index < self.highest)?;
        let fast_from = index.min(1.0);
        let spans = [(0.0, fast_from), (fast_from, index)];
        let days =
            |((from, to), pace): ((f64, f64), f64)| 7.0 * weeks / pace * (self.integral(to) - self.integral(from));
        Some(spans.into_iter().zip(self.pace).map(days).sum())
    }

    /// What growth's rate comes to when it is integrated.
    fn integral(&self, index: f64) -> f64 {
        let below = index - self.highest;
        below - libm::log(1.0 - libm::exp(SHARPNESS * below)) / SHARPNESS
    }

    /// How fast the index rises, a day; none in a climate where nothing grows.
    fn growth(&self, index: f64) -> Option<f64> {
        let [slow, fast] = self.pace;
        let pace = if index < 1.0 { slow } else { fast };
        let slowed = (1.0 - libm::exp(SHARPNESS * (index - self.highest))).max(0.0);
        Some(pace * slowed / (7.0 * self.weeks?))
    }
}

/// Days until mold is first seen on planed wood and panels if a surface and the air stay
/// as they are; none where it is never seen. A risk, and no prediction.
/// Source: [`Source::MouldIndex`].
pub fn days_until_seen(surface: Temperature, air: Air) -> Known<Option<f64>> {
    let humidity = surface::humidity_at(surface, air);
    let days = Climate::new(surface, humidity, Sensitivity::Sensitive).days_to(FIRST_SEEN);
    let why =
        Why::rule("The mold index of a surface that stays at one temperature and humidity.", &[Source::MouldIndex])
            .with(SURFACE, super::shown::temperature(surface))
            .with("humidity at it", super::shown::humidity(humidity));
    let assumed = vec!["planed wood and panels; surface and air stay as they are".to_owned()];
    let doubts = vec!["A model of laboratory wood: take it as risk, not as a date.".to_owned()];
    Known { value: days, assumed, doubts, why }
}

/// The index after air that was read now and then, each reading held until the next one,
/// on planed wood as warm as the air: with hours from one to the next, the last one's
/// being those since. Source: [`Source::MouldIndex`].
pub fn index_after(readings: &[(u32, Air)]) -> MouldIndex {
    readings.iter().fold(MouldIndex::default(), |index, (hours, air)| {
        let climate = Climate::new(air.temperature, air.humidity, Sensitivity::Sensitive);
        (0..*hours).fold(index, |index, _| index.after_an_hour(&climate))
    })
}

/// The humidity below which nothing grows, percent.
fn critical_humidity(celsius: f64, least: f64) -> f64 {
    if celsius > 20.0 {
        return least;
    }
    let cubic = -0.002_67 * celsius * celsius * celsius + 0.160 * celsius * celsius - 3.13 * celsius + 100.0;
    cubic.max(least)
}

/// The index over a time of changing climates, hour by hour.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct MouldIndex {
    index: f64,
    /// Hours since it was last damp enough to grow.
    dry_hours: u32,
}

impl MouldIndex {
    /// The index now; dimensionless, from 0 to 6.
    pub fn get(self) -> f64 {
        self.index
    }

    /// One hour more. Dry spells take off most in their first six hours, nothing until a
    /// day is over, and then half as much as at first.
    #[must_use]
    pub fn after_an_hour(self, climate: &Climate) -> Self {
        match climate.growth(self.index) {
            Some(a_day) => Self { index: self.index + a_day / 24.0, dry_hours: 0 },
            None => {
                let a_day = match self.dry_hours {
                    0..6 => 0.032,
                    6..24 => 0.0,
                    _ => 0.016,
                };
                let index = (self.index - climate.decline * a_day / 24.0).max(0.0);
                Self { index, dry_hours: self.dry_hours.saturating_add(1) }
            }
        }
    }
}
