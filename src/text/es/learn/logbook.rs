//! The words of the logbook, in Spanish.

use crate::learn::logbook::*;
use crate::learn::Role;
use record::{Goal, GoalKind, Officiated, Progress};
use rules::Duty;

/// In Spanish.
pub static WORDS: LogbookWords = LogbookWords {
    logbook: "Cuaderno",
    logbook_more: "Tus partidos, tus objetivos y algo que probar la próxima vez.",
    logbook_empty:
        "Apunta cada partido en el que arbitras o ayudas. Nadie más lo ve si tú no lo compartes.",
    logged_label: "Partidos",
    log_match: "Añadir un partido",
    log_from_record: "De este teléfono",
    log_from_record_more: "Partidos terminados que aún no están en tu cuaderno.",
    log_this: "Apuntarlo en el cuaderno",
    log_this_again: "Abrirlo en el cuaderno",
    logbook_full:
        "Tu cuaderno está lleno. Compártelo como archivo y después elimina partidos viejos.",
    logbook_not_kept:
        "Este teléfono no pudo guardar tu cuaderno. Elimina lo que no necesitas y prueba otra \
         vez.",
    to_try: "Para probar la próxima vez",
    to_try_today: "Hoy querías probar esto",
    logged_day: "Fecha",
    logged_day_wrong: "Esto no es una fecha. Queda la anterior.",
    logged_duty: "¿Cuál fue tu tarea?",
    logged_level: "Categoría, como sub-14 femenina (opcional)",
    logged_teams: "Equipos (opcional)",
    logged_minutes: "Minutos (opcional)",
    logged_minutes_wrong: "Escribe un número entero de minutos.",
    logged_talk: "¿De qué se habló después?",
    logged_next: "Algo que probar la próxima vez",
    logged_kept: "Lo que escribes se guarda enseguida.",
    logged_delete: "Eliminar este partido del cuaderno",
    logged_delete_ask: "¿Eliminar este partido de tu cuaderno? Su registro se queda.",
    not_logged: "Este partido no está en tu cuaderno.",
    to_logbook: "Al cuaderno",
    goals: "Objetivos",
    no_goals: "Ponte un objetivo, o abre un archivo con objetivos de tu liga.",
    set_goal: "Poner un objetivo",
    goal_file: "Abrir un archivo",
    goal_what: "¿Qué quieres lograr?",
    goal_matches: "Un número de partidos",
    goal_task: "Otra cosa",
    goal_duty: "¿En qué tarea?",
    any_duty: "Cualquier tarea",
    goal_count: "¿Cuántos partidos, desde hoy?",
    goal_count_wrong: "Escribe un número de 1 a 500.",
    goal_words: "¿Qué es? Por ejemplo: una prueba de señales",
    goal_words_wrong: "Escribe qué quieres lograr.",
    goal_until: "Hasta (opcional)",
    goal_save: "Guardar el objetivo",
    goal_not_set: "Este objetivo ya está en tu cuaderno.",
    goal_done: "Hecho",
    goal_drop: "Eliminar este objetivo",
    goal_drop_ask: "¿Eliminar este objetivo de tu cuaderno?",
    logbook_share: "Para quien lo firma",
    logbook_print: "Imprimir",
    logbook_table: "Tabla (CSV)",
    logbook_file_label: "Archivo",
    logbook_delete: "Eliminar todo el cuaderno",
    logbook_delete_ask:
        "¿Eliminar tu cuaderno de este teléfono para siempre? Los registros de los partidos y los \
         archivos que has compartido se quedan.",
    signed_off: "Nombre y firma de quien lo confirma:",
    logbook_columns: [
        "Fecha",
        "Tarea",
        "Categoría",
        "Equipos",
        "Minutos",
        "Charla, próxima vez",
    ],
    duty,
    logged,
    next_time,
    by_duty,
    goal,
    progress,
    logbook_file,
    goals_came,
    no_logbook_file: "Esto no es un cuaderno ni un archivo de objetivos. Elige otro archivo.",
    newer_logbook_file:
        "Este archivo es de una versión más nueva de esta app. Actualiza la app y ábrelo otra \
         vez.",
};

fn duty(duty: Duty) -> &'static str {
    match duty {
        Duty::FirstReferee => crate::learn::role_name(Role::FirstReferee),
        Duty::SecondReferee => crate::learn::role_name(Role::SecondReferee),
        Duty::Scorer => crate::learn::role_name(Role::Scorer),
        Duty::AssistantScorer => crate::learn::role_name(Role::AssistantScorer),
        Duty::LineJudge => crate::learn::role_name(Role::LineJudge),
    }
}

fn logged(one: &Officiated) -> String {
    let mut words = format!("{}, {}", one.day.as_str(), duty(one.duty));
    for more in [&one.level, &one.teams] {
        if !more.is_empty() {
            words += &format!(", {more}");
        }
    }
    words
}

fn next_time(next: &str) -> String {
    format!("La próxima vez: {next}")
}

fn by_duty(all: &[(Duty, usize)]) -> String {
    let all: Vec<String> = all
        .iter()
        .map(|(of, count)| format!("{}: {count}", duty(*of)))
        .collect();
    all.join(", ")
}

fn goal(goal: &Goal) -> String {
    let mut words = match &goal.kind {
        GoalKind::Matches { duty: of, count } => {
            let matches = if *count == 1 { "partido" } else { "partidos" };
            match of {
                Some(of) => format!("{count} {matches} como {}", duty(*of).to_lowercase()),
                None => format!("{count} {matches}"),
            }
        }
        GoalKind::Task { words, .. } => words.clone(),
    };
    if let Some(until) = &goal.until {
        words += &format!(", hasta {}", until.as_str());
    }
    if !goal.from.is_empty() {
        words += &format!(" ({})", goal.from);
    }
    words
}

fn progress(goal: &Goal, progress: Progress) -> String {
    match (&goal.kind, progress.is_reached()) {
        (
            GoalKind::Task {
                done: Some(day), ..
            },
            _,
        ) => format!("Hecho el {}", day.as_str()),
        (GoalKind::Task { done: None, .. }, _) => "Todavía no".to_owned(),
        (GoalKind::Matches { .. }, true) => {
            format!("Logrado: {} de {}", progress.done, progress.of)
        }
        (GoalKind::Matches { .. }, false) => format!("{} de {}", progress.done, progress.of),
    }
}

fn logbook_file(day: &str, ending: &str) -> String {
    format!("cuaderno-{day}.{ending}")
}

fn goals_came(matches: usize, goals: usize, left_out: usize) -> String {
    let mut words = match (matches, goals) {
        (0, 0) => "Todo lo que hay en el archivo ya está aquí.".to_owned(),
        (matches, goals) => format!("Nuevo: partidos {matches}, objetivos {goals}."),
    };
    if left_out > 0 {
        words += &format!(" No se pudo leer: {left_out}.");
    }
    words
}
