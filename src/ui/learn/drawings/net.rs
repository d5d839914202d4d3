//! The net from the side and from the front.

use learn::{
    antenna_rod, Dial, Values, ANTENNA_ABOVE, BALL_RADIUS, CENTRE_LINE_HALF, CROSSED_NET,
    HALF_WIDTH,
};

use crate::learn::sketch::{Drawing, Handle, Sketch};

/// How deep the net is (2.2), and how wide with half of what may be more (2.2: 9.5 to 10 m), in metres.
const NET_DEEP: f64 = 1.0;
const NET_HALF: f64 = 4.85;
/// Where the posts stand, in the middle of what is allowed (2.5), and how high they are, in metres.
const POST: f64 = HALF_WIDTH + 0.75;
const POST_HIGH: f64 = 2.55;

/// The net from the front, its top so high: as far as the window shows it.
pub(super) fn front(sketch: &mut Sketch, top: f64) {
    sketch.line("ground", &[(-6.0, 0.0), (6.0, 0.0)]);
    sketch.area("mesh", (-NET_HALF, -top), (NET_HALF, -(top - NET_DEEP)));
    // The bands are 7 and 5 cm (2.2), the side bands 5 cm above the side lines (2.3).
    sketch.area("band", (-NET_HALF, -top), (NET_HALF, -(top - 0.07)));
    sketch.area(
        "band",
        (-NET_HALF, -(top - NET_DEEP + 0.05)),
        (NET_HALF, -(top - NET_DEEP)),
    );
    for side in [-1.0, 1.0] {
        let inner = HALF_WIDTH - 0.05;
        sketch.area(
            "band",
            (side * inner, -top),
            (side * HALF_WIDTH, -(top - NET_DEEP)),
        );
        sketch.line("post", &[(side * POST, 0.0), (side * POST, -POST_HIGH)]);
        let rod = side * (antenna_rod().0 + antenna_rod().1) / 2.0;
        let above = top + ANTENNA_ABOVE;
        sketch.line("antenna", &[(rod, -(top - NET_DEEP)), (rod, -above)]);
        sketch.line("antenna stripes", &[(rod, -top), (rod, -above)]);
    }
}

/// The net from the side: a line, and the middle of the court on the floor.
pub(super) fn side(sketch: &mut Sketch, top: f64) {
    sketch.line("net-edge", &[(0.0, -top), (0.0, -(top - NET_DEEP))]);
    sketch.line("plane", &[(0.0, -4.0), (0.0, 0.0)]);
}

pub(super) fn touch(set: &Values) -> Drawing {
    let mut sketch = Sketch::new((2.1, -3.3), (3.6, 2.9));
    let x = set.get(Dial::AlongNet);
    // Behind the net, who touches it: about 1.75 m tall, our own choice.
    sketch.line(
        "limb team-a",
        &[(x - 0.25, 0.0), (x - 0.12, -0.85), (x, -1.4)],
    );
    sketch.line(
        "limb team-a",
        &[(x + 0.25, 0.0), (x + 0.12, -0.85), (x, -1.4)],
    );
    sketch.circle("body team-a", (x, -1.62), 0.16);
    front(&mut sketch, CROSSED_NET);
    let hand = (x, -CROSSED_NET);
    sketch.line("limb team-a", &[(x, -1.3), (x + 0.22, -1.75), hand]);
    sketch.handle(Handle::at(hand).across(Dial::AlongNet, 1.0));
    sketch.done()
}

pub(super) fn over(set: &Values) -> Drawing {
    let mut sketch = Sketch::new((-1.3, -3.3), (2.6, 1.9));
    side(&mut sketch, CROSSED_NET);
    let high = -(CROSSED_NET + 0.3);
    // The blocker is on the right, so beyond the net is to the left.
    let x = -set.get(Dial::HandBeyond);
    let ball = x - BALL_RADIUS;
    sketch.line(
        "limb team-a",
        &[(-1.1, -1.4), (-0.85, -2.0), (ball - BALL_RADIUS, high)],
    );
    sketch.circle("ball", (ball, high), BALL_RADIUS);
    sketch.line("limb team-b", &[(0.75, -1.4), (0.6, -2.0), (x, high)]);
    sketch.handle(Handle::at((x, high)).across(Dial::HandBeyond, -1.0));
    // Below it the time: the attack hit in the middle, a third of a second to each side.
    let (row, a_second) = (-1.6, 3.5);
    sketch.line("time", &[(-1.1, row), (1.1, row)]);
    sketch.line("time-mark", &[(0.0, row - 0.12), (0.0, row + 0.12)]);
    let after = set.get(Dial::AfterAttack) * a_second;
    sketch.handle(Handle {
        mark: "\u{2194}".into(),
        ..Handle::at((after, row)).across(Dial::AfterAttack, 1.0 / a_second)
    });
    sketch.done()
}

pub(super) fn service(set: &Values) -> Drawing {
    let mut sketch = Sketch::new((-1.6, -3.1), (3.2, 3.2));
    sketch.area("court team-a", (-1.6, 0.0), (0.0, 0.1));
    sketch.area("court team-b", (0.0, 0.0), (1.6, 0.1));
    side(&mut sketch, CROSSED_NET);
    // It drops on the one side or on the other.
    let places = [(-0.5, -0.8), (0.7, -1.4)];
    let ball = places[set.choice(Dial::Completed)];
    let tape = (-BALL_RADIUS, -CROSSED_NET - 0.06);
    sketch.line("way", &[(-1.6, -2.7), tape, ball]);
    sketch.circle("ball", ball, BALL_RADIUS);
    sketch.handle(Handle {
        nearest: Some((Dial::Completed, places.into())),
        ..Handle::at(ball)
    });
    sketch.done()
}

pub(super) fn under(set: &Values) -> Drawing {
    let mut sketch = Sketch::new((-1.3, -2.5), (2.6, 2.6));
    sketch.area("court team-a", (-1.3, 0.0), (0.0, 0.1));
    sketch.area("court team-b", (0.0, 0.0), (1.3, 0.1));
    sketch.area(
        "court-line",
        (-CENTRE_LINE_HALF, 0.0),
        (CENTRE_LINE_HALF, 0.1),
    );
    side(&mut sketch, CROSSED_NET);
    let ball = (set.get(Dial::BallBeyond), -0.7);
    sketch.circle("ball", ball, BALL_RADIUS);
    sketch.handle(Handle::at(ball).across(Dial::BallBeyond, 1.0));
    sketch.done()
}
