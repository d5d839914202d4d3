//! The jobs of the duty team, and a page of two of them in large print for the table.

use leptos::prelude::*;

use super::place::Place;
use super::{court, lines, signals, ways};
use crate::session::use_session;
use rules::{Preset, Rules};
use text::learn::{self as words, Role};
use text::setup::Phase;

/// The rules of the match that is open, or the international ones.
pub fn rules() -> Rules {
    let session = use_session();
    let open = untrack(|| session.id()).is_some();
    if open {
        *session.state_now().rules()
    } else {
        Preset::International.rules()
    }
}

/// All of them.
pub fn list() -> AnyView {
    let mut to: Vec<_> = Role::ALL
        .map(|role| {
            (
                words::role_name(role),
                words::role_more(role),
                Place::Role(role),
            )
        })
        .into();
    to.push((
        words::for_the_table(),
        words::for_the_table_more(),
        Place::ForTheTable,
    ));
    view! {
        <p>{words::roles_more()}</p>
        {ways(to)}
        <p class="muted">{words::by_which_rules()}</p>
    }
    .into_any()
}

/// One of them.
pub fn one(role: Role) -> AnyView {
    let rules = rules();
    let head = |words| view! { <h2>{words}</h2> }.into_any();
    view! {
        <p>{words::role_more(role)}</p>
        <div class="role">
            {place(role)}
            <div class="stack">
                {role.is_briefed().then(read_aloud)} {parts(role, &rules, head)} {to_know(role)}
            </div>
        </div>
    }
    .into_any()
}

/// Who speaks.
fn read_aloud() -> AnyView {
    view! { <p class="muted">{words::read_aloud()}</p> }.into_any()
}

/// Where somebody is, drawn and said.
fn place(role: Role) -> Option<AnyView> {
    let mark = role.mark()?;
    let said = words::mark_lines(mark).first().copied();
    Some(
        view! {
            <section class="stack role-place">
                <h2>{words::where_it_is()}</h2>
                {court::shown(mark)}
                <p>{said}</p>
            </section>
        }
        .into_any(),
    )
}

/// The signals of it that are needed first.
fn to_know(role: Role) -> Option<AnyView> {
    let (signals, flags) = (role.signals(), role.flags());
    let list = match (signals.is_empty(), flags.is_empty()) {
        (false, _) => signals::list_of(signals),
        (true, false) => signals::list_of_flags(flags),
        (true, true) => return None,
    };
    Some(
        view! {
            <section class="stack signals">
                <h2>{words::first_signals()}</h2>
                {list}
            </section>
        }
        .into_any(),
    )
}

/// What somebody does before, during and after, each part under its heading.
fn parts(role: Role, rules: &Rules, head: fn(&'static str) -> AnyView) -> AnyView {
    let part = |phase: Phase| {
        let all = words::job(role, phase, rules);
        (!all.is_empty()).then(|| {
            view! {
                <section class="stack">
                    {head(words::phase(phase))}
                    {lines(all)}
                </section>
            }
        })
    };
    Phase::ALL.map(part).into_iter().collect_view().into_any()
}

/// Those who sit at the table, in letters that are read from a distance.
pub fn for_the_table() -> AnyView {
    let rules = rules();
    let head = |words| view! { <h3>{words}</h3> }.into_any();
    let of = |role: Role| {
        view! {
            <h2>{words::role_name(role)}</h2>
            {parts(role, &rules, head)}
        }
        .into_any()
    };
    // Where a browser cannot print, the page itself is large enough to be read.
    let button = view! {
        <button type="button" class="button" on:click=move |_| { device::print_page(); }>
            {words::print()}
        </button>
    };
    view! {
        {button}
        {read_aloud()}
        <div class="stack large-print">{Role::AT_THE_TABLE.map(of).into_iter().collect_view()}</div>
    }
    .into_any()
}
