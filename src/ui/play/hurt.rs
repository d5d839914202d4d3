//! Somebody is hurt: the careful steps first, then what the rules offer for a player, in their order:
//! a change, three minutes, a team that cannot go on (Official Volleyball Rules 2025-2028, 15.7, 17.1).

use leptos::prelude::*;

use super::court::{use_court, Panel};
use super::panel::Frame;
use super::replay::Which;
use crate::session::use_session;
use crate::shell::{use_shell, Screen};
use crate::widgets::picker::{asked, buttons, fixed, teams, Choice, Layout};
use game::entry::{By, Forced, ReplayWhy};
use game::{legal_for, preview_substitution, Kind, State};
use rules::{Shirt, Team};

/// Who can be hurt in a team: those on court first, then the bench.
fn players(state: &State, team: Team) -> Vec<Shirt> {
    let mut all: Vec<Shirt> = state
        .on_floor()
        .map(|play| play.sides[team].on_court().collect())
        .unwrap_or_default();
    let listed = state.team(team).listed();
    let mut bench: Vec<Shirt> = listed.filter(|n| !all.contains(n)).collect();
    bench.sort_unstable();
    all.extend(bench);
    all
}

/// What comes before anything that is recorded.
fn care_steps(steps: &[&'static str]) -> AnyView {
    view! {
        <ul class="care" id="care-steps">
            {steps.iter().map(|step| view! { <li>{*step}</li> }).collect_view()}
        </ul>
    }
    .into_any()
}

/// To the pages about injuries; the match stays as it is, with a way back above them.
fn to_safety() -> AnyView {
    let shell = use_shell();
    view! {
        <button type="button" class="button quiet" id="to-safety" on:click=move |_| shell.go(Screen::safety())>
            {text::care_read()}
        </button>
    }
    .into_any()
}

/// The panel: whose player, and which one.
#[component]
pub fn Hurt(
    /// The rally that was stopped for it, where its replay is still to be entered.
    replay: Option<Which>,
    /// Whose player, where that is known.
    team: Option<Team>,
) -> impl IntoView {
    let session = use_session();
    let court = use_court();
    let team = RwSignal::new(team);
    let go_on = move |by: Option<By>| {
        let replay = replay.map(|which| which.kind(ReplayWhy::Injury, by));
        if replay.is_none_or(|replay| court.submit(replay)) {
            court.open(Panel::Care(by));
        }
    };
    court.ask_for_player(
        |_, _| true,
        move |team, number| {
            go_on(Some(By {
                team,
                number: Some(number),
            }));
        },
    );
    let which = move || {
        let team = team.get()?;
        let shirts = players(&session.state_now(), team);
        let one = |shirt: &Shirt| Choice::number(*shirt, text::number(*shirt));
        let choices = Signal::stored(shirts.iter().map(one).collect());
        let named = Callback::new(move |i: usize| {
            let number = shirts.get(i).copied();
            go_on(Some(By { team, number }));
        });
        let number = None;
        Some(view! {
            {asked(text::hurt_who(), buttons(Layout::Numbers, choices, None, named))}
            <button type="button" class="button" on:click=move |_| go_on(Some(By { team, number }))>
                {text::number_later()}
            </button>
        })
    };
    view! {
        <Frame title=text::hurt().to_owned()>
            {care_steps(&text::care_first())}
            {to_safety()}
            {asked(text::hurt_team(), teams(team))}
            {which}
            <button type="button" class="button" on:click=move |_| go_on(None)>
                {text::not_a_player()}
            </button>
        </Frame>
    }
}

/// What the core allows for a player who is hurt.
fn ways_on(state: &State, of: By) -> Vec<Kind> {
    let Some(number) = of.number else {
        return Vec::new();
    };
    let mut ways = legal_for(state, of.team, number);
    ways.retain(|kind| match kind {
        Kind::Substitution { reason, .. } => *reason == Some(Forced::Injury),
        Kind::LiberoReplacement { .. } | Kind::Recovery { .. } => true,
        _ => false,
    });
    ways
}

/// The panel: what becomes of whoever is hurt.
#[component]
pub fn Care(
    /// Whose player, as far as said; none for anybody else.
    by: Option<By>,
) -> impl IntoView {
    let session = use_session();
    let state = session.state_now();
    let title = match by {
        Some(by) => text::care_title(&text::team_name(&state, by.team), by.number),
        None => text::hurt().to_owned(),
    };
    let then = match by {
        Some(by) => of_player(by),
        None => of_anybody_else(),
    };
    view! {
        <Frame title>
            {care_steps(&text::care_return())}
            {to_safety()}
            {asked(text::care_then(), then)}
        </Frame>
    }
}

/// Play waits, or goes on.
fn of_anybody_else() -> AnyView {
    let court = use_court();
    let tap = Callback::new(move |i: usize| {
        court.open(if i == 0 { Panel::Rally } else { Panel::Suspend });
    });
    let words = fixed([text::goes_on(), text::suspend()]);
    view! {
        {buttons(Layout::Grid, words, None, tap)}
        <p class="muted">{text::official_hurt()}</p>
    }
    .into_any()
}

/// The ways on that mean the same for the player, under the words that say what that is.
type Means = (Option<String>, Vec<Kind>);

/// The ways on in the order of the rules, those that mean the same together.
fn grouped(state: &State, of: By) -> Vec<Means> {
    let mut groups: Vec<Means> = Vec::new();
    for kind in ways_on(state, of) {
        let means = match &kind {
            Kind::Substitution {
                team,
                changes,
                reason,
            } => changes.first().and_then(|change| {
                let preview = preview_substitution(state, *team, *change, *reason)?;
                Some(text::sort_means(preview, change.out, *reason))
            }),
            Kind::LiberoReplacement { .. } => Some(text::libero_way().to_owned()),
            Kind::Recovery { .. } => Some(text::recovery_way()),
            _ => None,
        };
        match groups.iter_mut().find(|(words, _)| *words == means) {
            Some((_, ways)) => ways.push(kind),
            None => groups.push((means, vec![kind])),
        }
    }
    groups
}

fn of_player(by: By) -> AnyView {
    let session = use_session();
    let court = use_court();
    let group = move |(means, ways): Means| {
        let words = fixed(ways.iter().map(text::way_on));
        let tap = Callback::new(move |i: usize| {
            if let Some(kind) = ways.get(i) {
                court.submit(kind.clone());
            }
        });
        view! {
            {means.map(|words| view! { <p class="means">{words}</p> })}
            {buttons(Layout::Grid, words, None, tap)}
        }
    };
    // Whatever is entered meanwhile changes what can be done.
    let offered = move || {
        let state = session.state();
        let groups = grouped(&state, by);
        let here = state.on_floor().is_some_and(|play| {
            by.number
                .is_some_and(|number| play.sides[by.team].on_court().any(|s| s == number))
        });
        let places = state.rules().line_ups;
        let stuck = places && here && groups.is_empty();
        let note = if places && by.number.is_none() {
            Some(text::care_no_number())
        } else {
            stuck.then_some(text::nobody_can_come())
        };
        let mut words = vec![text::plays_on()];
        if stuck {
            words.push(text::cannot_go_on());
        }
        let tap = Callback::new(move |i: usize| match i {
            0 => court.close_panel(),
            _ => court.open(Panel::Short(by.team)),
        });
        view! {
            {groups.into_iter().map(group).collect_view()}
            {note.map(|words| view! { <p class="muted">{words}</p> })}
            {buttons(Layout::Lines, fixed(words), None, tap)}
        }
    };
    view! { {offered} }.into_any()
}
