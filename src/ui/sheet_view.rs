//! The sheet of the match.

use leptos::prelude::*;

/// The sheet of the match, to read, print and export.
#[component]
pub fn SheetScreen() -> impl IntoView {}
