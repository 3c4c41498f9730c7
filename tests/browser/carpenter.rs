//! What a carpenter does with the app, in a carpenter's words. The walks say what is
//! done and what must come of it; where that is on the screen is said here, once.

use crate::harness::{Phone, Screen, Server};
use base64::{Engine as _, engine::general_purpose::STANDARD};
use serde_json::{Value, json};
use std::path::{Path, PathBuf};

/// The value as typed so far.
const VALUE: &str = "document.querySelector('.take input[inputmode=none]').value";
/// What the header says is saved.
const SAVED: &str = "document.querySelector('header [role=status]').textContent";
/// The title of the job on the screen.
const TITLE: &str = ".job-header h1";
/// The input behind “Open a job file”.
const JOB_FILE: &str = "input[type=file][aria-label='Open a job file']";
/// The input behind the camera key.
const CAMERA: &str = "input[type=file][capture]";

/// Whose storage it is, as the browser calls it.
pub fn origin(server: &Server) -> &str {
    server.address().trim_end_matches('/')
}

/// The job of [`phone_with_a_job`].
pub const JOB: &str = "Soft corner";

/// A phone whose owner has just begun a job: two entries, its title and its first visit.
pub async fn phone_with_a_job() -> (Server, Phone) {
    with_a_job(Screen::Tall).await
}

/// The same on a screen of another size.
pub async fn with_a_job(screen: Screen) -> (Server, Phone) {
    let server = Server::start().await;
    let mut phone = Phone::open(screen, server.address()).await;
    phone.introduce("QX").await;
    phone.begin_job(JOB).await;
    (server, phone)
}

/// The same, and pins to read with.
pub async fn phone_with_pins_and_a_job() -> (Server, Phone) {
    let server = Server::start().await;
    let mut phone = Phone::open(Screen::Tall, server.address()).await;
    phone.introduce("QX").await;
    phone.describe_pins().await;
    phone.begin_job(JOB).await;
    (server, phone)
}

/// A phone with the invented sample job open.
pub async fn phone_with_the_sample() -> (Server, Phone) {
    let server = Server::start().await;
    let mut phone = Phone::open(Screen::Tall, server.address()).await;
    phone.introduce("QX").await;
    phone.open_the_sample().await;
    (server, phone)
}

/// The same, kept on the phone and with its host gone.
pub async fn sample_without_a_host() -> Phone {
    let (mut server, mut phone) = phone_with_the_sample().await;
    phone.wait_until_kept().await;
    server.kill();
    phone
}

impl Phone {
    /// Waits for the app, and says who logs.
    pub async fn introduce(&mut self, initials: &str) {
        self.wait_until_started().await;
        self.fill("Initials", initials).await;
        self.tap("This is me").await;
        self.sees("textbox", "New job").await;
    }

    /// Says on the list of jobs which meter is in hand: pins that correct nothing.
    pub async fn describe_pins(&mut self) {
        self.tap("Settings").await;
        self.fill("Id or label", "Pins").await;
        self.press("Enter").await;
        self.tap_in("Senses with", "pins").await;
        self.tap_in("Scale is for", "Douglas-fir").await;
        self.tap_in("Corrects temperature itself", "no").await;
        self.tap_in("Corrects species itself", "no").await;
        self.fill("Reference temperature", "70").await;
        self.press("Enter").await;
        self.wait_for("Readings carry this meter.").await;
        self.tap("Jobs").await;
    }

    /// Opens the invented sample job, which was loaded for that, until all of it is kept.
    pub async fn open_the_sample(&mut self) {
        self.tap("Open the invented sample job").await;
        self.says_in(".invented", "Invented sample").await;
        self.nothing_is_unsaved().await;
    }

    /// Begins a job on the list of jobs.
    pub async fn begin_job(&mut self, title: &str) {
        self.fill("New job", title).await;
        self.tap("Begin").await;
        self.says_in(TITLE, title).await;
        self.all_saved(2).await;
    }

    /// Goes from the list of jobs to a job.
    pub async fn open_job(&mut self, title: &str) {
        self.wait_until_started().await;
        self.tap_role("link", title).await;
        self.says_in(TITLE, title).await;
    }

    /// The list of jobs, once this one is on it.
    pub async fn list_with(&mut self, title: &str) -> String {
        self.words_in(".job-list", &[title]).await
    }

    /// Waits until the list of jobs is just this.
    pub async fn lists(&mut self, jobs: &str) {
        let list = "document.querySelector('.job-list').innerText.replace(/\\s+/g, ' ').trim()";
        self.reads("the list of jobs", list, jobs).await;
    }

    /// Goes to one of the four places.
    pub async fn go_to(&mut self, place: &str) {
        self.tap_in("Places", place).await;
        self.reads("the place", "document.querySelector('nav [aria-current=page]').textContent", place).await;
    }

    /// From any of a job's places to its facts, and from there where the link says.
    pub async fn go_behind_the_title(&mut self, link: &str) {
        self.go_to_the_facts().await;
        self.tap_role("link", link).await;
    }

    /// From any of a job's places to its facts.
    pub async fn go_to_the_facts(&mut self) {
        self.tap_what("document.querySelector('.job-header .title')").await;
        self.sees("textbox", "Year built").await;
    }

    /// Taps keys of the keypad, one after the other: `1 2 feet 3 inches save`.
    pub async fn keypad(&mut self, keys: &str) {
        for key in keys.split_whitespace() {
            self.tap_in("Keypad", key).await;
        }
    }

    /// Measures a room of 10 × 8 ft, an opening in it and six joists 16 in apart.
    pub async fn measure_a_room(&mut self) {
        self.take_up("Tape").await;
        for keys in ["1 0 feet save", "8 feet save", "1 0 feet save", "8 feet save"] {
            self.keypad(keys).await;
        }
        self.is_asked("Opening: along side 1 from its corner").await;
        self.keypad("2 4 save 1 2 save 4 0 save 4 8 save").await;
        self.is_asked("Joist 1: center from corner 1").await;
        self.keypad("1 6 save 1 6 save 6 save").await;
        self.said_back("Joists", "6").await;
    }

    /// Takes an instrument into the hand.
    pub async fn take_up(&mut self, instrument: &str) {
        self.tap_in("Instruments", instrument).await;
        let in_hand = "document.querySelector('.instrument[aria-pressed=true]').textContent";
        self.reads("what is in the hand", in_hand, instrument).await;
    }

    /// Opens what is behind the question: its tasks and places.
    pub async fn open_question(&mut self) {
        self.tap_what("document.querySelector('.question')").await;
        self.sees("button", "done").await;
    }

    /// Chooses one answer behind the question.
    pub async fn ask_for(&mut self, group: &str, choice: &str) {
        self.open_question().await;
        self.tap_in(group, choice).await;
        self.tap("done").await;
    }

    /// Waits until the app asks this.
    pub async fn is_asked(&mut self, question: &str) {
        self.says_in(".question", question).await;
    }

    /// Waits until the value just taken is said back.
    pub async fn said_back(&mut self, of: &str, value: &str) {
        self.says_in(".last", &format!("last: {of} {value}")).await;
    }

    /// Types into the value, as a laser or a meter does.
    pub async fn type_value(&mut self, text: &str) {
        let takes = "document.activeElement.matches('.take input[inputmode=none]')";
        self.wait_until("the value takes what is typed", takes).await;
        self.type_keys(text).await;
    }

    /// Waits until the value typed so far is this, and is kept.
    pub async fn half_typed(&mut self, value: &str) {
        self.reads("what is typed", VALUE, value).await;
        self.nothing_is_unsaved().await;
    }

    /// Scrolls until that is at the top of the screen.
    pub async fn scroll_to(&mut self, selector: &str) {
        let scroll = format!("document.querySelector({}).scrollIntoView()", json!(selector));
        self.act(&format!("{selector} is in sight"), &scroll).await;
    }

    /// Unfolds all that is folded up in there.
    pub async fn unfold(&mut self, within: &str) {
        let folded = format!("[...document.querySelectorAll('{within} details')]");
        let unfold =
            format!("if (!{folded}.length) throw 'nothing folded'; {folded}.forEach(one => {{ one.open = true; }})");
        self.act(&format!("all in {within} is unfolded"), &unfold).await;
    }

    /// Goes from the answers to a page that is worked out when it is asked for, until it is.
    pub async fn open_page(&mut self, link: &str, page: &str) {
        self.go_to("Answers").await;
        self.tap(link).await;
        self.is_worked_out(page).await;
    }

    /// Waits until such a page is worked out. What a later entry changes on it comes later.
    pub async fn is_worked_out(&mut self, page: &str) {
        self.reads(
            &format!("the state of {page}"),
            &format!("document.getElementById('{page}').dataset.state"),
            "done",
        )
        .await;
    }

    /// Says to a question of such a page, until that stands.
    pub async fn say_to(&mut self, question: &str, answer: &str) {
        // The check that tells most is asked on top, and stands in the list of all checks too.
        let asked = format!("document.querySelector(`[role=group][aria-label=\"{question}\"]`)");
        let key = format!("[...{asked}.querySelectorAll('button')].find(key => key.textContent === '{answer}')");
        self.wait_until(&format!("“{question}” is asked"), &format!("{asked} !== null")).await;
        self.tap_what(&key).await;
        let stands = format!("{asked}.querySelector('[aria-pressed=true]').textContent");
        self.reads(&format!("what stands as the answer to “{question}”"), &stands, answer).await;
    }

    /// Waits until nothing is on its way to the storage.
    pub async fn nothing_is_unsaved(&mut self) {
        self.wait_until("all is saved", &format!("/\\d saved$/.test({SAVED})")).await;
    }

    /// Waits until the header says that so many entries are saved.
    pub async fn all_saved(&mut self, entries: usize) {
        self.reads("what the header says", SAVED, format!("✓ {entries} saved")).await;
    }

    /// Opens what can be changed about an entry of the log. The keys of all entries are
    /// called the same, so that it is found by what stands above it.
    pub async fn open_entry(&mut self, line: &str) {
        let summary = format!(
            "[...document.querySelectorAll('.entry')].find(entry =>
                entry.innerText.replace(/\\s+/g, ' ').includes({})).querySelector('summary')",
            json!(line)
        );
        self.act(&format!("“{line}” is in the log"), &format!("{summary}.focus()")).await;
        self.press("Enter").await;
        self.wait_for("take back").await;
    }

    /// Starts the browser again, with [`JOB`] open and no room for anything more. A
    /// browser that has saved keeps for a while what it knew of the room left, so that
    /// it must be a new one.
    pub async fn start_full(&mut self, server: &Server) {
        self.kill().await;
        self.start_again(server.address()).await;
        self.open_job(JOB).await;
        self.set_quota(json!({ "origin": origin(server), "quotaSize": 1 })).await;
    }

    /// From now on there is as much room as there really is.
    pub async fn has_room_again(&mut self, server: &Server) {
        self.set_quota(json!({ "origin": origin(server) })).await;
    }

    async fn set_quota(&mut self, quota: Value) {
        self.command("Storage.overrideQuotaForOrigin", quota).await;
    }

    /// A photo in a file, as a camera would leave it: 2000 by 1500 pixels of JPEG.
    pub async fn picture(&mut self) -> PathBuf {
        let is_drawn = |url: &String| url.starts_with("data:image/jpeg;base64,");
        let drawn = self.read("a picture is drawn", PICTURE, is_drawn).await;
        let bytes = drawn.split_once(',').expect("a data URL").1;
        self.file("photo.jpg", &STANDARD.decode(bytes).expect("base64"))
    }

    /// Takes a photo with this file instead of the camera.
    pub async fn take_photo(&mut self, file: &Path) {
        self.choose_files(CAMERA, &[file]).await;
    }

    /// Opens a job file.
    pub async fn open_job_file(&mut self, file: &Path) {
        self.choose_files(JOB_FILE, &[file]).await;
    }

    /// Makes the job file and saves it.
    pub async fn hand_over(&mut self, revision: usize) -> PathBuf {
        self.go_to("Hand over").await;
        self.save_the_file("Make the job file", revision, &format!("r{revision}.json")).await
    }

    /// Makes a file on the screen for handing over, and saves it once it is ready.
    pub async fn save_the_file(&mut self, make: &str, revision: usize, ending: &str) -> PathBuf {
        self.tap(make).await;
        self.wait_for(&format!("Revision {revision} is ready.")).await;
        self.tap("Save the file").await;
        self.wait_for_download(ending).await
    }

    /// Everything that Answers says, once all of this is in it.
    pub async fn answers(&mut self, among: &[&str]) -> String {
        self.go_to("Answers").await;
        self.words_in("main.answers", among).await
    }

    /// Waits until an answer to this question says this.
    pub async fn is_answered(&mut self, question: &str, answer: &str) {
        let said = format!(
            "[...document.querySelectorAll('main.answers section')].some(card =>
                card.querySelector('h2')?.textContent === {} && card.innerText.replace(/\\s+/g, ' ').includes({}))",
            json!(question),
            json!(answer)
        );
        self.wait_until(&format!("“{question}” is answered “{answer}”"), &said).await;
    }

    /// Waits until the figure in an answer's headline is this one, give or take so much.
    pub async fn is_answered_about(&mut self, question: &str, figure: f64, give_or_take: f64) {
        let headline = format!(
            "parseFloat([...document.querySelectorAll('main.answers section')]
                .find(card => card.querySelector('h2')?.textContent === {}).querySelector('.headline').textContent)",
            json!(question)
        );
        let what = format!("“{question}” is answered {figure} ± {give_or_take}");
        self.read(&what, &headline, |answer: &f64| (answer - figure).abs() <= give_or_take).await;
    }
}

/// Noise compresses badly, as a crawl space does.
const PICTURE: &str = r"(() => {
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [2000, 1500];
  const context = canvas.getContext('2d');
  for (let joist = 0; joist < 40; joist++) {
    context.fillStyle = `hsl(${joist * 9} 40% 40%)`;
    context.fillRect(joist * 50, 0, 40, 1500);
  }
  return canvas.toDataURL('image/jpeg', 0.9);
})()";
