//! The logbook: matches by role, goals, what to try next, its file and its table.

use app::played::Played;
use game::{simulate, Entry, Kind, Timeline};
use proptest::prelude::*;
use record::{Day, Goal, GoalKind, Logbook, LogbookReading, Officiated, MAX_LOGGED};
use rules::{Duty, Preset};

fn day(text: &str) -> Day {
    Day::read(text).expect("a day")
}

fn one(id: &str, on: &str, duty: Duty) -> Officiated {
    Officiated {
        id: id.to_owned(),
        day: day(on),
        duty,
        level: String::new(),
        teams: String::new(),
        minutes: None,
        talk: String::new(),
        next: String::new(),
    }
}

fn matches(duty: Option<Duty>, count: u16) -> Goal {
    Goal {
        kind: GoalKind::Matches { duty, count },
        since: None,
        until: None,
        from: String::new(),
    }
}

fn read(text: &str) -> (Logbook, usize) {
    match Logbook::read(text) {
        LogbookReading::Logbook(logbook, left_out) => (logbook, left_out),
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_day_is_a_day_of_the_calendar() {
    for good in ["2026-11-29", "2024-02-29", "2000-02-29", " 2026-01-31 "] {
        assert!(Day::read(good).is_some(), "{good}");
    }
    for bad in [
        "2026-02-29",
        "1900-02-29",
        "2026-13-01",
        "2026-00-10",
        "2026-04-31",
        "26-04-30",
        "2026-4-3",
        "2026-04-30-1",
        "",
        "+026-04-30",
        "0000-01-01",
    ] {
        assert!(Day::read(bad).is_none(), "{bad}");
    }
}

/// A thumb that comes down twice on *add a match*: one stands there, and it counts once.
#[test]
fn a_slip_leaves_no_second_match() {
    let mut logbook = Logbook::default();
    let today = |id: &str| one(id, "2026-11-28", Duty::FirstReferee);
    assert_eq!(logbook.begin(today("a")).as_deref(), Some("a"));
    assert_eq!(logbook.begin(today("b")).as_deref(), Some("a"));
    assert_eq!(logbook.matches().len(), 1);
    // Another day is another match, and so is one into which something was written.
    let yesterday = one("c", "2026-11-27", Duty::FirstReferee);
    assert_eq!(logbook.begin(yesterday).as_deref(), Some("c"));
    let mut mine = logbook.of_id("a").expect("it is there").clone();
    assert!(logbook.change(&mut mine, |one| one.duty = Duty::Scorer));
    assert_eq!(logbook.begin(today("d")).as_deref(), Some("d"));
    assert_eq!(logbook.matches().len(), 3);
    // Where it is full nothing begins, but what was begun is found.
    for n in 0..MAX_LOGGED - 3 {
        assert!(logbook.put(one(&format!("n{n}"), "2026-11-01", Duty::Scorer)));
    }
    let next = one("e", "2026-11-29", Duty::FirstReferee);
    assert_eq!(logbook.begin(next), None);
    assert_eq!(logbook.begin(today("f")).as_deref(), Some("d"));
}

#[test]
fn the_latest_match_stands_first_and_is_written_once() {
    let mut logbook = Logbook::default();
    for (id, on) in [
        ("a", "2026-11-01"),
        ("c", "2026-11-15"),
        ("b", "2026-11-08"),
        ("d", "2026-11-15"),
    ] {
        assert!(logbook.put(one(id, on, Duty::Scorer)));
    }
    let ids =
        |logbook: &Logbook| -> String { logbook.matches().iter().map(|m| m.id.as_str()).collect() };
    assert_eq!(ids(&logbook), "dcba");
    assert!(logbook.put(one("a", "2026-11-22", Duty::FirstReferee)));
    assert_eq!(ids(&logbook), "adcb");
    assert_eq!(
        logbook.by_duty(),
        [(Duty::FirstReferee, 1), (Duty::Scorer, 3)]
    );
    logbook.remove("d");
    assert_eq!(ids(&logbook), "acb");
}

#[test]
fn goals_count_the_matches_of_their_role_and_time() {
    let mut logbook = Logbook::default();
    for (id, on, duty) in [
        ("a", "2026-09-01", Duty::Scorer),
        ("b", "2026-10-01", Duty::Scorer),
        ("c", "2026-10-02", Duty::FirstReferee),
        ("d", "2027-01-09", Duty::Scorer),
    ] {
        logbook.put(one(id, on, duty));
    }
    let done = |goal: &Goal| logbook.progress(goal).done;
    assert_eq!(done(&matches(Some(Duty::Scorer), 5)), 3);
    assert_eq!(done(&matches(None, 5)), 4);
    let season = Goal {
        since: Some(day("2026-10-01")),
        until: Some(day("2026-12-31")),
        ..matches(Some(Duty::Scorer), 2)
    };
    assert_eq!(done(&season), 1);
    // More than wanted is not shown as more.
    assert!(logbook.progress(&matches(None, 2)).is_reached());
    assert_eq!(done(&matches(None, 2)), 2);
}

#[test]
fn a_task_is_ticked_off_and_a_goal_is_set_once() {
    let mut logbook = Logbook::default();
    let task = Goal {
        kind: GoalKind::Task {
            words: "A test of signals".into(),
            done: None,
        },
        ..matches(None, 1)
    };
    assert!(logbook.set_goal(task.clone()));
    assert!(!logbook.set_goal(task.clone()));
    assert!(!logbook.set_goal(matches(None, 0)));
    logbook.tick(0, Some(day("2026-11-29")));
    assert!(logbook.progress(&logbook.goals()[0].clone()).is_reached());
    // Ticked off it is still the same goal.
    assert!(!logbook.set_goal(task));
    logbook.tick(0, None);
    assert!(!logbook.progress(&logbook.goals()[0].clone()).is_reached());
}

#[test]
fn what_to_try_comes_from_the_last_talk() {
    let mut logbook = Logbook::default();
    assert!(logbook.to_try().is_none());
    logbook.put(Officiated {
        next: "Look at the line judge first".into(),
        ..one("a", "2026-11-01", Duty::Scorer)
    });
    // A match that nobody has talked about yet changes nothing.
    logbook.put(one("b", "2026-11-08", Duty::Scorer));
    assert_eq!(logbook.to_try().map(|one| one.id.as_str()), Some("a"));
    logbook.put(Officiated {
        talk: "All well".into(),
        ..one("c", "2026-11-15", Duty::Scorer)
    });
    assert!(logbook.to_try().is_none());
}

/// The file that FORMAT.md shows, and the goals that an association hands over.
#[test]
fn a_file_of_goals_comes_beside_what_is_here() {
    let mut logbook = Logbook::default();
    logbook.put(one("a", "2026-11-01", Duty::Scorer));
    logbook.set_goal(matches(Some(Duty::Scorer), 3));
    let (goals, left_out) = read(
        r#"{"log":"volleyball-logbook","version":1,"goals":[
        {"what":"matches","role":"scorer","count":3,"from":"School league"},
        {"what":"matches","role":"umpire","count":3},
        {"what":"matches","role":"scorer","count":3},
        {"what":"task","words":"A test of signals","until":"2027-06-30","from":"School league"},
        {"what":"task","words":" "},{"what":"medal","count":1},7]}"#,
    );
    assert_eq!((goals.goals().len(), left_out), (3, 4));
    assert_eq!(logbook.merge(goals.clone()), (0, 2));
    assert_eq!(logbook.goals().len(), 3);
    assert_eq!(logbook.merge(goals), (0, 0));
    assert_eq!(logbook.matches().len(), 1);
}

#[test]
fn what_is_here_stays_and_what_is_new_comes_in() {
    let mut here = Logbook::default();
    here.put(Officiated {
        talk: "mine".into(),
        ..one("a", "2026-11-01", Duty::Scorer)
    });
    let mut there = Logbook::default();
    for id in ["a", "b", "c"] {
        there.put(one(id, "2026-11-01", Duty::LineJudge));
    }
    assert_eq!(here.merge(there.clone()), (2, 0));
    assert_eq!(here.of_id("a").map(|one| one.talk.as_str()), Some("mine"));
    assert_eq!(here.matches().len(), 3);
}

#[test]
fn newer_foreign_and_broken_files_are_told_apart() {
    let good = Logbook::default().write();
    assert_eq!(read(&good), (Logbook::default(), 0));
    assert_eq!(
        Logbook::read(&good.replace(":1", ":2")),
        LogbookReading::Newer
    );
    for foreign in [
        "",
        "no",
        "[]",
        "{\"log\":\"volleyball-match\",\"version\":1}",
        &good[..good.len() / 2],
    ] {
        assert_eq!(Logbook::read(foreign), LogbookReading::Foreign, "{foreign}");
    }
}

#[test]
fn a_full_logbook_takes_no_more_and_loses_nothing() {
    let mut logbook = Logbook::default();
    for i in 0..MAX_LOGGED {
        assert!(logbook.put(one(&i.to_string(), "2026-11-01", Duty::Scorer)));
    }
    assert!(!logbook.put(one("more", "2026-11-02", Duty::Scorer)));
    // What is there can still be mended.
    assert!(logbook.put(Officiated {
        minutes: Some(50),
        ..one("7", "2026-11-01", Duty::Scorer)
    }));
    assert_eq!(logbook.matches().len(), MAX_LOGGED);
    assert_eq!(read(&logbook.write()), (logbook, 0));
}

#[test]
fn the_table_has_a_line_a_match_and_no_formula() {
    let mut logbook = Logbook::default();
    logbook.put(Officiated {
        teams: "=Otters, \"Herons\"".into(),
        level: "U14".into(),
        minutes: Some(62),
        talk: "late\nwhistle".into(),
        ..one("a", "2026-11-01", Duty::FirstReferee)
    });
    let table = render::logbook_csv(&logbook);
    assert_eq!(
        table,
        "\u{feff}date,role,level,teams,minutes,talk,next\r\n\
         2026-11-01,first_referee,\"U14\",\"'=Otters, \"\"Herons\"\"\",62,\"late\nwhistle\",\"\"\r\n"
    );
}

fn any_match() -> impl Strategy<Value = Officiated> {
    let text = "\\PC{0,90}";
    let words = (text, text, "(\\PC|\n){0,520}", text);
    (
        0u32..50,
        1u16..29,
        0..Duty::ALL.len(),
        proptest::option::of(0u16..400),
        words,
    )
        .prop_map(
            |(id, on, duty, minutes, (level, teams, talk, next))| Officiated {
                id: format!("m{id}"),
                day: day(&format!("2026-02-{on:02}")),
                duty: Duty::ALL[duty],
                level,
                teams,
                minutes,
                talk,
                next,
            },
        )
}

fn any_goal() -> impl Strategy<Value = Goal> {
    let kind = prop_oneof![
        (proptest::option::of(0..Duty::ALL.len()), 0u16..20).prop_map(|(duty, count)| {
            GoalKind::Matches {
                duty: duty.map(|duty| Duty::ALL[duty]),
                count,
            }
        }),
        ("\\PC{0,90}", any::<bool>()).prop_map(|(words, done)| GoalKind::Task {
            words,
            done: done.then(|| day("2026-11-29")),
        }),
    ];
    (kind, any::<bool>(), any::<bool>(), "\\PC{0,90}").prop_map(|(kind, since, until, from)| Goal {
        kind,
        since: since.then(|| day("2026-02-10")),
        until: until.then(|| day("2026-02-20")),
        from,
    })
}

fn any_logbook() -> impl Strategy<Value = Logbook> {
    let matches = proptest::collection::vec(any_match(), 0..20);
    let goals = proptest::collection::vec(any_goal(), 0..10);
    (matches, goals).prop_map(|(matches, goals)| {
        let mut logbook = Logbook::default();
        matches.into_iter().for_each(|one| {
            logbook.put(one);
        });
        goals.into_iter().for_each(|goal| {
            logbook.set_goal(goal);
        });
        logbook
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_logbook_comes_back_from_its_file(logbook in any_logbook()) {
        prop_assert_eq!(read(&logbook.write()), (logbook, 0));
    }

    /// Whichever comes first, nothing of either is lost, and a second time changes nothing.
    #[test]
    fn merging_loses_nothing(one in any_logbook(), other in any_logbook()) {
        let mut both = one.clone();
        both.merge(other.clone());
        for logged in one.matches().iter().chain(other.matches()) {
            prop_assert!(both.of_id(&logged.id).is_some());
        }
        for logged in one.matches() {
            prop_assert_eq!(both.of_id(&logged.id), Some(logged));
        }
        for days in both.matches().windows(2) {
            prop_assert!(days[0].day >= days[1].day);
        }
        let again = both.clone();
        prop_assert_eq!(both.merge(other), (0, 0));
        prop_assert_eq!(both, again);
    }

    /// One match more never takes a goal away.
    #[test]
    fn a_goal_only_comes_nearer(logbook in any_logbook(), more in any_match(), goal in any_goal()) {
        let before = logbook.progress(&goal);
        let mut longer = logbook.clone();
        if logbook.of_id(&more.id).is_none() {
            longer.put(more);
        }
        let after = longer.progress(&goal);
        prop_assert!(before.done <= after.done && after.done <= after.of && after.of == before.of);
    }
}

#[test]
fn a_record_says_when_it_was_played_and_how_long_it_took() {
    let mut entries = simulate(Preset::SchoolJunior, 3);
    let begins = |e: &Entry| matches!(e.kind, Kind::BeginSet);
    let rally = |e: &Entry| matches!(e.kind, Kind::Rally { .. });
    let began = entries.iter().find(|e| begins(e)).and_then(|e| e.at);
    let ended = entries.iter().rev().find(|e| rally(e)).and_then(|e| e.at);
    let (began, ended) = (began.expect("a time"), ended.expect("a time"));
    let minutes = u16::try_from((ended - began + 30_000) / 60_000).expect("a match");
    assert!((20..=150).contains(&minutes), "{minutes}");
    let played = Played {
        at: Some(began),
        minutes: Some(minutes),
    };
    assert_eq!(Played::of(&Timeline::of(entries.clone())), played);
    // A word written on the sheet two days later changes neither.
    let later = Entry {
        at: Some(ended + 2 * 86_400_000),
        ..entries.last().expect("entries").clone()
    };
    let n = u32::try_from(entries.len()).expect("few") + 1;
    entries.push(Entry {
        n,
        kind: Kind::Remark {
            text: "the net was torn".into(),
            team: None,
        },
        ..later
    });
    assert_eq!(Played::of(&Timeline::of(entries.clone())), played);
    // Without times nothing is known.
    entries.iter_mut().for_each(|entry| entry.at = None);
    assert_eq!(Played::of(&Timeline::of(entries)), Played::default());
}

/// Two pages of one browser have the same match open, each with what it read when it was opened.
#[test]
fn two_pages_change_one_match_and_neither_undoes_the_other() {
    let mut logbook = Logbook::default();
    let first = one("m1", "2026-11-29", Duty::FirstReferee);
    assert!(logbook.put(first.clone()));
    let (mut here, mut there) = (first.clone(), first);
    assert!(logbook.change(&mut here, |one| one.talk = "Late twice.".into()));
    assert!(logbook.change(&mut there, |one| one.duty = Duty::Scorer));
    assert!(logbook.change(&mut here, |one| one.minutes = Some(62)));
    let kept = logbook.of_id("m1").expect("it is there");
    assert_eq!(kept, &here);
    assert_eq!(
        (kept.talk.as_str(), kept.duty, kept.minutes),
        ("Late twice.", Duty::Scorer, Some(62))
    );
    // What one page has deleted comes back with what is typed in the other.
    logbook.remove("m1");
    assert!(logbook.change(&mut there, |one| one.next = "Look first".into()));
    let kept = logbook.of_id("m1").expect("it is there");
    assert_eq!(
        (kept.duty, kept.next.as_str()),
        (Duty::Scorer, "Look first")
    );
}
