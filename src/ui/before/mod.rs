//! Before the match: new match, plan, lists, toss, warm-up, line-ups, last check.

use leptos::prelude::*;

/// Opens a new match.
#[component]
pub fn NewMatch() -> impl IntoView {}

/// What has to be done before the first whistle.
#[component]
pub fn Before() -> impl IntoView {}

/// What has to be done between two sets.
#[component]
pub fn BetweenSets() -> impl IntoView {}
