//! What a request, a delay or misconduct becomes, in words: before it is recorded, and in the log
//! afterwards, in Spanish. Rule numbers are those of the FIVB Official Volleyball Rules 2025-2028.

use super::entry::{capital, lower, role};
use crate::sanctions::*;
use crate::{person, team_name};
use game::entry::Forced;
use game::{
    Absence, Conduct, Kind, Level, MayReturn, Sanction, SanctionEffect, SanctionKind,
    SanctionPreview, State, SubstitutionPreview, Who,
};
use rules::{Arm, Shirt};

/// In Spanish.
pub static WORDS: SanctionsWords = SanctionsWords {
    this_player: "Este jugador",
    sanction,
    cards,
    cards_and_arm,
    becomes,
    cost,
    row_cost,
    sanction_effect,
    not_alone: "Una persona joven no espera sola: pregunta al adulto responsable. Tu \
         competición puede pedir un informe.",
    how_to_give,
    for_what,
    record_it,
    other_level: "Otro nivel",
    became,
    sort,
    sort_means,
};

fn sanction(kind: SanctionKind) -> &'static str {
    match kind {
        SanctionKind::ImproperRequest => "Solicitud improcedente",
        SanctionKind::DelayWarning => "Amonestación por demora",
        SanctionKind::DelayPenalty => "Castigo por demora",
        SanctionKind::Misconduct(level) => crate::level(level),
    }
}

fn cards(kind: SanctionKind) -> &'static str {
    match kind {
        SanctionKind::ImproperRequest => "Sin tarjeta",
        SanctionKind::DelayWarning => "Tarjeta amarilla en la muñeca",
        SanctionKind::DelayPenalty => "Tarjeta roja en la muñeca",
        SanctionKind::Misconduct(Level::Warning) => "Tarjeta amarilla",
        SanctionKind::Misconduct(Level::Penalty) => "Tarjeta roja",
        SanctionKind::Misconduct(Level::Expulsion) => "Las dos tarjetas en una mano",
        SanctionKind::Misconduct(Level::Disqualification) => "Una tarjeta en cada mano",
    }
}

fn cards_and_arm(kind: SanctionKind, arm: Option<Arm>) -> String {
    match arm {
        Some(arm @ (Arm::Left | Arm::Right)) => {
            format!("{}, {}", cards(kind), lower(crate::arm(arm)))
        }
        Some(Arm::Both) | None => cards(kind).to_owned(),
    }
}

/// It goes with *solicitud* and *demora*.
fn ordinal(n: u8) -> String {
    match n {
        1 => "Primera".into(),
        2 => "Segunda".into(),
        3 => "Tercera".into(),
        4 => "Cuarta".into(),
        n => format!("{n}.ª"),
    }
}

fn becomes(preview: &SanctionPreview, before: &State) -> String {
    let line = &preview.sanction;
    match (&line.who, line.improper) {
        (Some(who), _) => format!("{}, {}", sanction(line.kind), person(who)),
        (None, Some(1)) => "Primera solicitud improcedente en este partido: solo se anota".into(),
        (None, Some(n)) => format!(
            "{} solicitud improcedente en este partido: {}",
            ordinal(n),
            lower(sanction(line.kind))
        ),
        (None, None) => format!(
            "{} demora en este partido: {}",
            ordinal(before.team(line.team).delays.saturating_add(1)),
            lower(sanction(line.kind))
        ),
    }
}

fn cost(preview: &SanctionPreview, state: &State) -> String {
    match preview.point {
        Some(to) if preview.in_coming_set => format!(
            "Cuando empiece el set {}: punto y saque para {}",
            preview.sanction.set,
            team_name(state, to)
        ),
        Some(to) => format!("Punto y saque para {}", team_name(state, to)),
        None => "Sin punto, el saque no cambia".into(),
    }
}

fn row_cost(preview: &SanctionPreview, state: &State) -> String {
    match preview.sanction.kind {
        SanctionKind::Misconduct(Level::Expulsion) => "Sin punto. Fuera el resto del set".into(),
        SanctionKind::Misconduct(Level::Disqualification) => {
            "Sin punto. Fuera el resto del partido".into()
        }
        _ => cost(preview, state),
    }
}

fn sanction_effect(effect: SanctionEffect, line: &Sanction, state: &State) -> String {
    let team = || team_name(state, line.team);
    match effect {
        SanctionEffect::NoMoreRequests => {
            format!("{} no puede hacer más solicitudes hasta que acabe la próxima jugada", team())
        }
        SanctionEffect::OnlyWarning => format!(
            "Es la única tarjeta amarilla de {} en este partido. Desde ahora, una conducta \
             incorrecta leve es castigo",
            team()
        ),
        SanctionEffect::SubstitutedAtOnce(number) => {
            format!("El número {number} se sustituye enseguida")
        }
        SanctionEffect::Leaves(absence) => {
            let how_long = match absence {
                Absence::Set => "set",
                Absence::Match => "partido",
            };
            format!("Va al vestuario del equipo durante el resto del {how_long}")
        }
        SanctionEffect::Returns(absence) => {
            let until = match absence {
                Absence::Set => "Puede volver en el próximo set",
                Absence::Match => "No puede volver en este partido",
            };
            match &line.who {
                Some(Who::Staff(title)) => format!(
                    "{until}. Mientras tanto no puede dirigir al equipo ({}). Si es el entrenador, \
                     puede hacerlo el asistente, si lo pide el capitán en juego",
                    role(title)
                ),
                Some(Who::Player(_)) | None => until.into(),
            }
        }
        SanctionEffect::Next(next) => {
            let next = lower(sanction(next));
            match (&line.who, line.kind) {
                (Some(who), _) => format!("{}, la próxima vez: {next}", capital(&person(who))),
                (None, SanctionKind::ImproperRequest) => {
                    format!("Próxima solicitud improcedente de {}: {next}", team())
                }
                (None, _) => format!("Próxima demora de {}: {next}", team()),
            }
        }
        SanctionEffect::CardShownIn(set) => {
            format!("La tarjeta se muestra cuando empiece el set {set}")
        }
        SanctionEffect::CoachToldCardsShownIn(set) => format!(
            "Díselo enseguida al entrenador, a través del capitán en juego. Las tarjetas se muestran \
             cuando empiece el set {set}"
        ),
    }
}

fn how_to_give(who: &Who) -> &'static str {
    match who {
        Who::Player(_) => "Pita, llama al jugador a la silla y muestra la sanción.",
        Who::Staff(_) => {
            "Pita, díselo a la persona a través del capitán en juego y muestra la sanción."
        }
    }
}

fn for_what(level: Level, conducts: &[Conduct]) -> String {
    if conducts.len() == Conduct::ALL.len() {
        return "Cualquier conducta incorrecta otra vez".into();
    }
    if conducts.is_empty() {
        return ONLY_IF_DECIDED.into();
    }
    let one = |conduct: &Conduct| match (conduct, level) {
        (Conduct::Minor, Level::Warning) => {
            "conducta incorrecta leve que sigue tras un aviso a través del capitán en juego"
        }
        (Conduct::Minor, _) => "conducta incorrecta leve otra vez",
        (Conduct::Rude, Level::Penalty) => "grosera: contra los buenos modales",
        (Conduct::Rude, _) => "grosera otra vez",
        (Conduct::Offensive, Level::Expulsion) => "ofensiva: insulto o desprecio",
        (Conduct::Offensive, _) => "ofensiva otra vez",
        (Conduct::Aggressive, _) => "agresiva: una agresión o una amenaza",
    };
    let all: Vec<&str> = conducts.iter().map(one).collect();
    capital(&all.join("; "))
}

/// Nothing leads there now, and yet it may be given.
const ONLY_IF_DECIDED: &str = "Solo si lo decide el primer árbitro";

fn record_it(preview: &SanctionPreview) -> String {
    let kind = preview.sanction.kind;
    let article = match kind {
        SanctionKind::DelayPenalty | SanctionKind::Misconduct(Level::Penalty) => "el",
        _ => "la",
    };
    let what = lower(sanction(kind));
    match &preview.sanction.who {
        Some(who) => format!("Anotar {article} {what}, {}", person(who)),
        None => format!("Anotar {article} {what}"),
    }
}

fn became(kind: &Kind, line: &Sanction, state: &State) -> Option<String> {
    let improper = match kind {
        Kind::ImproperRequest { .. } => line.improper?,
        Kind::Delay { .. } => 0,
        _ => return None,
    };
    let name = team_name(state, line.team);
    let what = sanction(line.kind);
    let point = match line.kind {
        SanctionKind::DelayPenalty => format!(
            ": punto y saque para {}",
            team_name(state, line.team.other())
        ),
        _ => String::new(),
    };
    Some(match improper {
        0 => format!("{what} {name}{point}"),
        1 => format!("{what} {name}, la primera: solo se anota"),
        n => format!(
            "{what} {name}, {} solicitud improcedente{point}",
            lower(&ordinal(n))
        ),
    })
}

fn sort(preview: SubstitutionPreview) -> &'static str {
    if preview.exceptional {
        "Sustitución excepcional"
    } else {
        "Sustitución normal"
    }
}

fn sort_means(preview: SubstitutionPreview, out: Shirt, reason: Option<Forced>) -> String {
    let is_hurt = reason == Some(Forced::Injury);
    let back = match preview.may_return {
        // Whether somebody who was hurt may play is not for the rules of substitution to say.
        MayReturn::ThisSet if is_hurt => {
            "puede volver en este set si tiene autorización para jugar"
        }
        MayReturn::NextSet if is_hurt => {
            "puede volver en el próximo set si tiene autorización para jugar, no en este"
        }
        MayReturn::ThisSet => "puede volver en este set",
        MayReturn::NextSet => "puede volver en el próximo set, no en este",
        MayReturn::Never => "no puede volver en este partido",
    };
    let counts = if preview.exceptional {
        "No cuenta como una de las sustituciones del set."
    } else {
        "Cuenta como una de las sustituciones del set."
    };
    format!("{}: el número {out} {back}. {counts}", sort(preview))
}
