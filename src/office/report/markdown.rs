//! Markdown, with whatever people typed made harmless in it.

use std::fmt::Write as _;

/// Text as it is, inside a line of Markdown: no mark-up, no HTML, no line break. It must
/// not begin the line, where a number or a dash would make a list.
pub(crate) fn plain(text: &str) -> String {
    let mut safe = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => safe.push_str("&amp;"),
            '<' => safe.push_str("&lt;"),
            '>' => safe.push_str("&gt;"),
            '\\' | '`' | '*' | '_' | '[' | ']' | '#' | '|' | '~' => {
                safe.push('\\');
                safe.push(c);
            }
            c if c.is_control() || matches!(c, '\u{2028}' | '\u{2029}') => safe.push(' '),
            c => safe.push(c),
        }
    }
    safe
}

/// A table of plain texts.
pub(super) fn table(columns: &[&str], rows: &[Vec<String>]) -> String {
    let mut table = format!("| {} |\n|", columns.join(" | "));
    for _ in columns {
        table.push_str(" --- |");
    }
    table.push('\n');
    for row in rows {
        let cells: Vec<String> = row.iter().map(|cell| plain(cell)).collect();
        // Writing to a string cannot fail.
        let _ = writeln!(table, "| {} |", cells.join(" | "));
    }
    table
}

/// A list of plain texts.
pub(crate) fn list(items: &[String]) -> String {
    items.iter().fold(String::new(), |list, item| list + &format!("- {}\n", plain(item)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_people_typed_stays_text() {
        assert_eq!(plain("a|b\n<img src=x> **no** [x](y)"), "a\\|b &lt;img src=x&gt; \\*\\*no\\*\\* \\[x\\](y)");
        assert_eq!(plain("12' 3 1/2\" at 68 °F"), "12' 3 1/2\" at 68 °F");
    }

    #[test]
    fn a_table_has_a_line_for_each_row_whatever_is_in_it() {
        let rows = [vec!["one\ntwo".to_owned(), "x|y".to_owned()]];
        assert_eq!(table(&["a", "b"], &rows), "| a | b |\n| --- | --- |\n| one two | x\\|y |\n");
    }
}
