//! The words of team lists and of the signatures under them, in Spanish.

use crate::setup::lists::*;
use game::entry::{Player, TeamList};
use game::{ListLack, Signer};
use rules::Shirt;

/// In Spanish.
pub static WORDS: ListsWords = ListsWords {
    shirt_number: "Número de camiseta",
    number: "Número",
    delete_digit: "Borrar la última cifra",
    add: "Añadir",
    place_holds,
    whose_list: "¿La lista de qué equipo?",
    shirt_numbers: "Números de camiseta de los jugadores",
    first_numbers,
    players_on_the_list: "Jugadores de la lista",
    mark_the_captain: "Toca un número para marcar al capitán.",
    staff_label: "Entrenador y otros en el banco",
    captain: "Capitán",
    libero: "Líbero",
    remove: "Quitar",
    name_optional: "Nombre (opcional)",
    change_list: "Editar esta lista",
    write_it_anyway: "Anotar aun así",
    player,
    player_in_full,
    number_is,
    list_in_short,
    hand_in_list,
    staff,
    staff_name,
    signatures: "Firmas al pie de la lista del equipo (opcional)",
    signed_list: "Cuando los dos han firmado, no se puede añadir a nadie a la lista (Regla 4.1.3).",
    sign: "Firmar",
    sign_again: "Firmar otra vez",
    signed_before_change: "firmado, pero la lista cambió después",
    signed: "firmado",
    draw_here: "Firma aquí con un dedo, o déjalo vacío",
    drawing_stays:
        "El dibujo se queda en este teléfono. Lo ves en el acta cuando la imprimes o la guardas \
         como página. Los archivos y los códigos del partido no contienen el dibujo. Solo dicen \
         que alguien firmó.",
    clear_drawing: "Borrar",
    too_small: "Eso es solo un punto. Bórralo y firma más grande, o deja el campo vacío.",
    save_signature: "Guardar firma",
    not_now: "Ahora no",
    signer,
    about_signer,
    list_lacks,
};

fn place_holds(place: usize, shown: &str) -> String {
    match shown {
        "" => format!("Posición {place}, vacía"),
        "\u{2022}" => format!("Posición {place}, oculta"),
        shirt => format!("Posición {place}, número {shirt}"),
    }
}

fn first_numbers(first: Shirt, last: Shirt) -> String {
    format!("Números {first} a {last}")
}

fn player(player: &Player) -> String {
    let mut words = player.number.to_string();
    if player.captain {
        words.push_str(" C");
    }
    if player.libero {
        words.push_str(" L");
    }
    words
}

fn player_in_full(player: &Player) -> String {
    let mut words = format!("Número {}", player.number);
    if let Some(name) = &player.name {
        words.push_str(", ");
        words.push_str(name);
    }
    if player.captain {
        words.push_str(", capitán");
    }
    if player.libero {
        words.push_str(", líbero");
    }
    words
}

fn number_is(number: Shirt) -> String {
    format!("Número {number}")
}

fn list_in_short(list: &TeamList) -> String {
    let players = match list.players.len() {
        1 => "1 jugador".to_owned(),
        n => format!("{n} jugadores"),
    };
    let captain = list.players.iter().find(|p| p.captain);
    let captain = match captain {
        Some(p) => format!("capitán {}", p.number),
        None => "sin capitán marcado".to_owned(),
    };
    let staff = if list.staff.is_empty() {
        String::new()
    } else {
        let roles: Vec<String> = list.staff.iter().map(|s| role(&s.role)).collect();
        format!(", {}", roles.join(", "))
    };
    format!("La lista del equipo está confirmada: {players}, {captain}{staff}.")
}

/// A role of the record within a sentence; one that is not known stands as it is.
fn role(role: &str) -> String {
    match role {
        "coach" | "assistant coach" | "therapist" | "doctor" => staff(role).to_lowercase(),
        other => other.to_owned(),
    }
}

fn hand_in_list(players: usize) -> String {
    match players {
        1 => "Confirmar la lista del equipo (1 jugador)".to_owned(),
        n => format!("Confirmar la lista del equipo ({n} jugadores)"),
    }
}

fn staff(role: &str) -> &'static str {
    match role {
        "coach" => "Entrenador",
        "assistant coach" => "Entrenador asistente",
        "therapist" => "Terapeuta",
        _ => "Médico",
    }
}

fn staff_name(role: &str) -> String {
    format!("{}: nombre (opcional)", staff(role))
}

fn signer(signer: Signer) -> &'static str {
    match signer {
        Signer::Captain(_) => "Capitán",
        Signer::Coach(_) => "Entrenador",
        Signer::Scorer => "Anotador",
        Signer::SecondReferee => "Segundo árbitro",
        Signer::FirstReferee => "Primer árbitro",
    }
}

fn about_signer(what: &str, who: &str, team: Option<&str>) -> String {
    match team {
        Some(team) => format!("{what}: {}, {team}", who.to_lowercase()),
        None => format!("{what}: {}", who.to_lowercase()),
    }
}

fn list_lacks(lack: ListLack) -> String {
    match lack {
        ListLack::Captain => {
            "Nadie está marcado como capitán. Pregunta al entrenador, y marca al capitán en \
             \u{201c}Editar esta lista\u{201d}."
                .to_owned()
        }
        ListLack::Players { there, needed } => format!(
            "Jugadores que pueden empezar: solo {there}. Hacen falta {needed} en el campo. Puede \
             que el equipo esté incompleto. Pregunta al entrenador."
        ),
    }
}
