//! What somebody practises: what comes next, how hard it gets, what is kept.

use app::learner::{goes_on, order, Learner, Sitting};
use learn::{Kind, Level, Marked, Timing};
use proptest::prelude::*;
use rules::Cause;
use std::collections::BTreeSet;

const DAY: i64 = 86_400_000;
const RIGHT: Marked = Marked {
    timing: Timing::InTime,
    side: true,
    nature: true,
    reaction: Some(0.6),
};
const WRONG: Marked = Marked {
    timing: Timing::Missed,
    side: true,
    nature: true,
    reaction: None,
};
const BALL_OUT: Kind = Kind::Ends(Cause::BallOut);

/// Plays so many scenes, each answered as this says.
fn sits(learner: &mut Learner, scenes: u64, now: i64, answer: impl Fn(Kind) -> Marked) -> Sitting {
    let mut sitting = Sitting::default();
    for turn in 0..scenes {
        let task = learner.next(&sitting, now, turn);
        let marked = answer(task.kind);
        learner.took(
            task.kind,
            &marked,
            now + i64::try_from(turn).unwrap() * 15_000,
        );
        sitting.scenes.push((task.kind, marked));
    }
    sitting
}

#[test]
fn every_kind_has_its_place_in_the_order_once() {
    let all: Vec<Kind> = order().collect();
    assert_eq!(all.len(), Kind::COUNT);
    assert_eq!(all.iter().collect::<BTreeSet<_>>().len(), Kind::COUNT);
    // Each near miss follows what it is a near miss of.
    assert_eq!(all[1], Kind::GoesOn(Cause::BallOut));
}

#[test]
fn the_first_session_begins_with_what_every_match_has() {
    let mut learner = Learner::default();
    assert!(learner.is_empty());
    let sitting = sits(&mut learner, 15, 0, |_| RIGHT);
    let kinds: Vec<Kind> = sitting.scenes.iter().map(|s| s.0).collect();
    assert_eq!(kinds[..2], [BALL_OUT, Kind::GoesOn(Cause::BallOut)]);
    // Not everything at once, and a third at least is nothing to whistle at.
    let met: BTreeSet<&Kind> = kinds.iter().collect();
    assert!((4..=8).contains(&met.len()), "{met:?}");
    let goes_on = kinds
        .iter()
        .filter(|k| matches!(k, Kind::GoesOn(_)))
        .count();
    assert!(goes_on * 3 >= kinds.len(), "{kinds:?}");
    // Nothing twice running.
    assert!(kinds.windows(2).all(|pair| pair[0] != pair[1]));
    assert_eq!((sitting.right(), sitting.to_try()), (15, vec![]));
    assert_eq!((sitting.median(), learner.median()), (Some(600), Some(600)));
}

#[test]
fn what_went_wrong_comes_again_soon_and_what_went_well_waits() {
    let mut learner = Learner::default();
    let sitting = sits(&mut learner, 12, 0, |kind| {
        if kind == BALL_OUT {
            WRONG
        } else {
            RIGHT
        }
    });
    let times = sitting
        .scenes
        .iter()
        .filter(|(kind, _)| *kind == BALL_OUT)
        .count();
    assert!(times >= 3, "{times}");
    assert_eq!(sitting.to_try(), [BALL_OUT]);
    let due = |kind| learner.kinds().find(|(k, _)| *k == kind).unwrap().1.due();
    assert!(due(BALL_OUT) < DAY);
    assert!(due(Kind::GoesOn(Cause::BallOut)) > DAY);
    // The next day it comes first.
    assert_eq!(learner.next(&Sitting::default(), DAY, 0).kind, BALL_OUT);
}

#[test]
fn it_gets_harder_as_it_goes_well_and_easier_when_not() {
    let mut learner = Learner::default();
    let level = |learner: &Learner| learner.kinds().next().unwrap().1.level();
    let mut take = |marked: &Marked, day: i64| {
        learner.took(BALL_OUT, marked, day * DAY);
        level(&learner)
    };
    let days = [
        (RIGHT, Level::Clear),
        (RIGHT, Level::Close),
        (RIGHT, Level::Close),
        (RIGHT, Level::Tight),
        (RIGHT, Level::Tight),
        (WRONG, Level::Close),
        (WRONG, Level::Clear),
        (WRONG, Level::Clear),
    ];
    for (day, (marked, wanted)) in (0..).zip(days) {
        assert_eq!(take(&marked, day), wanted, "day {day}");
    }
}

#[test]
fn intervals_grow_from_day_to_week() {
    let mut learner = Learner::default();
    let (mut now, mut before) = (0, 0);
    for _ in 0..5 {
        learner.took(BALL_OUT, &RIGHT, now);
        let wait = learner.kinds().next().unwrap().1.due() - now;
        assert!(wait > before);
        (now, before) = (now + wait, wait);
    }
    assert!(before > 30 * DAY);
}

#[test]
fn late_is_right_and_comes_sooner() {
    let waits = [Timing::InTime, Timing::Late].map(|timing| {
        let mut learner = Learner::default();
        learner.took(BALL_OUT, &Marked { timing, ..RIGHT }, 0);
        let (_, known) = learner.kinds().next().unwrap();
        assert_eq!((known.shown, known.right), (1, 1));
        known.due()
    });
    assert!(waits[1] < waits[0]);
}

#[test]
fn it_comes_back_as_it_was_kept() {
    let mut learner = Learner::default();
    sits(&mut learner, 30, 5 * DAY, |kind| {
        if kind.code().len() % 2 == 0 {
            WRONG
        } else {
            RIGHT
        }
    });
    let text = learner.write();
    assert!(text.len() < 4_000, "{}", text.len());
    assert_eq!(Learner::read(&text), Some(learner.clone()));
    // Nothing in it says who it is of.
    assert!(!text.contains("name"));
    // One bad value does not hide the others; another version is not read.
    let odd = text
        .replacen("\"level\":", "\"level\":7,\"x\":", 1)
        .replacen("ends_ball_out", "ends_nothing", 1);
    let kept = Learner::read(&odd).unwrap();
    assert!(kept.kinds().count() >= learner.kinds().count() - 2 && kept.kinds().count() > 0);
    assert_eq!(
        Learner::read(&text.replacen("\"learner\":1", "\"learner\":2", 1)),
        None
    );
    assert_eq!(Learner::read("{}"), None);
    assert_eq!(Learner::read(&" ".repeat(70_000)), None);
}

#[test]
fn two_phones_are_laid_together() {
    let (mut here, mut there) = (Learner::default(), Learner::default());
    here.took(BALL_OUT, &RIGHT, 0);
    for day in 0..3 {
        there.took(BALL_OUT, &WRONG, day * DAY);
    }
    there.took(Kind::DoubleFault, &RIGHT, 0);
    here.merge(there.clone());
    let shown: Vec<u32> = here.kinds().map(|(_, k)| k.shown).collect();
    assert_eq!(shown, [3, 1]);
    let before = here.clone();
    here.merge(there);
    assert_eq!(here, before);
}

proptest! {
    /// Whatever is answered and whenever, there is something to show, and what is kept can be read again.
    #[test]
    fn there_is_always_something_next(answers in proptest::collection::vec((0u8..6, 0i64..40), 0..200)) {
        let mut learner = Learner::default();
        let mut sitting = Sitting::default();
        let mut now = 0;
        for (turn, (answer, days)) in (0u64..).zip(answers) {
            now += days * DAY / 10;
            let task = learner.next(&sitting, now, turn);
            let timing = [Timing::InTime, Timing::Late, Timing::RightlyNone, Timing::Early, Timing::Missed, Timing::Needless][usize::from(answer)];
            let marked = Marked { timing, side: answer != 1, nature: true, reaction: (answer < 2).then_some(0.4) };
            learner.took(task.kind, &marked, now);
            sitting.scenes.push((task.kind, marked));
        }
        prop_assert_eq!(Learner::read(&learner.write()), Some(learner));
    }

    #[test]
    fn a_changed_text_breaks_nothing(at in 0.0f64..1.0, byte in any::<u8>()) {
        let mut learner = Learner::default();
        sits(&mut learner, 12, 0, |_| RIGHT);
        let mut bytes = learner.write().into_bytes();
        let place = ((bytes.len() - 1) as f64 * at) as usize;
        bytes[place] = byte;
        if let Some(read) = Learner::read(&String::from_utf8_lossy(&bytes)) {
            prop_assert!(read.kinds().count() <= Kind::COUNT);
        }
    }
}

#[test]
fn a_session_waits_half_an_hour_for_whoever_reads_in_its_middle() {
    let left = 1_764_000_000_000;
    for (away, waits) in [
        (0, true),
        (1_800_000, true),
        (1_800_001, false),
        (DAY, false),
    ] {
        assert_eq!(goes_on(left, left + away), waits, "{away}");
    }
    // A clock that was set back begins anew.
    assert!(!goes_on(left, left - 1));
}
