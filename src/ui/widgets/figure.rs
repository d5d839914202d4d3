//! The drawing of a signal, made of its joints: the referee from the front or from behind, in one line weight.

use std::fmt::Write as _;

use rules::pose::{ArmPose, Hand, Movement, Pose, Prop, ABOVE, HEIGHT, SHOULDERS, WIDTH};

/// Which of its moments are drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Moment {
    /// All of them, one after the other, a few times.
    Moving,
    /// The one that is held, or where it begins.
    First,
    /// Where it gets to.
    Last,
}

/// Seconds for a whole movement, and how often it is shown: together less than the five after which
/// something that moves by itself needs a button to stop it (WCAG 2.2, 2.2.2).
const SECONDS: &str = "1.5s";
const TIMES: &str = "3";

const BODY: &str = "<path class=body d='M90 59V64M72 70Q90 60 108 70L105 118H75Z'/>\
    <path d='M76 118L75 150M90 122V150M104 118L105 150'/>\
    <circle class=body cx=90 cy=46 r=13 />";
const FACE: &str = "<path d='M85 44v1M95 44v1M85 51Q90 54 95 51'/>";
/// The hair, seen from behind.
const HAIR: &str = "<path d='M79 46Q80 34 90 34Q100 34 101 46M84 41V45M90 40V46M96 41V45'/>";

/// From where a figure is seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Seen {
    /// Whether it is turned over, left for right.
    pub mirrored: bool,
    /// Whether it is seen from behind.
    pub behind: bool,
}

/// The inside of the drawing.
#[must_use]
pub fn figure(movement: &Movement, moment: Moment, seen: Seen) -> String {
    let (first, last) = movement.stills();
    let one = [*match moment {
        Moment::Last => last.unwrap_or(first),
        Moment::Moving | Moment::First => first,
    }];
    let poses = match moment {
        Moment::Moving => movement.poses,
        Moment::First | Moment::Last => &one,
    };
    let mut out = String::new();
    out.push_str(if seen.mirrored {
        "<g transform='matrix(-1 0 0 1 180 0)'>"
    } else {
        "<g>"
    });
    // What is farther away comes first.
    arms(&mut out, poses, !seen.behind, seen.behind);
    out.push_str(BODY);
    out.push_str(if seen.behind { HAIR } else { FACE });
    out.push_str(match movement.prop {
        None => "",
        Some(Prop::Floor) => "<path d='M4 146H66'/>",
        Some(Prop::Line) => "<path class=body d='M14 148L26 138H62L54 148Z'/>",
        Some(Prop::Net) => {
            "<path d='M4 104H58V110H4ZM4 110V150M15 110V150M26 110V150M37 110V150M48 110V150\
             M58 110V150M4 120H58M4 131H58M4 142H58'/>"
        }
    });
    arms(&mut out, poses, seen.behind, seen.behind);
    if last.is_some() && moment != Moment::First {
        for way in movement.way {
            let _ = write!(out, "<path class=way d='{way}'/>");
        }
    }
    out.push_str("</g>");
    out
}

/// Both arms as far as they are on one side of the body.
fn arms(out: &mut String, poses: &[Pose], behind: bool, from_behind: bool) {
    for side in [0, 1] {
        let arm: Vec<ArmPose> = poses.iter().map(|pose| pose[side]).collect();
        let there: Vec<bool> = arm.iter().map(|a| a.behind == behind).collect();
        if !there.contains(&true) {
            continue;
        }
        out.push_str("<g>");
        if there.contains(&false) {
            animate(
                out,
                "visibility",
                "discrete",
                there
                    .iter()
                    .map(|here| if *here { "visible" } else { "hidden" }.to_owned()),
            );
        }
        let line = |a: &ArmPose| {
            let shoulder = SHOULDERS[side];
            format!(
                "M{} {}L{} {}L{} {}",
                shoulder.0, shoulder.1, a.elbow.0, a.elbow.1, a.wrist.0, a.wrist.1
            )
        };
        // A seam of the ground keeps the forearm apart from the body behind it.
        let seam =
            |a: &ArmPose| format!("M{} {}L{} {}", a.elbow.0, a.elbow.1, a.wrist.0, a.wrist.1);
        path(out, "seam", &arm, &seam);
        path(out, "limb", &arm, &line);
        let hand = &arm[0];
        let _ = write!(
            out,
            "<g transform='translate({} {})'>",
            hand.wrist.0, hand.wrist.1
        );
        travel(
            out,
            "translate",
            arm.iter().map(|a| format!("{} {}", a.wrist.0, a.wrist.1)),
        );
        let _ = write!(out, "<g transform='rotate({})'>", hand.turn);
        travel(out, "rotate", arm.iter().map(|a| a.turn.to_string()));
        // The thumb of a right hand, which is on the picture's left, is on the right of an open palm.
        out.push_str(if side == 0 {
            "<g>"
        } else {
            "<g transform='scale(-1 1)'>"
        });
        draw_hand(out, turned(arm[0].hand, from_behind));
        out.push_str("</g></g></g></g>");
    }
}

/// A line that moves with the arm.
fn path(out: &mut String, class: &str, arm: &[ArmPose], line: &dyn Fn(&ArmPose) -> String) {
    let _ = write!(out, "<path class={class} d='{}'>", line(&arm[0]));
    animate(out, "d", "linear", arm.iter().map(line));
    out.push_str("</path>");
}

/// A hand as it is seen: from behind it shows its other side.
const fn turned(hand: Hand, from_behind: bool) -> Hand {
    match hand {
        Hand::Open if from_behind => Hand::Back,
        Hand::Back if from_behind => Hand::Open,
        _ => hand,
    }
}

fn draw_hand(out: &mut String, hand: Hand) {
    const PALM: &str = "<path class=body d='M-5 0L-6-9Q0-12 6-9L5 0Z'/>";
    const FIST: &str = "<rect class=body x=-6 y=-11 width=12 height=12 rx=4 />";
    out.push_str(match hand {
        Hand::Open => {
            "<path class=body d='M-5 0L-6-15Q0-20 5-15V-9L9-13Q12-11 10-8L5 0Z'/>\
             <path d='M-2-9V-15M2-9V-15'/>"
        }
        Hand::Back => "<path class=body d='M5 0L6-15Q0-20-5-15V-9L-9-13Q-12-11-10-8L-5 0Z'/>",
        Hand::Edge => "<path class=body d='M-3 0V-17Q0-21 3-17V0Z'/>",
        Hand::PalmUp => "<path class=body d='M-3 0Q-5-12 4-18Q7-17 6-14Q2-8 3 0Z'/>",
        Hand::PalmDown => "<path class=body d='M3 0Q5-12-4-18Q-7-17-6-14Q-2-8-3 0Z'/>",
        Hand::Fist => "",
        Hand::Thumb => "<path class=body d='M-2-9V-19Q1-22 4-19V-9'/>",
        Hand::Point => "<path class=body d='M-2-9V-20Q1-23 3-20V-9'/>",
        // A flag of 40 by 40 cm (29.2.1) on a stick that goes on from the hand.
        Hand::Flag => "<path class=body d='M0-24H26V-50H0Z'/><path d='M0 8V-50'/>",
        Hand::Fingers(_) | Hand::Cards { .. } => "",
    });
    match hand {
        Hand::Fist | Hand::Thumb | Hand::Point | Hand::Flag => out.push_str(FIST),
        Hand::Fingers(count) => {
            out.push_str(PALM);
            // The thumb last; two to four are fingers.
            const SPREAD: [&str; 5] = [
                "M-2-10L-3-23",
                "M2-10L4-22",
                "M-5-9L-10-20",
                "M5-8L10-18",
                "M5-3L14-8",
            ];
            for way in &SPREAD[..usize::from(count).min(5)] {
                let _ = write!(out, "<path class=finger d='{way}'/>");
            }
        }
        Hand::Cards { yellow, red } => {
            if red {
                let x = if yellow { -13 } else { -8 };
                let _ = write!(
                    out,
                    "<rect class='card red' x={x} y=-28 width=15 height=21 rx=1 />"
                );
            }
            if yellow {
                let x = if red { -3 } else { -8 };
                let _ = write!(
                    out,
                    "<rect class='card yellow' x={x} y=-26 width=15 height=21 rx=1 />"
                );
            }
            out.push_str(FIST);
        }
        _ => {}
    }
}

/// The moments of one value. Two are held a little, more go on evenly.
fn animate(out: &mut String, what: &str, mode: &str, values: impl Iterator<Item = String>) {
    write_animation(
        out,
        &format!("animate attributeName={what} calcMode={mode}"),
        values,
    );
}

fn travel(out: &mut String, how: &str, values: impl Iterator<Item = String>) {
    write_animation(
        out,
        &format!("animateTransform attributeName=transform type={how}"),
        values,
    );
}

fn write_animation(out: &mut String, element: &str, values: impl Iterator<Item = String>) {
    let mut values: Vec<String> = values.collect();
    let Some(first) = values.first().cloned() else {
        return;
    };
    if values.iter().all(|value| *value == first) {
        return;
    }
    // A movement that does not go round waits at both ends.
    if values.last() != Some(&first) {
        values.insert(0, first);
        values.extend(values.last().cloned());
    }
    let _ = write!(
        out,
        "<{element} dur={SECONDS} repeatCount={TIMES} fill=freeze values='{}'/>",
        values.join(";")
    );
}

/// The frame of a drawing; with a flag it is higher.
#[must_use]
pub fn view_box(movement: &Movement) -> String {
    let above = if movement.has_flag() { ABOVE } else { 0 };
    format!("0 {} {WIDTH} {}", -above, HEIGHT + above)
}
