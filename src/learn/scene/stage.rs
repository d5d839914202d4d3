//! What a scene is staged with: players in their places, flights of the ball, movements to it.

use super::body::{feet, share, Player, Stance};
use super::path::Leg;
use super::{Act, Event, Scene};
use crate::attack::Row;
use crate::court::{End, Point, Spot, BALL_RADIUS};
use crate::flight::{Flight, Velocity};
use crate::hits::TouchKind;
use fastrand::Rng;
use rules::{Edition, UnderNet};

/// Where a team waits for a ball from the opponents, position 1 first: common practice, no source.
const DEFENCE: [(f64, f64); 6] = [
    (6.3, 3.0),
    (1.0, 3.0),
    (1.0, 0.0),
    (1.0, -3.0),
    (6.3, -3.0),
    (7.6, 0.0),
];
/// Where a team waits for a service: common practice, no source.
const RECEPTION: [(f64, f64); 6] = [
    (6.4, 2.9),
    (2.2, 2.6),
    (1.3, -0.2),
    (2.6, -2.9),
    (6.5, -3.0),
    (7.3, 0.0),
];

/// How a ball is met.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Meet {
    /// With both forearms, low.
    Dig,
    /// With the fingers of both hands, above the head.
    Fingers,
    /// With one hand, out of a jump from feet whose nearest part is so far from the axis of the centre line.
    Attack {
        /// In metres.
        take_off: f64,
    },
}

/// A scene that is being staged; the ball and the time go on with it.
pub(super) struct Stage {
    pub rng: Rng,
    pub scene: Scene,
    /// The side that attacks, or serves.
    pub us: End,
    pub now: f64,
    pub ball: Point,
}

/// A place in a row of so many. Drawn with 32 bits everywhere: a phone's own width would make other scenes of
/// the same seed.
fn one_below(rng: &mut Rng, many: usize) -> usize {
    let many = u32::try_from(many).unwrap_or(u32::MAX).max(1);
    rng.u32(0..many) as usize
}

impl Stage {
    /// Twelve players in their places before a ball comes over the net to us.
    pub fn new(mut rng: Rng, us: End) -> Stage {
        let net_top = if rng.bool() { 2.43 } else { 2.24 };
        let mut shirts: Vec<u8> = (1..=18).collect();
        for last in (1..shirts.len()).rev() {
            shirts.swap(last, one_below(&mut rng, last + 1));
        }
        let mut players = Vec::new();
        for side in End::BOTH {
            for position in 1..=6u8 {
                // Who jumps higher where the net is higher.
                let height = net_top * (0.74 + 0.05 * rng.f64());
                let number = shirts[players.len()];
                let row = if (2..=4).contains(&position) {
                    Row::Front
                } else {
                    Row::Back
                };
                players.push(Player {
                    side,
                    position,
                    number,
                    row,
                    height,
                    stances: Vec::new(),
                });
            }
        }
        let mut stage = Stage {
            rng,
            scene: Scene {
                net_top,
                edition: Edition::E2025,
                under_net: UnderNet::Standard,
                service_seconds: 8.0,
                serving: us.other(),
                due: 0,
                players,
                ball: Vec::new(),
                events: Vec::new(),
            },
            us,
            now: 0.0,
            ball: Point {
                x: 0.0,
                y: 0.0,
                z: 0.0,
            },
        };
        for (side, places) in [(us, RECEPTION), (us.other(), DEFENCE)] {
            stage.line_up(side, places);
        }
        stage.scene.due = stage.scene.players[stage.who(us.other(), 1)].number;
        stage
    }

    /// Places the receivers of a service, and the servers' team, who are all on the court but the server.
    pub fn for_service(&mut self) {
        let (us, them) = (self.us, self.them());
        self.scene.serving = us;
        self.scene.due = self.scene.players[self.who(us, 1)].number;
        self.line_up(them, RECEPTION);
        self.line_up(us, DEFENCE);
    }

    fn line_up(&mut self, side: End, places: [(f64, f64); 6]) {
        for (position, (depth, right)) in (1u8..).zip(places) {
            let spot = Spot {
                depth: depth + self.between(-0.15, 0.15),
                right: right + self.between(-0.15, 0.15),
            };
            let who = self.who(side, position);
            self.stands(who, spot);
        }
    }

    pub fn them(&self) -> End {
        self.us.other()
    }

    pub fn between(&mut self, from: f64, to: f64) -> f64 {
        from + (to - from) * self.rng.f64()
    }

    /// One of several values.
    pub fn one_of<T: Copy>(&mut self, values: &[T]) -> T {
        values[one_below(&mut self.rng, values.len())]
    }

    /// The place among the players of whoever stands in a position.
    pub fn who(&self, side: End, position: u8) -> usize {
        let of = |p: &Player| p.side == side && p.position == position;
        // Both sides have six positions from the beginning.
        self.scene.players.iter().position(of).unwrap_or(0)
    }

    /// The player of a side who is nearest to a spot now and is none of some others.
    pub fn nearest(&self, side: End, spot: Spot, but: &[usize]) -> usize {
        let away = |index: &usize| {
            let stance = self.scene.players[*index].stance(self.now);
            let here = super::body::middle(&stance);
            (here.depth - spot.depth).hypot(here.right - spot.right)
        };
        let all = 0..self.scene.players.len();
        let mut able = all.filter(|i| self.scene.players[*i].side == side && !but.contains(i));
        let first = able.next().unwrap_or(0);
        able.fold(
            first,
            |best, i| if away(&i) < away(&best) { i } else { best },
        )
    }

    /// The ready stance of a player at a spot.
    pub fn ready(&self, player: usize, at: f64, spot: Spot, crouch: f64) -> Stance {
        let who = &self.scene.players[player];
        let height = who.height * (0.55 - 0.2 * crouch);
        let hand = |right: f64| {
            let spot = Spot {
                depth: spot.depth - 0.28,
                right: spot.right + right,
            };
            who.side.point(spot, height)
        };
        Stance {
            at,
            feet: feet(spot),
            lift: 0.0,
            crouch,
            hands: [hand(-0.2), hand(0.2)],
        }
    }

    /// Where a player waits from the beginning.
    pub fn stands(&mut self, player: usize, spot: Spot) {
        let stance = self.ready(player, 0.0, spot, 0.3);
        self.scene.players[player].stances = vec![stance];
    }

    /// A player is at a spot at a moment, ready.
    pub fn moves(&mut self, player: usize, at: f64, spot: Spot) {
        let stance = self.ready(player, at, spot, 0.3);
        self.scene.players[player].at(stance);
    }

    /// A player stays where they are from now until a moment.
    pub fn stays(&mut self, player: usize, from: f64, until: f64) {
        for at in [from, until] {
            let stance = self.scene.players[player].stance(from);
            self.scene.players[player].at(Stance { at, ..stance });
        }
    }

    pub fn event(&mut self, at: f64, act: Act) {
        self.scene.events.push(Event { at, act });
    }

    /// The ball begins here.
    pub fn ball_from(&mut self, side: End, spot: Spot, height: f64) {
        self.ball = side.point(spot, height);
    }

    /// The ball flies to a place, and time with it. Whether it passes the plane of the net on its way, above or
    /// below the net, is an event.
    pub fn fly(&mut self, aim: Point, seconds: f64) {
        let launch = Flight::towards(self.ball, aim, seconds);
        self.go(Leg::flies(self.now, self.now + seconds, launch));
    }

    /// The ball flies on with a velocity of its own.
    pub fn drift(&mut self, velocity: Velocity, seconds: f64) {
        let launch = Flight::of_ball(self.ball, velocity);
        self.go(Leg::flies(self.now, self.now + seconds, launch));
    }

    /// Somebody carries the ball.
    pub fn carry(&mut self, to: Point, seconds: f64) {
        let leg = Leg::carried(self.now, self.now + seconds, self.ball, to);
        self.go(leg);
    }

    fn go(&mut self, leg: Leg) {
        let inside = leg.from + 1e-3..leg.until - 1e-3;
        if let Some(at) = leg.passes_plane().filter(|at| inside.contains(at)) {
            let below = leg.at(at).z < self.scene.net_top - 0.5 && leg.at(at).y.abs() < 5.0;
            self.event(at, if below { Act::Under } else { Act::Plane });
        }
        self.now = leg.until;
        self.ball = leg.end().at;
        self.scene.ball.push(leg);
    }

    /// The ball touches the floor here and now, and jumps up once more.
    pub fn lands(&mut self, patch: f64) {
        self.event(self.now, Act::Floor { patch });
        if let Some(leg) = self.scene.ball.last() {
            let before = leg.end().velocity;
            // A ball of this pressure comes back from the floor with a good half of its speed: from memory.
            let after = Velocity {
                x: before.x * 0.6,
                y: before.y * 0.6,
                z: -before.z * 0.55,
            };
            let time = (2.0 * after.z / crate::flight::GRAVITY * 0.95).clamp(0.2, 0.9);
            self.drift(after, time);
        }
    }

    /// How large the area is that touches the floor: drawn, within what a ball of this pressure shows (from
    /// memory).
    pub fn patch(&mut self) -> f64 {
        self.between(0.03, 0.05)
    }

    /// A player meets the ball here and now.
    pub fn meets(&mut self, player: usize, meet: Meet) {
        let side = self.scene.players[player].side;
        let ball = side.spot(self.ball);
        let (now, tall) = (self.now, self.scene.players[player].height);
        let reach = tall * share::REACH;
        let hand = |depth: f64, right: f64, height: f64| {
            let spot = Spot {
                depth: ball.depth + depth,
                right: ball.right + right,
            };
            side.point(spot, height)
        };
        let low = self.ball.z - BALL_RADIUS;
        match meet {
            Meet::Dig => {
                let spot = Spot {
                    depth: ball.depth + 0.5,
                    ..ball
                };
                let crouch = (1.3 - low).clamp(0.2, 1.0);
                let mut stance = self.ready(player, now, spot, crouch);
                stance.hands = [hand(0.03, -0.05, low), hand(0.03, 0.05, low)];
                self.scene.players[player].at(stance);
            }
            Meet::Fingers => {
                let spot = Spot {
                    depth: ball.depth + 0.15,
                    ..ball
                };
                let mut stance = self.ready(player, now, spot, 0.1);
                stance.lift = (low - reach + 0.15).max(0.0);
                stance.hands = [
                    hand(0.06, -0.08, self.ball.z - 0.06),
                    hand(0.06, 0.08, self.ball.z - 0.06),
                ];
                if stance.lift > 0.0 {
                    let before = self.ready(player, now - 0.25, spot, 0.4);
                    self.scene.players[player].at(before);
                }
                self.scene.players[player].at(stance);
            }
            Meet::Attack { take_off } => {
                let floor = Spot {
                    depth: take_off + super::body::TOE,
                    right: ball.right - 0.1,
                };
                let before = self.ready(player, now - 0.28, floor, 0.5);
                self.scene.players[player].at(before);
                let air = Spot {
                    depth: (ball.depth + 0.4).min(floor.depth),
                    right: ball.right - 0.1,
                };
                let mut top = self.ready(player, now, air, 0.0);
                top.lift = (self.ball.z - 0.02 - reach).max(0.0);
                top.hands[1] = hand(BALL_RADIUS * 0.95, 0.0, self.ball.z);
                top.hands[0].z += top.lift + 0.3;
                self.scene.players[player].at(top);
                let land = Spot {
                    depth: air.depth.max(0.45) - 0.05,
                    right: air.right,
                };
                let after = self.ready(player, now + 0.32, land, 0.5);
                self.scene.players[player].at(after);
                self.event(now, Act::Swing { player });
            }
        }
        if !matches!(meet, Meet::Attack { .. }) {
            // Afterwards upright again, about where they are.
            let stance = self.scene.players[player].stance(now);
            let spot = super::body::middle(&stance);
            let after = self.ready(player, now + 0.45, spot, 0.3);
            self.scene.players[player].at(after);
        }
    }

    /// An ordinary touch, here and now.
    pub fn touch(&mut self, player: usize, kind: TouchKind) {
        self.touch_for(player, kind, 0.0);
    }

    /// A touch for so long.
    pub fn touch_for(&mut self, player: usize, kind: TouchKind, contact: f64) {
        self.event(
            self.now,
            Act::Touch {
                player,
                kind,
                contact,
                same_action: false,
                fingers: false,
                helped_by: None,
            },
        );
    }

    /// The scene, its events in the order of time.
    pub fn finish(mut self) -> Scene {
        rules::sort_by(&mut self.scene.events, |a, b| a.at.total_cmp(&b.at));
        self.scene
    }
}
