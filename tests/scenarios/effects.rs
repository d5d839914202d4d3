//! What is different after an entry, told one thing after the other.

use game::entry::Level;
use game::{
    effects, no_longer_count, Absence, Effect, Kind, SanctionEffect, SanctionKind, Timeline,
};
use rules::{Score, Shirt, Team};
use Team::{A, B};

use crate::story::{card, delay, player, strike, substitution, Story};

/// What an entry would change, and the entries that it would take along.
#[track_caller]
fn after(story: &Story, kind: Kind) -> (Vec<Effect>, Vec<u32>) {
    let before = story.timeline();
    let mut after: Timeline = before.clone();
    let n = story.last() + 1;
    let _ = after.push(game::Entry::new(n, kind));
    let lost = no_longer_count(before, &after);
    (effects(before, &after), lost.iter().map(|e| e.n).collect())
}

fn rally(won_by: Team) -> Kind {
    Kind::Rally {
        won_by,
        cause: None,
        by: None,
    }
}

/// 6.1.3, 7.6.1: the receiving team wins the rally, scores, serves and rotates; a rotation alone is not said.
#[test]
fn a_rally_changes_score_and_service() {
    let mut story = Story::international();
    story.rallies("A");
    let (effects, lost) = after(&story, rally(B));
    assert_eq!(
        effects,
        [
            Effect::Score {
                before: Score { a: 1, b: 0 },
                after: Score { a: 1, b: 1 }
            },
            Effect::Serves {
                team: B,
                server: Some(Shirt(2))
            },
        ]
    );
    assert!(lost.is_empty());
}

/// A point that is taken back gives the score before it.
#[test]
fn a_rally_taken_back_takes_its_point() {
    let mut story = Story::international();
    story.rallies("A");
    let (effects, lost) = after(&story, strike(story.last()));
    assert_eq!(
        effects,
        [Effect::Score {
            before: Score { a: 1, b: 0 },
            after: Score { a: 0, b: 0 }
        }]
    );
    assert!(lost.is_empty());
}

/// 15.6: whoever went out comes back; without the first substitution nobody is there to come back for, so the
/// second one counts no more. While it is the only one, its player is on court again.
#[test]
fn a_substitution_taken_back_takes_along_the_way_back() {
    let mut story = Story::international();
    story.enter(substitution(B, &[(5, 8)]));
    let out = story.last();
    assert_eq!(
        after(&story, strike(out)),
        (
            vec![Effect::Places {
                team: B,
                on_court: [1, 2, 3, 4, 5, 6].map(Shirt).to_vec()
            }],
            vec![]
        )
    );
    // 15.3.2: a rally has to be played in between.
    story.rallies("A").enter(substitution(B, &[(8, 5)]));
    let back = story.last();
    assert_eq!(after(&story, strike(out)), (vec![], vec![back]));
}

/// 6.3.1: the point that ends a match ends the set with it; both are one message.
#[test]
fn the_last_point_ends_the_match() {
    let mut story = Story::international();
    story.set_to(A).sets_out().set_to(A).sets_out();
    story.rallies(&"A".repeat(24));
    let (effects, _) = after(&story, rally(A));
    assert_eq!(effects[0], Effect::MatchOver);
    assert!(effects.contains(&Effect::SetsWon {
        before: rules::ByTeam { a: 2, b: 0 },
        after: rules::ByTeam { a: 3, b: 0 },
    }));
}

/// 21.3.2 and 21.5: an expulsion between the sets is told at once and shown when the set begins; the person goes
/// for that set, and a disqualification comes next.
#[test]
fn an_expulsion_between_sets_says_where_to_and_for_how_long() {
    let mut story = Story::international();
    story.set_to(A);
    let kind = card(B, player(3), Level::Expulsion);
    let preview = game::preview_sanction(story.timeline().state(), &kind);
    let preview = preview.expect("it is taken").expect("it is sanctioned");
    assert_eq!(
        preview.effects(),
        [
            SanctionEffect::Leaves(Absence::Set),
            SanctionEffect::Returns(Absence::Set),
            SanctionEffect::Next(SanctionKind::Misconduct(Level::Disqualification)),
            SanctionEffect::CoachToldCardsShownIn(2),
        ]
    );
}

/// 16.2.2 and 16.2.3: after a delay warning the next delay costs a point; a delay of no request bars nobody.
#[test]
fn a_delay_says_what_comes_next() {
    let story = Story::international();
    let preview = game::preview_sanction(story.timeline().state(), &delay(A));
    let preview = preview.expect("it is taken").expect("it is sanctioned");
    assert_eq!(
        preview.effects(),
        [SanctionEffect::Next(SanctionKind::DelayPenalty)]
    );
}
