//! Scenes that end for one reason: what can be measured in the scene itself says the same as its truth.

use super::{deciding, events, landed, outside, player, told};
use learn::{Act, Call, Drawn, End, Kind, Row, Touch, TouchKind, BALL_RADIUS, CAUGHT};
use rules::{Cause, Signal};

/// Tells every scene of the kind that ends so: the side at fault is given.
fn ends(cause: Cause, signal: Signal, tell: impl Fn(&Drawn, End)) {
    for drawn in told(Kind::Ends(cause)) {
        let Call::Fault {
            by,
            cause: found,
            signal: shown,
        } = drawn.verdict.ruling.call
        else {
            panic!("{:?}", drawn.verdict.ruling);
        };
        assert_eq!((found, shown), (cause, Some(signal)));
        tell(&drawn, by);
    }
}

/// Who touched the ball, in their order: side, player, in what.
fn touches(drawn: &Drawn) -> Vec<(End, usize, TouchKind)> {
    let of = |event: &learn::Event| match event.act {
        Act::Touch { player, kind, .. } => Some((drawn.scene.players[player].side, player, kind)),
        _ => None,
    };
    drawn.scene.events.iter().filter_map(of).collect()
}

/// The side that touched the ball last.
fn last_touch(drawn: &Drawn) -> End {
    touches(drawn).last().map_or(drawn.scene.serving, |t| t.0)
}

#[test]
fn f8_3_ball_in() {
    ends(Cause::BallIn, Signal::BallIn, |drawn, by| {
        // The area that touched reaches the line at least.
        assert!(outside(landed(drawn)) <= 0.05);
        assert_eq!(End::of(landed(drawn).x), by);
        assert_eq!(last_touch(drawn), by.other());
    });
}

#[test]
fn f8_4_ball_out() {
    ends(Cause::BallOut, Signal::BallOut, |drawn, by| {
        assert!(outside(landed(drawn)) > 0.03);
        assert_eq!(last_touch(drawn), by);
        assert_eq!(End::of(landed(drawn).x), by.other());
    });
}

#[test]
fn f16_28_ball_touched_by_the_block() {
    ends(Cause::BallTouched, Signal::BallTouched, |drawn, by| {
        assert!(outside(landed(drawn)) > 0.03);
        let (side, _, kind) = *touches(drawn).last().unwrap();
        assert_eq!((side, kind), (by, TouchKind::Block));
        assert_eq!(End::of(landed(drawn).x), by);
    });
}

#[test]
fn f7_01_four_hits() {
    ends(Cause::FourHits, Signal::FourHits, |drawn, by| {
        let until = deciding(drawn).at;
        let hits = events(drawn, |act| {
            matches!(
                act,
                Act::Touch {
                    kind: TouchKind::Hit,
                    ..
                }
            )
        });
        let before = hits.iter().filter(|e| e.at <= until);
        assert_eq!(before.count(), 4);
        assert!(touches(drawn)[..4].iter().all(|t| t.0 == by));
    });
}

#[test]
fn f7_05_double_contact_of_the_setter() {
    ends(Cause::DoubleContact, Signal::DoubleContact, |drawn, by| {
        // Pass, set, and once more the same player.
        let touches = touches(drawn);
        assert_eq!(touches[1], touches[2]);
        assert_ne!(touches[0], touches[1]);
        assert_eq!(touches[2].0, by);
    });
}

#[test]
fn f9_2_2_a_ball_that_stays_is_caught() {
    ends(Cause::Catch, Signal::Catch, |drawn, by| {
        let long = events(
            drawn,
            |act| matches!(act, Act::Touch { contact, .. } if *contact > 0.25),
        );
        assert_eq!(long.len(), 1);
        assert!((deciding(drawn).at - long[0].at - CAUGHT).abs() < 1e-9);
        assert_eq!(player(drawn, deciding(drawn)).side, by);
    });
}

#[test]
fn f7_09_somebody_is_lifted_to_the_ball() {
    ends(Cause::AssistedHit, Signal::Catch, |drawn, by| {
        let helped = events(drawn, |act| {
            matches!(
                act,
                Act::Touch {
                    helped_by: Some(_),
                    ..
                }
            )
        });
        let Act::Touch {
            player,
            helped_by: Some(mate),
            ..
        } = helped[0].act
        else {
            panic!();
        };
        let [who, mate] = [player, mate].map(|i| &drawn.scene.players[i]);
        assert_eq!((who.side, mate.side), (by, by));
        assert_ne!(who.number, mate.number);
        // The hands are on the body.
        let (at, body) = (helped[0].at, who.figure(helped[0].at));
        assert!(mate.figure(at).hands[0].distance(body.hips) < 0.4);
    });
}

#[test]
fn f8_17_a_hand_in_the_net() {
    ends(Cause::NetTouch, Signal::NetTouch, |drawn, by| {
        let event = events(drawn, |act| matches!(act, Act::NetTouch { .. }))[0];
        let Act::NetTouch { player, hand, .. } = event.act else {
            panic!()
        };
        let who = &drawn.scene.players[player];
        let at = who.figure(event.at).hands[hand];
        assert_eq!(who.side, by);
        assert!(at.x.abs() < 1e-6 && at.y.abs() <= 4.5 && at.z < drawn.scene.net_top);
    });
}

#[test]
fn f8_15_all_of_a_foot_is_over_or_all_of_the_ball() {
    ends(Cause::UnderNet, Signal::LineOrUnder, |drawn, by| {
        let feet = events(drawn, |act| matches!(act, Act::FootDown { .. }));
        if let Some(Act::FootDown { player, foot, .. }) = feet.first().map(|e| e.act) {
            let foot = drawn.scene.players[player].stance(feet[0].at).feet[foot];
            assert!(foot.farthest() < -0.025);
        } else {
            assert_eq!(events(drawn, |act| *act == Act::Under).len(), 1);
            let beyond = by.spot(landed(drawn)).depth;
            assert!(beyond < -BALL_RADIUS, "{beyond}");
        }
    });
}

#[test]
fn f8_22_a_block_before_the_attack() {
    ends(Cause::OverNet, Signal::OverNet, |drawn, by| {
        let block = events(drawn, |act| {
            matches!(
                act,
                Act::Touch {
                    kind: TouchKind::Block,
                    ..
                }
            )
        })[0]
            .at;
        let swing = events(drawn, |act| matches!(act, Act::Swing { .. }))[0].at;
        assert!(block < swing);
        // The ball is on the side of the attackers.
        assert!(by.spot(drawn.scene.ball_at(block)).depth < 0.0);
    });
}

#[test]
fn f10_04_the_back_row_takes_off_too_near_or_the_service_is_attacked() {
    ends(Cause::AttackFault, Signal::AttackFault, |drawn, by| {
        let one = deciding(drawn);
        let who = player(drawn, one);
        assert_eq!(who.side, by);
        let ball = drawn.scene.ball_at(one.moment);
        assert!(ball.z - BALL_RADIUS > drawn.scene.net_top);
        if one.ruling.rule == "13.3.3" {
            assert_eq!(who.row, Row::Back);
            let feet = who.planted(one.moment);
            assert!(feet[0].nearest().min(feet[1].nearest()) < 3.0);
        } else {
            assert_eq!(one.ruling.rule, "13.3.4");
            assert!(by.spot(ball).depth < 3.0);
        }
    });
}

#[test]
fn f10_09_the_back_row_reaches_above_the_net_in_a_block() {
    ends(Cause::BlockFault, Signal::BlockOrScreen, |drawn, by| {
        let one = deciding(drawn);
        let who = player(drawn, one);
        assert_eq!((who.side, who.row), (by, Row::Back));
        assert!(who.highest(one.at) > drawn.scene.net_top);
    });
}

#[test]
fn f10_06_f10_07_the_libero_attacks_sets_or_blocks() {
    let mut rules = std::collections::BTreeSet::new();
    for seed in 0..24 {
        let kind = Kind::Ends(Cause::LiberoFault);
        let drawn = learn::draw(kind, learn::Level::Close.band(kind), seed).unwrap();
        let one = deciding(&drawn);
        let libero = drawn.scene.players.iter().filter(|p| p.row == Row::Libero);
        assert_eq!(libero.count(), 1);
        let ball = drawn.scene.ball_at(one.moment);
        let above = match one.ruling.rule {
            "13.3.5" | "13.3.6" => ball.z - BALL_RADIUS - drawn.scene.net_top,
            "14.6.6" => player(&drawn, one).highest(one.moment) - drawn.scene.net_top,
            other => panic!("{other}"),
        };
        assert!(above > 0.0);
        rules.insert(one.ruling.rule);
    }
    assert_eq!(
        rules.into_iter().collect::<Vec<_>>(),
        ["13.3.5", "13.3.6", "14.6.6"]
    );
}

/// From the whistle to the hit, in seconds.
fn waited(drawn: &Drawn) -> f64 {
    let whistle = events(drawn, |act| *act == Act::Whistle)[0].at;
    events(drawn, |act| matches!(act, Act::ServiceHit { .. }))[0].at - whistle
}

#[test]
fn f9_05_more_than_eight_seconds() {
    ends(Cause::ServiceTime, Signal::ServiceDelay, |drawn, by| {
        assert!(waited(drawn) > 8.0);
        assert_eq!(by, drawn.scene.serving);
        // It may be whistled when the time is over, not only when the ball is hit.
        assert!((deciding(drawn).at - 8.5).abs() < 1e-9);
    });
}

#[test]
fn f9_10_a_foot_on_the_line_or_beside_the_zone() {
    ends(Cause::ServiceFoot, Signal::LineOrUnder, |drawn, by| {
        let one = deciding(drawn);
        let feet = player(drawn, one).planted(one.at);
        let on_line = feet.iter().any(|f| f.nearest() < 9.0);
        let beside = feet
            .iter()
            .any(|f| f.rightmost() > 4.5 || f.leftmost() < -4.5);
        assert!(on_line || beside);
        assert_eq!(by, drawn.scene.serving);
    });
}

#[test]
fn f9_08_f9_09_two_hands_two_tosses_or_none() {
    ends(Cause::ServiceToss, Signal::NotTossed, |drawn, _| {
        let Act::ServiceHit { how, .. } =
            events(drawn, |act| matches!(act, Act::ServiceHit { .. }))[0].act
        else {
            panic!();
        };
        assert!(how.tosses > 1 || !how.one_hand || !how.released);
    });
}

#[test]
fn f9_12_a_service_that_stays_in_the_net() {
    ends(Cause::ServiceNet, Signal::NetTouch, |drawn, by| {
        assert!(events(drawn, |act| *act == Act::Plane).is_empty());
        assert_eq!(End::of(landed(drawn).x), by);
    });
}

#[test]
fn f9_12_a_service_out() {
    ends(Cause::ServiceOut, Signal::BallOut, |drawn, by| {
        assert!(outside(landed(drawn)) > 0.03);
        assert!(touches(drawn).is_empty());
        assert_eq!(by, drawn.scene.serving);
    });
}

#[test]
fn f8_3_a_service_that_nobody_touches() {
    ends(Cause::ServiceWinner, Signal::BallIn, |drawn, by| {
        assert!(outside(landed(drawn)) <= 0.05);
        assert!(touches(drawn).is_empty());
        assert_eq!(by, drawn.scene.serving.other());
    });
}

#[test]
fn f9_14_a_screen_hides_the_hit() {
    ends(Cause::Screen, Signal::BlockOrScreen, |drawn, by| {
        assert_eq!(by, drawn.scene.serving);
        let one = deciding(drawn);
        let who = player(drawn, one);
        assert_eq!(who.side, by);
        // High hands, near the net.
        assert!(who.highest(one.moment) > drawn.scene.net_top);
    });
}

#[test]
fn f5_09_f5_10_receivers_in_the_wrong_order() {
    ends(Cause::PositionFault, Signal::Position, |drawn, by| {
        assert_eq!(by, drawn.scene.serving.other());
        let at = deciding(drawn).at;
        let feet = |position| drawn.scene.in_position(by, position).unwrap().planted(at);
        let deep = |p| feet(p)[0].farthest().max(feet(p)[1].farthest());
        let near = |p| feet(p)[0].nearest().min(feet(p)[1].nearest());
        let right = |p| feet(p)[0].rightmost().max(feet(p)[1].rightmost());
        let left = |p| feet(p)[0].leftmost().min(feet(p)[1].leftmost());
        let wrong_depth = [(2, 1), (3, 6), (4, 5)]
            .iter()
            .any(|(f, b)| deep(*b) < near(*f));
        let wrong_side = [(4, 3), (3, 2), (5, 6), (6, 1)]
            .iter()
            .any(|(l, r)| right(*r) < left(*l));
        assert!(wrong_depth || wrong_side);
    });
}

#[test]
fn f5_27_somebody_serves_whose_turn_it_is_not() {
    ends(Cause::RotationFault, Signal::Position, |drawn, by| {
        let one = deciding(drawn);
        assert_ne!(player(drawn, one).number, drawn.scene.due);
        // It was the turn of a team-mate.
        assert!(drawn.scene.side(by).any(|p| p.number == drawn.scene.due));
        // It exists once the ball is hit (7.7.1; casebook 3.28).
        assert_eq!(
            one.at,
            events(drawn, |a| matches!(a, Act::ServiceHit { .. }))[0].at
        );
    });
}

#[test]
fn f5_07_a_foot_outside_the_own_court_at_the_hit() {
    ends(Cause::OutsideCourt, Signal::LineOrUnder, |drawn, by| {
        let one = deciding(drawn);
        let who = player(drawn, one);
        assert_eq!(who.side, by);
        let over =
            |f: &learn::Foot| f.farthest() > 9.0 || f.rightmost() > 4.5 || f.leftmost() < -4.5;
        assert!(who.planted(one.at).iter().any(over));
    });
}

#[test]
fn f8_4_3_a_ball_at_the_antenna() {
    ends(Cause::Antenna, Signal::BallOut, |drawn, _| {
        let plane = events(drawn, |act| *act == Act::Plane);
        let ball = drawn.scene.ball_at(plane[0].at);
        assert!((ball.y.abs() - 4.5).abs() < BALL_RADIUS);
        assert!(ball.z < drawn.scene.net_top + 0.8 + BALL_RADIUS);
    });
}

#[test]
fn f8_03_a_third_hit_outside_the_crossing_space() {
    ends(Cause::OutsideCrossing, Signal::BallOut, |drawn, by| {
        let plane = events(drawn, |act| *act == Act::Plane);
        let ball = drawn.scene.ball_at(plane[0].at);
        assert!(ball.y.abs() + BALL_RADIUS > 4.5);
        assert!(touches(drawn)[..3].iter().all(|t| t.0 == by));
    });
}

#[test]
fn no_touch_is_made_by_the_counting_of_hits_alone() {
    // What the hits are counted from is in the scene: the same row gives the same decision.
    for drawn in told(Kind::Ends(Cause::FourHits)) {
        let row: Vec<Touch> = touches(&drawn)
            .iter()
            .take(4)
            .map(|(by, player, kind)| Touch {
                by: *by,
                player: u8::try_from(*player).unwrap(),
                kind: *kind,
                manner: learn::Manner::Rebounds,
                with_last: false,
                same_action: false,
            })
            .collect();
        assert_eq!(learn::hits(&row).call, drawn.verdict.ruling.call);
    }
}
