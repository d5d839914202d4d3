//! What is shown on the desk, in which order, what is chosen and what comes next: no screen decides any of it.

use std::sync::Arc;

use app::desk::{
    in_groups, known_list, neighbours, reported, shown, twice, Column, Command, Filter, Order, Row,
    RowKind, Selection, Show,
};
use app::ports::KeyPress;
use game::entry::Detail;
use game::{Entry, Kind, Signer, Timeline};
use record::{Log, Reading};
use reports::audit::{audit, Field, Finding, Spot, What, SIGN_AFTER};
use reports::list::{Line, SealState, Signed};
use reports::paper::Draft;
use reports::{demo, SheetBox, WallClock, Weight};
use rules::Team;
use text::setup::library::date_words;

fn row_of(log: &Log) -> Row {
    let timeline = Timeline::of(log.entries.clone());
    let line = Line::of_record(&Reading::default(), &timeline);
    let clock = |(first, _)| WallClock::default().moment(first);
    Row {
        id: log.id.clone(),
        kind: RowKind::Record,
        group: line.group.clone(),
        words: Vec::new(),
        scheduled: timeline
            .state()
            .heading()
            .and_then(|h| h.details[Detail::Scheduled].clone()),
        day: line.time.map(clock).unwrap_or_default(),
        archived: false,
        again: false,
        line: Some(line),
    }
}

/// The sample tournament: two pools of six matches, one of them recorded twice, one on paper.
fn day() -> Vec<Arc<Row>> {
    let day = demo::day();
    let mut rows: Vec<Row> = day.logs.iter().map(row_of).collect();
    let line = Line::of_paper(&Draft::of(&day.paper));
    rows.push(Row {
        id: day.paper_id,
        kind: RowKind::Paper,
        group: rows[10].group.clone(),
        words: Vec::new(),
        scheduled: None,
        day: line.day.clone().unwrap_or_default(),
        archived: false,
        again: false,
        line: Some(line),
    });
    let of: Vec<Arc<Row>> = rows.iter().cloned().map(Arc::new).collect();
    let again = twice(&of, 1);
    rows.iter_mut()
        .for_each(|row| row.again = again.contains(&row.id));
    rows.into_iter().map(Arc::new).collect()
}

fn ids(rows: &[Arc<Row>]) -> Vec<&str> {
    rows.iter().map(|row| row.id.as_str()).collect()
}

fn by(column: Column, backwards: bool) -> Order {
    Order {
        by: column,
        backwards,
    }
}

/// The usual order is that of the pools, and within one that of the numbers, as people count.
#[test]
fn the_list_begins_with_the_first_match_of_the_first_pool() {
    let rows = day();
    let all = shown(&rows, &Filter::default(), Order::default(), date_words());
    assert_eq!(all.len(), rows.len());
    let number = |row: &Arc<Row>| {
        let line = row.line.as_ref().expect("a match");
        (row.group.clone(), line.number.parse::<u32>().ok())
    };
    let numbered: Vec<_> = all.iter().map(number).filter(|n| n.1.is_some()).collect();
    assert!(numbered.len() >= 12, "the demo numbers its matches");
    assert!(numbered.is_sorted(), "{numbered:?}");
}

/// A list in groups shows every match once, and a pool in one place whatever the matches are sorted by.
#[test]
fn a_list_in_groups_holds_every_match_once() {
    let rows = day();
    for column in Column::ALL {
        let all = shown(&rows, &Filter::default(), Order::by(column), date_words());
        let groups = in_groups(&all);
        assert_eq!(groups.len(), 2, "two pools");
        assert_eq!(groups.iter().map(Vec::len).sum::<usize>(), all.len());
        assert_eq!(groups[0][0], all[0]);
        for group in groups {
            assert!(group.iter().all(|row| row.group == group[0].group));
        }
    }
}

/// A paper sheet has a day and no time; it stands among the matches of its day.
#[test]
fn a_paper_sheet_is_sorted_by_its_day() {
    let mut rows = day();
    let paper = rows.iter().position(|row| row.kind == RowKind::Paper);
    let paper = paper.expect("a paper sheet");
    let mut early = Row::clone(&rows[paper]);
    early.day = "2020-01-31".to_owned();
    rows[paper] = Arc::new(early);
    let first = |backwards| {
        let order = by(Column::Day, backwards);
        let shown = shown(&rows, &Filter::default(), order, date_words());
        let at = shown.iter().position(|row| row.id == rows[paper].id);
        at.expect("it is shown")
    };
    assert_eq!(first(false), 0);
    let matches = rows.iter().filter(|row| !row.day.is_empty()).count();
    assert_eq!(first(true), matches - 1);
}

/// Each column sorts, both ways, and a second press turns it round; nothing is lost by it.
#[test]
fn every_column_sorts_both_ways() {
    let rows = day();
    for column in Column::ALL {
        let there = shown(&rows, &Filter::default(), by(column, false), date_words());
        let back = shown(&rows, &Filter::default(), by(column, true), date_words());
        let mut all = ids(&there);
        all.sort_unstable();
        let mut known = ids(&rows);
        known.sort_unstable();
        assert_eq!(all, known, "{column:?}");
        let differs = ids(&there) != ids(&back);
        // Nobody has signed or sealed a match of the invented day in another way than the rest.
        assert!(
            differs || matches!(column, Column::Signed | Column::Seal),
            "{column:?}"
        );
        let once = Order::default().pressed(column);
        assert_eq!(once.pressed(column).backwards, !once.backwards);
        assert_eq!(Order::of_written(&once.written()), once);
    }
    assert_eq!(Order::of_written("nonsense"), Order::default());
}

/// Whoever looks for trouble begins with what may change the result: one such finding outweighs many of the form.
#[test]
fn the_heaviest_findings_come_first() {
    let rows = day();
    let all = shown(
        &rows,
        &Filter::default(),
        Order::by(Column::Findings),
        date_words(),
    );
    let heavy: Vec<_> = all
        .iter()
        .map(|row| row.line.as_ref().expect("a match").findings.heaviness())
        .collect();
    assert!(heavy.is_sorted_by(|one, other| one >= other), "{heavy:?}");
    assert_ne!(heavy.first(), heavy.last());
}

/// A paper sheet has no time: it comes last, whichever way the days go.
#[test]
fn what_is_not_known_comes_last_either_way() {
    let rows = day();
    for backwards in [false, true] {
        let all = shown(
            &rows,
            &Filter::default(),
            by(Column::Day, backwards),
            date_words(),
        );
        let last = all.last().expect("a row");
        assert_eq!(last.kind, RowKind::Paper, "{backwards}");
    }
}

/// Words, numbers, days and pools find a match; what is archived is found only among the archived.
#[test]
fn searching_and_filtering_leave_out_the_rest() {
    let mut rows = day();
    let teams = &rows[0].line.as_ref().expect("a match").teams;
    let word = teams
        .a
        .split_whitespace()
        .next()
        .expect("a name")
        .to_owned();
    let search = |words: &str| Filter {
        words: words.to_owned(),
        ..Filter::default()
    };
    let found = shown(
        &rows,
        &search(&word.to_uppercase()),
        Order::default(),
        date_words(),
    );
    assert!(!found.is_empty() && found.len() < rows.len());
    for row in &found {
        let teams = &row.line.as_ref().expect("a match").teams;
        assert!(teams.a.contains(&word) || teams.b.contains(&word));
    }
    assert!(shown(
        &rows,
        &search("nobody at all"),
        Order::default(),
        date_words()
    )
    .is_empty());

    let pool = Filter {
        pool: Some(rows[0].group.clone()),
        ..Filter::default()
    };
    let of_pool = shown(&rows, &pool, Order::default(), date_words());
    assert_eq!(of_pool.len(), 6, "six matches of four teams");

    let only = |show: Show| Filter {
        show,
        ..Filter::default()
    };
    let paper = shown(&rows, &only(Show::Paper), Order::default(), date_words());
    assert_eq!(paper.len(), 1);
    let to_check = shown(&rows, &only(Show::ToCheck), Order::default(), date_words());
    assert!(to_check.iter().all(|row| row.findings() > 0));
    assert!(shown(&rows, &only(Show::Archived), Order::default(), date_words()).is_empty());

    let first = Row::clone(&rows[0]);
    rows[0] = Arc::new(Row {
        archived: true,
        ..first
    });
    let archived = shown(&rows, &only(Show::Archived), Order::default(), date_words());
    assert_eq!(ids(&archived), [rows[0].id.as_str()]);
    let left = shown(&rows, &Filter::default(), Order::default(), date_words());
    assert_eq!(left.len(), rows.len() - 1);
}

/// A match that is over and not sealed is on the list of those to be asked for; a sealed one is not.
#[test]
fn what_is_not_sealed_is_found() {
    let day = demo::day();
    let mut sealed = day.logs[1].clone();
    let code = record::seal_code(&sealed.entries);
    let n = sealed.entries.last().expect("an entry").n + 1;
    sealed.entries.push(Entry::new(n, Kind::Seal { code }));
    let rows: Vec<Arc<Row>> = [&day.logs[0], &sealed]
        .map(|log| Arc::new(row_of(log)))
        .into();
    let seal = |row: &Arc<Row>| row.line.as_ref().map(|line| line.seal);
    assert_eq!(seal(&rows[1]), Some(SealState::Holds));
    let filter = Filter {
        show: Show::Unsealed,
        ..Filter::default()
    };
    let unsealed = shown(&rows, &filter, Order::default(), date_words());
    assert_eq!(ids(&unsealed), [rows[0].id.as_str()]);
    // The one that wants attention first.
    let all = shown(
        &rows,
        &Filter::default(),
        by(Column::Seal, false),
        date_words(),
    );
    assert_eq!(seal(&all[0]), Some(SealState::None));
}

/// Next and previous go through what is shown, in its order, and end at its ends.
#[test]
fn next_and_previous_follow_what_is_shown() {
    let rows = day();
    let order = Order::by(Column::Findings);
    let all = shown(&rows, &Filter::default(), order, date_words());
    let mut at = all[0].id.clone();
    assert_eq!(neighbours(&all, &at).0, None);
    let mut walked = vec![at.clone()];
    while let (before, Some(next)) = neighbours(&all, &at) {
        assert_eq!(
            before.map(|row| row.id.clone()),
            walked.iter().rev().nth(1).cloned()
        );
        at = next.id.clone();
        walked.push(at.clone());
    }
    assert_eq!(walked, ids(&all));
    // A search that leaves out the open match begins anew.
    let filter = Filter {
        pool: Some(rows[0].group.clone()),
        ..Filter::default()
    };
    let pool = shown(&rows, &filter, order, date_words());
    let elsewhere = rows.iter().find(|row| row.group != rows[0].group);
    let elsewhere = elsewhere.expect("two pools");
    let (before, next) = neighbours(&pool, &elsewhere.id);
    assert_eq!((before, next), (None, Some(&*pool[0])));
}

/// All that are shown, none, or those of a pool that count: of a match with two records the first one.
#[test]
fn all_none_or_a_pool_can_be_chosen() {
    let rows = day();
    let mut chosen = Selection::default();
    chosen.choose_all(&rows);
    assert_eq!(chosen.ids().len(), rows.len());
    chosen.clear();
    assert_eq!(chosen.ids(), [""; 0]);
    chosen.choose_pool(&rows, &rows[10].group);
    assert_eq!(
        chosen.ids().len(),
        6,
        "the match with two records counts once"
    );
    assert!(rows.iter().filter(|row| row.again).count() == 1);
    assert!(chosen.rows(&rows).iter().all(|row| row.counts()));
    assert_eq!(Selection::of_written(&chosen.written()), chosen);

    let first = chosen.ids()[0].clone();
    chosen.toggle(&first);
    assert!(!chosen.has(&first));
    chosen.toggle(&first);
    assert_eq!(chosen.ids().last(), Some(&first));
    // What was deleted meanwhile is not chosen any more.
    assert!(chosen.forget_gone(&rows[..6]));
    assert!(!chosen.forget_gone(&rows[..6]));
    assert_eq!(chosen.ids(), [""; 0]);
}

/// The report holds what is chosen, or all that is shown, pool by pool and in the order of the day.
#[test]
fn a_report_goes_through_the_day() {
    let rows = day();
    let mut chosen = Selection::default();
    let all = reported(&rows, &chosen, &Filter::default(), date_words());
    assert_eq!(all.iter().map(Vec::len).sum::<usize>(), rows.len());
    for pool in &all {
        let times: Vec<_> = pool.iter().filter_map(|row| row.played_at()).collect();
        assert!(times.is_sorted(), "{times:?}");
        assert!(pool.iter().all(|row| row.group == pool[0].group));
    }
    chosen.choose_pool(&rows, &rows[0].group);
    let one = reported(&rows, &chosen, &Filter::default(), date_words());
    assert_eq!(one.iter().map(Vec::len).collect::<Vec<_>>(), [6]);
}

/// The list of a team is taken from its latest record, however its name is written, and from no paper sheet.
#[test]
fn a_list_is_known_from_the_latest_record() {
    let rows = day();
    let last = rows
        .iter()
        .filter(|row| row.kind == RowKind::Record)
        .max_by_key(|row| row.played_at())
        .expect("a record");
    let names = &last.line.as_ref().expect("a match").teams;
    let written = format!(" {} ", names.b.to_uppercase());
    assert_eq!(
        known_list(&rows, &written),
        Some((last.id.clone(), Team::B))
    );
    assert_eq!(known_list(&rows, "nobody"), None);
    assert_eq!(known_list(&rows, " "), None);
    let on_paper: Vec<_> = rows
        .iter()
        .filter(|row| row.kind == RowKind::Paper)
        .cloned()
        .collect();
    let name = &on_paper[0].line.as_ref().expect("a match").teams.a;
    assert_eq!(known_list(&on_paper, name), None);
}

/// Two are compared in the order in which they were chosen; a pool is no match.
#[test]
fn two_matches_make_a_pair() {
    let mut rows = day();
    rows.push(Arc::new(Row {
        id: "pool".to_owned(),
        kind: RowKind::Pool(6),
        line: None,
        group: String::new(),
        words: Vec::new(),
        scheduled: None,
        day: String::new(),
        archived: false,
        again: false,
    }));
    let mut chosen = Selection::default();
    chosen.toggle(&rows[3].id);
    assert_eq!(chosen.pair(&rows), None);
    chosen.toggle(&rows[1].id);
    assert_eq!(
        chosen.pair(&rows),
        Some((rows[3].id.clone(), rows[1].id.clone()))
    );
    chosen.toggle(&rows[1].id);
    chosen.toggle("pool");
    assert_eq!(chosen.pair(&rows), None);
}

/// Every command has a key of its own, and a key that is typed, or meant for the browser, does nothing.
#[test]
fn every_key_does_what_the_list_says() {
    let press = |key: &str| KeyPress {
        key: key.to_owned(),
        in_list: true,
        ..KeyPress::default()
    };
    let mut seen = Vec::new();
    for (command, keys) in Command::listed() {
        for key in keys {
            assert_eq!(Command::of(&press(&key)), Some(command), "{key}");
            assert!(!seen.contains(&key), "{key} twice");
            for (typing, modified) in [(true, false), (false, true)] {
                let press = KeyPress {
                    typing,
                    modified,
                    ..press(&key)
                };
                assert_eq!(Command::of(&press), None, "{key}");
            }
            seen.push(key);
        }
    }
    assert_eq!(Command::of(&press("J")), Some(Command::Next));
    assert_eq!(Command::of(&press("Enter")), None);
    assert_eq!(Command::of(&press("9")), None);
    // Outside of the list the arrows scroll.
    let outside = KeyPress {
        in_list: false,
        ..press("ArrowDown")
    };
    assert_eq!(Command::of(&outside), None);
}

/// Whoever has signed under the result stands in the list in the order of the sheet, each once.
#[test]
fn the_list_says_who_has_signed() {
    let mut log = demo::day().logs[0].clone();
    let sign = |signer: Signer| Kind::Sign {
        role: signer.role(),
        name: None,
    };
    let before = row_of(&log).line.expect("a match").signed;
    let mut n = log.entries.last().expect("an entry").n;
    let all = [
        Signer::FirstReferee,
        Signer::Scorer,
        Signer::Scorer,
        Signer::Captain(Team::B),
    ];
    for signer in all {
        n += 1;
        log.entries.push(Entry::new(n, sign(signer)));
    }
    let signed = row_of(&log).line.expect("a match").signed;
    for signer in all {
        assert_eq!(signed.iter().filter(|s| **s == signer).count(), 1);
    }
    assert!(signed.len() >= before.len().max(3));
    let place = |signer: Signer| signed.iter().position(|s| *s == signer);
    assert!(place(Signer::Captain(Team::B)) < place(Signer::Scorer));
    assert!(place(Signer::Scorer) < place(Signer::FirstReferee));
}

/// A finding with an entry leads there; one of the whole record to the box of the sheet where it shows.
#[test]
fn a_finding_leads_to_what_it_speaks_of() {
    let mut entries = 0;
    for log in demo::day().logs {
        let timeline = Timeline::of(log.entries);
        for finding in audit(&Reading::default(), &timeline) {
            match finding.spot(&timeline).expect("a place") {
                Spot::Entry(n) => {
                    assert_eq!(Some(n), finding.entry);
                    entries += 1;
                }
                Spot::Box(_) => assert_eq!(finding.entry, None),
            }
        }
    }
    assert!(entries > 0);
    let timeline = Timeline::of(demo::day().logs[0].entries.clone());
    let of = |what: What| Finding { entry: None, what }.spot(&timeline);
    let over = What::OverTimeOuts {
        team: Team::A,
        set: 2,
        taken: 3,
        most: 2,
    };
    for (what, holds) in [
        (What::Missing(Field::Venue), SheetBox::Heading),
        (What::Missing(Field::List(Team::B)), SheetBox::Teams),
        (What::Missing(Field::Toss(3)), SheetBox::Set(3)),
        (What::Missing(Field::Scorer), SheetBox::Signatures),
        (over, SheetBox::Set(2)),
        (What::Unfinished, SheetBox::Heading),
    ] {
        assert_eq!(of(what), Some(Spot::Box(holds)));
    }
    // An entry that could not be read is nowhere to be looked at.
    let unread = Finding {
        entry: Some(100_000),
        what: What::Unfinished,
    };
    assert_eq!(unread.spot(&timeline), None);
}

/// A match that was broken off is about the result; a missing signature about the form.
#[test]
fn findings_are_weighed_by_what_they_may_touch() {
    let mut log = demo::day().logs[0].clone();
    let half = log.entries.len() / 2;
    log.entries.truncate(half);
    let weights = row_of(&log).line.expect("a match").findings;
    assert!(weights.of(Weight::Result) >= 1);
    let counted: Vec<_> = weights.counted().collect();
    assert_eq!(counted[0].0, Weight::Result, "the heaviest first");
    let sum: usize = counted.iter().map(|(_, count)| count).sum();
    assert_eq!(sum, weights.all());
}

/// Captains, scorer and both referees sign after a match (5.1.3, 27.2.3.3). A paper sheet may not say who did.
#[test]
fn the_list_says_who_has_signed_under_the_result() {
    let mut line = row_of(&demo::day().logs[0]).line.expect("a record");
    line.signed.clear();
    assert_eq!(line.signed(), Signed::Nobody);
    line.signed.push(Signer::Scorer);
    assert_eq!(line.signed(), Signed::Some(&[Signer::Scorer]));
    line.signed = SIGN_AFTER.to_vec();
    assert_eq!(line.signed(), Signed::Everybody);
    line.signed.clear();
    line.on_paper = true;
    assert_eq!(line.signed(), Signed::Unknown);
}
