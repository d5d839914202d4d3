//! The words of the matches on the phone: finding, putting away, deleting, the backup of everything,
//! the storage, in Spanish.

use crate::setup::library::*;
use app::machine::{StoragePromise, StorageRoom};
use record::MergeDecision;

/// In Spanish.
pub static WORDS: LibraryWords = LibraryWords {
    find: "Buscar: equipo, gimnasio, competición, día como 9/5",
    more_of: "Más:",
    just_came: "recién importado",
    review: "Repaso",
    show_archived: "Mostrar partidos archivados",
    nothing_fits: "Ningún partido coincide con estas palabras.",
    all_archived: "Todos los partidos están archivados.",
    archive: "Archivar",
    unarchive: "Restaurar",
    is_archived: "archivado",
    came_damaged: "Una parte de su archivo faltaba o no se pudo leer. Pide el archivo otra vez.",
    taking_in_label: "Importando \u{2026}",
    taking_in,
    stop: "Parar",
    stopped_at,
    backup: "Copia y almacenamiento",
    backup_is:
        "Un solo archivo guarda todos los partidos, sus firmas, todo lo del escritorio y tu \
         cuaderno. Para restaurarlo, toca \u{201c}Abrir un archivo\u{201d} en la pantalla de \
         inicio. Aquí no se sobrescribe nada.",
    make_backup: "Hacer copia de todo",
    backing_up: "Leyendo los partidos \u{2026}",
    backup_made: "Se compartió la copia.",
    backup_not_made: "No se hizo la copia.",
    ask_to_keep: "Pedir al navegador que conserve los partidos",
    wipe: "Borrar todo",
    not_wiped:
        "No se borró todo. Un partido abierto en otra pestaña se queda: cierra esa pestaña y \
         prueba otra vez. Si no sirve, borra los datos de este sitio en los ajustes del \
         navegador.",
    not_deleted:
        "El partido no se borró. Si está abierto en otra pestaña, ciérralo allí y prueba otra \
         vez.",
    move_title: "Del navegador a la app instalada",
    move_in_tab: &[
        "Pon la app en tu pantalla de inicio. Se abre más rápido, y el teléfono no borra sus \
         registros tras unos días sin visita. Algunos navegadores lo hacen con una pestaña.",
        "En muchos teléfonos la app instalada empieza vacía, porque no ve lo que guardó esta \
         pestaña. Por eso, toca primero \u{201c}Hacer copia de todo\u{201d} y guarda el archivo \
         en este teléfono.",
        "Después instala la app. En un iPhone o iPad, toca Compartir y luego Añadir (o Agregar) a \
         inicio. En otros dispositivos, abre el menú del navegador y toca Instalar o Añadir a \
         pantalla de inicio.",
        "Abre una vez la app instalada con conexión. Allí, elige el archivo en \u{201c}Abrir un \
         archivo\u{201d}.",
    ],
    move_installed: &[
        "Esta es la app instalada.",
        "Puede que queden partidos en una pestaña del navegador. Abre esa pestaña y toca \
         \u{201c}Hacer copia de todo\u{201d}. Después elige aquí el archivo en \u{201c}Abrir un \
         archivo\u{201d}.",
    ],
    show_all,
    matches,
    delete_question,
    wipe_question,
    backup_name,
    room,
    kept,
    files_taken,
    of_the_desk,
    taken,
    open_elsewhere,
    backup_taken,
    desk_taken,
    logbook_taken,
    notes_taken,
    newer_file,
    damaged_file,
    not_kept,
    practised_taken,
    backup_problem,
};

fn taking_in(place: usize, all: usize) -> String {
    format!("Importando partido {place} de {all} \u{2026}")
}

fn stopped_at(name: &str, taken: usize, all: usize) -> String {
    format!(
        "{name}: parado después de {taken} de {all} partidos. Abre el archivo otra vez para \
         importar el resto."
    )
}

fn show_all(count: usize) -> String {
    format!("Mostrar todos ({count})")
}

fn matches(count: usize) -> String {
    match count {
        1 => "1 partido".to_owned(),
        n => format!("{n} partidos"),
    }
}

fn delete_question(teams: &str, standing: &str, entries: u32) -> String {
    let entries = match entries {
        1 => "su anotación".to_owned(),
        n => format!("sus {n} anotaciones"),
    };
    format!(
        "¿Borrar {teams} ({standing}) de este teléfono para siempre? Se borran {entries}, sus \
         firmas dibujadas y lo que esté a medio escribir. Los archivos que compartiste se quedan."
    )
}

fn wipe_question(count: usize) -> String {
    format!(
        "¿Borrar todo de este teléfono para siempre? Se borran {}, las firmas dibujadas, y las \
         actas en papel y los grupos del escritorio. Se borra también lo que esté a medio \
         escribir, con todos los ajustes, tu cuaderno y las notas de observadores. Los archivos \
         que compartiste se quedan.",
        match count {
            0 => "0 partidos".to_owned(),
            n => matches(n),
        }
    )
}

fn backup_name(day: &str) -> String {
    format!("dutystand-backup-{day}.json")
}

/// Bytes in words.
fn bytes(count: u64) -> String {
    // Shown with one decimal, so the last bits do not matter.
    #[allow(clippy::cast_precision_loss)]
    let of = |unit: f64| count as f64 / unit;
    match count {
        0..=999_999 => format!("{} kB", count.div_ceil(1_000)),
        1_000_000..=999_999_999 => format!("{:.1} MB", of(1e6)),
        _ => format!("{:.1} GB", of(1e9)),
    }
}

fn room(room: Option<StorageRoom>) -> String {
    match room {
        Some(StorageRoom { used, quota }) => format!(
            "La app y sus registros ocupan unos {} de {} en este teléfono.",
            bytes(used),
            bytes(quota)
        ),
        None => "Este navegador no dice cuánto espacio se usa.".to_owned(),
    }
}

fn kept(kept: StoragePromise) -> &'static str {
    match kept {
        StoragePromise::Yes => {
            "El navegador ha prometido conservar los registros hasta que los borres."
        }
        StoragePromise::No => {
            "El navegador no ha prometido conservar los registros. Puede borrarlos si el teléfono \
             está lleno o tras unos días sin visita. Haz una copia de seguridad de lo que importa."
        }
        StoragePromise::Unknown => {
            "Este navegador no dice si conserva los registros. Haz una copia de seguridad de lo \
             que importa."
        }
    }
}

fn files_taken(taken: usize, all: usize) -> String {
    match all - taken {
        0 => format!("Archivos: {all}. Todos están en este teléfono."),
        left => format!(
            "Archivos: {all}. Están en este teléfono: {taken}. No se pudieron importar: {left}."
        ),
    }
}

fn of_the_desk(name: &str, kind: &str) -> String {
    format!("{name}: {kind}. Ve al escritorio y abre allí el archivo.")
}

fn taken(name: &str, how: &MergeDecision) -> String {
    match how {
        MergeDecision::New(_) => format!("{name} ya está en este teléfono."),
        MergeDecision::Here(_) => format!("{name} ya estaba aquí. No se cambió nada."),
        MergeDecision::Longer(_) => format!(
            "{name} continúa el registro que había aquí. Se conserva el más largo. No se perdió \
             nada."
        ),
        MergeDecision::Beside(_) => format!(
            "{name} es otro registro de un partido que ya está aquí. Se conservan los dos. No se \
             sobrescribió nada."
        ),
    }
}

fn open_elsewhere(name: &str) -> String {
    format!(
        "{name} no se importó: el partido está abierto en otra pestaña. Cierra esa pestaña y \
         elige el archivo otra vez."
    )
}

fn backup_taken(name: &str, counts: [usize; 4]) -> String {
    let [new, longer, beside, here] = counts;
    format!(
        "{name}, partidos: nuevos, {new}; más largos que aquí, {longer}; conservados junto a otro \
         registro, {beside}; ya estaban aquí, {here}. No se perdió nada."
    )
}

fn desk_taken(name: &str, counts: [usize; 3]) -> String {
    let [new, here, lost] = counts;
    let mut say = format!(
        "{name}, actas en papel y grupos del escritorio: nuevos, {new}; ya estaban aquí, {here}."
    );
    if lost > 0 {
        say += &format!(
            "Sin guardar porque el teléfono está lleno: {lost}. Borra lo que no necesites y abre \
             otra vez la copia de seguridad."
        );
    }
    say
}

fn logbook_taken(name: &str, matches: usize, goals: usize, left_out: usize) -> String {
    let counted = |count: usize, one: &str, many: &str| match count {
        1 => format!("1 {one}"),
        n => format!("{n} {many}"),
    };
    let mut say = match (matches, goals) {
        (0, 0) => format!("{name}: todo lo que contiene ya está en tu cuaderno."),
        (matches, goals) => format!(
            "{name}: nuevo en tu cuaderno, {} y {}.",
            counted(matches, "partido", "partidos"),
            counted(goals, "objetivo", "objetivos")
        ),
    };
    if left_out > 0 {
        say += &format!(" Partes que no se pudieron leer: {left_out}.");
    }
    say
}

fn notes_taken(name: &str, left_out: usize) -> String {
    let mut say = format!(
        "{name}: las notas de un observador están en este teléfono. Abre el partido y toca Repaso \
         para verlas al lado."
    );
    if left_out > 0 {
        say += &format!(" Notas que no se pudieron leer: {left_out}.");
    }
    say
}

fn newer_file(name: &str) -> String {
    format!(
        "{name} viene de una versión más nueva de esta app. Actualiza la app y abre el archivo \
         otra vez."
    )
}

fn damaged_file(name: &str) -> String {
    format!("{name} está dañado y no se puede leer. Pídelo otra vez.")
}

fn not_kept(name: &str) -> String {
    format!(
        "{name} no se pudo guardar porque el teléfono está lleno. Borra lo que no necesites y \
         prueba otra vez."
    )
}

fn practised_taken(name: &str, taken: bool) -> String {
    if taken {
        format!("{name}: lo que practicaste ya está en este teléfono.")
    } else {
        format!("{name}: lo que se practicó no se pudo leer o guardar.")
    }
}

fn backup_problem(name: &str, say: &str) -> String {
    format!("{name}: {}.", say.trim_end_matches('.'))
}
