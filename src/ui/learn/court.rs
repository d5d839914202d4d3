//! The court to scale: a tap on a zone or a line says what it is, who may be there, and which decisions belong to
//! it; and the heights of the net.

use leptos::ev::MouseEvent;
use leptos::html;
use leptos::prelude::*;

use super::drawings::courts;
use super::place::Place;
use super::sketch::Sketch;
use super::ways;
use crate::memo::Memo;
use crate::widgets::deferred::after_the_frame;
use crate::widgets::picker::{asked, buttons, fixed, Layout};
use learn::{Mark, Point, FREE_ZONE, HALF_LENGTH, HALF_WIDTH, LINE_JUDGES, SECOND_REFEREE, STAND};
use rules::{AGE_HEIGHTS, MEN, WOMEN};
use text::learn as words;

/// How much is seen: the playing area, and table and benches beyond it, in metres.
const ALONG: f64 = HALF_LENGTH + FREE_ZONE + 0.3;
const TOWARDS_STAND: f64 = HALF_WIDTH + FREE_ZONE + 0.3;
const TOWARDS_TABLE: f64 = HALF_WIDTH + FREE_ZONE + 1.5;

/// Where it is said what was tapped.
const ABOUT: &str = "about-mark";

/// The page.
pub fn page() -> AnyView {
    let chosen = RwSignal::new(Mark::FrontZone);
    let names = fixed(Mark::ALL.map(words::mark));
    let is = Callback::new(move |i: usize| chosen.get() == Mark::ALL[i]);
    // What is said of it stands above the list.
    let tap = Callback::new(move |i: usize| {
        chosen.set(Mark::ALL[i]);
        after_the_frame(|| device::bring_into_sight(ABOUT));
    });
    let list = asked(
        words::all_marks(),
        buttons(Layout::Lines, names, Some(is), tap),
    );
    view! {
        <p>{words::court_more()}</p>
        <div class="board court-page">
            <div class="stack">
                {drawing(chosen)} <div class="card stack">{move || about(chosen.get())}</div>
            </div>
            <div class="controls">{list}</div>
        </div>
        {heights()}
    }
    .into_any()
}

/// A drawing of it in which one thing is shown.
pub fn shown(mark: Mark) -> AnyView {
    let mut sketch = whole();
    outline(&mut sketch, mark);
    let drawn = sketch.done();
    view! {
        <div class="board-field" aria-hidden="true">
            <svg viewBox=drawn.window.view_box() inner_html=drawn.inside></svg>
        </div>
    }
    .into_any()
}

/// All of it, with nothing shown in it.
fn whole() -> Sketch {
    let mut sketch = Sketch::new(
        (-ALONG, -TOWARDS_TABLE),
        (2.0 * ALONG, TOWARDS_TABLE + TOWARDS_STAND),
    );
    around(&mut sketch);
    sketch
}

/// The drawing; what is under a finger is asked of the measurements.
fn drawing(chosen: RwSignal<Mark>) -> AnyView {
    let node = NodeRef::<html::Div>::new();
    let drawn = whole().done();
    let window = drawn.window;
    let marked = Memo::new(move |_| {
        let mut sketch = Sketch::new(window.from, window.size);
        outline(&mut sketch, chosen.get());
        sketch.done().inside
    });
    let tapped = move |event: MouseEvent| {
        let Some(node) = node.get_untracked() else {
            return;
        };
        let metres = window.size.0 / f64::from(node.client_width()).max(1.0);
        let place = Point {
            x: window.from.0 + f64::from(event.offset_x()) * metres,
            // The referee looks along y, so what is far away is up.
            y: -(window.from.1 + f64::from(event.offset_y()) * metres),
            z: 0.0,
        };
        if let Some(mark) = Mark::at(place) {
            chosen.set(mark);
        }
    };
    view! {
        <p class="muted">{words::court_drawn()}</p>
        <div class="board-field whole-court" aria-hidden="true" node_ref=node on:click=tapped>
            <svg viewBox=window.view_box()>
                <g inner_html=drawn.inside></g>
                <g inner_html=move || marked.get()></g>
            </svg>
        </div>
    }
    .into_any()
}

/// The playing area with everybody's place.
fn around(sketch: &mut Sketch) {
    let (l, w) = (HALF_LENGTH + FREE_ZONE, HALF_WIDTH + FREE_ZONE);
    sketch.area("free-zone", (-l, -w), (l, w));
    courts(sketch);
    sketch.line(
        "net-edge",
        &[(0.0, -HALF_WIDTH - 0.7), (0.0, HALF_WIDTH + 0.7)],
    );
    let table = -w;
    sketch.area("thing", (-1.6, table - 0.2), (1.6, table - 1.0));
    for side in [-1.0, 1.0] {
        sketch.area(
            "thing",
            (side * 3.4, table - 0.3),
            (side * 8.4, table - 0.8),
        );
    }
    for place in LINE_JUDGES.into_iter().chain([STAND, SECOND_REFEREE]) {
        sketch.circle("official", (place.x, -place.y), 0.35);
    }
}

/// Shows which part is meant, on both courts.
fn outline(sketch: &mut Sketch, mark: Mark) {
    let (l, w) = (HALF_LENGTH, HALF_WIDTH);
    let a = learn::ATTACK_LINE;
    let (far, out) = (w + FREE_ZONE, l + FREE_ZONE);
    let both = |sketch: &mut Sketch, from: (f64, f64), to: (f64, f64)| {
        for side in [-1.0, 1.0] {
            sketch.area("meant", (side * from.0, from.1), (side * to.0, to.1));
        }
    };
    match mark {
        Mark::FrontZone => both(sketch, (0.0, -w), (a, w)),
        Mark::BackZone => both(sketch, (a, -w), (l, w)),
        Mark::ServiceZone => both(sketch, (l, -w), (out, w)),
        Mark::FreeZone => {
            both(sketch, (0.0, w), (out, far));
            both(sketch, (0.0, -w), (out, -far));
            both(sketch, (l, -w), (out, w));
        }
        // The table is far from the referee, which is up.
        Mark::SubstitutionZone => both(sketch, (0.0, -w), (a, -far)),
        Mark::LiberoZone => both(sketch, (a, -w), (l, -far)),
        Mark::EndLine => both(sketch, (l - 0.2, -w), (l + 0.2, w)),
        Mark::SideLine => {
            both(sketch, (0.0, -w - 0.2), (l, -w + 0.2));
            both(sketch, (0.0, w - 0.2), (l, w + 0.2));
        }
        Mark::CentreLine => sketch.area("meant", (-0.2, -w), (0.2, w)),
        Mark::AttackLine => both(sketch, (a - 0.2, -w), (a + 0.2, w)),
        Mark::Net => sketch.area("meant", (-0.35, -w - 0.9), (0.35, w + 0.9)),
        Mark::Stand => sketch.circle("meant", (STAND.x, -STAND.y), 0.7),
        Mark::SecondReferee => sketch.circle("meant", (SECOND_REFEREE.x, -SECOND_REFEREE.y), 0.7),
        Mark::Table => sketch.area("meant", (-1.6, -far - 0.2), (1.6, -far - 1.0)),
        Mark::Bench => both(sketch, (3.4, -far - 0.3), (8.4, -far - 0.8)),
        Mark::LineJudge => {
            for place in LINE_JUDGES {
                sketch.circle("meant", (place.x, -place.y), 0.7);
            }
        }
    }
}

/// What it is, who may be there, and where to read on.
fn about(mark: Mark) -> AnyView {
    let lines = words::mark_lines(mark).iter();
    let lines = lines.map(|line| view! { <p>{*line}</p> }).collect_view();
    let of = |topic: &learn::Topic| {
        (
            words::topic(*topic),
            words::topic_more(*topic),
            Place::Decision(*topic),
        )
    };
    let topics: Vec<_> = words::mark_topics(mark).iter().map(of).collect();
    view! {
        <section class="stack" id=ABOUT role="status">
            <h2>{words::mark(mark)}</h2>
            {lines}
        </section>
        {ways(topics)}
    }
    .into_any()
}

/// The heights of the net, each with where it comes from.
fn heights() -> AnyView {
    let row = |age: String, boys: String, girls: String| {
        view! {
            <tr>
                <th scope="row">{age}</th>
                <td class="tabular">{boys}</td>
                <td class="tabular">{girls}</td>
            </tr>
        }
        .into_any()
    };
    let of = |height: rules::Height| words::height(&height.metres());
    let young = AGE_HEIGHTS
        .iter()
        .map(|one| row(words::under(one.under), of(one.boys), of(one.girls)))
        .collect_view();
    let head = words::net_columns().map(|words| view! { <th scope="col">{words}</th> });
    view! {
        <section class="card stack" aria-labelledby="net-heights">
            <h2 id="net-heights">{words::net_heights()}</h2>
            <p>{words::net_heights_more()}</p>
            <table class="net-table">
                <thead>
                    <tr>{head.into_iter().collect_view()}</tr>
                </thead>
                <tbody>{row(words::net_adults().into(), of(MEN), of(WOMEN))} {young}</tbody>
            </table>
            <p class="muted">{words::net_young()}</p>
            <p>{words::net_measured()}</p>
        </section>
    }
    .into_any()
}
