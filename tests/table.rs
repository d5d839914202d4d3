//! The table in the docs of `game` that ties rules to functions and tests is kept true, and every refusal
//! is told in a story. The checker reads sources as text and is tested on planted errors itself.

mod support;

use std::collections::{BTreeMap, BTreeSet};

use support::source::{code_of, sources, Source};

const TABLE: &str = "src/game/rules_table.md";

/// What hands refusals on and knows no rule.
const ONLY_HAND_ON: [&str; 3] = [
    "preview::preview_sanction",
    "reducer::apply",
    "reducer::step",
];

/// A line of the table.
struct Row {
    rule: String,
    function: String,
    tests: Vec<String>,
}

fn rows(table: &str) -> Vec<Row> {
    let cell = |text: &str| text.trim().trim_matches('`').to_owned();
    table
        .lines()
        .filter(|line| line.starts_with('|') && !line.starts_with("|-"))
        .skip(1)
        .map(|line| {
            let cells: Vec<&str> = line.trim_matches('|').split('|').collect();
            assert_eq!(cells.len(), 3, "no row of three cells: {line}");
            Row {
                rule: cell(cells[0]),
                function: cell(cells[1]),
                tests: cells[2].split(',').map(cell).collect(),
            }
        })
        .collect()
}

/// Everything that the checker looks at.
struct Project {
    table: String,
    game: Vec<Source>,
    told: Vec<Source>,
}

impl Project {
    fn here() -> Project {
        let root = env!("CARGO_MANIFEST_DIR");
        let table = std::fs::read_to_string(format!("{root}/{TABLE}"));
        Project {
            table: table.unwrap_or_else(|e| panic!("{TABLE}: {e}")),
            game: sources("src/game"),
            told: sources("tests/scenarios"),
        }
    }

    /// The text of one file.
    fn game_file(&mut self, name: &str) -> &mut String {
        let file = self.game.iter_mut().find(|s| module(&s.path) == name);
        &mut file.unwrap_or_else(|| panic!("{name}")).text
    }

    fn refusals(&self) -> &Source {
        let refusals = |s: &&Source| s.path == "src/game/model/refusal.rs";
        self.game.iter().find(refusals).expect("refusals")
    }
}

/// The name of a module: of a file without folder and ending, of a folder for its `mod.rs`.
fn module(path: &str) -> &str {
    let path = path.strip_suffix("/mod.rs").unwrap_or(path);
    let file = path.rsplit('/').next().unwrap_or(path);
    file.strip_suffix(".rs").unwrap_or(file)
}

/// Functions of a file by name, each with its head up to the body.
fn functions(code: &str) -> Vec<(String, String)> {
    let mut found = Vec::new();
    for (at, _) in code.match_indices("fn ") {
        let named = code[at + 3..].trim_start();
        let end = named.find(|c: char| !c.is_alphanumeric() && c != '_');
        let name = &named[..end.unwrap_or(named.len())];
        let head_end = named.find(['{', ';']).unwrap_or(named.len());
        if !name.is_empty() {
            found.push((name.to_owned(), named[..head_end].to_owned()));
        }
    }
    found
}

/// Tests of a file: functions behind `#[test]`.
fn tests_of(source: &Source) -> Vec<String> {
    let code = code_of(&source.text);
    let behind = code.split("#[test]").skip(1);
    behind
        .filter_map(|part| functions(part).into_iter().next())
        .map(|(name, _)| format!("{}::{name}", module(&source.path)))
        .collect()
}

/// The inside of a function, strings included, from the text and its code.
fn body<'a>(source: &'a Source, name: &str) -> &'a str {
    let code = code_of(&source.text);
    // Blanks stand for characters of any length, so places are counted in characters.
    let chars: Vec<char> = code.chars().collect();
    let head: Vec<char> = format!("fn {name}(").chars().collect();
    let start = chars.windows(head.len()).position(|w| *w == head[..]);
    let start = start.unwrap_or_else(|| panic!("{name} in {}", source.path));
    let mut depth = 0;
    let mut open = None;
    for (i, c) in chars.iter().enumerate().skip(start) {
        match c {
            '{' => {
                depth += 1;
                open.get_or_insert(i);
            }
            '}' => {
                depth -= 1;
                if depth == 0 {
                    let byte = |n| source.text.char_indices().nth(n).map_or(0, |p| p.0);
                    return &source.text[byte(open.unwrap_or(i))..byte(i)];
                }
            }
            _ => {}
        }
    }
    panic!("{name} has no end in {}", source.path)
}

/// The texts in quotation marks.
fn quoted(text: &str) -> BTreeSet<String> {
    let lines = text.lines().map(|l| l.split("//").next().unwrap_or(l));
    let mut found = BTreeSet::new();
    for line in lines {
        found.extend(line.split('"').skip(1).step_by(2).map(str::to_owned));
    }
    found
}

/// The variants of an enum, from its code.
fn variants(code: &str, name: &str) -> Vec<String> {
    let head = format!("pub enum {name} {{");
    let start = code.find(&head).unwrap_or_else(|| panic!("{name}")) + head.len();
    let mut depth = 1;
    let mut found = Vec::new();
    let mut at_start = true;
    let mut word = String::new();
    for c in code[start..].chars() {
        let of_a_name = c.is_alphanumeric() || c == '_';
        if depth == 1 && at_start && of_a_name {
            word.push(c);
        } else if !word.is_empty() {
            found.push(std::mem::take(&mut word));
            at_start = false;
        }
        match c {
            '{' | '(' => depth += 1,
            '}' | ')' => depth -= 1,
            ',' if depth == 1 => at_start = true,
            _ => {}
        }
        if depth == 0 {
            break;
        }
    }
    found
}

/// The rule in the name of a test: `late::r7_7_1_1_found…` gives 7.7.1.1.
fn rule_of_test(test: &str) -> Option<String> {
    let name = test.rsplit("::").next()?.strip_prefix('r')?;
    let parts: Vec<&str> = name
        .split('_')
        .take_while(|p| !p.is_empty() && p.chars().all(|c| c.is_ascii_digit()))
        .collect();
    (!parts.is_empty()).then(|| parts.join("."))
}

/// Everything in the table, or missing from it, that is not true.
fn violations(project: &Project) -> Vec<String> {
    let rows = rows(&project.table);
    let mut wrong = Vec::new();
    let mut known: BTreeMap<&str, BTreeSet<String>> = BTreeMap::new();
    let mut refusing = BTreeSet::new();
    for source in &project.game {
        let file = module(&source.path);
        for (name, head) in functions(&code_of(&source.text)) {
            known.entry(file).or_default().insert(name.clone());
            let gives = head.rsplit_once("->").map_or("", |(_, gives)| gives);
            if gives.contains("Refusal>") {
                refusing.insert(format!("{file}::{name}"));
            }
        }
    }
    let tests: BTreeSet<String> = project.told.iter().flat_map(tests_of).collect();
    let mut told_in_table = BTreeSet::new();
    for row in &rows {
        let there = row
            .function
            .split_once("::")
            .is_some_and(|(file, name)| known.get(file).is_some_and(|f| f.contains(name)));
        if !there {
            wrong.push(format!(
                "{}: there is no function {}",
                row.rule, row.function
            ));
        }
        for test in &row.tests {
            if !tests.contains(test) {
                wrong.push(format!("{}: there is no test {test}", row.rule));
            }
            if rule_of_test(test).is_some_and(|rule| rule != row.rule) {
                wrong.push(format!("{test} stands in the row of rule {}", row.rule));
            }
            told_in_table.insert(test.clone());
        }
    }
    let rules: BTreeSet<&str> = rows.iter().map(|r| r.rule.as_str()).collect();
    for rule in quoted(body(project.refusals(), "rule")) {
        if !rules.contains(rule.as_str()) {
            wrong.push(format!("rule {rule} can be refused under and has no row"));
        }
    }
    let functions: BTreeSet<&str> = rows.iter().map(|r| r.function.as_str()).collect();
    for function in &refusing {
        if !functions.contains(function.as_str()) && !ONLY_HAND_ON.contains(&function.as_str()) {
            wrong.push(format!("{function} refuses and has no row"));
        }
    }
    for test in tests.iter().filter(|t| rule_of_test(t).is_some()) {
        if !told_in_table.contains(test) {
            wrong.push(format!("{test} has no row"));
        }
    }
    let told: String = project.told.iter().map(|s| code_of(&s.text)).collect();
    for variant in variants(&code_of(&project.refusals().text), "Refusal") {
        let name = format!("Refusal::{variant}");
        let whole = |at: usize| {
            let after = told[at + name.len()..].chars().next();
            !after.is_some_and(|c| c.is_alphanumeric() || c == '_')
        };
        if !told.match_indices(&name).any(|(at, _)| whole(at)) {
            wrong.push(format!("{name} is asserted in no story"));
        }
    }
    wrong
}

#[test]
fn the_table_is_true_and_every_refusal_is_told() {
    let wrong = violations(&Project::here());
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// The checker sees what it is for: it reads as many things as there are.
#[test]
fn the_checker_reads_the_project() {
    let project = Project::here();
    assert!(rows(&project.table).len() > 100);
    let code = code_of(&project.refusals().text);
    let variants = variants(&code, "Refusal");
    assert!(variants.len() > 60, "{variants:?}");
    for name in ["NoMatch", "PartlyIllegal", "CourtsNotDue"] {
        assert!(variants.iter().any(|v| v == name), "{name}");
    }
    let rules = quoted(body(project.refusals(), "rule"));
    assert!(
        rules.contains("15.6.1") && rules.contains("school"),
        "{rules:?}"
    );
    let tests: Vec<String> = project.told.iter().flat_map(tests_of).collect();
    assert!(tests.contains(&"substitution::r15_6_1_a_starter_returns_once".to_owned()));
}

#[track_caller]
fn planted(plant: impl FnOnce(&mut Project), expected: &str) {
    let mut project = Project::here();
    let before = violations(&project);
    plant(&mut project);
    let new: Vec<String> = violations(&project)
        .into_iter()
        .filter(|w| !before.contains(w))
        .collect();
    assert!(
        new.iter().any(|w| w.contains(expected)),
        "{expected}: {new:?}"
    );
}

#[test]
fn a_function_that_is_gone_is_seen() {
    planted(
        |p| *p.game_file("courts") = p.game_file("courts").replace("fn check(", "fn looks("),
        "there is no function courts::check",
    );
    planted(
        |p| {
            p.table
                .push_str("| 6.2 | `rally::nowhere` | `rally::r6_2_a_set_needs_a_lead_of_two` |\n")
        },
        "there is no function rally::nowhere",
    );
}

#[test]
fn a_test_that_is_gone_is_seen() {
    planted(
        |p| {
            p.table
                .push_str("| 6.2 | `rally::settle` | `rally::r6_2_never_written` |\n")
        },
        "there is no test rally::r6_2_never_written",
    );
    // Without its mark a function is no test.
    planted(
        |p| {
            let courts = p.told.iter_mut().find(|s| s.path.ends_with("courts.rs"));
            let text = &mut courts.expect("scenarios").text;
            *text = text.replace(
                "#[test]\nfn r18_2_2_courts_are_changed_once",
                "fn r18_2_2_courts_are_changed_once",
            );
        },
        "there is no test courts::r18_2_2_courts_are_changed_once",
    );
    // Nor is one in a comment.
    planted(
        |p| {
            let courts = p.told.iter_mut().find(|s| s.path.ends_with("courts.rs"));
            let text = &mut courts.expect("scenarios").text;
            *text = text.replace(
                "fn r18_2_2_courts_are_changed_once",
                "// fn r18_2_2_courts_are_changed_once\nfn other",
            );
        },
        "there is no test courts::r18_2_2_courts_are_changed_once",
    );
}

#[test]
fn a_rule_without_a_row_is_seen() {
    planted(
        |p| {
            let file = p.game_file("refusal");
            *file = file.replace("=> \"15.6.1\"", "=> \"15.6.9\"");
        },
        "rule 15.6.9 can be refused under and has no row",
    );
    planted(
        |p| {
            p.table = p
                .table
                .lines()
                .filter(|l| !l.starts_with("| 21.1 "))
                .fold(String::new(), |t, l| t + l + "\n")
        },
        "rule 21.1 can be refused under and has no row",
    );
}

#[test]
fn a_refusing_function_without_a_row_is_seen() {
    planted(
        |p| {
            p.game_file("courts")
                .push_str("\nfn check_more(s: &State) -> Result<(), Refusal> { Ok(()) }\n")
        },
        "courts::check_more refuses and has no row",
    );
}

#[test]
fn a_story_without_a_row_or_in_the_wrong_one_is_seen() {
    planted(
        |p| {
            p.told[1]
                .text
                .push_str("\n#[test]\nfn r99_9_something_new() {}\n")
        },
        "r99_9_something_new has no row",
    );
    planted(
        |p| {
            p.table = p.table.replacen(
                "| 18.2.2 | `courts::check` |",
                "| 18.2.1 | `courts::check` |",
                1,
            )
        },
        "stands in the row of rule 18.2.1",
    );
}

#[test]
fn a_refusal_that_is_told_nowhere_is_seen() {
    planted(
        |p| {
            let file = p.game_file("refusal");
            *file = file.replace(
                "pub enum Refusal {",
                "pub enum Refusal {\n    Unheard { of: u8 },",
            );
        },
        "Refusal::Unheard is asserted in no story",
    );
    // A longer name does not stand for a shorter one.
    planted(
        |p| {
            for story in &mut p.told {
                story.text = story
                    .text
                    .replace("Refusal::NoMatch", "Refusal::NoMatchAtAll");
            }
        },
        "Refusal::NoMatch is asserted in no story",
    );
}
