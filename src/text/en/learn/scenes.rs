//! A scene told in sentences: what happens, without what is decided about it.

use crate::learn::length;
use crate::learn::scenes::*;
use learn::{Act, BodyPart, End, Event, Judged, Margin, Scene, TouchKind};
use rules::{Cause, UnderNet};

/// In English.
pub static WORDS: ScenesWords = ScenesWords {
    happens,
    plays_by,
    player,
    fact,
};

fn player(scene: &Scene, index: usize) -> String {
    scene.players.get(index).map_or_else(String::new, |who| {
        format!("{} {}", capital(shirt(who.side)), who.number)
    })
}

/// The colour that a team is drawn in: from the second referee's place left and right are swapped.
pub(super) fn shirt(end: End) -> &'static str {
    match end {
        End::Left => "blue",
        End::Right => "orange",
    }
}

fn capital(word: &str) -> String {
    let mut letters = word.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().collect::<String>() + letters.as_str()
    })
}

fn plays_by(under_net: UnderNet) -> Option<&'static str> {
    match under_net {
        UnderNet::Standard => None,
        UnderNet::Junior => Some("School rules: only feet and hands may touch the other court."),
    }
}

/// What is seen of an event, whatever is decided about it.
fn happens(scene: &Scene, event: &Event) -> Option<String> {
    let who = |index: usize| player(scene, index);
    Some(match event.act {
        Act::Whistle => format!(
            "You whistle for the service. It is the turn of {} {}.",
            shirt(scene.serving),
            scene.due
        ),
        Act::ServiceHit { player, how } => {
            let who = who(player);
            if how.tosses > 1 {
                format!("{who} lets the ball drop into the hands, tosses it again and serves.")
            } else if !how.released && low(scene, event) {
                format!("{who} holds the ball low and hits it from below, out of the hand.")
            } else if !how.released {
                format!("{who} hits the service out of the hand that holds the ball.")
            } else if !how.one_hand {
                format!("{who} tosses the ball and hits it with both hands.")
            } else if low(scene, event) {
                format!("{who} lets go of the ball and hits it from below with one hand.")
            } else {
                format!("{who} tosses the ball and serves.")
            }
        }
        Act::Bounce { player } => format!("{} bounces the ball on the floor.", who(player)),
        Act::HandOver { player, to } => format!(
            "{} stands behind the end line with the ball, and gives it to {}.",
            who(player),
            lower(scene, to)
        ),
        Act::Contact {
            player,
            with,
            hinders: false,
            ..
        } => format!(
            "{} comes against the foot of {}, and plays on.",
            who(with),
            lower(scene, player)
        ),
        Act::BlockAttempt { player } if comes_from_service(scene, event) => {
            format!(
                "{} jumps at the net with high hands and does not touch the ball.",
                who(player)
            )
        }
        Act::Touch {
            player,
            kind: TouchKind::Block,
            ..
        } => format!("{} blocks the ball.", who(player)),
        Act::Touch {
            player,
            kind: TouchKind::Hit,
            contact,
            same_action,
            ..
        } => {
            let name = who(player);
            if same_action {
                format!("The ball touches {name} again in the same action.")
            } else if contact > 0.0 {
                format!("The ball stays in the hands of {name} for {contact:.2} s.")
            } else if swings(scene, event, player) {
                format!("{name} attacks the ball.")
            } else if with_fingers(scene, event) {
                format!("{name} plays the ball with the fingers.")
            } else {
                format!("{name} plays the ball with the forearms.")
            }
        }
        Act::Swing { player } => {
            if meets_the_ball(scene, event, player) {
                return None;
            }
            format!("{} swings at the ball.", who(player))
        }
        Act::Plane => "The ball crosses the net.".to_owned(),
        Act::Net => "The ball touches the net.".to_owned(),
        Act::Under => "The ball goes below the net.".to_owned(),
        Act::BlockAttempt { .. }
        | Act::Floor { .. }
        | Act::NetTouch { .. }
        | Act::FootDown { .. }
        | Act::BodyDown { .. }
        | Act::Contact { .. }
        | Act::HeldBack { .. } => return None,
    })
}

/// A player within a sentence.
fn lower(scene: &Scene, index: usize) -> String {
    scene.players.get(index).map_or_else(String::new, |who| {
        format!("{} {}", shirt(who.side), who.number)
    })
}

fn fact(scene: &Scene, judged: &Judged) -> Option<String> {
    let who = judged
        .player
        .map_or_else(String::new, |index| player(scene, index));
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
        (_, "8.3", false) => format!("{who} plays the ball {by} above the floor."),
        (_, "8.3", true) => {
            format!("The ball touches the floor. Its nearest part is {by} inside the outer edge of the line.")
        }
        (_, "8.4.1", _) => {
            format!("The ball touches the floor. All of it is outside the line, by {by}.")
        }
        (Cause::Antenna, "8.4.3", _) => "The ball touches the antenna.".to_owned(),
        (Cause::Antenna | Cause::OutsideCrossing, "10.1.1", _) => {
            format!("The ball passes {by} inside the antenna.")
        }
        (Cause::OutsideCrossing, _, true) => {
            format!("The ball crosses the net. A part of it, {by}, is outside the antenna.")
        }
        (Cause::AssistedHit, _, true) => format!("A team-mate lifts {who} to the ball."),
        (Cause::AssistedHit, _, false) => format!("A team-mate holds {who} back from the net."),
        (Cause::NetTouch, "11.3.1", true) => {
            format!(
                "A hand of {who} touches the net, {by} inside the antenna, while playing the ball."
            )
        }
        (Cause::NetTouch, "11.3.2", _) => {
            format!("A hand of {who} touches the net, {by} outside the antenna.")
        }
        (Cause::NetTouch, _, _) => net_touch(scene, judged, &who),
        (Cause::UnderNet, "11.4.3", _) => {
            format!("All of a foot of {who} is beyond the centre line, by {by}.")
        }
        (Cause::UnderNet, "11.2.2.1", true) => hindered(scene, judged)?,
        (Cause::UnderNet, "11.2.2.1", false) => {
            format!("A foot of {who} is over the centre line. A part of it, {by}, is still on the line or before it.")
        }
        (Cause::UnderNet, "11.2.2.2" | "school", _) => match part_down(scene, judged) {
            Some(BodyPart::Other) => {
                format!("{who} comes down on the other court with a knee. Nobody is hindered.")
            }
            _ => format!("{who} puts a hand on the other court. Nobody is hindered."),
        },
        (Cause::UnderNet, "8.4.5", _) => format!("All of the ball is beyond the net, by {by}."),
        (Cause::UnderNet, "10.1.3", _) => {
            format!("A part of the ball, {by}, is still on this side of the net.")
        }
        (Cause::OverNet, "11.4.1", _) => {
            format!("{who} touches the ball beyond the net, {by} before the attack.")
        }
        (Cause::OverNet, "14.3", _) => {
            format!("{who} touches the ball beyond the net, {by} after the attack.")
        }
        (Cause::AttackFault, "13.3.3", _) => take_off(scene, judged, &who),
        (Cause::AttackFault, "13.3.4", true) => {
            format!("{who} attacks the service {by} in front of the attack line. All of the ball is above the net.")
        }
        (Cause::AttackFault, "13.3.4", false) => {
            format!("{who} attacks the service {by} behind the attack line.")
        }
        (Cause::BlockFault, "14.6.2", _) => {
            format!("{who} of the back row is in the block and reaches {by} above the net.")
        }
        (Cause::BlockFault, "14.1", _) => {
            format!("{who} of the back row is beside the block and stays {by} below the top of the net.")
        }
        (Cause::BlockFault, "14.5", _) => format!("{who} blocks the service."),
        (Cause::LiberoFault, rule, _) => libero(rule, fault, &who, &by),
        (Cause::ServiceTime, _, _) => service_time(scene, judged)?,
        (Cause::ServiceFoot, _, true) => {
            format!("A foot of {who} is {by} over the edge of the service zone at the hit.")
        }
        (Cause::ServiceFoot, _, false) => {
            format!("The feet of {who} are {by} inside the service zone at the hit.")
        }
        (Cause::RotationFault, _, true) => {
            format!("{who} has served. It was the turn of number {}.", scene.due)
        }
        (Cause::ServiceNet, _, true) => "The service does not cross.".to_owned(),
        (Cause::Screen, _, true) => {
            "Two players jump with high hands. The receiver sees neither the hit nor the flight."
                .to_owned()
        }
        (Cause::Screen, _, false) => {
            format!("Players stand in the way. The receiver sees the ball {by} beside them.")
        }
        (Cause::PositionFault, "7.5.1" | "7.4.3", _) => positions(scene, judged, &by)?,
        (Cause::OutsideCourt, _, true) => {
            format!("A foot of {who} is {by} outside the court at the hit.")
        }
        (Cause::OutsideCourt, _, false) => {
            format!("The feet of {who} are {by} inside the lines at the hit.")
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
        "{} stumbles over the foot of {} and does not get to the ball.",
        player(scene, with),
        lower(scene, whose)
    ))
}

fn net_touch(scene: &Scene, judged: &Judged, who: &str) -> String {
    if only_hair(scene, judged) {
        format!("Only the hair of {who} touches the net.")
    } else {
        format!("{who} has landed and moves on. Then a hand touches the net.")
    }
}

/// Where a player of the back row took off, from the attack line.
fn take_off(scene: &Scene, judged: &Judged, who: &str) -> String {
    let behind = behind_attack_line(scene, judged);
    let by = length(behind.abs());
    if behind < 0.0 {
        format!("{who} of the back row takes off {by} in front of the attack line. The ball is all above the net.")
    } else {
        format!("{who} of the back row takes off {by} behind the attack line.")
    }
}

fn libero(rule: &str, fault: bool, who: &str, by: &str) -> String {
    let where_it_is = if fault { "above" } else { "below" };
    match rule {
        "13.3.5" => format!(
            "{who} is the libero and hits the ball over. Its lowest part is {by} {where_it_is} the top of the net."
        ),
        "13.3.6" => format!(
            "The libero set it with the fingers from the front zone. {who} hits it, its lowest part {by} {where_it_is} the top of the net."
        ),
        "14.6.6" | "14.1" => {
            format!("{who} is the libero and jumps at the net, the hands {by} {where_it_is} the top of it.")
        }
        _ => format!("The libero set it with the fingers from behind the attack line. {who} attacks it."),
    }
}

fn service_time(scene: &Scene, judged: &Judged) -> Option<String> {
    Some(match service_hit(scene, judged)? {
        ServiceHit::Late { allowed, by } => format!(
            "{allowed:.0} s after the whistle the ball is not yet hit. It is hit {by:.2} s later."
        ),
        ServiceHit::BeforeTheWhistle(by) => {
            format!("The service is hit {by:.2} s before the whistle.")
        }
        ServiceHit::InTime(after) => format!("The service is hit {after:.2} s after the whistle."),
    })
}

fn positions(scene: &Scene, judged: &Judged, by: &str) -> Option<String> {
    let order = order_of(scene, judged)?;
    let of = |who: &Placed| format!("{} (position {})", who.number, who.position);
    let (first, second) = (of(&order.first), of(&order.second));
    let team = capital(shirt(order.team));
    Some(match (order.depth, judged.ruling.is_fault()) {
        (true, true) => {
            format!("{team}: all of {second} stands {by} nearer to the net than {first}.")
        }
        (true, false) => format!(
            "{team}: a foot of {second} is {by} farther back than the front foot of {first}."
        ),
        (false, true) => format!(
            "{team}: seen facing the net, all of {second} stands {by} to the left of {first}."
        ),
        (false, false) => {
            format!("{team}: seen facing the net, a foot of {second} is {by} farther to the right than {first}.")
        }
    })
}
