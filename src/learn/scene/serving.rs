//! How a service is staged, and how it is received.

use super::body::{share, Stance, TOE};
use super::stage::Stage;
use super::Act;
use crate::court::{Point, Spot, BALL_RADIUS, HALF_LENGTH};
use crate::service::ServiceExecution;

/// As a service is made.
pub(super) const ORDINARY: ServiceExecution = ServiceExecution {
    released: true,
    tosses: 1,
    one_hand: true,
};

/// What is done with the ball before the toss.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Before {
    /// The server holds it.
    Holds,
    /// The server lets it bounce once.
    Bounces,
    /// A team-mate of this position stands ready with it and gives it to the server after the whistle.
    Gets {
        /// The position.
        from: u8,
    },
}

/// How a service is made.
#[derive(Clone, Copy)]
pub(super) struct Serves {
    /// How far the toes are behind the end line, in metres.
    pub behind: f64,
    /// How far to the right of the middle of the court.
    pub right: f64,
    /// When the referee whistles, in seconds.
    pub whistle: f64,
    /// From there to the hit; below 0 before it.
    pub after: f64,
    /// How.
    pub how: ServiceExecution,
    /// What goes before.
    pub before: Before,
    /// Whether the ball is hit from below, out of the other hand's way.
    pub underhand: bool,
}

impl Default for Serves {
    /// An ordinary service that nobody has to look at.
    fn default() -> Serves {
        Serves {
            behind: 0.4,
            right: 1.0,
            whistle: 0.5,
            after: 1.6,
            how: ORDINARY,
            before: Before::Holds,
            underhand: false,
        }
    }
}

/// How high above the floor an underhand service is hit, as a share of the player's height: from memory.
const LOW_HIT: f64 = 0.5;
/// A service that is hit lower than this is one from below, in metres. Our own choice.
pub const LOW_SERVICE: f64 = 1.4;

impl Stage {
    /// An ordinary service by us, from so far behind the end line; the ball is in the air where it is hit.
    pub fn serves(&mut self, behind: f64) -> usize {
        let right = self.between(-0.5, 3.0);
        let after = self.between(1.3, 2.2);
        self.serves_so(Serves {
            behind,
            right,
            after,
            ..Serves::default()
        })
    }

    /// A service by us; the ball is where it is hit. Gives the server.
    pub fn serves_so(&mut self, so: Serves) -> usize {
        self.for_service();
        let us = self.us;
        let server = self.who(us, 1);
        let spot = Spot {
            depth: HALF_LENGTH + so.behind + TOE,
            right: so.right,
        };
        self.stands(server, spot);
        let tall = self.scene.players[server].height;
        let before = |right: f64, height: f64| {
            let at = Spot {
                depth: spot.depth - 0.3,
                right: spot.right + right,
            };
            us.point(at, height)
        };
        let (held, met, toss) = if so.underhand {
            (
                before(0.12, tall * LOW_HIT + 0.18),
                before(0.12, tall * LOW_HIT),
                0.22,
            )
        } else {
            let high = tall * share::REACH - 0.02;
            (before(0.0, tall * 0.62), before(0.12, high), 0.75)
        };
        let hit = so.whistle + so.after;
        self.event(so.whistle, Act::Whistle);
        let mate = self.prepares(server, held, met, &so, hit - toss);
        let begins = if mate.is_some() { self.now - 0.3 } else { 0.0 };
        for at in [begins, self.now] {
            let mut ready = self.ready(server, at, spot, 0.1);
            ready.hands = [self.under_ball(-0.09), self.under_ball(0.09)];
            self.scene.players[server].at(ready);
        }
        let rest = hit - self.now;
        if so.how.released {
            self.fly(met, rest);
        } else {
            // Hit out of the holding hand.
            self.carry(met, rest);
        }
        let both = !so.how.one_hand || !so.how.released;
        self.swings_at_service(server, spot, met, both, so.underhand);
        self.moves(
            server,
            self.now + 0.9,
            Spot {
                depth: HALF_LENGTH - 1.2,
                ..spot
            },
        );
        self.event(
            self.now,
            Act::ServiceHit {
                player: server,
                how: so.how,
            },
        );
        // Everybody else stands until the hit.
        for player in 0..self.scene.players.len() {
            if player != server && Some(player) != mate {
                self.stays(player, 0.0, self.now);
            }
        }
        server
    }

    /// What goes before the toss that begins at a moment; the ball is held then. Gives the team-mate who had it.
    fn prepares(
        &mut self,
        server: usize,
        held: Point,
        met: Point,
        so: &Serves,
        until: f64,
    ) -> Option<usize> {
        self.ball = held;
        match so.before {
            // Who tosses twice lets the first ball come down into the hands again.
            Before::Holds if so.how.tosses > 1 => {
                self.carry(held, (until - 1.25).max(0.1));
                let high = Point {
                    z: met.z + 0.2,
                    ..held
                };
                self.fly(high, 0.55);
                self.fly(held, 0.55);
                self.carry(held, (until - self.now).max(0.05));
                None
            }
            Before::Holds => {
                self.carry(held, until.max(0.1));
                None
            }
            Before::Bounces => {
                self.carry(held, until - 1.1);
                let floor = Point {
                    z: BALL_RADIUS,
                    ..held
                };
                self.fly(floor, 0.3);
                self.event(self.now, Act::Bounce { player: server });
                self.fly(held, 0.5);
                self.carry(held, until - self.now);
                None
            }
            Before::Gets { from } => {
                let us = self.us;
                let mate = self.who(us, from);
                let home = super::body::middle(&self.scene.players[mate].stance(0.0));
                let beside = Spot {
                    depth: HALF_LENGTH + 0.9,
                    right: so.right - 1.3,
                };
                let tall = self.scene.players[mate].height;
                let theirs = Spot {
                    depth: beside.depth - 0.3,
                    ..beside
                };
                self.ball = us.point(theirs, tall * 0.62);
                let hands = [self.under_ball(-0.12), self.under_ball(0.12)];
                self.carry(self.ball, so.whistle + 0.7);
                for at in [0.0, self.now] {
                    let ready = Stance {
                        hands,
                        ..self.ready(mate, at, beside, 0.1)
                    };
                    self.scene.players[mate].at(ready);
                }
                let to = server;
                self.event(self.now, Act::HandOver { player: mate, to });
                self.moves(mate, self.now + 2.4, home);
                self.fly(held, 0.5);
                self.carry(held, until - self.now);
                Some(mate)
            }
        }
    }

    /// The server's body at the hit, the hands at the ball.
    fn swings_at_service(
        &mut self,
        server: usize,
        spot: Spot,
        met: Point,
        both: bool,
        underhand: bool,
    ) {
        let us = self.us;
        let here = us.spot(met);
        let hand = |back: f64, aside: f64, up: f64| {
            let at = Spot {
                depth: here.depth + back,
                right: here.right + aside,
            };
            us.point(at, met.z + up)
        };
        let mut top = self.ready(server, self.now, spot, if underhand { 0.3 } else { 0.0 });
        if underhand {
            top.hands = [hand(0.1, -0.3, -0.12), hand(BALL_RADIUS * 0.7, 0.0, -0.08)];
        } else {
            top.hands[0].z += 0.2;
            top.hands[1] = hand(BALL_RADIUS * 0.9, 0.0, 0.0);
        }
        if both {
            top.hands[0] = hand(BALL_RADIUS * 0.6, -0.1, -0.07);
        }
        self.scene.players[server].at(top);
    }

    fn under_ball(&self, aside: f64) -> Point {
        let ball = self.us.spot(self.ball);
        self.us.point(
            Spot {
                depth: ball.depth + 0.02,
                right: ball.right + aside,
            },
            self.ball.z - 0.05,
        )
    }

    /// The service flies to a place in an ordinary time.
    pub fn service_flies(&mut self, aim: Point) {
        let time = self.service_time(aim);
        self.fly(aim, time);
    }

    /// How long a service flies to a place: one that is hit low has to rise above the net first.
    fn service_time(&mut self, aim: Point) -> f64 {
        let speed = if self.ball.z < LOW_SERVICE {
            self.between(8.0, 9.0)
        } else {
            self.between(12.5, 14.0)
        };
        self.ball.distance(aim) / speed
    }

    /// The receivers play the service on.
    pub fn received(&mut self) {
        let at = Spot {
            depth: self.between(5.4, 7.0),
            right: self.between(-2.8, 2.8),
        };
        self.received_at(at, 0.8);
    }

    /// They play it on there, so high above the floor.
    pub fn received_at(&mut self, at: Spot, height: f64) {
        let them = self.them();
        let time = self.service_time(them.point(at, height));
        self.saved(them, at, height, time, &[]);
    }
}
