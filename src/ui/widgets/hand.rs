//! A hand of the drawn referee: strokes of skin, each finger one of them, so that they can be counted.

use std::fmt::Write as _;

use rules::pose::Hand;

/// A stroke: the data of its path, and how wide it is.
type Stroke = (&'static str, &'static str);

/// How far the outline goes beyond the skin on both sides together.
pub(super) const OUTLINE: f32 = 2.4;

/// The wrist is at 0, 0 and the fingers point up; of an open palm the thumb is on the right.
const PALM: Stroke = ("M0-1.5V-6", "10.5");
const FIST: Stroke = ("M-1.6-5.5H1.6", "10");
/// The fingers of a closed hand, as lines on it.
const KNUCKLES: &str = "<path class=fold d='M-2.9-8.5V-4.5M0-9.2V-4.5M2.9-8.5V-4.5'/>";

/// From the forefinger to the little one, and the thumb last.
const FLAT: [Stroke; 5] = [
    ("M4-7L5.4-17", "3"),
    ("M1.4-8L1.9-20", "3"),
    ("M-1.4-8L-1.7-19.5", "3"),
    ("M-4-7L-5.2-16", "3"),
    ("M3.6-3L9.4-9", "3.4"),
];
const SPREAD: [Stroke; 5] = [
    ("M4-7L7.6-19", "3.4"),
    ("M1.4-8L2.4-22", "3.4"),
    ("M-1.6-8L-3.4-21", "3.4"),
    ("M-4.2-7L-8.8-17.5", "3.4"),
    ("M3.6-3L12.4-9.5", "3.6"),
];
/// The thumb across the palm, while fewer than five fingers are shown.
const FOLDED_THUMB: Stroke = ("M4.4-3.4L-.6-5.4", "3.2");

/// Draws a hand.
pub(super) fn draw(out: &mut String, hand: Hand) {
    match hand {
        Hand::Open => skin(out, &[&[PALM], &FLAT[..]].concat()),
        Hand::Back => {
            out.push_str("<g transform='scale(-1 1)'>");
            skin(out, &[&[PALM], &FLAT[..]].concat());
            out.push_str("<path class=fold d='M-4-7.5V-7M-1.4-8.5V-8M1.4-8.5V-8M4-7.5V-7'/></g>");
        }
        Hand::Edge => skin(out, &[("M0-1V-18", "5.4"), ("M1-4L4.6-10", "3.2")]),
        Hand::PalmUp => skin(
            out,
            &[("M0-1Q-2.5-10 .5-18.5", "5"), ("M1.5-4Q6.5-7 6-13", "3.2")],
        ),
        Hand::PalmDown => skin(
            out,
            &[("M0-1Q2.5-10-.5-18.5", "5"), ("M-1.5-4Q-5-7-4.6-12", "3.2")],
        ),
        Hand::Fist => closed(out, &[]),
        // Seen from the thumb's side the folded fingers lie above each other.
        Hand::Thumb => {
            skin(out, &[("M.4-8V-16", "5"), FIST]);
            out.push_str("<path class=fold d='M-2-8.5H4.5M-2-5.5H5M-2-2.5H4.5'/>");
        }
        Hand::Point => closed(out, &[("M-2.8-8V-20.5", "3.6")]),
        Hand::Fingers(count) => {
            let count = usize::from(count).min(SPREAD.len());
            skin(out, &[&[PALM], &SPREAD[..count]].concat());
            if count < SPREAD.len() {
                skin(out, &[FOLDED_THUMB]);
            }
        }
        Hand::Cards { yellow, red } => {
            if red {
                card(out, "red", if yellow { -14 } else { -8 });
            }
            if yellow {
                card(out, "yellow", if red { -2 } else { -8 });
            }
            closed(out, &[]);
        }
        // A flag of 40 by 40 cm (29.2.1) on a stick that goes on from the hand.
        Hand::Flag => {
            out.push_str(
                "<path class='card red' d='M0-24H26V-50H0Z'/><path class=stick d='M0 8V-50'/>",
            );
            closed(out, &[]);
        }
    }
}

fn card(out: &mut String, colour: &str, x: i16) {
    let _ = write!(
        out,
        "<rect class='card {colour}' x={x} y=-29 width=16 height=23 rx=1.5 />"
    );
}

fn closed(out: &mut String, fingers: &[Stroke]) {
    skin(out, &[fingers, &[FIST]].concat());
    out.push_str(KNUCKLES);
}

/// The outlines of all strokes lie below the skin of all, so that together they are one shape.
fn skin(out: &mut String, strokes: &[Stroke]) {
    for (way, width) in strokes {
        let width: f32 = width.parse().unwrap_or_default();
        let _ = write!(
            out,
            "<path class=edge stroke-width={} d='{way}'/>",
            width + OUTLINE
        );
    }
    for (way, width) in strokes {
        let _ = write!(out, "<path class=skin stroke-width={width} d='{way}'/>");
    }
}
