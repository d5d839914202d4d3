//! Why a rally ended: the cause codes of a log, where they belong and which signal announces them.

use super::{Rules, Signal, Team};

/// Why a rally ended. The side at fault follows from who won it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[allow(missing_docs)] // Each is the code of the same name.
pub enum Cause {
    BallIn,
    BallOut,
    BallTouched,
    FourHits,
    DoubleContact,
    Catch,
    AssistedHit,
    NetTouch,
    UnderNet,
    OverNet,
    AttackFault,
    BlockFault,
    LiberoFault,
    ServiceTime,
    ServiceFoot,
    ServiceToss,
    ServiceNet,
    ServiceOut,
    Screen,
    PositionFault,
    RotationFault,
    OutsideCourt,
    Antenna,
    OutsideCrossing,
    ServiceWinner,
    NotSaid,
}

/// The groups a referee thinks in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Group {
    /// Where the ball went.
    Ball,
    /// How it was played.
    Hits,
    /// At and under the net.
    Net,
    /// The service.
    Service,
    /// Positions, attack and block.
    Positions,
}

impl Group {
    /// All of them in their fixed order on the screen.
    pub const ALL: [Group; 5] = [
        Group::Ball,
        Group::Net,
        Group::Hits,
        Group::Service,
        Group::Positions,
    ];
}

// Inside a group the commonest first (common practice, no source).
crate::codes!(Cause {
    BallIn = "ball_in",
    BallOut = "ball_out",
    BallTouched = "ball_touched",
    Antenna = "antenna",
    OutsideCrossing = "outside_crossing",
    NetTouch = "net_touch",
    UnderNet = "under_net",
    OverNet = "over_net",
    DoubleContact = "double_contact",
    Catch = "catch",
    FourHits = "four_hits",
    AssistedHit = "assisted_hit",
    ServiceNet = "service_net",
    ServiceOut = "service_out",
    ServiceFoot = "service_foot",
    ServiceWinner = "service_winner",
    ServiceTime = "service_time",
    ServiceToss = "service_toss",
    Screen = "screen",
    AttackFault = "attack_fault",
    BlockFault = "block_fault",
    PositionFault = "position_fault",
    RotationFault = "rotation_fault",
    OutsideCourt = "outside_court",
    LiberoFault = "libero_fault",
    NotSaid = "not_said",
});

impl Cause {
    /// The group it is found in; none for "not said".
    #[must_use]
    pub const fn group(self) -> Option<Group> {
        Some(match self {
            Cause::BallIn
            | Cause::BallOut
            | Cause::BallTouched
            | Cause::Antenna
            | Cause::OutsideCrossing => Group::Ball,
            Cause::FourHits | Cause::DoubleContact | Cause::Catch | Cause::AssistedHit => {
                Group::Hits
            }
            Cause::NetTouch | Cause::UnderNet | Cause::OverNet => Group::Net,
            Cause::ServiceTime
            | Cause::ServiceFoot
            | Cause::ServiceToss
            | Cause::ServiceNet
            | Cause::ServiceOut
            | Cause::ServiceWinner
            | Cause::Screen => Group::Service,
            Cause::AttackFault
            | Cause::BlockFault
            | Cause::PositionFault
            | Cause::RotationFault
            | Cause::OutsideCourt
            | Cause::LiberoFault => Group::Positions,
            Cause::NotSaid => return None,
        })
    }

    /// The signal that announces it (Official Volleyball Rules 2025-2028, diagram 11); none where
    /// nothing is shown beyond the team to serve.
    #[must_use]
    pub const fn signal(self) -> Option<Signal> {
        Some(match self {
            Cause::BallIn | Cause::ServiceWinner => Signal::BallIn,
            Cause::BallOut | Cause::ServiceOut | Cause::Antenna | Cause::OutsideCrossing => {
                Signal::BallOut
            }
            Cause::BallTouched => Signal::BallTouched,
            Cause::FourHits => Signal::FourHits,
            Cause::DoubleContact => Signal::DoubleContact,
            Cause::Catch | Cause::AssistedHit => Signal::Catch,
            Cause::NetTouch | Cause::ServiceNet => Signal::NetTouch,
            // 22 is also for a player outside the own court at the service hit (7.4).
            Cause::UnderNet | Cause::ServiceFoot | Cause::OutsideCourt => Signal::LineOrUnder,
            Cause::OverNet => Signal::OverNet,
            // Diagram 11 (21) covers back-row and libero attacks alike. A libero who blocks makes a
            // block fault (14.6.6) with its signal 12: see `libero_kinds`.
            Cause::AttackFault | Cause::LiberoFault => Signal::AttackFault,
            Cause::BlockFault | Cause::Screen => Signal::BlockOrScreen,
            Cause::ServiceTime => Signal::ServiceDelay,
            Cause::ServiceToss => Signal::NotTossed,
            Cause::PositionFault | Cause::RotationFault => Signal::Position,
            Cause::NotSaid => return None,
        })
    }

    /// What a fault of a libero can have been, each with a signal of its own: an attack or a set from the
    /// front zone (13.3.5, 13.3.6, signal 21), or a block (14.6.6, signal 12), which is a block fault.
    #[must_use]
    pub const fn libero_kinds() -> [Cause; 2] {
        [Cause::LiberoFault, Cause::BlockFault]
    }

    /// Whose player a referee would point at: where the ball was simply in, one of the side that won
    /// the rally, else one of the side at fault.
    #[must_use]
    pub fn told_of(self, won_by: Team) -> Team {
        match self {
            Cause::BallIn | Cause::ServiceWinner => won_by,
            _ => won_by.other(),
        }
    }

    /// Whether the rules of a match know it: without a libero no fault is a libero's.
    #[must_use]
    pub const fn occurs_under(self, rules: &Rules) -> bool {
        match self {
            Cause::LiberoFault => rules.liberos > 0,
            _ => true,
        }
    }

    /// Whether a rally can have ended so, given that the serving side lost it. Some faults only the
    /// serving side can make, some results only it can have.
    #[must_use]
    pub const fn fits(self, serving_side_lost: bool) -> bool {
        match self {
            Cause::ServiceTime
            | Cause::ServiceFoot
            | Cause::ServiceToss
            | Cause::ServiceNet
            | Cause::ServiceOut
            | Cause::Screen
            | Cause::RotationFault => serving_side_lost,
            Cause::ServiceWinner => !serving_side_lost,
            _ => true,
        }
    }
}
