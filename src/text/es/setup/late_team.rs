//! The words about a team that is not there, in Spanish.

use crate::setup::late_team::*;

/// In Spanish.
pub static WORDS: LateTeamWords = LateTeamWords {
    late_team: "Falta un equipo",
    late_rule: "Un equipo que no está en el campo a tiempo, sin una buena razón, es un equipo no \
         presentado (Regla 6.4.2). Las reglas oficiales no dicen cuánto hay que esperar. Cuenta \
         el reglamento de tu competición. Pregunta al organizador y avisa al equipo que está \
         aquí.",
    who_is_late: "¿Qué equipo falta?",
    wait_minutes: "Minutos que espera tu competición después del inicio previsto",
    wait_minutes_from_now:
        "Minutos que espera tu competición (no hay inicio previsto: cuentan desde ahora)",
    wait_usual: "Suelen ser 10 o 15: práctica común, sin fuente.",
    wait_form,
    start_waiting: "Iniciar el reloj",
    they_are_here: "Ya está aquí",
    while_waiting: "Si llega a tiempo, toca \u{201c}Ya está aquí\u{201d} y continúa con el plan.",
    waited_enough: "Se acabó el tiempo. Habla con el organizador; decide el primer árbitro.",
    record_default: "Anotar no presentado",
    default_question,
    waiting_for,
};

fn wait_form(most: u16) -> String {
    format!("Escribe minutos enteros, {most} como máximo.")
}

fn default_question(name: &str) -> String {
    format!(
        "Partido perdido para {name}, sin ningún punto en ningún set. ¿Lo dicen así el reglamento \
         y el organizador?"
    )
}

fn waiting_for(name: &str) -> String {
    format!("Esperando a {name}")
}
