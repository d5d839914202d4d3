//! A scene told in sentences: what happens, without what is decided about it.

use learn::{
    Act, BodyPart, Call, End, Event, Judged, Margin, Pair, Scene, Verdict, ATTACK_LINE, LOW_SERVICE,
};
use rules::UnderNet;

/// A sentence of a scene.
#[derive(Clone, Debug, PartialEq)]
pub struct Told {
    /// When it happens, in seconds of the scene.
    pub at: f64,
    /// The sentence.
    pub say: String,
}

/// What is farther from the other answer than this is not spoken of, in metres.
const FAR: f64 = 0.35;

/// A service that is hit sooner is not spoken of as late, in seconds.
const SOON: f64 = 5.0;

/// A ball that is played higher than this is played with the fingers, in metres: our own drawing has it so.
const FINGERS: f64 = 1.6;

/// The whole scene, in the order of time.
#[must_use]
pub fn told(scene: &Scene, verdict: &Verdict) -> Vec<Told> {
    let mut all = Vec::new();
    let mut say = |at, say: Option<String>| all.extend(say.map(|say| Told { at, say }));
    say(0.0, plays_by(scene.under_net).map(str::to_owned));
    for event in &scene.events {
        say(event.at, happens(scene, event));
    }
    for judged in &verdict.all {
        say(judged.moment, fact(scene, judged));
    }
    rules::sort_by(&mut all, |a, b| a.at.total_cmp(&b.at));
    all
}

/// Whether a service is hit from below.
pub(crate) fn low(scene: &Scene, event: &Event) -> bool {
    scene.ball_at(event.at).z < LOW_SERVICE
}

/// Whether the ball of a moment comes from the service, touched by nobody since.
pub(crate) fn comes_from_service(scene: &Scene, event: &Event) -> bool {
    let before = scene.events.iter().rev().filter(|e| e.at < event.at);
    let mut from = before.filter(|e| matches!(e.act, Act::ServiceHit { .. } | Act::Touch { .. }));
    from.next()
        .is_some_and(|e| matches!(e.act, Act::ServiceHit { .. }))
}

/// Whether somebody's arm goes for the ball at the moment of an event.
pub(crate) fn swings(scene: &Scene, event: &Event, player: usize) -> bool {
    let swing = Act::Swing { player };
    let mut all = scene.events.iter();
    all.any(|e| e.act == swing && (e.at - event.at).abs() < 1e-6)
}

/// Whether that arm meets the ball, which is then told of its touch.
pub(crate) fn meets_the_ball(scene: &Scene, event: &Event, player: usize) -> bool {
    scene.events.iter().any(|e| {
        matches!(e.act, Act::Touch { player: p, .. } if p == player)
            && (e.at - event.at).abs() < 1e-6
    })
}

/// Whether the ball of a moment is played with the fingers, and not with the forearms.
pub(crate) fn with_fingers(scene: &Scene, event: &Event) -> bool {
    scene.ball_at(event.at).z > FINGERS
}

/// Whether something is so far from being a fault that nobody speaks of it.
pub(crate) fn is_far(judged: &Judged) -> bool {
    let far = matches!(judged.ruling.margin, Margin::Metres(by) if by > FAR);
    far && !judged.ruling.is_fault()
}

/// Whether only the hair of a player touches the net.
pub(crate) fn only_hair(scene: &Scene, judged: &Judged) -> bool {
    scene.events.iter().any(|e| {
        let hair = matches!(
            e.act,
            Act::NetTouch {
                hair_only: true,
                ..
            }
        );
        hair && (e.at - judged.at).abs() < 1e-9
    })
}

/// How far behind the attack line a player took off, in metres; below 0 in front of it.
pub(crate) fn behind_attack_line(scene: &Scene, judged: &Judged) -> f64 {
    judged.player.map_or(0.0, |index| {
        let feet = scene.players[index].planted(judged.moment);
        feet[0].nearest().min(feet[1].nearest()) - ATTACK_LINE
    })
}

/// When the service is hit, as far as it is spoken of, in seconds.
pub(crate) enum ServiceHit {
    /// So much later than is allowed.
    Late { allowed: f64, by: f64 },
    /// So much before the whistle.
    BeforeTheWhistle(f64),
    /// So much after the whistle, and in time.
    InTime(f64),
}

/// When the service is hit; none where nobody would speak of it.
pub(crate) fn service_hit(scene: &Scene, judged: &Judged) -> Option<ServiceHit> {
    let Margin::Seconds(by) = judged.ruling.margin else {
        return None;
    };
    let allowed = scene.service_seconds;
    match judged.ruling.call {
        Call::Fault { .. } => Some(ServiceHit::Late { allowed, by }),
        Call::Replay => Some(ServiceHit::BeforeTheWhistle(by)),
        // The smaller of the time that passed and the time that was left: here the time left.
        Call::PlayOn => (allowed - by > SOON).then_some(ServiceHit::InTime(allowed - by)),
    }
}

/// A player of a formation.
pub(crate) struct Placed {
    pub(crate) number: u8,
    pub(crate) position: u8,
}

/// The two players of a team who stand nearest to being in the wrong order.
pub(crate) struct Order {
    pub(crate) team: End,
    /// Whether one is behind the other, and not beside.
    pub(crate) depth: bool,
    /// The one who has to be in front, or on the left.
    pub(crate) first: Placed,
    pub(crate) second: Placed,
}

/// Those two; none where the team has no order then.
pub(crate) fn order_of(scene: &Scene, judged: &Judged) -> Option<Order> {
    let team = scene.players[judged.player?].side;
    let (pair, _) = scene.formation(team, judged.at)?.tightest();
    let (depth, first, second) = match pair {
        Pair::Depth { front, back } => (true, front, back),
        Pair::Lateral { left, right } => (false, left, right),
    };
    let placed = |position: u8| {
        Some(Placed {
            number: scene.in_position(team, position)?.number,
            position,
        })
    };
    Some(Order {
        team,
        depth,
        first: placed(first)?,
        second: placed(second)?,
    })
}

/// Whose foot an opponent came against, and which opponent.
pub(crate) fn contact(scene: &Scene, judged: &Judged) -> Option<(usize, usize)> {
    scene.events.iter().find_map(|e| match e.act {
        Act::Contact { player, with, .. } if (e.at - judged.at).abs() < 1e-9 => {
            Some((player, with))
        }
        _ => None,
    })
}

/// The part of the body that comes down on the other court.
pub(crate) fn part_down(scene: &Scene, judged: &Judged) -> Option<BodyPart> {
    scene.events.iter().find_map(|e| match e.act {
        Act::BodyDown { part, .. } if (e.at - judged.at).abs() < 1e-9 => Some(part),
        _ => None,
    })
}

words! { ScenesWords in learn::scenes;
    /// What is seen of an event, whatever is decided about it.
    happens(scene: &Scene, event: &Event) -> Option<String>;
    /// What is different where a form of the rules is played that is not the international one.
    plays_by(under_net: UnderNet) -> Option<&'static str>;
    /// A player: the side and the number.
    player(scene: &Scene, index: usize) -> String;
    /// What can be measured or seen of a thing that is decided on; none where it is far from any fault, or where
    /// the event itself says all.
    fact(scene: &Scene, judged: &Judged) -> Option<String>;
}
