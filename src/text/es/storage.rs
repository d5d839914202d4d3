//! The words about what is kept on the phone, and how well, in Spanish.

use crate::score_sheet::span;
use crate::storage::*;
use app::keeper::{Saved, StorageNotice};
use app::machine::Offline;
use app::merge::{Damage, What};
use app::ports::{Health, Standing};
use app::snapshot::SessionNotice;
use reports::ClockDoubt;

/// In Spanish.
pub static WORDS: StorageWords = StorageWords {
    new_version: "Hay una versión más nueva de Dutystand en este teléfono.",
    new_version_take: "Usarla ahora",
    new_version_later:
        "Hay una versión más nueva de Dutystand en este teléfono. Puedes usarla cuando termine el \
         partido. Hasta entonces sigue esta versión.",
    new_version_elsewhere:
        "Hay una versión más nueva de Dutystand abierta en otra pestaña. Recarga esta página \
         antes del próximo partido.",
    load_again: "Recargar",
    take_over: "Seguir aquí",
    saved,
    storage_trouble,
    stands_still,
    go_on,
    session_notices,
    session_notice,
    line_damage,
    record_changed: "Este registro se cambió después de escribirse. El acta muestra dónde.",
    lacks_a_part: "Una parte de su archivo faltaba o no se pudo leer. Pide el archivo otra vez.",
    unreadable_lines,
    clock_doubt_on_opening,
    offline,
};

fn saved(saved: Saved) -> &'static str {
    match saved {
        Saved::Safe => "guardado",
        Saved::Saving => "guardando",
        Saved::OneCopy => "una copia",
        Saved::MemoryOnly => "sin guardar",
    }
}

fn storage_trouble(health: &Health) -> Option<String> {
    if health.memory_only() {
        let trouble = health.local.as_ref().err()?;
        return Some(format!(
            "{} Puedes continuar: el partido se conserva mientras esta página siga abierta. \
             Expórtalo antes de cerrar la página.",
            crate::machine::storage(trouble)
        ));
    }
    match (&health.local, &health.durable) {
        (Ok(()), Ok(())) => None,
        (Err(trouble), _) | (_, Err(trouble)) => Some(format!(
            "{} Solo se puede escribir una de las dos copias de este teléfono. Exporta el partido \
             cuando puedas.",
            crate::machine::storage(trouble)
        )),
    }
}

fn stands_still(standing: Standing) -> Option<&'static str> {
    match standing {
        Standing::ReadOnly { robbed: true } => {
            Some("Otra pestaña lleva ahora este partido. Aquí solo puedes mirar.")
        }
        Standing::ReadOnly { robbed: false } => {
            Some("Este partido está abierto en otra pestaña. Aquí solo puedes mirar.")
        }
        Standing::Waiting => Some(
            "Una de las dos copias de este partido todavía no se ha leído. Puede tener \
             anotaciones más nuevas. La app lo intenta otra vez: espera un momento.",
        ),
        Standing::Asking | Standing::Writer => None,
    }
}

fn go_on(standing: Standing) -> &'static str {
    match standing {
        Standing::Waiting => "Continuar sin ella",
        Standing::ReadOnly { .. } | Standing::Asking | Standing::Writer => take_over(),
    }
}

fn session_notices(notices: &[SessionNotice]) -> String {
    notices
        .iter()
        .map(session_notice)
        .collect::<Vec<_>>()
        .join(" ")
}

fn session_notice(notice: &SessionNotice) -> String {
    match notice {
        SessionNotice::Damaged(damage) => line_damage(damage),
        SessionNotice::RecordChanged => record_changed().to_owned(),
        SessionNotice::Storage(notice) => storage_notice(notice),
    }
}

/// Something that happened to the storage of the open match.
fn storage_notice(notice: &StorageNotice) -> String {
    match notice {
        StorageNotice::Emptied => {
            "El almacenamiento de este navegador se vació mientras este partido estaba abierto. \
             El partido se guardó otra vez desde la memoria."
                .into()
        }
        StorageNotice::CameLate(1) => {
            "Una copia se leyó tarde y tenía 1 anotación más. Ya está aquí.".into()
        }
        StorageNotice::CameLate(more) => {
            format!("Una copia se leyó tarde y tenía {more} anotaciones más. Ya están aquí.")
        }
        StorageNotice::Beside { entries, .. } => format!(
            "Se encontró otra versión de este partido, con {entries}. Se conservan las dos. Busca \
             la otra en la lista de partidos.",
            entries = match entries {
                1 => "1 anotación propia".to_owned(),
                n => format!("{n} anotaciones propias"),
            }
        ),
        StorageNotice::Mended(all) => {
            match all[..] {
                [n] => format!(
                    "La anotación {n} está dañada en una de las dos copias de este teléfono. Se \
                     reparó con la otra."
                ),
                _ => format!(
                "Las anotaciones {} están dañadas en una de las dos copias de este teléfono. Se \
                 repararon con la otra.",
                all.iter().map(u32::to_string).collect::<Vec<_>>().join(", ")
            ),
            }
        }
    }
}

fn line_damage(damage: &Damage) -> String {
    let n = damage.n;
    match damage.what {
        What::Missing => format!("La anotación {n} falta en las dos copias de este teléfono."),
        What::Damaged => format!(
            "La anotación {n} está dañada en las dos copias de este teléfono y no cuenta. Se \
             queda como está."
        ),
        What::Newer => format!(
            "La anotación {n} viene de una versión más nueva de esta app. Aquí no cuenta y se \
             queda como está. La versión más nueva puede leerla."
        ),
        What::Unproved => format!(
            "La anotación {n} cuenta, pero una anterior está dañada, así que nada la prueba. \
             Revísala."
        ),
    }
}

fn unreadable_lines(count: usize) -> String {
    match count {
        1 => "1 anotación no se puede leer o probar.".into(),
        n => format!("{n} anotaciones no se pueden leer o probar."),
    }
}

fn clock_doubt_on_opening(doubt: ClockDoubt) -> String {
    match doubt {
        ClockDoubt::Back { seconds } => format!(
            "El reloj de este teléfono va {} por detrás de la última anotación. El marcador y el \
             orden están a salvo. El acta marca las horas.",
            span(seconds)
        ),
        ClockDoubt::Forward { seconds } => format!(
            "Según el reloj de este teléfono, en este set han pasado {}. El marcador y el orden \
             están a salvo. El acta marca las horas.",
            span(seconds)
        ),
    }
}

fn offline(offline: &Offline) -> String {
    match offline {
        Offline::ReadyOffline | Offline::NewVersionWaiting | Offline::NewVersionElsewhere => {
            "Funciona sin conexión.".into()
        }
        Offline::Insecure => {
            "Esta dirección no es segura (empieza por http, no por https). La app funciona \
             mientras esta página siga abierta. No puede abrirse sin conexión ni mantener la \
             pantalla encendida. Abre la dirección que empieza por https."
                .into()
        }
        Offline::Installing => "Preparando el uso sin conexión …".into(),
        Offline::NotSupported => {
            "Este navegador o esta ventana privada no puede conservar la app para usarla sin \
             conexión."
                .into()
        }
        Offline::Incomplete => {
            "No se pudo conservar la app para usarla sin conexión: no llegaron todos sus \
             archivos. Ábrela otra vez con conexión."
                .into()
        }
        Offline::Failed(why) => format!(
            "No se pudo conservar la app para usarla sin conexión{}. Ábrela otra vez con conexión.",
            crate::machine::in_its_words(why)
        ),
    }
}
