//! The decisions of readings, on each side of their limits.

use super::bounds::{LEAST_LIKELY, MOST_LIKELY};
use super::*;
use crate::engine::entry::Label;
use crate::engine::units::{Length, MoistureContent, Temperature, Typed};

fn percent(hundredths: i64) -> MoistureContent {
    MoistureContent::try_hundredths(hundredths).unwrap()
}

fn at(hundredths: i64) -> Corrected {
    Corrected::as_shown(Stands::At(percent(hundredths)))
}

fn over(hundredths: i64) -> Corrected {
    Corrected::as_shown(Stands::Over(percent(hundredths)))
}

fn meter(minimum: i64, maximum: i64) -> Meter {
    let typed = |hundredths| Some(Typed::new("", percent(hundredths)));
    Meter {
        label: Label::fitted("pins"),
        sensing: Sensing::Pin,
        scale: None,
        reference: None,
        corrects_temperature: Answer::Unknown,
        corrects_species: Answer::Unknown,
        minimum: typed(minimum),
        maximum: typed(maximum),
    }
}

#[test]
fn a_reading_contradicts_a_drier_one_by_more_than_a_meter_can_be_off() {
    assert!(at(2001).contradicts(&at(1800)) && !at(2000).contradicts(&at(1800)));
    assert!(!at(1800).contradicts(&at(2001)), "the drier one does not");
    assert!(over(1900).contradicts(&at(1900)) && over(1900).contradicts(&at(6000)), "nobody knows how much more");
    assert!(!over(4000).contradicts(&over(4000)) && over(4201).contradicts(&over(4000)));
    assert!(!at(4200).contradicts(&over(4000)));
}

#[test]
fn fiber_saturation_is_past_28_percent_and_is_said_of_no_relative_reading() {
    assert!(!at(2800).above_fibre_saturation() && at(2801).above_fibre_saturation());
    assert!(over(2800).above_fibre_saturation() && !over(2799).above_fibre_saturation());
    assert!(!Corrected { relative: true, ..at(4000) }.above_fibre_saturation());
    assert!(!Corrected::as_shown(Stands::Under(percent(4000))).above_fibre_saturation());
}

#[test]
fn a_reading_that_is_not_firm_asks_for_what_would_make_it_so() {
    let cold = Corrected { beyond_chart: true, ..at(1400) };
    let unsaid = Corrected { unsaid: Some(Unsaid::Meter), ..cold };
    let low = Corrected { may_read_low: MayReadLow::with_cold(None, percent(100)), ..at(1400) };
    assert_eq!(at(1400).asks(), None);
    assert_eq!(unsaid.asks(), Some("say which meter it is from"), "first what can be said");
    assert!(cold.asks().unwrap().contains("where the wood is warmer"));
    assert!(low.asks().unwrap().starts_with("say whether the meter corrects for temperature"));
    for useless in [Corrected { relative: true, ..unsaid }, Corrected { doubted: true, ..unsaid }] {
        assert_eq!(useless.asks(), None, "only another reading helps");
    }
}

#[test]
fn bounds_are_the_meters_own_only_where_they_are_narrower_than_what_is_likely() {
    let likely = |hundredths: [i64; 2]| {
        let bounds = Bounds::of(Some(&meter(hundredths[0], hundredths[1])));
        [Outside::Under, Outside::Over].map(|outside| bounds.words(outside).contains("wood under a roof"))
    };
    assert_eq!((LEAST_LIKELY, MOST_LIKELY), (percent(400), percent(6000)));
    let (least, most) = (400, 6000);
    assert_eq!(likely([least, most]), [true, true]);
    assert_eq!(likely([least + 1, most - 1]), [false, false]);
    assert_eq!(likely([least - 1, most + 1]), [true, true]);
    let bounds = Bounds::of(Some(&meter(600, 4000)));
    assert_eq!(bounds.words(Outside::Over), "more than the 40.0 % that this meter shows");
    assert_eq!(bounds.words(Outside::Under), "less than the 6.0 % that this meter shows");
}

/// Two points under boards of 3 in and more, four under narrower ones (marked in `flooring.rs`).
#[test]
fn flooring_is_held_to_what_its_boards_allow() {
    let gate = |subfloor, flooring, width| FlooringGate::of(percent(subfloor), percent(flooring), width);
    let (narrow, plank) = (Length::sixty_fourths(3 * 64 - 1), Length::inches(3));
    assert!(gate(1200, 800, narrow).is_open() && !gate(1200, 799, narrow).is_open());
    assert!(gate(1200, 1000, plank).is_open() && !gate(1200, 999, plank).is_open());
    assert!(gate(800, 1200, narrow).is_near, "either way");
    assert!(!gate(1201, 1201, plank).is_open() && gate(1201, 1201, plank).is_near);
}

#[test]
fn only_cold_wood_reads_low_by_cold() {
    let by_wood = MayReadLow::unmade(None, None).unwrap();
    assert!(by_wood.is_by_wood() && !by_wood.is_by_cold());
    let both = MayReadLow::with_cold(Some(by_wood), percent(150)).unwrap();
    assert!(both.is_by_wood() && both.is_by_cold());
    assert!(both.words().next().unwrap().contains("up to 5 points"), "of the wood alone");
    let cold = MayReadLow::with_cold(None, percent(1)).unwrap();
    assert!(!cold.is_by_wood() && cold.is_by_cold());
    assert_eq!(MayReadLow::with_cold(None, percent(0)), None);
}

/// Past the chart's cold end each degree adds what its last step does.
#[test]
fn colder_than_the_chart_a_reading_goes_on_as_the_chart_ends() {
    let seventy = Temperature::fahrenheit(70);
    let at = |celsius: f64| {
        let wood = Temperature::from_celsius_f64(chart::COLDEST.to_celsius() + celsius);
        chart::at_worst(percent(1500), wood, seventy).to_percent()
    };
    let step = at(0.0) - at(4.0);
    assert!(step > 0.0 && at(-4.0) > at(0.0));
    assert!((at(-8.0) - at(-4.0) - (at(-4.0) - at(0.0))).abs() < 0.02, "a straight line");
    assert!((at(-4.0) - at(0.0) - step).abs() < 0.35, "{step} and then {}", at(-4.0) - at(0.0));
}

#[test]
fn words_name_what_was_chosen() {
    assert_eq!(Sensing::ALL.map(Sensing::label), ["pins", "pinless"]);
    assert_eq!(Answer::ALL.map(Answer::label), ["yes", "no", "not known"]);
    let material = ["solid lumber", "treated lumber", "plywood", "OSB", "other glued wood", "unknown"];
    assert_eq!(Material::ALL.map(Material::label), material);
    let wood = |material, species| Wood { material, species }.words();
    assert_eq!(wood(Material::Solid, Some(Species::DouglasFir)), "Douglas-fir");
    assert_eq!(wood(Material::Solid, None), "species not said");
    assert_eq!(wood(Material::Plywood, Some(Species::DouglasFir)), "plywood, Douglas-fir");
    assert_eq!(wood(Material::Unknown, None), "wood not said");
    assert!(Species::HemFir.is_group() && !Species::DouglasFir.is_group() && !Species::Unknown.is_group());
}
