//! The second and the third beat: who serves next, and why.

use learn::End;
use leptos::prelude::*;
use rules::{Cause, Group, Preset};

use super::rally::Deciding;
use crate::widgets::picker::{buttons, fixed, Layout};
use text::learn as words;

/// Who serves next: two arms, and neither.
pub fn side(deciding: Deciding) -> AnyView {
    let arm = move |end: End, class: &'static str| {
        view! {
            <button type="button" class=class on:click=move |_| deciding.shows_side(end)>
                {words::arm_of(end)}
            </button>
        }
        .into_any()
    };
    view! {
        <h2 id="beat" tabindex="-1">{words::who_serves()}</h2>
        <div class="trainer-arms">
            {arm(End::Left, "button arm team-a")} {arm(End::Right, "button arm team-b")}
        </div>
        <button type="button" class="button" on:click=move |_| deciding.plays_again()>
            {words::play_again()}
        </button>
    }
    .into_any()
}

/// Why: the same reasons as in a match, in their groups.
pub fn why(deciding: Deciding) -> AnyView {
    let rules = Preset::International.rules();
    let of_group = |group: Group| {
        let causes: Vec<Cause> = Cause::ALL
            .into_iter()
            .filter(|cause| cause.group() == Some(group))
            .collect();
        let names = fixed(causes.iter().map(|cause| text::cause(*cause, &rules)));
        let tap = Callback::new(move |i: usize| {
            if let Some(cause) = causes.get(i) {
                deciding.says(*cause);
            }
        });
        view! {
            <section class="trainer-group" aria-label=text::group(group)>
                <h3>{text::group(group)}</h3>
                {buttons(Layout::Grid, names, None, tap)}
            </section>
        }
        .into_any()
    };
    view! {
        <h2 id="beat" tabindex="-1">{words::why_label()}</h2>
        <div class="trainer-why">{Group::ALL.map(of_group).into_iter().collect_view()}</div>
    }
    .into_any()
}
