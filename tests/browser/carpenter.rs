//! What a carpenter does with the app, in a carpenter's words. The walks say what is
//! done and what must come of it; where that is on the screen is said here, once.

use crate::page::words;
use crate::phone::{Phone, Screen};
use crate::server::Server;
use base64::{Engine as _, engine::general_purpose::STANDARD};
use serde_json::{Value, json};
use std::path::{Path, PathBuf};

/// The value as typed so far.
const VALUE: &str = "document.querySelector('.take input[inputmode=none]')?.value";
/// What the header says is saved.
const SAVED: &str = "document.querySelector('header [role=status]')?.textContent";
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

/// A phone with the invented sample job open.
pub async fn phone_with_the_sample() -> (Server, Phone) {
    let server = Server::start().await;
    let mut phone = Phone::open(Screen::Tall, server.address()).await;
    phone.introduce("QX").await;
    phone.tap("Open the invented sample job").await;
    phone.wait_for("Invented sample").await;
    (server, phone)
}

/// The same, kept on the phone and with its host gone.
pub async fn sample_without_a_host() -> Phone {
    let (mut server, mut phone) = phone_with_the_sample().await;
    phone.wait_until_kept().await;
    phone.wait_until("the worker answers for the page", "navigator.serviceWorker.controller !== null").await;
    server.kill();
    phone
}

impl Phone {
    /// Waits for the app, and says who logs.
    pub async fn introduce(&mut self, initials: &str) {
        self.wait_until_started().await;
        self.fill("Initials", initials).await;
        self.tap("This is me").await;
        self.wait_for("New job").await;
    }

    /// Begins a job on the list of jobs.
    pub async fn begin_job(&mut self, title: &str) {
        self.fill("New job", title).await;
        self.tap("Begin").await;
        self.wait_for(title).await;
        self.all_saved(2).await;
    }

    /// Goes from the list of jobs to a job.
    pub async fn open_job(&mut self, title: &str) {
        self.wait_until_started().await;
        self.tap_role("link", title).await;
        self.wait_until("the job is open", "location.hash.startsWith('#/job/')").await;
    }

    /// Goes to one of the four places.
    pub async fn go_to(&mut self, place: &str) {
        self.tap_in("Places", place).await;
        let here = format!("document.querySelector('nav [aria-current=page]')?.textContent === {}", json!(place));
        self.wait_until(&format!("this is {place}"), &here).await;
    }

    /// From any of a job's places to its facts, and from there where the link says.
    pub async fn go_behind_the_title(&mut self, link: &str) {
        let title = self.words_of(".job-header h1").await;
        self.tap_role("link", &title).await;
        self.tap_role("link", link).await;
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
        let in_hand = "document.querySelector('.instrument[aria-pressed=true]')?.textContent";
        self.wait_until(&format!("{instrument} is in the hand"), &format!("{in_hand} === {}", json!(instrument))).await;
    }

    /// Opens what is behind the question: its tasks and places.
    pub async fn open_question(&mut self) {
        let asks = self.words_of(".question .asks").await;
        self.tap_role("button", &asks).await;
        self.wait_for("done").await;
    }

    /// Chooses one answer behind the question.
    pub async fn ask_for(&mut self, group: &str, choice: &str) {
        self.open_question().await;
        self.tap_in(group, choice).await;
        self.tap("done").await;
    }

    /// Waits until the app asks this.
    pub async fn is_asked(&mut self, question: &str) {
        let asks = format!(
            "document.querySelector('.question')?.innerText.replace(/\\s+/g, ' ').includes({})",
            json!(question)
        );
        self.wait_until(&format!("“{question}” is asked"), &asks).await;
    }

    /// Waits until the value just taken is said back.
    pub async fn said_back(&mut self, of: &str, value: &str) {
        self.wait_for(&format!("last: {of} {value}")).await;
    }

    /// Waits until the value typed so far is this, and is kept.
    pub async fn half_typed(&mut self, value: &str) {
        let typed = json!(value);
        self.wait_until(&format!("“{value}” is typed"), &format!("{VALUE} === {typed}")).await;
        self.nothing_is_unsaved().await;
    }

    /// Waits until nothing is on its way to the storage.
    pub async fn nothing_is_unsaved(&mut self) {
        self.wait_until("all is saved", &format!("/\\d saved$/.test({SAVED})")).await;
    }

    /// Waits until the header says that so many entries are saved.
    pub async fn all_saved(&mut self, entries: usize) {
        let saved = format!("/(^|\\D){entries} saved$/.test({SAVED})");
        self.wait_until(&format!("{entries} entries are saved"), &saved).await;
    }

    /// Opens what can be changed about an entry of the log. The keys of all entries are
    /// called the same, so that it is found by what stands above it.
    pub async fn open_entry(&mut self, line: &str) {
        let summary = format!(
            "[...document.querySelectorAll('.entry')].find(entry =>
                entry.innerText.replace(/\\s+/g, ' ').includes({}))?.querySelector('summary')",
            json!(line)
        );
        self.wait_until(&format!("“{line}” is in the log"), &format!("{summary} !== undefined")).await;
        self.js(&format!("{summary}.focus()")).await;
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
        self.cdp("Storage.overrideQuotaForOrigin", quota).await;
    }

    /// A photo in a file, as a camera would leave it: 2000 by 1500 pixels of JPEG.
    pub async fn picture(&mut self) -> PathBuf {
        let drawn = self.js(PICTURE).await;
        let bytes = drawn.as_str().and_then(|url| url.split_once(','));
        let bytes = STANDARD.decode(bytes.expect("a data URL").1).expect("base64");
        self.file("photo.jpg", &bytes)
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
        self.tap("Make the job file").await;
        self.wait_for(&format!("Revision {revision} is ready.")).await;
        self.tap("Save the file").await;
        self.wait_for_download(&format!("r{revision}.json")).await
    }

    /// What can be read in the first element that the selector finds.
    pub async fn words_of(&mut self, selector: &str) -> String {
        let found = format!("document.querySelector({})", json!(selector));
        self.wait_until(&format!("there is a {selector}"), &format!("{found} !== null")).await;
        let text = self.js(&format!("{found}.innerText")).await;
        words(text.as_str().expect("text"))
    }

    /// Everything that Answers says.
    pub async fn answers(&mut self) -> String {
        self.go_to("Answers").await;
        self.words_of("main.answers").await
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

    /// The figure in an answer's headline.
    pub async fn figure(&mut self, question: &str) -> f64 {
        let headline = format!(
            "[...document.querySelectorAll('main.answers section')]
                .find(card => card.querySelector('h2')?.textContent === {})?.querySelector('.headline')?.textContent",
            json!(question)
        );
        self.wait_until(&format!("“{question}” is answered with a figure"), &format!("/^-?\\d/.test({headline})"))
            .await;
        self.js(&format!("parseFloat({headline})")).await.as_f64().expect("a figure")
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
