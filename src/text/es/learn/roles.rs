//! What each of the duty team does before, during and after a match, and what the game captain may
//! ask, in Spanish. The lines of the briefings are those that are read aloud before a match
//! (`setup::briefing`).

use crate::learn::roles::*;
use crate::setup::{briefing_of, look_at, Phase};
use rules::{Rules, Step};

/// In Spanish.
pub static WORDS: RolesWords = RolesWords {
    role_name,
    role_more,
    job,
    phase,
    where_it_is: "Tu sitio",
    read_aloud:
        "El primer árbitro lee casi todo esto en voz alta antes del partido. «Yo» es el primer árbitro, «nosotros» son los dos árbitros.",
    first_signals: "Las primeras señales",
    for_the_table: "Letra grande para la mesa",
    for_the_table_more: "Anotador y asistente en una página, para poner al lado del acta.",
    print: "Imprimir esta página",
    by_which_rules: "Si hay un partido abierto aquí, sus reglas dan los números. Si no, son los \
         internacionales.",
};

fn job(role: Role, phase: Phase, rules: &Rules) -> Vec<String> {
    let mut lines = match role {
        Role::SecondReferee => briefing_of(0, phase, rules),
        Role::Scorer => briefing_of(1, phase, rules),
        Role::LineJudge => briefing_of(2, phase, rules),
        Role::FirstReferee if phase == Phase::Before => look_at(Step::Kit, rules),
        Role::FirstReferee | Role::AssistantScorer | Role::GameCaptain => Vec::new(),
    };
    lines.extend(own_lines(role, phase).iter().map(|line| (*line).to_owned()));
    lines
}

/// What no briefing says.
fn own_lines(role: Role, phase: Phase) -> &'static [&'static str] {
    match (role, phase) {
        // 23.3.1, 7.1
        (Role::FirstReferee, Phase::Before) => &[
            "Revisas el suelo, la red y el balón. Dices al equipo arbitral qué hacer.",
            "Haces el sorteo con ambos capitanes.",
        ],
        // 22.2.1, 22.2.3, 23.2, 23.3.2; the look at the second referee: Guidelines 2024, rule 23
        (Role::FirstReferee, Phase::During) => &[
            "Antes de cada saque, mira al segundo árbitro, a quien saca y a ambos equipos. \
             Después pita.",
            "Pita solo si sabes con seguridad que hubo falta, y cuál.",
            "Luego, tres pasos: pita, señala el equipo que saca, señala la falta.",
            "Puedes cambiar lo que decidieron los demás. Solo tú muestras tarjetas.",
            "Si el capitán en juego pregunta, explícalo en una frase corta.",
            "Si puede haber alguien lesionado, detén el juego de inmediato.",
        ],
        // end of the match: Guidelines 2024; 23.3.3, 27.2.3
        (Role::FirstReferee, Phase::After) => &[
            "Pita, da la mano, ve a la mesa.",
            "Revisa el acta con el anotador. Firma al final.",
            "Da las gracias a tu equipo. Habla de algo que salió bien y de algo que probar.",
        ],
        // 24.2, common practice
        (Role::SecondReferee, Phase::After) => {
            &["Ve a la mesa con el primer árbitro. Revisa el acta y fírmala."]
        }
        (Role::SecondReferee, Phase::Before | Phase::During) => &[],
        // 27.2.3; the order of signatures differs between sources
        (Role::Scorer, Phase::After) => &[
            "Escribe el resultado. Firma, y pide a los capitanes y a los árbitros que firmen.",
            "Si un capitán quiere protestar, pregunta al primer árbitro antes de escribirlo.",
        ],
        (Role::Scorer, Phase::Before | Phase::During) => &[],
        // 28.2.1
        (Role::AssistantScorer, Phase::Before) => {
            &["Prepara la hoja de los líberos y un acta de reserva."]
        }
        // 28.2.2; at once and not after the hit: Guidelines 2024, rule 19
        (Role::AssistantScorer, Phase::During) => &[
            "Apunta por quién entra el líbero y quién vuelve.",
            "Si eso no está permitido, díselo enseguida al segundo árbitro. No esperes al golpe.",
            "Mantén al día el tablero de puntos y compáralo con el acta.",
            "Sustituye al anotador si no puede seguir.",
        ],
        // 28.2.3
        (Role::AssistantScorer, Phase::After) => &["Firma tu hoja y ayuda a revisar el acta."],
        (Role::LineJudge, Phase::Before | Phase::During) => &[],
        // common practice, no source
        (Role::LineJudge, Phase::After) => &["Devuelve los banderines y da las gracias."],
        // 5.1.1, 5.1.2
        (Role::GameCaptain, Phase::Before) => &[
            "El capitán del equipo va al sorteo y firma la lista del equipo.",
            "Si el capitán del equipo no está en el campo, el equipo nombra un capitán en juego.",
        ],
        // 5.1.2.1 to 5.1.2.3; positions: Casebook 2024, 1.4
        (Role::GameCaptain, Phase::During) => &[
            "Solo el capitán en juego habla con los árbitros, y solo cuando el balón no está en \
             juego.",
            "Puede preguntar por qué se decidió algo. Puede pedir que se revisen el suelo, la red \
             o el balón.",
            "Puede preguntar si su equipo está bien colocado. Del otro equipo solo dices sí o no.",
            "Puede pedir un tiempo muerto o una sustitución solo si no hay entrenador.",
            "Puede decir enseguida que el equipo protesta. Después es demasiado tarde.",
        ],
        // 5.1.3
        (Role::GameCaptain, Phase::After) => &[
            "El capitán del equipo da las gracias a los árbitros y firma el acta.",
            "Una protesta que se anunció se puede escribir ahora en el acta.",
        ],
    }
}

fn phase(phase: Phase) -> &'static str {
    match phase {
        Phase::Before => "Antes",
        Phase::During => "Durante",
        Phase::After => "Después",
    }
}

fn role_name(role: Role) -> &'static str {
    match role {
        Role::FirstReferee => "Primer árbitro",
        Role::SecondReferee => "Segundo árbitro",
        Role::Scorer => "Anotador",
        Role::AssistantScorer => "Anotador asistente",
        Role::LineJudge => "Juez de línea",
        Role::GameCaptain => "Capitán en juego",
    }
}

fn role_more(role: Role) -> &'static str {
    match role {
        Role::FirstReferee => "Dirige el partido y tiene la última palabra.",
        Role::SecondReferee => "Ayuda, mide los tiempos, deja entrar a los sustitutos.",
        Role::Scorer => "Lleva bien el acta, punto por punto.",
        Role::AssistantScorer => "Sigue a los líberos y revisa el marcador.",
        Role::LineJudge => "Señala dentro, fuera y tocado con el banderín.",
        Role::GameCaptain => "Qué puede pedir un capitán en el campo.",
    }
}
