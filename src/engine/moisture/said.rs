//! How a reading is said, once for every page: the same number under the same name.
//!
//! A number of a reading is rounded to tenths, half away from zero. A drawing, where tenths
//! find no room, rounds that number again in the same way, so that nobody who reads both
//! finds them apart, and what is in doubt goes to the wetter side.

use super::{Corrected, Stands, Step};
use crate::engine::units::MoistureContent;
use crate::engine::units::decimal::{Decimals, format_moisture_content};

/// A number of a reading as text says it: `18.5 %`.
pub fn tenths(moisture: MoistureContent) -> String {
    format_moisture_content(moisture, Decimals::Tenths)
}

/// The same number as a drawing has room for: `19`.
pub fn whole(moisture: MoistureContent) -> String {
    let said = tenths(moisture);
    let said = said.trim_end_matches(" %").parse().map_or(moisture, MoistureContent::from_percent_f64);
    format_moisture_content(said, Decimals::Whole).trim_end_matches(" %").to_owned()
}

/// What numbers on a drawing are, for its legend; none where there are none.
pub fn legend<'a>(readings: impl IntoIterator<Item = &'a Corrected>) -> Option<&'static str> {
    let (mut corrected, mut as_shown) = (false, false);
    for reading in readings {
        let is_corrected = [reading.temperature, reading.species].iter().any(|step| *step != Step::Left);
        corrected |= is_corrected;
        as_shown |= !is_corrected;
    }
    match (corrected, as_shown) {
        (false, false) => None,
        (true, false) => Some("% moisture, corrected"),
        (false, true) => Some("% moisture, as shown"),
        (true, true) => Some("% moisture, corrected where it can be"),
    }
}

impl Corrected {
    /// The reading as text says it: `18.5 %`, `over the meter's maximum`.
    pub fn words(&self) -> String {
        let relative = if self.relative { " relative" } else { "" };
        let doubted = if self.doubted { ", doubted" } else { "" };
        let unsaid = self.unsaid.map_or_else(String::new, |unsaid| format!(", {}", unsaid.words()));
        let stands = match self.corrected {
            Stands::At(moisture) => tenths(moisture),
            Stands::Under(least) if self.doubted => format!("under {}", tenths(least)),
            Stands::Over(most) if self.doubted => format!("over {}", tenths(most)),
            Stands::Under(_) => "under the meter's minimum".to_owned(),
            Stands::Over(_) => "over the meter's maximum".to_owned(),
        };
        format!("{stands}{relative}{doubted}{unsaid}")
    }

    /// The reading as a drawing has room for: `19`, `over`.
    pub fn mark(&self) -> String {
        match self.corrected {
            Stands::At(moisture) => whole(moisture),
            Stands::Under(_) => "under".to_owned(),
            Stands::Over(_) => "over".to_owned(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn percent(millionths: i64) -> MoistureContent {
        MoistureContent::from_percent_f64(millionths as f64 / 1e6)
    }

    #[test]
    fn halves_go_up_and_a_drawing_rounds_the_number_that_the_table_says() {
        let said = |millionths| (tenths(percent(millionths)), whole(percent(millionths)));
        assert_eq!(said(18_449_999), ("18.4 %".to_owned(), "18".to_owned()));
        assert_eq!(said(18_450_000), ("18.5 %".to_owned(), "19".to_owned()), "18.5 in the table is 19 on the plan");
        assert_eq!(said(18_500_000), ("18.5 %".to_owned(), "19".to_owned()));
        assert_eq!(said(16_500_000), ("16.5 %".to_owned(), "17".to_owned()));
        assert_eq!(said(0), ("0.0 %".to_owned(), "0".to_owned()));
    }

    #[test]
    fn off_the_scale_there_is_no_number_anywhere() {
        let at = MoistureContent::percent(40);
        let over = Corrected::as_shown(Stands::Over(at));
        assert_eq!((over.words().as_str(), over.mark().as_str()), ("over the meter's maximum", "over"));
        let under = Corrected::as_shown(Stands::Under(at));
        assert_eq!((under.words().as_str(), under.mark().as_str()), ("under the meter's minimum", "under"));
        let doubted = Corrected { doubted: true, ..over };
        assert_eq!((doubted.words().as_str(), doubted.mark().as_str()), ("over 40.0 %, doubted", "over"));
    }

    #[test]
    fn a_legend_says_whether_numbers_are_corrected() {
        let as_shown = Corrected::as_shown(Stands::At(MoistureContent::percent(18)));
        let corrected = Corrected { species: Step::Applied, ..as_shown };
        let by_meter = Corrected { temperature: Step::ByMeter, ..as_shown };
        assert_eq!(legend([]), None);
        assert_eq!(legend([&corrected, &by_meter]), Some("% moisture, corrected"));
        assert_eq!(legend([&as_shown]), Some("% moisture, as shown"));
        assert_eq!(legend([&as_shown, &corrected]), Some("% moisture, corrected where it can be"));
    }

    proptest! {
        #[test]
        fn a_drawing_never_says_less_than_half_a_percent_below_the_table(millionths in 0_i64..=60_000_000) {
            let moisture = percent(millionths);
            let table: f64 = tenths(moisture).trim_end_matches(" %").parse().unwrap();
            let drawing: f64 = whole(moisture).parse().unwrap();
            prop_assert!((drawing - table).abs() <= 0.5 + 1e-9 && drawing - table > -0.5);
        }
    }
}
