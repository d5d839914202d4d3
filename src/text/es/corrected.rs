//! The words about a match that was already being played, and about scores that are put right though no
//! team was at fault, in Spanish.

use crate::corrected::*;
use rules::Shirt;

/// In Spanish.
pub static WORDS: CorrectedWords = CorrectedWords {
    running_already: "El partido ya está en juego",
    running_more: "Escribe lo que muestra el tablero. El acta dirá cuándo empezó este registro.",
    score_now: "Marcador ahora",
    score_now_empty: "Deja el marcador vacío entre dos sets.",
    serves_next: "¿Quién saca ahora?",
    stands_left: "¿Quién está a la izquierda, visto desde la silla?",
    take_it_over: "Seguir desde aquí",
    points_of_both: "Escribe los puntos de los dos equipos en números enteros.",
    points_of,
    set_is_over,
    correct_score: "Corregir el marcador",
    wrong_information: "Error del equipo arbitral",
    wrong_information_more:
        "El equipo arbitral informó mal a un equipo, y este perdió puntos por eso. El juego \
         vuelve a ese momento. Las sanciones, los tiempos muertos y las sustituciones se \
         mantienen. Decide el primer árbitro.",
    back_to_label: "¿A qué marcador se vuelve?",
    go_back_to_it: "Volver a este marcador",
    why: "¿Por qué?",
    in_own_words: "Con tus palabras",
    miscounted: &[
        "Faltó anotar un punto.",
        "Un punto se contó dos veces.",
        "El tablero y el anotador coinciden.",
    ],
    informed: &[
        "Se nombró a quien no debía sacar.",
        "Se dio el saque al equipo que no era.",
        "Se mostró un marcador erróneo.",
    ],
    time_is_up: "Se acabó el tiempo: fin del set",
    end_set_by_time: "Sí, se acabó el tiempo",
    time_up_question,
    back_to,
    others_on_court: "Hay otros jugadores en el campo",
    others_more:
        "Antes del set, los jugadores en el campo deben ser los de la formación. O se corrige sin \
         sanción, o el entrenador mantiene al otro jugador con una sustitución.",
    whose_players: "¿Qué equipo?",
    who_is_missing: "¿Quién está en la formación y no en el campo?",
    who_stands_there: "¿Quién está en su lugar?",
    is_missing,
    stands_there,
    put_right: "Corregido, sin sanción",
    places_put_right: "Jugadores correctos, posiciones no: corregido",
    kept: "El entrenador lo mantiene: sustitución",
};

fn points_of(what: &str, team: &str) -> String {
    format!("{what}: {team}")
}

fn set_is_over(set: u8) -> String {
    format!("El set {set} ha acabado")
}

fn time_up_question(score: &str, leader: Option<&str>) -> String {
    match leader {
        Some(name) => format!("Se acabó el tiempo con {score}. {name} gana el set."),
        None => {
            format!("Se acabó el tiempo con {score}. Hay empate: una jugada más decide el set.")
        }
    }
}

fn back_to(score: &str) -> String {
    format!("Volver a {score}")
}

fn is_missing(number: Shirt) -> String {
    format!("El {number} no está en el campo")
}

fn stands_there(number: Shirt) -> String {
    format!("En su lugar está el {number}")
}
