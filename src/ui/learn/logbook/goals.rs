//! What there is to reach: how far it is, a new goal, goals of a file.

use leptos::prelude::*;

use super::{day_at, to, Open};
use crate::learn::place::Place;
use crate::learn::OneGoes;
use crate::session::use_session;
use crate::shell::{use_shell, Screen};
use crate::widgets::picker::{asked, buttons, fixed, Layout};
use crate::widgets::text_field::{named, text_field, FieldOptions, InputKind};
use app::learner_data::LearnerImport;
use app::ports::PickedFile;
use record::{Day, Goal, GoalKind, Handed, Logbook, MAX_BYTES, MAX_LOGGED, SHORT_LETTERS};
use rules::Duty;
use text::learn as words;

/// All of them, with the ways to more.
pub(super) fn goals(open: Open) -> AnyView {
    let shell = use_shell();
    let going = OneGoes::new();
    let list = move || {
        let logbook = open.logbook.read();
        if logbook.goals().is_empty() {
            return view! { <p>{words::no_goals()}</p> }.into_any();
        }
        let all = logbook.goals().iter().enumerate();
        let all = all.map(|(place, goal)| one(open, going, &logbook, place, goal));
        view! { <ul class="goals">{all.collect_view()}</ul> }.into_any()
    };
    view! {
        <section class="stack">
            <h2>{words::goals()}</h2>
            {list}
            <div class="row">
                <button
                    type="button"
                    class="button"
                    id="set-goal"
                    on:click=move |_| to(shell, &Place::NewGoal)
                >
                    {words::set_goal()}
                </button>
                {of_a_file(open)}
            </div>
            {going.question(
                words::goal_drop_ask(),
                words::goal_drop(),
                Callback::new(move |place| open.change(|logbook| logbook.drop_goal(place))),
            )}
        </section>
    }
    .into_any()
}

fn one(open: Open, going: OneGoes, logbook: &Logbook, place: usize, goal: &Goal) -> AnyView {
    let session = use_session();
    let far = logbook.progress(goal);
    let tick = match &goal.kind {
        GoalKind::Matches { .. } => None,
        GoalKind::Task { done, .. } => {
            let done = done.is_some();
            let tap = move |_| {
                let on = (!done).then(|| day_at(session.time_now()));
                open.change(|logbook| logbook.tick(place, on));
            };
            Some(view! {
                <button type="button" class="button" aria-pressed=done.to_string() on:click=tap>
                    {words::goal_done()}
                </button>
            })
        }
    };
    let bar = matches!(goal.kind, GoalKind::Matches { .. }).then(|| {
        view! {
            <progress max=far.of.to_string() value=far.done.to_string() aria-hidden="true"></progress>
        }
    });
    let name = words::goal(goal);
    let label = format!("{}: {name}", words::goal_drop());
    view! {
        <li class="goal" class:reached=far.is_reached()>
            <p>
                <strong>{name}</strong>
                <span class="tabular">{words::progress(goal, far)}</span>
            </p>
            {bar}
            <div class="row">
                {tick}
                <button
                    type="button"
                    class="button quiet"
                    aria-label=label
                    on:click=move |_| going.ask(place)
                >
                    {words::goal_drop()}
                </button>
            </div>
        </li>
    }
    .into_any()
}

/// Goals that somebody hands over.
fn of_a_file(open: Open) -> AnyView {
    let said = RwSignal::new(None::<(bool, String)>);
    let take = move |event: leptos::ev::Event| {
        let files = device::picked_files(&event);
        device::spawn(async move {
            for file in files {
                let read = file.read(MAX_BYTES as u64).await;
                let words = match read.map(|bytes| record::handed(&bytes)) {
                    Err(trouble) => (true, text::unreadable_file(&file.name(), &trouble)),
                    Ok(Ok(Handed::Text(text))) => came(device::settings().merge_logbook(&text)),
                    Ok(Ok(Handed::Record(_)) | Err(_)) => {
                        (true, words::no_logbook_file().to_owned())
                    }
                };
                // The screen may be gone by now.
                said.try_set(Some(words));
            }
            open.logbook.try_set(device::settings().logbook());
        });
    };
    view! {
        <label class="button import">
            <span>{words::goal_file()}</span>
            <input
                type="file"
                id="goal-file"
                accept=".json,application/json,text/plain"
                on:change=take
            />
        </label>
        <p
            role="status"
            class="sentence"
            class:bad=move || said.read().as_ref().is_some_and(|said| said.0)
            hidden=move || said.read().is_none()
        >
            {move || said.get().map(|said| said.1)}
        </p>
    }
    .into_any()
}

/// What is said of a file, and whether that is bad news.
fn came(import: LearnerImport) -> (bool, String) {
    match import {
        LearnerImport::Logbook {
            matches,
            goals,
            left_out,
        } => (false, words::goals_came(matches, goals, left_out)),
        LearnerImport::Newer => (true, words::newer_logbook_file().to_owned()),
        LearnerImport::NotKept => (true, words::logbook_not_kept().to_owned()),
        LearnerImport::Foreign | LearnerImport::Notes { .. } => {
            (true, words::no_logbook_file().to_owned())
        }
    }
}

/// The form for a new one.
pub fn new_goal() -> AnyView {
    let open = Open::begin();
    let shell = use_shell();
    let session = use_session();
    let is_task = RwSignal::new(false);
    let duty = RwSignal::new(None::<Duty>);
    let count = RwSignal::new(String::from("3"));
    let task = RwSignal::new(String::new());
    let until = RwSignal::new(String::new());
    let tried = RwSignal::new(false);
    let said = RwSignal::new(None::<&'static str>);
    let number = move || {
        let number = count.read().trim().parse::<u16>().ok();
        number.filter(|number| (1..=MAX_LOGGED).contains(&usize::from(*number)))
    };
    let has_words = move || !task.read().trim().is_empty();
    let wrong = |is_wrong: bool, words: &'static str| is_wrong.then(|| words.to_owned());
    let count_wrong =
        Signal::derive(move || wrong(tried.get() && number().is_none(), words::goal_count_wrong()));
    let task_wrong =
        Signal::derive(move || wrong(tried.get() && !has_words(), words::goal_words_wrong()));
    let save = move |_| {
        tried.set(true);
        let kind = if is_task.get_untracked() {
            let words = task.get_untracked();
            (untrack(has_words)).then_some(GoalKind::Task { words, done: None })
        } else {
            let duty = duty.get_untracked();
            untrack(number).map(|count| GoalKind::Matches { duty, count })
        };
        let Some(kind) = kind else {
            return;
        };
        let counts = matches!(kind, GoalKind::Matches { .. });
        let since = counts.then(|| day_at(session.time_now()));
        let goal = Goal {
            kind,
            since,
            until: Day::read(&until.get_untracked()),
            from: String::new(),
        };
        if !open.change(|logbook| logbook.set_goal(goal)) {
            said.set(Some(words::goal_not_set()));
        } else if open.kept.get_untracked() {
            shell.replace(Screen::Learn {
                place: Place::Logbook.code(),
            });
        }
    };
    let kinds = fixed([words::goal_matches(), words::goal_task()]);
    let is_kind = Callback::new(move |i: usize| is_task.get() == (i == 1));
    let to_kind = Callback::new(move |i: usize| is_task.set(i == 1));
    let duties: Vec<Option<Duty>> = std::iter::once(None).chain(Duty::ALL.map(Some)).collect();
    let names = fixed(
        duties
            .iter()
            .map(|of| of.map_or(words::any_duty(), words::duty)),
    );
    let duties = StoredValue::new(duties);
    let of = move |i: usize| duties.with_value(|all| all.get(i).copied().flatten());
    let is_duty = Callback::new(move |i: usize| duty.get() == of(i));
    let to_duty = Callback::new(move |i: usize| duty.set(of(i)));
    let field = |id: &str, label: &str, takes, value, wrong| {
        text_field(
            id,
            named(label),
            takes,
            value,
            FieldOptions {
                wrong,
                ..FieldOptions::default()
            },
        )
    };
    let letters = u8::try_from(SHORT_LETTERS).unwrap_or(u8::MAX);
    let words_field = InputKind::Words(letters);
    view! {
        <section class="card stack">
            {asked(words::goal_what(), buttons(Layout::Grid, kinds, Some(is_kind), to_kind))}
            <div class="stack" hidden=is_task>
                {asked(words::goal_duty(), buttons(Layout::Grid, names, Some(is_duty), to_duty))}
                {field("goal-count", words::goal_count(), InputKind::Whole, count, Some(count_wrong))}
            </div>
            <div class="stack" hidden=move || !is_task.get()>
                {field("goal-words", words::goal_words(), words_field, task, Some(task_wrong))}
            </div>
            {field("goal-until", words::goal_until(), InputKind::Day, until, None)}
            {open.trouble()}
            {move || said.get().map(|words| view! { <p class="sentence bad" role="alert">{words}</p> })}
            <button type="button" class="button primary" id="goal-save" on:click=save>
                {words::goal_save()}
            </button>
        </section>
    }
    .into_any()
}
