//! The words of the desk, in Spanish.
//!
//! One table for one topic, read a word at a time beside it: parted, it would only be
//! harder to compare with the other language.

use crate::desk::*;
use crate::score_sheet::roman;
use crate::standings;
use app::machine::LocalTime;
use game::Signer;
use reports::audit::SIGN_AFTER;
use reports::list::{Line, SealState};
use reports::paper::{Cell, Draft, Part};
use reports::standings::Criterion;
use reports::FileKind;
use rules::{ByTeam, Score, Team};

/// In Spanish.
pub static WORDS: DeskWords = DeskWords {
    desk: "Escritorio",
    findings: "Por revisar",
    compare: "Dos registros",
    table: "Clasificación",
    paper: "Acta en papel",
    review: "Repaso",
    from_paper: "En papel",
    key_in: "Transcribir acta en papel",
    key_in_more:
        "Escribe lo que dice el papel, casilla por casilla. Si una casilla no puede ser correcta, \
         se marca enseguida. Abre los archivos de actas transcritas y de grupos como los de \
         partidos.",
    pool_file: "Resultados de un grupo, con su regla de clasificación",
    rule_of_file:
        "Tomada del archivo. Decide la primera línea. La siguiente solo vale entre equipos \
         empatados.",
    again: "Otro registro del mismo partido",
    give_back: "Deshacer",
    list_csv: "Lista para hoja de cálculo (CSV)",
    lead_of_both: "Cómo cambió la ventaja en los dos",
    tour: "Por dónde empezar",
    tour_table: "La clasificación del grupo 2 y sus razones",
    tour_compare: "Dos registros que no coinciden",
    tour_paper: "Un acta en papel con un error",
    tour_findings: "Qué revisar en un registro",
    tour_review: "El repaso de un partido",
    look_around: "Explorar",
    day_bring: "Añadir el torneo de ejemplo",
    day_more:
        "Ocho equipos inventados, dos grupos, un acta en papel con un error y dos registros que \
         no coinciden. Se quita con un toque.",
    day_take_away: "Quitar el torneo de ejemplo",
    day_comes: "Añadiendo el torneo de ejemplo …",
    day_is_here: "El torneo de ejemplo ya está aquí.",
    day_not_kept: "Este teléfono no pudo guardar todo el torneo de ejemplo.",
    sheet_not_begun:
        "Este teléfono no tiene sitio para otra acta. Exporta y borra partidos antiguos y prueba de nuevo.",
    day_is_gone: "El torneo de ejemplo ya no está. Tus partidos siguen igual.",
    nothing_here:
        "El escritorio está vacío. Abre archivos de partidos, varios a la vez si quieres. O \
         transcribe un acta en papel, o añade el torneo de ejemplo para explorar.",
    no_competition: "Sin competición",
    choose_all_label: "Elegir para la tabla",
    chosen: "Con los elegidos",
    compare_them: "Comparar dos",
    table_of_them: "Ver clasificación",
    choose_two:
        "Para comparar, marca justo dos registros de un partido, o un registro y su acta en \
         papel.",
    choose_some: "Marca primero los partidos de un grupo.",
    first: "Primero",
    second: "Segundo",
    they_agree: "Los dos registros coinciden en todo.",
    same_points:
        "Los dos registros coinciden en todos los puntos. Las diferencias están en la lista de \
         abajo.",
    same_course: "Los dos registros coinciden en el partido mismo.",
    rallies_around: "Las jugadas de alrededor",
    rally: "Jugada",
    why: "Por qué en este orden",
    csv: "Tabla para hoja de cálculo (CSV)",
    print: "Imprimir",
    no_results:
        "Ningún partido elegido ha terminado, así que no hay clasificación. Vuelve y elige \
         partidos con resultado.",
    rule_of_order: "La regla de clasificación de la competición",
    rule_of_order_more:
        "Decide la primera línea. La siguiente solo vale entre equipos empatados. Los equipos \
         empatados en todas comparten puesto.",
    move_up: "Subir",
    remove: "Quitar",
    points_for: "Puntos de clasificación",
    meetings: "Cuántas veces se enfrentan dos equipos",
    match_points: "Puntos de clasificación",
    columns: [
        "Puesto",
        "Equipo",
        "Jugados",
        "Ganados",
        "Perdidos",
        "Puntos de clasificación",
        "Sets",
        "Cociente de sets",
        "Puntos",
        "Cociente de puntos",
    ],
    parts: "Partes del acta",
    check_all: "Revisar casillas",
    export_paper: "Exportar el acta",
    not_kept:
        "Este teléfono no puede guardar lo que escribes. Exporta el acta antes de salir de esta \
         página.",
    keys: "Bastan las cifras: una casilla llena pasa a la siguiente. Enter o Espacio cierra una \
         casilla. En la casilla vacía al final de una lista, también pasa a lo siguiente. \
         Retroceso en una casilla vacía vuelve a la anterior. Lo que escribes se guarda al \
         momento.",
    findings_of,
    found,
    kind_of,
    in_doubt,
    ranked_by,
    pool_of,
    deleted,
    how_many_chosen,
    choose_all,
    about_entry,
    rule,
    they_part,
    who_won,
    differences,
    entries_of,
    times,
    put_higher,
    put_out,
    add,
    part_of_sheet,
    part,
    letters_of,
    place_of,
    name_of,
    short_column,
    where_is,
    no_first_turn: "X",
    rally_order,
    marks,
    teams_of,
    result_of,
    to_check,
    seal_state,
    file_kind,
};

fn findings_of(count: usize, teams: &str) -> String {
    format!("{}, {teams}", to_check(count))
}

fn found(count: usize) -> String {
    match count {
        0 => "En este registro no hay nada que revisar.".into(),
        1 => "En este registro hay una cosa que revisar.".into(),
        n => format!(
            "En este registro hay {n} cosas que revisar. Primero van las de todo el partido."
        ),
    }
}

fn kind_of(line: &Line, last: Option<LocalTime>) -> String {
    let what = if line.on_paper {
        "En papel"
    } else {
        "Registro"
    };
    let number = match line.number.as_str() {
        "" => String::new(),
        number => format!(", partido {number}"),
    };
    let when = match crate::when(last).as_str() {
        "" => String::new(),
        when => format!(", última anotación {when}"),
    };
    format!("{what}{number}{when}")
}

fn in_doubt(line: &Line) -> Option<String> {
    let name = if line.on_paper {
        "esta acta"
    } else {
        "este registro"
    };
    Some(format!("En duda: {}", standings::doubt(name, line.doubt?)))
}

fn ranked_by(criteria: &[Criterion]) -> String {
    let names: Vec<&str> = criteria.iter().map(|c| standings::criterion(*c)).collect();
    format!("Orden por {}.", names.join(", después por "))
}

fn pool_of(results: usize) -> String {
    match results {
        1 => "Grupo de un partido".into(),
        n => format!("Grupo de {n} partidos"),
    }
}

fn deleted(title: &str) -> String {
    format!("Borrado: {title}.")
}

fn how_many_chosen(count: usize) -> String {
    match count {
        0 => "Ninguno elegido".into(),
        1 => "1 elegido".into(),
        n => format!("{n} elegidos"),
    }
}

fn choose_all(group: &str) -> String {
    format!("Elegir para la tabla: {group}")
}

fn about_entry(n: u32, words: &str, time: &str) -> String {
    match time {
        "" => format!("Anotación {n}: {words}"),
        time => format!("Anotación {n}, {time}: {words}"),
    }
}

fn rule(rule: &str) -> String {
    match rule {
        "log" => "Cómo se lleva un registro".into(),
        "school" => "Un límite de esta competición".into(),
        rule => format!("Regla {rule}"),
    }
}

fn they_part(set: u8, rally: usize, score: Score) -> String {
    format!(
        "No coinciden desde el set {set}, jugada {rally}, con {}.",
        score.marked()
    )
}

fn who_won(names: &ByTeam<String>) -> String {
    format!(
        "Quién ganó cada jugada: A es {}, B es {}.",
        names.a, names.b
    )
}

fn differences(count: usize) -> String {
    match count {
        1 => "Una diferencia".into(),
        n => format!("{n} diferencias, en el orden del partido"),
    }
}

fn entries_of(entries: (Option<u32>, Option<u32>)) -> String {
    match entries {
        (Some(a), Some(b)) => {
            format!("Anotación {a} del primer registro, anotación {b} del segundo")
        }
        (Some(a), None) => format!("Anotación {a} del primer registro"),
        (None, Some(b)) => format!("Anotación {b} del segundo registro"),
        (None, None) => "Los registros completos".into(),
    }
}

fn times(times: u8) -> String {
    match times {
        1 => "Una vez".into(),
        2 => "Dos veces".into(),
        n => format!("{n} veces"),
    }
}

fn put_higher(criterion: &str) -> String {
    format!("{}: {criterion}", move_up())
}

fn put_out(criterion: &str) -> String {
    format!("{}: {criterion}", remove())
}

fn add(criterion: &str) -> String {
    format!("Después {criterion}")
}

fn part_of_sheet(set: u8) -> String {
    match set {
        Cell::HEAD => "Equipos".into(),
        Cell::RESULT => "Resultado".into(),
        set => format!("Set {set}"),
    }
}

fn part(part: Part) -> &'static str {
    match part {
        Part::Number => "Número del partido",
        Part::Day => "Fecha (20260509)",
        Part::Official => "Árbitros y anotador",
        Part::Signed => "Firmas del acta: cualquier tecla donde haya una",
        Part::Name => "Nombres",
        Part::List => "Números de la lista",
        Part::Libero => "Líberos, otra vez",
        Part::First => "Primer saque (A o B)",
        Part::LineUp => "Formación, posición I a VI",
        Part::Round => "Rondas de saque: total propio al final de cada turno",
        Part::Final => "Puntos al final",
        Part::TimeOut => "Tiempos muertos: puntos propios, los del otro equipo",
        Part::Change => "Sustituciones: sale, entra, puntos propios, los del otro equipo",
        Part::Sanction => "Sanciones: qué, quién, puntos propios, los del otro equipo",
        Part::Start => "Inicio (1805)",
        Part::End => "Final (1827)",
        Part::Minutes => "Minutos",
        Part::Winner => "Ganador (A o B)",
        Part::Sets => "Sets ganados",
        Part::AllPoints => "Puntos de todos los sets",
        Part::AllTimeOuts => "Tiempos muertos de todos los sets",
        Part::AllChanges => "Sustituciones de todos los sets",
        Part::AllMinutes => "Minutos de todos los sets",
    }
}

fn letters_of(part: Part) -> Option<&'static str> {
    Some(match part {
        Part::Change => {
            "Escribe E en cualquier casilla de la línea si la sustitución fue excepcional."
        }
        Part::Sanction => {
            "Qué: W amonestación, P castigo, E expulsión, D descalificación, I primera solicitud \
             improcedente. Quién: un número, C entrenador, AC entrenador asistente, T terapeuta, \
             M médico; D con W o P para una demora."
        }
        Part::AllPoints => "Son opcionales: pocas actas los tienen todos.",
        _ => return None,
    })
}

fn place_of(cell: Cell, draft: &Draft) -> Option<String> {
    let n = cell.row + 1;
    Some(match cell.part {
        Part::LineUp => format!("Posición {n}"),
        Part::Round => round_of(cell, draft),
        Part::TimeOut => format!("Tiempo muerto {n}"),
        Part::Change => format!("Sustitución {n}"),
        Part::Sanction => format!("Sanción {n}"),
        Part::List => "Lista".into(),
        _ => return None,
    })
}

/// A total of a turn at service as the paper has it: by column and round.
fn round_of(cell: Cell, draft: &Draft) -> String {
    let (column, round) = draft.round_of(cell);
    format!("columna {}, ronda {round}", roman(column.into()))
}

fn name_of(cell: Cell, draft: &Draft) -> String {
    let team = draft.name(cell.team);
    let n = cell.row + 1;
    let column = match (cell.part, cell.column) {
        (Part::TimeOut, 0) | (Part::Change | Part::Sanction, 2) => "puntos propios",
        (Part::TimeOut, _) | (Part::Change | Part::Sanction, 3) => "puntos del otro equipo",
        (Part::Change, 0) => "sale",
        (Part::Change, 1) => "entra",
        (Part::Change, _) => "E si fue excepcional",
        (Part::Sanction, 0) => "qué: W, P, E, D o I",
        (Part::Sanction, _) => "quién",
        _ => "",
    };
    match cell.part {
        Part::Number => "Número del partido".into(),
        Part::Day => "Fecha: año, mes, día".into(),
        Part::Official => official(cell.row).into(),
        Part::Signed => signature(cell.row),
        Part::Name => format!("Nombre del equipo {}", cell.team),
        Part::List => format!("{team}, número {n} de la lista"),
        Part::First => "Primer saque, A o B".into(),
        Part::LineUp => format!("{team}, posición {n}"),
        Part::Round => format!("{team}, {}, total", round_of(cell, draft)),
        Part::Final => format!("{team}, puntos al final"),
        Part::TimeOut => format!("{team}, tiempo muerto {n}, {column}"),
        Part::Change => format!("{team}, sustitución {n}, {column}"),
        Part::Libero => format!("{team}, líbero {n}"),
        Part::Sanction => format!("{team}, sanción {n}, {column}"),
        Part::Start => "Hora en que empezó el set".into(),
        Part::End => "Hora en que terminó el set".into(),
        Part::Minutes => "Minutos que duró el set".into(),
        Part::Winner => "Ganador, A o B".into(),
        Part::Sets => format!("{team}, sets ganados"),
        Part::AllPoints => format!("{team}, puntos de todos los sets"),
        Part::AllTimeOuts => format!("{team}, tiempos muertos de todos los sets"),
        Part::AllChanges => format!("{team}, sustituciones de todos los sets"),
        Part::AllMinutes => "Minutos de todos los sets".into(),
    }
}

/// The officials in the order of the heading.
fn official(row: u8) -> &'static str {
    match row {
        0 => "Primer árbitro",
        1 => "Segundo árbitro",
        _ => "Anotador",
    }
}

/// Whose signature a box is of.
fn signature(row: u8) -> String {
    let signer = SIGN_AFTER.get(usize::from(row)).copied();
    match signer {
        Some(Signer::Captain(team)) => format!("Firmó el capitán {team}"),
        Some(Signer::Scorer) => "Firmó el anotador".into(),
        Some(Signer::SecondReferee) => "Firmó el segundo árbitro".into(),
        Some(Signer::FirstReferee) => "Firmó el primer árbitro".into(),
        Some(Signer::Coach(_)) | None => String::new(),
    }
}

fn short_column(cell: Cell) -> &'static str {
    match (cell.part, cell.column) {
        (Part::Change, 0) => "sale",
        (Part::Change, 1) => "entra",
        (Part::Change, 4) => "exc.",
        (Part::Sanction, 0) => "qué",
        (Part::Sanction, 1) => "quién",
        (Part::Change | Part::Sanction | Part::TimeOut, _) => "pts",
        _ => "",
    }
}

fn where_is(cell: Cell, draft: &Draft) -> String {
    format!(
        "{}: {}",
        part_of_sheet(cell.set),
        name_of(Cell { column: 0, ..cell }, draft)
    )
}

fn rally_order(order: &str) -> String {
    if order.is_empty() {
        "Aquí aparece el orden de las jugadas, hasta donde las casillas lo dejan claro.".into()
    } else {
        format!("Orden de las jugadas, hasta donde las casillas lo dejan claro: {order}")
    }
}

fn marks(count: usize, all: bool) -> String {
    match (count, all) {
        (0, true) => "Todas las casillas coinciden.".into(),
        (0, false) => "Nada marcado por ahora.".into(),
        (1, _) => "Hay una casilla marcada:".into(),
        (n, _) => format!("Hay {n} casillas marcadas:"),
    }
}

fn teams_of(line: &Line) -> String {
    let name = |team: Team| match line.teams[team].as_str() {
        "" => format!("Equipo {team}"),
        name => name.to_owned(),
    };
    let teams = format!("{} – {}", name(Team::A), name(Team::B));
    if line.is_practice {
        format!("{}: {teams}", crate::learn::practice_mark())
    } else {
        teams
    }
}

fn result_of(line: &Line) -> String {
    let points: Vec<String> = line.points.iter().map(ToString::to_string).collect();
    let sets = match line.sets {
        Some(sets) => sets.to_string(),
        None if points.is_empty() => return "Aún no se ha jugado".to_owned(),
        None => "Sin resultado".to_owned(),
    };
    let open = if line.is_over { "" } else { ", sin terminar" };
    if points.is_empty() {
        format!("{sets}{open}")
    } else {
        format!("{sets} ({}){open}", points.join(", "))
    }
}

fn to_check(count: usize) -> String {
    match count {
        0 => "Nada que revisar".to_owned(),
        n => format!("{n} por revisar"),
    }
}

fn seal_state(seal: SealState) -> &'static str {
    match seal {
        SealState::OnPaper => "En papel",
        SealState::None => "Sin sellar",
        SealState::Broken => "El sello no coincide: algo anterior cambió",
        SealState::GoneOn => "Sellado y luego continuado",
        SealState::Holds => "Sellado, y el sello coincide",
    }
}

fn file_kind(kind: FileKind) -> &'static str {
    match kind {
        FileKind::Match => "un registro de partido",
        FileKind::Backup => "una copia de seguridad",
        FileKind::Paper => "un acta en papel transcrita",
        FileKind::Pool => "los resultados de un grupo",
        FileKind::Observer => "las notas de un observador",
        FileKind::Logbook => "un cuaderno",
    }
}
