//! The words of the court: what a zone or a line is, who may be there, and which fault belongs to
//! it (FIVB Official Volleyball Rules 2025-2028; the number stands beside each), in Spanish.

use crate::learn::court::*;
use learn::{Mark, Topic};

/// In Spanish.
pub static WORDS: CourtWords = CourtWords {
    mark,
    mark_lines,
    mark_topics,
    court_drawn: "El campo desde arriba, como lo ve el primer árbitro.",
    all_marks: "O elige aquí",
    net_heights: "¿Qué altura tiene la red?",
    net_heights_more: "Lo dicen las reglas de tu competición. Pregunta antes de medir.",
    net_adults: "Adultos (regla 2.1.1)",
    net_young:
        "Jóvenes: un ejemplo, la tabla juvenil de una región de Europa Central. Otros lugares \
         tienen otras alturas, así que no hay una altura para todos.",
    net_measured:
        "Mide en el centro del campo. Sobre ambas líneas laterales la red tiene la misma altura. \
         Allí puede estar como mucho 2 cm más alta que en el centro (2.1.2).",
    net_columns: ["Edad", "Masculino", "Femenino"],
    under,
    height,
};

fn mark(mark: Mark) -> &'static str {
    match mark {
        Mark::FrontZone => "Zona de ataque",
        Mark::BackZone => "Zona de defensa",
        Mark::ServiceZone => "Zona de saque",
        Mark::FreeZone => "Zona libre",
        Mark::SubstitutionZone => "Zona de sustitución",
        Mark::LiberoZone => "Zona de reemplazo del líbero",
        Mark::EndLine => "Línea de fondo",
        Mark::SideLine => "Línea lateral",
        Mark::CentreLine => "Línea central",
        Mark::AttackLine => "Línea de ataque",
        Mark::Net => "Red, antenas, postes",
        Mark::Stand => "Primer árbitro",
        Mark::SecondReferee => "Segundo árbitro",
        Mark::Table => "Mesa del anotador",
        Mark::Bench => "Banco del equipo",
        Mark::LineJudge => "Juez de línea",
    }
}

fn mark_lines(mark: Mark) -> &'static [&'static str] {
    match mark {
        // 1.4.1, 13.2, 19.3.1
        Mark::FrontZone => &[
            "Va de la línea central a la línea de ataque, 3 m. Esa línea es parte de ella. Sigue \
             hacia ambos lados, hasta el final de la zona libre.",
            "Aquí puede estar cualquiera. Un zaguero no puede saltar aquí para atacar un balón \
             por encima de la red.",
            "Un pase de dedos del líbero desde aquí no se puede atacar por encima de la red.",
        ],
        // 1.3.4, 13.2.2
        Mark::BackZone => &[
            "Va de la línea de ataque a la línea de fondo.",
            "Un zaguero puede saltar aquí, atacar a cualquier altura y caer delante.",
        ],
        // 1.4.2, 12.4.3
        Mark::ServiceZone => &[
            "Mide 9 m de ancho, detrás de la línea de fondo. Dos marcas cortas señalan dónde \
             termina, y son parte de ella. Llega hasta el final de la zona libre.",
            "En el golpe de saque solo está aquí quien saca. El pie no puede tocar la línea.",
        ],
        // 1.1, 7.4, 9
        Mark::FreeZone => &[
            "Mide al menos 3 m de ancho por todos los lados. Que no haya bolsas, balones ni gente.",
            "Los jugadores pueden correr aquí para salvar un balón. En el golpe de saque, solo \
             quien saca puede estar fuera del campo.",
        ],
        // 1.4.3, 15.10
        Mark::SubstitutionZone => &[
            "Está entre las dos líneas de ataque, hasta la mesa.",
            "Los sustitutos entran y salen por aquí. El segundo árbitro los deja entrar.",
        ],
        // 1.4.4, 19.3.2.7
        Mark::LiberoZone => &[
            "Está en el lado de los bancos, de la línea de ataque a la línea de fondo.",
            "El líbero entra y sale por aquí, sin pedirlo, antes del silbato para el saque.",
        ],
        // 1.3.2, 8.3, 12.4.3
        Mark::EndLine => &[
            "Está a 9 m del centro de la línea central. La línea es parte del campo: un balón \
             sobre ella es dentro.",
            "Quien saca no puede tocarla en el golpe.",
        ],
        // 1.3.2, 8.3
        Mark::SideLine => &[
            "Está a 4.5 m del centro. La línea es parte del campo: un balón sobre ella es dentro.",
        ],
        // 1.3.3, 11.2.2, 11.4.3
        Mark::CentreLine => &[
            "Está debajo de la red. Sus 5 cm son de ambos campos.",
            "Un pie puede pasarla si una parte sigue sobre la línea o encima de ella, y no estorba \
             a nadie.",
        ],
        // 1.3.4, 13.3.3
        Mark::AttackLine => &[
            "Su borde de atrás está a 3 m del centro de la línea central. La línea es parte de la \
             zona de ataque.",
            "Un zaguero que la pisa al saltar está en la zona de ataque.",
        ],
        // 2.1 to 2.5, 10.1.1
        Mark::Net => &[
            "El balón debe cruzar por encima de la red y entre las antenas. Las antenas suben \
             80 cm por encima de la red.",
            "Los postes están de 0.5 a 1 m por fuera de las líneas laterales.",
        ],
        // 23.1
        Mark::Stand => &[
            "El primer árbitro está en un extremo de la red, con los ojos unos 50 cm por encima \
             de ella.",
            "Este campo está dibujado visto desde allí.",
        ],
        // 24.1, 22.2.3
        Mark::SecondReferee => &[
            "El segundo árbitro está cerca del poste, en el lado de la mesa, frente al primero.",
            "Para señalar, el segundo árbitro pasa al lado del equipo que comete la falta.",
        ],
        // 27.1, 28.1
        Mark::Table => &[
            "El anotador y su asistente se sientan aquí, frente al primer árbitro.",
            "Desde aquí, izquierda y derecha están al revés.",
        ],
        // 4.2, 5.2.3.4
        Mark::Bench => &[
            "Entrenador, cuerpo técnico y sustitutos de un equipo, al lado de la mesa y fuera de \
             la zona libre.",
            "El entrenador puede caminar delante del banco, pero sin retrasar ni molestar el \
             partido.",
        ],
        // 29.1
        Mark::LineJudge => &[
            "Dos jueces de línea están en las esquinas a la derecha de cada árbitro, a 1 o 2 m.",
            "Cada uno mira una línea de fondo y una línea lateral.",
        ],
    }
}

fn mark_topics(mark: Mark) -> &'static [Topic] {
    match mark {
        Mark::FrontZone | Mark::AttackLine | Mark::BackZone => &[Topic::BackRow, Topic::Libero],
        Mark::ServiceZone => &[Topic::Service],
        Mark::FreeZone => &[Topic::Antenna, Topic::Positions],
        Mark::EndLine => &[Topic::InOut, Topic::Service],
        Mark::SideLine | Mark::LineJudge => &[Topic::InOut],
        Mark::CentreLine => &[Topic::UnderNet],
        Mark::Net => &[Topic::NetTouch, Topic::OverNet, Topic::Antenna],
        Mark::LiberoZone => &[Topic::Libero],
        Mark::SecondReferee => &[Topic::Positions, Topic::UnderNet],
        Mark::SubstitutionZone | Mark::Stand | Mark::Table | Mark::Bench => &[],
    }
}

fn under(age: u8) -> String {
    format!("Sub-{age}")
}

fn height(metres: &str) -> String {
    format!("{metres} m")
}
