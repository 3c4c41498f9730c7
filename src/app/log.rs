//! Everything entered, newest first: correct, withdraw, settle.

use crate::app::photos::Thumbnail;
use crate::app::platform::clock::now;
use crate::app::session::session;
use crate::app::widgets::{TextField, live, memo, says};
use crate::engine::describe;
use crate::engine::entry::{EntryId, time};
use crate::engine::job::{Act, Book, CLOCKS_APART, Entry, Observation, Record};
use crate::engine::photo::Digest;
use crate::engine::take::{Units, retypable, retyped};
use leptos::prelude::*;

/// The Log screen.
#[component]
pub fn LogScreen() -> impl IntoView {
    let session = session();
    let rows = memo(move || {
        let units = session.prefs.get().units;
        session.book(|book| rows(book, units)).unwrap_or_default()
    });
    view! {
        <main class="page log">
            <header class="page-head">
                <h2>"Log"</h2>
                <button type="button" class="key" on:click=move |_| session.undo()>"undo last"</button>
            </header>
            <Conflicts/>
            <Notices/>
            <p class="refused" role="alert">{says(move || session.refused.get().unwrap_or_default())}</p>
            <ol class="entries" reversed>
                <For each=move || rows.get() key=|row| (row.id, row.stands) children=|row| view! { <EntryRow row/> }/>
            </ol>
        </main>
    }
}

#[derive(Debug, Clone, PartialEq)]
struct Row {
    id: EntryId,
    line: describe::Line,
    who: String,
    /// Nobody has taken it back.
    stands: bool,
    /// The thing it began, as it stands, for correcting.
    thing: Option<Observation>,
}

fn rows(book: &Book, units: Units) -> Vec<Row> {
    let entries: Vec<&Entry> = book.log().records().filter_map(Record::entry).collect();
    let row = |entry: &&Entry| Row {
        id: entry.id,
        line: describe::entry(book.job(), entry, units),
        who: format!("{} · {}", time::minute(entry.stamp.at), entry.stamp.by.initials),
        stands: !book.job().withdrawn.contains(&entry.id),
        thing: standing(book, entry),
    };
    entries.iter().rev().map(row).collect()
}

/// The thing that an entry began, as it stands.
fn standing(book: &Book, entry: &Entry) -> Option<Observation> {
    match &entry.act {
        Act::Record(_) => book.job().now.get(entry.id).map(|thing| thing.value.clone()),
        Act::Correct { .. } | Act::Withdraw { .. } => None,
    }
}

#[component]
fn EntryRow(row: Row) -> impl IntoView {
    let session = session();
    let Row { id, line, who, stands, thing } = row;
    let typed = line.typed.map(|typed| view! { <span class="typed">{format!("typed {typed}")}</span> });
    let change = format!("change: {} {}", line.kind, line.says);
    let picture = thing.as_ref().and_then(photo_of);
    view! {
        <li class="card entry" class:withdrawn=!stands>
            <p><b>{line.kind}</b>" "{line.says}</p>
            <p class="detail">{who}" "{typed}{(!stands).then_some(" · taken back")}</p>
            {picture.map(|sha256| view! { <Thumbnail sha256/> })}
            <details>
                <summary aria-label=change>"change"</summary>
                {thing.map(|value| view! { <Correction thing=id value/> })}
                {stands.then(|| view! {
                    <button type="button" class="key wide" on:click=move |_| session.withdraw(id)>"take back"</button>
                })}
            </details>
        </li>
    }
}

const fn photo_of(value: &Observation) -> Option<Digest> {
    match value {
        Observation::Photo(photo) => Some(photo.sha256),
        _ => None,
    }
}

/// Types the value again, rightly; nothing for things that have no single value.
#[component]
fn Correction(thing: EntryId, value: Observation) -> impl IntoView {
    let session = session();
    retypable(&value).map(|(label, typed)| {
        let on_commit = Callback::new(move |text: String| {
            let units = session.prefs.get_untracked().units;
            let to = untrack(|| session.job(|job| retyped(job, &value, &text, units)));
            let to = to.unwrap_or_else(|| Err("No job is open.".to_owned()))?;
            session.correct(thing, to);
            Ok(())
        });
        view! { <TextField label value=typed on_commit/> }
    })
}

/// What the log holds that does not add up, counted aloud.
#[component]
fn Notices() -> impl IntoView {
    let session = session();
    let notices = memo(move || session.book(notices).unwrap_or_default());
    live(move || notices.get().into_iter().map(|notice| view! { <p class="assumed">{notice}</p> }).collect_view())
}

fn notices(book: &Book) -> Vec<String> {
    let job = book.job();
    let counted = [
        (job.unknown.len(), "that this Duckboard cannot read wholly, carried along untouched"),
        (book.log().clashes().count(), "said twice in different words under one id; both are kept"),
        (job.missing(), "not here: left out of a file, or damaged"),
        (job.faults.len(), "that cannot be followed, kept in the log"),
        (
            job.dated_after(now() + CLOCKS_APART),
            "dated later than it is by this phone: one of two clocks is wrong. Set it right: until then what is said \
             next may not count as said later",
        ),
    ];
    let entries = |count: usize| if count == 1 { "1 entry".to_owned() } else { format!("{count} entries") };
    counted
        .into_iter()
        .filter(|(count, _)| *count > 0)
        .map(|(count, what)| format!("{} {what}.", entries(count)))
        .collect()
}

/// Two corrections of one thing, or one and a withdrawal that did not know of it: somebody picks.
#[component]
fn Conflicts() -> impl IntoView {
    let session = session();
    let conflicts = memo(move || {
        let units = session.prefs.get().units;
        session.book(|book| conflicts(book, units)).unwrap_or_default()
    });
    live(move || {
        conflicts.get().into_iter().map(|(thing, choices)| view! {
            <section class="card conflict" role="alert">
                <h2>"Two corrections of one entry: which is right?"</h2>
                {choices.into_iter().map(|(says, value)| view! {
                    <button type="button" class="key wide" on:click=move |_| session.settle(thing, value.clone())>{says}</button>
                }).collect_view()}
            </section>
        }).collect_view()
    })
}

/// What it would be; nothing for taken back.
type Choice = (String, Option<Observation>);

fn conflicts(book: &Book, units: Units) -> Vec<(EntryId, Vec<Choice>)> {
    let choice = |head: &EntryId| {
        let entry = book.log().get(*head)?.entry()?;
        let value = match &entry.act {
            Act::Record(value) | Act::Correct { to: value, .. } => Some(value.clone()),
            Act::Withdraw { .. } => None,
        };
        let says = value.as_ref().map(|value| describe::observation(book.job(), value, units).says);
        let says = says.unwrap_or_else(|| "taken back".to_owned());
        Some((format!("{says} ({})", entry.stamp.by.initials), value))
    };
    book.job().conflicts.iter().map(|(thing, heads)| (*thing, heads.iter().filter_map(choice).collect())).collect()
}
