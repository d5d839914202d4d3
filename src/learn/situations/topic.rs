//! The decisions of a rally as a referee looks them up.

use super::Situation;
use rules::{Cause, Signal};

/// One page of decisions.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Topic {
    /// In and out.
    InOut,
    /// The antenna and the space beside it.
    Antenna,
    /// Touching the net.
    NetTouch,
    /// Under the net.
    UnderNet,
    /// Over the net.
    OverNet,
    /// Double contact.
    DoubleContact,
    /// Catch, throw and help.
    Catch,
    /// Four hits.
    FourHits,
    /// The service.
    Service,
    /// A screen.
    Screen,
    /// Positions at the service.
    Positions,
    /// Attack hits, from the back row above all.
    BackRow,
    /// Blocks.
    Block,
    /// The libero.
    Libero,
    /// Several faults.
    TwoFaults,
}

impl Topic {
    /// In the order in which the reasons of a rally stand.
    pub const ALL: [Topic; 15] = [
        Topic::InOut,
        Topic::Antenna,
        Topic::NetTouch,
        Topic::UnderNet,
        Topic::OverNet,
        Topic::DoubleContact,
        Topic::Catch,
        Topic::FourHits,
        Topic::Service,
        Topic::Screen,
        Topic::Positions,
        Topic::BackRow,
        Topic::Block,
        Topic::Libero,
        Topic::TwoFaults,
    ];

    /// Its part of an address.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Topic::InOut => "in_out",
            Topic::Antenna => "antenna",
            Topic::NetTouch => "net_touch",
            Topic::UnderNet => "under_net",
            Topic::OverNet => "over_net",
            Topic::DoubleContact => "double_contact",
            Topic::Catch => "catch",
            Topic::FourHits => "four_hits",
            Topic::Service => "service",
            Topic::Screen => "screen",
            Topic::Positions => "positions",
            Topic::BackRow => "back_row",
            Topic::Block => "block",
            Topic::Libero => "libero",
            Topic::TwoFaults => "two_faults",
        }
    }

    /// The page of such a part of an address, which may be the code of a reason as well.
    #[must_use]
    pub fn from_code(code: &str) -> Option<Topic> {
        let own = Topic::ALL.into_iter().find(|topic| topic.code() == code);
        own.or_else(|| Topic::of(Cause::from_code(code)?))
    }

    /// The page on which a reason is decided; none where nothing was said.
    #[must_use]
    pub const fn of(cause: Cause) -> Option<Topic> {
        Some(match cause {
            Cause::BallIn
            | Cause::BallOut
            | Cause::BallTouched
            | Cause::ServiceOut
            | Cause::ServiceWinner => Topic::InOut,
            Cause::Antenna | Cause::OutsideCrossing => Topic::Antenna,
            Cause::NetTouch => Topic::NetTouch,
            Cause::UnderNet => Topic::UnderNet,
            Cause::OverNet => Topic::OverNet,
            Cause::DoubleContact => Topic::DoubleContact,
            Cause::Catch | Cause::AssistedHit => Topic::Catch,
            Cause::FourHits => Topic::FourHits,
            Cause::ServiceTime | Cause::ServiceFoot | Cause::ServiceToss | Cause::ServiceNet => {
                Topic::Service
            }
            Cause::Screen => Topic::Screen,
            Cause::PositionFault | Cause::RotationFault | Cause::OutsideCourt => Topic::Positions,
            Cause::AttackFault => Topic::BackRow,
            Cause::BlockFault => Topic::Block,
            Cause::LiberoFault => Topic::Libero,
            Cause::NotSaid => return None,
        })
    }

    /// The pages of what this signal shows, each once.
    pub fn of_signal(signal: Signal) -> impl Iterator<Item = Topic> {
        Topic::ALL.into_iter().filter(move |topic| {
            Cause::ALL
                .into_iter()
                .any(|cause| cause.signal() == Some(signal) && Topic::of(cause) == Some(*topic))
        })
    }

    /// What can be tried on it.
    #[must_use]
    pub const fn situations(self) -> &'static [Situation] {
        match self {
            Topic::InOut => &[Situation::Landing],
            Topic::Antenna => &[Situation::Crossing],
            Topic::NetTouch => &[Situation::NetTouch],
            Topic::UnderNet => &[Situation::Foot, Situation::Body, Situation::BallUnder],
            Topic::OverNet => &[Situation::OverNet],
            Topic::DoubleContact => &[Situation::DoubleContact],
            Topic::Catch => &[Situation::Catch],
            Topic::FourHits => &[Situation::FourHits],
            Topic::Service => &[
                Situation::ServiceFoot,
                Situation::ServiceTime,
                Situation::ServiceHit,
                Situation::ServiceNet,
            ],
            Topic::Screen => &[Situation::Screen],
            Topic::Positions => &[Situation::Positions, Situation::ServerOrder],
            Topic::BackRow => &[Situation::Attack],
            Topic::Block => &[Situation::Block],
            Topic::Libero => &[
                Situation::LiberoAttack,
                Situation::LiberoPass,
                Situation::LiberoBlock,
            ],
            Topic::TwoFaults => &[Situation::TwoFaults, Situation::AtTheService],
        }
    }
}
