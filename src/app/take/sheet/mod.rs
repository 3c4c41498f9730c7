//! What is asked: the task of the instrument in the hand, and the place. It covers the
//! desk until it is done.

mod place;

use crate::app::session::session;
use crate::app::widgets::{Choice, TextField};
use crate::engine::entry::Label;
use crate::engine::geometry::Turn;
use crate::engine::moisture::{Material, Species, Wood};
use crate::engine::survey::Run;
use crate::engine::take::{AirTask, Draft, Instrument, TapeTask};
use leptos::prelude::*;
use place::PlaceKeys;

/// What the instrument in the hand asks, and where.
#[component]
pub fn Sheet(on_done: Callback<()>) -> impl IntoView {
    let session = session();
    let instrument = Memo::new(move |_| session.draft().instrument);
    let keys = move || match instrument.get() {
        Instrument::Tape => view! { <TapeTasks/> }.into_any(),
        Instrument::Air => view! { <AirTasks/><PlaceKeys/> }.into_any(),
        Instrument::Meter => view! { <PlaceKeys/><WoodTasks/> }.into_any(),
        Instrument::Level | Instrument::Look | Instrument::Photo => view! { <PlaceKeys/> }.into_any(),
    };
    view! {
        <div class="sheet">
            <div class="sheet-keys">{keys}</div>
            <button type="button" class="key save wide" on:click=move |_| on_done.run(())>"done"</button>
        </div>
    }
}

/// Beside the question: which way the wall turns at the end of this side.
#[component]
pub fn TurnKey() -> impl IntoView {
    let session = session();
    let shown = Memo::new(move |_| {
        let draft = session.draft();
        (draft.instrument == Instrument::Tape && draft.tape == TapeTask::Side).then_some(draft.turn)
    });
    let flip = move |_| session.draft_to(|draft| Draft { turn: draft.turn.mirrored(), ..draft });
    move || {
        shown.get().map(|turn| {
            let words = if turn == Turn::Right { "then right ↱" } else { "then left ↰" };
            view! { <button type="button" class="turn" on:click=flip>{words}</button> }
        })
    }
}

#[component]
fn TapeTasks() -> impl IntoView {
    let session = session();
    let task = Memo::new(move |_| session.draft().tape);
    let options = TapeTask::ALL.into_iter().map(|task| (task, task.label().to_owned())).collect();
    let on_choose = Callback::new(move |task| session.draft_to(|draft| draft.measuring(task)));
    view! {
        <div class="tasks">
            <Choice legend="What is measured" options chosen=task.into() on_choose/>
            {move || match task.get() {
                TapeTask::Opening => view! { <CornerKeys/> }.into_any(),
                TapeTask::Joists => view! { <RunKeys/> }.into_any(),
                TapeTask::Other => view! { <NameOfLength/> }.into_any(),
                TapeTask::Side | TapeTask::CrawlHeight => ().into_any(),
            }}
        </div>
    }
}

/// The corner that an opening is placed from.
#[component]
fn CornerKeys() -> impl IntoView {
    let session = session();
    let corners = Memo::new(move |_| {
        session.job(|job| crate::engine::survey::Floor::of(job).map_or(0, |floor| floor.sides.len())).unwrap_or(0)
    });
    let corner = Memo::new(move |_| session.draft().corner);
    let on_choose = Callback::new(move |corner| session.draft_to(|draft| Draft { corner, ..draft }));
    move || {
        let options = (0..corners.get()).map(|corner| (corner, format!("corner {}", corner + 1))).collect();
        view! { <Choice legend="From which corner" options chosen=corner.into() on_choose/> }
    }
}

/// What the other length is called.
#[component]
fn NameOfLength() -> impl IntoView {
    let session = session();
    let on_commit = Callback::new(move |text: String| {
        let other = Label::new(&text).map_err(|problem| format!("Name: {problem}"))?;
        session.draft_to(|draft| Draft { other, ..draft });
        Ok(())
    });
    let name = untrack(|| session.draft().other.to_string());
    view! { <TextField label="Name of the length" value=name on_commit/> }
}

#[component]
fn RunKeys() -> impl IntoView {
    let session = session();
    let run = Memo::new(move |_| session.draft().run);
    let options = Run::ALL.into_iter().map(|run| (run, run.label().to_owned())).collect();
    let on_choose = Callback::new(move |run| session.draft_to(|draft| Draft { run, ..draft }));
    view! { <div class="tasks"><Choice legend="Which way the joists run" options chosen=run.into() on_choose/></div> }
}

#[component]
fn AirTasks() -> impl IntoView {
    let session = session();
    let task = Memo::new(move |_| session.draft().air);
    let options = AirTask::ALL.into_iter().map(|task| (task, task.label().to_owned())).collect();
    let on_choose = Callback::new(move |task| session.draft_to(|draft| draft.reading_air(task)));
    view! { <h2>"What is read"</h2><div class="tasks"><Choice legend="What is read" options chosen=task.into() on_choose/></div> }
}

/// The wood that is read: it stays until somebody says otherwise.
#[component]
fn WoodTasks() -> impl IntoView {
    let session = session();
    let wood = Memo::new(move |_| session.draft().wood);
    let solid = |species| Wood { material: Material::Solid, species };
    let made_up = |material| Wood { material, species: None };
    let species = Species::ALL.into_iter().map(|species| (solid(Some(species)), species.label().to_owned()));
    let others = [
        (solid(None), "species unknown".to_owned()),
        (made_up(Material::Treated), "treated".to_owned()),
        (made_up(Material::Plywood), "plywood".to_owned()),
        (made_up(Material::Osb), "OSB".to_owned()),
    ];
    let options = others.into_iter().chain(species).collect();
    let on_choose = Callback::new(move |wood| session.draft_to(|draft| Draft { wood, ..draft }));
    view! { <h2>"Wood"</h2><div class="tasks"><Choice legend="Wood" options chosen=wood.into() on_choose/></div> }
}
