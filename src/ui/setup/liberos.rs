//! A libero who goes in before the first service of a set (19.3.2.1): what is legal, offered.

use leptos::prelude::*;

use crate::memo::Memo;
use crate::session::use_session;
use crate::widgets::team_mark::TeamMark;
use game::entry::Change;
use game::{libero_replacements, Kind};
use rules::Team;
use text::setup as words;
use text::team_name;

/// The replacements that are legal now, by team; nothing where there are none.
#[component]
pub(super) fn LiberosNow() -> impl IntoView {
    let session = use_session();
    let offered = Memo::new(move |_| {
        let state = session.state();
        if state.ready().is_none() {
            return Vec::new();
        }
        let of_team = |team| {
            let ways = libero_replacements(&state, team).into_iter();
            ways.map(move |change| (team, change))
        };
        Team::BOTH.into_iter().flat_map(of_team).collect::<Vec<_>>()
    });
    let one = move |team: Team, change: Change| {
        let Change { out, into } = change;
        let expected = session.next();
        view! {
            <button
                type="button"
                class="chip tabular"
                aria-label=words::libero_for_of(into, out, &team_name(&session.state(), team))
                on:click=move |_| {
                    session.submit_at(expected, Kind::LiberoReplacement { team, change });
                }
            >
                {words::libero_for(into, out)}
            </button>
        }
    };
    let of_team = move |team: Team| {
        let own: Vec<Change> = offered.with(|all| {
            let own = all.iter().filter(|(t, _)| *t == team);
            own.map(|(_, change)| *change).collect()
        });
        (!own.is_empty()).then(|| {
            view! {
                <div class="row">
                    <TeamMark team />
                    {own.into_iter().map(|change| one(team, change)).collect_view()}
                </div>
            }
        })
    };
    move || {
        (!offered.with(Vec::is_empty)).then(|| {
            view! {
                <section class="stack">
                    <h4>{words::liberos_now()}</h4>
                    {Team::BOTH.map(of_team).collect_view()}
                </section>
            }
        })
    }
}
