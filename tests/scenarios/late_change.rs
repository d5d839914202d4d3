//! Illegal substitutions, replacements and line-ups found late, and who stands on court then (7.3.5.3, 15.9.2,
//! 19.3.2.9).

use game::entry::Fault::{IllegalLibero, IllegalSubstitution, Rotation, WrongLineUp};
use game::entry::Found::{AfterRally, Rally};
use game::Refusal;
use rules::{ByTeam, Shirt, Team};
use Team::{A, B};

use crate::story::{late, libero, put_right, since, substitution, Story};

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
