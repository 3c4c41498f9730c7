//! A row of keys of which one is chosen.

use leptos::prelude::*;

/// Keys of which one is chosen. The chosen one is marked for eyes and for readers.
#[component]
pub fn Choice<T>(
    /// What is chosen between, for a screen reader.
    legend: &'static str,
    /// The options with their words.
    options: Vec<(T, String)>,
    /// The one that is chosen.
    chosen: Signal<T>,
    /// Called with the one that is tapped.
    on_choose: Callback<T>,
) -> impl IntoView
where
    T: Clone + PartialEq + Send + Sync + 'static,
{
    let keys = options
        .into_iter()
        .map(|(option, words)| {
            let (mine, tapped) = (option.clone(), option);
            let pressed = Memo::new(move |_| chosen.get() == mine);
            view! {
                <button
                    type="button"
                    class="chip"
                    aria-pressed=move || pressed.get().to_string()
                    on:click=move |_| on_choose.run(tapped.clone())
                >
                    {words}
                </button>
            }
        })
        .collect_view();
    view! { <div class="choice" role="group" aria-label=legend>{keys}</div> }
}
