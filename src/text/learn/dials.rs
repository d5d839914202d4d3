//! What can be set in a situation, and how it stands, in words that can be heard as well.

use learn::{Dial, Situation, HALF_LENGTH, HALF_WIDTH};

/// What a control is measured from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Edge {
    /// The end line, for the foot of a server.
    EndLineOfServer,
    /// The side of the service zone.
    ServiceZone,
    /// The outer edge of the end line, for a ball.
    EndLine,
    /// The outer edge of the side line, for a ball.
    SideLine,
    /// Where the antenna begins.
    Antenna,
    /// The middle of the court, as a player who faces the net has it.
    PlayersMiddle,
    /// The net, for a hand of the block.
    NetOfHand,
    /// The net, for a ball that goes below it.
    NetOfBall,
    /// The middle of the centre line, for a heel.
    CentreLine,
    /// The net, for a ball that is attacked.
    NetOfAttack,
}

/// The moment that a time is counted from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Moment {
    /// The attack hit.
    AttackHit,
    /// The whistle for the service.
    Whistle,
}

/// How a control stands, before it is said.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Stands {
    /// So many metres beyond an edge, or at one that has no width.
    Beyond(Edge, f64),
    /// So many metres on this side of it, or on it.
    Within(Edge, f64),
    /// So many seconds before a moment.
    Before(Moment, f64),
    /// So many seconds after it, or at it.
    After(Moment, f64),
    /// So many seconds after the situation begins.
    FromBeginning(f64),
    /// So many metres from the net.
    FromNet(f64),
    /// So many metres high.
    High(f64),
    /// So many metres around its middle.
    Around(f64),
    /// At one of the choices.
    Choice(usize),
}

/// How a control stands at a value.
pub(crate) fn stands(dial: Dial, value: f64) -> Stands {
    // What is on a line is not beyond it.
    let outside = |edge: Edge, begins: f64| match value - begins {
        away if away > 0.0 => Stands::Beyond(edge, away),
        away => Stands::Within(edge, -away),
    };
    let from = |edge: Edge| {
        if value < 0.0 {
            Stands::Within(edge, -value)
        } else {
            Stands::Beyond(edge, value)
        }
    };
    let counted = |moment: Moment| {
        if value < 0.0 {
            Stands::Before(moment, -value)
        } else {
            Stands::After(moment, value)
        }
    };
    match dial {
        Dial::ServerDepth => outside(Edge::EndLineOfServer, HALF_LENGTH),
        Dial::ServerRight => outside(Edge::ServiceZone, HALF_WIDTH),
        Dial::LandsAlong => outside(Edge::EndLine, HALF_LENGTH),
        Dial::LandsAcross => outside(Edge::SideLine, HALF_WIDTH),
        Dial::CrossesAside | Dial::AlongNet => outside(Edge::Antenna, HALF_WIDTH),
        Dial::PlayerRight(_) => from(Edge::PlayersMiddle),
        Dial::HandBeyond => from(Edge::NetOfHand),
        Dial::BallBeyond => from(Edge::NetOfBall),
        Dial::Heel => from(Edge::CentreLine),
        Dial::BallDepth => from(Edge::NetOfAttack),
        Dial::AfterAttack => counted(Moment::AttackHit),
        Dial::ServiceAfter => counted(Moment::Whistle),
        Dial::LeftFaultAt | Dial::RightFaultAt => Stands::FromBeginning(value),
        Dial::PlayerDepth(_) | Dial::TakeOff | Dial::LiberoDepth => Stands::FromNet(value),
        Dial::BallHeight | Dial::NetTop | Dial::CrossesHeight | Dial::Tall | Dial::Reach(_) => {
            Stands::High(value)
        }
        Dial::Patch => Stands::Around(value),
        Dial::NetContact
        | Dial::HandDoes
        | Dial::Opponents
        | Dial::Hinders
        | Dial::BodyPart
        | Dial::Contact
        | Dial::OwnBlock
        | Dial::Hitter(_)
        | Dial::OneAction
        | Dial::ServiceHow
        | Dial::Server
        | Dial::Serves
        | Dial::Edition
        | Dial::Row(_)
        | Dial::AttackedBall
        | Dial::Completed
        | Dial::LiberoPass
        | Dial::BlockTouches
        | Dial::BlockedBall
        | Dial::LastTouch
        | Dial::TeamHit
        | Dial::Towards
        | Dial::HandsUp
        | Dial::ServerOnLine
        | Dial::ReceiversSwapped
        | Dial::ServiceWide
        | Dial::ServiceFlight => Stands::Choice(value as usize),
    }
}

words! { DialsWords in learn::dials;
    /// The name of a control.
    dial(dial: Dial) -> String;
    /// The letter on a player of a drawing, for the first to the third choice of what the player is.
    row_mark(row: usize) -> &'static str;
    /// The choices of a control that has some, in their order.
    choices(dial: Dial) -> &'static [&'static str];
    /// How a control stands.
    set_to(dial: Dial, value: f64) -> String;
    /// One of several things that the controls can be for: a touch, a player before the server or the receiver, a
    /// position.
    mover(of: Situation, n: u8) -> String;
}
