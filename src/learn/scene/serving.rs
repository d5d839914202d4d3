//! How a service is staged, and how it is received.

use super::body::{share, TOE};
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
}

impl Stage {
    /// An ordinary service by us, from so far behind the end line; the ball is in the air where it is hit.
    pub fn serves(&mut self, behind: f64) -> usize {
        let right = self.between(-0.5, 3.0);
        let after = self.between(1.3, 2.2);
        self.serves_so(Serves {
            behind,
            right,
            whistle: 0.5,
            after,
            how: ORDINARY,
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
        let chest = us.point(
            Spot {
                depth: spot.depth - 0.3,
                ..spot
            },
            tall * 0.62,
        );
        let above = us.point(
            Spot {
                depth: spot.depth - 0.3,
                right: spot.right + 0.12,
            },
            tall * share::REACH - 0.02,
        );
        let hit = so.whistle + so.after;
        let toss = 0.75;
        self.ball = chest;
        self.event(so.whistle, Act::Whistle);
        // Who tosses twice lets the first ball come down into the hands again.
        if so.how.tosses > 1 {
            self.carry(chest, (hit - toss - 1.25).max(0.1));
            let high = Point {
                z: above.z + 0.2,
                ..chest
            };
            self.fly(high, 0.55);
            self.fly(chest, 0.55);
            self.carry(chest, (hit - toss - self.now).max(0.05));
        } else {
            self.carry(chest, (hit - toss).max(0.1));
        }
        for at in [0.0, self.now] {
            let mut ready = self.ready(server, at, spot, 0.1);
            ready.hands = [self.under_ball(-0.09), self.under_ball(0.09)];
            self.scene.players[server].at(ready);
        }
        let rest = hit - self.now;
        if so.how.released {
            self.fly(above, rest);
        } else {
            // Hit out of the holding hand.
            self.carry(above, rest);
        }
        let mut top = self.ready(server, self.now, spot, 0.0);
        top.hands[1] = us.point(
            Spot {
                depth: spot.depth - 0.3 + BALL_RADIUS * 0.9,
                right: spot.right + 0.12,
            },
            above.z,
        );
        top.hands[0].z += 0.2;
        if !so.how.one_hand || !so.how.released {
            top.hands[0] = us.point(
                Spot {
                    depth: spot.depth - 0.3 + BALL_RADIUS * 0.6,
                    right: spot.right + 0.02,
                },
                above.z - 0.07,
            );
        }
        self.scene.players[server].at(top);
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
            if player != server {
                self.stays(player, 0.0, self.now);
            }
        }
        server
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
        let time = self.ball.distance(aim) / self.between(12.5, 14.0);
        self.fly(aim, time);
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
        let time = self.ball.distance(them.point(at, height)) / self.between(12.5, 14.0);
        self.saved(them, at, height, time, &[]);
    }
}
