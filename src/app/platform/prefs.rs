//! Preferences of this phone, in local storage: losing one costs a tap. Never an entry,
//! never a draft: local storage can lose its last seconds.

use crate::engine::take::Units;
use gloo_storage::{LocalStorage, Storage};
use serde::{Deserialize, Serialize};

const KEY: &str = "duckboard.prefs";

/// How this phone likes things.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Prefs {
    /// Dark for the crawl space, daylight for the truck.
    pub theme: Theme,
    /// Units of what is shown and typed.
    pub units: Units,
    /// Read saved values aloud.
    pub aloud: bool,
    /// Buzz when a value is saved.
    pub buzz: bool,
}

impl Default for Prefs {
    fn default() -> Self {
        Self { theme: Theme::default(), units: Units::default(), aloud: false, buzz: true }
    }
}

/// A palette.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Theme {
    /// Chalk on dark timber.
    #[default]
    Dark,
    /// Daylight.
    Day,
}

impl Theme {
    /// Both, in the order that a choice shows them.
    pub const ALL: [Self; 2] = [Self::Dark, Self::Day];

    /// The palette in words.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Dark => "Dark",
            Self::Day => "Daylight",
        }
    }

    /// The value of `data-theme` that the style sheet knows.
    pub const fn attribute(self) -> &'static str {
        match self {
            Self::Dark => "dark",
            Self::Day => "day",
        }
    }
}

/// The preferences kept, or the usual ones.
pub fn load() -> Prefs {
    LocalStorage::get(KEY).unwrap_or_default()
}

/// Keeps the preferences. A refusal is no loss worth a message.
pub fn keep(prefs: Prefs) {
    let _ = LocalStorage::set(KEY, prefs);
    let root = web_sys::window().and_then(|window| window.document()).and_then(|document| document.document_element());
    if let Some(root) = root {
        let _ = root.set_attribute("data-theme", prefs.theme.attribute());
    }
}
