//! The official hand signals that announce a decision.
//!
//! Numbers: FIVB Official Volleyball Rules 2025-2028, diagram 11.

use super::Team;

/// Which arm makes a signal, as the first referee on the stand makes it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Arm {
    /// The left arm.
    Left,
    /// The right arm.
    Right,
    /// Both arms.
    Both,
}

/// One official hand signal.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Signal {
    /// 1: authorisation to serve.
    AuthoriseService,
    /// 2: team to serve.
    TeamToServe,
    /// 3: change of courts.
    ChangeOfCourts,
    /// 4: time-out.
    TimeOut,
    /// 5: substitution.
    Substitution,
    /// 6a: misconduct warning.
    Warning,
    /// 6b: misconduct penalty.
    Penalty,
    /// 7: expulsion.
    Expulsion,
    /// 8: disqualification.
    Disqualification,
    /// 9: end of set or match.
    EndOfSet,
    /// 10: ball not tossed or released at the service.
    NotTossed,
    /// 11: delay in service.
    ServiceDelay,
    /// 12: block fault or screening.
    BlockOrScreen,
    /// 13: positional or rotational fault.
    Position,
    /// 14: ball in.
    BallIn,
    /// 15: ball out.
    BallOut,
    /// 16: catch.
    Catch,
    /// 17: double contact.
    DoubleContact,
    /// 18: four hits.
    FourHits,
    /// 19: net touched by a player, or a service into the net.
    NetTouch,
    /// 20: reaching beyond the net.
    OverNet,
    /// 21: attack-hit fault.
    AttackFault,
    /// 22: penetration, ball under the net, foot fault at the service, a player outside the own court at
    /// the service hit.
    LineOrUnder,
    /// 23: double fault and replay.
    Replay,
    /// 24: ball touched.
    BallTouched,
    /// 25 with the yellow card: delay warning.
    DelayWarning,
    /// 25 with the red card: delay penalty.
    DelayPenalty,
}

impl Signal {
    /// All of them, in the order of the diagram.
    pub const ALL: [Signal; 27] = [
        Signal::AuthoriseService,
        Signal::TeamToServe,
        Signal::ChangeOfCourts,
        Signal::TimeOut,
        Signal::Substitution,
        Signal::Warning,
        Signal::Penalty,
        Signal::Expulsion,
        Signal::Disqualification,
        Signal::EndOfSet,
        Signal::NotTossed,
        Signal::ServiceDelay,
        Signal::BlockOrScreen,
        Signal::Position,
        Signal::BallIn,
        Signal::BallOut,
        Signal::Catch,
        Signal::DoubleContact,
        Signal::FourHits,
        Signal::NetTouch,
        Signal::OverNet,
        Signal::AttackFault,
        Signal::LineOrUnder,
        Signal::Replay,
        Signal::BallTouched,
        Signal::DelayWarning,
        Signal::DelayPenalty,
    ];

    /// The number in diagram 11 of the 2025-2028 text.
    #[must_use]
    pub const fn number(self) -> &'static str {
        match self {
            Signal::AuthoriseService => "1",
            Signal::TeamToServe => "2",
            Signal::ChangeOfCourts => "3",
            Signal::TimeOut => "4",
            Signal::Substitution => "5",
            Signal::Warning => "6a",
            Signal::Penalty => "6b",
            Signal::Expulsion => "7",
            Signal::Disqualification => "8",
            Signal::EndOfSet => "9",
            Signal::NotTossed => "10",
            Signal::ServiceDelay => "11",
            Signal::BlockOrScreen => "12",
            Signal::Position => "13",
            Signal::BallIn => "14",
            Signal::BallOut => "15",
            Signal::Catch => "16",
            Signal::DoubleContact => "17",
            Signal::FourHits => "18",
            Signal::NetTouch => "19",
            Signal::OverNet => "20",
            Signal::AttackFault => "21",
            Signal::LineOrUnder => "22",
            Signal::Replay => "23",
            Signal::BallTouched => "24",
            Signal::DelayWarning | Signal::DelayPenalty => "25",
        }
    }

    /// Which arm makes it: one-handed signals come from the side of the team at fault or requesting
    /// (rule 30.1), "ball in" shows the court where the ball fell, which is that of the team that
    /// lost the rally, so the same side. `left` is the team on the first referee's left.
    #[must_use]
    pub fn arm(self, concerned: Team, left: Team) -> Arm {
        match self {
            // A T of both hands before the one on the side that asks; a palm over the fingers of the
            // other hand; a card over the other wrist.
            Signal::TimeOut
            | Signal::BallTouched
            | Signal::DelayWarning
            | Signal::DelayPenalty
            | Signal::ChangeOfCourts
            | Signal::Substitution
            | Signal::Disqualification
            | Signal::EndOfSet
            | Signal::ServiceDelay
            | Signal::BlockOrScreen
            | Signal::BallOut
            | Signal::Replay => Arm::Both,
            _ if concerned == left => Arm::Left,
            _ => Arm::Right,
        }
    }
}
