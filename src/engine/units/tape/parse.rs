//! From tokens to numbers with a unit: the shape of what was typed, before its meaning.

use super::field::Unit;
use super::problem::{Fix, Refusal, Trouble};
use super::span::Span;
use super::token::{Kind, Token};
use crate::engine::units::decimal::{Exact, Numeral};
use std::iter::Peekable;
use std::slice::Iter;

/// Numbers and the unit after them: `3 1/2"` is one group, `12' 3 1/2"` are two.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Group {
    /// At least one.
    pub(super) numbers: Vec<Number>,
    pub(super) unit: Option<Unit>,
    pub(super) span: Span,
}

/// A number of a group.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Number {
    Plain(Numeral, Span),
    Fraction(Fraction, Span),
}

/// A fraction as typed: nobody has looked at its size yet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Fraction {
    pub(super) over: i128,
    pub(super) under: i128,
}

impl Number {
    pub(super) const fn span(&self) -> Span {
        match self {
            Self::Plain(_, span) | Self::Fraction(_, span) => *span,
        }
    }

    /// As plain text.
    pub(super) fn text(&self) -> String {
        match self {
            Self::Plain(numeral, _) => numeral.text().to_owned(),
            Self::Fraction(Fraction { over, under }, _) => format!("{over}/{under}"),
        }
    }
}

impl Group {
    /// Its numbers, a space between.
    pub(super) fn text(&self) -> String {
        let pieces: Vec<_> = self.numbers.iter().map(Number::text).collect();
        pieces.join(" ")
    }
}

type Tokens<'a> = Peekable<Iter<'a, Token>>;

/// The groups of `tokens`, a leading sign already taken off.
pub(super) fn groups(tokens: &[Token]) -> Result<Vec<Group>, Refusal> {
    let mut tokens = tokens.iter().peekable();
    let mut groups: Vec<Group> = Vec::new();
    while let Some(first) = tokens.peek().map(|token| token.span) {
        if groups.last().is_some_and(|group| group.unit == Some(Unit::Foot)) {
            architects_dash(&mut tokens)?;
        }
        groups.push(group(&mut tokens, first)?);
    }
    Ok(groups)
}

fn group(tokens: &mut Tokens<'_>, first: Span) -> Result<Group, Refusal> {
    let mut numbers: Vec<Number> = Vec::new();
    let mut span = first;
    while let Some(token) = tokens.peek() {
        match token.kind {
            Kind::Mark(_) if numbers.is_empty() => return Err(Refusal::at(token.span, Trouble::NoNumber)),
            Kind::Mark(unit) => {
                span = span.to(token.span);
                tokens.next();
                return Ok(Group { numbers, unit: Some(unit), span });
            }
            Kind::Plus => return Err(Refusal::at(token.span, Trouble::NotALength)),
            Kind::Dash => joining_dash(tokens, numbers.last().map(Number::span))?,
            Kind::Numeral(_) | Kind::Glyph(..) | Kind::Slash => {
                let number = number(tokens)?;
                span = span.to(number.span());
                numbers.push(number);
            }
        }
    }
    Ok(Group { numbers, unit: None, span })
}

/// The dash of `12' - 3"`, with or without spaces.
fn architects_dash(tokens: &mut Tokens<'_>) -> Result<(), Refusal> {
    match tokens.next_if(|token| token.kind == Kind::Dash) {
        Some(dash) if !tokens.peek().is_some_and(|next| is_number(next)) => Err(stray(dash.span)),
        _ => Ok(()),
    }
}

/// The dash of `12-3-1/2`: between two numbers, no space on either side. With spaces
/// it may be meant as a minus, and this is no calculator.
fn joining_dash(tokens: &mut Tokens<'_>, before: Option<Span>) -> Result<(), Refusal> {
    let Some(dash) = tokens.next() else { return Ok(()) };
    let after = tokens.peek().filter(|next| is_number(next));
    match (before, after) {
        (Some(_), Some(after)) if !dash.after_space && !after.after_space => Ok(()),
        (Some(before), Some(after)) => {
            let gap = Span { start: before.end, end: after.span.start };
            Err(Refusal::at(gap, Trouble::StrayDash).fixes([Fix::Piece("-".to_owned())]))
        }
        _ => Err(stray(dash.span)),
    }
}

const fn is_number(token: &Token) -> bool {
    matches!(token.kind, Kind::Numeral(_) | Kind::Glyph(..))
}

fn stray(dash: Span) -> Refusal {
    Refusal::at(dash, Trouble::StrayDash).fixes([Fix::Piece(String::new())])
}

fn number(tokens: &mut Tokens<'_>) -> Result<Number, Refusal> {
    let Some(token) = tokens.next() else { return Err(Refusal::of_whole(Trouble::NoNumber)) };
    let slash = tokens.next_if(|next| next.kind == Kind::Slash && token.kind != Kind::Slash);
    match (&token.kind, slash) {
        (Kind::Numeral(numeral), None) => Ok(Number::Plain(numeral.clone(), token.span)),
        (Kind::Numeral(over), Some(slash)) => fraction(over, token.span.to(slash.span), tokens),
        (Kind::Glyph(over, under), None) => Ok(Number::Fraction(Fraction { over: *over, under: *under }, token.span)),
        _ => Err(Refusal::at(slash.unwrap_or(token).span, Trouble::BadFraction)),
    }
}

/// The rest of a fraction, of which `begun` is read.
fn fraction(over: &Numeral, begun: Span, tokens: &mut Tokens<'_>) -> Result<Number, Refusal> {
    let Some(Token { kind: Kind::Numeral(under), span, .. }) =
        tokens.next_if(|token| matches!(token.kind, Kind::Numeral(_)))
    else {
        return Err(Refusal::at(begun, Trouble::BadFraction));
    };
    let span = begun.to(*span);
    match (whole(over), whole(under)) {
        (Some(over), Some(under)) => Ok(Number::Fraction(Fraction { over, under }, span)),
        _ => Err(Refusal::at(span, Trouble::BadFraction)),
    }
}

fn whole(numeral: &Numeral) -> Option<i128> {
    numeral.exact().filter(|_| numeral.is_whole()).and_then(Exact::as_whole)
}
