//! Things that happen in time: a second is as long as a metre of the drawing, or ten times as long.

use learn::{Dial, Values, AT_ONCE};
use rules::Preset;

use crate::learn::sketch::{Drawing, Handle, Sketch};

pub(super) fn service(set: &Values) -> Drawing {
    let mut sketch = Sketch::new((-2.6, -1.5), (15.2, 3.0));
    let allowed = f64::from(Preset::International.rules().service_seconds);
    sketch.area("allowed", (0.0, -0.6), (allowed, 0.6));
    sketch.line("time", &[(-2.2, 0.0), (12.2, 0.0)]);
    for second in -2..=12 {
        let x = f64::from(second);
        let long = if second == 0 { 0.6 } else { 0.2 };
        sketch.line("time-mark", &[(x, -long), (x, long)]);
        if second % 2 == 0 {
            sketch.mark("time-label", (x, 1.1), 0.6, &second.to_string());
        }
    }
    let at = (set.get(Dial::ServiceAfter), 0.0);
    sketch.handle(Handle::at(at).across(Dial::ServiceAfter, 1.0));
    sketch.done()
}

pub(super) fn two_faults(set: &Values) -> Drawing {
    let mut sketch = Sketch::new((-0.8, -2.2), (11.6, 4.4));
    let a_second = 10.0;
    let (left, right) = (set.get(Dial::LeftFaultAt), set.get(Dial::RightFaultAt));
    // What counts as the same moment.
    sketch.area(
        "allowed",
        ((left - AT_ONCE) * a_second, -1.8),
        ((left + AT_ONCE) * a_second, 1.8),
    );
    for (y, class) in [(-1.0, "time team-a"), (1.0, "time team-b")] {
        sketch.line(class, &[(0.0, y), (a_second, y)]);
        for tenth in 0..=10 {
            let x = f64::from(tenth);
            sketch.line("time-mark", &[(x, y - 0.15), (x, y + 0.15)]);
        }
    }
    let one = |at: f64, y: f64, dial| Handle::at((at * a_second, y)).across(dial, 1.0 / a_second);
    sketch.handle(one(left, -1.0, Dial::LeftFaultAt));
    sketch.handle(one(right, 1.0, Dial::RightFaultAt));
    sketch.done()
}
