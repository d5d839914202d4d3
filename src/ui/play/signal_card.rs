//! The signal that announces a reason: the side to serve first, then the nature of the fault
//! (Official Volleyball Rules 2025-2028, 22.2.3.1; which arm: 30.1).

use leptos::prelude::*;

use super::court::stand_left;
use super::reasons::Talked;
use crate::rules::{Arm, Cause, Signal};
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
        </section>
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
