//! The service: how it is made, whether it is hidden, and what counts first.

use super::{by_centimetres, foot, goes_on, is_fault, stands};
use learn::{
    at_the_service, first_fault, screen, server_in_order, service_at_the_net, service_execution,
    service_foot, service_time, Body, Call, End, Margin, Point, Ruling, Screen, ServiceExecution,
    Timed,
};
use rules::{Cause, Edition, Signal};

#[test]
fn f9_05_eight_seconds_are_in_time() {
    let ruling = service_time(End::Left, 7.5, 8.0);
    goes_on(ruling, "12.4.4");
    assert_eq!(ruling.margin, Margin::Seconds(0.5));
    goes_on(service_time(End::Left, 8.0, 8.0), "12.4.4");
}

#[test]
fn f9_05_longer_is_a_fault() {
    let ruling = service_time(End::Left, 8.25, 8.0);
    is_fault(
        ruling,
        End::Left,
        Cause::ServiceTime,
        "12.4.4",
        Signal::ServiceDelay,
    );
    assert_eq!(ruling.margin, Margin::Seconds(0.25));
}

#[test]
fn f9_07_before_the_whistle_it_is_made_again() {
    let ruling = service_time(End::Left, -0.3, 8.0);
    assert_eq!((ruling.call, ruling.rule), (Call::Replay, "12.4.5"));
    assert_eq!(ruling.signal(), Some(Signal::Replay));
    assert_eq!(ruling.won_by(), None);
}

#[test]
fn f20_32_a_competition_may_give_less_time() {
    assert!(service_time(End::Left, 6.0, 5.0).is_fault());
}

#[test]
fn f9_10_behind_the_line_is_right() {
    // The toes end 1 cm behind the end line.
    let ruling = service_foot(End::Right, &stands(9.16, 0.0));
    goes_on(ruling, "12.4.3");
    by_centimetres(ruling, 1.0);
}

#[test]
fn f9_10_a_toe_on_the_end_line_is_a_fault() {
    let ruling = service_foot(End::Right, &stands(9.13, 0.0));
    is_fault(
        ruling,
        End::Right,
        Cause::ServiceFoot,
        "12.4.3",
        Signal::LineOrUnder,
    );
    by_centimetres(ruling, 2.0);
}

#[test]
fn f9_10_one_foot_is_enough() {
    assert!(service_foot(End::Right, &[foot(10.0, 0.0), foot(9.0, 0.3)]).is_fault());
}

#[test]
fn f1_15_beside_the_service_zone_is_a_fault() {
    is_fault(
        service_foot(End::Left, &stands(10.0, 4.4)),
        End::Left,
        Cause::ServiceFoot,
        "12.4.3",
        Signal::LineOrUnder,
    );
}

#[test]
fn f1_15_the_zone_reaches_back_to_the_wall() {
    goes_on(service_foot(End::Left, &stands(13.0, 0.0)), "12.4.3");
}

/// A service as it should be.
const GOOD: ServiceExecution = ServiceExecution {
    released: true,
    tosses: 1,
    one_hand: true,
};

#[test]
fn f9_08_one_hand_after_a_toss() {
    goes_on(service_execution(End::Left, GOOD), "12.4");
}

#[test]
fn f9_08_two_hands_are_a_fault() {
    let both = ServiceExecution {
        one_hand: false,
        ..GOOD
    };
    is_fault(
        service_execution(End::Left, both),
        End::Left,
        Cause::ServiceToss,
        "12.4.1",
        Signal::NotTossed,
    );
}

#[test]
fn f9_08_a_ball_hit_out_of_the_hand_is_a_fault() {
    let held = ServiceExecution {
        released: false,
        ..GOOD
    };
    assert_eq!(service_execution(End::Left, held).rule, "12.4.1");
}

#[test]
fn f9_09_a_second_toss_is_a_fault() {
    let twice = ServiceExecution { tosses: 2, ..GOOD };
    is_fault(
        service_execution(End::Left, twice),
        End::Left,
        Cause::ServiceToss,
        "12.4.2",
        Signal::NotTossed,
    );
}

/// The left side serves from behind the end line, the ball flies above the net to a receiver.
fn seen(players: Vec<Body>) -> Screen {
    Screen {
        eye: Point {
            x: 7.0,
            y: 0.0,
            z: 1.5,
        },
        hit: Point {
            x: -9.5,
            y: 0.0,
            z: 2.4,
        },
        path: (0..=10)
            .map(|step| Point {
                x: -9.5 + 0.95 * f64::from(step),
                y: 0.0,
                // A flat service: lowest at the hit, highest above the net.
                z: 2.4 + 0.06 * f64::from(step),
            })
            .collect(),
        players,
    }
}

fn body(x: f64, y: f64, height: f64) -> Body {
    Body {
        at: Point { x, y, z: 0.0 },
        radius: 0.25,
        height,
        hands_up: false,
    }
}

#[test]
fn f9_14_nobody_in_the_way_is_no_screen() {
    goes_on(
        screen(End::Left, &seen(vec![body(-1.0, 2.0, 1.9)])),
        "12.5.2",
    );
}

#[test]
fn f9_14_who_hides_the_hit_but_not_the_path_does_not_screen() {
    // Close to the server: the ball rises above the hands in time.
    let one = seen(vec![body(-8.5, 0.0, 2.45)]);
    assert!(one.clearance(one.hit) < 0.0);
    goes_on(screen(End::Left, &one), "12.5.2");
}

#[test]
fn f9_14_a_group_that_hides_both_screens() {
    let group = seen(vec![body(-0.15, 0.0, 3.1), body(-0.15, 0.4, 3.1)]);
    let ruling = screen(End::Left, &group);
    is_fault(
        ruling,
        End::Left,
        Cause::Screen,
        "12.5.2",
        Signal::BlockOrScreen,
    );
}

#[test]
fn f9_15_hands_above_the_head_are_forbidden_since_2025() {
    let raised = Body {
        hands_up: true,
        ..body(-1.0, 2.0, 2.3)
    };
    let scene = seen(vec![raised]);
    assert!(scene.has_hands_up(Edition::E2025));
    assert!(!scene.has_hands_up(Edition::E2021));
    goes_on(screen(End::Left, &scene), "12.5.2");
}

fn serving_fault() -> Ruling {
    service_foot(End::Left, &stands(9.0, 0.0))
}

fn receivers_fault() -> Ruling {
    super::by_receivers(End::Right)
}

fn later_fault() -> Ruling {
    learn::crossing(
        learn::Crossing {
            from: End::Left,
            aside: 6.0,
            hit: learn::TeamHit::Service,
            touches_antenna: false,
            towards_free_zone: true,
        },
        Edition::E2025,
    )
}

fn nothing() -> Ruling {
    service_execution(End::Left, GOOD)
}

#[test]
fn f9_19_every_line_of_the_table() {
    let (s, p, l, n) = (serving_fault(), receivers_fault(), later_fault(), nothing());
    let lost_by = |a, b, c| at_the_service(a, b, c).won_by().map(End::other);
    assert_eq!(lost_by(s, n, n), Some(End::Left));
    assert_eq!(lost_by(n, p, n), Some(End::Right));
    assert_eq!(lost_by(n, n, l), Some(End::Left));
    assert_eq!(lost_by(s, p, n), Some(End::Left));
    assert_eq!(lost_by(n, p, l), Some(End::Right));
    assert_eq!(lost_by(s, p, l), Some(End::Left));
    assert_eq!(lost_by(s, n, l), Some(End::Left));
    assert_eq!(lost_by(n, n, n), None);
}

#[test]
fn f5_38_what_is_shown_is_what_counts() {
    let ruling = at_the_service(serving_fault(), receivers_fault(), later_fault());
    assert_eq!(ruling.signal(), Some(Signal::LineOrUnder));
    let ruling = at_the_service(nothing(), receivers_fault(), later_fault());
    assert_eq!(ruling.signal(), Some(Signal::Position));
}

#[test]
fn f3_07_of_two_faults_the_first_counts() {
    let happened = [
        Timed {
            at: 3.5,
            ruling: later_fault(),
        },
        Timed {
            at: 3.0,
            ruling: receivers_fault(),
        },
    ];
    let ruling = first_fault(&happened);
    assert_eq!(ruling.won_by(), Some(End::Left));
    assert_eq!(ruling.rule, "6.1.2.1");
    assert!((ruling.margin.seconds().unwrap() - 0.46).abs() < 1e-9);
}

#[test]
fn f17_24_opponents_at_once_play_again() {
    let happened = [
        Timed {
            at: 3.0,
            ruling: later_fault(),
        },
        Timed {
            at: 3.03,
            ruling: receivers_fault(),
        },
    ];
    let ruling = first_fault(&happened);
    assert_eq!((ruling.call, ruling.rule), (Call::Replay, "6.1.2.2"));
}

#[test]
fn f3_07_two_faults_of_one_side_are_one() {
    let happened = [
        Timed {
            at: 3.0,
            ruling: later_fault(),
        },
        Timed {
            at: 3.01,
            ruling: serving_fault(),
        },
        Timed {
            at: 1.0,
            ruling: nothing(),
        },
    ];
    assert_eq!(first_fault(&happened), later_fault());
}

#[test]
fn f5_27_whose_turn_it_is_serves() {
    goes_on(server_in_order(End::Left, 7, 7), "7.7.1");
    is_fault(
        server_in_order(End::Left, 8, 7),
        End::Left,
        Cause::RotationFault,
        "7.7.1",
        Signal::Position,
    );
}

#[test]
fn f9_18_a_service_may_touch_the_net_if_it_crosses() {
    goes_on(service_at_the_net(End::Right, true), "10.2");
    is_fault(
        service_at_the_net(End::Right, false),
        End::Right,
        Cause::ServiceNet,
        "12.6.2",
        Signal::NetTouch,
    );
}
