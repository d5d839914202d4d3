//! What the machine could not do, with the way out, in Spanish.

use crate::machine::*;
use app::machine::{CameraTrouble, HandOverTrouble};
use app::ports::StorageTrouble;

/// In Spanish.
pub static WORDS: MachineWords = MachineWords {
    storage,
    camera,
    hand_over,
};

fn storage(trouble: &StorageTrouble) -> String {
    match trouble {
        StorageTrouble::Refused => {
            "Este navegador no permite que esta página guarde nada.".to_owned()
        }
        StorageTrouble::Full => {
            "El almacenamiento de este navegador está lleno. ¿Queda espacio en este dispositivo? \
             Entonces cierra todo el navegador y ábrelo otra vez. Tras un fallo, algunos \
             navegadores cuentan mal su espacio."
                .to_owned()
        }
        StorageTrouble::Lost => {
            "El navegador perdió su almacenamiento por un momento. La app lo intenta otra vez."
                .to_owned()
        }
        StorageTrouble::Unknown(why) => {
            format!(
                "El navegador no pudo guardar la anotación{}.",
                in_its_words(why)
            )
        }
    }
}

fn camera(trouble: &CameraTrouble) -> String {
    match trouble {
        CameraTrouble::Refused => {
            "Esta página no tiene permiso para usar la cámara. Dale permiso en los ajustes del \
             navegador, o haz una foto del código y elígela aquí."
                .to_owned()
        }
        CameraTrouble::NoCamera => {
            "No hay ninguna cámara que este navegador pueda usar. Haz una foto del código y \
             elígela aquí, o pide el archivo."
                .to_owned()
        }
        CameraTrouble::Failed(why) => format!(
            "No se pudo leer el código{}. Prueba otra vez, o pide el archivo.",
            in_its_words(why)
        ),
    }
}

fn hand_over(trouble: &HandOverTrouble) -> String {
    match trouble {
        HandOverTrouble::Refused => {
            "El teléfono no permitió compartir el archivo. Toca otra vez.".to_owned()
        }
        HandOverTrouble::NoWay => {
            "Ninguna app de la lista del teléfono acepta este archivo, y una app instalada no \
             tiene descargas. Muestra el registro como códigos a otro teléfono."
                .to_owned()
        }
        HandOverTrouble::Failed(why) => {
            format!(
                "No se pudo compartir el archivo{}. Toca otra vez.",
                in_its_words(why)
            )
        }
    }
}
