//! What changes on the screen. Every closure is a type of its own, and the renderer is
//! compiled anew for each type that it is given: some KB to download. Behind a box all
//! of them are one.

use leptos::prelude::*;

/// A view that follows what `view` reads.
pub fn live<V: IntoAny>(mut view: impl FnMut() -> V + Send + 'static) -> Box<dyn FnMut() -> AnyView + Send> {
    Box::new(move || view().into_any())
}

/// Words that follow what `words` read.
pub fn says(words: impl FnMut() -> String + Send + 'static) -> Box<dyn FnMut() -> String + Send> {
    Box::new(words)
}

/// An attribute that is there as long as `value` has one.
pub fn perhaps(value: impl FnMut() -> Option<String> + Send + 'static) -> Box<dyn FnMut() -> Option<String> + Send> {
    Box::new(value)
}

/// What is computed anew when what it reads has changed.
pub fn memo<T: PartialEq + Send + Sync + 'static>(compute: impl Fn() -> T + Send + Sync + 'static) -> Memo<T> {
    let compute: Box<dyn Fn() -> T + Send + Sync> = Box::new(compute);
    Memo::new(move |_| compute())
}
