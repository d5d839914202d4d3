//! The questions that the rules leave to the first referee, and their choices, in words, in Spanish.

use crate::question::*;
use crate::Teams;
use game::{Question, QuestionKind};
use rules::Team;

/// In Spanish.
pub static WORDS: QuestionWords = QuestionWords { question };

fn question(question: &Question, teams: Teams) -> (String, Vec<String>) {
    match question.ask {
        QuestionKind::WhoOpens { due } => (
            format!(
                "Los dos equipos recibieron un castigo entre los sets: 1-1, los dos han rotado. \
                 Las reglas no dicen quién saca. Le tocaba sacar a {}. ¿Quién saca?",
                teams.name(due)
            ),
            vec![teams.name(Team::A), teams.name(Team::B)],
        ),
        QuestionKind::UnregisteredInside { team, set } => (
            format!(
                "Un jugador de {} que no está en la lista entró durante el set {set}. Las reglas \
                 no dicen qué pasa con ese set. ¿Se pierde?",
                teams.name(team)
            ),
            choices(question.ask, |code| unregistered_choice(code, set)),
        ),
        QuestionKind::UnregisteredAfter { team, set, .. } => (
            format!(
                "Un jugador de {} que no está en la lista entró durante el set {set}. El partido \
                 ha acabado. Según las reglas, se pierden los puntos y sets ganados desde entonces. \
                 Según el libro de casos de 2024, se pierde el partido. El reglamento de la \
                 competición va primero. ¿Qué se pierde?",
                teams.name(team)
            ),
            choices(question.ask, |code| unregistered_choice(code, set)),
        ),
    }
}

fn choices(ask: QuestionKind, words: impl Fn(&str) -> String) -> Vec<String> {
    ask.choices().iter().map(|code| words(code)).collect()
}

fn unregistered_choice(code: &str, set: u8) -> String {
    match code {
        "lose_match" => "Se pierde el partido".to_owned(),
        "keep_set" => format!("El set {set} vale, los siguientes se pierden"),
        _ => format!("Se pierden el set {set} y los siguientes"),
    }
}
