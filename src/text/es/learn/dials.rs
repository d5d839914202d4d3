//! What can be set in a situation, and how it stands, in words that can be heard as well, in
//! Spanish.

use crate::learn::decisions::{length, side};
use crate::learn::dials::*;
use learn::{Dial, End, Situation};

/// In Spanish.
pub static WORDS: DialsWords = DialsWords {
    dial,
    row_mark,
    choices,
    set_to,
    mover,
};

fn dial(dial: Dial) -> String {
    let words = match dial {
        Dial::AlongNet => "Dónde toca la mano",
        Dial::NetContact => "¿Qué pasó?",
        Dial::HandBeyond => "Mano del bloqueo",
        Dial::AfterAttack => "Toque del bloqueo",
        Dial::HandDoes => "¿Qué hace la mano?",
        Dial::Opponents => "¿Aún puede atacar el balón el equipo de la izquierda?",
        Dial::Heel => "Talón del pie",
        Dial::Hinders => "¿Estorba a un contrario?",
        Dial::BodyPart => "¿Qué toca el campo contrario?",
        Dial::BallBeyond => "Centro del balón",
        Dial::Contact => "¿Qué viste?",
        Dial::OwnBlock => "¿Bloqueó antes el equipo de la izquierda?",
        Dial::Hitter(n) => return format!("¿Quién da el toque {n}?"),
        Dial::OneAction => "¿Toques 1 y 2 del mismo jugador?",
        Dial::ServerDepth => "Punta del pie de delante",
        Dial::ServerRight => "Lugar en la línea de fondo",
        Dial::ServiceAfter => "Golpe de saque",
        Dial::ServiceHow => "¿Qué pasó?",
        Dial::Server => "¿Quién saca?",
        Dial::PlayerDepth(n) => return format!("Jugador {n}, desde la red"),
        Dial::PlayerRight(n) => return format!("Jugador {n}, hacia el lado"),
        Dial::Serves => "¿Qué equipo es?",
        Dial::Edition => "¿Qué edición de las reglas?",
        Dial::Row(1) => "El jugador",
        Dial::Row(_) => "El otro jugador",
        Dial::AttackedBall => "¿Qué balón es?",
        Dial::TakeOff => "Pie del salto",
        Dial::BallDepth => "Balón, desde la red",
        Dial::BallHeight => "Altura del balón",
        Dial::NetTop => "Altura de la red",
        Dial::Completed => "¿Cruza el balón la red?",
        Dial::LiberoDepth => "Líbero, desde la red",
        Dial::LiberoPass => "¿Cómo pasa el líbero?",
        Dial::Reach(1) => "Manos del primer jugador",
        Dial::Reach(_) => "Manos del otro jugador",
        Dial::BlockTouches => "¿Toca el bloqueo el balón?",
        Dial::BlockedBall => "¿Qué balón es?",
        Dial::LandsAlong => "Balón, a lo largo del campo",
        Dial::LandsAcross => "Balón, a lo ancho del campo",
        Dial::Patch => "Tamaño del contacto con el suelo",
        Dial::LastTouch => "¿Quién lo tocó al final?",
        Dial::CrossesAside => "Balón, desde el centro de la red",
        Dial::CrossesHeight => "Altura del balón",
        Dial::Tall => "Altura de estos dos jugadores",
        Dial::TeamHit => "¿Con qué toque se envió?",
        Dial::Towards => "¿Hacia dónde vuela?",
        Dial::HandsUp => "¿Manos por encima de la cabeza?",
        Dial::ServiceFlight => "¿Cómo vuela el saque?",
        Dial::LeftFaultAt => "Toque de red del equipo de la izquierda",
        Dial::RightFaultAt => "Pie del equipo de la derecha",
        Dial::ServerOnLine => "En el golpe: ¿pisa quien saca la línea de fondo?",
        Dial::ReceiversSwapped => "En el golpe: ¿están los receptores en un orden incorrecto?",
        Dial::ServiceWide => "Después del golpe: ¿vuela el balón por fuera de la antena?",
    };
    words.to_owned()
}

fn row_mark(row: usize) -> &'static str {
    ["D", "Z", "L"].get(row).copied().unwrap_or_default()
}

const ROWS: &[&str] = &["Delantero", "Zaguero", "El líbero"];

const NO_YES: &[&str] = &["No", "Sí"];

fn choices(dial: Dial) -> &'static [&'static str] {
    match dial {
        Dial::NetContact => &[
            "Juega el balón, salta o cae",
            "Ya ha caído y se da la vuelta",
            "El balón empuja la red contra la mano",
            "Agarra la red o estorba a un contrario",
            "Solo la toca el pelo",
        ],
        Dial::HandDoes => &["Bloquea", "Golpea como en un ataque"],
        Dial::Opponents => &["Sí", "No, nadie puede llegar"],
        Dial::Hinders
        | Dial::OwnBlock
        | Dial::Completed
        | Dial::BlockTouches
        | Dial::HandsUp
        | Dial::ServerOnLine
        | Dial::ReceiversSwapped
        | Dial::ServiceWide => NO_YES,
        Dial::BodyPart => &["Una mano", "Una rodilla, la espalda"],
        Dial::Contact => &[
            "Rebota enseguida",
            "Se queda parado, o lo lanzan",
            "Dos contrarios lo retienen sobre la red",
            "Un compañero levanta al jugador hasta él",
        ],
        Dial::Hitter(_) => &[
            "Jugador 1",
            "Jugador 2",
            "Jugador 3",
            "Jugador 4",
            "Al otro lado",
        ],
        Dial::OneAction => &["En dos acciones", "En una acción"],
        Dial::ServiceHow => &[
            "Lo lanza una vez, una mano",
            "Primero lo bota, luego lo lanza",
            "Lo golpea en la otra mano, sin soltarlo",
            "Lo deja caer y lo lanza otra vez",
            "Lo golpea con las dos manos",
        ],
        Dial::Server => &[
            "Posición 1",
            "Posición 2",
            "Posición 3",
            "Posición 4",
            "Posición 5",
            "Posición 6",
        ],
        Dial::Serves => &["Recibe", "Saca"],
        Dial::Edition => &["2025 a 2028", "2021 a 2024"],
        Dial::Row(_) => ROWS,
        Dial::AttackedBall => &["Cualquier otro balón", "El saque del otro equipo"],
        Dial::LiberoPass => &["Con los antebrazos", "De dedos, manos en alto"],
        Dial::BlockedBall => &["Un ataque", "El saque"],
        Dial::LastTouch => &[
            "Izquierda: saque",
            "Izquierda: ataque",
            "Derecha: bloqueo",
            "Derecha: defensa",
        ],
        Dial::TeamHit => &["Saque", "Primer toque", "Segundo toque", "Tercer toque"],
        Dial::Towards => &["Hacia el campo", "Hacia la zona libre"],
        Dial::ServiceFlight => &["Tenso", "Alto"],
        Dial::AlongNet
        | Dial::HandBeyond
        | Dial::AfterAttack
        | Dial::Heel
        | Dial::BallBeyond
        | Dial::ServerDepth
        | Dial::ServerRight
        | Dial::ServiceAfter
        | Dial::PlayerDepth(_)
        | Dial::PlayerRight(_)
        | Dial::TakeOff
        | Dial::BallDepth
        | Dial::BallHeight
        | Dial::NetTop
        | Dial::LiberoDepth
        | Dial::Reach(_)
        | Dial::LandsAlong
        | Dial::LandsAcross
        | Dial::Patch
        | Dial::CrossesAside
        | Dial::CrossesHeight
        | Dial::Tall
        | Dial::LeftFaultAt
        | Dial::RightFaultAt => &[],
    }
}

fn set_to(dial: Dial, value: f64) -> String {
    let time = |moment: Moment, by: f64, when: &str| match moment {
        Moment::AttackHit => format!("{by:.2}\u{a0}s {when} del ataque"),
        Moment::Whistle => format!("{by:.1}\u{a0}s {when} del silbato"),
    };
    match stands(dial, value) {
        Stands::Beyond(edge, by) => format!("{} {}", length(by), sides(edge).0),
        Stands::Within(edge, by) => format!("{} {}", length(by), sides(edge).1),
        Stands::Before(moment, by) => time(moment, by, "antes"),
        Stands::After(moment, by) => time(moment, by, "después"),
        Stands::FromBeginning(at) => format!("después de {at:.2}\u{a0}s"),
        Stands::FromNet(by) => format!("a {by:.2}\u{a0}m de la red"),
        Stands::High(by) => format!("{by:.2}\u{a0}m de altura"),
        Stands::Around(by) => format!("{} alrededor de su centro", length(by)),
        Stands::Choice(choice) => {
            let words = choices(dial).get(choice);
            words.copied().unwrap_or_default().to_owned()
        }
    }
}

/// Beyond what a control is measured from, and on this side of it.
fn sides(edge: Edge) -> (&'static str, &'static str) {
    match edge {
        Edge::EndLineOfServer => ("detrás de la línea de fondo", "dentro del campo"),
        Edge::ServiceZone => ("al lado de la zona", "dentro de la zona"),
        Edge::EndLine => ("por fuera de la línea de fondo", "por dentro de su borde"),
        Edge::SideLine => ("por fuera de la línea lateral", "por dentro de su borde"),
        Edge::Antenna => ("por fuera de la antena", "por dentro de la antena"),
        Edge::PlayersMiddle => ("a la derecha del jugador", "a la izquierda del jugador"),
        Edge::NetOfBall => ("más allá de la red", "antes de la red"),
        Edge::CentreLine => ("dentro de su campo", "más allá de la mitad de la línea"),
        Edge::NetOfAttack => ("antes de la red", "más allá de la red"),
        Edge::NetOfHand => ("más allá de la red", "en su propio lado"),
    }
}

fn mover(of: Situation, n: u8) -> String {
    match (of, n) {
        (Situation::DoubleContact | Situation::FourHits, _) => format!("Toque {n}"),
        (Situation::Screen, 3) => format!("Receptor, {}", side(End::Right)),
        (Situation::Screen, _) => format!("Jugador {n}, {}", side(End::Left)),
        (_, _) => format!("Posición {n}"),
    }
}
