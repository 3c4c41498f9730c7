//! Take under a thumb: everything in sight without scrolling, and large enough for a
//! glove, on the smallest screen that the app promises to fit and on most phones.

use crate::carpenter::with_a_job;
use crate::harness::{Phone, Screen, Server};
use serde_json::Value;

const INSTRUMENTS: [&str; 6] = ["Tape", "Meter", "Air", "Level", "Look", "Photo"];

/// The sizes of `design.md`, in CSS pixels, each with what breaks it. Between two
/// instruments 6 px are agreed: at 360 px six of them leave no more.
const TROUBLES: &str = r"(() => {
  const troubles = [];
  for (const box of [document.documentElement, document.querySelector('main')]) {
    const over = box.scrollHeight - box.clientHeight, aside = box.scrollWidth - box.clientWidth;
    if (over > 0 || aside > 0) troubles.push(`${box.tagName} scrolls: ${over} px down, ${aside} px aside`);
  }
  const shown = element => element.getClientRects().length > 0;
  const named = element => `“${element.ariaLabel ?? element.innerText.replace(/\s+/g, ' ').trim()}”`;
  const keys = [...document.querySelectorAll('button, a, label:has(input[type=file])')].filter(shown);
  const isTitle = key => key.closest('header') !== null;
  const pressed = keys.filter(key => !isTitle(key));
  for (const key of pressed) {
    const { width, height, left, top, right, bottom } = key.getBoundingClientRect();
    const needed = key.closest('[aria-label=Keypad]') ? 72 : 48;
    const size = `${width.toFixed(1)} x ${height.toFixed(1)}`;
    if (height < 64 || width < needed) troubles.push(`${named(key)} is ${size}: at least ${needed} x 64`);
    if (left < 0 || top < 0 || right > innerWidth || bottom > innerHeight) troubles.push(`${named(key)} is off the screen`);
    const hit = document.elementFromPoint((left + right) / 2, (top + bottom) / 2);
    if (!key.contains(hit)) troubles.push(`${named(key)} is covered`);
  }
  const group = key => key.closest('[role=group], nav');
  pressed.forEach((one, index) => {
    for (const other of pressed.slice(index + 1)) {
      const [a, b] = [one, other].map(key => key.getBoundingClientRect());
      const aside = Math.max(a.left, b.left) - Math.min(a.right, b.right);
      const down = Math.max(a.top, b.top) - Math.min(a.bottom, b.bottom);
      const gap = Math.max(aside, down);
      const together = group(one) !== null && group(one) === group(other);
      const tabs = together && group(one).tagName === 'NAV';
      const needed = tabs ? 0 : together && group(one).ariaLabel === 'Instruments' ? 6 : 8;
      if (gap < needed - 0.01) troubles.push(`${named(one)} and ${named(other)} are ${gap.toFixed(1)} px apart: at least ${needed}`);
    }
  });
  return { keys: pressed.length, troubles };
})()";

/// Everything that breaks the rules on a screen by which this is said, once it stands still.
async fn troubles(phone: &mut Phone, what: &str, saying: &str) -> Vec<String> {
    phone.wait_for(saying).await;
    phone.at_rest().await;
    let has_all_keys = |seen: &Value| seen["keys"].as_i64() >= Some(6 + 4);
    let seen = phone.read(&format!("all keys are there: {what}"), TROUBLES, has_all_keys).await;
    let troubles = seen["troubles"].as_array().cloned().unwrap_or_default();
    troubles.iter().map(|trouble| format!("{what}: {}", trouble.as_str().unwrap_or("?"))).collect()
}

struct Look {
    phone: Phone,
    troubles: Vec<String>,
}

impl Look {
    /// Looks at all that is on the screen, under a name that is said with each trouble.
    async fn at(&mut self, what: &str, saying: &str) {
        // The header is on its way until all is saved.
        self.phone.nothing_is_unsaved().await;
        let troubles = troubles(&mut self.phone, what, saying).await;
        self.troubles.extend(troubles);
    }
}

async fn fits(screen: Screen, name: &str) {
    let server = Server::start().await;
    let mut phone = Phone::open(screen, server.address()).await;
    phone.introduce("QX").await;
    // The invented sample has one line more on the screen than a real job.
    phone.open_the_sample().await;
    phone.go_to("Take").await;
    let mut look = Look { phone, troubles: Vec::new() };
    for instrument in INSTRUMENTS {
        look.phone.take_up(instrument).await;
        look.at(instrument, "Invented sample").await;
        look.phone.screenshot(&format!("{name}-{}", instrument.to_lowercase())).await;
    }
    look.phone.take_up("Tape").await;
    // A side more would stop the sample's room, which is whole.
    look.phone.ask_for("What is measured", "Crawl height").await;
    look.phone.keypad("1 2 feet 3 fractions").await;
    look.at("fractions", "15/16").await;
    look.phone.screenshot(&format!("{name}-fractions")).await;
    look.phone.keypad("15/16 inches").await;
    look.phone.half_typed("12' 3 15/16\"").await;
    look.at("a long length", "inches").await;
    look.phone.keypad("save").await;
    look.at("a length just taken", "last: ").await;
    look.phone.keypad("0 save").await;
    look.at("a length refused", "1\" to 20' 0\" is accepted").await;
    look.phone.screenshot(&format!("{name}-refused")).await;
    let Look { phone, troubles } = look;
    phone.finish().await;
    assert!(troubles.is_empty(), "{} troubles on {screen:?}:\n{}", troubles.len(), troubles.join("\n"));
}

/// When nothing can be saved every key is needed more than ever.
#[tokio::test]
async fn a_full_phone_leaves_every_key_in_reach_on_the_smallest() {
    let (server, mut phone) = with_a_job(Screen::Small).await;
    phone.start_full(&server).await;
    phone.take_up("Tape").await;
    phone.keypad("9 feet save").await;
    let troubles = troubles(&mut phone, "a full phone", "NOT SAVED").await;
    phone.screenshot("small-full").await;
    phone.finish_despite_errors().await;
    assert!(troubles.is_empty(), "{} troubles:\n{}", troubles.len(), troubles.join("\n"));
}

#[tokio::test]
async fn take_fits_the_smallest_phone_and_a_glove() {
    fits(Screen::Small, "small").await;
}

#[tokio::test]
async fn take_fits_most_phones_and_a_glove() {
    fits(Screen::Tall, "tall").await;
}
