//! The words follow the rules of the match: no sentence holds a number that a rule sets, and none speaks of
//! a libero where there is none.

mod support;

use rules::{Cause, Preset, Rules, Sets, Step};
use support::source::sources;

/// All that is read aloud, or looked at, before a match by these rules.
fn before(rules: &Rules) -> Vec<String> {
    let mut lines: Vec<String> = text::before::briefings(rules)
        .into_iter()
        .flatten()
        .collect();
    lines.extend(
        Step::ALL
            .into_iter()
            .flat_map(|step| text::before::look_at(step, rules)),
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

/// Numbers that are no rule of a match: measures and examples, and the shape of a form.
const OTHER_NUMBERS: [&str; 10] = [
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

/// Sentences among the string literals of a source: more than one word, and no drawing.
fn sentences(text: &str) -> Vec<String> {
    let code = text.split("#[cfg(test)]").next().unwrap_or_default();
    let mut found = Vec::new();
    let mut chars = code.chars().peekable();
    while let Some(c) = chars.next() {
        match c {
            '/' if chars.peek() == Some(&'/') => while chars.next().is_some_and(|c| c != '\n') {},
            // The sign itself, not the beginning of a text.
            '\'' if chars.peek() == Some(&'"') => drop(chars.next()),
            '"' => {
                let mut words = String::new();
                while let Some(c) = chars.next().filter(|c| *c != '"') {
                    words.push(c);
                    if c == '\\' {
                        words.extend(chars.next());
                    }
                }
                let is_drawing = words.starts_with('M') && words.contains(" L");
                if words.contains(' ') && !is_drawing {
                    found.push(words);
                }
            }
            _ => {}
        }
    }
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
    for folder in ["src/text", "src/game", "src/reports"] {
        for source in sources(folder) {
            let has_words = folder == "src/text"
                || source.path.ends_with("say.rs")
                || source.path.ends_with("words.rs");
            if !has_words {
                continue;
            }
            for sentence in sentences(&source.text) {
                let other = OTHER_NUMBERS.iter().any(|other| sentence.contains(other));
                let found = SET_BY_RULES.iter().find(|n| holds(&sentence, n));
                if let (false, Some(number)) = (other, found) {
                    wrong.push(format!("{}: {number} in {sentence:?}", source.path));
                }
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
