//! What an entry would change, in words.

use crate::consequence::*;
use crate::{by_places, team_name, ScoreOrder};
use game::{Effect, State};

/// In English.
pub static WORDS: ConsequenceWords = ConsequenceWords {
    what_follows: "What follows",
    late_replacement_follows,
    nothing_changes: "Score, sets and service stay as they are",
    effect,
    no_longer_counts,
    more_no_longer_count,
};

fn late_replacement_follows(team: &str) -> Vec<String> {
    vec![
        "It is allowed this time. Tell the game captain".into(),
        format!("Each further one by {team} is a delay"),
    ]
}

fn effect(effect: &Effect, state: &State, order: ScoreOrder) -> String {
    match effect {
        Effect::MatchOver => format!("The match is over. {}", crate::match_over(state)),
        Effect::SetOver => crate::set_over(state),
        Effect::Interrupted => "Play is interrupted".into(),
        Effect::SetContinues { set } => format!("Set {set} continues"),
        Effect::SetAhead { set } => format!("Set {set} has yet to begin"),
        Effect::SetsWon { before, after } => {
            format!("Sets {} become {}", order.write(before), order.write(after))
        }
        Effect::SetScore { set, score } => format!("Set {set} is {}", order.write(score)),
        Effect::Score { before, after } => {
            format!(
                "Score {} becomes {}",
                order.write(before),
                order.write(after)
            )
        }
        Effect::PointsCancelled { team, points: 1 } => {
            format!("1 point of {} is cancelled", team_name(state, *team))
        }
        Effect::PointsCancelled { team, points } => {
            format!(
                "{points} points of {} are cancelled",
                team_name(state, *team)
            )
        }
        Effect::Serves { team, server } => {
            let number = server.map_or_else(String::new, |number| format!(", number {number}"));
            format!("{} serve{number}", team_name(state, *team))
        }
        Effect::Places { team, on_court } => {
            let last = state.rules().players_on_court;
            let places = by_places(on_court);
            format!("{}, places 1 to {last}: {places}", team_name(state, *team))
        }
        Effect::Target { set, points } => format!("Set {set} is played to {points} points"),
    }
}

fn no_longer_counts(number: u32, words: &str) -> String {
    format!("Entry {number}, {words}, will no longer count")
}

fn more_no_longer_count(count: usize) -> String {
    match count {
        1 => "1 more entry will no longer count".into(),
        count => format!("{count} more entries will no longer count"),
    }
}
