//! The words about files that are taken in, in Spanish.

use crate::intake::*;
use app::import_note::{BackupCounts, DeskCounts};
use app::machine::ReadTrouble;
use record::{Foreign, MergeDecision, Problem};
use rules::ByTeam;

/// In Spanish.
pub static WORDS: IntakeWords = IntakeWords {
    unreadable_file,
    foreign_file,
    record_problem,
    more_problems,
    seal_opened,
    import_not_saved,
    reading_files: "Importando \u{2026}",
    taking_in,
    stopped_at,
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
    form_taken,
    form_here,
    form_not_kept,
    form_unreadable,
    more_form_problems,
};

fn unreadable_file(name: &str, trouble: &ReadTrouble) -> String {
    match trouble {
        ReadTrouble::TooBig { .. } => {
            format!("{name} es demasiado grande para un partido. Elige otro archivo.")
        }
        ReadTrouble::Unreadable(why) => {
            format!(
                "{name} no se pudo leer{}. Elígelo otra vez.",
                crate::machine::in_its_words(why)
            )
        }
    }
}

fn foreign_file(name: &str, foreign: &Foreign) -> String {
    format!("{name}: {}", crate::problem::foreign(foreign))
}

fn record_problem(name: &str, problem: &Problem) -> String {
    let say = crate::problem::problem(problem);
    let say = say.trim_end_matches('.');
    match problem.entry {
        Some(entry) => format!("{name}, anotación {entry}: {say}."),
        None => format!("{name}: {say}."),
    }
}

fn more_problems(name: &str, count: usize) -> String {
    format!("{name}: {count} más como esto.")
}

fn seal_opened(name: &str, before: ByTeam<u8>, now: ByTeam<u8>) -> String {
    format!(
        "{name}: el registro de aquí estaba sellado con {}. Después alguien lo volvió a abrir, y ahora dice {}. \
         Pregunta quién sabe algo.",
        before.marked(),
        now.marked()
    )
}

fn import_not_saved(name: &str) -> String {
    format!("{name} no se pudo guardar entero en este teléfono. Conserva el archivo.")
}

fn taking_in(place: usize, all: usize) -> String {
    format!("Importando partido {place} de {all} \u{2026}")
}

fn stopped_at(name: &str, taken: usize, all: usize) -> String {
    format!(
        "{name}: parado después de {taken} de {all} partidos. Abre el archivo otra vez para \
         importar el resto."
    )
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

fn backup_taken(name: &str, counts: BackupCounts) -> String {
    let BackupCounts {
        new,
        longer,
        beside,
        here,
    } = counts;
    format!(
        "{name}, partidos: nuevos, {new}; más largos que aquí, {longer}; conservados junto a otro \
         registro, {beside}; ya estaban aquí, {here}. No se perdió nada."
    )
}

fn desk_taken(name: &str, counts: DeskCounts) -> String {
    let DeskCounts { new, here, refused } = counts;
    let mut say = format!(
        "{name}, actas en papel y grupos del escritorio: nuevos, {new}; ya estaban aquí, {here}."
    );
    if refused > 0 {
        say += &format!(
            "Sin guardar porque el teléfono está lleno: {refused}. Borra lo que no necesites y abre \
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

fn form_taken(name: &str) -> String {
    format!("{name} ya está en el escritorio.")
}

fn form_here(name: &str) -> String {
    format!("{name} ya estaba aquí. No cambió nada.")
}

fn form_not_kept(name: &str) -> String {
    format!("{name} no se pudo guardar en este teléfono. Libera espacio y conserva el archivo.")
}

fn form_unreadable(name: &str) -> String {
    format!("{name} no se importó.")
}

fn more_form_problems(count: usize) -> String {
    format!("Y {count} más como estos.")
}
