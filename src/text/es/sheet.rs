//! The words around the sheet, in one place, in Spanish.

use crate::sheet::*;
use rules::Step;

/// In Spanish.
pub static WORDS: SheetWords = SheetWords {
    print: "Imprimir",
    page: "Guardar como página",
    points: "Puntos como tabla",
    hand_over: "Compartir",
    talk: "Repaso",
    cannot_print:
        "Este navegador no puede imprimir. Guarda el acta como página e imprímela en otro \
         dispositivo.",
    closing: "Firmar y sellar",
    not_over: "Cuando termine el partido, lo firmas y lo sellas aquí.",
    broken_off: "El partido se suspendió: cerrarlo ahora",
    look_first:
        "Cada persona mira el resultado de abajo y después toca su propia línea. Esa es la firma.",
    sign_means: "Quien firma aquí dice: he visto el resultado.",
    signed: "firmado",
    not_signed: "sin firmar",
    seal: "Sellar el registro",
    seal_anyway: "Sellar aun así",
    seal_anyway_more: "Puedes sellar aun así. El acta dirá qué quedó pendiente.",
    result_so_far: "Sin terminar. Resultado hasta ahora",
    still_open: "Pendiente",
    nothing_open: "La revisión encontró solo lo que aparece abajo.",
    complete: "Completar",
    details: "Datos del partido",
    to_court: "Ir al campo",
    to_log: "Ir al registro",
    remark: "Explicarlo en una observación",
    remark_field: "Observación para el acta",
    remark_go: "Añadir observación",
    remark_needs_words: "Escribe antes unas palabras. Van en el acta.",
    clear: "Ahora todo bien",
    clear_who: "Quién lo dice",
    clear_go: "Dar por resuelto",
    clear_needs_who: "Nombra a la persona que lo dice. Va en el acta.",
    clear_more,
    write_protest: "Escribir la protesta",
    protest_more: "El capitán puede escribir la protesta anunciada, o renunciar a ella.",
    protest_field: "Lo que escribe el capitán",
    protest_needs_words: "Escribe lo que dice el capitán. Va en el acta.",
    about_entry,
    way,
    open_count,
    sealed: "Sellado",
    write_down:
        "Escribe este código en papel, o léelo en voz alta a los dos equipos. Un registro que se \
         cambia después tiene otro código.",
    broken: "El sello no coincide",
    broken_more:
        "Este registro no es el que se selló. Pídelo otra vez y compara el código en papel.",
    reopen: "Reabrir",
    reopen_ask: "¿Reabrir el registro sellado?",
    reopen_more:
        "La reapertura y su motivo van en el acta. El código en papel ya no valdrá: sella otra \
         vez el registro.",
    reopen_why: "¿Por qué lo reabres?",
    reopen_needs_why: "Di en pocas palabras por qué. Va en el acta.",
    missing,
    line,
};

fn clear_more(item: &str) -> String {
    let item = match Step::from_code(item) {
        Some(known) => crate::setup::step(known).to_lowercase(),
        None => item.replace('_', " "),
    };
    format!("Esta revisión encontró un problema: {item}.")
}

fn about_entry(n: u32, words: &str) -> String {
    format!("Anotación {n}: {words}")
}

fn way(words: &str, finding: &str) -> String {
    format!("{words}: {finding}")
}

fn open_count(count: usize) -> String {
    match count {
        1 => "Queda una cosa pendiente. La ves en la pantalla del acta.".into(),
        n => format!("Quedan {n} cosas pendientes. Las ves en la pantalla del acta."),
    }
}

fn missing(who: &[String]) -> String {
    format!("Todavía sin firmar: {}.", who.join(", "))
}

fn line(who: &str, name: Option<&str>, has_signed: bool) -> String {
    match (has_signed, name) {
        (true, Some(name)) => format!("{who}: {name}, {}", signed()),
        (true, None) => format!("{who}: {}", signed()),
        (false, _) => format!("{who}: {}", not_signed()),
    }
}
