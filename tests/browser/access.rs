//! Every screen under the rules of accessibility, in the dark and by day. A walk goes
//! through all of them before it fails, so that one run tells everything.

use crate::phone::{Phone, Screen};
use crate::server::Server;

const INSTRUMENTS: [&str; 6] = ["Tape", "Meter", "Air", "Level", "Look", "Photo"];

struct Inspector {
    phone: Phone,
    theme: &'static str,
    objections: Vec<String>,
}

impl Inspector {
    async fn looks_at(&mut self, screen: &str) {
        let objections = self.phone.violations().await;
        self.objections.extend(objections.iter().map(|line| format!("{screen}, {}:{line}", self.theme)));
        self.phone.screenshot(&format!("access-{}-{}", self.theme, screen.replace(' ', "-"))).await;
    }

    fn content(self) -> Phone {
        let Self { phone, theme, objections } = self;
        assert!(objections.is_empty(), "{} objections in {theme}:\n{}", objections.len(), objections.join("\n"));
        phone
    }
}

/// As somebody who chose this theme has it from the first screen on.
async fn phone_in(theme: &'static str) -> (Server, Inspector) {
    let server = Server::start().await;
    let mut phone = Phone::open(Screen::Tall, server.address()).await;
    phone.wait_until_started().await;
    phone.js(&format!("localStorage.setItem('duckboard.prefs', '{{\"theme\":\"{theme}\"}}')")).await;
    phone.reload().await;
    phone.wait_until_started().await;
    phone.wait_until("the theme is on", &format!("document.documentElement.dataset.theme === '{theme}'")).await;
    (server, Inspector { phone, theme, objections: Vec::new() })
}

async fn nobody_is_shut_out(theme: &'static str) {
    let (server, mut inspector) = phone_in(theme).await;
    before_a_job(&mut inspector).await;
    sheets(&mut inspector).await;
    water(&mut inspector).await;
    take(&mut inspector).await;
    what_it_means(&mut inspector).await;
    inspector.phone.open_tab(server.address()).await;
    inspector.phone.wait_for("Duckboard is open in another tab").await;
    inspector.looks_at("another tab").await;
    inspector.content().finish().await;
}

async fn before_a_job(inspector: &mut Inspector) {
    inspector.phone.wait_for("Initials").await;
    inspector.looks_at("introduction").await;
    inspector.phone.tap("This is me").await;
    inspector.phone.wait_for("one to eight letters are needed").await;
    inspector.looks_at("introduction refused").await;
    inspector.phone.introduce("QX").await;
    inspector.looks_at("no jobs").await;
    inspector.phone.tap("Settings").await;
    inspector.phone.wait_for("Reference temperature").await;
    inspector.phone.fill("Reference temperature", "warm").await;
    inspector.phone.press("Enter").await;
    inspector.phone.wait_for("Reference temperature: ").await;
    inspector.looks_at("settings").await;
    inspector.phone.tap("Jobs").await;
    inspector.phone.tap("Open the invented sample job").await;
    inspector.phone.wait_for("Invented sample").await;
    inspector.phone.go_behind_the_title("All jobs").await;
    inspector.looks_at("jobs").await;
    inspector.phone.open_job("mud room").await;
}

/// All that the tape measures, the first one last: that is what goes on.
const TAPE_TASKS: [&str; 12] = [
    "Corner to corner",
    "Off a line",
    "Square corner?",
    "Opening",
    "Cut back",
    "Joists",
    "Joist by joist",
    "Floor layers",
    "Piece on hand",
    "Crawl height",
    "Other length",
    "Room side",
];

async fn take(inspector: &mut Inspector) {
    inspector.phone.go_to("Take").await;
    for instrument in INSTRUMENTS {
        inspector.phone.take_up(instrument).await;
        inspector.looks_at(&format!("take {instrument}")).await;
        inspector.phone.open_question().await;
        inspector.looks_at(&format!("question {instrument}")).await;
        inspector.phone.tap("done").await;
    }
    inspector.phone.take_up("Tape").await;
    for task in TAPE_TASKS {
        inspector.phone.open_question().await;
        inspector.phone.tap_in("What is measured", task).await;
        inspector.looks_at(&format!("question {task}")).await;
        inspector.phone.tap("done").await;
    }
    inspector.phone.keypad("9 feet save").await;
    inspector.phone.keypad("0 save").await;
    inspector.phone.wait_for("more than 0 is accepted").await;
    inspector.looks_at("take refused").await;
    inspector.phone.keypad("fractions").await;
    inspector.looks_at("take fractions").await;
}

/// Before the room of the sample is walked on.
async fn sheets(inspector: &mut Inspector) {
    inspector.phone.go_to("Answers").await;
    inspector.phone.tap("Lay sheets on the joists").await;
    inspector
        .phone
        .wait_until("the search has ended", "document.getElementById('sheets')?.dataset.state === 'done'")
        .await;
    inspector.looks_at("sheets").await;
    inspector.phone.js("document.querySelector('#sheets .card:nth-last-child(3)').scrollIntoView()").await;
    inspector.looks_at("sheets end").await;
}

async fn water(inspector: &mut Inspector) {
    inspector.phone.go_to("Answers").await;
    inspector.phone.tap("Where water comes from, and when to close").await;
    inspector.phone.wait_until("the page is there", "document.getElementById('water')?.dataset.state === 'done'").await;
    inspector
        .phone
        .js("document.querySelectorAll('#water details').forEach(details => { details.open = true; })")
        .await;
    inspector.looks_at("water").await;
    inspector.phone.js("document.querySelector('#water .card:nth-last-child(4)').scrollIntoView()").await;
    inspector.looks_at("water end").await;
}

async fn what_it_means(inspector: &mut Inspector) {
    inspector.phone.go_to("Answers").await;
    inspector.phone.js("document.querySelectorAll('details').forEach(details => { details.open = true; })").await;
    inspector.looks_at("answers").await;
    inspector.phone.go_to("Log").await;
    inspector.phone.open_entry("room side").await;
    inspector.looks_at("log").await;
    inspector.phone.go_to("Hand over").await;
    inspector.looks_at("hand over").await;
    inspector.phone.tap("without client details").await;
    inspector.phone.tap("Make the job file").await;
    inspector.phone.wait_for("Revision 1 is ready.").await;
    inspector.looks_at("hand over ready").await;
    inspector.phone.tap("Read or print the report").await;
    inspector.phone.wait_for("Missing and assumed").await;
    inspector.looks_at("report").await;
    let title = inspector.phone.words_of(".job-header h1").await;
    inspector.phone.tap_role("link", &title).await;
    inspector.phone.wait_for("Year built").await;
    inspector.looks_at("facts").await;
    inspector.phone.fill("Span rating, inches on center", "5").await;
    inspector.phone.press("Enter").await;
    inspector.phone.wait_for("span rating 5: 8 to 60 inches on center is accepted").await;
    inspector.phone.fill("Gap between sheets", "wide").await;
    inspector.phone.press("Enter").await;
    inspector.phone.wait_for("Gap between sheets: ").await;
    inspector.looks_at("facts of sheets").await;
}

#[tokio::test]
async fn nobody_is_shut_out_in_the_dark() {
    nobody_is_shut_out("dark").await;
}

#[tokio::test]
async fn nobody_is_shut_out_by_day() {
    nobody_is_shut_out("day").await;
}
