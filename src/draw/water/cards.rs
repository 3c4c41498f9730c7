//! The page's cards in words.

use super::asks;
use super::map::map;
use crate::draw::Canvas;
use crate::draw::card::{Act, Card, Line, reasons};
use crate::engine::closing::close_in;
use crate::engine::describe::{capital, in_sentence, place_name};
use crate::engine::drying::{Forecast, OtherAir, Outlook, Still, forecasts};
use crate::engine::entry::{EntryId, Time, time};
use crate::engine::extent::{CLOSE, Extent, Group, NextReading, REACH, Untold, Wet};
use crate::engine::figure::{Figure, Known};
use crate::engine::geometry::Rect;
use crate::engine::job::{Job, Observation};
use crate::engine::moisture::said::legend;
use crate::engine::origin::{Ranked, Word, origin};
use crate::engine::survey::as_opening;
use crate::engine::take::Units;
use crate::engine::units::Area;

/// So many places are named with the day that they get there.
const MOST_PLACES: usize = 8;
/// So many causes that are no more than possible are shown with their reasons.
const MOST_POSSIBLE: usize = 4;

/// May the floor be closed?
pub(super) fn decision(job: &Job, units: Units) -> Card {
    let known = close_in(job, units);
    let conditions = &known.value.conditions;
    let in_the_way = |is_known: bool| {
        let all = conditions.iter().flat_map(|condition| &condition.in_the_way);
        all.filter(move |it| it.is_known == is_known)
            .map(|it| Line::next(format!("{}: {}.", capital(&it.what), it.ends)))
            .collect::<Vec<_>>()
    };
    let holding = conditions.iter().filter(|condition| condition.holds() == Some(true));
    let holding = holding.map(|it| Line::plain(format!("{}: {}.", capital(&it.what), it.found))).collect();
    let parts = [("In the way", in_the_way(true)), ("Not known yet", in_the_way(false)), ("Settled", holding)];
    let mut lines = Vec::new();
    for (heading, of) in parts.into_iter().filter(|(_, of)| !of.is_empty()) {
        lines.push(Line::heading(heading));
        lines.extend(of);
    }
    lines.extend(reasons(&known));
    lines.push(Line::small("A record of what was read, and no permit: your local code and whoever signs decide."));
    let card = Card::new("May the floor be closed?", known.value.decision.label(), lines);
    Card { asks: asks::for_closing(job), ..card }
}

/// Where does the water come from?
pub(super) fn ranking(job: &Job) -> Card {
    let title = "Where does the water come from?";
    let known = match origin(job) {
        Figure::Missing(needs) => return Card::missing(title, &needs),
        Figure::Known(known) => known,
    };
    let ranking = &known.value;
    let sure: Vec<_> = ranking.sure().collect();
    let headline = match sure.as_slice() {
        _ if !ranking.is_enough => "Not enough to say".to_owned(),
        [] => format!("Perhaps {}", ranking.causes.first().map_or("nothing known", |first| first.cause.label())),
        some => capital(&some.iter().map(|ranked| ranked.cause.label()).collect::<Vec<_>>().join(", and ")),
    };
    let shown = |word: Word| ranking.causes.iter().filter(move |ranked| ranked.word == word);
    let mut lines = Vec::new();
    for ranked in shown(Word::Likely).chain(shown(Word::Possible).take(MOST_POSSIBLE)) {
        lines.extend(said_of(ranked));
    }
    let unlikely: Vec<_> = shown(Word::Unlikely).map(|ranked| ranked.cause.label()).collect();
    if !unlikely.is_empty() {
        lines.push(Line::heading("Unlikely"));
        lines.push(Line::plain(format!("{}.", capital(&unlikely.join("; ")))));
    }
    lines.extend(reasons(&known));
    Card::new(title, headline, lines)
}

fn said_of(ranked: &Ranked) -> Vec<Line> {
    let mut lines = vec![Line::heading(format!("{}: {}", capital(ranked.cause.label()), ranked.word.label()))];
    let mut say = |of: &[String], word: &str| {
        if !of.is_empty() {
            lines.push(Line::plain(format!("{word}: {}.", of.join("; "))));
        }
    };
    say(&ranked.reasons, "For");
    say(&ranked.against, "Against");
    if ranked.word == Word::Likely {
        lines.push(Line::next(format!("{}.", capital(ranked.cause.remedy()))));
    }
    lines
}

/// How far does it go? A card for each kind of wood that was read.
pub(super) fn maps(job: &Job, units: Units, canvas: Canvas) -> Vec<Card> {
    let extents = Group::ALL.into_iter().map(|group| (group, Extent::of(job, group)));
    let cards: Vec<_> = extents
        .filter_map(|(group, figure)| match figure {
            Figure::Known(known) => Some(extent(job, &known, units, canvas)),
            Figure::Missing(needs) if group == Group::Framing => Some(Card::missing("How far does it go?", &needs)),
            Figure::Missing(_) => None,
        })
        .collect();
    cards
}

fn extent(job: &Job, known: &Known<Extent>, units: Units, canvas: Canvas) -> Card {
    let extent = &known.value;
    let limit = format!("{:.0} %", extent.limit.to_percent());
    let headline = match extent.wet {
        Err(Untold::TooFew) => "Too few readings for an area".to_owned(),
        Err(Untold::Unread(_)) => "Not told: part of the floor is unread".to_owned(),
        Ok(wet) => format!("About {} over {limit}", units.area(wet.area)),
    };
    let mut lines = Vec::new();
    match extent.wet {
        Err(Untold::TooFew) => {}
        Err(Untold::Unread(unread)) => {
            let (reach, unread) = (units.length(REACH), units.area(unread));
            let over = extent.spots.iter().filter(|spot| spot.corrected.corrected.is_above(extent.limit)).count();
            lines.push(Line::plain(format!(
                "No reading within {reach} of {unread} of the floor: it may all be wet there. Read there first."
            )));
            lines.push(Line::plain(format!("Over {limit}: {over} of {} readings.", extent.spots.len())));
        }
        Ok(Wet { at_least, at_most, unread, opening, left, .. }) => {
            lines.push(Line::plain(format!("At least {}, at most {}.", units.area(at_least), units.area(at_most))));
            if unread > Area::ZERO {
                lines.push(Line::plain(format!(
                    "No reading within {} of {} of the floor: \"at most\" counts it as wet.",
                    units.length(REACH),
                    units.area(unread)
                )));
            }
            let close = units.length(CLOSE);
            lines.push(Line::small(format!(
                "\"About\" counts each spot of the floor by the chance that it is wet, \"at least\" none farther than {close} from a reading over {limit}."
            )));
            lines.extend(leaves(opening, left, units));
        }
    }
    if let Some(next) = extent.next {
        lines.push(Line::next(format!("Read {}.", where_to(job, extent, next, units))));
    }
    lines.extend(legend(extent.spots.iter().map(|spot| &spot.corrected)).map(|says| Line::small(format!("{says}."))));
    lines.extend(reasons(known));
    let opening = extent.wet.ok().and_then(|wet| wet.opening);
    let mut card = Card::new(format!("How far does it go? {}", extent.group.label()), headline, lines);
    card.drawing = Some(map(extent, units, canvas));
    if let Some((act, shows)) = opening.and_then(|rect| accept(extent, rect, units)) {
        (card.act, card.shows) = (Some(act), shows);
    }
    card
}

/// What an opening leaves of what is rather wet than not; nothing where it takes all of it.
fn leaves(opening: Option<Rect>, left: Area, units: Units) -> Option<Line> {
    let left = (left > Area::ZERO).then(|| units.area(left))?;
    Some(Line::next(match opening {
        Some(_) => format!("The opening below leaves {left} that is rather wet than not: open that as well."),
        None => format!("{left} that is rather wet than not lies in no opening: open that as well."),
    }))
}

/// "joist 7, about 5 ft from the north wall": from the wall that this joist meets.
fn where_to(job: &Job, extent: &Extent, next: NextReading, units: Units) -> String {
    let about = units.length(next.along);
    let named = || job.measured_from().filter(|wall| !wall.is_empty()).map(|wall| format!("the {wall}"));
    let from = extent.floor.starts(next.joist).1.words().or_else(named);
    let from = from.map_or_else(|| "along it".to_owned(), |wall| format!("from {wall}"));
    format!("joist {}, about {about} {from}", next.joist.get())
}

/// The opening proposed for what is rather wet than not, to be accepted or not.
fn accept(extent: &Extent, rect: Rect, units: Units) -> Option<(Act, String)> {
    let opening = as_opening(&extent.floor, rect)?;
    let [along, out, length, width] =
        [&opening.along, &opening.out, &opening.length, &opening.width].map(|typed| units.read(typed.value));
    let label = format!("Open {length} × {width}");
    let shows = format!(
        "On the plan above, dashed: {along} along side 1 from its corner, {out} out from it; {length} along it, {width} into the room."
    );
    Some((Act { label, logs: Observation::Opening(opening) }, shows))
}

/// When is it dry?
pub(super) fn forecast(job: &Job, units: Units) -> Card {
    let title = "When is it dry?";
    let known = match forecasts(job) {
        Figure::Missing(needs) => return Card::missing(title, &needs),
        Figure::Known(known) => known,
    };
    let forecasts = &known.value;
    let open: Vec<_> = forecasts.places.iter().filter(|place| place.outlook != Outlook::There).collect();
    // The slowest place comes first: what is said of all is what is said of it.
    let would_not_stay = forecasts.places.iter().filter(|place| place.would_not_stay(forecasts.end)).count();
    let all = forecasts.places.len();
    let headline = match (open.first(), would_not_stay) {
        (Some(slowest), _) => says(slowest, forecasts.now),
        (None, 0) => "All places read under their limits".to_owned(),
        (None, some) => {
            format!("All places read under their limits, and in this air {some} of {all} would not stay so")
        }
    };
    let mut lines = vec![Line::plain(format!("In this crawl air wood ends at {:.1} %.", forecasts.end.to_percent()))];
    if would_not_stay > 0 {
        lines.push(Line::next(format!(
            "Dry the air: in this air {would_not_stay} of {all} places at or under their limits would not stay so."
        )));
    }
    let old = forecasts.places.iter().filter(|place| place.is_to_be_read_again()).count();
    if old > 0 {
        lines.push(Line::next(format!("Read again what was not read in this visit: {old} of {all} places.")));
    }
    let now = forecasts.now;
    lines.extend(open.iter().take(MOST_PLACES).map(|place| Line::plain(one_place(job, place, now, units))));
    if open.len() > MOST_PLACES {
        lines.push(Line::plain(format!("And {} places more.", open.len() - MOST_PLACES)));
    }
    let faster = |it: &OtherAir| {
        let day = it.all_by.map(|day| format!(", every place there by about {}", time::date(day)));
        format!("With {}: wood ends at {:.1} %{}.", it.with, it.end.to_percent(), day.unwrap_or_default())
    };
    lines.extend(forecasts.other_air.iter().map(|it| Line::plain(faster(it))));
    lines.extend(reasons(&known));
    Card::new(title, headline, lines)
}

fn one_place(job: &Job, forecast: &Forecast, now: Time, units: Units) -> String {
    let readings: Vec<_> = forecast.readings.iter().map(|(_, reading)| reading.words()).collect();
    let limit = forecast.limit.to_percent();
    format!(
        "{}: {}. To {limit:.0} %: {}.",
        named(job, forecast.place, units),
        readings.join(", "),
        in_sentence(&says(forecast, now))
    )
}

fn named(job: &Job, place: EntryId, units: Units) -> String {
    job.now.places().get(&place).map_or_else(|| "Somewhere".to_owned(), |place| place_name(place.value, units))
}

fn says(forecast: &Forecast, now: Time) -> String {
    match forecast.outlook {
        Outlook::There => "It reads under its limit".to_owned(),
        Outlook::Passed => "By what was read it would be there by now: read it again".to_owned(),
        Outlook::Between(earliest, Some(latest)) if earliest <= now => {
            format!("Perhaps already, by {} at the latest", time::date(latest))
        }
        Outlook::Between(earliest, None) if earliest <= now => {
            "Perhaps already, and nobody can say how late".to_owned()
        }
        Outlook::Between(earliest, Some(latest)) if time::date(earliest) == time::date(latest) => {
            format!("About {}", time::date(earliest))
        }
        Outlook::Between(earliest, Some(latest)) => {
            format!("Between {} and {}", time::date(earliest), time::date(latest))
        }
        Outlook::Between(earliest, None) => {
            format!("{} at the earliest, and nobody can say how late", time::date(earliest))
        }
        Outlook::Close => "Under its limit by less than a meter can be off: read it again".to_owned(),
        Outlook::Never => "Not in this air: change the air first".to_owned(),
        Outlook::Unknown(Still::TooFew) => {
            "Too few readings below 28 %: read it again on another day, in another visit".to_owned()
        }
        Outlook::Unknown(Still::Doubted) => {
            "What it read last is a number that nobody believes: read it again".to_owned()
        }
        Outlook::Unknown(Still::PastScale) => "Past the meter's scale: read it again on another day".to_owned(),
        Outlook::Unknown(Still::Loose) => {
            let asks = forecast.readings.last().and_then(|(_, last)| last.asks()).unwrap_or("read it again");
            format!("Under its limit, by a number that can't be counted on: {asks}")
        }
        Outlook::Unknown(Still::BelowItsEnd) => {
            "It reads below what this air holds wood at: read air and wood again".to_owned()
        }
        Outlook::Unknown(Still::NotDrying) => "It is not drying: find out why".to_owned(),
    }
}
