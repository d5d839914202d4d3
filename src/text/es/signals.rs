//! The words of the signals: what they are called, how they are made, and who makes them (FIVB
//! Official Volleyball Rules 2025-2028, chapter 30 and diagram 11; in our own words), in Spanish.

use crate::signals::*;
use rules::{Arm, Signal};

/// In Spanish.
pub static WORDS: SignalsWords = SignalsWords {
    signals: "Señales",
    signals_more:
        "Todas las señales oficiales con la mano, como en un espejo: el brazo de la izquierda del \
         dibujo es tu brazo izquierdo. Haz la señal de un solo brazo en el lado del equipo al \
         que se refiere (30.1).",
    learn_one_by_one: "Apréndelas una a una",
    show_name: "¿Cuál es?",
    next_signal: "Siguiente señal",
    again: "Otra vez",
    all_signals: "Todas las señales",
    hidden_signal: "¿Qué señal es esta?",
    whistle_step: "Pitar",
    signal,
    signal_how,
    signal_for,
    signal_by,
    arm,
    to_serve,
    signal_with_number,
};

fn signal(signal: Signal) -> &'static str {
    match signal {
        Signal::AuthoriseService => "Autorizar el saque",
        Signal::TeamToServe => "Equipo que saca",
        Signal::ChangeOfCourts => "Cambio de campo",
        Signal::TimeOut => "Tiempo muerto",
        Signal::Substitution => "Sustitución",
        Signal::Warning => "Amonestación",
        Signal::Penalty => "Castigo",
        Signal::Expulsion => "Expulsión",
        Signal::Disqualification => "Descalificación",
        Signal::EndOfSet => "Fin del set o del partido",
        Signal::NotTossed => "Balón no lanzado",
        Signal::ServiceDelay => "Demora en el saque",
        Signal::BlockOrScreen => "Falta de bloqueo o pantalla",
        Signal::Position => "Falta de posición o rotación",
        Signal::BallIn => "Balón dentro",
        Signal::BallOut => "Balón fuera",
        Signal::Catch => "Retención",
        Signal::DoubleContact => "Doble golpe",
        Signal::FourHits => "Cuatro toques",
        Signal::NetTouch => "Toque de red",
        Signal::OverNet => "Invasión por encima de la red",
        Signal::AttackFault => "Falta de ataque",
        Signal::LineOrUnder => "Falta de línea o penetración por debajo",
        Signal::Replay => "Doble falta, jugada repetida",
        Signal::BallTouched => "Balón tocado",
        Signal::DelayWarning => "Amonestación por demora",
        Signal::DelayPenalty => "Castigo por demora",
    }
}

fn signal_how(signal: Signal) -> &'static str {
    match signal {
        Signal::AuthoriseService => {
            "Extiende el brazo hacia el equipo que saca. Luego pasa el antebrazo por delante del \
             pecho, hacia donde irá el balón. Pita al mismo tiempo."
        }
        Signal::TeamToServe => "Extiende el brazo hacia el equipo que va a sacar.",
        Signal::ChangeOfCourts => {
            "Pon un antebrazo delante del cuerpo y el otro detrás. Gira los dos alrededor del \
             cuerpo."
        }
        Signal::TimeOut => {
            "Pon la palma de una mano sobre las puntas de los dedos de la otra, en forma de T. \
             Luego señala al equipo que lo pidió."
        }
        Signal::Substitution => "Gira los antebrazos uno alrededor del otro delante del pecho.",
        Signal::Warning => "Muestra la tarjeta amarilla en el lado del equipo.",
        Signal::Penalty => "Muestra la tarjeta roja en el lado del equipo.",
        Signal::Expulsion => "Muestra las dos tarjetas juntas en una mano.",
        Signal::Disqualification => "Muestra las dos tarjetas, una en cada mano.",
        Signal::EndOfSet => {
            "Cruza los antebrazos delante del pecho, con las manos abiertas y las palmas hacia \
             ti."
        }
        Signal::NotTossed => "Levanta el brazo extendido, con la palma hacia arriba.",
        Signal::ServiceDelay => "Muestra ocho dedos separados.",
        Signal::BlockOrScreen => {
            "Extiende los dos brazos hacia arriba, con las palmas hacia delante."
        }
        Signal::Position => "Apunta con el índice hacia abajo y dibuja un círculo.",
        Signal::BallIn => "Apunta con el brazo extendido y la mano abierta al suelo de ese campo.",
        Signal::BallOut => {
            "Levanta los dos antebrazos, con las manos abiertas y las palmas hacia ti."
        }
        Signal::Catch => "Levanta el antebrazo despacio, con la palma hacia arriba.",
        Signal::DoubleContact => "Muestra dos dedos separados.",
        Signal::FourHits => "Muestra cuatro dedos separados.",
        Signal::NetTouch => "Señala la red en el lado que cometió la falta.",
        Signal::OverNet => "Pon una mano por encima de la red, con la palma hacia abajo.",
        Signal::AttackFault => {
            "Levanta el antebrazo con la mano abierta y bájalo doblando el codo."
        }
        Signal::LineOrUnder => "Señala la línea central, o la línea que se pisó.",
        Signal::Replay => "Levanta los dos pulgares.",
        Signal::BallTouched => {
            "Roza con una palma las puntas de los dedos de la otra mano, que está vertical."
        }
        Signal::DelayWarning => "Cubre la muñeca con la tarjeta amarilla.",
        Signal::DelayPenalty => "Cubre la muñeca con la tarjeta roja.",
    }
}

fn signal_for(signal: Signal) -> Option<&'static str> {
    Some(match signal {
        Signal::BlockOrScreen => "También para un líbero que bloquea o lo intenta.",
        Signal::Position => "También cuando saca quien no debe.",
        Signal::BallOut => "También para un balón en la antena o fuera de ella.",
        Signal::Catch => "También para un toque con ayuda de un compañero o de un objeto.",
        Signal::NetTouch => "También para un saque que se queda en la red.",
        Signal::AttackFault => {
            "Para un zaguero, un líbero o un ataque al saque. También tras un pase de dedos del \
             líbero en la zona de ataque."
        }
        Signal::LineOrUnder => {
            "Para un pie más allá de la línea central, un balón bajo la red o pisar la línea al \
             sacar. También para un jugador fuera del campo en el saque."
        }
        Signal::BallTouched => "El balón salió después de un toque.",
        _ => return None,
    })
}

fn signal_by(signal: Signal) -> &'static str {
    match signal {
        Signal::TimeOut | Signal::Substitution => "Segundo árbitro",
        Signal::BlockOrScreen
        | Signal::Position
        | Signal::BallOut
        | Signal::NetTouch
        | Signal::AttackFault
        | Signal::LineOrUnder
        | Signal::Replay
        | Signal::TeamToServe => "Primer y segundo árbitro",
        Signal::BallIn | Signal::BallTouched | Signal::FourHits => {
            "Primer árbitro, con ayuda del segundo"
        }
        _ => "Primer árbitro",
    }
}

fn arm(arm: Arm) -> &'static str {
    match arm {
        Arm::Left => "Brazo izquierdo",
        Arm::Right => "Brazo derecho",
        Arm::Both => "Los dos brazos",
    }
}

fn to_serve(name: &str) -> String {
    format!("Saca {name}")
}

fn signal_with_number(of: Signal) -> String {
    format!("{} ({})", signal(of), of.number())
}
