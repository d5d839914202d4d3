//! Every fault found late in every combination, counted out by hand from the rules: all courses of
//! up to five rallies, each team, each fault, stopped or found after the rally, since every score that
//! stood and since nobody knows when.

use game::entry::{Fault, Found};
use game::{Outcome, Timeline};
use rules::{Preset, Score, Team};

use crate::story::{late, since};
use crate::support;

const FAULTS: [Fault; 5] = [
    Fault::Rotation,
    Fault::IllegalSubstitution,
    Fault::IllegalLibero,
    Fault::WrongLineUp,
    Fault::UnregisteredPlayer,
];

/// What must come out, by the rules alone.
#[derive(Debug, PartialEq, Eq)]
struct Expected {
    score: Score,
    serving: Team,
    /// Place 1 of each team.
    servers: [u16; 2],
}

fn winners(course: &str) -> Vec<Team> {
    let team = |c| if c == 'A' { Team::A } else { Team::B };
    course.chars().map(team).collect()
}

/// 7.7.1.1: found after the rally, a wrong server costs exactly one point: a last rally won by the
/// opponent is that point. 7.7.2: with the moment known every point of the faulty team since is
/// cancelled, the opponent keeps all. 7.3.5.3, 7.3.5.4, 15.9.2, 19.3.2.9: for the other faults the
/// point comes in addition (match-log contract, settled points). 6.1.3.2: who gains the service
/// rotates once.
fn expected(
    course: &str,
    faulty: Team,
    fault: Fault,
    found: Found,
    since: Option<usize>,
) -> Expected {
    let winners = winners(course);
    let opponent = faulty.other();
    let last = winners.last().copied();
    let replaces = fault == Fault::Rotation && found == Found::AfterRally && last.is_some();
    let cancelled = |i: usize| match since {
        Some(from) => i >= from,
        None => replaces && i + 1 == winners.len(),
    };
    let mut score = Score::default();
    let mut serving = Team::A;
    let mut turns = [0u16; 2];
    let mut turn_to = |team: Team, serving: &mut Team| {
        if *serving != team {
            turns[usize::from(team == Team::B)] += 1;
        }
        *serving = team;
    };
    for (i, &winner) in winners.iter().enumerate() {
        if winner == opponent || !cancelled(i) {
            score = score.plus(winner);
        }
        turn_to(winner, &mut serving);
    }
    if !(replaces && last == Some(opponent)) {
        score = score.plus(opponent);
    }
    turn_to(opponent, &mut serving);
    Expected {
        score,
        serving,
        servers: turns.map(|t| t % 6 + 1),
    }
}

/// Whether the rules know such a fault at all. 7.7.1: a team that served neither since the moment named, nor,
/// where nobody knows it, in the rally stopped or just ended, has had no wrong server. Until the first
/// rally A serves, then whoever has won the last one (6.1.3).
fn can_be(course: &str, faulty: Team, fault: Fault, found: Found, since: Option<usize>) -> bool {
    if fault != Fault::Rotation {
        return true;
    }
    let mut services = vec![Team::A];
    services.extend(winners(course));
    let served = match (found, since) {
        (Found::Rally, Some(from)) => &services[from..],
        (Found::AfterRally, Some(from)) => &services[from..course.len()],
        (Found::Rally, None) => &services[course.len()..],
        (Found::AfterRally, None) => &services[course.len().saturating_sub(1)..course.len()],
    };
    served.contains(&faulty)
}

fn courses(longest: u32) -> Vec<String> {
    let mut all = vec![String::new()];
    for length in 1..=longest {
        for bits in 0..2u32.pow(length) {
            let letter = |i| if bits >> i & 1 == 0 { 'A' } else { 'B' };
            all.push((0..length).map(letter).collect());
        }
    }
    all
}

fn found(
    course: &str,
    faulty: Team,
    fault: Fault,
    found: Found,
    at: Option<usize>,
) -> Option<Expected> {
    let moment = at.and_then(|at| {
        let a = winners(course)[..at]
            .iter()
            .filter(|w| **w == Team::A)
            .count();
        since(a as u16, (at - a) as u16)
    });
    let mut kinds = support::opening(Preset::International.rules());
    kinds.extend(support::run(course));
    kinds.push(late(faulty, fault, moment, found));
    let timeline = Timeline::of(support::numbered(kinds));
    let last = timeline.outcomes().last().map(|(_, outcome)| outcome);
    if matches!(last, Some(Outcome::Refused(_))) {
        return None;
    }
    assert!(
        timeline.outcomes().all(|(_, o)| *o == Outcome::Accepted),
        "{course} {fault:?}"
    );
    let play = timeline.state().play().expect("playing");
    Some(Expected {
        score: play.score,
        serving: play.serving.expect("known"),
        servers: Team::BOTH.map(|t| play.sides[t].slots[0].player.0),
    })
}

/// 7.3.5.3, 7.3.5.4, 7.7.1.1, 7.7.2, 15.9.2, 19.3.2.9.
#[test]
fn r7_7_every_late_fault_in_every_course() {
    let (mut counted, mut refused) = (0, 0);
    for course in courses(5) {
        for faulty in Team::BOTH {
            for fault in FAULTS {
                for during in [Found::Rally, Found::AfterRally] {
                    let moments = (0..=course.len()).map(Some).chain([None]);
                    for at in moments {
                        // After a rally the fault began before that rally at the latest.
                        if during == Found::AfterRally && at == Some(course.len()) {
                            continue;
                        }
                        let by_rule = can_be(&course, faulty, fault, during, at)
                            .then(|| expected(&course, faulty, fault, during, at));
                        refused += usize::from(by_rule.is_none());
                        assert_eq!(
                            found(&course, faulty, fault, during, at),
                            by_rule,
                            "{course:?}: {fault:?} of {faulty}, {during:?}, since rally {at:?}"
                        );
                        counted += 1;
                    }
                }
            }
        }
    }
    // 63 courses; for each two teams, five faults, and so many moments as counted above.
    let moments: usize = courses(5).iter().map(|c| 2 * c.len() + 3).sum();
    assert_eq!(counted, 2 * 5 * moments);
    assert!(
        refused > 100 && refused < 2 * moments,
        "{refused} of {moments}"
    );
}

/// The other way round: the count by hand is no copy of the reducer, it can disagree.
#[test]
fn the_count_by_hand_can_disagree() {
    let by_rule = expected("AAB", Team::A, Fault::Rotation, Found::AfterRally, Some(1));
    let of_another = found(
        "AAB",
        Team::A,
        Fault::WrongLineUp,
        Found::AfterRally,
        Some(1),
    );
    assert_ne!(Some(by_rule), of_another);
}
