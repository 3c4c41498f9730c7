//! What was read off a moisture meter, and on what.

use super::Species;
use crate::engine::entry::EntryId;
use crate::engine::units::{MoistureContent, Temperature, Typed};
use serde::{Deserialize, Serialize};

/// One moisture reading, as the meter showed it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Reading {
    /// Where it was taken.
    pub place: EntryId,
    /// With which meter, if that was said.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub meter: Option<EntryId>,
    /// What the meter showed.
    pub shown: Shown,
    /// What it was taken on.
    pub wood: Wood,
    /// How warm the wood was, if that was measured.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wood_temperature: Option<Typed<Temperature>>,
    /// Was the number asked about, because it is not believed, and kept? Since 1.5.
    #[serde(default, skip_serializing_if = "is_false")]
    pub doubted: bool,
    /// The number that was typed first, where the answer to that question was that the
    /// meter showed it is off its scale. Since 1.5.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub typed_first: Option<Typed<MoistureContent>>,
    /// Was it taken on dry panel of the same kind elsewhere in the house, for readings on
    /// this kind to be held against? Since 1.5.
    #[serde(default, skip_serializing_if = "is_false")]
    pub reference: bool,
}

#[expect(clippy::trivially_copy_pass_by_ref, reason = "serde hands a reference")]
const fn is_false(is: &bool) -> bool {
    !*is
}

impl Reading {
    /// What was shown on a wood at a place; nothing else was said.
    pub const fn new(place: EntryId, shown: Shown, wood: Wood) -> Self {
        Self {
            place,
            meter: None,
            shown,
            wood,
            wood_temperature: None,
            doubted: false,
            typed_first: None,
            reference: false,
        }
    }
}

/// What a meter showed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Shown {
    /// A moisture content, right or not.
    Percent(Typed<MoistureContent>),
    /// Only that it is past the end of the scale.
    OverMaximum,
    /// Only that it is below the start of the scale. Since 1.5.
    UnderMinimum,
}

/// What a reading was taken on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Wood {
    /// How it is made up.
    pub material: Material,
    /// Its species or stamp, if somebody looked.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub species: Option<Species>,
}

/// How a piece of wood is made up, as far as a meter can tell.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Material {
    /// Untreated lumber or boards.
    Solid,
    /// Lumber treated with preservative salts.
    Treated,
    /// Plywood.
    Plywood,
    /// Oriented strand board.
    Osb,
    /// Particleboard, hardboard, laminated beams and the like.
    OtherGlued,
    /// Not known.
    Unknown,
}

impl Wood {
    /// The wood in a few words: "Douglas-fir", "plywood", "species not said".
    pub fn words(self) -> String {
        match (self.material, self.species) {
            (Material::Solid, Some(Species::Unknown)) => "species unknown".to_owned(),
            (Material::Solid, Some(species)) => species.label().to_owned(),
            (Material::Solid, None) => "species not said".to_owned(),
            (Material::Unknown, _) => "wood not said".to_owned(),
            (made_up, Some(species)) => format!("{}, {}", made_up.label(), species.label()),
            (made_up, None) => made_up.label().to_owned(),
        }
    }
}

impl Material {
    /// Every material, in the order that a choice shows them.
    pub const ALL: [Self; 6] = [Self::Solid, Self::Treated, Self::Plywood, Self::Osb, Self::OtherGlued, Self::Unknown];

    /// Is it lumber or boards, treated or not?
    pub const fn is_lumber(self) -> bool {
        matches!(self, Self::Solid | Self::Treated)
    }

    /// The material in words.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Solid => "solid lumber",
            Self::Treated => "treated lumber",
            Self::Plywood => "plywood",
            Self::Osb => "OSB",
            Self::OtherGlued => "other glued wood",
            Self::Unknown => "unknown",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::entry::DeviceId;

    #[test]
    fn a_job_file_carries_what_is_known_and_no_more() {
        let place = EntryId { count: 7, device: DeviceId::new(1) };
        let wood = Wood { material: Material::Solid, species: None };
        let reading = Reading::new(place, Shown::OverMaximum, wood);
        let json = serde_json::to_string(&reading).unwrap();
        assert_eq!(json, format!(r#"{{"place":"{place}","shown":"over_maximum","wood":{{"material":"solid"}}}}"#));
        assert_eq!(serde_json::from_str::<Reading>(&json).unwrap(), reading);

        let shown = Shown::Percent(Typed::new("18.5 %", MoistureContent::try_hundredths(1_850).unwrap()));
        let json = serde_json::to_string(&shown).unwrap();
        assert_eq!(json, r#"{"percent":{"typed":"18.5 %","value":{"percent":18.5}}}"#);
    }
}
