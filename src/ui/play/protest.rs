//! A protest: announced at once by the game captain, written on the sheet after the match (Official
//! Volleyball Rules 2025-2028, 5.1.2.1 and 5.1.3).

use leptos::prelude::*;

use super::court::use_court;
use super::panel::Frame;
use crate::session::use_session;
use crate::widgets::kept_words::KeptWords;
use app::drafts::Draft;
use game::entry::Protested;
use game::{last_speaker, Kind, Phase};
use rules::Team;

/// The panel.
#[component]
pub fn Protest(
    /// Whose.
    team: Team,
) -> impl IntoView {
    let session = use_session();
    let court = use_court();
    let state = session.state_now();
    let name = text::team_name(&state, team);
    let is_over = state.phase() == Phase::Finished;
    let number = last_speaker(&state, team).map(|speaker| speaker.number());
    let unwritten = state
        .protests()
        .iter()
        .find(|p| p.team == team && p.written.is_none())
        .map(|p| p.entry);
    let announced: Vec<String> = state
        .protests()
        .iter()
        .filter(|p| p.team == team)
        .map(|p| text::announced(p, court.score_order()))
        .collect();
    let words = KeptWords::of(Draft::Protest(team));
    let missing = RwSignal::new(false);
    let submit = move |kind: Kind| {
        if court.submit(kind) {
            words.entered();
        }
    };
    let announce = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        submit(Kind::Protest {
            team,
            number,
            text: words.typed(),
        });
    };
    let write = move |_| {
        let text = words.typed();
        if text.is_empty() {
            return missing.set(true);
        }
        let about = unwritten.map_or(Protested::Unannounced(team), Protested::Entry);
        submit(Kind::ProtestStatement { about, text });
    };
    view! {
        <Frame title=text::panel_title(text::protest(), &name)>
            <p>{text::protest_by(number)}</p>
            {announced.into_iter().map(|line| view! { <p class="means">{line}</p> }).collect_view()}
            <form class="stack" on:submit=announce>
                {words.draw("protest-about", text::protest_about())}
                {move || missing.get().then(|| view! {
                    <p class="sentence bad" role="alert">{text::protest_needs_words()}</p>
                })}
                <div class="row">
                    <button type="submit" class="button primary" id="announce">
                        {text::protest_announced()}
                    </button>
                    {is_over.then(|| view! {
                        <button type="button" class="button" id="write-protest" on:click=write>
                            {text::protest_write(unwritten.is_some())}
                        </button>
                    })}
                </div>
            </form>
            <p class="muted">{text::protest_more()}</p>
        </Frame>
    }
}
