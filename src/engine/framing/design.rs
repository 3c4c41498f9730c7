//! Design values of lumber of 2 in by name, in pounds per square inch.
//!
//! They are those of today's rules. An old joist was graded by others, or by none: a
//! species or grade that nobody knows gives a range, and keeps nothing by itself.

use crate::engine::sources::Source;
use crate::engine::units::Length;

/// A group of species as stamps name it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LumberGroup {
    /// Douglas fir-larch.
    DouglasFirLarch,
    /// Hem-fir.
    HemFir,
    /// Spruce-pine-fir.
    SprucePineFir,
    /// Southern pine, by the rules of 2013 and later.
    SouthernPine,
}

/// A visual grade.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Grade {
    /// Select structural.
    SelectStructural,
    /// Number 1.
    One,
    /// Number 2.
    Two,
    /// Number 3.
    Three,
}

/// What a stamp says, as far as anybody read it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Stamp {
    /// The group of species.
    pub group: Option<LumberGroup>,
    /// The grade.
    pub grade: Option<Grade>,
}

impl Stamp {
    /// By the words for both.
    pub fn said(group: Option<&str>, grade: Option<&str>) -> Self {
        Self {
            group: LumberGroup::ALL.into_iter().find(|one| group == Some(one.label())),
            grade: Grade::ALL.into_iter().find(|one| grade == Some(one.label())),
        }
    }

    /// Is neither group nor grade left open?
    pub const fn is_whole(self) -> bool {
        self.group.is_some() && self.grade.is_some()
    }

    /// The design values of every group and grade that it can be, in such a depth.
    pub fn plausible(self, depth: Length, edition: Edition) -> Vec<DesignValues> {
        let groups = LumberGroup::ALL.into_iter().filter(|group| self.group.is_none_or(|known| known == *group));
        let grades = || Grade::ALL.into_iter().filter(|grade| self.grade.is_none_or(|known| known == *grade));
        let of = |group| grades().filter_map(move |grade| DesignValues::of(group, grade, depth, edition));
        groups.flat_map(of).collect()
    }
}

/// By whose design values: those of southern pine fell in 2013, and houses of before were
/// built by the others.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Edition {
    /// Of 2013 and later.
    #[default]
    Since2013,
    /// Of before. Few of them are known here, all recalled.
    Before2013,
}

/// What lumber is designed with, pounds per square inch. Source: [`Source::DesignValues`],
/// [`Source::DesignValuesRecalled`].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DesignValues {
    /// In bending, for its depth.
    pub bending: f64,
    /// In shear.
    pub shear: f64,
    /// How stiff it is.
    pub stiffness: f64,
    /// Where they are from: one value is recalled and not read.
    pub source: Source,
}

impl LumberGroup {
    /// All.
    pub const ALL: [Self; 4] = [Self::DouglasFirLarch, Self::HemFir, Self::SprucePineFir, Self::SouthernPine];
    /// The words for each, and for a stamp that nobody can read.
    pub const WORDS: &[&str] = &[
        Self::DouglasFirLarch.label(),
        Self::HemFir.label(),
        Self::SprucePineFir.label(),
        Self::SouthernPine.label(),
        "unknown",
    ];

    /// The words.
    pub const fn label(self) -> &'static str {
        match self {
            Self::DouglasFirLarch => "Douglas fir-larch",
            Self::HemFir => "Hem-fir",
            Self::SprucePineFir => "Spruce-pine-fir",
            Self::SouthernPine => "Southern pine",
        }
    }
}

impl Grade {
    /// All.
    pub const ALL: [Self; 4] = [Self::SelectStructural, Self::One, Self::Two, Self::Three];
    /// The words for each, and for a stamp that nobody can read.
    pub const WORDS: &[&str] =
        &[Self::SelectStructural.label(), Self::One.label(), Self::Two.label(), Self::Three.label(), "unknown"];

    /// The words.
    pub const fn label(self) -> &'static str {
        match self {
            Self::SelectStructural => "SS",
            Self::One => "#1",
            Self::Two => "#2",
            Self::Three => "#3",
        }
    }
}

impl DesignValues {
    /// Of a group, a grade and a depth; none where no value was seen, or for lumber
    /// deeper than the rules go.
    pub fn of(group: LumberGroup, grade: Grade, depth: Length, edition: Edition) -> Option<Self> {
        let size = Size::of(depth)?;
        let before = if edition == Edition::Before2013 { before_2013(group, grade, size) } else { Other::AsToday };
        let (bending, stiffness) = match (before, group) {
            (Other::Unknown, _) => return None,
            (Other::Was(bending, stiffness), _) => (bending, stiffness),
            (Other::AsToday, LumberGroup::SouthernPine) => {
                let (by_size, stiffness) = southern_pine(grade)?;
                (*by_size.get(size.southern_pine_column()?)?, stiffness)
            }
            (Other::AsToday, _) => {
                let (bending, stiffness) = others(group, grade);
                (bending * size.factor(), stiffness)
            }
        };
        let source = match (group, grade) {
            _ if edition == Edition::Before2013 => Source::DesignValuesBefore2013,
            (LumberGroup::SprucePineFir, Grade::SelectStructural) => Source::DesignValuesRecalled,
            _ => Source::DesignValues,
        };
        Some(Self { bending, shear: shear(group), stiffness: stiffness * 1e6, source })
    }
}

/// What values of before 2013 were where they were not today's.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Other {
    AsToday,
    Was(f64, f64),
    Unknown,
}

/// Source: [`Source::DesignValuesBefore2013`].
fn before_2013(group: LumberGroup, grade: Grade, size: Size) -> Other {
    match (group, grade, size) {
        (LumberGroup::DouglasFirLarch, Grade::Two, _) => Other::Was(875.0 * size.factor(), 1.6),
        (LumberGroup::SouthernPine, Grade::Two, Size::Eight) => Other::Was(1200.0, 1.6),
        (LumberGroup::SouthernPine, Grade::Two, Size::Ten) => Other::Was(1050.0, 1.6),
        (LumberGroup::SouthernPine, Grade::Two, Size::Twelve) => Other::Was(975.0, 1.6),
        (LumberGroup::SouthernPine, ..) => Other::Unknown,
        _ => Other::AsToday,
    }
}

const fn shear(group: LumberGroup) -> f64 {
    match group {
        LumberGroup::DouglasFirLarch => 180.0,
        LumberGroup::HemFir => 150.0,
        LumberGroup::SprucePineFir => 135.0,
        LumberGroup::SouthernPine => 175.0,
    }
}

/// Bending before the size factor, and stiffness in millions.
const fn others(group: LumberGroup, grade: Grade) -> (f64, f64) {
    match (group, grade) {
        (LumberGroup::HemFir, Grade::SelectStructural) => (1400.0, 1.6),
        (LumberGroup::HemFir, Grade::One) => (975.0, 1.5),
        (LumberGroup::HemFir, Grade::Two) => (850.0, 1.3),
        (LumberGroup::HemFir, Grade::Three) => (500.0, 1.2),
        // From memory \[M\]; printed cells of the code's tables agree with it.
        (LumberGroup::SprucePineFir, Grade::SelectStructural) => (1250.0, 1.5),
        (LumberGroup::SprucePineFir, Grade::One | Grade::Two) => (875.0, 1.4),
        (LumberGroup::SprucePineFir, Grade::Three) => (500.0, 1.2),
        (_, Grade::SelectStructural) => (1500.0, 1.9),
        (_, Grade::One) => (1000.0, 1.7),
        (_, Grade::Two) => (900.0, 1.6),
        (_, Grade::Three) => (525.0, 1.4),
    }
}

/// Bending of lumber 6, 8, 10 and 12 in deep by name, its size counted in already.
const fn southern_pine(grade: Grade) -> Option<([f64; 4], f64)> {
    match grade {
        Grade::SelectStructural => None,
        Grade::One => Some(([1350.0, 1250.0, 1050.0, 1000.0], 1.6)),
        Grade::Two => Some(([1000.0, 925.0, 800.0, 750.0], 1.4)),
        Grade::Three => Some(([575.0, 525.0, 475.0, 450.0], 1.3)),
    }
}

/// A depth by name. Lumber of another depth goes by the next deeper one, whose factor is
/// smaller.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Size {
    Four,
    Six,
    Eight,
    Ten,
    Twelve,
}

impl Size {
    fn of(depth: Length) -> Option<Self> {
        /// A caliper is not held to the last sixty-fourth.
        const SLACK: Length = Length::sixty_fourths(4);
        let sizes = [(224, Self::Four), (352, Self::Six), (464, Self::Eight), (592, Self::Ten), (720, Self::Twelve)];
        sizes.into_iter().find(|(most, _)| depth <= Length::sixty_fourths(*most) + SLACK).map(|(_, size)| size)
    }

    const fn factor(self) -> f64 {
        match self {
            Self::Four => 1.5,
            Self::Six => 1.3,
            Self::Eight => 1.2,
            Self::Ten => 1.1,
            Self::Twelve => 1.0,
        }
    }

    const fn southern_pine_column(self) -> Option<usize> {
        match self {
            Self::Four => None,
            Self::Six => Some(0),
            Self::Eight => Some(1),
            Self::Ten => Some(2),
            Self::Twelve => Some(3),
        }
    }
}
