//! The words of the matches on the phone: finding, putting away, deleting, the backup of everything,
//! the storage, in Spanish.

use crate::setup::library::*;
use app::machine::{StoragePromise, StorageRoom};
use reports::DateWords;

/// In Spanish.
pub static WORDS: LibraryWords = LibraryWords {
    find: "Buscar: equipo, gimnasio, competición, día como 9 de mayo",
    date_words: &DATE_WORDS,
    more_of: "Más:",
    just_came: "recién importado",
    review: "Repaso",
    show_archived: "Mostrar partidos archivados",
    nothing_fits: "Ningún partido coincide con estas palabras.",
    all_archived: "Todos los partidos están archivados.",
    archive: "Archivar",
    unarchive: "Restaurar",
    is_archived: "archivado",
    stop: "Parar",
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
    wiped: "Se borró todo lo de este teléfono.",
    not_wiped:
        "No se borró todo. Un partido abierto en otra pestaña se queda: cierra esa pestaña y \
         prueba otra vez. Si no sirve, borra los datos de este sitio en los ajustes del \
         navegador.",
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
};

static DATE_WORDS: DateWords = DateWords {
    months: [
        &["enero"],
        &["febrero"],
        &["marzo"],
        &["abril"],
        &["mayo"],
        &["junio"],
        &["julio"],
        &["agosto"],
        &["septiembre", "setiembre"],
        &["octubre"],
        &["noviembre"],
        &["diciembre"],
    ],
    first: "primero",
    ordinals: &["º", "°", "o", "ro", "ero"],
    links: &["de", "del", "el"],
};

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
        "¿Borrar todo de este teléfono para siempre? Se borran {}las firmas dibujadas, y las \
         actas en papel y los grupos del escritorio. Se borra también lo que esté a medio \
         escribir, con todos los ajustes, tu cuaderno y las notas de observadores. Los archivos \
         que compartiste se quedan.",
        match count {
            0 => String::new(),
            n => format!("{}, ", matches(n)),
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
