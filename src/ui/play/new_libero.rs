//! A new libero: why, who plays libero no more, who does from now on. Only what the core allows is
//! offered.

use leptos::prelude::*;

use super::court::use_court;
use super::panel::Frame;
use crate::game::entry::LiberoWhy;
use crate::game::Kind;
use crate::rules::{Shirt, Team};
use crate::ui::session::use_session;
use crate::ui::text;

const WHYS: [LiberoWhy; 2] = [LiberoWhy::Unable, LiberoWhy::Declared];

/// The panel.
#[component]
pub fn NewLibero(
    /// Whose.
    team: Team,
) -> impl IntoView {
    let session = use_session();
    let court = use_court();
    let title = text::panel_title(
        text::NEW_LIBERO,
        &text::team_name(&session.state_now(), team),
    );
    let why = RwSignal::new(LiberoWhy::Unable);
    let leaves = RwSignal::new(Vec::<Shirt>::new());
    let old = Memo::new(move |_| session.state().team(team).liberos.clone());
    // A team with one libero has no choice to make.
    if let [only] = untrack(|| old.get())[..] {
        leaves.set(vec![only]);
    }
    let kind = move |number: Shirt| Kind::NewLibero {
        team,
        replaces: leaves.get(),
        number,
        why: Some(why.get()),
    };
    let new = Memo::new(move |_| {
        let state = session.state();
        let list = state.team(team).list.clone();
        let mut numbers: Vec<Shirt> = list
            .iter()
            .flat_map(|l| l.players.iter().map(|p| p.number))
            .filter(|&number| session.may(&kind(number)).is_ok())
            .collect();
        numbers.sort_unstable();
        numbers
    });
    let toggle = move |shirt: Shirt| {
        leaves.update(|all| {
            if all.contains(&shirt) {
                all.retain(|s| *s != shirt);
            } else {
                all.push(shirt);
            }
        });
    };
    view! {
        <Frame title>
            <fieldset class="asked">
                <legend>{text::LIBERO_WHY}</legend>
                <div class="row">
                    {WHYS
                        .into_iter()
                        .map(|this| {
                            view! {
                                <button
                                    type="button"
                                    class="button"
                                    aria-pressed=move || (why.get() == this).to_string()
                                    on:click=move |_| why.set(this)
                                >
                                    {text::libero_why_button(this)}
                                </button>
                            }
                        })
                        .collect_view()}
                </div>
            </fieldset>
            <fieldset class="asked">
                <legend>{text::LIBERO_OLD}</legend>
                <div class="numbers">
                    {move || {
                        old.get()
                            .into_iter()
                            .map(|shirt| {
                                view! {
                                    <button
                                        type="button"
                                        class="button number tabular"
                                        aria-label=text::number(shirt)
                                        aria-pressed=move || {
                                            leaves.read().contains(&shirt).to_string()
                                        }
                                        on:click=move |_| toggle(shirt)
                                    >
                                        {shirt.to_string()}
                                    </button>
                                }
                            })
                            .collect_view()
                    }}
                </div>
            </fieldset>
            <fieldset class="asked">
                <legend>{text::LIBERO_NEW}</legend>
                <div class="numbers">
                    {move || {
                        new.get()
                            .into_iter()
                            .map(|number| {
                                view! {
                                    <button
                                        type="button"
                                        class="button number tabular"
                                        aria-label=text::name_libero(number)
                                        on:click=move |_| {
                                            let kind = untrack(|| kind(number));
                                            court.tell_as(session.next_now(), kind);
                                        }
                                    >
                                        {number.to_string()}
                                    </button>
                                }
                            })
                            .collect_view()
                    }}
                </div>
                <Show when=move || new.read().is_empty()>
                    <p class="muted">{text::NO_NEW_LIBERO}</p>
                </Show>
            </fieldset>
        </Frame>
    }
}
