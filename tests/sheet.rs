//! The sheet of matches: what stands in which box.

mod support;

use game::entry::{Change, LateFault, Timer, TimerAction};
use game::entry::{Fault, Forced, Found, Since};
use game::{Entry, Kind, Level, Timed, Timeline, Who};
use record::{Log, Reading};
use reports::{Remark, Round, Sheet, WallClock};
use rules::{Score, Shirt, Team};
use support::{line_up, numbered, played, run};

fn totals(rounds: &[Round]) -> Vec<u16> {
    rounds.iter().map(|r| r.total).collect()
}

/// Score-sheet practice as taught to scorers: a team that loses the service writes its own total.
#[test]
fn a_total_is_written_when_the_service_is_lost() {
    let sheet = Sheet::of(&played(run("AABBA")));
    let set = &sheet.sets[0];
    assert_eq!(totals(&set.rounds.a), [2]);
    assert_eq!(set.rounds.a[0].server, Some(Shirt(1)));
    assert_eq!(totals(&set.rounds.b), [2]);
    assert_eq!(
        set.rounds.b[0].server,
        Some(Shirt(2)),
        "B rotated before its first service"
    );
    assert_eq!(set.score, Score { a: 3, b: 2 });
}

/// A set won on the opponent's service gives the winner one more number, without a server.
#[test]
fn a_set_won_on_the_other_service_ends_with_a_bare_total() {
    let sheet = Sheet::of(&played(run(&format!("{}BA", "A".repeat(24)))));
    let set = &sheet.sets[0];
    assert_eq!(totals(&set.rounds.a), [24, 25]);
    assert_eq!(set.rounds.a[1].server, None);
    assert_eq!(totals(&set.rounds.b), [1]);
    assert_eq!(set.won.map(|w| w.0), Some(Team::A));
}

#[test]
fn a_set_won_on_the_own_service_ends_with_the_server_s_total() {
    let sheet = Sheet::of(&played(run(&"A".repeat(25))));
    assert_eq!(
        sheet.sets[0].rounds.a,
        [Round {
            server: Some(Shirt(1)),
            total: 25
        }]
    );
    assert_eq!(totals(&sheet.sets[0].rounds.b), Vec::<u16>::new());
}

/// A penalty for the serving team: its total is written, the point is marked (rules 21.3.1, 6.1.3).
#[test]
fn a_penalty_ends_the_turn_and_is_marked() {
    let mut more = run("AAA");
    more.push(Kind::Misconduct {
        team: Team::A,
        who: Who::Staff("coach".into()),
        sanction: Level::Penalty,
    });
    let sheet = Sheet::of(&played(more));
    let set = &sheet.sets[0];
    assert_eq!(totals(&set.rounds.a), [3]);
    let last = set.running.last().expect("four points");
    assert_eq!((last.team, last.total), (Team::B, Some(1)));
    assert_eq!(last.given_for, game::PointFor::Penalty);
    assert_eq!(sheet.sanctions[0].score, Score { a: 3, b: 0 });
}

#[test]
fn substitutions_and_time_outs_stand_with_their_score() {
    let mut more = run("AB");
    more.push(Kind::Substitution {
        team: Team::B,
        changes: vec![Change {
            out: Shirt(4),
            into: Shirt(9),
        }],
        reason: None,
    });
    more.push(Kind::TimeOut { team: Team::A });
    let sheet = Sheet::of(&played(more));
    let set = &sheet.sets[0];
    assert_eq!(set.substitutions[0].score, Score { a: 1, b: 1 });
    assert!(!set.substitutions[0].exceptional);
    assert_eq!(set.time_outs[0].team, Team::A);
    assert_eq!(sheet.result.substitutions.b, 1);
    assert_eq!(sheet.result.time_outs.a, 1);
}

/// 15.7: of a request that replaces an injured player and another one, only the change that no regular one could
/// make is exceptional.
#[test]
fn an_exceptional_substitution_makes_no_other_one_so() {
    let substitution = |changes: &[(u16, u16)], reason| Kind::Substitution {
        team: Team::A,
        changes: changes
            .iter()
            .map(|&(out, into)| Change {
                out: Shirt(out),
                into: Shirt(into),
            })
            .collect(),
        reason,
    };
    let mut more = vec![substitution(&[(4, 8)], None)];
    more.extend(run("A"));
    more.push(substitution(&[(8, 4)], None));
    more.extend(run("A"));
    more.push(substitution(&[(4, 9), (5, 10)], Some(Forced::Injury)));
    let timeline = played(more);
    let sheet = Sheet::of(&timeline);
    let made = sheet.sets[0].substitutions.iter();
    let made: Vec<(u16, bool)> = made.map(|s| (s.change.into.0, s.exceptional)).collect();
    assert_eq!(made, [(8, false), (4, false), (9, true), (10, false)]);
    let Remark::Forced {
        changes,
        exceptional,
        ..
    } = &sheet.remarks[0].remark
    else {
        panic!("{:?}", sheet.remarks);
    };
    assert_eq!((changes.len(), *exceptional), (1, true));
}

/// Who spoke while the captain, number 1, was off stands in the set (5.1.2), on paper and in text, and the
/// fold prints who speaks now.
#[test]
fn game_captains_stand_with_their_score() {
    let mut more = run("AB");
    more.push(Kind::Substitution {
        team: Team::B,
        changes: vec![Change {
            out: Shirt(1),
            into: Shirt(9),
        }],
        reason: None,
    });
    let number = Shirt(4);
    more.push(Kind::GameCaptain {
        team: Team::B,
        number,
    });
    let timeline = played(more);
    let sheet = Sheet::of(&timeline);
    let named = sheet.sets[0].game_captains[0];
    assert_eq!((named.team, named.number), (Team::B, number));
    assert_eq!(named.score, Score { a: 1, b: 1 });
    let text = render::sheet_text(&sheet, WallClock(0));
    assert!(text.contains("game captain 4 from 1:1"), "{text}");
    let page = render::document(&sheet, WallClock(0));
    assert!(page.contains("Game captain") && page.contains("4 from 1:1"));
    let reading = Reading {
        log: Log {
            id: "captains".into(),
            entries: timeline.entries().to_vec(),
        },
        ..Reading::default()
    };
    let printed = render::fold(&reading);
    assert_eq!(
        printed["game_captain"],
        serde_json::json!({ "A": 1, "B": 4 })
    );
    assert_eq!(printed["protests"], serde_json::json!([]));
}

/// Points cancelled for a wrong server (rule 7.7.2) stay visible, and a remark says what happened.
#[test]
fn cancelled_points_stay_visible() {
    let mut more = run("AAAA");
    more.push(Kind::LateFault(LateFault {
        team: Team::A,
        fault: Fault::Rotation,
        since: Some(Since {
            score: Score { a: 2, b: 0 },
            set: None,
        }),
        during: Found::Rally,
        positions: None,
    }));
    let sheet = Sheet::of(&played(more));
    let set = &sheet.sets[0];
    assert_eq!(set.score, Score { a: 2, b: 1 });
    assert_eq!(
        set.running
            .iter()
            .filter(|p| p.cancelled_by == Some(12))
            .count(),
        2
    );
    assert_eq!(set.running.last().and_then(|p| p.total), Some(1));
    assert!(
        remark(&sheet).contains("A 4:0 B corrected to A 2:1 B"),
        "{:?}",
        sheet.remarks
    );
}

#[test]
fn minutes_run_from_the_first_service_to_the_last_point() {
    let mut entries = numbered(support::opening(rules::Preset::International.rules()));
    let start = 1_800_000_000_000;
    for (i, entry) in entries.iter_mut().enumerate() {
        entry.at = Some(start + 1000 * i as i64);
    }
    let began = entries.last().and_then(|e| e.at).expect("begin_set");
    for i in 0..25u32 {
        let n = entries.len() as u32 + 1;
        let kind = Kind::Rally {
            won_by: Team::A,
            cause: None,
            by: None,
        };
        let at = Some(began + 60_000 * i64::from(i + 1));
        entries.push(Entry {
            at,
            ..Entry::new(n, kind)
        });
    }
    let sheet = Sheet::of(&Timeline::of(entries));
    assert_eq!(sheet.sets[0].minutes(), Some(25));
    assert_eq!(sheet.result.minutes, Some(25));
}

#[test]
fn a_slip_taken_back_at_once_is_no_remark_but_a_later_one_is() {
    let slip = [
        run("AB"),
        vec![Kind::Strike {
            entry: 9,
            why: None,
        }],
    ]
    .concat();
    assert!(Sheet::of(&played(slip)).remarks.is_empty());
    let late = [
        run("ABA"),
        vec![Kind::Strike {
            entry: 9,
            why: Some("wrong side".into()),
        }],
    ]
    .concat();
    let sheet = Sheet::of(&played(late));
    assert!(remark(&sheet).contains("wrong side"), "{:?}", sheet.remarks);
}

#[test]
fn what_was_insisted_on_and_what_was_refused_are_remarks() {
    let third = Kind::TimeOut { team: Team::A };
    let mut entries: Vec<Entry> = played(vec![third.clone(); 3]).entries().to_vec();
    let sheet = Sheet::of(&Timeline::of(entries.clone()));
    assert!(remark(&sheet).starts_with("Entry 10 does not count (15.1)"));
    if let Some(last) = entries.last_mut() {
        last.insist = Some("agreed with both coaches".into());
    }
    let sheet = Sheet::of(&Timeline::of(entries));
    assert!(remark(&sheet).contains("agreed with both coaches"));
    assert_eq!(sheet.sets[0].time_outs.len(), 3);
}

/// Incomplete for the match (rule 6.4.3): the sets that were not played stand on the sheet too.
#[test]
fn sets_never_played_stand_on_the_sheet() {
    let mut more = run(&"A".repeat(25));
    more.push(Kind::Incomplete {
        team: Team::A,
        scope: game::entry::Scope::Match,
    });
    let sheet = Sheet::of(&played(more));
    let scores: Vec<(u16, u16)> = sheet.sets.iter().map(|s| (s.score.a, s.score.b)).collect();
    assert_eq!(scores, [(25, 0), (0, 25), (0, 25), (0, 25)]);
    assert_eq!(sheet.result.winner, Some(Team::B));
}

#[test]
fn line_ups_of_a_set_that_has_not_begun_are_shown() {
    let mut more = run(&"A".repeat(25));
    more.push(line_up(Team::A, &[6, 5, 4, 3, 2, 1]));
    more.push(line_up(Team::B, &[1, 2, 3, 4, 5, 6]));
    more.push(Kind::Timer(Timer {
        what: Timed::Interval,
        team: None,
        seconds: 180,
        action: TimerAction::Start,
    }));
    more.push(Kind::Substitution {
        team: Team::A,
        changes: vec![Change {
            out: Shirt(6),
            into: Shirt(8),
        }],
        reason: None,
    });
    let sheet = Sheet::of(&played(more));
    assert_eq!(sheet.sets[1].line_ups.a[0], Shirt(6));
    assert_eq!(sheet.sets[1].substitutions.len(), 1);
}

/// The paper is styled alike in the page and in a file of its own, so nothing of the page's other
/// sheets may reach it.
#[test]
fn the_classes_of_the_paper_are_its_own() {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("style");
    let classes = |name: &str| -> std::collections::BTreeSet<String> {
        let css = std::fs::read_to_string(folder.join(name)).expect("a style sheet");
        classes_in(&css).collect()
    };
    let paper = classes("paper.css");
    // The team's mark is the same everywhere.
    let shared = [
        "paper",
        "muted",
        "tabular",
        "visually-hidden",
        "team-mark",
        "disc",
    ];
    let mut others = 0;
    for entry in std::fs::read_dir(&folder).expect("style") {
        let name = entry
            .expect("a file")
            .file_name()
            .into_string()
            .expect("plain");
        if name == "paper.css" || !name.ends_with(".css") {
            continue;
        }
        others += 1;
        let both: Vec<_> = classes(&name)
            .into_iter()
            .filter(|c| paper.contains(c) && !shared.contains(&c.as_str()))
            .collect();
        assert_eq!(both, Vec::<String>::new(), "in {name} too");
    }
    assert!(others > 4);
}

/// All screens share one page. What one sheet says of a class by itself holds wherever that class stands, so
/// another screen's sheet must not mean something else by it.
#[test]
fn a_class_by_itself_belongs_to_one_screen() {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("style");
    let screens = ["before", "desk", "hand-over", "play", "sheet", "start"];
    let sheets = screens.map(|screen| {
        let css = std::fs::read_to_string(folder.join(format!("{screen}.css"))).expect("a sheet");
        (screen, selectors(&css))
    });
    let mut alone = 0;
    let mut wrong = Vec::new();
    for (screen, own) in &sheets {
        for class in own.iter().filter_map(|s| s.strip_prefix('.')) {
            if classes_in(&format!(".{class}")).ne([class.to_owned()]) {
                continue;
            }
            alone += 1;
            for (other, theirs) in sheets.iter().filter(|s| s.0 != *screen) {
                if theirs
                    .iter()
                    .flat_map(|s| classes_in(s))
                    .any(|c| c == class)
                {
                    wrong.push(format!(".{class} of {screen}.css in {other}.css"));
                }
            }
        }
    }
    assert!(alone > 100, "{alone}");
    assert_eq!(wrong, Vec::<String>::new());
}

/// The names of classes in a piece of style.
fn classes_in(css: &str) -> impl Iterator<Item = String> + '_ {
    let after_dot = css.split('.').skip(1).map(|rest| {
        let end = rest.find(|c: char| !(c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-'));
        rest[..end.unwrap_or(rest.len())].to_owned()
    });
    // A number with a point is none.
    after_dot.filter(|class| class.starts_with(|c: char| c.is_ascii_lowercase()))
}

/// Every selector of a style sheet, one by one.
fn selectors(css: &str) -> Vec<String> {
    let mut code = String::new();
    let mut rest = css;
    while let Some((before, comment)) = rest.split_once("/*") {
        code.push_str(before);
        rest = comment.split_once("*/").map_or("", |c| c.1);
    }
    code.push_str(rest);
    let heads = code.split('{').map(|part| {
        let end = part.rfind(['}', ';']).map_or(0, |at| at + 1);
        &part[end..]
    });
    let one = heads.flat_map(|head| head.split(',')).map(str::trim);
    one.filter(|s| !s.is_empty()).map(str::to_owned).collect()
}

/// The first remark of a sheet in words.
fn remark(sheet: &Sheet) -> String {
    text::remark(&sheet.remarks[0].remark, sheet.into())
}
