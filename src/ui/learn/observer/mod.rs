//! Somebody watches a referee: one tap a note, one tap a rally; afterwards the notes go to that referee's phone.

mod notes;
mod watch;

use leptos::prelude::*;

use super::lines;
use super::place::Place;
use crate::session::{use_session, Session};
use crate::shell::{use_shell, Screen};
use crate::widgets::text_field::{named, text_field, FieldOptions, InputKind};
use record::{Observed, TEAM_LETTERS};
use rules::{ByTeam, Team};
use text::learn as words;

pub use notes::notes;
pub use watch::watch;

/// Notes that are open. Copies are the same.
#[derive(Clone, Copy)]
struct Open {
    /// For its clock.
    session: Session,
    observed: RwSignal<Observed>,
    /// Whether the phone kept the last change.
    kept: RwSignal<bool>,
}

impl Open {
    /// The notes of this id; none where they are not here.
    fn of(id: &str) -> Option<Open> {
        Some(Open {
            session: use_session(),
            observed: RwSignal::new(device::settings().notes(id)?),
            kept: RwSignal::new(true),
        })
    }

    /// Changes them: kept first, then shown. What another tab has added meanwhile stays.
    fn change(self, change: impl FnOnce(&mut Observed)) {
        let mut observed = self.observed.get_untracked();
        if self.kept.get_untracked() {
            if let Some(here) = device::settings().notes(&observed.id) {
                observed = here;
            }
        }
        change(&mut observed);
        self.kept.set(device::settings().keep_notes(&observed));
        self.observed.set(observed);
    }

    /// Said where the phone is full.
    fn trouble(self) -> AnyView {
        (move || {
            (!self.kept.get()).then(|| {
                view! {
                    <p class="sentence bad" role="alert">
                        {words::notes_not_kept()}
                    </p>
                }
            })
        })
        .into_any()
    }
}

/// A field for what each team is called.
fn team_fields(names: ByTeam<RwSignal<String>>, changed: Option<Callback<()>>) -> AnyView {
    Team::BOTH
        .map(|team| {
            let most = u8::try_from(TEAM_LETTERS).unwrap_or(u8::MAX);
            text_field(
                &format!("observed-{team}"),
                named(words::team_field(team)),
                InputKind::Words(most),
                names[team],
                FieldOptions {
                    changed,
                    ..FieldOptions::default()
                },
            )
        })
        .into_iter()
        .collect_view()
        .into_any()
}

/// How it goes, the beginning of new notes, and those that are here.
pub fn list() -> AnyView {
    let session = use_session();
    let shell = use_shell();
    let names = ByTeam::new(|_| RwSignal::new(String::new()));
    let begin = move |_| {
        let mut observed = Observed::begin(&device::new_id(), session.time_now());
        for team in Team::BOTH {
            observed.call(team, &names[team].get_untracked());
        }
        // Where the phone keeps nothing the next screen would have nothing to open.
        if device::settings().keep_notes(&observed) {
            shell.go(Screen::Learn {
                place: Place::Watch(observed.id).code(),
            });
        } else {
            shell.news(words::notes_not_kept().to_owned());
        }
    };
    let here = device::settings().all_notes();
    let ways = here.into_iter().map(|observed| {
        let began = device::local_time(observed.began);
        let name = words::notes_of(began, &observed.teams, observed.notes().count());
        let place = Place::Notes(observed.id).code();
        view! {
            <button
                type="button"
                class="button"
                on:click=move |_| shell.go(Screen::Learn { place: place.clone() })
            >
                {name}
            </button>
        }
        .into_any()
    });
    let ways: Vec<AnyView> = ways.collect();
    let kept = (!ways.is_empty()).then(|| {
        view! {
            <section class="stack">
                <h2>{words::observer_here()}</h2>
                <div class="learn-ways">{ways}</div>
            </section>
        }
    });
    view! {
        {lines(words::observer_how().map(str::to_owned).into())}
        <section class="card stack">
            <h2>{words::observer_teams()}</h2>
            {team_fields(names, None)}
            <button type="button" class="button primary" id="observer-begin" on:click=begin>
                {words::observer_begin()}
            </button>
        </section>
        {kept}
    }
    .into_any()
}

/// Where notes of an address are not here.
fn not_here() -> AnyView {
    let shell = use_shell();
    view! {
        <section class="card stack">
            <p>{words::no_such_notes()}</p>
            <button
                type="button"
                class="button primary"
                on:click=move |_| shell.go(Screen::Learn { place: Place::Observer.code() })
            >
                {words::observer()}
            </button>
        </section>
    }
    .into_any()
}
