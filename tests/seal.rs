//! The seal and the links of an exported record: what was changed is found, and where.

use app::merge::merge;
use app::summary::Summary;
use game::{simulate, Entry, Kind, Timeline};
use record::{
    broken, pack, read, seal_code, seals, unpack, write, Broken, LineWriter, Log, ProblemKind,
};
use reports::{audit, Sheet, WallClock};
use rules::Preset;

fn sealed(preset: Preset, seed: u64) -> Log {
    let mut entries = simulate(preset, seed);
    let code = seal_code(&entries);
    let n = entries.len() as u32 + 1;
    entries.push(Entry::new(n, Kind::Seal { code }));
    Log {
        id: "a-sealed-match".to_owned(),
        entries,
    }
}

#[test]
fn a_sealed_record_fits_its_seal_after_the_journey() {
    let log = sealed(Preset::International, 3);
    let reading = read(&write(&log));
    assert_eq!(reading.problems, []);
    assert_eq!(reading.log, log);
    assert!(seals(&reading.log.entries).iter().all(|s| s.fits()));
    assert_eq!(seals(&log.entries).len(), 1);
}

/// The entry that a place of the file belongs to; none for the head and the end.
fn entry_at(file: &str, at: usize) -> Option<u32> {
    let line = file[..at].matches('\n').count() as u32;
    let last = file.matches(",\n").count() as u32 + 1;
    (1..=last).contains(&line).then_some(line)
}

/// Every byte of the file in turn, put to something else: the record either is the same, or it is said
/// that it is not, and where. A changed bracket that keeps the whole from being read is said as well.
#[test]
fn one_changed_byte_is_found_and_located() {
    // All 29,643 bytes of this match were tried once; that takes half a minute.
    let mut log = sealed(Preset::SchoolJunior, 5);
    log.entries.truncate(40);
    let code = seal_code(&log.entries);
    log.entries.push(Entry::new(41, Kind::Seal { code }));
    let file = write(&log);
    let (mut located, mut whole, mut same) = (0, 0, 0);
    for at in (0..file.len()).step_by(2) {
        let mut bytes = file.clone().into_bytes();
        bytes[at] = match bytes[at] {
            b'9' => b'8',
            b'0'..=b'8' | b'a'..=b'y' | b'A'..=b'Y' => bytes[at] + 1,
            _ => b'x',
        };
        let text = String::from_utf8(bytes).expect("one byte signs only");
        let reading = read(&text);
        if reading.is_nothing() {
            whole += 1;
            continue;
        }
        if reading.problems.is_empty() {
            assert_eq!(reading.log, log, "unseen at byte {at}");
            same += 1;
            continue;
        }
        let Some(n) = entry_at(&file, at) else {
            // The id, or the link beside it.
            assert!(reading.problems.iter().any(|p| p.entry.is_none()));
            continue;
        };
        // Found at its entry. A changed link or a missing one may speak at the next one.
        let said: Vec<u32> = reading.problems.iter().filter_map(|p| p.entry).collect();
        let near = said.iter().any(|&e| e == n || e == n + 1);
        // Without its last bracket the last entry is an end that was cut off.
        let end = n == 41 && reading.cut_off;
        assert!(
            near || end,
            "byte {at} of entry {n}: {:?}",
            reading.problems
        );
        located += 1;
    }
    let all = file.len().div_ceil(2);
    println!("{located} located, {whole} as a whole, {same} the same, of {all}");
    assert!(located * 10 > all * 9, "{located} of {all}");
    assert!(same * 20 < all, "{same} of {all}");
}

#[test]
fn an_entry_taken_out_and_the_rest_renumbered_is_found_where_it_stood() {
    let log = sealed(Preset::SchoolJunior, 7);
    let file = write(&log);
    let lines: Vec<&str> = file.lines().collect();
    let cut = 60;
    let mut out: Vec<String> = lines[..cut].iter().map(ToString::to_string).collect();
    for (i, line) in lines[cut + 1..].iter().enumerate() {
        let (old, new) = (cut + 1 + i, cut + i);
        out.push(line.replacen(&format!("\"n\":{old},"), &format!("\"n\":{new},"), 1));
    }
    let reading = read(&out.join("\n"));
    assert_eq!(reading.changed.first(), Some(&(cut as u32)));
}

/// Whoever makes the links anew as well gives the record another code.
#[test]
fn a_record_written_anew_has_another_code() {
    let log = sealed(Preset::International, 9);
    let mut other = log.clone();
    let place = other
        .entries
        .iter()
        .position(|e| matches!(e.kind, Kind::Rally { .. }));
    let Kind::Rally { won_by, .. } = &mut other.entries[place.expect("a rally")].kind else {
        unreachable!("it was found as one");
    };
    *won_by = won_by.other();
    let reading = read(&write(&other));
    assert_eq!(reading.changed, Vec::<u32>::new());
    let seal = &seals(&reading.log.entries)[0];
    assert!(!seal.fits());
    let last = log.entries.len() as u32;
    assert!(reading
        .problems
        .iter()
        .any(|p| p.entry == Some(last) && matches!(p.kind, ProblemKind::Broken(Broken::Seal(_)))));
}

/// Whoever takes a changed record in sees it for good: in the lists, first in the audit, on the sheet, after
/// storage and codes, and in the file that leaves again, which is what came.
#[test]
fn a_changed_record_is_known_as_one_wherever_it_goes() {
    let log = sealed(Preset::International, 11);
    let n = log.entries.len() as u32;
    let file = write(&log);
    let line = |text: &str| format!("\"n\":30,{text}");
    let entry = line("");
    let changed = file.replacen(&entry, &line("\"at\":1764057600000,"), 1);
    let wrong_link = file
        .lines()
        .map(|line| match line.contains(&entry) {
            true => format!("{}0000000000000000\"}},", &line[..line.len() - 19]),
            false => line.to_owned(),
        })
        .collect::<Vec<_>>()
        .join("\n")
        + "\n";
    let (before, link) = file.rsplit_once("\"link\":\"").expect("a link");
    let no_link = format!("{before}\"link\":\"no {link}");
    // A changed link is one that the next entry does not fit either; the seal is of what was written.
    for (given, places, seal_fits) in [
        (changed, vec![30], false),
        (wrong_link, vec![30, 31], true),
        (no_link, vec![n], true),
    ] {
        let reading = read(&given);
        assert_eq!(reading.changed, places);
        let came = reading.log;
        assert_eq!(seals(&came.entries)[0].fits(), seal_fits);
        assert!(came.id == log.id && came.entries != log.entries);

        let mut writer = LineWriter::default();
        let lines = came.entries.iter().map(|e| (e.n, writer.line(e)));
        let kept = merge(&[&lines.collect()]);
        assert_eq!(kept.damage, []);
        assert_eq!(kept.entries, came.entries);
        assert_eq!(write(&came), given);
        let packed = pack(&came).expect("a whole record");
        assert_eq!(unpack(&packed), Ok(came.clone()));

        let timeline = Timeline::of(kept.entries);
        let found: Vec<u32> = broken(timeline.entries())
            .iter()
            .map(Broken::entry)
            .collect();
        let all: Vec<u32> = places
            .into_iter()
            .chain((!seal_fits).then_some(n))
            .collect();
        assert_eq!(found, all);
        let findings = audit::of_log(&timeline);
        let first: Vec<Option<u32>> = findings.iter().map(|f| f.entry).take(all.len()).collect();
        assert_eq!(first, all.iter().copied().map(Some).collect::<Vec<_>>());
        assert!(findings[0].what.code().starts_with("broken_"));
        assert!(Summary::of(&timeline, n, "", 0).is_changed);
        let sheet = render::sheet_text(&Sheet::of(&timeline), WallClock(0));
        assert!(sheet.contains("CHANGED AFTER IT WAS WRITTEN"));
    }
    let timeline = Timeline::of(log.entries);
    assert_eq!(broken(timeline.entries()), []);
    assert!(!Summary::of(&timeline, n, "", 0).is_changed);
}

#[test]
fn a_record_without_links_is_read_all_the_same() {
    let log = sealed(Preset::SchoolSenior, 2);
    let mut value: serde_json::Value = serde_json::from_str(&write(&log)).expect("JSON");
    for entry in value["entries"].as_array_mut().expect("a list") {
        entry.as_object_mut().expect("an object").remove("link");
    }
    value.as_object_mut().expect("an object").remove("link");
    let reading = read(&value.to_string());
    assert_eq!(reading.problems, []);
    assert_eq!(reading.log, log);
}

/// A field of a newer version is named, kept, and accuses nobody: link and seal were made with it. The same
/// field put in afterwards is a change.
#[test]
fn a_field_of_a_newer_version_is_told_apart_from_a_change() {
    let mut entries = simulate(Preset::SchoolSenior, 2);
    let text = record::write_entry(&entries[29]);
    entries[29].written = Some(
        text.replacen("\"n\":30,", "\"n\":30,\"weather\":\"hot\",", 1)
            .into(),
    );
    let code = seal_code(&entries);
    let n = entries.len() as u32 + 1;
    entries.push(Entry::new(n, Kind::Seal { code }));
    let newer = Log {
        id: "a-newer-match".to_owned(),
        entries,
    };
    let file = write(&newer);
    let reading = read(&file);
    assert_eq!(reading.changed, Vec::<u32>::new());
    let kinds: Vec<&ProblemKind> = reading.problems.iter().map(|p| &p.kind).collect();
    assert_eq!(
        kinds,
        [&ProblemKind::UnknownEntryField("weather".to_owned())]
    );
    assert!(seals(&reading.log.entries).iter().all(|s| s.fits()));
    assert_eq!(write(&reading.log), file);

    let old = write(&sealed(Preset::SchoolSenior, 2));
    let put_in = old.replacen("\"n\":30,", "\"n\":30,\"weather\":\"hot\",", 1);
    let reading = read(&put_in);
    assert_eq!(reading.changed, [30]);
    assert!(!seals(&reading.log.entries)[0].fits());
}

/// The code is pinned, reckoned apart from this program: a change of the canonical form would break
/// every seal in the world.
#[test]
fn the_code_of_a_record_never_changes() {
    let entries = [
        Entry {
            at: Some(1_764_057_600_000),
            ..Entry::new(1, Kind::BeginSet)
        },
        Entry::new(2, Kind::ChangeCourts),
    ];
    assert_eq!(seal_code(&entries), "M897VYR7F6");
}
