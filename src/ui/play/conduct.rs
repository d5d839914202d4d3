//! Misconduct: first the person, then the level, with what the team and the person have had.

use leptos::prelude::*;

use super::court::use_court;
use super::panel::Frame;
use crate::game::entry::{Level, Who};
use crate::game::{Kind, State};
use crate::rules::Team;
use crate::ui::part::picker::{asked, buttons, question, Choice, Lie};
use crate::ui::session::use_session;
use crate::ui::text;

/// Everybody of a team who can be sanctioned: those of the list, and a coach in any case. The players
/// come first, then the bench.
fn people(state: &State, team: Team) -> (Vec<Who>, Vec<Who>) {
    let (mut players, mut staff) = (Vec::new(), Vec::new());
    if let Some(list) = &state.team(team).list {
        players.extend(list.players.iter().map(|p| p.number));
        players.sort_unstable();
        staff.extend(list.staff.iter().map(|s| Who::Staff(s.role.clone())));
    }
    if staff.is_empty() {
        staff.push(Who::Staff("coach".to_owned()));
    }
    (players.into_iter().map(Who::Player).collect(), staff)
}

/// The panel.
#[component]
pub fn Conduct(
    /// Whose.
    team: Team,
) -> impl IntoView {
    let session = use_session();
    let state = session.state_now();
    let title = text::panel_title(text::CONDUCT, &text::team_name(&state, team));
    let chosen = RwSignal::new(None::<Who>);
    let of = move |people: Vec<Who>, lie: Lie| {
        let one = |who: &Who| Choice {
            label: Some(text::person(who)),
            ..Choice::new(text::who(who))
        };
        let choices = Signal::stored(people.iter().map(one).collect());
        let tap = Callback::new(move |i: usize| chosen.set(people.get(i).cloned()));
        buttons(lie, choices, None, tap)
    };
    let everybody = move || {
        let (players, staff) = people(&session.state_now(), team);
        let all = view! {
            {of(players, Lie::Numbers)}
            {of(staff, Lie::Row)}
        };
        asked(text::CONDUCT_WHO, all.into_any())
    };
    view! {
        <Frame title>
            {ladder(team)}
            {move || match chosen.get() {
                None => everybody(),
                Some(who) => levels(team, who, chosen),
            }}
        </Frame>
    }
}

/// What the team has had.
fn ladder(team: Team) -> AnyView {
    let session = use_session();
    let had = move || {
        let had = text::ladder(&session.state(), team);
        if had.is_empty() {
            return view! { <p class="muted">{text::LADDER_CLEAR}</p> }.into_any();
        }
        let lines: Vec<_> = had
            .into_iter()
            .map(|line| view! { <li>{line}</li> })
            .collect();
        view! { <ul class="ladder">{lines}</ul> }.into_any()
    };
    view! { {had} }.into_any()
}

/// The levels for one person, in the place of the people, so that they are under the same thumb. The
/// lightest that is open is marked, and no more than that.
fn levels(team: Team, who: Who, chosen: RwSignal<Option<Who>>) -> AnyView {
    let session = use_session();
    let court = use_court();
    let had = text::had(session.state_now().team(team).heaviest(&who));
    let legend = Signal::stored(text::level_for(&who));
    let who = StoredValue::new(who);
    let kind = move |sanction: Level| Kind::Misconduct {
        team,
        who: who.get_value(),
        sanction,
    };
    let choices = Signal::derive(move || {
        let open = Level::ALL.map(|level| session.may(&kind(level)).is_ok());
        let next = open.iter().position(|open| *open);
        let one = |(i, level): (usize, Level)| Choice {
            label: Some(who.with_value(|who| text::record_sanction(level, who))),
            advice: (next == Some(i)).then_some(text::NEXT_STEP),
            ..Choice::new(text::level(level)).when(open[i])
        };
        Level::ALL.into_iter().enumerate().map(one).collect()
    });
    let tap = Callback::new(move |i: usize| {
        court.tell(kind(Level::ALL[i]));
    });
    let answers = view! {
        <p class="muted">{had} " " {text::FIRST_REFEREE_DECIDES}</p>
        <div class="levels">{buttons(Lie::Grid, choices, None, tap)}</div>
        <button type="button" class="button quiet" on:click=move |_| chosen.set(None)>
            {text::SOMEBODY_ELSE}
        </button>
    };
    question(legend, answers.into_any())
}
