//! What must hold of every scene, whatever the seed is.
//!
//! `TIMES=40 cargo test --profile native --test scenes -- --nocapture laws` draws 40 times as many, 100,000,
//! and prints what was thrown away.

use learn::{
    draw, judge, unsound, Act, Call, Drawn, Flight, Kind, Level, Margin, Point, Scene, Thrown,
    Unsound, BALL_RADIUS,
};
use std::collections::BTreeMap;

/// How many scenes the test command draws.
const SCENES: u64 = 2_500;

fn times() -> u64 {
    std::env::var("TIMES")
        .ok()
        .and_then(|typed| typed.parse().ok())
        .unwrap_or(1)
}

/// A number that looks like chance, from a counter: the mixing step of SplitMix64 (Steele, Lea and Flood 2014).
fn mixed(counter: u64) -> u64 {
    let mut z = counter.wrapping_mul(0x9E37_79B9_7F4A_7C15);
    z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
    z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
    z ^ (z >> 31)
}

#[test]
fn every_scene_is_what_it_was_meant_to_be_and_could_have_been() {
    let kinds: Vec<Kind> = Kind::all().collect();
    assert_eq!(kinds.len(), Kind::COUNT);
    let mut counts: BTreeMap<String, (u64, BTreeMap<Thrown, u64>)> = BTreeMap::new();
    for counter in 0..SCENES * times() {
        let seed = mixed(counter + 1);
        let kind = kinds[usize::try_from(seed % kinds.len() as u64).unwrap()];
        let level = Level::ALL[usize::try_from(seed / 1000 % 3).unwrap()];
        let drawn = draw(kind, level.band(kind), seed)
            .unwrap_or_else(|| panic!("no scene of {kind:?} {level:?} from {seed}"));
        the_truth_is_the_intent(&drawn);
        the_margin_is_in_the_band(&drawn, level);
        nothing_is_flown_through(&drawn.scene, seed);
        let count = counts.entry(kind.code()).or_default();
        count.0 += 1;
        for why in drawn.thrown {
            *count.1.entry(why).or_default() += 1;
        }
    }
    let (mut kept, mut all_thrown) = (0, 0);
    for (kind, (drawn, thrown)) in &counts {
        let lost: u64 = thrown.values().sum();
        kept += drawn;
        all_thrown += lost;
        #[allow(clippy::cast_precision_loss)]
        let share = 100.0 * lost as f64 / (lost + drawn) as f64;
        println!("{kind:32} {drawn:6} drawn, {share:5.1} % thrown away {thrown:?}");
    }
    println!("{kept} scenes, {all_thrown} thrown away");
    // With so many seeds every kind has come up.
    assert_eq!(counts.len(), Kind::COUNT);
}

fn the_truth_is_the_intent(drawn: &Drawn) {
    // Nothing but the scene is asked: the verdict does not know what was wanted.
    let verdict = judge(&drawn.scene);
    assert_eq!(verdict, drawn.verdict);
    match (drawn.kind, verdict.ruling.call) {
        (Kind::Ends(wanted), Call::Fault { cause, .. }) => assert_eq!(wanted, cause),
        (Kind::GoesOn(cause), Call::PlayOn) => {
            assert!(verdict.all.iter().any(|one| one.about == cause));
        }
        (Kind::CaseEnds(case), Call::Fault { cause, .. }) => assert_eq!(case.cause(), cause),
        (Kind::CaseGoesOn(case), Call::PlayOn) => {
            assert_eq!(drawn.about().map(|one| one.about), Some(case.cause()));
        }
        (Kind::DoubleFault | Kind::BeforeTheWhistle, Call::Replay)
        | (
            Kind::FirstOfTwo | Kind::ServerBeforeReceivers | Kind::ReceiversBeforeService,
            Call::Fault { .. },
        ) => {}
        (kind, call) => panic!("{kind:?} is {call:?}"),
    }
}

/// The margin of what the scene is about, where something is measured.
fn the_margin_is_in_the_band(drawn: &Drawn, level: Level) {
    let band = level.band(drawn.kind);
    let margin = match drawn.kind {
        Kind::DoubleFault => return,
        Kind::FirstOfTwo => drawn.verdict.ruling.margin,
        Kind::GoesOn(cause) => {
            let about = drawn.verdict.all.iter().filter(|one| one.about == cause);
            let measured = about.filter_map(|one| match one.ruling.margin {
                Margin::Metres(by) | Margin::Seconds(by) => Some((by, one.ruling.margin)),
                Margin::Seen => None,
            });
            let nearest = measured.min_by(|a, b| a.0.total_cmp(&b.0));
            nearest.map_or(Margin::Seen, |(_, margin)| margin)
        }
        Kind::CaseGoesOn(_) => drawn.about().expect("it is about something").ruling.margin,
        Kind::Ends(_)
        | Kind::CaseEnds(_)
        | Kind::ServerBeforeReceivers
        | Kind::ReceiversBeforeService
        | Kind::BeforeTheWhistle => drawn.verdict.decided_by().expect("it ends").ruling.margin,
    };
    if let Margin::Metres(by) | Margin::Seconds(by) = margin {
        assert!(
            by >= band.from - 1e-4 && by <= band.to + 1e-4,
            "{:?} {by} {band:?}",
            drawn.kind
        );
    }
}

/// The ball, looked at 150 times a second, without the help of what throws scenes away.
fn nothing_is_flown_through(scene: &Scene, seed: u64) {
    let near_event = |time: f64, wanted: &dyn Fn(&Act) -> bool| {
        scene
            .events
            .iter()
            .any(|e| wanted(&e.act) && (e.at - time).abs() < 0.36)
    };
    let mut time: f64 = 0.0;
    let mut before = scene.ball_at(0.0);
    while time < scene.until() {
        time += 1.0 / 150.0;
        let ball = scene.ball_at(time);
        assert!(
            ball.z > BALL_RADIUS - 0.003,
            "{seed}: below the floor at {time}"
        );
        // A jump would be a hole in its way: 40 metres a second is faster than any service.
        assert!(
            ball.distance(before) < 40.0 / 150.0 + 1e-3,
            "{seed}: jumps at {time}"
        );
        if (ball.x < 0.0) != (before.x < 0.0) {
            let over = ball.z - BALL_RADIUS > scene.net_top - 0.12;
            let clear = ball.z - BALL_RADIUS > scene.net_top - 0.02;
            let beside = ball.y.abs() > 4.75;
            let under = ball.z + BALL_RADIUS < scene.net_top - 1.0 + 0.02;
            let touches = near_event(time, &|act| *act == Act::Net);
            assert!(
                clear || beside || under || (over && touches),
                "{seed}: through the net at {time}"
            );
        }
        for (index, player) in scene.players.iter().enumerate() {
            let plays = near_event(time, &|act| match act {
                Act::Touch { player, .. } | Act::ServiceHit { player, .. } => *player == index,
                _ => false,
            });
            let serves = player.side == scene.serving && player.position == 1;
            // Who has the ball before the server does.
            let gives = scene.events.iter().any(|e| {
                matches!(e.act, Act::HandOver { player, .. } if player == index)
                    && time < e.at + 0.36
            });
            if plays || serves || gives {
                continue;
            }
            let body = player.figure(time);
            let trunk = body.hips.on_the_way(body.head, 0.5);
            for part in [body.hips, trunk, body.head, body.hands[0], body.hands[1]] {
                let away = part.distance(ball);
                assert!(
                    away > BALL_RADIUS,
                    "{seed}: through player {index} at {time}, {away}"
                );
            }
        }
        before = ball;
    }
}

#[test]
fn the_same_seed_draws_the_same_scene() {
    for kind in Kind::all() {
        let band = Level::Close.band(kind);
        assert_eq!(draw(kind, band, 7), draw(kind, band, 7), "{kind:?}");
    }
}

#[test]
fn a_kind_has_a_code_that_leads_back() {
    for kind in Kind::all() {
        assert_eq!(Kind::from_code(&kind.code()), Some(kind));
    }
    assert_eq!(Kind::from_code("ends_not_said"), None);
}

#[test]
fn a_ball_lands_where_its_flight_says() {
    // The curve through the samples is the flight itself, as the fine steps give it.
    let kind = Kind::Ends(rules::Cause::BallIn);
    for seed in 0..20 {
        let drawn = draw(kind, Level::Tight.band(kind), seed).unwrap();
        for leg in &drawn.scene.ball {
            for share in [0.23, 0.5, 0.81, 1.0] {
                let time = (leg.until - leg.from) * share;
                let fine = leg.begin().after(time).at;
                let coarse = leg.at(leg.from + time);
                assert!(fine.distance(coarse) < 1e-5, "{}", fine.distance(coarse));
            }
        }
    }
}

#[test]
fn a_throw_comes_where_it_is_aimed() {
    let from = Point {
        x: -9.0,
        y: 1.0,
        z: 2.5,
    };
    for (x, y, z, time) in [
        (8.9, -4.4, 0.1, 1.2),
        (0.5, 0.0, 4.0, 0.4),
        (-8.0, 1.0, 2.0, 2.0),
        (6.0, 0.0, 0.1, 0.55),
    ] {
        let aim = Point { x, y, z };
        let there = Flight::towards(from, aim, time).after(time).at;
        assert!(
            there.distance(aim) < 1e-4,
            "{} {there:?}",
            there.distance(aim)
        );
    }
}

#[test]
fn what_cannot_have_been_is_noticed() {
    let kind = Kind::Ends(rules::Cause::BallOut);
    let good = draw(kind, Level::Clear.band(kind), 3).unwrap().scene;
    assert_eq!(unsound(&good), None);
    // A net that is 70 cm higher is in the way.
    let high = Scene {
        net_top: good.net_top + 0.7,
        ..good.clone()
    };
    assert_eq!(unsound(&high), Some(Unsound::Net));
    // Somebody else, on the other side of the net, is said to have touched it.
    let mut far = good.clone();
    for event in &mut far.events {
        if let Act::Touch { player, .. } = &mut event.act {
            *player = (*player + 6) % 12;
        }
    }
    assert_eq!(unsound(&far), Some(Unsound::FarTouch));
    // A hole in its way.
    let mut hole = good.clone();
    hole.ball.remove(1);
    assert_eq!(unsound(&hole), Some(Unsound::Gap));
    // Somebody as tall as a house is hit by it.
    let mut tall = good;
    for player in &mut tall.players {
        player.height = 5.0;
    }
    assert_eq!(unsound(&tall), Some(Unsound::Player));
}

#[test]
fn no_two_players_wear_one_number() {
    for seed in 0..50 {
        let kind = Kind::Ends(rules::Cause::RotationFault);
        let scene = draw(kind, Level::Clear.band(kind), seed).unwrap().scene;
        let mut numbers: Vec<u8> = scene.players.iter().map(|p| p.number).collect();
        numbers.sort_unstable();
        numbers.dedup();
        assert_eq!(numbers.len(), 12);
        assert!(numbers.contains(&scene.due));
    }
}
