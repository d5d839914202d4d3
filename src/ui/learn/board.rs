//! A situation on the page: the drawing, what can be dragged in it, a control beside it for each, and what
//! the decision functions say.

use leptos::ev::PointerEvent;
use leptos::html;
use leptos::prelude::*;

use super::drawings::drawing;
use super::place::Place;
use super::sketch::{self, Handle};
use crate::memo::Memo;
use crate::shell::{use_shell, Screen};
use crate::widgets::picker::{asked, buttons, fixed, Layout};
use crate::widgets::signal_figure::SignalFigure;
use learn::{Call, Decided, Dial, End, Scale, Situation, Values};
use text::learn as words;

/// A drag that goes on.
#[derive(Clone)]
struct Drag {
    handle: Handle,
    /// Where the finger came down, on the screen.
    from: (f64, f64),
    /// How it was set then.
    set: Values,
}

/// A situation that can be changed.
pub fn board(situation: Situation) -> AnyView {
    let set = RwSignal::new(situation.start());
    let mover = RwSignal::new(first_mover(situation));
    view! {
        <section class="board card stack" id=format!("board-{situation:?}").to_lowercase()>
            <h2>{words::situation(situation)}</h2>
            <p class="muted">{words::drawn(situation)}</p>
            <div class="board-seen stack">
                // It stays in sight while the controls below it are used.
                <div class="board-stays stack">
                    {field(situation, set, mover)} {calls(situation, set)}
                </div>
                {rulings(situation, set)}
            </div>
            <div class="controls stack">
                {controls(situation, set, mover)}
                <button
                    type="button"
                    class="button quiet"
                    on:click=move |_| set.set(situation.start())
                >
                    {words::as_at_first()}
                </button>
            </div>
        </section>
    }
    .into_any()
}

/// Where the controls are for one mover at a time, the first of them.
fn first_mover(situation: Situation) -> Option<u8> {
    let drawn = drawing(situation, &situation.start())?;
    drawn.handles.first()?.mover
}

/// The drawing with its handles.
fn field(
    situation: Situation,
    set: RwSignal<Values>,
    mover: RwSignal<Option<u8>>,
) -> Option<AnyView> {
    let start = drawing(situation, &situation.start())?;
    let window = start.window;
    let count = start.handles.len();
    let node = NodeRef::<html::Div>::new();
    let dragged = StoredValue::new(None::<Drag>);
    let drawn = Memo::new(move |_| drawing(situation, &set.read()));
    let inside = Memo::new(move |_| drawn.get().map(|drawn| drawn.inside).unwrap_or_default());
    let handle_of =
        move |n: usize| drawn.with(|drawn| Some(drawn.as_ref()?.handles.get(n)?.clone()));
    let down = move |event: PointerEvent, n: usize| {
        if event.button() != 0 || !event.is_primary() {
            return;
        }
        let Some(handle) = untrack(|| handle_of(n)) else {
            return;
        };
        device::hold_pointer(&event);
        if handle.mover.is_some() {
            mover.set(handle.mover);
        }
        dragged.set_value(Some(Drag {
            handle,
            from: (event.client_x().into(), event.client_y().into()),
            set: set.get_untracked(),
        }));
    };
    let moved = move |event: PointerEvent| {
        let Some(drag) = dragged.get_value() else {
            return;
        };
        let Some(width) = node
            .get_untracked()
            .map(|node| f64::from(node.client_width()))
        else {
            return;
        };
        let metres = window.size.0 / width.max(1.0);
        let to = (
            (f64::from(event.client_x()) - drag.from.0) * metres,
            (f64::from(event.client_y()) - drag.from.1) * metres,
        );
        let next = after_drag(&drag, to);
        if set.with_untracked(|set| *set != next) {
            set.set(next);
        }
    };
    let up = move |_| dragged.set_value(None);
    let one = |n: usize| {
        let place = move |of: fn((f64, f64)) -> f64| {
            let at = handle_of(n).map_or((0.0, 0.0), |handle| handle.at);
            format!("{:.2}%", of(window.hundredths(at)))
        };
        let of = start.handles[n].mover;
        view! {
            <span
                class="handle"
                class:chosen=move || of.is_some() && mover.get() == of
                style:left=move || place(|(x, _)| x)
                style:top=move || place(|(_, y)| y)
                on:pointerdown=move |event| down(event, n)
                on:pointermove=moved
                on:pointerup=up
                on:pointercancel=up
            >
                <span>{start.handles[n].mark.clone()}</span>
            </span>
        }
        .into_any()
    };
    let handles = (0..count).map(one).collect_view();
    Some(
        view! {
            <div class="board-field" aria-hidden="true" node_ref=node>
                <svg viewBox=window.view_box() inner_html=move || inside.get()></svg>
                {handles}
            </div>
        }
        .into_any(),
    )
}

/// How it is set once a handle has been dragged so far.
fn after_drag(drag: &Drag, (right, down): sketch::Place) -> Values {
    let mut set = drag.set.clone();
    let Handle {
        at,
        across,
        down: along,
        nearest,
        ..
    } = &drag.handle;
    for (way, metres) in [(across, right), (along, down)] {
        if let Some((dial, a_metre)) = way {
            set.set(*dial, drag.set.get(*dial) + metres * a_metre);
        }
    }
    if let Some((dial, places)) = nearest {
        let here = (at.0 + right, at.1 + down);
        let away = |place: &sketch::Place| (place.0 - here.0).hypot(place.1 - here.1);
        let found =
            (0..places.len()).min_by(|a, b| away(&places[*a]).total_cmp(&away(&places[*b])));
        if let Some(found) = found {
            set.set(*dial, found as f64);
        }
    }
    set
}

/// Whose dial it is, where there are several movers.
const fn mover_of(dial: Dial) -> Option<u8> {
    match dial {
        Dial::PlayerDepth(n) | Dial::PlayerRight(n) | Dial::Hitter(n) => Some(n),
        _ => None,
    }
}

/// A control for each dial; those of one mover at a time.
fn controls(situation: Situation, set: RwSignal<Values>, mover: RwSignal<Option<u8>>) -> AnyView {
    let dials: Vec<Dial> = situation.start().dials().collect();
    let mut movers: Vec<u8> = dials.iter().copied().filter_map(mover_of).collect();
    movers.dedup();
    let choose = (!movers.is_empty()).then(|| {
        let named = movers.clone();
        let names = fixed(movers.iter().map(|n| words::mover(situation, *n)));
        let is = Callback::new(move |i: usize| mover.get() == movers.get(i).copied());
        let tap = Callback::new(move |i: usize| mover.set(named.get(i).copied()));
        asked(
            words::which_mover(situation),
            buttons(Layout::Grid, names, Some(is), tap),
        )
    });
    let of_mover = dials
        .iter()
        .copied()
        .filter(|dial| mover_of(*dial).is_some());
    let of_mover = of_mover
        .map(|dial| {
            view! { <div hidden=move || mover.get() != mover_of(dial)>{control(dial, set)}</div> }
        })
        .collect_view();
    let others = dials
        .iter()
        .copied()
        .filter(|dial| mover_of(*dial).is_none());
    let others = others.map(|dial| control(dial, set)).collect_view();
    view! {
        {choose} {of_mover} {others}
    }
    .into_any()
}

fn control(dial: Dial, set: RwSignal<Values>) -> AnyView {
    match dial.scale() {
        Scale::Choice(_) => choice(dial, set),
        Scale::Metres { from, to, step } | Scale::Seconds { from, to, step } => {
            slider(dial, set, (from, to, step))
        }
    }
}

fn choice(dial: Dial, set: RwSignal<Values>) -> AnyView {
    let is = Callback::new(move |i: usize| set.read().choice(dial) == i);
    let tap = Callback::new(move |i: usize| set.update(|set| set.set(dial, i as f64)));
    view! {
        <fieldset class="asked">
            <legend>{words::dial(dial)}</legend>
            {buttons(Layout::Grid, fixed(words::choices(dial).iter().copied()), Some(is), tap)}
        </fieldset>
    }
    .into_any()
}

/// A slider with a step to each side; how it stands is seen and heard in words.
fn slider(dial: Dial, set: RwSignal<Values>, (from, to, step): (f64, f64, f64)) -> AnyView {
    let value = Memo::new(move |_| set.read().get(dial));
    let stands = Memo::new(move |_| words::set_to(dial, value.get()));
    let name = words::dial(dial);
    let by = move |steps: f64| {
        set.update(|set| set.set(dial, set.get(dial) + steps * step));
    };
    let typed = move |event| {
        if let Ok(value) = event_target_value(&event).parse() {
            set.update(|set| set.set(dial, value));
        }
    };
    let stepper = |steps: f64, sign: &'static str, word: &'static str| {
        view! {
            <button
                type="button"
                class="button nudge"
                aria-label=format!("{word}: {name}")
                on:click=move |_| by(steps)
            >
                {sign}
            </button>
        }
        .into_any()
    };
    let less = stepper(-1.0, "\u{2212}", words::less());
    let more = stepper(1.0, "+", words::more_of_it());
    view! {
        <div class="slider">
            <p>
                <span>{name.clone()}</span>
                " "
                <strong class="tabular">{move || stands.get()}</strong>
            </p>
            {less}
            <input
                type="range"
                min=from
                max=to
                step=step
                prop:value=move || value.get().to_string()
                aria-label=name.clone()
                aria-valuetext=move || stands.get()
                on:input=typed
            />
            {more}
        </div>
    }
    .into_any()
}

/// What is decided in a line, by each reading. Who listens hears it whenever it changes.
fn calls(situation: Situation, set: RwSignal<Values>) -> AnyView {
    let count = situation.decide(&situation.start()).len();
    let one = |n: usize| {
        let decided = Memo::new(move |_| situation.decide(&set.read()).get(n).copied());
        let is_fault = Memo::new(move |_| decided.get().is_some_and(|d| d.ruling.is_fault()));
        let call = Memo::new(move |_| decided.with(|d| d.as_ref().map(words::call)));
        let reading = untrack(|| decided.get()).map_or("", |d| words::reading(d.reading));
        view! {
            <p class="call" class:fault=move || is_fault.get() role="status">
                {(!reading.is_empty()).then(|| view! { <span class="muted">{reading}</span> " " })}
                {move || call.get()}
            </p>
        }
        .into_any()
    };
    (0..count).map(one).collect_view().into_any()
}

/// Why, by each reading.
fn rulings(situation: Situation, set: RwSignal<Values>) -> AnyView {
    let count = situation.decide(&situation.start()).len();
    let of = move |n: usize| Memo::new(move |_| situation.decide(&set.read()).get(n).copied());
    let all = (0..count).map(|n| ruling(of(n))).collect_view();
    view! { <div class="rulings" class:beside=count == 2>{all}</div> }.into_any()
}

fn ruling(decided: Memo<Option<Decided>>) -> AnyView {
    let shell = use_shell();
    let of = move |what: fn(&Decided) -> String| decided.with(|d| d.as_ref().map(what));
    let reading = move || {
        let words = decided.with(|d| d.as_ref().map_or("", |d| words::reading(d.reading)));
        (!words.is_empty()).then(|| view! { <h3>{words}</h3> })
    };
    let why = Memo::new(move |_| decided.with(|d| d.as_ref().map_or("", words::why)));
    let rule = Memo::new(move |_| of(|d| words::rule(d.ruling.rule)));
    let margin = Memo::new(move |_| of(words::margin));
    // The arm on the side of the team at fault (30.1).
    let signal = Memo::new(move |_| {
        let ruling = decided.get()?.ruling;
        let right = matches!(ruling.call, Call::Fault { by: End::Right, .. });
        Some((ruling.signal()?, right))
    });
    let shown = move || {
        signal.get().map(|(signal, right)| {
            view! {
                <button
                    type="button"
                    class="button signal-link"
                    on:click=move |_| shell.go(Screen::Learn { place: Place::Signal(signal).code() })
                >
                    <SignalFigure signal mirrored=right moves=false />
                    <span>{words::show_signal(signal)}</span>
                </button>
            }
        })
    };
    view! {
        <div class="ruling">
            {reading}
            <p>{move || why.get()}</p>
            <p class="muted">{move || rule.get()} " \u{b7} " {move || margin.get()}</p>
            {shown}
        </div>
    }
    .into_any()
}
