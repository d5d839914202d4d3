//! Regular substitutions (15.1, 15.2, 15.3.2, 15.5, 15.6, 15.10.4; school policies).

use game::entry::ReplayWhy;
use game::{Asked, Kind, Notice, Refusal};
use rules::{Preset, Rules, Shirt, SubstitutionPolicy, Team};
use Team::{A, B};

use crate::story::{change, libero, stopped, substitution, time_out, toss, Story};

/// 15.5.1 and 15.6.2: a substitute takes the place of a starter; it counts one.
#[test]
fn r15_5_1_a_substitute_takes_the_place() {
    Story::international()
        .rallies("A")
        .enter(substitution(A, &[(4, 8)]))
        .stand(A, &[1, 2, 3, 8, 5, 6])
        .substitutions(A, 1, 0)
        .substitutions(B, 0, 0)
        .score(1, 0)
        .serves(A, 1);
}

/// 15.6.1: a starter leaves once and returns once, to the own place.
#[test]
fn r15_6_1_a_starter_returns_once() {
    Story::international()
        .enter(substitution(A, &[(4, 8)]))
        .rallies("A")
        .enter(substitution(A, &[(8, 4)]))
        .stand(A, &[1, 2, 3, 4, 5, 6])
        .substitutions(A, 2, 0)
        .rallies("A")
        .refuses(
            substitution(A, &[(4, 9)]),
            "15.6.1",
            Refusal::PlaceClosed { number: Shirt(4) },
        );
}

/// 15.6.1: and only to the own place.
#[test]
fn r15_6_1_a_starter_returns_to_no_other_place() {
    Story::international()
        .enter(substitution(A, &[(4, 8)]))
        .rallies("A")
        .refuses(
            substitution(A, &[(5, 4)]),
            "15.6.1",
            Refusal::OtherPlace {
                number: Shirt(4),
                now_held_by: Shirt(8),
            },
        );
}

/// 15.6.2: only the starter comes back for the substitute.
#[test]
fn r15_6_2_only_the_starter_returns_for_a_substitute() {
    Story::international()
        .enter(substitution(A, &[(4, 8)]))
        .rallies("A")
        .refuses(
            substitution(A, &[(8, 9)]),
            "15.6.2",
            Refusal::OnlyStarterReturns {
                out: Shirt(8),
                starter: Shirt(4),
            },
        );
}

/// 15.6.2: a substitute comes in once a set.
#[test]
fn r15_6_2_a_substitute_comes_in_once() {
    Story::international()
        .enter(substitution(A, &[(4, 8)]))
        .rallies("A")
        .enter(substitution(A, &[(8, 4)]))
        .rallies("A")
        .refuses(
            substitution(A, &[(5, 8)]),
            "15.6.2",
            Refusal::SubstituteUsed { number: Shirt(8) },
        );
}

/// 15.6: everything begins again in the next set.
#[test]
fn r15_6_the_next_set_begins_afresh() {
    Story::international()
        .enter(substitution(A, &[(4, 8)]))
        .rallies("A")
        .enter(substitution(A, &[(8, 4)]))
        .set_to(A)
        .sets_out()
        .substitutions(A, 0, 0)
        .enter(substitution(A, &[(5, 8)]))
        .substitutions(A, 1, 0);
}

/// 15.2.2: one request an interruption; a time-out does not open a second one (FIVB Casebook 2024,
/// case 4.28).
#[test]
fn r15_2_2_one_request_an_interruption() {
    let second = || Refusal::SecondRequest { team: A };
    Story::international()
        .enter(substitution(A, &[(4, 8)]))
        .refuses(substitution(A, &[(5, 9)]), "15.2.2", second())
        .enter(time_out(A))
        .refuses(substitution(A, &[(5, 9)]), "15.2.2", second())
        .enter(substitution(B, &[(5, 9)]))
        .rallies("B")
        .enter(substitution(A, &[(5, 9)]))
        .substitutions(A, 2, 0);
}

/// 15.2.2: one request may have several changes; they count one each.
#[test]
fn r15_2_2_one_request_may_have_several_changes() {
    Story::international()
        .enter(substitution(A, &[(4, 8), (5, 9), (6, 10)]))
        .stand(A, &[1, 2, 3, 8, 9, 10])
        .substitutions(A, 3, 0);
}

/// 15.1: six a set.
#[test]
fn r15_1_the_seventh_substitution_is_refused() {
    Story::international()
        .enter(substitution(A, &[(1, 7), (2, 8), (3, 9)]))
        .rallies("A")
        .enter(substitution(A, &[(7, 1), (8, 2)]))
        .notices(&Notice::SubstitutionsLeft { team: A, left: 1 })
        .rallies("A")
        .enter(substitution(A, &[(9, 3)]))
        .substitutions(A, 6, 0)
        .notices(&Notice::SubstitutionsLeft { team: A, left: 0 })
        .rallies("A")
        .refuses(
            substitution(A, &[(4, 10)]),
            "15.1",
            Refusal::NoSubstitutionLeft {
                used: 6,
                wanted: 1,
                most: 6,
            },
        );
}

/// FIVB Casebook 2024, case 4.14: with one left and two coming, one can be granted; 15.10.4: the
/// refusal names the legal part, which may then be entered.
#[test]
fn r15_10_4_of_two_changes_beyond_the_limit_one_can_be_granted() {
    let because = Refusal::NoSubstitutionLeft {
        used: 5,
        wanted: 2,
        most: 6,
    };
    Story::international()
        .enter(substitution(A, &[(1, 7), (2, 8), (3, 9)]))
        .rallies("A")
        .enter(substitution(A, &[(7, 1), (8, 2)]))
        .rallies("A")
        .refuses(
            substitution(A, &[(4, 10), (5, 11)]),
            "15.1",
            Refusal::PartlyIllegal {
                legal: vec![change(4, 10)],
                because: Box::new(because),
            },
        )
        .enter(substitution(A, &[(4, 10)]))
        .substitutions(A, 6, 0);
}

/// 15.10.4: one illegal change among legal ones; the rule is that of the illegal one.
#[test]
fn r15_10_4_an_illegal_change_names_the_legal_ones() {
    Story::international()
        .enter(substitution(A, &[(4, 8)]))
        .rallies("A")
        .refuses(
            substitution(A, &[(5, 9), (8, 10), (6, 11)]),
            "15.6.2",
            Refusal::PartlyIllegal {
                legal: vec![change(5, 9), change(6, 11)],
                because: Box::new(Refusal::OnlyStarterReturns {
                    out: Shirt(8),
                    starter: Shirt(4),
                }),
            },
        )
        .enter(substitution(A, &[(5, 9), (6, 11)]))
        .stand(A, &[1, 2, 3, 8, 9, 11]);
}

/// Two changes of one request are judged against the players on court before it (match-log contract).
#[test]
fn r15_5_1_a_player_is_named_once_in_a_request() {
    Story::international().refuses_even_so(
        substitution(A, &[(4, 8), (8, 9)]),
        "15.5.1",
        Refusal::NamedTwice { number: Shirt(8) },
    );
    Story::international().refuses(
        substitution(A, &[(4, 8), (5, 8)]),
        "15.5.1",
        Refusal::NamedTwice { number: Shirt(8) },
    );
}

/// 15.5.1: who leaves is on court, who comes is not.
#[test]
fn r15_5_1_who_leaves_is_on_court_and_who_comes_is_not() {
    Story::international()
        .refuses_even_so(
            substitution(A, &[(9, 8)]),
            "15.5.1",
            Refusal::NotOnCourt {
                number: Shirt(9),
                asked: Asked::Substitution,
            },
        )
        .refuses_even_so(
            substitution(A, &[(4, 5)]),
            "15.5.1",
            Refusal::OnCourt {
                number: Shirt(5),
                asked: Asked::Substitution,
            },
        )
        .stand(A, &[1, 2, 3, 4, 5, 6]);
}

/// 15.5: a request says who.
#[test]
fn r15_5_a_request_has_a_change() {
    Story::international().refuses_even_so(substitution(A, &[]), "15.5", Refusal::NoChange);
}

/// 15.9.1: a substitution with a player who is not on the list is illegal.
#[test]
fn r15_9_1_only_listed_players_come_in() {
    Story::international().refuses_even_so(
        substitution(A, &[(4, 44)]),
        "15.9.1",
        Refusal::UnlistedSubstitute {
            team: A,
            number: Shirt(44),
        },
    );
}

/// 15.5.1: liberos take no part in substitutions, going or coming.
#[test]
fn r15_5_1_liberos_take_no_part_in_substitutions() {
    Story::international()
        .refuses(
            substitution(A, &[(4, 12)]),
            "15.5.1",
            Refusal::LiberoNoSubstitute { number: Shirt(12) },
        )
        .enter(libero(A, 5, 12))
        .refuses(
            substitution(A, &[(12, 8)]),
            "15.5.1",
            Refusal::LiberoNotSubstituted { number: Shirt(12) },
        );
}

/// Insisting on a libero who comes in does not carry out another change of the same request that has
/// no object, nor the same one twice (match-log contract: insist).
#[test]
fn r15_5_1_insisting_on_a_libero_hides_no_other_objection() {
    let asked = Asked::Substitution;
    Story::international()
        .refuses_even_so(
            substitution(A, &[(4, 12), (9, 8)]),
            "15.5.1",
            Refusal::NotOnCourt {
                number: Shirt(9),
                asked,
            },
        )
        .refuses_even_so(
            substitution(A, &[(4, 12), (5, 12)]),
            "15.5.1",
            Refusal::NamedTwice { number: Shirt(12) },
        )
        .insists(
            substitution(A, &[(4, 12)]),
            Refusal::LiberoNoSubstitute { number: Shirt(12) },
        )
        .stand(A, &[1, 2, 3, 12, 5, 6]);
}

/// FIVB Casebook 2024, cases 5.5 and 6.11: the player on the bench for the libero can be substituted
/// without the libero leaving.
#[test]
fn r15_5_1_the_player_behind_the_libero_can_be_substituted() {
    Story::international()
        .enter(libero(A, 5, 12))
        .enter(substitution(A, &[(5, 9)]))
        .stand(A, &[1, 2, 3, 4, 12, 6])
        .substitutions(A, 1, 0)
        .rallies("A")
        .enter(libero(A, 12, 9))
        .stand(A, &[1, 2, 3, 4, 9, 6]);
}

/// 15.5.1: the player a libero stands in for holds the place and cannot come in elsewhere.
#[test]
fn r15_5_1_the_player_behind_the_libero_cannot_come_in_elsewhere() {
    Story::international().enter(libero(A, 5, 12)).refuses(
        substitution(A, &[(4, 5)]),
        "15.5.1",
        Refusal::OnCourt {
            number: Shirt(5),
            asked: Asked::Substitution,
        },
    );
}

/// 15.3.2: before the set; it counts, and it is the request of that interruption (15.2.2).
#[test]
fn r15_3_2_a_substitution_before_the_set_counts() {
    let mut story = Story::listed(Preset::International.rules(), &[12]);
    story
        .enter(toss(A, A))
        .line_ups()
        .enter(substitution(A, &[(1, 7)]))
        .refuses(
            substitution(A, &[(2, 8)]),
            "15.2.2",
            Refusal::SecondRequest { team: A },
        )
        .enter(Kind::BeginSet)
        .substitutions(A, 1, 0)
        .serves(A, 7)
        .refuses(
            substitution(A, &[(2, 8)]),
            "15.2.2",
            Refusal::SecondRequest { team: A },
        );
}

/// 6.1.3: after a stopped rally nothing regular may be asked.
#[test]
fn r15_no_substitution_before_a_stopped_rally_is_replayed() {
    Story::international()
        .rallies("A")
        .enter(stopped(ReplayWhy::Interference))
        .refuses(substitution(A, &[(4, 8)]), "15", Refusal::AfterReplay)
        .rallies("B")
        .enter(substitution(A, &[(4, 8)]));
}

fn school() -> Rules {
    Preset::SchoolSenior.rules()
}

/// School presets: a player is bound to a place, any number may share it (common practice, no source).
#[test]
fn school_a_place_may_be_shared_by_several() {
    Story::by(school())
        .enter(substitution(A, &[(4, 8)]))
        .rallies("A")
        .enter(substitution(A, &[(8, 9)]))
        .rallies("A")
        .enter(substitution(A, &[(9, 8)]))
        .rallies("A")
        .enter(substitution(A, &[(8, 4)]))
        .stand(A, &[1, 2, 3, 4, 5, 6])
        .substitutions(A, 4, 0);
}

/// School presets: but not in another place (common practice, no source).
#[test]
fn school_a_player_stays_bound_to_the_place() {
    Story::by(school())
        .enter(substitution(A, &[(4, 8)]))
        .rallies("A")
        .enter(substitution(A, &[(8, 4)]))
        .rallies("A")
        .refuses(
            substitution(A, &[(5, 8)]),
            "15.6.1",
            Refusal::OtherPlace {
                number: Shirt(8),
                now_held_by: Shirt(4),
            },
        );
}

/// School presets: three entries a player and set, starting counts one (match-log contract).
#[test]
fn school_starting_counts_as_an_entry() {
    let mut story = Story::by(school());
    // The starter: on court from the start, back twice, then no more.
    for _ in 0..2 {
        story
            .enter(substitution(A, &[(4, 8)]))
            .rallies("A")
            .enter(substitution(A, &[(8, 4)]))
            .rallies("A");
    }
    story
        .enter(substitution(A, &[(4, 8)]))
        .rallies("A")
        .refuses(
            substitution(A, &[(8, 4)]),
            "school",
            Refusal::EntriesUsed {
                number: Shirt(4),
                most: 3,
            },
        );
}

/// School presets: a substitute may come in three times.
#[test]
fn school_a_substitute_has_three_entries() {
    let mut story = Story::by(school());
    story.enter(substitution(A, &[(4, 8)])).rallies("A");
    story.enter(substitution(A, &[(8, 9)])).rallies("A");
    story.enter(substitution(A, &[(9, 8)])).rallies("A");
    story.enter(substitution(A, &[(8, 9)])).rallies("A");
    story.enter(substitution(A, &[(9, 8)])).rallies("A");
    story
        .enter(substitution(A, &[(8, 9)]))
        .rallies("A")
        .refuses(
            substitution(A, &[(9, 8)]),
            "school",
            Refusal::EntriesUsed {
                number: Shirt(8),
                most: 3,
            },
        );
}

/// School presets: twelve a set.
#[test]
fn school_twelve_substitutions_a_set() {
    let mut story = Story::by(school());
    for _ in 0..2 {
        story
            .enter(substitution(A, &[(1, 7), (2, 8), (3, 9)]))
            .rallies("A")
            .enter(substitution(A, &[(7, 1), (8, 2), (9, 3)]))
            .rallies("A");
    }
    story.substitutions(A, 12, 0).refuses(
        substitution(A, &[(4, 10)]),
        "15.1",
        Refusal::NoSubstitutionLeft {
            used: 12,
            wanted: 1,
            most: 12,
        },
    );
}

/// The free policy: anybody for anybody, up to the limit.
#[test]
fn free_anybody_comes_in_for_anybody() {
    let mut rules = Preset::International.rules();
    rules.substitutions.policy = SubstitutionPolicy::Free;
    Story::by(rules)
        .enter(substitution(A, &[(4, 8)]))
        .rallies("A")
        .enter(substitution(A, &[(5, 4)]))
        .rallies("A")
        .enter(substitution(A, &[(8, 5)]))
        .stand(A, &[1, 2, 3, 5, 4, 6])
        .substitutions(A, 3, 0)
        .refuses(
            substitution(A, &[(1, 9)]),
            "15.2.2",
            Refusal::SecondRequest { team: A },
        )
        .rallies("A")
        .enter(substitution(A, &[(1, 9), (2, 10), (3, 11)]))
        .rallies("A")
        .refuses(
            substitution(A, &[(9, 1)]),
            "15.1",
            Refusal::NoSubstitutionLeft {
                used: 6,
                wanted: 1,
                most: 6,
            },
        );
}

/// The referee may grant what the limits do not (match-log contract: insist).
#[test]
fn r15_6_insisting_lets_a_closed_place_change() {
    Story::international()
        .enter(substitution(A, &[(4, 8)]))
        .rallies("A")
        .enter(substitution(A, &[(8, 4)]))
        .rallies("A")
        .insists(
            substitution(A, &[(4, 9)]),
            Refusal::PlaceClosed { number: Shirt(4) },
        )
        .stand(A, &[1, 2, 3, 9, 5, 6])
        .substitutions(A, 3, 0);
}
