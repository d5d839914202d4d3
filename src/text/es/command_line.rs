//! The words of the command line for what it cannot do, in Spanish.

use crate::command_line::*;
use reports::FileKind;
use std::io::ErrorKind;

/// In Spanish.
pub static WORDS: CommandLineWords = CommandLineWords {
    no_command: "Nombra un comando.",
    no_file: "Nombra al menos un archivo.",
    not_two: "Nombra dos registros de un mismo partido.",
    one_record: "Nombra un registro.",
    one_packed: "Nombra un registro empaquetado.",
    clock: "--clock pide cuánto va adelantada la hora del gimnasio, por ejemplo +02:00.",
    meetings: "--meetings pide cuántas veces se enfrentan dos equipos, de 1 a 9.",
    ranked_already: "El archivo ya dice cómo se clasifica.",
    not_packed: "Esto no es un registro empaquetado. desk pack hace uno.",
    no_such_part: "Este archivo no tiene esa parte. desk list nombra sus partes.",
    unknown_command,
    unknown_option,
    no_value,
    wrong_value,
    two_ways,
    unknown_criterion,
    unknown_scheme,
    not_written,
    too_large,
    not_readable,
    pool_not_read,
    papers_not_read,
    several,
    another_kind,
};

fn unknown_command(name: &str) -> String {
    format!("No existe el comando `{name}`.")
}

fn unknown_option(name: &str) -> String {
    format!("`{name}` no se entiende aquí.")
}

fn no_value(name: &str) -> String {
    format!("`{name}` necesita un valor.")
}

fn wrong_value(option: &str, value: &str) -> String {
    format!("`{option}` no admite `{value}`.")
}

fn two_ways(first: &str, second: &str) -> String {
    format!("`{first}` y `{second}` no van juntos. Elige uno de los dos.")
}

fn unknown_criterion(code: &str) -> String {
    format!("`{code}` no es un criterio de clasificación.")
}

fn unknown_scheme(code: &str) -> String {
    format!("`{code}` no es una forma de dar puntos de clasificación.")
}

fn not_written(why: &str) -> String {
    format!("No se pudo escribir la salida: {why}.")
}

fn too_large(megabytes: usize) -> String {
    format!(
        "Este archivo tiene más de {megabytes} MB, más que cualquiera de los nuestros. Elige otro."
    )
}

fn not_readable(name: &str, kind: ErrorKind, why: &str) -> String {
    match kind {
        ErrorKind::NotFound => {
            "Ese archivo no existe. Revisa su nombre y la carpeta en la que estás.".to_owned()
        }
        ErrorKind::IsADirectory => {
            format!(
                "Esto es una carpeta. Nombra los archivos que contiene, por ejemplo {name}/*.json."
            )
        }
        ErrorKind::PermissionDenied => {
            "No tienes permiso para leer este archivo. Pide una copia a quien lo tiene.".to_owned()
        }
        _ => format!("No se puede leer ({why}). Prueba otra vez, o cópialo antes aquí."),
    }
}

fn pool_not_read(name: &str) -> String {
    format!(
        "Aquí no se leen los resultados de un grupo: desk standings hace la clasificación solo de \
         {name}."
    )
}

fn papers_not_read(count: usize) -> String {
    let papers = match count {
        1 => "1 acta en papel".to_owned(),
        n => format!("{n} actas en papel"),
    };
    format!(
        "Esta copia de seguridad contiene {papers}, que aquí no se leen. Las actas en papel las \
         leen desk paper, desk list y desk standings."
    )
}

fn several(count: usize, first: &str) -> String {
    format!(
        "Esta copia de seguridad tiene {count} partidos, y aquí hace falta uno. Nombra uno de \
         ellos, por ejemplo {first}."
    )
}

fn another_kind(kind: FileKind) -> String {
    let way = match kind {
        FileKind::Match | FileKind::Backup => "usa desk audit, desk sheet o desk list",
        FileKind::Paper => "usa desk paper",
        FileKind::Pool => "usa desk standings",
        FileKind::Observer | FileKind::Logbook => "ábrelo en la app, en el teléfono al que va",
    };
    format!(
        "El archivo contiene {}: {way}.",
        crate::desk::file_kind(kind)
    )
}
