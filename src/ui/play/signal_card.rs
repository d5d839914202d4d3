//! The signals that announce a reason, in their order (Official Volleyball Rules 2025-2028, 22.2.3):
//! who whistled shows, after the whistle, the side to serve, the fault and the player if that is
//! needed; the second referee shows the fault first and follows the first referee with the side to
//! serve. Seen as in a mirror: the arm on the side of the half that it concerns.

use leptos::prelude::*;

use super::court::use_court;
use super::reasons::RallyContext;
use crate::memo::Memo;
use crate::session::{use_session, Session};
use crate::shell::{use_shell, Screen};
use crate::widgets::deferred::defer_render;
use crate::widgets::picker::{asked, buttons, fixed, Choice, Layout};
use crate::widgets::signal_figure::SignalFigure;
use game::entry::{By, SeenBy};
use game::Kind;
use rules::{Cause, Shirt, Signal, Team};

/// One signal as a step: what it is, and for which side.
#[component]
pub fn SignalStep(
    /// Its place in the order, where there are several.
    #[prop(optional)]
    n: Option<usize>,
    /// Which.
    signal: Signal,
    /// The side it concerns.
    concerned: Team,
    /// The side on the left of the screen.
    left: Team,
    /// What it says.
    words: String,
) -> impl IntoView {
    view! {
        <li class="signal-step">
            {n
                .map(|n| {
                    view! {
                        <span class="signal-n" aria-hidden="true">
                            {n}
                        </span>
                    }
                })}
            <SignalFigure signal mirrored=concerned != left moves=true />
            <span class="signal-words">
                <strong>{text::arm(signal.arm(concerned, left))}</strong>
                <span>{words}</span>
            </span>
        </li>
    }
}

/// The card.
#[component]
pub fn SignalCard(
    /// The rally.
    talked: Memo<Option<RallyContext>>,
    /// Why it ended.
    cause: Cause,
    /// The rally whose reasons are open once more.
    again: RwSignal<Option<u32>>,
) -> impl IntoView {
    let session = use_session();
    let shell = use_shell();
    let court = use_court();
    let Some(RallyContext {
        entry,
        won_by: winner,
        ..
    }) = talked.get_untracked()
    else {
        return ().into_any();
    };
    let seen = Memo::new(move |_| (court.team_at(true), court.is_turned()));
    let number = Memo::new(move |_| talked.get()?.said?.by?.number);
    let steps = move || {
        let (left, second_referee) = seen.get();
        let name = text::team_name(&session.state_now(), winner);
        let serve = (Signal::TeamToServe, winner, text::to_serve(&name));
        let fault = cause.signal();
        let fault = fault.map(|s| (s, winner.other(), text::signal_with_number(s)));
        let number = number.get();
        // The number belongs to the fault.
        let number_at = if second_referee { 3 } else { 4 };
        let mut signals: Vec<_> = [Some(serve), fault].into_iter().flatten().collect();
        if second_referee {
            signals.reverse();
        }
        let mut n = 1;
        let mut steps = vec![whistle()];
        for (signal, concerned, words) in signals {
            n += 1;
            if number.is_some() && n == number_at {
                n += 1;
            }
            steps.push(view! { <SignalStep n signal concerned left words /> }.into_any());
        }
        if let Some(number) = number {
            let at = (number_at - 1).min(steps.len());
            steps.insert(at, show_number(at + 1, number));
        }
        steps
    };
    view! {
        <section class="signal-card" aria-label=text::signal_label()>
            <ol class="signal-steps">{steps}</ol>
            {which_libero_fault(talked, cause)}
            <div class="row">
                <span class="chosen">{text::cause(cause, session.state_now().rules())}</span>
                <button type="button" class="button small" on:click=move |_| again.set(Some(entry))>
                    {text::other_reason()}
                </button>
                <button
                    type="button"
                    class="button small"
                    id="decide"
                    on:click=move |_| shell.go(Screen::decision(cause))
                >
                    {text::how_to_decide()}
                </button>
            </div>
            {defer_render(move || {
                view! {
                    {who_did(talked, cause, number)}
                    {who_saw(talked, cause)}
                }
                    .into_any()
            })}
        </section>
    }
    .into_any()
}

/// The signal of what happened last, where that was no rally.
pub fn announced() -> AnyView {
    let session = use_session();
    let court = use_court();
    let last = Memo::new(move |_| {
        let (signal, team) = session.with_timeline(|r| r.state().signal_of(r.last_standing()?))?;
        Some((signal, team, court.team_at(true)))
    });
    let shown = move || {
        let (signal, team, left) = last.get()?;
        let concerned = team.unwrap_or(left);
        let words = text::signal_with_number(signal);
        Some(view! {
            <ol class="signal-steps" id="announced" aria-label=text::signal_label()>
                <SignalStep signal concerned left words />
            </ol>
        })
    };
    view! { {shown} }.into_any()
}

/// What is shown when a set is over: its end, and the change of courts where there is one.
pub fn end_of_set() -> AnyView {
    let session = use_session();
    let court = use_court();
    let changes = Memo::new(move |_| {
        let state = session.state();
        let before = state.sets().last().and_then(|set| set.play.as_ref());
        let coming = state.left_to_come();
        coming.is_some() && before.map(|play| play.left) != coming
    });
    let left = untrack(|| court.team_at(true));
    let step = move |signal| {
        let words = text::signal_with_number(signal);
        view! { <SignalStep signal concerned=left left words /> }
    };
    view! {
        <ol class="signal-steps" aria-label=text::signal_label()>
            {step(Signal::EndOfSet)}
            {move || changes.get().then(|| step(Signal::ChangeOfCourts))}
        </ol>
    }
    .into_any()
}

fn whistle() -> AnyView {
    view! {
        <li class="signal-step narrow">
            <span class="signal-n" aria-hidden="true">
                "1"
            </span>
            <svg viewBox="0 0 48 40" class="whistle" aria-hidden="true">
                <path d="M4 14H28L30 8H38L36 16A11 11 0 1 1 18 22H4Z" />
                <path d="M42 6L46 2M44 12H48" />
                <circle cx="27" cy="23" r="3" />
            </svg>
            <span class="signal-words">
                <strong>{text::whistle_step()}</strong>
            </span>
        </li>
    }
    .into_any()
}

fn show_number(n: usize, number: Shirt) -> AnyView {
    view! {
        <li class="signal-step narrow">
            <span class="signal-n" aria-hidden="true">
                {n}
            </span>
            <span class="signal-number tabular" aria-hidden="true">
                {number.to_string()}
            </span>
            <span class="signal-words">
                <strong>{text::number(number)}</strong>
            </span>
        </li>
    }
    .into_any()
}

/// Says the same reason with a number, or with somebody else who saw it.
fn say_again(
    session: Session,
    talked: RallyContext,
    cause: Cause,
    by: Option<By>,
    seen_by: Option<SeenBy>,
) {
    session.submit(Kind::Explain {
        entry: talked.entry,
        cause,
        by,
        seen_by,
    });
}

/// Who can have done it: whoever is on court, for a rally before the last one anybody of the list.
fn who_can(session: Session, entry: u32, team: Team) -> Vec<Shirt> {
    session.with_timeline(|replay| {
        let state = replay.state();
        let last = replay.last_rally().is_some_and(|e| e.n == entry);
        let mut numbers: Vec<Shirt> = match state.correctable() {
            Some(set) if last => set.sides[team].on_court().collect(),
            _ => state.team(team).listed().collect(),
        };
        numbers.sort_unstable();
        numbers
    })
}

/// A fault of the libero has one of two signals: which, is asked where the signal is shown.
fn which_libero_fault(talked: Memo<Option<RallyContext>>, cause: Cause) -> Option<AnyView> {
    (cause == Cause::LiberoFault).then(|| {
        let session = use_session();
        let kinds = Cause::libero_kinds();
        let words = fixed(kinds.map(text::libero_did));
        let chosen = Callback::new(move |i: usize| kinds[i] == cause);
        let tap = Callback::new(move |i: usize| {
            if let Some(talked) = talked.get_untracked() {
                let (by, seen_by) = talked.said.map_or((None, None), |s| (s.by, s.seen_by));
                say_again(session, talked, kinds[i], by, seen_by);
            }
        });
        asked(
            text::libero_which(),
            buttons(Layout::Grid, words, Some(chosen), tap),
        )
    })
}

/// The number to the reason, free to skip.
fn who_did(
    talked: Memo<Option<RallyContext>>,
    cause: Cause,
    number: Memo<Option<Shirt>>,
) -> AnyView {
    let session = use_session();
    let numbers = Memo::new(move |_| {
        let talked = talked.get();
        talked.map_or_else(Vec::new, |t| {
            let team = cause.told_of(t.won_by);
            let mut numbers = who_can(session, t.entry, team);
            if cause == Cause::OutsideCourt && t.server_lost {
                // The server alone may stand outside the court (7.4); a side that lost its service has
                // not rotated since.
                let state = session.state_now();
                let play = state.correctable();
                let server = play.and_then(|play| play.sides[team].on_court().next());
                numbers.retain(|number| Some(*number) != server);
            }
            numbers
        })
    });
    let choices = leptos::prelude::Signal::derive(move || {
        let one = |number| Choice::number(number, text::did_it(number));
        numbers.get().into_iter().map(one).collect()
    });
    let chosen = Callback::new(move |i: usize| number.get() == numbers.read().get(i).copied());
    let tap = Callback::new(move |i: usize| {
        let shirt = numbers.with_untracked(|numbers| numbers.get(i).copied());
        let Some(talked) = talked.get_untracked() else {
            return;
        };
        // The same number once more takes it out again.
        let new = shirt.filter(|shirt| number.get_untracked() != Some(*shirt));
        let by = new.map(|number| By {
            team: cause.told_of(talked.won_by),
            number: Some(number),
        });
        let seen_by = talked.said.and_then(|said| said.seen_by);
        say_again(session, talked, cause, by, seen_by);
    });
    let shown = move || {
        let any = !numbers.read().is_empty();
        any.then(|| {
            asked(
                text::who_did(),
                buttons(Layout::Numbers, choices, Some(chosen), tap),
            )
        })
    };
    view! { {shown} }.into_any()
}

/// Who showed it to the first referee, free to skip.
fn who_saw(talked: Memo<Option<RallyContext>>, cause: Cause) -> AnyView {
    let session = use_session();
    let saw = move || talked.get()?.said?.seen_by;
    let chosen = Callback::new(move |i: usize| saw() == Some(SeenBy::ALL[i]));
    let tap = Callback::new(move |i: usize| {
        let Some(talked) = talked.get_untracked() else {
            return;
        };
        let new = Some(SeenBy::ALL[i]).filter(|new| untrack(saw) != Some(*new));
        let by = talked.said.and_then(|said| said.by);
        say_again(session, talked, cause, by, new);
    });
    let words = fixed(SeenBy::ALL.map(text::seen_by));
    asked(
        text::who_saw(),
        buttons(Layout::Grid, words, Some(chosen), tap),
    )
}
