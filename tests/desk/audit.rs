//! Audits: told records, each with the one thing to look at, and laws.

use game::entry::{Change, Check, Detail, Player, Protested, Staff, TeamList, Toss};
use game::{Entry, Kind, Level, Signer, Timeline, Who};
use proptest::prelude::*;
use record::{Log, Reading};
use reports::audit::{self, Field, Finding, Remedy, What};
use reports::{Sheet, WallClock};
use rules::{Cause, Preset, Rules, Score, Shirt, Team};

use super::support::{self, line_up, random, run};

/// A list with a captain and a coach.
fn list(team: Team) -> Kind {
    let player = |n| Player {
        number: Shirt(n),
        name: None,
        captain: n == 1,
        libero: n == 12,
    };
    Kind::TeamList(TeamList {
        team,
        players: (1..=12).map(player).collect(),
        staff: vec![Staff {
            role: "coach".into(),
            name: None,
        }],
    })
}

fn sign(role: &str) -> Kind {
    Kind::Sign {
        role: role.into(),
        name: None,
    }
}

fn heading(rules: Rules) -> Kind {
    let mut kind = support::heading(rules);
    if let Kind::Match(heading) = &mut kind {
        heading.details[Detail::Competition] = Some("Spring cup".into());
        heading.details[Detail::Venue] = Some("North hall".into());
        heading.details[Detail::Scheduled] = Some("2026-05-09T14:00".into());
    }
    kind
}

fn set() -> Vec<Kind> {
    let mut kinds = support::set_begins(&Preset::International.rules());
    // 45 points, half a minute each.
    kinds.extend(run(&("AB".repeat(20) + "AAAAA")));
    kinds
}

/// A match with nothing to look at: three sets, everybody has signed.
fn clean() -> Vec<Kind> {
    let mut kinds = vec![
        heading(Preset::International.rules()),
        list(Team::A),
        list(Team::B),
        Kind::Toss(Toss::new(Team::A, Team::A)),
    ];
    kinds.extend(["captain A", "coach A", "captain B", "coach B"].map(sign));
    for _ in 0..3 {
        kinds.extend(set());
    }
    kinds.extend(["scorer", "captain A", "captain B"].map(sign));
    kinds.extend(["second referee", "first referee"].map(sign));
    kinds
}

/// Half a minute apart.
fn timed(kinds: Vec<Kind>) -> Vec<Entry> {
    let mut entries = support::numbered(kinds);
    for entry in &mut entries {
        entry.at = Some(1_778_335_200_000 + i64::from(entry.n) * 30_000);
    }
    entries
}

/// The remarks of a sheet in words.
fn remarks(sheet: &Sheet) -> Vec<String> {
    let lines = sheet.remarks.iter();
    lines
        .map(|line| text::remark(&line.remark, sheet.into()))
        .collect()
}

fn audited(entries: Vec<Entry>) -> Vec<Finding> {
    let log = Log {
        id: "told".into(),
        entries,
    };
    let reading = record::read(&record::write(&log));
    let timeline = Timeline::of(reading.log.entries.clone());
    let findings = audit::audit(&reading, &timeline);
    for finding in &findings {
        // Every finding has a line and no empty sentence.
        assert!(!text::audit::finding(finding, timeline.state().into())
            .trim()
            .is_empty());
    }
    findings
}

fn codes(kinds: Vec<Kind>) -> Vec<(Option<u32>, &'static str)> {
    let findings = audited(timed(kinds));
    findings.iter().map(|f| (f.entry, f.what.code())).collect()
}

/// The place of the first entry of that sort in the clean match.
fn at(kinds: &[Kind], test: fn(&Kind) -> bool) -> usize {
    kinds.iter().position(test).expect("there is one")
}

const BEGIN: fn(&Kind) -> bool = |k| matches!(k, Kind::BeginSet);

#[test]
fn a_clean_match_has_nothing_to_look_at() {
    assert_eq!(codes(clean()), []);
}

#[test]
fn what_is_left_out_is_missing() {
    let without = |test: fn(&Kind) -> bool| {
        let mut kinds = clean();
        kinds.remove(at(&kinds, test));
        codes(kinds)
    };
    let is_sign = |k: &Kind| matches!(k, Kind::Sign { role, .. } if role == "coach B");
    assert_eq!(without(is_sign), [(None, "not_signed")]);
    let scorer = |k: &Kind| matches!(k, Kind::Sign { role, .. } if role == "scorer");
    assert_eq!(without(scorer), [(None, "not_signed")]);
    let mut kinds = clean();
    kinds[0] = support::heading(Preset::International.rules());
    assert_eq!(codes(kinds), [(None, "missing_field"); 3]);
    let mut kinds = clean();
    kinds[2] = support::list(Team::B, 12, &[12]);
    if let Kind::TeamList(list) = &mut kinds[2] {
        list.players[0].captain = false;
    }
    assert_eq!(
        codes(kinds),
        [(None, "no_captain"), (None, "missing_field")]
    );
    let mut kinds = clean();
    kinds.truncate(60);
    assert_eq!(codes(kinds), [(None, "unfinished")]);
}

#[test]
fn what_was_refused_insisted_on_and_taken_back_is_listed() {
    let mut kinds = clean();
    let begin = at(&kinds, BEGIN);
    let time_out = Kind::TimeOut { team: Team::A };
    kinds.splice(begin + 3..begin + 3, vec![time_out; 3]);
    let third = u32::try_from(begin + 6).expect("small");
    assert_eq!(codes(kinds.clone()), [(Some(third), "refused")]);
    let mut entries = timed(kinds);
    entries[begin + 5].insist = Some("both coaches agreed".into());
    let findings = audited(entries);
    let codes: Vec<_> = findings
        .iter()
        .map(|f| (f.entry, f.what.code(), f.what.rule()))
        .collect();
    assert_eq!(
        codes,
        [
            (Some(third), "insist", Some("15.1")),
            (Some(third), "too_many_time_outs", Some("15.1"))
        ]
    );
}

/// Sealing anyway is possible, and the sheet says what was open: what whoever sealed left undone (5.1.3,
/// 27.2.3.3), not what shows there by itself.
#[test]
fn what_was_open_under_a_seal_stands_on_the_sheet() {
    let sealed = |leave_out: fn(&Kind) -> bool| {
        let mut kinds = clean();
        kinds.retain(|k| !leave_out(k));
        let code = record::seal_code(&timed(kinds.clone()));
        kinds.push(Kind::Seal { code });
        let sheet = Sheet::of(&Timeline::of(timed(kinds)));
        let text = render::sheet_text(&sheet, WallClock(0));
        let page = render::document(&sheet, WallClock(0));
        (sheet.seal.left_open, text, page)
    };
    let (open, text, page) = sealed(|_| false);
    assert!(open.is_empty());
    assert!(!text.contains("Sealed although") && !page.contains("Sealed although"));
    let scorer = |k: &Kind| matches!(k, Kind::Sign { role, .. } if role == "scorer");
    let (open, text, page) = sealed(scorer);
    let scorer_missing = Finding {
        entry: None,
        what: What::Missing(Field::Scorer),
    };
    assert_eq!(open, [scorer_missing]);
    let said = "Sealed although this was open: The scorer has not signed.";
    assert!(text.contains(said) && page.contains(said));
    // Opened again it is under way, and says nothing of a seal that does not hold.
    let mut kinds = clean();
    kinds.retain(|k| !scorer(k));
    let code = record::seal_code(&timed(kinds.clone()));
    kinds.extend([Kind::Seal { code }, Kind::Reopen { why: None }]);
    assert!(Sheet::of(&Timeline::of(timed(kinds)))
        .seal
        .left_open
        .is_empty());
}

/// Every finding names where it is put right, by its kind.
#[test]
fn each_finding_has_its_remedy() {
    let remedies = |kinds: Vec<Kind>| -> Vec<Remedy> {
        let timeline = Timeline::of(timed(kinds));
        audit::of_log(&timeline)
            .iter()
            .map(Finding::remedy)
            .collect()
    };
    assert_eq!(remedies(clean()), []);
    let mut open = clean();
    open.retain(|k| !matches!(k, Kind::Sign { role, .. } if role == "first referee"));
    if let Kind::Match(heading) = &mut open[0] {
        heading.details[Detail::Venue] = None;
    }
    open.insert(
        1,
        Kind::Check(Check {
            item: "net".into(),
            ok: false,
            note: None,
        }),
    );
    let found = remedies(open);
    let clear = Remedy::Clear { item: "net".into() };
    for remedy in [Remedy::Details, Remedy::Sign(Signer::FirstReferee), clear] {
        assert!(found.contains(&remedy), "{remedy:?} in {found:?}");
    }
    // A set that began although a check had failed can only be explained.
    assert!(found.contains(&Remedy::Remark));
    let mut unfinished = clean();
    unfinished.truncate(unfinished.len() - 10);
    assert!(remedies(unfinished).contains(&Remedy::Play));
}

/// A protest that was announced and never written is looked at, where it can still be written (5.1.3); one
/// that nobody announced is refused, and told where somebody insists (5.1.2.1).
#[test]
fn a_protest_is_announced_and_written() {
    let end = |kinds: &[Kind]| {
        let signed = |k: &Kind| matches!(k, Kind::Sign { role, .. } if role == "scorer");
        at(kinds, signed)
    };
    let mut kinds = clean();
    let begin = at(&kinds, BEGIN);
    let announced = Kind::Protest {
        team: Team::B,
        number: None,
        text: "touched block".into(),
    };
    kinds.insert(begin + 4, announced);
    let entry = u32::try_from(begin + 5).expect("small");
    assert_eq!(codes(kinds.clone()), [(Some(entry), "protest_not_written")]);
    let timeline = Timeline::of(timed(kinds.clone()));
    let found = audit::of_log(&timeline);
    let team = Team::B;
    assert_eq!(found[0].remedy(), Remedy::Protest { entry, team });
    assert_eq!(found[0].what.rule(), Some("5.1.3"));
    let sheet = Sheet::of(&timeline);
    let told = "Protest announced, Herons by number 1: touched block. Nothing was written after the match.";
    assert_eq!(remarks(&sheet)[0], told);
    assert_eq!(
        (sheet.remarks[0].set, sheet.remarks[0].score),
        (1, Score { a: 2, b: 1 })
    );
    let written = |about| Kind::ProtestStatement {
        about,
        text: "It had touched the block.".into(),
    };
    let place = end(&kinds);
    let mut whole = kinds.clone();
    whole.insert(place, written(Protested::Entry(entry)));
    assert_eq!(codes(whole.clone()), []);
    let timeline = Timeline::of(timed(whole));
    let sheet = Sheet::of(&timeline);
    let told = remarks(&sheet);
    assert_eq!(
        told,
        [
            "Protest announced, Herons by number 1: touched block.",
            "Protest as written after the match, Herons: It had touched the block."
        ]
    );
    // It was written when the match was over.
    let last = timeline.state().sets().last().expect("a set");
    let line = &sheet.remarks[1];
    assert_eq!((line.set, line.score), (last.number, last.score));
    let page = render::document(&sheet, WallClock(0));
    assert!(told.iter().all(|line| page.contains(line)));
    // Nobody had announced it.
    let mut kinds = clean();
    let place = end(&kinds);
    kinds.insert(place, written(Protested::Unannounced(Team::A)));
    let n = u32::try_from(place + 1).expect("small");
    assert_eq!(codes(kinds.clone()), [(Some(n), "refused")]);
    let mut entries = timed(kinds);
    entries[place].insist = Some("the first referee allowed it".into());
    let findings = audited(entries.clone());
    assert_eq!(findings[0].what.code(), "insist");
    assert_eq!(findings[0].what.rule(), Some("5.1.2.1"));
    let sheet = Sheet::of(&Timeline::of(entries));
    assert!(remarks(&sheet)[0].contains("Otters: It had touched the block."));
}

#[test]
fn a_sanction_taken_back_is_a_finding_and_a_slip_is_none() {
    let with = |first: Kind| {
        let mut kinds = clean();
        let begin = at(&kinds, BEGIN);
        let n = u32::try_from(begin + 3).expect("small");
        kinds.insert(begin + 2, first);
        kinds.insert(
            begin + 3,
            Kind::Strike {
                entry: n,
                why: None,
            },
        );
        codes(kinds)
    };
    let warning = Kind::Misconduct {
        team: Team::A,
        who: Who::Player(Shirt(3)),
        sanction: Level::Warning,
    };
    assert_eq!(
        with(warning).iter().map(|c| c.1).collect::<Vec<_>>(),
        ["taken_back"]
    );
    assert_eq!(with(Kind::TimeOut { team: Team::A }), []);
}

/// The score was changed when both captains had signed under it.
#[test]
fn a_change_after_the_signatures_is_found() {
    let mut kinds = clean();
    let last_rally = kinds
        .iter()
        .rposition(|k| matches!(k, Kind::Rally { .. }))
        .expect("one");
    let entry = u32::try_from(last_rally + 1).expect("small");
    let strike = u32::try_from(kinds.len() + 1).expect("small");
    kinds.push(Kind::Strike {
        entry,
        why: Some("wrong side".into()),
    });
    kinds.push(Kind::Rally {
        won_by: Team::A,
        cause: None,
        by: None,
    });
    let found = codes(kinds);
    assert!(
        found.contains(&(Some(strike), "changed_after_signing")),
        "{found:?}"
    );
    assert!(found.contains(&(Some(entry), "taken_back")), "{found:?}");
}

/// FIVB Rules 2025-2028, 5.1.3: the captains sign the result. A reason that is added leaves it as it was; a point that
/// is given to the other team does not, and then nobody has signed what the sheet says now.
#[test]
fn a_signature_stands_under_the_result_that_was_signed() {
    let mut kinds = clean();
    let place = kinds
        .iter()
        .rposition(|k| matches!(k, Kind::Rally { .. }))
        .expect("one");
    let entry = u32::try_from(place + 1).expect("small");
    let won_by = match kinds[place] {
        Kind::Rally { won_by, .. } => won_by,
        _ => unreachable!("a rally"),
    };
    let signed = |kinds: &[Kind]| {
        let timeline = Timeline::of(timed(kinds.to_vec()));
        let sheet = Sheet::of(&timeline);
        let after = sheet.signatures.iter().filter(|s| !s.before);
        let outdated: Vec<bool> = after.map(|s| s.outdated).collect();
        (outdated, audit::signed_after(&timeline).len())
    };
    assert_eq!(signed(&kinds), (vec![false; 5], 5));
    kinds.push(Kind::Explain {
        entry,
        cause: Cause::BallIn,
        by: None,
        seen_by: None,
    });
    assert_eq!(signed(&kinds), (vec![false; 5], 5));
    kinds.push(Kind::Strike { entry, why: None });
    for _ in 0..2 {
        kinds.push(Kind::Rally {
            won_by: won_by.other(),
            cause: None,
            by: None,
        });
    }
    assert_eq!(signed(&kinds), (vec![true; 5], 0));
    let html = render::document(
        &Sheet::of(&Timeline::of(timed(kinds))),
        WallClock::default(),
    );
    assert!(html.contains("signed another result"));
}

#[test]
fn a_check_that_failed_is_found_until_somebody_clears_it() {
    let check = |ok| {
        Kind::Check(Check {
            item: "net".into(),
            ok,
            note: Some("loose cable".into()),
        })
    };
    let mut kinds = clean();
    kinds.insert(1, check(false));
    let found: Vec<&str> = codes(kinds.clone()).iter().map(|c| c.1).collect();
    assert_eq!(found, ["check_failed", "began_unsafe"]);
    kinds.insert(2, check(true));
    assert_eq!(codes(kinds), []);
}

/// An expelled player has to leave at once (15.8); a rally is never refused, so it is said here, once.
#[test]
fn playing_on_with_an_expelled_player_is_found_once() {
    let mut kinds = clean();
    let begin = at(&kinds, BEGIN);
    kinds.insert(
        begin + 2,
        Kind::Misconduct {
            team: Team::B,
            who: Who::Player(Shirt(4)),
            sanction: Level::Expulsion,
        },
    );
    let rally = u32::try_from(begin + 4).expect("small");
    assert_eq!(codes(kinds.clone()), [(Some(rally), "must_substitute")]);
    kinds.insert(
        begin + 3,
        Kind::Substitution {
            team: Team::B,
            changes: vec![Change {
                out: Shirt(4),
                into: Shirt(9),
            }],
            reason: None,
        },
    );
    assert_eq!(codes(kinds), []);
}

/// Number 6 played in all three sets and is not on a list that was insisted on afterwards (4.1.3).
#[test]
fn who_played_and_is_not_on_the_last_list_is_found() {
    let mut kinds = clean();
    let begin = at(&kinds, BEGIN);
    let mut other = list(Team::A);
    if let Kind::TeamList(list) = &mut other {
        list.players.retain(|p| p.number != Shirt(6));
    }
    kinds.insert(begin + 10, other);
    let mut entries = timed(kinds);
    entries[begin + 10].insist = Some("the list was wrong".into());
    let found: Vec<&str> = audited(entries).iter().map(|f| f.what.code()).collect();
    assert!(
        found.contains(&"not_listed") && found.contains(&"insist"),
        "{found:?}"
    );
}

#[test]
fn the_clock_is_looked_at() {
    let mut entries = timed(clean());
    let mut jump = entries.clone();
    for entry in &mut jump[30..] {
        entry.at = entry.at.map(|at| at - 600_000);
    }
    let codes = |entries: Vec<Entry>| -> Vec<(Option<u32>, &str)> {
        audited(entries)
            .iter()
            .map(|f| (f.entry, f.what.code()))
            .collect()
    };
    assert_eq!(codes(jump), [(Some(31), "time_backwards")]);
    let mut hurried = entries.clone();
    for entry in &mut hurried {
        entry.at = entry.at.map(|at| at / 30_000 * 1000);
    }
    assert_eq!(codes(hurried), [(None, "implausible_time"); 3]);
    entries[7].at = None;
    assert_eq!(codes(entries), [(None, "no_times")]);
}

#[test]
fn the_change_of_courts_of_the_deciding_set_is_due() {
    let mut kinds = clean();
    let end = kinds.len() - 5;
    let signatures = kinds.split_off(end);
    // Two sets to B, and the deciding one without its change of courts.
    let first = at(&kinds, BEGIN);
    for set in [1, 2] {
        let begins: Vec<usize> = (0..kinds.len()).filter(|&i| BEGIN(&kinds[i])).collect();
        for kind in &mut kinds[begins[set] + 1..] {
            match kind {
                Kind::Rally { won_by, .. } => *won_by = won_by.other(),
                _ => break,
            }
        }
    }
    kinds.extend(set());
    let toss = Kind::Toss(Toss::new(Team::B, Team::A));
    kinds.push(toss);
    kinds.push(line_up(Team::A, &[1, 2, 3, 4, 5, 6]));
    kinds.push(line_up(Team::B, &[1, 2, 3, 4, 5, 6]));
    kinds.push(Kind::BeginSet);
    kinds.extend(run(&("AB".repeat(13) + "AA")));
    kinds.extend(signatures);
    assert!(first > 0);
    assert_eq!(codes(kinds), [(None, "change_courts")]);
}

#[test]
fn what_cannot_be_read_is_a_finding() {
    let text = record::write(&Log {
        id: "told".into(),
        entries: timed(clean()),
    });
    let text = text.replacen("\"kind\":\"toss\"", "\"kind\":\"tose\"", 1);
    let reading = record::read(&text);
    let timeline = Timeline::of(reading.log.entries.clone());
    let findings = audit::audit(&reading, &timeline);
    assert!(findings
        .iter()
        .any(|f| f.entry == Some(4) && f.what.code() == "unreadable"));
}

proptest! {
    #![proptest_config(super::config(100))]

    /// Every refusal and every decision against advice is listed, each with its entry.
    #[test]
    fn nothing_the_fold_has_objected_to_is_left_out(rules in random::rules(), drawn in random::entries(60)) {
        let entries = random::log(rules, drawn);
        let reading = Reading {
            entries: entries.len(),
            log: Log { id: "any".into(), entries: entries.clone() },
            ..Reading::default()
        };
        let timeline = Timeline::of(entries);
        let findings = audit::audit(&reading, &timeline);
        for (entry, outcome) in timeline.outcomes() {
            use game::Outcome as O;
            let code = match outcome {
                O::Refused(_) => "refused",
                O::Insisted(_) => "insist",
                O::Accepted | O::Struck(_) => continue,
            };
            prop_assert!(findings.iter().any(|f| f.entry == Some(entry.n) && f.what.code() == code));
        }
        for f in &findings {
            prop_assert!(!render::findings::text("file", f, timeline.state()).is_empty());
        }
    }
}
