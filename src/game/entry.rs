//! One entry of a log: what an official saw or decided. Nothing in it is a result.

use crate::rules::{ByTeam, Cause, Rules, Score, Shirt, Team};

/// One entry of the log.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// Its number in the log, from 1.
    pub n: u32,
    /// When it was made, milliseconds since 1970 UTC.
    pub at: Option<i64>,
    /// Why the official decided against the advice of the rules, where he or she did.
    pub insist: Option<String>,
    /// What was seen or decided.
    pub kind: Kind,
}

impl Entry {
    /// An entry without a time and without insisting.
    #[must_use]
    pub fn new(n: u32, kind: Kind) -> Entry {
        Entry {
            n,
            at: None,
            insist: None,
            kind,
        }
    }
}

/// What was seen or decided.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Kind {
    /// The match is opened; always entry 1.
    Match(Box<Heading>),
    /// Parts of the heading that were left for later, or were wrong.
    Heading(Box<Amendment>),
    /// A team's list.
    TeamList(TeamList),
    /// A check before the match was done, or failed.
    Check(Check),
    /// The outcome of the toss.
    Toss(Toss),
    /// A team's line-up for the next set, place 1 first.
    LineUp {
        /// Whose.
        team: Team,
        /// Shirts from place 1 on.
        positions: Vec<Shirt>,
    },
    /// The first service of the set is authorised.
    BeginSet,
    /// A completed rally.
    Rally {
        /// Who gets the point and the next service.
        won_by: Team,
        /// Why it ended, where it was said at once.
        cause: Option<Cause>,
        /// Who did it.
        by: Option<By>,
    },
    /// Gives or corrects the cause of a rally; the score is untouched.
    Explain {
        /// The rally's entry.
        entry: u32,
        /// Why it ended.
        cause: Cause,
        /// Who did it.
        by: Option<By>,
        /// Who of the other officials showed it; none where the first referee saw it, or nobody said.
        seen_by: Option<SeenBy>,
    },
    /// A rally that does not count: no point, same server.
    Replay {
        /// What stopped it.
        why: ReplayWhy,
        /// Who was hurt.
        hurt: Option<By>,
    },
    /// A time-out.
    TimeOut {
        /// Whose.
        team: Team,
    },
    /// One request for substitution.
    Substitution {
        /// Whose.
        team: Team,
        /// Who goes and who comes.
        changes: Vec<Change>,
        /// What forces it, where something does.
        reason: Option<Forced>,
    },
    /// A libero comes in, goes out, or gives way to the other libero.
    LiberoReplacement {
        /// Whose.
        team: Team,
        /// Who goes, who comes.
        change: Change,
    },
    /// A new libero is named.
    NewLibero {
        /// Whose.
        team: Team,
        /// The liberos who play no more.
        replaces: Vec<Shirt>,
        /// The new one.
        number: Shirt,
        /// Why, where it was said.
        why: Option<LiberoWhy>,
    },
    /// A request that could not be granted and held nobody up.
    ImproperRequest {
        /// Whose.
        team: Team,
    },
    /// A delay.
    Delay {
        /// Whose.
        team: Team,
        /// Whether it came from a rejected request.
        request: bool,
    },
    /// Misconduct was sanctioned.
    Misconduct {
        /// Whose.
        team: Team,
        /// The person.
        who: Who,
        /// The level.
        sanction: Level,
    },
    /// A fault found late.
    LateFault(LateFault),
    /// Three minutes for an injured player who cannot be replaced.
    Recovery {
        /// Whose.
        team: Team,
        /// The player.
        number: Shirt,
    },
    /// A team is incomplete.
    Incomplete {
        /// Which.
        team: Team,
        /// For the set or the match.
        scope: Scope,
    },
    /// A team does not appear or refuses to play.
    Default {
        /// Which.
        team: Team,
    },
    /// The teams have changed courts in the deciding set.
    ChangeCourts,
    /// Play is interrupted.
    Suspend {
        /// Why.
        why: String,
    },
    /// Play goes on.
    Resume {
        /// Where.
        court: Court,
    },
    /// A count-down was started or stopped.
    Timer(Timer),
    /// A remark.
    Remark {
        /// The words.
        text: String,
        /// A team it is about.
        team: Option<Team>,
    },
    /// A signature.
    Sign {
        /// Whose: captain, coach, scorer, referee.
        role: String,
        /// The name.
        name: Option<String>,
    },
    /// Takes an entry back.
    Strike {
        /// Which.
        entry: u32,
        /// Why.
        why: Option<String>,
    },
    /// Answers a question that the rules leave open.
    Answer {
        /// The entry that raised it.
        entry: u32,
        /// The code of the choice.
        choice: String,
    },
    /// Closes the record: nothing is taken up after it but a reopening.
    Seal {
        /// The check code of everything before it; the game does not know how it is made.
        code: String,
    },
    /// Opens a sealed record again; stands on the sheet.
    Reopen {
        /// Why.
        why: Option<String>,
    },
}

/// The heading of a match.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Heading {
    /// Competition.
    pub competition: Option<String>,
    /// Division.
    pub division: Option<String>,
    /// Hall.
    pub venue: Option<String>,
    /// Court in the hall.
    pub court: Option<String>,
    /// Number of the match.
    pub match_no: Option<String>,
    /// Scheduled start as it was written, by custom `2026-05-09T14:00`.
    pub scheduled: Option<String>,
    /// Names of the teams; may be empty.
    pub names: ByTeam<String>,
    /// What it is played by.
    pub rules: Rules,
}

impl Heading {
    /// A heading with names and rules, everything else left for later.
    #[must_use]
    pub fn new(names: ByTeam<String>, rules: Rules) -> Heading {
        Heading {
            competition: None,
            division: None,
            venue: None,
            court: None,
            match_no: None,
            scheduled: None,
            names,
            rules,
        }
    }
}

/// Parts of the heading, given later; what is left out stays as it is.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Amendment {
    /// Competition.
    pub competition: Option<String>,
    /// Division.
    pub division: Option<String>,
    /// Hall.
    pub venue: Option<String>,
    /// Court in the hall.
    pub court: Option<String>,
    /// Number of the match.
    pub match_no: Option<String>,
    /// Scheduled start.
    pub scheduled: Option<String>,
    /// Names of the teams.
    pub names: ByTeam<Option<String>>,
    /// What it is played by from now on: before the match, or where a tally grows into a match.
    pub rules: Option<Rules>,
}

/// A team's list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TeamList {
    /// Whose.
    pub team: Team,
    /// Players.
    pub players: Vec<Player>,
    /// Coach, assistants and others on the bench.
    pub staff: Vec<Staff>,
}

impl TeamList {
    /// The player of that number.
    #[must_use]
    pub fn player(&self, number: Shirt) -> Option<&Player> {
        self.players.iter().find(|p| p.number == number)
    }
}

/// A player on the list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Player {
    /// Shirt number.
    pub number: Shirt,
    /// Name, where it was given.
    pub name: Option<String>,
    /// Whether this is the team captain.
    pub captain: bool,
    /// Whether this is a libero.
    pub libero: bool,
}

/// A member of the staff.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Staff {
    /// Coach, assistant coach, therapist, doctor.
    pub role: String,
    /// Name, where it was given.
    pub name: Option<String>,
}

/// A check before the match.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Check {
    /// What was checked.
    pub item: String,
    /// Whether it was in order.
    pub ok: bool,
    /// What was found, or who cleared it.
    pub note: Option<String>,
}

/// The outcome of a toss.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Toss {
    /// Who serves first.
    pub first_service: Team,
    /// Who starts on the left, seen from the stand.
    pub left: Team,
}

/// An official who showed the first referee why a rally ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum SeenBy {
    /// By whistle or by a sign (FIVB Official Volleyball Rules 2025-2028, 24.2.2 and 24.3.2).
    SecondReferee,
    /// By a signal with the flag (29.2.1).
    LineJudge,
    /// From the table: the order of service (27.2.2).
    Scorer,
}

impl SeenBy {
    /// All of them, in the order in which they are offered.
    pub const ALL: [SeenBy; 3] = [SeenBy::SecondReferee, SeenBy::LineJudge, SeenBy::Scorer];
}

/// A person of a team, as far as said.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct By {
    /// The team.
    pub team: Team,
    /// The shirt.
    pub number: Option<Shirt>,
}

/// Who goes and who comes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Change {
    /// Leaves the court.
    pub out: Shirt,
    /// Enters it.
    pub into: Shirt,
}

/// What stopped a rally that does not count.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ReplayWhy {
    /// Both teams at the same time.
    DoubleFault,
    /// Something or somebody from outside.
    Interference,
    /// Somebody was hurt.
    Injury,
    /// Anything else.
    Other,
}

/// What forces a substitution.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Forced {
    /// The player is hurt or ill.
    Injury,
    /// The player was expelled.
    Expelled,
    /// The player was disqualified.
    Disqualified,
}

/// Why a new libero is named.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LiberoWhy {
    /// The old one cannot go on.
    Unable,
    /// The coach has declared it.
    Declared,
}

/// A person who can be sanctioned.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Who {
    /// A player.
    Player(Shirt),
    /// Somebody of the staff, by role.
    Staff(String),
}

/// The levels of a misconduct sanction, the lightest first
/// (Official Volleyball Rules 2025-2028, 21.1 and 21.3).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Level {
    /// Yellow card.
    Warning,
    /// Red card.
    Penalty,
    /// Both in one hand: out for the set.
    Expulsion,
    /// One in each hand: out for the match.
    Disqualification,
}

impl Level {
    /// All of them, the lightest first.
    pub const ALL: [Level; 4] = [
        Level::Warning,
        Level::Penalty,
        Level::Expulsion,
        Level::Disqualification,
    ];
}

/// A fault found late.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LateFault {
    /// Whose.
    pub team: Team,
    /// Which.
    pub fault: Fault,
    /// The score when it began; none where nobody knows.
    pub since: Option<Since>,
    /// When it was found.
    pub during: Found,
    /// The right places of that team now, place 1 first.
    pub positions: Option<Vec<Shirt>>,
}

/// Faults that are found late.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// Wrong server.
    Rotation,
    /// A substitution against the rules.
    IllegalSubstitution,
    /// A libero replacement against the rules.
    IllegalLibero,
    /// A player on court who is not in the line-up.
    WrongLineUp,
    /// A player who is not on the team list.
    UnregisteredPlayer,
}

/// A moment of the match by its score.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Since {
    /// The score.
    pub score: Score,
    /// The set; none: the present one.
    pub set: Option<u8>,
}

/// When a fault was found.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Found {
    /// Play was stopped for it.
    Rally,
    /// The rally had ended.
    AfterRally,
}

/// What an incomplete team loses.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Scope {
    /// The set.
    Set,
    /// The match.
    Match,
}

/// Where play goes on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Court {
    /// On the same court.
    Same,
    /// On another one.
    Other,
}

/// A count-down.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Timer {
    /// What is timed: `warm_up`, `time_out`, `interval`, `recovery`, `service`…
    pub what: String,
    /// For whom.
    pub team: Option<Team>,
    /// How long.
    pub seconds: u32,
    /// Started or stopped.
    pub action: TimerAction,
}

/// What happened to a count-down.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TimerAction {
    /// It starts.
    Start,
    /// It stops.
    Stop,
}
