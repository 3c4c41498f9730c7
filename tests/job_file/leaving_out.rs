//! Files that leave something out on purpose.

use crate::job_samples::*;
use crate::{reread, with_field};
use duckboard::engine::entry::{Label, Role};
use duckboard::engine::job::{Fact, Record};
use duckboard::file::{JobFile, LeftOut, invitation, merge, read, without_client, without_photos};

#[test]
fn a_file_without_photos_keeps_what_was_said_of_them() {
    let file = reread(&without_photos(first_file()));
    assert!(file.photos.is_empty() && file.left_out.contains(&LeftOut::Photos));
    assert_eq!(file.book().job(), first_book().job());
}

#[test]
fn no_word_of_the_client_is_left() {
    let mut book = first_book();
    // A fact of another kind that was corrected into the site, and a title taken back.
    let mark = fact(&book, |fact| matches!(fact, Fact::CommonMark(_)));
    let mut pen = pen(&book, FIRST_PHONE, "QZ", Role::CrewLead);
    let site = Fact::Site(Label::new("Zebra lane").unwrap());
    let title = pen.record(Fact::Title(Label::new("Zebra house").unwrap()));
    let entries = [pen.correct(vec![mark], site), title.clone(), pen.withdraw(title.id)];
    for entry in entries {
        book.add(Record::of(entry).unwrap());
    }
    let whole = with_field(&text(&JobFile::of(&book, JOB, 1, made())), "\"client\": \"Zebra\"");
    let kept = without_client(read(whole.as_bytes()).unwrap());
    let bare = text(&kept);
    for word in ["Zebra", "An invented", "\"fact\":{\"title\"", "\"site\""] {
        assert!(whole.contains(word) && !bare.contains(word), "{word}");
    }
    let job = kept.book();
    assert!(job.job().faults.is_empty(), "{:?}", job.job().faults);
    assert_eq!(job.job().now.readings(), book.job().now.readings());
    assert!(job.job().is_invented());
    assert!(reread(&kept).left_out.contains(&LeftOut::Client));
}

#[test]
fn an_invitation_brings_a_second_phone_to_the_same_places() {
    let book = first_book();
    let invited = reread(&invitation(&book, JOB, 2, made()));
    let job = invited.book();
    let (mine, theirs) = (&book.job().now, &job.job().now);
    assert_eq!(mine.places(), theirs.places());
    assert_eq!(mine.sides(), theirs.sides());
    assert_eq!((mine.facts(), mine.visits(), mine.meters()), (theirs.facts(), theirs.visits(), theirs.meters()));
    assert!(theirs.readings().is_empty() && theirs.photos().is_empty() && theirs.conditions().is_empty());
    assert!(invited.left_out.contains(&LeftOut::Readings));
    assert!(job.job().faults.is_empty());
}

#[test]
fn two_phones_make_one_job() {
    let invited = invitation(&first_book(), JOB, 2, made());
    let second = JobFile::of(&second_book(&invited.records), JOB, 1, made());
    let both = merge(first_file(), second).unwrap();
    let job = both.book();
    assert_eq!(job.job().now.conditions().len(), first_book().job().now.conditions().len() + 1);
    assert_eq!(job.job().now.readings(), first_book().job().now.readings());
    assert!(job.log().clashes().next().is_none() && job.job().faults.is_empty());
}
