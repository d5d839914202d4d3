//! The court: one tap on the half of the side that serves next stores the rally at once. All else
//! happens below the halves and never covers them.

mod between;
mod court;
mod due;
mod finished;
mod half;
mod last;
mod log_list;
mod menu;
mod more;
mod pad;
mod panel;
mod reasons;
mod replay;
mod signal_card;
mod stopped;
mod substitution;
mod tally;
mod time_out;
mod tools;

use leptos::prelude::*;

use super::session::use_session;
use super::shell::{use_shell, Screen};
use crate::game::Phase;

pub use court::{use_court, Court};
pub use log_list::LogList;
pub use menu::BarTools;

use court::Panel;

/// The court screen.
#[component]
pub fn Play() -> impl IntoView {
    let session = use_session();
    let shell = use_shell();
    let phase = Memo::new(move |_| session.state().phase());
    let tally = Memo::new(move |_| !session.state().rules().line_ups);
    // A match with line-ups has no court before they are in.
    Effect::new(move |_| {
        if phase.get() == Phase::Preparation && !tally.get() {
            if let Some(id) = session.id() {
                shell.replace(Screen::Before { id });
            }
        }
    });
    view! {
        {move || match phase.get() {
            Phase::BetweenSets => view! { <between::Between /> }.into_any(),
            Phase::Finished => view! { <finished::Finished /> }.into_any(),
            Phase::Preparation if !tally.get() => ().into_any(),
            Phase::Preparation | Phase::Playing | Phase::Suspended => {
                view! { <Floor /> }.into_any()
            }
        }}
    }
}

/// The two halves with the net between them, and what belongs below.
#[component]
fn Floor() -> impl IntoView {
    let court = use_court();
    court.panel.set(Panel::Rally);
    let plain = Memo::new(move |_| court.panel.get() == Panel::Rally);
    view! {
        <div class="floor">
            <due::DueLine />
            <section class="court" class:changed=move || court.just_changed() aria-label="Court">
                <half::Half left=true />
                <half::Net />
                <half::Half left=false />
            </section>
            <div class="below">
                <Show when=move || plain.get()>
                    <tools::Tools />
                </Show>
                <div class="strip" class:whole=move || !plain.get()>
                    {move || match court.panel.get() {
                        Panel::Rally => view! { <AfterRally /> }.into_any(),
                        Panel::Substitution(team) => {
                            view! { <substitution::Substitution team /> }.into_any()
                        }
                        Panel::More(team) => view! { <more::More team /> }.into_any(),
                        Panel::Replay => view! { <replay::Replayed /> }.into_any(),
                    }}
                </div>
            </div>
        </div>
    }
}

/// What the strip shows while nothing else is asked for.
#[component]
fn AfterRally() -> impl IntoView {
    view! {
        <last::Last />
        <stopped::Stopped />
        <due::Prompts />
        <time_out::Running />
        <tally::FirstService />
        <reasons::Reasons />
    }
}
