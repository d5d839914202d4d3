//! The flight of a ball, held against what can be written down and against another integrator.

use learn::{
    ball_drag, crossing, landing, Crossing, End, Flight, FloorContact, LastTouch, LastTouchKind,
    Point, TeamHit, Velocity, BALL_RADIUS, GRAVITY,
};
use ode_solvers::{Dop853, SVector, System};
use proptest::prelude::*;
use rules::Edition;

fn flight(x: f64, z: f64, along: f64, up: f64, drag: f64) -> Flight {
    Flight {
        at: Point { x, y: 0.0, z },
        velocity: Velocity {
            x: along,
            y: 0.0,
            z: up,
        },
        drag,
    }
}

proptest! {
    /// Without air a throw is a parabola: range and height to a thousand-millionth of a metre.
    #[test]
    fn without_air_it_is_a_parabola(along in -25.0f64..25.0, up in -5.0f64..12.0, time in 0.0f64..2.0) {
        let after = flight(-9.0, 2.5, along, up, 0.0).after(time);
        prop_assert!((after.at.x - (-9.0 + along * time)).abs() < 1e-9);
        prop_assert!((after.at.z - (2.5 + up * time - GRAVITY * time * time / 2.0)).abs() < 1e-9);
        prop_assert!((after.velocity.z - (up - GRAVITY * time)).abs() < 1e-9);
    }

    /// Straight down through the air the speed follows a hyperbolic tangent.
    #[test]
    fn straight_down_it_comes_near_a_last_speed(time in 0.0f64..3.0) {
        let drag = ball_drag();
        let last = (GRAVITY / drag).sqrt();
        let after = flight(0.0, 50.0, 0.0, 0.0, drag).after(time);
        let fallen = last * last / GRAVITY * (GRAVITY * time / last).cosh().ln();
        prop_assert!((50.0 - after.at.z - fallen).abs() < 1e-9, "{} {fallen}", 50.0 - after.at.z);
        prop_assert!((after.velocity.z + last * (GRAVITY * time / last).tanh()).abs() < 1e-9);
    }
}

struct Air(f64);

impl System<f64, SVector<f64, 6>> for Air {
    fn system(&self, _: f64, y: &SVector<f64, 6>, dy: &mut SVector<f64, 6>) {
        let speed = (y[3] * y[3] + y[4] * y[4] + y[5] * y[5]).sqrt();
        for i in 0..3 {
            dy[i] = y[i + 3];
            dy[i + 3] = -self.0 * speed * y[i + 3];
        }
        dy[5] -= GRAVITY;
    }
}

#[test]
fn with_air_it_agrees_with_another_integrator() {
    // From a lob to a hard service. The other one works with an error of 1e-12 a step.
    for (along, aside, up) in [
        (3.0, 0.5, 8.0),
        (12.0, -2.0, 4.0),
        (20.0, 1.0, 1.0),
        (30.0, 0.0, -2.0),
    ] {
        let ball = Flight::of_ball(
            Point {
                x: -9.0,
                y: 1.0,
                z: 3.0,
            },
            Velocity {
                x: along,
                y: aside,
                z: up,
            },
        );
        let begin = SVector::<f64, 6>::from_row_slice(&[-9.0, 1.0, 3.0, along, aside, up]);
        let mut other = Dop853::new(Air(ball_drag()), 0.0, 1.5, 0.001, begin, 1e-12, 1e-12);
        other.integrate().expect("it is a smooth flight");
        let there = other.y_out().last().expect("it has an end");
        // Between its own steps it only interpolates; a millisecond apart that is exact enough.
        let time = *other.x_out().last().expect("it has an end");
        assert!(time > 1.0, "{time}");
        let here = ball.after(time);
        for (ours, theirs) in [here.at.x, here.at.y, here.at.z].iter().zip(there.iter()) {
            assert!((ours - theirs).abs() < 1e-8, "{ours} {theirs}");
        }
    }
}

#[test]
fn the_air_holds_a_ball_up() {
    let [with, without] =
        [ball_drag(), 0.0].map(|drag| flight(-9.0, 2.5, 18.0, 3.0, drag).to_floor(5.0));
    let (with, without) = (with.unwrap().1, without.unwrap().1);
    assert!(with.at.x < without.at.x);
    assert!(with.velocity.x > 0.0 && with.velocity.x < 18.0);
}

#[test]
fn a_throw_without_air_lands_when_it_must() {
    // Up at 5 m/s from 1 m above where it lies: the root of a square.
    let ball = flight(0.0, BALL_RADIUS + 1.0, 2.0, 5.0, 0.0);
    let time = (5.0 + (25.0 + 2.0 * GRAVITY).sqrt()) / GRAVITY;
    let (found, landed) = ball.to_floor(3.0).unwrap();
    assert!((found - time).abs() < 2e-6, "{found} {time}");
    assert!((landed.at.x - 2.0 * time).abs() < 1e-5);
    assert_eq!(ball.to_floor(1.0), None);
}

#[test]
fn a_served_ball_crosses_and_lands_as_the_decisions_say() {
    let ball = Flight::of_ball(
        Point {
            x: -9.2,
            y: -1.0,
            z: 2.6,
        },
        Velocity {
            x: 15.0,
            y: 0.5,
            z: 4.0,
        },
    );
    let (when, above) = ball.to_net(3.0).unwrap();
    assert!(above.at.z - BALL_RADIUS > 2.43);
    let crossed = Crossing {
        from: End::Left,
        aside: above.at.y,
        hit: TeamHit::Service,
        touches_antenna: false,
        towards_free_zone: false,
    };
    assert!(!crossing(crossed, Edition::E2025).is_fault());
    let (then, landed) = ball.to_floor(3.0).unwrap();
    assert!(then > when);
    let ruling = landing(
        FloorContact {
            at: landed.at,
            patch: 0.04,
        },
        LastTouch {
            by: End::Left,
            kind: LastTouchKind::Service,
        },
    );
    assert_eq!(ruling.won_by(), Some(End::Left), "{landed:?}");
}
