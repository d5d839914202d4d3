//! Naming a new libero (19.4).

use game::entry::LiberoWhy::{Declared, Unable};
use game::{Barred, Kind, Level, Notice, OutFor, Refusal};
use rules::{Preset, Shirt, Team};
use Team::{A, B};

use crate::story::{card, hurt, libero, new_libero, player, substitution, Story};
use crate::support::line_up;

fn redesignated() -> Refusal {
    Refusal::PlayerBarred {
        number: Shirt(12),
        why: Barred::Out(OutFor::Redesignated),
    }
}

/// 19.4.2.1 and 19.4.2.2: the acting libero becomes unable to play: the new one comes in at once, the
/// old one plays no more in the match.
#[test]
fn r19_4_2_2_after_an_injury_the_new_libero_comes_in_at_once() {
    Story::international()
        .rallies("A")
        .enter(libero(A, 5, 12))
        .enter(hurt(A, 12))
        .enter(new_libero(A, &[12], 9, Unable))
        .enter(libero(A, 12, 9))
        .stand(A, &[1, 2, 3, 4, 9, 6])
        .substitutions(A, 0, 0)
        .rallies("A")
        .refuses(substitution(A, &[(4, 12)]), "19.4.2.2", redesignated())
        .enter(libero(A, 9, 5))
        .set_to(A)
        .refuses(line_up(A, &[1, 2, 3, 4, 5, 12]), "19.4.2.2", redesignated());
}

/// 19.4.1 and 19.3.2.1: once the replaced player is back, the libero who was hurt is no longer the acting
/// one, and the new one waits for a completed rally like any other (match-log contract).
#[test]
fn r19_3_2_1_the_new_libero_waits_after_the_replaced_player_was_back() {
    Story::international()
        .enter(libero(A, 5, 12))
        .enter(hurt(A, 12))
        .enter(libero(A, 12, 5))
        .enter(new_libero(A, &[12], 9, Unable))
        .refuses(libero(A, 5, 9), "19.3.2.1", Refusal::RallyBetween)
        .rallies("A")
        .enter(libero(A, 5, 9))
        .stand(A, &[1, 2, 3, 4, 9, 6]);
}

/// 19.4.2.2 and FIVB Casebook 2024, case 5.23: declared unable, the replaced player comes back and the
/// new libero waits for a completed rally.
#[test]
fn r19_4_2_2_after_a_declaration_the_regular_player_returns_first() {
    let returns_first = || Refusal::RegularReturnsFirst {
        libero: Shirt(12),
        replaced: Shirt(5),
    };
    Story::international()
        .enter(libero(A, 5, 12))
        .rallies("A")
        .enter(new_libero(A, &[12], 9, Declared))
        .refuses(libero(A, 12, 9), "19.4.2.2", returns_first())
        .enter(libero(A, 12, 5))
        .refuses(libero(A, 5, 9), "19.3.2.1", Refusal::RallyBetween)
        .rallies("A")
        .enter(libero(A, 5, 9))
        .stand(A, &[1, 2, 3, 4, 9, 6]);
}

/// 19.4.2.2: a libero who was not on court can be declared unable just as well.
#[test]
fn r19_4_2_2_a_libero_on_the_bench_is_declared_unable() {
    Story::international()
        .enter(new_libero(A, &[12], 9, Declared))
        .refuses_even_so(
            libero(A, 5, 12),
            "19.1.2",
            Refusal::NotALibero { number: Shirt(12) },
        )
        .enter(libero(A, 5, 9));
}

/// 19.4.2.1: anybody not on court, but not the player the acting libero stands in for.
#[test]
fn r19_4_2_1_the_replaced_player_cannot_become_the_libero() {
    Story::international().enter(libero(A, 5, 12)).refuses(
        new_libero(A, &[12], 5, Unable),
        "19.4.2.1",
        Refusal::ReplacedPlayer { number: Shirt(5) },
    );
}

/// 19.4.2.1: nobody who is on court.
#[test]
fn r19_4_2_1_nobody_on_court_becomes_the_libero() {
    Story::international()
        .refuses_under(new_libero(A, &[12], 4, Unable), "19.4.2.1")
        .stand(A, &[1, 2, 3, 4, 5, 6]);
}

/// 19.4.2.1 and 19.3.2.3: nor anybody in a line-up handed in, though the other one is still missing.
#[test]
fn r19_4_2_1_nobody_in_the_coming_line_up_becomes_the_libero() {
    Story::international()
        .set_to(A)
        .enter(line_up(A, &[1, 2, 3, 4, 5, 9]))
        .refuses_under(new_libero(A, &[12], 9, Declared), "19.4.2.1")
        .enter(new_libero(A, &[12], 10, Declared));
}

/// 19.4.2.1: somebody listed.
#[test]
fn r4_1_3_nobody_unlisted_becomes_the_libero() {
    Story::international().refuses_even_so(
        new_libero(A, &[12], 44, Unable),
        "4.1.3",
        Refusal::NotListed {
            team: A,
            number: Shirt(44),
        },
    );
}

/// 19.4.2.1: and no libero already.
#[test]
fn r19_4_2_1_a_libero_is_not_named_again() {
    Story::international().refuses(
        new_libero(A, &[12], 12, Unable),
        "19.4.2.1",
        Refusal::AlreadyLibero { number: Shirt(12) },
    );
    Story::two_liberos().refuses(
        new_libero(A, &[12], 11, Unable),
        "19.4.2.1",
        Refusal::AlreadyLibero { number: Shirt(11) },
    );
}

/// 19.4: who is replaced is a libero.
#[test]
fn r19_1_2_only_a_libero_is_replaced_by_a_new_one() {
    Story::international().refuses_even_so(
        new_libero(A, &[8], 9, Unable),
        "19.1.2",
        Refusal::NotALibero { number: Shirt(8) },
    );
}

/// 19.4.3.1: of two liberos one goes on, so no new one is named.
#[test]
fn r19_4_3_1_the_other_libero_goes_on() {
    Story::two_liberos()
        .enter(libero(A, 5, 12))
        .enter(hurt(A, 12))
        .refuses(
            new_libero(A, &[12], 9, Unable),
            "19.4.3.1",
            Refusal::OtherLibero { number: Shirt(11) },
        )
        .enter(libero(A, 12, 11));
}

/// FIVB Casebook 2024, case 5.25: both declared unable at the same time: one new libero.
#[test]
fn r19_4_3_1_both_may_be_declared_unable_at_once() {
    Story::two_liberos()
        .enter(new_libero(A, &[12, 11], 9, Declared))
        .rallies("A")
        .enter(libero(A, 5, 9))
        .rallies("A")
        .refuses_even_so(
            libero(A, 6, 11),
            "19.1.2",
            Refusal::NotALibero { number: Shirt(11) },
        );
}

/// 19.4.3.1: the other one cannot go on while expelled.
#[test]
fn r19_4_3_1_an_expelled_other_libero_does_not_go_on() {
    Story::two_liberos()
        .enter(card(A, player(11), Level::Expulsion))
        .enter(libero(A, 5, 12))
        .enter(hurt(A, 12))
        .enter(new_libero(A, &[12], 9, Unable))
        .enter(libero(A, 12, 9));
}

/// 19.4.2.4: a new libero can be replaced by another.
#[test]
fn r19_4_2_4_another_one_may_follow() {
    Story::international()
        .enter(new_libero(A, &[12], 9, Declared))
        .rallies("A")
        .enter(libero(A, 5, 9))
        .rallies("A")
        .enter(new_libero(A, &[9], 10, Unable))
        .enter(libero(A, 9, 10))
        .stand(A, &[1, 2, 3, 4, 10, 6]);
}

/// 19.4.2.5: the team captain may become the libero.
#[test]
fn r19_4_2_5_the_captain_may_become_the_libero() {
    Story::international()
        .enter(substitution(A, &[(1, 7)]))
        .rallies("A")
        .enter(new_libero(A, &[12], 1, Declared))
        .rallies("A")
        .enter(libero(A, 5, 1))
        .stand(A, &[7, 2, 3, 4, 1, 6]);
}

/// FIVB Casebook 2024, cases 5.8 and 5.23: the replaced player first comes back and is substituted.
#[test]
fn r19_4_2_1_the_replaced_player_first_comes_back_and_is_substituted() {
    Story::international()
        .enter(libero(A, 5, 12))
        .rallies("A")
        .enter(libero(A, 12, 5))
        .enter(substitution(A, &[(5, 8)]))
        .enter(new_libero(A, &[12], 5, Declared))
        .refuses(libero(A, 6, 5), "19.3.2.1", Refusal::RallyBetween)
        .rallies("A")
        .enter(libero(A, 6, 5))
        .stand(A, &[1, 2, 3, 4, 8, 5]);
}

/// 15.5.1: the new libero takes no part in substitutions, and is in no line-up.
#[test]
fn r19_4_2_the_new_libero_is_a_libero_in_everything() {
    Story::international()
        .enter(new_libero(A, &[12], 9, Declared))
        .refuses(
            substitution(A, &[(4, 9)]),
            "15.5.1",
            Refusal::LiberoNoSubstitute { number: Shirt(9) },
        )
        .set_to(A)
        .refuses(
            line_up(A, &[1, 2, 3, 4, 5, 9]),
            "19.3.2.3",
            Refusal::LiberoInLineUp { number: Shirt(9) },
        );
}

/// FIVB Casebook 2024, case 5.4: an expelled libero is replaced by a new one and is out for the match.
#[test]
fn r19_4_2_2_an_expelled_libero_who_is_replaced_is_out_for_the_match() {
    Story::international()
        .enter(libero(A, 5, 12))
        .enter(card(A, player(12), Level::Expulsion))
        .enter(new_libero(A, &[12], 9, Unable))
        .enter(libero(A, 12, 9))
        .set_to(A)
        .refuses(line_up(A, &[1, 2, 3, 4, 5, 12]), "19.4.2.2", redesignated());
}

/// 21.3.2.1: an expelled player does not become the libero.
#[test]
fn r21_3_2_1_an_expelled_player_does_not_become_the_libero() {
    Story::international()
        .enter(card(A, player(9), Level::Expulsion))
        .refuses(
            new_libero(A, &[12], 9, Declared),
            "21.3.2.1",
            Refusal::PlayerBarred {
                number: Shirt(9),
                why: Barred::Expelled,
            },
        );
}

/// The referee decides (match-log contract: insist).
#[test]
fn r19_4_insisting_names_one_all_the_same() {
    Story::two_liberos()
        .insists(
            new_libero(A, &[12], 9, Declared),
            Refusal::OtherLibero { number: Shirt(11) },
        )
        .enter(libero(A, 5, 9))
        .stand(A, &[1, 2, 3, 4, 9, 6]);
}

/// 19.3.2.1 and 19.4.1: the acting libero who came in in this interruption and is only declared unable
/// waits for a completed rally before the regular player returns.
#[test]
fn r19_3_2_1_a_declaration_frees_no_libero() {
    Story::international()
        .rallies("A")
        .enter(libero(B, 5, 12))
        .enter(new_libero(B, &[12], 9, Declared))
        .refuses(libero(B, 12, 5), "19.3.2.1", Refusal::RallyBetween)
        .rallies("A")
        .notices(&Notice::LiberoMustLeave {
            team: B,
            player: Shirt(12),
        })
        .enter(libero(B, 12, 5))
        .rallies("A")
        .enter(libero(B, 5, 9))
        .stand(B, &[1, 2, 3, 4, 9, 6]);
}

/// 19.4.1: only the acting libero becomes unable; a libero on the bench frees nobody.
#[test]
fn r19_3_2_1_only_the_acting_libero_gives_way_at_once() {
    Story::international()
        .enter(libero(B, 5, 12))
        .rallies("A")
        .enter(libero(B, 12, 5))
        .enter(new_libero(B, &[12], 9, Unable))
        .refuses(libero(B, 6, 9), "19.3.2.1", Refusal::RallyBetween)
        .rallies("A")
        .enter(libero(B, 6, 9));
}

/// 19.4.2.1: a missing `why` means unable (match-log contract); without a replacement so far there is no
/// rally to wait for, before the first service neither.
#[test]
fn r19_4_2_1_without_a_replacement_so_far_no_rally_is_needed() {
    let said_nothing = Kind::NewLibero {
        team: B,
        replaces: vec![Shirt(12)],
        number: Shirt(9),
        why: None,
    };
    for why in [said_nothing.clone(), new_libero(B, &[12], 9, Declared)] {
        Story::international()
            .enter(why.clone())
            .enter(libero(B, 5, 9))
            .stand(B, &[1, 2, 3, 4, 9, 6]);
        let mut before = Story::listed(Preset::International.rules(), &[12]);
        before
            .enter(crate::story::toss(A, A))
            .line_ups()
            .enter(why)
            .enter(libero(B, 5, 9))
            .enter(Kind::BeginSet)
            .stand(B, &[1, 2, 3, 4, 9, 6]);
    }
    // Of the acting libero it means that he or she has become unable: the new one comes in at once.
    Story::international()
        .enter(libero(B, 5, 12))
        .enter(said_nothing)
        .enter(libero(B, 12, 9))
        .stand(B, &[1, 2, 3, 4, 9, 6]);
}

/// 19.4.1: who was sent off has become unable, whatever the coach calls it.
#[test]
fn r19_4_1_a_libero_sent_off_has_become_unable() {
    for level in [Level::Expulsion, Level::Disqualification] {
        Story::international()
            .enter(libero(A, 5, 12))
            .enter(card(A, player(12), level))
            .enter(new_libero(A, &[12], 9, Declared))
            .enter(libero(A, 12, 9))
            .stand(A, &[1, 2, 3, 4, 9, 6]);
    }
}
