//! What an entry says, in one line: for the log, the report and the files that people read.

use super::framing::{Damage, DamageKind, Depth};
use super::job::{Act, Entry, Fact, Job, Observation};
use super::moisture::Shown;
use super::survey::Floor;
use super::take::Units;

/// One line of the log.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Line {
    /// What kind of thing.
    pub kind: &'static str,
    /// What it says.
    pub says: String,
    /// The value as it was typed, if it was.
    pub typed: Option<String>,
}

/// An entry in one line.
pub fn entry(job: &Job, entry: &Entry, units: Units) -> Line {
    match &entry.act {
        Act::Record(seen) => observation(job, seen, units),
        Act::Correct { to, .. } => {
            let line = observation(job, to, units);
            Line { says: format!("corrected to {}", line.says), ..line }
        }
        Act::Withdraw { .. } => Line { kind: "withdrawal", says: "taken back".to_owned(), typed: None },
    }
}

/// An observation in one line.
pub fn observation(job: &Job, seen: &Observation, units: Units) -> Line {
    let (says, typed) = match seen {
        Observation::Fact(fact) => self::fact(fact, units),
        Observation::Visit(visit) => (visit.purpose.to_string(), None),
        Observation::Place(place) => (place_name(place, units), None),
        Observation::Room(room) => (room.name.to_string(), None),
        Observation::Side(side) => {
            let turn = side.turn.label();
            (format!("{}, then {turn}", units.length(side.length.value)), Some(side.length.typed.clone()))
        }
        Observation::Tie(tie) => {
            let [from, to] = [tie.from, tie.to].map(|side| corner_name(job, side));
            (format!("{from} to {to}: {}", units.length(tie.length.value)), Some(tie.length.typed.clone()))
        }
        Observation::Offset(offset) => {
            let [of, from, to] = [offset.of, offset.from, offset.to].map(|side| corner_name(job, side));
            let [along, out] = [&offset.along, &offset.out].map(|length| units.length(length.value));
            (format!("{of}: {along} along the line from {from} to {to}, {out} to its {}", offset.side.label()), None)
        }
        Observation::Corner(corner) => {
            let angle = corner.angle.as_ref().map_or("square", |angle| angle.typed.as_str());
            let says = format!("{}: {angle}, {}", corner_name(job, corner.at), corner.trust.label());
            (says, corner.angle.as_ref().map(|angle| angle.typed.clone()))
        }
        Observation::Opening(opening) => (placed(opening, units), None),
        Observation::CutBack(cut_back) => {
            let width = cut_back.width.as_ref().map_or("as placed".to_owned(), |width| units.length(width.value));
            let finish = cut_back.finish.as_ref();
            let finish = finish.map(|finish| format!(", finished floor {} beyond", units.length(finish.value)));
            (format!("{width} along the joists{}", finish.unwrap_or_default()), None)
        }
        Observation::Layer(layer) => {
            let thickness = units.read(layer.thickness.value);
            (format!("{}: {thickness} thick", layer.what.label()), Some(layer.thickness.typed.clone()))
        }
        Observation::OnHand(piece) => {
            let (length, width) = (units.length(piece.length.value), units.length(piece.width.value));
            (format!("{length} along the strong axis × {width}"), Some(piece.length.typed.clone()))
        }
        Observation::Check(check) => (format!("{}: {}", check.of, check.answer.label()), None),
        Observation::Particular(it) => {
            (format!("{}, {}: {}", it.of.name(), it.what, it.is.typed()), Some(it.is.typed().to_owned()))
        }
        Observation::WholeFloor(_) => ("comes out wall to wall".to_owned(), None),
        Observation::Obstacle(obstacle) => {
            (format!("{}, {}", obstacle.what.label(), placed(&obstacle.takes, units)), None)
        }
        Observation::Joists(joists) => {
            let spacing = units.length(joists.spacing.value);
            (
                format!("{} joists, {spacing} oc, {}", joists.count, joists.run.label()),
                Some(joists.spacing.typed.clone()),
            )
        }
        Observation::JoistCenter(center) => {
            let at = units.length(center.center.value);
            (format!("{}: {at} from corner 1", center.name()), Some(center.center.typed.clone()))
        }
        Observation::Measure(measure) => {
            (format!("{}: {}", measure.what, units.length(measure.length.value)), Some(measure.length.typed.clone()))
        }
        Observation::Level(level) => {
            let at = place_of(job, Some(level.place), units);
            (format!("{} down{at}", units.length(level.drop.value)), Some(level.drop.typed.clone()))
        }
        Observation::Meter(meter) => (format!("{}, {}", meter.label, meter.sensing.label()), None),
        Observation::Reading(reading) => {
            let at = place_of(job, Some(reading.place), units);
            let as_what = if reading.reference { ", dry panel to hold others against" } else { "" };
            let first = reading.typed_first.as_ref().map(|typed| typed.typed.clone());
            match &reading.shown {
                Shown::Percent(shown) => {
                    let doubted = if reading.doubted { ", doubted" } else { "" };
                    let says = format!("{} %{doubted}{at}{as_what}", shown.value.to_percent());
                    (says, Some(shown.typed.clone()))
                }
                Shown::OverMaximum => (format!("over the meter's maximum{at}{as_what}"), first),
                Shown::UnderMinimum => (format!("under the meter's minimum{at}{as_what}"), first),
            }
        }
        Observation::AirReading(air) => {
            let says = format!(
                "{}: {}, {} % RH",
                air.location.label(),
                units.temperature(air.temperature.value),
                air.humidity.value.to_percent()
            );
            (says, Some(format!("{}, {}", air.temperature.typed, air.humidity.typed)))
        }
        Observation::SurfaceReading(surface) => {
            let at = place_of(job, surface.place, units);
            let warmth = units.temperature(surface.temperature.value);
            (format!("{}: {warmth}{at}", surface.what), Some(surface.temperature.typed.clone()))
        }
        Observation::Condition(condition) => {
            let at = place_of(job, condition.place, units);
            let note = noted(condition.note.as_ref());
            (format!("{}{at}{note}", condition.finding.label()), None)
        }
        Observation::Damage(damage) => damage_line(damage, units),
        Observation::Photo(photo) => {
            let at = place_of(job, photo.place, units);
            let caption = noted(Some(&photo.caption));
            (format!("{} × {} px{at}{caption}", photo.width, photo.height), None)
        }
        Observation::Acknowledgement(read) => {
            // By its name: the table of cautions is not part of the first load.
            (read.caution.as_str().replace('_', " "), None)
        }
        Observation::HandOver(sent) => (format!("revision {}", sent.revision), None),
    };
    Line { kind: seen.label(), says, typed }
}

fn damage_line(damage: &Damage, units: Units) -> (String, Option<String>) {
    let typed = match &damage.depth {
        Some(Depth::Is(typed)) => Some(typed.typed.clone()),
        Some(Depth::CannotReach) | None => None,
    };
    (format!("{}: {}", damage.of.name(), in_sentence(&spot_words(damage, units))), typed)
}

/// "Awl, 3' 6\" to 5' 0\", lower edge, 1/2\" deep".
pub fn spot_words(damage: &Damage, units: Units) -> String {
    let along = match (&damage.from, &damage.to) {
        (Some(from), Some(to)) if from.value != to.value => {
            Some(format!("{} to {}", units.length(from.value), units.length(to.value)))
        }
        (Some(at), _) | (None, Some(at)) => Some(format!("at {}", units.length(at.value))),
        (None, None) => None,
    };
    let depth = match &damage.depth {
        Some(Depth::Is(typed)) if !typed.value.is_positive() && damage.kind == DamageKind::Soft => {
            Some("it stops".to_owned())
        }
        Some(Depth::Is(typed)) => {
            let way = if damage.kind == DamageKind::Hole { "high" } else { "deep" };
            Some(format!("{} {way}", units.length(typed.value)))
        }
        Some(Depth::CannotReach) => Some("cannot reach".to_owned()),
        None => None,
    };
    let face = damage.face.map(|face| face.label().to_owned());
    let edge = damage.to_edge.as_ref().map(|edge| format!("{} from the edge", units.length(edge.value)));
    let kind = Some(damage.kind.label().to_owned());
    [kind, along, face, depth, edge].into_iter().flatten().collect::<Vec<_>>().join(", ")
}

/// What was said besides, on the same line.
fn noted(note: Option<&super::entry::Note>) -> String {
    let note = note.filter(|note| !note.is_empty());
    note.map_or_else(String::new, |note| format!(": {}", note.as_str().replace('\n', " ")))
}

fn placed(opening: &super::survey::Opening, units: Units) -> String {
    let [along, out] = [&opening.along, &opening.out].map(|length| units.length(length.value));
    let [length, width] = [&opening.length, &opening.width].map(|length| units.length(length.value));
    format!("{length} × {width}, {along} along and {out} out")
}

/// A corner by its number.
pub fn corner_name(job: &Job, side: super::entry::EntryId) -> String {
    let number = Floor::corner_number(job, side);
    number.map_or_else(|| "a corner that is not there".to_owned(), |number| format!("corner {number}"))
}

/// A place with its distance along.
pub fn place_name(place: &super::place::Place, units: Units) -> String {
    let along = place.position.along().map(|along| format!(", {} along", units.length(along.value)));
    format!("{}{}", place.name(), along.unwrap_or_default())
}

/// "1 entry", "2 entries", "3 boxes".
pub fn counted(count: usize, what: &str) -> String {
    if count == 1 { format!("1 {what}") } else { format!("{count} {}", several(what)) }
}

/// More than one of them.
pub fn several(what: &str) -> String {
    match what.strip_suffix('y') {
        Some(stem) => format!("{stem}ies"),
        None if what.ends_with("sh") || what.ends_with('x') => format!("{what}es"),
        None => format!("{what}s"),
    }
}

/// Words that begin a sentence.
pub fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map(|first| first.to_uppercase().chain(letters).collect()).unwrap_or_default()
}

/// Words that began one, inside another.
pub fn in_sentence(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map(|first| first.to_lowercase().chain(letters).collect()).unwrap_or_default()
}

/// " at" a place with its distance along; nothing for what hangs on none.
pub fn place_of(job: &Job, place: Option<super::entry::EntryId>, units: Units) -> String {
    let place = place.and_then(|place| job.now.places().get(&place));
    place.map_or_else(String::new, |place| format!(" at {}", place_name(place.value, units)))
}

fn fact(fact: &Fact, units: Units) -> (String, Option<String>) {
    let says = match fact {
        Fact::Title(title) => format!("title: {title}"),
        Fact::OfficeNumber(number) => format!("office job number: {number}"),
        Fact::Site(site) => format!("place: {site}"),
        Fact::YearBuilt(year) => format!("built in {}", year.get()),
        Fact::Venting(venting) => format!("crawl space {}", venting.label()),
        Fact::Sheet(sheet) => {
            let [width, length] = [&sheet.width, &sheet.length].map(|side| units.length(side.value));
            format!("sheets {width} × {length}")
        }
        Fact::SheetEdge(edge) => format!("sheets with {}", edge.label()),
        Fact::SpanRating(rating) => format!("sheets rated {} oc", u16::from(*rating)),
        Fact::CommonMark(mark) => format!("common mark: {mark}"),
        Fact::FramingLimit(limit) => format!("framing closes at {} %", limit.value.to_percent()),
        Fact::SubfloorLimit(limit) => format!("subfloor closes at {} %", limit.value.to_percent()),
        Fact::BlockLumber(lumber) => format!("blocks are cut of {lumber}"),
        Fact::MeasuredFrom(wall) => format!("distances are from the {wall}"),
        Fact::North(north) => format!("north is {} on the plan", north.on_page()),
        Fact::Archived(true) => "archived".to_owned(),
        Fact::Archived(false) => "out of the archive".to_owned(),
        Fact::InventedSample => "invented sample: nothing here was measured".to_owned(),
        Fact::CrawlHeight(length)
        | Fact::SheetThickness(length)
        | Fact::SheetGap(length)
        | Fact::EdgeGap(length)
        | Fact::Kerf(length)
        | Fact::JoistThickness(length)
        | Fact::TapeWithin(length)
        | Fact::LaserWithin(length)
        | Fact::PacesWithin(length) => {
            let of = fact.length().map_or("", |(of, _)| of).to_ascii_lowercase();
            return (format!("{of}: {}", units.length(length.value)), Some(length.typed.clone()));
        }
    };
    (says, None)
}

#[cfg(test)]
mod tests {
    use super::counted;

    #[test]
    fn counts_agree_with_their_nouns() {
        let said = [(1, "entry"), (2, "entry"), (0, "clash"), (3, "fault"), (2, "box"), (1, "sheet")];
        let expected = ["1 entry", "2 entries", "0 clashes", "3 faults", "2 boxes", "1 sheet"];
        assert_eq!(said.map(|(count, what)| counted(count, what)), expected);
    }
}
