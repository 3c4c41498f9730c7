//! Off the scale, outside of what is believed, and woods that a stamp has no figures for.

use super::{correct, lumber, mc, plain_meter, says, showing, species_only};
use duckboard::engine::moisture::{
    Answer, Bounds, Material, Meter, Outside, Shown, Species, Stands, Wood, WoodTemperature,
};
use duckboard::engine::units::{Temperature, Typed};

#[test]
fn under_the_scale_is_at_most_its_start() {
    let (wood, at) = (lumber(Species::DouglasFir), WoodTemperature::NotRead);
    let figure = correct(&Shown::UnderMinimum, Some(&plain_meter()), wood, &at);
    assert_eq!((figure.value.shown, figure.value.corrected), (None, Stands::Under(mc(6.0))));
    assert_eq!((figure.value.doubted, figure.assumed.len()), (false, 0));

    let unsaid = Meter { minimum: None, ..plain_meter() };
    let figure = correct(&Shown::UnderMinimum, Some(&unsaid), wood, &at);
    assert_eq!((figure.value.corrected, figure.assumed.len()), (Stands::Under(mc(7.0)), 1));
}

#[test]
fn off_the_scale_there_is_no_number_to_draw_or_to_average() {
    for stands in [Stands::Under(mc(6.0)), Stands::Over(mc(30.0))] {
        assert_eq!(stands.number(), None);
    }
    assert_eq!(Stands::At(mc(30.0)).number(), Some(mc(30.0)));
    let in_order = [Stands::Under(mc(7.0)), Stands::At(mc(5.0)), Stands::At(mc(40.0)), Stands::Over(mc(30.0))];
    assert!(in_order.is_sorted(), "wetter is greater");
}

#[test]
fn over_the_maximum_is_above_every_limit_and_a_number_only_above_its_own() {
    let limit = mc(19.0);
    let above = |stands: Stands| stands.is_above(limit);
    assert!(above(Stands::Over(mc(18.0))), "nobody knows how much more");
    assert_eq!([18.99, 19.0, 19.01].map(|percent| above(Stands::At(mc(percent)))), [false, false, true]);
    assert_eq!([18.99, 19.0, 19.01].map(|percent| above(Stands::Under(mc(percent)))), [false, false, true]);
}

fn outside(meter: Option<&Meter>, percent: f64) -> Option<Outside> {
    Bounds::of(meter).outside(mc(percent))
}

/// The bounds of a wood under a roof: common practice, no source.
#[test]
fn a_number_is_believed_up_to_its_bound_and_no_further() {
    let (under, over) = (Some(Outside::Under), Some(Outside::Over));
    let meter = plain_meter();
    assert_eq!([5.99, 6.0, 6.01].map(|percent| outside(Some(&meter), percent)), [under, None, None]);
    assert_eq!([39.99, 40.0, 40.01].map(|percent| outside(Some(&meter), percent)), [None, None, over]);
    assert_eq!([3.99, 4.0, 4.01].map(|percent| outside(None, percent)), [under, None, None]);
    assert_eq!([59.99, 60.0, 60.01].map(|percent| outside(None, percent)), [None, None, over]);

    // A meter that shows more than wood is likely to have does not make it likelier.
    let typed = |percent: f64| Some(Typed::new("typed", mc(percent)));
    let wide = Meter { minimum: typed(0.0), maximum: typed(99.9), ..plain_meter() };
    assert_eq!([3.99, 4.0, 60.0, 60.01].map(|percent| outside(Some(&wide), percent)), [under, None, None, over]);

    // A scale that ends where it begins is a slip: it bounds nothing.
    for (minimum, maximum) in [(30.0, 30.0), (30.0, 6.0)] {
        let slip = Meter { minimum: typed(minimum), maximum: typed(maximum), ..plain_meter() };
        assert_eq!([5.0, 18.0, 50.0].map(|percent| outside(Some(&slip), percent)), [None; 3]);
    }
    let narrow = Meter { minimum: typed(29.99), maximum: typed(30.0), ..plain_meter() };
    assert_eq!(outside(Some(&narrow), 18.0), under);
}

#[test]
fn a_number_that_is_not_believed_is_in_doubt_and_is_no_number() {
    let at_70 = WoodTemperature::Measured(Temperature::fahrenheit(70));
    let figure = |percent| correct(&showing(percent), Some(&plain_meter()), lumber(Species::DouglasFir), &at_70);
    for (percent, stands) in
        [(180.0, Stands::Over(mc(40.0))), (40.01, Stands::Over(mc(40.0))), (5.99, Stands::Under(mc(6.0)))]
    {
        let figure = figure(percent);
        assert_eq!((figure.value.shown, figure.value.corrected), (Some(mc(percent)), stands));
        assert!(figure.value.doubted && !figure.value.is_fully_corrected());
        assert!(says(&figure, "doubted, so read it again"), "{:?}", figure.doubts);
    }
    for percent in [6.0, 40.0] {
        assert!(!figure(percent).value.doubted && figure(percent).value.corrected.number().is_some());
    }
    // The same without a meter, and on panel.
    let plywood = Wood { material: Material::Plywood, species: None };
    let lone = correct(&showing(60.01), None, plywood, &WoodTemperature::NotRead).value;
    assert_eq!((lone.corrected, lone.doubted, lone.relative), (Stands::Over(mc(60.0)), true, true));
}

#[test]
fn a_stamp_takes_its_wettest_wood_and_says_how_far_the_others_may_lie_above() {
    let stamped = |shown, stamp| {
        let wood = lumber(stamp);
        correct(&showing(shown), Some(&species_only()), wood, &WoodTemperature::NotRead)
    };
    let alone = |shown, wood| stamped(shown, wood).value.corrected;
    // From memory: 18.0 on the Douglas-fir scale is 19.2 in California red fir.
    let hem_fir = stamped(18.0, Species::HemFir).value;
    assert_eq!(hem_fir.corrected, alone(18.0, Species::CaliforniaRedFir));
    assert!((hem_fir.corrected.bound().to_percent() - 19.2).abs() < 0.051);
    assert_eq!(hem_fir.may_read_low.map(|low| low.points), Some(mc(2.0)));
    // 17.5 as Douglas fir-larch is western larch, which is the wetter of the two.
    let larch = stamped(17.5, Species::DouglasFirLarch).value;
    assert_eq!(larch.corrected, alone(17.5, Species::WesternLarch));
    assert!(larch.corrected > alone(17.5, Species::DouglasFir));
    assert_eq!(larch.may_read_low, None);
    // Spruce-pine-fir rests on Sitka spruce alone: 18.3, and as black spruce 20.3 (from memory).
    let spruce = stamped(17.5, Species::SprucePineFir);
    assert_eq!(spruce.value.corrected, alone(17.5, Species::SitkaSpruce));
    assert!(spruce.value.at_worst() >= mc(20.3) && spruce.value.at_worst() < mc(21.5));
    assert!(says(&spruce, "black spruce") && says(&spruce, "jack pine") && says(&spruce, "3 points low"));
    let southern = stamped(17.5, Species::SouthernPine);
    assert!(says(&southern, "loblolly pine, slash pine"));
}

#[test]
fn wood_that_nobody_named_may_read_low_and_panel_is_out_of_that_question() {
    let plain = |wood| correct(&showing(17.5), Some(&species_only()), wood, &WoodTemperature::NotRead).value;
    let points = |wood| plain(wood).may_read_low.map(|low| low.points);
    assert_eq!(points(lumber(Species::Unknown)), Some(mc(5.0)));
    assert_eq!(points(lumber(Species::WesternRedcedar)), Some(mc(5.0)));
    assert_eq!(points(lumber(Species::DouglasFir)), None);
    assert_eq!(points(Wood { material: Material::Plywood, species: None }), None);
    assert_eq!(plain(lumber(Species::Unknown)).at_worst(), mc(22.5));
    let meterless = correct(&showing(17.5), None, lumber(Species::DouglasFir), &WoodTemperature::NotRead).value;
    let low = meterless.may_read_low.unwrap();
    assert!(low.is_by_wood() && low.is_by_cold(), "nobody said which meter it is from");
    // By the chart 4.2 is added to 17.5 % at 32 °F (P-secondary, between its rows).
    assert!((low.points.to_percent() - 9.225).abs() < 0.051 && low.cold < low.points);
    let own = Meter { corrects_species: Answer::Yes, ..species_only() };
    let by_meter = correct(&showing(17.5), Some(&own), lumber(Species::SprucePineFir), &WoodTemperature::NotRead);
    assert_eq!(by_meter.value.may_read_low, None);
}
