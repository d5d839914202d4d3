//! Every language says the same: the numbers of a sheet, of a log and of a refusal do not depend on the words
//! around them, and no sentence was left in English.

mod support;

use std::collections::BTreeSet;

use app::language::Language;
use game::{simulate, Timeline};
use reports::{Sheet, WallClock};
use rules::{Cause, Preset, Signal, Step};
use support::language::in_spanish;
use support::perspicuity::{perspicuity, syllables};
use support::readability::{shown, split, words, Counts};
use support::source::{literals, sources};

/// The numbers in it, in order of size: two languages may name them in another order.
fn numbers(said: &str) -> Vec<u64> {
    // An apostrophe of HTML is no number.
    let mut found: Vec<u64> = said
        .replace("&#39;", "'")
        .split(|c: char| !c.is_ascii_digit())
        .filter_map(|digits| digits.parse().ok())
        .collect();
    found.sort_unstable();
    found
}

/// Both languages name the same numbers, piece by piece.
fn same_numbers(what: &str, say: impl Fn() -> String) {
    let (english, spanish) = (say(), in_spanish(&say));
    if numbers(&english) != numbers(&spanish) {
        let pieces =
            |said: &str| -> Vec<String> { said.split(['\n', '>']).map(str::to_owned).collect() };
        let both = pieces(&english).into_iter().zip(pieces(&spanish));
        let differ: Vec<_> = both
            .filter(|(a, b)| numbers(a) != numbers(b))
            .take(8)
            .collect();
        panic!("{what}: {differ:#?}");
    }
}

fn matches() -> impl Iterator<Item = (String, Timeline)> {
    Preset::ALL.into_iter().flat_map(|preset| {
        (0..6).map(move |seed| {
            let name = format!("{} {seed}", preset.code());
            (name, Timeline::of(simulate(preset, seed)))
        })
    })
}

/// What stands on a button begins with a capital or a figure, and a figure is never parted from its unit.
#[test]
fn what_a_learner_taps_and_measures_is_written_alike() {
    let said = || {
        let levels = learn::Level::ALL.map(text::learn::level);
        let mut buttons: Vec<String> = levels.map(str::to_owned).to_vec();
        let mut measured = Vec::new();
        for situation in learn::Situation::ALL {
            let start = situation.start();
            for dial in start.dials() {
                let choices = text::learn::choices(dial);
                buttons.extend(choices.iter().map(|one| (*one).to_owned()));
                measured.push(text::learn::set_to(dial, start.get(dial)));
            }
            measured.extend(situation.decide(&start).iter().map(text::learn::margin));
        }
        (buttons, measured)
    };
    for (buttons, measured) in [said(), in_spanish(said)] {
        for button in buttons {
            let first = button.chars().next().expect("a word");
            assert!(first.is_uppercase() || first.is_ascii_digit(), "{button}");
        }
        assert!(measured.iter().any(|one| one.contains("\u{a0}cm")));
        for one in measured {
            let is_unit = |word: &str| ["m", "cm", "s"].contains(&word);
            assert!(!one.split(' ').any(is_unit), "{one}");
        }
    }
}

/// Where there is no match, nothing is said of matches: "deletes no match, signatures" would say that nothing goes.
#[test]
fn a_wipe_without_a_match_does_not_speak_of_one() {
    assert!(text::setup::library::wipe_question(0).contains("This deletes drawn signatures"));
    assert!(
        text::setup::library::wipe_question(2).contains("This deletes 2 matches, drawn signatures")
    );
    assert!(in_spanish(|| text::setup::library::wipe_question(0)).contains("Se borran las firmas"));
    assert!(
        in_spanish(|| text::setup::library::wipe_question(2)).contains("2 partidos, las firmas")
    );
}

#[test]
fn another_language_is_spoken_and_left_again() {
    assert_eq!(text::language(), Language::English);
    assert_eq!(in_spanish(text::undo), "Deshacer");
    assert_eq!(in_spanish(text::language), Language::Spanish);
    assert_eq!(text::undo(), "Undo");
}

#[test]
fn the_sheet_of_a_log_has_the_same_numbers_in_every_language() {
    for (name, timeline) in matches() {
        let sheet = Sheet::of(&timeline);
        same_numbers(&name, || render::sheet_text(&sheet, WallClock(0)));
        same_numbers(&name, || {
            let parts = render::parts(&sheet, WallClock(0));
            parts.iter().map(|part| part.html.as_str()).collect()
        });
    }
}

#[test]
fn each_line_of_a_log_has_the_same_numbers_in_every_language() {
    for (name, timeline) in matches() {
        timeline.walk(|before, entry, outcome, _| {
            same_numbers(&name, || text::entry(entry, before));
            same_numbers(&name, || text::outcome(outcome, before).unwrap_or_default());
        });
    }
}

#[test]
fn what_to_check_has_the_same_numbers_in_every_language() {
    for (name, timeline) in matches() {
        for finding in reports::audit::of_log(&timeline) {
            same_numbers(&name, || {
                text::audit::finding(&finding, timeline.state().into())
            });
        }
    }
}

#[test]
fn what_is_looked_at_and_read_aloud_has_the_same_numbers_in_every_language() {
    for preset in Preset::ALL {
        let rules = preset.rules();
        for step in Step::ALL {
            same_numbers(preset.code(), || {
                text::setup::look_at(step, &rules).join("\n")
            });
        }
        same_numbers(preset.code(), || {
            text::setup::briefings(&rules).concat().join("\n")
        });
        for cause in Cause::ALL {
            same_numbers(preset.code(), || text::cause(cause, &rules));
        }
    }
    for signal in Signal::ALL {
        same_numbers(text::signal(signal), || text::signal_how(signal).to_owned());
    }
}

/// The worked cases of logs: what is refused, and why, with all that a fold says.
const TOPICS: [&str; 13] = [
    "change_of_courts",
    "default_incomplete",
    "editions",
    "interruptions",
    "late_faults",
    "libero",
    "misconduct",
    "replay_suspend",
    "rotation",
    "school_and_tally",
    "scoring",
    "strike_explain",
    "substitutions",
];

#[test]
fn what_is_refused_has_the_same_numbers_in_every_language() {
    for case in TOPICS.into_iter().flat_map(support::case::cases) {
        let reading = record::read(&case.input.to_string());
        same_numbers(&case.id, || render::fold(&reading).to_string());
    }
}

/// Names, and what is written the same in both languages.
const SAME_IN_BOTH: [&str; 0] = [];

#[test]
fn no_sentence_was_left_in_english() {
    let sentences = |folder: &str| -> BTreeSet<(String, String)> {
        let mut found = BTreeSet::new();
        for source in sources(folder) {
            let file = source.path.rsplit('/').next().unwrap_or_default();
            for literal in literals(&source.text) {
                let say = shown(&literal);
                // What is filled in is shown as "it".
                if words(&say)
                    .filter(|word| word.trim_matches(|c: char| !c.is_alphanumeric()) != "it")
                    .count()
                    > 2
                {
                    found.insert((file.to_owned(), say));
                }
            }
        }
        found
    };
    let (english, spanish) = (sentences("src/text/en"), sentences("src/text/es"));
    let left: Vec<_> = english
        .intersection(&spanish)
        .filter(|(_, say)| !SAME_IN_BOTH.contains(&say.as_str()))
        .collect();
    assert!(left.is_empty(), "{left:#?}");
    assert!(spanish.len() * 10 > english.len() * 8, "too few sentences");
}

/// Words of a Spanish sentence at most: it needs articles and prepositions where English joins nouns, so a quarter
/// more than the English 20.
const MAX_WORDS: usize = 25;

/// The index of a file at least: where "quite easy" begins, which every file with enough words is today.
const LEAST_PERSPICUITY: f64 = 65.0;
/// An index is an average: of fewer words than this it says little.
const ENOUGH_WORDS: usize = 75;

/// What is too hard in a file: sentences that are too long, and the file as a whole.
fn too_hard(path: &str, literals: &[String], counts: &mut Counts) -> Vec<String> {
    let mut wrong = Vec::new();
    for literal in literals.iter().filter(|words| words.contains(' ')) {
        let say = shown(literal);
        let (sentences, label) = split(&say);
        for sentence in &sentences {
            counts.add(sentence, syllables);
        }
        let too_long = |piece: &&str| words(piece).count() > MAX_WORDS;
        let pieces = sentences.into_iter().chain([label]).filter(too_long);
        wrong.extend(pieces.map(|piece| format!("{path}: too long: {piece}")));
    }
    if counts.words >= ENOUGH_WORDS && perspicuity(*counts) < LEAST_PERSPICUITY {
        wrong.push(format!("{path}: perspicuity {:.1}", perspicuity(*counts)));
    }
    wrong
}

#[test]
fn every_spanish_sentence_is_read_once() {
    let mut wrong = Vec::new();
    for source in sources("src/text/es") {
        if source.path.ends_with("command_help.rs") {
            continue;
        }
        let found = literals(&source.text);
        wrong.extend(too_hard(&source.path, &found, &mut Counts::default()));
    }
    assert_eq!(
        wrong, [""; 0],
        "make two sentences of one, and take shorter words"
    );
}

/// The formula, by an example that can be worked out by hand, and what the test would find.
#[test]
fn a_planted_hard_spanish_sentence_is_found() {
    let mut counts = Counts::default();
    counts.add("El líbero no puede sacar.", syllables);
    // 5 words, 1 + 3 + 1 + 2 + 2 syllables: 206.835 - 62.3 * 9 / 5 - 5.
    assert_eq!(
        (counts.sentences, counts.words, counts.syllables),
        (1, 5, 9)
    );
    let index = perspicuity(counts);
    assert!((index - 89.695).abs() < 0.001, "{index}");
    // Short sentences of long words: nothing is too long, the file is too hard.
    let hard = "Procedimientos reglamentarios determinan responsabilidades.";
    let found = too_hard("words", &vec![hard.to_owned(); 19], &mut Counts::default());
    assert!(
        matches!(&found[..], [one] if one.starts_with("words: perspicuity")),
        "{found:?}"
    );
    let long = "palabra ".repeat(26);
    let found = too_hard("long", &[long], &mut Counts::default());
    assert_eq!(found.len(), 1, "{found:?}");
    for (word, many) in [
        ("set", 1),
        ("y", 1),
        ("muy", 1),
        ("tiempo", 2),
        ("quien", 1),
        ("guía", 2),
        ("línea", 3),
        ("ahí", 2),
        ("mayo", 2),
        ("árbitro", 3),
        ("rotación", 3),
        ("pingüino", 3),
        ("6.4.2", 1),
    ] {
        assert_eq!(syllables(word), many, "{word}");
    }
}

/// What the page says before the program is there stands in it in both languages.
#[test]
fn the_page_begins_in_spanish_too() {
    let page = include_str!("../index.html");
    let said = || {
        [
            text::lead(),
            text::referee_a_match(),
            text::new_match_more(),
            text::quick_tally(),
            text::quick_tally_more(),
            text::learn(),
            text::learn_more(),
            text::signals(),
            text::desk(),
            text::this_phone(),
            text::continue_match(),
        ]
    };
    for (english, spanish) in said().into_iter().zip(in_spanish(said)) {
        let beside = format!("data-es=\"{spanish}\"");
        let stands = page
            .lines()
            .any(|line| line.contains(english) && line.contains(&beside));
        assert!(
            stands,
            "index.html does not say {spanish:?} for {english:?}"
        );
    }
}
