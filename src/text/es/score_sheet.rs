//! The words of the score sheet, in Spanish.

use super::entry::role;
use crate::audit;
use crate::score_sheet::*;
use game::entry::Change;
use game::{Choice, DecidedBy, Level, Sanction, SanctionKind, Who};
use record::{spaced, Broken, Seal};
use reports::{ClockDoubt, LiberoTurn, SealBox, SetSheet, Sheet};
use rules::{ByTeam, Score, Shirt, Team};

/// In Spanish.
pub static WORDS: ScoreSheetWords = ScoreSheetWords {
    practice: "Partido de práctica: nadie lo jugó.",
    nothing_played: "Todavía no se ha jugado nada. El acta se llena sola.",
    result: "Resultado",
    set: "Set",
    minutes: "Min",
    columns: [
        ("P", "Puntos"),
        ("G", "Sets ganados"),
        ("T", "Tiempos muertos"),
        ("S", "Sustituciones"),
    ],
    time_outs: "Tiempos muertos",
    none: "ninguno",
    substitutions: "Sustituciones",
    liberos: "Reemplazos del líbero",
    place_columns: ["Pos.", "Empieza", "Entra, con", "Total al acabar el saque"],
    no_turn: "sin primer turno",
    running_score: "Punto a punto",
    total: "Total",
    sanctions: "Sanciones",
    remarks: "Observaciones",
    signatures: "Firmas",
    players: "Jugadores",
    key_result:
        "P puntos, G sets ganados, T tiempos muertos, S sustituciones (con las excepcionales). S \
         o R junto a un equipo: saca o recibe primero.",
    key_rounds:
        "Los totales y los marcadores de tiempos muertos, sustituciones y reemplazos del líbero \
         ponen primero los puntos propios. Los demás marcadores llevan las letras de los \
         equipos.",
    key_rounds_no_libero:
        "Los totales y los marcadores de tiempos muertos y sustituciones ponen primero los puntos \
         propios. Los demás marcadores llevan las letras de los equipos.",
    key_places:
        "Total con círculo: final del set; a rayas si se ganó con el saque del otro equipo. \
         Número pequeño: quién sacó, si no fue el titular. Cruz: sin primer turno, porque el \
         equipo recibió.",
    key_entered: "Número con círculo: el titular volvió por ese sustituto.",
    key_exceptional: "E: sustitución excepcional.",
    key_penalty: "Punto en recuadro: por un castigo o una falta detectada tarde.",
    key_cancelled: "Punto tachado: anulado.",
    second_page: "página 2",
    not_over: "El partido no ha terminado.",
    level_end: "El partido terminó en empate.",
    signer,
    signed_before: "Antes del partido",
    signed_after: "Después del partido",
    not_signed: "Sin firmas después del partido en el registro.",
    sign_open: "sin firmar",
    signed_by_tap: "firmado",
    signed_another_result: "firmó otro resultado",
    drawn: "firma dibujada",
    seal_label: "Sello",
    seal_shows:
        "Compara este código con el que se escribió o se leyó en voz alta en su momento. Si son \
         iguales, ninguna anotación anterior cambió desde entonces. El código no muestra quién \
         selló el registro, ni que sea verdad lo anotado.",
    changed: "Este registro se cambió después de escribirse",
    broken,
    seal,
    left_open,
    competition: "Competición",
    division: "Categoría",
    match_no: "Partido",
    venue: "Gimnasio",
    court: "Campo",
    scheduled: "Previsto",
    date: "Fecha",
    began: "Inicio",
    ended: "Final",
    lasted_label: "Duración",
    clock: "Horas en",
    chosen,
    won_toss,
    side,
    captain: ("C", "capitán"),
    libero: ("L", "líbero"),
    opens,
    won_by,
    how,
    set_heading,
    times,
    kept_from,
    lasted,
    courts_changed,
    own_first,
    change,
    changes,
    libero_turn,
    exceptional: " E",
    game_captains_label: "Capitán en juego",
    game_captains,
    sanction,
    at,
    round,
    running,
    days,
    clock_doubt,
};

fn signer(role: &str) -> String {
    const KNOWN: [(&str, &str); 7] = [
        ("captain A", "Capitán A"),
        ("captain B", "Capitán B"),
        ("coach A", "Entrenador A"),
        ("coach B", "Entrenador B"),
        ("scorer", "Anotador"),
        ("second referee", "Segundo árbitro"),
        ("first referee", "Primer árbitro"),
    ];
    let known = KNOWN.iter().find(|known| same_role(role, known.0));
    known.map_or_else(|| role.replace('_', " "), |known| known.1.to_owned())
}

fn broken(broken: &[Broken]) -> Vec<String> {
    const MOST: usize = 5;
    let say = |broken: &Broken| match broken {
        Broken::Link { entry } => format!(
            "La anotación {entry} no coincide con su enlace. Se cambió, o algo anterior se cambió \
             o se quitó."
        ),
        Broken::Seal(seal) => format!("El sello de la anotación {} no coincide.", seal.entry),
    };
    let mut sentences: Vec<String> = broken.iter().take(MOST).map(say).collect();
    if broken.len() > MOST {
        sentences.push(format!("Y {} más.", broken.len() - MOST));
    }
    sentences
}

fn seal(of: &SealBox, last: &Seal, at: Option<&str>) -> String {
    let at = at.map(|at| format!(" el {at}")).unwrap_or_default();
    let again = match of.seals.len() {
        0 | 1 => String::new(),
        n => format!(" Se selló {n} veces, con reaperturas entre ellas."),
    };
    match (last.fits(), of.holds) {
        (false, _) => format!(
            "EL SELLO NO COINCIDE: se puso{at} con el código {}, y lo que está aquí da {}. Algo se \
             cambió.{again}",
            spaced(&last.code),
            spaced(&last.found)
        ),
        (true, true) => format!("Sellado{at} con este código.{again}"),
        (true, false) => format!(
            "Sellado{at} con el código {}; después reabierto y no sellado otra vez.",
            spaced(&last.code)
        ),
    }
}

fn left_open(sheet: &Sheet) -> Option<String> {
    let open = &sheet.seal.left_open;
    let sentences: Vec<String> = open
        .iter()
        .map(|f| audit::finding(f, sheet.into()))
        .collect();
    (!sentences.is_empty()).then(|| {
        format!(
            "Sellado aunque esto quedó pendiente: {}",
            sentences.join(" ")
        )
    })
}

fn chosen(choice: Choice) -> &'static str {
    match choice {
        Choice::Serve => "sacar",
        Choice::Receive => "recibir",
        Choice::Left => "el lado izquierdo",
        Choice::Right => "el lado derecho",
    }
}

fn won_toss(name: &str, choice: Choice) -> String {
    format!("Sorteo ganado por {name}, que eligió {}", chosen(choice))
}

fn side(left: bool) -> &'static str {
    if left {
        "izquierda"
    } else {
        "derecha"
    }
}

fn opens(serves: bool) -> (&'static str, &'static str) {
    if serves {
        ("S", "saca primero")
    } else {
        ("R", "recibe primero")
    }
}

fn won_by(name: &str, sets: ByTeam<u8>, winner: Team) -> String {
    format!("{name} ganó {}:{}", sets[winner], sets[winner.other()])
}

fn how(how: DecidedBy) -> Option<&'static str> {
    match how {
        DecidedBy::Played => None,
        DecidedBy::Incomplete => Some("equipo incompleto"),
        DecidedBy::Default => Some("no presentado"),
        DecidedBy::Joined => Some("antes de empezar este registro"),
        DecidedBy::Unregistered => Some("jugador fuera de la lista"),
    }
}

fn set_heading(number: u8) -> String {
    format!("Set {number}")
}

fn times(began: Option<&str>, ended: Option<&str>, minutes: Option<i64>) -> Vec<String> {
    let clock = match (began, ended) {
        (Some(began), Some(ended)) => Some(format!("{began}\u{2013}{ended}")),
        (Some(began), None) => Some(format!("desde {began}")),
        (None, _) => None,
    };
    let minutes = minutes.map(|minutes| format!("{minutes} min"));
    clock.into_iter().chain(minutes).collect()
}

fn kept_from(set: &SetSheet, time: &dyn Fn(Option<i64>) -> Option<String>) -> Option<String> {
    let (at, score) = set.taken_over?;
    Some(match time(at) {
        Some(at) => format!("registrado desde {at} con {}", score.marked()),
        None => format!("registrado desde {}", score.marked()),
    })
}

fn lasted(minutes: i64) -> String {
    format!("{} h {:02} min", minutes / 60, minutes % 60)
}

fn courts_changed(at: Score) -> String {
    format!("cambio de campo con {}", at.marked())
}

fn own_first(score: Score, team: Team) -> String {
    format!("{}:{}", score[team], score[team.other()])
}

fn change(out: Shirt, into: Shirt) -> String {
    format!("{into} por {out}")
}

fn changes(all: &[Change]) -> String {
    let all: Vec<String> = all.iter().map(|c| change(c.out, c.into)).collect();
    all.join(", ")
}

fn libero_turn(turn: &LiberoTurn, team: Team) -> String {
    let from = own_first(turn.from, team);
    let change = change(turn.change.out, turn.change.into);
    match turn.to {
        Some(to) => format!("{change} {from}\u{2013}{}", own_first(to, team)),
        None => format!("{change} {from}"),
    }
}

fn game_captains(set: &SetSheet, team: Team) -> Vec<String> {
    let of = set.game_captains.iter().filter(|named| named.team == team);
    of.map(|named| format!("{} desde {}", named.number, own_first(named.score, team)))
        .collect()
}

fn sanction(sanction: &Sanction) -> String {
    let kind = match sanction.kind {
        SanctionKind::ImproperRequest => "solicitud improcedente",
        SanctionKind::DelayWarning => "amonestación por demora",
        SanctionKind::DelayPenalty => "castigo por demora",
        SanctionKind::Misconduct(Level::Warning) => "amonestación",
        SanctionKind::Misconduct(Level::Penalty) => "castigo",
        SanctionKind::Misconduct(Level::Expulsion) => "expulsión",
        SanctionKind::Misconduct(Level::Disqualification) => "descalificación",
    };
    let who = match &sanction.who {
        Some(Who::Player(number)) => format!(", número {number}"),
        Some(Who::Staff(title)) => format!(", {}", role(title)),
        None => String::new(),
    };
    format!("{kind}{who}")
}

fn at(set: u8, at: Score) -> String {
    format!("Set {set}, {}:", at.marked())
}

fn round(server: Option<Shirt>, total: u16) -> String {
    match server {
        Some(server) => format!("El número {server} sacó hasta {total}"),
        None => format!("marcador final {total}"),
    }
}

fn running(name: &str, last: u16) -> String {
    match last {
        1 => format!("{name}: 1 punto"),
        last => format!("{name}: {last} puntos"),
    }
}

fn days(count: i64) -> String {
    format!("{count} días")
}

fn clock_doubt(doubt: ClockDoubt) -> String {
    match doubt {
        ClockDoubt::Back { seconds } => format!(
            "El reloj del teléfono se atrasó {} antes de esta anotación. El orden de las \
             anotaciones es correcto.",
            span(seconds)
        ),
        ClockDoubt::Forward { seconds } => format!(
            "Según el reloj del teléfono, antes de esta anotación pasaron {} durante el set. Puede \
             que el reloj se adelantara.",
            span(seconds)
        ),
    }
}
