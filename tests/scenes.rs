//! Scenes of a rally: each kind told with a few seeds, laws over many, and how they are seen.

#[path = "scenes/answers.rs"]
mod answers;
#[path = "scenes/beside.rs"]
mod beside;
#[path = "scenes/cases.rs"]
mod cases;
#[path = "scenes/ending.rs"]
mod ending;
#[path = "scenes/going_on.rs"]
mod going_on;
#[path = "scenes/laws.rs"]
mod laws;
#[path = "scenes/several.rs"]
mod several;
#[path = "scenes/told.rs"]
mod told_in_words;
#[path = "scenes/views.rs"]
mod views;

use learn::{draw, Act, Drawn, Event, Judged, Kind, Level, Player, Point};
use rules::Cause;

/// Scenes of one kind: two seeds of each level.
fn told(kind: Kind) -> Vec<Drawn> {
    let of_level = |level: Level| {
        [11, 12].map(|seed| {
            draw(kind, level.band(kind), seed)
                .unwrap_or_else(|| panic!("{kind:?} {level:?} {seed}"))
        })
    };
    Level::ALL.into_iter().flat_map(of_level).collect()
}

/// The thing that decides.
#[track_caller]
fn deciding(drawn: &Drawn) -> &Judged {
    drawn.verdict.decided_by().expect("something decides")
}

/// What is said of a fault that play goes on in spite of: all of it.
fn about(drawn: &Drawn, cause: Cause) -> Vec<&Judged> {
    drawn
        .verdict
        .all
        .iter()
        .filter(|j| j.about == cause)
        .collect()
}

/// The player who did it.
#[track_caller]
fn player<'a>(drawn: &'a Drawn, judged: &Judged) -> &'a Player {
    &drawn.scene.players[judged.player.expect("somebody did it")]
}

/// The events of a scene that are of interest, in their order.
fn events<'a>(drawn: &'a Drawn, wanted: impl Fn(&Act) -> bool + 'a) -> Vec<&'a Event> {
    drawn
        .scene
        .events
        .iter()
        .filter(|e| wanted(&e.act))
        .collect()
}

/// Where the ball touches the floor.
#[track_caller]
fn landed(drawn: &Drawn) -> Point {
    let floor = events(drawn, |act| matches!(act, Act::Floor { .. }));
    drawn.scene.ball_at(floor[0].at)
}

/// By how far a place is outside the outer edges of the lines; below 0 inside.
fn outside(at: Point) -> f64 {
    (at.x.abs() - 9.0).max(at.y.abs() - 4.5)
}
