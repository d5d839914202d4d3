//! The picture: what is in front of the eye, where the horizon is, known places.

use learn::{draw, gaze, picture, Kind, Level, Look, Place, Point, Shape, Tone, View};
use proptest::prelude::*;
use rules::Cause;

const NET: f64 = 2.43;

fn point(x: f64, y: f64, z: f64) -> Point {
    Point { x, y, z }
}

#[test]
fn f1_39_the_first_referee_looks_from_half_a_metre_above_the_net() {
    let eye = Place::Stand.eye(NET);
    assert!((eye.z - NET - 0.5).abs() < 1e-12);
    // At one end of the net, outside the court.
    assert!(eye.x == 0.0 && eye.y < -4.5);
    // The second referee opposite, the line judge at the corner near the first one's right hand, 1 to 2 m
    // from it (29.1).
    assert!(Place::SecondReferee.eye(NET).y > 4.5);
    let line_judge = Place::LineJudge.eye(NET);
    let from_corner = (line_judge.x - 9.0).hypot(line_judge.y + 4.5);
    assert!(line_judge.x > 9.0 && line_judge.y < -4.5 && (1.0..=2.0).contains(&from_corner));
}

#[test]
fn known_places_are_where_they_must_be() {
    // From the stand straight across the net: 90 degrees wide, so that what is as far aside as it is away is at
    // the edge.
    let eye = point(0.0, -6.0, 2.0);
    let view = View::new(eye, point(0.0, 0.0, 2.0), 90.0);
    let seen = view.point(point(3.0, 0.0, 2.0)).unwrap();
    assert!((seen.right - 0.5).abs() < 1e-12 && seen.up.abs() < 1e-12);
    assert!((seen.depth - 6.0).abs() < 1e-12);
    assert!((seen.metre - 1.0 / 6.0).abs() < 1e-12);
    let edge = view.point(point(6.0, 0.0, 2.0)).unwrap();
    assert!((edge.right - 1.0).abs() < 1e-12);
    let below = view.point(point(0.0, -3.0, 0.5)).unwrap();
    assert!((below.up + 0.5).abs() < 1e-12);
    // The right court is to the right of the first referee and to the left of the second.
    let right_court = point(5.0, 0.0, 0.0);
    let middle = point(0.0, 0.0, 1.0);
    let from = |place: Place| {
        View::new(place.eye(NET), middle, 100.0)
            .point(right_court)
            .unwrap()
            .right
    };
    assert!(from(Place::Stand) > 0.0);
    assert!(from(Place::SecondReferee) < 0.0);
}

#[test]
fn what_is_behind_the_eye_is_not_seen() {
    let view = View::new(point(0.0, -6.0, 2.0), point(0.0, 0.0, 2.0), 90.0);
    assert_eq!(view.point(point(0.0, -7.0, 2.0)), None);
    assert_eq!(
        view.line(point(1.0, -7.0, 2.0), point(2.0, -8.0, 2.0)),
        None
    );
    // A line that comes from behind begins where it comes into view.
    let [a, b] = view
        .line(point(0.0, -10.0, 0.0), point(0.0, 4.0, 0.0))
        .unwrap();
    assert!(a.depth > 0.2 && a.depth < 0.3 && a.up < b.up);
    // A floor on which the eye stands is cut off before it.
    let floor = [(-9.0, -9.0), (9.0, -9.0), (9.0, 4.5), (-9.0, 4.5)].map(|(x, y)| point(x, y, 0.0));
    let seen = view.surface(&floor);
    assert_eq!(seen.len(), 4);
    assert!(seen.iter().all(|s| s.depth > 0.2 && s.up < 0.0));
}

#[test]
fn the_floor_meets_the_horizon_far_away() {
    for place in Place::ALL {
        let eye = place.eye(NET);
        let view = View::new(eye, point(0.5, 0.2, 1.0), 80.0);
        // A million metres on, in the direction of view.
        let (dx, dy) = (0.5 - eye.x, 0.2 - eye.y);
        let far = view
            .point(point(eye.x + dx * 1e6, eye.y + dy * 1e6, 0.0))
            .unwrap();
        assert!((far.up - view.horizon()).abs() < 1e-5, "{place:?}");
        // What is as high as the eye is on the horizon wherever it is.
        let level = view
            .point(point(eye.x + dx * 0.4, eye.y + dy * 0.4, eye.z))
            .unwrap();
        assert!((level.up - view.horizon()).abs() < 1e-9);
    }
}

proptest! {
    /// Three points of a straight line stay in one straight line.
    #[test]
    fn straight_stays_straight(x in -9.0f64..9.0, y in -4.0f64..4.0, z in 0.0f64..3.0, u in -9.0f64..9.0, v in -4.0f64..4.0, w in 0.0f64..3.0, share in 0.1f64..0.9) {
        let view = View::new(Place::Stand.eye(NET), point(0.0, 2.0, 1.0), 100.0);
        let (a, b) = (point(x, y, z), point(u, v, w));
        let seen = [a, a.on_the_way(b, share), b].map(|p| view.point(p));
        if let [Some(a), Some(m), Some(b)] = seen {
            let area = (m.right - a.right) * (b.up - a.up) - (b.right - a.right) * (m.up - a.up);
            prop_assert!(area.abs() < 1e-9);
        }
    }

    /// Twice as far away is half as large.
    #[test]
    fn far_is_small(away in 1.0f64..10.0) {
        let eye = point(0.0, -6.0, 2.0);
        let view = View::new(eye, point(0.0, 0.0, 2.0), 70.0);
        let near = view.point(point(0.0, -6.0 + away, 2.0)).unwrap();
        let far = view.point(point(0.0, -6.0 + 2.0 * away, 2.0)).unwrap();
        prop_assert!((near.metre - 2.0 * far.metre).abs() < 1e-12);
    }
}

#[test]
fn the_ball_is_in_the_picture_while_it_is_played() {
    for kind in [
        Kind::Ends(Cause::BallIn),
        Kind::Ends(Cause::ServiceFoot),
        Kind::GoesOn(Cause::OverNet),
    ] {
        for seed in 0..10 {
            let scene = draw(kind, Level::Clear.band(kind), seed).unwrap().scene;
            // Before it is tossed the eye is on the receivers.
            let hit = |e: &&learn::Event| matches!(e.act, learn::Act::ServiceHit { .. });
            let from = scene.events.iter().find(hit);
            for place in [Place::Stand, Place::SecondReferee] {
                let mut time = from.map_or(0.0, |hit| hit.at - 0.75);
                while time < scene.until() {
                    let view = View::new(place.eye(scene.net_top), gaze(&scene, place, time), 78.0);
                    let seen = view
                        .point(scene.ball_at(time))
                        .expect("in front of the eye");
                    assert!(
                        seen.right.abs() < 1.0,
                        "{place:?} {kind:?} {seed} {time} {seen:?}"
                    );
                    time += 0.05;
                }
            }
        }
    }
}

#[test]
fn a_margin_is_drawn_as_long_as_it_is() {
    let mut drawn_in = 0;
    for kind in Kind::all() {
        for level in Level::ALL {
            for seed in 0..4 {
                let drawn = draw(kind, level.band(kind), seed).unwrap();
                for judged in &drawn.verdict.all {
                    let Some([a, b]) = learn::measure(&drawn.scene, judged) else {
                        continue;
                    };
                    let Some(margin) = judged.ruling.margin.metres() else {
                        continue;
                    };
                    // An attack that is right for more than one reason shows one of them.
                    let several = ["13.3.3", "13.3.4"].contains(&judged.ruling.rule)
                        && !judged.ruling.is_fault();
                    // What is far from any fault is not drawn in.
                    if several || margin > 0.4 {
                        continue;
                    }
                    drawn_in += 1;
                    assert!(
                        (a.distance(b) - margin).abs() < 1e-4,
                        "{kind:?} {seed} {judged:?} {a:?} {b:?}"
                    );
                }
            }
        }
    }
    assert!(drawn_in > 300, "{drawn_in}");
}

#[test]
fn a_picture_has_everybody_and_the_ball_in_it() {
    let kind = Kind::Ends(Cause::BallIn);
    let scene = draw(kind, Level::Clear.band(kind), 1).unwrap().scene;
    for place in Place::ALL {
        let view = View::new(place.eye(scene.net_top), gaze(&scene, place, 0.5), 100.0);
        let look = Look {
            place,
            time: 0.5,
            view,
            measure: None,
        };
        let shapes = picture(&scene, &look);
        let count = |wanted: &dyn Fn(&Shape) -> bool| shapes.iter().filter(|s| wanted(s)).count();
        assert_eq!(
            count(&|s| matches!(s, Shape::Disc(Tone::Ball, ..))),
            1,
            "{place:?}"
        );
        // Nobody stands behind an official.
        let numbers = count(&|s| matches!(s, Shape::Number(..)));
        assert!(numbers >= 11, "{place:?} {numbers}");
        assert!(count(&|s| matches!(s, Shape::Surface(Tone::Court(_), _))) == 2);
        assert!(shapes.len() < 400, "{}", shapes.len());
    }
}

/// Whether a place is in the picture of a phone held upright.
fn is_seen(view: &View, place: Point) -> bool {
    view.point(place)
        .is_some_and(|seen| seen.right.abs() < 1.0 && seen.up.abs() < 0.82)
}

fn look(scene: &learn::Scene, place: Place, time: f64) -> View {
    View::new(place.eye(scene.net_top), gaze(scene, place, time), 78.0)
}

#[test]
fn what_happens_at_the_net_is_in_the_picture_of_both_referees() {
    for kind in [
        Kind::Ends(Cause::NetTouch),
        Kind::GoesOn(Cause::NetTouch),
        Kind::Ends(Cause::UnderNet),
        Kind::GoesOn(Cause::AssistedHit),
        Kind::CaseEnds(learn::Case::Hindrance),
        Kind::CaseEnds(learn::Case::JuniorUnderNet),
        Kind::CaseGoesOn(learn::Case::JuniorUnderNet),
        Kind::DoubleFault,
        Kind::FirstOfTwo,
    ] {
        for seed in 0..12 {
            let drawn = draw(kind, Level::Close.band(kind), seed).unwrap();
            let one = drawn.about().expect("it is about something");
            let Some(player) = one.player else { continue };
            let hips = drawn.scene.players[player].figure(one.moment).hips;
            for place in [Place::Stand, Place::SecondReferee] {
                let view = look(&drawn.scene, place, one.moment);
                assert!(is_seen(&view, hips), "{kind:?} {seed} {place:?}");
            }
        }
    }
}

#[test]
fn before_a_service_the_receivers_are_seen_and_at_the_hit_the_server() {
    for kind in [
        Kind::Ends(Cause::PositionFault),
        Kind::GoesOn(Cause::PositionFault),
        Kind::Ends(Cause::ServiceFoot),
        Kind::Ends(Cause::ServiceToss),
        Kind::GoesOn(Cause::ServiceToss),
        Kind::GoesOn(Cause::RotationFault),
    ] {
        for seed in 0..12 {
            let scene = draw(kind, Level::Clear.band(kind), seed).unwrap().scene;
            let act = |wanted: fn(&learn::Act) -> bool| {
                let mut all = scene.events.iter().filter(|e| wanted(&e.act));
                all.next().expect("it happens")
            };
            let hit = act(|act| matches!(act, learn::Act::ServiceHit { .. }));
            let learn::Act::ServiceHit { player, .. } = hit.act else {
                panic!()
            };
            for place in [Place::Stand, Place::SecondReferee] {
                let at_first = look(&scene, place, 0.0);
                for receiver in scene.side(scene.serving.other()) {
                    let body = receiver.figure(0.0);
                    assert!(is_seen(&at_first, body.hips), "{kind:?} {seed} {place:?}");
                }
                // From the toss on everything is at the server.
                for before in [0.6, 0.3, 0.0] {
                    let time = hit.at - before;
                    let view = look(&scene, place, time);
                    assert!(is_seen(&view, scene.players[player].figure(time).feet[0]));
                    assert!(
                        is_seen(&view, scene.ball_at(time)),
                        "{kind:?} {seed} {place:?}"
                    );
                }
            }
        }
    }
}
