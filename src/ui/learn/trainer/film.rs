//! A scene that runs on a canvas: in its own time, slowed, or held.

use std::cell::RefCell;
use std::rc::Rc;

use device::{now_ms, Canvas};
use learn::{Drawn, Place, Point};
use leptos::html;
use leptos::prelude::*;

use super::paint::Painter;

/// What is shown, and how fast.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reel {
    /// The moment it begins with, in seconds of the scene.
    pub from: f64,
    /// The moment it ends with.
    pub to: f64,
    /// Seconds of the scene in one of the wall.
    pub speed: f64,
    /// How long the first moment is held, in milliseconds.
    pub held: f64,
    /// What is drawn in at the end.
    pub measure: Option<[Point; 2]>,
}

impl Reel {
    /// One moment.
    pub fn still(at: f64) -> Reel {
        Reel {
            from: at,
            to: at,
            speed: 1.0,
            held: 0.0,
            measure: None,
        }
    }
}

/// A canvas on which reels of one scene run. Copies are the same.
#[derive(Clone, Copy)]
pub struct Film {
    pub node: NodeRef<html::Canvas>,
    drawn: StoredValue<Drawn>,
    place: Place,
    /// The reel that runs, with the moment of the wall at which it began; another number ends one before it.
    runs: StoredValue<(u64, Reel, f64)>,
    painter: StoredValue<Option<Rc<RefCell<Painter>>>, LocalStorage>,
}

impl Film {
    /// For a scene.
    pub fn new(drawn: StoredValue<Drawn>, place: Place) -> Film {
        let film = Film {
            node: NodeRef::new(),
            drawn,
            place,
            runs: StoredValue::new((0, Reel::still(0.0), 0.0)),
            painter: StoredValue::new_local(None),
        };
        // What is held is drawn anew where the window gets another size, and in the colours that hold then.
        let resized = device::on_resize(move || {
            if film
                .painter
                .try_update_value(|painter| *painter = None)
                .is_some()
            {
                film.frame(film.runs.get_value().0, None);
            }
        });
        StoredValue::new_local(resized);
        film
    }

    /// Runs a reel from its beginning; `then` when it has come to its end.
    pub fn run(self, reel: Reel, then: impl FnOnce() + 'static) {
        let Some((number, ..)) = self.runs.try_get_value() else {
            return;
        };
        let number = number + 1;
        self.runs.set_value((number, reel, now_ms()));
        // What is said below may have given the canvas another size.
        self.painter.set_value(None);
        self.frame(number, Some(Box::new(then)));
    }

    /// Holds what is seen now.
    pub fn hold(self, at: f64) {
        self.run(Reel::still(at), || ());
    }

    /// The moment of the scene at a moment of the wall, in seconds; while the first one is held it is that.
    pub fn moment(self, wall: f64) -> f64 {
        let (_, reel, began) = self.runs.get_value();
        let gone = ((wall - began - reel.held) / 1000.0).max(0.0);
        (reel.from + gone * reel.speed).min(reel.to)
    }

    /// Whether its first moment is still held at a moment of the wall.
    pub fn waits(self, wall: f64) -> bool {
        let (_, reel, began) = self.runs.get_value();
        wall - began < reel.held
    }

    fn frame(self, number: u64, then: Option<Box<dyn FnOnce()>>) {
        request_animation_frame(move || {
            // The screen may be gone by now, and another reel may run.
            let Some((runs, reel, _)) = self.runs.try_get_value() else {
                return;
            };
            if runs != number {
                return;
            }
            let at = self.moment(now_ms());
            let ends = at >= reel.to;
            self.paint(at, reel.measure.filter(|_| ends));
            if !ends {
                self.frame(number, then);
            } else if let Some(then) = then {
                then();
            }
        });
    }

    fn paint(self, at: f64, measure: Option<[Point; 2]>) {
        if self.painter.with_value(Option::is_none) {
            let canvas = self.node.get_untracked();
            let painter = canvas.and_then(Canvas::of).map(Painter::new);
            self.painter
                .set_value(painter.map(|painter| Rc::new(RefCell::new(painter))));
        }
        let Some(painter) = self.painter.get_value() else {
            return;
        };
        self.drawn.with_value(|drawn| {
            painter
                .borrow_mut()
                .draw(&drawn.scene, self.place, at, measure);
        });
    }
}
