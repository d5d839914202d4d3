//! The remarks of a sheet in words, in Spanish.

use super::entry::item;
use crate::remark::*;
use crate::score_sheet::{changes, clock_doubt};
use crate::{question, refusal, Teams};
use game::entry::Forced;
use game::{Joined, Protest};
use reports::{Corrected, Remark};

/// In Spanish.
pub static WORDS: RemarkWords = RemarkWords { remark };

fn remark(remark: &Remark, teams: Teams) -> String {
    let name = |team| teams.name(team);
    match remark {
        Remark::Clock(doubt) => clock_doubt(*doubt),
        Remark::Refused {
            entry,
            refusal: why,
        } => format!(
            "La anotación {entry} no cuenta ({}): {}",
            why.rule(),
            refusal(why, teams)
        ),
        Remark::Insisted { advice, why } => format!(
            "Anotado contra la regla {} por decisión del primer árbitro: {why}. El aviso era: {}",
            advice.rule(),
            refusal(advice, teams)
        ),
        Remark::TakenBack { entry, by, why } => {
            let why = why.as_ref().map(|w| format!(": {w}")).unwrap_or_default();
            format!("La anotación {entry} se deshizo por la anotación {by}{why}.")
        }
        Remark::Written {
            team: Some(team),
            text,
        } => format!("{}: {text}", name(*team)),
        Remark::Written { team: None, text } => text.clone(),
        Remark::CheckFailed(check) => match &check.note {
            Some(note) => format!("Revisión fallida: {} ({note}).", item(&check.item)),
            None => format!("Revisión fallida: {}.", item(&check.item)),
        },
        Remark::CheckCleared(check) => format!(
            "Resuelto: {} ({}).",
            item(&check.item),
            check.note.as_deref().unwrap_or("sin nota")
        ),
        Remark::Forced {
            team,
            changes: made,
            reason,
            exceptional,
        } => {
            let sort = if *exceptional {
                "Sustitución excepcional"
            } else {
                "Sustitución"
            };
            let why = match reason {
                Forced::Injury => "lesión",
                Forced::Expelled => "expulsión",
                Forced::Disqualified => "descalificación",
            };
            format!("{sort}, {}: {} ({why}).", name(*team), changes(made))
        }
        Remark::Recovery { team, number } => {
            format!("Tiempo de recuperación, {}: número {number}.", name(*team))
        }
        Remark::NewLibero {
            team,
            number,
            replaces,
        } => {
            let old: Vec<String> = replaces.iter().map(ToString::to_string).collect();
            format!(
                "Líbero nuevo, {}: número {number} por {}.",
                name(*team),
                old.join(", ")
            )
        }
        Remark::LateFault {
            team,
            corrected: all,
        } => {
            let all: Vec<String> = all.iter().map(corrected).collect();
            let what = match all.is_empty() {
                true => "ningún marcador cambia por ahora".to_owned(),
                false => all.join("; "),
            };
            format!("Falta detectada tarde, {}: {what}.", name(*team))
        }
        Remark::CauseDropped => {
            "Falta de posición del equipo que saca: el punto cuenta, el motivo no (regla 7.4)."
                .to_owned()
        }
        Remark::Protest {
            protest: announced,
            unwritten,
        } => protest(announced, *unwritten, teams),
        Remark::ProtestWritten { team, text } => format!(
            "Protesta tal como se escribió después del partido, {}: {text}",
            name(*team)
        ),
        Remark::FirstService { set, team, left } => format!(
            "Set {set}: {} sacó primero, {} estaba a la izquierda, según se vio en el campo. No \
             hay sorteo registrado.",
            name(*team),
            name(*left)
        ),
        Remark::Joined(joined) => taken_over(joined),
        Remark::ScoreCorrected { from, to, why } => {
            format!(
                "Marcador corregido de {} a {}: {why}",
                from.marked(),
                to.marked()
            )
        }
        Remark::WrongInformation { from, to, why } => format!(
            "Información errónea del equipo arbitral: {why} El juego volvió de {} a {}.",
            from.marked(),
            to.marked()
        ),
        Remark::Discrepancy {
            team,
            changes: made,
            kept,
        } => {
            let wrong = match (made.is_empty(), kept) {
                (true, _) => "posiciones corregidas".to_owned(),
                (false, true) => format!("{}, mantenido por sustitución", changes(made)),
                (false, false) => format!("{}, corregido", changes(made)),
            };
            format!(
                "Formación de {} revisada antes del set: {wrong}, sin sanción.",
                name(*team)
            )
        }
        Remark::LateReplacement { team, again } => {
            let then = if *again {
                "una demora"
            } else {
                "se avisó al capitán"
            };
            format!("Reemplazo tardío del líbero, {}: {then}.", name(*team))
        }
        Remark::TimeUp { level: true } => {
            "Se acabó el tiempo con empate: decide una jugada más.".to_owned()
        }
        Remark::TimeUp { level: false } => {
            "Se acabó el tiempo: el set terminó con el marcador que había.".to_owned()
        }
        Remark::Suspended { why } => format!("El juego se interrumpió: {why}."),
        Remark::Resumed => "El juego se reanudó.".to_owned(),
        Remark::Incomplete(team) => format!("{}: equipo incompleto.", name(*team)),
        Remark::Default(team) => format!("{}: equipo no presentado.", name(*team)),
        Remark::Reopened { why: None } => "El registro sellado se reabrió.".to_owned(),
        Remark::Reopened { why: Some(why) } => format!("El registro sellado se reabrió: {why}."),
        Remark::Answered {
            question: asked,
            choice,
        } => {
            let (_, choices) = question(asked, teams);
            let chosen = choices.get(*choice).map_or("", String::as_str);
            format!("Decisión del primer árbitro: {chosen}.")
        }
    }
}

fn corrected(corrected: &Corrected) -> String {
    let of = match corrected.earlier {
        true => format!("set {}", corrected.set),
        false => "marcador".to_owned(),
    };
    let was = corrected.was.marked();
    match corrected.is {
        Some(is) => format!("{of} {was} corregido a {}", is.marked()),
        None => format!("set {}, {was}, ya no cuenta", corrected.set),
    }
}

/// A protest that was announced (FIVB Official Volleyball Rules 2025-2028, 5.1.2.1), and that nothing
/// was written about it after the match.
fn protest(protest: &Protest, unwritten: bool, teams: Teams) -> String {
    let by = protest
        .number
        .map(|number| format!(", número {number}"))
        .unwrap_or_default();
    let about = match protest.text.as_str() {
        "" => String::new(),
        text => format!(": {text}"),
    };
    let unwritten = if unwritten {
        " Después del partido no se escribió nada."
    } else {
        ""
    };
    let stop = if about.ends_with(['.', '!', '?']) {
        ""
    } else {
        "."
    };
    let name = teams.name(protest.team);
    format!("Protesta anunciada, {name}{by}{about}{stop}{unwritten}")
}

/// What was played before this record began.
fn taken_over(joined: &Joined) -> String {
    let sets: Vec<String> = joined.sets.iter().map(ToString::to_string).collect();
    let before = match sets.is_empty() {
        true => String::new(),
        false => format!(" Sets anteriores: {}.", sets.join(", ")),
    };
    let set = joined.sets.len() + 1;
    match joined.score {
        Some(score) => format!(
            "Este registro empezó en el set {set}, con {}.{before}",
            score.marked()
        ),
        None => format!("Este registro empezó antes del set {set}.{before}"),
    }
}
