//! Misconduct: first the person, then the level, with what leads to it for this person now; then what
//! follows from it, before it is recorded (Official Volleyball Rules 2025-2028, chapter 21).

use leptos::prelude::*;

use super::consequence::Consequence;
use super::court::use_court;
use super::panel::Frame;
use crate::session::{use_session, Refused};
use crate::widgets::cards::Cards;
use crate::widgets::number_pad::NumberPad;
use crate::widgets::picker::{asked, buttons, question, Choice, Layout};
use game::entry::{Level, Who};
use game::{level_for, preview_sanction, Conduct as Does, Kind, Refusal, SanctionKind, State};
use rules::{Shirt, Team};

/// Everybody of a team who can be sanctioned: those of the list, and a coach in any case. The players
/// come first, then the bench.
fn people(state: &State, team: Team) -> (Vec<Who>, Vec<Who>) {
    let (mut players, mut staff) = (Vec::new(), Vec::new());
    if let Some(list) = &state.team(team).list {
        players.extend(state.team(team).listed());
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
    let court = use_court();
    let state = session.state_now();
    let title = text::panel_title(text::conduct(), &text::team_name(&state, team));
    let chosen = RwSignal::new(None::<Who>);
    let of = move |people: Vec<Who>, lie: Layout| {
        let one = |who: &Who| Choice {
            label: Some(text::person(who)),
            ..Choice::new(text::who(who))
        };
        let choices = Signal::stored(people.iter().map(one).collect());
        let tap = Callback::new(move |i: usize| {
            chosen.set(people.get(i).cloned());
            court.next_question();
        });
        buttons(lie, choices, None, tap)
    };
    // A libero is on the list as everybody else. A second tap means somebody else.
    court.ask_for_player(
        move |of, _| of == team,
        move |_, shirt| {
            chosen.set(Some(Who::Player(shirt)));
            court.next_question();
        },
    );
    let everybody = move || {
        let (players, staff) = people(&session.state_now(), team);
        // Without a list there is nobody to choose from but whom the scorer names.
        let typed = players.is_empty().then(|| {
            let take = Callback::new(move |shirt: Shirt| {
                chosen.set(Some(Who::Player(shirt)));
                court.next_question();
            });
            view! { <NumberPad label=text::conduct_who() on_take=take take_words=text::this_player() /> }
        });
        let all = view! {
            {of(players, Layout::Numbers)}
            {of(staff, Layout::Row)}
            {typed}
        };
        asked(text::conduct_who(), all.into_any())
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
            return view! { <p class="muted">{text::ladder_clear()}</p> }.into_any();
        }
        let lines: Vec<_> = had
            .into_iter()
            .map(|line| view! { <li>{line}</li> })
            .collect();
        view! { <ul class="ladder">{lines}</ul> }.into_any()
    };
    view! { {had} }.into_any()
}

/// The levels for one person, in the place of the people, so that they are under the same thumb; then
/// what follows from the one that was tapped, in the place of the levels.
fn levels(team: Team, who: Who, chosen: RwSignal<Option<Who>>) -> AnyView {
    let session = use_session();
    let court = use_court();
    let legend = text::level_for(&who);
    let give = text::how_to_give(&who);
    let level = RwSignal::new(None::<Level>);
    let had = text::had(session.state_now().team(team).heaviest(&who));
    let who = StoredValue::new(who);
    let kind = Signal::derive(move || {
        level.get().map(|sanction| Kind::Misconduct {
            team,
            who: who.get_value(),
            sanction,
        })
    });
    let all = move || {
        let rows = rows(&session.state(), team, &who.get_value());
        let rows = rows.into_iter().map(|row| row.view(level)).collect_view();
        let answers = view! {
            <p class="muted">{had.clone()} " " {text::first_referee_decides()}</p>
            <div class="levels">{rows}</div>
            <button type="button" class="button quiet" on:click=move |_| {
                chosen.set(None);
                court.next_question();
            }>
                {text::somebody_else()}
            </button>
        };
        question(Signal::stored(legend.clone()), answers.into_any())
    };
    let one = move |level_is: Level| {
        view! {
            <Consequence kind />
            <p class="muted">{give} " " {text::first_referee_decides()}</p>
            {(level_is >= Level::Expulsion).then(|| view! {
                <p class="sentence warn">{text::not_alone()}</p>
            })}
            <button type="button" class="button quiet" on:click=move |_| {
                level.set(None);
                court.next_question();
            }>
                {text::other_level()}
            </button>
        }
        .into_any()
    };
    view! {
        {move || match level.get() {
            None => all(),
            Some(level) => one(level),
        }}
    }
    .into_any()
}

/// A level as it stands to choose from.
struct Row {
    level: Level,
    /// What leads to it now, or why it is not open.
    what: String,
    /// What it costs; none where it is not open.
    cost: Option<String>,
    /// Whether it is the lightest that is open.
    next: bool,
    label: String,
    kind: Kind,
    refused: Option<Refusal>,
}

fn rows(state: &State, team: Team, who: &Who) -> Vec<Row> {
    let mut rows: Vec<Row> = Vec::new();
    for level in Level::ALL {
        let kind = Kind::Misconduct {
            team,
            who: who.clone(),
            sanction: level,
        };
        let label = text::record_sanction(level, who);
        let row = match preview_sanction(state, &kind) {
            Ok(preview) => {
                let leads = |conduct: &Does| level_for(state, team, who, *conduct) == Some(level);
                let conducts: Vec<Does> = Does::ALL.into_iter().filter(leads).collect();
                Row {
                    level,
                    what: text::for_what(level, &conducts),
                    cost: preview.map(|preview| text::row_cost(&preview, state)),
                    next: rows.iter().all(|row| row.refused.is_some()),
                    label,
                    kind,
                    refused: None,
                }
            }
            Err(why) => Row {
                level,
                what: text::refusal(&why, state.into()),
                cost: None,
                next: false,
                label,
                kind,
                refused: Some(why),
            },
        };
        rows.push(row);
    }
    rows
}

impl Row {
    fn view(self, chosen: RwSignal<Option<Level>>) -> AnyView {
        let session = use_session();
        let court = use_court();
        let level = self.level;
        let possible = self.refused.is_none();
        let refused = StoredValue::new(self.refused.map(|why| Refused {
            kind: self.kind,
            why,
        }));
        let tap = move |_| match refused.get_value() {
            Some(why) => session.refused().set(Some(why)),
            None => {
                chosen.set(Some(level));
                court.next_question();
            }
        };
        let sanction = SanctionKind::Misconduct(level);
        view! {
            <button
                type="button"
                class="button level"
                class:advised=self.next
                aria-label=self.label
                aria-describedby=format!("level-{}", sanction.code())
                class:barred=!possible
                on:click=tap
            >
                <Cards kind=sanction />
                <span class="level-words" id=format!("level-{}", sanction.code())>
                    <strong>
                        {text::level(level)}
                        {self.next.then(|| view! { <span class="advice">{text::next_step()}</span> })}
                    </strong>
                    <span>{text::cards(sanction)} {self.cost.map(|cost| format!(". {cost}"))}</span>
                    <span class="level-what">{self.what}</span>
                </span>
            </button>
        }
        .into_any()
    }
}
