//! The office command as somebody at a desk uses it.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::panic, reason = "tests may fail loudly")]

mod job_samples;

use duckboard::engine::entry::{EntryId, JobId};
use duckboard::engine::job::Book;
use duckboard::file::tables::{LengthRow, ReadingRow, lengths, orders, readings};
use duckboard::file::{FilePhoto, JobFile, Version, invitation, read, without_photos};
use job_samples::*;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

/// A folder of one test's own, gone when the test is done.
struct Desk(PathBuf);

impl Desk {
    fn new(test: &str) -> Self {
        let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("office-{test}-{}", std::process::id()));
        let _ = fs::remove_dir_all(&folder);
        fs::create_dir_all(&folder).unwrap();
        Self(folder)
    }

    fn put(&self, name: &str, contents: impl AsRef<[u8]>) -> String {
        let path = self.0.join(name);
        fs::write(&path, contents).unwrap();
        path.to_str().unwrap().to_owned()
    }

    fn office(&self, arguments: &[&str]) -> Output {
        Command::new(env!("CARGO_BIN_EXE_office")).args(arguments).current_dir(&self.0).output().unwrap()
    }

    /// What a task prints that goes well.
    fn well(&self, arguments: &[&str]) -> String {
        let output = self.office(arguments);
        assert!(output.status.success(), "{}", error(&output));
        String::from_utf8(output.stdout).unwrap()
    }
}

impl Drop for Desk {
    fn drop(&mut self) {
        let _ = fs::remove_dir_all(&self.0);
    }
}

fn error(output: &Output) -> String {
    String::from_utf8_lossy(&output.stderr).into_owned()
}

fn printed(output: &Output) -> String {
    String::from_utf8_lossy(&output.stdout).into_owned()
}

fn csv_rows(csv: &str) -> Vec<Vec<String>> {
    let mut reader = csv::ReaderBuilder::new().has_headers(false).from_reader(csv.as_bytes());
    reader.records().map(|record| record.unwrap().iter().map(str::to_owned).collect()).collect()
}

#[test]
fn a_sound_file_checks_out() {
    let desk = Desk::new("sound");
    let told = desk.well(&["check", &desk.put("job", text(&first_file()))]);
    for words in ["Job: Laundry and mud room", "INVENTED SAMPLE", "revision 3", "2 photos here", "No faults."] {
        assert!(told.contains(words), "{words} is not in\n{told}");
    }
}

#[test]
fn a_damaged_file_has_all_its_faults_told() {
    let desk = Desk::new("damaged");
    let whole = text(&first_file());
    let many = whole.replace("\"initials\":\"QZ\"", "\"initials\":5");
    let output = desk.office(&["check", &desk.put("job", &many)]);
    assert_eq!(output.status.code(), Some(1));
    assert_eq!(
        printed(&output).lines().filter(|line| line.starts_with("Damaged: entries[")).count(),
        first_file().records.len()
    );
    // Not even the job is told.
    let output = desk.office(&["check", &desk.put("job", whole.replacen("\"id\": \"0", "\"id\": \"z", 1))]);
    assert_eq!(output.status.code(), Some(1));
    assert!(printed(&output).contains("Damaged: job.id: "), "{}", printed(&output));
}

#[test]
fn clashes_and_dangling_entries_are_faults_but_unknown_kinds_are_not() {
    let desk = Desk::new("faults");
    let id = |count| EntryId { count, device: SECOND_PHONE };
    let file = |book: &Book| text(&JobFile::of(book, JOB, 1, made()));
    let clash = Book::of([titled(id(1), "one"), titled(id(1), "other")]);
    let output = desk.office(&["check", &desk.put("clash", file(&clash))]);
    assert_eq!((output.status.code(), printed(&output).matches("Clash: ").count()), (Some(1), 1));

    let mut lost = Book::default();
    let mut pen = pen(&first_book(), SECOND_PHONE, "VK", duckboard::engine::entry::Role::Carpenter);
    pen.begin_visit(id(77));
    lost.add(duckboard::engine::job::Record::of(pen.withdraw(id(3))).unwrap());
    let output = desk.office(&["check", &desk.put("lost", file(&lost))]);
    let told = printed(&output);
    assert_eq!(output.status.code(), Some(1));
    assert!(told.contains(&format!("is about {}, which is not in the file", id(3))), "{told}");
    assert!(told.contains(&format!("refers to {}, which is not in the file", id(77))), "{told}");
    assert!(error(&output).contains("2 faults"));

    let later = file(&Book::of([titled(id(1), "x")])).replace("\"fact\"", "\"fathom\"");
    let told = desk.well(&["check", &desk.put("later", later)]);
    assert!(told.contains("1 entry with \"fathom\""), "{told}");
}

#[test]
fn particulars_that_nothing_goes_by_are_told_with_what_would_do() {
    let desk = Desk::new("not-counted");
    let whole = text(&first_file()).replacen("\"what\":\"rain\"", "\"what\":\"snow\"", 1);
    let whole = whole.replacen(
        "\"what\":\"roof pitch\",\"is\":{\"words\":\"4 to 5/12\"",
        "\"what\":\"roof pitch\",\"is\":{\"words\":\"steep\"",
        1,
    );
    let told = desk.well(&["check", &desk.put("job", whole)]);
    assert!(told.contains("Not counted: House, snow: 6.2 (nothing here is known by these words)"), "{told}");
    assert!(told.contains("Not counted: House, roof pitch: steep (accepted are: flat to 3/12; "), "{told}");
}

#[test]
fn what_is_no_job_file_is_refused_whatever_its_name() {
    let desk = Desk::new("other");
    let output = desk.office(&["check", &desk.put("x.duckboard.json", "{}")]);
    assert_eq!((output.status.code(), error(&output).contains("not a Duckboard job file")), (Some(1), true));
    let newer = text(&first_file()).replacen(&format!("\"{}\"", Version::CURRENT), "\"2.0\"", 1);
    let output = desk.office(&["report", &desk.put("newer", newer)]);
    assert_eq!((output.status.code(), error(&output).contains("Update Duckboard")), (Some(1), true));
}

#[test]
fn what_was_not_understood_and_what_is_not_there_are_code_2() {
    let desk = Desk::new("usage");
    assert_eq!(desk.office(&[]).status.code(), Some(2));
    assert_eq!(desk.office(&["chekc", "x"]).status.code(), Some(2));
    let output = desk.office(&["check", "no-such-file"]);
    assert_eq!((output.status.code(), error(&output).contains("Check the name")), (Some(2), true));
    assert!(desk.well(&["--help"]).contains("Opens Duckboard job files at a desk"));
}

#[test]
fn readings_and_lengths_are_csv_that_another_program_reads() {
    let desk = Desk::new("csv");
    let file = desk.put("job", text(&first_file()));
    let book = first_book();
    let rows = csv_rows(&desk.well(&["readings", &file]));
    assert_eq!(rows[0], ReadingRow::COLUMNS);
    assert_eq!(rows.len(), 1 + readings(book.job()).len());
    assert_eq!(rows[1][..3], ["Joist 2, lower edge, 1' 6\" along", "14 %", "14"].map(str::to_owned));
    assert_eq!(
        rows[1][6..10],
        ["Pin meter, blue tape on it", "QZ, crew lead", "2026-10-05T08:10:00-05:00", "1"].map(str::to_owned)
    );

    let csv = desk.well(&["lengths", &file]);
    let rows = csv_rows(&csv);
    assert_eq!(rows[0], LengthRow::COLUMNS);
    assert_eq!(rows.len(), 1 + lengths(book.job()).len());
    let side = rows.iter().find(|row| row[0] == "Laundry and mud room, side 1").unwrap();
    // 140 3/8 in at 25.4 mm.
    assert_eq!(side[1..4], ["11' 8 3/8\"", "3565.525", "140.375"].map(str::to_owned));
    assert!(rows.iter().any(|row| row[0] == "'-Drain, out"), "no formula can begin a cell: {csv}");
}

#[test]
fn a_report_says_first_what_is_missing_and_has_its_photos_beside_it() {
    let desk = Desk::new("report");
    let file = JobFile { photos: vec![first_photo()], ..first_file() };
    let file = desk.put("the job.json", text(&file));
    desk.well(&["report", &file]);
    let report = fs::read_to_string(desk.0.join("the job-report/report.md")).unwrap();
    let order = [
        "# Laundry and mud room",
        "INVENTED SAMPLE",
        "SAMPLE-1",
        "## Missing and assumed",
        "assumed 4 × 8 ft sheets",
        "## Plan",
        "](plan.svg)",
        "## Figures",
        "Room | 99.9",
        "## Lengths",
        "11' 8 3/8\"",
        "## Moisture",
        "19.5 %",
        "## Air and surfaces",
        "cold pipe",
        "## Conditions",
        "Rotten",
        "## Photos",
        "## Signed",
    ];
    let mut rest = report.as_str();
    for words in order {
        let found = rest.split_once(words);
        rest = found.unwrap_or_else(|| panic!("{words} is not where it should be in\n{report}")).1;
    }
    assert!(report.contains("=Joist 2 \\| from the \\*west\\*"), "what was typed stays text");
    let photo = desk.0.join("the job-report/photos").join(first_photo().file_name());
    assert_eq!(fs::read(photo).unwrap(), *first_photo().bytes.unwrap());
    assert!(report.contains(&format!("](photos/{})", first_photo().file_name())));

    let plan = fs::read_to_string(desk.0.join("the job-report/plan.svg")).unwrap();
    let plan = roxmltree::Document::parse(&plan).unwrap();
    let texts: Vec<_> =
        plan.descendants().filter(|node| node.has_tag_name("text")).filter_map(|node| node.text()).collect();
    assert!(texts.contains(&"11' 8 3/8\""), "the first side's length stands on it: {texts:?}");

    let again = desk.office(&["report", &file]);
    assert_eq!((again.status.code(), error(&again).contains("--force")), (Some(2), true));
    desk.well(&["report", &file, "--force"]);
}

#[test]
fn a_report_names_the_photos_that_are_not_there() {
    let desk = Desk::new("no-photos");
    let file = JobFile { photos: vec![FilePhoto { bytes: None, ..first_photo() }], ..without_photos(first_file()) };
    desk.well(&["report", &desk.put("job", text(&file)), "-o", "out"]);
    let report = fs::read_to_string(desk.0.join("out/report.md")).unwrap();
    assert!(
        report.contains("Left out of the file on purpose: photos")
            && report.contains("1 photo named, but not in the file")
    );
    assert!(fs::read_dir(desk.0.join("out/photos")).unwrap().next().is_none());
}

#[test]
fn a_faulty_file_is_reported_only_when_asked_and_says_what_is_lost() {
    let desk = Desk::new("anyway");
    let whole = text(&first_file()).replacen("\"type\": \"image/jpeg\"", "\"type\": \"image/webp\"", 1);
    let file = desk.put("job", whole);
    assert_eq!(desk.office(&["report", &file]).status.code(), Some(1));
    desk.well(&["report", &file, "--anyway"]);
    let report = fs::read_to_string(desk.0.join("job-report/report.md")).unwrap();
    assert!(report.contains("Damaged, and not in this report: photos\\["), "{report}");
}

/// Whatever is damaged of it, the floor of the report stays open.
#[test]
fn a_report_of_a_damaged_file_does_not_say_that_all_of_it_can_be_read() {
    let desk = Desk::new("damaged");
    let house = include_str!("fixtures/closing/all-but-the-soil.json");
    let of = |name: &str, whole: &str| {
        let file = desk.put(name, whole);
        desk.well(&["report", &file, "--anyway"]);
        fs::read_to_string(desk.0.join(format!("{name}-report/report.md"))).unwrap()
    };
    let sound = of("sound", house);
    assert!(sound.contains("Every entry of the job can be read: all can"), "{sound}");
    for (name, from, to) in
        [("act", "\"answer\":\"yes\"", "\"answer\":\"yse\""), ("id", "{\"id\":\"9.", "{\"id\":\"x.")]
    {
        let report = of(name, &house.replacen(from, to, 1));
        assert!(house.contains(from) && report.contains("Damaged, and not in this report: entries\\["), "{report}");
        assert!(report.contains("1 entry not here: left out of a file, or damaged"), "{report}");
        assert!(!report.contains("can be read: all can") && !report.contains("Ready to close"), "{report}");
    }
}

#[test]
fn two_phones_files_become_one() {
    let desk = Desk::new("merge");
    let second = JobFile::of(&second_book(&invitation(&first_book(), JOB, 2, made()).records), JOB, 1, made());
    let (a, b) = (desk.put("a", text(&first_file())), desk.put("b", text(&second)));
    let told = desk.well(&["merge", &a, &b, "-o", "c"]);
    assert!(told.contains("1 more than the larger of the two"), "{told}");
    let both = read(&fs::read(desk.0.join("c")).unwrap()).unwrap();
    assert_eq!(both.records.len(), first_file().records.len() + 1);
    assert_eq!((both.photos.len(), both.revision), (2, 3));
    desk.well(&["check", "c"]);
    let left: Vec<_> = fs::read_dir(&desk.0).unwrap().map(|entry| entry.unwrap().file_name()).collect();
    assert_eq!(left.len(), 3, "nothing half-written is left: {left:?}");
}

#[test]
fn a_merge_writes_over_nothing_unasked() {
    let desk = Desk::new("over");
    let (a, b) = (desk.put("a", text(&first_file())), desk.put("b", text(&without_photos(first_file()))));
    let before = fs::read(&a).unwrap();
    let input = desk.office(&["merge", &a, &b, "-o", "./a"]);
    assert_eq!((input.status.code(), error(&input).contains("is one of the files to merge")), (Some(2), true));
    let there = desk.office(&["merge", &a, &b, "-o", &desk.put("c", "precious")]);
    assert_eq!((there.status.code(), error(&there).contains("is there already")), (Some(2), true));
    assert_eq!(fs::read(&a).unwrap(), before);
    assert_eq!(fs::read_to_string(desk.0.join("c")).unwrap(), "precious");
    desk.well(&["merge", &a, &b, "-o", "c", "--force"]);
    assert!(read(&fs::read(desk.0.join("c")).unwrap()).is_ok());
}

#[test]
fn two_jobs_are_not_merged() {
    let desk = Desk::new("jobs");
    let mut other = first_file();
    other.job.id = JobId::new(1);
    let (a, b) = (desk.put("a", text(&first_file())), desk.put("b", text(&other)));
    let output = desk.office(&["merge", &a, &b, "-o", "c"]);
    assert_eq!((output.status.code(), error(&output).contains("two jobs")), (Some(1), true));
    assert!(!desk.0.join("c").exists());
}

#[test]
fn the_schema_is_printed_as_it_is_published() {
    let published = concat!(env!("CARGO_MANIFEST_DIR"), "/public/duckboard-job.schema.json");
    assert_eq!(Desk::new("schema").well(&["schema"]), fs::read_to_string(published).unwrap());
}

#[test]
fn a_layout_is_written_with_its_plan_and_every_cut_sheet() {
    let desk = Desk::new("layout");
    let file = desk.put("job", text(&first_file()));
    let printed = desk.well(&["layout", &file, "-o", "sheets"]);
    assert_eq!(printed.trim(), "sheets/sheets.md");
    let page = fs::read_to_string(desk.0.join("sheets/sheets.md")).unwrap();
    for words in [
        "INVENTED SAMPLE",
        "no layout takes fewer",
        "no course narrower than 24 in, where the floor itself is not",
        "Blocking: ",
        "Adhesive: ",
        "power off",
    ] {
        assert!(page.contains(words), "{words} is not in\n{page}");
    }
    let drawings: Vec<_> = page.split("](").skip(1).map(|rest| rest.split(')').next().unwrap()).collect();
    assert!(drawings.contains(&"plan.svg") && drawings.len() > 1, "{drawings:?}");
    for drawing in drawings {
        let svg = fs::read_to_string(desk.0.join("sheets").join(drawing)).unwrap();
        assert!(roxmltree::Document::parse(&svg).is_ok(), "{drawing}");
    }
    assert_eq!(desk.office(&["layout", &file, "-o", "sheets"]).status.code(), Some(2), "never over an earlier one");
}

#[test]
fn a_job_without_an_opening_says_what_to_measure_before_sheets_are_laid() {
    let desk = Desk::new("nothing-to-lay");
    let file = desk.put("job", text(&JobFile::of(&Book::default(), JOB, 1, made())));
    desk.well(&["layout", &file, "-o", "sheets"]);
    let page = fs::read_to_string(desk.0.join("sheets/sheets.md")).unwrap();
    assert!(page.contains("place the opening") && page.contains("lay out the joists"), "{page}");
}

#[test]
fn the_order_list_takes_prices_that_survive_merging_and_show_in_the_next_list() {
    let desk = Desk::new("orders");
    let file = desk.put("job", text(&first_file()));
    let list = desk.well(&["orders", &file]);
    let rows = csv_rows(&list);
    assert_eq!(rows[0], orders::COLUMNS);
    let at = |name: &str| orders::COLUMNS.iter().position(|column| *column == name).unwrap();
    let (item, price) = (at("item"), at("price each"));
    assert!(rows[1..].iter().all(|row| row[price].is_empty()), "no price is invented");
    let filled: Vec<_> = rows.iter().map(|row| priced(row, "Foundation vents", item, price, "18.75")).collect();
    let filled = desk.put("filled.csv", as_csv(&filled));
    assert!(desk.well(&["prices", &file, &filled, "-o", "priced"]).contains("1 price taken in"));
    desk.well(&["check", "priced"]);
    assert!(desk.well(&["prices", "priced", &filled, "-o", "again"]).contains("0 prices taken in"), "it is so already");

    let second = JobFile::of(&second_book(&invitation(&first_book(), JOB, 2, made()).records), JOB, 1, made());
    desk.well(&["merge", &desk.put("second", text(&second)), "priced", "-o", "merged"]);
    let rows = csv_rows(&desk.well(&["orders", "merged"]));
    let vents = rows.iter().find(|row| row[item] == "Foundation vents").unwrap();
    assert_eq!(vents[price], "18.75");
    let merged = fs::read_to_string(desk.0.join("merged")).unwrap();
    assert!(merged.contains("\"order: Foundation vents\""), "the list is in the file, as a snapshot");
}

/// A row as the office hands it back.
fn priced(row: &[String], named: &str, item: usize, price: usize, with: &str) -> Vec<String> {
    let mut row = row.to_vec();
    if row[item] == named {
        with.clone_into(&mut row[price]);
    }
    row
}

fn as_csv(rows: &[Vec<String>]) -> String {
    let mut writer = csv::Writer::from_writer(Vec::new());
    rows.iter().for_each(|row| writer.write_record(row).unwrap());
    String::from_utf8(writer.into_inner().unwrap()).unwrap()
}

#[test]
fn a_price_that_is_none_is_refused_with_its_line_and_nothing_is_written() {
    let desk = Desk::new("bad-prices");
    let file = desk.put("job", text(&first_file()));
    let list = desk.put("list.csv", "item,price each\nFoundation vents,cheap\n,12\n");
    let output = desk.office(&["prices", &file, &list, "-o", "out"]);
    assert_eq!(output.status.code(), Some(1));
    let told = error(&output);
    assert!(told.contains("line 2: Foundation vents, price: \"cheap\"") && told.contains("line 3: "), "{told}");
    assert!(!desk.0.join("out").exists());
    let list = desk.put("other.csv", "name,cost\nx,1\n");
    let output = desk.office(&["prices", &file, &list, "-o", "out"]);
    assert!(error(&output).contains("there is no column \"item\""), "{}", error(&output));
}
