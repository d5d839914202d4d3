//! One team's half of a set by the places of the rotation: who started there, who came in there, and the
//! team's total at the end of each turn at service from there.

use super::{Round, SetSheet, Substitution};
use game::entry::Change;
use rules::{Score, Shirt, Team};

/// A team's half of a set.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Half {
    /// The places from I on; none where line-ups are not kept.
    pub places: Vec<Place>,
    /// Substitutions that belong to no place, because whoever left stood on none by the line-up.
    pub elsewhere: Vec<Substitution>,
}

/// One place of the line-up through a set.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Place {
    /// Who started there.
    pub starter: Shirt,
    /// Who came in there, in order; the starter too who came back.
    pub entered: Vec<Entered>,
    /// The turns at service, one for each round of the rotation.
    pub turns: Vec<Turn>,
}

/// Somebody who came in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Entered {
    /// Who.
    pub shirt: Shirt,
    /// The score then.
    pub score: Score,
    /// Whether it was an exceptional substitution.
    pub exceptional: bool,
    /// Whether the starter has come back for this one.
    pub relieved: bool,
}

/// A turn at service.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Turn {
    /// A team that receives first rotates before its first service, so its place I has no first turn.
    None,
    /// It served, or would have: the total when the turn ended.
    Ended {
        /// Who served, and the total.
        round: Round,
        /// Whether it is the team's total at the end of the set.
        last: bool,
    },
}

impl Half {
    /// The half of a team in a set.
    #[must_use]
    pub fn of(set: &SetSheet, team: Team) -> Half {
        let starters = &set.line_ups[team];
        let place = |&starter: &Shirt| Place {
            starter,
            entered: Vec::new(),
            turns: Vec::new(),
        };
        let mut half = Half {
            places: starters.iter().map(place).collect(),
            elsewhere: Vec::new(),
        };
        for substitution in set.substitutions.iter().filter(|s| s.team == team) {
            half.enter(substitution);
        }
        if !half.places.is_empty() {
            half.serve(set, team);
        }
        half
    }

    fn enter(&mut self, substitution: &Substitution) {
        let change = substitution.change;
        let stands = |place: &&mut Place| {
            let last = place.entered.last();
            last.map_or(place.starter, |e| e.shirt) == change.out
        };
        let Some(place) = self.places.iter_mut().find(stands) else {
            return self.elsewhere.push(*substitution);
        };
        if change.into == place.starter {
            if let Some(last) = place.entered.last_mut() {
                last.relieved = true;
            }
        }
        place.entered.push(Entered {
            shirt: change.into,
            score: substitution.score,
            exceptional: substitution.exceptional,
            relieved: false,
        });
    }

    fn serve(&mut self, set: &SetSheet, team: Team) {
        // Whoever receives first rotates before the first service (FIVB Official Volleyball Rules
        // 2025-2028, 7.6.2).
        let receives = set.first_service.is_some_and(|first| first != team);
        let rounds = &set.rounds[team];
        let ended = rounds.iter().enumerate().map(|(i, &round)| Turn::Ended {
            round,
            last: set.won.is_some() && i + 1 == rounds.len(),
        });
        let turns = receives.then_some(Turn::None).into_iter().chain(ended);
        let places = self.places.len();
        for (i, turn) in turns.enumerate() {
            self.places[i % places].turns.push(turn);
        }
    }
}

/// A libero's time on court: who for whom, from which score to which.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LiberoTurn {
    /// Who left, who came.
    pub change: Change,
    /// The score when they came.
    pub from: Score,
    /// The score when the two changed back, if they did.
    pub to: Option<Score>,
}

/// The libero replacements of a team in a set, each with the one that undid it.
#[must_use]
pub fn libero_turns(set: &SetSheet, team: Team) -> Vec<LiberoTurn> {
    let mut turns: Vec<LiberoTurn> = Vec::new();
    for made in set.liberos.iter().filter(|r| r.team == team) {
        let back = |turn: &&mut LiberoTurn| {
            let Change { out, into } = turn.change;
            turn.to.is_none() && out == made.change.into && into == made.change.out
        };
        match turns.iter_mut().rev().find(back) {
            Some(turn) => turn.to = Some(made.score),
            None => turns.push(LiberoTurn {
                change: made.change,
                from: made.score,
                to: None,
            }),
        }
    }
    turns
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Replacement;
    use game::DecidedBy;
    use rules::ByTeam;

    fn set() -> SetSheet {
        let line_up = |from: u16| (from..from + 6).map(Shirt).collect::<Vec<_>>();
        SetSheet {
            number: 1,
            line_ups: ByTeam {
                a: line_up(1),
                b: line_up(11),
            },
            first_service: Some(Team::A),
            ..SetSheet::default()
        }
    }

    fn round(server: u16, total: u16) -> Round {
        Round {
            server: Some(Shirt(server)),
            total,
        }
    }

    /// Worked by hand: A serves first, rallies A A B B A. A's place I ends at 2, B's place II at 2.
    #[test]
    fn whoever_receives_begins_with_its_second_place() {
        let mut set = set();
        set.rounds.a = vec![round(1, 2)];
        set.rounds.b = vec![round(12, 2)];
        let (a, b) = (Half::of(&set, Team::A), Half::of(&set, Team::B));
        let ended = |round| Turn::Ended { round, last: false };
        assert_eq!(a.places[0].turns, [ended(round(1, 2))]);
        assert_eq!(b.places[0].turns, [Turn::None]);
        assert_eq!(b.places[1].turns, [ended(round(12, 2))]);
    }

    /// Seven turns go once round; the last total of a set that is over is marked.
    #[test]
    fn the_seventh_turn_is_a_second_round() {
        let mut set = set();
        set.rounds.a = (1..=7).map(|i| round(i, i * 3)).collect();
        set.won = Some((Team::A, DecidedBy::Played));
        let first = &Half::of(&set, Team::A).places[0];
        let last = |turn: &Turn| matches!(turn, Turn::Ended { last: true, .. });
        assert_eq!(
            first.turns.iter().map(last).collect::<Vec<_>>(),
            [false, true]
        );
    }

    /// Worked by hand: B's 9 is relieved by 14 and comes back; then somebody leaves who stood nowhere.
    #[test]
    fn substitutions_stand_with_their_place() {
        let mut set = set();
        let mut change = |out: u16, into: u16, a: u16, b: u16| {
            set.substitutions.push(Substitution {
                team: Team::B,
                change: Change {
                    out: Shirt(out),
                    into: Shirt(into),
                },
                score: Score { a, b },
                exceptional: false,
            });
        };
        change(14, 19, 10, 12);
        change(19, 14, 18, 20);
        change(30, 31, 18, 20);
        let half = Half::of(&set, Team::B);
        let entered = &half.places[3].entered;
        let told: Vec<(u16, bool)> = entered.iter().map(|e| (e.shirt.0, e.relieved)).collect();
        assert_eq!(told, [(19, true), (14, false)]);
        assert_eq!(half.elsewhere.len(), 1);
        assert_eq!(Half::of(&set, Team::A).places[3].entered, []);
    }

    #[test]
    fn a_libero_who_comes_and_goes_is_one_turn() {
        let mut set = set();
        let mut change = |out: u16, into: u16, a: u16, b: u16| {
            set.liberos.push(Replacement {
                team: Team::A,
                change: Change {
                    out: Shirt(out),
                    into: Shirt(into),
                },
                score: Score { a, b },
            });
        };
        change(2, 8, 0, 0);
        change(8, 2, 0, 4);
        change(1, 8, 2, 4);
        let told: Vec<_> = libero_turns(&set, Team::A)
            .iter()
            .map(|t| (t.change.into.0, t.from.b, t.to.map(|s| s.b)))
            .collect();
        assert_eq!(told, [(8, 0, Some(4)), (8, 4, None)]);
        assert_eq!(libero_turns(&set, Team::B), []);
    }
}
