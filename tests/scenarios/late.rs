//! Faults of service and rotation found late (7.7), and what holds of every fault that is. Every combination of
//! rallies, fault, moment and finding is counted out in `late_all`; here and in the files beside it are the stories.

use game::entry::Fault::{
    IllegalLibero, IllegalSubstitution, Rotation, UnregisteredPlayer, WrongLineUp,
};
use game::entry::Found::{AfterRally, Rally};
use game::{Level, PointFor, Refusal};
use rules::{Score, Team};
use Team::{A, B};

use crate::story::{
    card, coach, improper, late, put_right, since, since_in, substitution, time_out, Story,
};

/// 7.7.1.1: stopped in the rally that the wrong player served: a point and the service, no more.
#[test]
fn r7_7_1_1_a_wrong_server_stopped_at_once() {
    Story::international()
        .rallies("AAAAA")
        .enter(late(A, Rotation, since(5, 0), Rally))
        .score(5, 1)
        .serves(B, 2)
        .stand(A, &[1, 2, 3, 4, 5, 6]);
}

/// 7.7.1.1 and FIVB Casebook 2024, case 2.5: found after the rally that the opponent won: that one
/// point.
#[test]
fn r7_7_1_1_found_after_a_rally_the_opponent_won() {
    Story::international()
        .rallies("AABAB")
        .score(3, 2)
        .enter(late(A, Rotation, since(3, 1), AfterRally))
        .score(3, 2)
        .serves(B, 3);
}

/// 7.7.1.1: found after the rally that the faulty team won: the point goes, the opponent has one.
#[test]
fn r7_7_1_1_found_after_a_rally_the_faulty_team_won() {
    Story::international()
        .rallies("AAAA")
        .enter(late(A, Rotation, since(3, 0), AfterRally))
        .score(3, 1)
        .serves(B, 2);
}

/// 7.7.2: wrong for several rallies and the moment known: all points since are cancelled.
#[test]
fn r7_7_2_all_points_since_are_cancelled() {
    Story::international()
        .rallies("AAAAAAAAAA")
        .enter(late(A, Rotation, since(6, 0), Rally))
        .score(6, 1)
        .serves(B, 2);
    // 13-8 with the fault since 10-8: back to 10-9; 12-9 with the last rally lost: 10-9 as well.
    Story::international()
        .rallies("AAAAAAAAAABBBBBBBBAAA")
        .score(13, 8)
        .enter(late(A, Rotation, since(10, 8), Rally))
        .score(10, 9)
        .serves(B, 3);
    Story::international()
        .rallies("AAAAAAAAAABBBBBBBBAAB")
        .score(12, 9)
        .enter(late(A, Rotation, since(10, 8), AfterRally))
        .score(10, 9)
        .serves(B, 3);
}

/// 7.7.2: the moment not known: only the point and the service.
#[test]
fn r7_7_2_without_the_moment_nothing_is_cancelled() {
    Story::international()
        .rallies("AAAAAAAAAA")
        .enter(late(A, Rotation, None, Rally))
        .score(10, 1)
        .serves(B, 2);
}

/// 7.7.1.1 with 7.7.2: not known and found after the rally: only that rally becomes the one point.
#[test]
fn r7_7_1_1_without_the_moment_only_the_last_rally_is_replaced() {
    Story::international()
        .rallies("AAAAA")
        .enter(late(A, Rotation, None, AfterRally))
        .score(4, 1)
        .serves(B, 2);
    Story::international()
        .rallies("AAAAB")
        .enter(late(A, Rotation, None, AfterRally))
        .score(4, 1)
        .serves(B, 2);
}

/// 7.7.2: the opponent keeps what it won in the meantime, across side-outs; its order too.
#[test]
fn r7_7_2_the_opponent_keeps_its_points_across_side_outs() {
    Story::international()
        .rallies("BBAAABBAA")
        .score(5, 4)
        .enter(put_right(
            A,
            Rotation,
            since(1, 2),
            Rally,
            &[3, 4, 5, 6, 1, 2],
        ))
        .score(1, 5)
        .stand(A, &[3, 4, 5, 6, 1, 2])
        // B served first as 2, lost it, served as 3, lost it, and rotates once more.
        .serves(B, 4);
}

/// 7.7.2: a fault of the team that is receiving now: the server goes on.
#[test]
fn r7_7_2_the_opponent_that_serves_already_does_not_rotate() {
    Story::international()
        .rallies("AABB")
        .enter(late(A, Rotation, since(1, 0), Rally))
        .score(1, 3)
        .serves(B, 2);
}

/// 7.7.2: a penalty point of the faulty team since then is cancelled as well; sanctions stay.
#[test]
fn r7_7_2_penalty_points_since_are_cancelled_and_sanctions_stay() {
    let mut story = Story::international();
    story
        .rallies("A")
        .enter(card(B, coach(), Level::Penalty))
        .rallies("A")
        .score(3, 0)
        .enter(late(A, Rotation, since(1, 0), Rally))
        .score(1, 1)
        .sanctions(&[(1, B, "penalty", (1, 0))]);
    let play = story.timeline().state().play().expect("playing");
    let cancelled: Vec<PointFor> = play
        .points
        .iter()
        .filter(|p| p.cancelled_by == Some(story.last()))
        .map(|p| p.why)
        .collect();
    assert_eq!(cancelled, [PointFor::Penalty, PointFor::Rally]);
}

/// 7.7.2: time-outs and substitutions taken meanwhile stay (match-log contract; the text is silent).
#[test]
fn r7_7_2_what_was_taken_in_cancelled_time_stays() {
    Story::international()
        .rallies("AA")
        .enter(time_out(A))
        .enter(substitution(B, &[(4, 8)]))
        .rallies("A")
        .enter(late(A, Rotation, since(1, 0), Rally))
        .score(1, 1)
        .time_outs(A, 1)
        .substitutions(B, 1, 0)
        .stand(B, &[2, 3, 8, 5, 6, 1]);
}

/// 6.1.3: the point for a fault found late is a completed rally.
#[test]
fn r6_1_3_the_point_opens_a_new_interruption() {
    Story::international()
        .enter(substitution(A, &[(4, 8)]))
        .enter(late(A, Rotation, since(0, 0), Rally))
        .enter(substitution(A, &[(5, 9)]))
        .substitutions(A, 2, 0);
}

/// 7.7.2: a score that never stood is refused, and the nearest one that did is named.
#[test]
fn r7_7_2_since_a_score_that_never_stood() {
    let never = |a, b, x, y| Refusal::ScoreNeverStood {
        asked: Score { a, b },
        nearest: Score { a: x, b: y },
        fault: Rotation,
    };
    Story::international()
        .rallies("AAA")
        .refuses_even_so(
            late(A, Rotation, since(5, 2), Rally),
            "7.7.2",
            never(5, 2, 3, 0),
        )
        .refuses(
            late(A, Rotation, since(1, 1), Rally),
            "7.7.2",
            never(1, 1, 1, 0),
        )
        .score(3, 0);
}

/// A cancelled score cannot be the moment of a later fault (match-log contract, settled points).
#[test]
fn r15_9_2_a_cancelled_score_never_stood() {
    Story::international()
        .rallies("AAAA")
        .enter(late(A, Rotation, since(2, 0), Rally))
        .score(2, 1)
        .refuses(
            late(B, IllegalSubstitution, since(4, 0), Rally),
            "15.9.2",
            Refusal::ScoreNeverStood {
                asked: Score { a: 4, b: 0 },
                nearest: Score { a: 2, b: 0 },
                fault: IllegalSubstitution,
            },
        )
        .enter(late(B, IllegalSubstitution, since(2, 0), Rally))
        .score(3, 0)
        .serves(A, 2);
}

/// FIVB Casebook 2024, case 7.5: an ordinary fault of an earlier set is closed.
#[test]
fn an_earlier_set_is_closed() {
    for (fault, rule) in [
        (Rotation, "7.7.2"),
        (IllegalSubstitution, "15.9.2"),
        (IllegalLibero, "15.9.2"),
        (WrongLineUp, "7.3.5.3"),
    ] {
        Story::international()
            .set_to(A)
            .sets_out()
            .rallies("B")
            .refuses(
                late(A, fault, since_in(1, 3, 0), Rally),
                rule,
                Refusal::EarlierSet {
                    set: 1,
                    now: 2,
                    fault,
                },
            );
    }
}

/// A set that has not been played yet cannot be put right.
#[test]
fn r7_7_2_a_later_set_has_no_moments() {
    Story::international()
        .refuses_even_so(
            late(A, Rotation, since_in(3, 0, 0), Rally),
            "7.7.2",
            Refusal::SetNotPlayed {
                set: 3,
                fault: Rotation,
            },
        )
        .set_to(A)
        .refuses(
            late(A, UnregisteredPlayer, since_in(2, 0, 0), Rally),
            "7.3.5.4",
            Refusal::SetNotPlayed {
                set: 2,
                fault: UnregisteredPlayer,
            },
        );
}

/// 7.7.2: before any set there is nothing.
#[test]
fn r7_7_2_nothing_to_put_right_before_the_match() {
    Story::listed(rules::Preset::International.rules(), &[12]).refuses_even_so(
        late(A, Rotation, None, Rally),
        "7.7.2",
        Refusal::NothingPlayed {
            fault: Some(Rotation),
        },
    );
}

/// 15.11.2: a late fault is no delay and no request.
#[test]
fn r15_11_a_late_fault_leaves_the_ladders_alone() {
    Story::international()
        .enter(late(A, Rotation, since(0, 0), Rally))
        .enter(improper(A))
        .sanctions(&[(1, A, "improper_request", (0, 1))]);
}

/// 7.7.1: a team that is not serving cannot have a wrong server; with the moment named it must have served
/// then or later before the fault was found (match-log contract).
#[test]
fn r7_7_1_a_team_that_did_not_serve_had_no_wrong_server() {
    let did_not = |team| Refusal::DidNotServe { team };
    Story::international()
        .rallies("A")
        .refuses(late(B, Rotation, since(1, 0), Rally), "7.7.1", did_not(B))
        .refuses(late(B, Rotation, since(0, 0), Rally), "7.7.1", did_not(B))
        .refuses(late(B, Rotation, None, Rally), "7.7.1", did_not(B))
        .refuses(late(B, Rotation, None, AfterRally), "7.7.1", did_not(B))
        .insists(late(B, Rotation, since(1, 0), Rally), did_not(B))
        .score(2, 0);
    // B has served since, though A serves again.
    Story::international()
        .rallies("BA")
        .enter(late(B, Rotation, since(0, 1), Rally))
        .score(2, 1);
    // And not after that: A serves at 1-1 and on.
    Story::international().rallies("BAA").refuses(
        late(B, Rotation, since(1, 1), Rally),
        "7.7.1",
        did_not(B),
    );
    // Of any other fault the serving team is not asked.
    Story::international()
        .rallies("A")
        .enter(late(B, WrongLineUp, since(1, 0), Rally))
        .score(2, 0);
}

/// 7.7.1.1: found after a rally, the wrong service was at the score before it; the present score would cost two
/// points.
#[test]
fn r7_7_1_1_after_a_rally_the_present_score_is_too_late() {
    let too_late = |asked: (u16, u16), before: (u16, u16)| Refusal::RallyBeganBefore {
        asked: Score {
            a: asked.0,
            b: asked.1,
        },
        before: Score {
            a: before.0,
            b: before.1,
        },
    };
    Story::international()
        .rallies("AAB")
        .refuses_even_so(
            late(A, Rotation, since(2, 1), AfterRally),
            "7.7.1.1",
            too_late((2, 1), (2, 0)),
        )
        .enter(late(A, Rotation, since(2, 0), AfterRally))
        .score(2, 1);
    // A penalty in between is no rally.
    Story::international()
        .rallies("A")
        .enter(card(B, coach(), Level::Penalty))
        .refuses_even_so(
            late(A, Rotation, since(1, 0), AfterRally),
            "7.7.1.1",
            too_late((1, 0), (0, 0)),
        );
    Story::international().refuses_even_so(
        late(A, Rotation, since(0, 0), AfterRally),
        "7.7.1.1",
        Refusal::NoRallyYet,
    );
}
