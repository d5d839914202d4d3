//! The words of the court screen.

use super::team_name;
use crate::game::{Notice, Phase, State};
use crate::rules::{Cause, Group, Shirt, Signal, Team};

/// The turn of the court.
pub const STAND: &str = "Stand";
/// The turn of the court.
pub const TABLE: &str = "Table";
/// The list of further things.
pub const MENU: &str = "Menu";
/// Takes the last entry back.
pub const TAKE_BACK: &str = "Take back";
/// Nothing to take back.
pub const NO_ENTRY: &str = "Nothing recorded yet";
/// A time-out.
pub const TIME_OUT: &str = "Time-out";
/// A substitution.
pub const CHANGE: &str = "Change";
/// Anything else.
pub const MORE: &str = "More";
/// A rally that does not count.
pub const REPLAY: &str = "Replay";

/// The heading of the court screen.
#[must_use]
pub fn play_title(state: &State) -> String {
    match state.phase() {
        Phase::Preparation => "Before set 1".into(),
        Phase::BetweenSets => format!("After set {}", state.set_number()),
        Phase::Playing => format!("Set {}", state.set_number()),
        Phase::Suspended => format!("Set {}, interrupted", state.set_number()),
        Phase::Finished => "Match over".into(),
    }
}

/// Left or right.
#[must_use]
pub const fn side(left: bool) -> &'static str {
    if left {
        "left"
    } else {
        "right"
    }
}

/// The name of a half for those who do not see it.
#[must_use]
pub fn point_pad(state: &State, team: Team, left: bool) -> String {
    format!("Point, {} side, {}", side(left), team_name(state, team))
}

/// Why a rally ended.
#[must_use]
pub const fn cause(cause: Cause) -> &'static str {
    match cause {
        Cause::BallIn => "Ball in",
        Cause::BallOut => "Ball out",
        Cause::BallTouched => "Touched, out",
        Cause::FourHits => "Four hits",
        Cause::DoubleContact => "Double contact",
        Cause::Catch => "Catch",
        Cause::AssistedHit => "Assisted hit",
        Cause::NetTouch => "Net touch",
        Cause::UnderNet => "Under the net",
        Cause::OverNet => "Over the net",
        Cause::AttackFault => "Attack fault",
        Cause::BlockFault => "Block fault",
        Cause::LiberoFault => "Libero fault",
        Cause::ServiceTime => "Over 8 seconds",
        Cause::ServiceFoot => "Foot fault",
        Cause::ServiceToss => "Not tossed",
        Cause::ServiceNet => "Service in net",
        Cause::ServiceOut => "Service out",
        Cause::Screen => "Screen",
        Cause::PositionFault => "Position fault",
        Cause::RotationFault => "Wrong server",
        Cause::Antenna => "Antenna",
        Cause::OutsideCrossing => "Outside antenna",
        Cause::ServiceWinner => "Ace",
        Cause::NotSaid => "Not said",
    }
}

/// A group of reasons.
#[must_use]
pub const fn group(group: Group) -> &'static str {
    match group {
        Group::Ball => "Ball",
        Group::Hits => "Hits",
        Group::Net => "Net",
        Group::Service => "Serve",
        Group::Positions => "Places",
    }
}

/// The name of a signal.
#[must_use]
pub const fn signal(signal: Signal) -> &'static str {
    match signal {
        Signal::AuthoriseService => "Authorise the service",
        Signal::TeamToServe => "Team to serve",
        Signal::ChangeOfCourts => "Change of courts",
        Signal::TimeOut => "Time-out",
        Signal::Substitution => "Substitution",
        Signal::Warning => "Warning",
        Signal::Penalty => "Penalty",
        Signal::Expulsion => "Expulsion",
        Signal::Disqualification => "Disqualification",
        Signal::EndOfSet => "End of set",
        Signal::NotTossed => "Ball not tossed",
        Signal::ServiceDelay => "Delay in service",
        Signal::BlockOrScreen => "Block fault or screen",
        Signal::Position => "Position or rotation fault",
        Signal::BallIn => "Ball in",
        Signal::BallOut => "Ball out",
        Signal::Catch => "Catch",
        Signal::DoubleContact => "Double contact",
        Signal::FourHits => "Four hits",
        Signal::NetTouch => "Net touched",
        Signal::OverNet => "Beyond the net",
        Signal::AttackFault => "Attack-hit fault",
        Signal::LineOrUnder => "Line fault or under the net",
        Signal::Replay => "Double fault, replay",
        Signal::BallTouched => "Ball touched",
        Signal::Delay => "Delay",
    }
}

/// Something due, in one short line.
#[must_use]
pub fn notice(notice: &Notice, state: &State) -> String {
    let name = |team: &Team| team_name(state, *team);
    match notice {
        Notice::DoNotStart { item } => {
            format!("Do not start: {} is not in order", item.replace('_', " "))
        }
        Notice::TeamList { team } => format!("List of {} missing", name(team)),
        Notice::Toss => "Toss".into(),
        Notice::LineUp { team } => format!("Line-up of {} missing", name(team)),
        Notice::ChangeCourts => "Change courts now".into(),
        Notice::SetPoint { team } => format!("Set point {}", name(team)),
        Notice::MatchPoint { team } => format!("Match point {}", name(team)),
        Notice::MustSubstitute { team, player } => {
            format!("{} {player} must leave: substitution", name(team))
        }
        Notice::LiberoMustLeave { team, player } => {
            format!("Libero {player} of {} must leave now", name(team))
        }
        Notice::LastTimeOut { team } => format!("{}: no time-out left", name(team)),
        Notice::SubstitutionsLeft { team, left: 0 } => format!("{}: no change left", name(team)),
        Notice::SubstitutionsLeft { team, left } => format!("{}: {left} change left", name(team)),
        Notice::Question { .. } => "A question to the first referee".into(),
    }
}

/// Who serves.
#[must_use]
pub fn serves(number: Option<Shirt>) -> String {
    match number {
        Some(number) => format!("{number} serves"),
        None => "serves".into(),
    }
}
