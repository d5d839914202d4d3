//! Play is interrupted for longer than a time-out: why, in a word if there is time.

use leptos::prelude::*;

use super::court::use_court;
use super::panel::Frame;
use crate::widgets::kept_words::KeptWords;
use crate::widgets::picker::{buttons, fixed, Layout};
use app::drafts::Draft;
use game::Kind;

/// The panel.
#[component]
pub fn Suspend() -> impl IntoView {
    let court = use_court();
    let words = KeptWords::of(Draft::Suspend);
    let stop = move |why: String| {
        if court.submit(Kind::Suspend { why }) {
            words.entered();
        }
    };
    let because = Callback::new(move |i: usize| stop(text::suspend_whys()[i].to_owned()));
    view! {
        <Frame title=text::suspend().to_owned()>
            {buttons(Layout::Grid, fixed(text::suspend_whys()), None, because)}
            <form
                class="remark"
                on:submit=move |event| {
                    event.prevent_default();
                    stop(words.typed());
                }
            >
                {words.draw("suspend-why", text::suspend_why())}
                <button type="submit" class="button primary" id="suspend-now">
                    {text::suspend_now()}
                </button>
            </form>
        </Frame>
    }
}
