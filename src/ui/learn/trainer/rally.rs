//! One scene from the first moment to the answer.

use device::now_ms;
use learn::{mark, Answer, Drawn, Marked, Nature, Timing};
use leptos::ev::{KeyboardEvent, MouseEvent, PointerEvent};
use leptos::prelude::*;

use super::film::{Film, Reel};
use super::{answer, questions, steps, Current, Form, Trainer};
use crate::memo::Memo;
use text::learn as words;

/// How long the first moment is held, in milliseconds, so that the eye finds the ball.
const READY_MS: f64 = 900.0;

/// The beats of a decision.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Beat {
    /// The scene runs, or is told.
    Watch,
    /// Who serves next.
    Side,
    /// Why.
    Why,
    /// All is said.
    Answer(Marked),
}

/// A decision that is being made. Copies are the same.
#[derive(Clone, Copy)]
pub struct Deciding {
    pub trainer: Trainer,
    pub drawn: StoredValue<Drawn>,
    pub film: Film,
    pub beat: RwSignal<Beat>,
    answer: StoredValue<Answer>,
}

/// The scene at hand, and what goes on around it.
pub fn rally(trainer: Trainer) -> AnyView {
    let current = Memo::new(move |_| trainer.scene.get());
    view! {
        {move || match current.get() {
            None => view! { <p class="card">{text::loading()}</p> }.into_any(),
            Some(current) => scene(trainer, &current),
        }}
    }
    .into_any()
}

fn scene(trainer: Trainer, current: &Current) -> AnyView {
    // The page may have been scrolled down to the button that leads here.
    device::scroll_to(0.0);
    let drawn = current.drawn;
    let place = trainer.place.get_untracked();
    let deciding = Deciding {
        trainer,
        drawn,
        film: Film::new(drawn, place),
        beat: RwSignal::new(current.answered.map_or(Beat::Watch, Beat::Answer)),
        answer: StoredValue::new(Answer::default()),
    };
    let seconds = trainer.seconds_left(trainer.session.time_now());
    let due = drawn.with_value(due);
    let plays_by = drawn.with_value(|drawn| words::plays_by(drawn.scene.under_net));
    let from = current.from.clone();
    let form = trainer.form.get_untracked();
    let until = drawn.with_value(|drawn| drawn.scene.until());
    match form {
        // The answer shows what it is about.
        _ if current.answered.is_some() => {}
        Form::Moving => deciding.film.run(
            Reel {
                from: 0.0,
                to: until,
                speed: 1.0,
                held: READY_MS,
                measure: None,
            },
            move || deciding.no_whistle(),
        ),
        Form::Steps => deciding.film.hold(0.0),
    }
    let below = move || match deciding.beat.get() {
        Beat::Watch if form == Form::Steps => steps::steps(deciding),
        Beat::Watch => whistle(deciding),
        Beat::Side => questions::side(deciding),
        Beat::Why => questions::why(deciding),
        Beat::Answer(marked) => answer::answer(deciding, marked),
    };
    // The button that led on is gone: whoever uses keys goes on from the next question.
    Effect::new(move |_| {
        let next = match deciding.beat.get() {
            Beat::Watch => "step",
            Beat::Side | Beat::Why | Beat::Answer(_) => "beat",
        };
        request_animation_frame(move || device::focus_if_lost(next));
    });
    view! {
        <div class="trainer-rally" data-scene=from>
            <div class="trainer-seen">
                <p class="trainer-line">
                    <span>{due}</span>
                    <span class="muted tabular">{words::left(seconds)}</span>
                </p>
                {plays_by.map(|form| view! { <p class="trainer-form">{form}</p> })}
                <canvas
                    class="trainer-field"
                    role="img"
                    aria-label=match form {
                        Form::Moving => words::picture(),
                        Form::Steps => words::picture_told(),
                    }
                    node_ref=deciding.film.node
                ></canvas>
            </div>
            <div class="trainer-below stack">{below}</div>
        </div>
    }
    .into_any()
}

/// Whose turn to serve it is, where somebody serves.
pub fn due(drawn: &Drawn) -> Option<String> {
    let serves = |event: &learn::Event| matches!(event.act, learn::Act::ServiceHit { .. });
    let scene = &drawn.scene;
    scene
        .events
        .iter()
        .any(serves)
        .then(|| words::due(scene.serving, scene.due))
}

/// One large area. What counts is when the finger came down, by the stamp of the event.
fn whistle(deciding: Deciding) -> AnyView {
    let down = move |event: PointerEvent| deciding.whistles_at(event.time_stamp());
    let key = move |event: KeyboardEvent| {
        if [" ", "Enter"].contains(&event.key().as_str()) && !event.repeat() {
            event.prevent_default();
            deciding.whistles_at(event.time_stamp());
        }
    };
    // Whoever presses it by other means.
    let click = move |event: MouseEvent| deciding.whistles_at(event.time_stamp());
    let node = NodeRef::<leptos::html::Button>::new();
    Effect::new(move |_| {
        if let Some(button) = node.get() {
            // Only keys lose by it where it fails.
            let _ = button.focus();
        }
    });
    view! {
        <button
            type="button"
            class="trainer-whistle"
            id="whistle"
            node_ref=node
            on:pointerdown=down
            on:keydown=key
            on:click=click
        >
            {words::whistle()}
        </button>
    }
    .into_any()
}

impl Deciding {
    /// A whistle at a moment of the wall.
    fn whistles_at(self, wall: f64) {
        if self.film.waits(wall) {
            return;
        }
        // A stamp may be a little ahead of the frame, never of now.
        self.whistles(self.film.moment(wall.min(now_ms())));
    }

    /// A whistle at a moment of the scene.
    pub fn whistles(self, at: f64) {
        if self.beat.get_untracked() != Beat::Watch {
            return;
        }
        self.answer.update_value(|answer| answer.whistle = Some(at));
        self.film.hold(at);
        let timing = self.drawn.with_value(|drawn| {
            mark(&drawn.scene, &drawn.verdict, &self.answer.get_value()).timing
        });
        match timing {
            Timing::InTime | Timing::Late => self.beat.set(Beat::Side),
            Timing::Early | Timing::Needless | Timing::Missed | Timing::RightlyNone => self.done(),
        }
    }

    /// The scene is over, and nobody whistled.
    pub fn no_whistle(self) {
        if self.beat.try_get_untracked() == Some(Beat::Watch) {
            self.done();
        }
    }

    /// The side that serves next is shown.
    pub fn shows_side(self, side: learn::End) {
        self.answer.update_value(|answer| answer.side = Some(side));
        self.beat.set(Beat::Why);
    }

    /// The rally is played again: the side that served does so once more.
    pub fn plays_again(self) {
        let serving = self.drawn.with_value(|drawn| drawn.scene.serving);
        self.answer.update_value(|answer| {
            answer.side = Some(serving);
            answer.nature = Some(Nature::Replay);
        });
        self.done();
    }

    /// The reason is said.
    pub fn says(self, cause: rules::Cause) {
        self.answer
            .update_value(|answer| answer.nature = Some(Nature::Fault(cause)));
        self.done();
    }

    fn done(self) {
        let answer = self.answer.get_value();
        let marked = self
            .drawn
            .with_value(|drawn| self.trainer.took(drawn, &answer));
        self.beat.set(Beat::Answer(marked));
    }
}
