//! Where in a JSON text a fault lies.
//!
//! The parser says the line and column at which it stopped; the path is found by walking
//! the text up to there. Tracking the path while parsing would do too, but doubles every
//! parser that the app downloads.

/// The path of the value that ends at or holds the spot, such as `stamp.by.initials` or
/// `act.correct.of[1]`; empty for the whole text. `line` and `column` count from 1 and
/// in bytes, as `serde_json` gives them.
pub(super) fn path_at(json: &str, line: usize, column: usize) -> String {
    let before: usize = json.split_inclusive('\n').take(line.saturating_sub(1)).map(str::len).sum();
    let end = before.saturating_add(column).min(json.len());
    let mut walk = Walk::default();
    for byte in json.bytes().take(end) {
        walk.step(byte);
    }
    walk.path()
}

#[derive(Default)]
struct Walk {
    /// The containers that are open, outermost first.
    open: Vec<Within>,
    /// The string that is being read, and whether the last byte escapes the next.
    string: Option<(Vec<u8>, bool)>,
}

enum Within {
    /// In an object, at the value of this name; `named` once the colon has come.
    Object { name: Vec<u8>, named: bool },
    /// In an array, at this element.
    Array(usize),
}

impl Walk {
    fn step(&mut self, byte: u8) {
        if let Some((text, escaped)) = &mut self.string {
            match (byte, *escaped) {
                (b'"', false) => self.end_string(),
                (b'\\', false) => *escaped = true,
                _ => {
                    *escaped = false;
                    text.push(byte);
                }
            }
            return;
        }
        match byte {
            b'"' => self.string = Some((Vec::new(), false)),
            b'{' => self.open.push(Within::Object { name: Vec::new(), named: false }),
            b'[' => self.open.push(Within::Array(0)),
            b'}' | b']' => drop(self.open.pop()),
            b':' => {
                if let Some(Within::Object { named, .. }) = self.open.last_mut() {
                    *named = true;
                }
            }
            b',' => match self.open.last_mut() {
                Some(Within::Object { name, named }) => (*name, *named) = (Vec::new(), false),
                Some(Within::Array(at)) => *at += 1,
                None => {}
            },
            _ => {}
        }
    }

    fn end_string(&mut self) {
        let text = self.string.take().map(|(text, _)| text).unwrap_or_default();
        if let Some(Within::Object { name, named: false }) = self.open.last_mut() {
            *name = text;
        }
    }

    fn path(&self) -> String {
        let mut path = String::new();
        for within in &self.open {
            match within {
                Within::Object { name, named: true } => {
                    if !path.is_empty() {
                        path.push('.');
                    }
                    path.push_str(&String::from_utf8_lossy(name));
                }
                Within::Object { .. } => {}
                Within::Array(at) => path.push_str(&format!("[{at}]")),
            }
        }
        path
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// The path where a parser would stop: right behind the mark `@`, which is taken out.
    fn at_mark(json: &str) -> String {
        let (before, after) = json.split_once('@').unwrap();
        let line = before.matches('\n').count() + 1;
        let column = before.rsplit('\n').next().unwrap().len();
        path_at(&format!("{before}{after}"), line, column)
    }

    #[test]
    fn a_fault_is_found_where_the_parser_stopped() {
        assert_eq!(at_mark(r#"{"a": {"b": "x"@}}"#), "a.b");
        assert_eq!(at_mark(r#"{"a": {"b": "x"}@}"#), "a");
        assert_eq!(at_mark(r#"{"a": [1, {"b,:": 2@}]}"#), "a[1].b,:");
        assert_eq!(at_mark(r#"{"a": [[], [7@]]}"#), "a[1][0]");
        assert_eq!(at_mark("{\"a\": 1,\n \"b\":\n  2@}"), "b");
        assert_eq!(at_mark(r#"{"a\"}": 1@}"#), "a\"}");
        assert_eq!(at_mark(r#"{"a": 1}@"#), "");
        assert_eq!(at_mark("@nonsense"), "");
    }

    proptest! {
        #[test]
        fn no_text_panics(json in ".{0,80}", line in 0_usize..5, column in 0_usize..200) {
            let _ = path_at(&json, line, column);
        }
    }
}
