//! The words of the court screen, in Spanish.
//!
//! One table for one topic, read a word at a time beside it: parted, it would only be
//! harder to compare with the other language.

use super::entry::{capital, item, role};
use crate::play::*;
use crate::team_name;
use game::entry::{Change, ReplayWhy, Timer, Who};
use game::{Kind, Notice, Phase, Refusal, Speaker, State, Timed};
use rules::{Cause, Group, Rules, Shirt, Team, CALL_BACK_SECONDS};

/// In Spanish.
pub static WORDS: PlayWords = PlayWords {
    court: "El campo y lo que pasa en él",
    stand: "Silla",
    table: "Mesa",
    menu: "Menú",
    undo: "Deshacer",
    undo_in_the_log: "Para deshacer una anotación anterior, abre el registro del partido.",
    no_entry: "Aún no hay anotaciones",
    time_out: "T. muerto",
    substitution: "Sustitución",
    sub: "Cambio",
    more: "Más",
    replay: "Repetir",
    play_title,
    point_pad,
    half_said,
    cause,
    libero_which: "¿Qué hizo el líbero?",
    libero_did,
    group,
    notice,
    serves: "saca",
    serving_line,
    score_news,
    tool_label,
    timer,
    end_count_down: "Fin",
    change_courts: "Cambio de campo ahora",
    courts_changed: "Campo cambiado",
    changed_courts,
    why_point,
    groups: "Grupos de motivos",
    cause_does_not_fit,
    signal_label: "Señal",
    other_reason: "Otro motivo",
    how_to_decide: "Cómo decidirlo",
    replay_title: "Repetir la jugada",
    no_time_out,
    right_act,
    close_first: "Sin punto: cierra antes el panel abierto",
    tap_a_player: "Sin punto: toca al jugador que quieres",
    held_news: "Dos pulsaciones seguidas. ¿Valen las dos?",
    held_question,
    held_yes,
    held_no,
    held_only,
    quick_taps,
    replay_which: "¿Qué jugada?",
    replay_last,
    replay_new: "Una jugada nueva: no se anotó ningún punto",
    replay_why_label: "¿Por qué?",
    score_from,
    replay_more: "Sin punto. Saca otra vez el mismo jugador.",
    replay_button,
    substitution_title,
    record_substitutions,
    substitution_reason: "Motivo",
    who_goes: "¿Quién sale?",
    who_else_goes: "¿Sale alguien más?",
    no_line_up:
        "Este equipo no tiene formación: aquí no puedes elegir jugadores. Escribe la sustitución \
         como observación, en \u{201c}Más\u{201d}.",
    goes_out,
    comes_in,
    who_comes,
    drop_change,
    dropped,
    stopped: "El juego está interrumpido",
    resume_same: "Reanudar en este campo",
    resume_other: "Reanudar en otro campo",
    suspend: "Interrumpir el juego",
    tally_begin: "¿Quién saca primero? O toca la mitad del equipo que gana la primera jugada.",
    left_serves: "Saca la izquierda",
    right_serves: "Saca la derecha",
    set: "Set",
    interval: "Intervalo",
    interval_due,
    start_interval: "Empezar el intervalo",
    or_with_service: "O di quién saca primero",
    to_sheet: "Ver el acta",
    to_review: "Repaso",
    export_match: "Exportar el partido como archivo",
    log_more: "La última anotación va primero. Una anotación deshecha sigue en la lista, pero no \
         cuenta.",
    improper: "Solicitud improcedente",
    libero: "Líbero",
    remark_label: "Observación para el acta",
    note_it: "Añadir observación",
    set_over,
    match_over,
    sides_to_come,
    begin_set,
    team_serves,
    turn_label,
    undo_question,
    undo_label,
    who,
    level_for,
};

fn play_title(state: &State) -> String {
    match state.phase() {
        Phase::Preparation => "Set 1".into(),
        Phase::BetweenSets => format!("Tras el set {}", state.set_number()),
        Phase::Playing => format!("Set {}", state.set_number()),
        Phase::Suspended => "Interrumpido".into(),
        Phase::Finished => "Fin del partido".into(),
    }
}

fn point_pad(state: &State, team: Team, left: bool) -> String {
    let side = if left { "izquierdo" } else { "derecho" };
    format!("Punto, lado {side}, {}", team_name(state, team))
}

fn half_said(
    score: u16,
    sets: u8,
    serves: Option<Option<Shirt>>,
    speaker: Option<Speaker>,
) -> String {
    let service = match serves {
        Some(Some(number)) => format!(", saca el {number}"),
        Some(None) => ", saca".to_owned(),
        None => String::new(),
    };
    let speaks = crate::speaks_said(speaker);
    format!("Puntos {score}, sets {sets}{service}{speaks}")
}

fn cause(cause: Cause, rules: &Rules) -> String {
    let words = match cause {
        Cause::BallIn => "Balón dentro",
        Cause::BallOut => "Balón fuera",
        Cause::BallTouched => "Balón tocado",
        Cause::FourHits => "Cuatro toques",
        Cause::DoubleContact => "Doble golpe",
        Cause::Catch => "Retención",
        Cause::AssistedHit => "Toque asistido",
        Cause::NetTouch => "Toque de red",
        Cause::UnderNet => "Penetración",
        Cause::OverNet => "Invasión por encima",
        Cause::AttackFault => "Falta de ataque",
        Cause::BlockFault => "Falta de bloqueo",
        Cause::LiberoFault => "Falta del líbero",
        // 12.4.4
        Cause::ServiceTime => return format!("Más de {} segundos", rules.service_seconds),
        Cause::ServiceFoot => "Pisar la línea",
        Cause::ServiceToss => "Balón no lanzado",
        Cause::ServiceNet => "Saque a la red",
        Cause::ServiceOut => "Saque fuera",
        Cause::Screen => "Pantalla",
        Cause::PositionFault => "Falta de posición",
        Cause::RotationFault => "Falta de rotación",
        Cause::OutsideCourt => "Fuera del campo",
        Cause::Antenna => "Antena",
        Cause::OutsideCrossing => "Fuera de la antena",
        Cause::ServiceWinner => "Saque directo",
        Cause::NotSaid => "Sin indicar",
    };
    words.to_owned()
}

fn libero_did(cause: Cause) -> String {
    let did = if cause == Cause::BlockFault {
        "Bloqueó o intentó bloquear"
    } else {
        "Atacó, o colocó en la zona de ataque"
    };
    match cause.signal() {
        Some(signal) => format!("{did}: señal {}", signal.number()),
        None => did.to_owned(),
    }
}

fn group(group: Group) -> &'static str {
    match group {
        Group::Ball => "Balón",
        Group::Hits => "Toques",
        Group::Net => "Red",
        Group::Service => "Saque",
        Group::Positions => "Posición",
    }
}

fn notice(notice: &Notice, state: &State) -> String {
    let name = |team: &Team| team_name(state, *team);
    match notice {
        Notice::DoNotStart { item: what } => format!("No empieces: problema con {}", item(what)),
        Notice::TeamList { team } => format!("Falta la lista de {}", name(team)),
        Notice::Toss => "Sorteo".into(),
        Notice::LineUp { team } => format!("Falta la formación de {}", name(team)),
        Notice::ChangeCourts => "Cambio de campo ahora".into(),
        Notice::SetPoint { team } => format!("Punto de set: {}", name(team)),
        Notice::MatchPoint { team } => format!("Punto de partido: {}", name(team)),
        Notice::MustSubstitute { team, player } => {
            format!("{}: el {player} debe salir, sustitución ya", name(team))
        }
        Notice::LiberoMustLeave { team, player } => {
            format!("El líbero {player} de {} debe salir ya", name(team))
        }
        Notice::LastTimeOut { team } => format!("{}: no quedan tiempos muertos", name(team)),
        Notice::SubstitutionsLeft { team, left: 0 } => {
            format!("{}: no quedan sustituciones", name(team))
        }
        Notice::SubstitutionsLeft { team, left: 1 } => {
            format!("{}: queda 1 sustitución", name(team))
        }
        Notice::SubstitutionsLeft { team, left } => {
            format!("{}: quedan {left} sustituciones", name(team))
        }
        Notice::GameCaptain { team } => crate::game_captain_missing(state, *team),
        Notice::Question { .. } => "Una pregunta para el primer árbitro".into(),
        Notice::CauseDropped { .. } => {
            "El punto cuenta, el motivo no: el equipo que saca puede ponerse donde quiera en su \
             campo"
                .into()
        }
    }
}

fn serving_line(state: &State) -> String {
    match state.serving() {
        Some((team, Some(number))) => format!("Saca {}: el {number}", team_name(state, team)),
        Some((team, None)) => format!("Saca {}", team_name(state, team)),
        None => "Toca la mitad del equipo que gana la jugada".into(),
    }
}

fn score_news(state: &State) -> String {
    match state.phase() {
        Phase::BetweenSets => set_over(state),
        Phase::Finished => match_over(state),
        _ => {
            let score = state.score();
            let a = format!("{} {}", team_name(state, Team::A), score.a);
            let b = format!("{} {}", team_name(state, Team::B), score.b);
            format!("{a}, {b}. {}", serving_line(state))
        }
    }
}

/// What the button of a time-out has no room for.
const TIME_OUT: &str = "Tiempo muerto";

fn tool_label(what: &str, name: &str, count: (u8, Option<u8>)) -> String {
    let (used, most) = count;
    let what = if what == time_out() { TIME_OUT } else { what };
    match most {
        Some(most) => format!("{what} {name}, usado {used} de {most}"),
        None => format!("{what} {name}, usado {used}"),
    }
}

fn timer(timer: &Timer, state: &State) -> String {
    let what = match timer.what {
        Timed::TimeOut => TIME_OUT,
        Timed::Recovery => "Recuperación",
        Timed::Interval => interval(),
        _ => "Cuenta atrás",
    };
    match timer.team {
        Some(team) => format!("{what} {}", team_name(state, team)),
        None => what.to_owned(),
    }
}

fn changed_courts(state: &State, on_left: Team) -> String {
    format!(
        "Campo cambiado: {} a la izquierda, {} a la derecha",
        team_name(state, on_left),
        team_name(state, on_left.other())
    )
}

fn why_point(name: &str) -> String {
    format!("¿Por qué es punto de {name}?")
}

fn cause_does_not_fit(server_lost: bool) -> &'static str {
    if server_lost {
        "El equipo que sacó perdió esta jugada: ese no puede ser el motivo."
    } else {
        "El equipo que sacó ganó esta jugada: ese no puede ser el motivo."
    }
}

fn no_time_out(why: &Refusal) -> &'static str {
    match why {
        Refusal::NoTimeOutLeft { .. } => "Agotados",
        Refusal::AfterReplay | Refusal::RequestBarred { .. } => "Aún no",
        _ => "Ahora no",
    }
}

fn right_act(act: &Kind) -> &'static str {
    match act {
        Kind::ImproperRequest { .. } => "Recházala: solicitud improcedente (15.11.1)",
        _ => "Recházala: demora (16.1.3)",
    }
}

fn held_question(name: &str, more: usize, instead: bool) -> String {
    match (more, instead) {
        (1, true) => format!("Dos pulsaciones seguidas. ¿También un punto para {name}?"),
        (1, false) => format!("Dos pulsaciones seguidas. ¿Dos puntos para {name}?"),
        // They may have come after several points.
        _ => format!("Hubo {more} pulsaciones muy pronto tras un punto. ¿Cuentan como puntos?"),
    }
}

fn held_yes(more: usize) -> String {
    match more {
        1 => "Sí, 2 puntos".to_owned(),
        _ => "Sí, todas".to_owned(),
    }
}

fn held_no(name: &str, more: usize) -> String {
    match more {
        1 => format!("Un punto, {name}"),
        _ => "No, ninguna".to_owned(),
    }
}

fn held_only(name: &str) -> String {
    format!("Un punto, {name}")
}

fn quick_taps(at_once: bool) -> &'static str {
    if at_once {
        "Dos pulsaciones rápidas: cuentan las dos"
    } else {
        "Dos pulsaciones rápidas: preguntar antes"
    }
}

fn replay_last(score: &str) -> String {
    format!("Esta jugada ({score}): se anula su punto")
}

fn score_from(state: &State, left: Team) -> String {
    let score = state.score();
    format!("{}:{}", score[left], score[left.other()])
}

fn replay_button(why: ReplayWhy) -> String {
    capital(crate::replay_why(why))
}

fn substitution_title(name: &str) -> String {
    format!("Sustitución, {name}")
}

fn record_substitutions(count: usize) -> String {
    if count == 1 {
        "Anotar la sustitución".into()
    } else {
        format!("Anotar {count} sustituciones")
    }
}

fn goes_out(number: Shirt) -> String {
    format!("Sale el {number}")
}

fn comes_in(number: Shirt) -> String {
    format!("Entra el {number}")
}

fn who_comes(out: Option<Shirt>) -> String {
    match out {
        Some(out) => format!("¿Quién entra por el {out}?"),
        None => "¿Quién entra?".into(),
    }
}

fn drop_change(change: &Change) -> String {
    format!("Quitar: {}", crate::one_change(change))
}

fn dropped(change: &Change) -> String {
    format!("{} \u{00d7}", crate::one_change(change))
}

fn interval_due(left_ms: i64) -> String {
    if left_ms <= 0 {
        "Comprueba las formaciones y luego pita el saque.".into()
    } else if left_ms <= CALL_BACK_SECONDS * 1000 {
        "Pita ya: los equipos, al campo.".into()
    } else {
        format!(
            "Cuando queden {}, pita para que vuelvan los equipos.",
            crate::minutes(CALL_BACK_SECONDS)
        )
    }
}

fn set_over(state: &State) -> String {
    state.sets().last().map_or_else(String::new, |set| {
        format!(
            "{} gana el set {}, {}:{}",
            team_name(state, set.winner),
            set.number,
            set.score[set.winner],
            set.score[set.winner.other()]
        )
    })
}

fn match_over(state: &State) -> String {
    let won = state.sets_won();
    match state.winner() {
        Some(team) => format!(
            "{} gana {}:{}",
            team_name(state, team),
            won[team],
            won[team.other()]
        ),
        None => format!("El partido acaba en empate, {}:{}", won.a, won.b),
    }
}

fn sides_to_come(state: &State, on_left: Team) -> String {
    format!(
        "{} a la izquierda, {} a la derecha.",
        team_name(state, on_left),
        team_name(state, on_left.other())
    )
}

fn begin_set(number: u8) -> String {
    format!("Empezar el set {number}")
}

fn team_serves(name: &str) -> String {
    format!("Saca {name}")
}

fn turn_label(turned: bool) -> &'static str {
    if turned {
        "Visto desde la mesa. Girar el campo para la silla"
    } else {
        "Visto desde la silla. Girar el campo para la mesa"
    }
}

fn undo_question(n: u32, words: &str) -> String {
    format!("¿Deshacer la anotación {n}, {words}?")
}

fn undo_label(n: u32, words: &str) -> String {
    format!("Deshacer la anotación {n}, {words}")
}

fn who(who: &Who) -> String {
    match who {
        Who::Player(number) => number.to_string(),
        Who::Staff(title) => role(title),
    }
}

fn level_for(person: &Who) -> String {
    match person {
        Who::Player(number) => format!("Número {number}: ¿qué nivel?"),
        Who::Staff(title) => format!("{}: ¿qué nivel?", capital(&role(title))),
    }
}
