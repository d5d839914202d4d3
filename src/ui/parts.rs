//! Parts of the program that are loaded when they are first needed, and all of them once the page rests, so that
//! nothing is fetched while a match is played. The worker keeps them with the rest.

use std::future::Future;
use std::pin::pin;
use std::task::{Context, Poll, Waker};

use leptos::prelude::*;
use wasm_split_helpers::SplitLoaderError;

use crate::screens;
use crate::widgets::deferred::after_the_frame;

/// What stands beside the part that starts the program with the first ways and the court.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// What comes before a match, between its sets and after it, and what stands or opens below the court.
    Around,
    /// The matches of this phone, the record of one, how it leaves and comes in, and what there is to read.
    Record,
    /// The coordinator's desk, and the review of a match.
    Desk,
    /// What there is to learn: the book.
    Learn,
}

/// The style sheets of two parts, which the page names and does not load. Screens are drawn without theirs where
/// it does not come.
const DESK_STYLE: &str = "desk-style";
const LEARN_STYLE: &str = "learn-style";

impl Part {
    /// In the order in which somebody may want them.
    const ALL: [Part; 4] = [Part::Record, Part::Around, Part::Learn, Part::Desk];

    /// Loads it: all functions of the part, since each notes for itself that it is there.
    async fn load(self) -> Result<(), SplitLoaderError> {
        match self {
            Part::Around => screens::load_around().await,
            Part::Record => {
                screens::load_library().await?;
                screens::load_record().await
            }
            Part::Desk => {
                screens::load_desk().await?;
                device::load_style(DESK_STYLE).await;
                Ok(())
            }
            Part::Learn => {
                screens::load_learn().await?;
                screens::load_practice().await?;
                device::load_style(LEARN_STYLE).await;
                Ok(())
            }
        }
    }
}

/// How far a part is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Loaded {
    No,
    OnItsWay,
    Here,
    Failed,
}

/// How far each part is. Copies are the same.
#[derive(Clone, Copy)]
pub struct Parts {
    loaded: [RwSignal<Loaded>; Part::ALL.len()],
}

impl Parts {
    /// None is there yet.
    pub fn begin() -> Parts {
        Parts {
            loaded: Part::ALL.map(|_| RwSignal::new(Loaded::No)),
        }
    }

    fn of(self, part: Part) -> RwSignal<Loaded> {
        self.loaded[part as usize]
    }

    /// Loads a part unless it is there or on its way.
    fn load(self, part: Part) {
        let loaded = self.of(part);
        if matches!(loaded.get_untracked(), Loaded::OnItsWay | Loaded::Here) {
            return;
        }
        loaded.set(Loaded::OnItsWay);
        device::spawn(async move {
            let came = part.load().await;
            loaded.set(if came.is_ok() {
                Loaded::Here
            } else {
                Loaded::Failed
            });
        });
    }

    /// Loads all of them once the first screen has been drawn.
    pub fn load_all_soon(self) {
        after_the_frame(move || Part::ALL.into_iter().for_each(|part| self.load(part)));
    }
}

/// Draws what stands in a part, at once where that is there.
pub fn of_part<F>(part: Part, draw: impl Fn() -> F + Send + 'static) -> AnyView
where
    F: Future<Output = Result<AnyView, SplitLoaderError>>,
{
    let parts = expect_context::<Parts>();
    parts.load(part);
    let loaded = parts.of(part);
    (move || match loaded.get() {
        Loaded::No | Loaded::OnItsWay => view! { <p class="card">{text::loading()}</p> }.into_any(),
        Loaded::Here => untrack(|| at_once(draw())).unwrap_or_else(|| not_loaded(parts, part)),
        Loaded::Failed => not_loaded(parts, part),
    })
    .into_any()
}

/// What a function of a part gives that is there already, which waits for nothing.
fn at_once(view: impl Future<Output = Result<AnyView, SplitLoaderError>>) -> Option<AnyView> {
    match pin!(view).poll(&mut Context::from_waker(Waker::noop())) {
        Poll::Ready(Ok(view)) => Some(view),
        Poll::Ready(Err(_)) | Poll::Pending => None,
    }
}

/// A part did not come: the network broke off before the phone kept everything.
fn not_loaded(parts: Parts, part: Part) -> AnyView {
    view! {
        <section class="card stack" role="alert">
            <p>{text::part_not_loaded()}</p>
            <button type="button" class="button primary" on:click=move |_| parts.load(part)>
                {text::try_again()}
            </button>
        </section>
    }
    .into_any()
}
