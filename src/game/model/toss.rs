//! The toss, and what the captains choose after it (7.1.2).

use rules::Team;

/// The outcome of a toss.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Toss {
    /// Who serves first.
    pub first_service: Team,
    /// Who starts on the left, seen from the stand.
    pub left: Team,
    /// Who won it and what about that captain chose, where it was noted.
    pub won: Option<Won>,
}

impl Toss {
    /// An outcome of which is not noted who chose it.
    #[must_use]
    pub const fn new(first_service: Team, left: Team) -> Toss {
        Toss {
            first_service,
            left,
            won: None,
        }
    }
}

/// Who won a toss, and about which of the two things that captain chose; the other captain had the
/// other (7.1.2). What was chosen follows from the outcome.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Won {
    /// The team.
    pub by: Team,
    /// What its captain chose about.
    pub chose: About,
}

/// What can be chosen about after a toss (7.1.2).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum About {
    /// To serve or to receive.
    Service,
    /// The side of the court.
    Side,
}

rules::codes!(About {
    Service = "service",
    Side = "side",
});

/// What a captain can choose (7.1.2).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Choice {
    /// To serve first.
    Serve,
    /// To receive first.
    Receive,
    /// The side left of the stand.
    Left,
    /// The side right of the stand.
    Right,
}

impl Choice {
    /// All of them.
    pub const ALL: [Choice; 4] = [Choice::Serve, Choice::Receive, Choice::Left, Choice::Right];

    /// What it is a choice about.
    #[must_use]
    pub const fn about(self) -> About {
        match self {
            Choice::Serve | Choice::Receive => About::Service,
            Choice::Left | Choice::Right => About::Side,
        }
    }

    /// The team that this gives the first service, or the left side, if `team` chooses it.
    const fn goes_to(self, team: Team) -> Team {
        match self {
            Choice::Serve | Choice::Left => team,
            Choice::Receive | Choice::Right => team.other(),
        }
    }
}

/// The choices after a toss: the winner's first, then the other captain's of what is left (7.1.2).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Choosing {
    winner: Team,
    first: Option<Choice>,
    second: Option<Choice>,
}

impl Choosing {
    /// Nothing is chosen yet.
    #[must_use]
    pub const fn after(winner: Team) -> Choosing {
        Choosing {
            winner,
            first: None,
            second: None,
        }
    }

    /// Who won.
    #[must_use]
    pub const fn winner(&self) -> Team {
        self.winner
    }

    /// What the winner has chosen.
    #[must_use]
    pub const fn first(&self) -> Option<(Team, Choice)> {
        match self.first {
            Some(choice) => Some((self.winner, choice)),
            None => None,
        }
    }

    /// Whose turn it is, and what there is to choose from; none once both have chosen.
    #[must_use]
    pub fn asks(&self) -> Option<(Team, Vec<Choice>)> {
        match (self.first, self.second) {
            (None, _) => Some((self.winner, Choice::ALL.to_vec())),
            (Some(first), None) => {
                let mut rest = Choice::ALL.to_vec();
                rest.retain(|choice| choice.about() != first.about());
                Some((self.winner.other(), rest))
            }
            (Some(_), Some(_)) => None,
        }
    }

    /// The same after the captain whose turn it is has chosen; unchanged by what is not to be had.
    #[must_use]
    pub fn with(mut self, choice: Choice) -> Choosing {
        if self.asks().is_some_and(|(_, of)| of.contains(&choice)) {
            let place = if self.first.is_none() {
                &mut self.first
            } else {
                &mut self.second
            };
            *place = Some(choice);
        }
        self
    }

    /// What comes of it, once both have chosen.
    #[must_use]
    pub fn outcome(&self) -> Option<Toss> {
        let (first, second) = (self.first?, self.second?);
        let chosen = [
            first.goes_to(self.winner),
            second.goes_to(self.winner.other()),
        ];
        let chose = first.about();
        let [first_service, left] = match chose {
            About::Service => chosen,
            About::Side => [chosen[1], chosen[0]],
        };
        Some(Toss {
            first_service,
            left,
            won: Some(Won {
                by: self.winner,
                chose,
            }),
        })
    }
}

impl Toss {
    /// What `won` chose, if this was the outcome.
    #[must_use]
    pub fn choice_of(&self, won: Won) -> Choice {
        match won.chose {
            About::Service if self.first_service == won.by => Choice::Serve,
            About::Service => Choice::Receive,
            About::Side if self.left == won.by => Choice::Left,
            About::Side => Choice::Right,
        }
    }

    /// Who won it and what that captain chose, where it was noted.
    #[must_use]
    pub fn chosen(&self) -> Option<(Team, Choice)> {
        self.won.map(|won| (won.by, self.choice_of(won)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_winner_chooses_and_the_other_captain_has_the_rest() {
        for winner in Team::BOTH {
            for first in Choice::ALL {
                let begun = Choosing::after(winner).with(first);
                assert_eq!(begun.first(), Some((winner, first)));
                assert_eq!(begun.outcome(), None);
                let (loser, rest) = begun.asks().expect("the other captain's turn");
                assert_eq!((loser, rest.len()), (winner.other(), 2));
                // What is taken is not to be had.
                assert_eq!(begun.with(first), begun);
                for second in rest {
                    let done = begun.with(second);
                    assert_eq!(done.asks(), None);
                    let toss = done.outcome().expect("both have chosen");
                    assert_eq!(toss.chosen(), Some((winner, first)));
                    let other = Won {
                        by: loser,
                        chose: second.about(),
                    };
                    assert_eq!(toss.choice_of(other), second);
                }
            }
        }
    }

    #[test]
    fn a_choice_is_carried_out() {
        let toss = Choosing::after(Team::A)
            .with(Choice::Receive)
            .with(Choice::Right)
            .outcome()
            .expect("both have chosen");
        // B chose the right side, so A is left; A chose to receive, so B serves.
        assert_eq!((toss.first_service, toss.left), (Team::B, Team::A));
    }
}
