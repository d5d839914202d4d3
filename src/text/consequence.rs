//! What an entry would change, in words.

use crate::{team_name, ScoreOrder};
use game::{effects, no_longer_count, Effect, Kind, State, Timeline};

words! { ConsequenceWords in consequence;
    /// The heading.
    what_follows -> &'static str;
    /// What follows from a replacement of the libero after the whistle that is let pass (19.3.2.5, 19.3.2.6).
    late_replacement_follows(team: &str) -> Vec<String>;
    /// Nothing is different.
    nothing_changes -> &'static str;
    /// One thing that is different; the state is the one after the entry.
    effect(effect: &Effect, state: &State, order: ScoreOrder) -> String;
    /// An entry, with its number and in words, no longer counts.
    no_longer_counts(number: u32, words: &str) -> String;
    /// So many more entries no longer count, at least one.
    more_no_longer_count(count: usize) -> String;
}

/// So many entries that would no longer count are named one by one.
const NAMED: usize = 4;

/// What follows from an entry that leaves no line in the sanctions box, one line each.
#[must_use]
pub fn follows(kind: &Kind, before: &Timeline, after: &Timeline, order: ScoreOrder) -> Vec<String> {
    match kind {
        Kind::LateReplacement { team } => {
            late_replacement_follows(&team_name(after.state(), *team))
        }
        _ => changes(before, after, order),
    }
}

/// What is different after an entry, one line each; that nothing is, is said as well.
#[must_use]
pub fn changes(before: &Timeline, after: &Timeline, order: ScoreOrder) -> Vec<String> {
    let mut lines = differences(before, after, order);
    if lines.is_empty() {
        lines.push(nothing_changes().into());
    }
    lines
}

/// What is different after an entry, one line each.
pub(crate) fn differences(before: &Timeline, after: &Timeline, order: ScoreOrder) -> Vec<String> {
    let state = before.state();
    let say = |it: &Effect| effect(it, after.state(), order);
    let mut lines: Vec<String> = effects(before, after).iter().map(say).collect();
    let lost = no_longer_count(before, after);
    let named = lost.iter().take(NAMED);
    lines.extend(named.map(|lost| no_longer_counts(lost.n, &crate::entry(lost, state))));
    let more = lost.len().saturating_sub(NAMED);
    if more > 0 {
        lines.push(more_no_longer_count(more));
    }
    lines
}
