//! Entries in words, for the last line of the court and the list of all entries.

use game::entry::{Change, Forced, Level, ReplayWhy};
use game::{Entry, Kind, Outcome, State};

words! { EntryWords in entry;
    /// An entry in a few words, a request or a delay as what it became; teams are named as in `state`.
    entry(entry: &Entry, state: &State) -> String;
    /// The same by the kind alone: what was entered, whatever became of it.
    entered(kind: &Kind, state: &State) -> String;
    /// What became of an entry, where that is not plain.
    outcome(outcome: &Outcome, state: &State) -> Option<String>;
    /// Who comes for whom.
    one_change(change: &Change) -> String;
    /// What stopped a rally.
    replay_why(why: ReplayWhy) -> &'static str;
    /// What forces a substitution.
    forced(reason: Option<Forced>) -> &'static str;
    /// The level of a sanction.
    level(level: Level) -> &'static str;
}
