//! The words of the rally trainer.

use super::scenes::shirt;
use crate::learn::trainer::*;
use learn::{Call, Case, End, Kind, Level, Marked, Place, Timing, Verdict};
use rules::{Cause, Preset};

/// In English.
pub static WORDS: TrainerWords = TrainerWords {
    trainer: "Rally trainer",
    trainer_more: "Five minutes on the stand: whistle, show who serves, say why.",
    trainer_how: [
        "Watch the rally. Whistle as soon as you are sure of a fault.",
        "Then show which side serves next, and say why.",
        "Sometimes nothing is wrong. Then you do not whistle.",
    ],
    shirts: "A full shirt is the front row, a light one the back row. The libero is green.",
    rally: "Rally",
    right: "Correct",
    how_close: "How close",
    begin: "Start five minutes",
    from_where: "Where do you stand?",
    in_which_form: "How do you want to see it?",
    moving: "As it happens",
    in_steps: "Step by step, in words",
    whistle: "Whistle",
    watch: "Get ready",
    picture: "The rally as a drawing. Choose the steps in words to have it told.",
    picture_told: "The rally as a drawing. The sentences below it tell it.",
    next_step: "What happens next",
    no_whistle: "No whistle: play goes on",
    who_serves: "Who serves next?",
    why_label: "Why?",
    play_again: "Nobody: play it again",
    next_scene: "Next rally",
    see_again: "See it again",
    also: "Also seen, and no fault",
    other_fault: "The other fault",
    also_fault: "Also a fault, but it does not count here",
    stop: "Stop for today",
    done: "That is it for now",
    try_next: "Try these next",
    nothing_to_try: "All you saw last went well. The next rallies get closer.",
    practised: "What you have practised",
    practised_stays: "It stays on this phone, without a name. A backup takes it along.",
    forget: "Forget what I practised",
    forgotten: "Forgotten.",
    not_kept: "This phone could not keep what you practised.",
    read_about: "Read and try it",
    once_more: "Another five minutes",
    lesson: "Lesson",
    lesson_way: "For a class, on a large screen",
    lesson_how: [
        "Show a rally to the class. Everybody decides alone, without a word.",
        "Ask who is for what, and count the hands with taps.",
        "Then show the answer in slow motion, and talk about it.",
    ],
    lesson_begin: "Show the first rally",
    lesson_about: "What about?",
    everything: "Everything",
    lesson_ask: "What do you decide? One tap for each hand.",
    lesson_answer: "Show the answer",
    lesson_end: "End",
    vote_left: "Point for orange",
    vote_right: "Point for blue",
    vote_play_on: "Play on",
    vote_replay: "Play it again",
    place,
    kind,
    level,
    arm_of,
    whistled,
    side_shown,
    reason_said,
    decided,
    due,
    went,
    median,
    right_of,
    left,
};

fn place(place: Place) -> &'static str {
    match place {
        Place::Stand => "First referee, on the stand",
        Place::SecondReferee => "Second referee",
        Place::LineJudge => "Line judge, at a corner",
    }
}

fn kind(kind: Kind) -> String {
    let named = |cause: Cause| crate::cause(cause, &Preset::International.rules());
    match kind {
        Kind::Ends(cause) => named(cause),
        Kind::GoesOn(cause) => format!("{}: nearly", named(cause)),
        Kind::CaseEnds(of) => case(of).to_owned(),
        Kind::CaseGoesOn(of) => format!("{}: nearly", case(of)),
        Kind::DoubleFault => "Two faults at once".to_owned(),
        Kind::FirstOfTwo => "First of two faults".to_owned(),
        Kind::ServerBeforeReceivers => "Server and receivers at fault".to_owned(),
        Kind::ReceiversBeforeService => "Position fault and service out".to_owned(),
        Kind::BeforeTheWhistle => "Service before the whistle".to_owned(),
    }
}

fn case(case: Case) -> &'static str {
    match case {
        Case::ServiceBlock => "Block of the service",
        Case::Hindrance => "In the way under the net",
        Case::JuniorUnderNet => "Under the net by school rules",
    }
}

fn level(level: Level) -> &'static str {
    match level {
        Level::Clear => "Clear",
        Level::Close => "Close",
        Level::Tight => "Very close",
    }
}

fn arm_of(end: End) -> String {
    format!("The {} team", shirt(end))
}

fn whistled(marked: &Marked) -> String {
    let after = marked
        .reaction
        .map_or_else(String::new, |by| format!(", {by:.1} s after it happened"));
    match marked.timing {
        Timing::InTime => format!("Whistle: in time{after}."),
        Timing::Late => format!("Whistle: correct, but late{after}."),
        Timing::RightlyNone => "No whistle, and that is correct. Play goes on.".to_owned(),
        Timing::Early => "You whistled too early: the rally was still on.".to_owned(),
        Timing::Missed => "The rally was over, and you did not whistle.".to_owned(),
        Timing::Needless => "You whistled, but play should go on.".to_owned(),
    }
}

fn side_shown(right: bool) -> &'static str {
    if right {
        "Side to serve: correct."
    } else {
        "Side to serve: wrong."
    }
}

fn reason_said(right: bool) -> &'static str {
    if right {
        "Reason: correct."
    } else {
        "Reason: wrong."
    }
}

fn decided(verdict: &Verdict) -> String {
    match verdict.ruling.call {
        Call::PlayOn => "Play goes on".to_owned(),
        Call::Replay => "Play it again: nobody gets the point".to_owned(),
        Call::Fault { by, cause, .. } => {
            let cause = crate::cause(cause, &Preset::International.rules());
            format!("{cause}: {} serves", shirt(by.other()))
        }
    }
}

fn due(end: End, number: u8) -> String {
    format!("To serve: {} {number}", shirt(end))
}

fn went(all: usize, right: usize) -> String {
    let rallies = if all == 1 { "rally" } else { "rallies" };
    format!("{all} {rallies}, {right} with everything correct.")
}

fn median(ms: u16) -> String {
    format!(
        "Half of your whistles came within {:.1} s.",
        f64::from(ms) / 1000.0
    )
}

fn right_of(right: u32, shown: u32) -> String {
    format!("{right} of {shown}")
}

fn left(seconds: u32) -> String {
    format!("{}:{:02} left", seconds / 60, seconds % 60)
}
