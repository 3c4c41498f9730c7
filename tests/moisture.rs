//! Meter corrections against the chart and the table they rest on, and their laws.

#![expect(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test's helpers may stop it")]

#[path = "moisture/bounds.rs"]
mod bounds;
#[path = "moisture/cold.rs"]
mod cold;
mod fixtures;

use duckboard::engine::entry::Label;
use duckboard::engine::figure::Known;
use duckboard::engine::moisture::resistance::moisture_at;
use duckboard::engine::moisture::{
    Answer, Corrected, Material, Meter, Resistance, Sensing, Shown, Species, Stands, Step, Wood, WoodTemperature,
    correct,
};
use duckboard::engine::sources::Mark;
use duckboard::engine::units::{MoistureContent, Temperature, Typed};
use fixtures::{json, number};
use proptest::prelude::*;
use serde::Deserialize;
use serde_json::{Value, json};

fn mc(percent: f64) -> MoistureContent {
    MoistureContent::from_percent_f64(percent)
}

fn fahrenheit(degrees: f64) -> Temperature {
    Temperature::from_celsius_f64((degrees - 32.0) / 1.8)
}

fn showing(percent: f64) -> Shown {
    Shown::Percent(Typed::new(format!("{percent} %"), mc(percent)))
}

/// Pins on the Douglas-fir scale, set for 70 °F, that correct nothing.
fn plain_meter() -> Meter {
    Meter {
        label: Label::new("pins").unwrap(),
        sensing: Sensing::Pin,
        scale: Some(Species::DouglasFir),
        reference: Some(Typed::new("70 °F", Temperature::fahrenheit(70))),
        corrects_temperature: Answer::No,
        corrects_species: Answer::No,
        minimum: Some(Typed::new("6 %", mc(6.0))),
        maximum: Some(Typed::new("40 %", mc(40.0))),
    }
}

/// A plain meter that sees to temperature itself, so that only species is left.
fn species_only() -> Meter {
    Meter { corrects_temperature: Answer::Yes, ..plain_meter() }
}

fn lumber(species: Species) -> Wood {
    Wood { material: Material::Solid, species: Some(species) }
}

fn douglas_fir_at(percent: f64, temperature: Temperature) -> Corrected {
    let wood = lumber(Species::DouglasFir);
    correct(&showing(percent), Some(&plain_meter()), wood, &WoodTemperature::Measured(temperature)).value
}

fn says(figure: &Known<Corrected>, words: &str) -> bool {
    figure.doubts.iter().any(|doubt| doubt.contains(words))
}

fn compute(kind: &str, input: &Value) -> Option<Value> {
    assert_eq!(input["species"], "Douglas-fir");
    Some(match kind {
        "pin_temp" => {
            let wood = fahrenheit(number(input, "wood_temp_f"));
            json!({ "mc_pct": douglas_fir_at(number(input, "reading_pct"), wood).by_tables.unwrap().to_percent() })
        }
        "resistance_to_mc" => {
            let megohm = number(input, "megohm");
            // The engine has the row; the fit that a third party made to the printed row
            // (P-secondary) is worked here, to see that the case means the same table.
            let fit = libm::pow(10.0, 1.7003 - 0.12007 * libm::log10(megohm * 1000.0));
            let row = moisture_at(Species::DouglasFir, Resistance::from_megohms_f64(megohm)).unwrap();
            json!({ "mc_pct_fit": fit, "mc_pct_row": row.to_percent() })
        }
        _ => return None,
    })
}

#[test]
fn worked_cases_come_out() {
    fixtures::check("moisture.jsonl", compute);
}

#[derive(Deserialize)]
struct Chart {
    temp_c: Vec<f64>,
    rows: Vec<Vec<f64>>,
}

/// FPL-GTR-6 fig. 5 as digitised (P-secondary): at a cell the cell is added, no more.
#[test]
fn every_cell_of_the_chart_is_added_as_it_stands() {
    let chart: Chart = json("temperature_chart.json");
    assert_eq!((chart.rows.len(), chart.temp_c.len()), (10, 10));
    for row in &chart.rows {
        for (celsius, add) in chart.temp_c.iter().zip(&row[1..]) {
            let found = douglas_fir_at(row[0], Temperature::from_celsius_f64(*celsius)).by_tables.unwrap().to_percent();
            assert!((found - (row[0] + add)).abs() < 1e-5, "{} % at {celsius} °C: {found}", row[0]);
        }
    }
}

#[derive(Deserialize)]
struct ResistanceTable {
    first_pct: f64,
    rows: Vec<ResistanceRow>,
}

#[derive(Deserialize)]
struct ResistanceRow {
    species: Species,
    megohm: Vec<f64>,
}

/// FPL-GTR-6 table 1, recalled (M).
#[test]
fn every_cell_of_the_resistance_table_is_its_percent() {
    let table: ResistanceTable = json("resistance.json");
    assert_eq!(table.rows.len(), 10);
    for ResistanceRow { species, megohm } in table.rows {
        assert_eq!(megohm.len(), 19);
        for (step, cell) in (0..).map(f64::from).zip(megohm) {
            let found = moisture_at(species, Resistance::from_megohms_f64(cell));
            assert_eq!(found, Some(mc(table.first_pct + step)), "{species:?} at {cell}");
        }
    }
}

#[derive(Deserialize)]
struct SpeciesTable {
    tol_pct: f64,
    woods: Vec<Species>,
    rows: Vec<Vec<Option<f64>>>,
}

/// Computed from the recalled rows when the reference was made (X from M), rounded to 0.1.
#[test]
fn every_cell_of_the_species_table_comes_out() {
    let table: SpeciesTable = json("species_table.json");
    for row in &table.rows {
        let reading = row[0].unwrap();
        for (wood, expected) in table.woods.iter().zip(&row[1..]) {
            let figure = correct(&showing(reading), Some(&species_only()), lumber(*wood), &WoodTemperature::NotRead);
            match (expected, figure.value.by_tables) {
                (Some(expected), Some(found)) => {
                    assert!((found.to_percent() - expected).abs() <= table.tol_pct, "{reading} in {wood:?}: {found:?}");
                }
                (None, None) => assert!(says(&figure, "beyond the table"), "{reading} in {wood:?}"),
                (expected, found) => panic!("{reading} in {wood:?}: {expected:?} against {found:?}"),
            }
        }
    }
}

#[test]
fn temperature_comes_first_and_species_after() {
    // 15 % at 50 °F is 16.8 % on the scale by the chart (P-secondary), and that is what
    // the species step must then be asked for.
    let wood = lumber(Species::LongleafPine);
    let cold = WoodTemperature::Measured(Temperature::fahrenheit(50));
    let both = correct(&showing(15.0), Some(&plain_meter()), wood, &cold);
    let second = correct(&showing(16.8), Some(&species_only()), wood, &WoodTemperature::NotRead);
    assert_eq!(both.value.by_tables, second.value.by_tables);
    assert_eq!((both.value.temperature, both.value.species), (Step::Applied, Step::Applied));
    assert!(both.value.is_fully_corrected());
    assert_eq!(both.why.mark(), Some(Mark::Memory), "a recalled row marks the whole figure");
    let names: Vec<_> = both.why.inputs.iter().map(|(name, _)| name.as_str()).collect();
    let place = |name| names.iter().position(|found| *found == name).unwrap();
    assert!(place("at the meter's temperature") < place("as this wood"));
}

#[test]
fn a_meter_that_corrects_itself_is_believed() {
    let meter = Meter { corrects_species: Answer::Yes, ..species_only() };
    let cold = WoodTemperature::Measured(Temperature::fahrenheit(35));
    let Corrected { by_tables, corrected, temperature, species, .. } =
        correct(&showing(18.0), Some(&meter), lumber(Species::Redwood), &cold).value;
    assert_eq!((by_tables, corrected), (None, Stands::At(mc(18.0))));
    assert_eq!((temperature, species), (Step::ByMeter, Step::ByMeter));
}

#[test]
fn nothing_is_corrected_on_a_guess() {
    let unsure = Meter { corrects_temperature: Answer::Unknown, corrects_species: Answer::Unknown, ..plain_meter() };
    let cold = WoodTemperature::Measured(Temperature::fahrenheit(35));
    let figure = correct(&showing(18.0), Some(&unsure), lumber(Species::Redwood), &cold);
    assert_eq!(
        (figure.value.by_tables, figure.value.temperature, figure.value.species),
        (None, Step::Left, Step::Left)
    );
    assert!(says(&figure, "Not corrected for temperature") && says(&figure, "Not corrected for species"));

    let figure = correct(&showing(18.0), None, lumber(Species::DouglasFir), &cold);
    assert_eq!((figure.value.by_tables, figure.value.relative), (None, false));
    assert!(says(&figure, "which meter"));

    let figure = correct(&showing(18.0), Some(&plain_meter()), lumber(Species::DouglasFir), &WoodTemperature::NotRead);
    assert_eq!((figure.value.temperature, figure.value.species), (Step::Left, Step::Applied));
    assert!(says(&figure, "read the wood's"));
}

#[test]
fn a_wood_without_figures_is_left_and_named() {
    let unsaid = Wood { material: Material::Solid, species: None };
    let cases = [
        (lumber(Species::WesternRedcedar), "no figures for western redcedar"),
        (lumber(Species::Unknown), "say which wood it is"),
        (unsaid, "say which wood it is"),
    ];
    for (wood, words) in cases {
        let figure = correct(&showing(15.0), Some(&species_only()), wood, &WoodTemperature::NotRead);
        assert_eq!(figure.value.species, Step::Left);
        assert!(says(&figure, words), "{:?}", figure.doubts);
    }
    let scaleless = Meter { scale: None, ..species_only() };
    let figure = correct(&showing(15.0), Some(&scaleless), lumber(Species::Redwood), &WoodTemperature::NotRead);
    assert!(says(&figure, "meter's scale is for"));
}

#[test]
fn an_assumed_temperature_is_shown_as_assumed_and_a_measured_one_is_not() {
    let temperature = Temperature::fahrenheit(50);
    let from_air = WoodTemperature::Assumed { temperature, from: "the crawl space air".to_owned() };
    let wood = lumber(Species::DouglasFir);
    let assumed = correct(&showing(15.0), Some(&plain_meter()), wood, &from_air);
    let measured = correct(&showing(15.0), Some(&plain_meter()), wood, &WoodTemperature::Measured(temperature));
    // Read of another member it may be 10 °F colder here: by the chart 1.0 point.
    let low = assumed.value.may_read_low.unwrap();
    assert!((low.cold.to_percent() - 1.03).abs() < 0.01 && low.points == low.cold);
    assert_eq!(Corrected { may_read_low: None, ..assumed.value }, measured.value);
    // No colder than where nobody read it.
    let cold = |from: WoodTemperature| correct(&showing(15.0), Some(&plain_meter()), wood, &from).value.at_worst();
    let at = |temperature| WoodTemperature::Assumed { temperature, from: "joist 3".to_owned() };
    let unread = cold(WoodTemperature::NotRead);
    assert!(cold(at(Temperature::fahrenheit(42))) == unread && cold(at(Temperature::fahrenheit(36))) == unread);
    assert!(cold(at(Temperature::fahrenheit(43))) < unread && cold(at(Temperature::fahrenheit(20))) > unread);
    assert_eq!(assumed.assumed, ["Wood at 50.0 °F, taken from the crawl space air"]);
    assert!(measured.assumed.is_empty());

    let unset = Meter { reference: None, ..plain_meter() };
    let figure = correct(&showing(15.0), Some(&unset), wood, &WoodTemperature::Measured(temperature));
    assert_eq!((figure.value, figure.assumed.len()), (measured.value, 1));
}

#[test]
fn what_no_table_covers_stands_as_shown_and_is_only_relative() {
    let cold = WoodTemperature::Measured(Temperature::fahrenheit(35));
    for material in [Material::Plywood, Material::Osb, Material::OtherGlued] {
        let wood = Wood { material, species: Some(Species::Redwood) };
        let figure = correct(&showing(35.0), Some(&plain_meter()), wood, &cold);
        assert_eq!((figure.value.by_tables, figure.value.corrected), (None, Stands::At(mc(35.0))));
        assert!(figure.value.relative && !figure.value.above_fibre_saturation(), "{material:?}");
        assert!(says(&figure, "Not corrected"));
    }
    let pinless = Meter { sensing: Sensing::Pinless, ..plain_meter() };
    let figure = correct(&showing(35.0), Some(&pinless), lumber(Species::Redwood), &cold);
    assert!(figure.value.relative && says(&figure, "pinless"));

    let mystery = Wood { material: Material::Unknown, species: Some(Species::Redwood) };
    let figure = correct(&showing(15.0), Some(&plain_meter()), mystery, &cold);
    assert_eq!((figure.value.by_tables, figure.value.relative), (None, false));
    assert!(says(&figure, "say what the reading was taken on"));
}

/// 1 to 2 %: manuals of meters on waterborne salts (common practice).
#[test]
fn treated_lumber_is_corrected_as_untreated_and_may_be_up_to_two_points_drier() {
    let cold = WoodTemperature::Measured(Temperature::fahrenheit(35));
    let of = |shown: Shown, material| {
        let wood = Wood { material, species: Some(Species::SouthernPine) };
        correct(&shown, Some(&plain_meter()), wood, &cold)
    };
    for shown in [showing(1.0), showing(15.0), showing(60.0), Shown::OverMaximum, Shown::UnderMinimum] {
        let (treated, untreated) = (of(shown.clone(), Material::Treated), of(shown, Material::Solid));
        assert_eq!(treated.value, Corrected { may_read_high: Some(mc(2.0)), ..untreated.value });
        assert!(says(&treated, "it may be drier") && !says(&untreated, "it may be drier"));
        assert_eq!(treated.assumed.len(), untreated.assumed.len() + 1);
        let percent = treated.value.corrected.bound().to_percent();
        assert!((treated.value.at_best().to_percent() - (percent - 2.0).max(0.0)).abs() < 1e-9);
        assert_eq!(untreated.value.at_best(), untreated.value.corrected.bound());
    }
    // A pinless meter compares it with its like, and no more.
    let pinless = Meter { sensing: Sensing::Pinless, ..plain_meter() };
    let wood = Wood { material: Material::Treated, species: None };
    assert!(correct(&showing(15.0), Some(&pinless), wood, &cold).value.relative);
}

#[test]
fn treated_lumber_is_surely_over_a_limit_by_more_than_its_salts_add() {
    let treated = |stands| Corrected { may_read_high: Some(mc(2.0)), ..Corrected::as_shown(stands) };
    let is_over = |value: Corrected| value.is_surely_above(mc(19.0));
    assert_eq!([20.9, 21.0, 21.1].map(|at| is_over(treated(Stands::At(mc(at))))), [false, false, true]);
    assert_eq!([21.0, 21.1].map(|at| is_over(treated(Stands::Over(mc(at))))), [false, true]);
    assert_eq!([19.0, 19.1].map(|at| is_over(Corrected::as_shown(Stands::At(mc(at))))), [false, true]);
    assert!(is_over(Corrected::as_shown(Stands::Over(mc(15.0)))), "past the scale is over every limit");
}

#[test]
fn past_the_scale_is_at_least_the_scale() {
    let wood = lumber(Species::DouglasFir);
    let cold = WoodTemperature::Measured(Temperature::fahrenheit(35));
    let figure = correct(&Shown::OverMaximum, Some(&plain_meter()), wood, &cold);
    assert_eq!((figure.value.shown, figure.value.corrected), (None, Stands::Over(mc(40.0))));
    assert!(figure.value.above_fibre_saturation());
    assert!(figure.assumed.is_empty());

    let endless = Meter { maximum: None, ..plain_meter() };
    let figure = correct(&Shown::OverMaximum, Some(&endless), wood, &cold);
    assert_eq!((figure.value.corrected, figure.assumed.len()), (Stands::Over(mc(28.0)), 1));
    assert!(figure.value.above_fibre_saturation());

    let low = Meter { maximum: Some(Typed::new("24 %", mc(24.0))), ..plain_meter() };
    assert!(!correct(&Shown::OverMaximum, Some(&low), wood, &cold).value.above_fibre_saturation());
}

#[test]
fn readings_outside_seven_to_twenty_eight_are_kept_and_flagged() {
    let flagged = |percent| {
        let at_70 = WoodTemperature::Measured(Temperature::fahrenheit(70));
        let figure = correct(&showing(percent), Some(&plain_meter()), lumber(Species::DouglasFir), &at_70);
        assert_eq!(figure.value.shown, Some(mc(percent)));
        says(&figure, "outside 7 to 28 %")
    };
    assert!(flagged(6.9) && !flagged(7.0) && !flagged(28.0) && flagged(28.1));
}

#[test]
fn a_result_above_twenty_eight_is_fiber_saturation_not_a_number() {
    // 25 % at 32 °F is 31.0 % by the chart (P-secondary), past where its curves end.
    let soaked = correct(
        &showing(25.0),
        Some(&plain_meter()),
        lumber(Species::DouglasFir),
        &WoodTemperature::Measured(Temperature::fahrenheit(32)),
    );
    assert!(soaked.value.above_fibre_saturation() && says(&soaked, "fiber saturation"));
    assert!(!douglas_fir_at(25.0, Temperature::fahrenheit(70)).above_fibre_saturation());
}

#[test]
fn every_percentage_says_how_good_it_is_and_which_way_hot_dried_lumber_errs() {
    let corrected = correct(
        &showing(15.0),
        Some(&plain_meter()),
        lumber(Species::DouglasFir),
        &WoodTemperature::Measured(Temperature::fahrenheit(50)),
    );
    assert!(says(&corrected, "±2 %") && says(&corrected, "kiln-dried hot"));
    assert_eq!(corrected.why.mark(), Some(Mark::Secondary));
    assert!(says(&correct(&showing(15.0), None, lumber(Species::DouglasFir), &WoodTemperature::NotRead), "±2 %"));
}

fn any_shown() -> impl Strategy<Value = Shown> {
    let percent = (0_i64..=30_000).prop_map(|hundredths| MoistureContent::try_hundredths(hundredths).unwrap());
    prop_oneof![
        9 => percent.prop_map(|value| Shown::Percent(Typed::new("typed", value))),
        1 => Just(Shown::OverMaximum),
        1 => Just(Shown::UnderMinimum),
    ]
}

fn any_temperature() -> impl Strategy<Value = Temperature> {
    (-6_000_i64..=10_000).prop_map(|hundredths| Temperature::try_hundredths_c(hundredths).unwrap())
}

fn any_species() -> impl Strategy<Value = Option<Species>> {
    proptest::option::of(proptest::sample::select(Species::ALL.to_vec()))
}

fn any_meter() -> impl Strategy<Value = Meter> {
    let answer = || proptest::sample::select(Answer::ALL.to_vec());
    let end = || (0_u16..=300).prop_map(|percent| Typed::new("typed", MoistureContent::percent(percent)));
    let ends = (proptest::option::of(end()), proptest::option::of(end()));
    (
        proptest::sample::select(Sensing::ALL.to_vec()),
        any_species(),
        proptest::option::of(any_temperature().prop_map(|value| Typed::new("typed", value))),
        answer(),
        answer(),
        ends,
    )
        .prop_map(|(sensing, scale, reference, corrects_temperature, corrects_species, (minimum, maximum))| {
            Meter {
                label: Label::default(),
                sensing,
                scale,
                reference,
                corrects_temperature,
                corrects_species,
                minimum,
                maximum,
            }
        })
}

fn any_wood() -> impl Strategy<Value = Wood> {
    (proptest::sample::select(Material::ALL.to_vec()), any_species())
        .prop_map(|(material, species)| Wood { material, species })
}

fn any_wood_temperature() -> impl Strategy<Value = WoodTemperature> {
    prop_oneof![
        any_temperature().prop_map(WoodTemperature::Measured),
        any_temperature().prop_map(|temperature| WoodTemperature::Assumed { temperature, from: "the air".to_owned() }),
        Just(WoodTemperature::NotRead),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2_000))]

    #[test]
    fn corrected_is_the_wetter_of_shown_and_tables_whatever_is_handed_in(
        shown in any_shown(), meter in proptest::option::of(any_meter()), wood in any_wood(), temperature in any_wood_temperature(),
    ) {
        let figure = correct(&shown, meter.as_ref(), wood, &temperature);
        let value = figure.value;
        match value.corrected.number() {
            Some(number) => prop_assert_eq!(Some(number), value.shown.max(value.by_tables)),
            None => prop_assert!(value.by_tables.is_none() && value.doubted == value.shown.is_some()),
        }
        prop_assert!(value.at_worst() >= value.corrected.bound());
        let applied = [value.temperature, value.species].contains(&Step::Applied);
        prop_assert_eq!(value.by_tables.is_some(), applied);
        prop_assert!(!(value.relative && applied));
        prop_assert!(!figure.why.rule.is_empty() && !figure.doubts.is_empty());
    }

    #[test]
    fn what_was_not_read_is_never_assumed_quietly(shown in any_shown(), meter in any_meter(), wood in any_wood(), temperature in any_temperature()) {
        let assumed = WoodTemperature::Assumed { temperature, from: "the air".to_owned() };
        let figure = correct(&shown, Some(&meter), wood, &assumed);
        let owned_up = figure.assumed.iter().any(|text| text.contains("the air"));
        prop_assert_eq!(owned_up, figure.value.temperature == Step::Applied);
    }

    #[test]
    fn douglas_fir_at_the_meters_own_temperature_reads_true(shown in 600_i64..=4_000) {
        let shown = MoistureContent::try_hundredths(shown).unwrap();
        let corrected = douglas_fir_at(shown.to_percent(), Temperature::fahrenheit(70)).by_tables.unwrap();
        // The chart wobbles by 0.05 at 70 °F, between its columns.
        prop_assert!((corrected.to_percent() - shown.to_percent()).abs() <= 0.05);
    }

    #[test]
    fn warmer_wood_is_never_wetter(shown in 0_i64..=30_000, one in any_temperature(), other in any_temperature(), species in any_species(), meter in any_meter()) {
        let meter = Meter { sensing: Sensing::Pin, corrects_temperature: Answer::No, ..meter };
        let reading = Shown::Percent(Typed::new("typed", MoistureContent::try_hundredths(shown).unwrap()));
        let wood = Wood { material: Material::Solid, species };
        let at = |temperature| correct(&reading, Some(&meter), wood, &WoodTemperature::Measured(temperature)).value;
        let (colder, warmer) = (at(one.min(other)), at(one.max(other)));
        // Where a row of the table ends, the species step ends with it.
        prop_assume!(colder.species == warmer.species);
        prop_assert!(warmer.by_tables <= colder.by_tables);
        prop_assert!(warmer.corrected <= colder.corrected);
    }
}
