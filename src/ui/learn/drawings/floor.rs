//! The floor from above.

use learn::{
    edition_of, formation, receiver_view, server_feet, shoe, Dial, End, Pair, Point, Values,
    ATTACK_LINE, CENTRE_LINE_HALF, HALF_LENGTH, HALF_WIDTH, HIT_DEPTH, LINE_WIDTH,
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
    let mut sketch = Sketch::new((-10.0, -5.3), (10.4, 10.6));
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
