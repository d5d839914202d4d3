//! One entry of a log: what an official saw or decided. Nothing in it is a result.

mod change;
mod conduct;
mod heading;
mod late_fault;
mod team_list;

pub use super::count_down::{Timer, TimerAction};
pub use super::toss::{About, Toss, Won};
pub use change::{Change, Forced, LiberoWhy};
pub use conduct::{is_assistant_coach, is_coach, is_same_role, Level, Who};
pub use heading::{Amendment, Detail, Details, Heading};
pub use late_fault::{Fault, Found, LateFault, Since};
pub use team_list::{Player, Staff, TeamList};

use std::sync::Arc;

use super::joined::Joined;

use rules::{Cause, Score, Shirt, Team};

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
    /// The text that it was first written as, where that is not what this program writes. A chain and a
    /// seal are made of it, so that neither hangs on a release; the game never looks at it.
    pub written: Option<Arc<str>>,
    /// The link that a file gave it, where that does not follow from what stands before it: it or something
    /// before it was changed. It is carried along, so that this stays known; the game never looks at it.
    pub given_link: Option<Arc<str>>,
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
            written: None,
            given_link: None,
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
    /// Who serves first in the set to come and who stands on the left, as seen on court: no toss is in this
    /// record, as where a tally grows into a match.
    FirstService {
        /// Who serves first.
        team: Team,
        /// Who stands on the left, seen from the stand.
        left: Team,
    },
    /// Sets and score as they stood when somebody began to keep this record.
    Joined(Joined),
    /// A score that was miscounted is put right.
    ScoreCorrection {
        /// The right score of the running set.
        score: Score,
        /// Who serves next, where that was wrong too.
        serving: Option<Team>,
        /// Why.
        why: String,
    },
    /// The officials gave wrong information: play goes back to the score at which they did
    /// (FIVB Casebook 2024, case 2.3).
    WrongInformation {
        /// The score at that moment.
        score: Score,
        /// What was said wrongly.
        why: String,
    },
    /// Players on court differ from the line-up, found before the set begins (7.3.5.1, 7.3.5.2).
    Discrepancy {
        /// Whose.
        team: Team,
        /// Who is in the line-up, and who stands there instead; none where only places were mixed up.
        changes: Vec<Change>,
        /// The coach keeps them by a regular substitution (7.3.5.2); else they are put right.
        kept: bool,
    },
    /// The libero replacement just made came after the whistle for service and before the hit
    /// (19.3.2.5, 19.3.2.6).
    LateReplacement {
        /// Whose.
        team: Team,
    },
    /// The organiser's clock ends the set, where a competition plays by time.
    TimeUp,
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
        /// The rally that was entered as a point and is played again: it counts no more. None where no
        /// point was entered.
        rally: Option<u32>,
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
    /// A player is named who speaks for the team while its captain is not on court (5.1.2).
    GameCaptain {
        /// Whose.
        team: Team,
        /// The player.
        number: Shirt,
    },
    /// A protest is announced.
    Protest {
        /// Whose.
        team: Team,
        /// Who announced it, where it was said; else whoever speaks for the team.
        number: Option<Shirt>,
        /// What was announced; may be empty.
        text: String,
    },
    /// A protest is written on the sheet.
    ProtestStatement {
        /// Which.
        about: Protested,
        /// The words.
        text: String,
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

rules::codes!(SeenBy {
    SecondReferee = "second_referee",
    LineJudge = "line_judge",
    Scorer = "scorer",
});

/// A person of a team, as far as said.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct By {
    /// The team.
    pub team: Team,
    /// The shirt.
    pub number: Option<Shirt>,
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

rules::codes!(ReplayWhy {
    DoubleFault = "double_fault",
    Interference = "interference",
    Injury = "injury",
    Other = "other",
});

/// Which protest is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Protested {
    /// The one that this entry announced.
    Entry(u32),
    /// One that nobody has announced, of this team.
    Unannounced(Team),
}

/// What an incomplete team loses.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Scope {
    /// The set.
    Set,
    /// The match.
    Match,
}

rules::codes!(Scope {
    Set = "set",
    Match = "match",
});

/// Where play goes on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Court {
    /// On the same court.
    Same,
    /// On another one.
    Other,
}

rules::codes!(Court {
    Same = "same",
    Other = "other",
});
