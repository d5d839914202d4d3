//! Entries in words, for the last line of the court and the list of all entries, in Spanish.

use crate::entry::*;
use crate::{by_places, team_name};
use game::entry::{Change, Court, Fault, Forced, Level, ReplayWhy, Scope, TimerAction, Who};
use game::{Entry, Kind, Outcome, State, Timed};
use rules::{Step, Team};

/// In Spanish.
pub static WORDS: EntryWords = EntryWords {
    entry,
    entered,
    outcome,
    one_change,
    replay_why,
    forced,
    level,
};

fn entry(entry: &Entry, state: &State) -> String {
    let line = state.sanction_of(entry.n);
    line.and_then(|line| crate::became(&entry.kind, line, state))
        .unwrap_or_else(|| entered(&entry.kind, state))
}

fn entered(kind: &Kind, state: &State) -> String {
    let name = |team: Team| team_name(state, team);
    match kind {
        Kind::Match(_) => "Partido abierto".into(),
        Kind::Heading(_) => "Datos del partido corregidos".into(),
        Kind::TeamList(list) => format!(
            "Lista de {}: {}",
            name(list.team),
            match list.players.len() {
                1 => "1 jugador".to_owned(),
                n => format!("{n} jugadores"),
            }
        ),
        Kind::Check(check) if check.ok => format!("Revisado: {}", item(&check.item)),
        Kind::Check(check) => format!("Problema: {}", item(&check.item)),
        Kind::Toss(toss) => {
            let outcome = format!(
                "Sorteo: saca primero {}, {} a la izquierda",
                name(toss.first_service),
                name(toss.left)
            );
            match toss.chosen() {
                Some((by, choice)) => {
                    let won = crate::setup::won_and_chose(&name(by), choice);
                    format!("{outcome}. {won}")
                }
                None => outcome,
            }
        }
        Kind::FirstService { team, left } => format!(
            "Saca primero {}, {} a la izquierda",
            name(*team),
            name(*left)
        ),
        Kind::Joined(joined) => match joined.score {
            Some(score) => format!(
                "Registrado desde el set {}, {}",
                joined.sets.len() + 1,
                score.marked()
            ),
            None => format!("Registrado desde el set {}", joined.sets.len() + 1),
        },
        Kind::ScoreCorrection { score, why, .. } => {
            format!("Marcador corregido a {}: {why}", score.marked())
        }
        Kind::WrongInformation { score, why } => {
            format!("Información errónea, se vuelve a {}: {why}", score.marked())
        }
        Kind::Discrepancy {
            team,
            changes,
            kept,
        } => {
            let changes = changes_in_words(changes);
            let end = if *kept {
                "se mantiene por sustitución"
            } else {
                "corregido"
            };
            match changes.is_empty() {
                true => format!(
                    "Formación de {} revisada: posiciones corregidas",
                    name(*team)
                ),
                false => format!("Formación de {} revisada: {changes}, {end}", name(*team)),
            }
        }
        Kind::LateReplacement { team } => {
            format!("Reemplazo tardío del líbero {}", name(*team))
        }
        Kind::TimeUp => "Se acabó el tiempo".into(),
        Kind::LineUp { team, positions } => {
            format!("Formación de {}: {}", name(*team), by_places(positions))
        }
        Kind::BeginSet => "Set empezado".into(),
        Kind::Rally { won_by, cause, .. } => match cause {
            Some(why) => format!(
                "Punto {}: {}",
                name(*won_by),
                crate::cause(*why, state.rules())
            ),
            None => format!("Punto {}", name(*won_by)),
        },
        Kind::Explain { cause, .. } => format!("Motivo: {}", crate::cause(*cause, state.rules())),
        Kind::Replay {
            why,
            rally: Some(_),
            ..
        } => format!("Jugada repetida, su punto anulado: {}", replay_why(*why)),
        Kind::Replay { why, .. } => format!("Jugada repetida: {}", replay_why(*why)),
        Kind::TimeOut { team } => format!("Tiempo muerto {}", name(*team)),
        Kind::Substitution { team, changes, .. } => {
            format!("Sustitución {}: {}", name(*team), changes_in_words(changes))
        }
        Kind::LiberoReplacement { team, change } => {
            format!("Líbero {}: {}", name(*team), one_change(change))
        }
        Kind::NewLibero { team, number, .. } => format!("Nuevo líbero {}: {number}", name(*team)),
        Kind::ImproperRequest { team } => format!("Solicitud improcedente {}", name(*team)),
        Kind::Delay { team, .. } => format!("Demora {}", name(*team)),
        Kind::Misconduct {
            team,
            who,
            sanction,
        } => format!("{} {}, {}", level(*sanction), name(*team), person(who)),
        Kind::LateFault(fault) => format!("{} {}", late(fault.fault), name(fault.team)),
        Kind::Recovery { team, number } => {
            format!("Tiempo de recuperación {}, número {number}", name(*team))
        }
        Kind::Incomplete { team, scope } => format!(
            "{}: equipo incompleto en el {}",
            name(*team),
            match scope {
                Scope::Set => "set",
                Scope::Match => "partido",
            }
        ),
        Kind::Default { team } => format!("{}: equipo no presentado", name(*team)),
        Kind::ChangeCourts => "Campo cambiado".into(),
        Kind::Suspend { why } if why.is_empty() => "Juego interrumpido".into(),
        Kind::Suspend { why } => format!("Juego interrumpido: {why}"),
        Kind::Resume { court: Court::Same } => "Juego reanudado".into(),
        Kind::Resume {
            court: Court::Other,
        } => "Juego reanudado en otro campo".into(),
        Kind::Timer(timer) => {
            let what = timed(&timer.what);
            match timer.action {
                TimerAction::Start => format!("Cuenta atrás empezada: {what}"),
                TimerAction::Stop => format!("Cuenta atrás acabada: {what}"),
            }
        }
        Kind::Remark { text, .. } => format!("Observación: {text}"),
        Kind::GameCaptain { team, number } => {
            format!("Capitán en juego de {}: {number}", name(*team))
        }
        Kind::Protest { team, text, .. } if text.is_empty() => {
            format!("Protesta anunciada por {}", name(*team))
        }
        Kind::Protest { team, text, .. } => {
            format!("Protesta anunciada por {}: {text}", name(*team))
        }
        Kind::ProtestStatement { text, .. } => format!("Protesta escrita: {text}"),
        Kind::Sign { role, .. } => format!("Firma: {}", crate::score_sheet::signer(role)),
        Kind::Strike { entry, .. } => format!("Anotación {entry} deshecha"),
        Kind::Seal { code } => format!("Sellado: {}", record::spaced(code)),
        Kind::Reopen { why: None } => "Reabierto".into(),
        Kind::Reopen { why: Some(why) } => format!("Reabierto: {why}"),
        Kind::Answer { choice, .. } => format!("Respuesta: {}", answer(choice)),
    }
}

fn outcome(outcome: &Outcome, state: &State) -> Option<String> {
    match outcome {
        Outcome::Accepted => None,
        Outcome::Insisted(advice) => Some(format!(
            "Anotado en contra del aviso: {}",
            crate::refusal(advice, state.into())
        )),
        Outcome::Refused(why) => Some(format!("No cuenta: {}", crate::refusal(why, state.into()))),
        Outcome::Struck(by) => Some(format!("Deshecha por la anotación {by}")),
    }
}

fn changes_in_words(changes: &[Change]) -> String {
    let words: Vec<String> = changes.iter().map(one_change).collect();
    words.join(", ")
}

fn one_change(change: &Change) -> String {
    format!("{} entra por {}", change.into, change.out)
}

fn replay_why(why: ReplayWhy) -> &'static str {
    match why {
        ReplayWhy::DoubleFault => "falta de los dos equipos",
        ReplayWhy::Interference => "algo en el campo",
        ReplayWhy::Injury => "alguien lesionado",
        ReplayWhy::Other => "otro motivo",
    }
}

fn forced(reason: Option<Forced>) -> &'static str {
    match reason {
        None => "Normal",
        Some(Forced::Injury) => "Lesión o enfermedad",
        Some(Forced::Expelled) => "Expulsión",
        Some(Forced::Disqualified) => "Descalificación",
    }
}

fn level(level: Level) -> &'static str {
    match level {
        Level::Warning => "Amonestación",
        Level::Penalty => "Castigo",
        Level::Expulsion => "Expulsión",
        Level::Disqualification => "Descalificación",
    }
}

pub(super) fn person(who: &Who) -> String {
    match who {
        Who::Player(number) => format!("número {number}"),
        Who::Staff(title) => role(title),
    }
}

fn late(fault: Fault) -> &'static str {
    match fault {
        Fault::Rotation => "Falta de rotación",
        Fault::IllegalSubstitution => "Sustitución ilegal",
        Fault::IllegalLibero => "Reemplazo ilegal del líbero",
        Fault::WrongLineUp => "Formación errónea",
        Fault::UnregisteredPlayer => "Jugador fuera de la lista",
    }
}

/// What a count-down is for; one that nobody knows stays as it was written.
fn timed(what: &Timed) -> &str {
    match what {
        Timed::TimeOut => "tiempo muerto",
        Timed::Interval => "intervalo",
        Timed::WarmUp => "calentamiento",
        Timed::Recovery => "recuperación",
        Timed::Service => "saque",
        Timed::LateTeam => "equipo con retraso",
        Timed::Other(what) => what,
    }
}

/// The choice that an answer names by its code; a team stays its letter.
fn answer(choice: &str) -> String {
    match choice {
        "lose_match" => "se pierde el partido".to_owned(),
        "lose_set" => "se pierde el set".to_owned(),
        "keep_set" => "el set vale".to_owned(),
        other => other.replace('_', " "),
    }
}

/// Who may sit on the bench, as the log names them.
const ROLES: [(&str, &str); 5] = [
    ("coach", "entrenador"),
    ("head coach", "entrenador principal"),
    ("assistant coach", "entrenador asistente"),
    ("therapist", "terapeuta"),
    ("doctor", "médico"),
];

/// A role of the bench within a sentence; one that nobody knows stays as it was written.
pub(super) fn role(role: &str) -> String {
    let known = ROLES
        .iter()
        .find(|known| crate::score_sheet::same_role(role, known.0));
    known.map_or_else(|| role.to_owned(), |known| known.1.to_owned())
}

/// An item of the checks within a sentence; one that nobody knows stays as it was written.
pub(super) fn item(code: &str) -> String {
    match Step::from_code(code) {
        Some(known) => lower(crate::setup::step(known)),
        None => code.replace('_', " "),
    }
}

/// The same within a sentence.
pub(super) fn lower(words: &str) -> String {
    let mut letters = words.chars();
    let first = letters.next().map(|c| c.to_lowercase().to_string());
    first.unwrap_or_default() + letters.as_str()
}

/// The same at the beginning of a sentence.
pub(super) fn capital(words: &str) -> String {
    let mut letters = words.chars();
    let first = letters.next().map(|c| c.to_uppercase().to_string());
    first.unwrap_or_default() + letters.as_str()
}
