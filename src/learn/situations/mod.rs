//! Situations to try decisions on: what can be set in each, how it stands at first, and what the decision
//! functions say of it. A picture of one needs nothing else, and no answer stands here.

mod ball;
mod dial;
mod hits;
mod hitting;
mod net;
mod positions;
mod screening;
mod service;
mod topic;

pub use ball::{antenna_rod, ANTENNA_ABOVE, CROSSED_NET};
pub use dial::{Dial, Scale, Values};
pub use hits::PLAYERS;
pub use net::{shoe, SHOE_HALF_WIDTH, SHOE_LENGTH};
pub use positions::{edition_of, feet_at, formation};
pub use screening::{receiver_view, service_path, HIT_DEPTH, HIT_HEIGHT};
pub use service::server_feet;
pub use topic::Topic;

use super::ruling::Ruling;

/// A situation that a learner changes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Situation {
    /// A hand touches the net.
    NetTouch,
    /// A hand touches the ball beyond the net.
    OverNet,
    /// A foot comes across the centre line.
    Foot,
    /// Another part of the body touches the opponents' court.
    Body,
    /// The ball goes below the net.
    BallUnder,
    /// What the referee saw of one contact.
    Catch,
    /// One player meets the ball twice.
    DoubleContact,
    /// A team meets the ball once too often.
    FourHits,
    /// Where the server stands at the hit.
    ServiceFoot,
    /// When the service is hit.
    ServiceTime,
    /// How it is hit.
    ServiceHit,
    /// The service touches the net.
    ServiceNet,
    /// Who serves.
    ServerOrder,
    /// Where six players stand at the service hit.
    Positions,
    /// An attack hit of any player.
    Attack,
    /// An attack hit of a libero.
    LiberoAttack,
    /// An attack on what a libero has passed.
    LiberoPass,
    /// Two players at the net.
    Block,
    /// The same with a libero.
    LiberoBlock,
    /// The ball comes down at a corner.
    Landing,
    /// The ball crosses beside an antenna.
    Crossing,
    /// Two players before the server.
    Screen,
    /// Two faults, one after the other.
    TwoFaults,
    /// Several faults at one service.
    AtTheService,
}

/// By which reading a ruling is made, where there are several.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reading {
    /// There is one.
    Only,
    /// The international text.
    Standard,
    /// The stricter form that some school competitions play by.
    Junior,
    /// The order of the players.
    Order,
    /// Whether all are inside their court.
    InsideCourt,
}

/// What is decided, by which reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Decided {
    /// By which.
    pub reading: Reading,
    /// What.
    pub ruling: Ruling,
}

fn only(ruling: Ruling) -> Vec<Decided> {
    let reading = Reading::Only;
    vec![Decided { reading, ruling }]
}

impl Situation {
    /// All of them.
    pub const ALL: [Situation; 24] = [
        Situation::NetTouch,
        Situation::OverNet,
        Situation::Foot,
        Situation::Body,
        Situation::BallUnder,
        Situation::Catch,
        Situation::DoubleContact,
        Situation::FourHits,
        Situation::ServiceFoot,
        Situation::ServiceTime,
        Situation::ServiceHit,
        Situation::ServiceNet,
        Situation::ServerOrder,
        Situation::Positions,
        Situation::Attack,
        Situation::LiberoAttack,
        Situation::LiberoPass,
        Situation::Block,
        Situation::LiberoBlock,
        Situation::Landing,
        Situation::Crossing,
        Situation::Screen,
        Situation::TwoFaults,
        Situation::AtTheService,
    ];

    /// What can be set, each as it stands at first.
    #[must_use]
    pub fn start(self) -> Values {
        match self {
            Situation::NetTouch => net::touch_start(),
            Situation::OverNet => net::over_start(),
            Situation::Foot => net::foot_start(),
            Situation::Body => net::body_start(),
            Situation::BallUnder => net::under_start(),
            Situation::Catch => hits::catch_start(),
            Situation::DoubleContact => hits::double_start(),
            Situation::FourHits => hits::four_start(),
            Situation::ServiceFoot => service::foot_start(),
            Situation::ServiceTime => service::time_start(),
            Situation::ServiceHit => service::hit_start(),
            Situation::ServiceNet => service::net_start(),
            Situation::ServerOrder => service::order_start(),
            Situation::Positions => positions::start(),
            Situation::Attack => hitting::attack_start(),
            Situation::LiberoAttack => hitting::libero_attack_start(),
            Situation::LiberoPass => hitting::libero_pass_start(),
            Situation::Block => hitting::block_start(),
            Situation::LiberoBlock => hitting::libero_block_start(),
            Situation::Landing => ball::landing_start(),
            Situation::Crossing => ball::crossing_start(),
            Situation::Screen => screening::start(),
            Situation::TwoFaults => service::two_faults_start(),
            Situation::AtTheService => service::precedence_start(),
        }
    }

    /// What the decision functions say of it as it is set.
    #[must_use]
    pub fn decide(self, set: &Values) -> Vec<Decided> {
        match self {
            Situation::NetTouch => only(net::touch(set)),
            Situation::OverNet => only(net::over(set)),
            Situation::Foot => net::foot(set),
            Situation::Body => net::body(set),
            Situation::BallUnder => only(net::under(set)),
            Situation::Catch => only(hits::seen(set)),
            Situation::DoubleContact | Situation::FourHits => only(hits::row(set)),
            Situation::ServiceFoot => only(service::foot(set)),
            Situation::ServiceTime => only(service::time(set)),
            Situation::ServiceHit => only(service::hit(set)),
            Situation::ServiceNet => only(service::net(set)),
            Situation::ServerOrder => only(service::order(set)),
            Situation::Positions => positions::decide(set),
            Situation::Attack => only(hitting::attack_of(set)),
            Situation::LiberoAttack => only(hitting::libero_attack(set)),
            Situation::LiberoPass => only(hitting::libero_pass(set)),
            Situation::Block | Situation::LiberoBlock => only(hitting::block_of(set)),
            Situation::Landing => only(ball::landing_of(set)),
            Situation::Crossing => only(ball::crossing_of(set)),
            Situation::Screen => only(screening::decide(set)),
            Situation::TwoFaults => only(service::two_faults(set)),
            Situation::AtTheService => only(service::precedence(set)),
        }
    }
}
