//! The words of a practice match: what is told, and what the comparison is.

use app::practice::Told;
use game::State;
use reports::compare::{Comparison, Difference};

words! { PracticeWords in learn::practice;
    /// Title of the page.
    practice -> &'static str;
    /// What is on it.
    practice_more -> &'static str;
    /// How it goes.
    practice_how -> [&'static str; 4];
    /// Where its record goes.
    practice_marked -> &'static str;
    /// Begins one.
    practice_begin -> &'static str;
    /// The phone did not keep it.
    practice_not_kept -> &'static str;
    /// Goes on.
    practice_next -> &'static str;
    /// Back to what was told before.
    practice_before -> &'static str;
    /// The set is over.
    practice_over -> &'static str;
    /// To the comparison.
    practice_compare -> &'static str;
    /// A list of matches says it.
    practice_mark -> &'static str;
    /// Nothing differs.
    practice_same -> &'static str;
    /// The match is not here.
    practice_gone -> &'static str;
    /// The program has changed since it was begun.
    practice_changed -> &'static str;
    /// Back to the court.
    practice_back -> &'static str;
    /// How far it is.
    practice_step(step: usize, of: usize) -> String;
    /// So many things differ.
    practice_differs(count: usize) -> String;
    /// One of them; what happened is the first record of the comparison.
    practice_difference(difference: &Difference, comparison: &Comparison) -> String;
    /// What happens, without who wins it.
    practice_told(told: &Told, state: &State) -> String;
}
