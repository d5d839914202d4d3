//! What an entry would change, computed by the core on a copy of the log, before it is made.

use leptos::prelude::*;

use super::court::use_court;
use super::signal_card::SignalStep;
use crate::memo::Memo;
use crate::session::use_session;
use crate::widgets::cards::Cards;
use game::{preview_sanction, Kind, SanctionPreview};

/// What follows from an entry.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Follows {
    /// The line that it leaves in the sanctions box, and what that is called, where it leaves one.
    sanction: Option<(SanctionPreview, String)>,
    lines: Vec<String>,
}

/// What follows, and the button that makes the entry. Without an entry there is nothing to show.
#[component]
pub fn Consequence(
    /// The entry that is thought about.
    #[prop(into)]
    kind: Signal<Option<Kind>>,
    /// The words of the button; a sanction has its own.
    #[prop(into, optional)]
    yes: MaybeProp<String>,
    /// After it was made.
    #[prop(optional)]
    done: Option<Callback<()>>,
) -> impl IntoView {
    let session = use_session();
    let court = use_court();
    let follows = Memo::new(move |_| {
        // Another entry may come in between.
        session.with_timeline(|_| ());
        let kind = kind.get()?;
        let order = court.score_order();
        let after = match session.preview(&kind) {
            Ok(after) => after,
            Err(why) => return Some(Err(text::refusal(&why, (&*session.state_now()).into()))),
        };
        let state = session.state_now();
        let preview = preview_sanction(&state, &kind).ok().flatten();
        Some(Ok(session.with_untracked(|before| match preview {
            Some(preview) => Follows {
                lines: text::sanction_follows(&preview, before, &after, order),
                sanction: Some((preview.clone(), text::becomes(&preview, &state))),
            },
            None => Follows {
                lines: text::follows(&kind, before, &after, order),
                sanction: None,
            },
        })))
    });
    let words = move || match follows.get() {
        Some(Ok(Follows {
            sanction: Some((preview, _)),
            ..
        })) => Some(text::record_it(&preview)),
        // What is refused keeps its name: a tap leads to the first referee's decision.
        _ => yes.get(),
    };
    let make = move |_| {
        let Some(kind) = kind.get_untracked() else {
            return;
        };
        if court.submit(kind) {
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
                    Some(Ok(Follows { sanction, lines })) => {
                        let heading = match sanction {
                            None => view! { <h3>{text::what_follows()}</h3> }.into_any(),
                            Some((preview, words)) => becomes(&preview, words),
                        };
                        view! {
                            {heading}
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
                    class="button primary make-it"
                    id="make-it"
                    class:barred=move || matches!(*follows.read(), Some(Err(_)))
                    on:click=make
                >
                    {words}
                </button>
            </div>
        </Show>
    }
}

/// What it becomes: in words, with its cards, and the signal that shows them.
fn becomes(preview: &SanctionPreview, words: String) -> AnyView {
    let court = use_court();
    let kind = preview.sanction.kind;
    let team = preview.sanction.team;
    let left = court.team_at(true);
    let arm = kind.signal().map(|signal| signal.arm(team, left));
    let how = text::cards_and_arm(kind, arm);
    let signal = kind.signal().map(|signal| {
        let words = text::signal_with_number(signal);
        view! {
            <ol class="signal-steps" aria-label=text::signal_label()>
                <SignalStep signal concerned=team left words />
            </ol>
        }
    });
    view! {
        <div class="becomes" id="becomes">
            <Cards kind />
            <div>
                <h3>{words}</h3>
                <p>{how}</p>
            </div>
            {signal}
        </div>
    }
    .into_any()
}
