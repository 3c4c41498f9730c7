//! An answer: a sentence, what decides it, what was assumed, and why.

use crate::engine::figure::{Figure, Need, Why};
use crate::engine::results::{Answer, Said};
use leptos::prelude::*;

/// An answer as a card.
#[component]
pub fn AnswerCard(answer: Answer) -> impl IntoView {
    let Answer { title, said, .. } = answer;
    let body = match said {
        Figure::Known(known) => {
            let Said { headline, line } = known.value;
            let assumed = (!known.assumed.is_empty()).then(|| format!("assumed: {}", known.assumed.join("; ")));
            let doubts = known.doubts.into_iter().map(|doubt| view! { <p class="doubt">{doubt}</p> }).collect_view();
            view! {
                <p class="headline">{headline}</p>
                <p>{line}</p>
                {assumed.map(|assumed| view! { <p class="assumed">{assumed}</p> })}
                <WhyDetails of=title why=known.why>{doubts}</WhyDetails>
            }
            .into_any()
        }
        Figure::Missing(needs) => {
            let next = needs.into_iter().map(Need::words).collect::<Vec<_>>().join("; ");
            view! {
                <p class="headline missing">"Not enough to say"</p>
                <p class="assumed">{format!("Next: {next}.")}</p>
            }
            .into_any()
        }
    };
    view! { <section class="card"><h2>{title}</h2>{body}</section> }
}

/// The rule, its sources with their marks, the inputs, and what to bear in mind.
#[component]
pub fn WhyDetails(of: &'static str, why: Why, children: Children) -> impl IntoView {
    let inputs = why.inputs.into_iter().map(|(name, value)| view! { <li>{name}": "<b>{value}</b></li> }).collect_view();
    let sources = why
        .sources
        .into_iter()
        .map(|source| {
            let citation = source.citation();
            view! { <li>{citation.title}" "<em>{format!("({})", citation.mark.label())}</em></li> }
        })
        .collect_view();
    view! {
        <details class="why">
            <summary aria-label=format!("why: {of}")>"why"</summary>
            <p>{why.rule}</p>
            <ul>{inputs}{sources}</ul>
            {children()}
        </details>
    }
}
