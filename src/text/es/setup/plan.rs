//! The words of the plan: its steps, what to look at in each, and what is said when one is not in order,
//! in Spanish.

use crate::setup::plan::*;
use game::Standing;
use rules::{Rules, Step, Timing, COURTSIDE_MINUTES};

/// In Spanish.
pub static WORDS: PlanWords = PlanWords {
    next,
    open_step: "Abrir",
    read_on: "Leer más sobre esto",
    step,
    first_service: "Primer saque",
    toss: "Sorteo",
    line_ups: "Formaciones",
    last_check: "Revisión final",
    look_at,
    standing,
    start_at,
    go_on_to,
    tick,
    do_not_start: "No empieces. Habla con el entrenador o con el organizador.",
    not_done: "Todavía sin hacer.",
    not_yours_alone:
        "No tienes que resolver esto a solas. Pide a un adulto responsable que lo revise: un \
         entrenador, el organizador, el conserje. Si no hay ninguno, manda buscar a uno. Hasta \
         entonces, nadie juega ni calienta en este campo. Cuentan las reglas de tu competición y \
         de este gimnasio.",
    who_clears_it: "¿Qué adulto lo ha revisado y dice que ahora es seguro?",
    what_was_done: "¿Qué se hizo? (opcional)",
    what_is_wrong: "¿Qué está mal? (opcional)",
    problem: "Problema",
    record_problem: "Anotar el problema",
    cleared_label: "Ahora todo bien",
    cleared_by,
    cleared,
    found,
    clearers: ["Entrenador", "Organizador", "Conserje"],
    due_and_late,
    no_start:
        "Escribe abajo el inicio previsto, en \u{201c}Nombres, inicio, gimnasio, reglas\u{201d}. \
         Así cada paso recibe su hora.",
    not_in_order,
    we_play: "Jugamos:",
};

fn next(standing_now: Standing) -> String {
    match standing(standing_now) {
        "" => "Siguiente".to_owned(),
        words => format!("Siguiente \u{b7} {words}"),
    }
}

fn step(step: Step) -> &'static str {
    match step {
        Step::Kit => "Tu material",
        Step::Floor => "Suelo y zona libre",
        Step::Net => "Red y postes",
        Step::Ball => "Balón",
        Step::FirstAid => "Primeros auxilios y salidas",
        Step::Briefing => "Equipo arbitral instruido",
        Step::TeamLists => "Listas de los equipos",
        Step::Captains => "Reunión de capitanes",
        Step::Toss => toss(),
        Step::WarmUp => "Calentamiento",
        Step::LineUps => line_ups(),
        Step::LastCheck => last_check(),
    }
}

fn look_at(step: Step, rules: &Rules) -> Vec<String> {
    let with_liberos = rules.liberos > 0;
    let lines: &[&str] = match step {
        Step::Kit => {
            return vec![
                "Tienes dos silbatos, un reloj, una moneda, un bolígrafo y tarjetas. Este \
                 teléfono está cargado y en silencio."
                    .into(),
                format!(
                    "Estás junto al campo al menos {COURTSIDE_MINUTES} minutos antes del sorteo. \
                     La mesa está preparada."
                ),
                "Tienes el reglamento de la competición, y sabes a quién preguntar.".into(),
            ]
        }
        // 1.1, 1.2.1, 1.3.1, 1.5, 1.6
        Step::Floor => &[
            "El suelo está seco, plano y no resbala. No tiene partes sueltas, agujeros ni bordes. \
             Las zonas mojadas se secaron.",
            "Hay al menos 3 m libres a cada lado del campo de 18 \u{d7} 9 m, y 7 m por encima. \
             Paredes, bancos, puertas y otros juegos quedan fuera de alcance o acolchados.",
            "Distingues las líneas de este campo de las demás.",
            "Hay luz suficiente para seguir el balón. No hace menos de 10 \u{b0}C.",
        ],
        // 2.2 to 2.5; torn mesh, rebound: Refereeing Guidelines 2024, rule 2; padding of the posts is
        // common practice, no source.
        Step::Net => &[
            "La red está tensa: un balón lanzado contra ella rebota. Nada está roto.",
            "Las antenas sobresalen 80 cm por encima de la red, en el borde exterior de las \
             bandas laterales. Están firmes, una en cada cara de la red.",
            "Los postes están de 0.5 a 1 m por fuera de las líneas laterales, firmes y \
             acolchados. No sobresalen cables ni ganchos.",
        ],
        // 3.1, 3.2
        Step::Ball => &[
            "El balón es redondo y no está dañado. Mide de 65 a 67 cm de circunferencia y pesa de \
             260 a 280 g. Las categorías menores pueden tener uno más ligero.",
            "En la mesa hay un balón de reserva del mismo tipo.",
        ],
        Step::FirstAid => &[
            "¿Qué adulto da hoy los primeros auxilios, y dónde están el botiquín y el hielo?",
            "¿Qué adulto pide ayuda, desde qué teléfono, y cuál es la dirección de este gimnasio?",
            "Las salidas están abiertas y sin llave. Todos saben dónde reunirse afuera.",
            "¿Cómo llega la ayuda al campo: por qué puerta, por qué camino?",
        ],
        // 5.1, 4.3, 4.5, 19.2, 5.1.2
        Step::Captains => &[
            "¿Quién es el capitán? Solo el capitán que está en el campo habla con el árbitro, y \
             solo con el balón fuera de juego. Si el capitán no está en el campo, el equipo \
             nombra a un capitán en juego.",
            if with_liberos {
                "Los números de camiseta son los de la lista del equipo. Los líberos llevan otro \
                 color."
            } else {
                "Los números de camiseta son los de la lista del equipo. Todas las camisetas son \
                 iguales."
            },
            "Nadie lleva nada que pueda lesionar. Anillos, cadenas y relojes están quitados o \
             tapados con cinta. No hay yesos duros.",
            "¿A qué adulto de cada equipo llamamos cuando alguien se lesiona?",
            "¿Qué hacen a su manera este gimnasio o esta competición? Piensa en el techo, las \
             paredes cercanas y el calentamiento.",
            "¿Hay preguntas? Después se dan la mano y haces el sorteo.",
        ],
        // 7.3.5, 12.3; order: Refereeing Guidelines 2024, protocol.
        Step::LastCheck => &[
            if with_liberos {
                "Los dos equipos están colocados como en sus hojas de formación. Después entran \
                 los líberos."
            } else {
                "Los dos equipos están colocados como en sus hojas de formación."
            },
            "En los bancos, todos están sentados. Los jueces de línea están en sus esquinas. El \
             anotador ha levantado las dos manos.",
            "El jugador al saque tiene el balón. El segundo árbitro te ha dado la señal.",
        ],
        Step::Briefing | Step::TeamLists | Step::Toss | Step::WarmUp | Step::LineUps => &[],
    };
    lines.iter().map(|line| (*line).to_owned()).collect()
}

fn standing(standing: Standing) -> &'static str {
    match standing {
        Standing::Done => "hecho",
        Standing::Failed => "problema",
        Standing::Running => "en curso",
        Standing::Open(Timing::Ahead) => "",
        Standing::Open(Timing::Due) => "para ahora",
        Standing::Open(Timing::Late) => "con retraso",
    }
}

fn start_at(time: &str, day: Option<&str>, minutes_left: i64) -> String {
    let day = day.map(|day| format!("{day}, ")).unwrap_or_default();
    match minutes_left {
        0 => format!("Inicio {day}{time}: ahora"),
        1..=180 => format!("Inicio {day}{time}, en {minutes_left} min"),
        -180..=-1 => format!("El inicio era {day}{time}, hace {} min", -minutes_left),
        _ => format!("Inicio {day}{time}"),
    }
}

fn go_on_to(next: Step) -> String {
    format!("Siguiente: {}", step(next))
}

fn tick(of: Step) -> String {
    format!("Hecho: {}", step(of))
}

fn cleared_by(note: &str) -> String {
    format!("Todo bien: {note}")
}

fn cleared(who: &str, what: &str) -> String {
    let parts = [who.trim(), what.trim()];
    let parts: Vec<&str> = parts.into_iter().filter(|p| !p.is_empty()).collect();
    parts.join(": ")
}

fn found(ok: bool, measured: &str) -> String {
    let words = if ok { "Todo bien" } else { "Problema" };
    if measured.is_empty() {
        words.to_owned()
    } else {
        format!("{words}: {measured}")
    }
}

fn due_and_late(late: usize, due: usize) -> String {
    let of = |steps: usize, how: &str| (steps > 0).then(|| format!("{steps} {how}"));
    let parts: Vec<String> = [of(late, "con retraso"), of(due, "para ahora")]
        .into_iter()
        .flatten()
        .collect();
    match parts.is_empty() {
        true => "Nada para ahora".to_owned(),
        false => format!("Pasos: {}", parts.join(", ")),
    }
}

fn not_in_order(items: &[String]) -> String {
    let names: Vec<&str> = items
        .iter()
        .map(|item| match Step::from_code(item) {
            Some(known) => step(known),
            None => item.as_str(),
        })
        .collect();
    format!("Problema: {}.", names.join(", "))
}
