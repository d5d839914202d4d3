//! A drawing to scale, written as text: lengths go in as metres, centimetres stand in the picture.

use std::fmt::Write as _;

use learn::{Dial, Foot};

/// A place in the drawing, in metres: to the right, and down.
pub type Place = (f64, f64);

/// What is seen: its left upper corner and its size, in metres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Window {
    /// Its corner.
    pub from: Place,
    /// How wide and how high.
    pub size: (f64, f64),
}

/// Something in a drawing that can be dragged.
#[derive(Clone, Debug, PartialEq)]
pub struct Handle {
    /// Where it is.
    pub at: Place,
    /// The dial that it sets when it goes to the right, and by how much a metre.
    pub across: Option<(Dial, f64)>,
    /// The dial that it sets when it goes down.
    pub down: Option<(Dial, f64)>,
    /// The dial that it sets to the number of the nearest of these places.
    pub nearest: Option<(Dial, Vec<Place>)>,
    /// What stands on it.
    pub mark: String,
    /// Which of several movers it is, where the controls are for one at a time.
    pub mover: Option<u8>,
}

impl Handle {
    /// One that sets nothing yet.
    pub fn at(at: Place) -> Handle {
        Handle {
            at,
            across: None,
            down: None,
            nearest: None,
            mark: String::new(),
            mover: None,
        }
    }

    /// It goes to the right and left.
    pub fn across(self, dial: Dial, a_metre: f64) -> Handle {
        Handle {
            across: Some((dial, a_metre)),
            ..self
        }
    }

    /// It goes up and down.
    pub fn down(self, dial: Dial, a_metre: f64) -> Handle {
        Handle {
            down: Some((dial, a_metre)),
            ..self
        }
    }
}

/// A drawing with what can be dragged in it.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawing {
    /// What is seen.
    pub window: Window,
    /// The inside of the picture.
    pub inside: String,
    /// What can be dragged.
    pub handles: Vec<Handle>,
}

/// A drawing in the making.
pub struct Sketch(Drawing);

const CENTIMETRES: f64 = 100.0;

impl Sketch {
    /// Nothing in this window yet.
    pub fn new(from: Place, size: (f64, f64)) -> Sketch {
        Sketch(Drawing {
            window: Window { from, size },
            inside: String::new(),
            handles: Vec::new(),
        })
    }

    /// The drawing.
    pub fn done(self) -> Drawing {
        self.0
    }

    fn write(&mut self, words: std::fmt::Arguments<'_>) {
        self.0.inside.write_fmt(words).expect("text takes text");
    }

    /// A rectangle from one corner to the other.
    pub fn area(&mut self, class: &str, from: Place, to: Place) {
        let (x, y) = (cm(from.0.min(to.0)), cm(from.1.min(to.1)));
        let (w, h) = (cm((to.0 - from.0).abs()), cm((to.1 - from.1).abs()));
        self.write(format_args!(
            "<rect class='{class}' x='{x}' y='{y}' width='{w}' height='{h}'/>"
        ));
    }

    /// A line through places.
    pub fn line(&mut self, class: &str, places: &[Place]) {
        let mut way = String::new();
        for (n, (x, y)) in places.iter().enumerate() {
            let step = if n == 0 { 'M' } else { 'L' };
            let _ = write!(way, "{step}{} {}", cm(*x), cm(*y));
        }
        self.write(format_args!("<path class='{class}' d='{way}'/>"));
    }

    /// A circle.
    pub fn circle(&mut self, class: &str, (x, y): Place, radius: f64) {
        let (x, y, r) = (cm(x), cm(y), cm(radius));
        self.write(format_args!(
            "<circle class='{class}' cx='{x}' cy='{y}' r='{r}'/>"
        ));
    }

    /// A foot that touches the floor, as seen from above; `on` turns a spot of its court into a place.
    pub fn foot(&mut self, class: &str, foot: &Foot, on: impl Fn(learn::Spot) -> Place) {
        let (heel, toe) = (on(foot.heel), on(foot.toe));
        let (x1, y1, x2, y2) = (cm(heel.0), cm(heel.1), cm(toe.0), cm(toe.1));
        let w = cm(foot.half_width * 2.0);
        self.write(format_args!(
            "<line class='sole {class}' x1='{x1}' y1='{y1}' x2='{x2}' y2='{y2}' stroke-width='{w}'/>"
        ));
    }

    /// A short mark in letters, so many metres high, its middle at a place.
    pub fn mark(&mut self, class: &str, (x, y): Place, high: f64, words: &str) {
        let (x, y, high) = (cm(x), cm(y), cm(high));
        self.write(format_args!(
            "<text class='{class}' x='{x}' y='{y}' font-size='{high}'>{words}</text>"
        ));
    }

    /// A part of the drawing once more, so many times as large: what is drawn around a middle, in a rectangle
    /// from its left upper corner on.
    pub fn lens(
        &mut self,
        (from, size): (Place, (f64, f64)),
        middle: Place,
        times: f64,
        draw: impl FnOnce(&mut Sketch),
    ) {
        let seen = Window {
            from: (
                middle.0 - size.0 / times / 2.0,
                middle.1 - size.1 / times / 2.0,
            ),
            size: (size.0 / times, size.1 / times),
        };
        let (x, y, w, h) = (cm(from.0), cm(from.1), cm(size.0), cm(size.1));
        let view_box = seen.view_box();
        self.write(format_args!(
            "<svg x='{x}' y='{y}' width='{w}' height='{h}' viewBox='{view_box}'>"
        ));
        draw(self);
        self.write(format_args!("</svg>"));
        self.area("lens", from, (from.0 + size.0, from.1 + size.1));
    }

    /// Something to drag.
    pub fn handle(&mut self, handle: Handle) {
        self.0.handles.push(handle);
    }
}

/// In centimetres, to the millimetre.
fn cm(metres: f64) -> f64 {
    (metres * CENTIMETRES * 10.0).round() / 10.0
}

impl Window {
    /// The frame of the picture.
    pub fn view_box(&self) -> String {
        let (x, y) = self.from;
        let (w, h) = self.size;
        format!("{} {} {} {}", cm(x), cm(y), cm(w), cm(h))
    }

    /// Where a place is, in hundredths of the width and the height.
    pub fn hundredths(&self, place: Place) -> (f64, f64) {
        let of = |at: f64, from: f64, size: f64| (at - from) / size * 100.0;
        (
            of(place.0, self.from.0, self.size.0),
            of(place.1, self.from.1, self.size.1),
        )
    }
}
