//! What a joist is made as, and what was said of how it rests: the words of particulars
//! as choices.

/// What a joist is made as.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MemberType {
    /// Sawn lumber: the code's spans, notches and holes are for it alone.
    Sawn,
    /// Two flanges and a web.
    IJoist,
    /// Laminated veneer and other structural composite lumber.
    Composite,
    /// Glued laminated timber.
    Glulam,
    /// A floor truss.
    Truss,
}

/// What the ends of a joist rest on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BearsOn {
    /// Wood or metal.
    WoodOrMetal,
    /// Masonry or concrete.
    Masonry,
    /// A hanger, whose seat its maker gives.
    Hanger,
    /// A 1 × 4 ribbon let into the studs, the joist nailed to them.
    Ribbon,
}

/// What keeps the ends of a joist from turning over.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum EndsHeld {
    /// Rim joist, blocking or hanger.
    Held,
    /// Nothing.
    Loose,
}

/// How a joist goes on over the girder.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OverGirder {
    /// In one piece, over another span.
    Through,
    /// It ends before one.
    Before,
    /// Beside the next one.
    Laps,
    /// Against the next one and tied to it.
    Tied,
    /// Against the next one, with nothing across.
    Loose,
}

/// Who allows the span of what is not sawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SpanAllowed {
    /// Its maker's table, or a designer.
    Yes,
    /// Nobody.
    NotYet,
}

/// What was said of a joist's notches and holes as a whole.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CutsSaid {
    /// There is none.
    None,
    /// Each of them is logged.
    AllLogged,
    /// They can't be seen.
    Hidden,
}

/// What an awl did at both ends of a joist and in its middle.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Awl {
    /// It stopped everywhere.
    Stops,
    /// It went in somewhere.
    GoesIn,
    /// Nobody can get there.
    CannotReach,
}

/// What was done about a member.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Done {
    /// Hanger, ledger, blocking or lap.
    EndsMended,
    /// A sister beside it.
    Sistered,
    /// One along its span past the girder, of a joist that goes through: said by the check
    /// [`SISTERS_BEYOND`](super::joist::SISTERS_BEYOND) after it was sistered.
    SisteredBeyond,
    /// A new one in its place.
    Replaced,
    /// What an engineer wrote.
    AsTheEngineerSays,
}

impl MemberType {
    /// All, with the words that particulars go by.
    const ALL: [(Self, &'static str); 5] = [
        (Self::Sawn, "sawn lumber"),
        (Self::IJoist, "I-joist"),
        (Self::Composite, "LVL or other engineered"),
        (Self::Glulam, "glulam"),
        (Self::Truss, "truss"),
    ];
    /// Those words, in the order that a choice shows them.
    pub const WORDS: [&'static str; 5] =
        [Self::ALL[0].1, Self::ALL[1].1, Self::ALL[2].1, Self::ALL[3].1, Self::ALL[4].1];

    /// By its words.
    pub fn said(words: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|(_, label)| *label == words).map(|(member, _)| member)
    }

    /// Its words.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Sawn => Self::WORDS[0],
            Self::IJoist => Self::WORDS[1],
            Self::Composite => Self::WORDS[2],
            Self::Glulam => Self::WORDS[3],
            Self::Truss => Self::WORDS[4],
        }
    }
}

impl BearsOn {
    /// By its words.
    pub fn said(words: &str) -> Option<Self> {
        match words {
            "wood or metal" => Some(Self::WoodOrMetal),
            "masonry" => Some(Self::Masonry),
            "hanger" => Some(Self::Hanger),
            "1x4 ribbon, nailed to studs" => Some(Self::Ribbon),
            _ => None,
        }
    }
}

impl EndsHeld {
    /// By its words.
    pub fn said(words: &str) -> Option<Self> {
        match words {
            "rim joist" | "blocking" | "hanger" => Some(Self::Held),
            "nothing" => Some(Self::Loose),
            _ => None,
        }
    }
}

impl OverGirder {
    /// By its words.
    pub fn said(words: &str) -> Option<Self> {
        match words {
            "goes through" => Some(Self::Through),
            "does not reach one" => Some(Self::Before),
            "laps the next" => Some(Self::Laps),
            "butts, tied" => Some(Self::Tied),
            "butts, not tied" => Some(Self::Loose),
            _ => None,
        }
    }
}

impl SpanAllowed {
    /// By its words.
    pub fn said(words: &str) -> Option<Self> {
        match words {
            "its maker's table" | "a designer" => Some(Self::Yes),
            "nobody yet" => Some(Self::NotYet),
            _ => None,
        }
    }
}

impl CutsSaid {
    /// By its words.
    pub fn said(words: &str) -> Option<Self> {
        match words {
            "none" => Some(Self::None),
            "all logged" => Some(Self::AllLogged),
            "cannot see" => Some(Self::Hidden),
            _ => None,
        }
    }
}

impl Awl {
    /// By its words.
    pub fn said(words: &str) -> Option<Self> {
        match words {
            "stops everywhere" => Some(Self::Stops),
            "goes in" => Some(Self::GoesIn),
            "cannot reach" => Some(Self::CannotReach),
            _ => None,
        }
    }
}

impl Done {
    /// By its words; "not yet" is nothing done.
    pub fn said(words: &str) -> Option<Self> {
        match words {
            "ends mended" => Some(Self::EndsMended),
            "sistered" => Some(Self::Sistered),
            "replaced" => Some(Self::Replaced),
            "as the engineer says" => Some(Self::AsTheEngineerSays),
            _ => None,
        }
    }

    /// The words.
    pub const fn label(self) -> &'static str {
        match self {
            Self::EndsMended => "ends mended",
            Self::Sistered => "sistered",
            Self::SisteredBeyond => "sistered past the girder",
            Self::Replaced => "replaced",
            Self::AsTheEngineerSays => "as the engineer says",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::particular::{Takes, list};

    /// Every word that a form offers means something here, but for those that say no.
    #[test]
    fn every_word_of_a_choice_is_understood() {
        let words = |item: &crate::engine::particular::Item| match item.takes {
            Takes::OneOf(words) => words.to_vec(),
            _ => Vec::new(),
        };
        assert!(words(&list::MEMBER).iter().all(|it| MemberType::said(it).is_some_and(|member| member.label() == *it)));
        assert!(words(&list::BEARS_ON).iter().all(|it| BearsOn::said(it).is_some()));
        assert!(words(&list::ENDS_HELD).iter().all(|it| EndsHeld::said(it).is_some()));
        assert!(words(&list::OVER_GIRDER).iter().all(|it| OverGirder::said(it).is_some()));
        assert!(words(&list::SPAN_ALLOWED).iter().all(|it| SpanAllowed::said(it).is_some()));
        assert!(words(&list::CUTS).iter().all(|it| CutsSaid::said(it).is_some()));
        assert!(words(&list::AWL).iter().all(|it| Awl::said(it).is_some()));
        let not_done: Vec<_> = words(&list::DONE).into_iter().filter(|it| Done::said(it).is_none()).collect();
        assert_eq!(not_done, ["not yet"]);
        assert!(
            words(&list::DONE)
                .iter()
                .filter_map(|it| Done::said(it).map(|done| (done, it)))
                .all(|(done, it)| done.label() == *it)
        );
    }
}
