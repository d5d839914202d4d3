//! The logbook: the matches of the phone's owner, the goals, and what goes to whoever signs it off.

mod goals;
mod one;
mod paper;

use leptos::prelude::*;

use super::place::Place;
use crate::memo::Memo;
use crate::session::use_session;
use crate::shell::{use_shell, Screen, Shell};
use crate::start::Library;
use crate::widgets::dialog::Confirm;
use crate::widgets::give::hand_over;
use app::learner_data::LOGBOOK;
use app::played::Played;
use app::summary::Stage;
use device::ExportFile;
use record::{Day, Logbook, Officiated};
use render::logbook_csv;
use rules::{Duty, Team};
use text::learn as words;

pub use goals::new_goal;
pub use one::one;

/// The open logbook. Copies are the same.
#[derive(Clone, Copy)]
struct Open {
    logbook: RwSignal<Logbook>,
    /// Whether the phone kept the last change.
    kept: RwSignal<bool>,
}

/// Calls `f` whenever another tab has changed the logbook, as long as the screen is there that asks for it.
fn on_logbook_changed(f: impl Fn() + 'static) {
    StoredValue::new_local(device::on_setting_changed(LOGBOOK, f));
}

impl Open {
    fn begin() -> Open {
        let open = Open {
            logbook: RwSignal::new(device::settings().logbook()),
            kept: RwSignal::new(true),
        };
        on_logbook_changed(move || {
            // What the phone did not keep is here alone.
            if open.kept.try_get_untracked() == Some(true) {
                open.logbook.set(device::settings().logbook());
            }
        });
        open
    }

    /// Changes it: kept first, then shown. What another tab has written meanwhile stays.
    fn change<T>(self, change: impl FnOnce(&mut Logbook) -> T) -> T {
        let mut logbook = if self.kept.get_untracked() {
            device::settings().logbook()
        } else {
            self.logbook.get_untracked()
        };
        let changed = change(&mut logbook);
        self.kept.set(device::settings().keep_logbook(&logbook));
        self.logbook.set(logbook);
        changed
    }

    /// Said where the phone is full.
    fn trouble(self) -> AnyView {
        (move || {
            (!self.kept.get()).then(|| {
                view! {
                    <p class="sentence bad" role="alert">
                        {words::logbook_not_kept()}
                    </p>
                }
            })
        })
        .into_any()
    }
}

/// A day as the phone's calendar has it.
fn day_at(ms: i64) -> Day {
    let day = Day::read(&text::day_of(device::local_time(ms)));
    day.unwrap_or_else(Day::first)
}

fn to(shell: Shell, place: &Place) {
    shell.go(Screen::Learn {
        place: place.code(),
    });
}

/// The page.
pub fn page() -> AnyView {
    let open = Open::begin();
    let shell = use_shell();
    let session = use_session();
    let add = move |_| {
        let new = Officiated {
            id: device::new_id(),
            day: day_at(session.time_now()),
            duty: Duty::FirstReferee,
            level: String::new(),
            teams: String::new(),
            minutes: None,
            talk: String::new(),
            next: String::new(),
        };
        begin(open, shell, new);
    };
    let to_try = move || {
        open.logbook.read().to_try().map(|one| {
            view! {
                <section class="card stack to-try">
                    <h2>{words::to_try()}</h2>
                    <p>{one.next.clone()}</p>
                </section>
            }
        })
    };
    let matches = move || {
        let logbook = open.logbook.read();
        if logbook.matches().is_empty() {
            return view! { <p>{words::logbook_empty()}</p> }.into_any();
        }
        let all = logbook.matches().iter().map(|one| {
            let place = Place::Logged(one.id.clone());
            let next = (!one.next.is_empty()).then(|| words::next_time(&one.next));
            view! {
                <button type="button" class="button" on:click=move |_| to(shell, &place)>
                    <strong>{words::logged(one)}</strong>
                    {next.map(|next| view! { <span>{next}</span> })}
                </button>
            }
        });
        let all = all.collect_view();
        view! {
            <p class="tabular">{words::by_duty(&logbook.by_duty())}</p>
            <div class="learn-ways">{all}</div>
        }
        .into_any()
    };
    view! {
        <div class="logbook stack on-screen">
            {to_try}
            {open.trouble()}
            <section class="stack">
                <h2>{words::logged_label()}</h2>
                <button type="button" class="button primary" id="log-match" on:click=add>
                    {words::log_match()}
                </button>
                {matches}
            </section>
            {from_records(open)}
            {goals::goals(open)}
            {shared(open)}
        </div>
        {paper::paper(open)}
    }
    .into_any()
}

/// Writes a match into the logbook and opens it there.
fn begin(open: Open, shell: Shell, new: Officiated) {
    match open.change(|logbook| logbook.begin(new)) {
        None => shell.news(words::logbook_full().to_owned()),
        Some(id) if open.kept.get_untracked() => to(shell, &Place::Logged(id)),
        Some(_) => {}
    }
}

/// Finished matches of this phone that are not in the logbook yet.
fn from_records(open: Open) -> AnyView {
    let shell = use_shell();
    let library = Library::begin();
    let list = move || {
        let logbook = open.logbook.read();
        let all = library.listed().unwrap_or_default();
        let new = all.into_iter().filter(|listed| {
            let summary = &listed.summary;
            summary.stage == Stage::Finished
                && !summary.is_practice
                && logbook.of_id(&listed.id).is_none()
        });
        let ways: Vec<AnyView> = new
            .map(|listed| {
                let place = Place::Logged(listed.id.clone());
                let teams = text::listed_teams(&listed.summary);
                let day = listed
                    .summary
                    .last_at
                    .map(|at| text::day_of(device::local_time(at)));
                view! {
                    <button type="button" class="button" on:click=move |_| to(shell, &place)>
                        <strong>{teams}</strong>
                        {day.map(|day| view! { <span class="tabular">{day}</span> })}
                    </button>
                }
                .into_any()
            })
            .collect();
        (!ways.is_empty()).then(|| {
            view! {
                <section class="stack">
                    <h2>{words::log_from_record()}</h2>
                    <p class="muted">{words::log_from_record_more()}</p>
                    <div class="learn-ways">{ways}</div>
                </section>
            }
        })
    };
    list.into_any()
}

/// What a record says of a match for the logbook.
fn of_record(id: &str, timeline: &game::Timeline) -> Officiated {
    let state = timeline.state();
    let played = Played::of(timeline);
    let heading = state.heading();
    let division = heading.and_then(|h| h.details[game::entry::Detail::Division].clone());
    Officiated {
        id: id.to_owned(),
        day: day_at(played.at.unwrap_or_default()),
        duty: Duty::FirstReferee,
        level: division.unwrap_or_default(),
        teams: Team::BOTH
            .map(|team| text::team_name(state, team))
            .join(", "),
        minutes: played.minutes,
        talk: String::new(),
        next: String::new(),
    }
}

/// Printed, as a table, as a file, and the end of it.
fn shared(open: Open) -> AnyView {
    let session = use_session();
    let asking = RwSignal::new(false);
    let share = move |ending: &'static str, mime: &'static str, bytes: fn(&Logbook) -> String| {
        let content = open.logbook.with_untracked(bytes);
        hand_over(ExportFile {
            name: words::logbook_file(day_at(session.time_now()).as_str(), ending),
            mime: mime.into(),
            bytes: content.into_bytes(),
        });
    };
    let some = Memo::new(move |_| !open.logbook.read().is_empty());
    let forget = Callback::new(move |()| open.change(|logbook| *logbook = Logbook::default()));
    let shown = move || {
        some.get().then(|| {
            view! {
                <section class="stack">
                    <h2>{words::logbook_share()}</h2>
                    <div class="row">
                        // Where a browser cannot print, the file is left.
                        <button type="button" class="button" on:click=move |_| { device::print_page(); }>
                            {words::logbook_print()}
                        </button>
                        <button
                            type="button"
                            class="button"
                            id="logbook-table"
                            on:click=move |_| share("csv", "text/csv", logbook_csv)
                        >
                            {words::logbook_table()}
                        </button>
                        <button
                            type="button"
                            class="button"
                            id="logbook-file"
                            on:click=move |_| share("json", "application/json", Logbook::write)
                        >
                            {words::logbook_file_label()}
                        </button>
                    </div>
                    <button type="button" class="button quiet" on:click=move |_| asking.set(true)>
                        {words::logbook_delete()}
                    </button>
                </section>
            }
        })
    };
    view! {
        {shown}
        <Confirm
            open=asking
            question=Signal::stored(words::logbook_delete_ask().to_owned())
            yes=Signal::stored(words::logbook_delete().to_owned())
            on_yes=forget
        />
    }
    .into_any()
}
