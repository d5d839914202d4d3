//! The drawing of each situation, from the same measurements as the decisions.
//!
//! From above a court is drawn as the first referee on the stand sees it: the left court is on the left, and
//! whoever faces the net on it has the right hand towards the referee, which is down. From the side it is
//! seen from the stand as well.

mod ball;
mod floor;
mod hitting;
mod net;
mod rows;
mod time;

use learn::{Situation, Spot, Values};

pub(super) use floor::courts;

use super::sketch::{Drawing, Place};

/// The drawing of a situation as it is set; none where nothing can be drawn.
pub fn drawing(situation: Situation, set: &Values) -> Option<Drawing> {
    Some(match situation {
        Situation::NetTouch => net::touch(set),
        Situation::OverNet => net::over(set),
        Situation::Foot => floor::foot(set),
        Situation::Body => floor::body(set),
        Situation::BallUnder => net::under(set),
        Situation::Catch | Situation::ServiceHit | Situation::AtTheService => return None,
        Situation::DoubleContact | Situation::FourHits => rows::hits(set),
        Situation::ServiceFoot => floor::server(set),
        Situation::ServiceTime => time::service(set),
        Situation::ServiceNet => net::service(set),
        Situation::ServerOrder => floor::order(set),
        Situation::Positions => floor::positions(set),
        Situation::Attack => hitting::attack(set),
        Situation::LiberoAttack => hitting::libero_attack(set),
        Situation::LiberoPass => hitting::libero_pass(set),
        Situation::Block | Situation::LiberoBlock => hitting::block(set),
        Situation::Landing => ball::landing(set),
        Situation::Crossing => ball::crossing(set),
        Situation::Screen => floor::screen(set),
        Situation::TwoFaults => time::two_faults(set),
    })
}

/// A spot of the left court, seen from above.
const fn on_left(spot: Spot) -> Place {
    (-spot.depth, spot.right)
}
