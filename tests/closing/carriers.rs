//! What carries the joists, sill, rim joist and girder: each is settled, or keeps the floor open.

use crate::{Site, after, drop_, held_by, length, ready};
use duckboard::engine::condition::Finding;
use duckboard::engine::moisture::Material;
use duckboard::engine::particular::{Part, list};
use duckboard::engine::place::{Element, JoistNumber, Place, Position};
use duckboard::engine::survey::Opening;

const OF_THE_WALL: [(Part, Element); 2] = [(Part::Sill, Element::Sill), (Part::RimJoist, Element::RimJoist)];

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
        site.desk.says(Part::Girder(1), &list::PLIES_END, "over piers");
    });
}

/// A ply that ends between piers carries nothing there ([`Source::BuiltUpGirders`]).
///
/// [`Source::BuiltUpGirders`]: duckboard::engine::sources::Source::BuiltUpGirders
#[test]
fn a_girder_there_is_not_sound_until_it_is_said_where_its_plies_end() {
    let girders = |said: &'static [(u16, &'static str)]| {
        move |site: &mut Site| {
            site.desk.says(Part::House, &list::GIRDER_NEAR, "yes");
            for (number, plies) in said {
                site.desk.says(Part::Girder(*number), &list::STATE, "sound");
                if !plies.is_empty() {
                    site.desk.says(Part::Girder(*number), &list::PLIES_END, plies);
                }
            }
        }
    };
    held_by(girders(&[(1, "")]), "nobody said where the plies of girder 1 end");
    held_by(girders(&[(1, "over piers"), (2, "")]), "nobody said where the plies of girder 2 end");
    held_by(girders(&[(1, "between piers")]), "plies end between piers");
    ready(girders(&[(1, "over piers"), (2, "it is one piece")]));
    // What an engineer has seen to is as that engineer says; where none is near, nothing is asked.
    ready(|site| {
        site.desk.says(Part::House, &list::GIRDER_NEAR, "yes");
        site.desk.says(Part::Girder(1), &list::DONE, "as the engineer says");
    });
    ready(|site| {
        site.desk.says(Part::Girder(1), &list::STATE, "sound");
        site.desk.says(Part::House, &list::GIRDER_NEAR, "no");
    });
    // Probed at its place alone, it is the first.
    let probed = |site: &mut Site| {
        site.desk.says(Part::House, &list::GIRDER_NEAR, "yes");
        let place = site.place(Element::Girder, 4);
        site.finds(Finding::Sound, Some(place));
    };
    held_by(probed, "nobody said where the plies of girder 1 end");
    ready(|site| {
        probed(site);
        site.desk.says(Part::Girder(1), &list::PLIES_END, "over piers");
    });
    // Which of two was probed its place does not tell, though of one alone more than its plies was said.
    held_by(
        |site| {
            probed(site);
            site.desk.says(Part::Girder(1), &list::PLIES_END, "over piers");
            site.desk.says(Part::Girder(2), &list::PLIES_END, "over piers");
        },
        "nobody said that girder 2 is sound",
    );
    held_by(
        |site| {
            girders(&[(1, "over piers")])(site);
            site.desk.says(Part::Girder(2), &list::PLIES_END, "over piers");
        },
        "nobody said that girder 2 is sound",
    );
    // A new girder is built anew.
    let replaced = |site: &mut Site| {
        girders(&[(1, "over piers")])(site);
        site.desk.says(Part::Girder(1), &list::DONE, "replaced");
    };
    held_by(replaced, "nobody said where the plies of girder 1 end");
    held_by(
        |site| {
            replaced(site);
            site.desk.says(Part::Girder(1), &list::DONE, "ends mended");
        },
        "nobody said where the plies of girder 1 end",
    );
    ready(|site| {
        replaced(site);
        site.desk.says(Part::Girder(1), &list::PLIES_END, "it is one piece");
    });
}

#[test]
fn a_girder_is_looked_at_again_when_what_comes_out_was_placed_anew() {
    let girder = |looked: bool| {
        move |site: &mut Site| {
            site.desk.says(Part::Girder(1), &list::STATE, "sound");
            site.desk.says(Part::Girder(1), &list::PLIES_END, "over piers");
            moved(site, "30");
            site.desk.says(Part::House, &list::GIRDER_NEAR, "yes");
            if looked {
                site.desk.says(Part::Girder(1), &list::STATE, "sound");
                site.desk.says(Part::Girder(1), &list::PLIES_END, "over piers");
            }
        }
    };
    held_by(girder(false), "nobody said that girder 1 is sound");
    ready(girder(true));
}

#[test]
fn what_is_not_there_is_not_said_to_have_been_looked_at() {
    let found = |site: &Site| {
        let conditions = site.close_in().value.conditions;
        conditions.into_iter().find(|it| it.what.contains("sill and girder")).unwrap().found
    };
    assert_eq!(found(&Site::ready()), "none is within a bay of it");
    let looked_at = after(|site| {
        site.desk.says(Part::House, &list::GIRDER_NEAR, "yes");
        site.desk.says(Part::Girder(1), &list::STATE, "sound");
        site.desk.says(Part::Girder(1), &list::PLIES_END, "over piers");
    });
    assert_eq!(found(&looked_at), "what is there was looked at, and is");
}

/// Moves the opening to so far from the wall at which distances along joists start; then
/// somebody looks again whether a girder is near.
fn moved(site: &mut Site, out: &str) {
    let opening = site.desk.job().now.openings().iter().next().map(|(id, it)| (*id, it.value.clone())).unwrap();
    site.desk.correct(opening.0, Opening { out: length(out), ..opening.1 });
    site.desk.says(Part::House, &list::GIRDER_NEAR, "no");
}

/// A place on a member at a joist, so far along.
fn at(site: &mut Site, element: Element, joist: u16, along: &str) -> duckboard::engine::entry::EntryId {
    let position = Position::OnJoist { joist: JoistNumber::new(joist).unwrap(), along: Some(length(along)) };
    site.desk.log(Place { element, position, face: None, height: None, chalk: None })
}

/// An opening 16 in from a wall, which is a bay here, is by the sill; one farther in is not.
#[test]
fn rim_joist_and_sill_are_asked_for_where_what_comes_out_lies_by_a_wall() {
    ready(|site| moved(site, "16 1/16"));
    held_by(|site| moved(site, "16"), "nobody said that the sill there is sound");
    held_by(|site| moved(site, "12"), "nobody said that the rim joist there is sound");
    ready(|site| {
        moved(site, "12");
        for (part, _) in OF_THE_WALL {
            site.desk.says(part, &list::STATE, "sound");
        }
    });
    // The opening lies from 40 to 80 in along that wall; joist 2 is at 32 in and joist 6 at 96.
    for joist in [2, 3, 6] {
        ready(|site| {
            moved(site, "12");
            for (_, element) in OF_THE_WALL {
                let place = at(site, element, joist, "0");
                site.finds(Finding::Sound, Some(place));
            }
        });
    }
}

#[test]
fn an_awl_in_the_sill_tells_nothing_of_the_rim_joist() {
    let only = |looked_at: Element| {
        let site = after(|site| {
            moved(site, "12");
            let place = at(site, looked_at, 3, "0");
            site.finds(Finding::Sound, Some(place));
        });
        site.in_the_way().concat()
    };
    for [looked_at, other] in [[Element::Sill, Element::RimJoist], [Element::RimJoist, Element::Sill]] {
        let says = only(looked_at);
        let is_asked = |element: Element| says.contains(&format!("the {} there", element.label().to_lowercase()));
        assert!(is_asked(other) && !is_asked(looked_at), "{says}");
    }
}

#[test]
fn a_sill_looked_at_elsewhere_or_before_the_opening_was_placed_is_not_the_one_there() {
    for (joist, along) in [(7, "0"), (3, "10'"), (3, "3'")] {
        held_by(
            |site| {
                moved(site, "12");
                for (_, element) in OF_THE_WALL {
                    let place = at(site, element, joist, along);
                    site.finds(Finding::Sound, Some(place));
                }
            },
            "nobody said that the sill there is sound",
        );
    }
    held_by(
        |site| {
            for (part, _) in OF_THE_WALL {
                site.desk.says(part, &list::STATE, "sound");
            }
            moved(site, "12");
        },
        "nobody said that the sill there is sound",
    );
    held_by(
        |site| {
            moved(site, "12");
            for (part, _) in OF_THE_WALL {
                site.desk.says(part, &list::STATE, "sound");
            }
            let side = *site.desk.job().now.sides().keys().nth(2).unwrap();
            site.desk.opening(side, ["64", "0", "16", "24"]);
        },
        "nobody said that the rim joist there is sound",
    );
}

/// An awl finds rot. Wood that is wet and not yet rotten it does not find.
#[test]
fn what_carries_the_joists_and_was_never_read_is_said_beside_ready() {
    let says = |change: &dyn Fn(&mut Site)| {
        let site = after(change);
        let known = site.close_in();
        assert!(known.value.decision.is_ready(), "{:#?}", site.in_the_way());
        known.doubts.into_iter().find(|doubt| doubt.contains("an awl finds rot")).unwrap_or_default()
    };
    let reads = |site: &mut Site, element, material| {
        let place = site.place(element, 3);
        site.read(place, "12", material);
    };
    let girder = |site: &mut Site| {
        site.desk.says(Part::House, &list::GIRDER_NEAR, "yes");
        site.desk.says(Part::Girder(1), &list::STATE, "sound");
        site.desk.says(Part::Girder(1), &list::PLIES_END, "over piers");
    };
    assert_eq!(says(&|_| ()), "", "nothing that carries them is near");
    assert!(says(&girder).contains("nobody read the girder there"));
    for material in [Material::Solid, Material::Treated] {
        let and_read = |site: &mut Site| {
            girder(site);
            reads(site, Element::Girder, material);
        };
        assert_eq!(says(&and_read), "", "{material:?}");
    }
    let by_a_wall = |site: &mut Site| {
        moved(site, "6");
        site.desk.says(Part::RimJoist, &list::STATE, "sound");
        site.desk.says(Part::Sill, &list::STATE, "sound");
    };
    assert!(says(&by_a_wall).contains("nobody read the rim joist and the sill there"));
}

/// An opening from wall to wall is by both: one end looked at is not the other.
#[test]
fn a_sill_is_looked_at_at_every_wall_that_the_opening_comes_near() {
    let sound_at = |ends: &'static [&'static str]| {
        move |site: &mut Site| {
            let opening = *site.desk.job().now.openings().keys().next().unwrap();
            let was = site.desk.job().now.openings().get(&opening).unwrap().value.clone();
            site.desk.correct(opening, Opening { out: length("6"), width: length("9'"), ..was });
            site.desk.says(Part::House, &list::GIRDER_NEAR, "no");
            for along in ends {
                for (_, element) in OF_THE_WALL {
                    let place = at(site, element, 4, along);
                    site.finds(Finding::Sound, Some(place));
                }
            }
        }
    };
    held_by(sound_at(&["0"]), "nobody said that the sill there is sound");
    held_by(sound_at(&["10'"]), "nobody said that the sill there is sound");
    ready(sound_at(&["0", "10'"]));
}

#[test]
fn what_was_done_to_a_sill_tells_its_state_only_when_it_is_new_or_an_engineers() {
    let done = |what: &'static str| {
        move |site: &mut Site| {
            moved(site, "12");
            for (part, _) in OF_THE_WALL {
                site.desk.says(part, &list::DONE, what);
            }
        }
    };
    for what in ["ends mended", "sistered", "not yet"] {
        held_by(done(what), "nobody said that the sill there is sound");
    }
    ready(done("replaced"));
    ready(done("as the engineer says"));
}

/// Wood does not heal: what was decayed in one visit is not sound in the next by a word.
#[test]
fn a_member_that_was_unsound_is_sound_again_only_when_it_is_new_or_an_engineers() {
    let decayed = |site: &mut Site| {
        moved(site, "12");
        site.desk.says(Part::RimJoist, &list::STATE, "sound");
        site.desk.says(Part::Sill, &list::STATE, "decayed");
    };
    let later = |site: &mut Site| {
        decayed(site);
        site.visit("2026-11-02T08:00:00-05:00");
        site.desk.says(Part::Sill, &list::STATE, "sound");
    };
    held_by(later, "Sill: decayed");
    let done = |what: &'static str| {
        after(|site| {
            later(site);
            site.desk.says(Part::Sill, &list::DONE, what);
        })
    };
    let names_it = |site: &Site| site.in_the_way().iter().any(|line| line.contains("Sill: decayed"));
    assert!(names_it(&done("sistered")) && !names_it(&done("replaced")) && !names_it(&done("as the engineer says")));
    // A slip of the finger, put right at once.
    ready(|site| {
        decayed(site);
        site.desk.says(Part::Sill, &list::STATE, "sound");
    });
}

#[test]
fn every_girder_that_was_spoken_of_is_looked_at() {
    let girders = |site: &mut Site| {
        site.desk.says(Part::House, &list::GIRDER_NEAR, "yes");
        site.desk.says(Part::Girder(1), &list::STATE, "sound");
        site.desk.says(Part::Girder(1), &list::PLIES_END, "over piers");
        site.desk.says(Part::Girder(2), &list::DEPTH, "7 1/4");
    };
    held_by(girders, "nobody said that girder 2 is sound");
    ready(|site| {
        girders(site);
        site.desk.says(Part::Girder(2), &list::STATE, "sound");
        site.desk.says(Part::Girder(2), &list::PLIES_END, "over piers");
    });
    held_by(
        |site| {
            let opening = site.desk.job().now.openings().iter().next().map(|(id, it)| (*id, it.value.clone())).unwrap();
            site.desk.correct(opening.0, Opening { out: length("30"), ..opening.1 });
        },
        "no girder was near, before what comes out was placed as it is now",
    );
}

/// A place on a girder does not tell which girder it is: what is done to one answers for no
/// place on another.
#[test]
fn decay_at_a_place_on_a_girder_is_answered_at_that_place() {
    let replaced = |site: &mut Site| {
        let place = site.place(Element::Girder, 5);
        site.finds(Finding::Rotten, Some(place));
        site.desk.says(Part::House, &list::GIRDER_NEAR, "yes");
        site.desk.says(Part::Girder(1), &list::DONE, "replaced");
        site.desk.says(Part::Girder(1), &list::PLIES_END, "it is one piece");
        place
    };
    held_by(|site| drop_(replaced(site)), "nobody said on which girder");
    ready(|site| {
        let place = replaced(site);
        site.finds(Finding::Sound, Some(place));
    });
    held_by(
        |site| {
            let place = replaced(site);
            let other = site.place(Element::Girder, 3);
            site.finds(Finding::Sound, Some(other));
            assert_ne!(place, other);
        },
        "nobody said on which girder",
    );
}

/// Found at a place, it is girder 2 that is cracked: what is done to that one ends it, and an awl there.
#[test]
fn what_was_found_at_a_place_on_a_girder_is_ended_by_what_is_done_to_any() {
    let seen_to = |number: u16| {
        move |site: &mut Site| {
            for girder in 1..=2 {
                site.desk.says(Part::Girder(girder), &list::STATE, "sound");
                site.desk.says(Part::Girder(girder), &list::PLIES_END, "over piers");
            }
            let at = site.place(Element::Girder, 3);
            site.finds(Finding::Cracked, Some(at));
            site.desk.says(Part::Girder(number), &list::DONE, "as the engineer says");
            site.finds(Finding::Sound, Some(at));
        }
    };
    ready(seen_to(1));
    ready(seen_to(2));
}
