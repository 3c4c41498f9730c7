//! Test tables: lines of cells with `|` between, which people read as they stand.

/// The rows of a table, their cells trimmed and unescaped. A table without any is no
/// test, and fails.
pub(in crate::engine::units) fn rows<const CELLS: usize>(table: &str) -> Vec<[String; CELLS]> {
    let lines = table.lines().filter(|line| !line.trim().is_empty() && !line.starts_with('#'));
    let rows: Vec<_> = lines
        .map(|line| {
            let cells: Vec<String> = line.splitn(CELLS, '|').map(|cell| unescaped(cell.trim())).collect();
            cells.try_into().unwrap_or_else(|_| panic!("{CELLS} cells wanted: {line}"))
        })
        .collect();
    assert!(!rows.is_empty(), "the table is empty");
    rows
}

/// With `\u{a0}` and the like as the characters they stand for.
fn unescaped(cell: &str) -> String {
    let mut pieces = cell.split("\\u{");
    let first = pieces.next().unwrap().to_owned();
    pieces.fold(first, |text, piece| {
        let (code, rest) = piece.split_once('}').unwrap();
        let character = char::from_u32(u32::from_str_radix(code, 16).unwrap()).unwrap();
        format!("{text}{character}{rest}")
    })
}
