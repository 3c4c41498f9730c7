//! Two phones at one job: one above the floor, one below, no signal between them. Files
//! go from hand to hand, and the logs become one.

use crate::harness::{Phone, Screen, Server};
use duckboard::engine::moisture::Shown;
use duckboard::file::read;
use serde_json::json;
use std::fs;
use std::path::{Path, PathBuf};

const JOB: &str = "Two hands";
const WHICH: &str = "Two corrections of one entry: which is right?";

/// The crew lead's phone below, with a job and a reading: title, visit, place, reading.
async fn below(server: &Server) -> Phone {
    let mut below = Phone::open(Screen::Tall, server.address()).await;
    below.introduce("AA").await;
    below.wait_until_kept().await;
    below.begin_job(JOB).await;
    below.take_up("Meter").await;
    below.keypad("1 8 save").await;
    below.all_saved(4).await;
    below
}

/// The second carpenter's phone, which has never seen the job.
async fn above(server: &Server) -> Phone {
    let mut above = Phone::open(Screen::Small, server.address()).await;
    above.introduce("BB").await;
    above.wait_until_kept().await;
    above
}

async fn invite(phone: &mut Phone) -> PathBuf {
    phone.go_to("Hand over").await;
    phone.save_the_file("Make the invitation", 1, "invitation.json").await
}

async fn bring_in(phone: &mut Phone, file: &Path, entries: usize) {
    phone.go_to("Hand over").await;
    phone.open_job_file(file).await;
    phone.all_saved(entries).await;
}

/// Corrects the reading of 18 %.
async fn correct_the_reading(phone: &mut Phone, to: &str) {
    phone.go_to("Log").await;
    phone.open_entry("moisture reading 18 %").await;
    phone.fill("Moisture, rightly", to).await;
    phone.press("Enter").await;
    phone.wait_for(&format!("corrected to {to} %")).await;
}

/// The readings that stand in a job file, and how many conflicts it has.
fn readings_in(file: &Path) -> (Vec<String>, usize) {
    let file = read(&fs::read(file).unwrap()).unwrap_or_else(|refusal| panic!("{refusal}"));
    let book = file.book();
    let shown = book.job().now.readings().values().map(|reading| match &reading.value.shown {
        Shown::Percent(shown) => shown.typed.clone(),
        Shown::OverMaximum => "over".to_owned(),
        Shown::UnderMinimum => "under".to_owned(),
    });
    // Two phones' entries stand in no order that a person knows of.
    let mut shown: Vec<_> = shown.collect();
    shown.sort();
    (shown, book.job().conflicts.len())
}

#[tokio::test]
async fn two_logs_become_one_and_a_conflict_is_settled_by_a_person() {
    let mut server = Server::start().await;
    let (mut below, mut above) = (below(&server).await, above(&server).await);
    server.kill();

    // Invited: the title, the visit, the place and the reading come along.
    let invitation = invite(&mut below).await;
    above.open_job_file(&invitation).await;
    above.all_saved(4).await;
    above.go_to("Take").await;
    above.take_up("Meter").await;
    above.is_asked("Joist 1, lower edge").await;
    above.keypad("2 2 save").await;
    above.all_saved(5).await;

    // Merged: one job, both readings.
    let from_above = above.hand_over(1).await;
    bring_in(&mut below, &from_above, 6).await;
    below.go_to("Log").await;
    below.wait_for("18 % at Joist 1, lower edge").await;
    below.wait_for("22 % at Joist 1, lower edge").await;
    below.screenshot("two-phones-merged").await;

    // Both know both, and both correct the same one.
    let from_below = below.hand_over(2).await;
    bring_in(&mut above, &from_below, 7).await;
    correct_the_reading(&mut below, "16").await;
    correct_the_reading(&mut above, "17").await;
    let from_above = above.hand_over(3).await;
    bring_in(&mut below, &from_above, 7 + 1 + 2).await;
    below.go_to("Log").await;
    below.wait_for(WHICH).await;
    below.check_accessible().await;
    below.screenshot("two-phones-conflict").await;
    below.tap("17 % at Joist 1, lower edge (BB)").await;
    below.all_saved(7 + 1 + 2 + 1).await;
    below.wait_for_without("22 % at Joist 1, lower edge", WHICH).await;

    // Settled for everybody who hears of it.
    let settled = below.hand_over(4).await;
    assert_eq!(readings_in(&settled), (vec!["17 %".to_owned(), "22 %".to_owned()], 0));
    bring_in(&mut above, &settled, 7 + 1 + 2 + 1 + 1).await;
    above.go_to("Log").await;
    above.wait_for_without("22 % at Joist 1, lower edge", WHICH).await;
    there_is_one_job(&mut below).await;
    there_is_one_job(&mut above).await;
    above.finish().await;
    below.finish().await;
}

async fn there_is_one_job(phone: &mut Phone) {
    phone.go_behind_the_title("All jobs").await;
    let titles = "[...document.querySelectorAll('.job-list b')].map(title => title.textContent)";
    phone.reads("the jobs on the list", titles, json!([JOB])).await;
}
