//! The words of the desk where it is a table and several panes, in Spanish.

use crate::desk_work::*;
use app::desk::{Column, Command, Show};
use game::Signer;
use reports::list::{Line, SealState};
use reports::{SheetBox, Weight, Weights};
use rules::Team;

/// In Spanish.
pub static WORDS: DeskWorkWords = DeskWorkWords {
    drop_here: "Suelta los archivos para importarlos",
    search: "Buscar",
    filter_and_sort: "Filtrar y ordenar",
    pool: "Grupo",
    all_pools: "Todos los grupos",
    show_which: "Mostrar",
    show,
    sort_by: "Ordenar por",
    column,
    as_list: "Lista",
    as_table: "Tabla",
    keys: "Teclas",
    matches: "Partidos",
    select: "Elegir",
    select_one,
    how_many,
    nothing_fits: "Ningún partido coincide. Cambia la búsqueda o el filtro.",
    show_everything: "Mostrar todo",
    reading,
    select_all: "Elegir todos",
    select_none: "Elegir ninguno",
    more: "Más",
    archive: "Archivar",
    restore: "Restaurar",
    delete: "Borrar",
    archived,
    restored,
    all_deleted,
    not_deleted,
    delete_question,
    choose_first: "Elige antes al menos un partido.",
    previous: "Anterior",
    next: "Siguiente",
    previous_is,
    next_is,
    parts_of_record: "Partes de este registro",
    sheet: "Acta",
    log: "Registro del partido",
    open_sheet: "Firmar, imprimir, compartir",
    close: "Cerrar",
    show_entry,
    show_box,
    found,
    weight,
    weight_more,
    weights,
    nobody: "Nadie",
    everybody: "Todos",
    signer,
    seal,
    sets,
    points,
    arrow,
    match_no,
    grid: "Cuadro de resultados",
    grid_more: "Primero los sets del equipo de la izquierda.",
    report: "Informe del día",
    print_sheets: "Imprimir actas",
    sheets: "Actas",
    print: "Imprimir",
    cannot_print: "Este navegador no puede imprimir. Abre el escritorio en otro dispositivo para imprimirlo.",
    report_of,
    days,
    match_number: "N.º",
    time: "Hora",
    set_points: "Puntos de los sets",
    no_sheets: "Ninguno de los partidos elegidos tiene un registro aquí. Las actas en papel ya están en papel.",
    sheets_of,
    papers_left_out,
    known_teams: "Equipos de los registros de este escritorio",
    take_list,
    keys_title: "Teclas del escritorio",
    keys_more: "Las teclas funcionan mientras no escribes. Tab, Espacio y Enter hacen lo de siempre.",
    keys_on: "Usar estas teclas",
    key,
    command,
};

fn show(show: Show) -> &'static str {
    match show {
        Show::All => "Todos",
        Show::ToCheck => "Con algo que revisar",
        Show::Unsealed => "Acabados, sin sellar",
        Show::Paper => "En papel",
        Show::Archived => "Archivados",
    }
}

fn column(column: Column) -> &'static str {
    match column {
        Column::Teams => "Equipos",
        Column::Result => "Resultado",
        Column::Day => "Día",
        Column::Pool => "Grupo",
        Column::Signed => "Firmas",
        Column::Seal => "Sello",
        Column::Findings => "Por revisar",
    }
}

fn select_one(title: &str) -> String {
    format!("Elegir {title}")
}

fn how_many(shown: usize, all: usize) -> String {
    match (shown, all) {
        (1, 1) => "1 partido".to_owned(),
        (shown, all) if shown == all => format!("{all} partidos"),
        (shown, all) => format!("{shown} de {all} partidos"),
    }
}

fn reading(read: usize, all: usize) -> String {
    format!("Leyendo el partido {} de {all} …", read + 1)
}

fn archived(count: usize) -> String {
    match count {
        1 => "1 partido archivado.".to_owned(),
        n => format!("{n} partidos archivados."),
    }
}

fn restored(count: usize) -> String {
    match count {
        1 => "1 partido restaurado.".to_owned(),
        n => format!("{n} partidos restaurados."),
    }
}

fn all_deleted(count: usize) -> String {
    match count {
        1 => "1 partido borrado.".to_owned(),
        n => format!("{n} partidos borrados."),
    }
}

fn not_deleted(count: usize) -> String {
    match count {
        1 => "1 partido no se borró. Si está abierto en otra pestaña, ciérralo allí e inténtalo de nuevo.".to_owned(),
        n => format!("{n} partidos no se borraron. Si están abiertos en otra pestaña, ciérralos allí e inténtalo de nuevo."),
    }
}

fn delete_question(counts: [usize; 3]) -> String {
    let [records, papers, pools] = counts;
    let some = [
        (records, "registro de partido", "registros de partido"),
        (papers, "acta en papel", "actas en papel"),
        (pools, "archivo de grupo", "archivos de grupo"),
    ];
    let parts: Vec<String> = some
        .into_iter()
        .filter(|(count, ..)| *count > 0)
        .map(|(count, one, many)| format!("{count} {}", if count == 1 { one } else { many }))
        .collect();
    let what = match &parts[..] {
        [all @ .., last] if !all.is_empty() => format!("{} y {last}", all.join(", ")),
        parts => parts.join(", "),
    };
    format!(
        "¿Borrar {what} de este dispositivo? No se puede deshacer. Exporta antes lo que necesites."
    )
}

fn previous_is(title: &str) -> String {
    format!("Anterior: {title}")
}

fn next_is(title: &str) -> String {
    format!("Siguiente: {title}")
}

fn show_entry(n: u32) -> String {
    format!("Mostrar la anotación {n}")
}

fn show_box(of: SheetBox) -> String {
    format!("Mostrar en el acta: {}", sheet_box(of))
}

fn sheet_box(of: SheetBox) -> String {
    match of {
        SheetBox::Set(number) => format!("set {number}"),
        SheetBox::Heading => "cabecera y resultado".to_owned(),
        SheetBox::Sanctions => "sanciones".to_owned(),
        SheetBox::Remarks => "observaciones".to_owned(),
        SheetBox::Teams => "listas de los equipos".to_owned(),
        SheetBox::Signatures => "firmas".to_owned(),
        SheetBox::Seal => "sello".to_owned(),
        SheetBox::Key => "leyenda".to_owned(),
        SheetBox::Liberos => "líberos".to_owned(),
    }
}

fn found(count: usize) -> String {
    match count {
        0 => "En este registro no hay nada que revisar.".to_owned(),
        1 => "En este registro hay una cosa que revisar.".to_owned(),
        n => {
            format!("En este registro hay {n} cosas que revisar. Las más importantes van primero.")
        }
    }
}

fn weight(weight: Weight) -> &'static str {
    match weight {
        Weight::Result => "Resultado",
        Weight::Play => "Juego",
        Weight::Form => "Forma",
    }
}

fn weight_more(weight: Weight) -> &'static str {
    match weight {
        Weight::Result => "Puede cambiar el resultado",
        Weight::Play => "Sobre cómo se jugó el partido",
        Weight::Form => "Sobre cómo se llevó el registro",
    }
}

fn weights(weights: Weights) -> String {
    let parts: Vec<String> = weights
        .counted()
        .map(|(of, count)| format!("{} {count}", weight(of)))
        .collect();
    match parts.is_empty() {
        true => "Nada que revisar".to_owned(),
        false => parts.join(", "),
    }
}

fn take_list(team: &str, numbers: usize) -> String {
    format!("Tomar la lista de {team} de su último registro ({numbers} números)")
}

fn signer(signer: Signer) -> String {
    match signer {
        Signer::Captain(team) => format!("capitán {team}"),
        Signer::Coach(team) => format!("entrenador {team}"),
        Signer::Scorer => "anotador".to_owned(),
        Signer::SecondReferee => "2.º árbitro".to_owned(),
        Signer::FirstReferee => "1.er árbitro".to_owned(),
    }
}

fn seal(seal: SealState) -> &'static str {
    match seal {
        SealState::OnPaper => "En papel",
        SealState::None => "Sin sellar",
        SealState::Broken => "Roto",
        SealState::GoneOn => "Reabierto",
        SealState::Holds => "Sellado",
    }
}

fn sets(line: &Line) -> String {
    let Some(sets) = line.sets else {
        return "–".to_owned();
    };
    let open = if line.is_over { "" } else { " (sin acabar)" };
    format!("{}:{}{open}", sets[Team::A], sets[Team::B])
}

fn points(line: &Line) -> String {
    let points: Vec<String> = line.points.iter().map(ToString::to_string).collect();
    points.join(", ")
}

fn arrow(backwards: bool) -> &'static str {
    if backwards {
        " ↓"
    } else {
        " ↑"
    }
}

fn match_no(number: &str) -> String {
    format!("N.º {number}")
}

fn report_of(matches: usize, days: &str) -> String {
    let count = match matches {
        1 => "1 partido".to_owned(),
        n => format!("{n} partidos"),
    };
    match days {
        "" => count,
        days => format!("{count}, {days}"),
    }
}

fn days(first: &str, last: &str) -> String {
    if first == last {
        first.to_owned()
    } else {
        format!("{first} a {last}")
    }
}

fn sheets_of(count: usize) -> String {
    match count {
        1 => "1 acta, en páginas propias.".to_owned(),
        n => format!("{n} actas, cada una en páginas propias."),
    }
}

fn papers_left_out(count: usize) -> String {
    match count {
        1 => "1 acta tecleada no se imprime aquí: ya la tienes en papel.".to_owned(),
        n => format!("{n} actas tecleadas no se imprimen aquí: ya las tienes en papel."),
    }
}

fn key(key: &str) -> String {
    match key {
        "ArrowDown" => "↓".to_owned(),
        "ArrowUp" => "↑".to_owned(),
        "Escape" => "Esc".to_owned(),
        "Backspace" => "⌫".to_owned(),
        key if key.len() == 1 => key.to_uppercase(),
        key => key.to_owned(),
    }
}

fn command(command: Command) -> String {
    match command {
        Command::Keys => "Mostrar las teclas".to_owned(),
        Command::Search => "Buscar".to_owned(),
        Command::Next => "Partido siguiente".to_owned(),
        Command::Previous => "Partido anterior".to_owned(),
        Command::Toggle => "Elegir el partido, o no".to_owned(),
        Command::All => "Elegir todos los mostrados".to_owned(),
        Command::None => "Elegir ninguno".to_owned(),
        Command::Pool => "Elegir su grupo".to_owned(),
        Command::Sheet => "Mostrar el acta".to_owned(),
        Command::Log => "Mostrar el registro del partido".to_owned(),
        Command::Findings => "Ir a lo que hay que revisar".to_owned(),
        Command::Close => "Cerrar el partido".to_owned(),
        Command::View => "Lista o tabla".to_owned(),
        Command::Compare => "Comparar los dos elegidos".to_owned(),
        Command::Rank => "Clasificar los partidos elegidos".to_owned(),
        Command::Report => "Informe del día".to_owned(),
        Command::Archive => "Archivar o restaurar los elegidos".to_owned(),
        Command::Delete => "Borrar los elegidos".to_owned(),
        Command::Sort(Column::Findings) => "Ordenar por lo que hay que revisar".to_owned(),
        Command::Sort(by) => format!("Ordenar por {}", column(by).to_lowercase()),
    }
}
