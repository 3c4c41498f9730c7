//! Cautions as cards: those that are due, with the key that says they were read, and all that
//! a job calls for.

use super::card::{Act, Ask, Card, Line, cited};
use crate::engine::cautions::{LAST_WORD, Raised, all_triggered};
use crate::engine::entry::{Logger, time};
use crate::engine::job::{Job, Observation};

/// The cautions that are still to be read by whoever logs, the worst first.
pub fn due(job: &Job, by: Option<&Logger>) -> Vec<Card> {
    let due = all_triggered(job).into_iter().filter(|raised| raised.is_due(by));
    let cards = due.map(|raised| {
        let logs = Observation::Acknowledgement(raised.caution.acknowledgement());
        let read = (Act { label: "read".to_owned(), logs }, false);
        Card { asks: vec![Ask { asks: raised.because.clone(), answers: vec![read] }], ..card(&raised, String::new()) }
    });
    with_the_last_word(cards.collect())
}

/// Every caution that a job calls for, and who has read it.
pub fn cautions(job: &Job) -> Vec<Card> {
    let cards = all_triggered(job).into_iter().map(|raised| {
        let read = raised.read.first().map(|stamp| format!("Read by {} on {}", stamp.by.initials, time::day(stamp.at)));
        let mut card = card(&raised, read.unwrap_or_else(|| "Not read yet".to_owned()));
        card.lines.push(Line::small(raised.because.clone()));
        card
    });
    with_the_last_word(cards.collect())
}

fn card(raised: &Raised<'_>, headline: String) -> Card {
    let words = Line::plain(raised.caution.words);
    let sources = cited(raised.caution.sources.iter().copied());
    Card::new(raised.caution.title, headline, [words].into_iter().chain(sources).collect())
}

fn with_the_last_word(mut cards: Vec<Card>) -> Vec<Card> {
    if let Some(last) = cards.last_mut() {
        last.lines.push(Line::plain(LAST_WORD));
    }
    cards
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::entry::{DeviceId, Role, Text};
    use crate::engine::job::{Book, Pen, Record};
    use crate::engine::sample;

    #[test]
    fn a_card_that_was_read_is_due_no_more_and_stays_in_the_list() {
        let device = DeviceId::new(7);
        let mut book = Book::of(sample::entries(device).into_iter().map(|entry| Record::of(entry).unwrap()));
        let by = Logger { initials: Text::new("WX").unwrap(), role: Role::CrewLead };
        let before = due(book.job(), Some(&by));
        let read = before[0].asks[0].answers[0].0.logs.clone();
        let stamp = crate::engine::entry::Stamp { by: by.clone(), ..sample::entries(device)[0].stamp.clone() };
        let entry = Pen::new(book.log(), DeviceId::new(8), stamp).record(read);
        book.add(Record::of(entry).unwrap());
        let titles = |cards: &[Card]| cards.iter().map(|card| card.title.clone()).collect::<Vec<_>>();
        assert_eq!(titles(&due(book.job(), Some(&by))), titles(&before)[1..]);
        let all = cautions(book.job());
        assert_eq!(all[0].title, before[0].title);
        assert!(all[0].headline.starts_with("Read by WX on "), "{}", all[0].headline);
        assert_eq!(all.last().unwrap().lines.iter().filter(|line| line.text == LAST_WORD).count(), 1);
    }
}
