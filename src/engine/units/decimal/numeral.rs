//! Numerals: a run of digits with at most one point or comma.

use super::exact::Exact;

/// A number as it was typed. Its digits are kept as text, so nothing is lost before
/// the unit is known.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(in crate::engine::units) struct Numeral {
    text: String,
    whole: String,
    part: String,
    comma: bool,
}

/// Why a run of digits, points and commas is no numeral.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(in crate::engine::units) enum Fault {
    /// There is no digit in it.
    NoDigit,
    /// It ends in its point or comma; the digits before that.
    NothingAfterPoint(String),
    /// It has several points or commas; the number meant, if they set off thousands.
    SeveralPoints(Option<String>),
}

impl Numeral {
    /// May `c` stand in a numeral?
    pub(in crate::engine::units) const fn holds(c: char) -> bool {
        c.is_ascii_digit() || c == '.' || c == ','
    }

    /// Reads a run of characters that [`holds`](Self::holds) accepts.
    pub(in crate::engine::units) fn read(run: &str) -> Result<Self, Fault> {
        if !run.contains(|c: char| c.is_ascii_digit()) {
            return Err(Fault::NoDigit);
        }
        let (whole, part) = run.split_once(['.', ',']).unwrap_or((run, ""));
        let fractional = whole.len() < run.len();
        if part.contains(['.', ',']) {
            return Err(Fault::SeveralPoints(without_thousands_marks(run)));
        }
        if fractional && part.is_empty() {
            return Err(Fault::NothingAfterPoint(whole.to_owned()));
        }
        Ok(Self { text: run.to_owned(), whole: whole.to_owned(), part: part.to_owned(), comma: run.contains(',') })
    }

    /// As typed.
    pub(in crate::engine::units) fn text(&self) -> &str {
        &self.text
    }

    /// Has it no digits after a point or comma?
    pub(in crate::engine::units) const fn is_whole(&self) -> bool {
        self.part.is_empty()
    }

    /// Was a comma typed?
    pub(in crate::engine::units) const fn has_comma(&self) -> bool {
        self.comma
    }

    /// How many digits follow the point or comma.
    pub(in crate::engine::units) const fn decimals(&self) -> usize {
        self.part.len()
    }

    /// The digits before the point or comma.
    pub(in crate::engine::units) fn whole_digits(&self) -> &str {
        &self.whole
    }

    /// The digits after the point or comma.
    pub(in crate::engine::units) fn decimal_digits(&self) -> &str {
        &self.part
    }

    /// The text with a point in place of a comma.
    pub(in crate::engine::units) fn with_point(&self) -> String {
        self.text.replace(',', ".")
    }

    /// Its value, if it fits.
    pub(in crate::engine::units) fn exact(&self) -> Option<Exact> {
        let places = u32::try_from(self.part.len()).ok()?;
        let digits = format!("{}{}", self.whole, self.part).parse().ok()?;
        Exact::ratio(digits, 10_i128.checked_pow(places)?)
    }
}

/// `1,234,567` → `1234567` and `1.234,5` → `1234.5`: the number meant, if every mark
/// sets off a group of three, but for a last one of another kind.
fn without_thousands_marks(run: &str) -> Option<String> {
    let (grouped, decimals) = if has_one_mark(run) { (run, "") } else { run.rsplit_once(['.', ','])? };
    if !(has_one_mark(grouped) && is_in_threes(grouped)) {
        return None;
    }
    let digits = grouped.replace(['.', ','], "");
    Some(if decimals.is_empty() { digits } else { format!("{digits}.{decimals}") })
}

/// Are its marks all points, or all commas?
fn has_one_mark(run: &str) -> bool {
    !(run.contains('.') && run.contains(','))
}

/// Do three digits stand in every group but the first, which may have fewer?
fn is_in_threes(grouped: &str) -> bool {
    let mut groups = grouped.split(['.', ',']);
    let first_fits = groups.next().is_some_and(|group| (1..=3).contains(&group.len()));
    first_fits && groups.all(|group| group.len() == 3)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn digits_are_kept_exactly() {
        let value = |run| Numeral::read(run).unwrap().exact().unwrap().times(1000).unwrap().as_whole();
        assert_eq!(value("147.5"), Some(147_500));
        assert_eq!(value("374,5"), Some(374_500));
        assert_eq!(value(".5"), Some(500));
        assert_eq!(value("007"), Some(7_000));
        assert_eq!(value("0.0005"), None, "half a thousandth is no whole thousandth");
    }

    #[test]
    fn what_is_no_numeral_says_why() {
        assert_eq!(Numeral::read("."), Err(Fault::NoDigit));
        assert_eq!(Numeral::read("147."), Err(Fault::NothingAfterPoint("147".into())));
        assert_eq!(Numeral::read("1.2.3"), Err(Fault::SeveralPoints(None)));
    }

    #[test]
    fn thousands_marks_are_recognised_only_in_groups_of_three() {
        let meant = |run| without_thousands_marks(run);
        assert_eq!(meant("1,234,567").as_deref(), Some("1234567"));
        assert_eq!(meant("1,234.5").as_deref(), Some("1234.5"));
        assert_eq!(meant("1.234,5").as_deref(), Some("1234.5"));
        assert_eq!(meant("1,23,456"), None);
        assert_eq!(meant("1,234.567,8"), None);
        assert_eq!(meant("1234,567.8"), None);
    }

    #[test]
    fn more_digits_than_fit_give_no_value() {
        assert_eq!(Numeral::read(&"9".repeat(60)).unwrap().exact(), None);
    }
}
