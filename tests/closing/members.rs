//! Joists: each is settled, or keeps the floor open.

use crate::house::{inches, joist};
use crate::{Site, after, drop_, held_by, length, ready};
use duckboard::engine::cautions::due;
use duckboard::engine::condition::Finding;
use duckboard::engine::framing::{Damage, DamageKind, Depth};
use duckboard::engine::moisture::Answer;
use duckboard::engine::moisture::Material;
use duckboard::engine::particular::{Part, list};
use duckboard::engine::place::{Element, Face, Place, Position};

#[test]
fn a_joist_within_a_bay_of_what_comes_out_holds_closing_up_until_it_is_settled() {
    // The opening is cut from joist 2 to joist 5: 1 and 6 are within a bay, 7 is not.
    let soft = |site: &mut Site, number| {
        let depth = Some(Depth::Is(inches("3")));
        let [from, to] = [Some(inches("2'")), Some(inches("4'"))];
        let face = Some(Face::LowerEdge);
        drop_(site.desk.log(Damage { from, to, face, depth, ..Damage::new(joist(number), DamageKind::Soft) }));
    };
    for number in [1, 2, 3, 4, 5, 6] {
        held_by(|site| soft(site, number), &format!("joist {number}: soft 3\" deep"));
    }
    ready(|site| soft(site, 7));
    ready(|site| soft(site, 8));
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

/// What really ends it is what is asked for: a sister ends no rot of which nobody said how deep.
#[test]
fn each_joist_is_held_by_what_really_ends_every_reason() {
    let ends = |change: fn(&mut Site)| after(change).in_the_way();
    let rotten: fn(&mut Site) = |site| {
        let place = site.places[2];
        site.finds(Finding::Rotten, Some(place));
    };
    let only = |lines: Vec<String>, ends: &str| {
        assert!(lines.len() == 1 && lines[0].ends_with(ends), "{ends}: {lines:#?}");
    };
    only(ends(rotten), ": do that first, or replace it, and say that it is done");
    only(ends(|site| drop_(site.desk.says(joist(3), &list::BEARING, "1"))), ": mend its ends, and say that it is done");
    let soft: fn(&mut Site) = |site| {
        drop_(site.desk.spot(3, DamageKind::Soft, Some(("4'", "5'")), Some(Face::LowerEdge), "1/2"));
    };
    only(ends(soft), ": sister it, and say that it is done");
    let and_rotten = |site: &mut Site| {
        soft(site);
        let place = site.place(Element::Joist, 3);
        site.finds(Finding::Rotten, Some(place));
    };
    let both = after(and_rotten).in_the_way();
    assert!(!both[0].contains("sister it") && both[0].ends_with("or replace it, and say that it is done"), "{both:#?}");
    // One thing that ends all is asked for once; what it leaves to say is named.
    let most = ends(|site| {
        drop_(site.desk.spot(3, DamageKind::Soft, Some(("1'", "9'")), Some(Face::LowerEdge), "1/2"));
        site.desk.says(joist(3), &list::CUTS, "cannot see");
        site.desk.says(joist(3), &list::BEARING, "1");
    });
    only(most, ": replace it, and say that it is done; mend its ends, and say that it is done");
    let engineers = ends(|site| {
        drop_(site.desk.spot(3, DamageKind::Soft, Some(("2'", "3'")), Some(Face::LowerEdge), "3"));
        site.desk.says(joist(3), &list::CUTS, "cannot see");
        site.desk.says(joist(3), &list::BEARING, "1");
    });
    only(
        engineers,
        "do what they write, and say that it is done; its notches and holes can't be seen: look once the floor is open",
    );
    let settled = after(|site| {
        rotten(site);
        site.desk.does(joist(3), "replaced");
        site.read(site.places[2], "14", Material::Solid);
    });
    assert!(settled.in_the_way().is_empty(), "{:#?}", settled.in_the_way());
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
    let site = after(|site| {
        for number in [2, 5] {
            site.desk.says(joist(number), &list::CUTS, "cannot see");
        }
    });
    assert_eq!(site.in_the_way().len(), 1, "{:#?}", site.in_the_way());
    assert!(site.in_the_way()[0].starts_with("joists 2, 5: not enough to say"), "{:#?}", site.in_the_way());
}

#[test]
fn what_is_said_of_no_joist_that_is_laid_out_holds_closing() {
    let soft = |of: Part| {
        let depth = Some(Depth::Is(inches("5")));
        move |site: &mut Site| drop_(site.desk.log(Damage { depth, ..Damage::new(of, DamageKind::Soft) }))
    };
    held_by(soft(Part::Joists), "All joists: soft");
    held_by(soft(joist(9)), "Joist 9: soft");
    ready(soft(joist(8)));
    held_by(|site| drop_(site.desk.hole(12, ("30", "34"), "2")), "Joist 12: a hole");
    let says = |of: Part, item: duckboard::engine::particular::Item, words: &'static str| {
        move |site: &mut Site| drop_(site.desk.says(of, &item, words))
    };
    held_by(says(Part::Joists, list::AWL, "goes in"), "All joists: an awl goes in");
    held_by(says(Part::Joists, list::AWL, "cannot reach"), "All joists: an awl cannot reach it");
    held_by(says(joist(9), list::AWL, "goes in"), "Joist 9: an awl goes in");
    held_by(says(Part::Joists, list::SOFT_DEPTH, "1"), "All joists: soft");
    held_by(says(joist(12), list::NOTCH, "1"), "Joist 12: notched");
    ready(says(Part::Joists, list::AWL, "stops everywhere"));
    ready(says(joist(12), list::SOFT_DEPTH, "0"));
    ready(|site| drop_(site.desk.spot(12, DamageKind::Soft, None, None, "0")));
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

/// By a number, or on the plan where the joist runs: 16 in apart here, the first at 16.
#[test]
fn joists_that_were_found_soft_on_the_plan_are_counted_as_what_they_are() {
    let is_due = |all: [&'static str; 3]| {
        let site = after(|site| {
            for right in all {
                let position = Position::OnPlan { right: length(right), down: length("3'") };
                let place = Place { element: Element::Joist, position, face: None, height: None, chalk: None };
                let at = site.desk.log(place);
                site.finds(Finding::Soft, Some(at));
            }
        });
        due(site.desk.job(), None).iter().any(|caution| caution.name == "weak_framing")
    };
    assert_eq!([is_due(["32", "48", "80"]), is_due(["32", "48", "48"])], [true, false]);
}
