//! What an entry would change, in words, in Spanish.

use crate::consequence::*;
use crate::{by_places, team_name, ScoreOrder};
use game::{Effect, State};

/// In Spanish.
pub static WORDS: ConsequenceWords = ConsequenceWords {
    what_follows: "Consecuencias",
    late_replacement_follows,
    nothing_changes: "Marcador, sets y saque quedan como están",
    effect,
    no_longer_counts,
    more_no_longer_count,
};

fn late_replacement_follows(team: &str) -> Vec<String> {
    vec![
        "Esta vez se permite. Díselo al capitán en juego".into(),
        format!("Cada reemplazo tardío más de {team} es una demora"),
    ]
}

fn effect(effect: &Effect, state: &State, order: ScoreOrder) -> String {
    match effect {
        Effect::MatchOver => format!("El partido ha acabado. {}", crate::match_over(state)),
        Effect::SetOver => crate::set_over(state),
        Effect::Interrupted => "El juego queda interrumpido".into(),
        Effect::SetContinues { set } => format!("El set {set} sigue"),
        Effect::SetAhead { set } => format!("El set {set} aún no ha empezado"),
        Effect::SetsWon { before, after } => format!(
            "Los sets pasan de {} a {}",
            order.write(before),
            order.write(after)
        ),
        Effect::SetScore { set, score } => format!("El set {set} queda {}", order.write(score)),
        Effect::Score { before, after } => format!(
            "El marcador pasa de {} a {}",
            order.write(before),
            order.write(after)
        ),
        Effect::PointsCancelled { team, points: 1 } => {
            format!("Se anula 1 punto de {}", team_name(state, *team))
        }
        Effect::PointsCancelled { team, points } => {
            format!("Se anulan {points} puntos de {}", team_name(state, *team))
        }
        Effect::Serves { team, server } => {
            let number = server.map_or_else(String::new, |number| format!(", el {number}"));
            format!("Saca {}{number}", team_name(state, *team))
        }
        Effect::Places { team, on_court } => {
            let last = state.rules().players_on_court;
            let places = by_places(on_court);
            format!(
                "{}, posiciones 1 a {last}: {places}",
                team_name(state, *team)
            )
        }
        Effect::Target { set, points } => format!("El set {set} se juega a {points} puntos"),
    }
}

fn no_longer_counts(number: u32, words: &str) -> String {
    format!("Ya no contará la anotación {number}, {words}")
}

fn more_no_longer_count(count: usize) -> String {
    match count {
        1 => "Otra anotación ya no contará".into(),
        count => format!("Otras {count} anotaciones ya no contarán"),
    }
}
