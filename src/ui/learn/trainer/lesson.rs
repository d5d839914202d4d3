//! A lesson: a scene large for a class, everybody decides, then the answer in slow motion. Nothing of it is kept.

use learn::{measure, Drawn, Level, Place};
use leptos::prelude::*;
use rules::Group;

use super::answer::{also, signal, why, BEFORE, SLOW};
use super::film::{Film, Reel};
use super::rally::due;
use crate::memo::Memo;
use crate::session::{use_session, Session};
use crate::widgets::deferred::after_the_frame;
use crate::widgets::picker::{asked, buttons, fixed, Layout};
use app::lesson::{Lesson, Vote};
use text::learn as words;

/// What the page shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Shows {
    Choice,
    Scene,
}

/// The lesson on the screen. Copies are the same.
#[derive(Clone, Copy)]
struct Class {
    /// For its clock.
    session: Session,
    shows: RwSignal<Shows>,
    /// What it is about; everything where none is chosen.
    about: RwSignal<Option<Group>>,
    level: RwSignal<Level>,
    place: RwSignal<Place>,
    /// What is gone through, and how far the class is in it.
    lesson: StoredValue<Lesson>,
    turn: StoredValue<u64>,
    /// The scene with what it was drawn from; none while it is drawn.
    scene: RwSignal<Option<(String, StoredValue<Drawn>)>>,
    answered: RwSignal<bool>,
    votes: RwSignal<[u16; Vote::ALL.len()]>,
}

/// The page.
pub fn page() -> AnyView {
    let session = use_session();
    let class = Class {
        session,
        shows: RwSignal::new(Shows::Choice),
        about: RwSignal::new(None),
        level: RwSignal::new(Level::Clear),
        place: RwSignal::new(Place::Stand),
        lesson: StoredValue::new(Lesson {
            about: None,
            level: Level::Clear,
            seed: 0,
        }),
        turn: StoredValue::new(0),
        scene: RwSignal::new(None),
        answered: RwSignal::new(false),
        votes: RwSignal::new([0; Vote::ALL.len()]),
    };
    let shown = move || match class.shows.get() {
        Shows::Choice => choice(class),
        Shows::Scene => large(class),
    };
    view! { <div class="trainer stack">{shown}</div> }.into_any()
}

fn vote_words(vote: Vote) -> &'static str {
    match vote {
        Vote::Left => words::vote_left(),
        Vote::Right => words::vote_right(),
        Vote::PlayOn => words::vote_play_on(),
        Vote::Replay => words::vote_replay(),
    }
}

/// In the colour of the team that gets the point.
fn vote_class(vote: Vote) -> &'static str {
    match vote {
        Vote::Left => "button lesson-vote team-b",
        Vote::Right => "button lesson-vote team-a",
        Vote::PlayOn | Vote::Replay => "button lesson-vote",
    }
}

/// Before the first scene.
fn choice(class: Class) -> AnyView {
    let lines = words::lesson_how().map(|line| view! { <li>{line}</li> });
    let about = move |i: usize| i.checked_sub(1).map(|i| Group::ALL[i]);
    let names = std::iter::once(words::everything()).chain(Group::ALL.map(text::group));
    let is_about = Callback::new(move |i: usize| class.about.get() == about(i));
    let to_about = Callback::new(move |i: usize| class.about.set(about(i)));
    let is_level = Callback::new(move |i: usize| class.level.get() == Level::ALL[i]);
    let to_level = Callback::new(move |i: usize| class.level.set(Level::ALL[i]));
    let is_place = Callback::new(move |i: usize| class.place.get() == Place::ALL[i]);
    let to_place = Callback::new(move |i: usize| class.place.set(Place::ALL[i]));
    let begin = move |_| class.begin();
    view! {
        <ul class="lines">{lines.into_iter().collect_view()}</ul>
        <button type="button" class="button primary" id="lesson-begin" on:click=begin>
            {words::lesson_begin()}
        </button>
        {asked(
            words::lesson_about(),
            buttons(Layout::Grid, fixed(names), Some(is_about), to_about),
        )}
        {asked(
            words::how_close(),
            buttons(Layout::Grid, fixed(Level::ALL.map(words::level)), Some(is_level), to_level),
        )}
        {asked(
            words::from_where(),
            buttons(Layout::Grid, fixed(Place::ALL.map(words::place)), Some(is_place), to_place),
        )}
    }
    .into_any()
}

/// The scene at hand, as large as the screen.
fn large(class: Class) -> AnyView {
    let current = Memo::new(move |_| {
        class
            .scene
            .with(|scene| scene.as_ref().map(|s| s.0.clone()))
    });
    let shown = move || {
        let from = current.get();
        let drawn = class.scene.get_untracked().map(|scene| scene.1);
        match (from, drawn) {
            (Some(from), Some(drawn)) => scene(class, from, drawn),
            _ => view! { <p class="card">{text::loading()}</p> }.into_any(),
        }
    };
    view! { <div class="lesson">{shown}</div> }.into_any()
}

fn scene(class: Class, from: String, drawn: StoredValue<Drawn>) -> AnyView {
    let place = class.place.get_untracked();
    let film = Film::new(drawn, place);
    let until = drawn.with_value(|drawn| drawn.scene.until());
    let still = device::prefers_reduced_motion();
    let play = move || {
        film.run(
            Reel {
                from: if still { until } else { 0.0 },
                to: until,
                speed: 1.0,
                held: 0.0,
                measure: None,
            },
            || (),
        );
    };
    let slowly = move || {
        let (moment, measure) = drawn.with_value(|drawn| {
            let looked = drawn.about().copied();
            let moment = looked.map_or(until, |one| one.moment);
            (moment, looked.and_then(|one| measure(&drawn.scene, &one)))
        });
        film.run(
            Reel {
                from: if still {
                    moment
                } else {
                    (moment - BEFORE).max(0.0)
                },
                to: moment,
                speed: SLOW,
                held: 0.0,
                measure,
            },
            || (),
        );
    };
    play();
    let again = move |_| {
        if class.answered.get_untracked() {
            slowly();
        } else {
            play();
        }
    };
    let answer = move |_| {
        class.answered.set(true);
        slowly();
    };
    let due = drawn.with_value(due);
    let plays_by = drawn.with_value(|drawn| words::plays_by(drawn.scene.under_net));
    let right = drawn.with_value(|drawn| Vote::of(drawn.verdict.ruling.call));
    let vote = move |i: usize| {
        let vote = Vote::ALL[i];
        let count = move || class.votes.read()[i];
        let is_right = move || class.answered.get() && vote == right;
        view! {
            <button
                type="button"
                class=vote_class(vote)
                class:right=is_right
                disabled=move || class.answered.get()
                on:click=move |_| class.votes.update(|votes| votes[i] = votes[i].saturating_add(1))
            >
                <span>{move || is_right().then_some("\u{2713} ")} {vote_words(vote)}</span>
                <strong class="tabular">{count}</strong>
            </button>
        }
        .into_any()
    };
    let told = move || {
        class.answered.get().then(|| {
            drawn.with_value(|drawn| {
                view! {
                    <div class="lesson-answer" role="status">
                        <h2>{words::decided(&drawn.verdict)}</h2>
                        {why(drawn)}
                        {signal(drawn, place)}
                        {also(drawn)}
                    </div>
                }
            })
        })
    };
    let forward = move || {
        if class.answered.get() {
            view! {
                <button type="button" class="button primary" id="lesson-next" on:click=move |_| class.next()>
                    {words::next_scene()}
                </button>
            }
            .into_any()
        } else {
            view! {
                <button type="button" class="button primary" id="lesson-answer" on:click=answer>
                    {words::lesson_answer()}
                </button>
            }
            .into_any()
        }
    };
    view! {
        <canvas
            class="trainer-field lesson-field"
            role="img"
            aria-label=words::picture()
            data-scene=from
            node_ref=film.node
        ></canvas>
        <div class="lesson-below">
            {due.map(|due| view! { <p class="trainer-line">{due}</p> })}
            {plays_by.map(|form| view! { <p class="trainer-form">{form}</p> })}
            {told}
            <p class="lesson-ask" hidden=move || class.answered.get()>
                {words::lesson_ask()}
            </p>
            <div class="lesson-votes">{(0..Vote::ALL.len()).map(vote).collect_view()}</div>
            <div class="row">
                {forward}
                <button type="button" class="button" on:click=again>
                    {words::see_again()}
                </button>
                <button
                    type="button"
                    class="button quiet"
                    id="lesson-end"
                    on:click=move |_| class.shows.set(Shows::Choice)
                >
                    {words::lesson_end()}
                </button>
            </div>
        </div>
    }
    .into_any()
}

impl Class {
    /// Begins with what was chosen.
    fn begin(self) {
        self.lesson.set_value(Lesson {
            about: self.about.get_untracked(),
            level: self.level.get_untracked(),
            seed: self.session.time_now().unsigned_abs(),
        });
        self.turn.set_value(0);
        self.shows.set(Shows::Scene);
        self.next();
    }

    /// Another scene, drawn after the frame that says so.
    fn next(self) {
        self.scene.set(None);
        self.answered.set(false);
        self.votes.set([0; Vote::ALL.len()]);
        after_the_frame(move || {
            let Some(turn) = self.turn.try_get_value() else {
                return;
            };
            self.turn.set_value(turn + 1);
            match self.lesson.get_value().scene(turn) {
                Some(shown) => self
                    .scene
                    .set(Some((shown.from(), StoredValue::new(shown.drawn)))),
                None => self.shows.set(Shows::Choice),
            }
        });
    }
}
