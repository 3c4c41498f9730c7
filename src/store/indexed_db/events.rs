//! Waiting for the browser's answer, and not for ever.

use futures_channel::oneshot;
use gloo_events::EventListener;
use gloo_timers::callback::Timeout;
use std::cell::Cell;
use std::rc::Rc;
use web_sys::EventTarget;

/// How long the browser may take to open the database, in milliseconds: long for a
/// cold phone, short for somebody who waits for a screen.
pub(super) const OPENING_PATIENCE: u32 = 10_000;

/// How long a transaction may take, in milliseconds. A save takes hundredths of a
/// second; some engines leave a page that was asleep without any answer.
pub(super) const TRANSACTION_PATIENCE: u32 = 30_000;

/// The first of these events to come, by name; `None` if none comes in time.
///
/// It listens from its first poll on, so await it in the turn in which the work was
/// begun. Listeners and timer end with the wait.
pub(super) async fn first_event(target: &EventTarget, events: &[&'static str], patience: u32) -> Option<&'static str> {
    let answer = Answer::default();
    let heard = answer.listen();
    let _listeners = answer.on(target, events);
    let _timer = Timeout::new(patience, move || answer.give(None));
    heard.await.unwrap_or(None)
}

/// The same, however long it takes.
pub(super) async fn first_event_ever(target: &EventTarget, events: &[&'static str]) -> Option<&'static str> {
    let answer = Answer::default();
    let heard = answer.listen();
    let _listeners = answer.on(target, events);
    heard.await.unwrap_or(None)
}

/// Where several callbacks may answer and the first one does.
#[derive(Clone, Default)]
struct Answer(Rc<Cell<Option<oneshot::Sender<Option<&'static str>>>>>);

impl Answer {
    fn listen(&self) -> oneshot::Receiver<Option<&'static str>> {
        let (sender, receiver) = oneshot::channel();
        self.0.set(Some(sender));
        receiver
    }

    fn on(&self, target: &EventTarget, events: &[&'static str]) -> Vec<EventListener> {
        let listener = |event: &&'static str| {
            let (answer, event) = (self.clone(), *event);
            EventListener::once(target, event, move |_| answer.give(Some(event)))
        };
        events.iter().map(listener).collect()
    }

    fn give(&self, event: Option<&'static str>) {
        if let Some(sender) = self.0.take() {
            // Nobody waits any more: then nobody is to be told.
            let _ = sender.send(event);
        }
    }
}
