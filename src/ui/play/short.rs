//! A team that is incomplete, is not there or refuses to play: what follows is shown before it is
//! recorded (Official Volleyball Rules 2025-2028, 6.4).

use leptos::prelude::*;

use super::consequence::Consequence;
use super::panel::Frame;
use crate::session::use_session;
use crate::widgets::picker::{buttons, fixed, Layout};
use game::entry::Scope;
use game::Kind;
use rules::Team;

/// None stands for default.
const CHOICES: [Option<Scope>; 3] = [Some(Scope::Set), Some(Scope::Match), None];

/// The panel.
#[component]
pub fn Short(
    /// Which.
    team: Team,
) -> impl IntoView {
    let session = use_session();
    let name = text::team_name(&session.state_now(), team);
    let chosen = RwSignal::new(None::<Option<Scope>>);
    let kind = Signal::derive(move || {
        Some(match chosen.get()? {
            Some(scope) => Kind::Incomplete { team, scope },
            None => Kind::Default { team },
        })
    });
    let title = text::panel_title(text::short(), &name);
    let yes = Signal::derive(move || {
        let name = text::team_name(&session.state(), team);
        text::record_short(chosen.get().flatten(), &name)
    });
    let is = Callback::new(move |i: usize| chosen.get() == Some(CHOICES[i]));
    let choose = Callback::new(move |i: usize| chosen.set(Some(CHOICES[i])));
    let words = fixed(CHOICES.map(text::short_choice));
    view! {
        <Frame title>
            <p class="muted">{text::short_more()}</p>
            {buttons(Layout::Grid, words, Some(is), choose)}
            <Consequence kind yes />
        </Frame>
    }
}
