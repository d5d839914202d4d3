//! Files that come in: the same one, another record of it, one that is cut off, one that is none.

use game::{simulate, Entry, Kind, Timeline};
use record::{KeptMatch, Log, OnDesk};
use rules::{Preset, Team};
use serde_json::json;

use crate::driver::Engine;
use crate::kept::begun;
use crate::referee::{Referee, Side};
use crate::sealed::sealed;
use crate::stage::Stage;
use crate::{Ran, Test, ALL};

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "an_exported_match_opens_on_another_phone",
        engines: &[Engine::Chromium],
        run: an_exported_match_opens_on_another_phone,
    },
    Test {
        name: "a_file_that_is_none_is_said_and_nothing_is_lost",
        engines: ALL,
        run: a_file_that_is_none_is_said_and_nothing_is_lost,
    },
    Test {
        name: "an_entry_that_cannot_be_read_does_not_hide_the_others",
        engines: &[Engine::Chromium],
        run: an_entry_that_cannot_be_read_does_not_hide_the_others,
    },
    Test {
        name: "a_changed_record_stays_marked_and_leaves_as_it_came",
        engines: &[Engine::Chromium],
        run: a_changed_record_stays_marked_and_leaves_as_it_came,
    },
    Test {
        name: "a_changed_record_that_is_still_played_says_so_on_the_court",
        engines: &[Engine::Chromium],
        run: a_changed_record_that_is_still_played_says_so_on_the_court,
    },
    Test {
        name: "a_packed_file_is_taken_in",
        engines: &[Engine::Chromium],
        run: a_packed_file_is_taken_in,
    },
    Test {
        name: "a_backup_that_is_cut_off_brings_what_stands_before_the_cut",
        engines: &[Engine::Chromium],
        run: a_backup_that_is_cut_off_brings_what_stands_before_the_cut,
    },
];

fn an_exported_match_opens_on_another_phone(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let downloads = referee.catch_downloads();
    referee.go_on_with("handed-over", begun());
    referee.browser().find("#half-left");
    referee.points(&[Side::Left, Side::Right, Side::Left], 50);
    let there = referee.timeline();
    referee.tap("Menu");
    referee.tap("Export the match as a file");
    let (_, text) = referee.caught(&downloads);

    // The same phone has it already.
    referee.stage.open();
    referee.open_file("again.json", text.as_bytes());
    referee.reads("again.json is already here. Nothing was changed.");
    let sheets = |referee: &mut Referee| {
        referee
            .browser()
            .value("document.querySelectorAll('.sheet-line').length")
    };
    // A longer record of the same match takes the place of the one that is here: it holds it.
    let mut longer = record::read(&text).log;
    longer.entries.push(Entry::new(
        longer.entries.len() as u32 + 1,
        Kind::Rally {
            won_by: Team::B,
            cause: None,
            by: None,
        },
    ));
    referee.open_file("longer.json", record::write(&longer).as_bytes());
    referee.reads("longer.json continues the record that was here.");
    assert_eq!(sheets(&mut referee), json!(1));
    // One that parts from it is put beside it, once.
    longer.entries.pop();
    if let Some(Kind::Rally { won_by, .. }) = longer.entries.last_mut().map(|e| &mut e.kind) {
        *won_by = won_by.other();
    }
    for says in [
        "is another record of a match that is already here.",
        "is already here",
    ] {
        referee.open_file("parted.json", record::write(&longer).as_bytes());
        referee.reads(&format!("parted.json {says}"));
        assert_eq!(sheets(&mut referee), json!(2));
    }

    let mut other = Stage::new(Engine::Chromium);
    let mut referee = Referee::at(&mut other);
    referee.open_file("handed over.json", text.as_bytes());
    referee.reads("handed over.json is on this phone now.");
    referee.tap_at("#continue");
    referee.browser().find("#half-left");
    let here = referee.court_is_right(false);
    assert_eq!(here.entries(), there.entries());
    assert_eq!(referee.kept().id, "handed-over");
    referee.point(Side::Right);
    assert_eq!(referee.court_is_right(false).state().score().b, 2);
    Ok(())
}

fn a_file_that_is_none_is_said_and_nothing_is_lost(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    referee.go_on_with("stays", begun());
    referee.saved();
    let before = referee.kept().entries();
    referee.stage.open();
    let files: [(&str, &[u8], &str); 4] = [
        ("empty.json", b"", "There is nothing in this file"),
        (
            "words.json",
            b"Otters 25, Herons 20",
            "This is not a match record",
        ),
        ("other.json", b"{\"a\":1}", "The file is not a match record"),
        (
            "picture.json",
            b"\x89PNG\r\n\x1a\n\xff\xfe",
            "This is a picture, not a record. Ask for the file of the record",
        ),
    ];
    for (name, content, says) in files {
        referee.open_file(name, content);
        referee.reads(name);
        referee.reads(says);
        assert_eq!(
            referee
                .browser()
                .value("document.querySelectorAll('.sheet-line').length"),
            json!(1),
            "{name} was not imported"
        );
    }
    referee.tap_at("#continue");
    referee.browser().find("#half-left");
    referee.court_is_right(false);
    assert_eq!(referee.kept().entries(), before);
    Ok(())
}

fn an_entry_that_cannot_be_read_does_not_hide_the_others(stage: &mut Stage) -> Ran {
    let mut entries = begun();
    let rally = |n: usize, won_by| {
        Entry::new(
            n as u32,
            Kind::Rally {
                won_by,
                cause: None,
                by: None,
            },
        )
    };
    let first = entries.len() + 1;
    entries.extend([
        rally(first, Team::A),
        rally(first + 1, Team::B),
        rally(first + 2, Team::A),
    ]);
    let text = record::write(&Log {
        id: "one-is-bad".into(),
        entries,
    });
    let bad = text.replacen("\"won_by\":\"B\"", "\"won_by\":\"Q\"", 1);
    assert_ne!(bad, text);
    let mut referee = Referee::at(stage);
    referee.open_file("bad.json", bad.as_bytes());
    referee.reads(&format!("bad.json, entry {}:", first + 1));
    referee.reads("bad.json is on this phone now.");
    referee.tap_at("#continue");
    referee.browser().find("#half-left");
    let timeline = referee.court_is_right(false);
    let score = timeline.state().score();
    assert_eq!((score.a, score.b), (2, 0));
    let expected = Timeline::of(record::read(&bad).log.entries);
    assert_eq!(expected.state().score(), score);
    assert_eq!(timeline.state().rules().preset, Preset::International);
    Ok(())
}

fn a_changed_record_stays_marked_and_leaves_as_it_came(stage: &mut Stage) -> Ran {
    let log = sealed(Preset::SchoolJunior, 3, "was-changed");
    let text = record::write(&log);
    let changed = text.replacen("rehearsal", "practice", 1);
    assert_ne!(changed, text);
    let mut referee = Referee::at(stage);
    let downloads = referee.catch_downloads();
    referee.open_file("changed.json", changed.as_bytes());
    referee.reads("changed.json is on this phone now.");
    referee.reads("This record was changed after it was written. The sheet shows where.");
    referee.stage.open();
    referee.reads("This record was changed after it was written. The sheet shows where.");
    referee.browser().picture("changed-list");
    referee.tap_at(".sheet-open");
    referee.reads("This record was changed after it was written");
    referee.reads("does not fit its link");
    referee.reads("The seal does not fit");
    referee.browser().picture("changed-sheet");
    referee.tap_at("#export-sheet");
    referee.tap("Share the file");
    let (_, left) = referee.caught(&downloads);
    assert_eq!(left, changed);
    Ok(())
}

/// Nobody plays on in a record that was changed without knowing it.
fn a_changed_record_that_is_still_played_says_so_on_the_court(stage: &mut Stage) -> Ran {
    let log = Log {
        id: "played-on".to_owned(),
        entries: begun(),
    };
    let text = record::write(&log);
    let changed = text.replacen("Otters", "Ottern", 1);
    assert_ne!(changed, text);
    let mut referee = Referee::at(stage);
    referee.open_file("changed.json", changed.as_bytes());
    referee.reads("changed.json is on this phone now.");
    let court = format!("{}#/play/{}", referee.stage.url(), log.id);
    referee.browser().goto(&court);
    referee.browser().find("#half-left");
    referee.reads("This record was changed after it was written. The sheet shows where.");
    referee.browser().picture("changed-court");
    referee.tap("Understood");
    referee.points(&[Side::Left], 50);
    referee.saved();
    Ok(())
}

fn a_packed_file_is_taken_in(stage: &mut Stage) -> Ran {
    let log = sealed(Preset::SchoolJunior, 4, "was-packed");
    let packed = record::pack(&log).expect("it packs");
    let mut referee = Referee::at(stage);
    referee.open_file("match.bin", &packed[..packed.len() - 9]);
    referee.reads("The packed record is damaged.");
    referee.open_file("match.bin", &packed);
    referee.reads("match.bin is on this phone now.");
    referee.tap_at(".sheet-open");
    referee.reads("Write this code on paper");
    assert_eq!(referee.kept().entries(), log.entries);
    Ok(())
}

fn a_backup_that_is_cut_off_brings_what_stands_before_the_cut(stage: &mut Stage) -> Ran {
    let all: Vec<KeptMatch> = (1..=3)
        .map(|seed| KeptMatch {
            log: Log {
                id: format!("m{seed}"),
                entries: simulate(Preset::SchoolJunior, seed),
            },
            archived: seed == 1,
            ..KeptMatch::default()
        })
        .collect();
    let desk = OnDesk {
        papers: vec!["{\"preset\":\"school_junior\"}\nname.a Otters".to_owned()],
        ..OnDesk::default()
    };
    let text = record::write_backup(&all, &desk, None);
    let third = text.find("\"id\":\"m3\"").expect("the third match");
    let mut referee = Referee::at(stage);
    referee.open_file("all.json", &text.as_bytes()[..third + 3_000]);
    referee.reads("the backup is damaged or cut off. What is whole was read, the rest is missing");
    referee.reads("3 matches new");
    referee.reads("paper sheets and pools of the desk: 1 new, 0 already here.");
    referee.reads("archived, just imported");
    Ok(())
}
