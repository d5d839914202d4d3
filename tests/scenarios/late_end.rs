//! Faults found late that decide a set or a match, or let it go on (6.2, 7.7).

use game::entry::Fault::{IllegalSubstitution, Rotation, UnregisteredPlayer, WrongLineUp};
use game::entry::Found::{AfterRally, Rally};
use game::entry::Scope;
use game::{Kind, Level, Phase, Refusal};
use rules::{Score, Team};
use Team::{A, B};

use crate::story::{card, coach, incomplete, late, since, since_in, Story};
use crate::support::list;

/// 6.2: a set that the opponent has won all the same has no further point.
#[test]
fn r6_2_a_won_set_has_no_further_point() {
    for fault in [IllegalSubstitution, WrongLineUp] {
        for during in [Rally, AfterRally] {
            Story::international()
                .rallies("BBB")
                .set_to(A)
                .enter(late(B, fault, since(24, 3), during))
                .sets(&[(25, 3)])
                .phase(Phase::BetweenSets)
                .enter(late(B, fault, since(5, 3), during))
                .sets(&[(25, 3)])
                .phase(Phase::BetweenSets);
        }
    }
    // Points of the faulty team in the set it has lost are cancelled; the set stays won.
    for fault in [Rotation, IllegalSubstitution] {
        Story::international()
            .rallies("BBB")
            .set_to(A)
            .enter(late(B, fault, since(0, 1), AfterRally))
            .sets(&[(25, 1)])
            .phase(Phase::BetweenSets);
    }
}

/// FIVB Casebook 2024, case 7.5: until the next set begins the last one can be put right; without its
/// last point it goes on.
#[test]
fn r7_7_1_1_a_set_without_its_last_point_goes_on() {
    Story::international()
        .rallies(&"B".repeat(20))
        .rallies(&"A".repeat(25))
        .sets(&[(25, 20)])
        .enter(late(A, Rotation, since(24, 20), AfterRally))
        .phase(Phase::Playing)
        .sets(&[])
        .score(24, 21)
        .serves(B, 3)
        .rallies("A")
        .sets(&[(25, 21)]);
}

/// The same after the end of the match.
#[test]
fn r7_7_1_1_a_match_without_its_last_point_goes_on() {
    Story::international()
        .set_to(A)
        .sets_out()
        .set_to(A)
        .sets_out()
        .set_to(A)
        .won_by(Some(A))
        .enter(late(A, Rotation, since(24, 0), AfterRally))
        .phase(Phase::Playing)
        .score(24, 1)
        .rallies("A")
        .won_by(Some(A))
        .sets(&[(25, 0), (25, 0), (25, 1)]);
}

/// Line-ups handed in for the next set are still there if the set stays won after all
/// (7.3.4: a line-up handed in stands).
#[test]
fn r7_3_4_line_ups_stay_where_the_set_stays_won() {
    Story::international()
        .set_to(A)
        .line_ups()
        .enter(late(B, IllegalSubstitution, since(24, 0), AfterRally))
        .phase(Phase::BetweenSets)
        .sets(&[(25, 0)])
        .without("line_up")
        .enter(Kind::BeginSet)
        .serves(B, 1);
}

/// 21.5: a penalty given between the sets still counts in the next one, though the last one was on
/// court again.
#[test]
fn r21_5_a_penalty_for_the_next_set_outlives_a_reopened_one() {
    Story::international()
        .set_to(A)
        .enter(card(B, coach(), Level::Penalty))
        .enter(late(A, Rotation, since(24, 0), AfterRally))
        .score(24, 1)
        .rallies("A")
        .sets(&[(25, 1)])
        .sets_out()
        .score(1, 0)
        .serves(A, 2);
}

/// 6.2: the point for a late fault can win the set.
#[test]
fn r6_2_the_point_for_a_late_fault_wins_the_set() {
    Story::international()
        .rallies(&"B".repeat(24))
        .rallies("AAA")
        .enter(late(A, Rotation, since(2, 24), Rally))
        .sets(&[(2, 25)])
        .phase(Phase::BetweenSets);
}

/// Without play there is nothing to put right in the set (match-log contract).
#[test]
fn r6_4_an_earlier_set_decided_without_play_has_no_moments() {
    Story::international()
        .enter(incomplete(A, Scope::Set))
        .sets_out()
        .rallies("A")
        .refuses(
            late(A, UnregisteredPlayer, since_in(1, 5, 5), Rally),
            "7.3.5.4",
            Refusal::ScoreNeverStood {
                asked: Score { a: 5, b: 5 },
                nearest: Score::default(),
                fault: UnregisteredPlayer,
            },
        );
    let mut story = Story::opened(rules::Preset::International.rules());
    story
        .enter(list(A, 12, &[12]))
        .enter(list(B, 12, &[12]))
        .enter(crate::story::toss(A, A))
        .enter(incomplete(A, Scope::Set))
        .sets_out()
        .refuses(
            late(A, UnregisteredPlayer, since_in(1, 0, 0), Rally),
            "6.4",
            Refusal::NotByPlay { set: 1 },
        );
}

/// 7.3.4: the line-ups of a set that did not come, because the match was over, stand when it does.
#[test]
fn r7_3_4_line_ups_wait_for_a_match_that_goes_on() {
    // Sets to one point, so that the point for the fault decides the set anew.
    let mut rules = rules::Preset::International.rules();
    rules.sets = rules::Sets::BestOf(3);
    rules.set.target = 1;
    rules.set.lead = 1;
    Story::by(rules)
        .rallies("B")
        .sets_out()
        .rallies("A")
        .sets(&[(0, 1), (1, 0)])
        .enter(crate::story::toss(B, A))
        .line_ups()
        .enter(late(B, UnregisteredPlayer, since_in(1, 0, 0), AfterRally))
        .sets(&[(1, 0), (1, 0)])
        .won_by(Some(A))
        .enter(late(B, IllegalSubstitution, since(0, 0), AfterRally))
        .won_by(Some(A))
        .enter(late(A, IllegalSubstitution, since(0, 0), AfterRally))
        .sets(&[(1, 0), (0, 1)])
        .phase(Phase::BetweenSets)
        .without("line_up")
        .enter(Kind::BeginSet)
        .serves(B, 1);
}

/// 21.5: neither does the cancelled first set on another court take the penalty for the second with it.
#[test]
fn r21_5_a_penalty_for_the_next_set_outlives_another_court() {
    Story::international()
        .set_to(A)
        .enter(card(B, coach(), Level::Penalty))
        .enter(late(A, Rotation, since(24, 0), AfterRally))
        .enter(crate::story::suspend())
        .enter(crate::story::resume(game::entry::Court::Other))
        .enter(Kind::BeginSet)
        .set_to(A)
        .sets_out()
        .score(1, 0);
}
