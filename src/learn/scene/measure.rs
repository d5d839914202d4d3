//! The margin of a decision as a straight line in the hall, for whoever draws it in.

use super::judge::Judged;
use super::Scene;
use crate::court::{
    End, Foot, Point, Spot, ATTACK_LINE, BALL_RADIUS, CENTRE_LINE_HALF, HALF_LENGTH, HALF_WIDTH,
};
use crate::positions::Pair;
use crate::ruling::Margin;
use crate::Act;
use rules::Cause;

/// From what was measured to where the other answer begins. As long as the margin; none where nothing was
/// measured in metres, or where it is no straight line (what hides a ball).
#[must_use]
pub fn measure(scene: &Scene, judged: &Judged) -> Option<[Point; 2]> {
    let Margin::Metres(_) = judged.ruling.margin else {
        return None;
    };
    let at = judged.moment;
    let ball = scene.ball_at(at);
    let who = judged.player.and_then(|index| scene.players.get(index));
    let nearest = |feet: [Foot; 2], depth: fn(&Foot) -> f64| {
        let [a, b] = feet;
        if depth(&a) < depth(&b) {
            a
        } else {
            b
        }
    };
    match (judged.about, judged.ruling.rule) {
        (_, "8.3") if !judged.ruling.is_fault() => Some([
            Point {
                z: ball.z - BALL_RADIUS,
                ..ball
            },
            Point { z: 0.0, ..ball },
        ]),
        (_, "8.3" | "8.4.1") => landing(scene, at, ball),
        (Cause::Antenna | Cause::OutsideCrossing, _) => {
            let edge = ball.y.signum() * HALF_WIDTH;
            Some([
                Point {
                    y: ball.y + ball.y.signum() * BALL_RADIUS,
                    ..ball
                },
                Point { y: edge, ..ball },
            ])
        }
        (Cause::NetTouch, _) => {
            let hand = scene.events.iter().find_map(|e| match e.act {
                Act::NetTouch { player, hand, .. } if (e.at - at).abs() < 1e-9 => {
                    Some(scene.players[player].stance(at).hands[hand])
                }
                _ => None,
            })?;
            let edge = hand.y.signum() * HALF_WIDTH;
            Some([hand, Point { y: edge, ..hand }])
        }
        (Cause::UnderNet, "11.4.3" | "11.2.2.1") => {
            let who = who?;
            let foot = scene.events.iter().find_map(|e| match e.act {
                Act::FootDown { foot, .. } if (e.at - at).abs() < 1e-9 => {
                    Some(who.stance(at).feet[foot])
                }
                _ => None,
            })?;
            let right = foot.middle().right;
            let on = |depth| who.side.point(Spot { depth, right }, 0.0);
            Some([on(foot.farthest()), on(-CENTRE_LINE_HALF)])
        }
        (Cause::UnderNet, _) => {
            let towards = End::of(ball.x).point(
                Spot {
                    depth: 1.0,
                    right: 0.0,
                },
                0.0,
            );
            let trailing = ball.x - towards.x * BALL_RADIUS;
            Some([
                Point {
                    x: trailing,
                    ..ball
                },
                Point { x: 0.0, ..ball },
            ])
        }
        (Cause::OverNet, _) => {
            let near = End::of(-ball.x).point(
                Spot {
                    depth: BALL_RADIUS,
                    right: 0.0,
                },
                0.0,
            );
            Some([
                Point {
                    x: ball.x + near.x,
                    ..ball
                },
                Point { x: 0.0, ..ball },
            ])
        }
        (Cause::AttackFault, "13.3.3") => {
            let who = who?;
            let foot = nearest(who.planted(at), Foot::nearest);
            let right = foot.middle().right;
            let on = |depth| who.side.point(Spot { depth, right }, 0.0);
            Some([on(foot.nearest()), on(ATTACK_LINE)])
        }
        (Cause::AttackFault, _) => {
            let side = who?.side;
            let here = side.spot(ball);
            let line = Spot {
                depth: ATTACK_LINE,
                ..here
            };
            Some([ball, side.point(line, ball.z)])
        }
        (Cause::LiberoFault, "13.3.5" | "13.3.6") => {
            let low = Point {
                z: ball.z - BALL_RADIUS,
                ..ball
            };
            Some([
                low,
                Point {
                    z: scene.net_top,
                    ..low
                },
            ])
        }
        (Cause::LiberoFault | Cause::BlockFault, _) => {
            let who = who?;
            let body = who.figure(at);
            let high = who.highest(at);
            let [a, b] = body.hands;
            let top = if a.z > b.z { a } else { b };
            let top = Point { z: high, ..top };
            Some([
                top,
                Point {
                    z: scene.net_top,
                    ..top
                },
            ])
        }
        (Cause::ServiceFoot, _) => {
            let who = who?;
            let feet = who.planted(at);
            let foot = feet.into_iter().min_by(|a, b| {
                let inside = |f: &Foot| inside_zone(f).0;
                inside(a).total_cmp(&inside(b))
            })?;
            let (_, from, to) = inside_zone(&foot);
            Some([who.side.point(from, 0.0), who.side.point(to, 0.0)])
        }
        (Cause::OutsideCourt, _) => {
            let who = who?;
            let feet = who.planted(at);
            let foot = feet
                .into_iter()
                .max_by(|a, b| beyond(a).0.total_cmp(&beyond(b).0))?;
            let (_, from, to) = beyond(&foot);
            Some([who.side.point(from, 0.0), who.side.point(to, 0.0)])
        }
        (Cause::PositionFault, _) => pair(scene, who?.side, at),
        _ => None,
    }
}

/// From the edge of what touched the floor to the outer edge of the line.
fn landing(scene: &Scene, at: f64, ball: Point) -> Option<[Point; 2]> {
    let patch = scene.events.iter().find_map(|e| match e.act {
        Act::Floor { patch } if (e.at - at).abs() < 1e-9 => Some(patch),
        _ => None,
    })?;
    let floor = Point { z: 0.0, ..ball };
    let beyond = [ball.x.abs() - HALF_LENGTH, ball.y.abs() - HALF_WIDTH];
    let corner = Point {
        x: ball.x.signum() * ball.x.abs().min(HALF_LENGTH),
        y: ball.y.signum() * ball.y.abs().min(HALF_WIDTH),
        z: 0.0,
    };
    let outside = beyond[0].max(0.0).hypot(beyond[1].max(0.0));
    if outside > 0.0 {
        // Towards the line, or over it where a part lies on it.
        let share = patch / outside;
        return Some([
            Point {
                x: floor.x + (corner.x - floor.x) * share,
                y: floor.y + (corner.y - floor.y) * share,
                z: 0.0,
            },
            corner,
        ]);
    }
    // Inside: from the edge that lies deepest to the nearer line.
    Some(if beyond[0] > beyond[1] {
        let out = ball.x.signum();
        [
            Point {
                x: ball.x - out * patch,
                ..floor
            },
            Point {
                x: out * HALF_LENGTH,
                ..floor
            },
        ]
    } else {
        let out = ball.y.signum();
        [
            Point {
                y: ball.y - out * patch,
                ..floor
            },
            Point {
                y: out * HALF_WIDTH,
                ..floor
            },
        ]
    })
}

/// How far a server's foot is inside the service zone, and between which places that is measured.
fn inside_zone(foot: &Foot) -> (f64, Spot, Spot) {
    let here = foot.middle();
    let depth = |depth| Spot { depth, ..here };
    let right = |right| Spot { right, ..here };
    let ways = [
        (
            foot.nearest() - HALF_LENGTH,
            depth(foot.nearest()),
            depth(HALF_LENGTH),
        ),
        (
            HALF_WIDTH - foot.rightmost(),
            right(foot.rightmost()),
            right(HALF_WIDTH),
        ),
        (
            HALF_WIDTH + foot.leftmost(),
            right(foot.leftmost()),
            right(-HALF_WIDTH),
        ),
    ];
    let [a, b, c] = ways;
    let nearer = |a: (f64, Spot, Spot), b: (f64, Spot, Spot)| if b.0 < a.0 { b } else { a };
    nearer(nearer(a, b), c)
}

/// How far a foot is beyond the lines of the own court, and between which places that is measured.
fn beyond(foot: &Foot) -> (f64, Spot, Spot) {
    let here = foot.middle();
    let depth = |depth| Spot { depth, ..here };
    let right = |right| Spot { right, ..here };
    let ways = [
        (
            foot.farthest() - HALF_LENGTH,
            depth(foot.farthest()),
            depth(HALF_LENGTH),
        ),
        (
            foot.rightmost() - HALF_WIDTH,
            right(foot.rightmost()),
            right(HALF_WIDTH),
        ),
        (
            -foot.leftmost() - HALF_WIDTH,
            right(foot.leftmost()),
            right(-HALF_WIDTH),
        ),
    ];
    let [a, b, c] = ways;
    let farther = |a: (f64, Spot, Spot), b: (f64, Spot, Spot)| if b.0 > a.0 { b } else { a };
    farther(farther(a, b), c)
}

/// Between the two parts of feet that are compared in the tightest pair.
fn pair(scene: &Scene, team: End, at: f64) -> Option<[Point; 2]> {
    let (pair, slack) = scene.formation(team, at)?.tightest();
    let feet = |position| Some(scene.in_position(team, position)?.planted(at));
    Some(match pair {
        Pair::Depth { back, .. } => {
            let [a, b] = feet(back)?;
            let foot = if a.farthest() > b.farthest() { a } else { b };
            let right = foot.middle().right;
            let depth = foot.farthest();
            let on = |depth| team.point(Spot { depth, right }, 0.0);
            [on(depth), on(depth - slack)]
        }
        Pair::Lateral { right, .. } => {
            let [a, b] = feet(right)?;
            let foot = if a.rightmost() > b.rightmost() { a } else { b };
            let depth = foot.middle().depth;
            let edge = foot.rightmost();
            let on = |right| team.point(Spot { depth, right }, 0.0);
            [on(edge), on(edge - slack)]
        }
    })
}
