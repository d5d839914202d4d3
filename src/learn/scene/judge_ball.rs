//! What is true of touches of the ball and of its crossing the net.

use super::body::middle;
use super::judge::{cause_of, Judge, Judged, Rank, CAUGHT};
use super::{Act, Event, Player};
use crate::attack::{attack, Attack, Attacked, Row};
use crate::block::{block, Block, Blocked, Blocker};
use crate::court::{End, Foot, ATTACK_LINE, BALL_RADIUS, HALF_LENGTH, HALF_WIDTH};
use crate::crossing::{below_the_net, crossing, Crossing, TeamHit};
use crate::hits::{hits, Manner, Touch, TouchKind};
use crate::landing::{above_the_floor, landing, FloorContact, LastTouch, LastTouchKind};
use crate::net_contact::{hand_over_net, HandOver};
use crate::ruling::{Call, Margin};
use rules::Cause;

/// A contact that is longer than this is seen to be long, in seconds. Our own choice.
const LONG_CONTACT: f64 = 0.05;
/// Two players who touch the ball within this time touch it at once, in seconds. Our own choice.
const TOGETHER: f64 = 0.02;
/// A ball that is played lower than this was nearly on the floor, in metres. Our own choice.
const LOW: f64 = 0.5;
/// How long an attacker's swing after a block belongs to the same ball, in seconds. Our own choice.
const SAME_BALL: f64 = 0.8;
/// How far an antenna stands above the net, in metres (2.4).
const ANTENNA: f64 = 0.8;
/// Players of one block are no farther from each other than this along the net, in metres (14.1.4 says close
/// together; the number is our own choice).
const CLOSE_TOGETHER: f64 = 1.3;

impl Judge<'_> {
    pub(super) fn touch(&mut self, event: &Event) {
        let Event {
            at,
            act:
                Act::Touch {
                    player,
                    kind,
                    contact,
                    same_action,
                    fingers,
                    helped_by,
                },
        } = *event
        else {
            return;
        };
        let scene = self.scene;
        let who = &scene.players[player];
        let (by, ball) = (who.side, scene.ball_at(at));
        if let Some((attack, hit_at, attacker)) = self.pending.take() {
            if attack.by != by {
                self.attacked(at, attack, hit_at, attacker);
            }
        }
        let gap = ball.z - BALL_RADIUS;
        if let Some(last) = self.last.filter(|_| kind == TouchKind::Hit && gap < LOW) {
            let there = FloorContact {
                at: ball,
                patch: 0.0,
            };
            let about = cause_of(landing(there, last)).unwrap_or(Cause::BallIn);
            self.say(at, about, above_the_floor(gap), Some(player));
        }
        // What is held long enough is caught from then on.
        let caught = contact >= CAUGHT;
        let same_player = self
            .touches
            .last()
            .is_some_and(|t| t.by == by && t.player == number(player));
        self.touches.push(Touch {
            by,
            player: number(player),
            kind,
            manner: if helped_by.is_some() {
                Manner::Helped
            } else if caught {
                Manner::Caught
            } else {
                Manner::Rebounds
            },
            with_last: at - self.touched_at < TOGETHER && !same_player,
            same_action,
        });
        self.touched_at = at;
        let ruling = hits(&self.touches);
        let contacts = self.touches.iter().rev().take_while(|t| t.by == by).count();
        if ruling.is_fault() {
            let at = if caught { at + CAUGHT } else { at };
            self.say(at, Cause::FourHits, ruling, Some(player));
            // It is said once: whoever touches the ball after it does nothing wrong by that.
            self.touches.clear();
        } else if contact > LONG_CONTACT {
            self.say(at, Cause::Catch, ruling, Some(player));
        } else if same_player {
            self.say(at, Cause::DoubleContact, ruling, Some(player));
        } else if kind == TouchKind::Hit && contacts > 3 {
            self.say(at, Cause::FourHits, ruling, Some(player));
        }
        self.hand_over(at, player, kind);
        match kind {
            TouchKind::Block => self.block(at, player, true),
            TouchKind::Hit => {
                let nearest = nearest_foot(&who.planted(at));
                let attacked = match self.last.map(|last| last.kind) {
                    Some(LastTouchKind::Service) => Attacked::Service,
                    _ if self.libero_pass => Attacked::LiberoFingerPass,
                    _ => Attacked::Other,
                };
                let hit = Attack {
                    by,
                    row: who.row,
                    ball: attacked,
                    take_off: nearest,
                    ball_depth: by.spot(ball).depth,
                    ball_height: ball.z,
                    net_top: scene.net_top,
                    completed: true,
                };
                self.pending = Some((hit, at, player));
            }
        }
        let in_front = nearest_foot(&who.planted(at)) <= ATTACK_LINE;
        self.libero_pass = who.row == Row::Libero && fingers && in_front;
        self.last = Some(LastTouch {
            by,
            kind: match kind {
                TouchKind::Block => LastTouchKind::Block,
                TouchKind::Hit => LastTouchKind::Defence,
            },
        });
    }

    /// A hit has become an attack hit.
    fn attacked(&mut self, at: f64, hit: Attack, hit_at: f64, player: usize) {
        let ruling = attack(hit);
        let about = match (hit.ball, hit.row) {
            (_, Row::Libero) | (Attacked::LiberoFingerPass, _) => Cause::LiberoFault,
            (Attacked::Service, _) | (Attacked::Other, Row::Back) => Cause::AttackFault,
            (Attacked::Other, Row::Front) if self.passed_from_behind(hit_at, hit.by) => {
                Cause::LiberoFault
            }
            (Attacked::Other, Row::Front) if ruling.is_fault() => Cause::OverNet,
            (Attacked::Other, Row::Front) => return,
        };
        self.note(
            Rank::After,
            Judged {
                at,
                moment: hit_at,
                about: cause_of(ruling).unwrap_or(about),
                ruling,
                player: Some(player),
            },
        );
    }

    /// Whether the touch before this moment was a finger pass of the libero from behind the front zone.
    fn passed_from_behind(&self, hit_at: f64, by: End) -> bool {
        let before = self.scene.events.iter().rev().filter(|e| e.at < hit_at);
        let mut touches = before.filter_map(|e| match e.act {
            Act::Touch {
                player, fingers, ..
            } => Some((e.at, player, fingers)),
            _ => None,
        });
        touches.next().is_some_and(|(at, player, fingers)| {
            let who = &self.scene.players[player];
            fingers
                && who.side == by
                && who.row == Row::Libero
                && nearest_foot(&who.planted(at)) > ATTACK_LINE
        })
    }

    fn hand_over(&mut self, at: f64, player: usize, kind: TouchKind) {
        let scene = self.scene;
        let who = &scene.players[player];
        let ball = scene.ball_at(at);
        let [a, b] = who.stance(at).hands;
        let hand = if a.distance(ball) < b.distance(ball) {
            a
        } else {
            b
        };
        let beyond = -who.side.spot(hand).depth;
        let blocks = kind == TouchKind::Block;
        // Far from the net nobody asks, and a block on the own side is free at any time.
        if beyond < -0.3 || (blocks && beyond <= 0.0) {
            return;
        }
        let of_others = |p: usize| scene.players[p].side != who.side;
        let swings = scene.events.iter().filter_map(|e| match e.act {
            Act::Swing { player } if of_others(player) => Some(e.at),
            _ => None,
        });
        let mut later = swings.filter(|swing| *swing > at && *swing < at + SAME_BALL);
        let hit = scene.events.iter().rev().find_map(|e| match e.act {
            Act::Touch { player, .. } if e.at < at && of_others(player) => Some(e.at),
            Act::ServiceHit { player, .. } if e.at < at && of_others(player) => Some(e.at),
            _ => None,
        });
        let ruling = hand_over_net(HandOver {
            by: who.side,
            beyond,
            after_attack: later.next().or(hit).map(|attack| at - attack),
            blocks,
        });
        self.say(at, Cause::OverNet, ruling, Some(player));
    }

    pub(super) fn block(&mut self, at: f64, player: usize, touched: bool) {
        let scene = self.scene;
        let who = &scene.players[player];
        let of = |p: &Player| middle(&p.stance(at));
        let here = of(who);
        let in_it = |p: &&Player| {
            of(p).depth < CLOSE_TOGETHER && (of(p).right - here.right).abs() < CLOSE_TOGETHER
        };
        let action = Block {
            by: who.side,
            players: scene
                .side(who.side)
                .filter(in_it)
                .map(|p| Blocker {
                    row: p.row,
                    reach: p.highest(at),
                })
                .collect(),
            touched,
            ball: match self.last.map(|last| last.kind) {
                Some(LastTouchKind::Service) => Blocked::Service,
                _ => Blocked::Other,
            },
            net_top: scene.net_top,
        };
        let ruling = block(&action);
        // Where nobody of the back row is near an ordinary block there is nothing to say.
        if ruling.call == Call::PlayOn && ruling.rule == "14.1" && ruling.margin == Margin::Seen {
            return;
        }
        let with = |row| action.players.iter().any(|p| p.row == row);
        let (about, row) = if with(Row::Libero) {
            (Cause::LiberoFault, Row::Libero)
        } else {
            (Cause::BlockFault, Row::Back)
        };
        let culprit = scene
            .players
            .iter()
            .position(|p| p.side == who.side && p.row == row && in_it(&p));
        self.say(at, about, ruling, culprit.or(Some(player)));
    }

    pub(super) fn plane(&mut self, at: f64) {
        let Some(last) = self.last else { return };
        let scene = self.scene;
        let ball = scene.ball_at(at);
        let leg = scene.ball.iter().find(|leg| at < leg.until);
        let Some(leg) = leg.or(scene.ball.last()) else {
            return;
        };
        let from = End::of(leg.begin().at.x - leg.end().at.x);
        if last.by == from && last.kind == LastTouchKind::Defence {
            let kind = LastTouchKind::Attack;
            self.last = Some(LastTouch { kind, ..last });
        }
        let team = self.touches.iter().rev().take_while(|t| t.by == last.by);
        let hit = match team.filter(|t| t.kind == TouchKind::Hit).count() {
            _ if last.kind == LastTouchKind::Service => TeamHit::Service,
            0 | 1 => TeamHit::First,
            2 => TeamHit::Second,
            _ => TeamHit::Third,
        };
        let beside = (ball.y.abs() - HALF_WIDTH).abs() < BALL_RADIUS;
        let low = ball.z < scene.net_top + ANTENNA + BALL_RADIUS;
        let end = leg.end().at;
        let ruling = crossing(
            Crossing {
                from,
                aside: ball.y,
                hit,
                touches_antenna: beside && low,
                towards_free_zone: end.y.abs() > HALF_WIDTH || end.x.abs() > HALF_LENGTH,
            },
            scene.edition,
        );
        let about = match ruling.rule {
            "10.1.1" if low => Cause::Antenna,
            _ => Cause::OutsideCrossing,
        };
        let by = scene.events.iter().rev().find_map(|event| match event.act {
            Act::Touch { player, .. } if event.at < at => Some(player),
            _ => None,
        });
        self.say(at, about, ruling, by);
        self.dead = ruling.is_fault();
        if let Some((attack, hit_at, attacker)) = self.pending.take() {
            if attack.by == from {
                self.attacked(at, attack, hit_at, attacker);
            }
        }
    }

    pub(super) fn under(&mut self, at: f64) {
        let Some(last) = self.last else { return };
        let scene = self.scene;
        let leg = scene.ball.iter().find(|leg| at < leg.until);
        let Some(leg) = leg.or(scene.ball.last()) else {
            return;
        };
        let beyond = |time: f64| -last.by.spot(leg.at(time)).depth;
        let mut farthest = (at, beyond(at));
        let mut passed = None;
        let mut time = at;
        while time < leg.until {
            time = (time + 0.005).min(leg.until);
            let now = beyond(time);
            if now > farthest.1 {
                farthest = (time, now);
            }
            if passed.is_none() && now > BALL_RADIUS {
                passed = Some(time);
            }
        }
        let ruling = below_the_net(last.by, farthest.1);
        self.dead = ruling.is_fault();
        self.note(
            Rank::After,
            Judged {
                at: passed.unwrap_or(at),
                moment: farthest.0,
                about: Cause::UnderNet,
                ruling,
                player: None,
            },
        );
    }
}

fn nearest_foot(feet: &[Foot; 2]) -> f64 {
    feet[0].nearest().min(feet[1].nearest())
}

/// A player as the counting of hits knows them.
fn number(player: usize) -> u8 {
    u8::try_from(player).unwrap_or(u8::MAX)
}
