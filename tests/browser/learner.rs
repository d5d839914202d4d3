//! What belongs to a learner: the notes of an observer from the thumb to the review, and the logbook.

use app::practice::{Practice, Told};
use game::{simulate, Kind, Timeline};
use record::{
    note_frames, Logbook, LogbookReading, NoteKind, Observation, Observed, ObservedReading,
    DIGITS_LARGE,
};
use reports::review::Review;
use rules::{Duty, Preset, Team};
use serde_json::json;
use text::learn as words;

use crate::driver::Engine;
use crate::referee::Referee;
use crate::sealed::photo;
use crate::stage::Stage;
use crate::{Ran, Test, ALL};

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "observer_taps_undoes_is_interrupted_and_goes_on",
        engines: ALL,
        run: taps_and_goes_on,
    },
    Test {
        name: "observer_notes_come_by_code_and_lie_beside_the_match",
        engines: ALL,
        run: beside_the_match,
    },
    Test {
        name: "logbook_keeps_matches_goals_and_what_to_try",
        engines: ALL,
        run: keeps_a_logbook,
    },
    Test {
        name: "practice_match_is_told_kept_and_compared",
        engines: ALL,
        run: a_practice_match,
    },
    Test {
        name: "lesson_shows_a_scene_counts_hands_and_answers",
        engines: ALL,
        run: a_lesson,
    },
    Test {
        name: "logbook_is_printed_and_given_as_a_table",
        engines: &[Engine::Chromium],
        run: signed_off,
    },
];

/// To a page of the book by its name.
fn open(referee: &mut Referee, name: &str, more: &str) {
    referee.tap_at("#to-learn");
    referee.tap(&format!("{name} {more}"));
}

/// The only notes that the phone has kept.
fn notes(referee: &mut Referee) -> Observed {
    let kept = referee.browser().value(
        "Object.entries(localStorage).filter(([k]) => k.startsWith('dutystand/s/notes/')).map(([, v]) => v)",
    );
    let kept = kept.as_array().expect("texts");
    assert_eq!(kept.len(), 1);
    match Observed::read(kept[0].as_str().expect("a text")) {
        ObservedReading::Notes(observed, 0) => *observed,
        other => panic!("{other:?}"),
    }
}

fn logbook(referee: &mut Referee) -> Logbook {
    let kept = referee
        .browser()
        .value("localStorage.getItem('dutystand/s/logbook')");
    match kept.as_str().map(Logbook::read) {
        Some(LogbookReading::Logbook(logbook, 0)) => logbook,
        None => Logbook::default(),
        other => panic!("{other:?}"),
    }
}

/// A rally, and so long that the next one is no slip of the thumb.
fn rally(referee: &mut Referee, half: &str) {
    referee.tap_at(half);
    std::thread::sleep(std::time::Duration::from_millis(1100));
}

fn taps_and_goes_on(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    open(referee, words::observer(), words::observer_more());
    referee.reads(words::observer_how()[0]);
    referee.browser().picture("observer-empty");
    for (team, name) in [("A", "Blue"), ("B", "White")] {
        let field = referee.browser().find(&format!("#observed-{team}"));
        referee.browser().write(&field, name);
    }
    referee.tap_at("#observer-begin");
    referee.reads(words::nothing_noted());
    rally(referee, "#watch-left");
    referee.reads("Point for Blue, 1:0");
    referee.tap(words::note(NoteKind::LateWhistle));
    referee.reads_at(".watch-last", words::note(NoteKind::LateWhistle));
    rally(referee, "#watch-right");
    referee.reads("Point for White, 1:1");
    referee.browser().picture("observer-watch");
    // A second tap in the same moment is a slip, and a wrong one is undone.
    let half = referee.browser().find("#watch-left");
    referee.browser().tap_twice(&half, 100);
    referee.reads("Point for Blue, 2:1");
    assert_eq!(notes(referee).rallies().count(), 3);
    referee.tap_at("#watch-undo");
    referee.reads("Point for White, 1:1");
    referee.tap(words::next_set());
    referee.reads("Set 2 begins");
    // The teams have changed courts.
    rally(referee, "#watch-left");
    referee.reads("Point for White, 0:1");
    referee.tap(words::note(NoteKind::GoodCalm));

    // The page goes, and comes back as it was.
    referee.stage.reload();
    referee.reads_at(".watch-last", words::note(NoteKind::GoodCalm));
    referee.reads("Set 2");
    referee.tap_at("#watch-stop");
    referee.reads("2 notes");
    let field = "ol.noted li:nth-child(1) input";
    let input = referee.browser().find(field);
    referee
        .browser()
        .write(&input, "The ball was down long before");
    referee.reads(words::notes_hand_over());
    referee.tap_at("#show-codes");
    referee.browser().find("svg.code");
    referee.browser().picture("observer-notes");
    // The phone's back button leads to the taps, and on to the list.
    referee.browser().back();
    referee.reads("Set 2");
    referee.browser().back();
    referee.reads(words::observer_how()[0]);
    let kept = notes(referee);
    assert_eq!(kept.teams[Team::A], "Blue");
    let said: Vec<(NoteKind, &str)> = kept.notes().map(|(_, kind, said)| (kind, said)).collect();
    assert_eq!(
        said,
        [
            (NoteKind::LateWhistle, "The ball was down long before"),
            (NoteKind::GoodCalm, "")
        ]
    );
    assert_eq!(kept.standing(kept.events.len()).set, 2);

    // Gone for good after a question, and the address says so.
    let place = format!("observer/notes/{}", kept.id);
    let here = referee.stage.url();
    referee.browser().goto(&format!("{here}#/learn/{place}"));
    referee.tap(words::notes_delete());
    referee.reads(words::notes_delete_ask());
    referee.tap_in("[role=dialog]", words::notes_delete());
    referee.reads(words::observer_how()[0]);
    referee.browser().goto(&format!("{here}#/learn/{place}"));
    referee.reads(words::no_such_notes());
    Ok(())
}

/// What an observer of a match taps whose clock is ten minutes ahead, and the points that the notes are about.
fn watched(timeline: &Timeline) -> (Observed, Vec<u32>) {
    let points: Vec<(u32, Team, i64)> = Review::of(timeline)
        .sets
        .iter()
        .flat_map(|set| &set.points)
        .filter_map(|point| {
            let entry = timeline.entry(point.entry)?;
            matches!(entry.kind, Kind::Rally { .. }).then_some(())?;
            Some((point.entry, point.team, entry.at? + 600_000))
        })
        .collect();
    let mut observed = Observed::begin("n1", points[0].2 - 20_000);
    let mut about = Vec::new();
    for (i, (entry, won_by, at)) in points.into_iter().enumerate() {
        observed.add(Observation::Rally { won_by }, at + 1_000);
        if i % 12 == 3 {
            let kind = NoteKind::ALL[about.len() % NoteKind::ALL.len()];
            observed.add(
                Observation::Note {
                    kind,
                    words: format!("Moment {i}"),
                },
                at + 3_000,
            );
            about.push(entry);
        }
    }
    (observed, about)
}

fn beside_the_match(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    let entries = simulate(Preset::SchoolJunior, 3);
    let timeline = Timeline::of(entries.clone());
    let (observed, about) = watched(&timeline);
    assert!(about.len() > 3);
    let log = record::Log {
        id: "watched".into(),
        entries,
    };
    referee.open_file("watched.json", record::write(&log).as_bytes());
    referee.reads("watched.json is on this phone now.");
    let here = referee.stage.url();
    referee.browser().goto(&format!("{here}#/review/watched"));
    referee.reads(words::observed_none());
    // The code as a photo of the other phone's screen shows it.
    referee.tap_at("#scan-notes");
    let packed = observed.pack().expect("it packs");
    let codes = note_frames(&packed, DIGITS_LARGE).expect("it fits");
    assert_eq!(codes.len(), 1);
    let file = referee.stage.scratch("notes.bmp");
    std::fs::write(&file, photo(&codes[0])).expect("room for a photo");
    let field = referee.browser().find("#photo");
    referee.browser().choose_file(&field, &file);
    referee.reads(text::hand_over::notes_taken());
    referee.browser().back();
    referee.reads("The clock of the observer is 10 minutes ahead.");
    let shown = referee
        .browser()
        .value("[...document.querySelectorAll('.observed-notes > li')].map((e) => e.innerText)");
    let shown = shown.as_array().expect("lines");
    assert_eq!(shown.len(), about.len());
    let review = Review::of(&timeline);
    for (line, entry) in shown.iter().zip(&about) {
        let line = line.as_str().expect("a line");
        let (set, point) = review
            .sets
            .iter()
            .flat_map(|set| set.points.iter().map(move |point| (set.number, point)))
            .find(|(_, point)| point.entry == *entry)
            .expect("the point");
        let place = format!("Set {set}, {}", point.score.marked());
        assert!(line.contains(&place), "{line}: {place}");
    }
    referee.browser().picture("observer-review");

    // Notes of another match are told apart.
    let mut other = observed.clone();
    other.id = "n2".into();
    other.began += 90_000_000;
    other
        .events
        .retain(|event| matches!(event.seen, Observation::Note { .. }));
    referee.browser().goto(&format!("{here}#/start"));
    referee.open_file("other.json", other.write().as_bytes());
    referee.reads("other.json: the notes of an observer are on this phone.");
    referee.browser().goto(&format!("{here}#/review/watched"));
    referee.reads(words::observed_other());
    referee.tap(words::observed_anyway());
    referee.reads(words::no_place());

    // The talk goes into the logbook.
    referee.tap_at("#log-this");
    referee.reads(words::logged_kept());
    let logged = logbook(referee);
    assert_eq!(logged.matches().len(), 1);
    assert!(logged.matches()[0].minutes.is_some());
    Ok(())
}

fn keeps_a_logbook(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    open(referee, words::logbook(), words::logbook_more());
    referee.reads(words::logbook_empty());
    referee.reads(words::no_goals());
    referee.browser().picture("logbook-empty");
    referee.tap_at("#log-match");
    referee.reads(words::logged_kept());
    // A slip: back again, and once more. It is the same one.
    let first = logbook(referee).matches()[0].id.clone();
    referee.tap_at("#to-logbook");
    referee.tap_at("#log-match");
    referee.reads(words::logged_kept());
    assert_eq!(logbook(referee).matches().len(), 1);
    assert_eq!(logbook(referee).matches()[0].id, first);
    referee.tap(words::duty(Duty::Scorer));
    let write = |referee: &mut Referee, field: &str, text: &str| {
        let input = referee.browser().find(field);
        referee.browser().write(&input, text);
    };
    write(referee, "#logged-teams", "Otters, Herons");
    write(referee, "#logged-minutes", "an hour");
    referee.reads(words::logged_minutes_wrong());
    write(referee, "#logged-minutes", "62");
    write(referee, "#logged-talk", "Libero missed twice.");
    write(referee, "#logged-next", "Say the number aloud");
    referee.browser().picture("logbook-match");
    // Interrupted in the middle: nothing is lost.
    referee.stage.reload();
    referee.reads(words::logged_kept());
    let value = |referee: &mut Referee, id: &str| {
        referee
            .browser()
            .value(&format!("document.querySelector('{id}').value"))
    };
    assert_eq!(
        value(referee, "#logged-next"),
        json!("Say the number aloud")
    );
    let kept = logbook(referee);
    let one = &kept.matches()[0];
    assert_eq!(
        (one.duty, one.minutes, one.teams.as_str()),
        (Duty::Scorer, Some(62), "Otters, Herons")
    );
    referee.tap_at("#to-logbook");
    referee.reads(words::to_try());
    referee.reads("Next time: Say the number aloud");

    // Goals: a wrong number, two of one's own, some of a league.
    referee.tap_at("#set-goal");
    write(referee, "#goal-count", "none");
    referee.tap_at("#goal-save");
    referee.reads(words::goal_count_wrong());
    write(referee, "#goal-count", "2");
    referee.tap(words::duty(Duty::Scorer));
    referee.browser().picture("logbook-goal");
    referee.tap_at("#goal-save");
    referee.reads("2 matches as scorer");
    referee.reads("1 of 2");
    referee.tap_at("#set-goal");
    referee.tap(words::goal_task());
    referee.tap_at("#goal-save");
    referee.reads(words::goal_words_wrong());
    write(referee, "#goal-words", "A test of signals");
    referee.tap_at("#goal-save");
    referee.reads("A test of signals");
    referee.tap(words::goal_done());
    referee.reads("Done on 20");
    let league = r#"{"log":"volleyball-logbook","version":1,"goals":[
        {"what":"matches","role":"first_referee","count":5,"from":"School league"},
        {"what":"matches","role":"umpire","count":1}]}"#;
    let file = referee.stage.scratch("league.json");
    std::fs::write(&file, league).expect("it can be written");
    let field = referee.browser().find("#goal-file");
    referee.browser().choose_file(&field, &file);
    referee.reads("New: matches 0, goals 1. Could not be read: 1.");
    referee.reads("5 matches as first referee (School league)");
    std::fs::write(&file, "no").expect("it can be written");
    let field = referee.browser().find("#goal-file");
    referee.browser().choose_file(&field, &file);
    referee.reads(words::no_logbook_file());
    referee.browser().picture("logbook-full");

    // What to try is said before the next match.
    let here = referee.stage.url();
    referee.browser().goto(&format!("{here}#/start"));
    referee.stage.started();
    referee.new_match("School, juniors Shorter, no libero");
    referee.reads_at("#to-try", "Say the number aloud");
    assert_eq!(logbook(referee).goals().len(), 3);

    // A match goes after a question; an address of one that is gone says so.
    let id = logbook(referee).matches()[0].id.clone();
    referee
        .browser()
        .goto(&format!("{here}#/learn/logbook/match/{id}"));
    referee.tap(words::logged_delete());
    referee.tap_in("[role=dialog]", words::logged_delete());
    referee.reads(words::logbook_empty());
    referee
        .browser()
        .goto(&format!("{here}#/learn/logbook/match/{id}"));
    referee.reads(words::not_logged());
    Ok(())
}

fn signed_off(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    let downloads = referee.catch_downloads();
    let file = r#"{"log":"volleyball-logbook","version":1,"matches":[
        {"id":"m2","date":"2026-11-28","role":"first_referee","level":"U14","teams":"Otters, Herons","minutes":62,
         "talk":"Late twice.","next":"Look at the line judge first"},
        {"id":"m1","date":"2026-11-21","role":"scorer"}],
        "goals":[{"what":"matches","count":10}]}"#;
    referee.open_file("logbook.json", file.as_bytes());
    referee.reads("logbook.json: 2 matches and 1 goal are new in your logbook.");
    open(referee, words::logbook(), words::logbook_more());
    referee.reads("2 of 10");
    referee.tap_at("#logbook-table");
    let (name, table) = referee.caught(&downloads);
    assert!(
        name.starts_with("logbook-2") && name.ends_with(".csv"),
        "{name}"
    );
    assert_eq!(table, render::logbook_csv(&logbook(referee)));
    let pdf = referee.browser().paper();
    assert!(pdf.starts_with(b"%PDF"));
    std::fs::write("shots/logbook.pdf", &pdf).expect("it can be written");
    // What goes to paper is the table alone.
    referee
        .browser()
        .cdp("Emulation.setEmulatedMedia", json!({ "media": "print" }));
    let printed = referee
        .browser()
        .value("document.querySelector('main').innerText");
    let printed = printed.as_str().expect("words");
    assert!(
        printed.contains(words::signed_off()) && printed.contains("2026-11-28"),
        "{printed}"
    );
    assert!(
        !printed.contains(words::log_match()) && !printed.contains(words::no_goals()),
        "{printed}"
    );
    referee
        .browser()
        .cdp("Emulation.setEmulatedMedia", json!({ "media": "" }));
    assert_eq!(referee.browser().complaints(), Vec::<String>::new());
    Ok(())
}

/// Begins practice matches until one begins with so many rallies that the story needs nothing else: which one
/// it is hangs on the second.
fn begun_with_rallies(referee: &mut Referee) -> Practice {
    let is_rally = |told: &&Told| matches!(told, Told::Rally { .. });
    for _ in 0..20 {
        referee.tap_at("#practice-begin");
        referee.browser().find("#half-left");
        referee.browser().find("#practice-told");
        let address = referee.browser().value("location.hash");
        let address = address.as_str().expect("an address").to_owned();
        let seed = address.trim_start_matches("#/play/practice-");
        let seed = seed.split('-').next().and_then(|seed| seed.parse().ok());
        let practice = Practice::from_seed(seed.expect("a seed")).expect("the match");
        if practice.steps.iter().take_while(is_rally).count() > 6 {
            return practice;
        }
        let here = referee.stage.url();
        let page = format!("{here}#/learn/practice");
        referee.browser().goto(&page);
        referee.stage.started();
    }
    panic!("no practice match begins with rallies");
}

fn a_practice_match(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    referee.quick();
    open(referee, words::practice(), words::practice_more());
    referee.reads(words::practice_marked());
    referee.browser().picture("practice-empty");
    let practice = begun_with_rallies(referee);
    let mut entered = 0;
    for (i, told) in practice.steps.iter().enumerate() {
        let said = words::practice_told(told, practice.truth(0).state());
        referee.reads_at("#practice-told", &said);
        match told {
            Told::Rally { won_by, .. } => {
                let name = practice.truth(0).state().name(*won_by).to_owned();
                referee.point_for(&name);
                referee.saved();
            }
            Told::TimeOut { .. } | Told::Substitution { .. } => break,
        }
        entered = i + 1;
        if entered == 3 {
            // The page goes in the middle, and comes back as it was.
            referee.browser().picture("practice-told");
            referee.stage.reload();
            referee.browser().find("#half-left");
            referee.reads_at("#practice-told", &said);
        }
        if entered == 5 {
            break;
        }
        referee.tap_at("#practice-next");
    }
    let entries = referee.timeline().entries().to_vec();
    assert!(matches!(&entries[0].kind, Kind::Match(heading) if heading.practice));
    referee.tap_at("#practice-compare");
    // Points are right, and no reason was given that could differ.
    referee.browser().find("#practice-result");
    referee.reads(words::practice_same());
    referee.browser().picture("practice-same");
    referee.tap(words::practice_back());
    referee.browser().find("#half-left");

    // A wrong point is said.
    assert!(entered > 0);
    if let Some(Told::Rally { won_by, .. }) = practice.steps.get(entered) {
        referee.tap_at("#practice-next");
        let name = practice.truth(0).state().name(won_by.other()).to_owned();
        referee.point_for(&name);
        referee.saved();
        referee.tap_at("#practice-compare");
        referee.browser().find("#practice-result");
        referee.reads(&words::practice_differs(1));
        referee.browser().picture("practice-result");
        referee.tap(words::practice_back());
        referee.browser().find("#half-left");
    }
    let here = referee.stage.url();
    referee.browser().goto(&format!("{here}#/desk"));
    referee.stage.started();
    let listed = referee
        .browser()
        .value("document.querySelector('main').innerText.includes('Practice')");
    assert_eq!(listed, json!(false), "no practice match lies on the desk");
    referee.browser().goto(&format!("{here}#/start"));
    referee.stage.started();
    referee.reads_at("#continue", words::practice_mark());
    Ok(())
}

fn a_lesson(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    open(referee, words::trainer(), words::trainer_more());
    referee.tap_at("#to-lesson");
    referee.reads(words::lesson_how()[0]);
    referee.browser().picture("lesson-choice");
    referee.tap_at("#lesson-begin");
    let shown = "(document.querySelector('.lesson-field')?.dataset.scene ?? '')";
    let mut before = String::new();
    for round in 0..2 {
        referee.browser().wait_until(
            "another scene",
            &format!("{shown} && {shown} !== {}", json!(before)),
        );
        let from = referee.browser().value(shown);
        let from = from.as_str().expect("what it was drawn from").to_owned();
        let parts: Vec<&str> = from.split(' ').collect();
        let kind = learn::Kind::from_code(parts[0]).expect("a kind");
        let band = learn::Level::Clear.band(kind);
        let drawn = learn::draw(kind, band, parts[2].parse().expect("a seed")).expect("the scene");
        for _ in 0..3 {
            referee.tap_at(".lesson-vote:nth-child(1)");
        }
        referee.tap_at(".lesson-vote:nth-child(3)");
        let votes = referee.browser().value(
            "[...document.querySelectorAll('.lesson-vote strong')].map((e) => Number(e.innerText))",
        );
        assert_eq!(votes, json!([3, 0, 1, 0]));
        if round == 0 {
            referee.browser().picture("lesson-vote");
            referee.browser().screen(1180, 820);
            referee.browser().picture("lesson-vote-1180x820");
        }
        referee.tap_at("#lesson-answer");
        referee.reads(&words::decided(&drawn.verdict));
        if round == 0 {
            referee.browser().picture("lesson-answer-1180x820");
            referee.browser().screen(360, 740);
            referee.browser().picture("lesson-answer");
        }
        before = from;
        referee.tap_at("#lesson-next");
    }
    // The phone's back button leaves the lesson, nothing of it is kept.
    referee.browser().back();
    referee.reads(words::trainer_how()[0]);
    assert_eq!(
        referee
            .browser()
            .value("localStorage.getItem('dutystand/s/learner')"),
        json!(null)
    );
    Ok(())
}
