//! The words of the pages on which decisions can be tried (FIVB Official Volleyball Rules
//! 2025-2028; in our own words), in Spanish.

use crate::learn::decisions::*;
use learn::{Call, Decided, End, Margin, Reading, Ruling, Situation, Topic};
use rules::{Group, Preset, Signal};

/// In Spanish.
pub static WORDS: DecisionsWords = DecisionsWords {
    topic,
    topic_more,
    look_for,
    situation,
    drawn,
    reading,
    side,
    call,
    rule,
    margin,
    margin_of,
    length,
    show_signal,
    as_at_first: "Reiniciar",
    less: "Menos",
    more_of_it: "Más",
    which_mover,
};

fn topic(topic: Topic) -> &'static str {
    match topic {
        Topic::InOut => "Dentro y fuera",
        Topic::Antenna => "Antena",
        Topic::NetTouch => "Toque de red",
        Topic::UnderNet => "Por debajo de la red",
        Topic::OverNet => "Por encima de la red",
        Topic::DoubleContact => "Doble golpe",
        Topic::Catch => "Retención",
        Topic::FourHits => "Cuatro toques",
        Topic::Service => "Faltas de saque",
        Topic::Screen => "Pantalla",
        Topic::Positions => "Posiciones",
        Topic::BackRow => "Ataque de zaguero",
        Topic::Block => "Bloqueo",
        Topic::Libero => "Líbero",
        Topic::TwoFaults => "Dos faltas",
    }
}

fn topic_more(topic: Topic) -> &'static str {
    match topic {
        Topic::InOut => "¿Tocó alguna parte del balón una línea, aunque sea un poco?",
        Topic::Antenna => "¿Cruzó el balón la red entre las antenas?",
        Topic::NetTouch => "¿Quién tocó la red al jugar el balón?",
        Topic::UnderNet => "¿Hasta dónde pueden llegar un pie, una mano o el balón?",
        Topic::OverNet => "¿Llegó la mano al otro lado demasiado pronto?",
        Topic::DoubleContact => "Un jugador, dos toques: ¿cuándo es falta?",
        Topic::Catch => "¿Rebotó el balón o se quedó parado?",
        Topic::FourHits => "Cuenta los toques, pero no el bloqueo.",
        Topic::Service => "Pie, tiempo y lanzamiento de quien saca.",
        Topic::Screen => "¿Podía el receptor ver el saque?",
        Topic::Positions => "¿Quién está dónde en el golpe de saque?",
        Topic::BackRow => {
            "¿El pie delante o detrás de la línea, el balón por encima o por debajo de la red?"
        }
        Topic::Block => "¿Quién puede bloquear, y qué balón?",
        Topic::Libero => "Lo que un líbero no puede hacer.",
        Topic::TwoFaults => "¿Cuál fue primero? ¿Cuál cuenta en un saque?",
    }
}

fn look_for(topic: Topic) -> &'static [&'static str] {
    match topic {
        // 8.3, 29.2.1.1
        Topic::InOut => &[
            "Mira la línea, no el balón en el aire. La línea es parte del campo.",
            "Un balón es blando. Se aplasta al caer, y cuenta todo lo que toca el suelo.",
        ],
        // 10.1.1, 8.4.3; Casebook 2024, 3.13.2
        Topic::Antenna => &[
            "Cada árbitro mira la antena de su lado.",
            "Pita un toque de la antena solo si lo has visto. Los jueces de línea ayudan.",
        ],
        // 11.3, 11.4.4
        Topic::NetTouch => &[
            "Mira la red donde se juega el balón. Quédate allí un momento después del golpe.",
            "La acción empieza con el salto. Termina con una caída segura.",
        ],
        // 11.2, 11.4.2, 24.3.2.1
        Topic::UnderNet => &[
            "El segundo árbitro mira la línea debajo de la red.",
            "Pregúntate dos cosas. ¿Todo el pie pasó la línea? ¿Estorbó a alguien?",
        ],
        // 11.4.1, 14.3
        Topic::OverNet => &[
            "Mira dos cosas a la vez: el ataque y las manos del bloqueo.",
            "Las manos pueden esperar más allá de la red. Allí no pueden tocar el balón demasiado \
             pronto.",
        ],
        // 9.1.1, 9.2.3.2, 9.3.4
        Topic::DoubleContact => &[
            "Mira las manos en el golpe. Que el balón gire no es falta por sí solo.",
            "En el primer toque del equipo, un jugador puede tocar el balón más de una vez en una \
             sola acción.",
        ],
        // 9.2.2; what to look at is common practice, no source.
        Topic::Catch => &[
            "Ningún dibujo puede mostrar una retención. Es lo que ves: decide igual para ambos \
             equipos.",
            "¿El balón rebota enseguida? ¿O se queda parado y alguien lo lleva o lo lanza?",
            "Mira el contacto, no la postura del jugador ni el sonido.",
            "Si dudas, deja seguir.",
        ],
        // 9.1, 14.4.1
        Topic::FourHits => &[
            "Cuenta los toques para ti: uno, dos, tres.",
            "Un bloqueo no es un toque. Después, el equipo tiene tres más.",
        ],
        // 12.4
        Topic::Service => &[
            "Mira el pie en el golpe, o en el salto antes del golpe. Los jueces de línea ayudan.",
            "Cuenta el tiempo desde tu silbato.",
        ],
        // 12.5.1 to 12.5.3; how to prevent one: FIVB Refereeing Guidelines 2024, rule 12.
        Topic::Screen => &[
            "Ponte con los ojos en el lugar del receptor.",
            "Solo es pantalla si tapan el golpe y también el vuelo, hasta que el balón llega a la \
             red.",
            "Un jugador puede hacer pantalla, o un grupo. Están juntos, mueven los brazos, saltan \
             o se mueven de lado.",
            "Desde 2025, el equipo que saca debe mantener las manos por debajo de la cabeza \
             hasta que el balón pasa la red.",
            "¿Se juntan antes del saque? Díselo al capitán, o pita para que se separen.",
            "La pitas después del saque. El punto es para el equipo que recibe.",
        ],
        // 7.4, 24.3.2.2
        Topic::Positions => &[
            "Desde 2025, solo el equipo que recibe debe mantener su orden. El segundo árbitro lo \
             mira.",
            "Solo cuentan los pies, y solo en el momento del golpe de saque.",
            "Si saca quien no debe, es otra falta. El anotador espera al golpe y te lo dice \
             después.",
        ],
        // 13.2, 13.3
        Topic::BackRow => &[
            "Hacen falta tres cosas: pies en la zona de ataque, todo el balón por encima de la \
             red, y que el balón cruce.",
            "Si falta una de ellas, sigue el juego.",
        ],
        // 14.1, 14.6
        Topic::Block => &[
            "Antes de cada saque, ten claro quiénes son los zagueros.",
            "Solo participa en un bloqueo quien llega por encima de la red.",
        ],
        // 19.3.1
        Topic::Libero => &[
            "El líbero lleva otra camiseta. Búscala antes de cada saque.",
            "Un líbero no puede bloquear ni intentarlo. Un líbero no puede atacar un balón por \
             encima de la red.",
        ],
        // 6.1.2, 7.5.2, 7.5.3, 12.7
        Topic::TwoFaults => &[
            "Cuenta la primera falta. Lo que viene después no.",
            "Ambos equipos en el mismo momento: no hay punto, se repite.",
            "En un saque el orden es fijo. Primero va una falta de quien saca en el golpe, como \
             pisar la línea.",
            "Luego va el orden incorrecto de los receptores. Al final, lo que hace el balón \
             después del golpe.",
        ],
    }
}

fn situation(situation: Situation) -> &'static str {
    match situation {
        Situation::Foot => "Un pie en la línea",
        Situation::Body => "Una mano o el cuerpo",
        Situation::BallUnder => "El balón bajo la red",
        Situation::ServiceFoot => "El pie",
        Situation::ServiceTime => "El tiempo",
        Situation::ServiceHit => "Lanzar y golpear",
        Situation::ServiceNet => "En la red",
        Situation::ServerOrder => "Quién saca",
        Situation::LiberoAttack => "El líbero ataca",
        Situation::LiberoPass => "El líbero pasa",
        Situation::LiberoBlock => "El líbero en la red",
        Situation::AtTheService => "Varias faltas en un saque",
        Situation::NetTouch
        | Situation::OverNet
        | Situation::Catch
        | Situation::DoubleContact
        | Situation::FourHits
        | Situation::Positions
        | Situation::Attack
        | Situation::Block
        | Situation::Landing
        | Situation::Crossing
        | Situation::Screen
        | Situation::TwoFaults => "Pruébalo",
    }
}

fn drawn(situation: Situation) -> &'static str {
    match situation {
        Situation::NetTouch => {
            "La red vista desde el campo de la derecha. Arrastra por ella la mano del equipo de \
             la izquierda."
        }
        Situation::OverNet => {
            "La red vista de lado. El equipo de la izquierda ataca, el de la derecha bloquea. \
             Arrastra la mano."
        }
        Situation::Foot => {
            "La línea central desde arriba. Arrastra el pie del equipo de la izquierda."
        }
        Situation::Body => "Un jugador del equipo de la izquierda toca el campo de la derecha.",
        Situation::BallUnder => {
            "La red vista de lado. Arrastra el balón que viene de la izquierda."
        }
        Situation::Catch => "Aquí no hay nada que arrastrar. Elige debajo lo que viste.",
        Situation::DoubleContact | Situation::FourHits => {
            "Cuatro jugadores del equipo de la izquierda. Arrastra cada balón con número a quien \
             lo juega, o al otro lado de la red."
        }
        Situation::ServiceFoot => {
            "Una esquina del campo de la izquierda desde arriba. Arrastra el pie de quien saca."
        }
        Situation::ServiceTime => "Tiempo desde tu silbato. Arrastra el golpe.",
        Situation::ServiceHit => "¿Cómo se puso el balón en juego?",
        Situation::ServiceNet => "Un saque toca la red. Arrastra el balón adonde cae.",
        Situation::ServerOrder => {
            "El saque es del equipo de la izquierda. Arrastra el balón a quien saca."
        }
        Situation::Positions => {
            "El campo de la izquierda desde arriba. Arrastra a los jugadores. Debajo, cuatro \
             veces más grandes: los pies de los dos que están más cerca de una falta."
        }
        Situation::Attack => {
            "El campo de la izquierda visto de lado. Arrastra el pie del salto y el balón."
        }
        Situation::LiberoAttack => {
            "El campo de la izquierda visto de lado. Arrastra el balón que golpea el líbero."
        }
        Situation::LiberoPass => {
            "El campo de la izquierda visto de lado. Arrastra al líbero y el balón que golpea un \
             delantero."
        }
        Situation::Block => {
            "La red vista desde el campo de la izquierda. Arrastra las manos del bloqueo hacia \
             arriba y hacia abajo."
        }
        Situation::LiberoBlock => {
            "La red vista desde el campo de la izquierda. Arrastra las manos hacia arriba y hacia \
             abajo."
        }
        Situation::Landing => {
            "Una esquina del campo de la derecha desde arriba. Arrastra el balón."
        }
        Situation::Crossing => {
            "La red cerca de una antena. Arrastra el balón que envía el equipo de la izquierda."
        }
        Situation::Screen => {
            "El campo desde arriba. Saca el equipo de la izquierda. Arrastra a dos de sus \
             jugadores y al receptor."
        }
        Situation::TwoFaults => {
            "El equipo de la izquierda toca la red, el de la derecha cae más allá de la línea. \
             Arrastra ambos en el tiempo."
        }
        Situation::AtTheService => "Saca el equipo de la izquierda. ¿Qué viste?",
    }
}

fn reading(reading: Reading) -> &'static str {
    match reading {
        Reading::Only => "",
        Reading::Standard => "Regla estándar",
        Reading::Junior => "Regla juvenil de algunas escuelas",
        Reading::Order => "El orden",
        Reading::InsideCourt => "Dentro del campo",
    }
}

fn side(end: End) -> &'static str {
    match end {
        End::Left => "equipo de la izquierda",
        End::Right => "equipo de la derecha",
    }
}

fn call(decided: &Decided) -> String {
    match decided.ruling.call {
        Call::PlayOn => match decided.reading {
            Reading::Order | Reading::InsideCourt => "Correcto: no hay falta".to_owned(),
            Reading::Only | Reading::Standard | Reading::Junior => {
                "Sigue el juego: no hay falta".to_owned()
            }
        },
        Call::Replay => "El punto no es para nadie: se repite".to_owned(),
        Call::Fault { by, cause, .. } => {
            let cause = crate::cause(cause, &Preset::International.rules());
            format!("{cause}: punto para el {}", side(by.other()))
        }
    }
}

fn rule(rule: &str) -> String {
    if rule == "school" {
        "Regla escolar, sin número internacional".to_owned()
    } else {
        format!("Regla {rule}")
    }
}

fn margin(decided: &Decided) -> String {
    margin_of(decided.ruling)
}

fn margin_of(ruling: Ruling) -> String {
    let away = match ruling.margin {
        Margin::Metres(metres) => length(metres),
        Margin::Seconds(seconds) => format!("{seconds:.2}\u{a0}s"),
        Margin::Seen => return "Nada que medir: se ve o no se ve".to_owned(),
    };
    match ruling.call {
        Call::PlayOn => format!("A {away} de ser falta"),
        // In or out, or first of two: either way somebody has the point, or it is played again.
        Call::Fault { cause, .. }
            if cause.group() == Some(Group::Ball)
                || ruling.rule == "6.1.2.1"
                || ruling.rule.starts_with("8.") =>
        {
            format!("A {away} de la otra respuesta")
        }
        Call::Fault { .. } => format!("A {away} de estar permitido"),
        Call::Replay => format!("A {away} de la otra respuesta"),
    }
}

fn length(metres: f64) -> String {
    let halves = (metres * 200.0).round();
    if halves.abs() >= 200.0 {
        format!("{:.2}\u{a0}m", metres.abs())
    } else if halves % 2.0 == 0.0 {
        format!("{:.0}\u{a0}cm", (halves / 2.0).abs())
    } else {
        format!("{:.1}\u{a0}cm", (halves / 2.0).abs())
    }
}

fn show_signal(signal: Signal) -> String {
    format!("Señal {}: {}", signal.number(), crate::signal(signal))
}

fn which_mover(of: Situation) -> &'static str {
    match of {
        Situation::DoubleContact | Situation::FourHits => "¿Qué toque cambias?",
        _ => "¿A qué jugador mueves?",
    }
}
