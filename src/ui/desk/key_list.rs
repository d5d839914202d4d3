//! The list of the keys of the desk, and the way to do without them.

use leptos::prelude::*;

use super::work::Work;
use crate::widgets::dialog::Drawer;
use app::desk::Command;
use text::desk_work as words;

/// The list, where it was asked for.
pub fn key_list(work: Work) -> AnyView {
    let desk = work.desk;
    let inside = move || {
        let lines = Command::listed().into_iter().map(|(command, keys)| {
            let keys = keys.iter().map(|key| {
                let key = words::key(key);
                view! { <kbd>{key}</kbd> }
            });
            let keys = keys.collect_view();
            view! {
                <div>
                    <dt>{words::command(command)}</dt>
                    <dd>{keys}</dd>
                </div>
            }
        });
        let lines = lines.collect_view();
        view! {
            <label class="desk-choose">
                <input
                    type="checkbox"
                    id="desk-use-keys"
                    prop:checked=move || desk.with_keys.get()
                    on:change=move |_| desk.use_keys(!desk.with_keys.get_untracked())
                />
                <span>{words::keys_on()}</span>
            </label>
            <p class="muted">{words::keys_more()}</p>
            <dl class="keys" id="desk-keys-list">{lines}</dl>
        }
        .into_any()
    };
    view! {
        <Drawer open=work.keys title=Signal::stored(words::keys_title().to_owned())>
            {inside}
        </Drawer>
    }
    .into_any()
}
