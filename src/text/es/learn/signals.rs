//! The words of the signals that only learning needs: from where they are seen, what goes wrong
//! with them, and the flags of the line judges (FIVB Official Volleyball Rules 2025-2028, 29.2,
//! diagrams 11 and 12), in Spanish.

use crate::learn::signals::*;
use rules::{FlagSignal, Signal};

/// In Spanish.
pub static WORDS: LearnSignalsWords = LearnSignalsWords {
    seen_from: "¿Cómo la ves?",
    views: ["En un espejo", "Como te ven los jugadores", "Desde atrás"],
    at_fault: "¿De qué equipo se trata?",
    sides: ["Equipo a tu izquierda", "Equipo a tu derecha"],
    mistake_label: "Error frecuente:",
    decided_by: "Cómo decidirlo",
    flags: "Banderines de los jueces de línea",
    mistake,
    flag,
    flag_how,
};

fn mistake(signal: Signal) -> Option<&'static str> {
    Some(match signal {
        Signal::AuthoriseService => "Pitar antes de que ambos equipos y quien saca estén listos.",
        // 22.2.3
        Signal::TeamToServe => {
            "Señalar el equipo de la falta. Señala quién saca ahora, antes que nada."
        }
        Signal::TimeOut => "Olvidar la segunda parte: señala qué equipo lo pidió.",
        Signal::Warning | Signal::Penalty => {
            "Mostrar la tarjeta al lado equivocado. Primero mira, después muéstrala."
        }
        Signal::Expulsion => "Una tarjeta en cada mano: eso es otra cosa.",
        Signal::Disqualification => "Ambas tarjetas en una mano: eso es otra cosa.",
        Signal::NotTossed => "Doblar el brazo como en una retención. Aquí queda estirado.",
        Signal::ServiceDelay => "Contar demasiado rápido. Practica con un reloj.",
        Signal::BlockOrScreen => "Olvidar señalar después al jugador.",
        Signal::Position => "Apuntar hacia arriba. El dedo apunta hacia abajo.",
        Signal::BallIn => "Señalar con un dedo. La mano va abierta.",
        // Guidelines 2024, rule 28, point 11
        Signal::BallOut => "Usarla cuando alguien tocó el balón antes de salir.",
        Signal::Catch => "Levantar rápido. Levanta despacio, con la palma hacia arriba.",
        Signal::DoubleContact | Signal::FourHits => {
            "Dedos demasiado juntos para contarlos. Sepáralos."
        }
        // Diagram 11 (19)
        Signal::NetTouch => "Tocar la red en el lado equivocado. El lado dice quién fue.",
        Signal::OverNet => "Poner la palma hacia arriba. La palma va hacia abajo.",
        Signal::AttackFault => "Hacerla como un remate. Dobla el antebrazo con la mano abierta.",
        Signal::LineOrUnder => "Señalar otra línea. Señala la línea de la que se trata.",
        Signal::Replay => "Olvidar quién saca: señala después ese equipo.",
        Signal::BallTouched => "Rozar muchas veces. Una basta.",
        Signal::DelayWarning | Signal::DelayPenalty => {
            "Tomar la otra tarjeta. Primero amarilla, después roja."
        }
        Signal::ChangeOfCourts | Signal::Substitution | Signal::EndOfSet => return None,
    })
}

fn flag(flag: FlagSignal) -> &'static str {
    match flag {
        FlagSignal::In => "Balón dentro",
        FlagSignal::Out => "Balón fuera",
        FlagSignal::Touched => "Balón tocado",
        FlagSignal::Line => "Antena, línea u objeto externo",
        FlagSignal::NotSeen => "No lo pude ver",
    }
}

fn flag_how(flag: FlagSignal) -> &'static str {
    match flag {
        FlagSignal::In => "Apunta el banderín al suelo delante de ti, con el brazo estirado.",
        FlagSignal::Out => "Levanta el banderín recto hacia arriba.",
        FlagSignal::Touched => "Levanta el banderín y pon la palma libre sobre su punta.",
        FlagSignal::Line => {
            "Agita el banderín sobre la cabeza y señala la antena o la línea. También si quien \
             saca pisa la línea."
        }
        FlagSignal::NotSeen => "Cruza ambos antebrazos delante del pecho. Es una buena respuesta.",
    }
}
