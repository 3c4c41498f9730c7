//! The keyboard: the phone's own, an office's, or an instrument's that types.

use super::phone::Phone;
use serde_json::{Value, json};

impl Phone {
    /// Types into whatever has the focus, key by key.
    pub async fn type_keys(&mut self, text: &str) {
        for character in text.chars() {
            let key = character.to_string();
            self.key(&key, code(character), Some(&key)).await;
        }
    }

    /// Presses one key by its DOM name: `Enter`, `Tab`, `Backspace`, `Escape`, `ArrowUp`, …
    pub async fn press(&mut self, key: &str) {
        let (code, text) = match key {
            "Backspace" => (8, None),
            "Tab" => (9, None),
            "Enter" => (13, Some("\r")),
            "Escape" => (27, None),
            "End" => (35, None),
            "Home" => (36, None),
            "ArrowLeft" => (37, None),
            "ArrowUp" => (38, None),
            "ArrowRight" => (39, None),
            "ArrowDown" => (40, None),
            "Delete" => (46, None),
            _ => self.fail(&format!("the harness has no key called {key}")).await,
        };
        self.key(key, code, text).await;
    }

    /// Taps a field, and types in place of what it holds.
    pub async fn fill(&mut self, name: &str, text: &str) {
        self.tap(name).await;
        self.act(&format!("“{name}” takes what is typed"), "document.activeElement.select()").await;
        if text.is_empty() {
            self.press("Backspace").await;
        }
        self.type_keys(text).await;
    }

    async fn key(&mut self, key: &str, code: u32, text: Option<&str>) {
        let mut event = json!({ "type": "keyDown", "key": key, "windowsVirtualKeyCode": code });
        if let Some(text) = text {
            event["text"] = Value::from(text);
        }
        self.cdp("Input.dispatchKeyEvent", event.clone()).await;
        event["type"] = Value::from("keyUp");
        if let Some(event) = event.as_object_mut() {
            event.remove("text");
        }
        self.cdp("Input.dispatchKeyEvent", event).await;
    }
}

/// The key's number for those that have one; zero says that only the text counts.
fn code(character: char) -> u32 {
    match character.to_ascii_uppercase() {
        key @ ('0'..='9' | 'A'..='Z' | ' ') => u32::from(key),
        _ => 0,
    }
}
