//! Forced and exceptional substitutions, recovery time (15.7, 15.8, 17.1.2).

use game::entry::{By, Forced, ReplayWhy, Scope};
use game::{Asked, Barred, InSet, Kind, Level, Notice, OutFor, Refusal};
use rules::{Preset, Shirt, Team};
use Team::{A, B};

use crate::story::{
    card, change, forced, incomplete, libero, player, recovery, stopped, substitution, toss, Story,
};
use crate::support::{line_up, list};

/// A's place of number 4 is used up: 8 came for 4 and 4 came back.
fn used_up() -> Story {
    let mut story = Story::international();
    story
        .enter(substitution(A, &[(4, 8)]))
        .rallies("A")
        .enter(substitution(A, &[(8, 4)]))
        .rallies("A");
    story
}

/// 15.7: an injured player is replaced regularly where that is legal; it counts as a regular one.
#[test]
fn r15_7_a_forced_change_is_regular_where_that_is_legal() {
    Story::international()
        .enter(forced(A, 4, 8, Forced::Injury))
        .substitutions(A, 1, 0)
        .stand(A, &[1, 2, 3, 8, 5, 6]);
}

/// Usual public guidance: who was hurt comes back only when cleared, so the log keeps who that was. A regular change
/// and a player who was only named hurt in nothing leave no mark.
#[test]
fn whoever_was_hurt_is_known_for_the_rest_of_the_match() {
    let by = |number| By {
        team: A,
        number: Some(Shirt(number)),
    };
    let replay = Kind::Replay {
        why: ReplayWhy::Injury,
        hurt: Some(by(3)),
        rally: None,
    };
    let mut story = Story::international();
    story
        .enter(substitution(A, &[(5, 9)]))
        .enter(replay)
        .enter(forced(A, 4, 8, Forced::Injury));
    assert_eq!(story.timeline().state().team(A).hurt, [Shirt(3), Shirt(4)]);
    assert!(story.timeline().state().team(B).hurt.is_empty());
}

/// 15.2.3 and the settled points: a forced change does not use up the request.
#[test]
fn r15_2_3_a_forced_change_leaves_the_request_open() {
    Story::international()
        .enter(forced(A, 4, 8, Forced::Injury))
        .enter(substitution(A, &[(5, 9)]))
        .enter(forced(A, 6, 10, Forced::Injury))
        .substitutions(A, 3, 0);
}

/// FIVB Casebook 2024, case 4.3: open also after a stopped rally.
#[test]
fn r17_1_1_a_forced_change_is_open_after_a_stopped_rally() {
    Story::international()
        .enter(stopped(ReplayWhy::Injury))
        .enter(forced(A, 4, 8, Forced::Injury))
        .substitutions(A, 1, 0);
}

/// 15.7: where no legal one exists, anybody not on court comes in; counted apart, not among the six.
#[test]
fn r15_7_an_exceptional_substitution_is_counted_apart() {
    used_up()
        .enter(forced(A, 4, 9, Forced::Injury))
        .substitutions(A, 2, 1)
        .stand(A, &[1, 2, 3, 9, 5, 6]);
}

/// 15.7: also with the six used up.
#[test]
fn r15_7_with_six_used_an_injured_player_is_replaced_exceptionally() {
    Story::international()
        .enter(substitution(A, &[(1, 7), (2, 8), (3, 9)]))
        .rallies("A")
        .enter(substitution(A, &[(7, 1), (8, 2), (9, 3)]))
        .rallies("A")
        .enter(forced(A, 5, 10, Forced::Injury))
        .substitutions(A, 6, 1);
}

/// 15.7: a player used up in another place can come in exceptionally.
#[test]
fn r15_7_a_used_substitute_can_come_in_exceptionally() {
    used_up()
        .enter(forced(A, 4, 8, Forced::Injury))
        .substitutions(A, 2, 1)
        .stand(A, &[1, 2, 3, 8, 5, 6]);
}

/// 15.7: not while a legal substitute is there; the refusal names who that is.
#[test]
fn r15_7_no_exceptional_substitution_while_a_legal_one_exists() {
    Story::international()
        .enter(substitution(A, &[(4, 8)]))
        .rallies("A")
        .refuses(
            forced(A, 8, 9, Forced::Injury),
            "15.7",
            Refusal::LegalChangeExists {
                out: Shirt(8),
                into: vec![Shirt(4)],
            },
        )
        .enter(forced(A, 8, 4, Forced::Injury))
        .substitutions(A, 2, 0);
}

/// 15.7: not a libero, nor the player a libero stands in for.
#[test]
fn r15_7_no_libero_and_nobody_behind_one_comes_in_exceptionally() {
    used_up()
        .refuses(
            forced(A, 4, 12, Forced::Injury),
            "15.5.1",
            Refusal::LiberoNoSubstitute { number: Shirt(12) },
        )
        .enter(libero(A, 5, 12))
        .refuses(
            forced(A, 4, 5, Forced::Injury),
            "15.5.1",
            Refusal::OnCourt {
                number: Shirt(5),
                asked: Asked::Substitution,
            },
        );
}

/// 15.7: the player taken out may not come back in the match, neither in this set nor in a later one.
#[test]
fn r15_7_an_exceptionally_replaced_player_is_out_for_the_match() {
    let out = || Refusal::PlayerBarred {
        number: Shirt(4),
        why: Barred::Out(OutFor::Exceptional),
    };
    used_up()
        .enter(forced(A, 4, 9, Forced::Injury))
        .rallies("A")
        .refuses(substitution(A, &[(5, 4)]), "15.7", out())
        .refuses(forced(A, 9, 4, Forced::Injury), "15.7", out())
        .set_to(A)
        .refuses(line_up(A, &[1, 2, 3, 4, 5, 6]), "15.7", out());
}

/// 15.7: an exceptional substitute who is hurt in turn is replaced exceptionally again.
#[test]
fn r15_7_an_exceptional_substitute_can_be_replaced_exceptionally() {
    used_up()
        .enter(forced(A, 4, 9, Forced::Injury))
        .rallies("A")
        .refuses(
            substitution(A, &[(9, 10)]),
            "15.6.1",
            Refusal::ClosedByExceptional { number: Shirt(9) },
        )
        .enter(forced(A, 9, 10, Forced::Injury))
        .substitutions(A, 2, 2);
}

/// 15.8: only who was sent off is replaced for having been sent off.
#[test]
fn r15_8_a_player_replaced_as_sent_off_was_sent_off() {
    let not = || Refusal::NotSentOff { number: Shirt(4) };
    Story::international()
        .refuses(forced(A, 4, 8, Forced::Expelled), "15.8", not())
        .refuses(forced(A, 4, 8, Forced::Disqualified), "15.8", not())
        .enter(card(A, player(4), Level::Expulsion))
        .enter(forced(A, 4, 8, Forced::Expelled))
        .substitutions(A, 1, 0)
        .without("must_substitute");
}

/// 15.8: an expelled player is replaced at once, regularly if possible, else exceptionally; then he or
/// she is out for the match (FIVB Casebook 2024, case 4.11).
#[test]
fn r15_8_an_expelled_player_without_a_legal_substitute_is_replaced_exceptionally() {
    let mut story = used_up();
    story
        .enter(card(A, player(4), Level::Expulsion))
        .notices(&Notice::MustSubstitute {
            team: A,
            player: Shirt(4),
        })
        .enter(forced(A, 4, 9, Forced::Expelled))
        .substitutions(A, 2, 1)
        .without("must_substitute")
        .set_to(A)
        .refuses(
            line_up(A, &[1, 2, 3, 4, 5, 6]),
            "15.7",
            Refusal::PlayerBarred {
                number: Shirt(4),
                why: Barred::Out(OutFor::Exceptional),
            },
        );
}

/// 15.2.3 and 15.8: the change of a player who was sent off is forced, whether the entry says so or
/// not: open after the request is used and after a stopped rally, and no request itself.
#[test]
fn r15_8_the_change_of_a_player_who_was_sent_off_is_forced_by_itself() {
    Story::international()
        .enter(substitution(A, &[(5, 9)]))
        .enter(card(A, player(4), Level::Expulsion))
        .refuses(
            substitution(A, &[(4, 8), (6, 10)]),
            "15.2.2",
            Refusal::SecondRequest { team: A },
        )
        .enter(substitution(A, &[(4, 8)]))
        .substitutions(A, 2, 0)
        .without("must_substitute");
    Story::international()
        .enter(stopped(ReplayWhy::Interference))
        .enter(card(A, player(4), Level::Disqualification))
        .enter(substitution(A, &[(4, 8)]))
        .rallies("A")
        .enter(substitution(A, &[(5, 9)]))
        .substitutions(A, 2, 0);
    used_up()
        .enter(card(A, player(4), Level::Expulsion))
        .enter(substitution(A, &[(4, 9)]))
        .substitutions(A, 2, 1)
        .enter(substitution(A, &[(5, 10)]));
}

/// 15.10.4: of two forced changes one can be legal.
#[test]
fn r15_10_4_of_two_forced_changes_one_can_be_granted() {
    let both = Kind::Substitution {
        team: A,
        changes: vec![change(4, 8), change(5, 9)],
        reason: Some(Forced::Injury),
    };
    Story::international()
        .enter(card(A, player(9), Level::Expulsion))
        .refuses(
            both,
            "21.3.2.1",
            Refusal::PartlyIllegal {
                legal: vec![change(4, 8)],
                because: Box::new(Refusal::PlayerBarred {
                    number: Shirt(9),
                    why: Barred::Expelled,
                }),
            },
        )
        .enter(forced(A, 4, 8, Forced::Injury))
        .enter(forced(A, 5, 10, Forced::Injury))
        .substitutions(A, 2, 0);
}

/// FIVB Casebook 2024, case 4.10: disqualified and replaced regularly, then the substitute is hurt.
#[test]
fn r15_7_the_substitute_of_a_disqualified_player_is_replaced_exceptionally() {
    Story::international()
        .enter(card(A, player(6), Level::Disqualification))
        .enter(forced(A, 6, 7, Forced::Disqualified))
        .substitutions(A, 1, 0)
        .rallies("B")
        .enter(forced(A, 7, 8, Forced::Injury))
        .substitutions(A, 1, 1);
}

/// 6.4.3 and FIVB Casebook 2024, case 4.11: the other way open to the coach: the set is lost, and the
/// expelled player is there again in the next one.
#[test]
fn r15_8_a_team_that_does_not_replace_an_expelled_player_loses_the_set() {
    used_up()
        .enter(card(A, player(4), Level::Expulsion))
        .enter(incomplete(A, Scope::Set))
        .sets(&[(2, 25)])
        .sets_out()
        .stand(A, &[1, 2, 3, 4, 5, 6]);
}

/// Six players and nobody on the bench, as a small school team comes.
fn six_only() -> Story {
    let mut story = Story::opened(Preset::International.rules());
    story
        .enter(list(A, 6, &[]))
        .enter(list(B, 12, &[12]))
        .enter(toss(A, A))
        .sets_out();
    story
}

/// 17.1.2: recovery time is for a player whom nobody can replace, regularly or exceptionally.
#[test]
fn r17_1_2_no_recovery_while_somebody_can_come_in() {
    Story::international().refuses(
        recovery(A, 4),
        "17.1.2",
        Refusal::SomebodyCanComeIn {
            number: Shirt(4),
            into: (7..=11).map(Shirt).collect(),
        },
    );
    used_up().refuses(
        recovery(A, 4),
        "17.1.2",
        Refusal::SomebodyCanComeIn {
            number: Shirt(4),
            into: (7..=11).map(Shirt).collect(),
        },
    );
}

/// 17.1.2: three minutes, once a player and match.
#[test]
fn r17_1_2_recovery_time_once_a_player_and_match() {
    six_only()
        .enter(recovery(A, 4))
        .enter(recovery(A, 5))
        .refuses(
            recovery(A, 4),
            "17.1.2",
            Refusal::RecoveryUsed { number: Shirt(4) },
        )
        .set_to(A)
        .sets_out()
        .refuses(
            recovery(A, 4),
            "17.1.2",
            Refusal::RecoveryUsed { number: Shirt(4) },
        );
}

/// 17.1.2: then the team is incomplete.
#[test]
fn r17_1_2_without_recovery_the_team_is_incomplete() {
    six_only()
        .rallies("AAB")
        .enter(recovery(A, 4))
        .enter(incomplete(A, Scope::Set))
        .sets(&[(2, 25)]);
}

/// 17.1.2: only somebody on court recovers there.
#[test]
fn r17_1_2_recovery_is_for_a_player_on_court() {
    Story::international().refuses_even_so(
        recovery(A, 9),
        "17.1.2",
        Refusal::NotOnCourt {
            number: Shirt(9),
            asked: Asked::Recovery,
        },
    );
}

/// 15.7: an injured libero gives way to the player he or she stands in for, so no recovery time.
#[test]
fn r17_1_2_a_libero_is_replaced_instead() {
    Story::international().enter(libero(A, 5, 12)).refuses(
        recovery(A, 12),
        "17.1.2",
        Refusal::SomebodyCanComeIn {
            number: Shirt(12),
            into: vec![Shirt(5)],
        },
    );
}

/// The referee may give the three minutes all the same (match-log contract: insist).
#[test]
fn r17_1_2_insisting_gives_recovery_time() {
    Story::international()
        .insists(
            recovery(A, 4),
            Refusal::SomebodyCanComeIn {
                number: Shirt(4),
                into: (7..=11).map(Shirt).collect(),
            },
        )
        .score(0, 0);
}

/// 21.3.2.1: an expelled player may not come in in that set, and may in the next.
#[test]
fn r21_3_2_1_an_expelled_player_comes_in_again_in_the_next_set() {
    Story::international()
        .enter(card(A, player(8), Level::Expulsion))
        .without("must_substitute")
        .refuses(
            substitution(A, &[(4, 8)]),
            "21.3.2.1",
            Refusal::PlayerBarred {
                number: Shirt(8),
                why: Barred::Expelled,
            },
        )
        .refuses(
            forced(A, 4, 8, Forced::Injury),
            "21.3.2.1",
            Refusal::PlayerBarred {
                number: Shirt(8),
                why: Barred::Expelled,
            },
        )
        .set_to(A)
        .sets_out()
        .enter(substitution(A, &[(4, 8)]));
}

/// 15.7 and 17.1.2: what can become of one player is what the whole list of legal entries has of him.
#[test]
fn r15_7_the_ways_on_for_one_player() {
    use game::{legal, legal_for, Kind};
    let mut story = Story::international();
    story.rallies("A").enter(libero(A, 5, 12));
    let state = story.timeline().state();
    for number in 1..=12 {
        let number = Shirt(number);
        let of = |kind: &Kind| match kind {
            Kind::Substitution { team, changes, .. } => *team == A && changes[0].out == number,
            Kind::LiberoReplacement { team, change } => *team == A && change.out == number,
            Kind::Recovery { team, number: who } => *team == A && *who == number,
            Kind::NewLibero { team, replaces, .. } => *team == A && replaces[..] == [number],
            _ => false,
        };
        let all: Vec<Kind> = legal(state).into_iter().filter(of).collect();
        assert_eq!(legal_for(state, A, number), all, "{number}");
    }
    assert!(!legal_for(state, A, Shirt(5)).is_empty());
}

/// 17.1.2 and 21.3.3.1: one who was disqualified or expelled comes in for nobody, not for the libero who stood
/// in for him or her either.
#[test]
fn r17_1_2_a_player_sent_off_comes_in_for_no_libero() {
    for level in [Level::Disqualification, Level::Expulsion] {
        let mut story = Story::opened(Preset::International.rules());
        for team in Team::BOTH {
            let Kind::TeamList(mut list) = crate::support::list(team, 12, &[12]) else {
                unreachable!("a list");
            };
            list.players.retain(|p| p.number.0 <= 6 || p.libero);
            story.enter(Kind::TeamList(list));
        }
        story
            .enter(crate::story::toss(A, A))
            .sets_out()
            .enter(libero(B, 5, 12))
            .rallies("A")
            .enter(card(B, player(5), level))
            .enter(crate::story::hurt(B, 12))
            .enter(recovery(B, 12));
    }
    // With somebody to come in for the one sent off there is a way.
    Story::international()
        .enter(libero(B, 5, 12))
        .rallies("A")
        .enter(card(B, player(5), Level::Disqualification))
        .refuses(
            recovery(B, 12),
            "17.1.2",
            Refusal::SomebodyCanComeIn {
                number: Shirt(12),
                into: (7..=11).map(Shirt).collect(),
            },
        );
    // Or with a second libero.
    Story::two_liberos().enter(libero(B, 5, 12)).refuses(
        recovery(B, 12),
        "17.1.2",
        Refusal::SomebodyCanComeIn {
            number: Shirt(12),
            into: vec![Shirt(5), Shirt(11)],
        },
    );
}

/// 17.1.2: recovery is open once the line-ups are in, before the first service too (match-log contract).
#[test]
fn r17_1_2_recovery_before_the_first_service() {
    let mut story = Story::opened(Preset::International.rules());
    for team in Team::BOTH {
        story.enter(crate::support::list(team, 6, &[]));
    }
    story
        .enter(crate::story::toss(A, A))
        .refuses_even_so(
            recovery(A, 4),
            "17.1.2",
            Refusal::NoSetRunning {
                asked: InSet::Recovery,
            },
        )
        .line_ups()
        .enter(recovery(A, 4))
        .enter(Kind::BeginSet)
        .refuses(
            recovery(A, 4),
            "17.1.2",
            Refusal::RecoveryUsed { number: Shirt(4) },
        );
}
