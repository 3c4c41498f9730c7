//! A row of keys of which one is chosen.

use super::live::{memo, says};
use leptos::prelude::*;

/// Keys of which one is chosen, marked for eyes and for readers. `legend` says to a
/// reader what is chosen between; `on_choose` is called with what is tapped.
///
/// A function and no component: only this shell is built anew for every type.
pub fn choice<T: PartialEq + Clone + Send + Sync + 'static>(
    legend: &'static str,
    options: Vec<(T, String)>,
    chosen: impl Fn() -> T + Send + Sync + 'static,
    on_choose: impl Fn(T) + Send + Sync + 'static,
) -> AnyView {
    let (values, words): (Vec<T>, Vec<String>) = options.into_iter().unzip();
    let among = values.clone();
    let chosen = move || {
        let chosen = chosen();
        among.iter().position(|value| *value == chosen)
    };
    let on_choose = move |at: usize| {
        if let Some(value) = values.get(at) {
            on_choose(value.clone());
        }
    };
    keys(legend, words, Box::new(chosen), Callback::new(on_choose))
}

/// Values with their words.
pub fn labelled<T: Copy>(values: impl IntoIterator<Item = T>, label: impl Fn(T) -> &'static str) -> Vec<(T, String)> {
    values.into_iter().map(|value| (value, label(value).to_owned())).collect()
}

type Chosen = Box<dyn Fn() -> Option<usize> + Send + Sync>;

fn keys(legend: &'static str, words: Vec<String>, chosen: Chosen, on_choose: Callback<usize>) -> AnyView {
    let chosen = memo(chosen);
    let key = |(at, words)| {
        let pressed = says(move || (chosen.get() == Some(at)).to_string());
        view! {
            <button type="button" class="chip" aria-pressed=pressed on:click=move |_| on_choose.run(at)>{words}</button>
        }
    };
    let keys = words.into_iter().enumerate().map(key).collect_view();
    view! { <div class="choice" role="group" aria-label=legend>{keys}</div> }.into_any()
}
