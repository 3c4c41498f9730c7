//! Cases of framing, levels, ground, walks and what laying takes.

use crate::case::{Case, Got};
use duckboard::engine::framing::{DesignValues, Edition, Grade, Loads, LumberGroup, Section, Service, span};
use duckboard::engine::ground::{Roll, cover, runoff, unvented, vents};
use duckboard::engine::sheets::take_off::{adhesive, fasteners};
use duckboard::engine::survey::levels::{flatness as flatness_of, shims};
use duckboard::engine::survey::traverse::{Leg, Traverse, out_of_square};
use duckboard::engine::units::{Area, Length};
use serde_json::{Value, json};

/// What a case comes to; none if its kind is not known here.
pub fn work_out(case: &Case) -> Option<Result<Got, String>> {
    let work = match case.kind.as_str() {
        "vent_nfa" => vent_area,
        "unvented_air" => unvented_air,
        "joist_span" | "joist_span_wet" => joist_span,
        "traverse_bowditch" => traverse,
        "room_closure" => room_closure,
        "squareness" => squareness,
        "shim_from_laser" => shims_from_laser,
        "flatness" => flatness,
        "adhesive" => bead,
        "fasteners_per_sheet" => fasteners_a_sheet,
        "poly" => ground_cover,
        "roof_runoff" => roof_runoff,
        "notch_and_residual" => notch_and_rest,
        _ => return None,
    };
    Some(work(case))
}

fn vent_area(case: &Case) -> Result<Got, String> {
    let ratio = case.word("ratio")?;
    let one_in = ratio.strip_prefix("1/").and_then(|of| of.parse().ok()).ok_or("ratio is no 1/N")?;
    let each = Area::from_square_inches(case.number("vent_nfva_in2")?);
    let vents = vents(square_feet(case.number("crawl_area_ft2")?), one_in, each, case.number("corners")? as u32).value;
    Ok(got(json!({
        "required_ft2": vents.net_free.to_square_feet(),
        "required_in2": vents.net_free.to_square_feet() * 144.0,
        "vents_by_area": vents.by_area,
        "vents_after_corner_rule": vents.with_corners,
    })))
}

fn unvented_air(case: &Case) -> Result<Got, String> {
    let air = unvented(square_feet(case.number("crawl_area_ft2")?), feet(case.number("height_ft")?)).value;
    Ok(got(json!({
        "exhaust_cfm": air.cfm,
        "supply_cfm": air.cfm,
        "dehumidifier_pints_per_day": air.pints_a_day,
        "air_changes_per_hour": air.changes_an_hour,
    })))
}

fn joist_span(case: &Case) -> Result<Got, String> {
    let name = case.word("species")?;
    let group = LumberGroup::ALL.into_iter().find(|group| alike(group.label(), name));
    let group = group.ok_or_else(|| format!("species {name} is not known"))?;
    let name = case.word("grade")?;
    let grade = Grade::ALL.into_iter().find(|grade| grade.label() == name);
    let grade = grade.ok_or_else(|| format!("grade {name} is not known"))?;
    let section = by_name(case.word("size")?)?;
    let values = DesignValues::of(group, grade, section.depth, Edition::Since2013).ok_or("no design values")?;
    let flag = |name: &str| case.input.get(name).and_then(Value::as_bool).unwrap_or(false);
    let service = Service { is_wet: flag("moisture_over_19pct"), is_incised: flag("incised") };
    let loads = Loads { live: case.number("live_psf")?, dead: case.number("dead_psf")? };
    let spans = span(section, values, inches(case.number("spacing_in")?), loads, service).value;
    let allowed = spans.allowed().to_inches();
    let whole = allowed.round() as i64;
    Ok(got(json!({
        "span_in": allowed,
        "span_ftin": format!("{}-{}", whole / 12, whole % 12),
        "governs": spans.governs().label(),
        "bending_in": spans.bending.to_inches(),
        "deflection_in": spans.deflection.to_inches(),
        "shear_in": spans.shear.to_inches(),
    })))
}

fn traverse(case: &Case) -> Result<Got, String> {
    let (lat, dep, length) = (case.numbers("lat")?, case.numbers("dep")?, case.numbers("length")?);
    let legs = lat.iter().zip(&dep).zip(&length);
    let legs: Vec<_> = legs
        .map(|((north, east), length)| Leg { north: feet(*north), east: feet(*east), length: feet(*length) })
        .collect();
    let walk = Traverse::of(&legs).ok_or("no legs")?.value;
    Ok(got(json!({
        "sum_lat": walk.north.to_feet(),
        "sum_dep": walk.east.to_feet(),
        "perimeter": walk.perimeter.to_feet(),
        "misclosure": walk.misclosure().to_feet(),
        "ratio_1_in": walk.one_in(),
        "adj_lat": walk.balanced.iter().map(|leg| leg.0.to_feet()).collect::<Vec<_>>(),
        "adj_dep": walk.balanced.iter().map(|leg| leg.1.to_feet()).collect::<Vec<_>>(),
        "area": walk.area().to_square_feet(),
    })))
}

/// Sides in turn to the north, east, south and west.
fn room_closure(case: &Case) -> Result<Got, String> {
    let ways = [(1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0)];
    let sides = case.numbers("sides_in")?;
    let leg = |(side, (north, east)): (&f64, &(f64, f64))| Leg {
        north: inches(side * north),
        east: inches(side * east),
        length: inches(*side),
    };
    let legs: Vec<_> = sides.iter().zip(ways.iter().cycle()).map(leg).collect();
    let walk = Traverse::of(&legs).ok_or("no sides")?.value;
    // As the case has them: to the east, then to the north.
    let corners = walk.corners();
    let corners: Vec<_> = corners.iter().map(|(north, east)| [east.to_inches(), north.to_inches()]).collect();
    Ok(got(json!({
        "sum_north": walk.north.to_inches(),
        "sum_east": walk.east.to_inches(),
        "misclosure_in": walk.misclosure().to_inches(),
        "ratio_1_in": walk.one_in(),
        "adjusted_corners_in": corners,
        "area_ft2": walk.area().to_square_feet(),
    })))
}

fn squareness(case: &Case) -> Result<Got, String> {
    let (length, width) = (inches(case.number("length_in")?), inches(case.number("width_in")?));
    let diagonals = [inches(case.number("diag1_in")?), inches(case.number("diag2_in")?)];
    let (angle, over) = out_of_square(length, width, diagonals);
    Ok(got(json!({
        "true_diag_in": length.hypot(width).to_inches(),
        "diag_difference_in": (diagonals[0] - diagonals[1]).abs().to_inches(),
        "angle_error_deg": angle.to_degrees(),
        "out_of_square_over_short_side_in": over.to_inches(),
    })))
}

fn shims_from_laser(case: &Case) -> Result<Got, String> {
    let down: Vec<_> = case.numbers("rod_reading_down_from_beam_in")?.into_iter().map(inches).collect();
    let shims = shims(&down).ok_or("no readings")?.value;
    let each: Vec<_> = shims.each.into_iter().map(Length::to_inches).collect();
    Ok(got(json!({ "high_joist_index": shims.highest, "shim_in": each })))
}

fn flatness(case: &Case) -> Result<Got, String> {
    let heights: Vec<_> = case.numbers("heights_in")?.into_iter().map(inches).collect();
    let apart = inches(case.number("spacing_in")?);
    let mut said = Got::new();
    let mut passes = Vec::new();
    for limit in case.rows("limits")? {
        let [reach, most] = limit.as_slice() else { return Err("a limit is a length and a gap".to_owned()) };
        let flat = flatness_of(&heights, apart, inches(*reach), inches(*most)).value;
        said.insert(format!("max_gap_within_{reach}in"), json!(flat.gap.to_inches()));
        passes.push(flat.holds);
    }
    said.insert("passes".to_owned(), json!(passes));
    Ok(said)
}

fn bead(case: &Case) -> Result<Got, String> {
    let tube = adhesive::Tube { fluid_ounces: case.number("tube_fl_oz")?, bead: inches(case.number("bead_dia_in")?) };
    Ok(got(json!({
        "tube_in3": tube.cubic_inches(),
        "yield_ft": tube.covers().to_feet(),
        "tubes": tube.needed_for(feet(case.number("bead_length_ft")?)),
    })))
}

fn fasteners_a_sheet(case: &Case) -> Result<Got, String> {
    let sheet = case.numbers("sheet_in")?;
    let [length, width] = sheet.as_slice() else { return Err("sheet_in is a length and a width".to_owned()) };
    let line = fasteners::Spacing {
        edge: inches(case.number("edge_spacing_in")?),
        field: inches(case.number("field_spacing_in")?),
        from_edges: inches(case.number("edge_distance_in")?),
    };
    let lines = (length / case.number("joist_spacing_in")?).floor() as usize + 1;
    let (end, inner) = (line.on_an_end(inches(*width)), line.on_a_joist(inches(*width)));
    Ok(got(json!({
        "joist_lines": lines,
        "per_end_line": end,
        "per_intermediate_line": inner,
        "total": 2 * end + (lines.saturating_sub(2)) * inner,
    })))
}

fn ground_cover(case: &Case) -> Result<Got, String> {
    let crawl = case.numbers("crawl_ft")?;
    let [along, across] = crawl.as_slice() else { return Err("crawl_ft is a length and a width".to_owned()) };
    let roll = Roll {
        width: feet(case.number("roll_width_ft")?),
        length: feet(case.number("roll_len_ft")?),
        lap: inches(case.number("lap_in")?),
        up: inches(case.number("up_wall_in")?),
    };
    let cover = cover(feet(*along), feet(*across), roll).ok_or("a roll shorter than a strip")?.value;
    Ok(got(json!({
        "strips": cover.strips,
        "strip_len_ft": cover.strip.to_feet(),
        "total_lin_ft": cover.in_all.to_feet(),
        "strips_per_roll": cover.strips_a_roll,
        "rolls": cover.rolls,
        "seam_tape_ft": cover.tape.to_feet(),
        "perimeter_seal_ft": cover.seal.to_feet(),
    })))
}

fn roof_runoff(case: &Case) -> Result<Got, String> {
    let plan = square_feet(case.number("plan_area_ft2")?);
    let (pitch, intensity) = (case.number("pitch_factor")?, case.number("intensity_in_per_h")?);
    let water = runoff(plan, pitch, intensity, case.number("downspout_area_in2")?).value;
    Ok(got(json!({
        "gal_per_inch": water.gallons_an_inch,
        "effective_ft2": water.effective.to_square_feet(),
        "peak_gpm": water.peak,
        "adjusted_ft2_at_1in_per_h": water.at_an_inch.to_square_feet(),
        "downspout_in2": water.downspout_section,
        "downspouts": water.downspouts,
    })))
}

fn notch_and_rest(case: &Case) -> Result<Got, String> {
    let whole = Section { breadth: inches(case.number("b_in")?), depth: inches(case.number("d_in")?) };
    let lost = case.number("decay_loss_top_edge_in").map_or(Length::ZERO, inches);
    let left = whole.without_edge(lost).ok_or("nothing is left")?;
    let limits = whole.cut_limits().value;
    Ok(got(json!({
        "max_notch_depth_outer_third_in": limits.notch.to_inches(),
        "max_notch_depth_end_in": limits.notch_at_end.to_inches(),
        "max_notch_length_in": limits.notch_length.to_inches(),
        "max_hole_dia_in": limits.hole.to_inches(),
        "min_edge_dist_in": limits.from_edges.to_inches(),
        "max_hole_by_edge_rule_in": limits.hole_between_edges.to_inches(),
        "S_in3": left.modulus(),
        "I_in4": left.inertia(),
        "S_ratio": left.modulus() / whole.modulus(),
        "I_ratio": left.inertia() / whole.inertia(),
    })))
}

fn got(value: Value) -> Got {
    if let Value::Object(got) = value { got } else { Got::new() }
}

fn inches(inches: f64) -> Length {
    Length::from_inches(inches)
}

fn feet(feet: f64) -> Length {
    Length::from_inches(feet * 12.0)
}

fn square_feet(feet: f64) -> Area {
    Area::from_square_inches(feet * 144.0)
}

fn alike(one: &str, other: &str) -> bool {
    let letters = |text: &str| text.chars().filter(char::is_ascii_alphabetic).collect::<String>().to_ascii_lowercase();
    letters(one) == letters(other)
}

/// Lumber by its name, as it measures.
fn by_name(name: &str) -> Result<Section, String> {
    let depth = match name {
        "2x4" => 3.5,
        "2x6" => 5.5,
        "2x8" => 7.25,
        "2x10" => 9.25,
        "2x12" => 11.25,
        _ => return Err(format!("size {name} is not known")),
    };
    Ok(Section { breadth: inches(1.5), depth: inches(depth) })
}
