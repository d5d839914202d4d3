//! Before the first service: the lists, and what stands against a start (chapter 4, 19.1, 19.3.2.3).

use game::entry::{Court, LiberoWhy, Player, TeamList};
use game::{Kind, Notice, Phase, Refusal};
use rules::{Preset, Roster, Rules, Shirt, Team};
use Team::{A, B};

use crate::story::{new_libero, resume, suspend, toss, Story};
use crate::support::{line_up, list};

pub(super) fn international() -> Rules {
    Preset::International.rules()
}

/// A list with these numbers and captains.
fn numbers(team: Team, numbers: &[u16], captains: &[u16]) -> Kind {
    let player = |&n: &u16| Player {
        number: Shirt(n),
        name: None,
        captain: captains.contains(&n),
        libero: false,
    };
    Kind::TeamList(TeamList {
        team,
        players: numbers.iter().map(player).collect(),
        staff: vec![],
    })
}

/// 4.1.1: a list has a longest length; 14 in the international preset.
#[test]
fn r4_1_1_a_list_may_be_full_but_not_longer() {
    Story::opened(international())
        .enter(list(A, 14, &[]))
        .refuses(
            list(B, 15, &[]),
            "4.1.1",
            Refusal::TooManyPlayers {
                players: 15,
                most: 14,
            },
        );
}

/// 4.1.2: one captain.
#[test]
fn r4_1_2_a_team_has_one_captain() {
    let two = Refusal::TwoCaptains {
        first: Shirt(3),
        second: Shirt(5),
    };
    Story::opened(international())
        .enter(numbers(A, &[1, 2, 3, 4, 5, 6], &[3]))
        .refuses(numbers(B, &[1, 2, 3, 4, 5, 6], &[3, 5]), "4.1.2", two);
}

/// 4.1.3: the composition is settled before the match; until then the last list counts.
#[test]
fn r4_1_3_a_list_may_be_sent_again_before_the_match() {
    let mut story = Story::listed(international(), &[12]);
    story
        .enter(numbers(A, &[21, 22, 23, 24, 25, 26, 27], &[21]))
        .refuses(
            line_up(A, &[1, 2, 3, 4, 5, 6]),
            "4.1.3",
            Refusal::NotListed {
                team: A,
                number: Shirt(1),
            },
        )
        .enter(line_up(A, &[21, 22, 23, 24, 25, 26]));
}

/// 4.1.3: once the match has begun the lists are closed, also between the sets.
#[test]
fn r4_1_3_lists_close_with_the_first_service() {
    let mut story = Story::international();
    story.refuses(list(A, 13, &[12]), "4.1.3", Refusal::ListClosed);
    story
        .set_to(A)
        .refuses(list(A, 13, &[12]), "4.1.3", Refusal::ListClosed);
}

/// 4.1.3 and 7.3.5.2: a player who is taken off the list cannot stay in a line-up handed in before.
#[test]
fn r4_1_3_a_new_list_takes_a_line_up_with_it_that_no_longer_fits() {
    let mut story = Story::listed(international(), &[12]);
    story.enter(toss(A, A)).line_ups();
    story
        .without("line_up")
        .enter(numbers(A, &[21, 22, 23, 24, 25, 26, 27], &[21]))
        .notices(&Notice::LineUp { team: A })
        .refuses(Kind::BeginSet, "7.3.2", Refusal::LineUpMissing { team: A })
        .enter(line_up(A, &[21, 22, 23, 24, 25, 26]))
        .enter(Kind::BeginSet)
        .serves(A, 21);
}

/// 19.3.2.3: the same where a starter is now marked as a libero; a list that still bears the line-up
/// leaves it alone.
#[test]
fn r19_3_2_3_a_new_list_can_make_a_starter_a_libero() {
    let mut story = Story::listed(international(), &[12]);
    story
        .enter(toss(A, A))
        .line_ups()
        .enter(list(A, 13, &[12]))
        .without("line_up")
        .enter(list(A, 13, &[6]))
        .notices(&Notice::LineUp { team: A })
        .refuses(
            line_up(A, &[1, 2, 3, 4, 5, 6]),
            "19.3.2.3",
            Refusal::LiberoInLineUp { number: Shirt(6) },
        );
}

/// 4.1.2 and 4.1.3: the official may have two captains, or a line-up before the list, all the same
/// (match-log contract: insist).
#[test]
fn r4_1_insisting_takes_a_list_or_a_line_up_as_it_is() {
    Story::opened(international())
        .insists(
            line_up(A, &[1, 2, 3, 4, 5, 6]),
            Refusal::NoTeamList { team: A },
        )
        .insists(
            numbers(B, &[1, 2, 3, 4, 5, 6], &[3, 5]),
            Refusal::TwoCaptains {
                first: Shirt(3),
                second: Shirt(5),
            },
        );
}

/// 4.1.3: without a list nobody can be checked against it.
#[test]
fn r4_1_3_a_line_up_needs_a_team_list() {
    Story::opened(international())
        .notices(&Notice::TeamList { team: B })
        .refuses(
            line_up(B, &[1, 2, 3, 4, 5, 6]),
            "4.1.3",
            Refusal::NoTeamList { team: B },
        );
}

/// 4.3.3: players are numbered, each with one number.
#[test]
fn r4_3_3_a_number_stands_once_on_the_list() {
    Story::opened(international()).refuses_even_so(
        numbers(A, &[1, 2, 3, 4, 5, 5], &[]),
        "4.3.3",
        Refusal::NumberTwice { number: Shirt(5) },
    );
}

/// 4.3.3: the range; 1 to 99 in the preset (FIVB Casebook 2024, case 9.3), 1 to 20 in the text.
#[test]
fn r4_3_3_numbers_stay_in_the_range() {
    let outside = |number: u16, highest| Refusal::NumberOutOfRange {
        number: Shirt(number),
        lowest: 1,
        highest,
    };
    Story::opened(international())
        .enter(numbers(A, &[1, 99], &[]))
        .refuses(numbers(A, &[1, 100], &[]), "4.3.3", outside(100, 99))
        .refuses(numbers(A, &[0, 1], &[]), "4.3.3", outside(0, 99));
    let mut narrow = international();
    narrow.roster = Roster {
        max: 12,
        min_number: 1,
        max_number: 20,
    };
    Story::opened(narrow).enter(numbers(A, &[20], &[])).refuses(
        numbers(A, &[21], &[]),
        "4.3.3",
        outside(21, 20),
    );
}

/// 19.1.1: up to two liberos.
#[test]
fn r19_1_1_no_more_liberos_than_two() {
    Story::opened(international())
        .enter(list(A, 12, &[11, 12]))
        .refuses(
            list(B, 12, &[10, 11, 12]),
            "19.1.1",
            Refusal::TooManyLiberos {
                liberos: 3,
                most: 2,
            },
        );
}

/// School presets: one libero for seniors, none for juniors (common practice, no source).
#[test]
fn r19_1_1_a_competition_may_allow_fewer_liberos() {
    Story::opened(Preset::SchoolSenior.rules())
        .enter(list(A, 12, &[12]))
        .refuses(
            list(A, 12, &[11, 12]),
            "19.1.1",
            Refusal::TooManyLiberos {
                liberos: 2,
                most: 1,
            },
        );
    Story::opened(Preset::SchoolJunior.rules()).refuses(
        list(A, 12, &[12]),
        "19.1.1",
        Refusal::TooManyLiberos {
            liberos: 1,
            most: 0,
        },
    );
}

/// A failed check for safety is a reason not to start (project design); a cleared one is none.
#[test]
fn a_failed_safety_check_says_do_not_start() {
    use game::entry::Check;
    let check = |ok| {
        Kind::Check(Check {
            item: "net".to_owned(),
            ok,
            note: None,
        })
    };
    Story::opened(international())
        .enter(check(false))
        .notices(&Notice::DoNotStart {
            item: "net".to_owned(),
        })
        .enter(check(true))
        .without("do_not_start");
}

/// 4.1.3: the lists stay closed where the first set is played again on another court (17.3.2.2: the
/// same team members).
#[test]
fn r4_1_3_lists_stay_closed_on_another_court() {
    Story::international()
        .rallies("A")
        .enter(suspend())
        .enter(resume(Court::Other))
        .phase(Phase::Preparation)
        .refuses(list(A, 12, &[11]), "4.1.3", Refusal::ListClosed);
}

/// 19.4.2.2 with 4.1.3: before the match the last list names the liberos anew.
#[test]
fn r4_1_3_the_last_list_names_the_liberos_anew() {
    Story::listed(Preset::International.rules(), &[12])
        .enter(new_libero(A, &[12], 11, LiberoWhy::Unable))
        .enter(list(A, 12, &[]))
        .enter(line_up(A, &[1, 2, 3, 4, 5, 12]));
}
