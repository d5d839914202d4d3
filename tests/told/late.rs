//! Faults found late (7.3.5, 7.7, 15.9.2, 19.3.2.9). Every combination of rallies, fault, moment and
//! finding is counted out in `late_all`; here are the stories.

use dutystand::game::entry::Fault::{
    IllegalLibero, IllegalSubstitution, Rotation, UnregisteredPlayer, WrongLineUp,
};
use dutystand::game::entry::Found::{AfterRally, Rally};
use dutystand::game::entry::Scope;
use dutystand::game::{How, Kind, Level, Phase, PointFor, Refusal};
use dutystand::rules::{ByTeam, Score, Shirt, Team};
use Team::{A, B};

use crate::story::{
    card, coach, improper, incomplete, late, libero, put_right, since, since_in, substitution,
    time_out, Story,
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
    let play = story.replay().state().play().expect("playing");
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
    assert_eq!(story.replay().state().ended(), Some(How::Unregistered));
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

/// The same found after the match: the sets won since are lost, and the match may be open again.
#[test]
fn r7_3_5_4_found_after_the_match_it_may_be_open_again() {
    let won = || {
        let mut story = Story::international();
        story.set_to(A).sets_out().set_to(A).sets_out().set_to(A);
        story
    };
    won()
        .enter(late(A, UnregisteredPlayer, since_in(2, 0, 0), AfterRally))
        .sets(&[(25, 0), (0, 25), (0, 25)])
        .phase(Phase::BetweenSets)
        .sets_out()
        .set_to(A)
        .phase(Phase::BetweenSets);
    won()
        .enter(late(A, UnregisteredPlayer, since_in(1, 0, 0), AfterRally))
        .sets(&[(0, 25), (0, 25), (0, 25)])
        .won_by(Some(B));
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
fn r7_7_2_a_cancelled_score_never_stood() {
    Story::international()
        .rallies("AAAA")
        .enter(late(A, Rotation, since(2, 0), Rally))
        .score(2, 1)
        .refuses(
            late(B, Rotation, since(4, 0), Rally),
            "7.7.2",
            Refusal::ScoreNeverStood {
                asked: Score { a: 4, b: 0 },
                nearest: Score { a: 2, b: 0 },
            },
        )
        .enter(late(B, Rotation, since(2, 0), Rally))
        .score(3, 0)
        .serves(A, 2);
}

/// FIVB Casebook 2024, case 7.5: an ordinary fault of an earlier set is closed.
#[test]
fn r7_7_2_an_earlier_set_is_closed() {
    for fault in [Rotation, IllegalSubstitution, IllegalLibero, WrongLineUp] {
        Story::international()
            .set_to(A)
            .sets_out()
            .rallies("B")
            .refuses(
                late(A, fault, since_in(1, 3, 0), Rally),
                "7.7.2",
                Refusal::EarlierSet { set: 1, now: 2 },
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
            Refusal::SetNotPlayed { set: 3 },
        )
        .set_to(A)
        .refuses(
            late(A, UnregisteredPlayer, since_in(2, 0, 0), Rally),
            "7.7.2",
            Refusal::SetNotPlayed { set: 2 },
        );
}

/// 6.2: a set that the opponent has won all the same has no further point.
#[test]
fn r6_2_a_won_set_has_no_further_point() {
    for fault in [
        Rotation,
        IllegalSubstitution,
        WrongLineUp,
        UnregisteredPlayer,
    ] {
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
    Story::international()
        .rallies("BBB")
        .set_to(A)
        .enter(late(B, UnregisteredPlayer, since(0, 1), AfterRally))
        .sets(&[(25, 1)])
        .phase(Phase::BetweenSets);
}

/// 7.7.2: before any set there is nothing.
#[test]
fn r7_7_2_nothing_to_put_right_before_the_match() {
    Story::listed(dutystand::rules::Preset::International.rules(), &[12]).refuses_even_so(
        late(A, Rotation, None, Rally),
        "7.7.2",
        Refusal::NothingPlayed,
    );
}

/// 7.3.1 and 4.2.2: the right places are a whole line-up of listed players.
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
            "4.2.2",
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
        .enter(late(B, Rotation, since(24, 0), AfterRally))
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
            "7.7.2",
            Refusal::ScoreNeverStood {
                asked: Score { a: 5, b: 5 },
                nearest: Score::default(),
            },
        );
    let mut story = Story::opened(dutystand::rules::Preset::International.rules());
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
    let sides: &ByTeam<_> = &story.replay().state().play().expect("playing").sides;
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
    let mut rules = dutystand::rules::Preset::International.rules();
    rules.sets = dutystand::rules::Sets::BestOf(3);
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
    let mut rules = dutystand::rules::Preset::International.rules();
    rules.sets = dutystand::rules::Sets::BestOf(3);
    Story::by(rules)
        .set_to(B)
        .sets_out()
        .rallies(&"AB".repeat(24))
        .rallies("AA")
        .enter(crate::story::toss(B, A))
        .line_ups()
        .enter(late(B, UnregisteredPlayer, since_in(1, 0, 0), AfterRally))
        .won_by(Some(A))
        .enter(late(B, Rotation, since(24, 24), AfterRally))
        .won_by(Some(A))
        .enter(late(A, IllegalSubstitution, since(0, 0), AfterRally))
        .sets(&[(25, 0), (0, 25)])
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
        .enter(crate::story::resume(dutystand::game::entry::Court::Other))
        .enter(Kind::BeginSet)
        .set_to(A)
        .sets_out()
        .score(1, 0);
}
