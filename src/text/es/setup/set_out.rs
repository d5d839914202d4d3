//! The words of what comes last before a set: warm-up, line-ups, liberos, the last check, in Spanish.

use crate::setup::player_in_full;
use crate::setup::set_out::*;
use game::entry::Player;
use rules::{Shirt, WarmUp, WarmUpStyle};

/// In Spanish.
pub static WORDS: SetOutWords = SetOutWords {
    both_teams: "Los dos equipos",
    start_warm_up: "Empezar",
    end_warm_up: "Terminar ya",
    warm_up_over: "Calentamiento terminado.",
    warm_up_again: "Empezar otra vez",
    warm_up_is,
    warm_up_of,
    whose_line_up: "¿La formación de qué equipo?",
    list_first:
        "Falta la lista del equipo. Escríbela antes, en \u{201c}Listas de los equipos\u{201d}.",
    line_up_is_in: "La formación está confirmada.",
    undo_line_up: "Error al escribir: deshacer",
    hide_line_up: "Ocultar la formación al otro equipo",
    show_line_up: "Mostrar la formación",
    same_as_last_set: "Como en el último set",
    empty_place: "Vaciar esta posición",
    confirm_line_up: "Confirmar la formación",
    number_for_place,
    put_in,
    liberos_now: "Ahora puede entrar un líbero",
    libero_for,
    libero_for_of,
    begin_all_the_same: "Empezar aun así",
    begin_unsafe:
        "Una revisión de seguridad encontró un problema y nadie lo ha dado por resuelto. Alguien \
         puede lesionarse. ¿Empezar aun así?",
    begin_set,
    serves_with,
    match_is_over: "Este partido terminó.",
    to_the_sheet: "Ir al acta",
    match_has_begun: "Este partido ya empezó.",
    to_the_court: "Ir al campo",
};

fn warm_up_is(warm_up: WarmUp, tossed: bool) -> String {
    let minutes = match warm_up.minutes {
        1 => "1 minuto".to_owned(),
        n => format!("{n} minutos"),
    };
    match (warm_up.style, tossed) {
        (WarmUpStyle::Shared, _) => format!("{minutes}, los dos equipos juntos."),
        (WarmUpStyle::Separate, true) => {
            format!("{minutes} por equipo. Empieza el equipo que saca primero.")
        }
        (WarmUpStyle::Separate, false) => {
            format!(
                "{minutes} por equipo. Empieza el equipo que saca primero: haz antes el sorteo."
            )
        }
    }
}

fn warm_up_of(words: &str, name: &str) -> String {
    format!("{words}: calentamiento, {name}")
}

fn number_for_place(place: usize) -> String {
    format!(
        "Toca el número para la posición {}.",
        crate::score_sheet::roman(place)
    )
}

fn put_in(player: &Player, placed: bool, barred: bool) -> String {
    let mut words = player_in_full(player);
    if placed {
        words.push_str(", en la formación");
    }
    if barred {
        words.push_str(", no puede empezar");
    }
    words
}

fn libero_for(into: Shirt, out: Shirt) -> String {
    format!("{into} por {out}")
}

fn libero_for_of(into: Shirt, out: Shirt, name: &str) -> String {
    format!("{name}: entra el {into} por el {out}")
}

fn begin_set(set: u8) -> String {
    format!("Empezar el set {set}")
}

fn serves_with(name: &str, number: Option<Shirt>) -> String {
    match number {
        Some(number) => format!("Saque: {name}, número {number}"),
        None => format!("Saque: {name}"),
    }
}
