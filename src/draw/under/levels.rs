//! Joist tops and what brings them to a plane.

use crate::draw::card::{Card, Line, reasons};
use crate::draw::lettering::Lettering;
use crate::draw::{Canvas, Drawing, Item, Reads, Role, Spot};
use crate::engine::figure::Figure;
use crate::engine::job::Job;
use crate::engine::orders::shims::in_words;
use crate::engine::particular::{Part, list};
use crate::engine::survey::level_plan::{LevelPlan, Plane, Station, Tolerance, level_plan};
use crate::engine::take::Units;
use crate::engine::units::Length;

/// Shims are cut to sixteenths, and rounded up.
const SIXTEENTH: Length = Length::sixty_fourths(4);

pub(super) fn card(job: &Job, units: Units, canvas: Canvas) -> Card {
    let title = "How level are the joists?";
    let known = match level_plan(job, units) {
        Figure::Missing(needs) => {
            return Card::missing(title, &needs).with_form(job, &Part::House, &list::OF_LEVELS);
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
    lines.extend(plan.flatness.iter().map(|tolerance| Line::plain(flat(tolerance, units))));
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
    match () {
        () if station.to_plane.is_positive() => format!("shim {}", units.length(up(station.to_plane))),
        () if (-station.to_plane).is_positive() => format!("plane off {}", units.length(up(-station.to_plane))),
        () => "nothing".to_owned(),
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

fn flat(tolerance: &Tolerance, units: Units) -> String {
    let [limit, reach] = [tolerance.limit, tolerance.reach].map(|length| units.length(length));
    let of = format!("{limit} in {reach}");
    match (tolerance.gap, tolerance.holds()) {
        (Some(gap), Some(holds)) => {
            let holds = if holds { "flat enough" } else { "not flat enough" };
            format!("For {}: {holds}, {} of {of} as the joists stand.", tolerance.covering, units.length(gap))
        }
        _ => format!("For {}, {of}: stations stand too far apart to tell.", tolerance.covering),
    }
}

/// A line of stations after the other, drawn much steeper than they are.
fn drawing(plan: &LevelPlan, units: Units, canvas: Canvas) -> Drawing {
    let mut placed: Vec<_> = plan.stations.iter().filter_map(|station| Some((station.at?, station))).collect();
    placed.sort_by_key(|((across, along), _)| (*along, *across));
    let rows = placed.chunk_by(|a, b| a.0.1 == b.0.1);
    let rows: Vec<Vec<_>> = rows.map(|row| row.iter().map(|(_, station)| *station).collect()).collect();
    let lettering = Lettering::on(canvas);
    let height = (9.0 * lettering.size).max(90.0);
    let canvas = Canvas { height_px: (height * rows.len().max(1) as f64) as u32, ..canvas };
    let most = plan.thickest().max(plan.deepest()).to_inches().max(1.0 / 16.0);
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
