//! What the reading that stands at each place says against its limit.

use crate::draw::card::{Card, Line, rests_on};
use crate::engine::closing::{Limit, Limits, Verdict, verdict};
use crate::engine::condition::Finding;
use crate::engine::describe::place_name;
use crate::engine::entry::EntryId;
use crate::engine::extent::Group;
use crate::engine::figure::{Known, Need};
use crate::engine::job::Job;
use crate::engine::moisture::Corrected;
use crate::engine::results::{Taken, readings, worst_of_each};
use crate::engine::standing::Spots;
use crate::engine::take::Units;

/// So many places are named; others, and what is dry, are only counted.
const MOST_PLACES: usize = 12;

/// A place, its reading and what that says.
struct Judged {
    name: String,
    known: Known<Corrected>,
    says: Verdict,
    /// Was decay found there? Then a probe decides, whatever a meter says.
    is_decayed: bool,
}

/// The wettest places first, each with its number and its verdict.
pub(super) fn judged(job: &Job, units: Units) -> Card {
    let title = "What do the readings say?";
    let limits = Limits::of(job);
    let mut places = worst(job, &limits, units);
    if places.is_empty() {
        return Card::missing(title, &[Need::Reading]);
    }
    places.sort_by_key(|place| std::cmp::Reverse((place.says, place.known.value.corrected)));
    let over = places.iter().filter(|place| place.says >= Verdict::Over).count();
    let unsure = places.iter().filter(|place| place.says != Verdict::Dry).count() - over;
    let headline = match (over, unsure) {
        (0, 0) => "None is over its limit".to_owned(),
        (0, some) => format!("None reads over its limit; {some} of {} can't be told", places.len()),
        (some, _) => format!("{some} of {} over the limit", places.len()),
    };
    let is_told = |place: &&Judged| place.says != Verdict::Dry || place.is_decayed;
    let mut lines: Vec<_> = places.iter().filter(is_told).take(MOST_PLACES).map(line).collect();
    if places.len() > lines.len() {
        lines.push(Line::plain(format!("{} places more, no wetter than these.", places.len() - lines.len())));
    }
    lines.push(Line::small(format!("Framing: {}.", limits.framing.words())));
    lines.push(Line::small(format!("Subfloor under finished wood: {}.", limits.subfloor.words())));
    let mut verdicts: Vec<_> = places.iter().map(|place| place.says).collect();
    verdicts.dedup();
    lines.extend(verdicts.into_iter().map(|says| Line::small(says.source().noted(&format!("\"{}\"", says.words())))));
    if let Some(wettest) = places.first() {
        lines.push(Line::small(format!("{}: {}", wettest.name, rests_on(&wettest.known.why))));
        lines.extend(wettest.known.doubts.iter().map(|doubt| Line::small(format!("{doubt}."))));
    }
    Card::new(title, headline, lines)
}

fn line(place: &Judged) -> Line {
    let says = if place.is_decayed { "decayed: probe it, the meter misleads there" } else { place.says.words() };
    let is_to_settle = !place.is_decayed && matches!(place.says, Verdict::Loose | Verdict::CloseByWood);
    let asks = place.known.value.asks().filter(|_| is_to_settle).map_or_else(String::new, |asks| format!(": {asks}"));
    Line::plain(format!("{}: {}, {says}{asks}.", place.name, place.known.value.words()))
}

fn worst(job: &Job, limits: &Limits, units: Units) -> Vec<Judged> {
    let place = |id: EntryId| job.now.places().get(&id).map(|place| place.value);
    let says = |(_, reading, known): &Taken<'_>| {
        let Limit { at, .. } = match place(reading.value.place).and_then(|place| Group::of(place.element)) {
            Some(Group::Framing) => limits.framing,
            _ => limits.subfloor,
        };
        verdict(&known.value, at)
    };
    let all = readings(job);
    let worst = worst_of_each(job, &all, |taken| (says(taken), taken.2.value.corrected));
    let judged = worst.iter().filter_map(|(id, taken)| {
        let name = place_name(place(*id)?, units);
        Some(Judged { name, known: taken.2.clone(), says: says(taken), is_decayed: is_decayed(job, *id) })
    });
    judged.collect()
}

fn is_decayed(job: &Job, place: EntryId) -> bool {
    let spots = Spots::of(job);
    let mut here = job.now.conditions().values().filter(|it| it.value.place.is_some_and(|at| spots.first(at) == place));
    here.any(|condition| matches!(condition.value.finding, Finding::Soft | Finding::Rotten))
}
