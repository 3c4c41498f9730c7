//! The old floor, layer by layer: how deep a blade goes, and the step to the new sheets.

use crate::engine::entry::DeviceId;
use crate::engine::figure::{Figure, Known, Need, Why};
use crate::engine::job::Job;
use crate::engine::sources::Source;
use crate::engine::units::tape::{InchStep, LengthStyle};
use crate::engine::units::{Length, Typed};
use litemap::LiteMap;
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

    /// Boards are boards, whichever way somebody said that they run.
    const fn as_one(self) -> Self {
        match self {
            Self::DiagonalBoards => Self::Boards,
            other => other,
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
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BuildUp {
    /// How many were logged.
    pub layers: usize,
    /// The least that may be there: no blade goes deeper.
    pub least: Length,
    /// All that was logged together: the most that is carried away.
    pub most: Length,
    /// What has to be said for the two to be one.
    pub asks: Vec<String>,
    /// How far the top of the new sheets lies above that of the old subfloor.
    pub step: Step,
}

/// How far the top of the new sheets lies above that of the old subfloor.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Step {
    /// The sheets or the old subfloor were not measured.
    NotMeasured,
    /// The old subfloor's layers were logged so that nobody can tell.
    NotKnown,
    /// So far; less than nothing where it lies below.
    Is(Length),
}

/// The old floor's thickness, and the step at the seam to the new one. A layer that was logged
/// twice may be one: the least is what each phone logged of each kind once, and of two phones
/// what that of the less is.
///
/// Source: [`Source::BlindCuts`], [`Source::PanelThickness`].
pub fn build_up(job: &Job) -> Figure<BuildUp> {
    let layers: Vec<_> = job.now.layers().iter().map(|(id, it)| (id.device, it.value)).collect();
    if layers.is_empty() {
        return Figure::Missing(vec![Need::Layers]);
    }
    let all = |_: LayerKind| true;
    let sheet = job.sheet_thickness();
    let step = match (sheet, least(&layers, LayerKind::is_subfloor), most(&layers, LayerKind::is_subfloor)) {
        (None, ..) | (_, None, _) | (_, _, None) => Step::NotMeasured,
        (Some(sheet), Some(least), Some(most)) if least == most => Step::Is(sheet.value - most),
        _ => Step::NotKnown,
    };
    let rule = "Layers add up, each kind once; the step is the new sheet less the old boards and panels";
    let mut why = Why::rule(rule, &[Source::BlindCuts, Source::PanelThickness]).using(job.now.layers().keys().copied());
    for (_, layer) in &layers {
        why = why.with(layer.what.label(), layer.thickness.typed.clone());
    }
    if let Some(sheet) = sheet {
        why = why.with("new sheet", sheet.typed.clone());
    }
    let [least, most] = [least(&layers, all), most(&layers, all)].map(|it| it.unwrap_or(Length::ZERO));
    let value = BuildUp { layers: layers.len(), least, most, asks: asks(&layers), step };
    let doubts = vec![
        "Measured where it was open: elsewhere there may be one layer less, and what runs below lies nearer."
            .to_owned(),
    ];
    Figure::Known(Known { value, assumed: Vec::new(), doubts, why })
}

type Logged<'a> = (DeviceId, &'a Layer);

/// Everything of some kinds that was logged, together.
fn most(layers: &[Logged<'_>], of: fn(LayerKind) -> bool) -> Option<Length> {
    let thick = layers.iter().filter(|(_, layer)| of(layer.what)).map(|(_, layer)| layer.thickness.value);
    thick.reduce(|sum, next| sum + next)
}

/// The least of them that may be there: what each phone logged is the whole floor, and a kind that
/// it logged twice is one layer, as thin as the thinner.
fn least(layers: &[Logged<'_>], of: fn(LayerKind) -> bool) -> Option<Length> {
    let of_phone = |phone: DeviceId| {
        let mut thinnest: LiteMap<LayerKind, Length> = LiteMap::new();
        for (_, layer) in layers.iter().filter(|(by, layer)| *by == phone && of(layer.what)) {
            let thick = layer.thickness.value;
            let of_kind = thinnest.entry(layer.what.as_one()).or_insert(thick);
            *of_kind = thick.min(*of_kind);
        }
        thinnest.values().copied().reduce(|sum, next| sum + next)
    };
    phones(layers).into_iter().filter_map(of_phone).min()
}

fn phones(layers: &[Logged<'_>]) -> Vec<DeviceId> {
    let mut phones = Vec::new();
    for (phone, _) in layers {
        if !phones.contains(phone) {
            phones.push(*phone);
        }
    }
    phones
}

/// What was logged so that it may be there once or twice.
fn asks(layers: &[Logged<'_>]) -> Vec<String> {
    let phones = phones(layers);
    let mut asks = Vec::new();
    if phones.len() > 1 {
        asks.push(
            "Two phones logged layers, of one spot or of two: take back what is the same, and log the whole floor on one."
                .to_owned(),
        );
    }
    for kind in LayerKind::ALL.into_iter().filter(|kind| kind.as_one() == *kind) {
        let is_twice = phones
            .iter()
            .any(|phone| layers.iter().filter(|(by, layer)| by == phone && layer.what.as_one() == kind).count() > 1);
        if is_twice {
            asks.push(format!(
                "Logged more than once: {}. Take back what is the same layer; where two lie on each other, cut the one first, \
                 and look.",
                kind.label()
            ));
        }
    }
    asks
}
