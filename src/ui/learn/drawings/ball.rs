//! The ball at a corner, and beside an antenna.

use learn::{Dial, Values, BALL_RADIUS, CROSSED_NET};

use super::floor::courts;
use super::net;
use crate::learn::sketch::{Drawing, Handle, Sketch};

pub(super) fn landing(set: &Values) -> Drawing {
    let mut sketch = Sketch::new((8.2, -5.3), (1.7, 1.5));
    courts(&mut sketch);
    let at = (set.get(Dial::LandsAlong), -set.get(Dial::LandsAcross));
    sketch.circle("ball see-through", at, BALL_RADIUS);
    sketch.circle("contact", at, set.get(Dial::Patch));
    sketch.handle(
        Handle::at(at)
            .across(Dial::LandsAlong, 1.0)
            .down(Dial::LandsAcross, -1.0),
    );
    sketch.done()
}

pub(super) fn crossing(set: &Values) -> Drawing {
    let mut sketch = Sketch::new((3.3, -3.8), (2.4, 2.8));
    net::front(&mut sketch, CROSSED_NET);
    let at = (set.get(Dial::CrossesAside), -set.get(Dial::CrossesHeight));
    sketch.circle("ball", at, BALL_RADIUS);
    sketch.handle(
        Handle::at(at)
            .across(Dial::CrossesAside, 1.0)
            .down(Dial::CrossesHeight, -1.0),
    );
    sketch.done()
}
