//! Joist tops and what brings them to a plane.

use crate::draw::card::{Card, Line, reasons};
use crate::draw::lettering::Lettering;
use crate::draw::{Canvas, Drawing, Item, Reads, Role, Spot};
use crate::engine::figure::Figure;
use crate::engine::framing::Planing;
use crate::engine::job::Job;
use crate::engine::orders::shims::in_words;
use crate::engine::particular::{Part, list};
use crate::engine::place::JoistNumber;
use crate::engine::survey::flat::{APART, Edge, Flat, Held, IN_A_ROW, MOST_STATIONS, Tolerance};
use crate::engine::survey::level_plan::{LevelPlan, Plane, SIXTEENTH, Station, Takes, level_plan, levels_again};
use crate::engine::take::Units;
use crate::engine::units::Length;

pub(super) fn card(job: &Job, units: Units, canvas: Canvas) -> Card {
    let title = "How level are the joists?";
    let known = match level_plan(job, units) {
        Figure::Missing(needs) => {
            let mut card = Card::missing(title, &needs);
            card.lines.extend(
                levels_again(job, units).into_iter().map(|name| Line::plain(format!("{name}: read it again."))),
            );
            return card.with_form(job, &Part::House, &list::OF_LEVELS);
        }
        Figure::Known(known) => known,
    };
    let plan = &known.value;
    let mut lines = vec![Line::plain(match plan.plane {
        Plane::HighJoist => "Brought up to the high joist, level.".to_owned(),
        Plane::Mark(mark) => format!("Brought to {} below the beam, level.", units.length(mark)),
        Plane::BestFit => format!("Brought to the plane that fits best: it falls {} in a foot.", slope(plan.slope)),
    })];
    lines.extend(
        plan.stations.iter().map(|station| Line::plain(format!("{}: {}.", station.name, takes(station, units)))),
    );
    lines.push(Line::plain(totals(plan, units)));
    lines.extend(flatness(plan, units));
    lines.extend(reasons(&known));
    let mut card = Card::new(title, format!("{} out of level", units.length(plan.out_of_level)), lines);
    card.drawing = Some(drawing(plan, units, canvas));
    card.with_form(job, &Part::House, &list::OF_LEVELS)
}

/// In eighths, as a level is read: 0.4 eighths.
fn slope(fall: Length) -> String {
    format!("{:.2} eighths of an inch", fall.to_inches() * 8.0)
}

fn takes(station: &Station, units: Units) -> String {
    let shown = |length: Length| units.length(up(length));
    match station.takes {
        Takes::Shim(thick) => format!("shim {}", shown(thick)),
        Takes::Planing { off, no_longer } => {
            let no_longer = units.length(no_longer.down_to(SIXTEENTH));
            format!("plane off {}, over no more than {no_longer} along it", shown(off))
        }
        Takes::StaysAbove(by, why) => format!(
            "{} above it, and nothing is planed off: {}. Bring the others up to it with shims, or have an engineer look",
            shown(by),
            not_planed(why, units)
        ),
        Takes::Nothing => "nothing".to_owned(),
    }
}

fn not_planed(why: Planing, units: Units) -> String {
    match why {
        Planing::MiddleThird => "in the middle third of the span none is cut".to_owned(),
        Planing::TooDeep(most) => format!("there no more than {} is cut", units.length(most.down_to(SIXTEENTH))),
        Planing::NotWhole => "it is soft or cut already".to_owned(),
        Planing::NotSawn => "it is not sawn lumber, and is cut only as its maker or a designer allows".to_owned(),
        Planing::NotKnown(asks) => format!("nobody can tell what may be cut there: {asks}"),
        Planing::Allowed(_) => String::new(),
    }
}

/// Up to the next sixteenth.
fn up(length: Length) -> Length {
    length.up_to(SIXTEENTH)
}

fn totals(plan: &LevelPlan, units: Units) -> String {
    let planed = plan.deepest();
    let planing =
        if planed.is_positive() { format!("; planed {} at most", units.length(up(planed))) } else { String::new() };
    let flat = in_words(plan, units).map_or_else(String::new, |flat| format!("; flat shims: {flat}, and waste"));
    let (thickest, all) = (units.length(up(plan.thickest())), units.length(plan.shims()));
    format!("Shims: {thickest} at most, {all} in all{flat}{planing}.")
}

/// How flat they are by each tolerance; where none of them could be held, that.
fn flatness(plan: &LevelPlan, units: Units) -> Vec<Line> {
    let all = &plan.flatness;
    if plan.stations.len() > MOST_STATIONS {
        return vec![Line::plain("How flat they are could not be held: more stations were read than can be tried.")];
    }
    let mut lines: Vec<_> = match all.iter().all(|tolerance| tolerance.verdict() == Flat::NotHeld) {
        true => vec![Line::plain("How flat they are could not be held: no three stations lie in line.")],
        false => all.iter().map(|tolerance| Line::plain(flat(tolerance, units))).collect(),
    };
    if all.iter().any(|tolerance| matches!(tolerance.verdict(), Flat::AsFarAsRead | Flat::NotHeld)) {
        lines.push(Line::next(format!(
            "To tell it of the floor, read every joist from end to end, in rows straight across, no more than {} apart, or \
             half of the straightedge where that is less.",
            units.length(APART)
        )));
    }
    lines
}

fn flat(tolerance: &Tolerance, units: Units) -> String {
    let [limit, reach] = [tolerance.limit, tolerance.reach].map(|length| units.length(length));
    let of = format!("{limit} in {reach}");
    let covering = tolerance.covering;
    match tolerance.verdict() {
        Flat::No(gap) => {
            format!("For {covering}: not flat enough, {} of {of} as the joists stand.", over(gap, tolerance, units))
        }
        Flat::Yes(gap) => format!("For {covering}: flat enough, {} of {of} as the joists stand.", units.length(gap)),
        Flat::AsFarAsRead => {
            let [across, along] = [(&tolerance.across, "across the joists"), (&tolerance.along, "along the joists")]
                .map(|(held, way)| as_far(held, way, units));
            format!("For {covering}, {of}: not told of the floor; {across}; {along}.")
        }
        Flat::NotHeld => format!("For {covering}, {of}: could not be held, no three stations lie in line under it."),
    }
}

/// A gap over its limit, never shown as the limit.
fn over(gap: Length, tolerance: &Tolerance, units: Units) -> String {
    let [shown, limit] = [gap, tolerance.limit].map(|length| units.length(length));
    if shown.trim_start_matches('~') == limit { format!("more than {limit}") } else { shown }
}

fn as_far(held: &Held, way: &str, units: Units) -> String {
    match held {
        Held::CouldNotBe => format!("it could not be held {way}"),
        Held::So(Edge { gap, long, joists }) => {
            let [gap, long] = [gap, long].map(|length| units.length(*length));
            format!("{way} {gap} as far as read, {long}, {}", named(joists))
        }
    }
}

/// "joist 2", "joists 2 to 4, 6".
fn named(joists: &[JoistNumber]) -> String {
    let runs = joists.chunk_by(|one, next| next.get() - one.get() == 1);
    let runs: Vec<_> = runs
        .map(|run| match run {
            [first, .., last] => format!("{} to {}", first.get(), last.get()),
            _ => run.iter().map(|one| one.get().to_string()).collect(),
        })
        .collect();
    format!("{} {}", if joists.len() == 1 { "joist" } else { "joists" }, runs.join(", "))
}

/// A line of stations after the other, drawn much steeper than they are.
fn drawing(plan: &LevelPlan, units: Units, canvas: Canvas) -> Drawing {
    let mut placed: Vec<_> = plan.stations.iter().filter_map(|station| Some((station.at?, station))).collect();
    placed.sort_by_key(|((across, along), _)| (*along, *across));
    let rows = placed.chunk_by(|a, b| b.0.1 - a.0.1 <= IN_A_ROW);
    let mut rows: Vec<Vec<_>> = rows.map(|row| row.iter().map(|(_, station)| *station).collect()).collect();
    rows.iter_mut().for_each(|row| row.sort_by_key(|station| station.at));
    let lettering = Lettering::on(canvas);
    let height = (9.0 * lettering.size).max(90.0);
    let canvas = Canvas { height_px: (height * rows.len().max(1) as f64) as u32, ..canvas };
    let most = plan.stations.iter().map(|station| station.to_plane.abs()).max().unwrap_or(Length::ZERO);
    let most = most.to_inches().max(1.0 / 16.0);
    let bounds = Bounds::of(&placed.iter().map(|((across, _), _)| *across).collect::<Vec<_>>(), canvas, lettering);
    let items = (0..).zip(&rows).flat_map(|(number, row)| {
        let middle = height * (f64::from(number) + 0.55);
        one_row(row, &bounds, middle, 1.8 * lettering.size / most, lettering, units)
    });
    Drawing {
        canvas,
        title: "Joist tops against their plane, much steeper than they are".to_owned(),
        items: items.collect(),
        frame: None,
        unplaced: Vec::new(),
    }
}

/// Where distances across the joists lie on the canvas.
struct Bounds {
    from: f64,
    left: f64,
    scale: f64,
    width: f64,
}

impl Bounds {
    fn of(across: &[Length], canvas: Canvas, lettering: Lettering) -> Self {
        let (least, most) = (across.iter().min(), across.iter().max());
        let (least, most) = (least.map_or(0.0, |it| it.to_inches()), most.map_or(1.0, |it| it.to_inches()));
        let (left, width) = (2.5 * lettering.size, f64::from(canvas.width_px));
        Self { from: least, left, scale: (width - 2.0 * left) / (most - least).max(1.0), width }
    }

    fn x(&self, across: Length) -> f64 {
        self.left + (across.to_inches() - self.from) * self.scale
    }
}

fn one_row(
    row: &[&Station],
    bounds: &Bounds,
    middle: f64,
    steep: f64,
    lettering: Lettering,
    units: Units,
) -> Vec<Item> {
    let at = |x: f64, y: f64| Spot { x, y };
    let plane = Item::Line { from: at(4.0, middle), to: at(bounds.width - 4.0, middle), role: Role::Cut };
    let tops: Vec<_> = row
        .iter()
        .filter_map(|station| Some(at(bounds.x(station.at?.0), middle + station.to_plane.to_inches() * steep)))
        .collect();
    let mut items = vec![plane, Item::Path { spots: tops.clone(), closed: false, role: Role::WallOpen }];
    for (number, (station, top)) in row.iter().zip(&tops).enumerate() {
        items.push(Item::Line { from: at(top.x, middle), to: *top, role: Role::Dimension });
        // Neighbours' figures stand in two rows, so that none covers another.
        let lift = if number.is_multiple_of(2) { 2.4 } else { 3.8 };
        let sign = if station.to_plane < Length::ZERO { "−" } else { "" };
        let figure = format!("{sign}{}", units.length(up(station.to_plane.abs())));
        let spot = at(top.x, middle - lift * lettering.size);
        items.push(lettering.write(&figure, spot, Reads::Across, Role::DimensionText));
        let below = at(top.x, middle + 3.2 * lettering.size);
        let joist = station.joist.map(|joist| joist.get().to_string());
        items.extend(joist.map(|joist| lettering.write(&joist, below, Reads::Across, Role::JoistNumber)));
    }
    items
}
