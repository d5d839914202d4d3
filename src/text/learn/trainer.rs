//! The words of the rally trainer.

use learn::{End, Kind, Level, Marked, Place, Verdict};

words! { TrainerWords in learn::trainer;
    /// Title of the page.
    trainer -> &'static str;
    /// What is on it.
    trainer_more -> &'static str;
    /// How it goes.
    trainer_how -> [&'static str; 3];
    /// How a shirt is read.
    shirts -> &'static str;
    /// Heads the table of kinds.
    rally -> &'static str;
    /// Heads how often all was right.
    right -> &'static str;
    /// Heads how near the other answer was.
    how_close -> &'static str;
    /// Begins a session.
    begin -> &'static str;
    /// Where the eye is.
    from_where -> &'static str;
    /// How the scenes are shown.
    in_which_form -> &'static str;
    /// As it happens.
    moving -> &'static str;
    /// One sentence after the other.
    in_steps -> &'static str;
    /// What the large area does.
    whistle -> &'static str;
    /// What it says before the scene runs.
    watch -> &'static str;
    /// What is drawn, for those who do not see it.
    picture -> &'static str;
    /// The same where it is told below.
    picture_told -> &'static str;
    /// The next sentence.
    next_step -> &'static str;
    /// The last sentence has been told, and nobody whistled.
    no_whistle -> &'static str;
    /// The second beat.
    who_serves -> &'static str;
    /// The third beat.
    why_label -> &'static str;
    /// Neither side wins the rally.
    play_again -> &'static str;
    /// The next scene.
    next_scene -> &'static str;
    /// The deciding moment once more.
    see_again -> &'static str;
    /// What was no fault.
    also -> &'static str;
    /// The second of two that are one decision.
    other_fault -> &'static str;
    /// What happened too late, or was not what counts.
    also_fault -> &'static str;
    /// Ends the session early.
    stop -> &'static str;
    /// Heading of the end.
    done -> &'static str;
    /// Heading of what to try next.
    try_next -> &'static str;
    /// Where nothing went wrong.
    nothing_to_try -> &'static str;
    /// Heading of the table.
    practised -> &'static str;
    /// Where it stays.
    practised_stays -> &'static str;
    /// Wipes it.
    forget -> &'static str;
    /// It is gone.
    forgotten -> &'static str;
    /// It could not be kept.
    not_kept -> &'static str;
    /// Wants the page about it.
    read_about -> &'static str;
    /// Another session.
    once_more -> &'static str;
    /// Title of the page for a class.
    lesson -> &'static str;
    /// The way to it.
    lesson_way -> &'static str;
    /// How it goes.
    lesson_how -> [&'static str; 3];
    /// Begins.
    lesson_begin -> &'static str;
    /// What it is about.
    lesson_about -> &'static str;
    /// All of it.
    everything -> &'static str;
    /// The question to the class.
    lesson_ask -> &'static str;
    /// Shows the answer.
    lesson_answer -> &'static str;
    /// Back to the choice.
    lesson_end -> &'static str;
    /// A vote: the left team is at fault, so the other one has the point.
    vote_left -> &'static str;
    /// The same the other way round.
    vote_right -> &'static str;
    /// A vote.
    vote_play_on -> &'static str;
    /// A vote.
    vote_replay -> &'static str;
    /// A place to look from.
    place(place: Place) -> &'static str;
    /// What a kind of scene is about.
    kind(kind: Kind) -> String;
    /// How hard it is.
    level(level: Level) -> &'static str;
    /// The team on whose side an arm is shown.
    arm_of(end: End) -> String;
    /// What became of the whistle.
    whistled(marked: &Marked) -> String;
    /// Whether the side was right.
    side_shown(right: bool) -> &'static str;
    /// Whether the reason was right.
    reason_said(right: bool) -> &'static str;
    /// What is decided, with the side that serves.
    decided(verdict: &Verdict) -> String;
    /// Whose turn to serve it is, over the picture.
    due(end: End, number: u8) -> String;
    /// How a session went: rallies, and those in which all was right.
    went(all: usize, right: usize) -> String;
    /// The middle time to the whistle.
    median(ms: u16) -> String;
    /// So often right of so often shown.
    right_of(right: u32, shown: u32) -> String;
    /// How long the session still goes on.
    left(seconds: u32) -> String;
}
