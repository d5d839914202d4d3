//! Sheets of choices that come from the bottom, and the question before something cannot be undone.
//! On the court screen they lie below the halves, and the halves stay in use.

use leptos::ev::KeyboardEvent;
use leptos::prelude::*;

use super::icon::{icon, Icon};
use super::keys::go_on_at;
use crate::shell::{use_shell, Screen};
use device::Focus;

/// A sheet of choices from the bottom of the screen.
#[component]
pub fn Drawer(
    /// Whether it shows.
    open: RwSignal<bool>,
    /// What it is about.
    #[prop(into)]
    title: Signal<String>,
    /// What can be chosen.
    children: ChildrenFn,
) -> impl IntoView {
    let children = StoredValue::new(children);
    view! {
        <Show when=move || open.get()>
            <Shown open title>
                {children.with_value(|children| children())}
            </Shown>
        </Show>
    }
}

#[component]
fn Shown(open: RwSignal<bool>, title: Signal<String>, children: Children) -> impl IntoView {
    // Beside a court on which play goes on nothing is shut off.
    let beside = matches!(untrack(|| use_shell().screen()), Screen::Play { .. });
    use_shell().opened.while_here(move || {
        open.set(false);
        true
    });
    let opener = Focus::here();
    on_cleanup(move || request_animation_frame(move || opener.back()));
    go_on_at("drawer-close");
    let on_key = move |event: KeyboardEvent| {
        if event.key() == "Escape" {
            open.set(false);
        }
    };
    view! {
        {(!beside)
            .then(|| {
                view! {
                    <div
                        class="drawer-shade"
                        aria-hidden="true"
                        on:click=move |_| open.set(false)
                    ></div>
                }
            })}
        <div class="drawer" role="dialog" aria-modal=(!beside).to_string() aria-labelledby="drawer-title" on:keydown=on_key>
            <div class="drawer-head">
                <h2 id="drawer-title">{title}</h2>
                <button
                    type="button"
                    class="bar-button"
                    id="drawer-close"
                    aria-label=text::close()
                    on:click=move |_| open.set(false)
                >
                    {icon(Icon::Close)}
                </button>
            </div>
            <div class="drawer-body stack">{children()}</div>
        </div>
    }
}

/// A question with one way forward and one back.
#[component]
pub fn Confirm(
    /// Whether it shows.
    open: RwSignal<bool>,
    /// What is asked.
    #[prop(into)]
    question: Signal<String>,
    /// The way forward.
    #[prop(into)]
    yes: Signal<String>,
    /// What happens then.
    on_yes: Callback<()>,
) -> impl IntoView {
    let go = move |_| {
        open.set(false);
        on_yes.run(());
    };
    view! {
        <Drawer open title=question>
            <div class="row answers">
                <button type="button" class="button primary" on:click=go>
                    {yes}
                </button>
                <button type="button" class="button" on:click=move |_| open.set(false)>
                    {text::leave_it()}
                </button>
            </div>
        </Drawer>
    }
}
