//! The words of every finding of an audit, in Spanish.

use super::entry::item;
use crate::audit::*;
use crate::score_sheet::span;
use crate::{problem, question, refusal, Teams};
use reports::audit::{Field, Finding, What};
use rules::Team;

/// In Spanish.
pub static WORDS: AuditWords = AuditWords { finding };

fn finding(finding: &Finding, teams: Teams) -> String {
    let name = |team: &Team| teams.name(*team);
    match &finding.what {
        What::Form {
            unreadable: true,
            problem,
        } => format!(
            "Esta anotación no se puede leer y no cuenta: {}.",
            problem::kind(problem)
        ),
        What::Form { problem, .. } => sentence(&problem::kind(problem)),
        What::Broken(broken) => sentence(&problem::broken(broken)),
        What::Refused(why) => format!("Esta anotación no cuenta. {}", refusal(why, teams)),
        What::Insisted {
            refusal: advice,
            why,
        } => format!(
            "Anotado por decisión del primer árbitro ({why}). El aviso era: {}",
            refusal(advice, teams)
        ),
        What::TakenBack { by, why: Some(why) } => {
            format!("Deshecho por la anotación {by}: {}", sentence(why))
        }
        What::TakenBack { by, why: None } => {
            format!("Deshecho por la anotación {by}, sin motivo.")
        }
        What::ChangedAfterSigning => {
            "Cambiado después de firmar el partido. Pregunta quién lo sabe.".to_owned()
        }
        What::Missing(field) => missing(*field, &name),
        What::NotListed { team, set, number } => format!(
            "El número {number} de {} jugó en el set {set}, pero no está en la lista final del \
             equipo.",
            name(team)
        ),
        What::OverTimeOuts {
            team,
            set,
            taken,
            most,
        } => format!(
            "{} pidió {taken} tiempos muertos en el set {set}. El máximo es {most}.",
            name(team)
        ),
        What::OverSubstitutions {
            team,
            set,
            made,
            most,
        } => format!(
            "{} hizo {made} sustituciones en el set {set}. El máximo es {most}.",
            name(team)
        ),
        What::HadToLeave {
            team,
            set,
            number,
            libero,
        } => format!(
            "En el set {set} hubo una jugada aunque el {} número {number} de {} tenía que salir \
             del campo.",
            if *libero { "líbero" } else { "jugador" },
            name(team)
        ),
        What::CourtsNotChanged { set } => {
            format!("El cambio de campo del set {set} no está registrado.")
        }
        What::BeganUnsafe { item: what } => format!(
            "El set empezó con una revisión fallida que nadie había resuelto: {}.",
            item(what)
        ),
        What::CheckFailed { item: what, note } => {
            let note = note.as_ref().map(|n| format!(" ({n})")).unwrap_or_default();
            format!(
                "Esta revisión falló y nadie la resolvió: {}{note}.",
                item(what)
            )
        }
        What::OpenQuestion(asked) => {
            format!("Sin respuesta: {}", question(asked, teams).0)
        }
        What::ProtestNotWritten { team } => format!(
            "{} anunció una protesta, pero después del partido no se escribió nada sobre ella.",
            name(team)
        ),
        What::TakenOver {
            set,
            score: Some(score),
        } => format!(
            "El registro empezó en el set {set}, con {}. Lo jugado antes no está en él.",
            score.marked()
        ),
        What::TakenOver { set, score: None } => {
            format!("El registro empezó antes del set {set}. Lo jugado antes no está en él.")
        }
        What::ScoreCorrected { score, why } => {
            format!("El marcador se corrigió a {}: {why}", score.marked())
        }
        What::WrongInformation { score, why } => format!(
            "El juego volvió a {} por información errónea del equipo arbitral: {why}",
            score.marked()
        ),
        What::Unfinished => "El partido no ha terminado en este registro.".to_owned(),
        What::NoTimes { entries } => match entries {
            1 => "Una anotación no tiene hora.".to_owned(),
            n => format!("{n} anotaciones no tienen hora."),
        },
        What::TimeBackwards { seconds } => format!(
            "Aquí el reloj se atrasó {}, así que no confíes en las horas de alrededor.",
            span(*seconds)
        ),
        What::TimeForward { seconds } => format!(
            "Según el reloj, no se anotó nada en {} durante el set. ¿Se adelantó el reloj?",
            span(*seconds)
        ),
        What::SetsOverlap { set } => {
            format!("El set {set} empieza antes de que termine el anterior. El reloj se cambió.")
        }
        What::ImplausibleTime {
            set,
            minutes,
            points,
        } => format!("Set {set}: {minutes} minutos para {points} puntos es casi imposible."),
    }
}

fn missing(field: Field, name: &impl Fn(&Team) -> String) -> String {
    match field {
        Field::Name(team) => format!("El equipo {team} no tiene nombre."),
        Field::Competition => "Falta el nombre de la competición.".to_owned(),
        Field::Venue => "Falta el nombre del gimnasio.".to_owned(),
        Field::Scheduled => "Faltan la fecha y la hora prevista.".to_owned(),
        Field::List(team) => format!("Falta la lista del equipo {}.", name(&team)),
        Field::Captain(team) => format!("Nadie está marcado como capitán de {}.", name(&team)),
        Field::Coach(team) => format!("En la lista no hay entrenador de {}.", name(&team)),
        Field::Toss(set) => format!("Falta el sorteo antes del set {set}."),
        Field::CaptainBefore(team) => {
            format!("El capitán de {} no firmó antes del partido.", name(&team))
        }
        Field::CoachBefore(team) => {
            format!(
                "El entrenador de {} no firmó antes del partido.",
                name(&team)
            )
        }
        Field::CaptainAfter(team) => {
            format!(
                "El capitán de {} no firmó después del partido.",
                name(&team)
            )
        }
        Field::Scorer => "Falta la firma del anotador.".to_owned(),
        Field::SecondReferee => "Falta la firma del segundo árbitro.".to_owned(),
        Field::FirstReferee => "Falta la firma del primer árbitro.".to_owned(),
    }
}

/// With a capital and a full stop.
fn sentence(words: &str) -> String {
    let mut letters = words.chars();
    let first: String = letters
        .next()
        .into_iter()
        .flat_map(char::to_uppercase)
        .collect();
    let end = if words.ends_with(['.', '!', '?']) {
        ""
    } else {
        "."
    };
    format!("{first}{}{end}", letters.as_str())
}
