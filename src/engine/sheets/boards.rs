//! Old subfloors of boards: how far apart joists may be under them.

#[cfg(doc)]
use crate::engine::sources::Source;
use crate::engine::survey::LayerKind;
use crate::engine::units::Length;

/// Joists so far apart, and the least that boards measure square to them and at a slant, in
/// sixty-fourths of an inch ([`Source::BoardSubfloor`]). Its further rows are of planks with
/// tongues, which are no subfloor of boards.
const ROWS: [(i32, i32, i32); 2] = [(24, 44, 48), (16, 40, 40)];

/// How far apart joists may be under boards so thick, by caliper; nothing for boards that
/// are thinner than any listed, and for what is no board. Source: [`Source::BoardSubfloor`].
pub fn spacing_under_boards(what: LayerKind, thickness: Length) -> Option<Length> {
    let least = |(_, square, slant): &(i32, i32, i32)| match what {
        LayerKind::Boards => Some(*square),
        LayerKind::DiagonalBoards => Some(*slant),
        LayerKind::Finish | LayerKind::Underlayment | LayerKind::Panel => None,
    };
    let row = ROWS.iter().find(|row| least(row).is_some_and(|least| thickness >= Length::sixty_fourths(least)))?;
    Some(Length::inches(row.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// R503.1 \[P\]: 5/8 in at 16 in either way; at 24 in 11/16 square to joists, 3/4 at a slant.
    #[test]
    fn boards_go_as_far_as_they_are_thick() {
        let of = |what, sixty_fourths| spacing_under_boards(what, Length::sixty_fourths(sixty_fourths));
        let inches = |inches| Some(Length::inches(inches));
        for (what, at_24) in [(LayerKind::Boards, 44), (LayerKind::DiagonalBoards, 48)] {
            assert_eq!(of(what, 39), None, "{what:?}");
            assert_eq!(of(what, 40), inches(16), "{what:?}");
            assert_eq!(of(what, at_24 - 1), inches(16), "{what:?}");
            assert_eq!(of(what, at_24), inches(24), "{what:?}");
            assert_eq!(of(what, 96), inches(24), "{what:?}");
        }
        assert_eq!(of(LayerKind::Panel, 48), None);
    }
}
