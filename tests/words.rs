//! The words follow the rules of the match: no sentence holds a number that a rule sets, and none speaks of
//! a libero where there is none.

mod support;

use app::field::Field;
use rules::{Cause, Preset, Rules, Sets, Step};
use support::readability::{shown, split, syllables, words, Counts};
use support::source::{literals, sources, Source};

/// All that is read aloud, or looked at, before a match by these rules.
fn before(rules: &Rules) -> Vec<String> {
    let mut lines: Vec<String> = text::setup::briefings(rules)
        .into_iter()
        .flatten()
        .collect();
    lines.extend(
        Step::ALL
            .into_iter()
            .flat_map(|step| text::setup::look_at(step, rules)),
    );
    lines
}

fn speaks_of(rules: &Rules, word: &str) -> Vec<String> {
    let mut lines = before(rules);
    lines.retain(|line| line.to_lowercase().contains(word));
    lines
}

/// Juniors play without a libero (school_junior), and four on court may as well.
#[test]
fn no_libero_where_there_is_none() {
    let junior = Preset::SchoolJunior.rules();
    let four = Rules {
        players_on_court: 4,
        ..junior
    };
    for rules in [junior, four] {
        assert_eq!(speaks_of(&rules, "libero"), [""; 0]);
        assert!(!Cause::LiberoFault.occurs_under(&rules));
        assert!(!game::entry::Fault::IllegalLibero.occurs_under(&rules));
    }
    let senior = Preset::SchoolSenior.rules();
    // Second referee, scorer, captains' meeting, last check.
    assert_eq!(speaks_of(&senior, "libero").len(), 4);
    assert!(Cause::ALL.iter().all(|cause| cause.occurs_under(&senior)));
}

/// 18.2.2 has eight points; a competition may have another number, or none, and a match without a deciding
/// set has no change within a set.
#[test]
fn the_change_of_courts_is_that_of_the_rules() {
    let mut rules = Preset::International.rules();
    let said = |rules: &Rules| speaks_of(rules, "change courts");
    assert!(
        said(&rules)[0].contains("8 points in set 5"),
        "{:?}",
        said(&rules)
    );
    rules.sets = Sets::BestOf(3);
    rules.decider.to.target = 21;
    rules.decider.change_courts_at = Some(11);
    assert!(
        said(&rules)[0].contains("11 points in set 3"),
        "{:?}",
        said(&rules)
    );
    rules.decider.change_courts_at = None;
    assert_eq!(said(&rules), [""; 0]);
    rules.decider.change_courts_at = Some(11);
    for sets in [Sets::Fixed(2), Sets::BestOf(1)] {
        rules.sets = sets;
        assert_eq!(said(&rules), [""; 0]);
    }
}

/// Each rule that a competition may set says what the published rules have, by their number, or whose practice it
/// is.
#[test]
fn each_setting_has_its_source() {
    for field in Field::rules() {
        let source = text::setup::source(field).unwrap_or_default();
        assert!(source.starts_with("Official rules"), "{field:?}: {source}");
    }
    let list = text::setup::source(Field::ListMost).unwrap_or_default();
    assert!(list.contains("12") && list.contains("14, two of them liberos (4.1.1"));
    let numbers = text::setup::source(Field::HighestNumber).unwrap_or_default();
    assert!(numbers.contains("1 to 20 (4.3.3)") && numbers.contains("99"));
}

/// Numbers that are no rule of a match: measures and examples, and the shape of a form.
const OTHER_NUMBERS: [&str; 13] = [
    // Where a setting comes from: what the published rules say, whatever is set here.
    "Official rules: ",
    // The name of an encoding.
    "UTF-8",
    // Measures of hall, net and ball (1.1, 2.2 to 2.5, 3.1).
    "m on every side of the 18",
    "degrees",
    "Antennas stand 80 cm",
    "Posts stand 0.5 to 1 m",
    "65 to 67 cm around, 260 to 280 g",
    "Write a height such as",
    // Common practice of competitions, said so.
    "Often 10 or 15: common practice",
    // The places have numbers; which of them are the back row follows from the players on court.
    "places 1, 6 and 5",
    "Position 6",
    // What the program can play by at all.
    "Four to six players of a team are on court",
    // The official picture of the signal (diagram 11, 15), whatever the time is.
    "Show eight fingers",
];

/// Numbers that rules set: points, players, seconds, minutes, counts.
const SET_BY_RULES: [&str; 20] = [
    "6",
    "8",
    "12",
    "14",
    "15",
    "24",
    "25",
    "30",
    "99",
    "180",
    "six",
    "eight",
    "twelve",
    "fifteen",
    "thirty",
    "3 minutes",
    "three minutes",
    "two time-outs",
    "0:30",
    "five sets",
];

/// The files of words that hold sentences: all but the tables of options on the command line.
fn with_sentences() -> Vec<Source> {
    let mut all = sources("src/text/en");
    all.retain(|source| source.path != "src/text/en/command_help.rs");
    all
}

/// Sentences among the string literals of a source: more than one word, and no drawing.
fn sentences(text: &str) -> Vec<String> {
    let mut found = literals(text);
    found.retain(|words| {
        let is_drawing = words.starts_with('M') && words.contains(" L");
        words.contains(' ') && !is_drawing
    });
    found
}

/// Whether a number stands in a sentence by itself, and is not the beginning of a rule's number.
fn holds(sentence: &str, number: &str) -> bool {
    sentence.match_indices(number).any(|(at, found)| {
        let before = sentence[..at].chars().next_back();
        let mut behind = sentence[at + found.len()..].chars();
        let after = behind.next();
        let is_part = |c: char| c.is_alphanumeric();
        let of_rule = after == Some('.') && behind.next().is_some_and(|c| c.is_ascii_digit());
        !before.is_some_and(|c| is_part(c) || c == '.') && !after.is_some_and(is_part) && !of_rule
    })
}

#[test]
fn no_sentence_holds_a_number_that_a_rule_sets() {
    let mut wrong = Vec::new();
    for source in with_sentences() {
        for sentence in sentences(&source.text) {
            let other = OTHER_NUMBERS.iter().any(|other| sentence.contains(other));
            let found = SET_BY_RULES.iter().find(|n| holds(&sentence, n));
            if let (false, Some(number)) = (other, found) {
                wrong.push(format!("{}: {number} in {sentence:?}", source.path));
            }
        }
    }
    assert_eq!(wrong, [""; 0], "take them from the rules of the match");
}

/// The check finds what it looks for.
#[test]
fn a_planted_number_is_found() {
    let text = "/// A 25.\nconst A: &str = \"Over 8 seconds\";\nlet b = \"at least 15 minutes, {n} more\";";
    let all = sentences(text);
    assert_eq!(all.len(), 2);
    assert!(holds(&all[0], "8") && holds(&all[1], "15"));
    assert!(!holds("rule 15.9.2 and (6.3.1)", "15") && !holds("rule 1.6", "6"));
    let tricky = "let q = '\"'; let s = \"two \\\"12\\\" more\"; // \"8 here\"";
    assert_eq!(sentences(tricky).len(), 1);
    assert!(holds(&sentences(tricky)[0], "12"));
    assert!(!holds("Signal 180 degrees", "18"));
}

/// The words of a sentence at most. Before the sentences were rewritten the longest had 34, and 27 had more
/// than this; since then the longest has 20. A label is held to it as well.
const MAX_WORDS: usize = 20;
/// The grade of a file at most, in school years: far below the eighth of a pupil of 14, who reads between two
/// rallies. Measured before the sentences were rewritten: 4.34 at most and 2.76 over all; since: 3.55 and 2.50.
const HIGHEST_GRADE: f64 = 4.0;
/// A grade is an average: of fewer words than this it says little.
const ENOUGH_WORDS: usize = 75;

/// What is too hard in a file: sentences that are too long, and the file as a whole.
fn too_hard(path: &str, literals: &[String]) -> Vec<String> {
    let mut wrong = Vec::new();
    let mut counts = Counts::default();
    for literal in literals {
        let text = shown(literal);
        let (sentences, label) = split(&text);
        for sentence in &sentences {
            counts.add(sentence, syllables);
        }
        let too_long = |piece: &&str| words(piece).count() > MAX_WORDS;
        let pieces = sentences.into_iter().chain([label]).filter(too_long);
        wrong.extend(pieces.map(|piece| format!("{path}: too long: {piece}")));
    }
    if counts.words >= ENOUGH_WORDS && counts.grade() > HIGHEST_GRADE {
        wrong.push(format!("{path}: grade {:.2}", counts.grade()));
    }
    wrong
}

#[test]
fn every_sentence_is_read_once() {
    let mut wrong = Vec::new();
    for source in with_sentences() {
        wrong.extend(too_hard(&source.path, &sentences(&source.text)));
    }
    assert_eq!(
        wrong, [""; 0],
        "make two sentences of one, and take shorter words"
    );
}

/// The formula, by an example that can be worked out by hand, and what the test would find.
#[test]
fn a_planted_hard_sentence_is_found() {
    let mut counts = Counts::default();
    counts.add("The libero may not serve.", syllables);
    // 5 words, 1 + 3 + 1 + 1 + 1 syllables: 0.39 * 5 + 11.8 * 7 / 5 - 15.59.
    assert_eq!(
        (counts.sentences, counts.words, counts.syllables),
        (1, 5, 7)
    );
    assert!((counts.grade() - 2.88).abs() < 0.001, "{}", counts.grade());
    let long =
        "Say when a request is not allowed, when a set ends, and when the first team has {at} \
                points in set {last}: then the teams change courts.";
    let found = too_hard("long", &[long.to_owned()]);
    assert_eq!(found.len(), 1, "{found:?}");
    // Short sentences of long words: nothing is too long, the grade is.
    let words = "Regulations necessitate authorisation. Officials anticipate irregularities.";
    let found = too_hard("words", &vec![words.to_owned(); 13]);
    assert!(
        matches!(&found[..], [one] if one.starts_with("words: grade")),
        "{found:?}"
    );
    for (word, many) in [
        ("side", 1),
        ("played", 1),
        ("times", 1),
        ("be", 1),
        ("table", 2),
        ("handed", 2),
        ("passes", 2),
        ("line-up", 2),
        ("referee", 3),
        ("6.4.2", 1),
    ] {
        assert_eq!(syllables(word), many, "{word}");
    }
    let lines = "Open the line-up \\\n     of {name} \\u{2026} then \\\"Confirm\\\". No?";
    assert_eq!(
        shown(lines),
        "Open the line-up of it ' then \"Confirm\". No?"
    );
    assert_eq!(split("Rule 6.4.2 counts. Go on").0, ["Rule 6.4.2 counts."]);
}

/// Words that were there and must not come back: each has one plain word now (undo, import, archive, restore,
/// sample tournament, review, all good, problem, confirm, share, match log, optional, again, correct).
const NOT_AGAIN: [&str; 27] = [
    "take back",
    "taken back",
    "bring one in",
    "brought in",
    "taken in",
    "put away",
    "bring back",
    "bring it back",
    "invented day",
    "look back",
    "for the talk",
    "match to ",
    "in order",
    "hand in",
    "handed in",
    "hand over",
    "handed over",
    "cover numbers",
    "every entry",
    "only the court",
    "cannot play on",
    "play up",
    "harms",
    "nothing so far",
    "can stay empty",
    "once more",
    "official text",
];

/// Labels of one word that said something else than what is done.
const NO_LABEL: [&str; 3] = ["Change", "Signed", "Whose"];

/// Which of them stands in a literal.
fn again(literal: &str) -> Option<&'static str> {
    let text = shown(literal).to_lowercase();
    let label = NO_LABEL.into_iter().find(|label| *label == literal);
    label.or_else(|| NOT_AGAIN.into_iter().find(|words| holds(&text, words)))
}

#[test]
fn what_was_said_badly_does_not_come_back() {
    let mut wrong = Vec::new();
    for source in sources("src") {
        for literal in literals(&source.text) {
            if let Some(words) = again(&literal) {
                wrong.push(format!("{}: {words} in {literal:?}", source.path));
            }
        }
    }
    assert_eq!(wrong, [""; 0], "one word for one thing");
    assert_eq!(again("Taken back by entry {by}"), Some("taken back"));
    assert_eq!(again("Change"), Some("Change"));
    assert_eq!(again("Change of courts"), None);
    assert_eq!(
        again("The record is not \\\n    in order."),
        Some("in order")
    );
}

/// The start screen stands in the page itself, before the program is there; in the same words.
#[test]
fn the_page_begins_in_the_words_of_the_start_screen() {
    let page = include_str!("../index.html");
    for words in [
        text::APP,
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
    ] {
        let found = ["h1", "p", "strong", "span", "a", "button"]
            .iter()
            .any(|tag| page.contains(&format!(">{words}</{tag}>")));
        assert!(found, "index.html does not say {words:?}");
    }
}
