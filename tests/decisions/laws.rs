//! What must hold of every decision, whatever the numbers are.

use super::stands;
use learn::{
    at_the_service, attack, crossing, first_fault, foot_over_centre_line, landing, service_foot,
    Attack, Attacked, Call, Crossing, End, FloorContact, LastTouch, LastTouchKind, Point, Row,
    Ruling, TeamHit, Timed, AT_ONCE,
};
use proptest::prelude::*;
use rules::Edition;

const KINDS: [LastTouchKind; 4] = [
    LastTouchKind::Service,
    LastTouchKind::Attack,
    LastTouchKind::Block,
    LastTouchKind::Defence,
];

fn lands(x: f64, y: f64, patch: f64, by: End, kind: LastTouchKind) -> Ruling {
    let at = Point { x, y, z: 0.0 };
    landing(FloorContact { at, patch }, LastTouch { by, kind })
}

/// The same ruling with the sides of the net exchanged.
fn mirrored(mut ruling: Ruling) -> Ruling {
    if let Call::Fault { by, cause, signal } = ruling.call {
        ruling.call = Call::Fault {
            by: by.other(),
            cause,
            signal,
        };
    }
    ruling
}

proptest! {
    /// Seen from the other side of the hall everything is decided the other way round.
    #[test]
    fn a_landing_in_the_mirror(
        x in 0.01f64..12.0, y in -7.0f64..7.0, patch in 0.0f64..0.1, kind in 0usize..4, left: bool,
    ) {
        let by = if left { End::Left } else { End::Right };
        let here = lands(x, y, patch, by, KINDS[kind]);
        prop_assert_eq!(lands(-x, -y, patch, by.other(), KINDS[kind]), mirrored(here));
        prop_assert_eq!(lands(x, -y, patch, by, KINDS[kind]), here);
    }

    /// The margin says how far the other answer is: that much nearer and a little more flips it, a little
    /// less does not.
    #[test]
    fn the_margin_of_a_landing_is_the_way_to_the_other_answer(x in 4.5f64..10.0) {
        // In the middle of the court's width only the end line is near.
        let is_in = |x: f64| lands(x, 0.0, 0.04, End::Left, LastTouchKind::Attack).won_by() == Some(End::Left);
        let here = lands(x, 0.0, 0.04, End::Left, LastTouchKind::Attack);
        let margin = here.margin.metres().unwrap();
        let towards = if is_in(x) { 1.0 } else { -1.0 };
        // As long as the side line is farther.
        prop_assume!(margin < 4.0);
        prop_assert_ne!(is_in(x + towards * (margin + 1e-6)), is_in(x));
        prop_assert_eq!(is_in(x + towards * (margin - 1e-6)), is_in(x));
    }

    /// Farther out is never in again, and a larger patch never out again.
    #[test]
    fn landing_is_monotone(x in 8.0f64..11.0, more in 0.0f64..1.0, patch in 0.0f64..0.1, wider in 0.0f64..0.1) {
        let is_in = |x, patch| {
            lands(x, 0.0, patch, End::Left, LastTouchKind::Attack).won_by() == Some(End::Left)
        };
        prop_assert!(is_in(x, patch) || !is_in(x + more, patch));
        prop_assert!(!is_in(x, patch) || is_in(x, patch + wider));
    }

    #[test]
    fn a_crossing_in_the_mirror(aside in -6.0f64..6.0, hit in 0usize..4, antenna: bool, free: bool) {
        let hit = [TeamHit::Service, TeamHit::First, TeamHit::Second, TeamHit::Third][hit];
        let ball = |from, aside| Crossing {
            from, aside, hit, touches_antenna: antenna, towards_free_zone: free,
        };
        for edition in [Edition::E2025, Edition::E2021] {
            let here = crossing(ball(End::Left, aside), edition);
            prop_assert_eq!(crossing(ball(End::Right, -aside), edition), mirrored(here));
        }
    }

    /// A foot that comes farther across is never allowed again.
    #[test]
    fn the_centre_line_is_monotone(depth in -0.5f64..0.5, more in 0.0f64..0.5) {
        let over = |depth| foot_over_centre_line(End::Left, super::foot(depth, 0.0), false).is_fault();
        prop_assert!(!over(depth) || over(depth - more));
    }

    #[test]
    fn the_end_line_at_the_service_is_monotone(depth in 8.0f64..10.0, more in 0.0f64..1.0) {
        let fault = |depth| service_foot(End::Left, &stands(depth, 0.0)).is_fault();
        prop_assert!(!fault(depth) || fault(depth - more));
    }

    /// Lower, or from farther back, an attack from the back row is never worse.
    #[test]
    fn a_back_row_attack_is_monotone(
        take_off in 1.0f64..5.0, height in 1.5f64..3.5, back in 0.0f64..1.0, lower in 0.0f64..1.0,
    ) {
        let fault = |take_off, ball_height| attack(Attack {
            by: End::Left, row: Row::Back, ball: Attacked::Other, take_off, ball_depth: 1.0,
            ball_height, net_top: 2.24, completed: true,
        }).is_fault();
        prop_assert!(fault(take_off, height) || !fault(take_off + back, height - lower));
    }

    /// In whatever order things are told, the same one was first.
    #[test]
    fn the_order_of_telling_does_not_matter(
        times in prop::collection::vec((0.0f64..2.0, any::<bool>()), 1..6), turn in 0usize..6,
    ) {
        let mut happened: Vec<Timed> = times.iter().map(|&(at, left)| Timed {
            at,
            ruling: service_foot(if left { End::Left } else { End::Right }, &stands(9.0, 0.0)),
        }).collect();
        let here = first_fault(&happened);
        let length = happened.len();
        happened.rotate_left(turn % length);
        prop_assert_eq!(first_fault(&happened).call, here.call);
        happened.reverse();
        prop_assert_eq!(first_fault(&happened).call, here.call);
    }

    /// Whatever comes together at a service, something is decided, and a fault at the hit is never beaten.
    #[test]
    fn precedence_at_the_service_is_total(a: bool, b: bool, c: bool) {
        let fault = |is, by| if is {
            service_foot(by, &stands(9.0, 0.0))
        } else {
            service_foot(by, &stands(9.5, 0.0))
        };
        let ruling = at_the_service(fault(a, End::Left), fault(b, End::Right), fault(c, End::Left));
        let lost_by = if a { Some(End::Left) } else if b { Some(End::Right) } else if c { Some(End::Left) } else { None };
        prop_assert_eq!(ruling.won_by(), lost_by.map(End::other));
    }
}

#[test]
fn a_picture_apart_is_no_longer_at_once() {
    let at = |at, by| Timed {
        at,
        ruling: service_foot(by, &stands(9.0, 0.0)),
    };
    let apart = |by| first_fault(&[at(0.0, End::Left), at(by, End::Right)]).call;
    assert_eq!(apart(AT_ONCE), Call::Replay);
    assert_ne!(apart(AT_ONCE + 0.001), Call::Replay);
}
