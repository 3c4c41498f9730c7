//! Do the old subfloor's boards bridge the joists?

use crate::draw::card::{Card, Line};
use crate::engine::figure::Need;
use crate::engine::job::Job;
use crate::engine::sheets::boards::spacing_under_boards;
use crate::engine::sources::Source;
use crate::engine::survey::{Floor, LayerKind};
use crate::engine::take::Units;

/// The card of old boards, where there are any: what stays of the old floor rests on them.
pub(super) fn card(job: &Job, units: Units) -> Option<Card> {
    let title = "Do the old boards bridge the joists?";
    let is_boards = |what| matches!(what, LayerKind::Boards | LayerKind::DiagonalBoards);
    let layers = job.now.layers().values().map(|layer| layer.value).filter(|layer| is_boards(layer.what));
    let boards: Vec<_> = layers.collect();
    if boards.is_empty() {
        return None;
    }
    let widest = Floor::of(job).and_then(|floor| floor.widest_bay());
    let Some(widest) = widest else { return Some(Card::missing(title, &[Need::Joists])) };
    let apart = units.length(widest);
    let most = boards.iter().map(|layer| spacing_under_boards(layer.what, layer.thickness.value));
    let all_do = most.clone().all(|most| most.is_some_and(|most| most >= widest));
    let lines = boards.iter().zip(most).map(|(layer, most)| {
        let (what, thick) = (layer.what.label(), &layer.thickness.typed);
        Line::plain(match most {
            Some(most) => format!("{what}, {thick}: to {} on center; joists are {apart} apart.", units.length(most)),
            None => format!("{what}, {thick}: thinner than any listed; joists are {apart} apart."),
        })
    });
    let small = Line::small(Source::BoardSubfloor.noted("Sound boards alone, their ends on joists"));
    Some(Card::new(title, if all_do { "Yes" } else { "No" }, lines.chain([small]).collect()))
}
