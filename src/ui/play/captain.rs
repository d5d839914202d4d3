//! Who speaks for a team on court (Official Volleyball Rules 2025-2028, 5.1.2): asked for where the captain
//! is not there, without standing in anybody's way.

use leptos::prelude::*;

use super::court::{use_court, Panel};
use super::panel::Frame;
use crate::memo::Memo;
use crate::session::use_session;
use crate::widgets::picker::{asked, buttons, Choice, Layout};
use game::{can_be_named, named_before, notices, Kind, Notice};
use rules::{Shirt, Team};

/// One line for each team of which nobody speaks: whoever was named before with one tap, everybody else
/// in a panel.
#[component]
pub fn CaptainPrompts() -> impl IntoView {
    let session = use_session();
    let teams = Memo::new(move |_| {
        let missing = |notice: Notice| match notice {
            Notice::GameCaptain { team } => Some(team),
            _ => None,
        };
        let all = notices(&session.state());
        all.into_iter().filter_map(missing).collect::<Vec<_>>()
    });
    move || {
        let prompt = |team| view! { <CaptainPrompt team /> };
        teams.get().into_iter().map(prompt).collect_view()
    }
}

#[component]
fn CaptainPrompt(team: Team) -> impl IntoView {
    let session = use_session();
    let court = use_court();
    let name = text::team_name(&session.state_now(), team);
    let words = Memo::new(move |_| text::notice(&Notice::GameCaptain { team }, &session.state()));
    let before = Memo::new(move |_| named_before(&session.state(), team));
    let again = move || {
        let number = before.get()?;
        Some(view! {
            <button
                type="button"
                class="button"
                on:click=move |_| {
                    session.submit(Kind::GameCaptain { team, number });
                }
            >
                {text::speaks_again(number)}
            </button>
        })
    };
    view! {
        <div class="prompt asks-captain" role="status">
            <span class="prompt-words">{move || words.get()}</span>
            {again}
            <button
                type="button"
                class="button"
                aria-label=text::of_teams(text::name_somebody(), &name)
                on:click=move |_| court.open(Panel::GameCaptain(team))
            >
                {text::name_somebody()}
            </button>
        </div>
    }
}

/// The panel: a tap on a number names that player.
#[component]
pub fn GameCaptain(
    /// Whose.
    team: Team,
) -> impl IntoView {
    let session = use_session();
    let court = use_court();
    let name = text::team_name(&session.state_now(), team);
    let numbers = Memo::new(move |_| can_be_named(&session.state(), team));
    let choices = Signal::derive(move || {
        let one = |&number: &Shirt| Choice::number(number, text::speaks_now(number));
        numbers.read().iter().map(one).collect()
    });
    let tell = move |number: Shirt| {
        court.submit(Kind::GameCaptain { team, number });
    };
    let tap = Callback::new(move |i: usize| {
        if let Some(number) = numbers.with_untracked(|all| all.get(i).copied()) {
            tell(number);
        }
    });
    let is_answer = move |of, shirt: Shirt| of == team && numbers.read().contains(&shirt);
    court.ask_for_player(is_answer, move |_, shirt| tell(shirt));
    let none = Memo::new(move |_| numbers.read().is_empty());
    view! {
        <Frame title=text::panel_title(text::game_captain(), &name)>
            <p>{move || text::who_speaks(&session.state(), team)}</p>
            {move || {
                let answers = || buttons(Layout::Numbers, choices, None, tap);
                (!none.get()).then(|| asked(text::who_speaks_label(), answers()))
            }}
            <p class="muted">{text::speaks_more()}</p>
        </Frame>
    }
}

/// Who asks for time-outs and substitutions, where that is not the coach.
pub fn requests_by(team: Team) -> AnyView {
    let session = use_session();
    let words = Memo::new(move |_| text::requests_by(&session.state(), team));
    view! {
        {move || words.get().map(|words| view! { <p class="muted requests-by">{words}</p> })}
    }
    .into_any()
}
