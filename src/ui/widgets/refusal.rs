//! What is wrong, by which rule, what would be legal, and the way past the advice.

use leptos::html;
use leptos::prelude::*;

use super::cards::Cards;
use super::dialog::Drawer;
use crate::play::Court;
use crate::screens::{around, Around};
use crate::session::{use_session, Refused};
use game::{preview_sanction, Kind};

/// Shows the session's refused entry. Mounted once, by the shell.
#[component]
pub fn RefusalSheet() -> impl IntoView {
    let session = use_session();
    let refused = session.refused();
    let open = RwSignal::new(false);
    // The sheet follows the refusal, and closing it ends the talk about it.
    Effect::new(move |_| open.set(refused.read().is_some()));
    Effect::new(move |_| {
        if !open.get() && refused.with_untracked(Option::is_some) {
            refused.set(None);
        }
    });
    view! {
        <Drawer open title=text::refused_title()>
            {move || refused.get().map(|refused| around(Around::Refusal(refused, open)))}
        </Drawer>
    }
}

/// Why an entry was refused, and the ways past it.
#[component]
pub fn RefusedEntry(
    /// The entry.
    refused: Refused,
    /// Whether it is talked about.
    open: RwSignal<bool>,
) -> impl IntoView {
    let session = use_session();
    let state = session.state_now();
    let sentence = text::refusal(&refused.why, (&*state).into());
    let rule = text::rule_of(&refused.why);
    let possible = !refused.why.is_final();
    let right_act = refused.why.right_act(&refused.kind);
    // What the rejected request becomes, and costs, stands there before it is recorded.
    let becomes = right_act.as_ref().and_then(|act| {
        let preview = preview_sanction(&state, act).ok().flatten()?;
        let kind = preview.sanction.kind;
        let words = text::becomes(&preview, &state);
        let cost = text::cost(&preview, &state);
        Some(view! {
            <div class="becomes" id="right-act-becomes">
                <Cards kind />
                <div>
                    <strong>{words}</strong>
                    <p>{text::cards(kind)} ". " {cost}</p>
                </div>
            </div>
        })
    });
    let right_act = StoredValue::new(right_act);
    let why = NodeRef::<html::Input>::new();
    let insisting = RwSignal::new(false);
    let missing = RwSignal::new(false);
    // The field is what comes next, so the keys go there.
    Effect::new(move |_| {
        if let Some(field) = why.get() {
            let _ = field.focus();
        }
    });
    // What was asked for is closed with it; the page of the desk has no court.
    let court = use_context::<Court>();
    let reject = move |act: Kind| match court {
        Some(court) => court.submit(act),
        None => session.submit(act),
    };
    let kind = StoredValue::new(refused.kind);
    let insist = move || {
        let reason = why.get().map(|input| input.value()).unwrap_or_default();
        let reason = reason.trim();
        if reason.is_empty() {
            return missing.set(true);
        }
        // Where it is refused even so, this refusal stands there now.
        if session.insist(kind.get_value(), reason) || session.looking_on().get_untracked() {
            open.set(false);
        }
    };
    view! {
        <p class="sentence" id="refusal-sentence">
            {sentence}
        </p>
        <p class="muted">{rule}</p>
        {becomes}
        <Show when=move || possible && insisting.get()>
            <form
                class="remark"
                on:submit=move |event| {
                    event.prevent_default();
                    insist();
                }
            >
                <label class="field">
                    <span>{text::insist_why()}</span>
                    <input type="text" id="insist-why" maxlength="200" node_ref=why />
                </label>
                <button type="submit" class="button primary">
                    {text::insist()}
                </button>
            </form>
            <Show when=move || missing.get()>
                <p class="sentence bad" role="alert">
                    {text::insist_needs_why()}
                </p>
            </Show>
        </Show>
        <Show when=move || !insisting.get()>
            <div class="row">
                <button type="button" class="button primary" on:click=move |_| open.set(false)>
                    {text::leave_it()}
                </button>
                {right_act
                    .get_value()
                    .map(|act| {
                        let words = text::right_act(&act);
                        let tap = move |_| {
                            open.set(false);
                            if let Some(act) = right_act.get_value() {
                                let _ = reject(act);
                            }
                        };
                        view! {
                            <button type="button" class="button" id="right-act" on:click=tap>
                                {words}
                            </button>
                        }
                    })}
                <Show when=move || possible>
                    <button type="button" class="button" on:click=move |_| insisting.set(true)>
                        {text::insist()}
                    </button>
                </Show>
            </div>
        </Show>
    }
}
