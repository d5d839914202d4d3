//! Where the rules are silent the state asks and an entry answers.

use game::entry::Fault::UnregisteredPlayer;
use game::entry::Found::Rally;
use game::{Level, Notice, Phase, QuestionKind, Refusal};
use rules::Team;
use Team::{A, B};

use crate::story::{answer, card, coach, delay, late, since_in, strike, Story};

/// Both teams penalised between the sets: FIVB Casebook 2024, case 6.4: 1-1 and both rotate. Who then
/// serves is not said; until somebody answers, the team due to open (match-log contract).
fn both_penalised() -> Story {
    let mut story = Story::international();
    story
        .set_to(A)
        .enter(card(A, coach(), Level::Penalty))
        .enter(card(B, coach(), Level::Penalty))
        .sets_out();
    story
}

#[test]
fn r21_5_penalties_on_both_teams_ask_who_serves() {
    let mut story = both_penalised();
    story
        .score(1, 1)
        .stand(A, &[2, 3, 4, 5, 6, 1])
        .stand(B, &[2, 3, 4, 5, 6, 1])
        .serves(B, 2);
    let begun = story.last();
    story.notices(&Notice::Question { entry: begun });
    let question = &story.timeline().state().questions()[0];
    assert_eq!(question.ask, QuestionKind::WhoOpens { due: B });
    let (words, choices) = text::question(question, story.timeline().state().into());
    assert!(words.contains("Herons were due"), "{words}");
    assert_eq!(choices, ["Otters", "Herons"]);
}

/// The order of the two cards does not matter.
#[test]
fn r21_5_the_order_of_the_two_penalties_does_not_matter() {
    Story::international()
        .set_to(A)
        .enter(card(B, coach(), Level::Penalty))
        .enter(card(A, coach(), Level::Penalty))
        .sets_out()
        .score(1, 1)
        .serves(B, 2)
        .stand(A, &[2, 3, 4, 5, 6, 1]);
}

/// 16.2.4: delay penalties ask like any other.
#[test]
fn r16_2_4_delay_penalties_on_both_teams_ask_as_well() {
    let mut story = Story::international();
    story
        .enter(delay(A))
        .enter(delay(B))
        .set_to(A)
        .enter(delay(A))
        .enter(delay(B))
        .sets_out()
        .score(1, 1);
    assert_eq!(story.timeline().state().questions().len(), 1);
}

#[test]
fn r21_5_the_answer_gives_the_service_and_rotates_nobody() {
    let mut story = both_penalised();
    let begun = story.last();
    story
        .enter(answer(begun, "A"))
        .serves(A, 2)
        .stand(A, &[2, 3, 4, 5, 6, 1])
        .stand(B, &[2, 3, 4, 5, 6, 1])
        .without("question")
        .refuses_even_so(
            answer(begun, "B"),
            "log",
            Refusal::NoQuestion { entry: begun },
        );
}

/// The first point of the set is past asking who opened it.
#[test]
fn r21_5_the_first_point_closes_the_question() {
    let mut story = both_penalised();
    let begun = story.last();
    story
        .rallies("B")
        .without("question")
        .refuses(
            answer(begun, "A"),
            "log",
            Refusal::NoQuestion { entry: begun },
        )
        .score(1, 2);
}

#[test]
fn log_an_answer_is_one_of_the_choices() {
    let mut story = both_penalised();
    let begun = story.last();
    story
        .refuses_even_so(
            answer(begun, "toss"),
            "log",
            Refusal::NoSuchChoice {
                choices: vec!["A", "B"],
            },
        )
        .notices(&Notice::Question { entry: begun });
}

#[test]
fn log_an_answer_can_be_taken_back() {
    let mut story = both_penalised();
    let begun = story.last();
    story.enter(answer(begun, "A"));
    let answered = story.last();
    story
        .enter(strike(answered))
        .serves(B, 2)
        .notices(&Notice::Question { entry: begun })
        .enter(answer(begun, "B"))
        .serves(B, 2);
}

/// 7.3.5.4 speaks of points and sets gained since the player came in; what becomes of a set in the
/// middle of which that was, it does not say.
fn came_in_during_set_one() -> Story {
    let mut story = Story::international();
    story
        .set_to(A)
        .sets_out()
        .set_to(A)
        .sets_out()
        .rallies("AAB")
        .enter(late(A, UnregisteredPlayer, since_in(1, 10, 0), Rally));
    story
}

#[test]
fn r7_3_5_4_a_player_who_came_in_during_an_earlier_set_asks() {
    let mut story = came_in_during_set_one();
    let found = story.last();
    story
        .sets(&[(25, 0), (25, 0)])
        .score(0, 2)
        .notices(&Notice::Question { entry: found });
    let question = &story.timeline().state().questions()[0];
    assert_eq!(
        question.ask,
        QuestionKind::UnregisteredInside { team: A, set: 1 }
    );
    assert_eq!(question.ask.choices(), ["lose_set", "keep_set"]);
    let (words, _) = text::question(question, story.timeline().state().into());
    assert!(
        words.contains("Otters") && words.contains("set 1"),
        "{words}"
    );
}

#[test]
fn r7_3_5_4_the_set_in_which_the_player_came_in_is_lost() {
    let mut story = came_in_during_set_one();
    let found = story.last();
    story
        .enter(answer(found, "lose_set"))
        .sets(&[(0, 25), (0, 25)])
        .phase(Phase::Playing)
        .score(0, 2);
}

#[test]
fn r7_3_5_4_or_it_stands_and_only_later_ones_are_lost() {
    let mut story = came_in_during_set_one();
    let found = story.last();
    story
        .enter(answer(found, "keep_set"))
        .sets(&[(25, 0), (0, 25)])
        .phase(Phase::Playing);
}

/// A point does not close that one.
#[test]
fn r7_3_5_4_the_question_waits_while_play_goes_on() {
    let mut story = came_in_during_set_one();
    let found = story.last();
    story
        .rallies("AB")
        .notices(&Notice::Question { entry: found })
        .enter(answer(found, "lose_set"))
        .sets(&[(0, 25), (0, 25)]);
}

/// The answer can decide the match.
#[test]
fn r7_3_5_4_the_answer_can_end_the_match() {
    let mut story = Story::international();
    story
        .set_to(A)
        .sets_out()
        .set_to(B)
        .sets_out()
        .set_to(A)
        .sets_out()
        .rallies("A")
        .enter(late(A, UnregisteredPlayer, since_in(1, 10, 0), Rally));
    let found = story.last();
    story
        .enter(answer(found, "lose_set"))
        .sets(&[(0, 25), (0, 25), (0, 25)])
        .won_by(Some(B));
}

#[test]
fn log_an_entry_that_asked_nothing_is_not_answered() {
    Story::international().refuses(answer(3, "A"), "log", Refusal::NoQuestion { entry: 3 });
}

/// FIVB Casebook 2024, case 6.4: both penalties count together, so 0-1 never stood.
#[test]
fn r21_5_between_two_penalties_no_score_stood() {
    Story::international()
        .set_to(A)
        .enter(card(A, coach(), Level::Penalty))
        .enter(card(B, coach(), Level::Penalty))
        .sets_out()
        .score(1, 1)
        .refuses(
            late(A, UnregisteredPlayer, crate::story::since(0, 1), Rally),
            "7.3.5.4",
            Refusal::ScoreNeverStood {
                asked: rules::Score { a: 0, b: 1 },
                nearest: rules::Score { a: 1, b: 1 },
                fault: UnregisteredPlayer,
            },
        )
        .enter(late(
            A,
            UnregisteredPlayer,
            crate::story::since(0, 0),
            Rally,
        ))
        .score(0, 2);
}

/// After the match, since a score inside an earlier set: the match, that set with the later ones, or those alone;
/// an answer can be taken back, and the result stands until there is one.
#[test]
fn r7_3_5_4_found_after_the_match_inside_an_earlier_set() {
    let mut story = Story::international();
    story
        .set_to(A)
        .sets_out()
        .set_to(A)
        .sets_out()
        .rallies(&"B".repeat(23))
        .set_to(A)
        .won_by(Some(A))
        .enter(late(A, UnregisteredPlayer, since_in(1, 10, 0), Rally))
        .won_by(Some(A));
    let found = story.last();
    let question = story.timeline().state().questions()[0].clone();
    assert_eq!(
        question.ask.choices(),
        ["lose_match", "lose_set", "keep_set"]
    );
    assert_eq!(
        text::question(&question, story.timeline().state().into())
            .1
            .len(),
        3
    );
    for (choice, sets) in [
        ("lose_match", &[(0, 25), (0, 25), (0, 25)][..]),
        ("lose_set", &[(0, 25), (0, 25), (0, 25)][..]),
        ("keep_set", &[(25, 0), (0, 25), (0, 25)][..]),
    ] {
        story.enter(answer(found, choice)).sets(sets);
        let answered = story.last();
        story.enter(strike(answered)).won_by(Some(A));
    }
    story
        .enter(answer(found, "keep_set"))
        .phase(Phase::BetweenSets)
        .without("question");
}
