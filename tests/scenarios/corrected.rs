//! Scores that are put right though no team was at fault, differences found before a set, and libero
//! replacements that came late.

use game::{InSet, Joined, Kind, Level, Phase, PointFor, Refusal};
use rules::{Preset, Score, Team};
use Team::{A, B};

use crate::story::{card, change, coach, libero, substitution, time_out, Story};

fn score(a: u16, b: u16) -> Score {
    Score { a, b }
}

fn to(a: u16, b: u16, serving: Option<Team>) -> Kind {
    Kind::ScoreCorrection {
        score: score(a, b),
        serving,
        why: "A rally was counted twice.".to_owned(),
    }
}

fn back_to(a: u16, b: u16) -> Kind {
    Kind::WrongInformation {
        score: score(a, b),
        why: "The scorer named the wrong server.".to_owned(),
    }
}

fn tally() -> Story {
    let mut story = Story::opened(Preset::Tally.rules());
    story.enter(Kind::BeginSet);
    story
}

/// A miscounted tally goes on from the right score; cancelled points and added ones stay visible.
#[test]
fn tally_a_miscounted_score_is_put_right() {
    let mut story = tally();
    story
        .rallies("AABA")
        .enter(to(2, 2, Some(B)))
        .score(2, 2)
        .phase(Phase::Playing);
    let play = story.timeline().state().play().expect("playing");
    let cancelled: Vec<_> = play.points.iter().map(|p| p.cancelled_by).collect();
    assert_eq!(cancelled, [None, None, None, Some(7), None]);
    assert_eq!(play.points[4].why, PointFor::Correction);
    assert_eq!(play.serving, Some(B));
    story.rallies("A").score(3, 2);
}

/// Beside each point that counts stands the score that it led to; a cancelled one led to none (our own: the
/// running log beside the court says so).
#[test]
fn each_point_that_counts_leads_to_a_score() {
    let mut story = tally();
    story.rallies("AABA").enter(to(2, 2, Some(B))).rallies("A");
    let play = story.timeline().state().play().expect("playing");
    let scores: Vec<_> = play.scores_by_entry().collect();
    let led_to = [
        (3, score(1, 0)),
        (4, score(2, 0)),
        (5, score(2, 1)),
        (7, score(2, 2)),
        (8, score(3, 2)),
    ];
    assert_eq!(scores, led_to);
}

/// What was taken over can have been miscounted as well.
#[test]
fn tally_a_score_that_was_taken_over_is_put_right() {
    Story::opened(Preset::Tally.rules())
        .enter(Kind::Joined(Joined {
            sets: Vec::new(),
            score: Some(score(12, 10)),
            serving: None,
            left: None,
        }))
        .rallies("A")
        .enter(to(11, 11, None))
        .score(11, 11)
        .rallies("A")
        .score(12, 11);
}

/// 6.2: the right score may end the set.
#[test]
fn r6_2_a_score_put_right_may_end_the_set() {
    tally()
        .rallies(&"A".repeat(24))
        .enter(to(25, 0, None))
        .sets(&[(25, 0)])
        .phase(Phase::BetweenSets);
}

/// Whoever reads it may have the court turned round, so a score in a sentence names its sides.
#[test]
fn a_score_in_a_refusal_names_its_sides() {
    let state = tally().timeline().state().clone();
    let ten_eight = score(10, 8);
    let all = [
        Refusal::ScoreStands { score: ten_eight },
        Refusal::SetNotOver {
            set: 1,
            score: ten_eight,
        },
        Refusal::SetLevel {
            set: 1,
            score: ten_eight,
        },
        Refusal::SetOver {
            set: 1,
            score: ten_eight,
        },
        Refusal::NoSuchMoment {
            asked: ten_eight,
            nearest: ten_eight,
        },
    ];
    for why in all {
        let words = text::refusal(&why, (&state).into());
        assert!(words.contains("A 10:8 B"), "{words}");
    }
}

#[test]
fn log_a_score_that_stands_is_not_put_right() {
    tally()
        .rallies("A")
        .refuses(
            to(1, 0, None),
            "log",
            Refusal::ScoreStands { score: score(1, 0) },
        )
        .refuses(
            to(1, 0, Some(A)),
            "log",
            Refusal::ScoreStands { score: score(1, 0) },
        )
        .refuses(
            to(1000, 0, None),
            "log",
            Refusal::ScoreTooHigh { most: 999 },
        )
        .enter(to(1, 0, Some(B)));
    Story::opened(Preset::Tally.rules()).refuses(
        to(1, 0, None),
        "12.3",
        Refusal::NoSetRunning {
            asked: InSet::Rally,
        },
    );
}

/// A file that somebody made up could otherwise ask for any number of points with few entries.
#[test]
fn log_a_score_is_not_put_right_for_ever() {
    tally()
        .enter(to(999, 999, None))
        .enter(to(0, 0, None))
        .enter(to(999, 999, None))
        .enter(to(24, 23, None))
        .refuses(to(30, 30, None), "log", Refusal::ScoreTooHigh { most: 999 })
        .score(24, 23);
}

/// 6.1.3: with line-ups service and rotation follow from the points, so the wrong rally is undone instead;
/// where the official insists they stay as they are.
#[test]
fn r6_1_3_a_score_is_not_changed_alone_where_places_are_followed() {
    Story::international()
        .rallies("BA")
        .insists(to(1, 2, None), Refusal::ScoreFollowsPoints)
        .score(1, 2)
        .serves(A, 2);
}

/// FIVB Casebook 2024, case 2.3: back to the score at which the officials were wrong; both teams take the
/// order of that moment, and the team that was to serve serves.
#[test]
fn wrong_information_takes_play_back_to_its_score() {
    let mut story = Story::international();
    // A serves; B wins and rotates, A wins back and rotates, then the wrong word at 1-1.
    story.rallies("BA").serves(A, 2);
    let before = story
        .timeline()
        .state()
        .play()
        .expect("playing")
        .sides
        .clone();
    story
        .rallies("BBA")
        .enter(card(B, coach(), Level::Warning))
        .enter(back_to(1, 1))
        .score(1, 1)
        .serves(A, 2);
    let play = story.timeline().state().play().expect("playing");
    assert_eq!(play.sides.a.slots, before.a.slots);
    assert_eq!(play.sides.b.slots, before.b.slots);
    // Sanctions given meanwhile stay.
    assert_eq!(story.timeline().state().sanctions().len(), 1);
    story.rallies("A").score(2, 1);
}

/// The same where the set had ended meanwhile, until the next one begins.
#[test]
fn wrong_information_reopens_the_set_it_spoilt() {
    let mut story = Story::international();
    story
        .rallies(&"A".repeat(24))
        .rallies("B")
        .rallies("A")
        .sets(&[(25, 1)])
        .enter(back_to(24, 1))
        .phase(Phase::Playing)
        .score(24, 1)
        .serves(B, 2);
}

#[test]
fn wrong_information_needs_a_score_that_stood() {
    Story::international().rallies("AA").refuses(
        back_to(1, 1),
        "casebook 2.3",
        Refusal::NoSuchMoment {
            asked: score(1, 1),
            nearest: score(1, 0),
        },
    );
}

fn discrepancy(team: Team, pairs: &[(u16, u16)], kept: bool) -> Kind {
    Kind::Discrepancy {
        team,
        changes: pairs.iter().map(|&(out, into)| change(out, into)).collect(),
        kept,
    }
}

/// 7.3.5.1: found before the set begins it is put right, without a sanction.
#[test]
fn r7_3_5_1_a_difference_before_the_set_costs_nothing() {
    let mut story = Story::listed(Preset::International.rules(), &[]);
    story
        .refuses(discrepancy(A, &[], false), "15.3.2", Refusal::NobodyOnCourt)
        .enter(crate::story::toss(A, A))
        .line_ups()
        .enter(discrepancy(A, &[], false))
        .enter(discrepancy(B, &[(1, 7)], false))
        .stand(B, &[1, 2, 3, 4, 5, 6])
        .substitutions(B, 0, 0);
    assert!(story.timeline().state().sanctions().is_empty());
}

/// 7.3.5.2: or the coach keeps the player by a regular substitution, which counts.
#[test]
fn r7_3_5_2_the_coach_may_keep_the_player_by_a_substitution() {
    Story::listed(Preset::International.rules(), &[])
        .enter(crate::story::toss(A, A))
        .line_ups()
        .refuses(
            discrepancy(A, &[(9, 7)], true),
            "7.3.5.2",
            Refusal::NotInLineUp {
                number: rules::Shirt(9),
            },
        )
        .refuses_under(discrepancy(A, &[(1, 2)], true), "15.")
        .enter(discrepancy(A, &[(1, 7)], true))
        .stand(A, &[7, 2, 3, 4, 5, 6])
        .substitutions(A, 1, 0);
}

/// 7.3.5.3: once the set has begun it is a fault.
#[test]
fn r7_3_5_3_once_the_set_has_begun_it_is_a_fault() {
    Story::international().refuses_even_so(
        discrepancy(A, &[], false),
        "7.3.5.3",
        Refusal::FoundTooLate,
    );
}

fn came_late(team: Team) -> Kind {
    Kind::LateReplacement { team }
}

/// 19.3.2.5: the first late replacement is let pass; 19.3.2.6: each further one is a delay, and stands.
#[test]
fn r19_3_2_5_a_late_replacement_is_let_pass_once() {
    let mut story = Story::international();
    story
        .enter(libero(B, 5, 12))
        .enter(came_late(B))
        .sanctions(&[])
        .rallies("A")
        .refuses(
            came_late(B),
            "19.3.2.5",
            Refusal::NoReplacementNow { team: B },
        )
        .enter(libero(B, 12, 5))
        .enter(came_late(B))
        .sanctions(&[(1, B, "delay_warning", (1, 0))])
        .rallies("A")
        .enter(libero(B, 5, 12))
        .enter(came_late(B))
        .sanctions(&[
            (1, B, "delay_warning", (1, 0)),
            (1, B, "delay_penalty", (2, 0)),
        ])
        .score(3, 0)
        .stand(B, &[1, 2, 3, 4, 12, 6])
        // A delay of another kind bars nobody (15.2.4 is about requests).
        .enter(time_out(B));
}

/// 19.3.2.6: who serves next follows from the delay.
#[test]
fn r19_3_2_6_a_late_replacement_of_the_serving_team_costs_the_service() {
    Story::international()
        .enter(libero(A, 5, 12))
        .enter(came_late(A))
        .rallies("A")
        .enter(libero(A, 12, 5))
        .enter(came_late(A))
        .rallies("A")
        .enter(libero(A, 5, 12))
        .enter(came_late(A))
        .score(2, 1)
        .serves(B, 2);
}

#[test]
fn r12_3_a_replacement_is_late_only_in_a_set() {
    Story::listed(Preset::International.rules(), &[12]).refuses(
        came_late(A),
        "12.3",
        Refusal::NoSetRunning {
            asked: InSet::Rally,
        },
    );
}

/// A tally goes back as well: points and service.
#[test]
fn wrong_information_in_a_tally_goes_back_too() {
    let mut story = tally();
    story.rallies("ABB").enter(back_to(1, 0)).score(1, 0);
    assert_eq!(story.timeline().state().serving(), Some((A, None)));
    story.enter(substitution(A, &[(1, 2)]));
}
