//! Faults found late (7.3.5, 7.7, 15.9.2, 19.3.2.9). Every combination of rallies, fault, moment and
//! finding is counted out in `late_all`; here are the stories.

use game::entry::Fault::{
    IllegalLibero, IllegalSubstitution, Rotation, UnregisteredPlayer, WrongLineUp,
};
use game::entry::Found::{AfterRally, Rally};
use game::entry::Scope;
use game::{DecidedBy, Kind, Level, Notice, Phase, PointFor, Refusal};
use rules::{ByTeam, Score, Shirt, Team};
use Team::{A, B};

use crate::story::{
    answer, card, coach, improper, incomplete, late, libero, put_right, since, since_in,
    substitution, time_out, Story,
};
use crate::support::list;

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

/// 15.9.2: an illegal substitution played: a point and the service, the points since cancelled, the
/// substitution put right.
#[test]
fn r15_9_2_an_illegal_substitution_played() {
    Story::international()
        .rallies("BAAAA")
        .enter(put_right(
            A,
            IllegalSubstitution,
            since(1, 1),
            Rally,
            &[2, 3, 4, 5, 6, 1],
        ))
        .score(1, 2)
        .serves(B, 3)
        .stand(A, &[2, 3, 4, 5, 6, 1]);
}

/// 15.9.2: found after the rally the point comes in addition, whoever won it (match-log contract).
#[test]
fn r15_9_2_found_after_the_rally_the_point_comes_in_addition() {
    Story::international()
        .rallies("AAB")
        .enter(late(A, IllegalSubstitution, since(1, 0), AfterRally))
        .score(1, 2)
        .serves(B, 2);
    Story::international()
        .rallies("AAB")
        .enter(late(A, IllegalSubstitution, None, AfterRally))
        .score(2, 2)
        .serves(B, 2);
}

/// 15.9.2: who stands there instead of the player who came in wrongly goes on as before.
#[test]
fn r15_9_2_the_player_who_was_wrongly_taken_out_is_back() {
    Story::international()
        .enter(substitution(A, &[(4, 8)]))
        .rallies("A")
        .insists(
            substitution(A, &[(8, 9)]),
            Refusal::OnlyStarterReturns {
                out: Shirt(8),
                starter: Shirt(4),
            },
        )
        .stand(A, &[1, 2, 3, 9, 5, 6])
        .rallies("AA")
        .enter(put_right(
            A,
            IllegalSubstitution,
            since(1, 0),
            Rally,
            &[1, 2, 3, 8, 5, 6],
        ))
        .score(1, 1)
        .stand(A, &[1, 2, 3, 8, 5, 6]);
}

/// 15.9.2: of the receiving team: the server goes on.
#[test]
fn r15_9_2_of_the_receiving_team() {
    Story::international()
        .rallies("AAAA")
        .enter(put_right(
            B,
            IllegalSubstitution,
            since(2, 0),
            Rally,
            &[1, 2, 3, 4, 5, 6],
        ))
        .score(5, 0)
        .serves(A, 1);
}

/// 19.3.2.9: an illegal libero replacement found after the hit is treated like an illegal
/// substitution; the libero leaves.
#[test]
fn r19_3_2_9_an_illegal_libero_replacement_played() {
    Story::international()
        .rallies("AA")
        .insists(libero(A, 4, 12), Refusal::BackRowOnly { number: Shirt(4) })
        .rallies("A")
        .enter(put_right(
            A,
            IllegalLibero,
            since(2, 0),
            Rally,
            &[1, 2, 3, 4, 5, 6],
        ))
        .score(2, 1)
        .serves(B, 2)
        .stand(A, &[1, 2, 3, 4, 5, 6])
        .without("libero_must_leave");
}

/// 7.3.5.3: a line-up that differs from the sheet, found in the set.
#[test]
fn r7_3_5_3_a_wrong_line_up_from_the_start() {
    Story::international()
        .rallies("AAAAB")
        .enter(put_right(
            A,
            WrongLineUp,
            since(0, 0),
            Rally,
            &[1, 2, 3, 4, 6, 5],
        ))
        .score(0, 2)
        .serves(B, 2)
        .stand(A, &[1, 2, 3, 4, 6, 5]);
}

/// 7.3.5.4: a player who is not on the list, in this set.
#[test]
fn r7_3_5_4_an_unregistered_player_in_this_set() {
    Story::international()
        .rallies("AAAAAABBA")
        .enter(put_right(
            A,
            UnregisteredPlayer,
            since(0, 0),
            Rally,
            &[1, 2, 3, 4, 5, 6],
        ))
        .score(0, 3)
        .serves(B, 3);
}

/// 7.3.5.4: since the start of an earlier set: that one and every later one won are lost 0-25.
#[test]
fn r7_3_5_4_an_unregistered_player_loses_the_sets_won_since() {
    let mut story = Story::international();
    story
        .set_to(A)
        .sets_out()
        .set_to(B)
        .sets_out()
        .set_to(A)
        .sets_out()
        .rallies("AAB")
        .enter(late(A, UnregisteredPlayer, since_in(1, 0, 0), Rally))
        .sets(&[(0, 25), (0, 25), (0, 25)])
        .won_by(Some(B));
    assert_eq!(
        story.timeline().state().ended(),
        Some(DecidedBy::Unregistered)
    );
}

/// The same since the second set: the first one stands, the match goes on.
#[test]
fn r7_3_5_4_sets_before_the_player_came_in_stand() {
    Story::international()
        .set_to(A)
        .sets_out()
        .set_to(A)
        .sets_out()
        .rallies("AAB")
        .enter(late(A, UnregisteredPlayer, since_in(2, 0, 0), Rally))
        .sets(&[(25, 0), (0, 25)])
        .phase(Phase::Playing)
        .score(0, 2);
}

/// The same found between the sets: the last set is not opened again, nobody is on court.
#[test]
fn r7_3_5_4_found_between_the_sets_nothing_is_opened_again() {
    Story::international()
        .set_to(A)
        .sets_out()
        .set_to(B)
        .line_ups()
        .enter(late(A, UnregisteredPlayer, since_in(1, 0, 0), AfterRally))
        .sets(&[(0, 25), (0, 25)])
        .phase(Phase::BetweenSets)
        .enter(Kind::BeginSet)
        .serves(A, 1);
}

/// The same found after the match: 7.3.5.4 loses the points and sets won since, the casebook of 2024 (case
/// 4.22) the match, so the core asks and the result stands until it is answered (match-log contract).
#[test]
fn r7_3_5_4_found_after_the_match_the_core_asks() {
    let found = |set| {
        let mut story = Story::international();
        story
            .set_to(A)
            .sets_out()
            .set_to(A)
            .sets_out()
            .set_to(A)
            .enter(late(A, UnregisteredPlayer, since_in(set, 0, 0), AfterRally))
            .won_by(Some(A));
        let entry = story.last();
        story.notices(&Notice::Question { entry });
        let question = story.timeline().state().questions()[0].clone();
        assert_eq!(question.ask.choices(), ["lose_match", "lose_set"]);
        let (words, choices) = text::question(&question, story.timeline().state().into());
        assert!(
            words.contains("Otters") && words.contains("competition"),
            "{words}"
        );
        assert_eq!(choices.len(), 2);
        (story, entry)
    };
    let (mut story, entry) = found(2);
    story
        .enter(answer(entry, "lose_set"))
        .sets(&[(25, 0), (0, 25), (0, 25)])
        .phase(Phase::BetweenSets)
        .sets_out()
        .set_to(A)
        .phase(Phase::BetweenSets);
    let (mut story, entry) = found(1);
    story
        .enter(answer(entry, "lose_set"))
        .sets(&[(0, 25), (0, 25), (0, 25)])
        .won_by(Some(B));
    let (mut story, entry) = found(3);
    story
        .enter(answer(entry, "lose_match"))
        .sets(&[(0, 25), (0, 25), (0, 25)])
        .won_by(Some(B))
        .without("question");
    assert_eq!(
        story.timeline().state().ended(),
        Some(DecidedBy::Unregistered)
    );
}

/// 19.1.3: the right places have one libero at most.
#[test]
fn r19_1_3_the_right_places_have_one_libero() {
    Story::two_liberos()
        .rallies("A")
        .refuses(
            put_right(A, IllegalLibero, since(0, 0), Rally, &[1, 2, 3, 4, 11, 12]),
            "19.1.3",
            Refusal::LiberoOnCourt { number: Shirt(11) },
        )
        .enter(put_right(
            A,
            IllegalLibero,
            since(0, 0),
            Rally,
            &[1, 2, 3, 4, 11, 6],
        ))
        .stand(A, &[1, 2, 3, 4, 11, 6]);
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

/// 7.3.1 and 4.1.3: the right places are a whole line-up of listed players.
#[test]
fn r7_3_1_the_right_places_are_a_whole_line_up() {
    Story::international()
        .rallies("A")
        .refuses_even_so(
            put_right(A, WrongLineUp, since(0, 0), Rally, &[1, 2, 3]),
            "7.3.1",
            Refusal::LineUpSize {
                numbers: 3,
                needed: 6,
            },
        )
        .refuses_even_so(
            put_right(A, WrongLineUp, since(0, 0), Rally, &[1, 2, 3, 4, 5, 44]),
            "4.1.3",
            Refusal::NotListed {
                team: A,
                number: Shirt(44),
            },
        )
        .score(1, 0);
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

/// 15.11.2: a late fault is no delay and no request.
#[test]
fn r15_11_a_late_fault_leaves_the_ladders_alone() {
    Story::international()
        .enter(late(A, Rotation, since(0, 0), Rally))
        .enter(improper(A))
        .sanctions(&[(1, A, "improper_request", (0, 1))]);
}

/// 7.7.1.2: without `positions` the order of the faulty side stays as the log has it; with them the
/// starters, the substitutes and their bonds stay with their places.
#[test]
fn r7_7_1_2_bonds_stay_with_the_players_who_are_put_right() {
    let story = &mut Story::international();
    story
        .enter(substitution(A, &[(4, 8)]))
        .rallies("A")
        .enter(put_right(
            A,
            Rotation,
            since(0, 0),
            Rally,
            &[2, 3, 8, 5, 6, 1],
        ))
        .stand(A, &[2, 3, 8, 5, 6, 1])
        .rallies("B")
        .refuses(
            substitution(A, &[(8, 9)]),
            "15.6.2",
            Refusal::OnlyStarterReturns {
                out: Shirt(8),
                starter: Shirt(4),
            },
        )
        .enter(substitution(A, &[(8, 4)]));
    let sides: &ByTeam<_> = &story.timeline().state().play().expect("playing").sides;
    assert_eq!(sides.a.substitutions, 2);
}

/// 15.6.1: a starter whose place somebody else was put into comes back in it.
#[test]
fn r15_6_1_the_starter_returns_for_a_player_who_was_put_in_his_place() {
    Story::international()
        .rallies("AA")
        .enter(put_right(
            B,
            WrongLineUp,
            since(1, 0),
            Rally,
            &[1, 2, 3, 7, 5, 6],
        ))
        .enter(substitution(B, &[(7, 4)]))
        .stand(B, &[1, 2, 3, 4, 5, 6]);
}

/// 15.9.2: a change that was put right never was; the place goes on as before it.
#[test]
fn r15_9_2_an_illegal_change_that_was_undone_never_was() {
    Story::international()
        .rallies("A")
        .enter(substitution(B, &[(4, 7)]))
        .rallies("A")
        .enter(put_right(
            B,
            IllegalSubstitution,
            since(1, 0),
            Rally,
            &[1, 2, 3, 4, 5, 6],
        ))
        .enter(substitution(B, &[(4, 8)]));
}

/// 15.9.2: the point comes before the points are cancelled, so a set beyond 25 ends one higher.
#[test]
fn r15_9_2_the_point_comes_before_the_cancelling() {
    Story::international()
        .rallies(&"AB".repeat(26))
        .score(26, 26)
        .enter(late(A, IllegalSubstitution, since(20, 20), Rally))
        .sets(&[(20, 27)]);
    // Found after a set that the team at fault had won.
    Story::international()
        .rallies(&"AB".repeat(25))
        .rallies("AA")
        .sets(&[(27, 25)])
        .enter(late(A, IllegalSubstitution, since(20, 20), AfterRally))
        .sets(&[(20, 26)]);
}

/// 7.3.5.4: for a player who was not on the list a revised line-up is given: who is put in starts the
/// set, and whoever is listed may still come in once.
#[test]
fn r7_3_5_4_a_revised_line_up_has_a_new_starter() {
    let story = &mut Story::international();
    story
        .rallies("AA")
        .enter(put_right(
            B,
            UnregisteredPlayer,
            since(0, 0),
            Rally,
            &[1, 2, 3, 7, 5, 6],
        ))
        .rallies("A")
        .enter(substitution(B, &[(7, 8)]))
        .rallies("A")
        .refuses(
            substitution(B, &[(8, 4)]),
            "15.6.2",
            Refusal::OnlyStarterReturns {
                out: Shirt(8),
                starter: Shirt(7),
            },
        )
        .enter(substitution(B, &[(8, 7)]))
        .rallies("A")
        .enter(substitution(B, &[(5, 4)]));
}

/// 21.5: a penalty given between two sets counts in the next one, though the match was over in
/// between: number 9 of B had played the first set without being on the list.
#[test]
fn r21_5_a_penalty_outlives_the_end_of_a_match_that_goes_on() {
    let mut rules = rules::Preset::International.rules();
    rules.sets = rules::Sets::BestOf(3);
    Story::by(rules)
        .set_to(B)
        .sets_out()
        .set_to(A)
        .enter(card(A, coach(), Level::Penalty))
        .enter(late(B, UnregisteredPlayer, since_in(1, 0, 0), AfterRally))
        .won_by(Some(A))
        .enter(late(A, Rotation, since(24, 0), AfterRally))
        .score(24, 1)
        .enter(incomplete(A, Scope::Set))
        .sets(&[(25, 0), (24, 26)])
        .enter(crate::story::toss(B, A))
        .sets_out()
        .score(0, 1);
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

/// 7.3.5.4: a set that was lost for an unregistered player is not decided once more.
#[test]
fn r7_3_5_4_a_set_is_lost_once() {
    Story::international()
        .set_to(B)
        .sets_out()
        .enter(late(B, UnregisteredPlayer, since_in(1, 0, 0), Rally))
        .sets(&[(25, 0)])
        .refuses(
            late(A, UnregisteredPlayer, since_in(1, 0, 0), Rally),
            "6.4",
            Refusal::NotByPlay { set: 1 },
        );
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

/// FIVB Casebook 2024, case 4.22, and 7.3.5.4: found after a set, that set is lost to nothing and is not played
/// on, whenever the player came in; the opponent keeps what it has beyond the target.
#[test]
fn r7_3_5_4_found_after_the_set_the_set_is_lost() {
    for moment in [since(0, 0), since(10, 0), None] {
        Story::international()
            .set_to(A)
            .enter(late(A, UnregisteredPlayer, moment, AfterRally))
            .phase(Phase::BetweenSets)
            .sets(&[(0, 25)])
            .sets_out()
            .serves(B, 1);
    }
    Story::international()
        .rallies(&"AB".repeat(24))
        .rallies("BB")
        .sets(&[(24, 26)])
        .enter(late(A, UnregisteredPlayer, since(0, 0), AfterRally))
        .sets(&[(0, 26)])
        .phase(Phase::BetweenSets);
    Story::international()
        .rallies(&"AB".repeat(27))
        .rallies("AA")
        .enter(late(A, UnregisteredPlayer, since(0, 0), AfterRally))
        .sets(&[(0, 27)]);
}

/// 7.3.5.4: points in the sets that the team lost since go as well (match-log contract).
#[test]
fn r7_3_5_4_points_in_sets_that_were_lost_go_as_well() {
    Story::international()
        .set_to(A)
        .sets_out()
        .rallies(&"A".repeat(20))
        .set_to(B)
        .sets_out()
        .rallies(&"AB".repeat(25))
        .rallies("BB")
        .sets(&[(25, 0), (20, 25), (25, 27)])
        .sets_out()
        .rallies("AAB")
        .enter(late(A, UnregisteredPlayer, since_in(2, 0, 0), Rally))
        .sets(&[(25, 0), (0, 25), (0, 27)])
        .score(0, 2)
        .phase(Phase::Playing);
}

/// 7.3.5.4: after a set `positions` are the revised line-up of the next one, where that team's line-up is in
/// already; else the team hands one in anyway (match-log contract).
#[test]
fn r7_3_5_4_the_next_line_up_is_revised_where_it_is_in() {
    let revised =
        |places: &[u16]| put_right(A, UnregisteredPlayer, since(0, 0), AfterRally, places);
    Story::international()
        .set_to(B)
        .line_ups()
        .enter(substitution(B, &[(4, 8)]))
        .refuses(
            revised(&[1, 2, 3, 12, 5, 6]),
            "19.3.2.3",
            Refusal::LiberoInLineUp { number: Shirt(12) },
        )
        .enter(revised(&[1, 2, 3, 7, 5, 6]))
        .stand(A, &[1, 2, 3, 7, 5, 6])
        .stand(B, &[1, 2, 3, 8, 5, 6])
        .substitutions(B, 1, 0)
        .enter(Kind::BeginSet)
        .enter(substitution(A, &[(7, 4)]));
    Story::international()
        .set_to(B)
        .enter(revised(&[1, 2, 3, 7, 5, 6]))
        .notices(&Notice::LineUp { team: A })
        .sets_out()
        .stand(A, &[1, 2, 3, 4, 5, 6]);
}

/// 7.3.5.4: the substitution that brought an unregistered player in counts no more.
#[test]
fn r7_3_5_4_the_substitution_of_an_unregistered_player_counts_no_more() {
    Story::international()
        .rallies("A")
        .enter(substitution(A, &[(4, 8)]))
        .rallies("A")
        .enter(put_right(
            A,
            UnregisteredPlayer,
            since(1, 0),
            Rally,
            &[1, 2, 3, 4, 5, 6],
        ))
        .score(1, 1)
        .substitutions(A, 0, 0);
    // Another player takes the place: the place begins anew with that one.
    Story::international()
        .enter(substitution(A, &[(4, 8)]))
        .rallies("A")
        .enter(put_right(
            A,
            UnregisteredPlayer,
            since(0, 0),
            Rally,
            &[1, 2, 3, 9, 5, 6],
        ))
        .substitutions(A, 0, 0)
        .enter(substitution(A, &[(9, 10)]))
        .substitutions(A, 1, 0);
}

/// 15.9.2.2: an illegal substitution that is put right counts no more; a legal one before it does.
#[test]
fn r15_9_2_2_an_illegal_substitution_put_right_counts_no_more() {
    Story::international()
        .enter(substitution(A, &[(4, 8)]))
        .rallies("A")
        .insists(
            substitution(A, &[(8, 9)]),
            Refusal::OnlyStarterReturns {
                out: Shirt(8),
                starter: Shirt(4),
            },
        )
        .substitutions(A, 2, 0)
        .rallies("A")
        .enter(put_right(
            A,
            IllegalSubstitution,
            since(1, 0),
            Rally,
            &[1, 2, 3, 8, 5, 6],
        ))
        .substitutions(A, 1, 0)
        .enter(substitution(A, &[(8, 4)]))
        .substitutions(A, 2, 0)
        .rallies("B");
    // Without `positions` nothing is put right, so it counts.
    Story::international()
        .enter(substitution(A, &[(4, 8)]))
        .rallies("A")
        .enter(late(A, IllegalSubstitution, since(0, 0), Rally))
        .substitutions(A, 1, 0);
}

/// 15.9.2.2 with 15.7: nor does an exceptional one, and whom it had taken out may play again.
#[test]
fn r15_9_2_2_an_exceptional_substitution_put_right_takes_nobody_out() {
    use game::entry::Forced;
    Story::international()
        .enter(substitution(A, &[(4, 8)]))
        .rallies("A")
        .enter(substitution(A, &[(8, 4)]))
        .rallies("A")
        .enter(crate::story::forced(A, 4, 9, Forced::Injury))
        .substitutions(A, 2, 1)
        .rallies("A")
        .enter(put_right(
            A,
            IllegalSubstitution,
            since(2, 0),
            Rally,
            &[1, 2, 3, 4, 5, 6],
        ))
        .substitutions(A, 2, 0)
        .without("must_substitute")
        .set_to(B)
        .sets_out()
        .stand(A, &[1, 2, 3, 4, 5, 6]);
}
