//! Rallies that do not count, and interruptions of the match (6.1.2.2, 17).

use game::entry::{Court, Fault, Forced, Found, ReplayWhy, Scope};
use game::{InSet, Kind, Level, Notice, Outcome, Phase, Refusal};
use rules::{Cause, Shirt, Team};
use Team::{A, B};

use crate::story::{
    card, delay, explain, forced, hurt, incomplete, late, played_again, player, resume, stopped,
    strike, substitution, suspend, time_out, Story,
};

/// 6.1.2.2, 17.1.1 and 17.2: no point, same server, nobody rotates, whatever stopped the rally.
#[test]
fn r6_1_2_2_a_stopped_rally_changes_nothing() {
    for why in [
        ReplayWhy::DoubleFault,
        ReplayWhy::Interference,
        ReplayWhy::Injury,
        ReplayWhy::Other,
    ] {
        Story::international()
            .rallies("AB")
            .enter(stopped(why))
            .score(1, 1)
            .serves(B, 2)
            .stand(A, &[1, 2, 3, 4, 5, 6])
            .stand(B, &[2, 3, 4, 5, 6, 1])
            .enter(stopped(why))
            .rallies("A")
            .score(2, 1)
            .serves(A, 2);
    }
}

/// 6.1.2.2 and 17.2: a point was entered and the rally is played again after all. One entry takes it back
/// and replays it, one strike brings it back, and it has no reason any more.
#[test]
fn r6_1_2_2_a_rally_that_was_a_point_is_played_again() {
    let mut story = Story::international();
    story.rallies("ABA");
    let rally = story.last();
    story.score(2, 1).serves(A, 2);
    story
        .enter(explain(rally, Cause::BallIn))
        .enter(played_again(ReplayWhy::Interference, rally))
        .score(1, 1)
        .serves(B, 2)
        .stand(A, &[1, 2, 3, 4, 5, 6])
        .refuses_even_so(
            explain(rally, Cause::BallOut),
            "log",
            Refusal::NoSuchRally { entry: rally },
        )
        .refuses(time_out(A), "15", Refusal::AfterReplay);
    let replay = rally + 2;
    assert_eq!(
        story.timeline().outcome(rally),
        Some(&Outcome::Struck(replay))
    );
    // The reason that it had goes with it, and comes back with it.
    let reason = rally + 1;
    assert_eq!(
        story.timeline().outcome(reason),
        Some(&Outcome::Struck(replay))
    );
    assert_eq!(story.timeline().last_standing().map(|e| e.n), Some(replay));
    story.enter(strike(replay)).score(2, 1).serves(A, 2);
    assert_eq!(story.timeline().outcome(reason), Some(&Outcome::Accepted));
}

/// 6.2 and 6.3.1: the rally that had ended the set, or the match, is played again.
#[test]
fn r6_1_2_2_the_last_rally_of_a_set_or_match_is_played_again() {
    let mut story = Story::international();
    story.rallies(&"A".repeat(24)).rallies("A");
    let rally = story.last();
    story
        .phase(Phase::BetweenSets)
        .enter(played_again(ReplayWhy::DoubleFault, rally))
        .phase(Phase::Playing)
        .score(24, 0)
        .serves(A, 1)
        .rallies("A")
        .sets_out()
        .set_to(A)
        .sets_out()
        .set_to(A)
        .won_by(Some(A));
    let rally = story.last();
    story
        .enter(played_again(ReplayWhy::Other, rally))
        .phase(Phase::Playing)
        .score(24, 0)
        .rallies("B")
        .score(24, 1);
}

/// Only the last rally, and only while nothing has come after it but notes.
#[test]
fn log_only_the_last_rally_is_played_again() {
    let mut story = Story::international();
    story.rallies("AB");
    let last = story.last();
    let again = |rally| played_again(ReplayWhy::Other, rally);
    let not_last = |entry| Refusal::NotLastRally { entry };
    story
        .refuses_even_so(again(last - 1), "log", not_last(last - 1))
        .refuses_even_so(again(1), "log", not_last(1))
        .refuses_even_so(again(last + 40), "log", not_last(last + 40))
        .enter(delay(A))
        .refuses_even_so(again(last), "log", not_last(last));
    // What was taken back does not stand between.
    let warned = story.timeline().last_standing().map_or(0, |e| e.n);
    story.enter(strike(warned)).enter(again(last)).score(1, 0);
    let replay = story.last();
    // It cannot come back between the two either.
    let back = strike(replay - 1);
    story
        .refuses_even_so(back.clone(), "log", Refusal::BeforeReplay { replay })
        .enter(strike(replay))
        .score(1, 1);
    let strike_of_replay = story.last();
    story
        .enter(back)
        .sanctions(&[(1, A, "delay_warning", (1, 1))])
        .refuses_even_so(
            strike(strike_of_replay),
            "log",
            Refusal::BeforeReplay { replay },
        );
}

/// Casebook 8.5: a change was made, then the first referee decides for a replay. The change stays, and the
/// coach may take it back; what needed the rally says so.
#[test]
fn r6_1_2_2_a_change_after_the_rally_stays_when_it_is_played_again() {
    let mut story = Story::international();
    story.rallies("AB");
    let rally = story.last();
    story
        .enter(substitution(A, &[(4, 8)]))
        .enter(played_again(ReplayWhy::Other, rally))
        .score(1, 0)
        .serves(A, 1)
        .stand(A, &[1, 2, 3, 8, 5, 6])
        .enter(strike(rally + 1))
        .substitutions(A, 0, 0)
        .stand(A, &[1, 2, 3, 4, 5, 6]);
}

/// 12.3: only a running set has a rally to stop.
#[test]
fn r12_3_nothing_is_replayed_between_the_sets() {
    Story::international().set_to(A).refuses_even_so(
        stopped(ReplayWhy::Other),
        "12.3",
        Refusal::NoSetRunning {
            asked: InSet::Rally,
        },
    );
}

/// FIVB Casebook 2024, case 4.3: after a stopped rally only what is forced.
#[test]
fn r15_after_a_stopped_rally_only_what_is_forced() {
    Story::international()
        .enter(hurt(B, 4))
        .refuses(time_out(A), "15", Refusal::AfterReplay)
        .refuses(substitution(B, &[(4, 8)]), "15", Refusal::AfterReplay)
        .enter(forced(B, 4, 8, Forced::Injury))
        .rallies("A")
        .enter(time_out(A));
}

/// A set that ends leaves no stopped rally behind.
#[test]
fn r15_a_stopped_rally_does_not_reach_into_the_next_set() {
    Story::international()
        .rallies(&"A".repeat(24))
        .enter(stopped(ReplayWhy::Other))
        .rallies("A")
        .sets_out()
        .enter(time_out(A));
}

/// 17.3.1: interrupted, and once.
#[test]
fn r17_3_1_play_is_interrupted_once() {
    Story::international()
        .refuses(resume(Court::Same), "17.3.1", Refusal::NotSuspended)
        .enter(suspend())
        .refuses_even_so(suspend(), "17.3.1", Refusal::Suspended)
        .refuses(delay(A), "17.3.1", Refusal::Suspended)
        .refuses(substitution(A, &[(4, 8)]), "17.3.1", Refusal::Suspended)
        .refuses(Kind::BeginSet, "17.3.1", Refusal::Suspended);
}

/// 17.3.2.1: on the same court everything goes on as it was.
#[test]
fn r17_3_2_1_on_the_same_court_everything_goes_on() {
    Story::international()
        .rallies("AAB")
        .enter(time_out(A))
        .enter(substitution(A, &[(4, 8)]))
        .enter(suspend())
        .enter(resume(Court::Same))
        .phase(Phase::Playing)
        .score(2, 1)
        .serves(B, 2)
        .stand(A, &[1, 2, 3, 8, 5, 6])
        .time_outs(A, 1)
        .substitutions(A, 1, 0)
        .refuses(
            substitution(A, &[(5, 9)]),
            "15.2.2",
            Refusal::SecondRequest { team: A },
        );
}

/// 17.3.2.2: on another court the set is played again: same starting line-ups, finished sets and
/// sanctions stay, counts begin anew (the last part is the contract's reading; the text is silent).
#[test]
fn r17_3_2_2_on_another_court_the_set_is_played_again() {
    let mut story = Story::international();
    story
        .set_to(B)
        .sets_out()
        .rallies("AAB")
        .enter(time_out(A))
        .enter(substitution(A, &[(4, 8)]))
        .enter(delay(A))
        .enter(card(B, player(3), Level::Warning))
        .enter(suspend())
        .enter(resume(Court::Other))
        .phase(Phase::BetweenSets)
        .sets(&[(0, 25)])
        .score(0, 0)
        .serves(B, 1)
        .stand(A, &[1, 2, 3, 4, 5, 6])
        .stand(B, &[1, 2, 3, 4, 5, 6])
        .time_outs(A, 0)
        .substitutions(A, 0, 0)
        .without("line_up")
        .enter(Kind::BeginSet)
        .score(0, 0)
        .serves(B, 1)
        .enter(delay(A))
        .score(0, 1)
        .sanctions(&[
            (2, A, "delay_warning", (2, 1)),
            (2, B, "warning", (2, 1)),
            (2, A, "delay_penalty", (0, 0)),
        ]);
    assert_eq!(story.timeline().state().set_number(), 2);
}

/// 17.3.2.2: but for those sent off; their team hands in a new line-up.
#[test]
fn r17_3_2_2_whoever_was_sent_off_is_missing() {
    Story::international()
        .enter(card(A, player(3), Level::Expulsion))
        .enter(forced(A, 3, 8, Forced::Expelled))
        .enter(suspend())
        .enter(resume(Court::Other))
        .notices(&Notice::LineUp { team: A })
        .refuses(Kind::BeginSet, "7.3.2", Refusal::LineUpMissing { team: A })
        .refuses(
            crate::support::line_up(A, &[1, 2, 3, 4, 5, 6]),
            "21.3.2.1",
            Refusal::PlayerBarred {
                number: Shirt(3),
                why: game::Barred::Expelled,
            },
        )
        .refuses(
            crate::support::line_up(B, &[1, 2, 3, 4, 5, 6]),
            "7.3.4",
            Refusal::LineUpGiven { team: B },
        )
        .enter(crate::support::line_up(A, &[1, 2, 7, 4, 5, 6]))
        .enter(Kind::BeginSet)
        .serves(A, 1);
}

/// 17.3.2.2 with 18.2.2: a decider that is played again starts with the sides of its toss.
#[test]
fn r17_3_2_2_a_decider_is_played_again_from_its_toss() {
    let mut story = Story::international();
    story
        .until_the_decider()
        .rallies("AAAAAAAA")
        .enter(Kind::ChangeCourts)
        .enter(suspend())
        .enter(resume(Court::Other))
        .without("toss")
        .enter(Kind::BeginSet)
        .serves(B, 1)
        .score(0, 0);
    assert_eq!(story.timeline().state().left(), Some(A));
    story.rallies("AAAAAAAA").enter(Kind::ChangeCourts);
    assert_eq!(story.timeline().state().left(), Some(B));
}

/// Between the sets another court changes nothing.
#[test]
fn r17_3_2_another_court_between_the_sets_cancels_nothing() {
    Story::international()
        .set_to(A)
        .line_ups()
        .enter(suspend())
        .enter(resume(Court::Other))
        .sets(&[(25, 0)])
        .enter(Kind::BeginSet)
        .serves(B, 1);
}

/// 17.3.2 and 17.3.3: four hours in all, not a minute more.
#[test]
fn r17_3_3_more_than_four_hours_and_the_match_is_played_again() {
    Story::international()
        .rallies("A")
        .enter_at(0, suspend())
        .enter_at(240, resume(Court::Same))
        .score(1, 0)
        .enter_at(300, suspend())
        .refuses_at(301, resume(Court::Same), "17.3.3", Refusal::OverFourHours)
        .phase(Phase::Suspended);
}

/// 17.3.3: the interruptions are added up.
#[test]
fn r17_3_3_the_interruptions_are_added_up() {
    Story::international()
        .enter_at(0, suspend())
        .enter_at(100, resume(Court::Same))
        .enter_at(200, suspend())
        .enter_at(300, resume(Court::Other))
        .enter(Kind::BeginSet)
        .enter_at(400, suspend())
        .refuses_at(441, resume(Court::Same), "17.3.3", Refusal::OverFourHours)
        .enter_at(440, resume(Court::Same));
}

/// Without times nobody can say how long it lasted, so nothing is refused (match-log contract: times
/// are optional); and the organiser may decide otherwise.
#[test]
fn r17_3_3_without_times_and_by_insisting_play_goes_on() {
    Story::international()
        .enter(suspend())
        .enter_at(5000, resume(Court::Same))
        .phase(Phase::Playing);
    let mut story = Story::international();
    story.enter_at(0, suspend());
    let insist = Some("agreed with the organiser".to_owned());
    let entry = game::Entry {
        at: Some(241 * 60_000),
        insist,
        ..game::Entry::new(story.last() + 1, resume(Court::Same))
    };
    let after = game::apply(story.timeline().state(), &entry).expect("insisted");
    assert_eq!(after.phase(), Phase::Playing);
}

/// 6.4.3 while play is interrupted: a team that cannot go on.
#[test]
fn r6_4_3_a_team_can_be_incomplete_while_interrupted() {
    Story::international()
        .rallies("AAB")
        .enter(suspend())
        .enter(incomplete(A, Scope::Match))
        .sets(&[(2, 25), (0, 25), (0, 25)])
        .won_by(Some(B));
}

/// 7.7.2: there is nothing to put right in a set that is to be played again.
#[test]
fn r7_7_2_a_cancelled_set_is_not_put_right() {
    let fault = || late(A, Fault::Rotation, None, Found::Rally);
    Story::international()
        .rallies("AA")
        .enter(suspend())
        .enter(resume(Court::Other))
        .refuses(
            fault(),
            "7.7.2",
            Refusal::NothingPlayed {
                fault: Some(Fault::Rotation),
            },
        );
}

/// 17.3.2.2 with 19.3.2.3: a starter who is the libero now stands in no line-up; the team hands in a
/// new one.
#[test]
fn r17_3_2_2_a_starter_who_became_the_libero_is_missing() {
    Story::international()
        .enter(crate::story::substitution(A, &[(3, 8)]))
        .enter(crate::story::new_libero(
            A,
            &[12],
            3,
            game::entry::LiberoWhy::Unable,
        ))
        .enter(suspend())
        .enter(resume(Court::Other))
        .notices(&Notice::LineUp { team: A })
        .refuses(Kind::BeginSet, "7.3.2", Refusal::LineUpMissing { team: A });
}

/// 17.3 and 7.7.2: while play is interrupted a fault found late is put right; what belongs to play is not
/// taken (match-log contract).
#[test]
fn r7_7_2_a_fault_is_put_right_while_interrupted() {
    Story::international()
        .rallies("AAA")
        .enter(suspend())
        .enter(late(
            A,
            Fault::Rotation,
            crate::story::since(1, 0),
            Found::Rally,
        ))
        .phase(Phase::Suspended)
        .score(1, 1)
        .serves(B, 2)
        .refuses(delay(A), "17.3.1", Refusal::Suspended)
        .refuses(crate::story::improper(A), "17.3.1", Refusal::Suspended)
        .refuses(crate::story::recovery(A, 4), "17.3.1", Refusal::Suspended)
        .enter(resume(Court::Same))
        .serves(B, 2);
}

/// The point for it can end the set and the match, interrupted or not.
#[test]
fn r6_2_a_late_fault_ends_a_set_while_interrupted() {
    let mut story = Story::international();
    story
        .set_to(B)
        .sets_out()
        .set_to(B)
        .sets_out()
        .rallies(&"B".repeat(24))
        .rallies("A")
        .enter(suspend())
        .enter(late(
            A,
            Fault::IllegalSubstitution,
            crate::story::since(1, 24),
            Found::Rally,
        ))
        .sets(&[(0, 25), (0, 25), (1, 25)])
        .won_by(Some(B));
    Story::international()
        .rallies(&"B".repeat(24))
        .rallies("A")
        .enter(suspend())
        .enter(late(
            A,
            Fault::IllegalSubstitution,
            crate::story::since(1, 24),
            Found::Rally,
        ))
        .sets(&[(1, 25)])
        .phase(Phase::Suspended)
        .enter(resume(Court::Other))
        .phase(Phase::BetweenSets)
        .sets(&[(1, 25)]);
}

/// 6.4.3: a team that cannot go on loses the set, and the interruption is over with it (match-log contract).
#[test]
fn r6_4_3_incomplete_for_a_set_ends_the_interruption() {
    Story::international()
        .rallies("AAB")
        .enter(suspend())
        .enter(incomplete(A, Scope::Set))
        .phase(Phase::BetweenSets)
        .sets(&[(2, 25)])
        .refuses(resume(Court::Same), "17.3.1", Refusal::NotSuspended)
        .sets_out()
        .serves(B, 1);
}

/// 17.3.2.2: why a rally of the cancelled set ended can still be said (match-log contract).
#[test]
fn r17_3_2_2_the_rallies_of_a_cancelled_set_are_explained() {
    use rules::Cause;
    let mut story = Story::international();
    story.rallies("AB");
    let rally = story.last();
    story
        .enter(suspend())
        .enter(resume(Court::Other))
        .enter(crate::story::explain(rally, Cause::BallOut))
        .refuses(
            crate::story::explain(rally, Cause::PositionFault),
            "7.4",
            Refusal::ServingTeamStandsFree { serving: A },
        )
        .enter(Kind::BeginSet)
        .enter(crate::story::explain(rally, Cause::NetTouch))
        .score(0, 0);
}

/// 17.3.2.2: who serves first is named once the line-up of that side stands, whether the other's does or not.
#[test]
fn r17_3_2_2_the_server_is_named_once_that_line_up_stands() {
    let cut = |team: Team| {
        let mut story = Story::international();
        story
            .rallies("A")
            .enter(card(team, player(3), Level::Disqualification))
            .enter(suspend())
            .enter(resume(Court::Other))
            .notices(&Notice::LineUp { team });
        story
    };
    cut(B).serves(A, 1);
    let mut story = cut(A);
    assert_eq!(story.timeline().state().serving(), Some((A, None)));
    story
        .enter(crate::support::line_up(A, &[7, 2, 8, 4, 5, 6]))
        .serves(A, 7)
        .enter(substitution(A, &[(7, 1)]))
        .serves(A, 1);
}
