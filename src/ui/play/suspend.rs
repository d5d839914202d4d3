//! Play is interrupted for longer than a time-out: why, in a word if there is time.

use leptos::html;
use leptos::prelude::*;

use super::court::use_court;
use super::panel::Frame;
use crate::widgets::picker::{buttons, fixed, Layout};
use game::Kind;

/// The panel.
#[component]
pub fn Suspend() -> impl IntoView {
    let court = use_court();
    let field = NodeRef::<html::Input>::new();
    let stop = move |why: String| {
        court.submit(Kind::Suspend { why });
    };
    let because = Callback::new(move |i: usize| stop(text::suspend_whys()[i].to_owned()));
    let typed = move || {
        let words = field.get_untracked().map(|input| input.value());
        words.unwrap_or_default().trim().to_owned()
    };
    view! {
        <Frame title=text::suspend().to_owned()>
            {buttons(Layout::Grid, fixed(text::suspend_whys()), None, because)}
            <form
                class="remark"
                on:submit=move |event| {
                    event.prevent_default();
                    stop(typed());
                }
            >
                <label class="field">
                    <span>{text::suspend_why()}</span>
                    <input type="text" maxlength="200" node_ref=field />
                </label>
                <button type="submit" class="button primary" id="suspend-now">
                    {text::suspend_now()}
                </button>
            </form>
        </Frame>
    }
}
