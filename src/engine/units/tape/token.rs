//! From characters to tokens.

use super::field::Unit;
use super::problem::{Fix, Refusal, Trouble};
use super::size;
use super::span::Span;
use crate::engine::units::decimal::{Fault, Numeral, is_minus};

/// A token, where it stands, and whether space stands before it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Token {
    pub(super) kind: Kind,
    pub(super) span: Span,
    pub(super) after_space: bool,
}

#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Kind {
    Numeral(Numeral),
    /// A fraction in one character: over, under.
    Glyph(i128, i128),
    Slash,
    Dash,
    Plus,
    Mark(Unit),
}

/// The tokens of `text`, spaces dropped.
pub(super) fn tokens(text: &str) -> Result<Vec<Token>, Refusal> {
    let characters: Vec<char> = text.trim_end().chars().collect();
    let mut scanner = Scanner { characters: &characters, at: 0 };
    let mut tokens = Vec::new();
    loop {
        let spaces = scanner.take_while(is_space);
        let start = scanner.at;
        let Some(first) = scanner.next() else { return Ok(tokens) };
        let kind = scanner.kind(first, start)?;
        tokens.push(Token { kind, span: scanner.span_from(start), after_space: !spaces.is_empty() });
    }
}

struct Scanner<'a> {
    characters: &'a [char],
    at: usize,
}

impl Scanner<'_> {
    fn peek(&self) -> Option<char> {
        self.characters.get(self.at).copied()
    }

    fn next(&mut self) -> Option<char> {
        let found = self.peek()?;
        self.at += 1;
        Some(found)
    }

    fn take_while(&mut self, fits: impl Fn(char) -> bool) -> String {
        let mut run = String::new();
        while let Some(found) = self.peek().filter(|&c| fits(c)) {
            run.push(found);
            self.at += 1;
        }
        run
    }

    const fn span_from(&self, start: usize) -> Span {
        Span { start, end: self.at }
    }

    /// The rest of the token that begins with `first`.
    fn kind(&mut self, first: char, start: usize) -> Result<Kind, Refusal> {
        if Numeral::holds(first) {
            return self.numeral(first, start);
        }
        if first.is_alphabetic() {
            return self.word(first, start);
        }
        let kind = match first {
            c if is_foot_mark(c) => Kind::Mark(self.foot_or_inch()),
            c if is_minus(c) => Kind::Dash,
            '"' | '″' | '”' | '“' => Kind::Mark(Unit::Inch),
            '/' | '\u{2044}' | '\u{2215}' => Kind::Slash,
            '+' => Kind::Plus,
            '×' => return Err(Refusal::at(self.span_from(start), Trouble::TwoLengths)),
            c => {
                let (over, under) = glyph(c).ok_or_else(|| Refusal::at(self.span_from(start), Trouble::NotALength))?;
                Kind::Glyph(over, under)
            }
        };
        Ok(kind)
    }

    fn numeral(&mut self, first: char, start: usize) -> Result<Kind, Refusal> {
        let run = format!("{first}{}", self.take_while(Numeral::holds));
        Numeral::read(&run).map(Kind::Numeral).map_err(|fault| {
            let span = self.span_from(start);
            match fault {
                Fault::NoDigit => Refusal::at(span, Trouble::NotALength),
                Fault::NothingAfterPoint(before) => {
                    Refusal::at(span, Trouble::NothingAfterPoint).fixes(Some(Fix::Piece(before)))
                }
                Fault::SeveralPoints(meant) => Refusal::at(span, Trouble::SeveralPoints).fixes(meant.map(Fix::Piece)),
            }
        })
    }

    fn word(&mut self, first: char, start: usize) -> Result<Kind, Refusal> {
        let word = format!("{first}{}", self.take_while(char::is_alphabetic)).to_ascii_lowercase();
        let Some(unit) = Unit::of_word(&word) else {
            let trouble = if size::is_between(&word) { Trouble::TwoLengths } else { Trouble::NotALength };
            return Err(Refusal::at(self.span_from(start), trouble));
        };
        if matches!(word.as_str(), "ft" | "in") {
            self.skip_full_stop()?;
        }
        Ok(Kind::Mark(unit))
    }

    /// The point of `ft.` and `in.`. In `12ft.3in` it might as well belong to the digits.
    fn skip_full_stop(&mut self) -> Result<(), Refusal> {
        let start = self.at;
        if self.peek() != Some('.') {
            return Ok(());
        }
        self.at += 1;
        if self.peek().is_some_and(|after| after.is_ascii_digit()) {
            let fixes = [" ", " 0."].map(|piece| Fix::Piece(piece.to_owned()));
            return Err(Refusal::at(self.span_from(start), Trouble::PointUnclear).fixes(fixes));
        }
        Ok(())
    }

    /// Two foot marks side by side are how some people type an inch mark.
    fn foot_or_inch(&mut self) -> Unit {
        if self.peek().is_some_and(is_foot_mark) {
            self.at += 1;
            return Unit::Inch;
        }
        Unit::Foot
    }
}

/// A space that can stand inside a line, no-break ones too.
fn is_space(c: char) -> bool {
    c.is_whitespace() && !c.is_control()
}

const fn is_foot_mark(c: char) -> bool {
    matches!(c, '\'' | '′' | '’' | '‘' | '´')
}

const fn glyph(c: char) -> Option<(i128, i128)> {
    match c {
        '½' => Some((1, 2)),
        '⅓' => Some((1, 3)),
        '⅔' => Some((2, 3)),
        '¼' => Some((1, 4)),
        '¾' => Some((3, 4)),
        '⅛' => Some((1, 8)),
        '⅜' => Some((3, 8)),
        '⅝' => Some((5, 8)),
        '⅞' => Some((7, 8)),
        _ => None,
    }
}
