//! The record as codes on this screen, for another phone's camera.

use leptos::prelude::*;

use device::{every, prefers_reduced_motion, Ticker};
use record::{Code, PackProblem, DIGITS_LARGE, DIGITS_SMALL};
use text::hand_over as words;

/// How long a code stands before the next one comes: a camera needs two or three pictures of it. Our own
/// choice.
const STANDS_MS: u32 = 1500;

/// What is on the screen.
#[derive(Clone, Debug, PartialEq, Eq)]
enum Shown {
    /// Nothing yet.
    Nothing,
    /// The codes, one after another.
    Codes(Vec<String>),
    /// Why there are none.
    Trouble(String),
}

/// The button, then the codes.
#[component]
pub fn Codes(
    /// The texts of the codes, none longer than so many digits; or why there are none.
    texts: Callback<usize, Result<Vec<String>, PackProblem>>,
) -> impl IntoView {
    let shown = RwSignal::new(Shown::Nothing);
    let at = RwSignal::new(0usize);
    let small = RwSignal::new(false);
    let running = StoredValue::new_local(None::<Ticker>);
    let runs = RwSignal::new(false);
    let step = move |by: isize| {
        let count = shown.with_untracked(|s| match s {
            Shown::Codes(texts) => texts.len(),
            _ => 1,
        });
        at.update(|at| *at = at.saturating_add_signed(by).checked_rem(count).unwrap_or(0));
    };
    let run = move |go: bool| {
        runs.set(go);
        running.set_value(go.then(|| every(STANDS_MS, move || step(1))));
    };
    let show = move || {
        let digits = if small.get_untracked() {
            DIGITS_SMALL
        } else {
            DIGITS_LARGE
        };
        let made = texts.run(digits);
        at.set(0);
        let several = made.as_ref().is_ok_and(|texts| texts.len() > 1);
        shown.set(match made {
            Ok(texts) => Shown::Codes(texts),
            Err(why) => Shown::Trouble(text::problem::packed(&why)),
        });
        run(several && !prefers_reduced_motion());
    };
    view! {
        {move || match shown.get() {
            Shown::Nothing => view! {
                <div class="row">
                    <button type="button" class="button primary" id="show-codes" on:click=move |_| show()>
                        {words::show()}
                    </button>
                </div>
            }
            .into_any(),
            Shown::Trouble(why) => view! { <p class="sentence bad" role="alert">{why}</p> }.into_any(),
            Shown::Codes(texts) => {
                let count = texts.len();
                let place = at.get().min(count - 1);
                view! {
                    {picture(&texts[place], place, count)}
                    {(count > 1).then(|| view! {
                        <p class="tabular code-place">{words::place(place, count)}</p>
                        <div class="row">
                            // One back is all but one forward.
                            <button type="button" class="button" on:click=move |_| { run(false); step(count as isize - 1); }>
                                {words::before()}
                            </button>
                            <button type="button" class="button" id="codes-run" on:click=move |_| run(!runs.get_untracked())>
                                {move || if runs.get() { words::hold() } else { words::run() }}
                            </button>
                            <button type="button" class="button" id="codes-next" on:click=move |_| { run(false); step(1); }>
                                {words::next()}
                            </button>
                        </div>
                    })}
                    <div class="row">
                        <button type="button" class="button quiet" id="codes-size"
                            on:click=move |_| { small.update(|s| *s = !*s); show(); }
                        >
                            {move || if small.get() { words::fewer() } else { words::simpler() }}
                        </button>
                    </div>
                    <p class="muted">{words::codes_care()}</p>
                }
                .into_any()
            }
        }}
    }
}

/// One code, dark on light whatever the page's colours are: no reader can do with it the other way round.
fn picture(text: &str, place: usize, count: usize) -> AnyView {
    match Code::of_digits(text) {
        Err(why) => view! { <p class="sentence bad">{text::problem::packed(&why)}</p> }.into_any(),
        Ok(code) => {
            let side = code.size() + 8;
            let field = format!("0 0 {side} {side}");
            view! {
                <svg class="code" viewBox=field role="img" aria-label=words::label(place, count) shape-rendering="crispEdges">
                    <rect class="code-light" width=side height=side />
                    <path class="code-dark" d=code.path() />
                </svg>
            }
            .into_any()
        }
    }
}
