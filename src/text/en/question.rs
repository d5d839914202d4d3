//! The questions that the rules leave to the first referee, and their choices, in words.

use crate::question::*;
use crate::Teams;
use game::{Question, QuestionKind};
use rules::Team;

/// In English.
pub static WORDS: QuestionWords = QuestionWords { question };

fn question(question: &Question, teams: Teams) -> (String, Vec<String>) {
    match question.ask {
        QuestionKind::WhoOpens { due } => (
            format!(
                "Both teams got a penalty between the sets: 1-1, both have rotated. The rules do not say \
                 who serves. {} were due to serve. Who serves?",
                teams.name(due)
            ),
            vec![teams.name(Team::A), teams.name(Team::B)],
        ),
        QuestionKind::UnregisteredInside { team, set } => (
            format!(
                "A player of {} who is not on the list came in during set {set}. The rules do not say \
                 what happens to that set. Is it lost?",
                teams.name(team)
            ),
            choices(question.ask, |code| unregistered_choice(code, set)),
        ),
        QuestionKind::UnregisteredAfter { team, set, .. } => (
            format!(
                "A player of {} who is not on the list came in during set {set}. The match is over. By \
                 the rules, the points and sets won since then are lost. By the casebook of 2024, the \
                 match is lost. The competition's own rules come first. What is lost?",
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
        "lose_match" => "The match is lost".to_owned(),
        "keep_set" => format!("Set {set} stands, later ones are lost"),
        _ => format!("Set {set} and later ones are lost"),
    }
}
