//! What is known of a place where wood is wet, whoever says so: a job, or a scenario.

use crate::engine::air::Air;
use crate::engine::condition::Finding;
use crate::engine::geometry::{Point, Rect};
use crate::engine::moisture::Answer;
use crate::engine::place::Element;
use crate::engine::units::{MoistureContent, Temperature};
use litemap::LiteMap;

/// Everything that the evidence is read off.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Scene {
    /// What was answered, by the question's name.
    pub answers: LiteMap<String, Answer>,
    /// What was answered with yes at some time and not put right, though it may be gone now.
    pub seen: Vec<String>,
    /// What is above or beside, and where.
    pub fixtures: Vec<(Finding, Point)>,
    /// What was read.
    pub readings: Vec<Read>,
    /// The room's bounds.
    pub room: Option<Rect>,
    /// Crawl air.
    pub crawl: Option<Air>,
    /// Outdoor air.
    pub outdoors: Option<Air>,
    /// The coldest surface.
    pub coldest: Option<Temperature>,
}

/// A reading for the evidence.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Read {
    /// On what.
    pub element: Element,
    /// Where.
    pub at: Point,
    /// What.
    pub moisture: MoistureContent,
}
