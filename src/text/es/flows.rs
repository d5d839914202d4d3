//! The words of what happens beside the rallies: hurt players, faults found late, conduct, teams that
//! are short, interruptions, in Spanish.

use crate::flows::*;
use crate::team_name;
use app::delaying::Delaying;
use game::entry::{Fault, Level, LiberoWhy, Scope, SeenBy, Who};
use game::{Kind, State, RECOVERY_SECONDS};
use rules::{Shirt, Team};

/// In Spanish.
pub static WORDS: FlowsWords = FlowsWords {
    // ---- Somebody is hurt.
    hurt: "Alguien lesionado",
    hurt_team: "¿De qué equipo es el jugador?",
    hurt_who: "¿Qué número? (opcional)",
    number_later: "Sin número",
    not_a_player: "No es jugador",
    care_read: "Leer sobre seguridad",
    care_then: "Cuando decida el adulto responsable",
    plays_on: "El adulto responsable permite que siga: no se anota nada",
    libero_way:
        "Es un reemplazo del líbero, no una sustitución. El jugador puede volver tras una jugada \
         completa.",
    recovery_way,
    goes_on: "El juego sigue: no se anota nada",
    official_hurt:
        "Si el primer árbitro no puede seguir, el segundo árbitro ocupa su puesto. Escribe en una \
         observación quién se lesionó y quién ocupó su puesto.",
    nobody_can_come: "Según las reglas, nadie puede entrar por este jugador.",
    care_no_number:
        "Para sustituir al jugador, toca \u{201c}Cambio\u{201d} debajo de la mitad del equipo.",
    was_hurt,
    recovery,
    cannot_go_on: "El equipo está incompleto",
    care_title,
    way_on,
    number,
    // ---- More about a team.
    aside: "Qué más pasó",
    happened: "¿Qué pasó?",
    request_delay: "Solicitud con demora",
    other_delay: "Otra demora",
    requests_more:
        "Una solicitud que no se puede conceder, pero no demora el juego, es improcedente. La \
         primera de un equipo en el partido solo se anota. Una solicitud que demora el juego es \
         una demora.",
    delaying,
    delay_means,
    delay_instead,
    late_libero: "Líbero tardío",
    late_replacement: "Reemplazo tardío del líbero",
    conduct: "Conducta incorrecta",
    late: "Falta detectada tarde",
    new_libero: "Nuevo líbero",
    short: "Incompleto o no presentado",
    panel_title,
    // ---- Misconduct.
    conduct_who: "¿Quién?",
    ladder_clear: "Ninguna sanción hasta ahora en este partido.",
    first_referee_decides: "Decide el primer árbitro.",
    somebody_else: "Otra persona",
    next_step: "próximo paso",
    ladder,
    person,
    had,
    record_sanction,
    // ---- A fault found late.
    late_what: "¿Qué estaba mal?",
    late_since: "¿Desde qué marcador?",
    late_unknown: "Nadie lo sabe",
    late_found: "¿Cuándo se detectó?",
    found_rally: "Se paró el juego",
    found_after: "Acabada la jugada",
    late_places:
        "Pon ahora las posiciones correctas. Toca dos posiciones para cambiarlas entre sí, o una \
         posición y un número del banco.",
    set_places: "Corregir las posiciones",
    keep_places: "Dejar las posiciones",
    late_nothing: "No hay ningún set que corregir.",
    late_set: "¿En qué set empezó?",
    late_record: "Anotar la falta",
    fault,
    set_number,
    since_score,
    place_label,
    // ---- A new libero.
    libero_why: "¿Por qué?",
    libero_old: "¿Quién deja de ser líbero?",
    libero_new: "¿Quién pasa a ser líbero?",
    no_new_libero:
        "Ahora no se puede nombrar un nuevo líbero. No lo hay mientras un líbero pueda jugar, y \
         quien está en el campo no puede serlo.",
    name_libero,
    libero_why_button,
    // ---- A team cannot play on.
    short_more:
        "Esto acaba el set o el partido. El reglamento de tu competición va primero. Pregunta al \
         organizador si puedes.",
    short_choice,
    record_short,
    // ---- Interruptions.
    suspend_why: "¿Por qué? (opcional)",
    suspend_whys: ["Luz", "Suelo o red", "Alarma", "Público"],
    suspend_now: "Interrumpir el juego ya",
    resume_more:
        "En este campo, el juego sigue como está. En otro campo, este set se juega otra vez desde \
         0:0.",
    resume_other_yes: "Jugar otra vez este set en el otro campo",
    // ---- Who did it.
    who_did: "¿Quién? (opcional)",
    did_it,
    who_saw: "¿Quién se lo señaló al primer árbitro? (opcional)",
    seen_by,
    // ---- Taking back.
    reason: "Motivo",
    reason_of,
    strike_why: "¿Por qué? (opcional)",
    // ---- A tally grows.
    name_teams: "Nombrar los equipos",
    names_record: "Guardar nombres",
    grow: "Pasar a partido completo",
    grow_more:
        "Se conservan todos los puntos. Antes del próximo set, la aplicación pide las listas de \
         equipo y las formaciones.",
    name_of,
    grow_to,
    // ---- At a glance.
    glance: "Campo grande",
    whole: "Todos los botones",
    lock: "Bloquear",
    locked: "Bloqueado. Toca 1 y luego 2.",
    corner_1: "Desbloquear, esquina 1",
    corner_2: "Desbloquear, esquina 2",
    // ---- The time for the service.
    whistle: "Pitido: empezar",
    service_clock,
    service_left,
    locked_score,
};

fn recovery_way() -> String {
    format!(
        "Nadie puede entrar. El jugador tiene {} minutos para recuperarse, una vez por partido. Si \
         no se recupera, el equipo está incompleto.",
        RECOVERY_SECONDS / 60
    )
}

fn was_hurt(number: Shirt) -> String {
    format!(
        "El número {number} se lesionó o se enfermó en este partido. Después de un golpe en la cabeza nadie \
         vuelve sin el permiso de personal médico autorizado."
    )
}

fn recovery() -> String {
    format!("{} minutos para recuperarse", RECOVERY_SECONDS / 60)
}

fn care_title(name: &str, number: Option<Shirt>) -> String {
    match number {
        Some(number) => format!("{name}: lesión del número {number}"),
        None => format!("{name}: lesión de un jugador"),
    }
}

fn way_on(kind: &Kind) -> String {
    match kind {
        Kind::Substitution { changes, .. } => {
            let all: Vec<String> = changes.iter().map(crate::one_change).collect();
            all.join(", ")
        }
        Kind::LiberoReplacement { change, .. } => crate::one_change(change),
        Kind::Recovery { .. } => recovery(),
        Kind::NewLibero { number, .. } => format!("El {number} pasa a ser líbero"),
        _ => String::new(),
    }
}

fn number(number: Shirt) -> String {
    format!("Número {number}")
}

fn delaying(what: Delaying) -> &'static str {
    match what {
        Delaying::Improper => crate::improper(),
        Delaying::Request => request_delay(),
        Delaying::Other => other_delay(),
        Delaying::LateReplacement => late_replacement(),
    }
}

fn delay_means(what: Delaying) -> &'static str {
    match what {
        Delaying::Improper => {
            "Una solicitud que no se puede conceder, pero no demora el juego. Llegó tarde, era una \
             de más, era la segunda en una interrupción o la hizo quien no puede pedir."
        }
        Delaying::Request => {
            "Una solicitud que demoró el juego: el árbitro la rechazó, o era para una sustitución \
             ilegal."
        }
        Delaying::Other => {
            "Alguien del equipo demora el juego. Por ejemplo, el equipo tarda en volver o en sacar."
        }
        Delaying::LateReplacement => {
            "El líbero entró o salió después del pitido y antes del golpe de saque. El reemplazo \
             vale."
        }
    }
}

fn delay_instead(instead: Delaying) -> &'static str {
    match instead {
        Delaying::Improper => "No demoró el juego: solicitud improcedente",
        Delaying::Request | Delaying::Other | Delaying::LateReplacement => {
            "Demoró el juego: es una demora"
        }
    }
}

fn panel_title(what: &str, name: &str) -> String {
    format!("{what}, {name}")
}

fn ladder(state: &State, team: Team) -> Vec<String> {
    state
        .team(team)
        .conduct
        .iter()
        .map(|(who, level)| format!("{}: {}", crate::level(*level), person(who)))
        .collect()
}

fn person(who: &Who) -> String {
    super::entry::person(who)
}

fn had(level: Option<Level>) -> String {
    match level {
        Some(level) => format!("Hasta ahora: {}.", super::refusal::level(level)),
        None => "Ninguna sanción hasta ahora.".into(),
    }
}

fn record_sanction(level: Level, who: &Who) -> String {
    format!("{}, {}", crate::level(level), person(who))
}

fn fault(fault: Fault) -> &'static str {
    match fault {
        Fault::Rotation => "Falta de rotación",
        Fault::IllegalSubstitution => "Sustitución ilegal",
        Fault::IllegalLibero => "Líbero ilegal",
        Fault::WrongLineUp => "Formación errónea",
        Fault::UnregisteredPlayer => "No está en la lista",
    }
}

fn set_number(number: u8) -> String {
    format!("Set {number}")
}

fn since_score(score: &str) -> String {
    format!("Desde {score}")
}

fn place_label(place: usize, number: Shirt) -> String {
    format!("Posición {place}: {number}")
}

fn name_libero(number: Shirt) -> String {
    format!("El {number} es ahora el líbero")
}

fn libero_why_button(why: LiberoWhy) -> &'static str {
    match why {
        LiberoWhy::Unable => "Lesión o enfermedad",
        LiberoWhy::Declared => "Lo declara el entrenador",
    }
}

fn short_choice(scope: Option<Scope>) -> &'static str {
    match scope {
        Some(Scope::Set) => "Incompleto, este set",
        Some(Scope::Match) => "Incompleto, el partido",
        None => "No está o rehúsa jugar",
    }
}

fn record_short(scope: Option<Scope>, name: &str) -> String {
    match scope {
        Some(Scope::Set) => format!("{name} pierde este set"),
        Some(Scope::Match) => format!("{name} pierde el partido: equipo incompleto"),
        None => format!("{name} pierde el partido: no presentado"),
    }
}

fn did_it(number: Shirt) -> String {
    format!("Fue el número {number}")
}

fn seen_by(who: SeenBy) -> &'static str {
    match who {
        SeenBy::SecondReferee => "Segundo árbitro",
        SeenBy::LineJudge => "Juez de línea",
        SeenBy::Scorer => "Anotador",
    }
}

fn reason_of(n: u32, words: &str) -> String {
    format!("Motivo de la anotación {n}, {words}")
}

fn name_of(team: Team) -> String {
    format!("Equipo {team}")
}

fn grow_to(preset: &str) -> String {
    format!("Jugar según: {preset}")
}

fn service_clock(on: bool, seconds: u16) -> String {
    let how = if on { "encendido" } else { "apagado" };
    format!("Reloj de saque, {seconds} segundos: {how}")
}

fn service_left(seconds: i64) -> String {
    if seconds == 0 {
        "Se acabó el tiempo de saque".into()
    } else {
        format!("{seconds} s para sacar")
    }
}

fn locked_score(state: &State, left: Team) -> String {
    let points = state.score();
    format!(
        "{} {} : {} {}",
        team_name(state, left),
        points[left],
        points[left.other()],
        team_name(state, left.other())
    )
}
