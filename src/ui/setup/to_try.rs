//! What somebody wanted to try in the next match, before it begins.

use leptos::prelude::*;

use text::learn as words;

/// The one thing; nothing where the last talk left none.
pub fn to_try() -> Option<AnyView> {
    let next = device::settings()
        .logbook()
        .to_try()
        .map(|one| one.next.clone())?;
    Some(
        view! {
            <section class="card stack to-try" id="to-try">
                <h2>{words::to_try_today()}</h2>
                <p>{next}</p>
            </section>
        }
        .into_any(),
    )
}
