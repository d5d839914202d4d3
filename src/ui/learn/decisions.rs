//! The list of decisions, and a page for each.

use leptos::prelude::*;

use super::board::board;
use super::place::Place;
use super::ways;
use learn::Topic;
use text::learn as words;

/// All of them.
pub fn list() -> AnyView {
    let one = |topic: Topic| {
        (
            words::topic(topic),
            words::topic_more(topic),
            Place::Decision(topic),
        )
    };
    view! {
        <p>{words::DECISIONS_MORE}</p>
        {ways(Topic::ALL.map(one).into())}
    }
    .into_any()
}

/// One of them.
pub fn page(topic: Topic) -> AnyView {
    let lines = words::look_for(topic).iter();
    let lines = lines.map(|line| view! { <li>{*line}</li> }).collect_view();
    let boards = topic.situations().iter();
    view! {
        <ul class="lines">{lines}</ul>
        {boards.map(|situation| board(*situation)).collect_view()}
    }
    .into_any()
}
