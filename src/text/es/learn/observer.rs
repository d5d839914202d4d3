//! The words of watching a referee: what is tapped, the notes afterwards, and what they say beside
//! the match, in Spanish.

use crate::learn::observer::*;
use app::machine::LocalTime;
use record::{NoteKind, Observation, Standing};
use reports::observed::{At, Beside, By};
use rules::{ByTeam, Score, Team};

/// In Spanish.
pub static WORDS: ObserverWords = ObserverWords {
    observer: "Observar a un árbitro",
    observer_more: "Apunta momentos con una pulsación. Habla de ellos después del partido.",
    observer_how: [
        "Mira desde un sitio donde veas al árbitro. No molestes al equipo arbitral.",
        "Toca lo que ves. Puedes añadir palabras después.",
        "Toca el equipo que gana cada jugada: así cada nota sabe cuál es su jugada. Si es \
         demasiado, toca al menos «Set siguiente» entre los sets.",
        "Después del partido, enseña el código al árbitro. Solo el árbitro se queda con las notas.",
    ],
    observer_teams: "¿Cómo llamas a los equipos? (opcional)",
    observer_begin: "Empezar",
    observer_here: "Notas en este teléfono",
    observer_go_on: "Seguir apuntando",
    observer_stop: "Ver las notas",
    next_set: "Siguiente set",
    swap_sides: "Cambiar lados",
    nothing_noted: "Aún no hay notas.",
    no_such_notes: "Estas notas ya no están en este teléfono.",
    notes_not_kept:
        "Este teléfono no pudo guardar la última pulsación. Enseña el código antes de cerrar esta \
         página.",
    notes_full: "En estas notas no caben más pulsaciones.",
    note_words: "En palabras (opcional)",
    note_remove: "Eliminar esta nota",
    note_remove_ask: "¿Eliminar esta nota y sus palabras?",
    notes_hand_over: "Dar las notas al árbitro",
    notes_hand_over_more:
        "El árbitro abre el acta del partido, después Repaso y después \u{201c}Escanear las \
         notas\u{201d}. También puedes enviarle un archivo.",
    notes_file_label: "Compartir como archivo",
    notes_delete: "Eliminar estas notas",
    notes_delete_ask: "¿Eliminar estas notas de este teléfono para siempre?",
    observed: "Lo que apuntó un observador",
    observed_none:
        "¿Alguien te observó con esta app? Escanea su código, o abre su archivo en la pantalla de \
         inicio.",
    observed_scan: "Escanear las notas",
    observed_other: "Hay otras notas en este teléfono. No parecen ser de este partido.",
    observed_anyway: "Mostrarlas aquí igualmente",
    observed_open: "Abrir las notas",
    no_place: "No encontrado en este partido",
    note,
    observed_team,
    team_field,
    wins_rally,
    watched_set,
    last_tap,
    noted_at,
    notes_of,
    note_count,
    notes_file,
    laid_by,
    laid_at,
};

fn note(kind: NoteKind) -> &'static str {
    match kind {
        NoteKind::LateWhistle => "Silbato tarde",
        NoteKind::TwoSignals => "Dos señales a la vez",
        NoteKind::UnclearSignal => "Señal poco clara",
        NoteKind::WrongArm => "Brazo equivocado",
        NoteKind::MissedFault => "Falta no vista",
        NoteKind::GoodDecision => "Buena decisión",
        NoteKind::GoodHelp => "Buena ayuda del equipo",
        NoteKind::GoodCalm => "Buena calma",
    }
}

fn observed_team(names: &ByTeam<String>, team: Team) -> String {
    match (names[team].as_str(), team) {
        ("", Team::A) => "Equipo 1".to_owned(),
        ("", Team::B) => "Equipo 2".to_owned(),
        (name, _) => name.to_owned(),
    }
}

fn team_field(team: Team) -> &'static str {
    match team {
        Team::A => "El equipo a tu izquierda",
        Team::B => "El equipo a tu derecha",
    }
}

fn wins_rally(name: &str, points: u16) -> String {
    format!("{name} gana la jugada. Lleva {points}.")
}

fn watched_set(set: u8) -> String {
    format!("Set {set}")
}

fn points(score: Score) -> String {
    format!("{}:{}", score.a, score.b)
}

fn last_tap(seen: &Observation, after: Standing, names: &ByTeam<String>) -> String {
    match seen {
        Observation::Rally { won_by } => format!(
            "Punto para {}, {}",
            observed_team(names, *won_by),
            points(after.score)
        ),
        Observation::NewSet => format!("Empieza el set {}", after.set),
        Observation::Note { kind, .. } => note(*kind).to_owned(),
    }
}

fn noted_at(standing: Standing, at: LocalTime) -> String {
    let time = crate::time_of(at);
    if standing.rallies == 0 && standing.set == 1 {
        time
    } else {
        format!(
            "Set {} con {}, {time}",
            standing.set,
            points(standing.score)
        )
    }
}

fn notes_of(began: LocalTime, names: &ByTeam<String>, notes: usize) -> String {
    let named = !names.a.is_empty() || !names.b.is_empty();
    let teams = if named {
        format!(
            "{} \u{2013} {}, ",
            observed_team(names, Team::A),
            observed_team(names, Team::B)
        )
    } else {
        String::new()
    };
    format!("{teams}{}, {}", crate::when(Some(began)), note_count(notes))
}

fn note_count(notes: usize) -> String {
    match notes {
        1 => "1 nota".to_owned(),
        n => format!("{n} notas"),
    }
}

fn notes_file(day: &str) -> String {
    format!("observador-{day}.json")
}

fn laid_by(beside: &Beside) -> String {
    let clock = match beside.clock {
        Some(seconds) if seconds.abs() >= 60 => {
            let minutes = (seconds.abs() + 30) / 60;
            let unit = if minutes == 1 { "minuto" } else { "minutos" };
            let way = if seconds > 0 {
                "adelantado"
            } else {
                "atrasado"
            };
            format!(" El reloj del observador va {minutes} {unit} {way}. Eso ya está descontado.")
        }
        Some(_) | None => String::new(),
    };
    let by = match (beside.keeps_score(), beside.clock) {
        (true, _) => "El marcador y la hora dicen dónde va cada nota.",
        (false, Some(_)) => {
            "El observador no llevó el marcador. La hora dice dónde va cada nota, y las pausas \
             entre los sets dicen cómo van los relojes. Puede variar en unas jugadas."
        }
        (false, None) => {
            "El observador no llevó el marcador. Solo la hora dice dónde va cada nota. Comprueba \
             que los dos teléfonos tengan la misma hora."
        }
    };
    format!("{by}{clock}")
}

fn laid_at(at: At, by: By) -> String {
    let place = format!("Set {}, {}", at.set, at.score.marked());
    match by {
        By::Both => place,
        By::Score => format!("{place} (solo por el marcador)"),
        By::Time => format!("{place} (solo por la hora)"),
    }
}
