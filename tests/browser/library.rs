//! The matches on a phone: found, put away, deleted, backed up and brought back.

use app::learner::Learner;
use game::entry::Detail;
use game::{simulate, Entry, Kind};
use record::{
    Day, KeptMatch, Log, Logbook, Observation, Observed, Officiated, OnDesk, Opened, Strokes,
};
use rules::{Preset, Team};
use serde_json::json;

use crate::driver::Engine;
use crate::kept::begun;
use crate::referee::{Referee, Side};
use crate::stage::Stage;
use crate::{Ran, Test, ALL};

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "matches_are_found_put_away_and_deleted",
        engines: &[Engine::Chromium],
        run: found_and_deleted,
    },
    Test {
        name: "a_match_that_was_just_left_is_deleted_and_imported_at_once",
        engines: ALL,
        run: just_left,
    },
    Test {
        name: "a_backup_goes_to_another_phone_and_loses_nothing",
        engines: &[Engine::Chromium],
        run: backed_up,
    },
    Test {
        name: "a_backup_comes_in_whole_though_its_screen_is_left",
        engines: &[Engine::Chromium],
        run: left_meanwhile,
    },
    Test {
        name: "a_damaged_backup_says_so_and_brings_what_it_can",
        engines: &[Engine::Chromium],
        run: damaged,
    },
];

fn log(id: &str, seed: u64, hall: &str) -> Log {
    let mut entries = simulate(Preset::SchoolJunior, seed);
    for entry in &mut entries {
        match &mut entry.kind {
            Kind::Match(heading) => heading.details[Detail::Venue] = Some(hall.to_owned()),
            Kind::Heading(given) => given.details[Detail::Venue] = None,
            _ => {}
        }
    }
    Log {
        id: id.to_owned(),
        entries,
    }
}

fn kept(id: &str, seed: u64, hall: &str) -> KeptMatch {
    KeptMatch {
        log: log(id, seed, hall),
        ..KeptMatch::default()
    }
}

fn some() -> Vec<KeptMatch> {
    let mut all = vec![
        kept("m1", 1, "River hall"),
        kept("m2", 2, "River hall"),
        kept("m3", 3, "Hill school"),
        kept("m4", 4, "Lake gym"),
    ];
    all[3].archived = true;
    let drawing = Strokes::read("10,20 300,100").expect("a drawing");
    all[0].drawn.insert(9, drawing);
    all
}

fn lines(referee: &mut Referee) -> u64 {
    let count = "document.querySelectorAll('.sheet-line').length";
    referee.browser().value(count).as_u64().unwrap_or_default()
}

fn lines_are(referee: &mut Referee, count: u64) {
    referee.browser().wait_until(
        &format!("{count} matches are shown"),
        &format!("document.querySelectorAll('.sheet-line').length === {count}"),
    );
}

fn found_and_deleted(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let file = record::write_backup(&some(), &OnDesk::default(), None);
    referee.open_file("all.json", file.as_bytes());
    referee.reads("all.json: 4 matches new");
    // What just came is shown, put away or not.
    lines_are(&mut referee, 4);
    referee.reads("archived, just imported");
    referee.stage.reload();
    lines_are(&mut referee, 3);
    referee.tap("Show archived matches");
    lines_are(&mut referee, 4);
    let file = referee.browser().full_picture("library-whole");
    assert!(file.is_file());
    assert_eq!(
        referee.browser().hindrances().unwrap_or_default(),
        Vec::<String>::new()
    );
    // What concerns the whole phone stands on a page of its own.
    referee.tap_at("#to-phone");
    referee.tap("From the browser to the installed app");
    referee.browser().full_picture("library-phone");
    assert_eq!(
        referee.browser().hindrances().unwrap_or_default(),
        Vec::<String>::new()
    );
    referee.tap("Back");
    referee.tap("Show archived matches");
    lines_are(&mut referee, 4);
    let find = referee.browser().find("#find");
    referee.browser().write(&find, "RIVER");
    lines_are(&mut referee, 2);
    // By the day, as people write it.
    let day = simulate(Preset::SchoolJunior, 1)[0].at.expect("a time");
    let written = referee.browser().run(
        "const day = new Date(arguments[0]);
         return [`${day.getDate()}.${day.getMonth() + 1}.`,
           day.toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric' })];",
        json!([day]),
    );
    for words in written.as_array().into_iter().flatten() {
        let words = words.as_str().unwrap_or_default().to_owned();
        referee.browser().write(&find, &words);
        lines_are(&mut referee, 4);
    }
    referee.browser().write(&find, "30 February");
    referee.reads("No match fits these words.");
    referee.browser().write(&find, "no such hall");
    referee.reads("No match fits these words.");
    referee.browser().write(&find, "hill");
    lines_are(&mut referee, 1);

    // What else can be done with it is behind one button.
    let by = |what: &str| format!(".sheet-line button[aria-label^='{what}']");
    let more = by("More: ");
    referee.tap("Show archived matches");
    referee.tap_at(&more);
    referee.browser().find(&by("Review"));
    // Put away and brought back.
    referee.tap_at(&by("Archive"));
    lines_are(&mut referee, 0);
    referee.tap("Show archived matches");
    referee.tap_at(&more);
    referee.tap_at(&by("Restore"));
    referee.tap_at(&more);
    referee.browser().find(&by("Archive"));

    // Deleted after a question that says what goes.
    referee.tap_at(&by("Delete"));
    referee.reads("entries, its drawn signatures and anything half typed");
    referee.tap_in("[role=dialog]", "Cancel");
    assert_eq!(lines(&mut referee), 1);
    referee.tap_at(&by("Delete"));
    referee.tap_in("[role=dialog]", "Delete");
    lines_are(&mut referee, 0);
    referee.stage.reload();
    referee.tap("Show archived matches");
    lines_are(&mut referee, 3);

    // Everything, drawings and settings too.
    referee.tap_at("#to-phone");
    referee.tap("Dark");
    referee.tap("Delete everything");
    referee.reads("3 matches, drawn signatures, paper sheets and pools on the desk, anything half typed and all settings. Your logbook and notes of observers go too.");
    referee.tap_in("[role=dialog]", "Delete everything");
    referee.browser().wait_until(
        "nothing is left to back up",
        "[...document.querySelectorAll('button')].find((e) => e.innerText === 'Back up everything').disabled",
    );
    referee.tap("Back");
    referee.reads("None yet.");
    let left = "Object.keys(localStorage).filter((k) => k.startsWith('dutystand/')).length";
    assert_eq!(referee.browser().value(left), json!(0));
    assert_eq!(referee.browser().complaints(), Vec::<String>::new());
    Ok(())
}

/// The way back leaves the match open; whoever goes on with it in the list has left it.
fn just_left(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    referee.go_on_with("left", begun());
    referee.point(Side::Left);
    referee.saved();
    let entries = referee.timeline().entries().to_vec();
    referee.tap("Back");

    // A longer record of it comes from another phone.
    let mut longer = Log {
        id: "left".to_owned(),
        entries,
    };
    let n = longer.entries.len() as u32 + 1;
    longer.entries.push(Entry::new(
        n,
        Kind::Rally {
            won_by: Team::A,
            cause: None,
            by: None,
        },
    ));
    referee.open_file("longer.json", record::write(&longer).as_bytes());
    referee.reads("longer.json");
    assert!(!referee.sees("open in another tab"), "no other tab has it");
    referee.tap_at("#continue");
    referee.browser().find("#half-left");
    assert_eq!(referee.timeline().entries().len(), longer.entries.len());
    referee.tap("Back");

    referee.tap_at(".sheet-line button[aria-label^='More: ']");
    referee.tap_at(".sheet-line button[aria-label^='Delete']");
    referee.tap_in("[role=dialog]", "Delete");
    lines_are(&mut referee, 0);
    assert!(!referee.sees("open in another tab"), "no other tab has it");
    Ok(())
}

fn backed_up(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let downloads = referee.catch_downloads();
    let all = some();
    let mut practised = Learner::default();
    let right = learn::Marked {
        timing: learn::Timing::InTime,
        side: true,
        nature: true,
        reaction: Some(0.6),
    };
    practised.took(learn::Kind::DoubleFault, &right, 1_764_057_600_000);
    let mut logbook = Logbook::default();
    logbook.put(Officiated {
        id: "m1".into(),
        day: Day::read("2026-11-28").expect("a day"),
        duty: rules::Duty::Scorer,
        level: String::new(),
        teams: "Otters, Herons".into(),
        minutes: Some(62),
        talk: String::new(),
        next: "Look at the line judge first".into(),
    });
    let mut notes = Observed::begin("n1", 1_764_057_600_000);
    let won_by = rules::Team::A;
    notes.add(Observation::Rally { won_by }, 1_764_057_620_000);
    let desk = OnDesk {
        papers: vec!["{\"preset\":\"school_junior\"}\nname.a Otters".to_owned()],
        pools: vec!["{\"log\":\"volleyball-pool\",\"version\":1}".to_owned()],
        learner: Some(practised.write()),
        logbook: Some(logbook.write()),
        observed: vec![notes.write()],
    };
    referee.open_file(
        "all.json",
        record::write_backup(&all, &desk, None).as_bytes(),
    );
    referee.reads("4 matches new");
    referee.reads("paper sheets and pools of the desk: 2 new, 0 already here.");
    referee.reads("all.json: what you practised is on this phone now.");
    referee.reads("all.json: 1 match and 0 goals are new in your logbook.");
    referee.reads("all.json: the notes of an observer are on this phone.");
    referee.tap_at("#to-phone");
    referee.reads_at("#room", "on this phone");
    referee.reads_at("#promise", "browser");
    referee.tap("Back up everything");
    let (name, text) = referee.caught(&downloads);
    assert!(name.starts_with("dutystand-backup-2"), "{name}");
    referee.reads(&text::hand_over::downloaded(&name));
    let Opened::Backup(backup) = record::open(&text) else {
        panic!("a backup was written");
    };
    assert_eq!(backup.problems, []);
    assert_eq!(backup.desk, desk);
    let mut back: Vec<KeptMatch> = backup
        .matches
        .into_iter()
        .map(|m| KeptMatch {
            log: m.reading.log,
            archived: m.archived,
            drawn: m.drawn,
            ..KeptMatch::default()
        })
        .collect();
    back.sort_by(|a, b| a.log.id.cmp(&b.log.id));
    assert_eq!(back, all);
    // Again on the same phone: nothing changes.
    referee.tap("Back");
    referee.open_file("again.json", text.as_bytes());
    referee.reads(
        "again.json: 0 matches new, 0 longer than here, 0 kept beside another record, 4 already \
        here. Nothing was lost.",
    );
    referee.reads("paper sheets and pools of the desk: 0 new, 2 already here.");

    // Another phone has the beginning of one match and another course of a second one.
    let mut other = Stage::new(Engine::Chromium);
    let mut referee = Referee::at(&mut other);
    let mut short = all[0].log.clone();
    short.entries.truncate(20);
    let mut parted = all[1].log.clone();
    parted.entries.truncate(20);
    let text_of = "written on the other phone".to_owned();
    parted.entries.push(Entry::new(
        21,
        Kind::Remark {
            text: text_of,
            team: None,
        },
    ));
    for (name, log) in [("short.json", &short), ("parted.json", &parted)] {
        referee.open_file(name, record::write(log).as_bytes());
        referee.reads(&format!("{name} is on this phone now."));
    }
    referee.open_file("all.json", text.as_bytes());
    referee.reads(
        "all.json: 2 matches new, 1 longer than here, 1 kept beside another record, 0 already here.",
    );
    let downloads = referee.catch_downloads();
    referee.tap_at("#to-phone");
    referee.tap("Back up everything");
    let (_, text) = referee.caught(&downloads);
    let Opened::Backup(backup) = record::open(&text) else {
        panic!("a backup was written");
    };
    let has = |log: &Log, id: &str| {
        let mut logs = backup.matches.iter().map(|m| &m.reading.log);
        logs.any(|l| l.id == id && l.entries == log.entries)
    };
    assert!(has(&all[0].log, "m1") && has(&parted, "m2"));
    assert!(has(&all[1].log, "m2_2") && has(&all[2].log, "m3") && has(&all[3].log, "m4"));
    let first = backup.matches.iter().find(|m| m.reading.log.id == "m1");
    assert_eq!(first.map(|m| m.drawn.len()), Some(1));
    Ok(())
}

/// Whoever leaves the screen while matches are taken in finds all of them, and the page goes on.
fn left_meanwhile(stage: &mut Stage) -> Ran {
    const MATCHES: u64 = 24;
    let mut referee = Referee::at(stage);
    let all: Vec<KeptMatch> = (1..=MATCHES)
        .map(|seed| kept(&format!("m{seed}"), seed, "River hall"))
        .collect();
    let file = record::write_backup(&all, &OnDesk::default(), None);
    referee.browser().slow_down(4.0);
    referee.open_file("all.json", file.as_bytes());
    referee.reads("Importing match 1 of 24");
    referee.tap_at("#to-phone");
    referee.reads("Backup and storage");
    // What goes on is said wherever the matches are, and what came of it as well.
    referee.tap("Back");
    referee.reads("of 24");
    referee.tap("Desk");
    referee.reads("of 24");
    referee.tap("Back");
    referee.reads("all.json: 24 matches new");
    referee.browser().wait_until(
        "all matches are here",
        "[...document.querySelectorAll('button')].some((e) => e.innerText === 'Show all 24')",
    );
    assert_eq!(found_new(&mut referee), 8);
    // It is said once.
    referee.tap_at("#to-phone");
    referee.tap("Back");
    referee.reads("Show all 24");
    assert_eq!(found_new(&mut referee), 0);
    assert_eq!(referee.browser().complaints(), Vec::<String>::new());
    Ok(())
}

/// How many matches are marked as just imported.
fn found_new(referee: &mut Referee) -> usize {
    let lines = "document.querySelector('.sheets').innerText";
    let text = referee.browser().value(lines);
    text.as_str()
        .map_or(0, |text| text.matches("just imported").count())
}

fn damaged(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let text = record::write_backup(&some(), &OnDesk::default(), None);
    referee.open_file("cut.json", &text.as_bytes()[..60]);
    referee.reads("cut.json: The backup is damaged or cut off before its first match");
    let newer = text.replacen("\"version\":1", "\"version\":9", 1);
    referee.open_file("newer.json", newer.as_bytes());
    referee.reads("newer version (9) of this program");
    assert_eq!(lines(&mut referee), 0);
    let bad = text.replacen(
        "\"version\":2,\"id\":\"m2\"",
        "\"version\":9,\"id\":\"m2\"",
        1,
    );
    assert_ne!(bad, text);
    referee.open_file("bad.json", bad.as_bytes());
    referee.reads("bad.json: match 2:");
    referee.reads("bad.json: 3 matches new");
    lines_are(&mut referee, 3);
    Ok(())
}
