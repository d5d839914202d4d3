//! Taking back: strikes, and what becomes of later entries (match-log contract).

use game::entry::ReplayWhy;
use game::{Asked, InSet, Kind, Outcome, Phase, Refusal};
use rules::{Shirt, Team};
use Team::A;

use crate::story::{
    card, coach, delay, played_again, player, stopped, strike, substitution, time_out, Story,
};
use game::Level;

fn outcome(story: &Story, n: u32) -> Outcome {
    story.timeline().outcome(n).expect("an entry").clone()
}

#[test]
fn the_last_entry_is_taken_back() {
    let mut story = Story::international();
    story.rallies("AB");
    let last = story.last();
    story.enter(strike(last)).score(1, 0).serves(A, 1);
    assert_eq!(outcome(&story, last), Outcome::Struck(last + 1));
}

/// 7.6.2: a side-out in the middle taken back: the rotation is worked out anew.
#[test]
fn r7_6_2_a_side_out_in_the_middle_taken_back() {
    let mut story = Story::international();
    story.rallies("ABABA");
    let first_b = story.last() - 3;
    story
        .serves(A, 3)
        .enter(strike(first_b))
        .score(3, 1)
        .serves(A, 2);
}

/// 6.2: the rally that ended the set taken back: the set goes on, and what stood for the next one is
/// visibly refused.
#[test]
fn r6_2_the_last_rally_of_a_set_taken_back() {
    let mut story = Story::international();
    story.rallies(&"A".repeat(25));
    let last = story.last();
    story
        .sets_out()
        .rallies("B")
        .enter(strike(last))
        .phase(Phase::Playing)
        .score(24, 1);
    assert_eq!(
        outcome(&story, last + 1),
        Outcome::Refused(Refusal::LineUpPlayed { team: A })
    );
    assert_eq!(
        outcome(&story, last + 3),
        Outcome::Refused(Refusal::SetRunning)
    );
}

/// 15.2.2: without the rally between them the second request is illegal; it says so and stays.
#[test]
fn r15_2_2_a_request_that_becomes_illegal_says_so_and_stays() {
    let mut story = Story::international();
    story.enter(substitution(A, &[(4, 8)])).rallies("A");
    let rally = story.last();
    story
        .enter(substitution(A, &[(5, 9)]))
        .substitutions(A, 2, 0)
        .enter(strike(rally))
        .substitutions(A, 1, 0)
        .stand(A, &[1, 2, 3, 8, 5, 6]);
    assert_eq!(
        outcome(&story, rally + 1),
        Outcome::Refused(Refusal::SecondRequest { team: A })
    );
    assert!(story.timeline().entry(rally + 1).is_some());
}

/// 15.6.1: a substitution taken back takes the return with it.
#[test]
fn r15_6_1_a_substitution_taken_back_takes_the_return_with_it() {
    let mut story = Story::international();
    story.enter(substitution(A, &[(4, 8)]));
    let out = story.last();
    story
        .rallies("A")
        .enter(substitution(A, &[(8, 4)]))
        .enter(strike(out))
        .substitutions(A, 0, 0)
        .stand(A, &[1, 2, 3, 4, 5, 6]);
    assert_eq!(
        outcome(&story, out + 2),
        Outcome::Refused(Refusal::NotOnCourt {
            number: Shirt(8),
            asked: Asked::Substitution
        })
    );
}

/// 15.1: a time-out taken back is free again.
#[test]
fn r15_1_a_time_out_taken_back_is_free_again() {
    let mut story = Story::international();
    story.enter(time_out(A)).enter(time_out(A));
    let second = story.last();
    story
        .enter(strike(second))
        .time_outs(A, 1)
        .enter(time_out(A))
        .time_outs(A, 2);
}

/// 21.3.1: a card taken back takes its point back, and the ladder.
#[test]
fn r21_3_1_a_card_taken_back_takes_its_point_back() {
    let mut story = Story::international();
    story.enter(card(A, coach(), Level::Penalty)).rallies("A");
    let penalty = story.last() - 1;
    story
        .score(1, 1)
        .enter(strike(penalty))
        .score(1, 0)
        .serves(A, 1)
        .sanctions(&[])
        .enter(card(A, coach(), Level::Penalty))
        .score(1, 1);
}

/// A refusal can become legal as well.
#[test]
fn r15_1_a_refused_entry_counts_once_its_obstacle_is_taken_back() {
    let mut story = Story::international();
    story.enter(time_out(A)).enter(time_out(A));
    let second = story.last();
    story
        .refuses(
            time_out(A),
            "15.1",
            Refusal::NoTimeOutLeft { team: A, most: 2 },
        )
        .enter(strike(second))
        .time_outs(A, 2);
    assert_eq!(outcome(&story, second + 1), Outcome::Accepted);
}

/// What was insisted on becomes ordinary once the objection is gone.
#[test]
fn r21_1_an_insisted_card_becomes_ordinary() {
    let mut story = Story::international();
    story.enter(card(A, player(3), Level::Warning));
    let first = story.last();
    story.insists(
        card(A, player(4), Level::Warning),
        Refusal::TeamWarned { team: A },
    );
    story.enter(strike(first));
    assert_eq!(outcome(&story, first + 1), Outcome::Accepted);
    story.sanctions(&[(1, A, "warning", (0, 0))]);
}

/// The strike of a strike brings the entry back.
#[test]
fn log_a_strike_taken_back_brings_the_entry_back() {
    let mut story = Story::international();
    story.rallies("A");
    let rally = story.last();
    story
        .enter(strike(rally))
        .score(0, 0)
        .enter(strike(rally + 1))
        .score(1, 0)
        .enter(strike(rally + 2))
        .score(0, 0);
    assert_eq!(outcome(&story, rally), Outcome::Struck(rally + 1));
    assert_eq!(outcome(&story, rally + 1), Outcome::Accepted);
    assert_eq!(outcome(&story, rally + 2), Outcome::Struck(rally + 3));
}

#[test]
fn log_an_entry_is_taken_back_once() {
    let mut story = Story::international();
    story.rallies("A");
    let rally = story.last();
    story.enter(strike(rally)).refuses_even_so(
        strike(rally),
        "log",
        Refusal::AlreadyStruck { entry: rally },
    );
}

#[test]
fn log_the_opening_is_not_taken_back() {
    Story::international().refuses_even_so(strike(1), "log", Refusal::StrikeFirst);
}

#[test]
fn log_only_an_earlier_entry_is_taken_back() {
    let mut story = Story::international();
    let own = story.last() + 1;
    story
        .refuses_even_so(strike(own), "log", Refusal::StrikeLater { entry: own })
        .refuses(
            strike(own + 50),
            "log",
            Refusal::StrikeLater { entry: own + 50 },
        );
}

/// The end of the match taken back: it goes on.
#[test]
fn r6_3_1_the_last_rally_of_the_match_taken_back() {
    let mut story = Story::international();
    story.set_to(A).sets_out().set_to(A).sets_out().set_to(A);
    let last = story.last();
    story
        .won_by(Some(A))
        .enter(strike(last))
        .phase(Phase::Playing)
        .score(24, 0)
        .rallies("BA")
        .won_by(Some(A))
        .sets(&[(25, 0), (25, 0), (25, 1)]);
}

/// The beginning of the set taken back: its rallies stay visible and do not count.
#[test]
fn r12_3_without_its_beginning_a_set_has_no_rallies() {
    let mut story = Story::international();
    let begun = story.last();
    story
        .rallies("AAB")
        .enter(strike(begun))
        .phase(Phase::Preparation)
        .score(0, 0);
    for n in begun + 1..=begun + 3 {
        assert_eq!(
            outcome(&story, n),
            Outcome::Refused(Refusal::NoSetRunning {
                asked: InSet::Rally
            })
        );
    }
    story.enter(Kind::BeginSet).rallies("B").score(0, 1);
}

/// A long chain of strikes is told apart at once: each takes back the one before it, and every second
/// one brings the rally back.
#[test]
fn log_a_chain_of_strikes_is_followed_to_its_end() {
    let mut kinds = crate::support::opening(rules::Preset::International.rules());
    kinds.extend(crate::support::run("A"));
    let rally = u32::try_from(kinds.len()).expect("few entries");
    for i in 0..4001 {
        kinds.push(strike(rally + i));
    }
    let timeline = game::Timeline::of(crate::support::numbered(kinds));
    // The last strike stands, so the one before it does not, and so on: the first stands.
    assert_eq!(timeline.state().score().a, 0);
    assert_eq!(
        timeline.outcome(rally),
        Some(&game::Outcome::Struck(rally + 1))
    );
}

/// After a replay nobody is asked why the rally before it ended: it would be taken for the one that counts no
/// more (6.1.3).
#[test]
fn a_replay_ends_the_talk_about_the_rally_before() {
    let mut story = Story::international();
    story.rallies("AB");
    let last = story.last();
    let talked_about = |story: &Story| story.timeline().last_played().map(|e| e.n);
    assert_eq!(talked_about(&story), Some(last));
    story.enter(time_out(A));
    assert_eq!(talked_about(&story), Some(last));
    story.enter(played_again(ReplayWhy::DoubleFault, last));
    assert_eq!(talked_about(&story), None);
    // Undone, it is the last one again; played on, the next one is.
    let replayed = story.last();
    story.enter(strike(replayed));
    assert_eq!(talked_about(&story), Some(last));
    story.enter(stopped(ReplayWhy::Interference));
    assert_eq!(talked_about(&story), None);
    story.rallies("A");
    assert_eq!(talked_about(&story), Some(story.last()));
}

/// Nor after a point that no rally gave (16.2.3, 21.3.1): the reasons would be taken for those of that point.
#[test]
fn a_penalty_ends_the_talk_about_the_rally_before() {
    let mut story = Story::international();
    story.rallies("AB");
    let last = story.last();
    let talked_about = |story: &Story| story.timeline().last_played().map(|e| e.n);
    story.enter(delay(A));
    assert_eq!(talked_about(&story), Some(last), "a warning gives no point");
    story.enter(delay(A));
    assert_eq!(talked_about(&story), None);
    let penalty = story.last();
    story.enter(strike(penalty));
    assert_eq!(talked_about(&story), Some(last));
    story.enter(card(A, player(3), Level::Penalty));
    assert_eq!(talked_about(&story), None);
    story.rallies("A");
    assert_eq!(talked_about(&story), Some(story.last()));
}
