//! The briefings of the duty team, to be read aloud as they stand: about a minute each, in Spanish.
//!
//! The duties follow the FIVB Official Volleyball Rules 2025-2028, chapters 22 to 24, 27 and 29, and
//! the Refereeing Guidelines and Instructions 2024 (rules 22 to 28 there); the rule stands beside
//! each sentence. What has none is common practice, no source.

use crate::setup::briefing::*;
use rules::Rules;

/// In Spanish.
pub static WORDS: BriefingWords = BriefingWords {
    whom: "¿A quién le das las instrucciones?",
    read_aloud: "Léelas en voz alta, más o menos un minuto cada una. Marca cada una al terminar.",
    all_briefed: "Instrucciones dadas",
    let_it_read: "Que lea el teléfono",
    stop_reading: "Parar la lectura",
    brief_next,
    briefed: ["Segundo árbitro", "Anotador", "Jueces de línea"],
    briefings,
    briefing_of,
};

fn brief_next(name: &str) -> String {
    format!("Siguiente: {name}")
}

fn briefings(rules: &Rules) -> [Vec<String>; 3] {
    [0, 1, 2].map(|of| {
        let all = lines(of, rules).into_iter();
        all.map(|(_, line)| line).collect()
    })
}

fn briefing_of(of: usize, phase: Phase, rules: &Rules) -> Vec<String> {
    let all = lines(of, rules).into_iter();
    all.filter(|(when, _)| *when == phase)
        .map(|(_, line)| line)
        .collect()
}

/// The sentences for one of them, each with the part of the match that it is about.
fn lines(of: usize, rules: &Rules) -> Vec<(Phase, String)> {
    use Phase::{Before, During};
    let with_liberos = rules.liberos > 0;
    // 7.3.5, 24.3.1, 19.3.2.1
    let compare = if with_liberos {
        "Antes de cada set, compara los dos equipos con sus hojas de formación. Después puede \
         entrar un líbero."
    } else {
        "Antes de cada set, compara los dos equipos con sus hojas de formación."
    };
    // 27.2.1.1
    let write_down = if with_liberos {
        "Antes del partido, anota equipos, jugadores y líberos. Asegúrate de que firmen los \
         capitanes y los entrenadores."
    } else {
        "Antes del partido, anota equipos y jugadores. Asegúrate de que firmen los capitanes y los \
         entrenadores."
    };
    // 27.2.2.4, 27.2.2.5; 18.2.2
    let last = rules.sets_at_most();
    let change_at = rules
        .decider
        .change_courts_at
        .filter(|_| rules.is_decider(last));
    let say_when = match change_at {
        Some(at) => format!(
            "Avísanos cuando una solicitud no esté permitida y cuando termine un set. Avísanos \
             cuando el primer equipo tenga {at} puntos en el set {last}: entonces hay cambio de \
             campo."
        ),
        None => {
            "Avísanos cuando una solicitud no esté permitida y cuando termine un set.".to_owned()
        }
    };
    let lines: [&[(Phase, &str)]; 3] = [
        &[
            // 22.2.1; eye contact: Guidelines, rule 23.
            (
                During,
                "Colócate junto a la red, del lado de la mesa. Nos miramos después de cada \
                 jugada y antes de cada saque.",
            ),
            (Before, compare),
            // 24.3.2.1 to 24.3.2.5
            (
                During,
                "Durante el juego, vigila las posiciones del equipo que recibe y la línea \
                 central. Vigila el lado del bloqueo en la red y la antena que tienes al lado.",
            ),
            // 22.2.3.2
            (
                During,
                "Cuando pites, señala primero la falta y después al jugador, si hace falta. \
                 Luego sigue mi brazo para señalar quién saca.",
            ),
            // 24.2.2
            (
                During,
                "Si ves una falta que me toca pitar a mí, puedes señalarla. No insistas.",
            ),
            // 24.2.6, 24.2.7
            (
                During,
                "Concede y cronometra los tiempos muertos, y deja entrar a los sustitutos. \
                 Avísanos, a mí y al entrenador, cuando queden pocos.",
            ),
            // 24.2.4, 24.2.5, 17.1
            (
                During,
                "Vigila los bancos. Si alguien se lesiona, detén el juego de inmediato y haz \
                 venir al adulto responsable.",
            ),
        ],
        &[
            (Before, write_down),
            // 27.2.1.2
            (
                Before,
                "Antes de cada set, copia las formaciones. Si falta una, avisa enseguida \
                 al segundo árbitro.",
            ),
            // 27.2.2.2, 7.7.1.1
            (
                During,
                "Comprueba quién saca. Si no es el jugador correcto, calla hasta que golpee \
                 el balón. Entonces avísanos enseguida.",
            ),
            // 27.2.2.1
            (
                During,
                "Anota cada punto cuando yo señale al equipo que va a sacar. Comprueba el \
                 tablero.",
            ),
            // 27.2.2.3; both hands: Guidelines, rule 25.
            (
                During,
                "Anota los tiempos muertos y las sustituciones, y dile al segundo árbitro \
                 cuántos van. Levanta las dos manos cuando hayas terminado. Yo espero esa señal.",
            ),
            (During, &say_when),
            // 27.2.2.6
            (During, "Anota las sanciones como te las decimos."),
            // common practice, no source
            (
                During,
                "Si algo parece estar mal, detennos antes del siguiente saque.",
            ),
        ],
        &[
            // 29.1
            (
                Before,
                "Si hay dos jueces de línea, cada uno se coloca a uno o dos metros de la \
                 esquina, a la derecha de un árbitro. Cada uno vigila una línea de fondo y una línea \
                 lateral.",
            ),
            // 29.2.1.1, diagram 12 (1, 2)
            (
                During,
                "Balón dentro: banderín abajo. Balón fuera: banderín arriba, en vertical.",
            ),
            // 29.2.1.2, diagram 12 (3)
            (
                During,
                "Balón tocado antes de salir: banderín arriba y la mano libre encima.",
            ),
            // 29.2.1.3 to 29.2.1.6, diagram 12 (4)
            (
                During,
                "Agita el banderín y apunta si el balón toca la antena o cruza por fuera de \
                 ella. Haz lo mismo si quien saca pisa la línea, o si otro jugador está fuera del \
                 campo en el saque.",
            ),
            // diagram 12 (5)
            (
                During,
                "Si no pudiste verlo, cruza los brazos. Es una buena respuesta.",
            ),
            // Casebook 2024, 3.9
            (
                During,
                "No hagas ninguna señal mientras el balón todavía se pueda jugar.",
            ),
            // 29.2.2, 30.2
            (
                During,
                "Haz tu señal enseguida y mantenla hasta que yo la vea. Puede que yo \
                 decida otra cosa. En ese caso, sigue sin más.",
            ),
        ],
    ];
    let all = lines[of].iter();
    all.map(|(phase, line)| (*phase, (*line).to_owned()))
        .collect()
}
