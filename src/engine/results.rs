//! Every result, a line each: its name, its question, and the function of the job that
//! answers it. Screens, reports and the job file's snapshot all read this list; nothing
//! keeps what it gives.

use super::air::{dew_point, emc};
use super::describe::capital;
use super::drying::{Ventilating, VisitAir, ventilating};
use super::entry::EntryId;
use super::figure::{Figure, Known, Need};
use super::job::{Job, Seen};
use super::moisture::said::tenths;
use super::moisture::{Corrected, Material, Reading, Stands, correct};
use super::sheets::sheets_by_area;
use super::standing::{Spots, Standing};
use super::survey::agreement::{Agreement, agreement};
use super::survey::build_up::{BuildUp, Step, by_caliper};
use super::survey::{areas_without, build_up, closing_error, opening_area, room_area};
use super::take::Units;
use super::units::tape::format;
use super::units::{Length, MoistureContent, Temperature};
use super::warmth::wood_temperature;
use litemap::LiteMap;

/// An answer in words: a headline, and the line that decides it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Said {
    /// What a carpenter would say.
    pub headline: String,
    /// The one or two facts behind it.
    pub line: String,
}

impl Said {
    /// Both in one line.
    pub fn words(&self) -> String {
        let parts = [self.headline.as_str(), self.line.as_str()];
        parts.into_iter().filter(|words| !words.is_empty()).collect::<Vec<_>>().join("; ")
    }
}

/// A result of the job.
#[derive(Debug, Clone, PartialEq)]
pub struct Answer {
    /// The name that a job file's snapshot uses.
    pub name: &'static str,
    /// What was asked.
    pub title: &'static str,
    /// What is said.
    pub said: Figure<Said>,
}

/// Every result of a job, as it is said on this phone.
pub fn answers(job: &Job, units: Units) -> Vec<Answer> {
    let answer = |name, title, said| Answer { name, title, said };
    vec![
        answer("sheets_by_area", "Sheets", sheets_by_area(job).map(|sheets| say_sheets(*sheets))),
        answer("opening_area", "To come out", opening_area(job).map(|area| said(units.area(*area), ""))),
        answer(
            "room_area",
            "Room",
            room_area(job).map(|area| said(units.area(*area), areas_without_words(job, units))),
        ),
        answer("old_floor", "Old floor", build_up(job).map(|build_up| say_build_up(build_up, units))),
        answer("agreement", "Do the measurements agree?", agreement(job).map(say_agreement)),
        answer("closing_error", "Do the sides close?", closing_error(job).map(|error| say_closing(*error, units))),
        answer("wettest", "Wettest wood", wettest(job).map(|wettest| say_wettest(job, wettest, units))),
        answer("crawl_emc", "Left in this crawl air, wood settles near", crawl_emc(job).map(say_percent)),
        answer(
            "crawl_dew_point",
            "Crawl air condenses at",
            crawl_dew_point(job).map(|dew| say_temperature(*dew, units)),
        ),
    ]
}

/// Those, and the one that a phone works out in its later module: it takes a good part of the engine.
pub fn every_answer(job: &Job, units: Units) -> Vec<Answer> {
    let outdoor_air = Answer {
        name: "outdoor_air",
        title: ventilating::ASKS,
        said: ventilating(job).map(|ventilating| say_venting(ventilating, units)),
    };
    answers(job, units).into_iter().chain([outdoor_air]).collect()
}

/// A reading with what it means.
pub type Taken<'a> = (EntryId, Seen<'a, Reading>, Known<Corrected>);

/// Every reading with what it means, newest visit last.
pub fn readings(job: &Job) -> Vec<Taken<'_>> {
    job.now.readings().iter().map(|(id, reading)| (*id, reading, corrected(job, *id, reading))).collect()
}

/// The readings that stand at their places: mostly one a place. A later one stands for those
/// before it, unless it is of the same visit or day and drier by more than a meter can be off:
/// then both stand, and so do two of which nobody can say which came later. Whoever asks goes by
/// the worst. What is only relative stands for no number, and what was read of a joist that is
/// gone does not stand at all.
pub fn standing<'a, 'job>(job: &'job Job, all: &'a [Taken<'job>]) -> impl Iterator<Item = &'a Taken<'job>> {
    let of = |(id, reading, known): &Taken<'_>| Standing::of(*id, reading, known.value);
    let spots = Spots::of(job);
    let mut of_spot = LiteMap::<EntryId, Vec<Standing>>::new();
    for taken in all {
        of_spot.entry(spots.first(taken.1.value.place)).or_default().push(of(taken));
    }
    all.iter().filter(move |taken| {
        let (place, this) = (taken.1.value.place, of(taken));
        let mut others = of_spot.get(&spots.first(place)).into_iter().flatten();
        !spots.is_of_what_is_gone(place, this.when) && !others.any(|other| this.is_superseded_by(other))
    })
}

/// Of what stands at each spot the worst, by what `rank` makes of it; of two alike the later.
/// Under the place that was logged first there.
pub fn worst_of_each<'a, 'job, R: PartialOrd>(
    job: &'job Job,
    all: &'a [Taken<'job>],
    rank: impl Fn(&Taken<'job>) -> R,
) -> LiteMap<EntryId, &'a Taken<'job>> {
    let mut worst = LiteMap::<EntryId, &Taken<'job>>::new();
    let spots = Spots::of(job);
    for taken in standing(job, all) {
        let place = spots.first(taken.1.value.place);
        if worst.get(&place).is_none_or(|before| rank(before) <= rank(taken)) {
            worst.insert(place, taken);
        }
    }
    worst
}

/// The same by number: one that is only relative gives way to any that is more.
pub fn wettest_of_each<'a, 'job>(job: &'job Job, all: &'a [Taken<'job>]) -> LiteMap<EntryId, &'a Taken<'job>> {
    worst_of_each(job, all, |(.., known)| (!known.value.relative, known.value.corrected))
}

/// What one reading means. Source: see [`correct`].
pub fn corrected(job: &Job, id: EntryId, reading: Seen<'_, Reading>) -> Known<Corrected> {
    let meter = reading.value.meter.and_then(|meter| job.now.meters().get(&meter)).map(|meter| meter.value);
    correct(&reading.value.shown, meter, reading.value.wood, &wood_temperature(job, id, &reading))
}

/// A reading of dry panel, for readings on panel of its kind to be held against.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PanelReference {
    /// The reading's entry.
    pub reading: EntryId,
    /// The meter's: only its readings can be held against this.
    pub meter: Option<EntryId>,
    /// Where.
    pub place: EntryId,
    /// What it read: a number, or that it is under its meter's scale.
    pub at: Stands,
}

/// The readings of a visit that say that they were taken on dry panel of this kind elsewhere in
/// the house: all, since places there do not tell one panel from another. One past its meter's scale,
/// or that is not believed, is none.
pub fn panel_references(job: &Job, visit: Option<EntryId>, material: Material) -> Vec<PanelReference> {
    let taken = job.now.readings().iter().filter(|(_, reading)| {
        reading.value.reference && reading.stamp.visit == visit && reading.value.wood.material == material
    });
    let references = taken.filter_map(|(id, reading)| {
        let known = corrected(job, *id, reading).value;
        let Reading { meter, place, .. } = *reading.value;
        let is_bounded = !known.doubted && !known.corrected.is_over();
        is_bounded.then_some(PanelReference { reading: *id, meter, place, at: known.corrected })
    });
    references.collect()
}

/// The wettest of the readings that stand, of this visit or of those that have any, and where.
struct Wettest {
    place: EntryId,
    corrected: Corrected,
}

fn wettest(job: &Job) -> Figure<Wettest> {
    let latest = job.now.readings().values().next_back().and_then(|reading| reading.stamp.visit);
    let begun = latest.and_then(|visit| Some(job.now.visits().get(&visit)?.begun(visit)));
    let is_older = |id: EntryId, reading: Seen<'_, Reading>| {
        reading.stamp.visit != latest && begun.is_some_and(|begun| begun.is_after(reading.begun(id)))
    };
    let all = readings(job);
    let of_visit = standing(job, &all).filter(|(id, reading, _)| !is_older(*id, *reading));
    // What is only relative stands in no order with the rest, unless it is past its scale: there
    // a meter has seen wetter wood than any that it showed a number for.
    let (relative, mut compared): (Vec<_>, Vec<_>) = of_visit.partition(|(_, _, known)| known.value.relative);
    let numbers = compared.iter().map(|(_, _, known)| known.value.corrected).max();
    let (wetter, left_out): (Vec<_>, Vec<_>) = relative.into_iter().partition(|(_, _, known)| {
        let now = known.value.corrected;
        numbers.is_none_or(|numbers| now.is_over() && now > numbers)
    });
    compared.extend(wetter);
    let rank = |known: &Corrected| (known.corrected, !known.relative);
    let most_left_out = left_out.iter().map(|(_, _, known)| known.value.corrected.bound()).max();
    let worst: Vec<_> = compared.iter().map(|(id, _, known)| (*id, known.value.at_worst())).collect();
    let wettest = compared.into_iter().max_by_key(|(id, _, known)| (rank(&known.value), *id));
    let Some((id, reading, known)) = wettest else { return Figure::Missing(vec![Need::Reading]) };
    let id = *id;
    let wetter = worst
        .iter()
        .filter(|(of, at)| *of != id && !known.value.corrected.is_over() && *at > known.value.corrected.bound());
    let wetter = wetter.count();
    let Known { value, assumed, mut doubts, why } = known.clone();
    if let Some(most) = most_left_out {
        let (left_out, most) = (left_out.len(), tenths(most));
        doubts.push(format!("Readings that are only relative were not compared: {left_out}, up to {most}"));
    }
    if wetter > 0 {
        doubts.push(format!("Others that may be wetter than it, for they may read low: {wetter}"));
    }
    let value = Wettest { place: reading.value.place, corrected: value };
    Figure::Known(Known { value, assumed, doubts, why: why.using([id]) })
}

fn crawl_emc(job: &Job) -> Figure<MoistureContent> {
    let crawl = VisitAir::of(job).crawl;
    let Some((id, air)) = crawl.dampest() else { return Figure::Missing(vec![Need::CrawlAir]) };
    let mut known = emc(air.temperature, air.humidity);
    known.why = known.why.using([id]);
    known.doubts.extend(crawl.doubts("the dampest"));
    Figure::Known(known)
}

fn crawl_dew_point(job: &Job) -> Figure<Temperature> {
    let crawl = VisitAir::of(job).crawl;
    let Some((id, air)) = crawl.fullest() else { return Figure::Missing(vec![Need::CrawlAir]) };
    let mut known = dew_point(air);
    known.why = known.why.using([id]);
    known.doubts.extend(crawl.doubts("the one with most vapor"));
    Figure::Known(known)
}

fn said(headline: impl Into<String>, line: impl Into<String>) -> Said {
    Said { headline: headline.into(), line: line.into() }
}

fn say_sheets(sheets: u32) -> Said {
    let headline = if sheets == 1 { "1 sheet by area".to_owned() } else { format!("{sheets} sheets by area") };
    said(headline, "The carpenter's estimate, not an order.")
}

fn say_closing(error: super::geometry::ClosingError, units: Units) -> Said {
    let Some(parts) = error.one_part_in() else { return said("Exactly", "They end where they began.") };
    said(format!("To {}", units.length(error.misclosure())), format!("1 in {parts} of the way round."))
}

fn say_build_up(build_up: &BuildUp, units: Units) -> Said {
    let shown = |length: Length| format(length, by_caliper(units.length)).to_string();
    let least = shown(build_up.least);
    let line = match build_up.step {
        Step::NotMeasured => {
            "Measure the new sheets' thickness and the old boards or panel for the step at the seam.".to_owned()
        }
        Step::NotKnown => "How the new sheets meet the old subfloor cannot be told.".to_owned(),
        Step::Is(Length::ZERO) => "The new sheets come flush with the old subfloor.".to_owned(),
        Step::Is(up) if up.is_positive() => format!("The new sheets stand {} above the old subfloor.", shown(up)),
        Step::Is(down) => format!("The new sheets lie {} below the old subfloor: shim the joists.", shown(down.abs())),
    };
    if build_up.asks.is_empty() {
        return said(format!("{least} thick: cut no deeper"), line);
    }
    said(format!("Cut no deeper than {least}"), format!("{} {line}", build_up.asks.join(" ")))
}

/// "121.5 sq ft without side 3": the area without each reading that could be wrong.
fn areas_without_words(job: &Job, units: Units) -> String {
    let without = areas_without(job).into_iter();
    let each: Vec<_> = without.map(|(reading, area)| format!("{} without {reading}", units.area(area))).collect();
    if each.is_empty() { String::new() } else { format!("{}.", each.join("; ")) }
}

fn say_agreement(agreement: &Agreement) -> Said {
    let Said { headline, line } = say_of_readings(agreement);
    if agreement.outside.is_empty() {
        return said(headline, line);
    }
    let headline = if agreement.complaint.is_none() { "Not all of it".to_owned() } else { headline };
    said(headline, format!("{line} Logged, but not there: {}.", agreement.outside.join("; ")))
}

fn say_of_readings(agreement: &Agreement) -> Said {
    match &agreement.complaint {
        Some(complaint) if agreement.stops => {
            said("No: cut nothing by this outline", format!("{}.", capital(complaint)))
        }
        Some(complaint) => said("No", format!("{}.", capital(complaint))),
        None => said("Yes", "Nothing is off by more than chance."),
    }
}

fn say_wettest(job: &Job, wettest: &Wettest, units: Units) -> Said {
    let place = job.now.places().get(&wettest.place);
    let name = place.map_or_else(|| "somewhere".to_owned(), |place| place.value.name());
    let along = place.and_then(|place| place.value.position.along());
    let along = along.map_or_else(String::new, |along| format!(", {} along", units.length(along.value)));
    said(wettest.corrected.words(), format!("{name}{along}."))
}

fn say_percent(percent: &MoistureContent) -> Said {
    said(tenths(*percent), "")
}

fn say_temperature(temperature: Temperature, units: Units) -> Said {
    said(units.temperature(temperature), "Anything colder gets wet.")
}

fn say_venting(ventilating: &Ventilating, units: Units) -> Said {
    let dew = units.temperature(ventilating.venting.outside_dew_point);
    let open = ventilating.is_open_below().map_or_else(String::new, |says| format!(" {says}"));
    said(ventilating.says.label(), format!("Outdoor air condenses at {dew}.{open}"))
}
