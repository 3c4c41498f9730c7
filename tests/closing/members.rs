//! Joists and what carries them: each is settled, or keeps the floor open.

use crate::house::{inches, joist};
use crate::{Site, drop_, held_by, length, ready};
use duckboard::engine::condition::Finding;
use duckboard::engine::framing::{Damage, DamageKind, Depth};
use duckboard::engine::moisture::Answer;
use duckboard::engine::particular::{Part, list};
use duckboard::engine::place::{Element, Face};
use duckboard::engine::survey::Opening;

#[test]
fn a_joist_within_a_bay_of_what_comes_out_holds_closing_up_until_it_is_settled() {
    // The opening lies over joists 3 to 5: 2 and 6 are within a bay, 1 and 7 are not.
    let soft = |site: &mut Site, number| {
        let depth = Some(Depth::Is(inches("3")));
        let [from, to] = [Some(inches("2'")), Some(inches("4'"))];
        let face = Some(Face::LowerEdge);
        drop_(site.desk.log(Damage { from, to, face, depth, ..Damage::new(joist(number), DamageKind::Soft) }));
    };
    for number in [2, 3, 4, 5, 6] {
        held_by(|site| soft(site, number), &format!("joist {number}: soft 3\" deep"));
    }
    ready(|site| soft(site, 1));
    ready(|site| soft(site, 7));
    let done = |what: &'static str| {
        move |site: &mut Site| {
            soft(site, 3);
            drop_(site.desk.says(joist(3), &list::DONE, what));
        }
    };
    held_by(done("sistered"), "have an engineer look");
    ready(done("as the engineer says"));
    held_by(
        |site| {
            done("as the engineer says")(site);
            soft(site, 3);
        },
        "joist 3: soft 3\" deep",
    );
}

/// Awl depths, findings and readings are one picture of a joist.
#[test]
fn whatever_speaks_against_a_joist_there_keeps_the_floor_open() {
    held_by(|site| drop_(site.desk.says(joist(4), &list::SOFT_DEPTH, "3")), "joist 4");
    held_by(|site| drop_(site.desk.says(joist(4), &list::AWL, "goes in")), "log where and how deep");
    held_by(|site| drop_(site.desk.hole(4, ("30", "34"), "2")), "a hole of 4\"");
    held_by(|site| drop_(site.desk.says(joist(4), &list::MEMBER, "truss")), "who allows its span");
    held_by(|site| drop_(site.desk.says(Part::House, &list::GRADE, "unknown")), "find its stamp");
    for finding in [Finding::Soft, Finding::Rotten, Finding::Cracked, Finding::Strands, Finding::Insects] {
        let on_joist = |site: &mut Site| {
            let place = site.places[3];
            site.finds(finding, Some(place));
        };
        held_by(on_joist, "joist 4");
    }
}

#[test]
fn joists_of_which_the_same_is_to_be_said_stand_in_one_line() {
    let site = crate::after(|site| {
        for number in [2, 5] {
            site.desk.says(joist(number), &list::CUTS, "cannot see");
        }
    });
    assert_eq!(site.in_the_way().len(), 1, "{:#?}", site.in_the_way());
    assert!(site.in_the_way()[0].starts_with("joists 2, 5: not enough to say"), "{:#?}", site.in_the_way());
}

#[test]
fn what_carries_the_joists_is_sound_or_seen_to() {
    for element in [Element::Sill, Element::RimJoist, Element::Girder] {
        for finding in [Finding::Soft, Finding::Rotten, Finding::Cracked] {
            let found = |site: &mut Site| {
                let place = site.place(element, 3);
                site.finds(finding, Some(place));
            };
            held_by(found, element.label());
        }
    }
    held_by(|site| drop_(site.desk.says(Part::Pier(1), &list::STATE, "settled")), "Pier 1: settled");
    held_by(|site| drop_(site.desk.says(Part::House, &list::GIRDER_NEAR, "yes")), "nobody said that the girder there");
    ready(|site| {
        site.desk.says(Part::House, &list::GIRDER_NEAR, "yes");
        site.desk.says(Part::Girder(1), &list::STATE, "sound");
    });
}

/// An opening 16 in from a wall, which is a bay here, is by the sill; one farther in is not.
#[test]
fn rim_joist_and_sill_are_asked_for_where_what_comes_out_lies_by_a_wall() {
    let at = |out: &'static str| {
        move |site: &mut Site| {
            let opening = site.desk.job().now.openings().iter().next().map(|(id, it)| (*id, it.value.clone())).unwrap();
            let moved = Opening { out: length(out), ..opening.1 };
            drop_(site.desk.correct(opening.0, moved));
        }
    };
    ready(at("16 1/16"));
    held_by(at("16"), "nobody said that the sill there is sound");
    held_by(at("12"), "nobody said that the rim joist there is sound");
    ready(|site| {
        at("12")(site);
        for part in [Part::Sill, Part::RimJoist] {
            site.desk.says(part, &list::STATE, "sound");
        }
    });
    ready(|site| {
        at("12")(site);
        for element in [Element::Sill, Element::RimJoist] {
            let place = site.place(element, 3);
            site.finds(Finding::Sound, Some(place));
        }
    });
}

#[test]
fn decay_in_the_floor_itself_or_at_no_joist_is_cut_out_first() {
    let in_the_floor = |site: &mut Site| {
        let place = site.place(Element::SubfloorBelow, 3);
        site.finds(Finding::Rotten, Some(place));
    };
    held_by(in_the_floor, "found in the floor");
    held_by(|site| site.finds(Finding::Soft, None), "on no joist's number");
    ready(|site| {
        in_the_floor(site);
        site.answers(&[("decay_is_out", Answer::Yes)]);
    });
    held_by(
        |site| {
            site.answers(&[("decay_is_out", Answer::Yes)]);
            in_the_floor(site);
        },
        "found in the floor",
    );
}
