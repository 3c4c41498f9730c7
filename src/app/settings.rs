//! Who logs on this phone, the meter in the bag, and how this phone likes things.

use crate::app::jobs::Standing;
use crate::app::platform::prefs::Theme;
use crate::app::route::Route;
use crate::app::session::session;
use crate::app::widgets::{TextField, choice, labelled, memo, says};
use crate::engine::entry::{Label, Logger, Role, Text};
use crate::engine::moisture::{Answer, Meter, Sensing, Species};
use crate::engine::units::decimal::{Scale, parse_moisture_content, parse_temperature};
use crate::engine::units::tape::{InchStep, LengthStyle, ShownUnit};
use crate::engine::units::{MoistureContent, Typed};
use leptos::prelude::*;

/// Asked once per phone.
#[component]
pub fn Introduction() -> impl IntoView {
    view! {
        <main class="page">
            <h1>"Duckboard"</h1>
            <p class="lead">"Who logs on this phone? Every entry carries it. Asked once."</p>
            <WhoLogs/>
        </main>
    }
}

/// Everything about this phone.
#[component]
pub fn Settings() -> impl IntoView {
    view! {
        <main class="page settings">
            <header class="page-head"><h1>"Settings"</h1><a class="chip" href=Route::Jobs.href()>"Jobs"</a></header>
            <section class="card"><h2>"Look and units"</h2><Liking/></section>
            <section class="card"><h2>"Meter"</h2><MeterForm/></section>
            <section class="card"><h2>"Who logs"</h2><WhoLogs/></section>
            <section class="card"><h2>"Storage"</h2><Standing/></section>
        </main>
    }
}

#[component]
fn WhoLogs() -> impl IntoView {
    let session = session();
    let known = session.phone.with_untracked(|phone| phone.logger.clone());
    let (initials, set_initials) = signal(known.as_ref().map(|logger| logger.initials.to_string()).unwrap_or_default());
    let (role, set_role) = signal(known.map_or(Role::CrewLead, |logger| logger.role));
    let (problem, set_problem) = signal(None::<String>);
    let introduce = move || match Text::<8>::new(&initials.get_untracked()) {
        Ok(initials) if initials.is_empty() => {
            set_problem.set(Some("Initials: one to eight letters are needed.".to_owned()));
        }
        Ok(initials) => {
            set_problem.set(None);
            session.introduce(Logger { initials, role: role.get_untracked() });
        }
        Err(problem) => set_problem.set(Some(format!("Initials: {problem}"))),
    };
    view! {
        <form on:submit=move |event| { event.prevent_default(); introduce(); }>
            <label class="field">
                <span>"Initials"</span>
                <input type="text" autocomplete="off" autocapitalize="characters" prop:value=initials
                    on:input=move |event| set_initials.set(event_target_value(&event))/>
            </label>
            {choice("Role", labelled(Role::ALL, Role::label), move || role.get(), move |role| set_role.set(role))}
            <p class="refused" role="alert">{says(move || problem.get().unwrap_or_default())}</p>
            <button type="submit" class="key save wide">"This is me"</button>
        </form>
    }
}

#[component]
fn Liking() -> impl IntoView {
    let session = session();
    let prefs = move || session.prefs.get();
    let lengths = lengths().into_iter().map(|style| (style, style.label())).collect();
    let scales = labelled(Scale::ALL, Scale::label);
    let voices = vec![(false, "silent".to_owned()), (true, "read aloud".to_owned())];
    view! {
        {choice("Theme", labelled(Theme::ALL, Theme::label), move || prefs().theme, move |theme| session.prefer(|prefs| prefs.theme = theme))}
        {choice("Lengths", lengths, move || prefs().units.length, move |length| session.prefer(|prefs| prefs.units.length = length))}
        {choice("Temperatures", scales, move || prefs().units.scale, move |scale| session.prefer(|prefs| prefs.units.scale = scale))}
        {choice("Saved values", voices, move || prefs().aloud, move |aloud| session.prefer(|prefs| prefs.aloud = aloud))}
    }
}

/// The styles worth offering: every one would be a wall of keys.
fn lengths() -> Vec<LengthStyle> {
    let metric = |unit| LengthStyle { unit, ..LengthStyle::default() };
    vec![
        LengthStyle::feet_inches(InchStep::Eighth),
        LengthStyle::feet_inches(InchStep::Sixteenth),
        LengthStyle::feet_inches(InchStep::ThirtySecond),
        LengthStyle::inches(InchStep::Sixteenth),
        metric(ShownUnit::Millimetres),
        metric(ShownUnit::Metres),
    ]
}

/// The meter, as its manual describes it.
#[component]
fn MeterForm() -> impl IntoView {
    let session = session();
    let blank = Meter {
        label: Label::fitted("Meter"),
        sensing: Sensing::Pin,
        scale: None,
        reference: None,
        corrects_temperature: Answer::Unknown,
        corrects_species: Answer::Unknown,
        minimum: None,
        maximum: None,
    };
    let now = memo(move || session.phone.with(|phone| phone.meter.clone()));
    let meter = Signal::derive(move || now.get().unwrap_or_else(|| blank.clone()));
    let change = move |edit: &dyn Fn(&mut Meter)| {
        let mut changed = meter.get_untracked();
        edit(&mut changed);
        session.describe_meter(changed);
    };
    let before = meter.get_untracked();
    let answers = || labelled(Answer::ALL, Answer::label);
    let sensings = labelled(Sensing::ALL, Sensing::label);
    let known = Species::ALL.into_iter().filter(|species| *species != Species::Unknown).map(Some);
    let scales = labelled(std::iter::once(None).chain(known), |scale| scale.map_or("not known", Species::label));
    let on_label = Callback::new(move |text: String| {
        let label = Label::new(&text).map_err(|problem| format!("Meter label: {problem}"))?;
        change(&|meter| meter.label = label.clone());
        Ok(())
    });
    let on_reference = Callback::new(move |text: String| {
        let scale = session.prefs.get_untracked().units.scale;
        let reference = optional(&text, |text| parse_temperature(text, scale))
            .map_err(|problem| format!("Reference temperature: {problem}"))?;
        change(&|meter| meter.reference = reference.clone());
        Ok(())
    });
    let on_maximum = Callback::new(move |text: String| {
        let maximum = optional(&text, parse_moisture_content).map_err(|problem| format!("Maximum: {problem}"))?;
        below(meter.get_untracked().minimum.as_ref(), maximum.as_ref())?;
        change(&|meter| meter.maximum = maximum.clone());
        Ok(())
    });
    let on_minimum = Callback::new(move |text: String| {
        let minimum = optional(&text, parse_moisture_content).map_err(|problem| format!("Minimum: {problem}"))?;
        below(minimum.as_ref(), meter.get_untracked().maximum.as_ref())?;
        change(&|meter| meter.minimum = minimum.clone());
        Ok(())
    });
    view! {
        <p class="detail">{says(move || if now.get().is_none() { "No meter described yet: readings are kept as shown." } else { "Readings carry this meter." }.to_owned())}</p>
        <TextField label="Id or label" value=before.label.to_string() on_commit=on_label/>
        <h3>"Senses with"</h3>
        {choice("Senses with", sensings, move || meter.get().sensing, move |sensing| change(&|meter| meter.sensing = sensing))}
        <h3>"Scale is for"</h3>
        {choice("Scale is for", scales, move || meter.get().scale, move |scale| change(&|meter| meter.scale = scale))}
        <h3>"Corrects temperature itself"</h3>
        {choice("Corrects temperature itself", answers(), move || meter.get().corrects_temperature, move |answer| change(&|meter| meter.corrects_temperature = answer))}
        <h3>"Corrects species itself"</h3>
        {choice("Corrects species itself", answers(), move || meter.get().corrects_species, move |answer| change(&|meter| meter.corrects_species = answer))}
        <TextField label="Reference temperature" value=before.reference.map(|typed| typed.typed).unwrap_or_default() on_commit=on_reference/>
        <TextField label="Least that it shows, %" value=before.minimum.map(|typed| typed.typed).unwrap_or_default() on_commit=on_minimum/>
        <TextField label="Most that it shows, %" value=before.maximum.map(|typed| typed.typed).unwrap_or_default() on_commit=on_maximum/>
    }
}

/// A scale begins below its end.
fn below(minimum: Option<&Typed<MoistureContent>>, maximum: Option<&Typed<MoistureContent>>) -> Result<(), String> {
    match (minimum, maximum) {
        (Some(least), Some(most)) if least.value >= most.value => {
            Err(format!("Least and most that it shows: {} is not less than {}", least.typed, most.typed))
        }
        _ => Ok(()),
    }
}

/// Nothing, or what the text says.
fn optional<T, E>(text: &str, parse: impl FnOnce(&str) -> Result<T, E>) -> Result<Option<T>, E> {
    if text.trim().is_empty() { Ok(None) } else { parse(text).map(Some) }
}
