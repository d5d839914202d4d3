//! The words of every finding on a paper sheet, in Spanish.

use super::refusal::level;
use crate::paper::*;
use crate::{refusal, Teams};
use game::SanctionKind;
use reports::paper::{BoxProblem, Fault, Finding, InAll, Mark, MarkKind};
use rules::Team;

/// In Spanish.
pub static WORDS: PaperWords = PaperWords {
    all_agrees: "Todas las casillas coinciden.",
    finding,
    mark,
};

fn finding(finding: &Finding, teams: Teams) -> String {
    let name = |team: Team| teams.name(team);
    match &finding.fault {
        Fault::RoundsDecrease { total, before } => format!(
            "El total {total} va después de {before}, pero los totales solo suben. Uno de los dos \
             está mal."
        ),
        Fault::RoundsImpossible { total, least } => format!(
            "Este turno no puede terminar con {total}: con el punto que ganó el saque ya eran \
             {least}."
        ),
        Fault::RoundsAlternate { total } => format!(
            "Antes del total {total} no hay turno del otro equipo. Allí falta una casilla, o esta \
             sobra."
        ),
        Fault::FinalMismatch {
            team,
            written,
            rounds,
        } => format!(
            "El resultado da {written} puntos a {}, pero las rondas de saque terminan con {rounds}.",
            name(*team)
        ),
        Fault::NotFinished { score: s } => {
            format!("El set no ha terminado con {}. Faltan puntos.", s.marked())
        }
        Fault::PlayedOn { over_at } => format!(
            "El set ya había terminado con {}. Lo que viene después no se pudo jugar.",
            over_at.marked()
        ),
        Fault::ScoreNeverStood { score: s, nearest } => format!(
            "El marcador nunca fue {} en este set. El más cercano es {}.",
            s.marked(),
            nearest.marked()
        ),
        Fault::AfterTheEnd { score: s } => format!(
            "Con {} el set ya había terminado, así que no se podía pedir nada.",
            s.marked()
        ),
        Fault::Against { refusal: why, .. } => refusal(why, teams),
        Fault::NotExceptional => {
            "Está marcada como excepcional, pero se podía hacer una sustitución normal.".to_owned()
        }
        Fault::OtherSanction { written, by_rule } => match by_rule {
            Some(by_rule) => format!(
                "El acta tiene aquí {}. Por lo que hubo antes, debería ser {}.",
                sanction(*written),
                sanction(*by_rule)
            ),
            None => format!("El acta tiene {} que no cuenta en ningún lado.", sanction(*written)),
        },
        Fault::PointMissing { to } => format!(
            "El castigo da un punto a {}, pero el siguiente punto del acta no es suyo.",
            name(*to)
        ),
        Fault::FirstServiceOrder { due } => {
            format!("A {} le tocaba sacar primero en este set.", name(*due))
        }
        Fault::WrongWinner { counted: Some(team) } => {
            format!("Por los sets, el partido lo ganó {}.", name(*team))
        }
        Fault::WrongWinner { counted: None } => {
            "Por los sets, nadie ha ganado el partido.".to_owned()
        }
        Fault::WrongSetCount { team, counted: 1 } => format!("{} ganó 1 set.", name(*team)),
        Fault::WrongSetCount { team, counted } => {
            format!("{} ganó {counted} sets.", name(*team))
        }
        Fault::SetTooMany => "El partido estaba decidido antes de este set.".to_owned(),
        Fault::MatchNotFinished => {
            "Los sets del acta no deciden el partido. Falta uno, o el partido no terminó.".to_owned()
        }
        Fault::TimesOverlap { start, last_end } => format!(
            "El set empieza a las {start}, antes del final del anterior a las {last_end}. Una hora \
             está mal."
        ),
        Fault::TimeBackwards { start, end } => format!(
            "El set termina a las {end}, antes de su inicio a las {start}. Una hora está mal."
        ),
        Fault::ImplausibleTime { minutes, points } => format!(
            "{minutes} minutos para {points} puntos es casi imposible. Revisa las dos horas."
        ),
        Fault::WrongMinutes { written, by_clock } => format!(
            "El acta dice {written} minutos, pero según sus horas fueron {by_clock}."
        ),
        Fault::WrongInAll {
            of,
            team,
            written,
            counted,
        } => {
            let of = match of {
                InAll::Points => "puntos",
                InAll::TimeOuts => "tiempos muertos",
                InAll::Substitutions => "sustituciones",
            };
            format!(
                "El resultado da {written} {of} a {}, pero los sets suman {counted}.",
                name(*team)
            )
        }
        Fault::Missing => "Esta casilla está vacía.".to_owned(),
    }
}

/// With its article.
fn sanction(kind: SanctionKind) -> &'static str {
    match kind {
        SanctionKind::ImproperRequest => "una solicitud improcedente",
        SanctionKind::DelayWarning => "una amonestación por demora",
        SanctionKind::DelayPenalty => "un castigo por demora",
        SanctionKind::Misconduct(of) => level(of),
    }
}

fn mark(mark: &Mark, teams: Teams) -> String {
    match &mark.kind {
        MarkKind::Box(problem) => box_problem(*problem).to_owned(),
        MarkKind::Finding(of) => finding(of, teams),
    }
}

fn box_problem(problem: BoxProblem) -> &'static str {
    match problem {
        BoxProblem::OtherIsFilled => {
            "Solo está llena la casilla del otro equipo. Llena esta o vacía las dos."
        }
        BoxProblem::NoFirstService => "Falta quién sacó primero: escribe A o B.",
        BoxProblem::SanctionUnclear => {
            "W, P, E o D necesita una persona: un número, C, AC, T o M. Para una demora, D va con \
             W o P. I va sola."
        }
        BoxProblem::NoTime => "Esto no es una hora del día. Escribe hora y minutos, como 1805.",
        BoxProblem::NoDay => "Esto no es una fecha. Escribe año, mes y día, como 20260509.",
        BoxProblem::Gap => "Esta casilla está vacía y otra después no. Llénala.",
        BoxProblem::LineIncomplete => "Esta línea no está completa. Llena sus casillas o vacíalas.",
    }
}
