//! The decisions of a rally, told as situations: each with the rule, the fact or the case that it comes
//! from. Facts are those of the FIVB Official Volleyball Rules 2025-2028, cases those of the FIVB Casebook
//! 2024, guidelines those of the FIVB Refereeing Guidelines 2024. Where a place in metres was needed to
//! tell a situation, it is invented.

#[path = "decisions/attack_and_block.rs"]
mod attack_and_block;
#[path = "decisions/ball.rs"]
mod ball;
#[path = "decisions/casebook.rs"]
mod casebook;
#[path = "decisions/casebook_at_the_net.rs"]
mod casebook_at_the_net;
#[path = "decisions/flight.rs"]
mod flight;
#[path = "decisions/hits.rs"]
mod hits;
#[path = "decisions/laws.rs"]
mod laws;
#[path = "decisions/net.rs"]
mod net;
#[path = "decisions/positions.rs"]
mod positions;
#[path = "decisions/service.rs"]
mod service;
#[path = "decisions/situations.rs"]
mod situations;

use learn::{Call, End, Foot, Ruling, Spot};
use rules::{Cause, Signal};

/// Play goes on, by this rule.
#[track_caller]
fn goes_on(ruling: Ruling, rule: &str) {
    assert_eq!(
        (ruling.call, ruling.rule),
        (Call::PlayOn, rule),
        "{ruling:?}"
    );
    assert_eq!(ruling.signal(), None);
}

/// A fault of this side, by this rule, shown by this signal.
#[track_caller]
fn is_fault(ruling: Ruling, by: End, cause: Cause, rule: &str, signal: Signal) {
    let call = Call::Fault {
        by,
        cause,
        signal: Some(signal),
    };
    assert_eq!((ruling.call, ruling.rule), (call, rule), "{ruling:?}");
    assert_eq!(ruling.won_by(), Some(by.other()));
}

/// The margin is so many centimetres, to a tenth of a millimetre.
#[track_caller]
fn by_centimetres(ruling: Ruling, centimetres: f64) {
    let metres = ruling.margin.metres().expect("a length was measured");
    assert!(
        (metres * 100.0 - centimetres).abs() < 0.01,
        "{:.3} cm, not {centimetres}",
        metres * 100.0
    );
}

/// A foot of 30 cm that points at the net, with its middle here; 10 cm wide.
fn foot(depth: f64, right: f64) -> Foot {
    Foot {
        heel: Spot {
            depth: depth + 0.10,
            right,
        },
        toe: Spot {
            depth: depth - 0.10,
            right,
        },
        half_width: 0.05,
    }
}

/// Both feet of somebody who stands here, 30 cm apart.
fn stands(depth: f64, right: f64) -> [Foot; 2] {
    [foot(depth, right - 0.15), foot(depth, right + 0.15)]
}

/// Receivers of this side who stand wrongly by the width of a court.
fn by_receivers(end: End) -> Ruling {
    let mut places = [
        (7.0, 3.0),
        (2.0, 3.0),
        (2.0, 0.0),
        (2.0, -3.0),
        (7.0, -3.0),
        (7.0, 0.0),
    ];
    places.swap(0, 4);
    let formation = learn::Formation(places.map(|(depth, right)| stands(depth, right)));
    learn::positions(end, &formation, false, rules::Edition::E2025)
}
