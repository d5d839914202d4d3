//! The rally order from the service rounds.
//!
//! A team that loses the service writes its own total (score-sheet practice as taught to scorers). So
//! turn for turn: the serving team wins up to its total, then the other wins one and serves. A set won
//! on the opponent's service gives the winner one more number, its final total.

use super::Fault;
use rules::{ByTeam, Score, Team};

/// What the rounds say.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Order {
    /// Who won each point, as far as the boxes leave no doubt.
    pub letters: Vec<Team>,
    /// Whether that is the whole set.
    pub whole: bool,
    /// Boxes that cannot be: whose, which, why.
    pub faults: Vec<(Team, usize, Fault)>,
}

/// The rally order of a set.
pub(super) fn order(first: Team, rounds: &ByTeam<Vec<u16>>) -> Order {
    let mut order = Order::default();
    let mut score = Score::default();
    let mut turn: ByTeam<usize> = ByTeam::default();
    // Letters before each team's last turn; what one box says too much shows only in the next.
    let mut before: ByTeam<usize> = ByTeam::default();
    let mut certain = None;
    let mut server = first;
    loop {
        let (own, opponent) = (&rounds[server], &rounds[server.other()]);
        let i = turn[server];
        let Some(&total) = own.get(i) else {
            if let Some(&total) = opponent.get(turn[server.other()]) {
                let fault = Fault::RoundsAlternate { total };
                order
                    .faults
                    .push((server.other(), turn[server.other()], fault));
                certain.get_or_insert(before[server.other()]);
            }
            break;
        };
        if total < score[server] {
            let last = i.checked_sub(1).map(|i| own[i]);
            let fault = match last {
                Some(before) if total < before => Fault::RoundsDecrease { total, before },
                _ => Fault::RoundsImpossible {
                    total,
                    least: score[server],
                },
            };
            order.faults.push((server, i, fault));
            certain.get_or_insert(before[server]);
        }
        before[server] = order.letters.len();
        let won = usize::from(total.saturating_sub(score[server]));
        order.letters.extend(std::iter::repeat_n(server, won));
        score[server] = total;
        turn[server] += 1;
        if turn[server] == own.len() && turn[server.other()] == opponent.len() {
            break;
        }
        // The service is lost: the other team has a point and serves.
        server = server.other();
        order.letters.push(server);
        score[server] = score[server].saturating_add(1);
    }
    order.whole = certain.is_none();
    order.letters.truncate(certain.unwrap_or(usize::MAX));
    order
}

#[cfg(test)]
mod tests {
    use super::*;

    fn letters(order: &Order) -> String {
        order.letters.iter().map(|t| t.letter()).collect()
    }

    fn of(first: Team, a: &[u16], b: &[u16]) -> Order {
        let rounds = ByTeam {
            a: a.to_vec(),
            b: b.to_vec(),
        };
        order(first, &rounds)
    }

    #[test]
    fn turns_follow_each_other() {
        assert_eq!(letters(&of(Team::A, &[2, 3], &[2])), "AABBA");
        assert_eq!(letters(&of(Team::B, &[2, 3], &[0, 1])), "AABA");
    }

    #[test]
    fn a_set_won_on_the_other_service_has_one_number_more() {
        // B loses its service at 1, and that is A's third point and the end.
        assert_eq!(letters(&of(Team::A, &[2, 3], &[1])), "AABA");
    }

    #[test]
    fn the_doubt_begins_with_the_turn_before_the_odd_box() {
        let order = of(Team::A, &[2, 9, 4, 6], &[1, 2, 3]);
        assert!(!order.whole);
        assert_eq!(letters(&order), "AABA");
        assert_eq!(
            order.faults,
            [(
                Team::A,
                2,
                Fault::RoundsDecrease {
                    total: 4,
                    before: 9
                }
            )]
        );
    }

    #[test]
    fn nobody_serves_twice_running() {
        let order = of(Team::A, &[2, 4, 6], &[1]);
        assert_eq!(order.faults.len(), 1);
        assert_eq!(order.faults[0].0, Team::A);
        assert_eq!(order.faults[0].1, 2);
    }
}
