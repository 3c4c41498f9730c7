//! What the app asks for now.

use super::draft::{AirTask, Draft, Instrument, LookTask, TapeTask};
use super::settings::Units;
use super::whereabouts::Whereabouts;
use super::wood::AtSpot;
use crate::engine::describe::in_sentence;
use crate::engine::entry::EntryId;
use crate::engine::framing::DamageKind;
use crate::engine::job::Job;
use crate::engine::place::{Face, JoistNumber, Place, Position};
use crate::engine::survey::{Floor, Shape, inside};

/// A question, and how it is answered.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Question {
    /// What is asked.
    pub asks: String,
    /// Where, or what was answered so far.
    pub detail: String,
    /// What to ask when somebody taps the detail: where the spot is, more closely.
    pub detail_asks: Option<Whereabouts>,
    /// The keys that answer it.
    pub keys: Keys,
    /// What stands behind the number: a unit, the kind of reading.
    pub unit: String,
}

/// Which keys answer a question.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Keys {
    /// Feet, inches and fractions, or metric.
    Length,
    /// A length, or that nobody can get there.
    Depth,
    /// Digits and a point; over the maximum, under the minimum.
    Moisture,
    /// Digits and a point.
    Percent,
    /// Digits, a point and a minus.
    Temperature,
    /// Whole numbers.
    Count,
    /// Findings to tap.
    Findings,
    /// The camera.
    Camera,
}

impl Question {
    /// What a draft asks next.
    pub fn of(draft: &Draft, job: &Job, units: Units) -> Self {
        if let Some(what) = draft.asked_where() {
            return whereabouts(what, draft, job, units);
        }
        match draft.instrument {
            Instrument::Tape => tape(draft, job, units),
            Instrument::Meter => meter(draft, job, units),
            Instrument::Air => air(draft, job, units),
            Instrument::Level => at_spot(draft, job, units, Keys::Length, "down from laser"),
            Instrument::Look => look(draft, job, units),
            Instrument::Photo => at_spot(draft, job, units, Keys::Camera, ""),
        }
    }
}

/// Where the spot is, and what is known of that now.
fn whereabouts(what: Whereabouts, draft: &Draft, job: &Job, units: Units) -> Question {
    let detail = match what.read(&draft.spot) {
        None => "not measured; save alone goes on without".to_owned(),
        Some(now) if what.can_be_unknown() => format!("now {}; save alone takes it away", units.read(now.value)),
        Some(now) => format!("now {}; save alone leaves it", units.read(now.value)),
    };
    let from = match (&draft.spot.position, what) {
        (Position::OnJoist { joist, .. }, Whereabouts::Along) => wall_of(job, *joist),
        _ => None,
    };
    let detail = from.map_or_else(|| detail.clone(), |wall| format!("from {wall}; {detail}"));
    Question {
        asks: format!("{}: {}", draft.spot.name(), what.label().to_ascii_lowercase()),
        detail,
        detail_asks: None,
        keys: Keys::Length,
        unit: units.bare_length().symbol().to_owned(),
    }
}

fn tape(draft: &Draft, job: &Job, units: Units) -> Question {
    let floor = Floor::of(job);
    let length = |asks: String, detail: String| Question {
        asks,
        detail,
        detail_asks: None,
        keys: Keys::Length,
        unit: units.bare_length().symbol().to_owned(),
    };
    let held = draft.held.join(" · ");
    let rectangle = draft.footprint.label();
    match (draft.tape, draft.held.len()) {
        (TapeTask::Side, _) => {
            let asks = side_to_come(draft, floor.as_ref());
            length(asks, walked(job, floor.as_ref(), units))
        }
        (TapeTask::Tie, _) => length(
            format!("Corner {} to corner {}", draft.corner + 1, draft.to_corner + 1),
            said_of_each_other(job, floor.as_ref()).unwrap_or_else(|| "a diagonal, or a side again".to_owned()),
        ),
        (TapeTask::Offset, held) => {
            let (of, from, to) = (draft.corner + 1, draft.line_from + 1, draft.to_corner + 1);
            match held {
                0 => length(format!("Corner {of}: along the line"), format!("from corner {from} to corner {to}")),
                _ => length(format!("Corner {of}: out from the line"), format!("{} along", draft.held.concat())),
            }
        }
        (TapeTask::Corner, _) => {
            let asks = format!("Corner {}: angle between the walls", draft.corner + 1);
            let detail = format!("{}; save alone says it is square", draft.trust.label());
            Question { keys: Keys::Percent, unit: "°".to_owned(), ..length(asks, detail) }
        }
        (TapeTask::Opening, 0) => length(
            format!("{rectangle}: along side {} from its corner", draft.corner + 1),
            format!("corner {}", draft.corner + 1),
        ),
        (TapeTask::Opening, 1) => length(format!("{rectangle}: out from the wall"), held),
        (TapeTask::Opening, 2) => length(format!("{rectangle}: size along side {}", draft.corner + 1), held),
        (TapeTask::Opening, _) => length(format!("{rectangle}: size into the room"), held),
        (TapeTask::CutBack, held) => {
            let name = opening_to_cut_back(draft, job).map_or("Opening".to_owned(), |(_, number)| number);
            match held {
                0 => length(format!("{name}: cut to, along the joists"), "save alone: as it was placed".to_owned()),
                _ => length(format!("{name}: finished floor, beyond that"), "save alone: not said".to_owned()),
            }
        }
        (TapeTask::Joists, 0) => length("Joist 1: center from corner 1".to_owned(), draft.run.label().to_owned()),
        (TapeTask::Joists, 1) => length("Joists: spacing on center".to_owned(), held),
        (TapeTask::Joists, _) => {
            Question { keys: Keys::Count, unit: "joists".to_owned(), ..length("Joists: how many".to_owned(), held) }
        }
        (TapeTask::JoistCenter, _) => {
            let joist = draft.joist.get();
            length(format!("Joist {joist}: center from corner 1"), where_it_is(floor.as_ref(), draft.joist, units))
        }
        (TapeTask::Layer, _) => length(
            format!("Layer {} from the top: thickness", job.now.layers().len() + 1),
            format!("{}, by caliper", draft.layer.label()),
        ),
        (TapeTask::OnHand, 0) => length(
            format!("On hand {}: along the strong axis", job.now.on_hand().len() + 1),
            "a part of a sheet like those to be laid".to_owned(),
        ),
        (TapeTask::OnHand, _) => length(format!("On hand {}: across", job.now.on_hand().len() + 1), held),
        (TapeTask::CrawlHeight, _) => length("Crawl height".to_owned(), "ground to joist".to_owned()),
        (TapeTask::Other, _) => {
            let name = if draft.other.is_empty() { "Other length".to_owned() } else { draft.other.to_string() };
            length(name, "kept by its name".to_owned())
        }
    }
}

/// The opening that is cut back, and what it is called.
pub(super) fn opening_to_cut_back(draft: &Draft, job: &Job) -> Option<(EntryId, String)> {
    let openings = &job.now.openings();
    let chosen = draft.opening.and_then(|opening| openings.keys().position(|id| *id == opening));
    let at = chosen.or_else(|| openings.len().checked_sub(1))?;
    openings.keys().nth(at).map(|id| (*id, format!("Opening {}", at + 1)))
}

/// Where a joist is so far.
fn where_it_is(floor: Option<&Floor>, joist: JoistNumber, units: Units) -> String {
    let Some(joists) = floor.and_then(|floor| floor.joists.as_ref()) else {
        return "lay out the joists first".to_owned();
    };
    let how = if joists.measured.contains_key(&joist) { "measured" } else { "by spacing" };
    format!("{} {how}", units.length(joists.center(joist.get())))
}

/// Which side is measured next.
fn side_to_come(draft: &Draft, floor: Option<&Floor>) -> String {
    let Some(floor) = floor else { return "Side 1".to_owned() };
    match floor.sides_before(draft.after) {
        before if before == floor.sides.len() => format!("Side {}", before + 1),
        before => format!("Side {}, put in after side {before}", before + 1),
    }
}

/// What the room's measurements say of each other, once there is something to say.
fn said_of_each_other(job: &Job, floor: Option<&Floor>) -> Option<String> {
    let standing = Shape::standing(job, floor?.clone());
    standing.complaint().or_else(|| standing.known().filter(Shape::is_checked).map(|_| "everything agrees".to_owned()))
}

/// How far the walk has come: the closing error once it has turned round.
fn walked(job: &Job, floor: Option<&Floor>, units: Units) -> String {
    let Some(floor) = floor.filter(|floor| !floor.sides.is_empty()) else {
        return "start at any corner, room on your right".to_owned();
    };
    if let Some(complaint) = Shape::standing(job, floor.clone()).complaint() {
        return complaint;
    }
    let misclosure = floor.walk.closing_error().misclosure();
    match floor.walk.turned_round() {
        Some(_) => format!("closes to {}", units.length(misclosure)),
        None => format!("{} to the start", units.length(misclosure)),
    }
}

fn air(draft: &Draft, job: &Job, units: Units) -> Question {
    let scale = units.scale.symbol().to_owned();
    let name = draft.air.label();
    match (draft.air, draft.held.first()) {
        (AirTask::Surface | AirTask::Wood, _) => {
            let at_spot = at_spot(draft, job, units, Keys::Temperature, &scale);
            Question { asks: format!("{name}: {}", at_spot.asks), ..at_spot }
        }
        (_, None) => Question {
            asks: format!("{name}: temperature"),
            detail: String::new(),
            detail_asks: None,
            keys: Keys::Temperature,
            unit: scale,
        },
        (_, Some(temperature)) => Question {
            asks: format!("{name}: humidity"),
            detail: temperature.clone(),
            detail_asks: None,
            keys: Keys::Percent,
            unit: "% RH".to_owned(),
        },
    }
}

/// Where the meter reads, and on what: the wood is said again each time it counts.
fn meter(draft: &Draft, job: &Job, units: Units) -> Question {
    let at_spot = at_spot(draft, job, units, Keys::Moisture, "%");
    let parts = [at_spot.detail, AtSpot::of(draft, job).words()];
    let detail = parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(" · ");
    Question { detail, ..at_spot }
}

/// What is there, or from where to where it goes and how deep.
fn look(draft: &Draft, job: &Job, units: Units) -> Question {
    let LookTask::Spot(kind) = draft.look else { return at_spot(draft, job, units, Keys::Findings, "") };
    let here = draft.spot.position.along().map(|along| units.length(along.value));
    let what = in_sentence(kind.label());
    let (asks, detail, keys) = match (kind, draft.held.len()) {
        (_, 0) => {
            let detail = here.map_or_else(String::new, |here| format!("save alone: at {here}"));
            (format!("{what}, from"), detail, Keys::Length)
        }
        (DamageKind::Soft, 1) => (format!("{what}, to"), "save alone: one push, there".to_owned(), Keys::Length),
        (_, 1) => (format!("{what}, to"), draft.held.concat(), Keys::Length),
        (DamageKind::Soft, _) => (format!("{what}, how deep"), "0 if it stops".to_owned(), Keys::Depth),
        (DamageKind::Notch, _) => (format!("{what}, how deep"), draft.held.join(" to "), Keys::Depth),
        (DamageKind::Hole, 2) => {
            (format!("{what}, how high"), format!("{}; round: as long", draft.held.join(" to ")), Keys::Depth)
        }
        (DamageKind::Hole, _) => {
            let high = draft.held.last().map(|high| format!("{high} high")).unwrap_or_default();
            (format!("{what}, to the nearest edge"), high, Keys::Depth)
        }
    };
    let unit = units.bare_length().symbol().to_owned();
    Question { asks: format!("{}: {asks}", draft.spot.name()), detail, detail_asks: None, keys, unit }
}

fn at_spot(draft: &Draft, job: &Job, units: Units, keys: Keys, unit: &str) -> Question {
    Question {
        asks: draft.spot.name(),
        detail: place_detail(draft, job, units),
        detail_asks: Whereabouts::of(&draft.spot).first().copied(),
        keys,
        unit: unit.to_owned(),
    }
}

/// What distances along a joist are from: the wall that the joist meets, by the name that the
/// job has for the wall at the first corner, or by its number.
fn wall_of(job: &Job, joist: JoistNumber) -> Option<String> {
    let named = || job.measured_from().filter(|wall| !wall.is_empty()).map(ToString::to_string);
    let Some(floor) = inside::floor(job) else { return named() };
    floor.starts(joist).1.words().or_else(named)
}

/// Where a place without a distance is along its joist.
fn end_of(job: &Job, joist: JoistNumber, face: Option<Face>) -> String {
    match face.filter(|face| face.is_end()) {
        None => "anywhere along it".to_owned(),
        Some(face) => {
            let floor = inside::floor(job);
            let end = floor.as_ref().and_then(|floor| floor.end(joist, face));
            match end {
                Some((_, side)) => format!("at side {side}"),
                None if face == Face::End => inside::which_end(floor.as_ref(), Some(joist)),
                None => "at its bearing".to_owned(),
            }
        }
    }
}

/// Where along it and from which wall, how high, and what is chalked there.
fn place_detail(draft: &Draft, job: &Job, units: Units) -> String {
    let Place { position, height, chalk, .. } = &draft.spot;
    let height = height.as_ref().map(|height| format!("{} up", units.length(height.value)));
    let said_already = *position == Position::Named;
    let chalk = chalk.as_ref().filter(|_| !said_already).map(|chalk| format!("\"{chalk}\""));
    let at = match position {
        Position::OnJoist { joist, along: Some(along) } => {
            let along = units.read(along.value);
            let from = wall_of(job, *joist);
            Some(from.map_or_else(|| format!("{along} along"), |wall| format!("{along} from {wall}")))
        }
        Position::OnJoist { joist, along: None } => Some(end_of(job, *joist, draft.spot.face)),
        Position::OnPlan { right, down } => {
            Some(format!("{} right, {} down", units.length(right.value), units.length(down.value)))
        }
        Position::Named => draft.spot.chalk.is_none().then(|| "no mark said yet".to_owned()),
    };
    [at, height, chalk].into_iter().flatten().collect::<Vec<_>>().join(" · ")
}
