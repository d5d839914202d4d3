//! What an entry would change, in words.

use crate::ScoreOrder;
use game::{Kind, Timeline};

words! { ConsequenceWords in consequence;
    /// The heading.
    what_follows -> &'static str;
    /// What follows from an entry that leaves no line in the sanctions box, one line each.
    follows(kind: &Kind, before: &Timeline, after: &Timeline, order: ScoreOrder) -> Vec<String>;
    /// What is different after an entry, one line each; that nothing is, is said as well.
    changes(before: &Timeline, after: &Timeline, order: ScoreOrder) -> Vec<String>;
    /// What is different after an entry, one line each.
    differences(before: &Timeline, after: &Timeline, order: ScoreOrder) -> Vec<String>;
}
