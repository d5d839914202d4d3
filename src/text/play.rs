//! The words of the court screen.

use game::entry::{Change, ReplayWhy, Timer, Who};
use game::{Kind, Notice, Refusal, Speaker, State};
use rules::{Cause, Group, Rules, Shirt, Team};

/// A used count, with its limit.
#[must_use]
pub fn used((used, most): (u8, Option<u8>)) -> String {
    match most {
        Some(most) => format!("{used}/{most}"),
        None => used.to_string(),
    }
}

words! { PlayWords in play;
    /// The court, and what lies below it.
    court -> &'static str;
    /// The turn of the court.
    stand -> &'static str;
    /// The turn of the court.
    table -> &'static str;
    /// The list of further things.
    menu -> &'static str;
    /// Makes an entry not count.
    undo -> &'static str;
    /// Nothing to undo.
    no_entry -> &'static str;
    /// In its place where the last entry closed or reopened the record.
    undo_in_the_log -> &'static str;
    /// A time-out.
    time_out -> &'static str;
    /// A substitution.
    substitution -> &'static str;
    /// The same where there is no room.
    sub -> &'static str;
    /// Anything else.
    more -> &'static str;
    /// A rally that does not count.
    replay -> &'static str;
    /// The heading of the court screen.
    play_title(state: &State) -> String;
    /// The name of a half for those who do not see it.
    point_pad(state: &State, team: Team, left: bool) -> String;
    /// What a half shows, for those who do not see it.
    half_said(score: u16, sets: u8, serves: Option<Option<Shirt>>, speaker: Option<Speaker>) -> String;
    /// Why a rally ended.
    cause(cause: Cause, rules: &Rules) -> String;
    /// The question that decides which signal shows a fault of the libero.
    libero_which -> &'static str;
    /// One answer to it, with the number of its signal.
    libero_did(cause: Cause) -> String;
    /// A group of reasons.
    group(group: Group) -> &'static str;
    /// Something due, in one short line.
    notice(notice: &Notice, state: &State) -> String;
    /// Beside the ball and the server's number.
    serves -> &'static str;
    /// Who serves, on the line above the court while nothing is due.
    serving_line(state: &State) -> String;
    /// After a point, for those who do not see it.
    score_news(state: &State) -> String;
    /// A team's button for those who do not see where it is.
    tool_label(what: &str, name: &str, count: (u8, Option<u8>)) -> String;
    /// What a count-down is for.
    timer(timer: &Timer, state: &State) -> String;
    /// Ends a count-down early, or puts it away.
    end_count_down -> &'static str;
    /// In the deciding set.
    change_courts -> &'static str;
    /// It was done.
    courts_changed -> &'static str;
    /// After the change.
    changed_courts(state: &State, on_left: Team) -> String;
    /// The reasons of a point.
    why_point(name: &str) -> String;
    /// The groups of reasons.
    groups -> &'static str;
    /// A reason that cannot be.
    cause_does_not_fit(server_lost: bool) -> &'static str;
    /// The card.
    signal_label -> &'static str;
    /// Opens the reasons again.
    other_reason -> &'static str;
    /// To the page on which such a decision can be tried.
    how_to_decide -> &'static str;
    /// The panel.
    replay_title -> &'static str;
    /// Why a team has no time-out now, in the place of the word.
    no_time_out(why: &Refusal) -> &'static str;
    /// What the rules name instead of what was asked for.
    right_act(act: &Kind) -> &'static str;
    /// A tap on the court while something is open below it.
    close_first -> &'static str;
    /// The same while a player is asked for.
    tap_a_player -> &'static str;
    /// A second tap was held back.
    held_news -> &'static str;
    /// Points that came sooner than a rally can be played.
    held_question(name: &str, more: usize, instead: bool) -> String;
    /// They are.
    held_yes(more: usize) -> String;
    /// They are not.
    held_no(name: &str, more: usize) -> String;
    /// The second tap was to put the first one right.
    held_only(name: &str) -> String;
    /// The line of the menu.
    quick_taps(at_once: bool) -> &'static str;
    /// Which one is meant.
    replay_which -> &'static str;
    /// The last one, which was entered as a point.
    replay_last(score: &str) -> String;
    /// One that nobody has a point for yet.
    replay_new -> &'static str;
    /// Why it does not count.
    replay_why_label -> &'static str;
    /// The score as it stands on the screen, the left half first.
    score_from(state: &State, left: Team) -> String;
    /// What it does.
    replay_more -> &'static str;
    /// One reason for a replay.
    replay_button(why: ReplayWhy) -> String;
    /// The panel.
    substitution_title(name: &str) -> String;
    /// Enters the request.
    record_substitutions(count: usize) -> String;
    /// The legend.
    substitution_reason -> &'static str;
    /// The legend.
    who_goes -> &'static str;
    /// The same where a change stands in the request already.
    who_else_goes -> &'static str;
    /// A set was begun without them, so nobody is followed.
    no_line_up -> &'static str;
    /// A number that goes.
    goes_out(number: Shirt) -> String;
    /// A number that comes.
    comes_in(number: Shirt) -> String;
    /// The legend.
    who_comes(out: Option<Shirt>) -> String;
    /// Takes one change out of the request.
    drop_change(change: &Change) -> String;
    /// The same on its button.
    dropped(change: &Change) -> String;
    /// While play is interrupted.
    stopped -> &'static str;
    /// It goes on.
    resume_same -> &'static str;
    /// It goes on elsewhere.
    resume_other -> &'static str;
    /// Interrupts it.
    suspend -> &'static str;
    /// Before the first point of a tally.
    tally_begin -> &'static str;
    /// A choice.
    left_serves -> &'static str;
    /// A choice.
    right_serves -> &'static str;
    /// The column.
    set -> &'static str;
    /// The pause.
    interval -> &'static str;
    /// What comes next in the pause, with so many milliseconds left of it.
    interval_due(left_ms: i64) -> String;
    /// Starts it by hand.
    start_interval -> &'static str;
    /// The legend.
    or_with_service -> &'static str;
    /// The way on.
    to_sheet -> &'static str;
    /// The way on.
    to_review -> &'static str;
    /// The way out.
    export_match -> &'static str;
    /// Above the list.
    log_more -> &'static str;
    /// A request that cannot be granted.
    improper -> &'static str;
    /// The legend.
    libero -> &'static str;
    /// The field.
    remark_label -> &'static str;
    /// Enters it.
    note_it -> &'static str;
    /// The result of the last set.
    set_over(state: &State) -> String;
    /// The result of the match.
    match_over(state: &State) -> String;
    /// Where the teams go for the next set.
    sides_to_come(state: &State, on_left: Team) -> String;
    /// Begins a set.
    begin_set(number: u8) -> String;
    /// A choice.
    team_serves(name: &str) -> String;
    /// The switch.
    turn_label(turned: bool) -> &'static str;
    /// Before an older entry is undone.
    undo_question(n: u32, words: &str) -> String;
    /// The button of one line.
    undo_label(n: u32, words: &str) -> String;
    /// A person.
    who(who: &Who) -> String;
    /// The legend.
    level_for(person: &Who) -> String;
}
