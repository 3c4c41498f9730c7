//! The joist schedule, what carries the joists, and what is flagged for others.

use crate::draw::card::{Card, Line, cited, reasons};
use crate::engine::condition::Finding;
use crate::engine::describe::{capital, spot_words};
use crate::engine::figure::{Figure, Need};
use crate::engine::framing::headers::headers;
use crate::engine::framing::joist::{Reads, found_nowhere};
use crate::engine::framing::schedule::named;
use crate::engine::framing::supports::{SOUND, looked_at, plies_untold, supports, unsound};
use crate::engine::framing::{Fate, Judged, MemberType, schedule};
use crate::engine::job::Job;
use crate::engine::particular::{Part, Particulars, list};
use crate::engine::place::JoistNumber;
use crate::engine::sheets::stock::{ONE_BAY, Unrated, spacing_by_thickness};
use crate::engine::sources::Source;
use crate::engine::survey::Floor;
use crate::engine::take::Units;

/// What is found in a bay and is no reason against the joist.
const IN_BAYS: [Finding; 3] = [Finding::Wire, Finding::Pipe, Finding::ColdRun];

/// All cards of the framing.
pub(super) fn cards(job: &Job, units: Units) -> Vec<Card> {
    let figure = schedule(job, units);
    let mut cards = vec![Card { group: Some("Framing"), ..summary(job, &figure) }];
    if let Figure::Known(known) = &figure {
        cards.extend(known.value.iter().map(|judged| one_joist(job, judged, units)));
    }
    cards.push(carried_by(job));
    cards.push(whole(job, units));
    cards.push(panel(job, units));
    cards
}

/// How many of each fate, and what all joists share.
fn summary(job: &Job, figure: &Figure<Vec<Judged>>) -> Card {
    let title = "What is to become of the joists?";
    let known = match figure {
        Figure::Missing(needs) => return Card::missing(title, needs),
        Figure::Known(known) => known,
    };
    let fates = [Fate::Engineer, Fate::Replace, Fate::Sister, Fate::Mend, Fate::Open, Fate::Stays];
    let of = |fate: Fate| -> Vec<String> {
        let like = known.value.iter().filter(|judged| judged.fate == fate);
        like.map(|judged| judged.joist.number.get().to_string()).collect()
    };
    let lines: Vec<_> = fates
        .into_iter()
        .map(|fate| (fate, of(fate)))
        .filter(|(_, joists)| !joists.is_empty())
        .map(|(fate, joists)| Line::plain(format!("{}: {}.", capital(fate.label()), named(&joists))))
        .collect();
    let staying = of(Fate::Stays).len();
    let nowhere = found_nowhere(job);
    let elsewhere = (nowhere > 0).then(|| {
        Line::next(format!(
            "Decay or damage that no joist's number places: {nowhere} found. Place it before you trust this."
        ))
    });
    let bad = unsound(job);
    let bad: Vec<_> = bad.into_iter().map(|unsound| unsound.words).collect();
    let carried = (!bad.is_empty()).then(|| Line::next(format!("What carries them is not sound: {}.", bad.join("; "))));
    let is_whole = job.missing() == 0 && job.unknown.is_empty() && job.clashes.is_empty() && job.conflicts.is_empty();
    let missing = (!is_whole).then(|| {
        Line::next("Entries are missing, disagree, or can't be read whole: Log says which. They may speak of a joist.")
    });
    let unseen = unseen(job);
    let unseen = (!unseen.is_empty()).then(|| Line::next(format!("Look at what carries them: {}.", unseen.join(", "))));
    let headline = match (staying, known.value.len()) {
        (0, all) if of(Fate::Open).len() == all => "Not enough to say".to_owned(),
        (some, all) if some < all => format!("{some} of {all} can stay"),
        _ if elsewhere.is_some() || carried.is_some() || missing.is_some() => {
            "Not before the rest is settled".to_owned()
        }
        _ if unseen.is_some() => "All can stay, if what carries them is sound".to_owned(),
        _ => "All can stay".to_owned(),
    };
    let lines = elsewhere.into_iter().chain(carried).chain(missing).chain(unseen).chain(lines);
    let lines = lines.chain(reasons(known)).collect();
    Card::new(title, headline, lines).with_form(job, &Part::Joists, &list::OF_JOISTS)
}

/// What carries the joists and nobody said a state of.
fn unseen(job: &Job) -> Vec<String> {
    looked_at(job).into_iter().filter(|(_, state)| state.is_none()).map(|(part, _)| part.name()).collect()
}

fn one_joist(job: &Job, judged: &Judged, units: Units) -> Card {
    let mut lines: Vec<_> = judged.reasons.iter().map(|it| Line::plain(format!("{}.", capital(&it.words)))).collect();
    let bays = judged.joist.found.iter().filter(|finding| IN_BAYS.contains(finding));
    lines.extend(bays.map(|finding| Line::plain(format!("{}: find it before anything is cut.", finding.label()))));
    if judged.reasons.is_empty() {
        lines.push(Line::plain(nothing_against(judged)));
    }
    if let (Some(range), Some(span)) = (judged.may_span, judged.joist.span()) {
        let what =
            if judged.joist.is_notched_at_end() { "but for the notch at its end it" } else { "what is left of it" };
        let words = format!("Spans {}; {what} may span {}", units.length(span), range.words(units));
        lines.push(Line::small(range.source.noted(&words)));
    }
    lines.extend(said_done(judged));
    lines.extend(damages(job, judged.joist.number, units));
    if judged.joist.reads >= Reads::Close {
        lines.push(Line::small(Source::WetService.noted("Worked out as wet")));
    }
    lines.extend(cited(judged.reasons.iter().map(|it| it.source)));
    let part = Part::Joist(judged.joist.number);
    Card::new(part.name(), capital(judged.fate.label()), lines).with_form(job, &part, &list::OF_JOIST)
}

/// What a joist stays by. Of what is not sawn nothing was worked out here.
fn nothing_against(judged: &Judged) -> &'static str {
    match judged.joist.member {
        Some(MemberType::Sawn) => "Measured, probed sound, read dry, graded: nothing speaks against it.",
        _ => {
            "Nothing was found against it: no damage, no cuts, dry by a meter made for lumber. That it carries its span is \
             its maker's or a designer's word, as it was said, and was not worked out here."
        }
    }
}

/// What was said to be done about it, and the first thing that it does not settle.
fn said_done(judged: &Judged) -> Option<Line> {
    let done: Vec<_> = judged.joist.done.iter().map(|(done, _)| done.label()).collect();
    let words = match judged.unsettled().next() {
        _ if done.is_empty() || judged.fate == Fate::Stays => return None,
        None => "that settles it".to_owned(),
        Some(left) => format!("that does not settle it: {}", left.words),
    };
    Some(Line::plain(format!("Said to be done: {}; {words}.", done.join(", "))))
}

/// Its soft spots, notches and holes, each as it was logged.
fn damages(job: &Job, number: JoistNumber, units: Units) -> Vec<Line> {
    let of = Part::Joist(number);
    let logged = job.now.damages().values().filter(|it| it.value.of == of);
    let mut lines: Vec<_> = logged.map(|it| Line::plain(format!("{}.", spot_words(it.value, units)))).collect();
    let where_to = "Soft spots, notches and holes are logged under Take, Look, one by one.";
    lines.push(Line::small(where_to));
    lines
}

/// Girders, piers and ledgers: as they are said to be, and one more of each to say.
fn carried_by(job: &Job) -> Card {
    let said = Particulars::of(job);
    let known = supports(job);
    let next = |number: fn(&Part) -> Option<u16>| {
        known.iter().filter_map(|part| number(part)).max().map_or(1, |last| last.saturating_add(1))
    };
    let one_more = [
        Part::Girder(next(|part| if let Part::Girder(number) = part { Some(*number) } else { None })),
        Part::Pier(next(|part| if let Part::Pier(number) = part { Some(*number) } else { None })),
        Part::Ledger(next(|part| if let Part::Ledger(number) = part { Some(*number) } else { None })),
    ];
    let beside = [Part::RimJoist, Part::Sill];
    let mut parts: Vec<_> = known.iter().copied().chain(&one_more).chain(&beside).collect();
    parts.sort_unstable();
    let bad = unsound(job);
    let mut lines: Vec<_> = bad.iter().map(|bad| Line::plain(format!("{}.", bad.words))).collect();
    let looked_at = looked_at(job);
    let is_bad = |part: &Part| bad.iter().any(|bad| bad.part == *part);
    let is_none_near = said.words(&Part::House, &list::GIRDER_NEAR) == Some("no");
    let plies_untold = if is_none_near { Vec::new() } else { plies_untold(job) };
    for (part, state) in looked_at.iter().filter(|(part, _)| !is_bad(part)) {
        let words = match (state, said.words(part, &list::DONE)) {
            (None, None) => "nobody said that it was looked at".to_owned(),
            (None, Some(done)) => format!("{done}; nobody said that it was looked at since"),
            (Some(SOUND), _) | (Some(_), None) if plies_untold.contains(part) => {
                "looked at, and sound; say where its plies end, or that it is one piece".to_owned()
            }
            (Some(SOUND), _) | (Some(_), None) => "looked at, and sound".to_owned(),
            (Some(state), Some(done)) => format!("{state}, and since then {done}"),
        };
        lines.push(Line::plain(format!("{}: {words}.", part.name())));
    }
    let has_girder = known.iter().any(|part| matches!(part, Part::Girder(_)));
    let is_spoken_of = has_girder || is_none_near;
    if !is_spoken_of {
        lines.push(Line::plain("Girders: nobody said that there is one, or that none is near."));
    }
    let is_untold = |part: &Part, state: Option<&str>| state.is_none() || plies_untold.contains(part);
    let untold = looked_at.iter().filter(|(part, state)| is_untold(part, *state) && !is_bad(part)).count();
    let headline = match untold {
        _ if !bad.is_empty() => "Have an engineer look",
        all if all == looked_at.len() && !has_girder => "Nothing said yet",
        0 if is_spoken_of => "Nothing speaks against them",
        _ => "Not all were looked at",
    };
    lines.extend(cited(bad.iter().map(|bad| bad.source)));
    lines.push(Line::small(Source::EngineerLooks.noted("They are flagged here and sized nowhere")));
    let mut card = Card::new("What carries the joists?", headline, lines);
    for part in parts {
        let items = if matches!(part, Part::Girder(_)) { &list::OF_GIRDER[..] } else { &list::OF_SUPPORT[..] };
        card.add_form(job, part, items, &format!("{}: ", part.name()));
    }
    card
}

/// What holds for the framing as a whole: stamps, loads, shoring, headers.
fn whole(job: &Job, units: Units) -> Card {
    let said = Particulars::of(job);
    let mut lines = Vec::new();
    let words = said.all_words(&Part::House, &list::SHORING);
    let shored = !words.is_empty() && words.iter().all(|words| *words == "yes");
    if !shored {
        lines.push(Line::next("Shore the floor on both sides before a joist is cut or taken out."));
    }
    let asks = headers(job, units);
    lines.extend(asks.iter().map(|ask| Line::plain(format!("{}.", ask.words))));
    if said.length(&Part::House, &list::HEADER_SPAN).is_some() {
        lines.push(Line::small("Headers are flagged here and designed nowhere."));
        lines.extend(cited(asks.into_iter().map(|ask| ask.source).chain([Source::FramedOpenings])));
    }
    lines.push(Line::small(Source::Shoring.noted("Before anything is cut")));
    let headline = if shored { "Shored" } else { "Not shored yet" };
    Card::new("Framing as a whole", headline, lines).with_form(job, &Part::House, &list::OF_FRAMING)
}

/// Do sheets so thick bridge the joists?
fn panel(job: &Job, units: Units) -> Card {
    let title = "Do the sheets bridge the joists?";
    let floor = Floor::of(job);
    let widest = floor.as_ref().and_then(Floor::widest_bay);
    let Some(widest) = widest else { return Card::missing(title, &[Need::Joists]) };
    let apart = units.length(widest);
    let is_one_bay = floor.and_then(|floor| floor.fewest_bays()) == Some(1);
    let small = vec![
        Line::small(Source::PlywoodBySpecies.noted("Without a stamp, by thickness and the weakest wood")),
        Line::small(Source::PanelSpans.noted("By the stamp")),
    ];
    let rated = job.span_rating().map(|rating| rating.spacing());
    let thickness = job.sheet_thickness();
    let by_thickness = thickness.and_then(|typed| spacing_by_thickness(typed.value));
    let (headline, line) = match (rated, by_thickness) {
        (Some(rated), _) if rated >= widest => {
            ("Yes, by their stamp", format!("Rated {}, joists {apart} apart at the widest.", units.length(rated)))
        }
        (Some(rated), _) => ("No", format!("Rated {}, joists {apart} apart.", units.length(rated))),
        (None, Some(Unrated { any_wood: Some(most), .. })) if most >= widest => (
            "As a rule",
            format!(
                "Plywood so thick goes to {} whatever its wood; joists are {apart} apart. Look for the stamp.",
                units.length(most)
            ),
        ),
        (None, Some(Unrated { if_rated, .. })) if if_rated >= widest => (
            "Not enough to say",
            format!(
                "Next: look for the stamp. Rated sheets so thick go to {}, unrated ones of weak wood not so far as \
                 {apart}.",
                units.length(if_rated)
            ),
        ),
        (None, Some(Unrated { if_rated, .. })) => {
            ("No", format!("Even rated, sheets so thick go to {}; joists are {apart} apart.", units.length(if_rated)))
        }
        (None, None) if thickness.is_some() => (
            "No, without a stamp",
            "Thinner than any rated single-floor sheet is. Of plywood only the strongest wood may go so far: ask its \
             maker."
                .to_owned(),
        ),
        (None, None) => ("Not enough to say", "Next: state the sheets' rating or thickness, under Job.".to_owned()),
    };
    // Over one bay nothing that is for two says that they do.
    let does = is_one_bay && !headline.starts_with("No");
    let headline = if does { "Not enough to say" } else { headline };
    let one_bay = is_one_bay.then(|| Line::plain(ONE_BAY));
    Card::new(title, headline, one_bay.into_iter().chain([Line::plain(line)]).chain(small).collect())
}
