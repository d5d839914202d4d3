//! A lesson: a class sees every kind of what it is about before one comes again, and votes for what is true.

use std::collections::BTreeSet;

use app::lesson::{Lesson, Vote};
use learn::{draw, Call, End, Kind, Level};
use rules::{Cause, Group};

fn lesson(about: Option<Group>, seed: u64) -> Lesson {
    Lesson {
        about,
        level: Level::Clear,
        seed,
    }
}

/// The kinds of so many turns.
fn seen(lesson: Lesson, turns: usize) -> Vec<Kind> {
    (0..turns as u64)
        .map(|turn| lesson.scene(turn).expect("a scene").kind)
        .collect()
}

#[test]
fn every_kind_comes_once_before_one_comes_again() {
    for seed in [0, 1, 1_764_000_000_123] {
        for about in Group::ALL.map(Some).into_iter().chain([None]) {
            let lesson = lesson(about, seed);
            let count = lesson.kinds().len();
            assert!(count >= 4, "{about:?}: {count}");
            let seen = seen(lesson, 2 * count);
            for round in seen.chunks(count) {
                let kinds: BTreeSet<&Kind> = round.iter().collect();
                assert_eq!(kinds.len(), count, "{about:?}");
            }
            assert!(seen.windows(2).all(|pair| pair[0] != pair[1]), "{about:?}");
        }
    }
}

#[test]
fn what_a_lesson_is_about_holds_for_each_of_its_scenes() {
    for group in Group::ALL {
        for kind in seen(lesson(Some(group), 5), 12) {
            let cause = kind.cause().expect("it is about one thing");
            assert_eq!(cause.group(), Some(group), "{kind:?}");
        }
    }
    // Where it is about everything, two faults at once belong to it as well.
    let all = lesson(None, 5).kinds();
    assert_eq!(all.len(), Kind::COUNT);
    assert!(all.contains(&Kind::DoubleFault));
}

#[test]
fn a_scene_and_its_near_miss_do_not_follow_each_other() {
    for about in Group::ALL.map(Some).into_iter().chain([None]) {
        let lesson = lesson(about, 3);
        let seen = seen(lesson, lesson.kinds().len());
        let sides = |kind: &Kind| match *kind {
            Kind::Ends(cause) | Kind::GoesOn(cause) => Some(Ok(cause)),
            Kind::CaseEnds(case) | Kind::CaseGoesOn(case) => Some(Err(case)),
            _ => None,
        };
        let same = |pair: &&[Kind]| sides(&pair[0]).is_some_and(|of| Some(of) == sides(&pair[1]));
        assert_eq!(seen.windows(2).filter(same).count(), 0, "{about:?}");
    }
}

#[test]
fn a_scene_can_be_drawn_again_from_what_it_says_of_itself() {
    let shown = lesson(None, 9).scene(4).expect("a scene");
    let from = shown.from();
    let mut parts = from.split(' ');
    let kind = Kind::from_code(parts.next().expect("a kind")).expect("a kind");
    assert_eq!(parts.next(), Some("Clear"));
    let seed = parts.next().and_then(|seed| seed.parse().ok());
    let drawn = draw(kind, Level::Clear.band(kind), seed.expect("a seed"));
    assert_eq!(drawn, Some(shown.drawn));
}

#[test]
fn the_right_vote_is_the_team_at_fault_or_none() {
    let cause = Cause::NetTouch;
    for (by, vote) in [(End::Left, Vote::Left), (End::Right, Vote::Right)] {
        let call = Call::Fault {
            cause,
            by,
            signal: cause.signal(),
        };
        assert_eq!(Vote::of(call), vote);
    }
    assert_eq!(Vote::of(Call::PlayOn), Vote::PlayOn);
    assert_eq!(Vote::of(Call::Replay), Vote::Replay);
}
