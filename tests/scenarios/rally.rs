//! Rallies: who gets the point, who serves, who rotates, what the point ends (6.1 to 6.3, 7.6, 12).

use game::entry::Court;
use game::{Kind, Notice, Phase, Refusal};
use rules::{Cause, Preset, Team};
use Team::{A, B};

use crate::story::{card, coach, explain, resume, suspend, time_out, toss, Story};
use game::Level;

/// 6.1.3.1 and 12.2.2.1: the serving team keeps its server.
#[test]
fn r6_1_3_1_the_serving_team_serves_on_with_the_same_player() {
    Story::international()
        .rallies("AAA")
        .score(3, 0)
        .serves(A, 1)
        .stand(A, &[1, 2, 3, 4, 5, 6])
        .stand(B, &[1, 2, 3, 4, 5, 6]);
}

/// 6.1.3.2 and 12.2.2.2: the receiving team rotates before it serves, so its place 2 serves first.
#[test]
fn r6_1_3_2_the_receiving_team_rotates_and_serves() {
    Story::international()
        .rallies("B")
        .score(0, 1)
        .serves(B, 2)
        .stand(B, &[2, 3, 4, 5, 6, 1])
        .stand(A, &[1, 2, 3, 4, 5, 6]);
}

/// 7.6.2: after six turns everybody is back in the own place.
#[test]
fn r7_6_2_six_turns_bring_everybody_back() {
    let mut story = Story::international();
    for server in [2, 3, 4, 5, 6, 1] {
        story.rallies("BA").serves(A, server);
    }
    story
        .stand(A, &[1, 2, 3, 4, 5, 6])
        .stand(B, &[1, 2, 3, 4, 5, 6])
        .score(6, 6);
}

/// 6.2: 25 points with a lead of two; 24-24 goes on to 26-24.
#[test]
fn r6_2_a_set_needs_a_lead_of_two() {
    let mut story = Story::international();
    story
        .rallies(&"AB".repeat(24))
        .rallies("A")
        .score(25, 24)
        .phase(Phase::Playing)
        .notices(&Notice::SetPoint { team: A })
        .rallies("A")
        .phase(Phase::BetweenSets)
        .sets(&[(26, 24)]);
}

/// 6.2: no cap; the set goes on as long as it takes.
#[test]
fn r6_2_an_international_set_has_no_cap() {
    Story::international()
        .rallies(&"AB".repeat(40))
        .score(40, 40)
        .phase(Phase::Playing)
        .rallies("BB")
        .sets(&[(40, 42)]);
}

/// 6.3.2: the fifth set is played to 15 with a lead of two.
#[test]
fn r6_3_2_the_deciding_set_is_played_to_fifteen() {
    Story::international()
        .until_the_decider()
        .rallies(&"AB".repeat(14))
        .rallies("A")
        .phase(Phase::Playing)
        .notices(&Notice::MatchPoint { team: A })
        .rallies("A")
        .sets(&[(25, 0), (0, 25), (25, 0), (0, 25), (16, 14)])
        .won_by(Some(A));
}

/// 6.3.1: three sets win the match, and nothing is played after it.
#[test]
fn r6_3_1_three_sets_win_the_match() {
    let mut story = Story::international();
    story.set_to(B).sets_out().set_to(B).sets_out().set_to(B);
    story
        .won_by(Some(B))
        .sets(&[(0, 25), (0, 25), (0, 25)])
        .refuses_even_so(time_out(A), "6.3.1", Refusal::MatchOver)
        .refuses(Kind::BeginSet, "6.3.1", Refusal::MatchOver)
        .refuses(
            card(A, coach(), Level::Penalty),
            "6.3.1",
            Refusal::MatchOver,
        )
        .enter(Kind::Remark {
            text: "Good match.".to_owned(),
            team: None,
        });
}

/// 12.1.2: the team that did not open the last set opens the next, whoever won it.
#[test]
fn r12_1_2_the_opening_service_alternates() {
    Story::international()
        .set_to(A)
        .sets_out()
        .serves(B, 1)
        .set_to(A)
        .sets_out()
        .serves(A, 1);
}

/// 12.1.1: the deciding set is opened as tossed.
#[test]
fn r12_1_1_the_toss_opens_the_deciding_set() {
    let mut story = Story::international();
    for team in [A, B, A] {
        story.set_to(team).sets_out();
    }
    story.set_to(B).enter(toss(A, B)).sets_out().serves(A, 1);
    assert_eq!(story.timeline().state().left(), Some(B));
}

/// 12.1.2: who was due to open counts, whatever a penalty did (match-log contract, settled points).
#[test]
fn r12_1_2_a_penalty_does_not_change_who_opens_the_set_after() {
    Story::international()
        .set_to(A)
        .enter(card(B, coach(), Level::Penalty))
        .sets_out()
        .serves(A, 2)
        .set_to(A)
        .sets_out()
        .serves(A, 1);
}

/// 18.2.1: the teams change courts after each set but before the deciding one.
#[test]
fn r18_2_1_the_teams_change_courts_after_each_set() {
    let mut story = Story::international();
    let mut left = A;
    for team in [A, B, A] {
        assert_eq!(story.timeline().state().left(), Some(left));
        story.set_to(team);
        // Until the next first service the record shows where they played.
        assert_eq!(story.timeline().state().left(), Some(left));
        story.sets_out();
        left = left.other();
    }
    assert_eq!(story.timeline().state().left(), Some(B));
}

/// 6.1.3: the eight seconds missed are a completed rally like any other.
#[test]
fn r6_1_3_a_late_service_is_a_point_and_a_completed_rally() {
    let late = Kind::Rally {
        won_by: B,
        cause: Some(Cause::ServiceTime),
        by: None,
    };
    Story::international()
        .enter(crate::story::substitution(A, &[(4, 8)]))
        .enter(late)
        .score(0, 1)
        .serves(B, 2)
        .enter(crate::story::substitution(A, &[(5, 9)]))
        .substitutions(A, 2, 0);
}

/// A cause may be given later or corrected; the score is untouched (match-log contract).
#[test]
fn a_cause_is_given_later_and_corrected() {
    let mut story = Story::international();
    story.rallies("AB");
    let rally = story.last();
    story
        .enter(explain(rally, Cause::BallOut))
        .enter(explain(rally, Cause::NetTouch))
        .score(1, 1)
        .serves(B, 2);
    let said = story.timeline().state().said(rally).expect("explained");
    assert_eq!(said.cause, Cause::NetTouch);
}

/// Only a rally has a cause (match-log contract).
#[test]
fn log_only_a_rally_is_explained() {
    let mut story = Story::international();
    story.rallies("A").enter(time_out(B));
    let time_out = story.last();
    story
        .refuses_even_so(
            explain(time_out, Cause::Catch),
            "log",
            Refusal::NoSuchRally { entry: time_out },
        )
        .refuses(
            explain(77, Cause::Catch),
            "log",
            Refusal::NoSuchRally { entry: 77 },
        );
}

/// 7.4 of the 2025 text: the serving team has no positions to be wrong in; the point stays.
#[test]
fn r7_4_the_serving_team_stands_free_since_2025() {
    let mut story = Story::international();
    story.rallies("B");
    let rally = story.last();
    story
        .refuses(
            explain(rally, Cause::PositionFault),
            "7.4",
            Refusal::ServingTeamStandsFree { serving: A },
        )
        .score(0, 1);
    // The receiving team can be wrong in its positions.
    story.rallies("B");
    let rally = story.last();
    story
        .enter(explain(rally, Cause::PositionFault))
        .score(0, 2);
}

/// 7.4 of the 2021-2024 text: both teams have to stand in their order.
#[test]
fn r7_4_the_serving_team_had_positions_in_2021() {
    let mut rules = Preset::International.rules();
    rules.edition = rules::Edition::E2021;
    let mut story = Story::by(rules);
    story.rallies("B");
    let rally = story.last();
    story
        .enter(explain(rally, Cause::PositionFault))
        .score(0, 1);
}

/// A rally that was played is never refused while a set runs (match-log contract, settled points).
#[test]
fn a_rally_is_never_refused_for_bookkeeping() {
    use rules::Shirt;
    Story::international()
        .enter(card(A, crate::story::player(4), Level::Expulsion))
        .notices(&Notice::MustSubstitute {
            team: A,
            player: Shirt(4),
        })
        .rallies("AB")
        .score(1, 1);
}

/// 17.3.1: while play is interrupted nothing is played.
#[test]
fn r17_3_1_nothing_is_played_while_interrupted() {
    let rally = Kind::Rally {
        won_by: A,
        cause: None,
        by: None,
    };
    Story::international()
        .rallies("A")
        .enter(suspend())
        .phase(Phase::Suspended)
        .refuses_even_so(rally, "17.3.1", Refusal::Suspended)
        .refuses(time_out(A), "17.3.1", Refusal::Suspended)
        .enter(resume(Court::Same))
        .rallies("A")
        .score(2, 0);
}

/// 7.4 of the 2025 text: a rally noted with a position fault of the serving team counts, its reason is dropped,
/// and that is said until the next point (match-log contract).
#[test]
fn r7_4_a_rally_keeps_its_point_and_loses_an_impossible_reason() {
    let rally = |won_by| Kind::Rally {
        won_by,
        cause: Some(Cause::PositionFault),
        by: None,
    };
    let mut story = Story::international();
    story.enter(rally(B));
    let entry = story.last();
    story
        .score(0, 1)
        .serves(B, 2)
        .notices(&Notice::CauseDropped { entry });
    assert_eq!(story.timeline().state().said(entry), None);
    // B serves now, so a position fault of A is the receiving team's.
    story.enter(rally(B)).without("cause_dropped");
    let other = story.last();
    let said = story.timeline().state().said(other).expect("kept");
    assert_eq!(said.cause, Cause::PositionFault);
    // Another reason given afterwards settles it.
    let mut story = Story::international();
    story.enter(rally(B));
    let entry = story.last();
    story
        .enter(explain(entry, Cause::OutsideCourt))
        .without("cause_dropped");
    // By the text of 2021 both teams stand in their order.
    let mut rules = Preset::International.rules();
    rules.edition = rules::Edition::E2021;
    let mut story = Story::by(rules);
    story.enter(rally(B)).without("cause_dropped");
    let said = story.timeline().state().said(story.last());
    assert_eq!(said.map(|s| s.cause), Some(Cause::PositionFault));
}

/// 7.4: a player of either team other than the server stands outside the own court at the service hit.
#[test]
fn r7_4_either_team_can_have_a_player_outside_its_court() {
    for won_by in Team::BOTH {
        let mut story = Story::international();
        story.enter(Kind::Rally {
            won_by,
            cause: Some(Cause::OutsideCourt),
            by: None,
        });
        let entry = story.last();
        story.without("cause_dropped");
        assert!(story.timeline().state().said(entry).is_some());
    }
    assert_eq!(Cause::OutsideCourt.signal().map(|s| s.number()), Some("22"));
}

/// Before the first set the side on the left is the toss's, without a toss unknown; it changes with the first
/// service of a set only, also where a set was never played, which counts for the change (18.2.1).
#[test]
fn r18_2_1_the_side_changes_with_the_first_service() {
    use crate::story::incomplete;
    use game::entry::Scope;
    let left = |story: &Story| story.timeline().state().left();
    let mut story = Story::listed(Preset::International.rules(), &[12]);
    assert_eq!(left(&story), None);
    story.enter(toss(A, B));
    assert_eq!(left(&story), Some(B));
    story.enter(toss(A, A)).line_ups();
    assert_eq!(left(&story), Some(A));
    story.enter(Kind::BeginSet).set_to(A).line_ups();
    assert_eq!(left(&story), Some(A));
    // Set 2 would have begun with B on the left; it is not played.
    story.enter(incomplete(B, Scope::Set)).line_ups();
    assert_eq!(left(&story), Some(A));
    story.enter(Kind::BeginSet);
    assert_eq!(left(&story), Some(A));
    assert_eq!(story.timeline().state().set_number(), 3);
    story.set_to(B).sets_out();
    assert_eq!(left(&story), Some(B));
}
