//! Files that leave something out on purpose.

use crate::job_samples::*;
use crate::{reread, with_field};
use duckboard::engine::entry::{EntryId, Label, Role};
use duckboard::engine::job::{Act, Book, Entry, Fact, Observation, Record, Thing};
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
    assert_eq!((book.job().missing(), job.job().missing()), (0, 0));
    assert!(reread(&kept).left_out.contains(&LeftOut::Client));
}

/// It might name the client in a later version's words, and it might be what keeps a floor open.
#[test]
fn what_cannot_be_read_is_left_out_with_the_client_and_missed_until_it_comes() {
    for json in [r#"{"id":"ID","act":{"record":{"gas_leak":"Zebra"}}}"#, r#"{"id":"ID","but":"Zebra","#] {
        let mut book = first_book();
        let entry = pen(&book, FIRST_PHONE, "QZ", Role::CrewLead).record(Fact::Archived(false));
        let known = serde_json::to_string(&entry).unwrap();
        let json = json.replace("ID", &entry.id.to_string());
        let json = if json.ends_with(',') { json + known.split_once(',').unwrap().1 } else { json };
        book.add(Record::read(&json).unwrap());
        assert!(book.job().unknown.contains_key(&entry.id), "{json}");
        let whole = JobFile::of(&book, JOB, 1, made());
        let bare = reread(&without_client(whole.clone()));
        assert!(!text(&bare).contains("Zebra"));
        assert!(bare.left_out.contains(&LeftOut::NotRead) && bare.book().job().unknown.is_empty());
        assert!(bare.book().job().absent.contains(&entry.id));
        assert!(without_client(bare.clone()).book().job().absent.contains(&entry.id), "twice is once");
        let merged = merge(bare, whole).unwrap().book();
        assert_eq!(merged.job(), book.job());
    }
    assert!(!without_client(first_file()).left_out.contains(&LeftOut::NotRead));
}

/// All but who read which caution: nothing that was found looks better on the second phone.
#[test]
fn an_invitation_brings_a_second_phone_all_that_anything_is_decided_by() {
    let mut book = first_book();
    let ghost = Record::read(&format!("{{\"id\":\"{}\",\"act\":{{\"ghost\":1}}}}", book.log().next_id(FIRST_PHONE)));
    book.add(ghost.unwrap());
    let invited = reread(&invitation(&book, JOB, 2, made()));
    let job = invited.book();
    let (mine, theirs) = (&book.job().now, &job.job().now);
    assert_eq!(
        (mine.readings(), mine.air(), mine.conditions()),
        (theirs.readings(), theirs.air(), theirs.conditions())
    );
    assert_eq!((mine.damages(), mine.checks(), mine.facts()), (theirs.damages(), theirs.checks(), theirs.facts()));
    let is_read = |thing: &&Thing<Observation>| matches!(thing.value, Observation::Acknowledgement(_));
    assert!(mine.things().any(|thing| is_read(&thing)) && !theirs.things().any(|thing| is_read(&thing)));
    assert!(mine.things().filter(|thing| !is_read(thing)).eq(theirs.things()));
    assert_eq!((&job.job().gone, &job.job().unknown), (&book.job().gone, &book.job().unknown));
    assert!(invited.left_out.contains(&LeftOut::CautionsRead) && invited.photos.is_empty());
    assert!(job.job().faults.is_empty() && job.job().absent.is_empty());
    // Every id that was given is accounted for: nothing else is missed.
    assert!(book.job().missing() == 0 && job.job().missing() == 0);
    let ids = |book: &Book| book.log().records().map(Record::id).collect::<Vec<_>>();
    assert_eq!(ids(&book), ids(&job));
}

/// What an entry said that is not here may matter, unless somebody who knew it says that it does not.
#[test]
fn an_entry_that_decides_nothing_is_not_missed_and_comes_all_the_same() {
    let entry = first_book().log().records().next().unwrap().clone();
    let [lost, told] = [Record::absent(entry.id()), Record::left_out(entry.id())];
    assert_eq!(told.json(), format!(r#"{{"id":"{}","act":{{"absent":{{"decides":"nothing"}}}}}}"#, entry.id()));
    assert_eq!(Record::read(told.json()).unwrap().content(), told.content());
    let missing = |all: &[&Record]| Book::of(all.iter().map(|it| (*it).clone())).job().missing();
    assert_eq!([missing(&[&lost]), missing(&[&told])], [1, 0]);
    assert_eq!([missing(&[&lost, &told]), missing(&[&told, &lost])], [0, 0], "whichever comes first");
    for way in [[&told, &entry], [&entry, &told]] {
        let book = Book::of(way.map(Clone::clone));
        assert_eq!(book.log().get(entry.id()).map(Record::json), Some(entry.json()));
    }
}

/// What refers to an entry that is not here is kept out of no invitation: it may still be followed.
#[test]
fn an_invitation_carries_what_cannot_be_followed_and_what_hangs_on_a_caution_by_mistake() {
    let mut book = first_book();
    let read = *book.job().now.acknowledged().first().unwrap().0;
    let mut pen = pen(&book, FIRST_PHONE, "QZ", Role::CrewLead);
    let nowhere = EntryId { count: 1, device: SECOND_PHONE };
    for entry in [pen.withdraw(nowhere), pen.correct(vec![read], Fact::Archived(false))] {
        book.add(Record::of(entry).unwrap());
    }
    assert_eq!(book.job().faults.len(), 2);
    assert_eq!(invitation(&book, JOB, 2, made()).book().job().faults, book.job().faults);
}

/// As format 1.4 and before made them: without what was read and found.
fn old_invitation(book: &Book) -> JobFile {
    let mut file = JobFile::of(book, JOB, 2, made());
    let is_kept = |entry: &Entry| matches!(&entry.act, Act::Record(Observation::Visit(_) | Observation::Place(_)));
    file.records.retain(|record| record.entry().is_some_and(is_kept));
    file.left_out.insert(LeftOut::Readings);
    reread(&file)
}

#[test]
fn an_old_invitation_lacks_what_its_phone_logged_until_that_comes() {
    let invited = old_invitation(&first_book());
    assert_eq!(invited.book().job().absent.iter().count(), 1);
    let second = JobFile::of(&second_book(&invited.records), JOB, 1, made());
    assert_eq!(reread(&second).book().job().absent.iter().count(), 1, "it goes along with all that is sent on");
    let both = reread(&merge(first_file(), merge(second, invited.clone()).unwrap()).unwrap());
    assert!(both.left_out.contains(&LeftOut::Readings) && both.book().job().absent.is_empty());
    let whole = reread(&merge(invited, first_file()).unwrap());
    assert!(whole.book().job().absent.is_empty(), "merged with all of the one phone");
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
