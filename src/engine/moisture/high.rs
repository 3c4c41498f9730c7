//! Treated lumber: it is taken to be treated with salts in water, corrected as untreated wood of its
//! kind, and may be drier than that, for salts conduct.

use super::{Corrected, Material};
use crate::engine::figure::Known;
use crate::engine::sources::Source;
use crate::engine::units::MoistureContent;

/// How much too high treated lumber reads at most, in points ([`Source::TreatedWood`]: 1 to 2 %).
const SALTS: MoistureContent = MoistureContent::percent(2);

/// What is taken of treated lumber: of creosote and oil nobody says how they read.
pub const WITH_SALTS: &str = "Treated lumber is treated with salts in water, not with creosote or oil";

/// By how much a reading on that may be too high; of what is glued nobody says.
pub(super) fn may_read_high(material: Material) -> Option<MoistureContent> {
    (material == Material::Treated).then_some(SALTS)
}

/// Says so of a reading on treated lumber, and what is taken of the treatment.
pub(super) fn say(known: &mut Known<Corrected>) {
    if known.value.may_read_high.is_none() || known.value.relative {
        return;
    }
    known.assumed.push(WITH_SALTS.to_owned());
    known.doubts.push(
        Source::TreatedWood.noted("Taken as untreated wood: salts make it read 1 to 2 % high, so it may be drier"),
    );
}
