//! What touches treated wood, and what its cuts want.

use crate::engine::sources::Source;

/// Metal that may touch treated wood. Nobody asks what joists are treated with, so that it
/// is said of all that holds them ([`Source::Corrosion`]).
pub(super) const METAL: &str = "against treated wood hot-dip galvanized or stainless, nails and screws also of silicon \
                                bronze or copper; none electroplated";
/// What cuts of treated wood want ([`Source::Corrosion`]).
pub(super) const CUTS: &str = "ends, notches and holes cut after treatment get a preservative brushed on";
/// Where both are from.
pub(super) const SOURCES: [Source; 2] = [Source::Corrosion, Source::CorrosionCode];

/// Does a kind of lumber say that it is treated? "Untreated" and "not treated" do not.
pub fn is_treated(kind: &str) -> bool {
    let kind = kind.to_lowercase();
    let words: Vec<&str> = kind.split(|letter: char| !letter.is_alphanumeric()).collect();
    let before = std::iter::once("").chain(words.iter().copied());
    words
        .iter()
        .zip(before)
        .any(|(word, before)| matches!(*word, "treated" | "pt") && !matches!(before, "not" | "non" | "un" | "no"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lumber_is_treated_when_it_says_so_and_not_when_it_says_otherwise() {
        for kind in
            ["2 in lumber as deep as the joists, treated", "2×8 pressure-treated #2", "2 × 6 No. 2 treated", "2×6 PT"]
        {
            assert!(is_treated(kind), "{kind}");
        }
        for kind in ["2×8 #2", "2×8 untreated", "not treated 2×8", "non-treated fir", "2×8, un-treated", ""] {
            assert!(!is_treated(kind), "{kind}");
        }
    }
}
