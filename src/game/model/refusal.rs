//! Why an entry is refused: a type with the numbers that explain it, and the rule's number.
//!
//! Rule numbers are those of the FIVB Official Volleyball Rules 2025-2028; where the 2021-2024 text
//! has another number, [`Refusal::rule`] gives that one for its edition. (The chapters named here are
//! numbered alike in both; chapter 25 ff. moved, and no refusal comes from there. From memory for the
//! 2021-2024 text.) The words are in `text`.
//!
//! One list with the rule of each beside it, which the table of rules is checked against, so it is long.

use super::entry::{Change, Fault, Kind, Level, Who};
use super::team_state::{Barred, OutFor};
use rules::{Invalid, Score, Shirt, Team};

/// What was asked of a player who is, or is not, on court.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Asked {
    /// To change with another.
    Substitution,
    /// To change with a libero.
    LiberoReplacement,
    /// To become a libero.
    NewLibero,
    /// To have recovery time.
    Recovery,
    /// To speak for the team.
    GameCaptain,
}

/// What belongs into a running set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum InSet {
    /// A rally, played or stopped.
    Rally,
    /// A time-out.
    TimeOut,
    /// Recovery time.
    Recovery,
    /// The change of courts.
    ChangeOfCourts,
}

/// Why an entry is refused.
#[derive(Clone, Debug, PartialEq, Eq)]
#[allow(missing_docs)] // The fields are the numbers that the sentence names.
pub enum Refusal {
    // The log itself.
    /// Nothing can be entered before the match is opened.
    NoMatch,
    /// The match is opened already.
    MatchOpen,
    /// These rules cannot be played by.
    BadRules(Invalid),
    /// The match is over.
    MatchOver,
    /// Play is interrupted.
    Suspended,
    /// Play is not interrupted.
    NotSuspended,
    /// No set is running.
    NoSetRunning { asked: InSet },
    /// A set is running.
    SetRunning,
    /// Players can come and go only once both line-ups are in.
    NobodyOnCourt,
    /// A libero comes in only once the line-ups are in.
    LiberoBeforeLineUps,
    /// Entry 1 cannot be taken back.
    StrikeFirst,
    /// Only an earlier entry can be taken back.
    StrikeLater { entry: u32 },
    /// That entry is taken back already.
    AlreadyStruck { entry: u32 },
    /// The record is sealed.
    Sealed { entry: u32 },
    /// The record is not sealed.
    NotSealed,
    /// A seal or a reopening cannot be taken back.
    SealStands { entry: u32 },
    /// There is no such rally.
    NoSuchRally { entry: u32 },
    /// Only the last rally can be replayed, before anything else has come after it.
    NotLastRally { entry: u32 },
    /// What lies between a rally and its replay cannot come back.
    BeforeReplay { replay: u32 },
    /// Nothing was asked there.
    NoQuestion { entry: u32 },
    /// That is none of the choices.
    NoSuchChoice { choices: Vec<&'static str> },

    // Lists, toss, line-ups.
    /// The rules are settled once the match has begun.
    RulesSettled,
    /// The list is closed once the match has begun.
    ListClosed,
    /// More players than a list may have.
    TooManyPlayers { players: usize, most: u8 },
    /// A number stands twice.
    NumberTwice { number: Shirt },
    /// A number outside the range.
    NumberOutOfRange {
        number: Shirt,
        lowest: u16,
        highest: u16,
    },
    /// More than one captain.
    TwoCaptains { first: Shirt, second: Shirt },
    /// More liberos than the competition allows.
    TooManyLiberos { liberos: usize, most: u8 },
    /// No toss in a running set.
    TossInSet,
    /// No toss is due now.
    TossNotDue { set: u8 },
    /// The toss is missing.
    TossMissing { set: u8 },
    /// The team list is missing.
    NoTeamList { team: Team },
    /// The line-up was handed in.
    LineUpGiven { team: Team },
    /// The line-up was handed in and the set runs.
    LineUpPlayed { team: Team },
    /// A line-up is missing.
    LineUpMissing { team: Team },
    /// More than one thing is missing for the set: line-ups, and the toss for that set.
    SeveralMissing {
        /// Whose line-ups.
        line_ups: Vec<Team>,
        /// The set that the toss is for, where it is missing too.
        toss_for: Option<u8>,
    },
    /// Too few or too many numbers in a line-up.
    LineUpSize { numbers: usize, needed: u8 },
    /// Not on the team list.
    NotListed { team: Team, number: Shirt },
    /// A number twice in a line-up.
    TwiceInLineUp { number: Shirt },
    /// A libero in the line-up.
    LiberoInLineUp { number: Shirt },
    /// The player may not be on court.
    PlayerBarred { number: Shirt, why: Barred },

    /// This record has begun already, so nothing is taken over.
    PlayedHere,
    /// Nothing was played before.
    NothingToTakeOver,
    /// A set cannot have ended so.
    SetNotOver { set: u8, score: Score },
    /// A set does not end level.
    SetLevel { set: u8, score: Score },
    /// A set that stands so is over.
    SetOver { set: u8, score: Score },
    /// A toss decides it.
    TossDecides { set: u8 },
    /// The set has begun: what is found now is a fault found late.
    FoundTooLate,
    /// That player is not in the line-up.
    NotInLineUp { number: Shirt },

    // The rally.
    /// The serving team has no positions to be wrong in.
    ServingTeamStandsFree { serving: Team },

    /// Service and rotation follow from the points, so the score is not changed alone.
    ScoreFollowsPoints,
    /// The score stands so already.
    ScoreStands { score: Score },
    /// No set has so many points.
    ScoreTooHigh { most: u16 },
    /// Sets are not played by time here.
    NotByTime,

    // Interruptions.
    /// No time-out left.
    NoTimeOutLeft { team: Team, most: u8 },
    /// No time-out left in the match.
    NoTimeOutLeftInMatch { team: Team, most: u8 },
    /// After a stopped rally nothing regular may be asked.
    AfterReplay,
    /// The last request was rejected with a delay warning.
    RequestBarred { team: Team },
    /// One request an interruption.
    SecondRequest { team: Team },
    /// A request without a change.
    NoChange,
    /// That player is not on court.
    NotOnCourt { number: Shirt, asked: Asked },
    /// That player is on court, or holds a place there.
    OnCourt { number: Shirt, asked: Asked },
    /// A player named twice in one request.
    NamedTwice { number: Shirt },
    /// A libero on court takes no part in substitutions.
    LiberoNotSubstituted { number: Shirt },
    /// A libero on the bench takes no part in them either.
    LiberoNoSubstitute { number: Shirt },
    /// The limit of the set.
    NoSubstitutionLeft { used: u8, wanted: usize, most: u8 },
    /// The starter has left and returned once.
    PlaceClosed { number: Shirt },
    /// An exceptional substitution has closed the place.
    ClosedByExceptional { number: Shirt },
    /// A substitute who is not on the team list.
    UnlistedSubstitute { team: Team, number: Shirt },
    /// Only the starter can come in for this substitute.
    OnlyStarterReturns { out: Shirt, starter: Shirt },
    /// A starter returns only to the own place.
    OtherPlace { number: Shirt, now_held_by: Shirt },
    /// A substitute comes in once.
    SubstituteUsed { number: Shirt },
    /// A player's entries are used up.
    EntriesUsed { number: Shirt, most: u8 },
    /// A legal change exists, so the exceptional one is not open.
    LegalChangeExists { out: Shirt, into: Vec<Shirt> },
    /// The player was not sent off.
    NotSentOff { number: Shirt },
    /// One change of a request is illegal; the legal ones may be asked for again.
    PartlyIllegal {
        legal: Vec<Change>,
        because: Box<Refusal>,
    },

    // Liberos.
    /// No libero of that number.
    NotALibero { number: Shirt },
    /// Only one libero on court.
    LiberoOnCourt { number: Shirt },
    /// Only back-row players.
    BackRowOnly { number: Shirt },
    /// A player who may not be on court leaves by a substitution.
    LeavesBySubstitution { number: Shirt },
    /// The server stays.
    LiberoServes { number: Shirt },
    /// A completed rally between two replacements.
    RallyBetween,
    /// No libero of that team came or went in this interruption.
    NoReplacementNow { team: Team },
    /// Only the replaced player or the other libero comes in.
    NotForLibero { libero: Shirt, replaced: Shirt },
    /// For a libero who was only declared unable the regular player returns first.
    RegularReturnsFirst { libero: Shirt, replaced: Shirt },
    /// The replaced player cannot become the libero.
    ReplacedPlayer { number: Shirt },
    /// The other libero can play on.
    OtherLibero { number: Shirt },
    /// A libero already.
    AlreadyLibero { number: Shirt },

    // Conduct.
    /// The team has had its warning.
    TeamWarned { team: Team },
    /// The next sanction must be heavier.
    NotHeavier { who: Who, had: Level },

    // Who speaks, and protests.
    /// A game captain is named once both line-ups are in.
    NoSetForGameCaptain,
    /// The team captain is on court.
    CaptainSpeaks { captain: Shirt },
    /// A player who has to leave the court cannot speak for the team.
    LeavesCourt { number: Shirt },
    /// Only the game captain announces a protest.
    NotGameCaptain { number: Shirt, speaker: Shirt },
    /// No protest was announced.
    NotAnnounced { team: Team },
    /// That entry announces no protest.
    NoSuchProtest { entry: u32 },
    /// That protest is written already.
    ProtestWritten { entry: u32 },
    /// It is written after the match.
    ProtestAfterMatch,

    // Faults found late.
    /// That score never stood.
    ScoreNeverStood {
        asked: Score,
        nearest: Score,
        fault: Fault,
    },
    /// That score never stood, so wrong information cannot be taken back to it.
    NoSuchMoment { asked: Score, nearest: Score },
    /// Only an unregistered player reaches back into an earlier set.
    EarlierSet { set: u8, now: u8, fault: Fault },
    /// That set has not been played yet.
    SetNotPlayed { set: u8, fault: Fault },
    /// No set to correct: for a fault, or for wrong information by the officials.
    NothingPlayed { fault: Option<Fault> },
    /// Found after a rally: the wrong service was at the score before it.
    RallyBeganBefore { asked: Score, before: Score },
    /// Found after a rally, and none was completed.
    NoRallyYet,
    /// A team that did not serve cannot have had a wrong server.
    DidNotServe { team: Team },
    /// The set was decided without play.
    NotByPlay { set: u8 },

    // Stops and endings.
    /// Recovery time once a player and match.
    RecoveryUsed { number: Shirt },
    /// Somebody can still come in.
    SomebodyCanComeIn { number: Shirt, into: Vec<Shirt> },
    /// Interruptions of more than four hours in all.
    OverFourHours,
    /// Courts change within a set only in the deciding one.
    NotDecider,
    /// Done already.
    CourtsChanged,
    /// Not yet due.
    CourtsNotDue { at: u16 },
}

impl Refusal {
    /// The number of the rule in the 2025-2028 text; `log` where it is no rule of play but the form
    /// of the log, `school` where a competition's own limit is met.
    #[must_use]
    pub fn rule(&self) -> &'static str {
        use Refusal as R;
        match self {
            R::NoMatch
            | R::MatchOpen
            | R::BadRules(_)
            | R::RulesSettled
            | R::StrikeFirst
            | R::StrikeLater { .. }
            | R::AlreadyStruck { .. }
            | R::Sealed { .. }
            | R::NotSealed
            | R::SealStands { .. }
            | R::NoSuchRally { .. }
            | R::NotLastRally { .. }
            | R::BeforeReplay { .. }
            | R::NoQuestion { .. }
            | R::NoSuchChoice { .. }
            | R::NoSuchProtest { .. }
            | R::ProtestWritten { .. }
            | R::PlayedHere
            | R::NothingToTakeOver
            | R::ScoreStands { .. }
            | R::ScoreTooHigh { .. } => "log",
            R::MatchOver => "6.3.1",
            R::Suspended | R::NotSuspended => "17.3.1",
            R::NoSetRunning { asked } => match asked {
                InSet::Rally => "12.3",
                InSet::TimeOut => "15.4.1",
                InSet::Recovery => "17.1.2",
                InSet::ChangeOfCourts => "18.2.2",
            },
            R::SetRunning | R::SetNotOver { .. } | R::SetLevel { .. } | R::SetOver { .. } => "6.2",
            R::FoundTooLate => "7.3.5.3",
            R::NotInLineUp { .. } => "7.3.5.2",
            R::ScoreFollowsPoints => "6.1.3",
            R::NotByTime | R::NoTimeOutLeftInMatch { .. } => "school",
            R::NoReplacementNow { .. } => "19.3.2.5",
            R::NoSuchMoment { .. } | R::NothingPlayed { fault: None } => "casebook 2.3",
            R::NobodyOnCourt => "15.3.2",
            R::LiberoBeforeLineUps => "19.3.2.3",
            R::ListClosed => "4.1.3",
            R::TooManyPlayers { .. } => "4.1.1",
            R::NumberTwice { .. } | R::NumberOutOfRange { .. } => "4.3.3",
            R::TwoCaptains { .. } => "4.1.2",
            R::TooManyLiberos { .. } => "19.1.1",
            R::TossInSet | R::TossNotDue { .. } | R::TossMissing { .. } | R::TossDecides { .. } => {
                "7.1"
            }
            R::NoTeamList { .. } => "4.1.3",
            R::LineUpGiven { .. } | R::LineUpPlayed { .. } => "7.3.4",
            R::LineUpMissing { .. } | R::SeveralMissing { .. } => "7.3.2",
            R::LineUpSize { .. } | R::TwiceInLineUp { .. } => "7.3.1",
            R::NotListed { .. } => "4.1.3",
            R::UnlistedSubstitute { .. } => "15.9.1",
            R::LiberoInLineUp { .. } => "19.3.2.3",
            R::PlayerBarred {
                why: Barred::Expelled,
                ..
            } => "21.3.2.1",
            R::PlayerBarred {
                why: Barred::Out(OutFor::Disqualified),
                ..
            } => "21.3.3.1",
            R::PlayerBarred {
                why: Barred::Out(OutFor::Exceptional),
                ..
            } => "15.7",
            R::PlayerBarred {
                why: Barred::Out(OutFor::Redesignated),
                ..
            } => "19.4.2.2",
            R::ServingTeamStandsFree { .. } => "7.4",
            R::NoTimeOutLeft { .. } | R::NoSubstitutionLeft { .. } => "15.1",
            // The interruption is the time after a completed rally.
            R::AfterReplay => "15",
            R::RequestBarred { .. } => "15.2.4",
            R::SecondRequest { .. } => "15.2.2",
            R::NoChange => "15.5",
            R::NotOnCourt { asked, .. } | R::OnCourt { asked, .. } => match asked {
                Asked::Substitution => "15.5.1",
                Asked::LiberoReplacement => "19.3.1.1",
                Asked::NewLibero => "19.4.2.1",
                Asked::Recovery => "17.1.2",
                Asked::GameCaptain => "5.1.2",
            },
            R::NamedTwice { .. } => "15.5.1",
            R::LiberoNotSubstituted { .. } | R::LiberoNoSubstitute { .. } => "15.5.1",
            R::PlaceClosed { .. } | R::OtherPlace { .. } => "15.6.1",
            R::ClosedByExceptional { .. } => "15.6.1",
            R::OnlyStarterReturns { .. } | R::SubstituteUsed { .. } => "15.6.2",
            R::EntriesUsed { .. } => "school",
            R::LegalChangeExists { .. } => "15.7",
            R::NotSentOff { .. } | R::LeavesBySubstitution { .. } => "15.8",
            R::PartlyIllegal { because, .. } => because.rule(),
            R::NotALibero { .. } => "19.1.2",
            R::LiberoOnCourt { .. } => "19.1.3",
            R::BackRowOnly { .. } => "19.3.1.1",
            R::LiberoServes { .. } => "19.3.1.3",
            R::RallyBetween => "19.3.2.1",
            R::NotForLibero { .. } => "19.3.2.2",
            R::RegularReturnsFirst { .. } => "19.4.2.2",
            R::ReplacedPlayer { .. } | R::AlreadyLibero { .. } => "19.4.2.1",
            R::OtherLibero { .. } => "19.4.3.1",
            R::TeamWarned { .. } => "21.1",
            R::NotHeavier { .. } => "21.4.2",
            R::NoSetForGameCaptain | R::CaptainSpeaks { .. } | R::LeavesCourt { .. } => "5.1.2",
            R::NotGameCaptain { .. } | R::NotAnnounced { .. } => "5.1.2.1",
            R::ProtestAfterMatch => "5.1.3",
            R::ScoreNeverStood { fault, .. }
            | R::EarlierSet { fault, .. }
            | R::SetNotPlayed { fault, .. }
            | R::NothingPlayed { fault: Some(fault) } => match fault {
                Fault::Rotation => "7.7.2",
                Fault::IllegalSubstitution | Fault::IllegalLibero => "15.9.2",
                Fault::WrongLineUp => "7.3.5.3",
                Fault::UnregisteredPlayer => "7.3.5.4",
            },
            R::RallyBeganBefore { .. } | R::NoRallyYet => "7.7.1.1",
            R::DidNotServe { .. } => "7.7.1",
            R::NotByPlay { .. } => "6.4",
            R::RecoveryUsed { .. } | R::SomebodyCanComeIn { .. } => "17.1.2",
            R::OverFourHours => "17.3.3",
            R::NotDecider | R::CourtsChanged | R::CourtsNotDue { .. } => "18.2.2",
        }
    }

    /// What the rules name for a request that has to be rejected: one beyond the allowed number, and a second
    /// one for substitution in the same interruption, is improper (15.11.1); one for an illegal substitution
    /// is a delay (16.1.3).
    #[must_use]
    pub fn right_act(&self, asked: &Kind) -> Option<Kind> {
        use Refusal as R;
        let (Kind::TimeOut { team } | Kind::Substitution { team, .. }) = *asked else {
            return None;
        };
        match self {
            R::NoTimeOutLeft { .. } | R::NoSubstitutionLeft { .. } | R::SecondRequest { .. } => {
                Some(Kind::ImproperRequest { team })
            }
            R::PartlyIllegal { because, .. } => because.right_act(asked),
            R::PlaceClosed { .. }
            | R::OnlyStarterReturns { .. }
            | R::OtherPlace { .. }
            | R::SubstituteUsed { .. }
            | R::EntriesUsed { .. }
            | R::LiberoNotSubstituted { .. }
            | R::LiberoNoSubstitute { .. } => Some(Kind::Delay {
                team,
                request: true,
            }),
            _ => None,
        }
    }

    /// Whether insisting does not help: there is nothing the entry could be carried out on.
    #[must_use]
    pub fn is_final(&self) -> bool {
        use Refusal as R;
        if let R::PartlyIllegal { because, .. } = self {
            return because.is_final();
        }
        !matches!(
            self,
            R::ListClosed
                | R::TwoCaptains { .. }
                | R::NoTeamList { .. }
                | R::LiberoNoSubstitute { .. }
                | R::TooManyPlayers { .. }
                | R::NumberOutOfRange { .. }
                | R::TooManyLiberos { .. }
                | R::TossNotDue { .. }
                | R::TossMissing { .. }
                | R::TossDecides { .. }
                | R::SetNotOver { .. }
                | R::ScoreFollowsPoints
                | R::NotByTime
                | R::NoTimeOutLeftInMatch { .. }
                | R::NoReplacementNow { .. }
                | R::LineUpGiven { .. }
                | R::LineUpMissing { .. }
                | R::SeveralMissing { .. }
                | R::LiberoInLineUp { .. }
                | R::PlayerBarred { .. }
                | R::ServingTeamStandsFree { .. }
                | R::NoTimeOutLeft { .. }
                | R::AfterReplay
                | R::RequestBarred { .. }
                | R::SecondRequest { .. }
                | R::NoSubstitutionLeft { .. }
                | R::PlaceClosed { .. }
                | R::ClosedByExceptional { .. }
                | R::OnlyStarterReturns { .. }
                | R::OtherPlace { .. }
                | R::SubstituteUsed { .. }
                | R::EntriesUsed { .. }
                | R::LegalChangeExists { .. }
                | R::NotSentOff { .. }
                | R::LiberoOnCourt { .. }
                | R::LeavesBySubstitution { .. }
                | R::BackRowOnly { .. }
                | R::LiberoServes { .. }
                | R::RallyBetween
                | R::NotForLibero { .. }
                | R::RegularReturnsFirst { .. }
                | R::DidNotServe { .. }
                | R::ReplacedPlayer { .. }
                | R::OtherLibero { .. }
                | R::TeamWarned { .. }
                | R::NotHeavier { .. }
                | R::NotGameCaptain { .. }
                | R::NotAnnounced { .. }
                | R::ProtestAfterMatch
                | R::RecoveryUsed { .. }
                | R::SomebodyCanComeIn { .. }
                | R::OverFourHours
                | R::NotDecider
                | R::CourtsChanged
                | R::CourtsNotDue { .. }
        )
    }
}
