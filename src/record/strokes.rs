//! A signature drawn with a finger: kept on the phone beside the match, never in its log.
//!
//! Written as points `x,y` with spaces between them and a semicolon between strokes, on a field of 600
//! by 200.

use std::collections::BTreeMap;
use std::fmt::Write;

/// The field is so wide.
pub const WIDTH: u16 = 600;
/// And so high.
pub const HEIGHT: u16 = 200;
/// More points are not kept; a long name has a few hundred.
const MAX_POINTS: usize = 2_000;
/// What is narrower and lower than this is a dot or a slip of the finger: this project's own choice.
const SMALLEST: Point = (60, 40);
/// Nearer to the last point is no new one: finer than a finger draws.
const NEAR: u16 = 3;

type Point = (u16, u16);

/// The strokes of a signature.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Strokes {
    // None of them is empty, all points lie on the field.
    strokes: Vec<Vec<Point>>,
}

impl Strokes {
    /// Whether nothing was drawn.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.strokes.is_empty()
    }

    /// Whether what was drawn is too small for a signature.
    #[must_use]
    pub fn is_small(&self) -> bool {
        let all = || self.strokes.iter().flatten();
        let span = |at: fn(&Point) -> u16| {
            let (low, high) = (all().map(at).min(), all().map(at).max());
            low.zip(high).map_or(0, |(low, high)| high - low)
        };
        span(|p| p.0) < SMALLEST.0 && span(|p| p.1) < SMALLEST.1
    }

    fn points(&self) -> usize {
        self.strokes.iter().map(Vec::len).sum()
    }

    /// The finger comes down; a point beyond the field is moved to its edge.
    pub fn begin(&mut self, x: u16, y: u16) {
        if self.points() < MAX_POINTS {
            self.strokes.push(vec![on_field(x, y)]);
        }
    }

    /// The finger moves. Says whether that made a new point.
    pub fn go_on(&mut self, x: u16, y: u16) -> bool {
        let full = self.points() >= MAX_POINTS;
        let (x, y) = on_field(x, y);
        match self.strokes.last_mut() {
            Some(stroke) if !full => {
                let near = |&(px, py): &Point| px.abs_diff(x) < NEAR && py.abs_diff(y) < NEAR;
                let new = !stroke.last().is_some_and(near);
                if new {
                    stroke.push((x, y));
                }
                new
            }
            _ => false,
        }
    }

    /// As text.
    #[must_use]
    pub fn write(&self) -> String {
        let mut out = String::new();
        for (i, stroke) in self.strokes.iter().enumerate() {
            for (j, (x, y)) in stroke.iter().enumerate() {
                let before = match (i, j) {
                    (0, 0) => "",
                    (_, 0) => ";",
                    _ => " ",
                };
                // A string takes everything.
                let _ = write!(out, "{before}{x},{y}");
            }
        }
        out
    }

    /// From such a text; none where anything in it is not as it is written here.
    #[must_use]
    pub fn read(text: &str) -> Option<Strokes> {
        // Seven characters a point and one between two.
        if text.is_empty() || text.len() > MAX_POINTS * 8 {
            return None;
        }
        let number = |word: &str, most: u16| -> Option<u16> {
            let digits = !word.is_empty() && word.bytes().all(|b| b.is_ascii_digit());
            word.parse().ok().filter(|n| digits && *n <= most)
        };
        let point = |word: &str| -> Option<Point> {
            let (x, y) = word.split_once(',')?;
            Some((number(x, WIDTH)?, number(y, HEIGHT)?))
        };
        let stroke = |part: &str| part.split(' ').map(point).collect::<Option<Vec<_>>>();
        let strokes = text.split(';').map(stroke).collect::<Option<Vec<_>>>()?;
        let strokes = Strokes { strokes };
        (strokes.points() <= MAX_POINTS).then_some(strokes)
    }

    /// As the path of a drawing (SVG 2, chapter 9).
    #[must_use]
    pub fn path(&self) -> String {
        let mut out = String::new();
        for stroke in &self.strokes {
            for (j, (x, y)) in stroke.iter().enumerate() {
                let _ = write!(out, "{}{x} {y}", if j == 0 { 'M' } else { 'L' });
            }
            if let [(x, y)] = stroke[..] {
                // A line to where it is gives a dot, with round ends.
                let _ = write!(out, "L{x} {y}");
            }
        }
        out
    }
}

/// The drawings of a match as text: one a line, after the number of the entry that signs.
#[must_use]
pub fn write_drawn(drawn: &BTreeMap<u32, Strokes>) -> String {
    drawn
        .iter()
        .map(|(n, strokes)| format!("{n} {}\n", strokes.write()))
        .collect()
}

/// From such a text; a line that is none is left out.
#[must_use]
pub fn read_drawn(text: &str) -> BTreeMap<u32, Strokes> {
    let line = |line: &str| {
        let (n, strokes) = line.split_once(' ')?;
        Some((n.parse().ok()?, Strokes::read(strokes)?))
    };
    rules::gather(text.lines().filter_map(line))
}

fn on_field(x: u16, y: u16) -> Point {
    (x.min(WIDTH), y.min(HEIGHT))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn drawn(strokes: &[Vec<Point>]) -> Strokes {
        let mut drawn = Strokes::default();
        for stroke in strokes {
            for (i, &(x, y)) in stroke.iter().enumerate() {
                if i == 0 {
                    drawn.begin(x, y);
                } else {
                    drawn.go_on(x, y);
                }
            }
        }
        drawn
    }

    #[test]
    fn a_name_is_drawn_kept_and_shown() {
        let name = drawn(&[vec![(10, 20), (11, 21), (40, 60)], vec![(900, 900)]]);
        // The second point was no new one, the last stroke is a dot at the edge.
        assert_eq!(name.write(), "10,20 40,60;600,200");
        assert_eq!(name.path(), "M10 20L40 60M600 200L600 200");
        assert_eq!(Strokes::read(&name.write()), Some(name));
        assert!(Strokes::default().is_empty());
    }

    #[test]
    fn the_drawings_of_a_match_are_kept_together() {
        let all: BTreeMap<u32, Strokes> = [
            (12, drawn(&[vec![(1, 2), (30, 40)]])),
            (7, drawn(&[vec![(5, 6)]])),
        ]
        .into();
        assert_eq!(write_drawn(&all), "7 5,6\n12 1,2 30,40\n");
        assert_eq!(read_drawn(&write_drawn(&all)), all);
        assert_eq!(read_drawn("x\n7 5,6\n8\n9 9\n-1 1,1").len(), 1);
    }

    #[test]
    fn a_finger_without_a_stroke_draws_nothing() {
        let mut strokes = Strokes::default();
        assert!(!strokes.go_on(1, 2));
        assert!(strokes.is_empty());
    }

    #[test]
    fn whatever_is_no_drawing_is_not_read() {
        for text in [
            "",
            ";",
            " ",
            "1",
            "1,",
            ",1",
            "1,2;",
            "1,2  3,4",
            "-1,2",
            "601,0",
            "0,201",
            "+1,2",
            "1,2,3",
            "M1 2",
            "1,2 a,b",
            "\u{661},2",
        ] {
            assert_eq!(Strokes::read(text), None, "{text:?}");
        }
        let long = vec!["1,1"; MAX_POINTS + 1].join(";");
        assert_eq!(Strokes::read(&long), None);
        assert!(Strokes::read(&vec!["1,1"; MAX_POINTS].join(";")).is_some());
    }

    proptest! {
        #[test]
        fn what_was_drawn_is_read_again(
            strokes in prop::collection::vec(prop::collection::vec((0u16..700, 0u16..300), 1..40), 0..60)
        ) {
            let drawn = drawn(&strokes);
            prop_assert!(drawn.points() <= MAX_POINTS);
            let read = Strokes::read(&drawn.write());
            prop_assert_eq!(read, (!drawn.is_empty()).then_some(drawn));
        }

        #[test]
        fn no_text_breaks_the_reader(text in "[0-9,; Mx.\\-]{0,80}") {
            if let Some(strokes) = Strokes::read(&text) {
                prop_assert_eq!(Strokes::read(&strokes.write()), Some(strokes));
            }
        }
    }

    #[test]
    fn a_dot_is_too_small_and_a_line_is_not() {
        let small = |text: &str| Strokes::read(text).map(|s| s.is_small());
        assert_eq!(small("300,100"), Some(true));
        assert_eq!(small("300,100 330,120"), Some(true));
        assert_eq!(small("300,100 360,100"), Some(false));
        // Small strokes far apart are letters.
        assert_eq!(small("10,10;200,10"), Some(false));
        assert!(Strokes::default().is_small());
    }
}
