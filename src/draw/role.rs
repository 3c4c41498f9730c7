//! What the things on a drawing are.

/// Defines the roles with the class that the style sheet knows each by.
macro_rules! roles {
    ($($(#[$docs:meta])* $role:ident = $class:literal,)*) => {
        /// What a thing on a drawing is. The style sheet decides how it looks.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Role {
            $($(#[$docs])* $role,)*
        }

        impl Role {
            /// All of them.
            pub const ALL: &[Self] = &[$(Self::$role,)*];

            /// Its class in the style sheet.
            pub const fn class(self) -> &'static str {
                match self {
                    $(Self::$role => $class,)*
                }
            }
        }
    };
}

roles! {
    /// The inside of a closed outline.
    Floor = "floor",
    /// The walls of a closed outline.
    Wall = "wall",
    /// Walls that have not come round yet.
    WallOpen = "wall-open",
    /// Where a walk that has not come round began.
    WallStart = "wall-start",
    /// Where it has got to.
    WallEnd = "wall-end",
    /// A joist's centre line.
    Joist = "joist",
    /// A joist's number.
    JoistNumber = "joist-number",
    /// A dimension string.
    Dimension = "dimension",
    /// The slash at an end of a dimension string.
    Tick = "tick",
    /// A thin line from a wall's corner to the end of a string that lies far off.
    Witness = "witness",
    /// A thin line from a text to what it names.
    Leader = "leader",
    /// A length.
    DimensionText = "dimension-text",
    /// What comes out.
    Opening = "opening",
    /// An opening's name.
    OpeningLabel = "opening-label",
    /// What stands in the floor.
    Standing = "standing",
    /// Its name.
    StandingLabel = "standing-label",
    /// Where the old floor is cut.
    CutBack = "cut-back",
    /// Where the finished floor is cut.
    FinishLine = "finish-line",
    /// A moisture reading.
    Reading = "reading",
    /// A reading's number on a light fill.
    OnLight = "on-light",
    /// A reading's number on a dark fill.
    OnDark = "on-dark",
    /// The ring of a reading that somebody should look at.
    ReadingFlag = "reading-flag",
    /// The ring of a reading beyond the meter's range.
    ReadingOver = "reading-over",
    /// What lies between readings.
    MapCell = "map-cell",
    /// Where wood passes a limit.
    Contour = "contour",
    /// A place without a reading.
    Unread = "unread",
    /// Where the next entry goes.
    Cursor = "cursor",
    /// A mark that the room and the crawl space have in common.
    CommonMark = "common-mark",
    /// Its name.
    CommonMarkLabel = "common-mark-label",
    /// What a walk misses its start by.
    Gap = "gap",
    /// How much that is.
    GapText = "gap-text",
    /// The arrow that points north.
    North = "north",
    /// Its letter.
    NorthText = "north-text",
    /// A sheet that is cut.
    Sheet = "sheet",
    /// A piece of a sheet.
    Piece = "piece",
    /// What a piece covers, its edges apart.
    PieceFill = "piece-fill",
    /// A sheet that is laid uncut.
    WholeSheet = "whole-sheet",
    /// A piece's number.
    PieceNumber = "piece-number",
    /// What is left of a sheet.
    Offcut = "offcut",
    /// Where the saw goes.
    Cut = "cut",
    /// Where a piece is trimmed after it is cut out.
    Trim = "trim",
    /// The mark of a cut.
    CutMark = "cut-mark",
    /// Its number.
    CutNumber = "cut-number",
    /// A joist below the pieces.
    JoistBelow = "joist-below",
    /// An opening as it was placed, under the pieces that close it.
    CutLine = "cut-line",
    /// A word where there is nothing to draw yet.
    Note = "note",
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn every_role_has_a_class_of_its_own_and_the_style_sheet_knows_it() {
        let sheet = include_str!("../../public/drawing.css");
        let classes: BTreeSet<_> = Role::ALL.iter().map(|role| role.class()).collect();
        assert_eq!(classes.len(), Role::ALL.len());
        for class in classes {
            let selector = format!(".{class}");
            let mut after = sheet.split(selector.as_str()).skip(1).map(|rest| rest.chars().next());
            let rule = after.any(|next| next.is_none_or(|next| !next.is_alphanumeric() && next != '-'));
            assert!(rule, "public/drawing.css has no rule for .{class}");
        }
    }
}
