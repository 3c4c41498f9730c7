//! The keypad under the thumb: four columns, four rows, the same places on every pad.

use super::live::live;
use crate::engine::moisture::Outside;
use crate::engine::take::Keys;
use leptos::prelude::*;

/// What a key does.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum KeyAction {
    /// Types this.
    Type(&'static str),
    /// Takes the last character back.
    Back,
    /// Shows the fractions, or the digits again.
    Flip,
    /// One joist on.
    Step,
    /// Off the meter's scale, on this side.
    OffScale(Outside),
    /// Nobody can get there.
    CannotReach,
    /// Saves.
    Save,
}

struct Key {
    /// A sign beside the words, for the eye alone.
    sign: &'static str,
    /// What stands on it. By ear and for speech control it is the key's name, unless
    /// it is a mere symbol.
    face: &'static str,
    /// The name of a key whose face is a symbol.
    symbol_for: Option<&'static str>,
    action: KeyAction,
}

const fn types(face: &'static str) -> Key {
    does(face, KeyAction::Type(face))
}

const fn does(face: &'static str, action: KeyAction) -> Key {
    Key { sign: "", face, symbol_for: None, action }
}

const fn signed(sign: &'static str, face: &'static str, action: KeyAction) -> Key {
    Key { sign, face, symbol_for: None, action }
}

const fn symbol(face: &'static str, name: &'static str, action: KeyAction) -> Key {
    Key { sign: "", face, symbol_for: Some(name), action }
}

const BACK: Key = symbol("⌫", "back", KeyAction::Back);
const SAVE: Key = does("save", KeyAction::Save);
/// A place without a key.
const NONE: Key = types("");

/// The keypad of a question. Metric lengths have unit keys where feet and inches were.
#[component]
pub fn Keypad(
    /// Which keys.
    keys: Keys,
    /// Are bare lengths metric?
    metric: bool,
    /// Called with what was pressed.
    on_key: Callback<KeyAction>,
) -> impl IntoView {
    let (fractions, set_fractions) = signal(false);
    let pressed = Callback::new(move |action| {
        set_fractions.set(action == KeyAction::Flip && !fractions.get_untracked());
        if action != KeyAction::Flip {
            on_key.run(action);
        }
    });
    live(move || {
        if fractions.get() {
            view! { <FractionPad pressed/> }.into_any()
        } else {
            view! { <DigitPad keys metric pressed/> }.into_any()
        }
    })
}

#[component]
fn DigitPad(keys: Keys, metric: bool, pressed: Callback<KeyAction>) -> impl IntoView {
    let rows = side_keys(keys, metric);
    let [right, corner] = rows;
    let [under_back, under_that] = right;
    let [left, middle] = corner;
    let keys = [
        types("7"),
        types("8"),
        types("9"),
        BACK,
        types("4"),
        types("5"),
        types("6"),
        under_back,
        types("1"),
        types("2"),
        types("3"),
        under_that,
        left,
        types("0"),
        middle,
        SAVE,
    ];
    pad("keypad", keys, pressed)
}

/// The keys that differ: two below the back key, two beside the zero.
const fn side_keys(keys: Keys, metric: bool) -> [[Key; 2]; 2] {
    match (keys, metric) {
        (Keys::Length, false) => [
            [signed("′ ", "feet", KeyAction::Type("' ")), signed("″ ", "inches", KeyAction::Type("\""))],
            [symbol("⅛", "fractions", KeyAction::Flip), types(".")],
        ],
        (Keys::Length, true) => [
            [does("m", KeyAction::Type(" m")), does("cm", KeyAction::Type(" cm"))],
            [does("mm", KeyAction::Type(" mm")), types(".")],
        ],
        (Keys::Depth, false) => [
            [does("can't reach", KeyAction::CannotReach), signed("″ ", "inches", KeyAction::Type("\""))],
            [symbol("⅛", "fractions", KeyAction::Flip), types(".")],
        ],
        (Keys::Depth, true) => [
            [does("can't reach", KeyAction::CannotReach), does("cm", KeyAction::Type(" cm"))],
            [does("mm", KeyAction::Type(" mm")), types(".")],
        ],
        (Keys::Moisture, _) => {
            let (under, over) = (KeyAction::OffScale(Outside::Under), KeyAction::OffScale(Outside::Over));
            [[does("joist +", KeyAction::Step), does("over max", over)], [types("."), does("under min", under)]]
        }
        (Keys::Temperature, _) => [[symbol("−", "minus", KeyAction::Type("-")), NONE], [types("."), NONE]],
        (Keys::Percent, _) => [[NONE, NONE], [types("."), NONE]],
        (Keys::Count | Keys::Findings | Keys::Camera, _) => [[NONE, NONE], [NONE, NONE]],
    }
}

/// A ruler of sixteenths: one tap and the digits are back.
#[component]
fn FractionPad(pressed: Callback<KeyAction>) -> impl IntoView {
    let keys = [
        types("1/16"),
        types("1/8"),
        types("3/16"),
        types("1/4"),
        types("5/16"),
        types("3/8"),
        types("7/16"),
        types("1/2"),
        types("9/16"),
        types("5/8"),
        types("11/16"),
        types("3/4"),
        types("13/16"),
        types("7/8"),
        types("15/16"),
        does("digits", KeyAction::Flip),
    ];
    pad("keypad fractions", keys, pressed)
}

fn pad(class: &'static str, keys: [Key; 16], pressed: Callback<KeyAction>) -> impl IntoView {
    let keys = keys.into_iter().map(|key| key_view(&key, pressed)).collect_view();
    view! { <div class=class role="group" aria-label="Keypad">{keys}</div> }
}

fn key_view(key: &Key, pressed: Callback<KeyAction>) -> AnyView {
    let Key { sign, face, symbol_for, action } = *key;
    if face.is_empty() {
        return view! { <span class="no-key"></span> }.into_any();
    }
    let class = match action {
        KeyAction::Save => "key save",
        KeyAction::Type(text) if text.contains('/') && !text.contains("16") => "key digit eighth",
        KeyAction::Type(text) if text.len() == 1 && text != "\"" => "key digit",
        _ => "key",
    };
    view! {
        <button type="button" class=class aria-label=symbol_for tabindex="-1"
            on:click=move |_| pressed.run(action)><span>{(!sign.is_empty()).then(|| view! { <span aria-hidden="true">{sign}</span> })}{face}</span></button>
    }
    .into_any()
}

/// The text after a key that types: a fraction goes a space behind a whole number.
pub fn press(text: &str, typed: &str) -> String {
    let fraction_after_digit = typed.contains('/') && text.ends_with(|last: char| last.is_ascii_digit());
    format!("{text}{}{typed}", if fraction_after_digit { " " } else { "" })
}
