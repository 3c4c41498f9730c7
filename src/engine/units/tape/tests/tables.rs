//! The two tables: what is read, and what is refused with which words.

use crate::engine::units::decimal::table::rows;
use crate::engine::units::tape::{BareUnit, Sign, parse};

const ACCEPTED: &str = include_str!("accepted.txt");
const REFUSED: &str = include_str!("refused.txt");

fn field(name: &str) -> (BareUnit, Sign) {
    let unit = name.trim_end_matches('±');
    let bare = BareUnit::ALL.into_iter().find(|bare| bare.symbol() == unit).unwrap();
    (bare, if unit == name { Sign::Refused } else { Sign::Allowed })
}

#[test]
fn what_the_table_accepts_has_its_value_and_is_kept_with_its_unit() {
    for [name, typed, nanometres, kept] in rows(ACCEPTED) {
        let (bare, sign) = field(&name);
        let read = parse(&typed, bare, sign).unwrap_or_else(|problem| panic!("{name}: {problem}"));
        assert_eq!(read.value.to_nm().to_string(), nanometres, "{name}: {typed}");
        assert_eq!(read.typed, if kept == "=" { typed } else { kept });
    }
}

#[test]
fn what_the_table_refuses_is_refused_in_its_words() {
    for [name, typed, message] in rows(REFUSED) {
        let (bare, sign) = field(&name);
        match parse(&typed, bare, sign) {
            Ok(read) => panic!("{name}: {typed} was read as {read:?}"),
            Err(problem) => assert_eq!(problem.to_string(), message, "{name}: {typed}"),
        }
    }
}
