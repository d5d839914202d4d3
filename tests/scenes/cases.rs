//! Cases that are rare: a blocked service, an opponent hindered under the net, what some school rules forbid
//! there; and what a server may do before the hit.

use super::{about, deciding, events, landed, player, told};
use learn::{
    draw, Act, BodyPart, Call, Case, Drawn, End, Kind, Level, Row, TouchKind, BALL_RADIUS,
    LOW_SERVICE,
};
use rules::{Cause, Signal, UnderNet};

/// The scenes of a case that ends a rally: the side at fault is given.
fn ends(case: Case, signal: Signal, tell: impl Fn(&Drawn, End)) {
    for drawn in told(Kind::CaseEnds(case)) {
        let Call::Fault {
            by,
            cause,
            signal: shown,
        } = drawn.verdict.ruling.call
        else {
            panic!("{:?}", drawn.verdict.ruling);
        };
        assert_eq!((cause, shown), (case.cause(), Some(signal)));
        tell(&drawn, by);
    }
}

#[test]
fn f10_15_the_service_may_not_be_blocked() {
    ends(Case::ServiceBlock, Signal::BlockOrScreen, |drawn, by| {
        let one = deciding(drawn);
        assert_eq!(one.ruling.rule, "14.5");
        assert_eq!(by, drawn.scene.serving.other());
        let who = player(drawn, one);
        // A player of the front row, above the net, who touches the ball right after the service.
        assert_eq!((who.side, who.row), (by, Row::Front));
        assert!(who.highest(one.at) > drawn.scene.net_top);
        let touches = events(drawn, |act| matches!(act, Act::Touch { .. }));
        assert!(matches!(
            touches[0].act,
            Act::Touch {
                kind: TouchKind::Block,
                ..
            }
        ));
        assert_eq!(touches[0].at, one.at);
        let ball = by.spot(drawn.scene.ball_at(one.at));
        assert!((0.0..0.5).contains(&ball.depth));
    });
}

#[test]
fn f10_10_who_jumps_and_does_not_touch_the_service_has_not_blocked_it() {
    for drawn in told(Kind::CaseGoesOn(Case::ServiceBlock)) {
        assert_eq!(drawn.verdict.ruling.call, Call::PlayOn);
        let one = drawn.about().unwrap();
        assert_eq!((one.about, one.ruling.rule), (Cause::BlockFault, "14.1.2"));
        let who = player(&drawn, one);
        assert_eq!(who.side, drawn.scene.serving.other());
        assert!(who.highest(one.at) > drawn.scene.net_top);
        let tried = events(&drawn, |act| matches!(act, Act::BlockAttempt { .. }));
        assert_eq!(tried.len(), 1);
        // The ball is not there.
        let ball = drawn.scene.ball_at(one.at);
        let hands = who.figure(one.at).hands;
        assert!(hands
            .iter()
            .all(|hand| hand.distance(ball) > BALL_RADIUS + 0.05));
        let first = events(&drawn, |act| matches!(act, Act::Touch { .. }))[0];
        assert!(matches!(
            first.act,
            Act::Touch {
                kind: TouchKind::Hit,
                ..
            }
        ));
    }
}

/// The foot over the line that an opponent comes against: whose, the opponent, when.
fn contact(drawn: &Drawn) -> (usize, usize, f64) {
    let contact = events(drawn, |act| matches!(act, Act::Contact { .. }))[0];
    let Act::Contact {
        player,
        foot,
        with,
        hinders,
    } = contact.act
    else {
        panic!()
    };
    assert_eq!(hinders, drawn.verdict.ruling.is_fault());
    let [who, opponent] = [player, with].map(|index| &drawn.scene.players[index]);
    assert_ne!(who.side, opponent.side);
    // A part of the foot is on the line or before it still: of itself no fault.
    let over = who.stance(contact.at).feet[foot];
    assert!(over.nearest() < -0.025 && over.farthest() > -0.025);
    // They are beside each other.
    let place = |side: End, spot| side.point(spot, 0.0);
    let there = place(who.side, over.middle());
    let feet = opponent.stance(contact.at).feet;
    let nearest = feet
        .iter()
        .map(|foot| place(opponent.side, foot.middle()).distance(there))
        .fold(f64::INFINITY, f64::min);
    assert!(nearest < 0.6, "{nearest}");
    (player, with, contact.at)
}

#[test]
fn f8_13_a_foot_in_the_way_of_an_opponent() {
    ends(Case::Hindrance, Signal::LineOrUnder, |drawn, by| {
        let (player, with, at) = contact(drawn);
        let one = deciding(drawn);
        assert_eq!((one.ruling.rule, one.at), ("11.2.2.1", at));
        assert_eq!(drawn.scene.players[player].side, by);
        // Who stumbled does not touch the ball, and it comes down: too late to count.
        let after = events(
            drawn,
            |act| matches!(act, Act::Touch { player, .. } if *player == with),
        );
        assert!(after.is_empty());
        assert_eq!(End::of(landed(drawn).x), by.other());
        let floor = events(drawn, |act| matches!(act, Act::Floor { .. }))[0];
        assert!(floor.at > at);
    });
}

#[test]
fn f8_23_a_contact_alone_is_no_interference() {
    for drawn in told(Kind::CaseGoesOn(Case::Hindrance)) {
        let (_, with, at) = contact(&drawn);
        let plays = events(
            &drawn,
            |act| matches!(act, Act::Touch { player, .. } if *player == with),
        );
        assert!(plays.iter().any(|touch| touch.at > at));
        assert_eq!(drawn.about().unwrap().ruling.rule, "11.2.2.1");
    }
}

/// Where a part of the body comes down, with the side it belongs to.
fn comes_down(drawn: &Drawn) -> BodyPart {
    let Act::BodyDown { player, part } =
        events(drawn, |act| matches!(act, Act::BodyDown { .. }))[0].act
    else {
        panic!()
    };
    let who = &drawn.scene.players[player];
    let at = events(drawn, |act| matches!(act, Act::BodyDown { .. }))[0].at;
    let body = who.figure(at);
    let lowest = match part {
        BodyPart::Hand => body.hands,
        BodyPart::Other => body.knees,
    };
    let touches = |point: &learn::Point| who.side.spot(*point).depth < -0.025 && point.z < 0.25;
    assert!(lowest.iter().any(touches), "{lowest:?}");
    part
}

/// Summaries of school rules, no published text of the federation (F20-24).
#[test]
fn f20_24_by_some_school_rules_a_knee_on_the_other_court_is_a_fault() {
    ends(Case::JuniorUnderNet, Signal::LineOrUnder, |drawn, _| {
        assert_eq!(drawn.scene.under_net, UnderNet::Junior);
        assert_eq!(deciding(drawn).ruling.rule, "school");
        assert_eq!(comes_down(drawn), BodyPart::Other);
    });
    for drawn in told(Kind::CaseGoesOn(Case::JuniorUnderNet)) {
        assert_eq!(drawn.scene.under_net, UnderNet::Junior);
        assert_eq!(comes_down(&drawn), BodyPart::Hand);
    }
}

/// Scenes of a kind from many seeds, for what comes up in some of them.
fn many(kind: Kind) -> Vec<Drawn> {
    let band = Level::Close.band(kind);
    (0..40)
        .map(|seed| draw(kind, band, seed).unwrap())
        .collect()
}

#[test]
fn f8_14_by_the_international_rules_the_same_knee_is_none() {
    let knees = many(Kind::GoesOn(Cause::UnderNet));
    let knees: Vec<&Drawn> = knees
        .iter()
        .filter(|drawn| {
            let knee = |act: &Act| {
                matches!(
                    act,
                    Act::BodyDown {
                        part: BodyPart::Other,
                        ..
                    }
                )
            };
            !events(drawn, knee).is_empty()
        })
        .collect();
    assert!(!knees.is_empty());
    for drawn in knees {
        assert_eq!(drawn.scene.under_net, UnderNet::Standard);
        assert_eq!(comes_down(drawn), BodyPart::Other);
        assert_eq!(drawn.verdict.ruling.call, Call::PlayOn);
    }
}

/// The height of the service hit.
fn hit_height(drawn: &Drawn) -> f64 {
    let hit = events(drawn, |act| matches!(act, Act::ServiceHit { .. }))[0];
    drawn.scene.ball_at(hit.at).z
}

#[test]
fn f9_08_f9_09_a_ball_may_bounce_before_and_be_hit_from_below() {
    let [mut bounced, mut below] = [0, 0];
    for drawn in many(Kind::GoesOn(Cause::ServiceToss)) {
        let hit = events(&drawn, |act| matches!(act, Act::ServiceHit { .. }))[0];
        let bounces = events(&drawn, |act| matches!(act, Act::Bounce { .. }));
        if let Some(bounce) = bounces.first() {
            bounced += 1;
            let ball = drawn.scene.ball_at(bounce.at);
            assert!((ball.z - BALL_RADIUS).abs() < 1e-3 && bounce.at < hit.at);
        } else {
            below += 1;
            // It leaves the hand that held it before the other one hits it.
            assert!(hit_height(&drawn) < LOW_SERVICE);
            let server = &drawn.scene.players[0..12]
                .iter()
                .find(|p| p.side == drawn.scene.serving && p.position == 1)
                .unwrap();
            let left = server.figure(hit.at).hands[0];
            assert!(left.distance(drawn.scene.ball_at(hit.at)) > BALL_RADIUS + 0.1);
        }
        assert!(about(&drawn, Cause::ServiceToss)
            .iter()
            .all(|one| one.ruling.rule == "12.4"));
    }
    assert!(bounced > 5 && below > 5, "{bounced} {below}");
}

#[test]
fn f9_08_hit_out_of_the_hand_from_below_is_a_fault_as_well() {
    let scenes = many(Kind::Ends(Cause::ServiceToss));
    let low = scenes
        .iter()
        .filter(|drawn| hit_height(drawn) < LOW_SERVICE);
    let rules: Vec<&str> = low.map(|drawn| deciding(drawn).ruling.rule).collect();
    assert!(rules.len() > 3 && rules.iter().all(|rule| *rule == "12.4.1"));
}

/// Casebook 3.29: one whistle, and the right player within the time.
#[test]
fn f5_37_the_wrong_player_may_give_the_ball_to_the_right_one() {
    let mut given = 0;
    for drawn in many(Kind::GoesOn(Cause::RotationFault)) {
        let Some(gift) = events(&drawn, |act| matches!(act, Act::HandOver { .. }))
            .first()
            .copied()
        else {
            continue;
        };
        given += 1;
        let Act::HandOver { player, to } = gift.act else {
            panic!()
        };
        let [mate, server] = [player, to].map(|index| &drawn.scene.players[index]);
        let whistle = events(&drawn, |act| *act == Act::Whistle);
        let hit = events(&drawn, |act| matches!(act, Act::ServiceHit { .. }))[0].at;
        assert_eq!(whistle.len(), 1);
        assert!(whistle[0].at < gift.at && hit - whistle[0].at < 8.0);
        assert_eq!((mate.side, server.number), (server.side, drawn.scene.due));
        // Whoever gave it away is inside the court again at the hit.
        let feet = mate.planted(hit);
        assert!(feet.iter().all(|foot| foot.farthest() <= 9.0));
    }
    assert!(given > 10, "{given}");
}
