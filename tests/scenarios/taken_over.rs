//! A match that was being played when its record began: entered as it stands, and grown into a full match
//! without a toss that nobody held. No rule of the book speaks of it; the form is the project's.

use game::entry::{Amendment, Kind};
use game::{Joined, Notice, Phase, Refusal};
use rules::{Preset, Score, SetLimit, Team};
use Team::{A, B};

use crate::story::{incomplete, since, substitution, toss, Story};

fn score(a: u16, b: u16) -> Score {
    Score { a, b }
}

fn stands(sets: &[(u16, u16)], now: Option<(u16, u16)>, serving: Option<Team>) -> Kind {
    Kind::Joined(Joined {
        sets: sets.iter().map(|&(a, b)| score(a, b)).collect(),
        score: now.map(|(a, b)| score(a, b)),
        serving,
        left: None,
    })
}

fn first_service(team: Team, left: Team) -> Kind {
    Kind::FirstService { team, left }
}

fn tally() -> Story {
    let mut story = Story::opened(Preset::Tally.rules());
    story.without("toss");
    story
}

/// Somebody opens in set three: the sets count, the score goes on.
#[test]
fn log_a_tally_goes_on_from_where_the_match_stands() {
    let mut story = tally();
    story
        .enter(stands(&[(25, 20), (23, 25)], Some((12, 10)), Some(B)))
        .phase(Phase::Playing)
        .score(12, 10);
    let state = story.timeline().state();
    assert_eq!((state.set_number(), state.serving()), (3, Some((B, None))));
    assert_eq!(state.joined(), Some(2));
    story
        .rallies("AAAAAAAAAAAAA")
        .sets(&[(25, 20), (23, 25), (25, 10)]);
    story.enter(Kind::BeginSet).set_to(A).won_by(Some(A));
}

/// Between two sets the next one begins as ever.
#[test]
fn log_a_match_is_taken_over_between_two_sets() {
    tally()
        .enter(stands(&[(25, 20)], None, None))
        .phase(Phase::BetweenSets)
        .enter(Kind::BeginSet)
        .set_to(B)
        .sets(&[(25, 20), (0, 25)]);
}

/// In a full match the line-ups are those of the moment, and who serves stands in place 1.
#[test]
fn log_a_full_match_is_taken_over_with_the_places_of_the_moment() {
    let mut story = Story::listed(Preset::International.rules(), &[]);
    story
        .enter(stands(&[(25, 20)], Some((12, 10)), Some(B)))
        .without("toss")
        .phase(Phase::BetweenSets)
        .score(12, 10)
        .line_ups();
    assert_eq!(story.timeline().state().set_number(), 2);
    story
        .enter(Kind::BeginSet)
        .score(12, 10)
        .serves(B, 1)
        .rallies("A")
        .serves(A, 2)
        .score(13, 10);
    // Before the record began nobody saw a score, so no fault reaches back there.
    story.refuses(
        crate::story::late(
            A,
            game::entry::Fault::Rotation,
            since(11, 10),
            game::entry::Found::Rally,
        ),
        "7.7.2",
        Refusal::ScoreNeverStood {
            asked: score(11, 10),
            nearest: score(12, 10),
            fault: game::entry::Fault::Rotation,
        },
    );
    // An incomplete team keeps what was taken over (6.4.3).
    story
        .enter(incomplete(A, game::entry::Scope::Set))
        .sets(&[(25, 20), (13, 25)]);
}

/// Without a word about who serves, that is asked before the set goes on.
#[test]
fn log_who_serves_is_asked_where_it_was_not_said() {
    let mut story = Story::listed(Preset::International.rules(), &[]);
    story
        .enter(stands(&[], Some((12, 10)), None))
        .phase(Phase::Preparation)
        .notices(&Notice::Toss)
        .line_ups()
        .refuses(Kind::BeginSet, "7.1", Refusal::TossMissing { set: 1 })
        .enter(first_service(B, A))
        .enter(Kind::BeginSet)
        .serves(B, 1)
        .score(12, 10);
}

/// A line-up handed in before was one of a beginning.
#[test]
fn log_taking_over_asks_for_the_line_ups_anew() {
    let mut story = Story::listed(Preset::International.rules(), &[]);
    story
        .line_ups()
        .enter(stands(&[], Some((3, 2)), Some(A)))
        .notices(&Notice::LineUp { team: A })
        .line_ups()
        .enter(Kind::BeginSet)
        .score(3, 2);
}

/// A set that is counted in minutes may have ended at any score.
#[test]
fn log_sets_by_the_clock_are_taken_over_at_any_score() {
    let mut rules = Preset::Tally.rules();
    rules.set_limit = Some(SetLimit::Minutes(12));
    Story::opened(rules)
        .without("toss")
        .enter(stands(&[(14, 9)], Some((2, 2)), None))
        .sets(&[(14, 9)]);
}

#[test]
fn log_only_a_match_that_was_being_played_is_taken_over() {
    tally()
        .refuses(stands(&[], None, None), "log", Refusal::NothingToTakeOver)
        .refuses(
            stands(&[], Some((0, 0)), None),
            "log",
            Refusal::NothingToTakeOver,
        )
        .enter(Kind::BeginSet)
        .refuses(stands(&[(25, 20)], None, None), "log", Refusal::PlayedHere);
    tally().enter(stands(&[(25, 20)], None, None)).refuses(
        stands(&[(25, 20)], None, None),
        "log",
        Refusal::PlayedHere,
    );
}

/// 6.2: a set ends with the point that wins it, and the official may know better.
#[test]
fn r6_2_sets_that_are_taken_over_are_over() {
    tally()
        .refuses_even_so(
            stands(&[(25, 25)], None, None),
            "6.2",
            Refusal::SetLevel {
                set: 1,
                score: score(25, 25),
            },
        )
        .refuses_even_so(
            stands(&[(25, 20)], Some((25, 3)), None),
            "6.2",
            Refusal::SetOver {
                set: 2,
                score: score(25, 3),
            },
        )
        .refuses(
            stands(&[(28, 20)], None, None),
            "6.2",
            Refusal::SetNotOver {
                set: 1,
                score: score(28, 20),
            },
        )
        .insists(
            stands(&[(21, 20)], Some((1, 0)), None),
            Refusal::SetNotOver {
                set: 1,
                score: score(21, 20),
            },
        )
        .sets(&[(21, 20)])
        .score(1, 0);
    // 6.3.1: nothing goes on after the sets that win the match.
    tally().refuses_even_so(
        stands(&[(25, 20), (25, 20), (25, 20)], None, None),
        "6.3.1",
        Refusal::MatchOver,
    );
}

/// 18.2.2: whoever enters how the teams stand has seen the change of courts.
#[test]
fn r18_2_2_a_deciding_set_taken_over_after_the_change_has_had_it() {
    let sets = [(25, 20), (20, 25), (25, 20), (20, 25)];
    tally().enter(stands(&sets, Some((9, 7)), None)).refuses(
        Kind::ChangeCourts,
        "18.2.2",
        Refusal::CourtsChanged,
    );
    tally()
        .enter(stands(&sets, Some((7, 7)), None))
        .rallies("A")
        .enter(Kind::ChangeCourts);
}

/// 7.1: where no toss is in the record, who serves first is what somebody saw; the later sets follow from it
/// (12.1.2), and the deciding one is asked for again.
#[test]
fn r7_1_a_grown_tally_needs_no_toss_that_nobody_held() {
    let mut story = tally();
    let rules = Preset::International.rules();
    story.enter(Kind::BeginSet).set_to(A);
    story.enter(Kind::Heading(Box::new(Amendment {
        rules: Some(rules),
        ..Amendment::default()
    })));
    for team in Team::BOTH {
        story.enter(crate::support::list(team, 12, &[]));
    }
    story
        .line_ups()
        .refuses(Kind::BeginSet, "7.1", Refusal::TossMissing { set: 2 })
        .enter(first_service(B, A))
        .enter(Kind::BeginSet)
        .serves(B, 1);
    assert_eq!(story.timeline().state().left(), Some(A));
    story
        .set_to(B)
        .sets_out()
        .serves(A, 1)
        .refuses(first_service(A, A), "7.1", Refusal::TossInSet)
        .set_to(A)
        .refuses(first_service(A, A), "7.1", Refusal::TossNotDue { set: 4 })
        .sets_out()
        .set_to(B)
        .notices(&Notice::Toss)
        .enter(first_service(A, B))
        .sets_out()
        .serves(A, 1);
}

/// 7.1: where the teams tossed, they toss for the deciding set too.
#[test]
fn r7_1_a_toss_that_was_held_is_not_replaced() {
    Story::listed(Preset::International.rules(), &[]).refuses(
        first_service(A, A),
        "7.1",
        Refusal::TossDecides { set: 1 },
    );
    let mut story = Story::international();
    for team in [A, B, A] {
        story.set_to(team).sets_out();
    }
    story
        .set_to(B)
        .refuses(first_service(A, A), "7.1", Refusal::TossDecides { set: 5 })
        .insists(first_service(A, B), Refusal::TossDecides { set: 5 })
        .sets_out()
        .serves(A, 1);
}

/// A toss may be held all the same, and a score taken over keeps its server.
#[test]
fn r7_1_a_toss_says_who_opens_and_not_who_serves_now() {
    let mut story = Story::listed(Preset::International.rules(), &[]);
    story
        .enter(stands(&[], Some((12, 10)), Some(B)))
        .line_ups()
        .enter(toss(A, A))
        .enter(Kind::BeginSet)
        .serves(B, 1);
    assert_eq!(
        story.timeline().state().play().and_then(|p| p.opener),
        Some(A)
    );
    story.enter(substitution(A, &[(1, 7)]));
}
