//! The main walk: a whole first visit with a phone in one hand, and everything that may
//! happen to a phone on the way to the office.

use crate::desk::{against_the_schema, office};
use crate::harness::{Phone, Screen, Server, own_path};
use duckboard::engine::job::{Observation, Record};
use duckboard::file::JobFile;
use sha2::{Digest, Sha256};
use std::fs;
use std::path::Path;

const TITLE: &str = "Walked room";

/// What is logged, in the log's words; each stands there until the end.
const EVERYTHING: [&str; 16] = [
    r#"12' 3 1/2", then right"#,
    r#"9' 0", then right"#,
    r#"5' 6", then left"#,
    r#"3' 4 1/4", then right"#,
    r#"6' 9 1/2", then right"#,
    r#"12' 4", then right"#,
    r#"6' 4" × 5' 6", 2' 0" along and 1' 6" out"#,
    r#"9 joists, 1' 4" oc, across side 1"#,
    "Wood temperature: 50.0 °F at Joist 1, lower edge",
    "15 % at Joist 1, lower edge",
    "18 % at Joist 2, lower edge",
    "19 % at Joist 3, lower edge",
    "over the meter's maximum at Joist 4, lower edge",
    "crawl space: 70.0 °F, 80 % RH",
    "Soft at Joist 5, lower edge",
    "1600 × 1200 px at Joist 5, lower edge",
];

/// Each figure that it comes to stands among the answers.
const ANSWERS: [&str; 9] = [
    "133.3 sq ft",
    "To 1/4\"",
    "34.8 sq ft",
    "2 sheets by area",
    "over the meter's maximum",
    "Left in this crawl air, wood settles near",
    "Crawl air condenses at",
    "Would it dry by ventilating alone?",
    "No: outdoor air would wet the wood",
];

/// How many entries a first visit comes to: 2 job, 7 room and sides, 1 opening, 1 joists,
/// 2 wood temperature at a place, 2 meter and its first reading, 6 for three more readings
/// at new places, 2 air, 2 a finding at a place, 1 photo.
const ENTRIES: usize = 2 + 7 + 1 + 1 + 2 + 2 + 6 + 2 + 2 + 1;

#[tokio::test]
async fn a_first_visit_reaches_the_office_whatever_happens_to_the_phone() {
    let mut server = Server::start().await;
    let mut phone = Phone::open(Screen::Tall, server.address()).await;
    phone.introduce("QX").await;
    phone.wait_until_kept().await;
    phone.describe_pins().await;
    phone.begin_job(TITLE).await;
    measure_the_room(&mut phone).await;
    measure_the_opening(&mut phone).await;
    lay_out_the_joists(&mut phone).await;
    read_the_wood(&mut phone).await;
    read_the_air(&mut phone).await;
    look_and_take_a_photo(&mut phone).await;
    phone.all_saved(ENTRIES).await;
    the_answers_are_there(&mut phone).await;

    server.kill();
    phone.reload().await;
    phone.wait_until_started().await;
    everything_is_there(&mut phone).await;

    phone.go_to("Take").await;
    phone.take_up("Meter").await;
    phone.is_asked("Joist 5, lower edge").await;
    phone.keypad("2 3").await;
    phone.half_typed("23").await;
    phone.screenshot("walk-half-typed").await;
    phone.kill().await;
    phone.start_again(server.address()).await;
    phone.open_job(TITLE).await;
    phone.is_asked("Joist 5, lower edge").await;
    phone.half_typed("23").await;
    everything_is_there(&mut phone).await;

    let sent = phone.hand_over(1).await;
    let answers = phone.answers(&ANSWERS).await;
    let file = read_job_file(&sent);
    the_photo_is_whole(&file);
    assert_eq!(file.records.len(), ENTRIES + 1, "the hand-over is logged too");
    assert_eq!(against_the_schema(&fs::read(&sent).unwrap()), Vec::<String>::new());

    the_same_comes_out_of_another_phone(&sent, &file, &answers).await;
    the_office_reads_it(&sent, &file);
    // Not before: a phone's downloads go with it.
    phone.finish().await;
}

/// Clockwise along an L, the room on the right hand, in inches:
///
/// - east 147 1/2, and back west 66 + 81 1/2 = 147 1/2: no gap;
/// - south 108 + 40 1/4 = 148 1/4, and back north 148: a gap of 1/4.
async fn measure_the_room(phone: &mut Phone) {
    phone.take_up("Tape").await;
    phone.is_asked("Side 1").await;
    phone.keypad("1 2 feet 3 fractions 1/2 inches save").await;
    phone.said_back("Side 1", "12' 3 1/2\"").await;
    phone.is_asked("Side 2 ▾ 12' 3 1/2\" to the start").await;
    phone.keypad("9 feet save").await;
    phone.said_back("Side 2", "9' 0\"").await;
    phone.tap("then right ↱").await;
    phone.wait_for("then left ↰").await;
    phone.keypad("5 feet 6 inches save").await;
    phone.said_back("Side 3", "5' 6\"").await;
    phone.wait_for("then right ↱").await;
    phone.keypad("3 feet 4 fractions 1/4 inches save").await;
    phone.said_back("Side 4", "3' 4 1/4\"").await;
    phone.keypad("6 feet 9 fractions 1/2 inches save").await;
    phone.said_back("Side 5", "6' 9 1/2\"").await;
    // The fifth side ends below the start: 108 + 40 1/4 = 148 1/4 = 12' 4 1/4".
    phone.is_asked("Side 6 ▾ 12' 4 1/4\" to the start").await;
    phone.screenshot("walk-room").await;
    phone.keypad("1 2 feet 4 inches save").await;
    phone.said_back("Side 6", "12' 4\"").await;
    phone.all_saved(2 + 7).await;

    phone.go_to("Answers").await;
    phone.is_answered("Do the sides close?", "To 1/4\"").await;
    // Round it is 147.5 + 108 + 66 + 40.25 + 81.5 + 148 = 591.25; over 0.25 that is 2365.
    phone.is_answered("Do the sides close?", "1 in 2365 of the way round.").await;
    // The quarter inch is shared by sides 2, 4 and 6, a twelfth each: 147.5 × 107.917 +
    // 81.5 × 40.167 = 15917.7 + 3273.6 = 19191.3 sq in; over 144: 133.27.
    phone.is_answered("Room", "133.3 sq ft").await;
    phone.go_to("Take").await;
}

async fn measure_the_opening(phone: &mut Phone) {
    phone.is_asked("Opening: along side 1 from its corner").await;
    phone.keypad("2 feet save").await;
    phone.is_asked("Opening: out from the wall").await;
    phone.keypad("1 feet 6 inches save").await;
    phone.is_asked("Opening: size along side 1").await;
    phone.keypad("6 feet 4 inches save").await;
    phone.is_asked("Opening: size into the room").await;
    phone.keypad("5 feet 6 inches save").await;
    phone.said_back("Opening size into the room", "5' 6\"").await;
    phone.all_saved(2 + 7 + 1).await;
}

async fn lay_out_the_joists(phone: &mut Phone) {
    phone.is_asked("Joist 1: center from corner 1").await;
    phone.keypad("8 save").await;
    phone.is_asked("Joists: spacing on center").await;
    phone.keypad("1 6 save").await;
    phone.is_asked("Joists: how many").await;
    phone.keypad("9 save").await;
    phone.said_back("Joists", "9").await;
    phone.all_saved(2 + 7 + 1 + 1).await;
}

async fn read_the_wood(phone: &mut Phone) {
    phone.take_up("Air").await;
    phone.ask_for("What is read", "Wood temperature").await;
    phone.is_asked("Wood temperature: Joist 1, lower edge").await;
    phone.keypad("5 0 save").await;
    phone.said_back("Joist 1, lower edge", "50.0 °F").await;
    // The meter is in the hand by itself.
    phone.is_asked("Joist 1, lower edge").await;
    phone.ask_for("Wood", "Douglas-fir").await;
    phone.keypad("1 5 save").await;
    phone.said_back("Joist 1, lower edge", "15 %").await;
    phone.is_asked("Joist 2, lower edge").await;

    phone.go_to("Answers").await;
    // Reading 15 with the wood at 50 °F: 16.8, within 0.25 [P-secondary: FPL-GTR-6 fig. 5].
    phone.is_answered_about("Wettest wood", 16.8, 0.25).await;
    phone.screenshot("walk-wettest").await;
    phone.go_to("Take").await;

    // A meter that types: digits and Enter, one value upon the other.
    phone.is_asked("Joist 2, lower edge").await;
    phone.type_value("18").await;
    phone.press("Enter").await;
    phone.type_keys("19").await;
    phone.press("Enter").await;
    phone.said_back("Joist 3, lower edge", "19 %").await;
    phone.is_asked("Joist 4, lower edge").await;
    phone.tap("over max").await;
    phone.said_back("Joist 4, lower edge", "over maximum").await;
    phone.is_asked("Joist 5, lower edge").await;
    phone.all_saved(2 + 7 + 1 + 1 + 2 + 2 + 6).await;
}

async fn read_the_air(phone: &mut Phone) {
    phone.take_up("Air").await;
    phone.ask_for("What is read", "Crawl air").await;
    phone.is_asked("Crawl air: temperature").await;
    phone.keypad("7 0 save").await;
    phone.is_asked("Crawl air: humidity").await;
    phone.keypad("8 0 save").await;
    phone.said_back("Crawl air", "80 %").await;
    phone.ask_for("What is read", "Outdoor air").await;
    phone.keypad("8 0 save").await;
    phone.is_asked("Outdoor air: humidity").await;
    phone.keypad("8 0 save").await;
    phone.said_back("Outdoor air", "80 %").await;
    phone.all_saved(ENTRIES - 3).await;
}

async fn look_and_take_a_photo(phone: &mut Phone) {
    phone.take_up("Look").await;
    phone.tap_in("Findings", "Soft").await;
    phone.said_back("Joist 5, lower edge", "Soft").await;
    phone.all_saved(ENTRIES - 1).await;
    phone.take_up("Photo").await;
    let picture = phone.picture().await;
    phone.take_photo(&picture).await;
    phone.said_back("Joist 5, lower edge", "photo").await;
    phone.screenshot("walk-photo").await;
}

async fn the_answers_are_there(phone: &mut Phone) {
    phone.go_to("Answers").await;
    // 76 × 66 = 5016 sq in; over 144: 34.83 sq ft; over 32 sq ft a sheet: 1.09, so 2.
    phone.is_answered("To come out", "34.8 sq ft").await;
    phone.is_answered("Sheets", "2 sheets by area").await;
    phone.is_answered("Wettest wood", "over the meter's maximum").await;
    // Wood Handbook table 4-2, 70 °F and 80 %: 16.0, within 0.07 [P-secondary]; shown to a tenth.
    phone.is_answered_about("Left in this crawl air, wood settles near", 16.0, 0.07 + 0.05).await;
    // PsychroLib 2.5.0, 70 °F and 80 %: 63.55 °F, within 0.045 [X]; shown to a tenth.
    phone.is_answered_about("Crawl air condenses at", 63.55, 0.045 + 0.05).await;
    // Outdoors 80 °F and 80 %: 73.27 °F [X], above the joist's 50 °F: it would get wet.
    phone.is_answered("Would it dry by ventilating alone?", "No: outdoor air would wet the wood").await;
    phone.screenshot("walk-answers").await;
}

/// All of it, wherever the screen was: the log, the readings' meaning, the photo.
async fn everything_is_there(phone: &mut Phone) {
    phone.all_saved(ENTRIES).await;
    it_is_all_in_the_log(phone).await;
    phone.go_behind_the_title("Report").await;
    // The chart's cells for 50 °F: 15 + 1.8, 18 + 2.2, and 19 + 2.2 between 18 and 20
    // [P-secondary: FPL-GTR-6 fig. 5].
    for decides in ["15 % 16.8 %", "18 % 20.2 %", "19 % 21.2 %"] {
        phone.wait_for(decides).await;
    }
    phone.reads("the photo's width", "document.querySelector('.photos img').naturalWidth", 1600).await;
}

async fn it_is_all_in_the_log(phone: &mut Phone) {
    phone.go_to("Log").await;
    for line in EVERYTHING {
        phone.wait_for(line).await;
    }
    // The small picture, which a phone that was handed the photo makes for itself.
    phone.reads("the small photo's width", "document.querySelector('.thumb img').naturalWidth", 240).await;
}

/// Opened on a phone that has never seen the job, and handed over again from there.
async fn the_same_comes_out_of_another_phone(sent: &Path, file: &JobFile, answers: &str) {
    let server = Server::start().await;
    let mut other = Phone::open(Screen::Desktop, server.address()).await;
    other.introduce("OFF").await;
    other.open_job_file(sent).await;
    other.all_saved(ENTRIES + 1).await;
    // It also says what was opened, which the first phone had no reason to say.
    let opened = format!("Opened: {} new entries. {answers}", ENTRIES + 1);
    assert_eq!(other.answers(&ANSWERS).await, opened);
    it_is_all_in_the_log(&mut other).await;
    other.screenshot("walk-other-phone").await;

    let again = other.hand_over(2).await;
    let text = fs::read_to_string(&again).unwrap();
    let again = read_job_file(&again);
    for record in &file.records {
        assert!(text.contains(record.json()), "not the same to the byte: {}", record.json());
    }
    let (theirs, ours): (Vec<&Record>, Vec<&Record>) =
        again.records.iter().partition(|record| file.records.iter().all(|known| known.id() != record.id()));
    assert!(ours.iter().map(|record| record.json()).eq(file.records.iter().map(Record::json)));
    assert_eq!(theirs.len(), 1, "one more hand-over");
    assert_eq!(again.photos, file.photos);
    other.finish().await;
}

fn read_job_file(path: &Path) -> JobFile {
    let bytes = fs::read(path).unwrap();
    duckboard::file::read(&bytes).unwrap_or_else(|refusal| panic!("{}: {refusal}", path.display()))
}

fn the_photo_is_whole(file: &JobFile) {
    let [photo] = file.photos.as_slice() else { panic!("one photo, not {}", file.photos.len()) };
    let bytes = photo.bytes.as_ref().expect("the photo's bytes");
    let digest: String = Sha256::digest(bytes).iter().map(|byte| format!("{byte:02x}")).collect();
    assert_eq!(digest, photo.sha256.to_string());
    let book = file.book();
    let named: Vec<_> = book.job().now.photos().values().map(|photo| photo.value.sha256.to_string()).collect();
    assert_eq!(named, [digest]);
    let hand_overs = file
        .records
        .iter()
        .filter_map(Record::entry)
        .filter(|entry| matches!(&entry.act, duckboard::engine::job::Act::Record(Observation::HandOver(_))));
    assert_eq!(hand_overs.count(), 1);
}

fn the_office_reads_it(sent: &Path, file: &JobFile) {
    let path = sent.to_str().unwrap();
    let told = office(&["check", path]);
    let entries = format!("{} entries, 1 photo here", ENTRIES + 1);
    for words in [TITLE, "revision 1", &entries, "No faults."] {
        assert!(told.contains(words), "`{words}` is not in\n{told}");
    }
    let readings = office(&["readings", path]);
    for row in [
        r#""Joist 1, lower edge",15 %,15,16.8 %,"#,
        r#""Joist 2, lower edge",18 %,18,20.2 %,"#,
        r#""Joist 3, lower edge",19 %,19,21.2 %,"#,
        r#""Joist 4, lower edge",over the meter's maximum,,over the meter's maximum,"#,
    ] {
        assert!(readings.contains(row), "`{row}` is not in\n{readings}");
    }
    let lengths = office(&["lengths", path]);
    // An inch is 25.4 mm: 147.5 × 25.4 = 3746.5 and 40.25 × 25.4 = 1022.35.
    for row in [r#""12' 3 1/2""",3746.5,147.5,"#, r#""3' 4 1/4""",1022.35,40.25,"#] {
        assert!(lengths.contains(row), "`{row}` is not in\n{lengths}");
    }
    the_report_is_whole(path, file);
}

fn the_report_is_whole(path: &str, file: &JobFile) {
    let folder = own_path("report");
    office(&["report", path, "--output", folder.to_str().unwrap()]);
    let report = fs::read_to_string(folder.join("report.md")).unwrap();
    for words in [TITLE, "133.3 sq ft", "34.8 sq ft", "2 sheets by area", "16.8 %", "20.2 %", "Soft"] {
        assert!(report.contains(words), "`{words}` is not in\n{report}");
    }
    let photo = &file.photos[0];
    let picture = fs::read(folder.join("photos").join(photo.file_name())).unwrap();
    assert_eq!(Some(picture.as_slice()), photo.bytes.as_deref());
    fs::remove_dir_all(folder).unwrap();
}
