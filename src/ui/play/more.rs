//! Everything else that can happen to a team.

use leptos::prelude::*;

use super::captain::requests_by;
use super::court::{use_court, Panel};
use super::panel::Frame;
use crate::memo::Memo;
use crate::session::use_session;
use crate::widgets::kept_words::KeptWords;
use crate::widgets::picker::{asked, buttons, Choice, Layout};
use app::delaying::Delaying;
use app::drafts::Draft;
use game::{libero_at_hand, libero_replacements, Kind, Refusal};
use rules::Team;

/// The panel.
#[component]
pub fn More(
    /// Whose.
    team: Team,
) -> impl IntoView {
    let session = use_session();
    let court = use_court();
    let title = text::team_name(&session.state_now(), team);
    let enter = Callback::new(move |kind: Kind| {
        court.submit(kind);
    });
    view! {
        <Frame title>
            {liberos(team, enter)}
            {happened(team)}
            <Remark team />
        </Frame>
    }
}

/// Libero replacements that are legal now, while a set is played; before its first service they stand
/// beside the line-ups. Where none is legal, the one that would come next says why.
fn liberos(team: Team, enter: Callback<Kind>) -> AnyView {
    let session = use_session();
    let offered = Memo::new(move |_| {
        let state = session.state();
        if state.play().is_none() {
            return Vec::new();
        }
        let kind = |change| Kind::LiberoReplacement { team, change };
        let legal = libero_replacements(&state, team).into_iter();
        let mut all: Vec<_> = legal.map(|change| (kind(change), None)).collect();
        if all.is_empty() {
            let at_hand = libero_at_hand(&state, team).map(kind);
            all.extend(at_hand.map(|kind| {
                let why = session.check(&kind).err();
                (kind, why)
            }));
        }
        all
    });
    let choices = Signal::derive(move || {
        let one = |(kind, why): &(Kind, Option<Refusal>)| {
            let state = session.state();
            let why = why.as_ref().map(|why| text::refusal(why, (&*state).into()));
            Choice::new(text::way_on(kind)).unless(why)
        };
        offered.read().iter().map(one).collect()
    });
    let tap = Callback::new(move |i: usize| {
        if let Some((kind, _)) = offered.with_untracked(|all| all.get(i).cloned()) {
            enter.run(kind);
        }
    });
    let shown = move || {
        let is_offered = !offered.read().is_empty();
        is_offered.then(|| asked(text::libero(), buttons(Layout::Row, choices, None, tap)))
    };
    view! { {shown} }.into_any()
}

/// What can happen to a team besides, each with a panel of its own.
fn happened(team: Team) -> AnyView {
    let session = use_session();
    let court = use_court();
    let all = Memo::new(move |_| {
        let hurt = Panel::Hurt {
            replay: None,
            team: Some(team),
        };
        let delay = |what| Panel::Delay { team, what };
        let mut all = vec![
            (text::conduct(), Panel::Conduct(team)),
            (text::hurt(), hurt),
            (text::improper(), delay(Delaying::Improper)),
            (text::request_delay(), delay(Delaying::Request)),
            (text::other_delay(), delay(Delaying::Other)),
            (text::late(), Panel::Late(team)),
        ];
        if !session.state().team(team).liberos.is_empty() {
            all.push((text::new_libero(), Panel::NewLibero(team)));
            if session.check(&Kind::LateReplacement { team }).is_ok() {
                all.push((text::late_libero(), delay(Delaying::LateReplacement)));
            }
        }
        if session
            .state()
            .on_floor()
            .is_some_and(|play| play.follows_places(team))
        {
            all.push((text::game_captain(), Panel::GameCaptain(team)));
        }
        // With places it has a button of its own below the half.
        if !session.state().rules().line_ups {
            all.insert(0, (text::substitution(), Panel::Substitution(team)));
        }
        all.push((text::protest(), Panel::Protest(team)));
        all.push((text::short(), Panel::Short(team)));
        all
    });
    let choices = Signal::derive(move || {
        let words = all.read();
        words.iter().map(|(words, _)| Choice::new(*words)).collect()
    });
    let tap = Callback::new(move |i: usize| {
        if let Some(panel) = all.with_untracked(|all| all.get(i).map(|(_, panel)| *panel)) {
            court.open(panel);
        }
    });
    let answers = view! {
        {buttons(Layout::Grid, choices, None, tap)}
        <p class="muted">{text::requests_more()}</p>
        {requests_by(team)}
    };
    asked(text::happened(), answers.into_any())
}

/// Words for the sheet.
#[component]
fn Remark(team: Team) -> impl IntoView {
    let court = use_court();
    let words = KeptWords::of(Draft::Remark(Some(team)));
    let note = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        let text = words.typed();
        let team = Some(team);
        if !text.is_empty() && court.submit(Kind::Remark { text, team }) {
            words.entered();
        }
    };
    view! {
        <form class="remark" on:submit=note>
            {words.draw("remark", text::remark_label())}
            <button type="submit" class="button">
                {text::note_it()}
            </button>
        </form>
    }
}
