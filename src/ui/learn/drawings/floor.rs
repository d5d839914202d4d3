//! The floor from above.

use learn::{
    edition_of, formation, receiver_view, server_feet, shoe, Dial, End, Foot, Formation, Pair,
    Point, Values, ATTACK_LINE, CENTRE_LINE_HALF, HALF_LENGTH, HALF_WIDTH, HIT_DEPTH, LINE_WIDTH,
};

use rules::Edition;

use super::on_left;
use crate::learn::sketch::{Drawing, Handle, Place, Sketch};

/// Both courts with their lines, as far as the window shows them.
pub fn courts(sketch: &mut Sketch) {
    for (end, class) in [(-1.0, "court team-a"), (1.0, "court team-b")] {
        let (w, l) = (HALF_WIDTH, end * HALF_LENGTH);
        sketch.area(class, (0.0, -w), (l, w));
        // Lines lie inside what they bound (1.3.2); the attack line ends 3 m from the axis (1.3.4).
        sketch.area("court-line", (l, -w), (l - end * LINE_WIDTH, w));
        for side in [-1.0, 1.0] {
            sketch.area("court-line", (0.0, side * w), (l, side * (w - LINE_WIDTH)));
        }
        let rear = end * ATTACK_LINE;
        sketch.area("court-line", (rear, -w), (rear - end * LINE_WIDTH, w));
        // The marks of the service zone: 15 cm long, 20 cm behind the end line (1.4.2).
        for side in [-1.0, 1.0] {
            sketch.area(
                "court-line",
                (l + end * 0.2, side * w),
                (l + end * 0.35, side * (w - LINE_WIDTH)),
            );
        }
    }
    sketch.area(
        "court-line",
        (-CENTRE_LINE_HALF, -HALF_WIDTH),
        (CENTRE_LINE_HALF, HALF_WIDTH),
    );
}

pub(super) fn foot(set: &Values) -> Drawing {
    let mut sketch = Sketch::new((-0.75, -0.45), (1.5, 0.9));
    courts(&mut sketch);
    let foot = shoe(set.get(Dial::Heel), 0.0);
    sketch.foot("team-a", &foot, on_left);
    let edge = -foot.farthest();
    sketch.line("measure", &[(edge, 0.12), (CENTRE_LINE_HALF, 0.12)]);
    let middle = ((on_left(foot.heel).0 + on_left(foot.toe).0) / 2.0, 0.0);
    sketch.handle(Handle::at(middle).across(Dial::Heel, -1.0));
    sketch.done()
}

pub(super) fn body(set: &Values) -> Drawing {
    let mut sketch = Sketch::new((-0.75, -0.45), (1.5, 0.9));
    courts(&mut sketch);
    let places: [Place; 2] = [(0.3, -0.2), (0.3, 0.2)];
    for (part, (x, y)) in places.into_iter().enumerate() {
        let chosen = set.choice(Dial::BodyPart) == part;
        let class = if chosen {
            "limb team-a"
        } else {
            "limb team-a other-limb"
        };
        sketch.line(class, &[(-0.7, y), (x, y)]);
        if part == 0 {
            for finger in [-0.06, -0.02, 0.02, 0.06] {
                sketch.line(class, &[(x, y), (x + 0.1, y + finger)]);
            }
        } else {
            sketch.circle(class, (x, y), 0.08);
        }
    }
    sketch.handle(Handle {
        nearest: Some((Dial::BodyPart, places.into())),
        ..Handle::at(places[set.choice(Dial::BodyPart)])
    });
    sketch.done()
}

pub(super) fn server(set: &Values) -> Drawing {
    let mut sketch = Sketch::new((-10.9, 3.1), (2.7, 2.2));
    courts(&mut sketch);
    let feet = server_feet(set.get(Dial::ServerDepth), set.get(Dial::ServerRight));
    for foot in &feet {
        sketch.foot("team-a", foot, on_left);
    }
    let toe = on_left(feet[0].toe);
    let heel = on_left(feet[0].heel);
    let middle = ((toe.0 + heel.0) / 2.0, toe.1);
    sketch.handle(
        Handle::at(middle)
            .across(Dial::ServerDepth, -1.0)
            .down(Dial::ServerRight, 1.0),
    );
    sketch.done()
}

/// Between which positions a pair is drawn.
const fn positions_of(pair: Pair) -> (u8, u8) {
    match pair {
        Pair::Depth { front, back } => (front, back),
        Pair::Lateral { left, right } => (left, right),
    }
}

pub(super) fn positions(set: &Values) -> Drawing {
    let mut sketch = Sketch::new((-10.0, -5.1), (10.4, 10.2 + LENS_HIGH));
    courts(&mut sketch);
    let place = |position: u8| {
        (
            -set.get(Dial::PlayerDepth(position)),
            set.get(Dial::PlayerRight(position)),
        )
    };
    let stands = formation(set);
    // Only who is compared is joined by a line.
    let free = set.is(Dial::Serves) && edition_of(set) == Edition::E2025;
    if !free {
        for pair in Pair::ALL {
            let (one, other) = positions_of(pair);
            let wrong = stands.slack(pair) < 0.0;
            let next = !matches!(
                pair,
                Pair::Lateral { left: 4, right: 2 } | Pair::Lateral { left: 5, right: 1 }
            );
            if wrong || next {
                let class = if wrong { "joint wrong" } else { "joint" };
                sketch.line(class, &[place(one), place(other)]);
            }
        }
    }
    for feet in &stands.0 {
        for foot in feet {
            sketch.foot("team-a", foot, on_left);
        }
    }
    sketch.area("lens-ground", (-10.0, 5.1), (0.4, 5.1 + LENS_HIGH));
    if !free {
        lenses(&mut sketch, &stands);
    }
    for position in 1..=6 {
        sketch.handle(Handle {
            mark: position.to_string(),
            mover: Some(position),
            // Behind the feet, which count.
            ..Handle::at((place(position).0 - 0.6, place(position).1))
                .across(Dial::PlayerDepth(position), -1.0)
                .down(Dial::PlayerRight(position), 1.0)
        });
    }
    sketch.done()
}

/// How high the strip with the feet drawn larger is, in metres.
const LENS_HIGH: f64 = 1.7;
/// How many times as large they are.
const LENS_TIMES: f64 = 4.0;
/// How much of a foot has to be seen beside its edge, in metres.
const LENS_AROUND: f64 = 0.2;

/// The two players who stand rightly by the least, or wrongly by the most: their feet once more, larger, each in
/// its own lens. Both lenses show the same lines, so that the feet can be compared.
fn lenses(sketch: &mut Sketch, stands: &Formation) {
    let (pair, slack) = stands.tightest();
    let (one, other) = positions_of(pair);
    let foot_of = |position: u8, farther: fn(&Foot) -> f64| {
        let [a, b] = stands.0[usize::from(position) - 1];
        if farther(&a) >= farther(&b) {
            a
        } else {
            b
        }
    };
    // The feet that are compared, and where their edges are along the axis that counts.
    let (feet, edges, is_depth) = match pair {
        Pair::Depth { front, back } => {
            let front = foot_of(front, |foot| -foot.nearest());
            let back = foot_of(back, Foot::farthest);
            ([front, back], [-front.nearest(), -back.farthest()], true)
        }
        Pair::Lateral { left, right } => {
            let left = foot_of(left, |foot| -foot.leftmost());
            let right = foot_of(right, Foot::rightmost);
            ([left, right], [left.leftmost(), right.rightmost()], false)
        }
    };
    let high = LENS_HIGH - 0.2;
    let size = if is_depth {
        (10.2, high / 2.0 - 0.05)
    } else {
        (5.05, high)
    };
    let seen = if is_depth { size.0 } else { size.1 } / LENS_TIMES / 2.0;
    // Where both edges are in sight both lenses show the same stretch; else each shows its own foot.
    let is_near = slack.abs() / 2.0 + LENS_AROUND <= seen;
    let between = (edges[0] + edges[1]) / 2.0;
    let line = if slack < 0.0 { "joint wrong" } else { "joint" };
    for (n, (position, foot)) in [one, other].into_iter().zip(feet).enumerate() {
        let step = n as f64;
        let from = if is_depth {
            (-9.9, 5.2 + step * (size.1 + 0.1))
        } else {
            (-9.9 + step * (size.0 + 0.1), 5.2)
        };
        let (heel, toe) = (on_left(foot.heel), on_left(foot.toe));
        let here = ((heel.0 + toe.0) / 2.0, (heel.1 + toe.1) / 2.0);
        let middle = match (is_near, is_depth) {
            (true, true) => (between, here.1),
            (true, false) => (here.0, between),
            (false, _) => here,
        };
        sketch.lens((from, size), middle, LENS_TIMES, |sketch| {
            courts(sketch);
            for foot in &stands.0[usize::from(position) - 1] {
                sketch.foot("team-a", foot, on_left);
            }
            for edge in edges {
                if is_depth {
                    sketch.line(line, &[(edge, here.1 - 2.0), (edge, here.1 + 2.0)]);
                } else {
                    sketch.line(line, &[(here.0 - 4.0, edge), (here.0 + 4.0, edge)]);
                }
            }
        });
        let mark = (from.0 + 0.35, from.1 + 0.34);
        sketch.mark("lens-mark", mark, 0.5, &position.to_string());
    }
}

/// Where position 1 to position 6 stand by their numbers, from the net and to the right.
const BY_NUMBER: [(f64, f64); 6] = [
    (6.5, 3.0),
    (1.8, 3.0),
    (1.8, 0.0),
    (1.8, -3.0),
    (6.5, -3.0),
    (6.5, 0.0),
];

pub(super) fn order(set: &Values) -> Drawing {
    let mut sketch = Sketch::new((-10.0, -5.3), (10.4, 10.6));
    courts(&mut sketch);
    let places = BY_NUMBER.map(|(depth, right)| (-depth, right));
    for (n, place) in (1..).zip(places) {
        sketch.circle("body team-a", place, 0.55);
        sketch.mark("player-mark", place, 0.8, &i32::to_string(&n));
    }
    // The ball lies beside its player, so that the number is seen.
    let beside = places.map(|(x, y)| (x - 0.9, y + 0.9));
    sketch.handle(Handle {
        nearest: Some((Dial::Server, beside.into())),
        ..Handle::at(beside[set.choice(Dial::Server)])
    });
    sketch.circle("ball", beside[set.choice(Dial::Server)], 0.25);
    sketch.done()
}

pub(super) fn screen(set: &Values) -> Drawing {
    let mut sketch = Sketch::new((-10.0, -2.6), (19.6, 5.2));
    courts(&mut sketch);
    // The referee looks along y, so what is far away is up.
    let on = |point: Point| (point.x, -point.y);
    let view = receiver_view(set);
    let eye = on(view.eye);
    for seen in [view.hit].iter().chain(&view.path) {
        let hidden = view.clearance(*seen) < 0.0;
        let class = if hidden { "ray hidden-ray" } else { "ray" };
        sketch.line(class, &[eye, on(*seen)]);
    }
    for point in &view.path {
        sketch.circle("ball", on(*point), 0.1);
    }
    sketch.circle("body team-a", (-HIT_DEPTH - 0.35, 0.0), 0.25);
    sketch.circle("ball", on(view.hit), 0.12);
    for body in &view.players {
        sketch.circle("body team-a", on(body.at), body.radius);
    }
    sketch.circle("body team-b", eye, 0.25);
    for (mover, end) in [(1, End::Left), (2, End::Left), (3, End::Right)] {
        let (side, at) = match end {
            End::Left => (-1.0, on(view.players[usize::from(mover) - 1].at)),
            End::Right => (1.0, eye),
        };
        sketch.handle(Handle {
            mark: mover.to_string(),
            mover: Some(mover),
            ..Handle::at(at)
                .across(Dial::PlayerDepth(mover), side)
                .down(Dial::PlayerRight(mover), -side)
        });
    }
    sketch.done()
}
