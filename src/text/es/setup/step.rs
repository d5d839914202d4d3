//! The words that the steps before a match share, in Spanish.

use crate::setup::step::*;

/// In Spanish.
pub static WORDS: StepWords = StepWords {
    is_done: "hecho",
    fill_every_place: "Completa antes todas las posiciones. Después puedes confirmar la formación.",
    late_needs: "Elige antes el equipo y los minutos.",
    cleared_needs: "Di antes qué adulto lo ha revisado.",
    refusal,
    now_team,
};

fn refusal(say: &str, rule: &str) -> String {
    if rule.starts_with(|c: char| c.is_ascii_digit()) {
        format!("{say} (Regla {rule})")
    } else {
        say.to_owned()
    }
}

fn now_team(name: &str) -> String {
    format!("Ahora: {name}")
}
