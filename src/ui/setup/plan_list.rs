//! The plan as a list of cards in the order things happen.

use leptos::html;
use leptos::prelude::*;

use super::begin::BeginCard;
use super::check::CheckCard;
use super::details::{Chevron, MatchDetails};
use super::late_team::LateTeam;
use super::line_up::LineUpsCard;
use super::stand::Steps;
use super::team_list::TeamListsCard;
use super::toss::TossCard;
use super::warm_up::WarmUpCard;
use crate::memo::Memo;
use crate::session::use_session;
use crate::shell::use_shell;
use crate::widgets::deferred::{after_the_frame, defer_render, render_in_batches};
use device::local_time;
use game::entry::Check;
use game::{Kind, Standing};
use rules::{Step, Timing};
use text::setup as words;
use text::{day_of, time_of};

/// Which card is open, and which one is to be brought into sight.
#[derive(Clone, Copy)]
struct Opened {
    step: RwSignal<Option<Step>>,
    wanted: RwSignal<Option<Step>>,
}

impl Opened {
    fn go_to(self, step: Step) {
        self.step.set(Some(step));
        self.wanted.set(Some(step));
    }

    fn toggle(self, step: Step) {
        self.step
            .update(|s| *s = (*s != Some(step)).then_some(step));
    }
}

/// So many cards are built between two frames.
const AT_A_TIME: usize = 3;

/// The cards, with the next step above them.
#[component]
pub(super) fn PlanList() -> impl IntoView {
    let session = use_session();
    let steps = Steps::of(session);
    // Where there is room for a step beside the plan, the next one stands there from the beginning.
    let beside = untrack(|| use_shell().is_roomy());
    let opened = Opened {
        step: RwSignal::new(untrack(|| steps.next()).filter(|_| beside)),
        wanted: RwSignal::new(None),
    };
    provide_context(opened);
    let order = Memo::new(move |_| {
        steps
            .plan
            .with(|p| p.iter().map(|m| m.step).collect::<Vec<_>>())
    });
    let start = move || {
        let start = steps.start.get()?;
        let day = day_of(local_time(start));
        let is_today = day == day_of(local_time(session.now()));
        Some(words::start_at(
            &time_of(local_time(start)),
            (!is_today).then_some(day.as_str()),
            steps.minutes_left.get().unwrap_or_default(),
        ))
    };
    let due_and_late = move || {
        let that_are = |timing| steps.that_are(Standing::Open(timing)).len();
        words::due_and_late(that_are(Timing::Late), that_are(Timing::Due))
    };
    view! {
        <div class="before stack">
            {move || match start() {
                // What is due or late has its line before: the clock must not move what stands below.
                Some(words) => view! {
                    <p class="start-at tabular">{words}</p>
                    <p id="due-and-late">{due_and_late}</p>
                }.into_any(),
                None => view! { <p class="muted">{words::no_start()}</p> }.into_any(),
            }}
            <NextStep steps />
            {defer_render(move || {
                let built = render_in_batches(move || order.read().len(), AT_A_TIME);
                view! {
                    <ol class="plan">
                        <For
                            each=move || order.get().into_iter().take(built.get())
                            key=|step| *step
                            let:step
                        >
                            <Card step steps />
                        </For>
                    </ol>
                    {defer_render(move || {
                        view! { <LateTeam start=steps.start /> <MatchDetails /> }.into_any()
                    })}
                }
                    .into_any()
            })}
        </div>
    }
}

/// The one obvious next step.
#[component]
fn NextStep(steps: Steps) -> impl IntoView {
    let opened = expect_context::<Opened>();
    let next = Memo::new(move |_| steps.next());
    let standing = Memo::new(move |_| steps.standing(next.get()?));
    move || {
        let (step, standing) = (next.get()?, standing.get()?);
        let class = match standing {
            Standing::Failed => "next-step bad",
            Standing::Open(Timing::Late) => "next-step warn",
            _ => "next-step",
        };
        Some(view! {
            <section class=class aria-labelledby="next-step">
                <h2 id="next-step">
                    // How it stands changes with the clock, so it has its room beside a word that stays.
                    <span class="next-word">{words::next(standing)}</span>
                    <span>{words::step(step)}</span>
                </h2>
                <button
                    type="button"
                    class="button primary"
                    on:click=move |_| opened.go_to(step)
                >
                    {words::open_step()}
                </button>
            </section>
        })
    }
}

fn step_id(step: Step) -> String {
    format!("plan-{}", step.code())
}

fn head_id(step: Step) -> String {
    format!("step-{}", step.code())
}

/// One step: its time, how it stands, and what to do when it is opened.
#[component]
fn Card(step: Step, steps: Steps) -> impl IntoView {
    let session = use_session();
    let opened = expect_context::<Opened>();
    let standing = Memo::new(move |_| {
        let ahead = Standing::Open(Timing::Ahead);
        steps.standing(step).unwrap_or(ahead)
    });
    let time = Memo::new(move |_| steps.time(step).map(local_time).map(time_of));
    let is_open = Memo::new(move |_| opened.step.get() == Some(step));
    let head = NodeRef::<html::Button>::new();
    // Outward only: the page scrolls to the step that was asked for, once the step before it has
    // closed, and the focus follows.
    Effect::new(move |_| {
        if opened.wanted.get() == Some(step) {
            request_animation_frame(move || {
                if let Some(head) = head.get_untracked() {
                    head.scroll_into_view();
                    // Fails only for a button that is gone already.
                    let _ = head.focus();
                }
            });
        }
    });
    // What was pressed may be gone once its entry is made.
    Effect::new(move |_| {
        let _number = session.next();
        if is_open.get_untracked() {
            request_animation_frame(move || device::focus_if_lost(&head_id(step)));
        }
    });
    let class = move || {
        let state = match standing.get() {
            Standing::Done => "done",
            Standing::Running => "running",
            Standing::Failed => "failed",
            Standing::Open(Timing::Ahead) => "ahead",
            Standing::Open(Timing::Due) => "due",
            Standing::Open(Timing::Late) => "late",
        };
        format!("step {state}")
    };
    let body = move || match step {
        Step::TeamLists => view! { <TeamListsCard /> }.into_any(),
        Step::Toss => view! { <TossCard /> }.into_any(),
        Step::WarmUp => view! { <WarmUpCard /> }.into_any(),
        Step::LineUps => view! { <LineUpsCard /> }.into_any(),
        Step::LastCheck => view! { <BeginCard /> }.into_any(),
        _ => {
            let done = Callback::new(move |()| {
                if let Some(next) = untrack(|| steps.after(step)) {
                    opened.go_to(next);
                }
            });
            view! { <CheckCard step done /> }.into_any()
        }
    };
    let is_done = move || standing.get() == Standing::Done;
    // The clock ends what is under way: the way on has its room before, so that it moves nothing then.
    let has_way_on =
        Memo::new(move |_| matches!(standing.get(), Standing::Done | Standing::Running));
    view! {
        <li class=class id=step_id(step)>
            <div class="step-row">
                <h3>
                    <button
                        id=head_id(step)
                        node_ref=head
                        type="button"
                        class="step-head"
                        aria-expanded=move || is_open.get().to_string()
                        on:click=move |_| {
                            opened.toggle(step);
                            // What it holds may stand below the foot of the screen.
                            after_the_frame(move || device::bring_into_sight(&step_id(step)));
                        }
                    >
                        <span class="step-name">{words::step(step)}</span>
                        <span class="step-when tabular">
                            {move || time.get().filter(|_| !is_done())}
                            " "
                            <span class="step-standing">
                                {move || words::standing(standing.get())}
                            </span>
                        </span>
                        {(!step.is_ticked()).then(|| view! {
                            <span class="step-sign">
                                {move || if is_done() {
                                    view! { <span aria-hidden="true">"\u{2713}"</span> }.into_any()
                                } else {
                                    view! { <Chevron /> }.into_any()
                                }}
                            </span>
                        })}
                    </button>
                </h3>
                {step.is_ticked().then(|| view! { <Tick step standing /> })}
            </div>
            {move || is_open.get().then(|| view! {
                <fieldset class="step-body stack" disabled=move || !session.may_write()>
                    {body()}
                    {move || has_way_on.get().then(|| view! {
                        <div class="stack" class:waits=move || !is_done()>
                            <GoOn steps step />
                        </div>
                    })}
                </fieldset>
            })}
        </li>
    }
}

/// From a step that is through to the next one.
#[component]
fn GoOn(steps: Steps, step: Step) -> impl IntoView {
    let opened = expect_context::<Opened>();
    let next = Memo::new(move |_| steps.after(step));
    move || {
        next.get().map(|step| {
            view! {
                <button
                    type="button"
                    class="button primary"
                    on:click=move |_| opened.go_to(step)
                >
                    {words::go_on_to(step)}
                </button>
            }
        })
    }
}

/// The tick of a step that is done by looking.
#[component]
fn Tick(step: Step, standing: Memo<Standing>) -> impl IntoView {
    let session = use_session();
    let opened = expect_context::<Opened>();
    let press = move |expected: u32| match standing.get_untracked() {
        // It takes a word to clear what was wrong, and a second look to take a tick away.
        Standing::Failed | Standing::Done => opened.go_to(step),
        Standing::Running | Standing::Open(_) => {
            session.submit_at(
                expected,
                Kind::Check(Check {
                    item: step.code().to_owned(),
                    ok: true,
                    note: None,
                }),
            );
        }
    };
    let expected = Memo::new(move |_| session.next());
    view! {
        <button
            id=format!("tick-{}", step.code())
            type="button"
            class="tick"
            disabled=move || !session.may_write()
            aria-pressed=move || (standing.get() == Standing::Done).to_string()
            aria-label=words::tick(step)
            on:click=move |_| press(expected.get_untracked())
        >
            <span aria-hidden="true">
                {move || match standing.get() {
                    Standing::Done => "\u{2713}",
                    Standing::Failed => "!",
                    _ => "",
                }}
            </span>
        </button>
    }
}
