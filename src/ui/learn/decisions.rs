//! The list of decisions, and a page for each.

use leptos::prelude::*;

use super::board::board;
use super::place::Place;
use super::{lines, ways};
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
        <p>{words::decisions_more()}</p>
        {ways(Topic::ALL.map(one).into())}
    }
    .into_any()
}

/// One of them.
pub fn page(topic: Topic) -> AnyView {
    let look_for = words::look_for(topic).iter();
    let look_for = look_for.map(|line| (*line).to_owned()).collect();
    let boards = topic.situations().iter();
    view! {
        {lines(look_for)}
        {boards.map(|situation| board(*situation)).collect_view()}
    }
    .into_any()
}
