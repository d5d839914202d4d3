//! Before the match: new match, plan, checks, briefings, lists, toss, warm-up, line-ups, last check.
//!
//! Half-typed work is kept as a draft; everything that counts is an entry.

mod ball;
mod begin;
mod briefing;
mod check;
mod details;
mod discrepancy;
mod drawn;
mod fields;
mod form;
mod late_team;
mod liberos;
mod line_up;
mod net;
mod new_match;
mod plan_list;
mod sign;
mod stand;
mod team_list;
mod team_tabs;
mod to_try;
mod toss;
mod warm_up;

use leptos::prelude::*;

pub use details::DetailsForm;
pub use drawn::Drawing;
pub use new_match::NewMatch;
pub use sign::{SignPad, SignRow};

use crate::memo::Memo;
use crate::session::use_session;
use crate::shell::{use_shell, Screen};
use game::entry::Toss;
use game::{notices, Kind, Notice, Phase};
use rules::{Step, Team};
use text::setup as words;

use begin::BeginCard;
use line_up::LineUpsCard;
use plan_list::PlanList;
use team_list::TeamListsCard;
use toss::TossCard;

/// What has to be done before the first whistle.
#[component]
pub fn Before() -> impl IntoView {
    let session = use_session();
    let shell = use_shell();
    let phase = Memo::new(move |_| session.state().phase());
    let to_court = move |_| {
        if let Some(id) = session.id() {
            shell.go(Screen::Play { id });
        }
    };
    // A set is played on the court, however it was begun.
    Effect::new(move |was: Option<Phase>| {
        let phase = phase.get();
        if (was, phase) == (Some(Phase::Preparation), Phase::Playing) {
            if let Some(id) = session.id() {
                shell.replace(Screen::Play { id });
            }
        }
        phase
    });
    let to_sheet = move |_| {
        if let Some(id) = session.id() {
            shell.go(Screen::Sheet { id });
        }
    };
    move || match phase.get() {
        Phase::Preparation => view! {
            {to_try::to_try()}
            <PlanList />
        }
        .into_any(),
        Phase::Finished => view! {
            <div class="before stack">
                <p>{words::match_is_over()}</p>
                <button type="button" class="button primary" on:click=to_sheet>
                    {words::to_the_sheet()}
                </button>
            </div>
        }
        .into_any(),
        _ => view! {
            <div class="before stack">
                <p>{words::match_has_begun()}</p>
                <button type="button" class="button primary" on:click=to_court>
                    {words::to_the_court()}
                </button>
            </div>
        }
        .into_any(),
    }
}

/// What has to be done between two sets: the toss where one is due, line-ups, the beginning.
#[component]
pub fn BetweenSets() -> impl IntoView {
    let session = use_session();
    let toss_decides = Memo::new(move |_| {
        let any = Toss::new(Team::A, Team::A);
        session.check(&Kind::Toss(any)).is_ok()
    });
    // A tally that has grown was never tossed for: what is seen on court is entered instead.
    let as_seen = Memo::new(move |_| {
        let (team, left) = (Team::A, Team::A);
        session.check(&Kind::FirstService { team, left }).is_ok()
    });
    let with_line_ups = Memo::new(move |_| session.state().rules().line_ups);
    // A tally that has grown into a match has no lists yet.
    let lists_due = Memo::new(move |_| {
        let due = notices(&session.state());
        due.iter().any(|n| matches!(n, Notice::TeamList { .. }))
    });
    view! {
        <fieldset class="between stack" disabled=move || !session.may_write()>
            {move || lists_due.get().then(|| view! {
                <section class="card stack">
                    <h2>{words::step(Step::TeamLists)}</h2>
                    <TeamListsCard />
                </section>
            })}
            {move || toss_decides.get().then(|| view! {
                <section class="card stack">
                    <h2>{move || if as_seen.get() { words::first_service() } else { words::toss() }}</h2>
                    <TossCard />
                </section>
            })}
            {move || with_line_ups.get().then(|| view! {
                <section class="card stack">
                    <h2>{words::line_ups()}</h2>
                    <LineUpsCard />
                </section>
            })}
            <section class="card stack">
                <h2>{words::last_check()}</h2>
                <BeginCard />
            </section>
        </fieldset>
    }
}
