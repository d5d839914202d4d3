//! What is folded away until somebody asks for it, and built only then.

use leptos::html;
use leptos::prelude::*;

use crate::memo::Memo;

/// A button with what it unfolds. What was unfolded once stays built, with all that was typed into it.
#[component]
pub fn Unfold(
    /// What the button says.
    words: &'static str,
    /// How the button looks.
    #[prop(default = "button")]
    class: &'static str,
    /// Whether it is unfolded, for others that may unfold it as well.
    #[prop(default = RwSignal::new(false))]
    open: RwSignal<bool>,
    /// Builds what it unfolds.
    #[prop(into)]
    inside: Callback<(), AnyView>,
) -> impl IntoView {
    let node = NodeRef::<html::Details>::new();
    let built = Memo::new(move |was: Option<&bool>| open.get() || was == Some(&true));
    let toggled = move |_| {
        if let Some(node) = node.get_untracked() {
            open.set(node.open());
        }
    };
    view! {
        <details node_ref=node prop:open=open on:toggle=toggled>
            <summary class=class>{words}</summary>
            {move || built.get().then(|| inside.run(()))}
        </details>
    }
}
