//! Chains of events in which several rules meet: liberos one after the other, players who are on no list
//! through several sets, and what is taken while play is interrupted. Each is counted out from the rules
//! named in its comment.

use game::entry::Fault::{IllegalSubstitution, Rotation, UnregisteredPlayer};
use game::entry::Found::{AfterRally, Rally};
use game::entry::LiberoWhy::{Declared, Unable};
use game::entry::{Court, Forced, Scope};
use game::{Kind, Level, Notice, Phase, Refusal};
use rules::{Preset, Shirt, Team};
use Team::{A, B};

use crate::story::{
    answer, card, change, coach, delay, forced, hurt, incomplete, late, libero, new_libero, player,
    put_right, rejected, resume, since, since_in, strike, substitution, suspend, toss, Story,
};
use crate::support::line_up;

/// 19.4.2.4 with 19.3.2.1: three liberos in one interruption, each the acting one who becomes unable.
#[test]
fn r19_4_2_4_one_acting_libero_after_another_becomes_unable() {
    Story::international()
        .enter(libero(B, 5, 12))
        .enter(hurt(B, 12))
        .enter(new_libero(B, &[12], 9, Unable))
        .enter(libero(B, 12, 9))
        .enter(hurt(B, 9))
        .enter(new_libero(B, &[9], 10, Unable))
        .enter(libero(B, 9, 10))
        .stand(B, &[1, 2, 3, 4, 10, 6])
        .refuses(libero(B, 10, 5), "19.3.2.1", Refusal::RallyBetween)
        .rallies("A")
        .enter(libero(B, 10, 5));
}

/// 19.4.2.2: of a chain the second is only declared unable: the regular player first, and after a rally.
#[test]
fn r19_4_2_2_a_chain_that_ends_with_a_declaration() {
    Story::international()
        .enter(libero(B, 5, 12))
        .enter(new_libero(B, &[12], 9, Unable))
        .enter(libero(B, 12, 9))
        .enter(new_libero(B, &[9], 10, Declared))
        .refuses(
            libero(B, 9, 10),
            "19.4.2.2",
            Refusal::RegularReturnsFirst {
                libero: Shirt(9),
                replaced: Shirt(5),
            },
        )
        .refuses(libero(B, 9, 5), "19.3.2.1", Refusal::RallyBetween)
        .rallies("A")
        .enter(libero(B, 9, 5))
        .refuses(libero(B, 5, 10), "19.3.2.1", Refusal::RallyBetween)
        .rallies("A")
        .enter(libero(B, 5, 10));
}

/// 19.4.2.2: a declaration of the last interruption is not forgotten: the regular player still returns first.
#[test]
fn r19_4_2_2_a_declaration_holds_until_the_libero_leaves() {
    Story::international()
        .rallies("B")
        .enter(libero(A, 6, 12))
        .rallies("B")
        .enter(new_libero(A, &[12], 9, Declared))
        .rallies("BB")
        .refuses(
            libero(A, 12, 9),
            "19.4.2.2",
            Refusal::RegularReturnsFirst {
                libero: Shirt(12),
                replaced: Shirt(6),
            },
        )
        .enter(libero(A, 12, 6))
        .rallies("B")
        .enter(libero(A, 6, 9));
}

/// 19.4.3.1: of two liberos both are declared unable, one of them acting: he or she leaves first.
#[test]
fn r19_4_3_1_both_declared_unable_while_one_is_acting() {
    Story::two_liberos()
        .enter(libero(B, 5, 12))
        .rallies("A")
        .enter(new_libero(B, &[12, 11], 9, Declared))
        .refuses(
            libero(B, 12, 9),
            "19.4.2.2",
            Refusal::RegularReturnsFirst {
                libero: Shirt(12),
                replaced: Shirt(5),
            },
        )
        .enter(libero(B, 12, 5))
        .rallies("A")
        .enter(libero(B, 5, 9));
}

/// 19.3.2.1 with 6.1.3: a penalty is a completed rally, so a declared libero leaves and the new one comes after
/// another.
#[test]
fn r19_3_2_1_penalties_between_a_declaration_and_the_new_libero() {
    Story::international()
        .enter(libero(B, 6, 12))
        .enter(new_libero(B, &[12], 9, Declared))
        .enter(card(B, coach(), Level::Penalty))
        .enter(libero(B, 12, 6))
        .refuses(libero(B, 6, 9), "19.3.2.1", Refusal::RallyBetween)
        .enter(card(B, player(7), Level::Penalty))
        .enter(libero(B, 6, 9))
        .score(2, 0);
}

/// 19.3.2.1: a strike of the rally between takes the replacement after it with it.
#[test]
fn r19_3_2_1_a_rally_taken_back_was_not_between() {
    let mut story = Story::international();
    story
        .enter(libero(B, 5, 12))
        .enter(new_libero(B, &[12], 9, Declared))
        .rallies("A");
    let rally = story.last();
    story
        .enter(libero(B, 12, 5))
        .enter(strike(rally))
        .stand(B, &[1, 2, 3, 4, 12, 6])
        .refuses(libero(B, 12, 5), "19.3.2.1", Refusal::RallyBetween);
}

/// 15.8 and 19.3.2.1: the player behind the libero is sent off and substituted, the libero is hurt: the
/// substitute comes in at once.
#[test]
fn r15_8_the_substitute_of_the_replaced_player_comes_in_for_a_hurt_libero() {
    Story::international()
        .enter(libero(B, 5, 12))
        .enter(card(B, player(5), Level::Disqualification))
        .enter(hurt(B, 12))
        .enter(forced(B, 5, 8, Forced::Disqualified))
        .stand(B, &[1, 2, 3, 4, 12, 6])
        .enter(libero(B, 12, 8))
        .stand(B, &[1, 2, 3, 4, 8, 6])
        .without("must_substitute");
}

/// 7.3.5.4: on court since the first set; the sets lost in between lose their points, the one at hand is put
/// right, and three sets end the match.
#[test]
fn r7_3_5_4_through_four_sets() {
    Story::international()
        .rallies(&"A".repeat(7))
        .set_to(B)
        .sets_out()
        .set_to(A)
        .sets_out()
        .set_to(A)
        .sets_out()
        .rallies("ABA")
        .enter(late(A, UnregisteredPlayer, since_in(1, 0, 0), Rally))
        .sets(&[(0, 25), (0, 25), (0, 25)])
        .won_by(Some(B));
}

/// 7.3.5.4: since the second set, found before the fourth: the next line-up is revised, the first set stands.
#[test]
fn r7_3_5_4_since_an_earlier_set_found_before_the_next() {
    Story::international()
        .set_to(A)
        .sets_out()
        .set_to(A)
        .sets_out()
        .rallies(&"A".repeat(9))
        .set_to(B)
        .line_ups()
        .enter(put_right(
            A,
            UnregisteredPlayer,
            since_in(2, 0, 0),
            AfterRally,
            &[1, 2, 3, 4, 5, 7],
        ))
        .sets(&[(25, 0), (0, 25), (0, 25)])
        .phase(Phase::BetweenSets)
        .stand(A, &[1, 2, 3, 4, 5, 7])
        .enter(Kind::BeginSet)
        .serves(B, 1);
}

/// 7.3.5.4: since a score inside an earlier set, found between two sets: nothing is lost until it is answered.
#[test]
fn r7_3_5_4_inside_an_earlier_set_the_sets_stand_until_the_answer() {
    let mut story = Story::international();
    story
        .set_to(A)
        .sets_out()
        .set_to(A)
        .enter(late(A, UnregisteredPlayer, since_in(1, 10, 0), AfterRally))
        .sets(&[(25, 0), (25, 0)]);
    let found = story.last();
    story
        .notices(&Notice::Question { entry: found })
        .sets_out()
        .rallies("AB")
        .sets(&[(25, 0), (25, 0)])
        .enter(answer(found, "lose_set"))
        .sets(&[(0, 25), (0, 25)])
        .score(1, 1);
}

/// 7.3.5.4: both teams had a player on court who is on no list: each loses what it won.
#[test]
fn r7_3_5_4_both_teams_one_after_the_other() {
    Story::international()
        .set_to(A)
        .sets_out()
        .set_to(B)
        .sets_out()
        .rallies("AB")
        .enter(late(A, UnregisteredPlayer, since_in(1, 0, 0), Rally))
        .sets(&[(0, 25), (0, 25)])
        .score(0, 2)
        .enter(late(B, UnregisteredPlayer, since_in(2, 0, 0), Rally))
        .sets(&[(0, 25), (25, 0)])
        .score(1, 0)
        .phase(Phase::Playing);
}

/// 7.3.5.4 with 15.9.2.2: the player came in by a substitution and went out again; both changes never were.
#[test]
fn r7_3_5_4_a_substitute_who_came_and_went_never_was_there() {
    Story::international()
        .enter(substitution(A, &[(4, 8)]))
        .rallies("A")
        .enter(substitution(A, &[(8, 4)]))
        .rallies("A")
        .enter(late(A, UnregisteredPlayer, since(0, 0), Rally))
        .score(0, 1)
        // Nobody was put right on court: the record cannot know whose changes these were.
        .substitutions(A, 2, 0);
}

/// 15.9.2.2: two illegal changes in one place, put right back to the starter: both count no more.
#[test]
fn r15_9_2_2_two_illegal_changes_in_one_place() {
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
        .rallies("A")
        .enter(put_right(
            A,
            IllegalSubstitution,
            since(0, 0),
            Rally,
            &[1, 2, 3, 4, 5, 6],
        ))
        .substitutions(A, 0, 0)
        .score(0, 1)
        .enter(substitution(A, &[(4, 10)]))
        .substitutions(A, 1, 0);
}

/// 17.3 with 21.3.1 and 7.7.1.1: a penalty and a wrong server while play is interrupted, then the same court. B
/// has rotated when it won the rally, and does so once more when it gains the service again (6.1.3.2).
#[test]
fn r17_3_a_penalty_and_a_late_fault_while_interrupted() {
    Story::international()
        .rallies("AAB")
        .enter(suspend())
        .enter(card(B, coach(), Level::Penalty))
        .score(3, 1)
        .serves(A, 2)
        .enter(late(A, Rotation, since(1, 0), AfterRally))
        .score(1, 1)
        .serves(B, 3)
        .phase(Phase::Suspended)
        .enter(resume(Court::Same))
        .phase(Phase::Playing)
        .serves(B, 3);
}

/// 17.3 with 7.3.5.4: found between the sets while interrupted: the set is lost, the interruption goes on.
#[test]
fn r17_3_an_unregistered_player_found_while_interrupted_between_the_sets() {
    Story::international()
        .set_to(A)
        .line_ups()
        .enter(suspend())
        .enter(put_right(
            A,
            UnregisteredPlayer,
            since(0, 0),
            AfterRally,
            &[1, 2, 3, 4, 5, 7],
        ))
        .sets(&[(0, 25)])
        .phase(Phase::Suspended)
        .refuses(delay(A), "17.3.1", Refusal::Suspended)
        .enter(resume(Court::Same))
        .stand(A, &[1, 2, 3, 4, 5, 7])
        .enter(Kind::BeginSet)
        .serves(B, 1);
}

/// 7.7.2 with 6.2: while interrupted between the sets the last set is put right and goes on; it is played on
/// after `resume`.
#[test]
fn r7_7_2_a_set_reopened_while_interrupted_goes_on_afterwards() {
    Story::international()
        .set_to(A)
        .enter(suspend())
        .enter(late(A, Rotation, since(24, 0), AfterRally))
        .phase(Phase::Suspended)
        .sets(&[])
        .score(24, 1)
        .enter(resume(Court::Same))
        .phase(Phase::Playing)
        .serves(B, 2)
        .rallies("A")
        .sets(&[(25, 1)]);
}

/// 17.3.2.2 with 6.4.3: cancelled on another court, and then a team is incomplete for the set: 0 to the target,
/// and the sides change for the next one (18.2.1).
#[test]
fn r6_4_3_incomplete_before_the_set_is_played_again() {
    let mut story = Story::international();
    story
        .rallies("AAB")
        .enter(suspend())
        .enter(resume(Court::Other))
        .enter(incomplete(A, Scope::Set))
        .sets(&[(0, 25)]);
    assert_eq!(story.timeline().state().left(), Some(A));
    story.sets_out().serves(B, 1);
    assert_eq!(story.timeline().state().left(), Some(B));
}

/// 17.3.2.2 with 21.3.3.1 and 15.3.2: the opener's side has a new line-up and a substitution before the other
/// side's line-up is in: who serves is named all the time.
#[test]
fn r17_3_2_2_line_ups_come_one_by_one_on_another_court() {
    let mut story = Story::international();
    story
        .enter(card(A, player(1), Level::Disqualification))
        .enter(card(B, player(1), Level::Disqualification))
        .enter(suspend())
        .enter(resume(Court::Other));
    assert_eq!(story.timeline().state().serving(), Some((A, None)));
    story
        .enter(line_up(B, &[7, 2, 3, 4, 5, 6]))
        .notices(&Notice::LineUp { team: A });
    assert_eq!(story.timeline().state().serving(), Some((A, None)));
    story
        .enter(line_up(A, &[8, 2, 3, 4, 5, 6]))
        .serves(A, 8)
        .enter(substitution(A, &[(8, 9)]))
        .serves(A, 9)
        .enter(Kind::BeginSet)
        .serves(A, 9);
}

/// 15.10.4 with 15.2.3: beside the open legal part a forced change is granted, and takes nothing from it.
#[test]
fn r15_10_4_a_forced_change_beside_the_open_part() {
    Story::international()
        .enter(substitution(A, &[(4, 8)]))
        .rallies("A")
        .enter(rejected(A))
        .refuses(
            substitution(A, &[(5, 9), (6, 11), (8, 10)]),
            "15.6.2",
            Refusal::PartlyIllegal {
                legal: vec![change(5, 9), change(6, 11)],
                because: Box::new(Refusal::OnlyStarterReturns {
                    out: Shirt(8),
                    starter: Shirt(4),
                }),
            },
        )
        .enter(forced(A, 2, 7, Forced::Injury))
        .enter(substitution(A, &[(6, 11)]))
        .refuses(
            substitution(A, &[(5, 9)]),
            "15.2.4",
            Refusal::RequestBarred { team: A },
        )
        .stand(A, &[1, 7, 3, 8, 5, 11]);
}

/// 15.10.4 before the first service: the same, and the first rally closes it.
#[test]
fn r15_10_4_the_open_part_before_the_first_service() {
    let mut story = Story::listed(Preset::International.rules(), &[12]);
    story
        .enter(toss(A, A))
        .line_ups()
        .enter(rejected(A))
        .refuses(
            substitution(A, &[(4, 8), (5, 12)]),
            "15.5.1",
            Refusal::PartlyIllegal {
                legal: vec![change(4, 8)],
                because: Box::new(Refusal::LiberoNoSubstitute { number: Shirt(12) }),
            },
        )
        .enter(Kind::BeginSet)
        .enter(substitution(A, &[(4, 8)]))
        .stand(A, &[1, 2, 3, 8, 5, 6]);
}
