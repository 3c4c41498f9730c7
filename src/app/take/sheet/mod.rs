//! What is asked: the task of the instrument in the hand, and the place. It covers the
//! desk until it is done.

mod place;

use crate::app::session::session;
use crate::app::widgets::{TextField, choice, labelled, live, memo};
use crate::engine::entry::Label;
use crate::engine::geometry::Turn;
use crate::engine::moisture::{Material, Species, Wood};
use crate::engine::place::JoistNumber;
use crate::engine::survey::adjust::House;
use crate::engine::survey::{Floor, LayerKind, Ruler, Run, Trust, WholeFloor};
use crate::engine::take::{AirTask, AtSpot, Draft, Footprint, Instrument, LookTask, TapeTask};
use leptos::html::Div;
use leptos::prelude::*;
use place::PlaceKeys;
use wasm_bindgen::JsCast;

/// What the instrument in the hand asks, and where.
#[component]
pub fn Sheet(on_done: Callback<()>) -> impl IntoView {
    let session = session();
    let instrument = memo(move || session.draft().instrument);
    let keys = live(move || match instrument.get() {
        Instrument::Tape => view! { <TapeTasks/> }.into_any(),
        Instrument::Air => view! { <AirTasks/><PlaceKeys on_done/> }.into_any(),
        Instrument::Meter => view! { <PlaceKeys on_done/><WoodTasks/> }.into_any(),
        Instrument::Look => view! { <LookTasks/><PlaceKeys on_done/> }.into_any(),
        Instrument::Level | Instrument::Photo => view! { <PlaceKeys on_done/> }.into_any(),
    });
    let sheet = NodeRef::<Div>::new();
    let done = move |_| match sheet.get_untracked().as_deref().and_then(refused_field) {
        Some(field) => {
            let _ = field.focus();
        }
        None => on_done.run(()),
    };
    view! {
        <div class="sheet" node_ref=sheet>
            <div class="sheet-keys">{keys}</div>
            <button type="button" class="key save wide" on:click=done>"done"</button>
        </div>
    }
}

/// A field whose text will not do: with the sheet it would be gone.
fn refused_field(sheet: &web_sys::HtmlElement) -> Option<web_sys::HtmlElement> {
    sheet.query_selector("[aria-invalid=true]").ok()??.dyn_into().ok()
}

/// Beside the question: which way the wall turns at the end of this side.
#[component]
pub fn TurnKey() -> impl IntoView {
    let session = session();
    let shown = memo(move || {
        let draft = session.draft();
        (draft.instrument == Instrument::Tape && draft.tape == TapeTask::Side).then_some(draft.turn)
    });
    let flip = move |_| session.draft_to(|draft| Draft { turn: draft.turn.mirrored(), ..draft });
    live(move || {
        shown.get().map(|turn| {
            let words = if turn == Turn::Right { "then right ↱" } else { "then left ↰" };
            view! { <button type="button" class="turn" on:click=flip>{words}</button> }
        })
    })
}

/// What is looked for.
#[component]
fn LookTasks() -> impl IntoView {
    let session = session();
    let tasks = labelled(LookTask::ALL, LookTask::label);
    let on_choose = move |task| session.draft_to(|draft| draft.looking(task));
    view! { <h2>"What is logged"</h2>{choice("What is logged", tasks, move || session.draft().look, on_choose)} }
}

#[component]
fn TapeTasks() -> impl IntoView {
    let session = session();
    let task = memo(move || session.draft().tape);
    let tasks = labelled(TapeTask::ALL, TapeTask::label);
    let on_choose = move |task| session.draft_to(|draft| draft.measuring(task));
    view! {
        <div class="tasks">
            {choice("What is measured", tasks, move || task.get(), on_choose)}
            {live(move || match task.get() {
                TapeTask::Tie => view! { <CornerKeys/><ToCornerKeys/><RulerKeys/><HouseKeys/> }.into_any(),
                TapeTask::Offset => view! { <CornerKeys/><LineKeys/><ToCornerKeys/><RulerKeys/> }.into_any(),
                TapeTask::Corner => view! { <CornerKeys/><TrustKeys/><HouseKeys/> }.into_any(),
                TapeTask::Opening => view! { <FootprintKeys/><CornerKeys/> }.into_any(),
                TapeTask::CutBack => view! { <OpeningKeys/> }.into_any(),
                TapeTask::Joists => view! { <RunKeys/> }.into_any(),
                TapeTask::JoistCenter => view! { <JoistKeys/> }.into_any(),
                TapeTask::Layer => view! { <LayerKeys/> }.into_any(),
                TapeTask::Other => view! { <NameOfLength/> }.into_any(),
                TapeTask::Side => view! { <PutInKeys/><RulerKeys/> }.into_any(),
                TapeTask::OnHand | TapeTask::CrawlHeight => ().into_any(),
            })}
        </div>
    }
}

/// Where a side that was forgotten is put in.
#[component]
fn PutInKeys() -> impl IntoView {
    let session = session();
    let sides = memo(move || session.job(Floor::of).flatten().map(|floor| floor.sides).unwrap_or_default());
    let on_choose = move |after| session.draft_to(|draft| Draft { after, ..draft });
    live(move || {
        let mut sides = sides.get();
        sides.pop()?;
        let put_in = |(at, side)| (Some(side), format!("after side {}", at + 1));
        let options = std::iter::once((None, "the last".to_owned())).chain(sides.into_iter().enumerate().map(put_in));
        let options = options.collect();
        Some(
            view! { <h2>"The next side goes"</h2>{choice("The next side goes", options, move || session.draft().after, on_choose)} },
        )
    })
}

/// What the rectangle that is placed is, and whether all of the floor comes out.
#[component]
fn FootprintKeys() -> impl IntoView {
    let session = session();
    let room = memo(move || session.job(Floor::of).flatten().map(|floor| (floor.room, floor.whole)));
    let footprints = labelled(Footprint::ALL, Footprint::label);
    let on_choose = move |footprint| session.draft_to(|draft| Draft { footprint, ..draft });
    let on_whole = move |all: bool| match room.get_untracked() {
        Some((_, Some(whole))) if !all => session.withdraw(whole),
        Some((room, None)) if all => session.record(WholeFloor { room }.into()),
        _ => {}
    };
    let all = move || room.get().is_some_and(|(_, whole)| whole.is_some());
    let parts = [(false, "openings only".to_owned()), (true, "the whole floor".to_owned())];
    view! {
        <h2>"What is placed"</h2>
        {choice("What is placed", footprints, move || session.draft().footprint, on_choose)}
        <h2>"What comes out"</h2>
        {choice("What comes out", parts.into(), all, on_whole)}
    }
}

/// The corner that an opening is placed from, a length starts at or an angle is at.
#[component]
fn CornerKeys() -> impl IntoView {
    corner_keys("At which corner", |draft| &mut draft.corner)
}

/// The corner that a line starts at.
#[component]
fn LineKeys() -> impl IntoView {
    corner_keys("Beside the line from which corner", |draft| &mut draft.line_from)
}

/// The corner that a length or a line ends at.
#[component]
fn ToCornerKeys() -> impl IntoView {
    corner_keys("To which corner", |draft| &mut draft.to_corner)
}

/// The corners that there are, to choose one of.
fn corner_keys(legend: &'static str, chosen: fn(&mut Draft) -> &mut usize) -> impl IntoView {
    let session = session();
    let corners = memo(move || session.job(|job| Floor::of(job).map_or(0, |floor| floor.sides.len())).unwrap_or(0));
    let on_choose = move |corner| {
        session.draft_to(|mut draft| {
            *chosen(&mut draft) = corner;
            draft
        });
    };
    let keys = live(move || {
        let options = (0..corners.get()).map(|corner| (corner, format!("corner {}", corner + 1))).collect();
        choice(legend, options, move || *chosen(&mut session.draft()), on_choose)
    });
    view! { <h2>{legend}</h2>{keys} }
}

/// What lengths of the room are measured with.
#[component]
fn RulerKeys() -> impl IntoView {
    let session = session();
    let on_choose = move |ruler| session.draft_to(|draft| Draft { ruler, ..draft });
    let rulers = labelled(Ruler::ALL, Ruler::label);
    view! { <h2>"Measured with"</h2>{choice("Measured with", rulers, move || session.draft().ruler, on_choose)} }
}

/// How far what is said of a corner is to be believed.
#[component]
fn TrustKeys() -> impl IntoView {
    let session = session();
    let on_choose = move |trust| session.draft_to(|draft| Draft { trust, ..draft });
    let trusts = labelled(Trust::ALL, Trust::label);
    view! { <h2>"How sure"</h2>{choice("How sure", trusts, move || session.draft().trust, on_choose)} }
}

/// What is said of the house's corners: it is weighed with what the room itself says.
#[component]
fn HouseKeys() -> impl IntoView {
    let session = session();
    let house = move || session.job(House::said_of).unwrap_or_default();
    let on_choose = move |house: House| {
        if let Some(said) = house.as_said() {
            session.record(said.into());
        }
    };
    let ways = labelled([House::Square, House::OutOfSquare], House::label);
    view! { <h2>"Is the house out of square?"</h2>{choice("Is the house out of square?", ways, house, on_choose)} }
}

/// What the layer is that is measured.
#[component]
fn LayerKeys() -> impl IntoView {
    let session = session();
    let on_choose = move |layer| session.draft_to(|draft| Draft { layer, ..draft });
    let kinds = labelled(LayerKind::ALL, LayerKind::label);
    view! { <h2>"Which layer"</h2>{choice("Which layer", kinds, move || session.draft().layer, on_choose)} }
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
    let on_choose = move |run| session.draft_to(|draft| Draft { run, ..draft });
    let runs = labelled(Run::ALL, Run::label);
    choice("Which way the joists run", runs, move || session.draft().run, on_choose)
}

/// The opening that is cut back.
#[component]
fn OpeningKeys() -> impl IntoView {
    let session = session();
    let openings =
        memo(move || session.job(|job| job.now.openings().keys().copied().collect::<Vec<_>>()).unwrap_or_default());
    let on_choose = move |opening| session.draft_to(|draft| Draft { opening, ..draft });
    let keys = live(move || {
        let options = openings.get().into_iter().enumerate();
        let options = options.map(|(at, id)| (Some(id), format!("opening {}", at + 1))).collect();
        choice("Which opening", options, move || session.draft().opening, on_choose)
    });
    view! { <h2>"Which opening"</h2>{keys} }
}

/// The joist whose center is measured.
#[component]
fn JoistKeys() -> impl IntoView {
    let session = session();
    let joists = memo(move || session.job(|job| Some(Floor::of(job)?.joists?.count())).flatten().unwrap_or(0));
    let on_choose = move |joist| session.draft_to(|draft| Draft { joist, ..draft });
    let keys = live(move || {
        let numbers = (1..=joists.get()).filter_map(JoistNumber::new);
        let options = numbers.map(|joist| (joist, format!("joist {}", joist.get()))).collect();
        choice("Which joist", options, move || session.draft().joist, on_choose)
    });
    view! { <h2>"Which joist"</h2>{keys} }
}

#[component]
fn AirTasks() -> impl IntoView {
    let session = session();
    let on_choose = move |task| session.draft_to(|draft| draft.reading_air(task));
    let tasks = labelled(AirTask::ALL, AirTask::label);
    view! { <h2>"What is read"</h2>{choice("What is read", tasks, move || session.draft().air, on_choose)} }
}

/// What is read at the spot: the place keeps it, and the next place begins with it.
#[component]
fn WoodTasks() -> impl IntoView {
    let session = session();
    let solid = |species| Wood { material: Material::Solid, species };
    let made_up = |material| Wood { material, species: None };
    let species = Species::ALL.into_iter().map(|species| (solid(Some(species)), species.label().to_owned()));
    // What is treated bears a stamp of several woods.
    let treated = Species::ALL.into_iter().filter(|species| species.is_group()).map(|species| {
        let wood = Wood { material: Material::Treated, species: Some(species) };
        (wood, format!("treated {}", species.label()))
    });
    let others = [
        (solid(None), "species unknown".to_owned()),
        (made_up(Material::Treated), Material::Treated.label().to_owned()),
        (made_up(Material::Plywood), "plywood".to_owned()),
        (made_up(Material::Osb), "OSB".to_owned()),
    ];
    let references = [Material::Plywood, Material::Osb].map(|material| {
        let words = format!("dry {} elsewhere: holds the others", material.label());
        (AtSpot { wood: made_up(material), reference: true }, words)
    });
    let options: Vec<(Wood, String)> = others.into_iter().chain(species).chain(treated).collect();
    let here = options.into_iter().map(|(wood, words)| (AtSpot { wood, reference: false }, words));
    let options = here.chain(references).collect();
    let on_choose = move |AtSpot { wood, reference }: AtSpot| {
        session.draft_to(
            |draft| {
                if reference { draft.reading_reference(wood.material) } else { draft.reading_wood(wood) }
            },
        );
    };
    let now = memo(move || session.job(|job| AtSpot::of(&session.draft(), job)));
    let chosen = move || now.get().unwrap_or_else(|| AtSpot { wood: session.draft().wood, reference: false });
    view! { <h2>"Wood"</h2>{choice("Wood", options, chosen, on_choose)} }
}
