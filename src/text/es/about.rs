//! What the app is for, what it is not, and the careful words, in Spanish.

use crate::about::*;

/// In Spanish.
pub static WORDS: AboutWords = AboutWords {
    about_title: "Acerca de",
    about: "Lo que esta app no sustituye",
    care_stop:
        "Detén el juego de inmediato. Haz venir al adulto responsable y a quien da primeros \
         auxilios.",
    care_no_diagnosis: "No hagas ningún diagnóstico. No toques ni muevas a nadie.",
    care_head:
        "Tras un golpe en la cabeza, o ante cualquier duda: fuera del campo. Nadie vuelve sin la \
         autorización de un profesional médico habilitado, según tus reglas locales.",
    care_not_replaced:
        "Esta app no sustituye a una persona cualificada ni las reglas de tu competición. Ellas \
         cuentan primero.",
    about_parts,
};

fn about_parts() -> [(&'static str, Vec<&'static str>); 5] {
    [
        (
            "Las reglas que cuentan",
            vec![
                "Dutystand conoce las Reglas Oficiales de Voleibol y algunos límites escolares \
                 comunes. Tu competición puede tener reglas propias. Ellas cuentan primero.",
                "La app aconseja. El primer árbitro decide.",
            ],
        ),
        (
            "Cuando alguien se lesiona",
            vec![
                care_stop(),
                care_no_diagnosis(),
                care_head(),
                care_not_replaced(),
            ],
        ),
        (
            "Lo que se queda en este teléfono",
            vec![
                "Todo se queda aquí. Los nombres son opcionales: bastan los números de camiseta. \
                 Nada sale del teléfono si no lo compartes tú.",
                "Si el navegador borra sus datos, también se pierden los registros. Exporta lo \
                 que importa.",
            ],
        ),
        (
            "Sin conexión",
            vec![
                "Una vez que la app se ha abierto con conexión, funciona sin ella.",
                "La pantalla sigue encendida durante un partido si el teléfono lo permite.",
            ],
        ),
        (
            "Con teclado",
            vec![
                "En el campo, las flechas izquierda y derecha eligen una mitad, y Enter le da el \
                 punto. Con Tab llegas a todo lo demás. Escape cierra un panel abierto.",
            ],
        ),
    ]
}
