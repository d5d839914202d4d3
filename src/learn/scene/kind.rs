//! What a scene can be about, and how near the other answer is.

use rules::Cause;

/// A case of its own within a cause: rare on a court, so it has scenes of its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Case {
    /// Somebody jumps at the net against a service (14.5).
    ServiceBlock,
    /// A foot under the net is in the way of an opponent (11.2.2.1).
    Hindrance,
    /// The stricter form under the net that some school rules have (no published text of the federation).
    JuniorUnderNet,
}

impl Case {
    /// All of them.
    pub const ALL: [Case; 3] = [Case::ServiceBlock, Case::Hindrance, Case::JuniorUnderNet];

    /// What a referee says of its fault.
    #[must_use]
    pub const fn cause(self) -> Cause {
        match self {
            Case::ServiceBlock => Cause::BlockFault,
            Case::Hindrance | Case::JuniorUnderNet => Cause::UnderNet,
        }
    }

    const fn code(self) -> &'static str {
        match self {
            Case::ServiceBlock => "service_block",
            Case::Hindrance => "hindrance",
            Case::JuniorUnderNet => "junior_under_net",
        }
    }
}

/// What a scene is meant to show. Whoever asks for one says it; what is true of the scene only its judge says.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// The rally ends for this reason.
    Ends(Cause),
    /// It could nearly have ended for this reason, and goes on.
    GoesOn(Cause),
    /// The rally ends by such a case.
    CaseEnds(Case),
    /// It could nearly have ended by it, and goes on.
    CaseGoesOn(Case),
    /// Opponents commit faults at the same moment (6.1.2.2).
    DoubleFault,
    /// A fault of each side, one after the other (6.1.2.1).
    FirstOfTwo,
    /// A foot fault of the server and a positional fault of the receivers (7.5.2).
    ServerBeforeReceivers,
    /// A positional fault of the receivers and a service that goes out (7.5.3).
    ReceiversBeforeService,
    /// The service is hit before the whistle (12.4.5).
    BeforeTheWhistle,
}

/// What a margin is measured in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unit {
    /// Metres.
    Metres,
    /// Seconds.
    Seconds,
    /// It is seen or not; nothing is measured.
    Seen,
}

/// How far the other answer is away, from and to, in the unit of the kind.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// At least so far.
    pub from: f64,
    /// At most so far.
    pub to: f64,
}

impl Band {
    /// Whether a margin lies in it, a hundredth of a millimetre or of a millisecond aside.
    #[must_use]
    pub fn holds(self, margin: f64) -> bool {
        margin >= self.from - 1e-5 && margin <= self.to + 1e-5
    }
}

/// How hard a scene is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Level {
    /// Nobody in the hall doubts it.
    Clear,
    /// One has to look.
    Close,
    /// A few centimetres or hundredths of a second.
    Tight,
}

impl Level {
    /// All of them, the easiest first.
    pub const ALL: [Level; 3] = [Level::Clear, Level::Close, Level::Tight];

    /// The margins of this level for a kind. Our own choice: what an eye beside a court parts easily, with
    /// care, and hardly.
    #[must_use]
    pub fn band(self, kind: Kind) -> Band {
        let (from, to) = match (kind.unit(), self) {
            // Counted in one's head.
            (Unit::Seconds, level) if kind.cause() == Some(Cause::ServiceTime) => match level {
                Level::Clear => (1.0, 2.0),
                Level::Close => (0.5, 1.0),
                Level::Tight => (0.25, 0.5),
            },
            (Unit::Seconds | Unit::Seen, Level::Clear) => (0.20, 0.40),
            (Unit::Seconds | Unit::Seen, Level::Close) => (0.12, 0.20),
            (Unit::Seconds | Unit::Seen, Level::Tight) => (0.06, 0.12),
            // A body is no wider: what hides a ball hides it by less than half of that.
            (Unit::Metres, level) if kind.cause() == Some(Cause::Screen) => match level {
                Level::Clear => (0.12, 0.20),
                Level::Close => (0.06, 0.12),
                Level::Tight => (0.02, 0.06),
            },
            (Unit::Metres, Level::Clear) => (0.15, 0.30),
            (Unit::Metres, Level::Close) => (0.07, 0.15),
            (Unit::Metres, Level::Tight) => (0.02, 0.07),
        };
        Band { from, to }
    }
}

impl Kind {
    /// How many kinds there are.
    pub const COUNT: usize = 2 * (Cause::COUNT - 1) + 2 * Case::ALL.len() + 5;

    /// All of them.
    pub fn all() -> impl Iterator<Item = Kind> {
        let causes = || Cause::ALL.into_iter().filter(|c| *c != Cause::NotSaid);
        causes()
            .map(Kind::Ends)
            .chain(causes().map(Kind::GoesOn))
            .chain(Case::ALL.map(Kind::CaseEnds))
            .chain(Case::ALL.map(Kind::CaseGoesOn))
            .chain([
                Kind::DoubleFault,
                Kind::FirstOfTwo,
                Kind::ServerBeforeReceivers,
                Kind::ReceiversBeforeService,
                Kind::BeforeTheWhistle,
            ])
    }

    /// What it is written down as: a code that stays.
    #[must_use]
    pub fn code(self) -> String {
        match self {
            Kind::Ends(cause) => format!("ends_{}", cause.code()),
            Kind::GoesOn(cause) => format!("goes_on_{}", cause.code()),
            Kind::CaseEnds(case) => format!("ends_{}", case.code()),
            Kind::CaseGoesOn(case) => format!("goes_on_{}", case.code()),
            Kind::DoubleFault => "double_fault".to_owned(),
            Kind::FirstOfTwo => "first_of_two".to_owned(),
            Kind::ServerBeforeReceivers => "server_before_receivers".to_owned(),
            Kind::ReceiversBeforeService => "receivers_before_service".to_owned(),
            Kind::BeforeTheWhistle => "before_the_whistle".to_owned(),
        }
    }

    /// The kind of a code.
    #[must_use]
    pub fn from_code(code: &str) -> Option<Kind> {
        Kind::all().find(|kind| kind.code() == code)
    }

    /// The one reason that it is about.
    #[must_use]
    pub const fn cause(self) -> Option<Cause> {
        match self {
            Kind::Ends(cause) | Kind::GoesOn(cause) => Some(cause),
            Kind::CaseEnds(case) | Kind::CaseGoesOn(case) => Some(case.cause()),
            Kind::DoubleFault
            | Kind::FirstOfTwo
            | Kind::ServerBeforeReceivers
            | Kind::ReceiversBeforeService
            | Kind::BeforeTheWhistle => None,
        }
    }

    /// What the margin of its scenes is measured in, where it is measured at all: some have variants in which
    /// something is only seen.
    #[must_use]
    pub const fn unit(self) -> Unit {
        match self {
            Kind::CaseEnds(case) | Kind::CaseGoesOn(case) => match case {
                Case::Hindrance => Unit::Metres,
                Case::ServiceBlock | Case::JuniorUnderNet => Unit::Seen,
            },
            Kind::DoubleFault => Unit::Seen,
            Kind::FirstOfTwo | Kind::BeforeTheWhistle => Unit::Seconds,
            Kind::ServerBeforeReceivers | Kind::ReceiversBeforeService => Unit::Metres,
            Kind::Ends(cause) | Kind::GoesOn(cause) => match cause {
                Cause::ServiceTime | Cause::OverNet => Unit::Seconds,
                Cause::FourHits
                | Cause::DoubleContact
                | Cause::Catch
                | Cause::AssistedHit
                | Cause::ServiceToss
                | Cause::ServiceNet
                | Cause::RotationFault
                | Cause::NotSaid => Unit::Seen,
                Cause::BallIn
                | Cause::BallOut
                | Cause::BallTouched
                | Cause::NetTouch
                | Cause::UnderNet
                | Cause::AttackFault
                | Cause::BlockFault
                | Cause::LiberoFault
                | Cause::ServiceFoot
                | Cause::ServiceOut
                | Cause::Screen
                | Cause::PositionFault
                | Cause::OutsideCourt
                | Cause::Antenna
                | Cause::OutsideCrossing
                | Cause::ServiceWinner => Unit::Metres,
            },
        }
    }
}
