//! Lengths as they are typed, shown and spoken. Every length field reads what was
//! typed with [`parse`], and nothing else does.
//!
//! # Grammar
//!
//! ```ebnf
//! length     = [ sign ] , ( imperial | metric ) ;
//! imperial   = number , foot                                        (* 5'  5.5 ft *)
//!            | whole , foot , [ dash ] , inches , [ inch ]          (* 12' 3 1/2"  12'-3  5' 1/2 *)
//!            | whole , joint , over-feet , [ inch ]                 (* 12 3  12-3-1/2  12 3.5" *)
//!            | inches , [ inch ] ;                                  (* 147 1/2"  7/8  147.5in *)
//! inches     = number | [ whole , joint ] , fraction ;
//! over-feet  = number | whole , joint , fraction ;
//! metric     = number , [ "mm" | "cm" | "m" ] ;                     (* 3745mm  374,5 cm *)
//! fraction   = whole , slash , whole | "½" | "⅓" | "⅔" | "¼" | "¾" | "⅛" | "⅜" | "⅝" | "⅞" ;
//! number     = whole | [ whole ] , point , whole ;
//! whole      = digit , { digit } ;
//! joint      = space | dash | (* nothing, before a one-character fraction *) ;
//! foot       = "'" | "′" | "’" | "‘" | "´" | "ft" | "ft." | "foot" | "feet" ;
//! inch       = '"' | "″" | "”" | "“" | foot-sign , foot-sign | "in" | "in." | "inch" | "inches" ;
//! sign       = dash | "+" ;
//! dash       = "-" | "‐" (breaking or not) | "–" | "−" ;
//! slash      = "/" | "⁄" | "∕" ;
//! point      = "." | "," ;
//! ```
//!
//! Spaces, no-break ones too, may stand around every mark, slash, sign and unit, but not
//! inside a number. Words are small or capital; the metric units have their long names too,
//! in both spellings. An `imperial` without any mark is for inch fields, a `metric`
//! without a unit for metric ones.
//!
//! # What was decided
//!
//! - **One number without a unit** takes the field's, and the text kept says so: `147 1/2`
//!   is kept as `147 1/2 in`. The text kept means the same in every field.
//! - **Two whole numbers** are feet and inches: `12 3`, `12-3`, `12 3.5`. A whole number and
//!   a fraction are inches: `12 1/2`, `12-1/2`.
//! - **Two lengths** (`4 x 8`) are refused where one is asked for; a field for a size reads
//!   them with [`parse_size`].
//! - **After feet, inches stay below 12**: `12' 13"` is refused with `13' 1"`.
//! - **Fractions** are less than one inch and of a tape: halves to sixty-fourths, and
//!   thirds. `5/4` is refused with `1 1/4`, `7/15` with `7/16`. They need not be reduced.
//! - **Decimals** end a length: `12.5' 3"` and `3.5 1/2` are refused; `5.5'` is 5' 6".
//! - **A fraction of a foot** is refused, since the wrong mark is the likelier slip.
//! - **A comma** is a decimal comma and needs metric: `374,5 cm`. Three digits after it
//!   might as well be thousands, so that is refused with both readings.
//! - **A dash with spaces** is refused but after a foot mark (`12' - 3"`): between bare
//!   numbers it may be meant as a minus, and a length field is no calculator.
//! - **A point between `ft` and a digit** is refused: `12ft.3in` reads two ways.
//! - **A trailing point** is refused: a digit may have been missed.
//! - **Finer than a nanometre** is rounded to the nearest, half away from zero; a thirteenth
//!   decimal is refused. All sums are whole numbers and fractions of them.
//!
//! It never knows a screen, nor which field is being typed into: the caller puts the
//! field's name before a [`Problem`]. Start reading at [`parse`], then `token`, `parse`,
//! `meaning`; the other way starts at [`format`](format()).

mod field;
mod format;
mod imperial;
mod meaning;
mod metric;
mod parse;
mod problem;
mod size;
mod span;
mod style;
#[cfg(test)]
mod tests;
mod token;

pub use super::decimal::{MOST_CHARACTERS, Spot};
pub use field::{BareUnit, Sign};
pub use format::{ROUNDED_MARK, Shown, accepted, format, speak};
pub use problem::{Problem, Trouble};
pub use size::{SizeProblem, parse_size};
pub use style::{InchStep, LengthStyle, ShownUnit};

use super::decimal::{is_minus, shortened};
use super::{Length, Typed};
use problem::{Fix, Refusal};
use token::{Kind, Token};

/// The most decimals of a number: a picometre, in metres.
pub const MOST_DECIMALS: usize = 12;

/// The length that `text` says, and the text to keep beside it. A number without a unit
/// is in `bare`.
///
/// ```
/// use duckboard::engine::units::tape::{parse, BareUnit, Sign};
///
/// let read = parse("147 1/2", BareUnit::Inches, Sign::Refused)?;
/// assert_eq!((read.value.to_nm(), read.typed.as_str()), (3_746_500_000, "147 1/2 in"));
///
/// let problem = parse("3,745mm", BareUnit::Inches, Sign::Refused).unwrap_err();
/// assert_eq!(problem.try_instead, ["3745 mm", "3.745 mm"]);
/// # Ok::<(), duckboard::engine::units::tape::Problem>(())
/// ```
///
/// # Errors
/// [`Problem`]: what is wrong, where, and what the field would accept instead. An empty
/// text is a problem too.
pub fn parse(text: &str, bare: BareUnit, sign: Sign) -> Result<Typed<Length>, Problem> {
    read(text, bare, sign).map_err(|refusal| {
        let minus = if text.trim_start().starts_with(is_minus) { "-" } else { "" };
        let candidates = refusal.candidates(text, minus).into_iter();
        Problem {
            typed: shortened(text),
            bare,
            spot: refusal.span.map(|span| span.spot(text)),
            trouble: refusal.trouble,
            try_instead: candidates.filter(|candidate| read(candidate, bare, sign).is_ok()).collect(),
        }
    })
}

fn read(text: &str, bare: BareUnit, sign: Sign) -> Result<Typed<Length>, Refusal> {
    let typed = text.trim();
    if typed.is_empty() {
        return Err(Refusal::of_whole(Trouble::Empty));
    }
    check_size(typed)?;
    let tokens = token::tokens(text)?;
    let (negative, tokens) = signed(&tokens, sign)?;
    let groups = parse::groups(tokens)?;
    let size = meaning::nanometres(&groups, bare)?.nearest();
    let value = in_range(if negative { -size } else { size })?;
    if groups.iter().any(|group| group.unit.is_some()) {
        return Ok(Typed::new(typed, value));
    }
    let kept = format!("{typed} {}", bare.symbol());
    check_size(&kept)?;
    Ok(Typed::new(kept, value))
}

fn check_size(text: &str) -> Result<(), Refusal> {
    match text.chars().nth(MOST_CHARACTERS) {
        Some(_) => Err(Refusal::of_whole(Trouble::TooLong)),
        None => Ok(()),
    }
}

/// Is it negative, and the tokens after the sign.
fn signed(tokens: &[Token], sign: Sign) -> Result<(bool, &[Token]), Refusal> {
    match tokens {
        [first, rest @ ..] if matches!(first.kind, Kind::Dash | Kind::Plus) => {
            if sign == Sign::Refused {
                let unsigned = Fix::Piece(String::new());
                return Err(Refusal::at(first.span, Trouble::SignRefused).fixes([unsigned]));
            }
            Ok((first.kind == Kind::Dash, rest))
        }
        _ => Ok((false, tokens)),
    }
}

fn in_range(nm: i128) -> Result<Length, Refusal> {
    let length = i64::try_from(nm).ok().and_then(|nm| Length::try_nm(nm).ok());
    length.ok_or_else(Refusal::out_of_range)
}
