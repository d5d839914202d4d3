//! The court: one tap on the half of the side that serves next stores the rally.

use leptos::prelude::*;

/// The court screen.
#[component]
pub fn Play() -> impl IntoView {}

/// Every entry in words.
#[component]
pub fn LogList() -> impl IntoView {}
