//! Free text with a length that a screen, a print and a file can bear.

use serde::{Deserialize, Serialize};
use std::fmt;

/// Text of at most `MAX` characters, trimmed, without control characters other than
/// the line break.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Text<const MAX: usize>(String);

/// A name or a label: a title, a chalk mark, a wall.
pub type Label = Text<80>;
/// A sentence or a few.
pub type Note = Text<1000>;

impl<const MAX: usize> Text<MAX> {
    /// The text, trimmed.
    ///
    /// # Errors
    /// [`BadText`] when it is too long or holds control characters.
    pub fn new(text: &str) -> Result<Self, BadText> {
        let text = text.trim();
        let length = text.chars().count();
        if length > MAX {
            return Err(BadText::TooLong { length, most: MAX });
        }
        if let Some(found) = text.chars().find(|c| c.is_control() && *c != '\n') {
            return Err(BadText::Control { found });
        }
        Ok(Self(text.to_owned()))
    }

    /// As much of the text as fits, control characters dropped: for names that the
    /// app itself makes.
    pub fn fitted(text: &str) -> Self {
        let kept: String = text.trim().chars().filter(|c| !c.is_control()).take(MAX).collect();
        Self(kept.trim().to_owned())
    }

    /// The text.
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// Is there nothing in it?
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }
}

impl<const MAX: usize> fmt::Display for Text<MAX> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl<const MAX: usize> TryFrom<String> for Text<MAX> {
    type Error = BadText;
    fn try_from(text: String) -> Result<Self, BadText> {
        Self::new(&text)
    }
}

impl<const MAX: usize> From<Text<MAX>> for String {
    fn from(text: Text<MAX>) -> Self {
        text.0
    }
}

#[cfg(not(target_arch = "wasm32"))]
impl<const MAX: usize> schemars::JsonSchema for Text<MAX> {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        format!("Text{MAX}").into()
    }
    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({ "type": "string", "maxLength": MAX })
    }
}

/// Why a text was refused.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum BadText {
    /// More characters than fit.
    TooLong {
        /// How many there are.
        length: usize,
        /// How many may be.
        most: usize,
    },
    /// A character that cannot be shown.
    Control {
        /// The character.
        found: char,
    },
}

impl fmt::Display for BadText {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooLong { length, most } => write!(f, "text has {length} characters; up to {most} are accepted"),
            Self::Control { found } => {
                write!(f, "text holds the control character U+{:04X}; plain text is accepted", *found as u32)
            }
        }
    }
}

impl std::error::Error for BadText {}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn text_is_trimmed_and_bounded_in_characters_not_bytes() {
        assert_eq!(Text::<3>::new(" ééé ").unwrap().as_str(), "ééé");
        assert_eq!(Text::<3>::new("éééé").unwrap_err(), BadText::TooLong { length: 4, most: 3 });
        assert!(Label::new("a\u{7}b").is_err());
    }
}
