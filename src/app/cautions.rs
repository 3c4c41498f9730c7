//! Cautions: where and when they matter, until somebody has read them.

use leptos::prelude::*;

/// The cautions that are due.
#[component]
pub fn Cautions() -> impl IntoView {}

/// Every caution that the job calls for.
#[component]
pub fn CautionList() -> impl IntoView {}
