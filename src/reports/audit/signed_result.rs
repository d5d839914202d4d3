//! Signatures under a result that is no longer that of the match.

use game::{Entry, Kind, Phase, State, Timeline};
use rules::{Score, Team};

/// More signatures are not looked at: a match has eleven, and each needs a fold.
const MAX_SIGNATURES: usize = 50;

/// What a captain reads before he or she signs: every set with its winner, the score of the running one, and who
/// has won.
type Result = (Vec<(Score, Team)>, Score, Option<Team>);

fn result(state: &State) -> Result {
    let sets = state.sets().map(|set| (set.score, set.winner));
    (sets.collect(), state.score(), state.winner())
}

/// The entries that change more than notes, the first one first.
pub(super) fn changes(timeline: &Timeline) -> impl Iterator<Item = u32> + '_ {
    let is_note = |kind: &Kind| {
        matches!(
            kind,
            Kind::Remark { .. }
                | Kind::Protest { .. }
                | Kind::ProtestStatement { .. }
                | Kind::Timer(_)
                | Kind::Sign { .. }
                | Kind::Seal { .. }
                | Kind::Reopen { .. }
        )
    };
    let all = timeline
        .outcomes()
        .filter(move |(_, outcome)| outcome.counts());
    let changing = all.filter(move |(entry, _)| match &entry.kind {
        Kind::Strike { entry: target, .. } => {
            timeline.entry(*target).is_some_and(|e| !is_note(&e.kind))
        }
        kind => !is_note(kind),
    });
    changing.map(|(entry, _)| entry.n)
}

/// The signatures that were given since play began, with what the log said at that moment. A later strike leaves the
/// fold as if what it took back had never been, so the log is folded up to each of them.
fn as_signed(timeline: &Timeline, until: u32) -> impl Iterator<Item = (u32, Timeline)> + '_ {
    let entries = timeline.entries();
    let begins = |e: &Entry| matches!(e.kind, Kind::Rally { .. } | Kind::Default { .. });
    let first_rally = entries.iter().position(begins).unwrap_or(entries.len());
    let signatures = (first_rally..entries.len())
        .filter(move |&i| matches!(entries[i].kind, Kind::Sign { .. }) && entries[i].n < until);
    let signatures = signatures.take(MAX_SIGNATURES);
    signatures.map(move |i| (entries[i].n, Timeline::of(entries[..i].to_vec())))
}

/// The first signature under the result: given when the match was over.
pub(super) fn first_signed(timeline: &Timeline) -> Option<u32> {
    as_signed(timeline, u32::MAX)
        .find(|(_, then)| then.state().phase() == Phase::Finished)
        .map(|(n, _)| n)
}

/// The signatures that were given since play began, under another result than the record has now. Whoever gave
/// them has not seen this one (5.1.3 has the captains sign the result).
#[must_use]
pub fn outdated_signatures(timeline: &Timeline) -> Vec<u32> {
    let now = result(timeline.state());
    let last_change = changes(timeline).last().unwrap_or(0);
    as_signed(timeline, last_change)
        .filter(|(_, then)| result(then.state()) != now)
        .map(|(n, _)| n)
        .collect()
}
