//! The words of every difference between two records.

use reports::compare::{Comparison, Difference};
use rules::Score;

words! { ComparisonWords in comparison;
    /// Nothing differs.
    no_difference -> &'static str;
    /// What differs, in one sentence or two.
    difference(difference: &Difference, comparison: &Comparison) -> String;
    /// How far two records go together in the set in which they part, and how many points each has in all.
    parting(set: u8, together: usize, score: Score, points: [usize; 2]) -> String;
}
