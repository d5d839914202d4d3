//! Misconduct and its sanctions (chapter 21).

use game::entry::Court;
use game::{Barred, Level, Notice, OutFor, Phase, Refusal, Who};
use rules::{Shirt, Team};
use Team::{A, B};

use crate::story::{card, coach, player, resume, substitution, suspend, Story};
use crate::support::line_up;

fn had(who: Who, had: Level) -> Refusal {
    Refusal::NotHeavier { who, had }
}

/// 21.1: a warning changes nothing but the record.
#[test]
fn r21_1_a_warning_is_recorded_and_no_more() {
    Story::international()
        .rallies("AB")
        .enter(card(A, player(3), Level::Warning))
        .score(1, 1)
        .serves(B, 2)
        .sanctions(&[(1, A, "warning", (1, 1))]);
}

/// 21.1 and FIVB Casebook 2024, case 6.7: once a team and match, whoever it is.
#[test]
fn r21_1_a_team_is_warned_once() {
    let warned = |team| Refusal::TeamWarned { team };
    Story::international()
        .enter(card(A, player(3), Level::Warning))
        .refuses(card(A, player(4), Level::Warning), "21.1", warned(A))
        .refuses(card(A, player(3), Level::Warning), "21.1", warned(A))
        .refuses(card(A, coach(), Level::Warning), "21.1", warned(A))
        .enter(card(B, coach(), Level::Warning))
        .set_to(A)
        .sets_out()
        .refuses(card(B, player(1), Level::Warning), "21.1", warned(B));
}

/// 21.3.1 and 6.1.3.2: a penalty on the serving team: point, rotation and service for the opponent.
#[test]
fn r21_3_1_a_penalty_on_the_serving_team() {
    Story::international()
        .rallies("A")
        .enter(card(A, player(3), Level::Penalty))
        .score(1, 1)
        .serves(B, 2)
        .stand(A, &[1, 2, 3, 4, 5, 6])
        .sanctions(&[(1, A, "penalty", (1, 0))]);
}

/// 21.3.1: a penalty on the receiving team: a point, and the same server.
#[test]
fn r21_3_1_a_penalty_on_the_receiving_team() {
    Story::international()
        .enter(card(B, coach(), Level::Penalty))
        .score(1, 0)
        .serves(A, 1)
        .stand(A, &[1, 2, 3, 4, 5, 6])
        .stand(B, &[1, 2, 3, 4, 5, 6]);
}

/// 21.4.2: every further misconduct of the same member is sanctioned more heavily.
#[test]
fn r21_4_2_the_same_member_is_sanctioned_more_heavily_each_time() {
    Story::international()
        .enter(card(A, player(3), Level::Warning))
        .enter(card(A, player(3), Level::Penalty))
        .refuses(
            card(A, player(3), Level::Penalty),
            "21.4.2",
            had(player(3), Level::Penalty),
        )
        .enter(card(A, player(3), Level::Expulsion))
        .refuses(
            card(A, player(3), Level::Penalty),
            "21.4.2",
            had(player(3), Level::Expulsion),
        )
        .refuses(
            card(A, player(3), Level::Expulsion),
            "21.4.2",
            had(player(3), Level::Expulsion),
        )
        .enter(card(A, player(3), Level::Disqualification))
        .refuses(
            card(A, player(3), Level::Disqualification),
            "21.4.2",
            had(player(3), Level::Disqualification),
        )
        .score(0, 1);
}

/// 21.4.2: the ladder lasts the match, not the set.
#[test]
fn r21_4_2_the_ladder_lasts_the_match() {
    Story::international()
        .enter(card(A, player(3), Level::Penalty))
        .set_to(A)
        .sets_out()
        .refuses(
            card(A, player(3), Level::Penalty),
            "21.4.2",
            had(player(3), Level::Penalty),
        );
}

/// 21.3.1 and 21.4.2: different members have ladders of their own: a point each time.
#[test]
fn r21_3_1_each_member_has_an_own_ladder() {
    Story::international()
        .enter(card(A, player(3), Level::Penalty))
        .enter(card(A, player(4), Level::Penalty))
        .enter(card(A, coach(), Level::Penalty))
        .score(0, 3)
        .serves(B, 2);
}

/// 21.4.2: a member of the staff climbs the same ladder; the role need not be listed.
#[test]
fn r21_4_2_staff_climb_the_same_ladder() {
    let assistant = || Who::Staff("assistant coach".to_owned());
    Story::international()
        .enter(card(B, coach(), Level::Penalty))
        .refuses(
            card(B, coach(), Level::Penalty),
            "21.4.2",
            had(coach(), Level::Penalty),
        )
        .enter(card(B, assistant(), Level::Penalty))
        .enter(card(B, coach(), Level::Expulsion))
        .enter(card(B, coach(), Level::Disqualification))
        .score(2, 0)
        .without("must_substitute");
}

/// 21.1 and FIVB Casebook 2024, case 6.7: after a direct expulsion the team's warning is still open,
/// for somebody else.
#[test]
fn r21_1_the_warning_stays_open_after_an_expulsion() {
    Story::international()
        .enter(card(A, player(3), Level::Expulsion))
        .refuses(
            card(A, player(3), Level::Warning),
            "21.4.2",
            had(player(3), Level::Expulsion),
        )
        .enter(card(A, player(4), Level::Warning));
}

/// 21.3.2 and 21.3.3: expulsion and disqualification cost no point.
#[test]
fn r21_3_2_the_heavy_sanctions_cost_no_point() {
    Story::international()
        .enter(card(A, player(3), Level::Expulsion))
        .enter(card(A, player(4), Level::Disqualification))
        .score(0, 0)
        .serves(A, 1)
        .notices(&Notice::MustSubstitute {
            team: A,
            player: Shirt(3),
        })
        .notices(&Notice::MustSubstitute {
            team: A,
            player: Shirt(4),
        });
}

/// 21.3.2.1 and 21.3.3.1: out for the set, out for the match.
#[test]
fn r21_3_3_1_expelled_for_the_set_disqualified_for_the_match() {
    Story::international()
        .enter(card(A, player(8), Level::Expulsion))
        .enter(card(A, player(9), Level::Disqualification))
        .set_to(A)
        .sets_out()
        .refuses(
            substitution(A, &[(4, 9)]),
            "21.3.3.1",
            Refusal::PlayerBarred {
                number: Shirt(9),
                why: Barred::Out(OutFor::Disqualified),
            },
        )
        .enter(substitution(A, &[(4, 8)]));
}

/// 21.5 and FIVB Casebook 2024, case 6.4: between the sets on the team due to open: the opponent has
/// a point, rotates and serves.
#[test]
fn r21_5_a_penalty_between_the_sets_on_the_team_due_to_open() {
    Story::international()
        .set_to(A)
        .enter(card(B, coach(), Level::Penalty))
        .sets(&[(25, 0)])
        .sets_out()
        .score(1, 0)
        .serves(A, 2)
        .stand(A, &[2, 3, 4, 5, 6, 1])
        .stand(B, &[1, 2, 3, 4, 5, 6])
        .sanctions(&[(2, B, "penalty", (0, 0))]);
}

/// The same on the team due to receive: a point, nobody rotates.
#[test]
fn r21_5_a_penalty_between_the_sets_on_the_team_due_to_receive() {
    Story::international()
        .set_to(A)
        .enter(card(A, coach(), Level::Penalty))
        .sets_out()
        .score(0, 1)
        .serves(B, 1)
        .stand(A, &[1, 2, 3, 4, 5, 6])
        .stand(B, &[1, 2, 3, 4, 5, 6]);
}

/// Two penalties on the team due to open: taken one after the other, two points and one rotation
/// (derived from 21.3.1; no source has the case).
#[test]
fn r21_5_two_penalties_between_the_sets_on_one_team() {
    Story::international()
        .set_to(A)
        .enter(card(B, coach(), Level::Penalty))
        .enter(card(B, player(4), Level::Penalty))
        .sets_out()
        .score(2, 0)
        .serves(A, 2);
}

/// 21.5: an expulsion between the sets is for the coming set, and only for it.
#[test]
fn r21_5_an_expulsion_between_the_sets_is_for_the_next() {
    Story::international()
        .set_to(A)
        .enter(card(A, player(3), Level::Expulsion))
        .refuses(
            line_up(A, &[1, 2, 3, 4, 5, 6]),
            "21.3.2.1",
            Refusal::PlayerBarred {
                number: Shirt(3),
                why: Barred::Expelled,
            },
        )
        .enter(line_up(A, &[1, 2, 7, 4, 5, 6]))
        .enter(line_up(B, &[1, 2, 3, 4, 5, 6]))
        .enter(game::Kind::BeginSet)
        .set_to(B)
        .sets_out()
        .stand(A, &[1, 2, 3, 4, 5, 6])
        .without("must_substitute");
}

/// 21.5: expelled once the line-up is in, before the first service: must be replaced.
#[test]
fn r21_5_a_player_expelled_after_the_line_up_must_be_replaced() {
    use crate::story::forced;
    use game::entry::Forced;
    Story::international()
        .set_to(A)
        .line_ups()
        .enter(card(A, player(3), Level::Expulsion))
        .notices(&Notice::MustSubstitute {
            team: A,
            player: Shirt(3),
        })
        .enter(forced(A, 3, 8, Forced::Expelled))
        .without("must_substitute")
        .enter(game::Kind::BeginSet)
        .stand(A, &[1, 2, 8, 4, 5, 6])
        .substitutions(A, 1, 0);
}

/// 6.1.1.3: a penalty point can be the last one of a set and of the match.
#[test]
fn r6_1_1_3_a_penalty_ends_the_match() {
    Story::international()
        .set_to(A)
        .sets_out()
        .set_to(A)
        .sets_out()
        .rallies(&"A".repeat(24))
        .notices(&Notice::MatchPoint { team: A })
        .enter(card(B, coach(), Level::Penalty))
        .sets(&[(25, 0), (25, 0), (25, 0)])
        .won_by(Some(A));
}

/// 17.3 and chapter 21: misconduct is sanctioned while play is interrupted, too.
#[test]
fn r17_3_misconduct_while_interrupted_is_sanctioned() {
    Story::international()
        .rallies("A")
        .enter(suspend())
        .enter(card(A, coach(), Level::Penalty))
        .phase(Phase::Suspended)
        .refuses(
            card(A, coach(), Level::Penalty),
            "21.4.2",
            had(coach(), Level::Penalty),
        )
        .enter(resume(Court::Same))
        .score(1, 1)
        .serves(B, 2);
}

/// 4.1.3: only a listed player can be sanctioned as one.
#[test]
fn r4_1_3_only_a_listed_player_is_sanctioned() {
    Story::international().refuses_even_so(
        card(A, player(44), Level::Warning),
        "4.1.3",
        Refusal::NotListed {
            team: A,
            number: Shirt(44),
        },
    );
}

/// The first referee decides (match-log contract: insist).
#[test]
fn r21_insisting_shows_a_second_card() {
    Story::international()
        .enter(card(A, player(3), Level::Warning))
        .insists(
            card(A, player(4), Level::Warning),
            Refusal::TeamWarned { team: A },
        )
        .enter(card(A, player(3), Level::Penalty))
        .insists(
            card(A, player(3), Level::Penalty),
            had(player(3), Level::Penalty),
        )
        .score(0, 2)
        .sanctions(&[
            (1, A, "warning", (0, 0)),
            (1, A, "warning", (0, 0)),
            (1, A, "penalty", (0, 0)),
            (1, A, "penalty", (0, 1)),
        ]);
}

/// 6.2 and 21.5: a set that is won at its first service takes no more penalties; they count in the next.
#[test]
fn r6_2_penalties_beyond_a_won_set_count_in_the_next() {
    let mut rules = rules::Preset::International.rules();
    rules.set.target = 2;
    Story::by(rules)
        .set_to(A)
        .enter(card(A, coach(), Level::Penalty))
        .enter(card(A, player(2), Level::Penalty))
        .enter(card(A, player(3), Level::Penalty))
        .sets_out()
        .sets(&[(2, 0), (0, 2)])
        .sets_out()
        .score(0, 1);
}

/// 21.4.2: a member of the staff is one person, whatever the case and spacing of the word written.
#[test]
fn r21_4_2_a_coach_is_one_person_however_written() {
    let staff = |role: &str| Who::Staff(role.to_owned());
    assert!(staff("head_coach").is_same(&staff("Head coach")));
    for role in ["Coach", " coach ", "CO ACH"] {
        Story::international()
            .enter(card(A, coach(), Level::Penalty))
            .refuses(
                card(A, staff(role), Level::Penalty),
                "21.4.2",
                had(staff(role), Level::Penalty),
            )
            .enter(card(A, staff(role), Level::Expulsion));
    }
    Story::international()
        .enter(card(A, coach(), Level::Penalty))
        .enter(card(A, staff("assistant coach"), Level::Penalty))
        .enter(card(B, staff("Coach"), Level::Penalty));
}

/// 21.3.3: nothing is heavier than a disqualification, and no sentence says so.
#[test]
fn r21_4_2_nothing_is_heavier_than_a_disqualification() {
    let mut story = Story::international();
    let why = had(player(4), Level::Disqualification);
    story
        .enter(card(A, player(4), Level::Disqualification))
        .refuses(card(A, player(4), Level::Penalty), "21.4.2", why.clone());
    let sentence = text::refusal(&why, story.timeline().state().into());
    assert!(!sentence.contains("next sanction"), "{sentence}");
}
