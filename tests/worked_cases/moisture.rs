//! Cases of wood, air, mold and drying.

use crate::case::{Case, Got, number_in};
use duckboard::engine::air::dehumidifier::pints_a_day;
use duckboard::engine::air::mould::{Climate, Sensitivity};
use duckboard::engine::air::{Air, HumidityRatio, Pressure, dew_point, emc, venting};
use duckboard::engine::drying::fit;
use duckboard::engine::moisture::chart::{SET_FOR, at_reference};
use duckboard::engine::moisture::resistance::{douglas_fir_by_fit, from_scale, moisture_at};
use duckboard::engine::moisture::{FlooringGate, Resistance, Species};
use duckboard::engine::units::{Area, Length, MoistureContent, RelativeHumidity, Temperature};
use serde_json::{Map, Value, json};

/// What a case comes to; none if its kind is not known here.
pub fn work_out(case: &Case) -> Option<Result<Got, String>> {
    let work = match case.kind.as_str() {
        "emc" => equilibrium,
        "psychro" => psychrometrics,
        "vent_decision" => vent_decision,
        "mould_days" => mould_days,
        "drying_fit" => drying_fit,
        "pin_temp" => pin_temperature,
        "resistance_to_mc" => resistance_to_moisture,
        "flooring_gate" => flooring_gate,
        "dehumidifier" => dehumidifier,
        _ => return None,
    };
    Some(work(case))
}

fn equilibrium(case: &Case) -> Result<Got, String> {
    let Air { temperature, humidity } = air(&case.input)?;
    Ok(got(json!({ "emc_pct": emc(temperature, humidity).value.to_percent() })))
}

fn psychrometrics(case: &Case) -> Result<Got, String> {
    let air = air(&case.input)?;
    let pressure = Pressure::from_psi_f64(case.number("pressure_psi")?);
    Ok(got(json!({
        "dew_point_f": dew_point(air).value.to_fahrenheit(),
        "grains_per_lb": HumidityRatio::of(air, pressure).to_grains_per_pound(),
    })))
}

fn vent_decision(case: &Case) -> Result<Got, String> {
    let (outside, crawl) = (air(case.part("outside")?)?, air(case.part("crawl")?)?);
    let joist = fahrenheit(case.number("joist_surface_f")?)?;
    let figure = venting(Some(outside), Some(crawl), Some(joist), None);
    let venting = figure.value().ok_or("no answer")?;
    Ok(got(json!({
        "outside_gr_lb": venting.outside.to_grains_per_pound(),
        "crawl_gr_lb": venting.crawl.to_grains_per_pound(),
        "outside_dew_point_f": venting.outside_dew_point.to_fahrenheit(),
        "venting_removes_vapour": venting.removes_vapour(),
        "outside_air_condenses_on_joist": venting.at_surface.is_some_and(|surface| surface.condenses),
    })))
}

fn mould_days(case: &Case) -> Result<Got, String> {
    let sensitivity = match case.word("class")? {
        "vs" => Sensitivity::Very,
        "s" => Sensitivity::Sensitive,
        "mr" => Sensitivity::Medium,
        "r" => Sensitivity::Resistant,
        other => return Err(format!("class {other} is none of vs, s, mr, r")),
    };
    let temperature = Temperature::from_celsius_f64(case.number("temp_c")?);
    let humidity = RelativeHumidity::from_percent_f64(case.number("rh")?);
    let climate = Climate::new(temperature, humidity, sensitivity);
    Ok(got(json!({ "days": climate.days_to(case.number("target_index")?), "m_max": climate.highest() })))
}

fn drying_fit(case: &Case) -> Result<Got, String> {
    let pair = |row: Vec<f64>| match row.as_slice() {
        [day, moisture] => Ok((*day, MoistureContent::from_percent_f64(*moisture))),
        _ => Err("a reading is a day and a moisture content".to_owned()),
    };
    let readings = case.rows("readings")?.into_iter().map(pair).collect::<Result<Vec<_>, _>>()?;
    let drying = fit(moisture(case, "emc_pct")?, &readings).ok();
    let target = moisture(case, "target_pct")?;
    let days = drying.and_then(|drying| drying.days_to(target));
    Ok(got(json!({
        "reachable": days.is_some(),
        "k_per_day": drying.map(|drying| drying.a_day()),
        "days_from_first_reading": days,
    })))
}

fn pin_temperature(case: &Case) -> Result<Got, String> {
    let shown = at_reference(moisture(case, "reading_pct")?, fahrenheit(case.number("wood_temp_f")?)?, SET_FOR);
    let of_wood = from_scale(shown, Species::DouglasFir, species(case.word("species")?)?);
    Ok(got(json!({ "mc_pct": of_wood.map(MoistureContent::to_percent) })))
}

fn resistance_to_moisture(case: &Case) -> Result<Got, String> {
    let (species, resistance) = (species(case.word("species")?)?, Resistance::from_megohms_f64(case.number("megohm")?));
    if case.number("temp_f").is_ok_and(|temperature| (temperature - 80.0).abs() > 0.01) {
        return Err("temp_f is not 80, and the table is for that alone".to_owned());
    }
    let by_fit = (species == Species::DouglasFir).then(|| douglas_fir_by_fit(resistance).value.to_percent());
    Ok(got(json!({
        "mc_pct_fit": by_fit,
        "mc_pct_row": moisture_at(species, resistance).map(MoistureContent::to_percent),
    })))
}

fn flooring_gate(case: &Case) -> Result<Got, String> {
    let board = Length::from_inches(case.number("board_width_in")?);
    let gate = FlooringGate::of(moisture(case, "subfloor_pct")?, moisture(case, "flooring_pct")?, board);
    Ok(got(json!({
        "limit_diff_pct": gate.most_apart.to_percent(),
        "subfloor_ok": gate.is_dry,
        "difference_ok": gate.is_near,
        "close_ok": gate.is_open(),
    })))
}

fn dehumidifier(case: &Case) -> Result<Got, String> {
    let floor = Area::from_square_inches(case.number("crawl_floor_ft2")? * 144.0);
    Ok(got(json!({ "pints_per_day": pints_a_day(floor).value })))
}

fn got(value: Value) -> Got {
    if let Value::Object(got) = value { got } else { Got::new() }
}

fn air(part: &Map<String, Value>) -> Result<Air, String> {
    let temperature = fahrenheit(number_in(part, "temp_f")?)?;
    Ok(Air { temperature, humidity: RelativeHumidity::from_percent_f64(number_in(part, "rh")?) })
}

fn fahrenheit(degrees: f64) -> Result<Temperature, String> {
    Temperature::try_hundredths_f((degrees * 100.0).round() as i64).map_err(|out| out.to_string())
}

fn moisture(case: &Case, name: &str) -> Result<MoistureContent, String> {
    Ok(MoistureContent::from_percent_f64(case.number(name)?))
}

/// A wood by its name in words, however it is spelt.
fn species(name: &str) -> Result<Species, String> {
    let letters = |text: &str| text.chars().filter(char::is_ascii_alphabetic).collect::<String>().to_ascii_lowercase();
    let found = Species::ALL.into_iter().find(|species| letters(species.label()).starts_with(&letters(name)));
    found.ok_or_else(|| format!("species {name} is not known"))
}
