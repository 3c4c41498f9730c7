//! Every citation, once. Rules refer to a source by its name here; its mark says how
//! much of it was really seen, and no rule may show a better one.

/// How far a value can be traced, from best to weakest.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Mark {
    /// A published source whose text was read.
    Published,
    /// Quoted or reproduced by a secondary page that was read.
    Secondary,
    /// Derived here from the stated rule.
    Computed,
    /// From memory: not seen in print.
    Memory,
    /// Common practice, no source.
    Practice,
}

impl Mark {
    /// The mark in words, as a figure shows it.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Published => "published",
            Self::Secondary => "published, seen as quoted",
            Self::Computed => "computed here",
            Self::Memory => "from memory",
            Self::Practice => "common practice, no source",
        }
    }
}

/// A citation with its mark.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Citation {
    /// Title, part and year.
    pub title: &'static str,
    /// How far it was seen.
    pub mark: Mark,
}

/// A source that a rule may name.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Source {
    /// Plain geometry.
    Geometry,
    /// Sheets by area.
    SheetsByArea,
}

impl Source {
    /// Every source.
    pub const ALL: &'static [Self] = &[Self::Geometry, Self::SheetsByArea];

    /// The citation.
    pub const fn citation(self) -> Citation {
        match self {
            Self::Geometry => Citation { title: "Plane geometry", mark: Mark::Computed },
            Self::SheetsByArea => Citation {
                title: "Sheets by area: opening over sheet, rounded up, as carpenters estimate",
                mark: Mark::Practice,
            },
        }
    }
}
