//! The words of every difference between two records, in Spanish.

use super::entry::role;
use super::refusal::level;
use crate::by_places;
use crate::comparison::*;
use crate::score_sheet::changes;
use game::entry::{ReplayWhy, Scope};
use game::{Kind, Who};
use reports::compare::{Comparison, Difference, What, Which};
use reports::one_match::Part;
use rules::{ByTeam, Cause, Preset, Score, Team};

/// In Spanish.
pub static WORDS: ComparisonWords = ComparisonWords {
    no_difference: "Los dos registros coinciden.",
    difference,
    parting,
};

fn difference(difference: &Difference, comparison: &Comparison) -> String {
    let names = &comparison.names;
    let when = when(difference);
    match &difference.what {
        What::OtherMatch {
            part,
            certain,
            first,
            second,
        } => other_match(*part, *certain, first, second),
        What::LettersExchanged => {
            "El equipo A del primer registro es el B del segundo. La comparación lo tiene en \
             cuenta."
                .to_owned()
        }
        What::Rules => "Los dos registros no se juegan con las mismas reglas.".to_owned(),
        What::Point {
            first,
            second,
            longer,
        } => {
            let mut say = point(&when, first.as_ref(), second.as_ref(), names);
            if let Some((which, more)) = longer {
                say.push_str(&format!(
                    " Por eso el set tiene {} más en el {} registro.",
                    points(*more),
                    ordinal(*which)
                ));
            }
            say
        }
        What::Stops { which, more } => format!(
            "{when} el {} registro no tiene más puntos de este set, el {} tiene {more} más.",
            ordinal(*which),
            ordinal_alone(which.other())
        ),
        What::Cause { first, second } => format!(
            "{when} el primer registro dice {}, el segundo {}.",
            cause(*first),
            cause(*second)
        ),
        What::OnlyIn { which, kind } => format!(
            "{when} solo el {} registro tiene {}.",
            ordinal(*which),
            words(kind, names)
        ),
        What::NeverIn { which, times } => format!(
            "El {} registro nunca tiene esto ({}), el {} lo tiene {times} veces.",
            ordinal(*which),
            coded(difference.code),
            ordinal_alone(which.other())
        ),
        What::Moved { kind, second } => format!(
            "{when} el primer registro tiene {}, el segundo lo tiene con {}.",
            words(kind, names),
            second.marked()
        ),
        What::Otherwise { first, second } => format!(
            "{when} el primer registro tiene {}, el segundo {}.",
            words(first, names),
            words(second, names)
        ),
        What::SetOnlyIn { which, again: true } => format!(
            "Solo el {} registro empieza otra vez el set {}, en otro campo.",
            ordinal(*which),
            difference.set.unwrap_or(0)
        ),
        What::SetOnlyIn {
            which,
            again: false,
        } => format!(
            "El set {} solo está en el {} registro.",
            difference.set.unwrap_or(0),
            ordinal(*which)
        ),
    }
}

/// Why two records are not of one match, or may not be.
fn other_match(part: Part, certain: bool, first: &str, second: &str) -> String {
    let why = match part {
        Part::Names | Part::Pool => {
            format!("el primer registro es de {first}, el segundo de {second}")
        }
        Part::Number => {
            format!("el primer registro tiene el número {first}, el segundo el número {second}")
        }
        Part::Time => "el segundo registro se jugó a otra hora".to_owned(),
        Part::Points => "los dos registros tienen otros puntos".to_owned(),
    };
    if certain {
        format!("Son dos partidos distintos: {why}.")
    } else {
        format!("Revisa si son del mismo partido: {why}.")
    }
}

fn when(difference: &Difference) -> String {
    let score = difference.score.unwrap_or_default().marked();
    match (difference.set, difference.rally) {
        (Some(set), Some(rally)) => format!("Set {set}, jugada {rally}, con {score}:"),
        _ => String::new(),
    }
}

fn point(
    when: &str,
    first: Option<&(Team, Kind)>,
    second: Option<&(Team, Kind)>,
    names: &ByTeam<String>,
) -> String {
    let given = |told: &(Team, Kind)| {
        let (to, kind) = told;
        match kind {
            Kind::Rally { .. } => format!("la jugada para {}", names[*to]),
            kind => format!("un punto para {} por {}", names[*to], words(kind, names)),
        }
    };
    match (first, second) {
        (Some(first), Some(second)) => format!(
            "{when} el primer registro tiene {}, el segundo {}.",
            given(first),
            given(second)
        ),
        (Some(first), None) => {
            format!("{when} el segundo registro no tiene {}.", given(first))
        }
        (None, Some(second)) => {
            format!("{when} el primer registro no tiene {}.", given(second))
        }
        (None, None) => String::new(),
    }
}

/// Before *registro*.
fn ordinal(which: Which) -> &'static str {
    match which {
        Which::First => "primer",
        Which::Second => "segundo",
    }
}

/// Without a word behind it.
fn ordinal_alone(which: Which) -> &'static str {
    match which {
        Which::First => "primero",
        Which::Second => "segundo",
    }
}

/// The reason of a rally. Only the seconds of a service come from the rules; they are not said here, so
/// any rules do.
fn cause(cause: Cause) -> String {
    let words = match cause {
        // 12.4.4
        Cause::ServiceTime => "Saque fuera de tiempo".to_owned(),
        cause => crate::cause(cause, &Preset::International.rules()),
    };
    format!("\u{201c}{words}\u{201d}")
}

/// What one of two records never has.
fn coded(code: &str) -> String {
    match code {
        "libero_replacement" => "reemplazo del líbero".to_owned(),
        "change_courts" => "cambio de campo".to_owned(),
        code => code.replace('_', " "),
    }
}

/// An entry in words that fit behind *tiene*.
pub(super) fn words(kind: &Kind, names: &ByTeam<String>) -> String {
    let of = |what: &str, team: &Team| format!("{what} de {}", names[*team]);
    match kind {
        Kind::Toss(toss) => format!("el primer saque para {}", names[toss.first_service]),
        Kind::LineUp { team, positions } => {
            format!("{}: {}", of("la formación", team), by_places(positions))
        }
        Kind::Replay { why, .. } => match why {
            ReplayWhy::DoubleFault => "una jugada repetida por doble falta".to_owned(),
            ReplayWhy::Interference => "una jugada repetida por interferencia".to_owned(),
            ReplayWhy::Injury => "una jugada repetida por lesión".to_owned(),
            ReplayWhy::Other => "una jugada repetida".to_owned(),
        },
        Kind::TimeOut { team } => of("un tiempo muerto", team),
        Kind::Substitution {
            team, changes: c, ..
        } => format!("{} ({})", of("una sustitución", team), changes(c)),
        Kind::LiberoReplacement { team, change } => {
            format!(
                "{} ({})",
                of("un reemplazo del líbero", team),
                changes(&[*change])
            )
        }
        Kind::NewLibero { team, number, .. } => {
            format!("{} ({number})", of("un líbero nuevo", team))
        }
        Kind::ImproperRequest { team } => of("una solicitud improcedente", team),
        Kind::Delay { team, .. } => of("una demora", team),
        Kind::Misconduct {
            team,
            who,
            sanction,
        } => {
            let who = match who {
                Who::Player(number) => format!("número {number}"),
                Who::Staff(title) => role(title),
            };
            format!("{} ({who})", of(level(*sanction), team))
        }
        Kind::LateFault(fault) => of("una falta detectada tarde", &fault.team),
        Kind::LateReplacement { team } => of("un reemplazo tardío del líbero", team),
        Kind::ScoreCorrection { score, .. } => format!("el marcador corregido a {score}"),
        Kind::WrongInformation { score, .. } => {
            format!("el juego devuelto a {score} por información errónea")
        }
        Kind::TimeUp => "el final del set por tiempo".to_owned(),
        Kind::Recovery { team, number } => {
            format!("{} ({number})", of("el tiempo de recuperación", team))
        }
        Kind::Incomplete { team, scope } => {
            let scope = match scope {
                Scope::Set => "el set",
                Scope::Match => "el partido",
            };
            format!("el equipo {} incompleto para {scope}", names[*team])
        }
        Kind::Default { team } => format!("el equipo {} como no presentado", names[*team]),
        Kind::ChangeCourts => "el cambio de campo".to_owned(),
        Kind::Suspend { .. } => "una interrupción".to_owned(),
        Kind::Resume { .. } => "la reanudación".to_owned(),
        _ => "otra anotación".to_owned(),
    }
}

fn parting(set: u8, together: usize, score: Score, points: [usize; 2]) -> String {
    let [first, second] = points;
    format!(
        "Set {set}: los dos registros van juntos {}, hasta {}. El primero llega a {first} puntos \
         en total, el segundo a {second}.",
        self::points(together),
        score.marked()
    )
}

fn points(n: usize) -> String {
    match n {
        1 => "1 punto".to_owned(),
        n => format!("{n} puntos"),
    }
}
