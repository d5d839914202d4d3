//! The words of a practice match: what is told, and what the comparison is, in Spanish.

use super::super::comparison::words as entry_words;
use crate::learn::practice::*;
use crate::{one_change, team_name};
use app::practice::Told;
use game::entry::By;
use game::{Kind, State};
use reports::compare::{Comparison, Difference, What, Which};
use rules::{Cause, Preset, Team};

/// In Spanish.
pub static WORDS: PracticeWords = PracticeWords {
    practice: "Partido de práctica",
    practice_more: "Te contamos un set. Tú lo llevas en la pantalla real del campo.",
    practice_how: [
        "Ambos equipos están listos, y tú eres el primer árbitro.",
        "Lee lo que pasa. Toca la mitad que gana el punto y después el motivo.",
        "También hay tiempos muertos y sustituciones. Anótalos antes de seguir.",
        "Al final, la app compara tu registro con lo que pasó.",
    ],
    practice_marked:
        "El registro lleva la marca de práctica. Ninguna clasificación ni grupo lo cuenta nunca. \
         Elimínalo cuando quieras.",
    practice_begin: "Empezar un partido de práctica",
    practice_not_kept: "Este teléfono no pudo guardar el partido.",
    practice_next: "Siguiente",
    practice_before: "Anterior",
    practice_over: "El set ha terminado. Mira cómo fue.",
    practice_compare: "Comparar",
    practice_mark: "Práctica",
    practice_same: "Todo lo que anotaste es lo que pasó. ¡Bien llevado!",
    practice_gone: "Este partido de práctica ya no está en este teléfono.",
    practice_changed:
        "La aplicación se actualizó desde que empezó este partido de práctica. Ya no puede \
         contarlo ni compararlo. Empieza uno nuevo.",
    practice_back: "Volver al campo",
    practice_step,
    practice_differs,
    practice_difference,
    practice_told,
};

fn practice_step(step: usize, of: usize) -> String {
    format!("{step} de {of}")
}

fn practice_differs(count: usize) -> String {
    match count {
        1 => "Una cosa no es como pasó.".to_owned(),
        n => format!("{n} cosas no son como pasaron."),
    }
}

/// Said to the learner; what has no words of its own is said as of two records.
fn practice_difference(found: &Difference, comparison: &Comparison) -> String {
    let names = &comparison.names;
    let points = |count: usize| match count {
        1 => "1 punto más".to_owned(),
        n => format!("{n} puntos más"),
    };
    let say = match &found.what {
        What::Point {
            first: Some((to, Kind::Rally { .. })),
            second: Some((given, Kind::Rally { .. })),
            ..
        } => {
            format!(
                "La jugada la ganó {}. Tú se la diste a {}.",
                names[*to], names[*given]
            )
        }
        What::Point {
            first: Some((to, _)),
            second: None,
            ..
        } => {
            format!("En tu registro falta un punto de {}.", names[*to])
        }
        What::Point {
            first: None,
            second: Some((given, _)),
            ..
        } => {
            format!("Le diste a {} un punto que no hubo.", names[*given])
        }
        What::Stops {
            which: Which::Second,
            more,
        } => {
            format!("Tu registro termina aquí. Se jugó {}.", points(*more))
        }
        What::Stops {
            which: Which::First,
            more,
        } => {
            format!(
                "En tu registro el set sigue: {} de lo que se jugó.",
                points(*more)
            )
        }
        What::Cause { first, second } => {
            format!(
                "El motivo era: {}. Tú dijiste: {}.",
                named(*first),
                named(*second)
            )
        }
        What::OnlyIn {
            which: Which::First,
            kind,
        } => {
            format!("Falta en tu registro: {}.", entry_words(kind, names))
        }
        What::OnlyIn {
            which: Which::Second,
            kind,
        } => {
            format!(
                "Está en tu registro sin que nadie lo pidiera: {}.",
                entry_words(kind, names)
            )
        }
        What::Otherwise { first, second } => format!(
            "Era {}. Tú anotaste {}.",
            entry_words(first, names),
            entry_words(second, names)
        ),
        What::Moved { kind, second } => format!(
            "Aquí hubo {}. Tú lo anotaste con {}.",
            entry_words(kind, names),
            second.marked()
        ),
        What::Point { .. }
        | What::OtherMatch { .. }
        | What::LettersExchanged
        | What::Rules
        | What::NeverIn { .. }
        | What::SetOnlyIn { .. } => return crate::comparison::difference(found, comparison),
    };
    match (found.rally, found.score) {
        (Some(rally), Some(score)) => format!("Jugada {rally}, con {}: {say}", score.marked()),
        _ => say,
    }
}

fn named(cause: Cause) -> String {
    crate::cause(cause, &Preset::SchoolJunior.rules())
}

fn practice_told(told: &Told, state: &State) -> String {
    match told {
        Told::TimeOut { team } => format!(
            "El entrenador de {} pide un tiempo muerto. Concédelo.",
            team_name(state, *team)
        ),
        Told::Substitution { team, changes } => {
            let changes: Vec<String> = changes.iter().map(one_change).collect();
            format!(
                "{} pide una sustitución: {}.",
                team_name(state, *team),
                changes.join(", ")
            )
        }
        Told::Rally {
            serves,
            won_by,
            cause,
            by,
        } => {
            let ends = ends(*cause, *won_by, *by, state);
            match serves {
                Some(team) => format!("Saca {}. {ends}", team_name(state, *team)),
                None => ends,
            }
        }
    }
}

/// How a rally ends.
fn ends(cause: Cause, won_by: Team, by: Option<By>, state: &State) -> String {
    let winner = team_name(state, won_by);
    let loser = team_name(state, won_by.other());
    let who = match by.and_then(|by| by.number) {
        Some(number) => format!("El número {number} de {loser}"),
        None => format!("Un jugador de {loser}"),
    };
    match cause {
        Cause::BallIn => format!("El balón cae en el campo de {loser}."),
        Cause::ServiceWinner => format!("El saque de {winner} cae en el campo de {loser}."),
        Cause::BallOut => format!("{who} golpea el balón, y cae fuera."),
        Cause::BallTouched => format!("{who} es el último que toca el balón, y cae fuera."),
        Cause::FourHits => format!("{loser} toca el balón por cuarta vez."),
        Cause::DoubleContact => format!("{who} golpea el balón dos veces seguidas."),
        Cause::Catch => format!("{who} retiene el balón y lo lanza."),
        Cause::AssistedHit => {
            format!("Un compañero levanta a un jugador de {loser} hasta el balón.")
        }
        Cause::NetTouch => format!("{who} toca la red al jugar el balón."),
        Cause::UnderNet => format!("{who} pasa la línea central con todo el pie."),
        Cause::OverNet => format!("{who} toca el balón más allá de la red antes del ataque."),
        Cause::AttackFault => format!(
            "{who}, que es zaguero, salta en la zona de ataque y envía un balón alto al otro lado."
        ),
        Cause::BlockFault => format!("{who}, que es zaguero, participa en un bloqueo."),
        Cause::LiberoFault => {
            format!("El líbero de {loser} ataca un balón por encima de la red.")
        }
        Cause::ServiceTime => format!("{who} no ha sacado cuando se acaba el tiempo."),
        Cause::ServiceFoot => format!("{who} pisa la línea de fondo en el golpe de saque."),
        Cause::ServiceToss => format!("{who} saca sin soltar antes el balón."),
        Cause::ServiceNet => format!("El saque de {loser} se queda en la red."),
        Cause::ServiceOut => format!("El saque de {loser} cae fuera."),
        Cause::Screen => format!("Jugadores de {loser} tapan el golpe de saque y el vuelo."),
        Cause::PositionFault => format!(
            "En el golpe de saque, dos jugadores de {loser} tienen las posiciones cambiadas."
        ),
        Cause::RotationFault => format!("Saca un jugador de {loser} que no debe."),
        Cause::OutsideCourt => format!("{who} está fuera del campo en el golpe de saque."),
        Cause::Antenna => format!("{who} envía el balón contra una antena."),
        Cause::OutsideCrossing => {
            format!("El balón de {loser} cruza por fuera de la antena.")
        }
        Cause::NotSaid => format!("{winner} gana la jugada."),
    }
}
