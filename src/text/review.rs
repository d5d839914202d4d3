//! The words of the review, in one place; a second language is a second file like this one.

use game::entry::SeenBy;
use rules::Score;

/// Title of the screen.
pub const REVIEW: &str = "Review";
pub const NOTHING_PLAYED: &str = "No rally has been played yet. Come back later.";
pub const CARD: &str = "Three questions to talk about";
pub const CARD_MORE: &str =
    "First answer them for yourself. Then talk about them with your duty team.";
pub const LEAD: &str = "How the lead changed";
pub const LEAD_MORE: &str =
    "Above the line A leads, below it B leads. T is a time-out: at the top by A, at the bottom by B.";
pub const SO_FAR: &str = "The match is not over. This is how it stands so far.";
pub const TO_MATCH: &str = "To the match";
pub const CALLED: &str = "What was called, and when";
pub const CALLED_MORE: &str =
    "Each stroke is one call, from the first rally on the left to the last on the right. Thin lines \
     divide the sets. A ring above a stroke means that another official showed it.";
pub const NOTHING_CALLED: &str = "No reason was given for any rally.";
pub const PAUSES: &str = "From one rally to the next";
pub const NO_TIMES: &str = "The entries have no times, so nothing can be said about time.";
pub const ROTATIONS: &str = "Points by rotation";
pub const ROTATIONS_MORE: &str =
    "Filled bars that point up are points won. Empty bars that point down are points lost. Rotation 1 is \
     the order in which the team began the set.";
pub const TIME_OUTS: &str = "Time-outs and what followed";
pub const TIME_OUTS_MORE: &str =
    "You see the next points. The team that took the time-out won the filled ones. The other team won the \
     empty ones.";
pub const NO_TIME_OUTS: &str = "No time-out was taken.";
pub const TAKEN_BACK: &str = "Undone";
pub const NOTHING_TAKEN_BACK: &str = "Nothing was undone.";

pub fn usual_pause(seconds: i64) -> String {
    format!("When nothing delayed play, half of the rallies were entered within {seconds} s of the one \
        before.")
}

/// How many reasons were shown by whom.
pub fn shown_by(all: &[(SeenBy, usize)]) -> String {
    let who = |by: SeenBy| match by {
        SeenBy::SecondReferee => "the second referee",
        SeenBy::LineJudge => "a line judge",
        SeenBy::Scorer => "the scorer",
    };
    let all: Vec<String> = all
        .iter()
        .map(|(by, times)| format!("{} {times} ×", who(*by)))
        .collect();
    format!(
        "Shown to the first referee, where it was noted: {}.",
        all.join(", ")
    )
}

pub fn unsaid(unsaid: usize, of: usize) -> String {
    format!("{unsaid} of {of} rallies have no reason.")
}

pub fn calls(times: usize) -> String {
    format!("{times} ×")
}

pub fn set(number: u8) -> String {
    format!("Set {number}")
}

pub fn time_out(team: &str, set: u8, score: Score, run: u16) -> String {
    let before = match run {
        0 => "after a point of their own".to_owned(),
        1 => "after one point of the other team".to_owned(),
        n => format!("after {n} points of the other team in a row"),
    };
    format!("{team}, set {set} at {}, {before}", score.marked())
}

pub fn taken_back(entry: u32, words: &str, after: Option<i64>, why: Option<&str>) -> String {
    let after = after.map(|s| format!(", after {s} s")).unwrap_or_default();
    let why = why.map(|w| format!(": {w}")).unwrap_or_default();
    format!("Entry {entry}, {words}{after}{why}")
}
