//! Where the water comes from, the soil, and what is alive or dangerous.

use crate::{Site, after, held_by, ready};
use duckboard::engine::condition::Finding;
use duckboard::engine::moisture::Answer;

#[test]
fn hazards_hold_closing_up_until_they_are_said_to_be_gone_after_they_were_found() {
    let hazards = [
        (Finding::Insects, "gone.insects"),
        (Finding::Mould, "gone.mold"),
        (Finding::Sewage, "gone.sewage"),
        (Finding::StandingWater, "gone.standing_water"),
        (Finding::Strands, "gone.strands"),
        (Finding::BareWire, "gone.bare_wire"),
        (Finding::Dripping, "gone.dripping"),
    ];
    for (finding, check) in hazards {
        let words = format!("{} was found", finding.label().to_ascii_lowercase());
        held_by(|site| site.finds(finding, None), &words);
        for answer in [Answer::No, Answer::Unknown] {
            held_by(
                |site| {
                    site.finds(finding, None);
                    site.answers(&[(check, answer)]);
                },
                &words,
            );
        }
        ready(|site| {
            site.finds(finding, None);
            site.answers(&[(check, Answer::Yes)]);
        });
        held_by(
            |site| {
                site.answers(&[(check, Answer::Yes)]);
                site.finds(finding, None);
            },
            &words,
        );
    }
    for finding in [Finding::Sound, Finding::Stained, Finding::Wire, Finding::Pipe, Finding::SinkAbove] {
        ready(|site| site.finds(finding, None));
    }
}

#[test]
fn the_source_is_known_and_dealt_with() {
    held_by(|site| site.answers(&[("dealt_with.ground", Answer::No)]), "ground moisture is not dealt with");
    let seen = ["bare_soil", "damp_soil", "dew_beads", "cold_months"];
    ready(|site| site.answers(&seen.map(|check| (check, Answer::Unknown))));
    let take_back = |site: &mut Site| {
        let checks = site.desk.job().now.checks().iter().filter(|(_, it)| seen.contains(&it.value.of.as_str()));
        let ids: Vec<_> = checks.map(|(id, _)| *id).collect();
        for id in ids {
            site.desk.withdraw(id);
        }
    };
    held_by(take_back, "answer the");
}

#[test]
fn soil_that_was_bare_is_covered_and_stays_so() {
    held_by(|site| site.answers(&[("ground_covered_now", Answer::No)]), "the soil is not covered");
    held_by(|site| site.answers(&[("ground_covered_now", Answer::Unknown)]), "nobody said that the soil is covered");
    held_by(|site| site.answers(&[("bare_soil", Answer::Yes)]), "bare again");
    let never_said = after(|site| {
        let covered = site.desk.job().now.checks().iter().find(|(_, it)| it.value.of.as_str() == "ground_covered_now");
        let covered = covered.map(|(id, _)| *id).unwrap();
        site.desk.withdraw(covered);
    });
    assert!(never_said.in_the_way()[0].contains("nobody said that it is covered"), "{:#?}", never_said.in_the_way());
}

/// A direct sign of a cause holds closing, whether it makes that cause likely or not.
#[test]
fn a_sign_of_water_that_was_seen_holds_until_its_cause_is_dealt_with_after_it() {
    let signs = [
        ("water_on_soil", "water_below"),
        ("wall_marks", "water_below"),
        ("meter_turns", "supply"),
        ("wet_fitting", "supply"),
        ("wet_fitting", "drain"),
        ("wet_in_use", "drain"),
        ("drain_smell", "drain"),
        ("runs_down", "wall"),
        ("gutter", "wall"),
        ("gutter", "water_below"),
        ("open_sill", "opening"),
        ("spilt_once", "spill"),
        ("under_appliance", "appliance"),
        ("wet_in_cycle", "appliance"),
        ("drip_line", "cold_runs"),
        ("condensate_ends", "condensate"),
        ("dryer_duct", "dryer"),
        ("lint", "dryer"),
        ("sprinkler_hits", "sprinkler"),
        ("after_watering", "sprinkler"),
        ("other_water", "other"),
    ];
    for (sign, cause) in signs {
        let dealt_with = format!("dealt_with.{cause}");
        let said = |answers: &[(&str, Answer)]| after(|site| site.answers(answers));
        let yes = (sign, Answer::Yes);
        let names_it = |site: &Site| site.in_the_way().iter().any(|line| line.contains("is not dealt with"));
        for before in [&[yes][..], &[(&dealt_with, Answer::Yes), yes], &[yes, (&dealt_with, Answer::No)]] {
            assert!(names_it(&said(before)), "{before:?}");
        }
        let settled = said(&[yes, (&dealt_with, Answer::Yes), ("dealt_with.ground", Answer::Yes)]);
        assert!(settled.decision().is_ready(), "{sign}: {:#?}", settled.in_the_way());
    }
    for no_water in ["vents_open", "cooled_above"] {
        ready(|site| site.answers(&[(no_water, Answer::Yes), ("dealt_with.ground", Answer::Yes)]));
    }
}

#[test]
fn a_sign_is_put_right_by_a_no_in_the_same_visit_and_not_by_one_in_a_later() {
    let smell = ("drain_smell", Answer::Yes);
    ready(|site| site.answers(&[smell, ("drain_smell", Answer::No)]));
    held_by(|site| site.answers(&[smell, ("drain_smell", Answer::Unknown)]), "it smells of sewage or soap");
    held_by(
        |site| {
            site.answers(&[smell]);
            site.visit("2026-11-02T08:00:00-05:00");
            site.answers(&[("drain_smell", Answer::No)]);
        },
        "it smells of sewage or soap",
    );
}

#[test]
fn dealt_with_counts_only_when_it_was_said_after_all_that_speaks_for_the_cause() {
    for sign in ["bare_soil", "damp_soil", "dew_beads", "cold_months"] {
        held_by(
            |site| site.answers(&[(sign, Answer::Yes)]),
            "ground moisture is not dealt with: more speaks for it since that was said",
        );
    }
    held_by(
        |site| {
            site.answers(&[("dealt_with.supply", Answer::Yes), ("dealt_with.ground", Answer::Yes)]);
            site.answers(&[("meter_turns", Answer::Yes), ("wet_fitting", Answer::Yes), ("spilt_once", Answer::No)]);
        },
        "plumbing supply",
    );
}

/// The source is an appliance, and it is mended: nobody said a word of the soil.
#[test]
fn soil_that_nobody_looked_at_is_not_known_to_be_covered() {
    let of_the_soil = |answers: &[(&str, Answer)]| {
        after(|site| {
            let checks: Vec<_> = site.desk.job().now.checks().keys().copied().collect();
            for check in checks {
                site.desk.withdraw(check);
            }
            site.answers(&[("under_appliance", Answer::Yes), ("wet_in_cycle", Answer::Yes)]);
            site.answers(&[("meter_turns", Answer::No), ("dealt_with.appliance", Answer::Yes)]);
            site.answers(answers);
        })
    };
    let is_asked = |site: &Site| site.in_the_way().iter().any(|line| line.starts_with("nobody looked at the soil"));
    for unsaid in [&[][..], &[("bare_soil", Answer::Unknown)]] {
        assert!(is_asked(&of_the_soil(unsaid)), "{unsaid:?}");
    }
    for said in [("bare_soil", Answer::No), ("ground_covered_now", Answer::Yes)] {
        let site = of_the_soil(&[said]);
        assert!(!site.in_the_way().iter().any(|line| line.contains("soil")), "{said:?}: {:#?}", site.in_the_way());
    }
}
