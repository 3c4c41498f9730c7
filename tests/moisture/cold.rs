//! What is not said of the wood's warmth, the meter or the material is never kinder than the worst of it.

use super::{any_meter, any_wood_temperature, correct, lumber, mc, plain_meter, says, showing, species_only};
use duckboard::engine::moisture::{
    Answer, Corrected, Material, Meter, Sensing, Shown, Species, Stands, Step, Unsaid, Wood, WoodTemperature,
};
use duckboard::engine::units::{MoistureContent, Temperature, Typed};
use proptest::prelude::*;

fn read(percent: f64, corrects: Answer, at: &WoodTemperature) -> Corrected {
    let meter = Meter { corrects_temperature: corrects, ..plain_meter() };
    correct(&showing(percent), Some(&meter), lumber(Species::DouglasFir), at).value
}

fn at(fahrenheit_tenths: i64) -> WoodTemperature {
    WoodTemperature::Measured(Temperature::try_hundredths_f(fahrenheit_tenths * 10).unwrap())
}

/// FPL-GTR-6 fig. 5 as digitised (P-secondary): to 16 % at 32 °F 4.3 is added.
#[test]
fn wood_of_unread_warmth_may_read_as_low_as_at_the_charts_cold_end() {
    for corrects in [Answer::No, Answer::Unknown] {
        let unread = read(16.0, corrects, &WoodTemperature::NotRead);
        assert_eq!((unread.corrected, unread.temperature), (Stands::At(mc(16.0)), Step::Left), "{corrects:?}");
        assert!((unread.at_worst().to_percent() - 20.3).abs() < 0.001, "{corrects:?}: {:?}", unread.at_worst());
        let low = unread.may_read_low.unwrap();
        assert!(
            low.is_by_cold()
                && !low.is_by_wood()
                && low.asks().contains("read how warm the wood is, then the wood again")
        );
        assert!(unread.is_firm(), "a number with a margin is a number");
    }
    let by_meter = read(16.0, Answer::Yes, &WoodTemperature::NotRead);
    assert_eq!((by_meter.may_read_low, by_meter.at_worst()), (None, mc(16.0)));
    let figure = correct(&showing(16.0), Some(&plain_meter()), lumber(Species::DouglasFir), &WoodTemperature::NotRead);
    assert!(says(&figure, "by judgement this may by up to 4.3 points"), "{:?}", figure.doubts);
}

#[test]
fn not_knowing_whether_the_meter_corrects_is_no_better_than_knowing_that_it_does_not() {
    for tenths in [320, 350, 500, 700, 900] {
        let (unknown, no) = (read(15.0, Answer::Unknown, &at(tenths)), read(15.0, Answer::No, &at(tenths)));
        let apart = unknown.at_worst().to_percent() - no.at_worst().to_percent();
        assert!(apart >= -1e-6, "{tenths}: {unknown:?} {no:?}");
        assert_eq!(unknown.corrected, Stands::At(mc(15.0)), "and nothing is corrected on a guess");
    }
}

#[test]
fn below_the_charts_coldest_row_a_reading_is_marked_and_may_read_lower_still() {
    let cold = |tenths| read(13.0, Answer::No, &at(tenths));
    assert_eq!([321, 320, 319].map(|tenths| cold(tenths).beyond_chart), [false, false, true]);
    assert_eq!([321, 320, 319].map(|tenths| cold(tenths).is_firm()), [true, true, false]);
    assert_eq!(cold(319).corrected, cold(320).corrected, "as at the chart's end");
    assert_eq!(cold(320).at_worst(), cold(320).corrected.bound());
    assert!(cold(-100).at_worst() > cold(100).at_worst() && cold(100).at_worst() > cold(319).at_worst());
    assert!(cold(319).at_worst() > cold(320).at_worst());
    let figure = correct(&showing(13.0), Some(&plain_meter()), lumber(Species::DouglasFir), &at(100));
    assert!(says(&figure, "beyond the chart") && !figure.value.is_fully_corrected());
    // A meter that corrects by itself answers for its own range.
    assert!(!read(13.0, Answer::Yes, &at(100)).beyond_chart);
}

#[test]
fn at_most_the_meters_minimum_is_at_most_that_and_what_was_not_corrected() {
    let under = |meter: Option<&Meter>, species, at: &WoodTemperature| {
        correct(&Shown::UnderMinimum, meter, lumber(species), at).value
    };
    let (plain, by_itself) = (plain_meter(), species_only());
    let fir = Species::DouglasFir;
    assert_eq!(under(Some(&by_itself), fir, &WoodTemperature::NotRead).at_worst(), mc(6.0));
    // To 8 % and below 2.4 is added at 32 °F (P-secondary).
    let unread = under(Some(&plain), fir, &WoodTemperature::NotRead);
    assert!((unread.at_worst().to_percent() - 8.4).abs() < 0.001 && unread.corrected == Stands::Under(mc(6.0)));
    assert_eq!(under(Some(&by_itself), Species::Redwood, &WoodTemperature::NotRead).at_worst(), mc(11.0));
    assert!(under(Some(&plain), fir, &at(100)).beyond_chart);
    let lone = under(None, fir, &WoodTemperature::NotRead);
    assert_eq!((lone.unsaid, lone.is_firm()), (Some(Unsaid::Meter), false));
}

#[test]
fn a_reading_of_no_meter_or_of_unknown_wood_is_not_corrected_nor_firm_and_says_what_to_say() {
    let (fir, warm) = (lumber(Species::DouglasFir), at(700));
    let meterless = correct(&showing(13.9), None, fir, &warm);
    assert_eq!((meterless.value.unsaid, meterless.value.is_firm()), (Some(Unsaid::Meter), false));
    assert_eq!(meterless.value.words(), "13.9 %, meter not said");
    assert!(says(&meterless, "say which meter") && !meterless.value.is_fully_corrected());

    let unknown = Wood { material: Material::Unknown, species: Some(Species::DouglasFir) };
    let mystery = correct(&showing(13.9), Some(&plain_meter()), unknown, &warm);
    assert_eq!((mystery.value.unsaid, mystery.value.is_firm()), (Some(Unsaid::Material), false));
    assert_eq!(mystery.value.words(), "13.9 %, wood not said");
    assert!(says(&mystery, "say what the reading was taken on"));

    for unsaid in [Unsaid::Meter, Unsaid::Material] {
        assert!(unsaid.asks().starts_with("say w"));
    }
    let known = correct(&showing(13.9), Some(&plain_meter()), fir, &warm).value;
    assert_eq!((known.unsaid, known.is_firm(), known.may_read_low), (None, true, None));
    let pinless = Meter { sensing: Sensing::Pinless, ..plain_meter() };
    assert!(!correct(&showing(13.9), Some(&pinless), fir, &warm).value.is_firm(), "relative");
    assert!(!correct(&showing(3.0), Some(&plain_meter()), fir, &warm).value.is_firm(), "not believed");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2_000))]

    /// Leaving out how warm the wood was, or whether the meter corrects for it, never makes a
    /// reading look drier at worst than any warmth on the chart that could have been said.
    #[test]
    fn saying_less_of_warmth_is_never_kinder(
        shown in 700_i64..=3_000, meter in any_meter(), warmth in 0_i64..=5_000, silent in any::<bool>(),
        species in proptest::sample::select(Species::ALL.to_vec()),
    ) {
        let meter = Meter { sensing: Sensing::Pin, minimum: None, maximum: None, reference: None, corrects_temperature: Answer::No, ..meter };
        let reading = Shown::Percent(Typed::new("typed", MoistureContent::try_hundredths(shown).unwrap()));
        let warmth = WoodTemperature::Measured(Temperature::try_hundredths_c(warmth).unwrap());
        let said = correct(&reading, Some(&meter), lumber(species), &warmth).value;
        let less = if silent {
            correct(&reading, Some(&meter), lumber(species), &WoodTemperature::NotRead).value
        } else {
            let unsure = Meter { corrects_temperature: Answer::Unknown, ..meter };
            correct(&reading, Some(&unsure), lumber(species), &warmth).value
        };
        // Where a row of the table ends, the species step ends with it.
        prop_assume!(said.species == less.species);
        let slack = 0.001;
        prop_assert!(less.at_worst().to_percent() >= said.at_worst().to_percent() - slack, "{:?} {:?}", less, said);
    }

    #[test]
    fn what_is_firm_has_its_meter_its_wood_and_its_place_on_the_chart(
        meter in proptest::option::of(any_meter()), temperature in any_wood_temperature(), shown in 700_i64..=2_800,
        material in proptest::sample::select(Material::ALL.to_vec()),
    ) {
        let reading = Shown::Percent(Typed::new("typed", MoistureContent::try_hundredths(shown).unwrap()));
        let wood = Wood { material, species: Some(Species::DouglasFir) };
        let value = correct(&reading, meter.as_ref(), wood, &temperature).value;
        if value.is_firm() {
            prop_assert!(meter.is_some_and(|meter| meter.sensing == Sensing::Pin) && material.is_lumber());
        }
    }
}
