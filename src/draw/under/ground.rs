//! The ground's cover, the air over it, wood to soil, holes, and the roof's water.

use crate::draw::card::{Card, Line, cited, reasons};
use crate::engine::cautions::{self, Caution};
use crate::engine::describe::counted;
use crate::engine::figure::Figure;
use crate::engine::ground::checks::{Check, checks, unvented_checks};
use crate::engine::ground::plan::{
    AirWay, Covered, cover_for, has_vents_near_corners, too_few_vents, unvented_for, vents_for, wants_cover,
};
use crate::engine::ground::rain::{led_away, rain};
use crate::engine::job::Job;
use crate::engine::particular::{Part, Particulars, list};
use crate::engine::sources::Source;
use crate::engine::survey::Floor;
use crate::engine::take::Units;

/// All cards of ground, air and roof.
pub(super) fn cards(job: &Job, units: Units) -> Vec<Card> {
    let group = Some("Ground, air and roof water");
    let mut cards = vec![
        Card { group, ..cover(job, units).with_form(job, &Part::House, &list::OF_COVER) },
        air(job, units).with_form(job, &Part::House, &list::OF_AIR),
        held_to_rules("Wood, soil and the way in", &checks(job, units)).with_form(
            job,
            &Part::House,
            &list::OF_CLEARANCE,
        ),
    ];
    cards.extend(holes(job));
    cards.push(roof(job, units).with_form(job, &Part::House, &list::OF_ROOF));
    cards
}

fn cover(job: &Job, units: Units) -> Card {
    let title = "The ground's cover";
    let known = match cover_for(job, units) {
        Figure::Missing(needs) => return Card::missing(title, &needs),
        Figure::Known(known) => known,
    };
    let cover = known.value;
    let rolls = counted(cover.rolls as usize, "roll");
    let headline = match Covered::of(job) {
        _ if wants_cover(job) => rolls,
        Covered::NotSaid => format!("Nobody said that it is to be covered; it would take {rolls}"),
        Covered::No | Covered::Yes => format!("None asked for; it would take {rolls}"),
    };
    let lines = vec![
        Line::plain(format!("{} strips of {}, each in one piece.", cover.strips, units.length(cover.strip))),
        Line::plain(format!("{} of tape on the laps, {} of seal.", units.length(cover.tape), units.length(cover.seal))),
    ];
    Card::new(title, headline, lines.into_iter().chain(reasons(&known)).collect())
}

fn air(job: &Job, units: Units) -> Card {
    let title = "Air under the house";
    if AirWay::of(job) == AirWay::Vents {
        let mut known = match vents_for(job) {
            Figure::Missing(needs) => return Card::missing(title, &needs),
            Figure::Known(known) => known,
        };
        let too_few = too_few_vents(job);
        // Said aloud above, and not once more in small letters.
        known.doubts.retain(|doubt| too_few.as_ref() != Some(doubt));
        let vents = known.value;
        let net = vents.net_free.to_square_feet() * 144.0;
        let lines = vec![
            Line::plain(format!("{net:.0} sq in of net free area: {} vents by their label.", vents.by_area)),
            Line::plain(match has_vents_near_corners(job) {
                false => "Spread along the walls, across from each other.",
                true => "One within 3 ft of each corner, others spread between, across from each other.",
            }),
        ];
        let lines = too_few.into_iter().map(Line::next).chain(lines).chain(over_a_cover(job)).chain(reasons(&known));
        let lines = lines.collect();
        return Card::new(title, counted(vents.with_corners as usize, "vent"), lines);
    }
    let known = match unvented_for(job) {
        Figure::Missing(needs) => return Card::missing(title, &needs),
        Figure::Known(known) => known,
    };
    let unvented = known.value;
    let (cfm, pints) = (libm::ceil(unvented.cfm), libm::ceil(unvented.pints_a_day));
    let headline = match AirWay::each_chosen(job).as_slice() {
        [AirWay::Exhaust] => format!("Exhaust of {cfm:.0} cfm, day and night"),
        [AirWay::Supply] => format!("{cfm:.0} cfm of the house's air, and a way back"),
        [AirWay::Dehumidifier] => format!("A dehumidifier of {pints:.0} pints a day"),
        [AirWay::Vents] | [] => "Choose how it gets its air".to_owned(),
        [_, _, ..] => "Two phones chose differently: choose again how it gets its air".to_owned(),
    };
    let mut lines = Vec::new();
    if AirWay::chosen(job).is_none() {
        lines
            .push(Line::plain(format!("A fan or a supply takes {cfm:.0} cfm, a dehumidifier {pints:.0} pints a day.")));
    }
    if AirWay::of(job) != AirWay::Dehumidifier {
        lines.push(Line::plain(format!("{cfm:.0} cfm change the air {:.2} times an hour.", unvented.changes_an_hour)));
    }
    let asked = unvented_checks(job, units);
    lines.extend(asked.iter().map(line));
    if AirWay::of(job) == AirWay::Exhaust {
        lines.extend(cautions::OF_EXHAUST.iter().filter_map(|name| cautions::named(name)).map(caution));
    }
    lines.extend(reasons(&known));
    lines.extend(cited(asked.iter().map(|check| check.source)));
    Card::new(title, headline, lines)
}

fn caution(caution: &Caution) -> Line {
    Line::next(format!("{}. {}", caution.title, caution.words))
}

/// What a cover spares, where it is asked for and not counted yet.
fn over_a_cover(job: &Job) -> Option<Line> {
    let ratio = Particulars::of(job).all_words(&Part::House, &list::VENT_RATIO);
    let does = Covered::of(job) == Covered::Yes && !ratio.contains(&"1/1500 over a cover");
    does.then(|| Line::plain("Over a cover, with air going across, 1/1500 may do: ask before fewer are built."))
}

/// Each check in its words, what fails first.
fn held_to_rules(title: &str, checks: &[Check]) -> Card {
    let mut sorted: Vec<_> = checks.iter().collect();
    sorted.sort_by_key(|check| match check.holds {
        Some(false) => 0,
        None => 1,
        Some(true) => 2,
    });
    let failing = checks.iter().filter(|check| check.holds == Some(false)).count();
    let open = checks.iter().filter(|check| check.holds.is_none()).count();
    let headline = match (failing, open) {
        (0, 0) => "All as the rules ask".to_owned(),
        (0, _) => "Not all measured".to_owned(),
        (some, _) => format!("{some} not as the rules ask"),
    };
    let lines = sorted.into_iter().map(line).chain(small(checks)).collect();
    Card::new(title, headline, lines)
}

fn line(check: &Check) -> Line {
    let word = match check.holds {
        Some(true) => "holds",
        Some(false) => "does not hold",
        None => "open",
    };
    let text = format!("{}, {word}: {}.", check.what, check.says);
    if check.holds == Some(true) { Line::plain(text) } else { Line::next(text) }
}

fn small(checks: &[Check]) -> impl Iterator<Item = Line> {
    cited(checks.iter().map(|check| check.source)).chain([Line::small("Your local code decides.")])
}

/// Every opening is a hole until it is closed.
fn holes(job: &Job) -> Option<Card> {
    let floor = Floor::of(job)?;
    let count = if floor.whole.is_some() { 1 } else { floor.openings.len() };
    let lines = vec![
        Line::next(
            "A cover over each opening, fastened, marked HOLE, or a rail around it, whenever nobody works at it.",
        ),
        Line::plain("A cover carries twice what may come onto it. A gap of 2 in is a hole already."),
        Line::small(Source::HoleCovers.noted("What is a hole, and that it is covered or railed off at any height")),
        Line::small(Source::HoleMarking.noted("What a cover bears, and how it is held and marked")),
    ];
    let headline = format!("{count} to cover");
    (count > 0).then(|| Card::new("Holes in the floor", headline, lines))
}

fn roof(job: &Job, units: Units) -> Card {
    let title = "The roof's water";
    let led_away = led_away(job, units);
    let known = match rain(job, units) {
        Figure::Missing(needs) => {
            let mut card = Card::missing(title, &needs);
            card.lines.extend(led_away.iter().map(line).chain(small(&led_away)));
            return card;
        }
        Figure::Known(known) => known,
    };
    let rain = &known.value;
    let runoff = &rain.runoff;
    let mut lines = vec![Line::plain(format!("{:.1} gallons a minute in the hardest rain.", runoff.peak))];
    lines.push(match rain.gutter {
        Some(gutter) if rain.takes => {
            Line::plain(format!("Gutter, {gutter}: it takes the water, falling 1/16 to 1/8 in a foot."))
        }
        Some(gutter) => Line::next(format!(
            "Gutter, {gutter}: it does not take the water. A larger one, or one more downspout run."
        )),
        None => Line::next("No gutter that is listed takes it: part the roof, or state the gutter's own table."),
    });
    lines
        .push(Line::plain(format!("Downspouts: {}, {:.1} sq in in all.", runoff.downspouts, runoff.downspout_section)));
    if Particulars::of(job).get(&Part::House, &list::PITCH).is_none() {
        lines.push(Line::next("Say the roof's pitch: until then it is taken for the steepest."));
    }
    lines.extend(led_away.iter().map(line));
    lines.extend(reasons(&known));
    lines.extend(small(&led_away));
    lines.push(Line::small(Source::GutterFall.noted("Fall")));
    Card::new(title, format!("{:.0} gallons for each inch of rain", runoff.gallons_an_inch), lines)
}
