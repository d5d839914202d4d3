//! The words about who speaks for a team, and about protests (Official Volleyball Rules 2025-2028, 5.1.2,
//! 5.1.3), in Spanish.

use crate::captains::*;
use crate::{team_name, ScoreOrder};
use game::{captain, requester, speaker, Protest, Requester, Speaker, State};
use rules::{Shirt, Team};

/// In Spanish.
pub static WORDS: CaptainsWords = CaptainsWords {
    game_captain: "Capitán en juego",
    name_somebody: "Elegir",
    who_speaks_label: "Pregunta al entrenador: ¿quién es el capitán en juego?",
    speaks_more:
        "Solo el capitán en juego habla con los árbitros, y solo con el balón fuera de juego. \
         Puede pedir una explicación o que se revisen las posiciones, el suelo, la red o el \
         balón. Puede anunciar una protesta.",
    speaks_again,
    speaks_now,
    game_captain_missing,
    who_speaks,
    speaks_said,
    requests_by,
    protest: "Protesta",
    protest_about: "¿Sobre qué es? (opcional)",
    protest_announced: "Anotar la protesta",
    protest_needs_words: "Escribe lo que dice el capitán. Va al acta.",
    protest_more:
        "Una protesta se anuncia enseguida, después de que el primer árbitro explique la \
         decisión. El primer árbitro debe permitirla. Se escribe en el acta después del partido. \
         Una protesta que no se anunció no se escribe.",
    protest_by,
    protest_write,
    announced,
};

fn speaks_again(number: Shirt) -> String {
    format!("Otra vez el {number}")
}

fn speaks_now(number: Shirt) -> String {
    format!("El {number} es el capitán en juego")
}

fn game_captain_missing(state: &State, team: Team) -> String {
    let name = team_name(state, team);
    match captain(state, team) {
        Some(captain) => {
            format!("{name}: el capitán {captain} está fuera. ¿Quién es el capitán en juego?")
        }
        None => format!("{name}: ¿quién es el capitán en juego?"),
    }
}

fn who_speaks(state: &State, team: Team) -> String {
    match (speaker(state, team), captain(state, team)) {
        (Some(Speaker::TeamCaptain(number)), _) => {
            format!("El capitán {number} está en el campo y habla por el equipo.")
        }
        (Some(Speaker::GameCaptain(number)), _) => format!(
            "El número {number} habla por el equipo hasta que lo sustituyan, vuelva el capitán o \
             acabe el set."
        ),
        (None, Some(captain)) => format!(
            "El capitán {captain} no está en el campo. El entrenador o el capitán nombra un \
             capitán en juego que esté en el campo."
        ),
        (None, None) => "Nadie está marcado como capitán en la lista.".into(),
    }
}

fn speaks_said(speaker: Option<Speaker>) -> String {
    match speaker {
        Some(Speaker::TeamCaptain(number)) => format!(", capitán {number}"),
        Some(Speaker::GameCaptain(number)) => format!(", capitán en juego {number}"),
        None => String::new(),
    }
}

fn requests_by(state: &State, team: Team) -> Option<String> {
    let name = team_name(state, team);
    match (requester(state, team), speaker(state, team)) {
        (Requester::Coach, _) => None,
        (Requester::AssistantCoach, _) => Some(format!(
            "{name} no tiene entrenador en la lista. El entrenador asistente hace las solicitudes."
        )),
        (Requester::GameCaptain, Some(speaker)) => Some(format!(
            "{name} no tiene entrenador en la lista. El capitán en juego, número {}, hace las solicitudes.",
            speaker.number()
        )),
        (Requester::GameCaptain, None) => Some(format!(
            "{name} no tiene entrenador en la lista. El capitán en juego hace las solicitudes."
        )),
    }
}

fn protest_by(number: Option<Shirt>) -> String {
    match number {
        Some(number) => format!("Anunciada por el capitán en juego, número {number}."),
        None => "Anunciada por el capitán en juego.".into(),
    }
}

fn protest_write(announced: bool) -> &'static str {
    if announced {
        "Escribirla en el acta"
    } else {
        "Escribir una que no se anunció"
    }
}

fn announced(protest: &Protest, order: ScoreOrder) -> String {
    let about = match protest.text.as_str() {
        "" => String::new(),
        text => format!(": {text}"),
    };
    let written = match &protest.written {
        Some((_, text)) => format!(" Escrita: {text}"),
        None => String::new(),
    };
    let score = order.write(&protest.score);
    format!(
        "Anunciada en el set {} con {score}{about}.{written}",
        protest.set
    )
}
