//! Hand over: invite a second phone, send the job, open a file, print.

use crate::app::commands::files::{Package, Packing, hand_over};
use crate::app::jobs::OpenFile;
use crate::app::platform::download::{self, Outcome};
use crate::app::route::{Route, Tab};
use crate::app::session::session;
use crate::app::widgets::{choice, live, perhaps};
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

/// The Hand over screen.
#[component]
pub fn HandOverScreen() -> impl IntoView {
    let session = session();
    let report = perhaps(move || session.job_id().map(|id| Route::Job(id, Tab::Report).href()));
    let (emptied, set_emptied) = signal(None::<String>);
    view! {
        <main class="page hand-over">
            <Send/>
            <section class="card">
                <h2>"Second phone"</h2>
                <p>"The invitation file brings the job, all but its photos, to another phone, without a signal."</p>
                <Packer label="Make the invitation" packing=Signal::derive(|| Packing { photos: false, client: true, invitation: true })/>
            </section>
            <section class="card"><h2>"Bring together"</h2><OpenFile/></section>
            <section class="card"><h2>"Report"</h2><a class="key wide" href=report>"Read or print the report"</a></section>
            <section class="card">
                <h2>"Bin"</h2>
                <p>"Photos that were taken back are kept until the bin is emptied."</p>
                <button type="button" class="key wide" on:click=move |_| session.empty_bin(Callback::new(move |message| set_emptied.set(Some(message))))>"Empty the bin"</button>
                {live(move || emptied.get().map(|message| view! { <p role="status">{message}</p> }))}
            </section>
        </main>
    }
}

#[component]
fn Send() -> impl IntoView {
    let (photos, set_photos) = signal(true);
    let (client, set_client) = signal(true);
    let packing = Signal::derive(move || Packing { photos: photos.get(), client: client.get(), invitation: false });
    let with = |what: &str| vec![(true, format!("with {what}")), (false, format!("without {what}"))];
    view! {
        <section class="card">
            <h2>"Job file"</h2>
            {choice("Photos", with("photos"), move || photos.get(), move |with| set_photos.set(with))}
            {choice("Client details", with("client details"), move || client.get(), move |with| set_client.set(with))}
            {live(move || (!client.get()).then(|| view! {
                <p class="assumed">"Title and place are left out. Captions, labels and photos stay as they are: look through them."</p>
            }))}
            <Packer label="Make the job file" packing/>
        </section>
    }
}

/// Two taps: the file is made first, since a share must follow its own tap at once.
#[component]
fn Packer(label: &'static str, packing: Signal<Packing>) -> impl IntoView {
    let session = session();
    let (package, set_package) = signal(None::<Package>);
    let (said, set_said) = signal(None::<String>);
    Effect::new(move |_| {
        packing.track();
        set_package.set(None);
    });
    let ready = Callback::new(move |made: Result<Package, String>| match made {
        Ok(made) => {
            set_said.set(Some(format!("Revision {} is ready.", made.revision)));
            set_package.set(Some(made));
        }
        Err(message) => set_said.set(Some(format!("No file was made: {message}"))),
    });
    let send = move |share: bool| {
        let Some(package) = package.get_untracked() else { return };
        spawn_local(async move {
            set_said.set(Some(match hand_over(&package, share).await {
                Ok(Outcome::Shared) => "Handed to the share sheet. Keep the job until the office has it.".to_owned(),
                Ok(Outcome::Saved) => format!("Saved as {}.json.", package.name),
                Ok(Outcome::Cancelled) => "Not sent.".to_owned(),
                Err(message) => format!("Not sent: {message}"),
            }));
        });
    };
    let shares = download::can_share();
    view! {
        {live(move || if package.with(Option::is_none) {
            view! { <button type="button" class="key save wide" on:click=move |_| session.pack(packing.get_untracked(), ready)>{label}</button> }.into_any()
        } else {
            view! {
                {shares.then(|| view! { <button type="button" class="key save wide" on:click=move |_| send(true)>"Send"</button> })}
                <button type="button" class="key save wide" on:click=move |_| send(false)>"Save the file"</button>
            }.into_any()
        })}
        {live(move || said.get().map(|said| view! { <p role="status">{said}</p> }))}
    }
}
