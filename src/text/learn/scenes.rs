//! A scene told in sentences: what happens, without what is decided about it.

use learn::{Event, Judged, Scene, Verdict};

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
    for event in &scene.events {
        say(event.at, happens(scene, event));
    }
    for judged in &verdict.all {
        say(judged.moment, fact(scene, judged));
    }
    rules::sort_by(&mut all, |a, b| a.at.total_cmp(&b.at));
    all
}

words! { ScenesWords in learn::scenes;
    /// What is seen of an event, whatever is decided about it.
    happens(scene: &Scene, event: &Event) -> Option<String>;
    /// A player: the side and the number.
    player(scene: &Scene, index: usize) -> String;
    /// What can be measured or seen of a thing that is decided on; none where it is far from any fault, or where
    /// the event itself says all.
    fact(scene: &Scene, judged: &Judged) -> Option<String>;
}
