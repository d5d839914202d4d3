//! The court screen's part of the bar: how the court lies, and everything that is not about one
//! team.

use leptos::prelude::*;

use super::court::{use_court, Panel};
use crate::memo::Memo;
use crate::screens::{around, Around};
use crate::session::use_session;
use crate::shell::{use_shell, Screen};
use crate::start::export;
use crate::widgets::dialog::{Confirm, Drawer};
use crate::widgets::icon::{icon, Icon};
use crate::widgets::picker::{buttons, Choice, Layout};
use game::{Kind, Phase, State};
use rules::SetLimit;

/// Whether the menu shows, and what opens in its place.
#[derive(Clone, Copy)]
pub struct Menu {
    open: RwSignal<bool>,
    names: RwSignal<bool>,
    grow: RwSignal<bool>,
    time_up: RwSignal<bool>,
}

/// The switch and the menu.
#[component]
pub fn BarTools() -> impl IntoView {
    let court = use_court();
    let open = RwSignal::new(false);
    let names = RwSignal::new(false);
    let grow = RwSignal::new(false);
    let time_up = RwSignal::new(false);
    let menu = Menu {
        open,
        names,
        grow,
        time_up,
    };
    let turned = move || court.is_turned();
    let session = use_session();
    let floor = Memo::new(move |_| {
        let phase = session.state().phase();
        !matches!(phase, Phase::BetweenSets | Phase::Finished)
    });
    let time_up_question = Signal::derive(move || {
        // Only while it is asked: the core ends the set on a copy of the log.
        if !time_up.get() {
            return String::new();
        }
        let state = session.state();
        let after = session.preview(&Kind::TimeUp);
        // Where the teams are level the set goes on for one more rally.
        let ended = after.ok().filter(|after| after.state().play().is_none());
        let winner = ended.and_then(|after| after.state().sets().last().map(|set| set.winner));
        let winner = winner.map(|team| text::team_name(&state, team));
        text::time_up_question(
            &court.score_order().write(&state.score()),
            winner.as_deref(),
        )
    });
    view! {
        <Show when=move || floor.get()>
            <button
                type="button"
                class="bar-button"
                id="turn"
                aria-label=move || text::turn_label(turned())
                on:click=move |_| court.turn(untrack(|| !court.is_turned()))
            >
                {icon(Icon::Turn)}
                <span class="turn-word">{move || if turned() { text::table() } else { text::stand() }}</span>
            </button>
        </Show>
        <button
            type="button"
            class="bar-button"
            id="menu"
            aria-label=text::menu()
            on:click=move |_| open.set(true)
        >
            {icon(Icon::Menu)}
        </button>
        <Drawer open title=Signal::stored(text::menu().to_owned())>
            {around(Around::Menu(menu))}
        </Drawer>
        <Confirm
            open=time_up
            question=time_up_question
            yes=Signal::stored(text::end_set_by_time().to_owned())
            on_yes=Callback::new(move |()| {
                court.submit(Kind::TimeUp);
            })
        />
        <Drawer open=names title=text::name_teams()>
            {around(Around::Names(names))}
        </Drawer>
        <Drawer open=grow title=text::grow()>
            {around(Around::Grow(grow))}
        </Drawer>
    }
}

/// What one line of the menu does.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Line {
    Glance,
    Lock,
    Log,
    Sheet,
    Signals,
    Export,
    Suspend,
    TimeUp,
    Correct,
    WrongInformation,
    Names,
    Grow,
    ServiceClock,
    QuickTaps,
}

/// The lines that mean something now, always in the same order.
fn lines(state: &State) -> Vec<Line> {
    let phase = state.phase();
    let floor = !matches!(phase, Phase::BetweenSets | Phase::Finished);
    let shown = |line: &Line| match line {
        Line::Glance | Line::Lock | Line::ServiceClock | Line::QuickTaps => floor,
        Line::Suspend => phase == Phase::Playing,
        Line::TimeUp => {
            phase == Phase::Playing && matches!(state.rules().set_limit, Some(SetLimit::Minutes(_)))
        }
        // A tally that grew into a full match in the middle of a set is still one in that set.
        Line::Correct => {
            phase == Phase::Playing && state.play().is_some_and(|play| !play.score_is_followed())
        }
        Line::WrongInformation => phase == Phase::Playing && state.rules().line_ups,
        Line::Grow => !state.rules().line_ups && phase != Phase::Finished,
        Line::Log | Line::Sheet | Line::Signals | Line::Export | Line::Names => true,
    };
    let all = [
        Line::Glance,
        Line::Lock,
        Line::Log,
        Line::Sheet,
        Line::Signals,
        Line::Export,
        Line::Suspend,
        Line::TimeUp,
        Line::Correct,
        Line::WrongInformation,
        Line::Names,
        Line::Grow,
        Line::ServiceClock,
        Line::QuickTaps,
    ];
    all.into_iter().filter(shown).collect()
}

/// What can be chosen.
pub fn menu_lines(menu: Menu) -> AnyView {
    let Menu {
        open,
        names,
        grow,
        time_up,
    } = menu;
    let session = use_session();
    let court = use_court();
    let shell = use_shell();
    let shown = Memo::new(move |_| lines(&session.state()));
    let words = Signal::derive(move || {
        let one = |line: Line| {
            Choice::new(match line {
                Line::Glance => text::glance().to_owned(),
                Line::Lock => text::lock().to_owned(),
                Line::Log => text::log().to_owned(),
                Line::Sheet => text::sheet().to_owned(),
                Line::Signals => text::signals().to_owned(),
                Line::Export => text::export_match().to_owned(),
                Line::Suspend => text::suspend().to_owned(),
                Line::TimeUp => text::time_is_up().to_owned(),
                Line::Correct => text::correct_score().to_owned(),
                Line::WrongInformation => text::wrong_information().to_owned(),
                Line::Names => text::name_teams().to_owned(),
                Line::Grow => text::grow().to_owned(),
                Line::ServiceClock => {
                    let seconds = session.state().rules().service_seconds;
                    text::service_clock(court.has_service_clock(), seconds)
                }
                Line::QuickTaps => text::quick_taps(court.counts_quick_taps()).to_owned(),
            })
        };
        shown.get().into_iter().map(one).collect()
    });
    let choose = Callback::new(move |i: usize| {
        let Some(line) = shown.with_untracked(|lines| lines.get(i).copied()) else {
            return;
        };
        // A switch shows how it stands; everything else takes the place of the menu.
        if line == Line::ServiceClock {
            return court.set_service_clock(untrack(|| !court.has_service_clock()));
        }
        if line == Line::QuickTaps {
            return court.set_quick_taps(untrack(|| !court.counts_quick_taps()));
        }
        open.set(false);
        let to = |screen: fn(String) -> Screen| {
            if let Some(id) = untrack(|| session.id()) {
                shell.go(screen(id));
            }
        };
        match line {
            Line::Glance => court.set_glance(true),
            Line::Lock => court.locked.set(true),
            Line::Log => to(|id| Screen::Log { id }),
            Line::Sheet => to(|id| Screen::Sheet { id }),
            Line::Signals => to(|_| Screen::signals()),
            Line::Export => export(&session.log(), &session.state_now(), &session.unread()),
            Line::Suspend => court.open(Panel::Suspend),
            Line::TimeUp => {
                // It ends the set: one tap beside another line must not.
                time_up.set(true);
            }
            Line::Correct => court.open(Panel::Correct),
            Line::WrongInformation => court.open(Panel::WrongInformation),
            Line::Names => names.set(true),
            Line::Grow => grow.set(true),
            Line::ServiceClock | Line::QuickTaps => {}
        }
    });
    buttons(Layout::Lines, words, None, choose)
}
