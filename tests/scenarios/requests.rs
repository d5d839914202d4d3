//! Improper requests and delays (15.2.4, 15.11, chapter 16).

use game::entry::Forced;
use game::{Kind, Level, Notice, Phase, Refusal};
use rules::{Shirt, Signal, Team};
use Team::{A, B};

use crate::story::{
    card, change, coach, delay, forced, improper, libero, rejected, substitution, time_out, Story,
};

/// 15.11.2: the first improper request of a team in the match is only noted.
#[test]
fn r15_11_2_the_first_improper_request_is_noted() {
    Story::international()
        .rallies("AB")
        .enter(improper(A))
        .sanctions(&[(1, A, "improper_request", (1, 1))])
        .score(1, 1)
        .serves(B, 2);
}

/// 15.11.1 and 16.1.3: what a rejected request is: improper beyond the allowed number or a second time in one
/// interruption, a delay where the substitution is illegal.
#[test]
fn r15_11_1_a_rejected_request_has_its_right_act() {
    let mut story = Story::international();
    story.rallies("A").enter(time_out(A)).enter(time_out(A));
    let why = |story: &Story, kind: &Kind| {
        let next = story.last() + 1;
        let entry = game::Entry::new(next, kind.clone());
        let why = story.timeline().check(&entry).expect_err("it is refused");
        why.right_act(kind)
    };
    assert_eq!(why(&story, &time_out(A)), Some(improper(A)));
    story.enter(substitution(A, &[(4, 8)]));
    let second = substitution(A, &[(5, 9)]);
    assert_eq!(why(&story, &second), Some(improper(A)));
    story.rallies("A");
    let illegal = substitution(A, &[(8, 9)]);
    assert_eq!(why(&story, &illegal), Some(rejected(A)));
    let partly = substitution(A, &[(5, 9), (8, 10)]);
    assert_eq!(why(&story, &partly), Some(rejected(A)));
    // Nobody has asked for anything there.
    story.refuses(Kind::BeginSet, "6.2", Refusal::SetRunning);
    assert_eq!(Refusal::SetRunning.right_act(&Kind::BeginSet), None);
}

/// 15.11.3 and 16.2: every further one is a delay, first a warning, then a penalty.
#[test]
fn r15_11_3_a_further_improper_request_is_a_delay() {
    Story::international()
        .rallies("A")
        .enter(improper(A))
        .enter(improper(A))
        .score(1, 0)
        .enter(improper(A))
        .score(1, 1)
        .serves(B, 2)
        .sanctions(&[
            (1, A, "improper_request", (1, 0)),
            (1, A, "delay_warning", (1, 0)),
            (1, A, "delay_penalty", (1, 0)),
        ]);
}

/// 15.11.2: once a match, not once a set.
#[test]
fn r15_11_2_the_free_one_is_not_given_back_in_the_next_set() {
    Story::international()
        .enter(improper(B))
        .set_to(A)
        .sets_out()
        .enter(improper(B))
        .sanctions(&[
            (1, B, "improper_request", (0, 0)),
            (2, B, "delay_warning", (0, 0)),
        ]);
}

/// FIVB Casebook 2024, case 4.30: a team that has a delay warning still has its free improper request.
#[test]
fn r15_11_2_a_delay_warning_leaves_the_free_one() {
    Story::international()
        .enter(delay(A))
        .enter(improper(A))
        .sanctions(&[
            (1, A, "delay_warning", (0, 0)),
            (1, A, "improper_request", (0, 0)),
        ]);
}

/// 16.2.2 and 16.2.3: warning, then a point and the service each time, for the whole match.
#[test]
fn r16_2_a_warning_then_penalties_for_the_match() {
    Story::international()
        .rallies("A")
        .enter(delay(A))
        .score(1, 0)
        .serves(A, 1)
        .enter(delay(A))
        .score(1, 1)
        .serves(B, 2)
        .enter(delay(A))
        .score(1, 2)
        .serves(B, 2)
        .set_to(B)
        .sets_out()
        .rallies("A")
        .enter(delay(A))
        .score(1, 1)
        .sanctions(&[
            (1, A, "delay_warning", (1, 0)),
            (1, A, "delay_penalty", (1, 0)),
            (1, A, "delay_penalty", (1, 1)),
            (2, A, "delay_penalty", (1, 0)),
        ]);
}

/// 16.2.3: a delay penalty of the receiving team leaves the server where he or she is.
#[test]
fn r16_2_3_a_delay_penalty_of_the_receiving_team_rotates_nobody() {
    Story::international()
        .enter(delay(B))
        .enter(delay(B))
        .score(1, 0)
        .serves(A, 1)
        .stand(A, &[1, 2, 3, 4, 5, 6])
        .stand(B, &[1, 2, 3, 4, 5, 6]);
}

/// 16.2.1.1: each team has its own ladder.
#[test]
fn r16_2_1_the_teams_have_ladders_of_their_own() {
    Story::international()
        .enter(delay(A))
        .enter(delay(B))
        .score(0, 0)
        .sanctions(&[
            (1, A, "delay_warning", (0, 0)),
            (1, B, "delay_warning", (0, 0)),
        ]);
}

/// 16.2.1 and 21.4.1: delays and misconduct never mix.
#[test]
fn r16_2_1_a_delay_warning_is_no_misconduct_warning() {
    Story::international()
        .enter(delay(A))
        .enter(card(A, coach(), Level::Warning))
        .score(0, 0)
        .enter(delay(A))
        .score(0, 1);
}

/// 16.2.4: a delay before the match or between the sets counts in the set to come.
#[test]
fn r16_2_4_a_delay_between_the_sets_counts_in_the_next() {
    Story::international()
        .enter(delay(A))
        .set_to(A)
        .enter(delay(A))
        .sets(&[(25, 0)])
        .sets_out()
        .score(0, 1)
        .serves(B, 1)
        .sanctions(&[
            (1, A, "delay_warning", (0, 0)),
            (2, A, "delay_penalty", (0, 0)),
        ]);
}

/// 15.2.4: after a request rejected with a delay warning the team may ask for nothing regular until a
/// rally is completed; the opponent may (FIVB Casebook 2024, case 4.30.1; "teams" in one guideline,
/// taken as the team at fault by the match-log contract).
#[test]
fn r15_2_4_a_request_rejected_with_a_warning_bars_the_next() {
    let barred = || Refusal::RequestBarred { team: A };
    Story::international()
        .enter(rejected(A))
        .refuses(time_out(A), "15.2.4", barred())
        .refuses(substitution(A, &[(4, 8)]), "15.2.4", barred())
        .enter(time_out(B))
        .enter(libero(A, 5, 12))
        .rallies("A")
        .enter(substitution(A, &[(4, 8)]));
}

/// 15.2.4: a forced substitution is no regular request.
#[test]
fn r15_2_4_a_forced_substitution_is_open_all_the_same() {
    Story::international()
        .enter(rejected(A))
        .enter(forced(A, 4, 8, Forced::Injury))
        .substitutions(A, 1, 0);
}

/// 16.2.2: a delay that came from no request bars nothing.
#[test]
fn r15_2_4_a_delay_without_a_request_bars_nothing() {
    Story::international()
        .enter(delay(A))
        .enter(time_out(A))
        .enter(substitution(A, &[(4, 8)]));
}

/// FIVB Casebook 2024, case 4.25: a delay penalty is a completed rally, so a new request is open.
#[test]
fn r15_2_4_a_request_rejected_with_a_penalty_bars_nothing() {
    Story::international()
        .enter(delay(A))
        .enter(substitution(A, &[(4, 8)]))
        .enter(rejected(A))
        .score(0, 1)
        .enter(substitution(A, &[(5, 9)]))
        .substitutions(A, 2, 0);
}

/// 15.11.3 with 15.2.4: the second improper request is a rejected one, so it bars too.
#[test]
fn r15_11_3_the_second_improper_request_bars_like_a_rejected_one() {
    Story::international()
        .enter(improper(A))
        .enter(time_out(A))
        .enter(improper(A))
        .refuses(time_out(A), "15.2.4", Refusal::RequestBarred { team: A })
        .rallies("B")
        .enter(time_out(A));
}

/// The bar lasts the interruption, not the match: it does not reach into the next set.
#[test]
fn r15_2_4_the_bar_does_not_reach_into_the_next_set() {
    Story::international()
        .rallies(&"A".repeat(24))
        .enter(rejected(B))
        .rallies("A")
        .sets_out()
        .enter(time_out(B));
}

/// 15.2.4 with 16.2.4: a request rejected between the sets bars until the first rally is completed,
/// whether the line-ups are in or not.
#[test]
fn r15_2_4_a_bar_earned_between_the_sets_lasts_to_the_first_rally() {
    for line_ups_first in [false, true] {
        let mut story = Story::international();
        story.set_to(A);
        if line_ups_first {
            story.line_ups().enter(rejected(A));
        } else {
            story.enter(rejected(A)).line_ups();
        }
        let barred = || Refusal::RequestBarred { team: A };
        story
            .refuses(substitution(A, &[(4, 8)]), "15.2.4", barred())
            .enter(Kind::BeginSet)
            .refuses(time_out(A), "15.2.4", barred())
            .enter(substitution(B, &[(4, 8)]))
            .rallies("A")
            .enter(substitution(A, &[(4, 8)]));
    }
}

/// 16.2.3: a delay penalty can be the last point of a set, and of the match.
#[test]
fn r16_2_3_a_delay_penalty_ends_the_set() {
    Story::international()
        .enter(delay(B))
        .rallies(&"A".repeat(24))
        .notices(&Notice::SetPoint { team: A })
        .enter(delay(B))
        .phase(Phase::BetweenSets)
        .sets(&[(25, 0)])
        .line_ups()
        .enter(Kind::BeginSet);
}

/// The referee may hear a barred team (match-log contract: insist).
#[test]
fn r15_2_4_insisting_hears_a_barred_team() {
    Story::international()
        .enter(rejected(A))
        .insists(time_out(A), Refusal::RequestBarred { team: A })
        .time_outs(A, 1);
}

/// Diagram 11, signals 25, 4 and 13: the card over the wrist is the one that the ladder gives, also
/// where a request was improper; a first improper request is only noted and shows nothing.
#[test]
fn the_signal_is_that_of_what_became_of_it() {
    let mut story = Story::international();
    let mut shown = |kind: Kind| {
        let timeline = story.enter(kind).timeline();
        let last = timeline.entries().last().expect("just entered");
        timeline.state().signal_of(last)
    };
    assert_eq!(shown(improper(A)), None);
    assert_eq!(shown(improper(A)), Some((Signal::DelayWarning, Some(A))));
    assert_eq!(shown(improper(A)), Some((Signal::DelayPenalty, Some(A))));
    assert_eq!(shown(delay(B)), Some((Signal::DelayWarning, Some(B))));
    assert_eq!(shown(delay(B)), Some((Signal::DelayPenalty, Some(B))));
    assert_eq!(shown(delay(B)), Some((Signal::DelayPenalty, Some(B))));
    assert_eq!(
        shown(Kind::TimeOut { team: A }),
        Some((Signal::TimeOut, Some(A)))
    );
}

/// 15.10.4: the legal part of a rejected request stays open until the next completed rally, whether the delay
/// was written down after the request or before it.
#[test]
fn r15_10_4_the_legal_part_stays_open_whatever_came_first() {
    let request = || substitution(A, &[(5, 9), (8, 10)]);
    let partly = || Refusal::PartlyIllegal {
        legal: vec![change(5, 9)],
        because: Box::new(Refusal::OnlyStarterReturns {
            out: Shirt(8),
            starter: Shirt(4),
        }),
    };
    let barred = || Refusal::RequestBarred { team: A };
    let begun = || {
        let mut story = Story::international();
        story.enter(substitution(A, &[(4, 8)])).rallies("A");
        story
    };
    begun()
        .refuses(request(), "15.6.2", partly())
        .enter(rejected(A))
        .refuses(substitution(A, &[(6, 11)]), "15.2.4", barred())
        .enter(substitution(A, &[(5, 9)]))
        .substitutions(A, 2, 0)
        .refuses(substitution(A, &[(6, 11)]), "15.2.4", barred());
    begun()
        .enter(rejected(A))
        .refuses(request(), "15.6.2", partly())
        .refuses(time_out(A), "15.2.4", barred())
        .enter(substitution(A, &[(5, 9)]))
        .stand(A, &[1, 2, 3, 8, 9, 6]);
    // A rally later it is a request like any other.
    begun()
        .refuses(request(), "15.6.2", partly())
        .enter(rejected(A))
        .rallies("A")
        .enter(rejected(A))
        .score(2, 1)
        .enter(substitution(A, &[(6, 11)]))
        .refuses(
            substitution(A, &[(5, 9)]),
            "15.2.2",
            Refusal::SecondRequest { team: A },
        );
    // A request that is legal or illegal as a whole has no such part.
    begun()
        .enter(rejected(A))
        .refuses(substitution(A, &[(5, 9), (6, 11)]), "15.2.4", barred())
        .refuses(substitution(A, &[(5, 9)]), "15.2.4", barred());
}

/// 15.9.1 and 15.10.4: a change with somebody who is not listed is an illegal one like any other; the legal part
/// stays open, but nobody can insist on the whole.
#[test]
fn r15_10_4_the_legal_part_beside_a_player_who_is_not_listed() {
    let request = || substitution(A, &[(1, 7), (2, 40)]);
    let partly = || Refusal::PartlyIllegal {
        legal: vec![change(1, 7)],
        because: Box::new(Refusal::UnlistedSubstitute {
            team: A,
            number: Shirt(40),
        }),
    };
    Story::international()
        .refuses_even_so(request(), "15.9.1", partly())
        .enter(rejected(A))
        .enter(substitution(A, &[(1, 7)]))
        .stand(A, &[7, 2, 3, 4, 5, 6])
        .substitutions(A, 1, 0);
    // The delay was written down first.
    Story::international()
        .enter(rejected(A))
        .refuses(request(), "15.9.1", partly())
        .enter(substitution(A, &[(1, 7)]))
        .stand(A, &[7, 2, 3, 4, 5, 6]);
    // Nothing of it is legal.
    Story::international().refuses(
        substitution(A, &[(1, 12), (2, 40)]),
        "15.9.1",
        Refusal::UnlistedSubstitute {
            team: A,
            number: Shirt(40),
        },
    );
}
