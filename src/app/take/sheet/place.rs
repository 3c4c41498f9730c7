//! Where the next value goes. Nothing is logged until a value is.

use crate::app::session::{Session, session};
use crate::app::widgets::{TextField, choice, labelled, live, memo, says};
use crate::engine::entry::Label;
use crate::engine::place::{Element, Face, Locating, Place};
use crate::engine::take::{Draft, Whereabouts, faced, located, travel};
use crate::file::tables::place_words;
use leptos::prelude::*;

/// Keys that move the place. `on_done` is called when the answer is to be typed on the
/// keypad, or was found whole.
#[component]
pub fn PlaceKeys(on_done: Callback<()>) -> impl IntoView {
    let session = session();
    let spot = memo(move || session.draft().spot);
    let elements = labelled(Element::ALL, Element::label);
    let on_element = move |element| aim(session, |spot| Place { element, ..spot });
    let faces = labelled(Face::ALL.map(Some).into_iter().chain([None]), |face| face.map_or("no face", Face::label));
    let on_face = move |face| aim(session, |spot| faced(&spot, face));
    view! {
        <h2>"Place"</h2>
        {choice("Element", elements, move || spot.get().element, on_element)}
        <Where spot on_done/>
        {choice("Face", faces, move || spot.get().face, on_face)}
        <ChalkMark/>
        <TravelKeys/>
        <KnownPlaces on_done/>
    }
}

/// Changes the spot.
fn aim(session: Session, change: impl FnOnce(Place) -> Place) {
    session.draft_to(|draft| Draft { spot: change(draft.spot.clone()), ..draft });
}

/// The way to say where it is, and the keys of that way.
#[component]
fn Where(spot: Memo<Place>, on_done: Callback<()>) -> impl IntoView {
    let session = session();
    let locating = move || spot.get().position.locating();
    let ways = labelled(Locating::ALL, Locating::label);
    let on_way = move |way| {
        let units = session.prefs.get_untracked().units;
        let moved = untrack(|| session.job(|job| located(job, &session.draft().spot, way, units)));
        if let Some(moved) = moved {
            aim(session, |_| moved);
        }
    };
    let step = move |joists| {
        let moved = untrack(|| session.job(|job| travel::step(job, &session.draft().spot, joists)));
        if let Some(moved) = moved {
            aim(session, |_| moved);
        }
    };
    view! {
        {choice("Where it is", ways, locating, on_way)}
        {live(move || (locating() == Locating::Joist).then(|| view! {
            <div class="stepper">
                <button type="button" class="key" on:click=move |_| step(-1)>"joist −"</button>
                <output>{says(move || spot.get().name())}</output>
                <button type="button" class="key" on:click=move |_| step(1)>"joist +"</button>
            </div>
        }))}
        <div class="choice">
            {live(move || Whereabouts::of(&spot.get()).iter().map(|what| where_key(session, *what, on_done)).collect_view())}
        </div>
    }
}

/// A length that says where: its key asks for it, and the keypad answers.
fn where_key(session: Session, what: Whereabouts, on_done: Callback<()>) -> impl IntoView {
    let now = says(move || {
        let units = session.prefs.get().units;
        what.read(&session.draft().spot).map_or_else(|| "not measured".to_owned(), |now| units.read(now.value))
    });
    let ask = move |_| {
        session.draft_to(|draft| draft.asking_where(what));
        on_done.run(());
    };
    view! { <button type="button" class="chip where" on:click=ask><span>{what.label()}": "</span><b>{now}</b></button> }
}

/// What is chalked there: one person's hand and another's eye find the same place.
#[component]
fn ChalkMark() -> impl IntoView {
    let session = session();
    let mark = move || session.draft().spot.chalk.map(|chalk| chalk.to_string()).unwrap_or_default();
    let on_commit = Callback::new(move |text: String| {
        let mark = Label::new(&text).map_err(|problem| format!("Chalk mark: {problem}"))?;
        aim(session, |spot| Place { chalk: (!mark.is_empty()).then_some(mark), ..spot });
        Ok(())
    });
    view! { <TextField label="Chalk mark" value=untrack(mark) on_commit/> }
}

/// Where the place goes by itself after a save.
#[component]
fn TravelKeys() -> impl IntoView {
    let session = session();
    let ways = [(1, "next joist"), (-1, "joist before"), (0, "stay here")];
    let ways = ways.into_iter().map(|(joists, words)| (joists, words.to_owned())).collect();
    let on_choose = move |travel| session.draft_to(|draft| Draft { travel, ..draft });
    view! { <h2>"After a save"</h2>{choice("After a save", ways, move || session.draft().travel, on_choose)} }
}

/// The places that the job knows, to go back to.
#[component]
fn KnownPlaces(on_done: Callback<()>) -> impl IntoView {
    let session = session();
    let known = untrack(|| {
        session.job(|job| {
            let places = job.now.places().iter();
            places.map(|(id, place)| (place_words(job, Some(*id)), place.value.clone())).collect::<Vec<_>>()
        })
    });
    let known = known.unwrap_or_default();
    let count = known.len();
    let go = move |place: Place| {
        aim(session, |_| place);
        on_done.run(());
    };
    let keys = known.into_iter().map(|(words, place)| {
        view! { <button type="button" class="chip" on:click=move |_| go(place.clone())>{words}</button> }
    });
    (count > 0).then(|| {
        view! {
            <details>
                <summary>{format!("Places so far: {count}")}</summary>
                <div class="choice">{keys.collect_view()}</div>
            </details>
        }
    })
}
