//! The ways in which a team holds play up, as they are asked for (Official Volleyball Rules 2025-2028, 15.11 and
//! chapter 16).

use game::Kind;
use rules::Team;

/// What happened.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Delaying {
    /// A request that could not be granted and held nobody up.
    Improper,
    /// A request that held play up.
    Request,
    /// Any other delay.
    Other,
    /// A libero replacement after the whistle and before the service hit (19.3.2.5, 19.3.2.6).
    LateReplacement,
}

impl Delaying {
    /// The entry.
    #[must_use]
    pub fn kind(self, team: Team) -> Kind {
        match self {
            Delaying::Improper => Kind::ImproperRequest { team },
            Delaying::Request => Kind::Delay {
                team,
                request: true,
            },
            Delaying::Other => Kind::Delay {
                team,
                request: false,
            },
            Delaying::LateReplacement => Kind::LateReplacement { team },
        }
    }

    /// The other half of the judgement: whether a request held play up.
    #[must_use]
    pub const fn instead(self) -> Option<Delaying> {
        match self {
            Delaying::Improper => Some(Delaying::Request),
            Delaying::Request => Some(Delaying::Improper),
            Delaying::Other | Delaying::LateReplacement => None,
        }
    }
}
