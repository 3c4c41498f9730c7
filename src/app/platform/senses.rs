//! Felt and heard: vibration and speech, where the phone has them. Never the only
//! confirmation.

use web_sys::SpeechSynthesisUtterance;

/// A short buzz.
pub fn buzz() {
    if let Some(window) = web_sys::window() {
        let _ = window.navigator().vibrate_with_duration(40);
    }
}

/// Says it aloud, instead of what was being said.
pub fn say(text: &str) {
    let Some(speech) = web_sys::window().and_then(|window| window.speech_synthesis().ok()) else { return };
    speech.cancel();
    if let Ok(utterance) = SpeechSynthesisUtterance::new_with_text(text) {
        speech.speak(&utterance);
    }
}
