//! Every screen under the rules of accessibility, in the dark and by day. A walk goes
//! through all of them before it fails, so that one run tells everything.

use crate::harness::{Phone, Screen, Server};

const INSTRUMENTS: [&str; 6] = ["Tape", "Meter", "Air", "Level", "Look", "Photo"];

/// By how many pixels a page would have to be moved sideways.
const TOO_WIDE: &str = "(main => main.scrollWidth - main.clientWidth)(document.querySelector('main'))";

struct Inspector {
    phone: Phone,
    theme: &'static str,
    objections: Vec<String>,
}

impl Inspector {
    /// Looks at a screen by which this is said.
    async fn looks_at(&mut self, screen: &str, saying: &str) {
        self.phone.wait_for(saying).await;
        self.phone.reads(&format!("how far {screen} is wider than the screen"), TOO_WIDE, 0).await;
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
    let choose = format!("localStorage.setItem('duckboard.prefs', '{{\"theme\":\"{theme}\"}}')");
    phone.act("the theme is chosen", &choose).await;
    phone.reload().await;
    phone.wait_until_started().await;
    phone.reads("the theme", "document.documentElement.dataset.theme", theme).await;
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
    inspector.looks_at("another tab", "Duckboard is open in another tab").await;
    inspector.content().finish().await;
}

async fn before_a_job(inspector: &mut Inspector) {
    inspector.looks_at("introduction", "Initials").await;
    inspector.phone.tap("This is me").await;
    inspector.looks_at("introduction refused", "one to eight letters are needed").await;
    inspector.phone.introduce("QX").await;
    inspector.looks_at("no jobs", "Log lengths, moisture and photos under the house.").await;
    inspector.phone.tap("Settings").await;
    inspector.phone.fill("Reference temperature", "warm").await;
    inspector.phone.press("Enter").await;
    inspector.looks_at("settings", "Reference temperature: ").await;
    inspector.phone.tap("Jobs").await;
    inspector.phone.open_the_sample().await;
    inspector.phone.go_behind_the_title("All jobs").await;
    inspector.phone.list_with("mud room").await;
    inspector.looks_at("jobs", "entries · invented sample").await;
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
        inspector.looks_at(&format!("take {instrument}"), "Invented sample").await;
        inspector.phone.open_question().await;
        inspector.looks_at(&format!("question {instrument}"), "done").await;
        inspector.phone.tap("done").await;
    }
    inspector.phone.take_up("Tape").await;
    for task in TAPE_TASKS {
        inspector.phone.open_question().await;
        inspector.phone.say_to("What is measured", task).await;
        inspector.looks_at(&format!("question {task}"), "done").await;
        inspector.phone.tap("done").await;
    }
    inspector.phone.keypad("9 feet save").await;
    inspector.phone.keypad("0 save").await;
    inspector.looks_at("take refused", "more than 0 is accepted").await;
    inspector.phone.keypad("fractions").await;
    inspector.looks_at("take fractions", "15/16").await;
}

/// Before the room of the sample is walked on.
async fn sheets(inspector: &mut Inspector) {
    inspector.phone.open_page("Lay sheets on the joists", "sheets").await;
    inspector.looks_at("sheets", "sheets laid on the joists").await;
    inspector.phone.scroll_to("#sheets .card:nth-last-child(3)").await;
    inspector.looks_at("sheets end", "At the saw").await;
}

async fn water(inspector: &mut Inspector) {
    inspector.phone.open_page("Where water comes from, and when to close", "water").await;
    inspector.phone.unfold("#water").await;
    inspector.looks_at("water", "May the floor be closed?").await;
    inspector.phone.scroll_to("#water .card:nth-last-child(4)").await;
    inspector.looks_at("water end", "May the floor be closed?").await;
}

async fn what_it_means(inspector: &mut Inspector) {
    inspector.phone.go_to("Answers").await;
    inspector.phone.unfold("main.answers").await;
    inspector.looks_at("answers", "Wettest wood").await;
    inspector.phone.go_to("Log").await;
    inspector.phone.open_entry("room side").await;
    inspector.looks_at("log", "take back").await;
    inspector.phone.go_to("Hand over").await;
    inspector.looks_at("hand over", "Make the job file").await;
    inspector.phone.tap("without client details").await;
    inspector.phone.tap("Make the job file").await;
    inspector.looks_at("hand over ready", "Revision 1 is ready.").await;
    inspector.phone.tap("Read or print the report").await;
    for part in ["water", "under", "orders", "logged"] {
        inspector.phone.is_worked_out(part).await;
    }
    inspector.looks_at("report", "Missing and assumed").await;
    inspector.phone.go_to_the_facts().await;
    inspector.looks_at("facts", "Year built").await;
    inspector.phone.fill("Span rating, inches on center", "5").await;
    inspector.phone.press("Enter").await;
    inspector.phone.wait_for("span rating 5: 8 to 60 inches on center is accepted").await;
    inspector.phone.fill("Gap between sheets", "wide").await;
    inspector.phone.press("Enter").await;
    inspector.looks_at("facts of sheets", "Gap between sheets: ").await;
}

#[tokio::test]
async fn nobody_is_shut_out_in_the_dark() {
    nobody_is_shut_out("dark").await;
}

#[tokio::test]
async fn nobody_is_shut_out_by_day() {
    nobody_is_shut_out("day").await;
}
