//! A step that is done by looking: what to look at, what was measured, the tap that says it is in
//! order, and the way to say that it is not, which only somebody's word clears.

use leptos::prelude::*;

use super::ball::BallPressure;
use super::briefing::Briefings;
use super::net::NetHeight;
use crate::memo::Memo;
use crate::session::{use_session, Session};
use crate::shell::{use_shell, Screen};
use crate::widgets::text_field::{named, text_field, FieldOptions, InputKind};
use game::entry::Check;
use game::{notices, Kind, Notice};
use rules::Step;
use text::setup as words;

/// The longest note.
const NOTE: InputKind = InputKind::Words(200);

/// What a measure has shown: whether it is in order, and the words for the note.
pub(super) type Found = Option<(bool, String)>;

/// What to look at.
pub(super) fn look_at(step: Step) -> AnyView {
    let lines = words::look_at(step, use_session().state_now().rules());
    view! {
        <ul class="look-at">
            {lines.into_iter().map(|line| view! { <li>{line}</li> }).collect_view()}
        </ul>
    }
    .into_any()
}

/// The page to read on about a step; none where there is none.
fn read_on(step: Step) -> Option<AnyView> {
    let place = match step {
        Step::Floor => "safety/floor",
        Step::Net => "court",
        Step::FirstAid => "safety",
        Step::Briefing => "jobs",
        Step::Captains => "jobs/game_captain",
        Step::Kit
        | Step::Ball
        | Step::TeamLists
        | Step::Toss
        | Step::WarmUp
        | Step::LineUps
        | Step::LastCheck => return None,
    };
    let shell = use_shell();
    let place = place.to_owned();
    let read = move |_| {
        shell.go(Screen::Learn {
            place: place.clone(),
        });
    };
    let view = view! {
        <button type="button" class="button quiet read-on" on:click=read>
            {words::read_on()}
        </button>
    };
    Some(view.into_any())
}

/// Writes down how a step was found; true once it stands in the log.
fn record(session: Session, expected: u32, step: Step, ok: bool, note: &str) -> bool {
    let note = note.trim();
    session.submit_at(
        expected,
        Kind::Check(Check {
            item: step.code().to_owned(),
            ok,
            note: (!note.is_empty()).then(|| note.to_owned()),
        }),
    )
}

/// What to look at, and what is said of it.
#[component]
pub(super) fn CheckCard(
    step: Step,
    /// Called when the step was found in order.
    done: Callback<()>,
) -> impl IntoView {
    let session = use_session();
    let measured = RwSignal::new(Found::None);
    let found = Memo::new(move |_| {
        let state = session.state();
        let found = state.checks().iter().find(|c| c.item == step.code());
        found.cloned()
    });
    let in_order = Callback::new(move |(expected, note): (u32, String)| {
        if record(session, expected, step, true, &note) {
            done.run(());
        }
    });
    let own = match step {
        Step::Ball => view! { <BallPressure measured /> }.into_any(),
        Step::Net => view! { <NetHeight measured /> }.into_any(),
        Step::Briefing => {
            let all = Callback::new(move |expected| in_order.run((expected, String::new())));
            view! { <Briefings all /> }.into_any()
        }
        Step::Captains => view! {
            <p>
                <strong>{words::we_play()}</strong>
                " "
                {move || words::rules_in_short(session.state().rules())}
            </p>
        }
        .into_any(),
        _ => ().into_any(),
    };
    // The briefing is in order once everybody has heard it.
    let with_yes = step != Step::Briefing;
    view! {
        // What is wrong comes before what there is to look at.
        {move || {
            let check = found.get().filter(|check| !check.ok)?;
            Some(view! { <Failed step check in_order /> })
        }}
        {look_at(step)}
        {read_on(step)}
        {own}
        {move || match found.get() {
            Some(check) if !check.ok => ().into_any(),
            found => {
                view! {
                    {found.as_ref().and_then(|c| c.note.as_deref()).map(|note| view! {
                        <p class="mark-ok">{words::cleared_by(note)}</p>
                    })}
                    {move || match measured.get() {
                        Some((ok, words)) => says(session, step, ok, words, in_order),
                        None if with_yes && found.is_none() => {
                            says(session, step, true, String::new(), in_order)
                        }
                        None => ().into_any(),
                    }}
                    <Doubt step />
                }
                .into_any()
            }
        }}
    }
}

/// The tap that says how it was found.
fn says(
    session: Session,
    step: Step,
    ok: bool,
    note: String,
    in_order: Callback<(u32, String)>,
) -> AnyView {
    let expected = session.next();
    let words = words::found(ok, &note);
    let press = move |_| {
        if ok {
            in_order.run((expected, note.clone()));
        } else {
            record(session, expected, step, false, &note);
        }
    };
    view! {
        <button type="button" class="button primary" on:click=press>
            {words}
        </button>
    }
    .into_any()
}

/// The way to say that something is wrong.
#[component]
fn Doubt(step: Step) -> impl IntoView {
    let session = use_session();
    let open = RwSignal::new(false);
    let note = RwSignal::new(String::new());
    view! {
        <button
            type="button"
            class="button quiet"
            aria-expanded=move || open.get().to_string()
            on:click=move |_| open.update(|o| *o = !*o)
        >
            {words::problem()}
        </button>
        {move || open.get().then(|| {
            let expected = session.next();
            let id = format!("wrong-{}", step.code());
            view! {
                {text_field(&id, named(words::what_is_wrong()), NOTE, note, FieldOptions::default())}
                <button
                    type="button"
                    class="button"
                    on:click=move |_| {
                        note.with_untracked(|note| record(session, expected, step, false, note));
                    }
                >
                    {words::record_problem()}
                </button>
            }
        })}
    }
}

/// What was found wrong, and who clears it: for what can hurt somebody it takes a person's word.
#[component]
fn Failed(step: Step, check: Check, in_order: Callback<(u32, String)>) -> impl IntoView {
    let session = use_session();
    let blocks = notices(&session.state_now())
        .iter()
        .any(|n| matches!(n, Notice::DoNotStart { item } if item == step.code()));
    let who = RwSignal::new(String::new());
    let what = RwSignal::new(String::new());
    let nobody = move || blocks && who.with(|w| w.trim().is_empty());
    let clearer = |words: &'static str| {
        view! {
            <button
                type="button"
                class="button"
                aria-pressed=move || who.with(|w| w == words).to_string()
                on:click=move |_| who.set(words.to_owned())
            >
                {words}
            </button>
        }
    };
    let code = step.code();
    view! {
        <div class="sentence bad do-not-start">
            <strong>{if blocks { words::do_not_start() } else { words::not_done() }}</strong>
            {check.note.map(|note| view! { <p>{note}</p> })}
        </div>
        {blocks.then(|| view! {
            <p>{words::not_yours_alone()}</p>
            {text_field(
                &format!("who-{code}"),
                named(words::who_clears_it()),
                InputKind::Words(60),
                who,
                FieldOptions::default(),
            )}
            <div class="row">{words::clearers().map(clearer)}</div>
        })}
        {text_field(
            &format!("cleared-{code}"),
            named(words::what_was_done()),
            NOTE,
            what,
            FieldOptions::default(),
        )}
        {move || nobody().then(|| view! { <p class="why-not">{words::cleared_needs()}</p> })}
        {move || {
            let expected = session.next();
            let clear = move |_| {
                let note = words::cleared(&who.get_untracked(), &what.get_untracked());
                in_order.run((expected, note));
            };
            view! {
                <button type="button" class="button primary" disabled=nobody on:click=clear>
                    {words::cleared_label()}
                </button>
            }
        }}
    }
}
