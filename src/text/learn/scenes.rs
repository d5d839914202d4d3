//! A scene told in sentences: what happens, without what is decided about it.

use learn::{Act, BodyPart, Event, Judged, Scene, Verdict, LOW_SERVICE};
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
pub(crate) const FAR: f64 = 0.35;

/// A service that is hit sooner is not spoken of as late, in seconds.
pub(crate) const SOON: f64 = 5.0;

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
