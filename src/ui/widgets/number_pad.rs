//! Large keys to tap shirt numbers in.

use leptos::prelude::*;

use rules::Shirt;
use text::setup as words;

/// Shirts have at most this many digits here (the rules of a match may allow fewer).
const DIGITS: usize = 3;

/// Digits to tap or to type, and a key that takes the number over.
#[component]
pub fn NumberPad(
    /// What the number is for.
    #[prop(into)]
    label: Signal<String>,
    /// Called with each number that was taken over.
    on_take: Callback<Shirt>,
    /// The words of the key that takes it over.
    #[prop(default = words::add())]
    take_words: &'static str,
) -> impl IntoView {
    let typed = RwSignal::new(String::new());
    let press = move |digit: char| {
        typed.update(|t| {
            if t.len() < DIGITS {
                t.push(digit);
            }
        });
    };
    let take = move || {
        let number = typed.with_untracked(|t| t.parse::<u16>());
        typed.set(String::new());
        if let Ok(number) = number {
            on_take.run(Shirt(number));
        }
    };
    let set = move |value: String| {
        typed.set(
            value
                .chars()
                .filter(char::is_ascii_digit)
                .take(DIGITS)
                .collect(),
        );
    };
    let key = move |digit: char| {
        view! {
            <button type="button" class="key" on:click=move |_| press(digit)>
                {digit}
            </button>
        }
    };
    let nothing = Signal::derive(move || typed.with(String::is_empty));
    view! {
        <div class="number-pad" role="group" aria-label=move || label.get()>
            <input
                class="number-pad-shows tabular"
                type="text"
                // The keys below are the keyboard; a real one still types here.
                inputmode="none"
                autocomplete="off"
                placeholder=words::number()
                aria-label=words::shirt_number()
                prop:value=move || typed.get()
                on:input:target=move |ev| set(ev.target().value())
                on:keydown=move |ev| {
                    if ev.key() == "Enter" {
                        ev.prevent_default();
                        take();
                    }
                }
            />
            {"123456789".chars().map(key).collect_view()}
            <button
                type="button"
                class="key"
                aria-label=words::delete_digit()
                disabled=nothing
                on:click=move |_| typed.update(|t| { t.pop(); })
            >
                "\u{232b}"
            </button>
            {key('0')}
            <button type="button" class="key take" disabled=nothing on:click=move |_| take()>
                {take_words}
            </button>
        </div>
    }
}
