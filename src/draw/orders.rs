//! The order list as cards, a card a line, and as rows.

use super::card::{Card, Line, cited};
use crate::engine::describe::{capital, counted};
use crate::engine::entry::Label;
use crate::engine::job::Job;
use crate::engine::orders::{self, Change, OrderList, Section};
use crate::engine::particular::{Part, list};
use crate::engine::units::Amount;

/// Everything on the page, in its order.
pub fn orders(job: &Job, list: &OrderList) -> Vec<Card> {
    let mut cards = vec![summary(job, list)];
    for section in Section::ALL {
        let of = list.lines.iter().filter(|line| line.needed.section == section);
        let mut group = Some(section.label());
        cards.extend(of.map(|line| Card { group: group.take(), ..one_line(job, line) }));
    }
    cards
}

fn summary(job: &Job, list: &OrderList) -> Card {
    let mut lines: Vec<_> = list.open.iter().map(|open| Line::next(open.clone())).collect();
    let changed = list.lines.iter().filter(|line| line.change.is_some_and(|change| change != Change::Same));
    lines.push(match (list.sent, changed.count() + list.dropped.len()) {
        (None, _) => Line::small("This job was not sent yet: nothing is marked as changed."),
        (Some(revision), 0) => Line::plain(format!("Nothing changed since revision {revision} was sent.")),
        (Some(revision), some) => Line::plain(format!("{some} changed since revision {revision} was sent.")),
    });
    lines.extend(list.dropped.iter().map(|name| Line::plain(format!("No longer needed: {name}."))));
    lines.push(Line::small("Prices are the office's: nothing here is a price that somebody asks."));
    let count = list.lines.iter().filter(|line| line.needed.section != Section::TakeOut).count();
    let headline = format!("{} to order", counted(count, "line"));
    Card::new("Order list", headline, lines).with_form(job, &Part::House, &list::OF_ORDERS)
}

fn one_line(job: &Job, line: &orders::Line) -> Card {
    let needed = &line.needed;
    let mut lines = Vec::new();
    let change = line.change.map(Change::words).filter(|words| !words.is_empty());
    lines.extend(change.map(|words| Line::next(format!("{}.", capital(&words)))));
    if let Some(price) = line.price {
        lines.push(Line::plain(format!("{} each, by the office.", price.shown())));
    }
    let waste = match (line.waste.shown().as_str(), line.is_waste_stated) {
        ("0", _) => "none".to_owned(),
        (percent, true) => format!("{percent} % as stated"),
        (percent, false) => format!("{percent} % as usual"),
    };
    let amount = needed.unit.count(needed.amount);
    lines.push(Line::small(format!("Needed: {amount}; waste: {waste}; on hand: {}.", line.on_hand.shown())));
    lines.extend(needed.from.iter().map(|from| Line::small(format!("{from}."))));
    lines.extend(cited(needed.sources.iter().copied()));
    let card = Card::new(needed.name.clone(), line.quantity(), lines);
    match needed.section {
        Section::TakeOut => card,
        _ => card.with_form(job, &Part::Order(Label::fitted(&needed.name)), &list::OF_ORDER),
    }
}

/// The columns of the list on paper.
pub const COLUMNS: [&str; 5] = ["item", "to order", "price each", "changed", "how it comes about"];

/// The list on paper: a row a line, under the words of its section.
pub fn rows(list: &OrderList) -> Vec<(&'static str, Vec<[String; 5]>)> {
    let row = |line: &orders::Line| {
        [
            line.needed.name.clone(),
            line.quantity(),
            line.price.map(Amount::shown).unwrap_or_default(),
            line.change.map(Change::words).unwrap_or_default(),
            line.needed.from.join("; "),
        ]
    };
    let sections = Section::ALL.into_iter().map(|section| {
        let of = list.lines.iter().filter(|line| line.needed.section == section);
        (section.label(), of.map(row).collect::<Vec<_>>())
    });
    sections.filter(|(_, rows)| !rows.is_empty()).collect()
}
