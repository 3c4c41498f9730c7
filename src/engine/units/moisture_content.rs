//! Moisture content of wood.

use super::limits;
use super::percent::percentage;

percentage! {
    /// Moisture content of wood: mass of water over mass of dry wood, in whole
    /// millionths of a percent, within [`limits::MOISTURE_CONTENT`].
    MoistureContent, limits::MOISTURE_CONTENT
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn what_was_typed_survives_json(hundredths in 0_i64..=30_000) {
            let typed = MoistureContent::try_hundredths(hundredths).unwrap();
            let json = serde_json::to_string(&typed).unwrap();
            prop_assert_eq!(serde_json::from_str::<MoistureContent>(&json).unwrap(), typed);
            prop_assert!(json.len() <= r#"{"percent":300.00}"#.len(), "a short number stays short: {json}");
        }
    }

    #[test]
    fn what_cannot_be_is_refused_with_the_range() {
        let error = MoistureContent::try_hundredths(30_001).unwrap_err();
        assert_eq!(error.to_string(), "moisture content must be 0 to 300 %");
        assert!(serde_json::from_str::<MoistureContent>(r#"{"percent":-1}"#).is_err());
    }
}
