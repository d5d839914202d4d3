//! A scene told in sentences: what happens, without what is decided about it, in Spanish.

use crate::learn::length;
use crate::learn::scenes::*;
use learn::{Act, BodyPart, End, Event, Judged, Margin, Scene, TouchKind};
use rules::{Cause, UnderNet};

/// In Spanish.
pub static WORDS: ScenesWords = ScenesWords {
    happens,
    plays_by,
    player,
    fact,
};

/// A player at the beginning of a sentence.
fn player(scene: &Scene, index: usize) -> String {
    named(scene, index, "El")
}

/// A player after an article: `El` at the beginning, `el` or `al` or `del` within.
fn named(scene: &Scene, index: usize, article: &str) -> String {
    scene.players.get(index).map_or_else(String::new, |who| {
        format!("{article} {} {}", who.number, shirt(who.side))
    })
}

/// The colour that a team is drawn in: from the second referee's place left and right are swapped.
pub(super) fn shirt(end: End) -> &'static str {
    match end {
        End::Left => "azul",
        End::Right => "naranja",
    }
}

fn plays_by(under_net: UnderNet) -> Option<&'static str> {
    match under_net {
        UnderNet::Standard => None,
        UnderNet::Junior => {
            Some("Reglas escolares: solo pies y manos pueden tocar el campo contrario.")
        }
    }
}

/// What is seen of an event, whatever is decided about it.
fn happens(scene: &Scene, event: &Event) -> Option<String> {
    let who = |index: usize| player(scene, index);
    Some(match event.act {
        Act::Whistle => format!(
            "Pitas para el saque. Le toca al {} {}.",
            scene.due,
            shirt(scene.serving)
        ),
        Act::ServiceHit { player, how } => {
            let who = who(player);
            if how.tosses > 1 {
                format!("{who} deja caer el balón en las manos, lo lanza otra vez y saca.")
            } else if !how.released && low(scene, event) {
                format!("{who} sujeta el balón abajo y lo golpea en la mano, sin soltarlo.")
            } else if !how.released {
                format!("{who} golpea el balón en la mano que lo sujeta, sin soltarlo.")
            } else if !how.one_hand {
                format!("{who} lanza el balón y lo golpea con las dos manos.")
            } else if low(scene, event) {
                format!("{who} suelta el balón y lo golpea desde abajo con una mano.")
            } else {
                format!("{who} lanza el balón y saca.")
            }
        }
        Act::Bounce { player } => format!("{} bota el balón en el suelo.", who(player)),
        Act::HandOver { player, to } => format!(
            "{} está detrás de la línea de fondo con el balón y se lo da {}.",
            who(player),
            named(scene, to, "al")
        ),
        Act::Contact {
            player,
            with,
            hinders: false,
            ..
        } => format!(
            "{} choca con el pie {} y sigue jugando.",
            who(with),
            named(scene, player, "del")
        ),
        Act::BlockAttempt { player } if comes_from_service(scene, event) => format!(
            "{} salta en la red con las manos en alto y no toca el balón.",
            who(player)
        ),
        Act::Touch {
            player,
            kind: TouchKind::Block,
            ..
        } => format!("{} bloquea el balón.", who(player)),
        Act::Touch {
            player,
            kind: TouchKind::Hit,
            contact,
            same_action,
            ..
        } => {
            if same_action {
                let to = named(scene, player, "al");
                format!("El balón toca {to} otra vez en la misma acción.")
            } else if contact > 0.0 {
                let of = named(scene, player, "del");
                format!("El balón se queda en las manos {of} durante {contact:.2} s.")
            } else if swings(scene, event, player) {
                format!("{} ataca el balón.", who(player))
            } else if with_fingers(scene, event) {
                format!("{} juega el balón con los dedos.", who(player))
            } else {
                format!("{} juega el balón con los antebrazos.", who(player))
            }
        }
        Act::Swing { player } => {
            if meets_the_ball(scene, event, player) {
                return None;
            }
            format!("{} tira el brazo hacia el balón.", who(player))
        }
        Act::Plane => "El balón cruza la red.".to_owned(),
        Act::Net => "El balón toca la red.".to_owned(),
        Act::Under => "El balón pasa por debajo de la red.".to_owned(),
        Act::BlockAttempt { .. }
        | Act::Floor { .. }
        | Act::NetTouch { .. }
        | Act::FootDown { .. }
        | Act::BodyDown { .. }
        | Act::Contact { .. }
        | Act::HeldBack { .. } => return None,
    })
}

fn fact(scene: &Scene, judged: &Judged) -> Option<String> {
    let after = |article: &str| {
        let named = |index| named(scene, index, article);
        judged.player.map_or_else(String::new, named)
    };
    let (who, to, of) = (after("El"), after("al"), after("del"));
    let fault = judged.ruling.is_fault();
    if is_far(judged) {
        return None;
    }
    let by = match judged.ruling.margin {
        Margin::Metres(by) => length(by),
        Margin::Seconds(by) => format!("{by:.2} s"),
        Margin::Seen => String::new(),
    };
    Some(match (judged.about, judged.ruling.rule, fault) {
        (_, "8.3", false) => format!("{who} juega el balón a {by} del suelo."),
        (_, "8.3", true) => format!(
            "El balón toca el suelo. Su parte más cercana está {by} por dentro del borde exterior \
             de la línea."
        ),
        (_, "8.4.1", _) => {
            format!("El balón toca el suelo. Está entero {by} por fuera de la línea.")
        }
        (Cause::Antenna, "8.4.3", _) => "El balón toca la antena.".to_owned(),
        (Cause::Antenna | Cause::OutsideCrossing, "10.1.1", _) => {
            format!("El balón pasa {by} por dentro de la antena.")
        }
        (Cause::OutsideCrossing, _, true) => {
            format!("El balón cruza la red. Una parte, {by}, está por fuera de la antena.")
        }
        (Cause::AssistedHit, _, true) => format!("Un compañero levanta {to} hasta el balón."),
        (Cause::AssistedHit, _, false) => {
            format!("Un compañero sujeta {to} para que no toque la red.")
        }
        (Cause::NetTouch, "11.3.1", true) => format!(
            "Una mano {of} toca la red, {by} por dentro de la antena, mientras juega el balón."
        ),
        (Cause::NetTouch, "11.3.2", _) => {
            format!("Una mano {of} toca la red, {by} por fuera de la antena.")
        }
        (Cause::NetTouch, _, _) => net_touch(scene, judged, &who, &of),
        (Cause::UnderNet, "11.4.3", _) => {
            format!("Un pie {of} está entero {by} más allá de la línea central.")
        }
        (Cause::UnderNet, "11.2.2.1", true) => hindered(scene, judged)?,
        (Cause::UnderNet, "11.2.2.1", false) => format!(
            "Un pie {of} pasa la línea central. Una parte, {by}, sigue sobre la línea o antes de \
             ella."
        ),
        (Cause::UnderNet, "11.2.2.2" | "school", _) => match part_down(scene, judged) {
            Some(BodyPart::Other) => {
                format!("{who} cae con una rodilla en el campo contrario. No estorba a nadie.")
            }
            _ => format!("{who} pone una mano en el campo contrario. No estorba a nadie."),
        },
        (Cause::UnderNet, "8.4.5", _) => {
            format!("El balón está entero {by} más allá de la red.")
        }
        (Cause::UnderNet, "10.1.3", _) => {
            format!("Una parte del balón, {by}, sigue en este lado de la red.")
        }
        (Cause::OverNet, "11.4.1", _) => {
            format!("{who} toca el balón más allá de la red, {by} antes del ataque.")
        }
        (Cause::OverNet, "14.3", _) => {
            format!("{who} toca el balón más allá de la red, {by} después del ataque.")
        }
        (Cause::AttackFault, "13.3.3", _) => take_off(scene, judged, &who),
        (Cause::AttackFault, "13.3.4", true) => format!(
            "{who} ataca el saque {by} por delante de la línea de ataque. Todo el balón está por \
             encima de la red."
        ),
        (Cause::AttackFault, "13.3.4", false) => {
            format!("{who} ataca el saque {by} por detrás de la línea de ataque.")
        }
        (Cause::BlockFault, "14.6.2", _) => {
            format!("{who}, zaguero, está en el bloqueo y llega {by} por encima de la red.")
        }
        (Cause::BlockFault, "14.1", _) => format!(
            "{who}, zaguero, está al lado del bloqueo y se queda {by} por debajo del borde \
             superior de la red."
        ),
        (Cause::BlockFault, "14.5", _) => format!("{who} bloquea el saque."),
        (Cause::LiberoFault, rule, _) => libero(rule, fault, &who, &by),
        (Cause::ServiceTime, _, _) => service_time(scene, judged)?,
        (Cause::ServiceFoot, _, true) => {
            format!("En el golpe, un pie {of} está {by} más allá del borde de la zona de saque.")
        }
        (Cause::ServiceFoot, _, false) => {
            format!("Los pies {of} están {by} dentro de la zona de saque en el golpe.")
        }
        (Cause::RotationFault, _, true) => {
            format!("{who} ha sacado. Le tocaba al número {}.", scene.due)
        }
        (Cause::ServiceNet, _, true) => "El saque no cruza.".to_owned(),
        (Cause::Screen, _, true) => {
            "Dos jugadores saltan con las manos en alto. El receptor no ve ni el golpe ni el vuelo."
                .to_owned()
        }
        (Cause::Screen, _, false) => {
            format!("Hay jugadores en medio. El receptor ve el balón {by} al lado de ellos.")
        }
        (Cause::PositionFault, "7.5.1" | "7.4.3", _) => positions(scene, judged, &by)?,
        (Cause::OutsideCourt, _, true) => {
            format!("Un pie {of} está {by} fuera del campo en el golpe.")
        }
        (Cause::OutsideCourt, _, false) => {
            format!("Los pies {of} están {by} por dentro de las líneas en el golpe.")
        }
        // The event says it: hits are counted, a long touch is timed, the way of serving is told.
        (
            Cause::FourHits
            | Cause::DoubleContact
            | Cause::Catch
            | Cause::ServiceToss
            | Cause::ServiceNet
            | Cause::RotationFault
            | Cause::OverNet
            | Cause::AttackFault
            | Cause::BlockFault
            | Cause::UnderNet
            | Cause::Antenna
            | Cause::OutsideCrossing
            | Cause::PositionFault
            | Cause::BallIn
            | Cause::BallOut
            | Cause::BallTouched
            | Cause::ServiceOut
            | Cause::ServiceWinner
            | Cause::NotSaid,
            _,
            _,
        ) => return None,
    })
}

fn hindered(scene: &Scene, judged: &Judged) -> Option<String> {
    let (whose, with) = contact(scene, judged)?;
    Some(format!(
        "{} tropieza con el pie {} y no llega al balón.",
        player(scene, with),
        named(scene, whose, "del")
    ))
}

fn net_touch(scene: &Scene, judged: &Judged, who: &str, of: &str) -> String {
    if only_hair(scene, judged) {
        format!("Solo el pelo {of} toca la red.")
    } else {
        format!("{who} ya ha caído y sigue su camino. Entonces una mano toca la red.")
    }
}

/// Where a player of the back row took off, from the attack line.
fn take_off(scene: &Scene, judged: &Judged, who: &str) -> String {
    let behind = behind_attack_line(scene, judged);
    let by = length(behind.abs());
    if behind < 0.0 {
        format!(
            "{who}, zaguero, salta {by} por delante de la línea de ataque. Todo el balón está por \
             encima de la red."
        )
    } else {
        format!("{who}, zaguero, salta {by} por detrás de la línea de ataque.")
    }
}

fn libero(rule: &str, fault: bool, who: &str, by: &str) -> String {
    let where_it_is = if fault { "encima" } else { "debajo" };
    match rule {
        "13.3.5" => format!(
            "{who} es el líbero y envía el balón al otro lado. Su parte más baja está {by} por \
             {where_it_is} del borde superior de la red."
        ),
        "13.3.6" => format!(
            "El líbero lo pasó de dedos desde la zona de ataque. {who} lo golpea: la parte más \
             baja del balón está {by} por {where_it_is} del borde superior de la red."
        ),
        "14.6.6" | "14.1" => format!(
            "{who} es el líbero y salta en la red, con las manos {by} por {where_it_is} del borde \
             superior."
        ),
        _ => format!(
            "El líbero lo pasó de dedos desde detrás de la línea de ataque. {who} lo ataca."
        ),
    }
}

fn service_time(scene: &Scene, judged: &Judged) -> Option<String> {
    Some(match service_hit(scene, judged)? {
        ServiceHit::Late { allowed, by } => format!(
            "{allowed:.0} s después del silbato, el balón aún no se ha golpeado. Se golpea \
             {by:.2} s más tarde."
        ),
        ServiceHit::BeforeTheWhistle(by) => {
            format!("El saque se golpea {by:.2} s antes del silbato.")
        }
        ServiceHit::InTime(after) => {
            format!("El saque se golpea {after:.2} s después del silbato.")
        }
    })
}

fn positions(scene: &Scene, judged: &Judged, by: &str) -> Option<String> {
    let order = order_of(scene, judged)?;
    let of = |who: &Placed| format!("{} (posición {})", who.number, who.position);
    let (first, second) = (of(&order.first), of(&order.second));
    let team = match order.team {
        End::Left => "Azul",
        End::Right => "Naranja",
    };
    Some(match (order.depth, judged.ruling.is_fault()) {
        (true, true) => format!(
            "{team}: los pies del {second} están {by} más cerca de la red que el pie delantero \
             del {first}."
        ),
        (true, false) => format!(
            "{team}: un pie del {second} está {by} más atrás que el pie delantero del {first}."
        ),
        (false, true) => {
            format!("{team}: mirando a la red, los pies del {second} están {by} a la izquierda del {first}.")
        }
        (false, false) => {
            format!("{team}: mirando a la red, un pie del {second} está {by} más a la derecha que el {first}.")
        }
    })
}
