//! The signal that announces a reason: the side to serve first, then the nature of the fault
//! (Official Volleyball Rules 2025-2028, 22.2.3.1; which arm: 30.1).

use leptos::prelude::*;

use super::court::stand_left;
use super::reasons::Talked;
use crate::game::entry::By;
use crate::game::Kind;
use crate::rules::{Arm, Cause, Shirt, Signal};
use crate::ui::session::use_session;
use crate::ui::text;

/// The steps of the signal.
#[component]
pub fn SignalCard(
    /// The rally.
    talked: Talked,
    /// Why it ended.
    cause: Cause,
    /// Opens the reasons again.
    again: RwSignal<bool>,
) -> impl IntoView {
    let state = use_session().state_now();
    let left = stand_left(&state);
    let winner = talked.won_by;
    let serve = Signal::TeamToServe.arm(winner, left);
    let fault = cause
        .signal()
        .map(|signal| (signal, signal.arm(winner.other(), left)));
    view! {
        <section class="signal-card" aria-label=text::SIGNAL>
            <ol class="signal-steps">
                <li>
                    <span class="signal-n" aria-hidden="true">
                        "1"
                    </span>
                    <ArmDrawing arm=serve />
                    <span>
                        <strong>{text::arm(serve)}</strong>
                        <span class="muted">
                            {text::to_serve(&text::team_name(&state, winner))}
                        </span>
                    </span>
                </li>
                {fault
                    .map(|(signal, arm)| {
                        view! {
                            <li>
                                <span class="signal-n" aria-hidden="true">
                                    "2"
                                </span>
                                <ArmDrawing arm />
                                <span>
                                    <strong>{text::arm(arm)}</strong>
                                    <span class="muted">
                                        {text::signal_with_number(signal)}
                                    </span>
                                </span>
                            </li>
                        }
                    })}
            </ol>
            <div class="row">
                <span class="chosen">{text::cause(cause)}</span>
                <button type="button" class="button small" on:click=move |_| again.set(true)>
                    {text::OTHER_REASON}
                </button>
            </div>
            <WhoDid talked cause />
        </section>
    }
}

/// The number to the reason, free to skip. Asked of the side that a referee would point at: where the
/// ball was simply in, the one that won the rally, else the one at fault.
#[component]
fn WhoDid(talked: Talked, cause: Cause) -> impl IntoView {
    let session = use_session();
    let team = match cause {
        Cause::BallIn | Cause::ServiceWinner => talked.won_by,
        _ => talked.won_by.other(),
    };
    let numbers = Memo::new(move |_| {
        let state = session.state();
        let mut numbers: Vec<Shirt> = state
            .play()
            .map(|play| play.sides[team].on_court().collect())
            .unwrap_or_default();
        numbers.sort_unstable();
        numbers
    });
    let said = talked.said.and_then(|said| said.by?.number);
    let choose = move |number: Shirt| {
        // The same number once more takes it out again.
        let number = (said != Some(number)).then_some(number);
        session.tell(Kind::Explain {
            entry: talked.entry,
            cause,
            by: number.map(|number| By {
                team,
                number: Some(number),
            }),
        });
    };
    view! {
        <Show when=move || !numbers.read().is_empty()>
            <fieldset class="asked who-did">
                <legend>{text::WHO_DID}</legend>
                <div class="numbers">
                    {move || {
                        numbers
                            .get()
                            .into_iter()
                            .map(|number| {
                                view! {
                                    <button
                                        type="button"
                                        class="button number tabular"
                                        aria-label=text::did_it(number)
                                        aria-pressed=(said == Some(number)).to_string()
                                        on:click=move |_| choose(number)
                                    >
                                        {number.to_string()}
                                    </button>
                                }
                            })
                            .collect_view()
                    }}
                </div>
            </fieldset>
        </Show>
    }
}

/// The first referee from behind, with the arm that moves.
#[component]
fn ArmDrawing(arm: Arm) -> impl IntoView {
    let left = matches!(arm, Arm::Left | Arm::Both);
    let right = matches!(arm, Arm::Right | Arm::Both);
    view! {
        <svg viewBox="0 0 48 40" class="arms" aria-hidden="true">
            <circle cx="24" cy="9" r="5" />
            <path d="M24 14 V30 M18 38 L24 30 L30 38" />
            <path class:moves=left d=if left { "M24 18 H5" } else { "M24 18 L17 28" } />
            <path class:moves=right d=if right { "M24 18 H43" } else { "M24 18 L31 28" } />
        </svg>
    }
}
