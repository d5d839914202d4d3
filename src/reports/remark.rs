//! The remarks of a sheet: what was written, what was insisted on, what was taken back, and what the
//! rules want noted (Official Volleyball Rules 2025-2028, 19.4.2.6 and 27.2.2.7). The words for them stand
//! in `text`.

mod of_log;

use game::entry::{Change, Check, Forced};
use game::{Joined, Protest, Question, Refusal};
use rules::{Score, Shirt, Team};

use super::ClockDoubt;

pub use of_log::lines;

/// One remark.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RemarkLine {
    /// The entry it comes from.
    pub entry: u32,
    /// The set at that moment.
    pub set: u8,
    /// The score at that moment.
    pub score: Score,
    /// What is noted.
    pub remark: Remark,
}

/// What is noted.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Remark {
    /// The time of the entry is doubtful.
    Clock(ClockDoubt),
    /// The entry does not count.
    Refused {
        /// The entry.
        entry: u32,
        /// Why.
        refusal: Refusal,
    },
    /// The entry was made against the advice of the rules.
    Insisted {
        /// The advice.
        advice: Refusal,
        /// Why the first referee decided so.
        why: String,
    },
    /// The entry was taken back with a reason, or after play had gone on.
    TakenBack {
        /// The entry.
        entry: u32,
        /// The entry that took it back.
        by: u32,
        /// Why.
        why: Option<String>,
    },
    /// Somebody wrote it.
    Written {
        /// The team it is about.
        team: Option<Team>,
        /// The words.
        text: String,
    },
    /// A check failed.
    CheckFailed(Check),
    /// A check that had failed is in order.
    CheckCleared(Check),
    /// A player was substituted who had to leave.
    Forced {
        /// Whose.
        team: Team,
        /// Who left, who came.
        changes: Vec<Change>,
        /// What forced it.
        reason: Forced,
        /// Whether it was an exceptional substitution (15.7).
        exceptional: bool,
    },
    /// Recovery time for a player (17.1.2).
    Recovery {
        /// Whose.
        team: Team,
        /// Who.
        number: Shirt,
    },
    /// A libero was named anew (19.4.2).
    NewLibero {
        /// Whose.
        team: Team,
        /// The new one.
        number: Shirt,
        /// Those whom he or she replaces.
        replaces: Vec<Shirt>,
    },
    /// A fault was found late.
    LateFault {
        /// Whose.
        team: Team,
        /// What it has done to the sets so far.
        corrected: Vec<Corrected>,
    },
    /// The point of a rally stands and its reason does not: the serving team may stand anywhere (7.4).
    CauseDropped,
    /// A protest was announced (5.1.2.1).
    Protest {
        /// What was announced, and what was written after the match.
        protest: Protest,
        /// Whether the match is over and nothing was written about it (5.1.3).
        unwritten: bool,
    },
    /// A protest was written after the match (5.1.3).
    ProtestWritten {
        /// Whose.
        team: Team,
        /// The words.
        text: String,
    },
    /// Who served first, and on which side, was seen on court.
    FirstService {
        /// The set.
        set: u8,
        /// Who served.
        team: Team,
        /// Who stood on the left.
        left: Team,
    },
    /// The record was begun while the match was being played.
    Joined(Joined),
    /// A miscounted score was corrected.
    ScoreCorrected {
        /// From this.
        from: Score,
        /// To this.
        to: Score,
        /// Why.
        why: String,
    },
    /// Play went back for wrong information by the officials (FIVB Casebook 2024, case 2.3).
    WrongInformation {
        /// From this score.
        from: Score,
        /// To this.
        to: Score,
        /// What it was.
        why: String,
    },
    /// The players on court were not those of the line-up, and it was seen before the set (7.3.5.2).
    Discrepancy {
        /// Whose.
        team: Team,
        /// Who left, who came.
        changes: Vec<Change>,
        /// Whether those on court stay, by substitution.
        kept: bool,
    },
    /// A libero replacement came after the whistle for service (19.3.2.5).
    LateReplacement {
        /// Whose.
        team: Team,
        /// Whether it was not the first, so that it is a delay.
        again: bool,
    },
    /// The time of a set was up.
    TimeUp {
        /// Whether the teams were level, so that one more rally decides.
        level: bool,
    },
    /// Play was interrupted.
    Suspended {
        /// Why.
        why: String,
    },
    /// Play was resumed.
    Resumed,
    /// A team is incomplete (6.4.3).
    Incomplete(Team),
    /// A team is in default (6.4.1, 6.4.2).
    Default(Team),
    /// The sealed record was reopened.
    Reopened {
        /// Why.
        why: Option<String>,
    },
    /// The first referee answered what the rules leave open.
    Answered {
        /// The question.
        question: Question,
        /// Which of its choices, from 0.
        choice: usize,
    },
}

/// What a fault found late has done to a set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Corrected {
    /// The set.
    pub set: u8,
    /// Whether it is an earlier one than that at hand.
    pub earlier: bool,
    /// Its score before.
    pub was: Score,
    /// Its score now; none where the set counts no more.
    pub is: Option<Score>,
}
