//! The words of the plan: its steps, what to look at in each, and what is said when one is not in order.

use game::Standing;
use rules::{Rules, Step};

words! { PlanWords in setup::plan;
    /// Before the one obvious next step, with how it stands.
    next(standing_now: Standing) -> String;
    /// Opens the next step.
    open_step -> &'static str;
    /// To the page of the book about a step.
    read_on -> &'static str;
    /// A step by name.
    step(step: Step) -> &'static str;
    /// Who serves first, where nobody tossed.
    first_service -> &'static str;
    /// The toss.
    toss -> &'static str;
    /// The line-ups.
    line_ups -> &'static str;
    /// The last check.
    last_check -> &'static str;
    /// What to look at in a step. The measures are those of the FIVB Official Volleyball Rules 2025-2028
    /// (rule numbers beside them); the rest is common practice, no source.
    look_at(step: Step, rules: &Rules) -> Vec<String>;
    /// How a step stands, in a word.
    standing(standing: Standing) -> &'static str;
    /// The scheduled start, and how far it is away; `day` where it is not today's.
    start_at(time: &str, day: Option<&str>, minutes_left: i64) -> String;
    /// From a finished step to the next.
    go_on_to(next: Step) -> String;
    /// Name of the tick.
    tick(of: Step) -> String;
    /// Where a safety check failed.
    do_not_start -> &'static str;
    /// Where another check failed.
    not_done -> &'static str;
    /// To somebody young, who stands there with a floor that is wet.
    not_yours_alone -> &'static str;
    /// Label of the person who clears it.
    who_clears_it -> &'static str;
    /// Label of the note that clears.
    what_was_done -> &'static str;
    /// Label of the note of a failed check.
    what_is_wrong -> &'static str;
    /// Opens the way to say so.
    problem -> &'static str;
    /// Records a failed check.
    record_problem -> &'static str;
    /// Records that it is in order now.
    cleared_label -> &'static str;
    /// What was written when a check was found in order.
    cleared_by(note: &str) -> String;
    /// The note of a check that is cleared.
    cleared(who: &str, what: &str) -> String;
    /// Records how a step was found; with what was measured, where something was.
    found(ok: bool, measured: &str) -> String;
    /// Who may clear a check.
    clearers -> [&'static str; 3];
    /// How many steps are late and how many are due now: one line at all times, and the list below names them.
    due_and_late(late: usize, due: usize) -> String;
    /// Without a start no step has a time.
    no_start -> &'static str;
    /// Which checks failed.
    not_in_order(items: &[String]) -> String;
    /// Before the rules in short.
    we_play -> &'static str;
}
