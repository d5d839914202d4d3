//! Time-outs (15.1, 15.2.1, 15.4).

use game::entry::ReplayWhy;
use game::{Level, Notice, Refusal};
use rules::{Preset, Team};
use Team::{A, B};

use crate::story::{card, coach, improper, rejected, stopped, substitution, time_out, Story};

fn none_left(team: Team) -> Refusal {
    Refusal::NoTimeOutLeft { team, most: 2 }
}

/// 15.1 and 15.2.1: two time-outs a set, also in the same interruption.
#[test]
fn r15_1_two_time_outs_a_set() {
    Story::international()
        .rallies("A")
        .enter(time_out(B))
        .enter(time_out(B))
        .time_outs(B, 2)
        .notices(&Notice::LastTimeOut { team: B })
        .refuses(time_out(B), "15.1", none_left(B))
        .rallies("AAA")
        .refuses(time_out(B), "15.1", none_left(B))
        .enter(time_out(A))
        .time_outs(A, 1)
        .score(4, 0)
        .serves(A, 1);
}

/// 15.1: the count starts again with each set.
#[test]
fn r15_1_time_outs_start_again_in_the_next_set() {
    Story::international()
        .enter(time_out(B))
        .enter(time_out(B))
        .set_to(A)
        .time_outs(B, 2)
        .sets_out()
        .time_outs(B, 0)
        .enter(time_out(B))
        .time_outs(B, 1);
}

/// A competition may allow one (school practice).
#[test]
fn r15_1_a_competition_may_allow_fewer() {
    let mut rules = Preset::International.rules();
    rules.time_outs.per_set = Some(1);
    Story::by(rules).enter(time_out(A)).refuses(
        time_out(A),
        "15.1",
        Refusal::NoTimeOutLeft { team: A, most: 1 },
    );
}

/// 6.1.3 and 15: a stopped rally opens no interruption.
#[test]
fn r15_no_time_out_before_a_stopped_rally_is_replayed() {
    Story::international()
        .rallies("A")
        .enter(stopped(ReplayWhy::DoubleFault))
        .refuses(time_out(A), "15", Refusal::AfterReplay)
        .rallies("A")
        .enter(time_out(A));
}

/// 15.2.4: after a request rejected with a delay warning.
#[test]
fn r15_2_4_no_time_out_after_a_rejected_request() {
    Story::international()
        .enter(rejected(A))
        .refuses(time_out(A), "15.2.4", Refusal::RequestBarred { team: A })
        .rallies("B")
        .enter(time_out(A));
}

/// FIVB Casebook 2024, case 7.6: a request noted as improper leaves another proper one open.
#[test]
fn r15_11_2_a_third_time_out_noted_leaves_a_substitution_open() {
    Story::international()
        .enter(time_out(A))
        .enter(time_out(A))
        .refuses(time_out(A), "15.1", none_left(A))
        .enter(improper(A))
        .enter(substitution(A, &[(4, 8)]))
        .time_outs(A, 2)
        .substitutions(A, 1, 0);
}

/// The referee may grant one more (match-log contract: insist); the count shows it.
#[test]
fn r15_1_insisting_grants_a_third() {
    Story::international()
        .enter(time_out(A))
        .enter(time_out(A))
        .insists(time_out(A), none_left(A))
        .time_outs(A, 3);
}

/// 6.1.3: a penalty is a completed rally, so it ends the bar of a stopped rally.
#[test]
fn r6_1_3_a_penalty_opens_an_interruption() {
    Story::international()
        .rallies("A")
        .enter(stopped(ReplayWhy::Interference))
        .enter(card(B, coach(), Level::Penalty))
        .enter(time_out(A))
        .enter(time_out(B));
}
