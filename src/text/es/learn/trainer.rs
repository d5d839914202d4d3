//! The words of the rally trainer, in Spanish.

use super::scenes::shirt;
use crate::learn::trainer::*;
use learn::{Call, Case, End, Kind, Level, Marked, Place, Timing, Verdict};
use rules::{Cause, Preset};

/// In Spanish.
pub static WORDS: TrainerWords = TrainerWords {
    trainer: "Entrenamiento de jugadas",
    trainer_more: "Cinco minutos en la silla: pita, señala quién saca, di por qué.",
    trainer_how: [
        "Mira la jugada. Pita en cuanto tengas clara una falta.",
        "Después señala qué lado saca ahora y di por qué.",
        "A veces no hay ninguna falta. Entonces no pitas.",
    ],
    shirts: "Camiseta llena: delantero. Camiseta clara: zaguero. El líbero va de verde.",
    rally: "Jugada",
    right: "Bien",
    how_close: "Dificultad",
    begin: "Empezar cinco minutos",
    from_where: "¿Dónde estás?",
    in_which_form: "¿Cómo quieres verla?",
    moving: "Tal como pasa",
    in_steps: "Paso a paso, en palabras",
    whistle: "Pitar",
    watch: "Prepárate",
    picture: "La jugada en un dibujo. Elige los pasos en palabras para que te la cuenten.",
    picture_told: "La jugada en un dibujo. Las frases de debajo la cuentan.",
    next_step: "Qué pasa después",
    no_whistle: "Sin pitar: sigue el juego",
    who_serves: "¿Quién saca ahora?",
    why_label: "¿Por qué?",
    play_again: "Nadie: se repite",
    next_scene: "Otra jugada",
    see_again: "Verla otra vez",
    also: "También se vio, y no es falta",
    other_fault: "La otra falta",
    also_fault: "También es falta, pero aquí no cuenta",
    stop: "Terminar por hoy",
    done: "Eso es todo por ahora",
    try_next: "Prueba ahora estas",
    nothing_to_try: "Lo último que viste salió bien. Las próximas jugadas serán más ajustadas.",
    practised: "Lo que has practicado",
    practised_stays: "Se queda en este teléfono, sin nombre. Una copia de seguridad lo incluye.",
    forget: "Borrar lo que practiqué",
    forgotten: "Borrado.",
    not_kept: "Este teléfono no pudo guardar lo que practicaste.",
    read_about: "Leer y probar",
    once_more: "Otros cinco minutos",
    lesson: "Clase",
    lesson_way: "Para una clase, en pantalla grande",
    lesson_how: [
        "Muestra una jugada a la clase. Cada uno decide solo, sin hablar.",
        "Pregunta quién está a favor de qué, y cuenta las manos con pulsaciones.",
        "Después muestra la respuesta a cámara lenta y coméntala con la clase.",
    ],
    lesson_begin: "Mostrar la primera jugada",
    lesson_about: "¿Sobre qué?",
    everything: "Todo",
    lesson_ask: "¿Qué decides? Una pulsación por cada mano.",
    lesson_answer: "Mostrar la respuesta",
    lesson_end: "Terminar",
    vote_left: "Punto para naranja",
    vote_right: "Punto para azul",
    vote_play_on: "Sigue el juego",
    vote_replay: "Se repite",
    place,
    kind,
    level,
    arm_of,
    whistled,
    side_shown,
    reason_said,
    decided,
    due,
    went,
    median,
    right_of,
    left,
};

fn place(place: Place) -> &'static str {
    match place {
        Place::Stand => "Primer árbitro, en la silla",
        Place::SecondReferee => "Segundo árbitro",
        Place::LineJudge => "Juez de línea, en una esquina",
    }
}

fn kind(kind: Kind) -> String {
    let named = |cause: Cause| crate::cause(cause, &Preset::International.rules());
    match kind {
        Kind::Ends(cause) => named(cause),
        Kind::GoesOn(cause) => format!("{}: casi", named(cause)),
        Kind::CaseEnds(of) => case(of).to_owned(),
        Kind::CaseGoesOn(of) => format!("{}: casi", case(of)),
        Kind::DoubleFault => "Dos faltas a la vez".to_owned(),
        Kind::FirstOfTwo => "La primera de dos faltas".to_owned(),
        Kind::ServerBeforeReceivers => "Falta de quien saca y de receptores".to_owned(),
        Kind::ReceiversBeforeService => "Falta de posición y saque fuera".to_owned(),
        Kind::BeforeTheWhistle => "Saque antes del silbato".to_owned(),
    }
}

fn case(case: Case) -> &'static str {
    match case {
        Case::ServiceBlock => "Bloqueo del saque",
        Case::Hindrance => "Estorbo por debajo de la red",
        Case::JuniorUnderNet => "Por debajo de la red, reglas escolares",
    }
}

fn level(level: Level) -> &'static str {
    match level {
        Level::Clear => "Clara",
        Level::Close => "Ajustada",
        Level::Tight => "Muy ajustada",
    }
}

fn arm_of(end: End) -> String {
    format!("El equipo {}", shirt(end))
}

fn whistled(marked: &Marked) -> String {
    let after = marked
        .reaction
        .map_or_else(String::new, |by| format!(", {by:.1} s después"));
    match marked.timing {
        Timing::InTime => format!("Silbato: a tiempo{after}."),
        Timing::Late => format!("Silbato: bien, pero tarde{after}."),
        Timing::RightlyNone => "No pitaste, y está bien. Sigue el juego.".to_owned(),
        Timing::Early => "Pitaste demasiado pronto: el punto seguía en juego.".to_owned(),
        Timing::Missed => "La jugada había terminado, y no pitaste.".to_owned(),
        Timing::Needless => "Pitaste, pero el juego debía seguir.".to_owned(),
    }
}

fn side_shown(right: bool) -> &'static str {
    if right {
        "Lado que saca: bien."
    } else {
        "Lado que saca: mal."
    }
}

fn reason_said(right: bool) -> &'static str {
    if right {
        "Motivo: bien."
    } else {
        "Motivo: mal."
    }
}

fn decided(verdict: &Verdict) -> String {
    match verdict.ruling.call {
        Call::PlayOn => "Sigue el juego".to_owned(),
        Call::Replay => "Se repite: el punto no es para nadie".to_owned(),
        Call::Fault { by, cause, .. } => {
            let cause = crate::cause(cause, &Preset::International.rules());
            format!("{cause}: saca el equipo {}", shirt(by.other()))
        }
    }
}

fn due(end: End, number: u8) -> String {
    format!("Al saque: {number} {}", shirt(end))
}

fn went(all: usize, right: usize) -> String {
    let rallies = if all == 1 { "jugada" } else { "jugadas" };
    format!("{all} {rallies}, {right} con todo bien.")
}

fn median(ms: u16) -> String {
    format!(
        "La mitad de tus silbatos llegó en menos de {:.1} s.",
        f64::from(ms) / 1000.0
    )
}

fn right_of(right: u32, shown: u32) -> String {
    format!("{right} de {shown}")
}

fn left(seconds: u32) -> String {
    format!("Quedan {}:{:02}", seconds / 60, seconds % 60)
}
