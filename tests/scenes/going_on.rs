//! Near misses: play goes on, and what nearly ended it is in the scene.

use super::{about, events, player, told};
use learn::{Act, Call, Drawn, Judged, Kind, Row, TouchKind, BALL_RADIUS, CAUGHT};
use rules::Cause;

/// Tells every scene in which this was near: what was decided about it.
fn goes_on(cause: Cause, tell: impl Fn(&Drawn, &Judged)) {
    for drawn in told(Kind::GoesOn(cause)) {
        assert_eq!(drawn.verdict.ruling.call, Call::PlayOn);
        assert!(drawn.verdict.all.iter().all(|one| !one.ruling.is_fault()));
        let distance = |one: &&Judged| {
            let margin = one.ruling.margin;
            margin
                .metres()
                .or(margin.seconds())
                .unwrap_or(f64::INFINITY)
        };
        let mut near = about(&drawn, cause);
        near.sort_by(|a, b| distance(a).total_cmp(&distance(b)));
        tell(&drawn, near[0]);
    }
}

/// The ball is played when its lowest part is so far above the floor as the margin says.
fn is_saved(cause: Cause) {
    goes_on(cause, |drawn, one| {
        assert_eq!(one.ruling.rule, "8.3");
        let gap = drawn.scene.ball_at(one.at).z - BALL_RADIUS;
        assert!((gap - one.ruling.margin.metres().unwrap()).abs() < 1e-6);
        assert!(gap > 0.0);
        assert!(events(drawn, |act| matches!(act, Act::Floor { .. })).is_empty());
    });
}

#[test]
fn a_ball_is_saved_above_the_court() {
    is_saved(Cause::BallIn);
    is_saved(Cause::ServiceWinner);
}

#[test]
fn a_ball_is_saved_outside_the_court() {
    is_saved(Cause::BallOut);
    is_saved(Cause::ServiceOut);
}

#[test]
fn a_ball_that_a_block_touched_is_saved() {
    is_saved(Cause::BallTouched);
}

#[test]
fn f7_01_a_block_is_no_hit() {
    goes_on(Cause::FourHits, |drawn, one| {
        let side = player(drawn, one).side;
        let of_side = |kind: TouchKind| {
            let touch = |act: &Act| {
                matches!(act, Act::Touch { player, kind: k, .. }
                if *k == kind && drawn.scene.players[*player].side == side)
            };
            events(drawn, touch)
                .iter()
                .filter(|e| e.at <= one.at)
                .count()
        };
        assert_eq!((of_side(TouchKind::Block), of_side(TouchKind::Hit)), (1, 3));
    });
}

#[test]
fn f7_04_twice_in_one_action_at_the_first_hit() {
    goes_on(Cause::DoubleContact, |drawn, one| {
        let touches = events(drawn, |act| matches!(act, Act::Touch { .. }));
        assert!(matches!(
            touches[1].act,
            Act::Touch {
                same_action: true,
                ..
            }
        ));
        assert_eq!(touches[1].at, one.at);
    });
}

#[test]
fn f7_10_a_long_touch_is_not_yet_a_catch() {
    goes_on(Cause::Catch, |drawn, one| {
        let Some(Act::Touch { contact, .. }) =
            events(drawn, |act| matches!(act, Act::Touch { .. }))
                .iter()
                .find(|e| e.at == one.at)
                .map(|e| e.act)
        else {
            panic!();
        };
        assert!(contact > 0.05 && contact < CAUGHT);
    });
}

#[test]
fn f7_09_a_player_may_be_held_back() {
    goes_on(Cause::AssistedHit, |drawn, one| {
        assert_eq!(one.ruling.rule, "9.1.3");
        assert_eq!(
            events(drawn, |act| matches!(act, Act::HeldBack { .. })).len(),
            1
        );
    });
}

#[test]
fn f8_19_f8_24_a_hand_beyond_the_antenna_or_after_the_action() {
    goes_on(Cause::NetTouch, |drawn, one| {
        let event = events(drawn, |act| matches!(act, Act::NetTouch { .. }))[0];
        let Act::NetTouch {
            player,
            hand,
            in_action,
            hair_only,
        } = event.act
        else {
            panic!()
        };
        let aside = drawn.scene.players[player].figure(event.at).hands[hand]
            .y
            .abs();
        match one.ruling.rule {
            "11.3.2" => assert!(aside > 4.5),
            "11.3.1" => assert!(hair_only || !in_action),
            other => panic!("{other}"),
        }
    });
}

#[test]
fn f8_13_f8_14_a_foot_on_the_line_a_hand_over_it_a_ball_not_through() {
    goes_on(Cause::UnderNet, |drawn, one| match one.ruling.rule {
        "11.2.2.1" => {
            let event = events(drawn, |act| matches!(act, Act::FootDown { .. }))[0];
            let Act::FootDown { player, foot, .. } = event.act else {
                panic!()
            };
            let foot = drawn.scene.players[player].stance(event.at).feet[foot];
            assert!(foot.farthest() > -0.025);
        }
        "11.2.2.2" => assert_eq!(
            events(drawn, |act| matches!(act, Act::BodyDown { .. })).len(),
            1
        ),
        "10.1.3" => assert!(!events(drawn, |act| *act == Act::Under).is_empty()),
        other => panic!("{other}"),
    });
}

#[test]
fn f8_22_a_block_after_the_attack() {
    goes_on(Cause::OverNet, |drawn, one| {
        assert_eq!(one.ruling.rule, "14.3");
        let swing = events(drawn, |act| matches!(act, Act::Swing { .. }))[0].at;
        assert!(one.at > swing);
        assert!((one.at - swing - one.ruling.margin.seconds().unwrap()).abs() < 1e-9);
    });
}

#[test]
fn f10_03_the_back_row_takes_off_behind_the_line() {
    goes_on(Cause::AttackFault, |drawn, one| {
        let who = player(drawn, one);
        if one.ruling.rule == "13.3.3" {
            let feet = who.planted(one.moment);
            assert!(feet[0].nearest().min(feet[1].nearest()) >= 3.0);
        } else {
            assert_eq!(one.ruling.rule, "13.3.4");
            assert!(who.side.spot(drawn.scene.ball_at(one.moment)).depth >= 3.0);
        }
    });
}

#[test]
fn f10_09_who_stays_below_the_top_of_the_net_does_not_block() {
    goes_on(Cause::BlockFault, |drawn, one| {
        let who = player(drawn, one);
        assert_eq!(who.row, Row::Back);
        assert!(who.highest(one.at) <= drawn.scene.net_top);
    });
}

#[test]
fn f10_06_f10_07_what_a_libero_may() {
    goes_on(Cause::LiberoFault, |drawn, one| {
        let ball = drawn.scene.ball_at(one.moment);
        let top = drawn.scene.net_top;
        match one.ruling.rule {
            "13.3.5" | "13.3.6" => assert!(ball.z - BALL_RADIUS <= top),
            // Set from behind the front zone: everybody may attack it.
            "13.2.1" => assert!(ball.z - BALL_RADIUS > top),
            "14.1" => assert!(player(drawn, one).highest(one.at) <= top),
            other => panic!("{other}"),
        }
    });
}

#[test]
fn at_the_service_what_is_right() {
    for cause in [
        Cause::ServiceTime,
        Cause::ServiceFoot,
        Cause::ServiceToss,
        Cause::RotationFault,
        Cause::Screen,
        Cause::PositionFault,
        Cause::OutsideCourt,
    ] {
        goes_on(cause, |drawn, one| {
            assert!(!one.ruling.is_fault());
            let hit = events(drawn, |act| matches!(act, Act::ServiceHit { .. }))[0];
            assert!(hit.at <= one.at + 1e-9);
            // Play goes on: the receivers have the ball.
            let after = events(drawn, |act| matches!(act, Act::Touch { .. }));
            assert!(!after.is_empty());
        });
    }
}

#[test]
fn f9_18_a_service_that_touches_the_net_and_crosses() {
    goes_on(Cause::ServiceNet, |drawn, one| {
        assert_eq!(one.ruling.rule, "10.2");
        let net = events(drawn, |act| *act == Act::Net)[0].at;
        assert!(events(drawn, |act| *act == Act::Plane)[0].at > net);
    });
}

#[test]
fn f8_01_a_ball_inside_the_crossing_space() {
    for cause in [Cause::Antenna, Cause::OutsideCrossing] {
        goes_on(cause, |drawn, one| {
            assert_eq!(one.ruling.rule, "10.1.1");
            let ball = drawn.scene.ball_at(one.at);
            let inside = 4.5 - ball.y.abs() - BALL_RADIUS;
            assert!((inside - one.ruling.margin.metres().unwrap()).abs() < 1e-5);
        });
    }
}
