//! What is true of a scene: the decision functions, asked about its events in the order of time.

use super::standing::stands_at_the_hit;
use super::{Act, Event, Scene};
use crate::attack::Attack;
use crate::centre_line::{body_on_opponents_court, foot_over_centre_line};
use crate::hits::{held_back, Touch};
use crate::landing::{landing, FloorContact, LastTouch, LastTouchKind};
use crate::net_contact::{net_contact, NetContact};
use crate::order::{at_the_service, first_fault, Timed};
use crate::ruling::{Call, Ruling};
use crate::service::service_at_the_net;
use rules::Cause;

/// A ball that stays with a player so long, in seconds, is caught, and not hit. The rules leave it to the eye
/// (9.2.2); this is our own choice, far from both what a scene shows as a hit and what it shows as a catch.
pub const CAUGHT: f64 = 0.15;

/// One thing that was looked at.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Judged {
    /// From when on it is what it is, in seconds: a fault may be whistled from then on.
    pub at: f64,
    /// The moment to look at.
    pub moment: f64,
    /// Which fault it is, or would have been.
    pub about: Cause,
    /// What the decision function says.
    pub ruling: Ruling,
    /// Who did it, by the place in [`Scene::players`].
    pub player: Option<usize>,
}

/// What is true of a scene.
#[derive(Clone, Debug, PartialEq)]
pub struct Verdict {
    /// What is decided.
    pub ruling: Ruling,
    /// The thing that decides it, by its place in [`Verdict::all`]; none where play goes on.
    pub deciding: Option<usize>,
    /// Everything that was looked at, in the order of time.
    pub all: Vec<Judged>,
}

impl Verdict {
    /// The thing that decides; none where play goes on.
    #[must_use]
    pub fn decided_by(&self) -> Option<&Judged> {
        self.deciding.and_then(|index| self.all.get(index))
    }
}

/// Where a judgement belongs in the order of precedence at the service (7.5.2, 7.5.3, 12.7).
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Rank {
    AtTheHit,
    Positions,
    After,
}

pub(super) struct Judge<'a> {
    pub(super) scene: &'a Scene,
    judged: Vec<(Rank, Judged)>,
    pub(super) touches: Vec<Touch>,
    pub(super) touched_at: f64,
    pub(super) last: Option<LastTouch>,
    /// A hit that becomes an attack hit when the ball has crossed the net.
    pub(super) pending: Option<(Attack, f64, usize)>,
    /// The ball is out of play: nothing is a fault any more.
    pub(super) dead: bool,
    /// The ball comes from the raised fingers of the own libero inside the front zone.
    pub(super) libero_pass: bool,
}

/// Runs over the events of a scene. It stops where the ball is dead: after that nothing is a fault any more.
#[must_use]
pub fn judge(scene: &Scene) -> Verdict {
    let mut judge = Judge {
        scene,
        judged: Vec::new(),
        touches: Vec::new(),
        touched_at: f64::NEG_INFINITY,
        last: None,
        pending: None,
        dead: false,
        libero_pass: false,
    };
    for event in &scene.events {
        judge.event(event);
        if judge.dead {
            break;
        }
    }
    judge.conclude()
}

impl Judge<'_> {
    pub(super) fn note(&mut self, rank: Rank, judged: Judged) {
        self.judged.push((rank, judged));
    }

    /// Notes what is decided about this moment, after the service hit.
    pub(super) fn say(&mut self, at: f64, about: Cause, ruling: Ruling, player: Option<usize>) {
        self.note(
            Rank::After,
            Judged {
                at,
                moment: at,
                about: cause_of(ruling).unwrap_or(about),
                ruling,
                player,
            },
        );
    }

    fn event(&mut self, event: &Event) {
        let Event { at, act } = *event;
        let scene = self.scene;
        match act {
            Act::Whistle | Act::Bounce { .. } | Act::HandOver { .. } | Act::Swing { .. } => {}
            Act::ServiceHit { player, how } => {
                stands_at_the_hit(self, at, player, how);
                let by = scene.players[player].side;
                let kind = LastTouchKind::Service;
                self.last = Some(LastTouch { by, kind });
            }
            Act::Touch { .. } => self.touch(event),
            Act::BlockAttempt { player } => self.block(at, player, false),
            Act::Plane => self.plane(at),
            Act::Net => {
                if let Some((by, LastTouchKind::Service)) = self.last.map(|l| (l.by, l.kind)) {
                    let after = scene.events.iter().filter(|e| e.at > at);
                    let mut next = after.filter(|e| {
                        matches!(e.act, Act::Plane | Act::Touch { .. } | Act::Floor { .. })
                    });
                    let crosses = next.next().is_some_and(|e| e.act == Act::Plane);
                    self.say(at, Cause::ServiceNet, service_at_the_net(by, crosses), None);
                }
            }
            Act::Under => self.under(at),
            Act::Floor { patch } => {
                if let Some(last) = self.last {
                    let contact = FloorContact {
                        at: scene.ball_at(at),
                        patch,
                    };
                    self.say(at, Cause::BallIn, landing(contact, last), None);
                }
                self.dead = true;
            }
            Act::NetTouch {
                player,
                hand,
                in_action,
                hair_only,
            } => {
                let who = &scene.players[player];
                let driven = |e: &Event| e.act == Act::Net && (0.0..0.1).contains(&(at - e.at));
                let touch = NetContact {
                    by: who.side,
                    aside: who.stance(at).hands[hand].y,
                    in_action,
                    driven_by_ball: scene.events.iter().any(driven),
                    interferes: false,
                    hair_only,
                };
                self.say(at, Cause::NetTouch, net_contact(touch), Some(player));
            }
            Act::FootDown { player, foot } => self.foot(at, player, foot, false),
            Act::Contact {
                player,
                foot,
                hinders,
                ..
            } => {
                // A touch alone is no interference (casebook 3.14 to 3.17).
                if hinders {
                    self.foot(at, player, foot, true);
                }
            }
            Act::BodyDown { player, part } => {
                let side = scene.players[player].side;
                let ruling = body_on_opponents_court(side, part, false, scene.under_net);
                self.say(at, Cause::UnderNet, ruling, Some(player));
            }
            Act::HeldBack { player, .. } => {
                self.say(at, Cause::AssistedHit, held_back(), Some(player));
            }
        }
    }

    /// A foot over the centre line.
    fn foot(&mut self, at: f64, player: usize, foot: usize, hinders: bool) {
        let who = &self.scene.players[player];
        let foot = who.stance(at).feet[foot];
        let ruling = foot_over_centre_line(who.side, foot, hinders);
        self.say(at, Cause::UnderNet, ruling, Some(player));
    }

    fn conclude(self) -> Verdict {
        let mut judged = self.judged;
        rules::sort_by(&mut judged, |a, b| a.1.at.total_cmp(&b.1.at));
        let of = |rank: Rank| {
            let of_rank: Vec<&Judged> = judged
                .iter()
                .filter(|(r, _)| *r == rank)
                .map(|(_, j)| j)
                .collect();
            let again = of_rank.iter().find(|j| j.ruling.call == Call::Replay);
            let timed: Vec<Timed> = of_rank
                .iter()
                .map(|j| Timed {
                    at: j.at,
                    ruling: j.ruling,
                })
                .collect();
            again.map_or_else(|| first_fault(&timed), |again| again.ruling)
        };
        let [hit, positions, after] = [Rank::AtTheHit, Rank::Positions, Rank::After].map(of);
        let ruling = at_the_service(hit, positions, after);
        let prevails = [
            (hit, Rank::AtTheHit),
            (positions, Rank::Positions),
            (after, Rank::After),
        ]
        .into_iter()
        .find(|(ruling, _)| ruling.call != Call::PlayOn);
        let deciding = prevails.and_then(|(_, rank)| {
            judged
                .iter()
                .position(|(r, j)| *r == rank && j.ruling.call != Call::PlayOn)
        });
        Verdict {
            ruling,
            deciding,
            all: judged.into_iter().map(|(_, j)| j).collect(),
        }
    }
}

/// The cause of a fault.
pub(super) fn cause_of(ruling: Ruling) -> Option<Cause> {
    match ruling.call {
        Call::Fault { cause, .. } => Some(cause),
        Call::PlayOn | Call::Replay => None,
    }
}
