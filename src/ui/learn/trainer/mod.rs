//! The rally trainer: five minutes of scenes, each watched, whistled, decided and looked at again.

mod answer;
mod film;
mod lesson;
mod over;
mod paint;
mod questions;
mod rally;
mod steps;

use app::learner::{Learner, Sitting, Task, SESSION_SECONDS};
use learn::{draw, mark, Answer, Drawn, Kind, Level, Marked, Place};
use leptos::prelude::*;

use crate::practised;
use crate::session::{use_session, Session};
use crate::shell::{use_shell, Screen};
use crate::widgets::deferred::after_the_frame;
use crate::widgets::picker::{asked, buttons, fixed, Layout};
use text::learn as words;

pub use lesson::page as lesson;

/// How a scene is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Form {
    /// As it happens.
    Moving,
    /// One sentence after the other.
    Steps,
}

/// What the page shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Shows {
    /// What it is, and how it is to be seen.
    Choice,
    /// A scene.
    Rally,
    /// How the session went.
    Over,
}

/// The trainer. Copies are the same.
#[derive(Clone, Copy)]
struct Trainer {
    /// For its clock.
    session: Session,
    shows: RwSignal<Shows>,
    place: RwSignal<Place>,
    form: RwSignal<Form>,
    learner: RwSignal<Learner>,
    sitting: RwSignal<Sitting>,
    /// When the session began, and how many scenes it has had.
    began: StoredValue<i64>,
    turn: StoredValue<u64>,
    /// The scene at hand; none while it is drawn.
    scene: RwSignal<Option<Current>>,
    /// Whether the phone kept what was practised last.
    kept: RwSignal<bool>,
}

/// A scene at hand.
#[derive(Clone, PartialEq)]
struct Current {
    /// What it was drawn from: kind, level, seed.
    from: (Kind, Level, u64),
    drawn: StoredValue<Drawn>,
}

/// The page.
pub fn page() -> AnyView {
    let form = if device::prefers_reduced_motion() {
        Form::Steps
    } else {
        Form::Moving
    };
    let trainer = Trainer {
        session: use_session(),
        shows: RwSignal::new(Shows::Choice),
        place: RwSignal::new(Place::Stand),
        form: RwSignal::new(form),
        learner: RwSignal::new(practised::practised()),
        sitting: RwSignal::new(Sitting::default()),
        began: StoredValue::new(0),
        turn: StoredValue::new(0),
        scene: RwSignal::new(None),
        kept: RwSignal::new(true),
    };
    let shown = move || match trainer.shows.get() {
        Shows::Choice => choice(trainer),
        Shows::Rally => rally::rally(trainer),
        Shows::Over => over::over(trainer),
    };
    view! { <div class="trainer stack">{shown}</div> }.into_any()
}

/// Before a session.
fn choice(trainer: Trainer) -> AnyView {
    let shell = use_shell();
    let to_lesson = move |_| {
        shell.go(Screen::Learn {
            place: crate::learn::place::Place::Lesson.code(),
        });
    };
    let lines = words::trainer_how().map(|line| view! { <li>{line}</li> });
    let places = fixed(Place::ALL.map(words::place));
    let is_place = Callback::new(move |i: usize| trainer.place.get() == Place::ALL[i]);
    let to_place = Callback::new(move |i: usize| trainer.place.set(Place::ALL[i]));
    let forms = [
        (Form::Moving, words::moving()),
        (Form::Steps, words::in_steps()),
    ];
    let is_form = Callback::new(move |i: usize| trainer.form.get() == forms[i].0);
    let to_form = Callback::new(move |i: usize| trainer.form.set(forms[i].0));
    view! {
        <ul class="lines">{lines.into_iter().collect_view()}</ul>
        <p class="muted">{words::shirts()}</p>
        <button type="button" class="button primary" on:click=move |_| trainer.begin()>
            {words::begin()}
        </button>
        {asked(words::from_where(), buttons(Layout::Grid, places, Some(is_place), to_place))}
        {asked(
            words::in_which_form(),
            buttons(Layout::Grid, fixed(forms.map(|form| form.1)), Some(is_form), to_form),
        )}
        <button type="button" class="button quiet" id="to-lesson" on:click=to_lesson>
            {words::lesson_way()}
        </button>
        {over::practised(trainer)}
    }
    .into_any()
}

impl Trainer {
    /// Begins a session.
    fn begin(self) {
        self.sitting.set(Sitting::default());
        self.began.set_value(self.session.time_now());
        self.turn.set_value(0);
        self.shows.set(Shows::Rally);
        self.next();
    }

    /// The next scene, or the end where the time is over. It is drawn after the frame that says so.
    fn next(self) {
        let now = self.session.time_now();
        if self.seconds_left(now) == 0 {
            self.shows.set(Shows::Over);
            return;
        }
        self.scene.set(None);
        after_the_frame(move || {
            let Some(turn) = self.turn.try_get_value() else {
                return;
            };
            let sitting = self.sitting.get_untracked();
            let Task { kind, level } = self.learner.read_untracked().next(&sitting, now, turn);
            self.turn.set_value(turn + 1);
            let seed = now.unsigned_abs();
            // Of each kind most seeds give one.
            let drawn =
                (seed..seed + 8).find_map(|seed| Some((seed, draw(kind, level.band(kind), seed)?)));
            match drawn {
                Some((seed, drawn)) => self.scene.set(Some(Current {
                    from: (kind, level, seed),
                    drawn: StoredValue::new(drawn),
                })),
                None => self.shows.set(Shows::Over),
            }
        });
    }

    /// How long the session still goes on.
    fn seconds_left(self, now: i64) -> u32 {
        let gone = u32::try_from((now - self.began.get_value()).max(0) / 1000).unwrap_or(u32::MAX);
        SESSION_SECONDS.saturating_sub(gone)
    }

    /// Takes the answer to a scene in, and keeps what that makes of it.
    fn took(self, drawn: &Drawn, answer: &Answer) -> Marked {
        let marked = mark(&drawn.scene, &drawn.verdict, answer);
        let marked = match self.form.get_untracked() {
            Form::Moving => marked,
            Form::Steps => marked.in_steps(),
        };
        let now = self.session.time_now();
        self.learner
            .update(|learner| learner.took(drawn.kind, &marked, now));
        self.sitting
            .update(|sitting| sitting.scenes.push((drawn.kind, marked)));
        self.kept.set(self.learner.with_untracked(practised::keep));
        marked
    }
}
