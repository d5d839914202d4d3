//! The answer to a scene: the deciding moment slowed and held, with its margin, its rule, and what else happened.

use learn::{measure, Call, Drawn, Judged, Margin, Marked, Place, Timing};
use leptos::prelude::*;
use rules::Signal;

use super::film::Reel;
use super::rally::Deciding;
use crate::shell::{use_shell, Screen};
use crate::widgets::signal_figure::SignalFigure;
use text::learn as words;

/// How long before the deciding moment the slow film begins, in seconds of the scene.
pub const BEFORE: f64 = 0.7;
/// How slow it is.
pub const SLOW: f64 = 0.25;

/// All of it; the picture is in sight, wherever the reasons had been scrolled to.
pub fn answer(deciding: Deciding, marked: Marked) -> AnyView {
    device::scroll_to(0.0);
    let drawn = deciding.drawn.get_value();
    let looked = drawn.about().copied();
    let moment = looked.map_or(drawn.scene.until(), |one| one.moment);
    let measure = looked.and_then(|one| measure(&drawn.scene, &one));
    let still = device::prefers_reduced_motion();
    let show = move || {
        let from = if still {
            moment
        } else {
            (moment - BEFORE).max(0.0)
        };
        let reel = Reel {
            from,
            to: moment,
            speed: SLOW,
            held: 0.0,
            measure,
        };
        deciding.film.run(reel, || ());
    };
    show();
    let was_asked = matches!(marked.timing, Timing::InTime | Timing::Late);
    let line = |right: bool, words: String| {
        view! {
            <p class="call" class:fault=!right>
                {words}
            </p>
        }
        .into_any()
    };
    let beats = was_asked.then(|| {
        view! {
            {line(marked.side, words::side_shown(marked.side).to_owned())}
            {line(marked.nature, words::reason_said(marked.nature).to_owned())}
        }
    });
    let next = move |_| deciding.trainer.next();
    let end = use_shell();
    let stop = move |_| deciding.trainer.stops();
    let signal = signal(&drawn, deciding.trainer.place.get_untracked());
    view! {
        <div class="trainer-marks" role="status" id="beat" tabindex="-1">
            {line(marked.timing.is_right(), words::whistled(&marked))} {beats}
        </div>
        <button type="button" class="button primary" id="next" on:click=next>
            {words::next_scene()}
        </button>
        <section class="trainer-truth stack">
            <h2>{words::decided(&drawn.verdict)}</h2>
            {why(&drawn)}
            {signal}
        </section>
        {also(&drawn)}
        <div class="row">
            <button type="button" class="button" on:click=move |_| show()>
                {words::see_again()}
            </button>
            {looked
                .and_then(|one| learn::Topic::of(one.about).map(|_| one.about))
                .map(|cause| {
                    view! {
                        <button
                            type="button"
                            class="button"
                            on:click=move |_| end.go(Screen::decision(cause))
                        >
                            {words::read_about()}
                        </button>
                    }
                })}
            <button type="button" class="button quiet" on:click=stop>
                {words::stop()}
            </button>
        </div>
        {move || {
            (!deciding.trainer.kept.get())
                .then(|| view! { <p role="alert">{words::not_kept()}</p> })
        }}
    }
    .into_any()
}

/// What was seen, why that is so, by which rule, and how near it was.
pub fn why(drawn: &Drawn) -> Option<AnyView> {
    let one = drawn.about()?;
    let (rule, why) = words::why_in_scene(one);
    let margin = match one.ruling.margin {
        Margin::Seen => None,
        _ => Some(words::margin_of(one.ruling)),
    };
    // Of two faults it takes another rule to say what they come to together.
    let together = drawn.verdict.ruling;
    let together = (together.call != Call::PlayOn && together.rule != one.ruling.rule).then(|| {
        view! {
            <p>{words::why_of(together)}</p>
            <p class="muted">{words::rule(together.rule)}</p>
        }
    });
    Some(
        view! {
            {together}
            <p>{words::fact(&drawn.scene, one)}</p>
            <p>{why}</p>
            <p class="muted">{words::rule(rule)} {margin.map(|margin| format!(" · {margin}"))}</p>
        }
        .into_any(),
    )
}

/// The signal and the arm, on the side of the team that it concerns as it is seen from there.
pub fn signal(drawn: &Drawn, place: Place) -> Option<AnyView> {
    let signal = drawn.verdict.ruling.signal()?;
    let Call::Fault { by, .. } = drawn.verdict.ruling.call else {
        return Some(figure(signal, false));
    };
    Some(figure(signal, place.sees_on_the_right(by)))
}

fn figure(signal: Signal, right: bool) -> AnyView {
    view! {
        <div class="trainer-signal">
            <SignalFigure signal mirrored=right moves=false />
            <span>{words::show_signal(signal)}</span>
        </div>
    }
    .into_any()
}

/// What else happened: the other faults, and what came near to one.
pub fn also(drawn: &Drawn) -> AnyView {
    let say = |one: &Judged| {
        let fact = words::fact(&drawn.scene, one)?;
        let (rule, why) = words::why_in_scene(one);
        Some(
            view! {
                <li>
                    {fact} " " {why} " " <span class="muted">{words::rule(rule)}</span>
                </li>
            }
            .into_any(),
        )
    };
    let list = |title: &'static str, lines: Vec<AnyView>| {
        (!lines.is_empty()).then(|| {
            view! {
                <section class="stack">
                    <h3>{title}</h3>
                    <ul class="lines">{lines}</ul>
                </section>
            }
        })
    };
    let others = match drawn.verdict.ruling.call {
        Call::Replay => words::other_fault(),
        Call::PlayOn | Call::Fault { .. } => words::also_fault(),
    };
    view! {
        {list(others, drawn.other_faults().filter_map(say).collect())}
        {list(words::also(), drawn.near_misses().filter_map(say).collect())}
    }
    .into_any()
}
