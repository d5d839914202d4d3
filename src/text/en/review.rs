//! The words of the review.

use crate::review::*;
use game::entry::SeenBy;
use reports::review::Question;
use rules::{Rules, Score};

/// In English.
pub static WORDS: ReviewWords = ReviewWords {
    review: "Review",
    nothing_played: "No rally has been played yet. Come back later.",
    card: "Three questions to talk about",
    card_more: "First answer them for yourself. Then talk about them with your duty team.",
    lead_heading: "How the lead changed",
    lead_more:
        "Above the line A leads, below it B leads. T is a time-out: at the top by A, at the \
         bottom by B.",
    so_far: "The match is not over. This is how it stands so far.",
    to_match: "To the match",
    called: "What was called, and when",
    called_more:
        "Each stroke is one call, from the first rally on the left to the last on the right. Thin \
         lines divide the sets. A ring above a stroke means that another official showed it.",
    nothing_called: "No reason was given for any rally.",
    pauses_heading: "From one rally to the next",
    no_times: "The entries have no times, so nothing can be said about time.",
    rotations_heading: "Points by rotation",
    rotations_more:
        "Filled bars that point up are points won. Empty bars that point down are points lost. \
         Rotation 1 is the order in which the team began the set.",
    time_outs: "Time-outs and what followed",
    time_outs_more:
        "You see the next points. The team that took the time-out won the filled ones. The other \
         team won the empty ones.",
    no_time_outs: "No time-out was taken.",
    taken_back_heading: "Undone",
    nothing_taken_back: "Nothing was undone.",
    usual_pause,
    shown_by,
    unsaid,
    calls,
    set,
    time_out,
    taken_back,
    question,
    lead,
    rotations,
    pauses,
    when_called,
    after_time_out,
};

fn usual_pause(seconds: i64) -> String {
    format!("When nothing delayed play, half of the rallies were entered within {seconds} s of the one \
        before.")
}

fn shown_by(all: &[(SeenBy, usize)]) -> String {
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

fn unsaid(unsaid: usize, of: usize) -> String {
    format!("{unsaid} of {of} rallies have no reason.")
}

fn calls(times: usize) -> String {
    format!("{times} ×")
}

fn set(number: u8) -> String {
    format!("Set {number}")
}

fn time_out(team: &str, set: u8, score: Score, run: u16) -> String {
    let before = match run {
        0 => "after a point of their own".to_owned(),
        1 => "after one point of the other team".to_owned(),
        n => format!("after {n} points of the other team in a row"),
    };
    format!("{team}, set {set} at {}, {before}", score.marked())
}

fn taken_back(entry: u32, words: &str, after: Option<i64>, why: Option<&str>) -> String {
    let after = after.map(|s| format!(", after {s} s")).unwrap_or_default();
    let why = why.map(|w| format!(": {w}")).unwrap_or_default();
    format!("Entry {entry}, {words}{after}{why}")
}

fn question(question: &Question, rules: &Rules) -> String {
    match question {
        Question::TakenBack { times: n } => format!(
            "You undid an entry {}. What did you see first, and what changed your mind?",
            times(*n)
        ),
        Question::Insisted { times: n } => format!(
            "You decided against the advice of the rules {}. Would you decide the same again, and how \
             would you explain it to a captain?",
            times(*n)
        ),
        Question::Sanctioned { times: n } => format!(
            "You gave a sanction {}. What came before it? Was there a moment when a word would have been \
             enough?",
            times(*n)
        ),
        Question::StoodStill { seconds, set, score: s } => format!(
            "Before {} in set {set} play stood for {} min {:02} s, and the record does not say why. What \
             held you up, and who could have helped?",
            s.marked(),
            seconds / 60,
            seconds % 60
        ),
        Question::Often { cause, times: n } => format!(
            "You called \"{}\" {}. Did you judge the first and the last one in the same way?",
            crate::cause(*cause, rules),
            times(*n)
        ),
        Question::Unsaid { times: n, of } => format!(
            "{n} of {of} rallies have no reason. Which of them could you still explain, and to whom?"
        ),
        Question::Closest { set, score: s } => format!(
            "Set {set} ended {}. Where did you look at the end, and what did you do to stay calm?",
            s.marked()
        ),
        Question::Looked => {
            "After a rally, whom do you look at first, and whom last? Would a different order help?".to_owned()
        }
        Question::Well => {
            "What went well, what will you do the same way next time, and have you told your duty team?"
                .to_owned()
        }
    }
}

/// How often.
fn times(n: usize) -> String {
    match n {
        0 => "not once".to_owned(),
        1 => "once".to_owned(),
        2 => "twice".to_owned(),
        n => format!("{n} times"),
    }
}

fn lead(set: u8, score: Score, led: [(&str, u16); 2], changes: usize) -> String {
    let [a, b] = led.map(|(name, most)| match most {
        0 => format!("{name} never led"),
        n => format!("{name} led by {n} at most"),
    });
    let changes = match changes {
        0 => "never changed hands".to_owned(),
        n => format!("changed hands {}", times(n)),
    };
    format!(
        "Set {set}, {}. {a}, {b}. The lead {changes}.",
        score.marked()
    )
}

fn rotations(name: &str, set: u8, points: &[(u16, u16)]) -> String {
    let each = (1..).zip(points);
    let each: Vec<String> = each
        .map(|(rotation, (won, lost))| format!(" rotation {rotation}: {won} won, {lost} lost"))
        .collect();
    format!("{name} in set {set}:{}.", each.join(";"))
}

fn pauses(spans: &[(String, u32)]) -> String {
    let spans: Vec<String> = spans
        .iter()
        .map(|(span, count)| format!(" {span}: {count}"))
        .collect();
    format!("Seconds from one rally to the next:{}.", spans.join(";"))
}

fn when_called(sets: &[(u8, usize)], shown: usize) -> String {
    let sets: Vec<String> = sets
        .iter()
        .map(|(set, calls)| format!("set {set}: {calls}"))
        .collect();
    match shown {
        0 => format!("{}.", sets.join(", ")),
        n => format!(
            "{}. Shown by another official {}.",
            sets.join(", "),
            times(n)
        ),
    }
}

fn after_time_out(points: usize, own: usize) -> String {
    format!("Of the next {points} points the team that took it won {own}.")
}
