//! Comma-separated values as RFC 4180 has them, safe to open in a spreadsheet.
//!
//! A spreadsheet takes a cell that begins with an equals sign and the like for a
//! formula, and what people typed in a note could be one. Such text gets an
//! apostrophe before it, which spreadsheets take as "this is text".

use std::fmt::Write as _;

/// A cell: what people wrote, or a number that this program wrote.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Cell {
    /// Anything that somebody could have typed.
    Text(String),
    /// Digits, sign and point, made here and left as they are.
    Number(String),
}

impl Cell {
    /// A text cell.
    pub fn text(text: impl Into<String>) -> Self {
        Self::Text(text.into())
    }

    /// The cell for people, without guard or quotes.
    pub fn shown(&self) -> &str {
        match self {
            Self::Text(text) | Self::Number(text) => text,
        }
    }
}

/// A table as CSV: the line of its columns, then one line a row, each ended by CR LF.
pub fn table<'a>(columns: &[&str], rows: impl IntoIterator<Item = &'a [Cell]>) -> String {
    let mut csv = String::new();
    line(&mut csv, columns.iter().map(|column| (*column).to_owned()));
    for row in rows {
        line(&mut csv, row.iter().map(field));
    }
    csv
}

fn line(csv: &mut String, fields: impl Iterator<Item = String>) {
    for (nth, field) in fields.enumerate() {
        // Writing to a string cannot fail.
        let _ = write!(csv, "{}{field}", if nth == 0 { "" } else { "," });
    }
    csv.push_str("\r\n");
}

fn field(cell: &Cell) -> String {
    match cell {
        Cell::Number(number) => number.clone(),
        Cell::Text(text) => quoted(&guarded(text)),
    }
}

fn guarded(text: &str) -> String {
    // The full-width signs are formulas too in spreadsheets of some languages.
    const STARTS: [char; 10] = ['=', '+', '-', '@', '\t', '\r', '＝', '＋', '－', '＠'];
    // Tab and carriage return are starts themselves; other space is passed over.
    let start = text.trim_start_matches(|c: char| c.is_whitespace() && !STARTS.contains(&c));
    let formula = start.starts_with(STARTS);
    if formula { format!("'{text}") } else { text.to_owned() }
}

fn quoted(text: &str) -> String {
    if text.contains([',', '"', '\r', '\n']) || text.trim() != text {
        format!("\"{}\"", text.replace('"', "\"\""))
    } else {
        text.to_owned()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// What the `csv` crate reads back, as the independent reader.
    fn read_back(csv: &str) -> Vec<Vec<String>> {
        let mut reader = csv::ReaderBuilder::new().has_headers(false).flexible(false).from_reader(csv.as_bytes());
        reader.records().map(|record| record.unwrap().iter().map(str::to_owned).collect()).collect()
    }

    proptest! {
        #[test]
        fn another_reader_gets_every_cell_back(rows in prop::collection::vec(prop::collection::vec(any::<String>(), 3), 0..6)) {
            let cells: Vec<Vec<Cell>> = rows.iter().map(|row| row.iter().map(Cell::text).collect()).collect();
            let csv = table(&["a", "b", "c"], cells.iter().map(Vec::as_slice));
            let back = read_back(&csv);
            let expected: Vec<Vec<String>> = rows.iter().map(|row| row.iter().map(|text| guarded(text)).collect()).collect();
            prop_assert_eq!(&back[1..], &expected[..]);
        }

        #[test]
        fn no_cell_of_text_begins_as_a_formula(text in "[ \t\r\n]{0,2}[=+@\t\r＝－-].{0,9}") {
            let csv = table(&["a"], [[Cell::text(text.as_str())].as_slice()]);
            prop_assert!(read_back(&csv)[1][0].starts_with('\''));
        }
    }

    #[test]
    fn numbers_keep_their_sign_and_text_with_quotes_is_quoted() {
        let row = [Cell::text("12' 3 1/2\""), Cell::Number("-0.5".into()), Cell::text("-3\"")];
        let csv = table(&["typed", "in", "drop"], [row.as_slice()]);
        assert_eq!(csv, "typed,in,drop\r\n\"12' 3 1/2\"\"\",-0.5,\"'-3\"\"\"\r\n");
    }
}
