//! Where somebody can be hurt: a short page for each, for qualified people and local rules to decide.

use leptos::prelude::*;

use super::lines;
use super::place::Place;
use super::roles::rules;
use super::ways;
use text::learn::{self as words, Care};

/// All of them.
pub fn list() -> AnyView {
    let to = Care::ALL.map(|care| (words::care_name(care), "", Place::Care(care)));
    view! {
        <p>{words::care_more()}</p>
        <p class="sentence warn">{text::care_not_replaced()}</p>
        {ways(to.into())}
    }
    .into_any()
}

/// One of them.
pub fn one(care: Care) -> AnyView {
    view! { <div class="stack care-page">{lines(words::care_lines(care, &rules()))}</div> }
        .into_any()
}
