//! The words of watching a referee: what is tapped, the notes afterwards, and what they say beside the match.

use app::machine::LocalTime;
use record::{NoteKind, Observation, Standing};
use reports::observed::{At, Beside, By};
use rules::{ByTeam, Team};

words! { ObserverWords in learn::observer;
    /// Title of the page.
    observer -> &'static str;
    /// What is on it.
    observer_more -> &'static str;
    /// How it goes.
    observer_how -> [&'static str; 4];
    /// Names for the teams.
    observer_teams -> &'static str;
    /// Begins.
    observer_begin -> &'static str;
    /// Notes that are here.
    observer_here -> &'static str;
    /// Back to tapping.
    observer_go_on -> &'static str;
    /// From tapping to the list.
    observer_stop -> &'static str;
    /// A set is over.
    next_set -> &'static str;
    /// The teams stand the other way round.
    swap_sides -> &'static str;
    /// Before the first tap.
    nothing_noted -> &'static str;
    /// There are no notes of this address.
    no_such_notes -> &'static str;
    /// The phone was full.
    notes_not_kept -> &'static str;
    /// There are too many.
    notes_full -> &'static str;
    /// The field of a note.
    note_words -> &'static str;
    /// Takes a note away.
    note_remove -> &'static str;
    /// Asked before.
    note_remove_ask -> &'static str;
    /// Heading of the hand-over.
    notes_hand_over -> &'static str;
    /// How.
    notes_hand_over_more -> &'static str;
    /// As a file.
    notes_file_label -> &'static str;
    /// Forgets them.
    notes_delete -> &'static str;
    /// Asked before.
    notes_delete_ask -> &'static str;
    /// Heading in the review.
    observed -> &'static str;
    /// Nothing came.
    observed_none -> &'static str;
    /// By camera.
    observed_scan -> &'static str;
    /// Other ones.
    observed_other -> &'static str;
    /// Shows them all the same.
    observed_anyway -> &'static str;
    /// To the notes themselves.
    observed_open -> &'static str;
    /// Where a note has no place.
    no_place -> &'static str;
    /// What a note is called, on its button too.
    note(kind: NoteKind) -> &'static str;
    /// What a team is called where the observer gave it no name.
    observed_team(names: &ByTeam<String>, team: Team) -> String;
    /// The label of a field for such a name.
    team_field(team: Team) -> &'static str;
    /// What a tap on a half does.
    wins_rally(name: &str, points: u16) -> String;
    /// The set that is watched.
    watched_set(set: u8) -> String;
    /// The last tap; `after` is how it stands with it.
    last_tap(seen: &Observation, after: Standing, names: &ByTeam<String>) -> String;
    /// Where a note stands.
    noted_at(standing: Standing, at: LocalTime) -> String;
    /// Notes in a list.
    notes_of(began: LocalTime, names: &ByTeam<String>, notes: usize) -> String;
    /// How many notes.
    note_count(notes: usize) -> String;
    /// The name of their file.
    notes_file(day: &str) -> String;
    /// How notes were laid beside a match.
    laid_by(beside: &Beside) -> String;
    /// The point of a note.
    laid_at(at: At, by: By) -> String;
}
