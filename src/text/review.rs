//! The words of the review.

use game::entry::SeenBy;
use reports::review::Question;
use rules::{Rules, Score};

words! { ReviewWords in review;
    /// Title of the screen.
    review -> &'static str;

    nothing_played -> &'static str;

    card -> &'static str;

    card_more -> &'static str;

    lead_heading -> &'static str;

    lead_more -> &'static str;

    so_far -> &'static str;

    to_match -> &'static str;

    called -> &'static str;

    called_more -> &'static str;

    nothing_called -> &'static str;

    pauses_heading -> &'static str;

    no_times -> &'static str;

    rotations_heading -> &'static str;

    rotations_more -> &'static str;

    time_outs -> &'static str;

    time_outs_more -> &'static str;

    no_time_outs -> &'static str;

    taken_back_heading -> &'static str;

    nothing_taken_back -> &'static str;

    usual_pause(seconds: i64) -> String;
    /// How many reasons were shown by whom.
    shown_by(all: &[(SeenBy, usize)]) -> String;

    unsaid(unsaid: usize, of: usize) -> String;

    calls(times: usize) -> String;

    set(number: u8) -> String;

    time_out(team: &str, set: u8, score: Score, run: u16) -> String;

    taken_back(entry: u32, words: &str, after: Option<i64>, why: Option<&str>) -> String;
    /// A question for the talk afterwards.
    question(question: &Question, rules: &Rules) -> String;
    /// How the lead went in a set: by how much each team led at most, and how often the lead changed hands.
    lead(set: u8, score: Score, led: [(&str, u16); 2], changes: usize) -> String;
    /// Points won and lost in each rotation of a team.
    rotations(name: &str, set: u8, points: &[(u16, u16)]) -> String;
    /// How often so many seconds passed from one rally to the next.
    pauses(spans: &[(String, u32)]) -> String;
    /// How often something was called in each set, and how often another official had shown it.
    when_called(sets: &[(u8, usize)], shown: usize) -> String;
    /// What followed a time-out.
    after_time_out(points: usize, own: usize) -> String;
}
