//! The rally trainer: five minutes of scenes, each watched, whistled, decided and looked at again.

mod answer;
mod film;
mod lesson;
mod over;
mod paint;
mod questions;
mod rally;
mod steps;

use std::cell::RefCell;

use app::learner::{goes_on, Learner, Sitting, Task, SESSION_SECONDS};
use app::shown::Shown;
use learn::{mark, Answer, Drawn, Marked, Place};
use leptos::prelude::*;

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
    /// What was made of it.
    answered: StoredValue<Option<Marked>>,
    /// Whether the phone kept what was practised last.
    kept: RwSignal<bool>,
}

/// A scene at hand.
#[derive(Clone, PartialEq)]
struct Current {
    /// What it was drawn from.
    from: String,
    drawn: StoredValue<Drawn>,
    /// What was made of it, where it has been answered before the page was left.
    answered: Option<Marked>,
}

/// A session that was left in its middle: to read about a decision, or by a slip.
struct Left {
    /// When, in milliseconds since 1970.
    at: i64,
    seconds: u32,
    turn: u64,
    place: Place,
    form: Form,
    sitting: Sitting,
    /// The scene that was answered last.
    answered: Option<(String, Drawn, Marked)>,
}

thread_local! {
    static LEFT: RefCell<Option<Left>> = const { RefCell::new(None) };
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
        learner: RwSignal::new(device::settings().learner()),
        sitting: RwSignal::new(Sitting::default()),
        began: StoredValue::new(0),
        turn: StoredValue::new(0),
        scene: RwSignal::new(None),
        answered: StoredValue::new(None),
        kept: RwSignal::new(true),
    };
    trainer.goes_on();
    on_cleanup(move || trainer.leaves());
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

    /// The next scene, or the end where the time is over. It is drawn after the frame that says so, and shown after
    /// one more: the first time both cost most, and together more than a task may take on a slow phone.
    fn next(self) {
        let now = self.session.time_now();
        if self.seconds_left(now) == 0 {
            self.shows.set(Shows::Over);
            return;
        }
        self.scene.set(None);
        self.answered.set_value(None);
        after_the_frame(move || {
            let Some(turn) = self.turn.try_get_value() else {
                return;
            };
            let sitting = self.sitting.get_untracked();
            let Task { kind, level } = self.learner.read_untracked().next(&sitting, now, turn);
            self.turn.set_value(turn + 1);
            let drawn = Shown::from_seed(kind, level, now.unsigned_abs());
            after_the_frame(move || {
                // The page may have been left meanwhile.
                if self.turn.try_get_value() != Some(turn + 1) {
                    return;
                }
                match drawn {
                    Some(shown) => self.scene.set(Some(Current {
                        from: shown.from(),
                        drawn: StoredValue::new(shown.drawn),
                        answered: None,
                    })),
                    None => self.shows.set(Shows::Over),
                }
            });
        });
    }

    /// Takes up a session that was left a moment ago, at the answer that was read, or with a new scene.
    fn goes_on(self) {
        let now = self.session.time_now();
        let Some(left) = LEFT.take().filter(|left| goes_on(left.at, now)) else {
            return;
        };
        self.place.set(left.place);
        self.form.set(left.form);
        self.sitting.set(left.sitting);
        self.turn.set_value(left.turn);
        let gone = SESSION_SECONDS.saturating_sub(left.seconds);
        self.began.set_value(now - i64::from(gone) * 1000);
        self.shows.set(Shows::Rally);
        match left.answered {
            Some((from, drawn, marked)) => {
                self.answered.set_value(Some(marked));
                self.scene.set(Some(Current {
                    from,
                    drawn: StoredValue::new(drawn),
                    answered: Some(marked),
                }));
            }
            None => self.next(),
        }
    }

    /// Keeps a session that is left in its middle, as long as the page lives.
    fn leaves(self) {
        if self.shows.get_untracked() != Shows::Rally {
            return;
        }
        let at = self.session.time_now();
        let scene = self.scene.get_untracked();
        let answered = self.answered.get_value().zip(scene);
        LEFT.set(Some(Left {
            at,
            seconds: self.seconds_left(at),
            turn: self.turn.get_value(),
            place: self.place.get_untracked(),
            form: self.form.get_untracked(),
            sitting: self.sitting.get_untracked(),
            answered: answered.map(|(marked, scene)| (scene.from, scene.drawn.get_value(), marked)),
        }));
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
        // What another tab has kept meanwhile stays.
        if self.kept.get_untracked() {
            self.learner.set(device::settings().learner());
        }
        self.learner
            .update(|learner| learner.took(drawn.kind, &marked, now));
        self.sitting
            .update(|sitting| sitting.scenes.push((drawn.kind, marked)));
        self.answered.set_value(Some(marked));
        self.kept.set(
            self.learner
                .with_untracked(|learner| device::settings().keep_learner(learner)),
        );
        marked
    }
}
