//! The old floor, layer by layer: how deep a blade goes, and the step to the new sheets.

use crate::engine::figure::{Figure, Known, Need, Why};
use crate::engine::job::Job;
use crate::engine::sources::Source;
use crate::engine::units::tape::{InchStep, LengthStyle};
use crate::engine::units::{Length, Typed};
use serde::{Deserialize, Serialize};

/// A layer of the old floor. Layers are logged from the top down.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Layer {
    /// What it is.
    pub what: LayerKind,
    /// How thick it is, by caliper.
    pub thickness: Typed<Length>,
}

/// What a layer of a floor can be, with the way that boards run.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum LayerKind {
    /// What is walked on.
    #[default]
    Finish,
    /// A thin panel under that.
    Underlayment,
    /// A structural panel.
    Panel,
    /// Boards square to the joists.
    Boards,
    /// Boards at a slant to the joists.
    DiagonalBoards,
}

impl LayerKind {
    /// All, from the top down.
    pub const ALL: [Self; 5] = [Self::Finish, Self::Underlayment, Self::Panel, Self::Boards, Self::DiagonalBoards];

    /// The word.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Finish => "finished floor",
            Self::Underlayment => "underlayment",
            Self::Panel => "panel",
            Self::Boards => "boards, square to the joists",
            Self::DiagonalBoards => "boards, diagonal",
        }
    }

    /// Does it carry, so that new sheets take its place?
    pub const fn is_subfloor(self) -> bool {
        matches!(self, Self::Panel | Self::Boards | Self::DiagonalBoards)
    }
}

/// The style, as fine as a caliper reads.
pub fn by_caliper(style: LengthStyle) -> LengthStyle {
    LengthStyle { step: InchStep::SixtyFourth, ..style }
}

/// What the layers come to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct BuildUp {
    /// How many there are.
    pub layers: usize,
    /// All of them together: no blade goes deeper.
    pub whole: Length,
    /// How far the top of the new sheets lies above that of the old subfloor: less than
    /// nothing where it lies below. None before both are measured.
    pub step: Option<Length>,
}

/// The old floor's thickness, and the step at the seam to the new one.
///
/// Source: [`Source::BlindCuts`], [`Source::PanelThickness`].
pub fn build_up(job: &Job) -> Figure<BuildUp> {
    let layers = &job.now.layers();
    if layers.is_empty() {
        return Figure::Missing(vec![Need::Layers]);
    }
    let sum = |of: fn(LayerKind) -> bool| -> Option<Length> {
        let thicknesses = layers.values().filter(|layer| of(layer.value.what)).map(|layer| layer.value.thickness.value);
        thicknesses.reduce(|sum, next| sum + next)
    };
    let sheet = job.sheet_thickness();
    let step = sheet.zip(sum(LayerKind::is_subfloor)).map(|(sheet, old)| sheet.value - old);
    let rule = "Layers add up; the step is the new sheet less the old boards and panels";
    let mut why = Why::rule(rule, &[Source::BlindCuts, Source::PanelThickness]).using(layers.keys().copied());
    for layer in layers.values() {
        why = why.with(layer.value.what.label(), layer.value.thickness.typed.clone());
    }
    if let Some(sheet) = sheet {
        why = why.with("new sheet", sheet.typed.clone());
    }
    let value = BuildUp { layers: layers.len(), whole: sum(|_| true).unwrap_or(Length::ZERO), step };
    let doubts = vec!["Measured where it was open: elsewhere there may be one layer more.".to_owned()];
    Figure::Known(Known { value, assumed: Vec::new(), doubts, why })
}
