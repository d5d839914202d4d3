//! The words of handing over and taking in, in one place, in Spanish.

use crate::hand_over::*;

/// In Spanish.
pub static WORDS: HandOverWords = HandOverWords {
    not_sealed:
        "Este registro no está sellado. Puedes compartirlo, pero los demás verán que sigue \
         abierto.",
    to_sheet: "Ir al acta",
    file: "Como archivo",
    what_goes:
        "También se comparten los nombres de las listas de los equipos y de quienes firmaron. Las \
         firmas dibujadas no: se quedan en este teléfono.",
    file_go: "Compartir el archivo",
    shared: "Se compartió el archivo.",
    cancelled: "No se compartió nada.",
    file_goes,
    downloaded,
    codes: "A la cámara de otro teléfono",
    codes_more:
        "No necesitas conexión. En el otro teléfono, abre esta app y toca \u{201c}Escanear \
         partido\u{201d} en la pantalla de inicio.",
    show: "Mostrar el código",
    before: "Anterior",
    next: "Siguiente",
    hold: "Pausa",
    run: "Seguir",
    simpler: "¿Cuesta escanear? Mostrar más códigos, más simples",
    fewer: "Mostrar menos códigos, más finos",
    codes_care:
        "Pon la pantalla al máximo de brillo. Escanea los códigos en cualquier orden. No pasa \
         nada si escaneas uno dos veces.",
    place,
    label,
    receive_more:
        "En el otro teléfono, abre el partido, toca \u{201c}Compartir\u{201d} y muestra el \
         código. Sostén este teléfono de modo que el código llene la imagen.",
    sight: "Lo que ve la cámara",
    camera_on: "Encender cámara",
    camera_off: "Apagar cámara",
    photo: "Desde una foto",
    anew: "Empezar otra vez",
    looking: "Buscando un código.",
    open: "Abrir el acta",
    digits: "Cifras de un código",
    digits_more: "Para un lector de mano, o para pegar. Pon cada código en su propia línea.",
    digits_read: "Leer las cifras",
    no_digits: "El campo está vacío. Escanea o pega antes las cifras de un código.",
    receive_care: "Este teléfono lee la imagen y no la guarda. Un registro que ya está aquí no se \
         sobrescribe.",
    other_record: "Este código es de otro registro. Continúa con el primero, o empieza otra vez.",
    notes_taken:
        "Las notas de un observador están en este teléfono. Abre el partido y toca Repaso para \
         verlas al lado.",
    notes_not_kept:
        "No se pudieron guardar las notas porque el teléfono está lleno. Borra lo que no \
         necesites y escanea otra vez.",
    part,
    nothing_in,
};

fn file_goes(shares: bool, installed_on_ios: bool) -> &'static str {
    match (shares, installed_on_ios) {
        (_, true) => {
            "El teléfono muestra su lista de apps. Para conservar el archivo en este teléfono, \
             elige allí \u{201c}Guardar en Archivos\u{201d}. Una app instalada en un iPhone o \
             iPad no tiene descargas."
        }
        (true, false) => {
            "El teléfono muestra su lista de apps y personas. Nada sale del teléfono por sí solo."
        }
        (false, false) => "El archivo va a las descargas de este navegador.",
    }
}

fn downloaded(name: &str) -> String {
    format!("{name} está en las descargas de este navegador.")
}

fn place(place: usize, count: usize) -> String {
    format!("Código {} de {count}", place + 1)
}

fn label(at: usize, count: usize) -> String {
    format!("{}, para la cámara de otro teléfono", place(at, count))
}

fn part(have: usize, of: usize, missing: &[usize]) -> String {
    let missing: Vec<String> = missing.iter().map(usize::to_string).collect();
    format!(
        "Códigos que ya están aquí: {have} de {of}. Faltan: {}.",
        missing.join(", ")
    )
}

fn nothing_in(name: &str) -> String {
    format!(
        "No se encontró ningún código en {name}. Haz la foto de frente, de modo que el código la \
         llene."
    )
}
