//! What an entry would change, computed by the core on a copy of the log, before it is made.

use leptos::prelude::*;

use super::court::use_court;
use crate::game::{say, Kind};
use crate::ui::session::use_session;
use crate::ui::text;

/// What follows, and the button that makes the entry. Without an entry there is nothing to show.
#[component]
pub fn Consequence(
    /// The entry that is thought about.
    #[prop(into)]
    kind: Signal<Option<Kind>>,
    /// The words of the button.
    #[prop(into)]
    yes: Signal<String>,
    /// After it was made.
    #[prop(optional)]
    done: Option<Callback<()>>,
) -> impl IntoView {
    let session = use_session();
    let court = use_court();
    let follows = Memo::new(move |_| {
        // Another entry may come in between.
        session.with_replay(|_| ());
        let kind = kind.get()?;
        Some(match session.would(&kind) {
            Ok(after) => Ok(session.look(|before| text::changes(before, &after))),
            Err(why) => Err(say(&why, &session.state_now())),
        })
    });
    let make = move |_| {
        let Some(kind) = kind.get_untracked() else {
            return;
        };
        if court.tell(kind) {
            if let Some(done) = done {
                done.run(());
            }
        }
    };
    view! {
        <Show when=move || follows.read().is_some()>
            <div class="consequence" id="consequence">
                {move || match follows.get() {
                    None => ().into_any(),
                    Some(Err(why)) => view! { <p class="sentence warn">{why}</p> }.into_any(),
                    Some(Ok(lines)) => {
                        view! {
                            <h3>{text::WHAT_FOLLOWS}</h3>
                            <ul class="follows">
                                {lines
                                    .into_iter()
                                    .map(|line| view! { <li>{line}</li> })
                                    .collect_view()}
                            </ul>
                        }
                            .into_any()
                    }
                }}
                <button
                    type="button"
                    class="button primary"
                    id="make-it"
                    aria-disabled=move || matches!(*follows.read(), Some(Err(_))).to_string()
                    on:click=make
                >
                    {yes}
                </button>
            </div>
        </Show>
    }
}
