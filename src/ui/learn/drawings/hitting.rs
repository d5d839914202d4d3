//! Attack hits from the side, blocks from the front.

use learn::{Dial, Values, ATTACK_LINE, BALL_RADIUS, LINE_WIDTH};

use super::net;
use crate::learn::sketch::{Drawing, Handle, Place, Sketch};

/// The left court from the side, with the top of the net across it.
fn left_court(top: f64) -> Sketch {
    let mut sketch = Sketch::new((-5.0, -3.6), (6.0, 3.9));
    sketch.area("court team-a", (-5.0, 0.0), (0.0, 0.3));
    sketch.area("court team-b", (0.0, 0.0), (1.0, 0.3));
    sketch.area(
        "court-line",
        (-ATTACK_LINE, 0.0),
        (-ATTACK_LINE + LINE_WIDTH, 0.3),
    );
    sketch.line("plane", &[(-ATTACK_LINE, -3.6), (-ATTACK_LINE, 0.0)]);
    net::side(&mut sketch, top);
    sketch.line("level", &[(-5.0, -top), (1.0, -top)]);
    sketch
}

/// A player in the air who reaches for a ball; the feet left the floor at `from`.
fn jumps(sketch: &mut Sketch, class: &str, from: f64, ball: Place) {
    let hips = (ball.0 - 0.25, ball.1 + 1.25);
    let neck = (ball.0 - 0.2, ball.1 + 0.62);
    sketch.line("way", &[(from, 0.0), (hips.0, hips.1 + 0.8)]);
    for leg in [-0.25, 0.05] {
        let knee = (hips.0 + leg, hips.1 + 0.4);
        sketch.line(class, &[hips, knee, (knee.0 - 0.2, knee.1 + 0.35)]);
    }
    sketch.line(class, &[hips, neck]);
    sketch.line(class, &[neck, (neck.0 + 0.12, neck.1 - 0.3), ball]);
    sketch.circle(class, (neck.0 - 0.06, neck.1 - 0.2), 0.14);
}

/// A player who stands with both hands at a ball above the head, or below the chest.
fn stands(sketch: &mut Sketch, class: &str, x: f64, hands: f64) {
    for leg in [-0.15, 0.15] {
        sketch.line(class, &[(x + leg, 0.0), (x, -0.85)]);
    }
    sketch.line(class, &[(x, -0.85), (x, -1.4)]);
    sketch.line(class, &[(x, -1.35), (x + 0.25, hands)]);
    sketch.circle(class, (x, -1.6), 0.15);
}

fn ball_at(set: &Values) -> Place {
    (-set.get(Dial::BallDepth), -set.get(Dial::BallHeight))
}

pub(super) fn attack(set: &Values) -> Drawing {
    let mut sketch = left_court(set.get(Dial::NetTop));
    let foot = -set.get(Dial::TakeOff);
    let ball = ball_at(set);
    jumps(&mut sketch, "limb team-a", foot, ball);
    // The toe is what is nearest to the net.
    sketch.line("limb team-a", &[(foot - 0.28, 0.0), (foot, 0.0)]);
    sketch.circle("ball", ball, BALL_RADIUS);
    sketch.handle(Handle::at((foot, 0.0)).across(Dial::TakeOff, -1.0));
    sketch.handle(
        Handle::at(ball)
            .across(Dial::BallDepth, -1.0)
            .down(Dial::BallHeight, -1.0),
    );
    sketch.done()
}

pub(super) fn libero_attack(set: &Values) -> Drawing {
    let mut sketch = left_court(set.get(Dial::NetTop));
    let ball = ball_at(set);
    jumps(&mut sketch, "limb libero", ball.0 - 0.4, ball);
    sketch.circle("ball", ball, BALL_RADIUS);
    sketch.handle(
        Handle::at(ball)
            .across(Dial::BallDepth, -1.0)
            .down(Dial::BallHeight, -1.0),
    );
    sketch.done()
}

pub(super) fn libero_pass(set: &Values) -> Drawing {
    let mut sketch = left_court(set.get(Dial::NetTop));
    let libero = -set.get(Dial::LiberoDepth);
    let hands = if set.is(Dial::LiberoPass) {
        -1.95
    } else {
        -0.95
    };
    stands(&mut sketch, "limb libero", libero, hands);
    let ball = (-0.6, -set.get(Dial::BallHeight));
    sketch.line(
        "way",
        &[
            (libero + 0.25, hands),
            ((libero + ball.0) / 2.0, ball.1.min(hands) - 0.6),
            ball,
        ],
    );
    jumps(&mut sketch, "limb team-a", -1.2, ball);
    sketch.circle("ball", ball, BALL_RADIUS);
    sketch.handle(Handle::at((libero, 0.0)).across(Dial::LiberoDepth, -1.0));
    sketch.handle(Handle::at(ball).down(Dial::BallHeight, -1.0));
    sketch.done()
}

pub(super) fn block(set: &Values) -> Drawing {
    let mut sketch = Sketch::new((-1.9, -3.2), (3.8, 2.6));
    let top = set.get(Dial::NetTop);
    let touches = set.is(Dial::BlockTouches);
    for (n, x) in [(1, -0.6), (2, 0.6)] {
        let reach = -set.get(Dial::Reach(n));
        let class = match set.choice(Dial::Row(n)) {
            0 => "limb team-b",
            1 => "limb team-b back-row",
            _ => "limb libero",
        };
        let head = reach + 0.62;
        sketch.circle(class, (x, head), 0.14);
        sketch.line(class, &[(x, head + 0.14), (x, head + 0.75)]);
        for arm in [-0.2, 0.2] {
            sketch.line(
                class,
                &[
                    (x, head + 0.25),
                    (x + arm, head + 0.05),
                    (x + arm * 0.8, reach),
                ],
            );
        }
        sketch.mark(
            "row-mark",
            (x + 0.28, head),
            0.24,
            text::learn::row_mark(set.choice(Dial::Row(n))),
        );
        sketch.handle(Handle {
            mark: "\u{2195}".into(),
            ..Handle::at((x, reach)).down(Dial::Reach(n), -1.0)
        });
    }
    net::front(&mut sketch, top);
    // Touched, it is at the hands of whoever reaches highest; else it passes them.
    let (one, other) = (set.get(Dial::Reach(1)), set.get(Dial::Reach(2)));
    let (x, reach) = if one >= other {
        (-0.6, one)
    } else {
        (0.6, other)
    };
    let up = if touches { 0.0 } else { 0.35 };
    sketch.circle("ball", (x * 0.4, -(reach.max(top + 0.2) + up)), BALL_RADIUS);
    sketch.done()
}
