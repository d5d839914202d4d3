//! Every word that a person reads stands in a folder of its language in `src/text`: all else holds types.

mod support;

use support::source::{literals, sources, Source};

/// Rooms that hold no sentence, and no word beside another one.
const WITHOUT_WORDS: [&str; 8] = [
    "src/app",
    "src/device",
    "src/game",
    "src/learn",
    "src/record",
    "src/reports",
    "src/rules",
    "src/text",
];
/// Where the words of each language stand.
const LANGUAGES: [&str; 2] = ["src/text/en/", "src/text/es/"];
/// Rooms whose markup has words with spaces, such as classes; they hold no sentence.
const WITH_MARKUP: [&str; 3] = ["src/bin", "src/render", "src/ui"];

/// What stands outside of `text`, each with its reason.
const EXCEPTIONS: [(&str, &str, &str); 11] = [
    (
        "src/reports/paper/rebuild/mod.rs",
        "paper sheet",
        "a record says the same in every language: a paper sheet makes one record",
    ),
    (
        "src/record/take_in.rs",
        "could not be read.",
        "a record says the same in every language: a file makes one record",
    ),
    (
        "src/reports/demo.rs",
        "Sample tournament",
        "a name in an invented record",
    ),
    ("src/game/simulator/", "", "invented records"),
    (
        "src/reports/paper/draft/letters.rs",
        "assistant coach",
        "a role as records have it",
    ),
    (
        "src/ui/setup/team_list.rs",
        "assistant coach",
        "a role as records have it",
    ),
    (
        "src/game/model/signer.rs",
        " referee",
        "roles as records have them",
    ),
    (
        "src/text/score_sheet.rs",
        "",
        "roles as records have them: the languages say who they are",
    ),
    ("src/ui/start/mod.rs", "M4 6 H44", "the lines of a drawing"),
    (
        "src/device/canvas.rs",
        "px system-ui, sans-serif",
        "a font in the notation of CSS",
    ),
    (
        "src/bin/reader.rs",
        "This program is a part of the page.",
        "whoever starts the wrong program has no page",
    ),
];

/// The literals of a source without those that only a broken promise of the code shows: the arguments of
/// `expect`, and attributes of the compiler.
fn shown_literals(source: &Source) -> Vec<String> {
    let mut text = source.text.clone();
    for opening in [".expect(\"", "#[must_use = \"", "#[deprecated = \""] {
        while let Some(at) = text.find(opening) {
            let rest = &text[at + opening.len()..];
            let end = rest.find('"').map_or(rest.len(), |end| end + 1);
            text.replace_range(at..at + opening.len() + end, "");
        }
    }
    literals(&text)
}

fn is_excepted(path: &str, literal: &str) -> bool {
    EXCEPTIONS
        .iter()
        .any(|(file, words, _)| path.starts_with(file) && literal.contains(words))
}

/// Whether a letter stands on both sides of a space.
fn has_words(literal: &str) -> bool {
    let letters: Vec<char> = literal.chars().collect();
    letters
        .windows(3)
        .any(|w| w[0].is_alphabetic() && w[1] == ' ' && w[2].is_alphabetic())
}

/// A literal without its elements and the data of its drawings.
fn without_markup(literal: &str) -> String {
    let mut out = String::new();
    let mut inside = false;
    for c in literal.chars() {
        match c {
            '<' => inside = true,
            '>' => inside = false,
            c if !inside => out.push(c),
            _ => {}
        }
    }
    out
}

/// Whether it reads as a sentence or a label: with a capital, or with the signs of a sentence.
fn is_sentence(literal: &str) -> bool {
    let words = without_markup(literal);
    let capital = words
        .split_whitespace()
        .any(|word| word.len() > 2 && word.starts_with(char::is_uppercase));
    has_words(&words) && (capital || words.contains(['.', ',', '?', '!', ':']))
}

/// An exception that nothing needs any more is one too many.
#[test]
fn every_exception_is_needed() {
    for (file, words, _) in EXCEPTIONS {
        let needed = sources("src").iter().any(|source| {
            let is_of_file = source.path.starts_with(file);
            is_of_file
                && shown_literals(source)
                    .iter()
                    .any(|l| l.contains(words) && has_words(l))
        });
        assert!(needed, "{file}: {words}");
    }
}

fn found(folders: &[&str], is_wrong: impl Fn(&str) -> bool) -> Vec<String> {
    let mut wrong = Vec::new();
    for source in folders.iter().flat_map(|folder| sources(folder)) {
        if LANGUAGES
            .iter()
            .any(|folder| source.path.starts_with(folder))
        {
            continue;
        }
        for literal in shown_literals(&source) {
            if is_wrong(&literal) && !is_excepted(&source.path, &literal) {
                wrong.push(format!("{}: {literal:?}", source.path));
            }
        }
    }
    wrong
}

#[test]
fn no_word_stands_outside_of_text() {
    assert_eq!(found(&WITHOUT_WORDS, has_words), [""; 0]);
}

#[test]
fn no_sentence_stands_in_markup() {
    assert_eq!(found(&WITH_MARKUP, is_sentence), [""; 0]);
    assert!(is_sentence("<p class=\"muted\">Nothing yet.</p>"));
    assert!(!is_sentence("card stack"));
}
