//! A scenario as a file has it, and the scene that it makes.

use duckboard::engine::air::Air;
use duckboard::engine::condition::Finding;
use duckboard::engine::geometry::{Point, Rect};
use duckboard::engine::moisture::Answer;
use duckboard::engine::origin::{Cause, Read, Scene};
use duckboard::engine::place::Element;
use duckboard::engine::units::{Length, MoistureContent, RelativeHumidity, Temperature};
use serde::Deserialize;
use std::collections::BTreeMap;

/// A scenario with what is true of it.
pub struct Scenario {
    pub id: String,
    pub causes: Vec<Cause>,
    /// Was it kept away from choosing weights?
    pub is_held_out: bool,
    pub scene: Scene,
}

#[derive(Deserialize)]
struct Line {
    id: String,
    causes: Vec<Cause>,
    #[serde(default, rename = "use")]
    used_for: String,
    #[serde(default)]
    room: Option<Room>,
    #[serde(default)]
    checks: BTreeMap<String, Answer>,
    #[serde(default)]
    fixtures: Vec<Fixture>,
    #[serde(default)]
    readings: Vec<Reading>,
    #[serde(default)]
    air: Airs,
}

#[derive(Deserialize)]
struct Room {
    length_ft: f64,
    width_ft: f64,
}

#[derive(Deserialize)]
struct Fixture {
    kind: Finding,
    x_ft: f64,
    y_ft: f64,
}

#[derive(Deserialize)]
struct Reading {
    element: Element,
    x_ft: f64,
    y_ft: f64,
    mc: f64,
}

#[derive(Default, Deserialize)]
struct Airs {
    #[serde(default)]
    crawl: Option<AirLine>,
    #[serde(default)]
    outdoors: Option<AirLine>,
    #[serde(default)]
    surfaces_f: Vec<f64>,
}

#[derive(Deserialize)]
struct AirLine {
    temp_f: f64,
    rh: f64,
}

impl Scenario {
    /// Every scenario of a file, or the first line that is none.
    pub fn all(text: &str) -> Result<Vec<Self>, String> {
        let lines = (1..).zip(text.lines()).filter(|(_, line)| !line.trim().is_empty());
        let read = |(number, line): (usize, &str)| {
            let line: Line = serde_json::from_str(line).map_err(|error| format!("line {number}: {error}"))?;
            Ok(line.scenario())
        };
        lines.map(read).collect()
    }

    /// Does a cause hold here?
    pub fn holds(&self, cause: Cause) -> bool {
        self.causes.contains(&cause)
    }
}

impl Line {
    fn scenario(self) -> Scenario {
        let room = self.room.and_then(|room| Rect::between(Point::ORIGIN, point(room.length_ft, room.width_ft)));
        let reading = |it: Reading| Read {
            element: it.element,
            at: point(it.x_ft, it.y_ft),
            moisture: MoistureContent::from_percent_f64(it.mc),
        };
        let air = |air: AirLine| Air {
            temperature: fahrenheit(air.temp_f),
            humidity: RelativeHumidity::from_percent_f64(air.rh),
        };
        let scene = Scene {
            seen: Vec::new(),
            answers: self.checks.into_iter().collect(),
            fixtures: self.fixtures.into_iter().map(|it| (it.kind, point(it.x_ft, it.y_ft))).collect(),
            readings: self.readings.into_iter().map(reading).collect(),
            room,
            crawl: self.air.crawl.map(air),
            outdoors: self.air.outdoors.map(air),
            coldest: self.air.surfaces_f.into_iter().map(fahrenheit).min(),
        };
        Scenario { id: self.id, causes: self.causes, is_held_out: self.used_for == "held_out", scene }
    }
}

fn point(x_ft: f64, y_ft: f64) -> Point {
    Point::new(Length::from_inches(x_ft * 12.0), Length::from_inches(y_ft * 12.0))
}

fn fahrenheit(degrees: f64) -> Temperature {
    Temperature::from_celsius_f64((degrees - 32.0) / 1.8)
}
