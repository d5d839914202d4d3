//! A player who is not on the list, found late (7.3.5.4).

use game::entry::Fault::{Rotation, UnregisteredPlayer};
use game::entry::Found::{AfterRally, Rally};
use game::entry::Scope;
use game::{DecidedBy, Kind, Level, Notice, Phase, Refusal};
use rules::{Shirt, Team};
use Team::{A, B};

use crate::story::{
    answer, card, coach, incomplete, late, put_right, since, since_in, substitution, Story,
};

/// 7.3.5.4: a player who is not on the list, in this set.
#[test]
fn r7_3_5_4_an_unregistered_player_in_this_set() {
    Story::international()
        .rallies("AAAAAABBA")
        .enter(put_right(
            A,
            UnregisteredPlayer,
            since(0, 0),
            Rally,
            &[1, 2, 3, 4, 5, 6],
        ))
        .score(0, 3)
        .serves(B, 3);
}

/// 7.3.5.4: since the start of an earlier set: that one and every later one won are lost 0-25.
#[test]
fn r7_3_5_4_an_unregistered_player_loses_the_sets_won_since() {
    let mut story = Story::international();
    story
        .set_to(A)
        .sets_out()
        .set_to(B)
        .sets_out()
        .set_to(A)
        .sets_out()
        .rallies("AAB")
        .enter(late(A, UnregisteredPlayer, since_in(1, 0, 0), Rally))
        .sets(&[(0, 25), (0, 25), (0, 25)])
        .won_by(Some(B));
    assert_eq!(
        story.timeline().state().ended(),
        Some(DecidedBy::Unregistered)
    );
}

/// The same since the second set: the first one stands, the match goes on.
#[test]
fn r7_3_5_4_sets_before_the_player_came_in_stand() {
    Story::international()
        .set_to(A)
        .sets_out()
        .set_to(A)
        .sets_out()
        .rallies("AAB")
        .enter(late(A, UnregisteredPlayer, since_in(2, 0, 0), Rally))
        .sets(&[(25, 0), (0, 25)])
        .phase(Phase::Playing)
        .score(0, 2);
}

/// The same found between the sets: the last set is not opened again, nobody is on court.
#[test]
fn r7_3_5_4_found_between_the_sets_nothing_is_opened_again() {
    Story::international()
        .set_to(A)
        .sets_out()
        .set_to(B)
        .line_ups()
        .enter(late(A, UnregisteredPlayer, since_in(1, 0, 0), AfterRally))
        .sets(&[(0, 25), (0, 25)])
        .phase(Phase::BetweenSets)
        .enter(Kind::BeginSet)
        .serves(A, 1);
}

/// The same found after the match: 7.3.5.4 loses the points and sets won since, the casebook of 2024 (case
/// 4.22) the match, so the core asks and the result stands until it is answered (match-log contract).
#[test]
fn r7_3_5_4_found_after_the_match_the_core_asks() {
    let found = |set| {
        let mut story = Story::international();
        story
            .set_to(A)
            .sets_out()
            .set_to(A)
            .sets_out()
            .set_to(A)
            .enter(late(A, UnregisteredPlayer, since_in(set, 0, 0), AfterRally))
            .won_by(Some(A));
        let entry = story.last();
        story.notices(&Notice::Question { entry });
        let question = story.timeline().state().questions()[0].clone();
        assert_eq!(question.ask.choices(), ["lose_match", "lose_set"]);
        let (words, choices) = text::question(&question, story.timeline().state().into());
        assert!(
            words.contains("Otters") && words.contains("competition"),
            "{words}"
        );
        assert_eq!(choices.len(), 2);
        (story, entry)
    };
    let (mut story, entry) = found(2);
    story
        .enter(answer(entry, "lose_set"))
        .sets(&[(25, 0), (0, 25), (0, 25)])
        .phase(Phase::BetweenSets)
        .sets_out()
        .set_to(A)
        .phase(Phase::BetweenSets);
    let (mut story, entry) = found(1);
    story
        .enter(answer(entry, "lose_set"))
        .sets(&[(0, 25), (0, 25), (0, 25)])
        .won_by(Some(B));
    let (mut story, entry) = found(3);
    story
        .enter(answer(entry, "lose_match"))
        .sets(&[(0, 25), (0, 25), (0, 25)])
        .won_by(Some(B))
        .without("question");
    assert_eq!(
        story.timeline().state().ended(),
        Some(DecidedBy::Unregistered)
    );
}

/// 7.3.5.4: for a player who was not on the list a revised line-up is given: who is put in starts the
/// set, and whoever is listed may still come in once.
#[test]
fn r7_3_5_4_a_revised_line_up_has_a_new_starter() {
    let story = &mut Story::international();
    story
        .rallies("AA")
        .enter(put_right(
            B,
            UnregisteredPlayer,
            since(0, 0),
            Rally,
            &[1, 2, 3, 7, 5, 6],
        ))
        .rallies("A")
        .enter(substitution(B, &[(7, 8)]))
        .rallies("A")
        .refuses(
            substitution(B, &[(8, 4)]),
            "15.6.2",
            Refusal::OnlyStarterReturns {
                out: Shirt(8),
                starter: Shirt(7),
            },
        )
        .enter(substitution(B, &[(8, 7)]))
        .rallies("A")
        .enter(substitution(B, &[(5, 4)]));
}

/// 21.5: a penalty given between two sets counts in the next one, though the match was over in
/// between: number 9 of B had played the first set without being on the list.
#[test]
fn r21_5_a_penalty_outlives_the_end_of_a_match_that_goes_on() {
    let mut rules = rules::Preset::International.rules();
    rules.sets = rules::Sets::BestOf(3);
    Story::by(rules)
        .set_to(B)
        .sets_out()
        .set_to(A)
        .enter(card(A, coach(), Level::Penalty))
        .enter(late(B, UnregisteredPlayer, since_in(1, 0, 0), AfterRally))
        .won_by(Some(A))
        .enter(late(A, Rotation, since(24, 0), AfterRally))
        .score(24, 1)
        .enter(incomplete(A, Scope::Set))
        .sets(&[(25, 0), (24, 26)])
        .enter(crate::story::toss(B, A))
        .sets_out()
        .score(0, 1);
}

/// 7.3.5.4: a set that was lost for an unregistered player is not decided once more.
#[test]
fn r7_3_5_4_a_set_is_lost_once() {
    Story::international()
        .set_to(B)
        .sets_out()
        .enter(late(B, UnregisteredPlayer, since_in(1, 0, 0), Rally))
        .sets(&[(25, 0)])
        .refuses(
            late(A, UnregisteredPlayer, since_in(1, 0, 0), Rally),
            "6.4",
            Refusal::NotByPlay { set: 1 },
        );
}

/// FIVB Casebook 2024, case 4.22, and 7.3.5.4: found after a set, that set is lost to nothing and is not played
/// on, whenever the player came in; the opponent keeps what it has beyond the target.
#[test]
fn r7_3_5_4_found_after_the_set_the_set_is_lost() {
    for moment in [since(0, 0), since(10, 0), None] {
        Story::international()
            .set_to(A)
            .enter(late(A, UnregisteredPlayer, moment, AfterRally))
            .phase(Phase::BetweenSets)
            .sets(&[(0, 25)])
            .sets_out()
            .serves(B, 1);
    }
    Story::international()
        .rallies(&"AB".repeat(24))
        .rallies("BB")
        .sets(&[(24, 26)])
        .enter(late(A, UnregisteredPlayer, since(0, 0), AfterRally))
        .sets(&[(0, 26)])
        .phase(Phase::BetweenSets);
    Story::international()
        .rallies(&"AB".repeat(27))
        .rallies("AA")
        .enter(late(A, UnregisteredPlayer, since(0, 0), AfterRally))
        .sets(&[(0, 27)]);
}

/// 7.3.5.4: points in the sets that the team lost since go as well (match-log contract).
#[test]
fn r7_3_5_4_points_in_sets_that_were_lost_go_as_well() {
    Story::international()
        .set_to(A)
        .sets_out()
        .rallies(&"A".repeat(20))
        .set_to(B)
        .sets_out()
        .rallies(&"AB".repeat(25))
        .rallies("BB")
        .sets(&[(25, 0), (20, 25), (25, 27)])
        .sets_out()
        .rallies("AAB")
        .enter(late(A, UnregisteredPlayer, since_in(2, 0, 0), Rally))
        .sets(&[(25, 0), (0, 25), (0, 27)])
        .score(0, 2)
        .phase(Phase::Playing);
}

/// 7.3.5.4: after a set `positions` are the revised line-up of the next one, where that team's line-up is in
/// already; else the team hands one in anyway (match-log contract).
#[test]
fn r7_3_5_4_the_next_line_up_is_revised_where_it_is_in() {
    let revised =
        |places: &[u16]| put_right(A, UnregisteredPlayer, since(0, 0), AfterRally, places);
    Story::international()
        .set_to(B)
        .line_ups()
        .enter(substitution(B, &[(4, 8)]))
        .refuses(
            revised(&[1, 2, 3, 12, 5, 6]),
            "19.3.2.3",
            Refusal::LiberoInLineUp { number: Shirt(12) },
        )
        .enter(revised(&[1, 2, 3, 7, 5, 6]))
        .stand(A, &[1, 2, 3, 7, 5, 6])
        .stand(B, &[1, 2, 3, 8, 5, 6])
        .substitutions(B, 1, 0)
        .enter(Kind::BeginSet)
        .enter(substitution(A, &[(7, 4)]));
    Story::international()
        .set_to(B)
        .enter(revised(&[1, 2, 3, 7, 5, 6]))
        .notices(&Notice::LineUp { team: A })
        .sets_out()
        .stand(A, &[1, 2, 3, 4, 5, 6]);
}

/// 7.3.5.4: the substitution that brought an unregistered player in counts no more.
#[test]
fn r7_3_5_4_the_substitution_of_an_unregistered_player_counts_no_more() {
    Story::international()
        .rallies("A")
        .enter(substitution(A, &[(4, 8)]))
        .rallies("A")
        .enter(put_right(
            A,
            UnregisteredPlayer,
            since(1, 0),
            Rally,
            &[1, 2, 3, 4, 5, 6],
        ))
        .score(1, 1)
        .substitutions(A, 0, 0);
    // Another player takes the place: the place begins anew with that one.
    Story::international()
        .enter(substitution(A, &[(4, 8)]))
        .rallies("A")
        .enter(put_right(
            A,
            UnregisteredPlayer,
            since(0, 0),
            Rally,
            &[1, 2, 3, 9, 5, 6],
        ))
        .substitutions(A, 0, 0)
        .enter(substitution(A, &[(9, 10)]))
        .substitutions(A, 1, 0);
}
