//! Hash routes: they work on any static host, from any folder.

use crate::engine::entry::JobId;
use leptos::prelude::*;

/// What the screen shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Route {
    /// The list of jobs.
    Jobs,
    /// Who logs on this phone, its meter, its units.
    Settings,
    /// One job.
    Job(JobId, Tab),
}

/// A job's places.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tab {
    /// Log.
    Take,
    /// What it means.
    Answers,
    /// Everything entered.
    Log,
    /// Invite, send, open, print.
    HandOver,
    /// Facts, visits, behind the title.
    Facts,
    /// The report, as printed.
    Report,
    /// Sheets laid on the joists.
    Sheets,
    /// Where water comes from, how far it goes, when it is gone.
    Water,
    /// Framing, levels, ground, roof water.
    Under,
    /// What to order.
    Orders,
}

impl Tab {
    /// All.
    const ALL: [Self; 10] = [
        Self::Take,
        Self::Answers,
        Self::Log,
        Self::HandOver,
        Self::Facts,
        Self::Report,
        Self::Sheets,
        Self::Water,
        Self::Under,
        Self::Orders,
    ];

    /// The tabs at the bottom.
    pub const BAR: [Self; 4] = [Self::Take, Self::Answers, Self::Log, Self::HandOver];

    /// The tab's name.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Take => "Take",
            Self::Answers => "Answers",
            Self::Log => "Log",
            Self::HandOver => "Hand over",
            Self::Facts => "Job",
            Self::Report => "Report",
            Self::Sheets => "Sheets",
            Self::Water => "Water",
            Self::Under => "Under the house",
            Self::Orders => "Order list",
        }
    }

    /// What an address and a page's element call it.
    pub const fn slug(self) -> &'static str {
        match self {
            Self::Take => "take",
            Self::Answers => "answers",
            Self::Log => "log",
            Self::HandOver => "hand-over",
            Self::Facts => "facts",
            Self::Report => "report",
            Self::Sheets => "sheets",
            Self::Water => "water",
            Self::Under => "under",
            Self::Orders => "orders",
        }
    }
}

impl Route {
    /// The route of an address' hash; anything unknown is the list of jobs.
    pub fn of(hash: &str) -> Self {
        let mut parts = hash.trim_start_matches(['#', '/']).split('/');
        match (parts.next(), parts.next(), parts.next()) {
            (Some("settings"), ..) => Self::Settings,
            (Some("job"), Some(id), tab) => {
                let tab = Tab::ALL.into_iter().find(|known| Some(known.slug()) == tab).unwrap_or(Tab::Take);
                id.parse().map_or(Self::Jobs, |id| Self::Job(id, tab))
            }
            _ => Self::Jobs,
        }
    }

    /// The hash that leads here.
    pub fn href(self) -> String {
        match self {
            Self::Jobs => "#/".to_owned(),
            Self::Settings => "#/settings".to_owned(),
            Self::Job(id, tab) => format!("#/job/{id}/{}", tab.slug()),
        }
    }

    /// Goes there.
    pub fn go(self) {
        if let Some(window) = web_sys::window() {
            let _ = window.location().set_hash(&self.href());
        }
    }
}

/// The current route, kept up with the address.
pub fn current() -> ReadSignal<Route> {
    let read = || Route::of(&web_sys::window().and_then(|window| window.location().hash().ok()).unwrap_or_default());
    let (route, set_route) = signal(read());
    if let Some(window) = web_sys::window() {
        let listener = gloo_events::EventListener::new(&window, "hashchange", move |_| set_route.set(read()));
        // The route is watched for as long as the page lives.
        listener.forget();
    }
    route
}
