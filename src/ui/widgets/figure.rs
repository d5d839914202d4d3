//! The drawing of a signal, made of its joints: the referee from the front or from behind, in filled shapes.

use std::fmt::Write as _;

use super::hand::{self, OUTLINE};
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
    /// The one that names it, which says most in a small picture.
    Naming,
}

/// Seconds for a whole movement, and how often it is shown: together less than the five after which
/// something that moves by itself needs a button to stop it (WCAG 2.2, 2.2.2).
const SECONDS: &str = "1.5s";
const TIMES: &str = "3";

/// How wide a sleeve and a forearm are.
const SLEEVE: f32 = 12.5;
const FOREARM: f32 = 8.0;

/// Trousers, shirt and neck, from either side.
const BODY: &str = "<path class=edge stroke-width=16 d='M81 119L80 152M99 119L100 152'/>\
    <path class=legs stroke-width=13.6 d='M81 119L80 152M99 119L100 152'/>\
    <path class='skin shape' d='M85 55H95V67H85Z'/>\
    <path class='cloth shape' d='M83 64Q71 65 67 72L72 96V121Q90 125 108 121V96L113 72Q109 65 97 64Q90 69 83 64Z'/>";
/// A collar, and no smile: who whistles judges.
const FACE: &str = "<path class=fold d='M83 64L90 72L97 64M90 72V82'/>\
    <ellipse class='skin shape' cx=90 cy=46 rx=11.5 ry=13.5 />\
    <path class='hair shape' d='M78.5 45Q77 31.5 90 31.5T101.5 45Q99 38 90 38T78.5 45Z'/>\
    <path class=fold d='M85.5 45.5v1.6M94.5 45.5v1.6M86.5 53H93.5'/>";
/// Hair and a seam across the shoulders, seen from behind.
const NAPE: &str = "<path class=fold d='M71 80Q90 86 109 80'/>\
    <ellipse class='skin shape' cx=90 cy=46 rx=11.5 ry=13.5 />\
    <path class='hair shape' d='M78.5 48Q77 31.5 90 31.5T101.5 48Q99 56 90 56T78.5 48Z'/>";

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
        Moment::Naming => movement.naming(),
        Moment::Moving | Moment::First => first,
    }];
    let poses = match moment {
        Moment::Moving => movement.poses,
        Moment::First | Moment::Last | Moment::Naming => &one,
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
    out.push_str(if seen.behind { NAPE } else { FACE });
    out.push_str(match movement.prop {
        None => "",
        Some(Prop::Floor) => "<path class=prop stroke-width=4 d='M4 147H64'/>",
        Some(Prop::Line) => "<path class='paint shape' d='M10 149L24 138H62L52 149Z'/>",
        Some(Prop::Net) => {
            "<path class=prop d='M4 110V150M15 110V150M26 110V150M37 110V150M48 110V150\
             M58 110V150M4 120H58M4 131H58M4 142H58'/><path class='paint shape' d='M4 103H58V110H4Z'/>"
        }
    });
    arms(&mut out, poses, seen.behind, seen.behind);
    let begins = moment == Moment::First || moment == Moment::Naming && movement.named_at_first;
    if last.is_some() && !begins {
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
        let (x, y) = SHOULDERS[side];
        let upper = |a: &ArmPose| format!("M{x} {y}L{} {}", a.elbow.0, a.elbow.1);
        let lower =
            |a: &ArmPose| format!("M{} {}L{} {}", a.elbow.0, a.elbow.1, a.wrist.0, a.wrist.1);
        path(out, "edge", SLEEVE + OUTLINE, &arm, &upper);
        path(out, "cloth", SLEEVE, &arm, &upper);
        path(out, "edge", FOREARM + OUTLINE, &arm, &lower);
        path(out, "skin", FOREARM, &arm, &lower);
        let held = &arm[0];
        let _ = write!(
            out,
            "<g transform='translate({} {})'>",
            held.wrist.0, held.wrist.1
        );
        travel(
            out,
            "translate",
            arm.iter().map(|a| format!("{} {}", a.wrist.0, a.wrist.1)),
        );
        let _ = write!(out, "<g transform='rotate({})'>", held.turn);
        travel(out, "rotate", arm.iter().map(|a| a.turn.to_string()));
        // The thumb of a right hand, which is on the picture's left, is on the right of an open palm.
        out.push_str(if side == 0 {
            "<g>"
        } else {
            "<g transform='scale(-1 1)'>"
        });
        hand::draw(out, turned(arm[0].hand, from_behind));
        out.push_str("</g></g></g></g>");
    }
}

/// A line that moves with the arm.
fn path(
    out: &mut String,
    class: &str,
    width: f32,
    arm: &[ArmPose],
    line: &dyn Fn(&ArmPose) -> String,
) {
    let first = line(&arm[0]);
    let _ = write!(out, "<path class={class} stroke-width={width} d='{first}'>");
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
