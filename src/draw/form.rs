//! Forms: what can be said of a part, as questions of a choice and fields to type into.

use super::card::{Act, Ask, Card, Field};
use crate::engine::entry::Label;
use crate::engine::framing::is_of_the_old_one;
use crate::engine::job::{Job, Observation};
use crate::engine::particular::{Item, Part, Particular, Particulars, Takes, Value, item_of, stated};
use crate::engine::take::Units;

/// The particular that was typed into a field, by the field's key.
///
/// # Errors
/// What was typed, what is wrong, and what would do.
pub fn typed(key: &str, text: &str, units: Units) -> Result<Observation, String> {
    let (of, what): (Part, String) =
        serde_json::from_str(key).map_err(|_| format!("\"{text}\" was typed into no field that is known"))?;
    let item = item_of(&what).ok_or_else(|| format!("{what}: \"{text}\" is asked for nowhere"))?;
    stated(of, &item, text, units.bare_length()).map(Observation::Particular)
}

impl Card {
    /// With a form of these items of a part.
    #[must_use]
    pub(in crate::draw) fn with_form(mut self, job: &Job, part: &Part, items: &[Item]) -> Self {
        self.add_form(job, part, items, "");
        self
    }

    /// Adds the items of a part to its form, each question after the part's name.
    pub(in crate::draw) fn add_form(&mut self, job: &Job, part: &Part, items: &[Item], name: &str) {
        let said = Particulars::of(job);
        for item in items {
            let asks = format!("{name}{}", item.asks);
            match item.takes {
                Takes::OneOf(words) => {
                    // Of two words that two phones say, none is the answer until it is said again.
                    let given = each_said(said, part, item);
                    let answer = |word: &&str| (act(part, item, word), given == [*word]);
                    self.asks.push(Ask { asks, answers: words.iter().map(answer).collect() });
                }
                Takes::Amount { unit, .. } => {
                    self.fields.push(Field { unit, is_number: true, ..field(said, part, item, asks) });
                }
                Takes::Length { .. } | Takes::Words => self.fields.push(field(said, part, item, asks)),
            }
        }
    }
}

/// A field for words or a length. It is empty where it has to be said again, so that the same is
/// logged too: of what two phones said differently, and of what a new joist took the place of.
fn field(said: Particulars<'_>, part: &Part, item: &Item, asks: String) -> Field {
    let key = serde_json::to_string(&(part, item.what)).unwrap_or_default();
    let (own, is_of_old) = (each_said(said, part, item), is_of_the_old_one(said, part, item));
    let is_again = own.len() > 1 || is_of_old;
    let own = own.join(" or ");
    let (typed, again) = if is_again { (String::new(), own) } else { (own, String::new()) };
    let is_shared = matches!(part, Part::Joist(_)) && !is_of_old;
    let shared = if is_shared { each_said(said, &Part::Joists, item).join(" or ") } else { String::new() };
    Field { key, asks, unit: "", is_number: false, typed, again, shared }
}

/// What may be the last word on it, as it was typed: more than one where two phones say different
/// things.
fn each_said<'a>(said: Particulars<'a>, part: &Part, item: &Item) -> Vec<&'a str> {
    let mut each: Vec<&Value> = Vec::new();
    for value in said.last_words(part, item).into_iter().rev().map(|it| &it.value.is) {
        if !each.iter().any(|other| other.says_the_same(value)) {
            each.push(value);
        }
    }
    each.into_iter().map(Value::typed).collect()
}

fn act(part: &Part, item: &Item, word: &str) -> Act {
    let particular =
        Particular { of: part.clone(), what: Label::fitted(item.what), is: Value::Words(Label::fitted(word)) };
    Act { label: word.to_owned(), logs: Observation::Particular(particular) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::particular::list;

    #[test]
    fn what_a_field_hands_back_is_what_its_form_asked() {
        let card = Card::new("", "", Vec::new()).with_form(&Job::default(), &Part::House, &[list::RAIN, list::GRADE]);
        let field = card.fields.first().unwrap();
        let Ok(Observation::Particular(said)) = typed(&field.key, "6.8", Units::default()) else { panic!() };
        assert_eq!((said.of, said.what.as_str(), said.is.typed()), (Part::House, "rain", "6.8"));
        assert!(typed(&field.key, "much", Units::default()).unwrap_err().contains("\"much\""));
        assert!(typed("nothing", "6.8", Units::default()).is_err());
        assert_eq!(card.asks.first().unwrap().answers.len(), 5);
    }
}
