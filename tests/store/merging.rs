//! Copies of one match put together line by line.

use app::merge::{merge, What};
use app::ports::{Lines, Put};
use game::{simulate, Entry, Kind};
use record::{LineWriter, Link};
use rules::Preset;

fn written(count: usize, stamp: i64) -> Lines {
    let mut entries = simulate(Preset::SchoolJunior, 3);
    entries.truncate(count);
    let mut writer = LineWriter::default();
    entries
        .into_iter()
        .map(|entry| Entry {
            at: Some(stamp + i64::from(entry.n)),
            ..entry
        })
        .map(|entry| (entry.n, writer.line(&entry)))
        .collect()
}

fn spoil(lines: &mut Lines, n: u32) -> String {
    let bad = lines[&n].replacen("\"at\":", "\"at\":9", 1);
    lines.insert(n, bad.clone());
    bad
}

fn changed(merged: &[Put]) -> Vec<u32> {
    merged.iter().map(|put| put.n).collect()
}

#[test]
fn damage_in_different_places_of_both_copies_costs_nothing() {
    let whole = written(22, 0);
    let (mut one, mut other) = (whole.clone(), whole.clone());
    spoil(&mut one, 5);
    spoil(&mut other, 9);
    let merged = merge(&[&one, &other]);
    assert_eq!(merged.lines, whole);
    assert_eq!((merged.entries.len(), merged.next), (22, 23));
    assert_eq!(merged.damage, []);
    assert_eq!(merged.mended, [5, 9]);
    assert_eq!(
        merged
            .repairs
            .iter()
            .map(|r| changed(r))
            .collect::<Vec<_>>(),
        [[5], [9]]
    );
}

#[test]
fn damage_in_the_same_place_costs_that_entry_alone_and_stays_as_it_is() {
    let whole = written(22, 0);
    let (mut one, mut other) = (whole.clone(), whole.clone());
    let bad = spoil(&mut one, 5);
    other.insert(5, "torn".to_owned());
    let merged = merge(&[&one, &other]);
    assert_eq!(merged.entries.len(), 21);
    assert_eq!(merged.damage.len(), 1, "{:?}", merged.damage);
    assert_eq!(merged.damage[0].what, What::Damaged);
    assert_eq!(merged.damage[0].raw, [bad, "torn".to_owned()]);
    // Neither copy is touched.
    assert_eq!(merged.repairs, [vec![], vec![]]);
    // And the next entry goes on in the same chain.
    let mut writer = merged.writer.clone();
    let next = writer.line(&Entry::new(23, Kind::ChangeCourts));
    one.insert(23, next);
    assert_eq!(merge(&[&one]).damage.len(), 1);
}

#[test]
fn where_even_the_link_is_gone_what_follows_still_counts() {
    let mut lines = written(22, 0);
    lines.insert(5, "torn".to_owned());
    let merged = merge(&[&lines]);
    assert_eq!(merged.entries.len(), 21);
    let what: Vec<_> = merged.damage.iter().map(|d| (d.n, d.what)).collect();
    assert_eq!(what, [(5, What::Damaged), (6, What::Unproved)]);
    lines.remove(&5);
    let merged = merge(&[&lines]);
    let what: Vec<_> = merged.damage.iter().map(|d| (d.n, d.what)).collect();
    assert_eq!(what, [(5, What::Missing), (6, What::Unproved)]);
    assert_eq!(merged.next, 23);
}

#[test]
fn the_last_line_may_be_the_damaged_one() {
    let mut lines = written(22, 0);
    let bad = spoil(&mut lines, 22);
    let merged = merge(&[&lines]);
    assert_eq!((merged.entries.len(), merged.next), (21, 23));
    assert_eq!(merged.lines[&22], bad);
    let mut writer = merged.writer.clone();
    let next = writer.line(&Entry::new(23, Kind::ChangeCourts));
    lines.insert(23, next.clone());
    let merged = merge(&[&lines]);
    assert_eq!((merged.damage.len(), merged.next), (1, 24));
}

#[test]
fn what_a_newer_version_wrote_is_kept_to_the_byte() {
    let mut lines = written(9, 0);
    let mut link = Link::read(&lines[&9][..16]).expect("a link");
    let json = [
        (10, "{\"n\":10,\"kind\":\"hologram\",\"beams\":[1]}"),
        (
            11,
            "{\"n\":11,\"kind\":\"remark\",\"text\":\"x\",\"mood\":2}",
        ),
    ];
    for (n, json) in json {
        link = link.next(json);
        lines.insert(n, format!("{} {json}", link.digits()));
    }
    let short: Lines = lines.iter().take(9).map(|(n, l)| (*n, l.clone())).collect();
    let merged = merge(&[&short, &lines]);
    assert_eq!(merged.lines, lines);
    // The other copy gets them too, as they are.
    let wanted: Vec<Option<String>> = lines.values().skip(9).cloned().map(Some).collect();
    let given: Vec<Option<String>> = merged.repairs[0].iter().map(|p| p.line.clone()).collect();
    assert_eq!(given, wanted);
    let what: Vec<_> = merged.damage.iter().map(|d| (d.n, d.what)).collect();
    assert_eq!(what, [(10, What::Newer)]);
    assert_eq!(merged.next, 12);
}

#[test]
fn two_good_logs_are_two_logs() {
    let main = written(12, 0);
    let mut other = written(10, 0);
    let (_, last) = other.pop_last().expect("a line");
    let mut writer = LineWriter::after(Link::read(&other[&9][..16]).expect("a link"));
    for n in 10..=14 {
        other.insert(n, writer.line(&Entry::new(n, Kind::ChangeCourts)));
    }
    assert_eq!(main[&10], last);
    let merged = merge(&[&main, &other]);
    assert_eq!(merged.lines, main);
    assert_eq!(merged.branches, [other.clone()]);
    assert_eq!((merged.damage.len(), merged.next), (0, 13));
    // Once the other log is kept elsewhere its lines give way.
    let puts: Vec<_> = merged.repairs[1]
        .iter()
        .map(|put| (put.n, put.line.is_some()))
        .collect();
    assert_eq!(
        puts,
        [(10, true), (11, true), (12, true), (13, false), (14, false)]
    );
    // The copy that weighs more is the log.
    assert_eq!(merge(&[&other, &main]).lines, other);
}

#[test]
fn nothing_gives_nothing() {
    let merged = merge(&[&Lines::new(), &Lines::new()]);
    assert_eq!((merged.next, merged.lines.len()), (1, 0));
    assert_eq!(merged.writer, LineWriter::default());
}

/// Where the line before is torn in both copies, no link can tell which of two lines is the one that was
/// written. One that no program would end so is the damaged one.
#[test]
fn of_two_lines_that_nothing_proves_the_one_that_ends_with_its_object_counts() {
    let whole = written(22, 0);
    let (mut one, mut other) = (whole.clone(), whole.clone());
    one.insert(8, "torn".to_owned());
    other.insert(8, "torn".to_owned());
    let bad = format!("{} ", whole[&9]);
    one.insert(9, bad.clone());
    let merged = merge(&[&one, &other]);
    assert_eq!(merged.lines.get(&9), whole.get(&9));
    assert_eq!(merged.entries.len(), 21);
    // What cannot be proved overwrites nothing, so the other line stays where it is.
    let kept = merged.damage.iter().find(|d| d.n == 9).expect("it is said");
    assert_eq!((kept.what, kept.raw.len()), (What::Unproved, 2));
    assert!(kept.raw.contains(&bad));
}

/// A copy that went its own way, and whose first line on that way is torn: the lines behind it are good, and
/// nothing proves them any more. They are another log, not damage.
#[test]
fn what_stands_behind_a_torn_line_of_another_log_is_kept_beside() {
    let whole = written(10, 0);
    let mut other = whole.clone();
    let apart = written(12, 500_000);
    let mut writer = LineWriter::default();
    for (n, line) in &whole {
        let json = line.split_once(' ').expect("a link and an entry").1;
        let entry = record::read_entry(json).expect("an entry");
        assert_eq!(writer.line(&entry), *line, "line {n}");
    }
    for n in 11..=12 {
        let json = apart[&n].split_once(' ').expect("a link and an entry").1;
        let entry = record::read_entry(json).expect("an entry");
        other.insert(n, writer.line(&entry));
    }
    let torn = format!("x{}", other[&11]);
    other.insert(11, torn);
    let longer = written(14, 0);
    let merged = merge(&[&other, &longer]);
    assert_eq!(merged.lines, longer);
    assert_eq!(merged.branches.len(), 1);
    assert_eq!(merged.branches[0].get(&12), other.get(&12));
}

/// The database's log is torn in one line, and another log went on from before it. The whole lines behind the
/// torn one cannot be proved any more, and are kept beside all the same; a damaged copy of a good line is not.
#[test]
fn a_line_that_can_be_read_is_kept_beside_and_a_damaged_copy_is_mended() {
    let log = |upto: u32, from: u32, start: i64| -> Lines {
        let mut writer = LineWriter::default();
        let line = |n| {
            let at = if n < from { 0 } else { start };
            let entry = Entry {
                at: Some(i64::from(n) * 1000 + at),
                ..Entry::new(n, Kind::ChangeCourts)
            };
            (n, writer.line(&entry))
        };
        (1..=upto).map(line).collect()
    };
    let whole = log(12, 7, 0);
    let other = log(12, 7, 500_000);
    assert_eq!(whole[&6], other[&6]);
    let mut durable = whole.clone();
    durable.insert(7, format!("x{}", whole[&7]));
    durable.insert(8, format!("x{}", whole[&8]));
    let merged = merge(&[&durable, &other]);
    assert_eq!(merged.lines, other);
    assert_eq!(merged.branches.len(), 1);
    for n in 9..=12 {
        assert_eq!(merged.branches[0].get(&n), whole.get(&n), "line {n}");
    }
    // One digit of a good line has gone wrong: its link says which line it is.
    let mut copy = other.clone();
    copy.insert(9, other[&9].replace("509000", "508000"));
    assert_ne!(copy, other);
    let merged = merge(&[&other, &copy]);
    assert_eq!((merged.lines, merged.branches.len()), (other, 0));
    assert_eq!(merged.mended, [9]);
}
