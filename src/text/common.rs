//! The words of the whole program: its screens by name, and how a match stands in a line.

use app::language::Language;
use app::summary::Summary;
use app::theme::Theme;
use game::{Refusal, State};
use rules::Team;

words! { CommonWords in common;
    /// The way back.
    back -> &'static str;
    /// Closes a sheet of choices.
    close -> &'static str;
    /// Leaves everything as it is.
    leave_it -> &'static str;
    /// A sentence has been read.
    understood -> &'static str;
    /// While a match is read.
    opening -> &'static str;
    /// While a part of the program is loaded.
    loading -> &'static str;
    /// A part of the program did not come.
    part_not_loaded -> &'static str;
    /// Loads it once more.
    try_again -> &'static str;
    /// A match that is not in storage.
    not_here -> &'static str;
    /// What may have happened to it.
    not_here_more -> &'static str;
    /// To the start screen.
    to_start -> &'static str;
    /// What the app is for, and for whom.
    lead -> &'static str;
    /// Title of a screen.
    new_match -> &'static str;
    /// The way to it.
    referee_a_match -> &'static str;
    /// What it is for.
    new_match_more -> &'static str;
    /// The quick way.
    quick_tally -> &'static str;
    /// What it is for.
    quick_tally_more -> &'static str;
    /// Goes on with the running match.
    continue_match -> &'static str;
    /// To the coordinator's desk.
    desk -> &'static str;
    /// To what there is to learn, and the title of its first page.
    learn -> &'static str;
    /// What it is.
    learn_more -> &'static str;
    /// What the signals are.
    signals_are -> &'static str;
    /// Heading.
    sheets -> &'static str;
    /// While they are read.
    reading -> &'static str;
    /// There are none.
    no_sheets -> &'static str;
    /// Opens one.
    open -> &'static str;
    /// Makes a file of one.
    export -> &'static str;
    /// Removes one.
    delete -> &'static str;
    /// Heading.
    import -> &'static str;
    /// The field.
    import_choose -> &'static str;
    /// To the screen that takes a record in by camera, and its title.
    receive -> &'static str;
    /// Title of a screen.
    hand_over -> &'static str;
    /// What came by camera and has no file name.
    the_record -> &'static str;
    /// Heading.
    this_phone -> &'static str;
    /// Legend.
    language_label -> &'static str;
    /// The language of the phone.
    same_as_the_phone -> &'static str;
    /// A language that did not come.
    language_missing(language: Language) -> String;
    /// Legend.
    theme_label -> &'static str;
    /// Title of a screen.
    before -> &'static str;
    /// Title of a screen.
    log -> &'static str;
    /// From its latest entries to all of them.
    whole_log -> &'static str;
    /// Title of a screen.
    sheet -> &'static str;
    /// A refused entry.
    refused_title -> &'static str;
    /// The way past the advice.
    insist -> &'static str;
    /// Its reason.
    insist_why -> &'static str;
    /// The reason is missing.
    insist_needs_why -> &'static str;
    /// A count-down has ended.
    time_over -> &'static str;
    /// The name of a team, or "Team A".
    team_name(state: &State, team: Team) -> String;
    /// Both teams.
    teams(state: &State) -> String;
    /// The same of a match in a list.
    listed_teams(summary: &Summary) -> String;
    /// Where a match stands, on one line.
    standing(state: &State) -> String;
    /// The same of a match in a list.
    listed_standing(summary: &Summary) -> String;
    /// Light or dark.
    theme(theme: Theme) -> &'static str;
    /// The rule of a refusal.
    rule_of(refusal: &Refusal) -> String;
}
