//! What stops the work: a room that disagrees with itself by so much that nothing may be cut
//! by it. It stands there until it is settled by measuring again.

use super::{live, memo};
use crate::app::session::session;
use crate::engine::survey::disagreement;
use leptos::prelude::*;

/// The line that stops the work, while there is reason to.
#[component]
pub fn Stop() -> impl IntoView {
    let session = session();
    let says = memo(move || {
        let says = session.job(|job| {
            let disagreement = disagreement(job);
            disagreement.says().filter(|_| disagreement.stops()).map(ToOwned::to_owned)
        });
        says.flatten()
    });
    live(move || {
        says.get().map(
            |says| view! { <p class="stop" role="alert"><b>"Stop: cut nothing yet. "</b>"In this room "{says}"."</p> },
        )
    })
}
