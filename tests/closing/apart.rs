//! What two phones said apart, so that nobody can tell which came last.

use crate::desk::{length, percent};
use crate::house::joist;
use crate::phones::{BETWEEN, CHRISTMAS, lines_of, logs_apart, logs_late_apart, says};
use crate::{Site, after};
use duckboard::engine::job::Fact;
use duckboard::engine::moisture::{Material, Reading, Shown, Species, Wood};
use duckboard::engine::particular::{Item, Part, list, stated};
use duckboard::engine::units::tape::BareUnit;

/// Joists that bear at 16 in may not at 24: which of two layouts is so nobody can tell.
#[test]
fn joists_that_two_phones_laid_out_differently_keep_the_floor_open() {
    let site = after(|site| {
        let mut joists = site.desk.job().now.joists().values().next().unwrap().value.clone();
        site.desk.log(joists.clone());
        joists.spacing = length("24");
        logs_apart(site, CHRISTMAS, joists);
    });
    says(&site.in_the_way(), "nobody can tell which came last");
}

/// Another phone, that did not know, says something of a member after one phone said that it was
/// replaced.
#[test]
fn what_may_have_been_found_after_it_was_mended_keeps_the_floor_open() {
    let is_apart = |part: Part, item: &Item, word: &str| {
        let said = stated(part.clone(), item, word, BareUnit::Inches).unwrap();
        let lines = lines_of(|site| {
            site.desk.says(part, &list::DONE, "replaced");
            logs_apart(site, CHRISTMAS, said);
        });
        lines.iter().any(|line| line.contains("nobody can tell whether it was mended"))
    };
    let girder = |word| is_apart(Part::Girder(1), &list::STATE, word);
    assert_eq!(["decayed", "cracked", "sound"].map(girder), [true, true, false]);
    let awl = |word| is_apart(joist(4), &list::AWL, word);
    assert_eq!(["goes in", "cannot reach", "stops everywhere"].map(awl), [true, true, false]);
    assert!(!is_apart(joist(4), &list::CUTS, "cannot see"), "a question, and nothing that was found");
}

#[test]
fn what_two_phones_call_the_job_is_nothing_that_closing_waits_for() {
    let lines = lines_of(|site| {
        site.desk.log(Fact::Title(crate::desk::label("Blue house")));
        logs_apart(site, CHRISTMAS, Fact::Title(crate::desk::label("The blue one")));
    });
    assert!(!lines.iter().any(|line| line.contains("two phones say")), "{lines:#?}");
}

/// Nobody can tell whether it is of before this visit.
#[test]
fn a_wet_reading_that_was_logged_after_this_visit_began_counts_whichever_visit_it_is_of() {
    let wet = |site: &mut Site, late: bool| {
        let wood = Wood { material: Material::Solid, species: Some(Species::DouglasFir) };
        let meter = Some(site.desk.pins());
        let reading = Reading { meter, ..Reading::new(site.places[3], Shown::Percent(percent("41")), wood) };
        if late { logs_late_apart(site, reading) } else { logs_apart(site, BETWEEN, reading) }
    };
    says(&lines_of(|site| wet(site, true)), "too wet: Joist 4");
    let surely_older = lines_of(|site| wet(site, false));
    assert!(!surely_older.iter().any(|line| line.contains("too wet")), "{surely_older:#?}");
}
