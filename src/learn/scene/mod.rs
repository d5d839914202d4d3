//! Scenes of a rally: a few seconds of play, drawn from a seed.
//!
//! A scene holds where everybody and the ball are at each moment, and what was seen that places alone do not
//! say: who touched the ball, how, and which part of the body met the net or the floor. It holds no answer.
//! What is true of it, [`judge`] asks the decision functions; [`draw`] throws a scene away whose truth is not
//! the one that was wanted, or in which the ball flies through something.

mod at_the_net;
mod attacks;
mod beside;
mod body;
mod cases;
mod draw;
mod figure;
mod how_hits;
mod judge;
mod judge_ball;
mod kind;
mod landings;
mod measure;
mod path;
mod picture;
mod rally;
mod services;
mod serving;
mod several;
mod sound;
mod stage;
mod standing;
mod view;

pub use body::{Player, Stance};
pub use draw::{draw, Drawn, Thrown};
pub use figure::Figure;
pub use judge::{judge, Judged, Verdict, CAUGHT};
pub use kind::{Band, Case, Kind, Level, Unit};
pub use measure::measure;
pub use path::Leg;
pub use picture::{picture, Look, Shape, Tone};
pub use serving::LOW_SERVICE;
pub use sound::{unsound, Unsound};
pub use view::{gaze, Place, Seen, View};

use super::centre_line::BodyPart;
use super::court::{End, Point};
use super::hits::TouchKind;
use super::service::ServiceExecution;
use rules::{Edition, UnderNet};

/// A few seconds of play.
#[derive(Clone, Debug, PartialEq)]
pub struct Scene {
    /// How high the top of the net is, in metres.
    pub net_top: f64,
    /// Which text of the rules is played by.
    pub edition: Edition,
    /// Which form of the rule under the net.
    pub under_net: UnderNet,
    /// How long a server may wait after the whistle, in seconds.
    pub service_seconds: f64,
    /// Who serves, or served.
    pub serving: End,
    /// The shirt whose turn to serve it is.
    pub due: u8,
    /// Six on each side.
    pub players: Vec<Player>,
    /// The way of the ball, without a gap.
    pub ball: Vec<Leg>,
    /// What happens, in the order of time.
    pub events: Vec<Event>,
}

/// Something that happens.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Event {
    /// When, in seconds from the beginning of the scene.
    pub at: f64,
    /// What.
    pub act: Act,
}

/// What can happen; players by their place in [`Scene::players`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Act {
    /// The first referee whistles for the service.
    Whistle,
    /// A player lets the ball bounce on the floor before the toss.
    Bounce {
        /// Who.
        player: usize,
    },
    /// A player who stood ready with the ball gives it to the one who will serve.
    HandOver {
        /// Who.
        player: usize,
        /// To whom.
        to: usize,
    },
    /// The service is hit, in this way.
    ServiceHit {
        /// By whom.
        player: usize,
        /// How.
        how: ServiceExecution,
    },
    /// A player touches the ball.
    Touch {
        /// Who.
        player: usize,
        /// In what.
        kind: TouchKind,
        /// How long the ball stays with the player, in seconds.
        contact: f64,
        /// Whether it belongs to the same action as the player's touch before.
        same_action: bool,
        /// Whether the fingers of raised hands pass it.
        fingers: bool,
        /// Who helps the player to reach it (9.1.3).
        helped_by: Option<usize>,
    },
    /// An attacker's arm swings at the ball, whether it is still there or not.
    Swing {
        /// Who.
        player: usize,
    },
    /// A player tries to block and does not touch the ball.
    BlockAttempt {
        /// Who.
        player: usize,
    },
    /// The middle of the ball passes the plane of the net above or beside the net.
    Plane,
    /// The ball touches the net.
    Net,
    /// The middle of the ball passes the plane below the net.
    Under,
    /// The ball touches the floor.
    Floor {
        /// The radius of the area that touches, in metres.
        patch: f64,
    },
    /// A hand touches the net.
    NetTouch {
        /// Whose.
        player: usize,
        /// Which: 0 or 1 of [`Stance::hands`].
        hand: usize,
        /// Whether in the action of playing the ball (11.3.1).
        in_action: bool,
        /// Whether only hair, not the hand (casebook 3.27).
        hair_only: bool,
    },
    /// A foot comes down on the opponents' court or on the centre line.
    FootDown {
        /// Whose.
        player: usize,
        /// Which: 0 or 1 of [`Stance::feet`].
        foot: usize,
    },
    /// Another part of the body touches the opponents' court.
    BodyDown {
        /// Whose.
        player: usize,
        /// Which part.
        part: BodyPart,
    },
    /// A foot that is over the centre line and an opponent's touch.
    Contact {
        /// Whose foot.
        player: usize,
        /// Which: 0 or 1 of [`Stance::feet`].
        foot: usize,
        /// The opponent.
        with: usize,
        /// Whether that keeps the opponent from playing the ball.
        hinders: bool,
    },
    /// A player holds back a team-mate who was about to commit a fault (9.1.3).
    HeldBack {
        /// Who is held.
        player: usize,
        /// By whom.
        by: usize,
    },
}

impl Scene {
    /// When the scene ends, in seconds: with the way of the ball.
    #[must_use]
    pub fn until(&self) -> f64 {
        self.ball.last().map_or(0.0, |leg| leg.until)
    }

    /// Where the middle of the ball is.
    #[must_use]
    pub fn ball_at(&self, time: f64) -> Point {
        self.leg_at(time).at(time)
    }

    /// The part of its way on which the ball is; at a touch the one that ends there.
    ///
    /// # Panics
    /// Where the scene has no ball, which [`draw`] never gives.
    #[must_use]
    pub fn leg_at(&self, time: f64) -> &Leg {
        let leg = self.ball.iter().find(|leg| time <= leg.until);
        leg.or(self.ball.last()).expect("a scene has a ball")
    }

    /// The players of one side.
    pub fn side(&self, side: End) -> impl Iterator<Item = &Player> {
        self.players.iter().filter(move |p| p.side == side)
    }

    /// The player of a side who stands in a position of the rotational order.
    #[must_use]
    pub fn in_position(&self, side: End, position: u8) -> Option<&Player> {
        self.side(side).find(|p| p.position == position)
    }
}
