//! A table of match records, paper sheets and backups on the command line: no match counts twice, no paper
//! sheet is dropped, and what is missing or mixed is said, by the exit status as well.

use game::entry::Detail;
use game::{Entry, Kind, Timeline};
use record::{KeptMatch, Log, OnDesk};
use reports::paper::{self, Draft, PaperSheet};
use reports::{demo, Sheet};
use rules::ByTeam;
use serde_json::Value;

use super::command::{desk, file, Run};

/// The six match records of pool 1.
fn pool_1() -> Vec<Log> {
    let mut logs = demo::day().logs;
    logs.truncate(6);
    logs
}

fn files(of: &str, logs: &[Log]) -> Vec<String> {
    let name = |log: &Log| format!("{of}-{}.json", log.id);
    logs.iter()
        .map(|log| file(&name(log), &record::write(log)))
        .collect()
}

/// The paper sheet of a record.
fn on_paper(log: &Log) -> PaperSheet {
    let timeline = Timeline::of(log.entries.clone());
    paper::of_sheet(&Sheet::of(&timeline), *timeline.state().rules(), 0)
}

fn standings(files: &[String], more: &[&str]) -> Run {
    let mut args = vec!["standings"];
    args.extend(files.iter().map(String::as_str));
    args.extend(more);
    desk(&args)
}

/// How many matches all teams together have played, each match once for each team.
fn played(table: &Value) -> u64 {
    let rows = table["table"].as_array().expect("a table");
    rows.iter().filter_map(|row| row["played"].as_u64()).sum()
}

/// The codes of the findings, and all their sentences.
fn found(table: &Value) -> (Vec<&str>, String) {
    let findings = table["findings"].as_array().expect("findings");
    let codes = findings.iter().filter_map(|f| f["code"].as_str()).collect();
    let say: Vec<&str> = findings.iter().filter_map(|f| f["say"].as_str()).collect();
    (codes, say.join("\n"))
}

fn names_of(log: &Log) -> ByTeam<String> {
    let timeline = Timeline::of(log.entries.clone());
    timeline.state().heading().expect("a heading").names.clone()
}

fn detail(log: &mut Log, detail: Detail, text: Option<&str>) {
    if let Kind::Match(heading) = &mut log.entries[0].kind {
        heading.details[detail] = text.map(str::to_owned);
    }
}

#[test]
fn a_whole_pool_has_nothing_to_say() {
    let run = standings(&files("whole", &pool_1()), &[]);
    assert_eq!((run.status, run.err.as_str()), (0, ""), "{}", run.out);
    assert_eq!(played(&run.json()), 12);
}

#[test]
fn a_match_on_paper_and_in_a_record_counts_once_and_the_record_is_taken() {
    let logs = pool_1();
    let sheet = file("once-paper.json", &paper::write(&on_paper(&logs[2])));
    // The paper sheet comes first, and counts all the same only where there is no record.
    let mut all = vec![sheet.clone()];
    all.extend(files("once", &logs));
    let run = standings(&all, &[]);
    assert_eq!(run.status, 1);
    let table = run.json();
    assert_eq!(played(&table), 12);
    let (codes, say) = found(&table);
    assert_eq!(codes, ["match_twice"]);
    assert!(say.contains(&format!("{sheet} does not count")), "{say}");
    assert!(say.contains(&format!("{} counts", all[3])), "{say}");
    // For a spreadsheet and for a reader it is said as well.
    let csv = standings(&all, &["--csv"]);
    assert_eq!(csv.status, 1);
    assert!(csv.err.contains(&say), "{}", csv.err);
    let text = standings(&all, &["--text"]);
    assert!(text.out.contains(&say), "{}", text.out);
    // Without the record the sheet counts.
    all.remove(3);
    let run = standings(&all, &[]);
    assert_eq!((run.status, played(&run.json())), (0, 12), "{}", run.out);
}

#[test]
fn a_paper_sheet_with_other_points_is_no_second_match() {
    let logs = pool_1();
    let mut other = on_paper(&logs[2]);
    let points = other.sets[0].points.as_mut().expect("points");
    let loser = points.leader().expect("a winner").other();
    points[loser] -= 1;
    let mut all = files("slip", &logs);
    all.push(file("slip-paper.json", &paper::write(&other)));
    let run = standings(&all, &[]);
    let table = run.json();
    assert_eq!((run.status, played(&table)), (1, 12));
    let (codes, say) = found(&table);
    assert!(codes.contains(&"match_twice"), "{codes:?}");
    assert!(say.contains("The points differ"), "{say}");
    // Where the competition lets them meet twice, it may be the second match.
    let run = standings(&all, &["--meetings", "2"]);
    assert_eq!(played(&run.json()), 14);
    assert_eq!(standings(&all, &["--meetings", "0"]).status, 2);
}

#[test]
fn two_records_of_one_match_are_told_by_their_time_whatever_their_names() {
    let mut logs = pool_1();
    let mut again = logs[0].clone();
    "another-phone".clone_into(&mut again.id);
    detail(&mut again, Detail::MatchNo, None);
    if let Kind::Match(heading) = &mut again.entries[0].kind {
        heading.names.a = heading.names.a.to_uppercase();
    }
    logs.push(again);
    let run = standings(&files("time", &logs), &[]);
    let table = run.json();
    let (codes, say) = found(&table);
    assert_eq!((run.status, played(&table)), (1, 12), "{say}");
    assert!(codes.contains(&"match_twice"), "{codes:?}");
    // The return match, two hours later, is another one; that they met again is said.
    let names = names_of(&logs[0]);
    let last = logs.last_mut().expect("a record");
    for entry in &mut last.entries {
        entry.at = entry.at.map(|at| at + 7_200_000);
    }
    if let Kind::Match(heading) = &mut last.entries[0].kind {
        heading.names = names;
    }
    let run = standings(&files("return", &logs), &[]);
    let table = run.json();
    let (codes, say) = found(&table);
    assert_eq!((run.status, played(&table)), (1, 14), "{say}");
    assert_eq!(codes, ["met_again"]);
}

#[test]
fn two_pools_in_one_table_are_said() {
    let day = demo::day();
    let mixed = files("mixed", &day.logs[..11]);
    let run = standings(&mixed, &[]);
    assert_eq!(run.status, 1);
    let table = run.json();
    let (codes, say) = found(&table);
    assert_eq!(codes[0], "pools_mixed");
    assert!(
        say.contains("Sample tournament, Pool 1") && say.contains("Sample tournament, Pool 2"),
        "{say}"
    );
    // Nobody of pool 1 has to play somebody of pool 2: one match of pool 2 is missing, and no more.
    assert_eq!(codes, ["pools_mixed", "not_played"]);
    assert!(say.contains("One match is missing"), "{say}");
}

#[test]
fn what_is_missing_from_a_pool_is_said_and_so_is_a_team_spelt_two_ways() {
    let mut logs = pool_1();
    let left_out = logs.remove(5);
    let names = names_of(&left_out);
    let run = standings(&files("missing", &logs), &["--text"]);
    assert_eq!(run.status, 1);
    let pair = format!("{} – {}", names.a, names.b);
    assert!(run.out.contains("not_played: "), "{}", run.out);
    assert!(run.out.contains(&pair), "{}", run.out);
    // One letter less, and there is a fifth team.
    let mut logs = pool_1();
    if let Kind::Match(heading) = &mut logs[0].entries[0].kind {
        heading.names.a = heading.names.a.replacen("tt", "t", 1);
        assert_eq!(heading.names.a, "Oters");
    }
    let run = standings(&files("spelt", &logs), &[]);
    let table = run.json();
    let (codes, say) = found(&table);
    assert_eq!(run.status, 1);
    assert_eq!(codes[0], "names_alike");
    assert!(say.contains("\"Oters\" and \"Otters\""), "{say}");
}

#[test]
fn a_match_that_is_not_over_and_a_result_in_doubt_are_findings() {
    let mut logs = pool_1();
    let entries = &mut logs[5].entries;
    entries.truncate(entries.len() / 2);
    let names = files("open", &logs);
    let run = standings(&names, &[]);
    assert_eq!(run.status, 1);
    let table = run.json();
    let (codes, say) = found(&table);
    assert_eq!(codes, ["not_over"], "{say}");
    assert!(
        say.contains(&format!("is not over in {}", names[5])),
        "{say}"
    );
    // A paper sheet whose result names the wrong winner counts by its sets, and that is said.
    let logs = pool_1();
    let mut sheet = on_paper(&logs[5]);
    let result = sheet.result.as_mut().expect("a result");
    result.winner = result.winner.map(rules::Team::other);
    let mut all = files("doubt", &logs[..5]);
    all.push(file("doubt-paper.json", &paper::write(&sheet)));
    let run = standings(&all, &[]);
    let table = run.json();
    let (codes, say) = found(&table);
    assert_eq!((run.status, played(&table)), (1, 12));
    assert_eq!(codes, ["result_in_doubt"]);
    assert!(say.contains(&all[5]), "{say}");
}

#[test]
fn a_broken_seal_is_said_of_the_table_that_counts_it() {
    let mut logs = pool_1();
    let code = record::seal_code(&logs[0].entries);
    let n = logs[0].entries.last().expect("an entry").n + 1;
    logs[0].entries.push(Entry::new(n, Kind::Seal { code }));
    let whole = standings(&files("sealed", &logs), &[]);
    assert_eq!(whole.status, 0, "{}", whole.out);
    for entry in &mut logs[0].entries {
        if let Kind::Match(heading) = &mut entry.kind {
            heading.details[Detail::Venue] = Some("Elsewhere".to_owned());
        }
        entry.written = None;
    }
    let run = standings(&files("seal", &logs), &[]);
    let table = run.json();
    let (codes, say) = found(&table);
    assert_eq!((run.status, codes), (1, vec!["result_in_doubt"]));
    assert!(say.contains("seal"), "{say}");
}

#[test]
fn a_backup_gives_its_paper_sheets_to_the_table_the_list_and_the_checking() {
    let day = demo::day();
    let kept: Vec<KeptMatch> = day.logs[6..11]
        .iter()
        .map(|log| KeptMatch {
            log: log.clone(),
            ..KeptMatch::default()
        })
        .collect();
    let on_desk = OnDesk {
        papers: vec![Draft::of(&day.paper).written()],
        pools: Vec::new(),
        ..OnDesk::default()
    };
    let backup = file(
        "pools-backup.json",
        &record::write_backup(&kept, &on_desk, None),
    );
    let run = desk(&["standings", &backup]);
    assert_eq!((run.status, played(&run.json())), (0, 12), "{}", run.out);
    let list = desk(&["list", &backup]);
    assert_eq!(list.out.lines().count(), 6, "{}", list.out);
    assert!(list.out.contains(". On paper. "), "{}", list.out);
    let checked = desk(&["paper", "--text", &backup]);
    assert_eq!(checked.status, 1);
    assert!(checked.out.contains("rounds_decrease"), "{}", checked.out);
    // The command that reads match records alone says what it has not read.
    let audit = desk(&["audit", &backup]);
    assert!(
        audit.err.contains("1 paper sheet in this backup") && audit.err.contains("desk paper"),
        "{}",
        audit.err
    );
    // Nothing but paper is a backup as well.
    let papers = file(
        "paper-backup.json",
        &record::write_backup(&[], &on_desk, None),
    );
    assert_eq!(desk(&["list", &papers]).out.lines().count(), 1);
}

fn backup(name: &str, logs: &[Log], pools: &[&str]) -> String {
    let kept = logs.iter().map(|log| KeptMatch {
        log: log.clone(),
        ..KeptMatch::default()
    });
    let kept: Vec<KeptMatch> = kept.collect();
    let on_desk = OnDesk {
        papers: Vec::new(),
        pools: pools.iter().map(|text| (*text).to_owned()).collect(),
        ..OnDesk::default()
    };
    file(name, &record::write_backup(&kept, &on_desk, None))
}

/// What a heading says of its pool counts wherever the match comes from.
#[test]
fn matches_of_a_backup_belong_to_the_pools_of_their_headings() {
    let logs = demo::day().logs;
    let one_by_one = standings(&files("headed", &logs[..11]), &[]).json();
    let together = standings(&[backup("headed.json", &logs[..11], &[])], &[]).json();
    assert_eq!(one_by_one["table"], together["table"]);
    assert_eq!(found(&together).0, ["pools_mixed", "not_played"]);
    assert_eq!(found(&one_by_one), found(&together));
    // A sheet of its own goes to the pool of the matches in the backup.
    let mut logs = pool_1();
    let sheet = on_paper(&logs.remove(2));
    let sheet = file("headed-paper.json", &paper::write(&sheet));
    let run = standings(&[sheet, backup("headed-five.json", &logs, &[])], &[]);
    assert_eq!((run.status, played(&run.json())), (0, 12), "{}", run.out);
}

const POOLS: [&str; 2] = [
    r#"{ "log": "volleyball-pool", "version": 1, "rank_by": ["wins"], "results": [
        { "home": "Otters", "away": "Herons", "sets": [[25, 20], [25, 22]] } ] }"#,
    r#"{ "log": "volleyball-pool", "version": 1, "rank_by": ["set_ratio"], "results": [
        { "home": "Voles", "away": "Badgers", "sets": [[25, 20], [25, 22]] } ] }"#,
];

#[test]
fn the_pools_of_a_backup_are_ranked_as_their_files_are() {
    let alone = POOLS.map(|text| standings(&[file("pool-alone.json", text)], &[]).out);
    // One pool and nothing else.
    let run = standings(&[backup("one-pool.json", &[], &POOLS[..1])], &[]);
    assert_eq!((run.status, &run.out), (0, &alone[0]), "{}", run.err);
    // Beside matches it is told how to have its table, and not mixed with theirs.
    let many = backup("pools-and-matches.json", &pool_1(), &POOLS);
    let run = standings(std::slice::from_ref(&many), &[]);
    assert_eq!((run.status, played(&run.json())), (0, 12), "{}", run.err);
    for (n, alone) in (1..).zip(&alone) {
        let part = format!("{many}#pool-{n}");
        assert!(
            run.err.contains(&format!("a table of {part} alone")),
            "{}",
            run.err
        );
        assert_eq!(&standings(&[part], &[]).out, alone);
    }
    assert!(desk(&["list", &many]).err.contains("#pool-2: "));
    // Pools alone are no list, and a part that is not there is said.
    let pools = backup("two-pools.json", &[], &POOLS);
    assert_eq!(desk(&["list", &pools]).status, 2);
    let run = standings(&[format!("{many}#pool-3")], &[]);
    assert_eq!((run.status, run.out.as_str()), (2, ""));
    assert!(run.err.contains("no such part"), "{}", run.err);
    // What cannot be read of a pool is no silence.
    let odd = backup("odd-pool.json", &pool_1(), &["{}"]);
    let run = standings(&[odd], &[]);
    assert_eq!((run.status, played(&run.json())), (1, 12), "{}", run.err);
    // A match has a name of its own as well.
    let one = format!("{many}#{}", pool_1()[0].id);
    assert_eq!(desk(&["list", &one]).out.lines().count(), 1);
    assert_eq!(desk(&["replay", &one]).status, 0);
}

#[test]
fn two_different_matches_are_not_compared_without_a_word() {
    let logs = pool_1();
    let names = files("compare", &logs);
    let run = desk(&["compare", "--text", &names[0], &names[1]]);
    assert_eq!(run.status, 1);
    let first = run.out.lines().next().expect("a line");
    assert!(first.contains("two different matches"), "{first}");
    // The same teams, and another match by its number or its time.
    let mut other = logs[0].clone();
    detail(&mut other, Detail::MatchNo, Some("77"));
    let number = file("compare-number.json", &record::write(&other));
    let findings = desk(&["compare", &names[0], &number]).json();
    let say = findings["findings"][0]["say"].as_str().expect("a sentence");
    assert!(
        say.contains("number 1") && say.contains("number 77"),
        "{say}"
    );
    let mut later = logs[0].clone();
    for entry in &mut later.entries {
        entry.at = entry.at.map(|at| at + 86_400_000);
    }
    let later = file("compare-later.json", &record::write(&later));
    let findings = desk(&["compare", &names[0], &later]).json();
    let say = findings["findings"][0]["say"].as_str().expect("a sentence");
    assert!(say.contains("another time"), "{say}");
    // A name spelt another way is asked about, and no more.
    let mut spelt = logs[0].clone();
    if let Kind::Match(heading) = &mut spelt.entries[0].kind {
        heading.names.a = "Oters".to_owned();
    }
    let spelt = file("compare-spelt.json", &record::write(&spelt));
    let findings = desk(&["compare", &names[0], &spelt]).json();
    let say = findings["findings"][0]["say"].as_str().expect("a sentence");
    assert!(
        say.contains("Check whether they are of one match:"),
        "{say}"
    );
}
