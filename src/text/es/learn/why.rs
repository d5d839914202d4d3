//! Why something is decided as it is: a sentence for each rule that a decision names, in Spanish.

use crate::learn::why::*;
use learn::{Call, Decided, Judged, Margin, Ruling};
use rules::Cause;

/// In Spanish.
pub static WORDS: WhyWords = WhyWords {
    why,
    why_in_scene,
    why_of,
};

fn why(decided: &Decided) -> &'static str {
    why_of(decided.ruling)
}

fn why_in_scene(judged: &Judged) -> (&'static str, &'static str) {
    match (judged.about, judged.ruling.rule, judged.ruling.call) {
        (Cause::FourHits, "9.1", _) => (
            "14.4.1",
            "Un bloqueo no es un toque, así que se permiten tres más.",
        ),
        (Cause::DoubleContact, "9.1", _) => (
            "9.2.3.2",
            "En el primer toque de un equipo, un jugador puede tocarlo más de una vez en una sola \
             acción.",
        ),
        (Cause::Catch, "9.1", _) => ("9.2.2", "Fue un toque largo, pero el balón rebotó."),
        (Cause::BallTouched, "8.4.1", _) => (
            "8.4.1",
            "El bloqueo lo tocó al final, y cae fuera en el lado del bloqueo.",
        ),
        (Cause::ServiceNet, "12.6.2", _) => ("12.6.2", "Un saque debe cruzar la red."),
        (Cause::LiberoFault, "13.2.1", _) => (
            "13.3.6",
            "El líbero estaba detrás de la zona de ataque. Entonces cualquiera puede atacar el \
             balón.",
        ),
        (Cause::LiberoFault, "14.1", _) => (
            "14.6.6",
            "Por debajo del borde superior de la red nadie bloquea.",
        ),
        (_, rule, _) => (rule, why_of(judged.ruling)),
    }
}

fn why_of(ruling: Ruling) -> &'static str {
    let Ruling { call, rule, margin } = ruling;
    match (rule, call) {
        ("6.1.2.1", _) => "Cuenta la primera falta. La otra llegó demasiado tarde para contar.",
        ("6.1.2.2", _) => "Nadie puede decir cuál fue primero. La jugada se repite.",
        ("7.4", Call::Fault { .. }) => {
            "Un pie toca el suelo fuera del campo. Solo quien saca puede estar allí."
        }
        ("7.4", _) if margin == Margin::Seen => {
            "El equipo que saca puede estar en cualquier orden dentro de su campo."
        }
        ("7.4", _) => "Todos los pies están dentro. Las líneas son parte del campo.",
        ("7.4.3", _) => "Cada pareja está bien colocada. A la misma altura también está bien.",
        ("7.5.1", _) => {
            "Dos jugadores están en el orden equivocado en el momento del golpe de saque."
        }
        ("7.7.1", Call::Fault { .. }) => "La rotación dice quién saca. Le tocaba a otro jugador.",
        ("7.7.1", _) => "Ha sacado el jugador al que le tocaba.",
        ("8.3", Call::PlayOn) => "El balón no ha tocado el suelo, así que está en juego.",
        ("8.3", _) => "Alguna parte del balón toca el campo. La línea es parte de él.",
        ("8.4.1", _) => "Todo el balón toca el suelo fuera de las líneas.",
        ("8.4.3", _) => "El balón toca la antena. Es fuera, caiga donde caiga.",
        ("8.4.4", _) => "El balón cruza la red por fuera de la antena.",
        ("8.4.5", _) => "Todo el balón ha pasado por debajo de la red.",
        ("9.1", _) => "El balón rebota, tres toques como mucho, y nadie dos veces seguidas.",
        ("9.1.3", Call::PlayOn) => "Un compañero puede sujetar a un jugador para evitar una falta.",
        ("9.1.3", _) => {
            "Dentro del área de juego nadie puede ayudar a un jugador a llegar al balón."
        }
        ("9.2.2", _) => "El balón tiene que rebotar. No se puede retener ni lanzar.",
        ("9.3.1", _) => "Un equipo tiene tres toques. Este fue uno más.",
        ("9.3.4", _) => {
            "El mismo jugador lo tocó dos veces seguidas. Eso solo se permite en el primer toque."
        }
        ("10.1.1", _) => "Todo el balón cruza entre las antenas.",
        ("10.1.2", _) => {
            "Vuela por fuera de la antena hacia la zona libre. Un compañero puede correr y jugarlo \
             desde allí."
        }
        ("10.1.2.3", _) => "Solo un primer toque se puede traer de vuelta desde allí.",
        ("10.2", _) => "Un balón puede tocar la red al cruzar, también el saque.",
        ("10.1.3", _) => "Parte del balón aún está antes de la red. Se puede salvar.",
        ("11.1.2", _) => "El balón se toca en el lado propio. La mano puede seguir su movimiento.",
        ("11.2.2.1", Call::Fault { .. }) => "El pie estorba a un contrario.",
        ("11.2.2.1", _) => "Parte del pie está en la línea o encima de ella, y no estorba a nadie.",
        ("11.2.2.2", Call::Fault { .. }) => {
            "Estorba a un contrario. Entonces cualquier toque es falta."
        }
        ("11.2.2.2", _) => {
            "Cualquier parte por encima de los pies puede tocarlo, si no estorba a nadie."
        }
        ("school", _) => {
            "Algunas reglas escolares solo permiten tocar el campo contrario con pies y manos. \
             Pregunta a tu organizador."
        }
        ("11.3.1", Call::Fault { .. }) => {
            "El toque es entre las antenas, al jugar el balón. También cuenta uno leve."
        }
        ("11.3.1", _) => "No forma parte de jugar el balón, así que no cuenta.",
        ("11.3.2", _) => {
            "Por fuera de las antenas se pueden tocar la red, las cuerdas y los postes."
        }
        ("11.3.3", _) => "El balón empujó la red. El jugador no hizo nada.",
        ("11.4.1", _) => "El bloqueo tocó el balón antes del ataque, más allá de la red.",
        ("11.4.3", _) => {
            "Todo el pie está más allá de la línea. Eso es falta, aunque no estorbe a nadie."
        }
        ("11.4.4", _) => "Usar la red, o estorbar con ella a un contrario, siempre es falta.",
        ("12.4", _) => {
            "Se lanza o se suelta una vez, y se golpea con una mano o un brazo. Botarlo antes está \
             permitido."
        }
        ("12.4.1", _) => {
            "Primero el balón debe dejar la mano. Después lo golpea una mano o un brazo."
        }
        ("12.4.2", _) => "Solo se permite un lanzamiento.",
        ("12.4.3", Call::Fault { .. }) => {
            "En el golpe o en el salto, un pie toca la línea, o el suelo al lado de la zona."
        }
        ("12.4.3", _) => {
            "Ambos pies están en la zona de saque. Después del golpe pueden caer en cualquier \
             lugar."
        }
        ("12.4.4", Call::Fault { .. }) => "El tiempo desde el silbato se ha acabado.",
        ("12.4.4", _) => "El saque se golpeó a tiempo después del silbato.",
        ("12.4.5", _) => "Se golpeó antes de tu silbato. El mismo jugador saca otra vez.",
        ("12.5.2", Call::Fault { .. }) => "El receptor no podía ver ni el golpe ni el vuelo.",
        ("12.5.2", _) => {
            "El receptor vio el golpe o una parte del vuelo. Basta con uno de los dos."
        }
        ("12.6.2", _) => "Un saque debe cruzar la red entre las antenas.",
        ("13.1.3", _) => "El balón no cruzó y nadie lo tocó al otro lado. Todavía no es un ataque.",
        ("13.2.1", _) => "Un delantero puede atacar a cualquier altura en su lado.",
        ("13.3.1", _) => "El balón se golpea en el lado de la red del otro equipo.",
        ("13.3.3", Call::Fault { .. }) => {
            "Un zaguero saltó en la zona de ataque y golpeó un balón que estaba todo por encima de \
             la red."
        }
        ("13.3.3", _) => {
            "O saltó detrás de la línea, o parte del balón estaba por debajo del borde superior de \
             la red."
        }
        ("13.3.4", Call::Fault { .. }) => {
            "Nadie puede atacar el saque en la zona de ataque si todo el balón está por encima de \
             la red."
        }
        ("13.3.4", _) => {
            "El balón estaba detrás de la línea, o parte de él por debajo del borde superior de la \
             red."
        }
        ("13.3.5", Call::Fault { .. }) => {
            "Todo el balón estaba por encima de la red. Un líbero nunca puede golpear eso."
        }
        ("13.3.5", _) => {
            "Parte del balón estaba por debajo del borde superior de la red. Eso se permite."
        }
        ("13.3.6", Call::Fault { .. }) => {
            "El líbero lo pasó de dedos en la zona de ataque, y se golpeó por encima de la red. \
             Señala al líbero."
        }
        ("13.3.6", _) => {
            "Parte del balón estaba por debajo del borde superior de la red, así que el golpe se \
             permite."
        }
        ("14.1.2", _) => "Bloquear el saque es falta cuando se toca el balón. Aquí nadie lo tocó.",
        ("14.1", _) => {
            "Solo delanteros llegaron por encima de la red, o ningún bloqueo con un zaguero tocó \
             el balón."
        }
        ("14.3", _) => "El bloqueo esperó al ataque. En el mismo momento no es falta.",
        ("14.5", _) => "El saque no se puede bloquear.",
        ("14.6.2", _) => "Un zaguero participó en un bloqueo que tocó el balón.",
        ("14.6.6", _) => "Un líbero no puede ni intentar bloquear.",
        _ => "",
    }
}
