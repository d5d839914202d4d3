//! The notes of somebody who watches a referee: kept, packed into a code, and laid beside the match.

use app::thumb::Thumb;
use game::{simulate, Kind, Timeline};
use proptest::prelude::*;
use record::{
    note_frames, Event, Gathering, NoteKind, Observation, Observed, ObservedReading, Seen,
    DIGITS_LARGE, DIGITS_SMALL, NOTE_LETTERS,
};
use reports::observed::{lay, Beside, By};
use reports::review::Review;
use rules::{Preset, Team};

/// A point of a record as an observer sees it.
#[derive(Clone, Copy, Debug)]
struct Point {
    entry: u32,
    set: u8,
    team: Team,
    /// When it was entered, in milliseconds since 1970.
    at: i64,
    is_rally: bool,
}

/// A match with the points that stand in it.
fn played(preset: Preset, seed: u64) -> (Timeline, Vec<Point>) {
    let timeline = Timeline::of(simulate(preset, seed));
    let points = points(&timeline);
    (timeline, points)
}

fn points(timeline: &Timeline) -> Vec<Point> {
    let mut all = Vec::new();
    for set in Review::of(timeline).sets {
        for point in set.points {
            let entry = timeline.entry(point.entry).expect("it is there");
            all.push(Point {
                entry: point.entry,
                set: set.number,
                team: point.team,
                at: entry.at.expect("a simulated match has times"),
                is_rally: matches!(entry.kind, Kind::Rally { .. }),
            });
        }
    }
    all
}

/// A match of five sets.
fn of_five_sets() -> (Timeline, Vec<Point>) {
    (0..200)
        .map(|seed| played(Preset::International, seed))
        .find(|(_, points)| points.last().is_some_and(|point| point.set == 5))
        .expect("some match takes five sets")
}

/// What an observer taps who misses nothing, with this many notes, every one a few seconds after its point.
/// The clock is so many seconds ahead.
fn watched(points: &[Point], notes: usize, ahead: i64) -> (Observed, Vec<u32>) {
    let shown = |point: &Point| point.at + ahead * 1000;
    let mut observed = Observed::begin("0f8fad5b-d9cb-469f", shown(&points[0]) - 20_000);
    let mut about = Vec::new();
    let every = points.len() / notes.max(1);
    let mut set = points[0].set;
    for (i, point) in points.iter().enumerate() {
        if point.set != set {
            set = point.set;
            observed.add(Observation::NewSet, shown(point) - 15_000);
        }
        // The observer taps a little after the referee, now sooner, now later.
        let late = 500 + (i as i64 * 37 % 30) * 100;
        observed.add(
            Observation::Rally { won_by: point.team },
            shown(point) + late,
        );
        if point.is_rally && about.len() < notes && i >= about.len() * every {
            let kind = NoteKind::ALL[about.len() % NoteKind::ALL.len()];
            let words = String::new();
            observed.add(
                Observation::Note { kind, words },
                shown(point) + late + 2_000,
            );
            about.push(point.entry);
        }
    }
    (observed, about)
}

/// The entries that the notes were laid beside.
fn entries(beside: &Beside) -> Vec<Option<u32>> {
    beside
        .notes
        .iter()
        .map(|note| note.at.map(|(at, _)| at.entry))
        .collect()
}

fn somes(all: &[u32]) -> Vec<Option<u32>> {
    all.iter().copied().map(Some).collect()
}

#[test]
fn five_sets_with_sixty_notes_are_one_code() {
    let (_, points) = of_five_sets();
    let (mut observed, about) = watched(&points, 60, 0);
    assert_eq!(about.len(), 60);
    observed.call(Team::A, "Otters");
    observed.call(Team::B, "Herons");
    let bare = observed.pack().expect("it packs");
    // A third of them with words, as somebody types them on a phone.
    let said = [
        "hand at the net, then the line",
        "signal before the side",
        "asked the line judge",
        "late again",
    ];
    let places: Vec<usize> = observed
        .notes()
        .map(|(place, ..)| place)
        .step_by(3)
        .collect();
    for (i, place) in places.into_iter().enumerate() {
        observed.say(place, &format!("{} {i}", said[i % said.len()]));
    }
    let packed = observed.pack().expect("it packs");
    println!(
        "{} rallies, 60 notes: {} bytes, with 20 remarks {}",
        points.len(),
        bare.len(),
        packed.len()
    );
    let codes = note_frames(&packed, DIGITS_LARGE).expect("it fits");
    assert_eq!(codes.len(), 1, "{} bytes", packed.len());
    assert_eq!(
        Gathering::default().see(&codes[0]),
        Seen::Notes(Box::new(observed))
    );
}

#[test]
fn parts_come_in_any_order_and_are_told_from_those_of_a_record() {
    let (timeline, points) = of_five_sets();
    let (observed, _) = watched(&points, 60, 0);
    let packed = observed.pack().expect("it packs");
    let codes = note_frames(&packed, DIGITS_SMALL / 2).expect("it fits");
    assert!(codes.len() > 1);
    let log = record::Log {
        id: "x".into(),
        entries: timeline.entries().to_vec(),
    };
    let of_record = record::pack(&log).and_then(|packed| record::frames(&packed, DIGITS_SMALL / 2));
    let of_record = of_record.expect("it fits");
    let mut gathering = Gathering::default();
    let mut last = Seen::Again;
    for (i, code) in codes.iter().rev().enumerate() {
        last = gathering.see(code);
        if i == 0 {
            assert_eq!(gathering.see(&of_record[0]), Seen::OtherRecord);
        }
    }
    assert_eq!(last, Seen::Notes(Box::new(observed)));
}

#[test]
fn notes_lie_beside_their_points() {
    let (timeline, points) = of_five_sets();
    let (observed, about) = watched(&points, 40, 0);
    let beside = lay(&observed, &timeline);
    assert_eq!(entries(&beside), somes(&about));
    assert!(beside.fits());
    assert!(beside.clock.is_some_and(|ahead| (0..=4).contains(&ahead)));
    assert!(beside
        .notes
        .iter()
        .all(|n| n.at.is_some_and(|(_, by)| by == By::Both)));
}

#[test]
fn a_clock_that_is_ten_minutes_wrong_changes_nothing() {
    let (timeline, points) = of_five_sets();
    for ahead in [-600, 600] {
        let (observed, about) = watched(&points, 40, ahead);
        let beside = lay(&observed, &timeline);
        assert_eq!(entries(&beside), somes(&about));
        let clock = beside.clock.expect("the rallies say it");
        assert!((clock - ahead).abs() <= 4, "{clock}");
    }
}

#[test]
fn a_note_in_the_wrong_rally_comes_to_the_right_one() {
    let (timeline, points) = of_five_sets();
    for ahead in [0, 600] {
        let (observed, about) = watched(&points, 20, ahead);
        // Each note was made before the rally that it is about was tapped: by the score it stands one too early.
        let mut hasty = observed.clone();
        for place in 1..hasty.events.len() {
            if matches!(hasty.events[place].seen, Observation::Note { .. }) {
                let at = hasty.events[place - 1].at;
                hasty.events.swap(place - 1, place);
                hasty.events[place - 1].at = at;
                hasty.events[place].at = at + 3;
            }
        }
        assert_ne!(hasty, observed);
        assert_eq!(entries(&lay(&hasty, &timeline)), somes(&about), "{ahead}");
    }
}

#[test]
fn without_a_score_the_time_alone_says_it() {
    let (timeline, points) = of_five_sets();
    let (mut observed, about) = watched(&points, 20, 0);
    observed
        .events
        .retain(|event| matches!(event.seen, Observation::Note { .. }));
    let beside = lay(&observed, &timeline);
    assert_eq!(entries(&beside), somes(&about));
    assert!(beside
        .notes
        .iter()
        .all(|n| n.at.is_some_and(|(_, by)| by == By::Time)));
    assert!(beside.fits());
    // A day later nothing of it is about this match.
    observed.began += 86_400_000;
    let beside = lay(&observed, &timeline);
    assert!(beside.notes.iter().all(|note| note.at.is_none()) && !beside.fits());
}

#[test]
fn without_times_the_score_alone_says_it() {
    let (timeline, points) = of_five_sets();
    let (observed, about) = watched(&points, 20, 0);
    let mut bare = timeline.entries().to_vec();
    bare.iter_mut().for_each(|entry| entry.at = None);
    let beside = lay(&observed, &Timeline::of(bare));
    assert_eq!(entries(&beside), somes(&about));
    assert!(beside.clock.is_none() && beside.fits());
    assert!(beside
        .notes
        .iter()
        .all(|n| n.at.is_some_and(|(_, by)| by == By::Score)));
}

#[test]
fn whoever_comes_in_the_second_set_and_calls_the_teams_the_other_way_round_is_understood() {
    let (timeline, points) = of_five_sets();
    let from = points
        .iter()
        .position(|point| point.set == 2)
        .expect("a second set");
    let mut seen = points[from..].to_vec();
    seen.iter_mut()
        .for_each(|point| point.team = point.team.other());
    let (observed, about) = watched(&seen, 30, 600);
    assert_eq!(entries(&lay(&observed, &timeline)), somes(&about));
}

#[test]
fn notes_of_another_match_do_not_fit() {
    let (timeline, _) = played(Preset::International, 1);
    let mut least = 1.0_f64;
    for seed in 2..60 {
        let (_, points) = played(Preset::International, seed);
        if points.len() < 60 {
            continue;
        }
        let (observed, _) = watched(&points, 20, 0);
        let beside = lay(&observed, &timeline);
        least = least.min(beside.slips as f64 / beside.rallies as f64);
        assert!(
            !beside.fits(),
            "{seed}: {} of {}",
            beside.slips,
            beside.rallies
        );
    }
    println!("at least {least:.2} of the rallies of another match differ");
}

#[test]
fn the_last_tap_can_be_undone_and_the_score_follows() {
    let mut observed = Observed::begin("x", 1_000_000);
    for (team, second) in [(Team::A, 10), (Team::A, 40), (Team::B, 70)] {
        observed.add(
            Observation::Rally { won_by: team },
            1_000_000 + second * 1000,
        );
    }
    let standing = observed.standing(observed.events.len());
    assert_eq!(
        (standing.set, standing.score.a, standing.score.b),
        (1, 2, 1)
    );
    observed.undo();
    observed.add(Observation::NewSet, 1_080_000);
    let standing = observed.standing(observed.events.len());
    assert_eq!(
        (
            standing.set,
            standing.score.a,
            standing.score.b,
            standing.rallies
        ),
        (2, 0, 0, 2)
    );
    // A clock that is set back does not turn the order round.
    observed.add(Observation::Rally { won_by: Team::B }, 900_000);
    assert_eq!(observed.events.last().map(|event| event.at), Some(80));
}

/// The referee has the notes and writes words to one; the observer goes on and writes words to another. Sent again,
/// by whichever way, both have both.
#[test]
fn notes_that_two_phones_wrote_on_keep_what_either_has() {
    let note = |kind| Observation::Note {
        kind,
        words: String::new(),
    };
    let rally = Observation::Rally { won_by: Team::A };
    let mut sent = Observed::begin("x", 0);
    sent.add(note(NoteKind::LateWhistle), 5_000);
    sent.add(rally.clone(), 9_000);
    sent.add(note(NoteKind::WrongArm), 12_000);
    let mut referee = sent.clone();
    referee.say(0, "I looked at the net for too long");
    referee.say(2, "left");
    referee.add(note(NoteKind::GoodCalm), 15_000);
    let mut observer = sent;
    observer.say(2, "left, not right");
    observer.call(Team::B, "Blue");
    observer.add(rally, 20_000);
    let (mut here, mut there) = (referee.clone(), observer.clone());
    here.merge(observer);
    there.merge(referee);
    assert_eq!(here, there);
    let notes: Vec<(NoteKind, &str)> = here.notes().map(|(_, kind, words)| (kind, words)).collect();
    let wanted = [
        (NoteKind::LateWhistle, "I looked at the net for too long"),
        (NoteKind::WrongArm, "left, not right"),
        (NoteKind::GoodCalm, ""),
    ];
    assert_eq!(notes, wanted);
    assert_eq!(here.teams[Team::B], "Blue");
    assert_eq!(here.rallies().count(), 2);
    // Once more changes nothing.
    here.merge(there.clone());
    assert_eq!(here, there);
}

#[test]
fn a_bad_event_does_not_hide_the_others() {
    let file = r#"{"log":"volleyball-observer","version":1,"id":"x","began":5,"teams":{"A":"Blue"},"events":[
        {"at":1,"kind":"rally","won_by":"C"},{"at":2,"kind":"rally","won_by":"B"},{"at":-3,"kind":"set"},
        {"at":9,"kind":"late_whistle","words":"a \"word\""},{"at":4,"kind":"shouted"},7]}"#;
    let ObservedReading::Notes(observed, left_out) = Observed::read(file) else {
        panic!("it can be read");
    };
    assert_eq!((observed.events.len(), left_out), (2, 4));
    assert_eq!(
        observed.notes().next().map(|(.., words)| words),
        Some("a \"word\"")
    );
    assert_eq!(
        Observed::read(&file.replace("\"version\":1", "\"version\":2")),
        ObservedReading::Newer
    );
    assert_eq!(
        Observed::read("{\"log\":\"volleyball-match\",\"version\":1}"),
        ObservedReading::Foreign
    );
    assert_eq!(Observed::read("no"), ObservedReading::Foreign);
}

fn any_event() -> impl Strategy<Value = (u32, Observation)> {
    let seen = prop_oneof![
        5 => any::<bool>().prop_map(|a| Observation::Rally { won_by: if a { Team::A } else { Team::B } }),
        1 => Just(Observation::NewSet),
        2 => (0..NoteKind::ALL.len(), "\\PC{0,220}").prop_map(|(kind, words)| Observation::Note {
            kind: NoteKind::ALL[kind],
            words,
        }),
    ];
    (0u32..120, seen)
}

fn any_notes() -> impl Strategy<Value = Observed> {
    let events = proptest::collection::vec(any_event(), 0..80);
    ("[ -~]{0,30}", any::<u32>(), events, "\\PC{0,40}").prop_map(|(id, began, events, name)| {
        let mut observed = Observed::begin(id.trim(), i64::from(began) * 1000);
        let mut now = observed.began;
        for (after, seen) in events {
            now += i64::from(after) * 1000;
            let is_note = matches!(seen, Observation::Note { .. });
            let words = match &seen {
                Observation::Note { words, .. } => words.clone(),
                Observation::Rally { .. } | Observation::NewSet => String::new(),
            };
            observed.add(seen, now);
            if is_note {
                observed.say(observed.events.len() - 1, &words);
            }
        }
        observed.call(Team::B, &name);
        observed
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_notes_come_back_from_their_file_and_their_code(observed in any_notes()) {
        let read = Observed::read(&observed.write());
        prop_assert_eq!(read, ObservedReading::Notes(Box::new(observed.clone()), 0));
        let packed = observed.pack().expect("it packs");
        prop_assert_eq!(Observed::unpack(&packed), Some(observed.clone()));
        prop_assert!(observed.notes().all(|(.., words)| words.chars().count() <= NOTE_LETTERS));
    }

    #[test]
    fn random_bytes_are_no_notes(bytes in proptest::collection::vec(any::<u8>(), 0..400)) {
        let mut bytes = bytes;
        if let Some(first) = bytes.first_mut() {
            *first = record::OBSERVED_VERSION;
        }
        prop_assert_eq!(Observed::unpack(&bytes), None);
    }

    /// Whatever was missed, tapped twice or given to the wrong team, ten minutes off: most notes still come to
    /// their point, and none of them farther than two points away.
    #[test]
    fn slips_move_no_note_far(
        seed in 0u64..20,
        slips in proptest::collection::vec((any::<prop::sample::Index>(), 0u8..3), 0..8),
        ahead in -600i64..=600,
        swapped in any::<bool>(),
    ) {
        let (timeline, points) = (seed..)
            .map(|seed| played(Preset::SchoolSenior, seed))
            // Some simulated matches are defaulted before anybody plays.
            .find(|(_, points)| points.len() > 60)
            .expect("a match that is played");
        let (mut observed, about) = watched(&points, 20, ahead);
        for (at, slip) in slips {
            let rallies: Vec<usize> = (0..observed.events.len())
                .filter(|at| matches!(observed.events[*at].seen, Observation::Rally { .. }))
                .collect();
            let place = rallies[at.index(rallies.len())];
            let event = observed.events[place].clone();
            match slip {
                0 => drop(observed.events.remove(place)),
                1 => observed.events.insert(place, event),
                _ => {
                    if let Observation::Rally { won_by } = event.seen {
                        let seen = Observation::Rally { won_by: won_by.other() };
                        observed.events[place] = Event { seen, ..event };
                    }
                }
            }
        }
        if swapped {
            for event in &mut observed.events {
                if let Observation::Rally { won_by } = &mut event.seen {
                    *won_by = won_by.other();
                }
            }
        }
        let beside = lay(&observed, &timeline);
        prop_assert!(beside.fits());
        let place = |entry| points.iter().position(|point| point.entry == entry).expect("a point");
        let found = beside.notes.iter().zip(&about).map(|(note, about)| {
            note.at.map_or(99, |(at, _)| place(at.entry).abs_diff(place(*about)))
        });
        let off: Vec<usize> = found.collect();
        prop_assert!(off.iter().all(|off| *off <= 2), "{:?}", off);
        prop_assert!(off.iter().filter(|off| **off == 0).count() >= off.len() * 9 / 10, "{:?}", off);
    }
}

/// What is tapped by somebody who keeps no score, from a set on: notes, and where a set begins. The clock is so
/// many seconds ahead.
fn without_score(points: &[Point], from_set: u8, ahead: i64) -> (Observed, Vec<u32>) {
    let points: Vec<&Point> = points.iter().filter(|p| p.set >= from_set).collect();
    let shown = |point: &Point| point.at + ahead * 1000;
    let mut observed = Observed::begin("5d9c-b469f", shown(points[0]) - 20_000);
    let mut about = Vec::new();
    let mut set = from_set;
    for (i, point) in points.iter().enumerate() {
        if point.set != set {
            set = point.set;
            observed.add(Observation::NewSet, shown(point) - 60_000);
        }
        if point.is_rally && i % 9 == 4 {
            let words = String::new();
            let kind = NoteKind::LateWhistle;
            observed.add(Observation::Note { kind, words }, shown(point) + 2_000);
            about.push(point.entry);
        }
    }
    (observed, about)
}

/// How many points lie between where each note was laid and what it is about, at most.
fn off(beside: &Beside, about: &[u32], points: &[Point]) -> usize {
    let place = |entry: u32| {
        points
            .iter()
            .position(|p| p.entry == entry)
            .expect("a point")
    };
    let laid = beside
        .notes
        .iter()
        .map(|note| note.at.expect("a place").0.entry);
    let each = laid
        .zip(about)
        .map(|(laid, about)| place(laid).abs_diff(place(*about)));
    each.max().expect("some notes")
}

#[test]
fn without_a_score_clocks_that_agree_are_left_alone() {
    let (timeline, points) = of_five_sets();
    for from in [1, 2, 4] {
        let (observed, about) = without_score(&points, from, 0);
        let beside = lay(&observed, &timeline);
        assert_eq!(beside.clock, Some(0), "from set {from}");
        assert!(beside.fits() && !beside.keeps_score());
        assert_eq!(entries(&beside), somes(&about));
    }
}

#[test]
fn without_a_score_the_pauses_between_sets_show_a_clock_that_is_ten_minutes_wrong() {
    let (timeline, points) = of_five_sets();
    for ahead in [600, -600] {
        let (observed, about) = without_score(&points, 1, ahead);
        let beside = lay(&observed, &timeline);
        let clock = beside.clock.expect("the pauses say it");
        assert!((clock - ahead).abs() <= 90, "{clock}");
        assert!(beside
            .notes
            .iter()
            .all(|note| note.at.is_some_and(|(_, by)| by == By::Time)));
        // Not to the rally, but near enough to know which moment was meant.
        let off = off(&beside, &about, &points);
        assert!(off <= 5, "{off} points off");
    }
}

#[test]
fn one_tap_that_could_be_any_pause_corrects_nothing() {
    let (timeline, points) = of_five_sets();
    let (mut observed, _) = without_score(&points, 1, 600);
    let mut taps = 0;
    observed.events.retain(|event| {
        taps += usize::from(event.seen == Observation::NewSet);
        event.seen != Observation::NewSet || taps == 1
    });
    assert_eq!(lay(&observed, &timeline).clock, None);
}

#[test]
fn two_taps_at_once_are_one() {
    let rally = |won_by| Observation::Rally { won_by };
    let note = |kind| Observation::Note {
        kind,
        words: String::new(),
    };
    let mut thumb = Thumb::default();
    for (at, seen, counts) in [
        (0, rally(Team::A), true),
        // The other half, hit by the edge of the thumb.
        (400, rally(Team::B), false),
        (500, note(NoteKind::LateWhistle), true),
        (700, note(NoteKind::LateWhistle), false),
        // Two things may be noted about one rally.
        (800, note(NoteKind::WrongArm), true),
        (1_000, rally(Team::A), true),
        (1_100, Observation::NewSet, true),
        (1_300, Observation::NewSet, false),
        (1_600, note(NoteKind::LateWhistle), true),
        (2_100, Observation::NewSet, true),
        // The clock was set back.
        (900, Observation::NewSet, true),
    ] {
        assert_eq!(thumb.counts(&seen, at), counts, "{at}: {seen:?}");
    }
    thumb.forget();
    assert!(thumb.counts(&Observation::NewSet, 901));
}
