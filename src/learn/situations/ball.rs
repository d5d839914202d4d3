//! The ball at a corner of the right court, and beside an antenna.

use super::positions::edition_of;
use super::{Dial, Values};
use crate::court::{End, Point, BALL_RADIUS, HALF_WIDTH};
use crate::crossing::{crossing, Crossing, TeamHit};
use crate::landing::{landing, FloorContact, LastTouch, LastTouchKind};
use crate::ruling::Ruling;

/// How far an antenna stands above the net, in metres (2.4).
pub const ANTENNA_ABOVE: f64 = 0.8;
/// How thick it is, in metres (2.4).
const ANTENNA_THICK: f64 = 0.01;

/// How high the net is that the ball crosses, in metres (2.1.1).
pub const CROSSED_NET: f64 = 2.24;

/// From where to where an antenna reaches across, in metres from the middle of the net: it stands at the
/// outer edge of the side band (2.4).
#[must_use]
pub fn antenna_rod() -> (f64, f64) {
    (HALF_WIDTH, HALF_WIDTH + ANTENNA_THICK)
}

pub(super) fn landing_start() -> Values {
    Values::of(&[
        (Dial::LandsAlong, 9.06),
        (Dial::LandsAcross, 4.2),
        (Dial::Patch, 0.03),
        (Dial::LastTouch, 1.0),
    ])
}

pub(super) fn landing_of(set: &Values) -> Ruling {
    let (by, kind) = [
        (End::Left, LastTouchKind::Service),
        (End::Left, LastTouchKind::Attack),
        (End::Right, LastTouchKind::Block),
        (End::Right, LastTouchKind::Defence),
    ][set.choice(Dial::LastTouch)];
    let at = Point {
        x: set.get(Dial::LandsAlong),
        y: set.get(Dial::LandsAcross),
        z: 0.0,
    };
    let patch = set.get(Dial::Patch);
    landing(FloorContact { at, patch }, LastTouch { by, kind })
}

pub(super) fn crossing_start() -> Values {
    Values::of(&[
        (Dial::CrossesAside, 4.3),
        (Dial::CrossesHeight, 2.8),
        (Dial::TeamHit, 3.0),
        (Dial::Towards, 0.0),
        (Dial::Edition, 0.0),
    ])
}

/// Whether the ball as it is drawn touches the rod of the antenna.
fn touches_antenna(set: &Values) -> bool {
    let (inner, outer) = antenna_rod();
    let aside = set.get(Dial::CrossesAside);
    let top = CROSSED_NET + ANTENNA_ABOVE;
    let across = aside - aside.clamp(inner, outer);
    let above = (set.get(Dial::CrossesHeight) - top).max(0.0);
    across.hypot(above) <= BALL_RADIUS
}

pub(super) fn crossing_of(set: &Values) -> Ruling {
    let hit = [
        TeamHit::Service,
        TeamHit::First,
        TeamHit::Second,
        TeamHit::Third,
    ][set.choice(Dial::TeamHit)];
    let ball = Crossing {
        from: End::Left,
        aside: set.get(Dial::CrossesAside),
        hit,
        touches_antenna: touches_antenna(set),
        towards_free_zone: set.is(Dial::Towards),
    };
    crossing(ball, edition_of(set))
}
