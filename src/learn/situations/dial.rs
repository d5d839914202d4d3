//! What can be set in a situation.

/// One thing that a learner sets, by dragging it or by a control beside the drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Dial {
    /// Where along the net a hand is, in metres from the middle.
    AlongNet,
    /// How a player came to touch the net.
    NetContact,
    /// How far a hand is beyond the plane of the net, in metres.
    HandBeyond,
    /// How long after the attack hit a hand touches the ball, in seconds.
    AfterAttack,
    /// What the hand does.
    HandDoes,
    /// Whether the opponents can still attack the ball.
    Opponents,
    /// How deep in the own court a heel stands, in metres; below 0 beyond the net.
    Heel,
    /// Whether an opponent is hindered.
    Hinders,
    /// What touches the opponents' court.
    BodyPart,
    /// How far the middle of the ball is beyond the plane of the net, in metres.
    BallBeyond,
    /// What was seen of a contact.
    Contact,
    /// Whether the team's own block touched the ball before.
    OwnBlock,
    /// Who plays the ball at the first, second, third or fourth contact.
    Hitter(u8),
    /// Whether the first two contacts are one action.
    OneAction,
    /// How far the front foot of the server is from the axis of the centre line, in metres.
    ServerDepth,
    /// How far it is to the right of the middle of the court, in metres.
    ServerRight,
    /// How long after the whistle the service is hit, in seconds.
    ServiceAfter,
    /// How the ball is put into play.
    ServiceHow,
    /// From which position the server comes.
    Server,
    /// How deep in the court a player stands, in metres.
    PlayerDepth(u8),
    /// How far to the right of the middle, in metres.
    PlayerRight(u8),
    /// Which team is looked at.
    Serves,
    /// Which text of the rules is played by.
    Edition,
    /// What the player is at this moment.
    Row(u8),
    /// What ball is attacked.
    AttackedBall,
    /// How far the nearest take-off foot is from the axis of the centre line, in metres.
    TakeOff,
    /// How far the middle of the ball is from the plane of the net, in metres; below 0 beyond it.
    BallDepth,
    /// How high the middle of the ball is, in metres.
    BallHeight,
    /// How high the net is, in metres.
    NetTop,
    /// Whether the ball has crossed the net or an opponent has touched it.
    Completed,
    /// How far the libero stands from the axis of the centre line, in metres.
    LiberoDepth,
    /// How the libero passes.
    LiberoPass,
    /// How high a blocker reaches, in metres.
    Reach(u8),
    /// Whether the block touches the ball.
    BlockTouches,
    /// What ball is blocked.
    BlockedBall,
    /// Where the ball comes down along the court, in metres from the net.
    LandsAlong,
    /// And across it, in metres from the middle.
    LandsAcross,
    /// The radius of what is pressed flat, in metres.
    Patch,
    /// Who touched the ball last.
    LastTouch,
    /// How far from the middle of the net the ball crosses, in metres.
    CrossesAside,
    /// How high its middle is then, in metres.
    CrossesHeight,
    /// Which contact sent it.
    TeamHit,
    /// Where it flies.
    Towards,
    /// How tall the players before the server are, in metres.
    Tall,
    /// Whether they hold a hand above the head.
    HandsUp,
    /// How the service flies.
    ServiceFlight,
    /// When the left team's fault happens, in seconds.
    LeftFaultAt,
    /// When the right team's fault happens, in seconds.
    RightFaultAt,
    /// Whether the server's foot is on the line at the hit.
    ServerOnLine,
    /// Whether two receivers stand in each other's order.
    ReceiversSwapped,
    /// Whether the service crosses outside an antenna.
    ServiceWide,
}

/// What a dial can be set to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Scale {
    /// A length in metres.
    Metres {
        /// The least.
        from: f64,
        /// The most.
        to: f64,
        /// From one to the next.
        step: f64,
    },
    /// A time in seconds.
    Seconds {
        /// The least.
        from: f64,
        /// The most.
        to: f64,
        /// From one to the next.
        step: f64,
    },
    /// One of so many.
    Choice(u8),
}

const fn metres(from: f64, to: f64, step: f64) -> Scale {
    Scale::Metres { from, to, step }
}

const fn seconds(from: f64, to: f64, step: f64) -> Scale {
    Scale::Seconds { from, to, step }
}

impl Dial {
    /// What it can be set to. How far each goes is our own choice: as far as the drawing shows.
    #[must_use]
    pub const fn scale(self) -> Scale {
        match self {
            Dial::AlongNet => metres(2.4, 5.2, 0.01),
            Dial::HandBeyond => metres(-0.4, 0.6, 0.01),
            Dial::AfterAttack => seconds(-0.3, 0.3, 0.01),
            Dial::Heel => metres(-0.4, 0.5, 0.005),
            Dial::BallBeyond => metres(-0.6, 0.6, 0.01),
            Dial::ServerDepth => metres(8.5, 10.5, 0.01),
            Dial::ServerRight => metres(3.4, 5.2, 0.01),
            Dial::ServiceAfter => seconds(-2.0, 12.0, 0.1),
            Dial::PlayerDepth(_) => metres(0.2, 9.4, 0.05),
            Dial::PlayerRight(_) => metres(-4.9, 4.9, 0.05),
            Dial::TakeOff => metres(0.3, 4.6, 0.01),
            Dial::BallDepth => metres(-0.6, 4.6, 0.01),
            Dial::BallHeight => metres(1.6, 3.4, 0.01),
            Dial::NetTop => metres(1.98, 2.43, 0.01),
            Dial::LiberoDepth => metres(0.5, 4.6, 0.01),
            Dial::Reach(_) => metres(1.8, 3.0, 0.01),
            Dial::LandsAlong => metres(8.4, 9.6, 0.005),
            Dial::LandsAcross => metres(3.9, 5.1, 0.005),
            Dial::Patch => metres(0.005, 0.05, 0.005),
            Dial::CrossesAside => metres(3.6, 5.4, 0.01),
            Dial::CrossesHeight => metres(2.36, 3.5, 0.01),
            Dial::Tall => metres(1.5, 2.05, 0.01),
            Dial::LeftFaultAt | Dial::RightFaultAt => seconds(0.0, 1.0, 0.01),
            Dial::NetContact | Dial::ServiceHow => Scale::Choice(5),
            Dial::Hitter(_) => Scale::Choice(5),
            Dial::Server => Scale::Choice(6),
            Dial::Contact | Dial::LastTouch | Dial::TeamHit => Scale::Choice(4),
            Dial::Opponents
            | Dial::HandDoes
            | Dial::Hinders
            | Dial::BodyPart
            | Dial::OwnBlock
            | Dial::OneAction
            | Dial::Serves
            | Dial::Edition
            | Dial::AttackedBall
            | Dial::Completed
            | Dial::LiberoPass
            | Dial::BlockTouches
            | Dial::BlockedBall
            | Dial::Towards
            | Dial::HandsUp
            | Dial::ServerOnLine
            | Dial::ReceiversSwapped
            | Dial::ServiceWide
            | Dial::ServiceFlight => Scale::Choice(2),
            Dial::Row(_) => Scale::Choice(3),
        }
    }
}

/// All dials of a situation as they are set, in the order in which they are shown.
#[derive(Clone, Debug, PartialEq)]
pub struct Values(Vec<(Dial, f64)>);

impl Values {
    pub(super) fn of(all: &[(Dial, f64)]) -> Values {
        Values(all.to_vec())
    }

    /// The dials.
    pub fn dials(&self) -> impl Iterator<Item = Dial> + '_ {
        self.0.iter().map(|(dial, _)| *dial)
    }

    /// How one is set: a length, a time, or the number of a choice.
    ///
    /// # Panics
    /// For a dial that its situation does not have.
    #[must_use]
    pub fn get(&self, dial: Dial) -> f64 {
        let found = self.0.iter().find(|(of, _)| *of == dial);
        found.expect("a dial of this situation").1
    }

    /// Which of its choices one is set to.
    #[must_use]
    pub fn choice(&self, dial: Dial) -> usize {
        self.get(dial) as usize
    }

    /// Whether a dial with two choices is set to its second one, which is the one that says yes.
    #[must_use]
    pub fn is(&self, dial: Dial) -> bool {
        self.choice(dial) == 1
    }

    /// Sets one: to the nearest that its scale has. What its situation does not have stays away.
    pub fn set(&mut self, dial: Dial, value: f64) {
        let value = match dial.scale() {
            Scale::Metres { from, to, step } | Scale::Seconds { from, to, step } => {
                let steps = ((value.clamp(from, to) - from) / step).round();
                // So that 0.3 is 0.3 and not what many steps add up to.
                ((from + steps * step) * 1000.0).round() / 1000.0
            }
            Scale::Choice(count) => value.round().clamp(0.0, f64::from(count) - 1.0),
        };
        if let Some((_, set)) = self.0.iter_mut().find(|(of, _)| *of == dial) {
            *set = value;
        }
    }
}
