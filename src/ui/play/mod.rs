//! The court: one tap on the half of the side that serves next stores the rally at once. All else
//! happens below the halves and never covers them.

mod between;
mod captain;
mod conduct;
mod consequence;
mod correct;
mod court;
mod delay;
mod due;
mod finished;
mod glance;
mod grow;
mod half;
mod held;
mod hurt;
mod last;
mod late;
mod log_beside;
mod log_list;
mod menu;
mod more;
mod movement;
mod new_libero;
mod pad;
mod panel;
mod protest;
mod reasons;
mod replay;
mod running;
mod service;
mod short;
mod signal_card;
mod stopped;
mod substitution;
mod suspend;
mod tally;
mod time_out;
mod tools;

use leptos::ev::KeyboardEvent;
use leptos::html;
use leptos::prelude::*;

use super::screens::{self, around, Around};
use super::session::use_session;
use super::shell::{use_shell, Screen};
use crate::memo::Memo;
use crate::widgets::deferred::defer_render;
use crate::widgets::team_mark::TeamMark;
use game::Phase;
use rules::Team;

pub use court::{use_court, Court, Panel};
pub use grow::{Grow, Names};
pub use log_list::LogList;
pub use menu::{menu_lines, BarTools, Menu};
pub use running::AlreadyRunning;
pub use tools::Tools;

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
    let shows = Memo::new(move |_| match phase.get() {
        Phase::BetweenSets => Shows::Between,
        Phase::Finished => Shows::Finished,
        Phase::Preparation if !tally.get() => Shows::Nothing,
        Phase::Preparation | Phase::Playing | Phase::Suspended => Shows::Floor,
    });
    view! {
        {move || match shows.get() {
            Shows::Between => view! {
                {practice()}
                {around(Around::SetOver)}
            }
            .into_any(),
            Shows::Finished => view! {
                {practice()}
                {around(Around::MatchOver)}
            }
            .into_any(),
            Shows::Nothing => ().into_any(),
            Shows::Floor => view! { <Floor /> }.into_any(),
        }}
    }
}

/// What is told of a practice match; nothing in any other.
fn practice() -> Option<AnyView> {
    let session = use_session();
    let is_practice = session
        .state_now()
        .heading()
        .is_some_and(|heading| heading.practice);
    is_practice.then(screens::practice)
}

/// What the screen shows; it is built anew only when this changes, so that the court under a finger
/// stays the same court.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Shows {
    Floor,
    Between,
    Finished,
    Nothing,
}

/// The two halves with the net between them, and what belongs below.
#[component]
fn Floor() -> impl IntoView {
    let court = use_court();
    court.close_panel();
    let session = use_session();
    let shell = use_shell();
    let strip = NodeRef::<html::Div>::new();
    // What is new stands at the top of the strip. One that was not moved is left alone: to move it, the
    // browser would have to lay out the page at once.
    let moved = StoredValue::new(false);
    Effect::new(move |was: Option<Panel>| {
        session.with_timeline(|_| ());
        court.follow_questions();
        let panel = court.panel();
        if let Some(strip) = strip.get().filter(|_| moved.get_value()) {
            strip.set_scroll_top(0);
            moved.set_value(false);
        }
        if panel == Panel::Rally && was.is_some_and(|was| was != panel) {
            court.give_keys_back();
        }
        panel
    });
    let halves = [
        NodeRef::<html::Button>::new(),
        NodeRef::<html::Button>::new(),
    ];
    // The arrow keys choose a half, Enter gives it the point; Escape closes what is open below.
    let on_key = move |event: KeyboardEvent| {
        let half = match event.key().as_str() {
            "ArrowLeft" => halves[0],
            "ArrowRight" => halves[1],
            "Escape" => return court.close_panel(),
            _ => return,
        };
        if let Some(half) = half.get_untracked() {
            let _ = half.focus();
        }
    };
    view! {
        <div
            class="floor"
            class:glance=move || court.is_glance()
            role="group"
            aria-label=text::court()
            aria-disabled=move || (!session.may_write()).then_some("true")
            inert=move || court.locked.get()
            on:keydown=on_key
        >
            <div class="above-court"><due::DueLine /> {practice()}</div>
            <section class="court" class:changed=move || court.just_changed() aria-label="Court">
                <half::Half left=true node=halves[0] />
                <half::Net />
                <half::Half left=false node=halves[1] />
            </section>
            <div class="below">
                {defer_render(move || {
                    view! {
                        <Show when=move || court.is_glance()>
                            {around(Around::GlanceFoot)}
                        </Show>
                        <Show when=move || !court.is_glance()>
                            {around(Around::Tools)}
                        </Show>
                    }
                        .into_any()
                })}
                <div
                    class="strip"
                    class:whole=move || court.panel() != Panel::Rally
                    node_ref=strip
                    on:scroll=move |_| moved.set_value(true)
                >
                    {defer_render(move || {
                        view! {
                            <Show when=move || !court.wants_glance()>
                                {around(Around::AfterRally)}
                            </Show>
                        }
                            .into_any()
                    })}
                    {move || screens::panel(court.panel())}
                </div>
            </div>
            {defer_render(move || {
                view! {
                    <Show when=move || shell.is_roomy() && !court.is_glance()>
                        {around(Around::LogBeside)}
                    </Show>
                }
                    .into_any()
            })}
        </div>
        <glance::Lock />
    }
}

/// The screen between two sets.
pub fn set_over() -> AnyView {
    view! { <between::Between /> }.into_any()
}

/// The screen after the last point.
pub fn match_over() -> AnyView {
    view! { <finished::Finished /> }.into_any()
}

/// What stays below the halves while only the court shows.
pub fn glance_foot() -> AnyView {
    view! { <glance::Foot /> }.into_any()
}

/// The latest entries.
pub fn log_beside() -> AnyView {
    view! { <log_beside::LogBeside /> }.into_any()
}

/// An opened panel.
pub fn opened(panel: Panel) -> AnyView {
    match panel {
        Panel::Rally => ().into_any(),
        Panel::Substitution(team) => view! { <substitution::Substitution team /> }.into_any(),
        Panel::More(team) => view! { <more::More team /> }.into_any(),
        Panel::Replay => view! { <replay::Replayed /> }.into_any(),
        Panel::Hurt { replay, team } => view! { <hurt::Hurt replay team /> }.into_any(),
        Panel::Care(by) => view! { <hurt::Care by /> }.into_any(),
        Panel::Delay { team, what } => view! { <delay::Delay team what /> }.into_any(),
        Panel::Conduct(team) => view! { <conduct::Conduct team /> }.into_any(),
        Panel::Late(team) => view! { <late::Late team /> }.into_any(),
        Panel::NewLibero(team) => view! { <new_libero::NewLibero team /> }.into_any(),
        Panel::Short(team) => view! { <short::Short team /> }.into_any(),
        Panel::GameCaptain(team) => view! { <captain::GameCaptain team /> }.into_any(),
        Panel::Protest(team) => view! { <protest::Protest team /> }.into_any(),
        Panel::Correct => view! { <correct::Correct /> }.into_any(),
        Panel::WrongInformation => view! { <correct::WrongInformation /> }.into_any(),
        Panel::Suspend => view! { <suspend::Suspend /> }.into_any(),
    }
}

/// What can happen to a team while no set is on court: before the first service of a set, between the
/// sets and after the match.
#[component]
pub fn Aside() -> impl IntoView {
    let session = use_session();
    let court = use_court();
    court.close_panel();
    let teams = move || {
        let state = session.state();
        let changes = state.ready().is_some();
        let of = |team: Team| {
            let name = text::team_name(&state, team);
            let button = |words: &'static str, panel: Panel| {
                view! {
                    <button
                        type="button"
                        class="button"
                        aria-label=text::of_teams(words, &name)
                        on:click=move |_| court.open(panel)
                    >
                        {words}
                    </button>
                }
                .into_any()
            };
            view! {
                <div class="aside-team">
                    <TeamMark team />
                    <span class="aside-name">{name.clone()}</span>
                    {changes.then(|| button(text::substitution(), Panel::Substitution(team)))}
                    {button(text::more(), Panel::More(team))}
                </div>
            }
            .into_any()
        };
        Vec::from(Team::BOTH.map(of))
    };
    view! {
        <section class="aside stack" aria-label=text::aside()>
            {teams}
            <captain::CaptainPrompts />
            {move || {
                let panel = court.panel();
                (panel != Panel::Rally)
                    .then(|| view! { <div class="card">{screens::panel(panel)}</div> })
            }}
        </section>
    }
}

/// What the strip shows while nothing else is asked for. It stays there meanwhile, so that the way back from
/// a panel is short.
pub fn after_rally() -> AnyView {
    let court = use_court();
    view! {
        <div class="after-rally" hidden=move || court.panel() != Panel::Rally>
            <last::Last />
            <stopped::Stopped />
            <due::Prompts />
            {signal_card::announced()}
            <tally::FirstService />
            <service::Service />
            {defer_render(|| view! { <reasons::Reasons /> }.into_any())}
            // It lies at the foot of the strip, so that neither its coming nor its going moves a reason.
            <time_out::Running />
        </div>
    }
    .into_any()
}
