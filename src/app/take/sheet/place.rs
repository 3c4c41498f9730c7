//! Where the next value goes: element, joist, face, distance.

use crate::app::session::session;
use crate::app::widgets::{Choice, TextField};
use crate::engine::place::{Element, Face, JoistNumber, Place, Position};
use crate::engine::take::{Draft, travel};
use crate::engine::units::tape::{self, Sign};
use crate::engine::units::{Length, Typed};
use leptos::prelude::*;

/// Keys that move the place. Nothing is logged until a value is.
#[component]
pub fn PlaceKeys() -> impl IntoView {
    let session = session();
    let spot = Memo::new(move |_| session.draft().spot);
    let move_to = move |change: &dyn Fn(Place) -> Place| {
        session.draft_to(|draft| Draft { spot: change(draft.spot.clone()), ..draft });
    };
    let element = Memo::new(move |_| spot.get().element);
    let elements = Element::ALL.into_iter().map(|element| (element, element.label().to_owned())).collect();
    let on_element = Callback::new(move |element| move_to(&|spot| Place { element, ..spot }));
    let face = Memo::new(move |_| spot.get().face);
    let faces = Face::ALL.into_iter().map(|face| (Some(face), face.label().to_owned())).collect();
    let on_face = Callback::new(move |face| move_to(&|spot| Place { face, ..spot }));
    let on_along = Callback::new(move |text: String| {
        let units = session.prefs.get_untracked().units;
        let along = if text.trim().is_empty() {
            None
        } else {
            let parsed = tape::parse(&text, units.bare_length(), Sign::Refused);
            Some(parsed.map_err(|problem| format!("Distance along: {problem}"))?)
        };
        move_to(&|spot| at(spot, along.clone()));
        Ok(())
    });
    let along = spot.get_untracked().position.along().map(|along| along.typed).unwrap_or_default();
    view! {
        <h2>"Place"</h2>
        <Choice legend="Element" options=elements chosen=element.into() on_choose=on_element/>
        <div class="stepper">
                <button type="button" class="key" on:click=move |_| move_to(&|spot| travel::step(&spot, -1))>"joist −"</button>
                <output>{move || spot.get().name()}</output>
                <button type="button" class="key" on:click=move |_| move_to(&|spot| travel::step(&spot, 1))>"joist +"</button>
            </div>
            <TextField label="Distance along" value=along inputmode="text" on_commit=on_along/>
            <Choice legend="Face" options=faces chosen=face.into() on_choose=on_face/>
    }
}

/// The spot at another distance along its joist.
fn at(spot: Place, along: Option<Typed<Length>>) -> Place {
    let joist = match &spot.position {
        Position::OnJoist { joist, .. } => *joist,
        Position::OnPlan { .. } | Position::Named => JoistNumber::FIRST,
    };
    Place { position: Position::OnJoist { joist, along }, ..spot }
}
