//! The words of the rally trainer.

use crate::score_sheet::side;
use learn::{Call, End, Kind, Level, Marked, Place, Timing, Verdict};
use rules::{Cause, Preset};

/// Title of the page.
pub const TRAINER: &str = "Rally trainer";
/// What is on it.
pub const TRAINER_MORE: &str = "Five minutes on the stand: whistle, show who serves, say why.";
/// How it goes.
pub const TRAINER_HOW: [&str; 3] = [
    "Watch the rally. Whistle as soon as you are sure of a fault.",
    "Then show which side serves next, and say why.",
    "Sometimes nothing is wrong. Then you do not whistle.",
];
/// How a shirt is read.
pub const SHIRTS: &str =
    "A full shirt is the front row, a light one the back row. The libero is green.";
/// Heads the table of kinds.
pub const RALLY: &str = "Rally";
/// Heads how often all was right.
pub const RIGHT: &str = "Right";
/// Heads how near the other answer was.
pub const HOW_CLOSE: &str = "How close";
/// Begins a session.
pub const BEGIN: &str = "Start five minutes";
/// Where the eye is.
pub const FROM_WHERE: &str = "Where do you stand?";
/// How the scenes are shown.
pub const IN_WHICH_FORM: &str = "How do you want to see it?";
/// As it happens.
pub const MOVING: &str = "As it happens";
/// One sentence after the other.
pub const IN_STEPS: &str = "Step by step, in words";
/// What the large area does.
pub const WHISTLE: &str = "Whistle";
/// What it says before the scene runs.
pub const WATCH: &str = "Get ready";
/// What is drawn, for those who do not see it.
pub const PICTURE: &str = "The rally as a drawing. Choose the steps in words to have it told.";
/// The next sentence.
pub const NEXT_STEP: &str = "What happens next";
/// The last sentence has been told, and nobody whistled.
pub const NO_WHISTLE: &str = "No whistle: play goes on";
/// The second beat.
pub const WHO_SERVES: &str = "Who serves next?";
/// The third beat.
pub const WHY: &str = "Why?";
/// Neither side wins the rally.
pub const PLAY_AGAIN: &str = "Nobody: play it again";
/// The next scene.
pub const NEXT_SCENE: &str = "Next rally";
/// The deciding moment once more.
pub const SEE_AGAIN: &str = "See it again";
/// What was no fault.
pub const ALSO: &str = "Also seen, and no fault";
/// What happened too late, or was not what counts.
pub const ALSO_FAULT: &str = "Also a fault, but it does not count here";
/// Ends the session early.
pub const STOP: &str = "Stop for today";
/// Heading of the end.
pub const DONE: &str = "That is it for now";
/// Heading of what to try next.
pub const TRY_NEXT: &str = "Try these next";
/// Where nothing went wrong.
pub const NOTHING_TO_TRY: &str = "All you saw last went well. The next rallies get closer.";
/// Heading of the table.
pub const PRACTISED: &str = "What you have practised";
/// Where it stays.
pub const PRACTISED_STAYS: &str =
    "It stays on this phone, without a name. A backup takes it along.";
/// Wipes it.
pub const FORGET: &str = "Forget what I practised";
/// It is gone.
pub const FORGOTTEN: &str = "Forgotten.";
/// It could not be kept.
pub const NOT_KEPT: &str = "This phone could not keep what you practised.";
/// Wants the page about it.
pub const READ_ABOUT: &str = "Read and try it";
/// Another session.
pub const ONCE_MORE: &str = "Another five minutes";

/// Title of the page for a class.
pub const LESSON: &str = "Lesson";
/// The way to it.
pub const LESSON_WAY: &str = "For a class, on a large screen";
/// How it goes.
pub const LESSON_HOW: [&str; 3] = [
    "Show a rally to the class. Everybody decides alone, without a word.",
    "Ask who is for what, and count the hands with taps.",
    "Then show the answer in slow motion, and talk about it.",
];
/// Begins.
pub const LESSON_BEGIN: &str = "Show the first rally";
/// What it is about.
pub const LESSON_ABOUT: &str = "What about?";
/// All of it.
pub const EVERYTHING: &str = "Everything";
/// The question to the class.
pub const LESSON_ASK: &str = "What do you decide? One tap for each hand.";
/// Shows the answer.
pub const LESSON_ANSWER: &str = "Show the answer";
/// Back to the choice.
pub const LESSON_END: &str = "End";
/// A vote.
pub const VOTE_LEFT: &str = "Fault of the left team";
/// A vote.
pub const VOTE_RIGHT: &str = "Fault of the right team";
/// A vote.
pub const VOTE_PLAY_ON: &str = "Play on";
/// A vote.
pub const VOTE_REPLAY: &str = "Play it again";

/// A place to look from.
#[must_use]
pub const fn place(place: Place) -> &'static str {
    match place {
        Place::Stand => "First referee, on the stand",
        Place::SecondReferee => "Second referee",
        Place::LineJudge => "Line judge, at a corner",
    }
}

/// What a kind of scene is about.
#[must_use]
pub fn kind(kind: Kind) -> String {
    let named = |cause: Cause| crate::cause(cause, &Preset::International.rules());
    match kind {
        Kind::Ends(cause) => named(cause),
        Kind::GoesOn(cause) => format!("{}: nearly", named(cause)),
        Kind::DoubleFault => "Two faults at once".to_owned(),
        Kind::FirstOfTwo => "First of two faults".to_owned(),
        Kind::ServerBeforeReceivers => "Server and receivers at fault".to_owned(),
        Kind::ReceiversBeforeService => "Position fault and service out".to_owned(),
        Kind::BeforeTheWhistle => "Service before the whistle".to_owned(),
    }
}

/// How hard it is.
#[must_use]
pub const fn level(level: Level) -> &'static str {
    match level {
        Level::Clear => "clear",
        Level::Close => "close",
        Level::Tight => "very close",
    }
}

/// The side of an arm, as the learner shows it.
#[must_use]
pub fn arm_of(end: End) -> String {
    format!("The {} side", side(end == End::Left))
}

/// What became of the whistle.
#[must_use]
pub fn whistled(marked: &Marked) -> String {
    let after = marked
        .reaction
        .map_or_else(String::new, |by| format!(", {by:.1} s after the fault"));
    match marked.timing {
        Timing::InTime => format!("Whistle: in time{after}."),
        Timing::Late => format!("Whistle: right, but late{after}."),
        Timing::RightlyNone => "No whistle, and that is right. Play goes on.".to_owned(),
        Timing::Early => "You whistled before there was a fault.".to_owned(),
        Timing::Missed => "There was a fault, and you did not whistle.".to_owned(),
        Timing::Needless => "You whistled, but there was no fault.".to_owned(),
    }
}

/// Whether the side was right.
#[must_use]
pub const fn side_shown(right: bool) -> &'static str {
    if right {
        "Side to serve: right."
    } else {
        "Side to serve: wrong."
    }
}

/// Whether the reason was right.
#[must_use]
pub const fn reason_said(right: bool) -> &'static str {
    if right {
        "Reason: right."
    } else {
        "Reason: wrong."
    }
}

/// What is decided, with the side that serves.
#[must_use]
pub fn decided(verdict: &Verdict) -> String {
    match verdict.ruling.call {
        Call::PlayOn => "Play goes on".to_owned(),
        Call::Replay => "Play it again: nobody gets the point".to_owned(),
        Call::Fault { by, cause, .. } => {
            let cause = crate::cause(cause, &Preset::International.rules());
            format!("{cause}: the {} side serves", side(by.other() == End::Left))
        }
    }
}

/// Whose turn to serve it is, over the picture.
#[must_use]
pub fn due(end: End, number: u8) -> String {
    format!("To serve: {} {number}", side(end == End::Left))
}

/// How a session went: rallies, and those in which all was right.
#[must_use]
pub fn went(all: usize, right: usize) -> String {
    let rallies = if all == 1 { "rally" } else { "rallies" };
    format!("{all} {rallies}, {right} with everything right.")
}

/// The middle time to the whistle.
#[must_use]
pub fn median(ms: u16) -> String {
    format!(
        "Half of your whistles came within {:.1} s of the fault.",
        f64::from(ms) / 1000.0
    )
}

/// So often right of so often shown.
#[must_use]
pub fn right_of(right: u32, shown: u32) -> String {
    format!("{right} of {shown}")
}

/// How long the session still goes on.
#[must_use]
pub fn left(seconds: u32) -> String {
    format!("{}:{:02} left", seconds / 60, seconds % 60)
}
