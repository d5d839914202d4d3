//! Toss and line-ups, and what has no place before the first service (7.1, 7.3, 12.3, 15.3.2, 19.3.2.3).

use game::{InSet, Kind, Level, Notice, Phase, Refusal};
use rules::{Preset, Shirt, Team};
use Team::{A, B};

use crate::before::international;
use crate::story::{card, coach, libero, player, substitution, time_out, toss, Story};
use crate::support::{line_up, list};

/// 7.1: the toss decides the first service and the sides of the first set.
#[test]
fn r7_1_no_first_set_without_a_toss() {
    Story::listed(international(), &[12])
        .notices(&Notice::Toss)
        .line_ups()
        .refuses(Kind::BeginSet, "7.1", Refusal::TossMissing { set: 1 })
        .enter(toss(B, B))
        .without("toss")
        .enter(Kind::BeginSet)
        .serves(B, 1);
}

/// The last toss before a set counts (match-log contract, settled points).
#[test]
fn r7_1_a_second_toss_before_the_set_counts() {
    let mut story = Story::listed(international(), &[12]);
    story.enter(toss(A, A)).line_ups().enter(toss(B, B));
    story.enter(Kind::BeginSet).serves(B, 1);
    assert_eq!(story.timeline().state().left(), Some(B));
}

/// 7.1 and 12.1.2: no toss before the second set.
#[test]
fn r7_1_no_toss_before_an_ordinary_later_set() {
    Story::international().set_to(A).without("toss").refuses(
        toss(A, A),
        "7.1",
        Refusal::TossNotDue { set: 2 },
    );
}

/// 7.1: a new toss before the deciding set.
#[test]
fn r7_1_a_new_toss_before_the_deciding_set() {
    let mut story = Story::international();
    for team in [A, B, A] {
        story.set_to(team).sets_out();
    }
    story
        .set_to(B)
        .notices(&Notice::Toss)
        .line_ups()
        .refuses(Kind::BeginSet, "7.1", Refusal::TossMissing { set: 5 })
        .enter(toss(B, B))
        .enter(Kind::BeginSet)
        .serves(B, 1);
    assert_eq!(story.timeline().state().left(), Some(B));
}

/// 7.3.1: as many players as play, each once.
#[test]
fn r7_3_1_a_line_up_has_six_numbers() {
    let size = |numbers| Refusal::LineUpSize { numbers, needed: 6 };
    Story::listed(international(), &[12])
        .refuses(line_up(A, &[1, 2, 3, 4, 5]), "7.3.1", size(5))
        .refuses_even_so(line_up(A, &[1, 2, 3, 4, 5, 6, 7]), "7.3.1", size(7));
}

/// 7.3.1: six players, so six different numbers.
#[test]
fn r7_3_1_a_number_stands_once_in_a_line_up() {
    Story::listed(international(), &[12])
        .refuses_even_so(
            line_up(A, &[1, 2, 3, 4, 5, 5]),
            "7.3.1",
            Refusal::TwiceInLineUp { number: Shirt(5) },
        )
        .enter(line_up(A, &[1, 2, 3, 4, 5, 6]));
}

/// 7.3.2: both line-ups before the set.
#[test]
fn r7_3_2_no_service_without_both_line_ups() {
    Story::listed(international(), &[12])
        .enter(toss(A, A))
        .enter(line_up(A, &[1, 2, 3, 4, 5, 6]))
        .notices(&Notice::LineUp { team: B })
        .refuses(Kind::BeginSet, "7.3.2", Refusal::LineUpMissing { team: B });
}

/// 7.1 and 7.3.2: all that is missing is named at once, so that nothing is begun without because it was not seen.
#[test]
fn r7_3_2_all_that_is_missing_is_named() {
    let several = |line_ups: &[Team], toss_for| Refusal::SeveralMissing {
        line_ups: line_ups.to_vec(),
        toss_for,
    };
    let missing = several(&[A, B], Some(1));
    let mut story = Story::listed(international(), &[12]);
    let said = text::refusal(&missing, story.timeline().state().into());
    for word in ["both teams", "toss"] {
        assert!(said.contains(word), "{said}");
    }
    story
        .refuses(Kind::BeginSet, "7.3.2", missing)
        .enter(line_up(A, &[1, 2, 3, 4, 5, 6]))
        .refuses(Kind::BeginSet, "7.3.2", several(&[B], Some(1)))
        .enter(toss(A, A))
        .refuses(Kind::BeginSet, "7.3.2", Refusal::LineUpMissing { team: B });
    Story::listed(international(), &[12])
        .enter(toss(A, A))
        .insists(Kind::BeginSet, several(&[A, B], None))
        .phase(Phase::Playing);
}

/// 7.3.2, against the advice: the side whose line-up is in is followed, the other one counts its points
/// and its service only. (How far it is followed is our own choice; the rule knows no such set.)
#[test]
fn r7_3_2_a_set_begun_without_a_line_up_is_followed_as_far_as_it_is_known() {
    let mut story = Story::listed(international(), &[12]);
    story
        .enter(toss(A, A))
        .enter(line_up(A, &[1, 2, 3, 4, 5, 6]))
        .insists(Kind::BeginSet, Refusal::LineUpMissing { team: B })
        .phase(Phase::Playing)
        .stand(A, &[1, 2, 3, 4, 5, 6])
        .stand(B, &[])
        .rallies("BA")
        .score(1, 1)
        .serves(A, 2)
        .enter(substitution(A, &[(4, 8)]))
        .enter(substitution(B, &[(4, 8)]))
        .substitutions(B, 1, 0)
        .rallies("B")
        .stand(A, &[2, 3, 8, 5, 6, 1]);
    // The next set has line-ups again.
    story
        .rallies(&"A".repeat(24))
        .phase(Phase::BetweenSets)
        .line_ups()
        .enter(Kind::BeginSet)
        .stand(B, &[1, 2, 3, 4, 5, 6]);
}

/// 7.1 and 7.3.2, against the advice: without toss and line-ups nobody is said to serve until the first
/// point; from then on the winner of a rally serves (6.1.3).
#[test]
fn r7_1_a_set_begun_without_a_toss_knows_the_server_after_the_first_point() {
    let mut story = Story::opened(international());
    story
        .insists(
            Kind::BeginSet,
            Refusal::SeveralMissing {
                line_ups: vec![A, B],
                toss_for: Some(1),
            },
        )
        .phase(Phase::Playing);
    assert_eq!(story.timeline().state().serving(), None);
    story.rallies("BAA").score(2, 1).enter(time_out(B));
    let serving = story.timeline().state().serving();
    assert_eq!(serving, Some((A, None)));
}

/// 7.3.4: a line-up once handed in is changed by substitution only, before the set and in it.
#[test]
fn r7_3_4_a_line_up_is_handed_in_once() {
    let mut story = Story::listed(international(), &[12]);
    story.enter(toss(A, A)).line_ups();
    let other = || line_up(A, &[7, 2, 3, 4, 5, 6]);
    story.refuses(other(), "7.3.4", Refusal::LineUpGiven { team: A });
    story.enter(Kind::BeginSet);
    story.refuses_even_so(other(), "7.3.4", Refusal::LineUpPlayed { team: A });
    story.stand(A, &[1, 2, 3, 4, 5, 6]);
}

/// 4.1.3: only listed players may play.
#[test]
fn r4_1_3_only_listed_players_stand_in_a_line_up() {
    Story::listed(international(), &[12]).refuses_even_so(
        line_up(B, &[1, 2, 3, 4, 5, 13]),
        "4.1.3",
        Refusal::NotListed {
            team: B,
            number: Shirt(13),
        },
    );
}

/// 19.3.2.3: liberos are not on the line-up sheet.
#[test]
fn r19_3_2_3_no_libero_in_the_line_up() {
    Story::listed(international(), &[12]).refuses(
        line_up(A, &[1, 2, 3, 4, 5, 12]),
        "19.3.2.3",
        Refusal::LiberoInLineUp { number: Shirt(12) },
    );
}

/// 15.3.2 and 19.3.2.3: before the set players come and go only once both line-ups are in.
#[test]
fn r15_3_2_nobody_comes_or_goes_before_both_line_ups_are_in() {
    let mut story = Story::listed(international(), &[12]);
    story
        .enter(toss(A, A))
        .enter(line_up(A, &[1, 2, 3, 4, 5, 6]));
    story
        .refuses(substitution(A, &[(1, 7)]), "15.3.2", Refusal::NobodyOnCourt)
        .refuses_even_so(libero(A, 5, 12), "19.3.2.3", Refusal::LiberoBeforeLineUps)
        .enter(line_up(B, &[1, 2, 3, 4, 5, 6]))
        .enter(substitution(A, &[(1, 7)]))
        .enter(libero(A, 5, 12))
        .enter(Kind::BeginSet)
        .serves(A, 7)
        .stand(A, &[7, 2, 3, 4, 12, 6])
        .substitutions(A, 1, 0);
}

fn no_set(asked: InSet) -> Refusal {
    Refusal::NoSetRunning { asked }
}

/// 15.4.1: a time-out belongs between a completed rally and the whistle for the next service.
#[test]
fn r15_4_1_no_time_out_before_the_set() {
    Story::listed(international(), &[12])
        .enter(toss(A, A))
        .line_ups()
        .refuses_even_so(time_out(A), "15.4.1", no_set(InSet::TimeOut))
        .enter(Kind::BeginSet)
        .set_to(A)
        .refuses(time_out(A), "15.4.1", no_set(InSet::TimeOut));
}

/// 19.3.2.3: the libero comes in once the line-ups are in and checked.
#[test]
fn r19_3_2_3_no_libero_before_the_line_ups() {
    Story::listed(international(), &[12])
        .refuses_even_so(libero(A, 5, 12), "19.3.2.3", Refusal::LiberoBeforeLineUps)
        .enter(toss(A, A))
        .line_ups()
        .enter(libero(A, 5, 12));
}

/// 12.3: nothing is played before the first service is authorised.
#[test]
fn r12_3_no_rally_before_the_set() {
    let rally = Kind::Rally {
        won_by: A,
        cause: None,
        by: None,
    };
    Story::listed(international(), &[12])
        .enter(toss(A, A))
        .line_ups()
        .refuses_even_so(rally.clone(), "12.3", no_set(InSet::Rally))
        .enter(Kind::BeginSet)
        .set_to(A)
        .refuses(rally, "12.3", no_set(InSet::Rally));
}

/// 6.2: what belongs before a set is refused while one runs.
#[test]
fn r6_2_a_running_set_is_not_begun_again() {
    Story::international().refuses(Kind::BeginSet, "6.2", Refusal::SetRunning);
}

/// 7.1: the toss is held before a set.
#[test]
fn r7_1_no_toss_in_a_running_set() {
    Story::international().refuses_even_so(toss(B, B), "7.1", Refusal::TossInSet);
}

/// 21.3.3.1 and 21.5: disqualified before the match is out of every line-up.
#[test]
fn r21_3_3_1_a_disqualified_player_starts_no_set() {
    use game::{Barred, OutFor};
    let out = Refusal::PlayerBarred {
        number: Shirt(3),
        why: Barred::Out(OutFor::Disqualified),
    };
    let mut story = Story::listed(international(), &[12]);
    story.enter(card(A, player(3), Level::Disqualification));
    story.refuses(line_up(A, &[1, 2, 3, 4, 5, 6]), "21.3.3.1", out.clone());
    story
        .enter(toss(A, A))
        .enter(line_up(A, &[1, 2, 7, 4, 5, 6]))
        .enter(line_up(B, &[1, 2, 3, 4, 5, 6]))
        .enter(Kind::BeginSet)
        .set_to(A)
        .refuses(line_up(A, &[1, 2, 3, 4, 5, 6]), "21.3.3.1", out);
}

/// 21.5: a card for the coach before the match counts in the first set at 0-0.
#[test]
fn r21_5_a_sanction_before_the_match_carries_the_first_set() {
    Story::listed(international(), &[12])
        .enter(card(B, coach(), Level::Warning))
        .sanctions(&[(1, B, "warning", (0, 0))])
        .phase(Phase::Preparation);
}

/// 7.3.4: one team's line-up is changed by decision of the first referee; what the other has done on
/// its own stands.
#[test]
fn r7_3_4_a_changed_line_up_leaves_the_other_team_alone() {
    let mut story = Story::listed(Preset::International.rules(), &[12]);
    story
        .line_ups()
        .enter(substitution(B, &[(3, 8)]))
        .insists(
            line_up(A, &[2, 3, 4, 5, 6, 1]),
            Refusal::LineUpGiven { team: A },
        )
        .stand(A, &[2, 3, 4, 5, 6, 1])
        .stand(B, &[1, 2, 8, 4, 5, 6])
        .substitutions(B, 1, 0);
    // The same where a new list takes the line-up with it.
    let mut story = Story::listed(Preset::International.rules(), &[12]);
    story
        .line_ups()
        .enter(substitution(B, &[(3, 8)]))
        .enter(list(A, 12, &[6]))
        .enter(line_up(A, &[1, 2, 3, 4, 5, 7]))
        .stand(B, &[1, 2, 8, 4, 5, 6])
        .substitutions(B, 1, 0);
}
