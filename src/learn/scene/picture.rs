//! A moment of a scene as shapes in a picture, from back to front. Colours and sizes on a screen are for
//! whoever draws them.

use super::figure::Figure;
use super::view::{Place, Seen, View};
use super::{Player, Scene};
use crate::attack::Row;
use crate::court::{
    End, Point, Spot, ATTACK_LINE, BALL_RADIUS, CENTRE_LINE_HALF, FREE_ZONE, HALF_LENGTH,
    HALF_WIDTH, LINE_WIDTH,
};

/// What a shape is of, so that it can have a colour.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tone {
    /// The floor around the court.
    Floor,
    /// A court.
    Court(End),
    /// A line on the floor.
    Line,
    /// Under a player or the ball.
    Shadow,
    /// Mesh and lower edge of the net.
    Mesh,
    /// The band along its top.
    Band,
    /// Antennae.
    Antenna,
    /// Posts.
    Post,
    /// Head, arms and legs of a player of a side.
    Player(End, Row),
    /// The trunk of one, which shows the row.
    Trunk(End, Row),
    /// The number of one.
    Number(End, Row),
    /// The ball.
    Ball,
    /// A margin that is drawn in.
    Measure,
}

/// A shape, in the measures of [`Seen`].
#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    /// A surface.
    Surface(Tone, Vec<Seen>),
    /// A line of a width of its own, in halves of the picture's width.
    Line(Tone, f64, Vec<Seen>),
    /// A disc with its radius.
    Disc(Tone, f64, Seen),
    /// A number of a shirt, so high.
    Number(Tone, f64, Seen, u8),
}

/// From where a scene is looked at, and when.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Look {
    /// The place.
    pub place: Place,
    /// The moment.
    pub time: f64,
    /// The direction.
    pub view: View,
    /// A margin that is drawn in.
    pub measure: Option<[Point; 2]>,
}

/// Half as thick as an arm or a leg is drawn, and as a trunk, in metres. Our own choice.
const LIMB: f64 = 0.055;
const TRUNK: f64 = 0.15;
/// From the top of the net to its lower edge, in metres (2.2).
const NET_DEPTH: f64 = 1.0;
/// How wide its upper band is, in metres (2.2).
const BAND: f64 = 0.07;
/// How far an antenna stands above the net, in metres (2.4).
const ANTENNA: f64 = 0.8;
/// How high a post is, in metres, and how far outside the side line (2.5; in the middle of what is allowed).
const POST: (f64, f64) = (2.55, 0.75);

/// How far behind the end line the marks of the service zone begin, and how long they are, in metres (1.4.2).
const ZONE_MARK: (f64, f64) = (0.2, 0.15);

/// All shapes of a moment.
#[must_use]
pub fn picture(scene: &Scene, look: &Look) -> Vec<Shape> {
    let mut shapes = Vec::with_capacity(220);
    let mut drawing = Drawing {
        view: &look.view,
        shapes: &mut shapes,
    };
    drawing.floor();
    let bodies: Vec<(&Player, Figure)> = scene
        .players
        .iter()
        .map(|player| (player, player.figure(look.time)))
        .collect();
    for (_, body) in &bodies {
        let [a, b] = body.feet;
        drawing.shadow(a.on_the_way(b, 0.5), 0.26);
    }
    let ball = scene.ball_at(look.time);
    drawing.shadow(ball, BALL_RADIUS);
    // What is beyond the net, the net, what is before it. The referees look along it, so that it hides
    // nothing.
    let eye_side = match look.place {
        Place::Stand | Place::SecondReferee => None,
        Place::LineJudge => Some(End::Right),
    };
    let before = |x: f64| eye_side.is_none_or(|side| End::of(x) == side);
    let mut things: Vec<(f64, Option<&(&Player, Figure)>)> = bodies
        .iter()
        .map(|body| (look.view.depth(body.1.hips), Some(body)))
        .collect();
    things.push((look.view.depth(ball), None));
    rules::sort_by(&mut things, |a, b| b.0.total_cmp(&a.0));
    for in_front in [false, true] {
        if in_front {
            drawing.net(scene.net_top);
        }
        for (_, thing) in &things {
            match thing {
                Some((player, body)) if before(body.hips.x) == in_front => {
                    drawing.player(player, body);
                }
                None if before(ball.x) == in_front => drawing.disc(Tone::Ball, BALL_RADIUS, ball),
                Some(_) | None => {}
            }
        }
    }
    if let Some([a, b]) = look.measure {
        drawing.line(Tone::Measure, 0.03, a, b);
        drawing.disc(Tone::Measure, 0.04, a);
        drawing.disc(Tone::Measure, 0.04, b);
    }
    shapes
}

struct Drawing<'a> {
    view: &'a View,
    shapes: &'a mut Vec<Shape>,
}

impl Drawing<'_> {
    fn surface(&mut self, tone: Tone, corners: &[Point]) {
        let seen = self.view.surface(corners);
        if seen.len() > 2 {
            self.shapes.push(Shape::Surface(tone, seen));
        }
    }

    /// A line that is so thick in metres, where it is nearer.
    fn line(&mut self, tone: Tone, thick: f64, a: Point, b: Point) {
        if let Some([a, b]) = self.view.line(a, b) {
            // What comes close to the eye would be wider than the picture.
            let width = thick * (a.metre * b.metre).sqrt().min(0.7);
            self.shapes.push(Shape::Line(tone, width, vec![a, b]));
        }
    }

    fn disc(&mut self, tone: Tone, radius: f64, at: Point) {
        if let Some(seen) = self.view.point(at) {
            self.shapes
                .push(Shape::Disc(tone, radius * seen.metre, seen));
        }
    }

    /// A piece of the floor, from corner to corner.
    fn rectangle(&mut self, tone: Tone, from: (f64, f64), to: (f64, f64)) {
        let on = |x, y| Point { x, y, z: 0.0 };
        let corners = [
            on(from.0, from.1),
            on(to.0, from.1),
            on(to.0, to.1),
            on(from.0, to.1),
        ];
        self.surface(tone, &corners);
    }

    fn floor(&mut self) {
        let (long, wide) = (HALF_LENGTH, HALF_WIDTH);
        let (far, aside) = (long + FREE_ZONE, wide + FREE_ZONE);
        self.rectangle(Tone::Floor, (-far, -aside), (far, aside));
        self.rectangle(Tone::Court(End::Left), (-long, -wide), (0.0, wide));
        self.rectangle(Tone::Court(End::Right), (0.0, -wide), (long, wide));
        let line = LINE_WIDTH;
        for sign in [-1.0, 1.0] {
            let (end, side) = (sign * long, sign * wide);
            self.rectangle(Tone::Line, (end - sign * line, -wide), (end, wide));
            self.rectangle(Tone::Line, (-long, side - sign * line), (long, side));
            let attack = sign * ATTACK_LINE;
            self.rectangle(Tone::Line, (attack - sign * line, -wide), (attack, wide));
        }
        self.rectangle(
            Tone::Line,
            (-CENTRE_LINE_HALF, -wide),
            (CENTRE_LINE_HALF, wide),
        );
        // Far away a line is thinner than what can be seen; a stroke of the least width stays.
        let on = |x, y| Point { x, y, z: 0.0 };
        let mut stroke = |a, b| self.line(Tone::Line, 0.0, a, b);
        let middle = line / 2.0;
        for x in [
            -long + middle,
            -ATTACK_LINE + middle,
            0.0,
            ATTACK_LINE - middle,
            long - middle,
        ] {
            stroke(on(x, -wide), on(x, wide));
        }
        for y in [-wide + middle, wide - middle] {
            stroke(on(-long, y), on(long, y));
            // Where the service zone ends at the side.
            for sign in [-1.0, 1.0] {
                let from = sign * (long + ZONE_MARK.0);
                stroke(on(from, y), on(from + sign * ZONE_MARK.1, y));
            }
        }
    }

    fn shadow(&mut self, over: Point, radius: f64) {
        const CORNERS: u8 = 10;
        let corners: Vec<Point> = (0..CORNERS)
            .map(|corner| {
                let turn = f64::from(corner) / f64::from(CORNERS) * std::f64::consts::TAU;
                Point {
                    x: over.x + radius * turn.cos(),
                    y: over.y + radius * turn.sin(),
                    z: 0.0,
                }
            })
            .collect();
        self.surface(Tone::Shadow, &corners);
    }

    fn net(&mut self, top: f64) {
        let at = |y: f64, z: f64| Point { x: 0.0, y, z };
        let post = HALF_WIDTH + POST.1;
        for side in [-1.0, 1.0] {
            self.line(
                Tone::Post,
                0.1,
                at(side * post, 0.0),
                at(side * post, POST.0),
            );
        }
        let mesh = [
            at(-HALF_WIDTH - 0.25, top),
            at(HALF_WIDTH + 0.25, top),
            at(HALF_WIDTH + 0.25, top - NET_DEPTH),
            at(-HALF_WIDTH - 0.25, top - NET_DEPTH),
        ];
        self.surface(Tone::Mesh, &mesh);
        let mut along = -HALF_WIDTH;
        while along <= HALF_WIDTH {
            self.line(
                Tone::Mesh,
                0.012,
                at(along, top),
                at(along, top - NET_DEPTH),
            );
            along += 0.5;
        }
        let low = top - NET_DEPTH;
        self.line(Tone::Mesh, 0.03, at(-post, low), at(post, low));
        let band = top - BAND / 2.0;
        self.line(Tone::Band, BAND, at(-post, band), at(post, band));
        for side in [-HALF_WIDTH, HALF_WIDTH] {
            self.line(Tone::Band, 0.05, at(side, top), at(side, low));
            self.line(Tone::Antenna, 0.025, at(side, low), at(side, top + ANTENNA));
        }
    }

    fn player(&mut self, player: &Player, body: &Figure) {
        let tone = Tone::Player(player.side, player.row);
        let mut limb = |a: Point, b: Point| self.line(tone, LIMB * 2.0, a, b);
        for i in 0..2 {
            limb(body.feet[i], body.knees[i]);
            limb(body.knees[i], body.hips);
        }
        for i in 0..2 {
            // A foot points to the net.
            let spot = player.side.spot(body.feet[i]);
            let toe = Spot {
                depth: spot.depth - 0.14,
                ..spot
            };
            let heel = Spot {
                depth: spot.depth + 0.14,
                ..spot
            };
            let height = body.feet[i].z - 0.02;
            limb(
                player.side.point(heel, height),
                player.side.point(toe, height),
            );
        }
        let neck = body.shoulders[0].on_the_way(body.shoulders[1], 0.5);
        self.line(
            Tone::Trunk(player.side, player.row),
            TRUNK * 2.0,
            body.hips.on_the_way(neck, 0.15),
            neck.on_the_way(body.hips, 0.12),
        );
        let mut limb = |a: Point, b: Point| self.line(tone, LIMB * 1.8, a, b);
        for i in 0..2 {
            limb(body.shoulders[i], body.elbows[i]);
            limb(body.elbows[i], body.hands[i]);
        }
        self.disc(tone, body.head_radius * 0.85, body.head);
        let chest = neck.on_the_way(body.hips, 0.4);
        if let Some(seen) = self.view.point(chest) {
            let number = Tone::Number(player.side, player.row);
            let high = 0.26 * seen.metre;
            self.shapes
                .push(Shape::Number(number, high, seen, player.number));
        }
    }
}
