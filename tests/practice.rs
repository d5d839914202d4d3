//! Practice matches: what is told is what is true, the record says that it is practice, and no table counts it.

use std::sync::Arc;

use app::practice::{Found, LastFound, Practice, Told};
use game::{notices, Kind, Notice, Outcome, Timeline};
use record::Log;
use reports::compare::{compare, What, Which};
use reports::list::Line;
use reports::{Sheet, WallClock};

fn some() -> Vec<Practice> {
    (0..12)
        .map(|seed| Practice::from_seed(seed * 1_000).expect("a match"))
        .collect()
}

/// What a learner enters who does everything as it is told.
fn kept(practice: &Practice, steps: usize) -> Timeline {
    let mut timeline = Timeline::of(practice.opening.clone());
    let push = |timeline: &mut Timeline, kind: Kind| {
        let n = timeline.next_number();
        let outcome = timeline.push(game::Entry::new(n, kind)).clone();
        assert_eq!(outcome, Outcome::Accepted);
        n
    };
    for told in &practice.steps[..steps] {
        match told.clone() {
            Told::Rally {
                won_by, cause, by, ..
            } => {
                let rally = Kind::Rally {
                    won_by,
                    cause: None,
                    by: None,
                };
                let entry = push(&mut timeline, rally);
                push(
                    &mut timeline,
                    Kind::Explain {
                        entry,
                        cause,
                        by,
                        seen_by: None,
                    },
                );
            }
            Told::TimeOut { team } => {
                push(&mut timeline, Kind::TimeOut { team });
            }
            Told::Substitution { team, changes } => {
                push(
                    &mut timeline,
                    Kind::Substitution {
                        team,
                        changes,
                        reason: None,
                    },
                );
            }
        }
    }
    timeline
}

#[test]
fn whoever_enters_what_is_told_has_what_happened() {
    for practice in some() {
        for steps in [0, 1, practice.steps.len() / 2, practice.steps.len()] {
            let found = compare(&practice.truth(steps), &kept(&practice, steps));
            let within: Vec<_> = found.within().collect();
            assert_eq!(within.len(), 0, "{steps}: {within:?}");
        }
        let whole = kept(&practice, practice.steps.len());
        assert_eq!(whole.state().sets().count(), 1);
    }
}

#[test]
fn a_point_for_the_wrong_team_is_the_first_thing_that_differs() {
    let practice = &some()[0];
    let at = practice
        .steps
        .iter()
        .position(|told| matches!(told, Told::Rally { .. }));
    let mut wrong = practice.clone();
    if let Told::Rally { won_by, .. } = &mut wrong.steps[at.expect("a rally")] {
        *won_by = won_by.other();
    }
    let found = compare(&practice.truth(10), &kept(&wrong, 10));
    assert_eq!(found.parting().and_then(|parting| parting.rally), Some(1));
}

/// Whoever looks at the end finds the rally that was given away, and not that the truth had no rallies.
#[test]
fn a_set_that_is_over_is_compared_with_all_that_happened() {
    let practice = &some()[0];
    let all = practice.steps.len();
    let is_rally = |told: &Told| matches!(told, Told::Rally { .. });
    let mut wrong = practice.clone();
    let fifth = wrong.steps.iter_mut().filter(|told| is_rally(told)).nth(4);
    if let Some(Told::Rally { won_by, .. }) = fifth {
        *won_by = won_by.other();
    }
    let found = practice.compared(all, &kept(&wrong, all));
    let first = found.within().next().expect("something differs");
    assert_eq!(first.rally, Some(5), "{first:?}");
    assert!(matches!(first.what, What::Point { .. }), "{first:?}");
    // Nothing was entered at all.
    let found = practice.compared(all, &kept(practice, 0));
    let first = found.within().next().expect("all of it is missing");
    let rallies = practice.steps.iter().filter(|told| is_rally(told)).count();
    let wanted = What::Stops {
        which: Which::Second,
        more: rallies,
    };
    assert_eq!(first.what, wanted);
    // All was entered.
    assert_eq!(
        practice
            .compared(all, &kept(practice, all))
            .within()
            .count(),
        0
    );
}

#[test]
fn its_record_says_that_it_is_practice_and_no_table_counts_it() {
    let practice = &some()[0];
    let log = Log {
        id: "p".into(),
        entries: practice.opening.clone(),
    };
    let packed = record::pack(&log).expect("it packs");
    assert_eq!(record::unpack(&packed).expect("it unpacks"), log);
    let reading = record::read(&record::write(&log));
    let timeline = Timeline::of(reading.log.entries.clone());
    assert!(timeline
        .state()
        .heading()
        .is_some_and(|heading| heading.practice));
    let line = Line::of_record(&reading, &timeline);
    assert!(line.result("p".into()).is_none());
    assert!(text::desk::teams_of(&line).starts_with("Practice: "));
    // On paper it says so as well.
    let sheet = Sheet::of(&timeline);
    for paper in [
        render::document(&sheet, WallClock(0)),
        render::sheet_text(&sheet, WallClock(0)),
    ] {
        assert!(paper.contains("nobody played this match"));
    }
    // The same match played in earnest counts.
    let mut entries = practice.opening.clone();
    if let Kind::Match(heading) = &mut entries[0].kind {
        heading.practice = false;
    }
    let earnest = record::read(&record::write(&Log {
        id: "e".into(),
        entries,
    }));
    let timeline = Timeline::of(earnest.log.entries.clone());
    assert!(Line::of_record(&earnest, &timeline)
        .result("e".into())
        .is_some());
}

/// Whoever has never refereed keeps the score, and is asked nothing that no sentence has told of.
#[test]
fn the_court_of_a_practice_match_asks_nothing() {
    for practice in some() {
        let changed = |entry: &game::Entry| matches!(entry.kind, Kind::Substitution { .. });
        assert!(!practice.opening.iter().any(changed));
        let whole = kept(&practice, practice.steps.len());
        let mut timeline = Timeline::of(practice.opening.clone());
        for entry in &whole.entries()[practice.opening.len()..] {
            let asks: Vec<Notice> = notices(timeline.state())
                .into_iter()
                .filter(|notice| {
                    matches!(
                        notice,
                        Notice::GameCaptain { .. }
                            | Notice::Question { .. }
                            | Notice::MustSubstitute { .. }
                            | Notice::LiberoMustLeave { .. }
                    )
                })
                .collect();
            assert_eq!(asks, []);
            timeline.push(entry.clone());
        }
    }
}

#[test]
fn a_seed_gives_the_same_match_everywhere() {
    assert_eq!(Practice::from_seed(7), Practice::from_seed(7));
    for practice in some() {
        let rallies = practice
            .steps
            .iter()
            .filter(|told| matches!(told, Told::Rally { .. }))
            .count();
        assert!((30..120).contains(&rallies), "{rallies}");
        for told in &practice.steps {
            let state = practice.truth(0);
            assert!(!text::learn::practice_told(told, state.state()).is_empty());
        }
    }
}

#[test]
fn an_id_leads_back_to_what_was_told_or_says_that_the_program_has_changed() {
    for seed in [0, 7_000] {
        let practice = Practice::from_seed(seed).expect("a match");
        let id = practice.id(seed, "0f8fad5b-d9cb");
        assert_eq!(Practice::of_id(&id), Found::Practice(Arc::new(practice)));
        // What another version told from this seed had another code, and before there was one none at all.
        let part = id.split('-').nth(2).expect("a code");
        let other = id.replace(part, "0000000000000000");
        for id in [other, format!("practice-{seed}-0f8fad5b-d9cb")] {
            assert_eq!(Practice::of_id(&id), Found::OtherVersion, "{id}");
        }
    }
    for id in ["0f8fad5b-d9cb", "practice-", "practice-x-1"] {
        assert_eq!(Practice::of_id(id), Found::Foreign, "{id}");
    }
}

#[test]
fn the_match_that_was_looked_for_last_is_not_played_again() {
    let id = |seed| Practice::from_seed(seed).expect("a match").id(seed, "a");
    let found = |last: &mut LastFound, id: &str| match last.of_id(id) {
        Found::Practice(practice) => practice,
        other => panic!("{other:?}"),
    };
    let mut last = LastFound::default();
    let first = found(&mut last, &id(0));
    assert!(Arc::ptr_eq(&first, &found(&mut last, &id(0))));
    let other = found(&mut last, &id(7_000));
    assert_ne!(first, other);
    assert_eq!(first, found(&mut last, &id(0)));
    assert_eq!(last.of_id("practice-x-1"), Found::Foreign);
}
