//! Imports run downwards only: rules, game, record, sheet; the browser's floor beside them, the screen
//! on top. Read from the sources, with planted errors that prove that it can fail.

mod support;

use support::source::{code_of, paths_in, sources, Source};

/// The floors, and what each may name of ours.
const FLOORS: [(&str, &[&str]); 8] = [
    ("rules", &["rules"]),
    ("game", &["game", "rules"]),
    ("learn", &["learn", "rules"]),
    ("record", &["record", "game", "rules"]),
    ("sheet", &["sheet", "record", "game", "rules"]),
    ("app", &["app", "sheet", "record", "game", "rules"]),
    // Of the program only the ports that it carries out.
    ("device", &["device", "app"]),
    (
        "ui",
        &["ui", "device", "app", "sheet", "record", "game", "rules"],
    ),
];

/// The programs, and what they may name of the library.
const PROGRAMS: [(&str, &[&str]); 4] = [
    ("src/main.rs", &["ui"]),
    ("src/bin/desk_page.rs", &["ui"]),
    ("src/bin/reader.rs", &[]),
    ("src/bin/desk/", &["sheet", "record", "game", "rules"]),
];

/// The floors that are the same on every machine.
const CORE: [&str; 6] = ["rules", "game", "learn", "record", "sheet", "app"];

/// Crates of the web; `gloo` stands for all that begin so.
const WEB: [&str; 6] = [
    "leptos",
    "web_sys",
    "js_sys",
    "wasm_bindgen",
    "wasm_bindgen_futures",
    "gloo",
];

/// What the core must not ask the machine for. Hash tables are among it: their order differs from run
/// to run.
const MACHINE: [&str; 11] = [
    "std::time",
    "std::fs",
    "std::env",
    "std::io",
    "std::net",
    "std::process",
    "std::thread",
    "std::collections::HashMap",
    "std::collections::HashSet",
    "std::collections::hash_map",
    "std::collections::hash_set",
];

/// Chance comes from a seed, and only here.
const CHANCE: (&str, &str) = ("fastrand", "src/game/rehearsal/");

/// Events that a screen takes apart itself; their types come through the screen's own library.
const EVENTS: [&str; 6] = [
    "leptos::ev::Event",
    "leptos::ev::KeyboardEvent",
    "leptos::ev::MouseEvent",
    "leptos::ev::PointerEvent",
    "leptos::ev::SubmitEvent",
    "leptos::ev::InputEvent",
];

/// The floor of a file, by its path.
fn floor_of(path: &str) -> Option<&'static str> {
    let (first, _) = path.strip_prefix("src/")?.split_once('/')?;
    FLOORS.iter().map(|f| f.0).find(|f| *f == first)
}

/// The modules around the code of a file: `src/game/set.rs` gives `game`, `set`.
fn module_of(path: &str) -> Vec<&str> {
    let path = path.strip_prefix("src/").unwrap_or(path);
    let path = path.strip_suffix(".rs").unwrap_or(path);
    let path = path.strip_suffix("/mod").unwrap_or(path);
    if matches!(path, "lib" | "main") {
        Vec::new()
    } else {
        path.split('/').collect()
    }
}

/// A path from the root of the crate, if it is one of ours.
fn of_ours(file: &str, path: &str) -> Option<String> {
    let parts: Vec<&str> = path.split("::").collect();
    let supers = parts.iter().take_while(|p| **p == "super").count();
    let module = module_of(file);
    let (base, rest) = match parts[0] {
        "crate" | "dutystand" => (&module[..0], &parts[1..]),
        "super" => (
            &module[..module.len().saturating_sub(supers)],
            &parts[supers..],
        ),
        _ => return None,
    };
    Some([base, rest].concat().join("::"))
}

fn begins_with(path: &str, start: &str) -> bool {
    path == start
        || path
            .strip_prefix(start)
            .is_some_and(|rest| rest.starts_with("::"))
}

/// Everything in a file that runs upwards or reaches where it must not.
fn wrongs(source: &Source) -> Vec<String> {
    let file = source.path.as_str();
    let floor = floor_of(file);
    let allowed = floor
        .and_then(|floor| FLOORS.iter().find(|f| f.0 == floor))
        .or_else(|| PROGRAMS.iter().find(|p| file.starts_with(p.0)))
        .map(|f| f.1);
    let mut wrong = Vec::new();
    // Who may see a thing says nothing about what it uses.
    let code = code_of(&source.text)
        .replace("pub(crate)", "pub")
        .replace("pub(super)", "pub");
    for (line, path) in paths_in(&code) {
        let mut say = |what: &str| wrong.push(format!("{file}:{line}: {path}: {what}"));
        if let (Some(allowed), Some(ours)) = (allowed, of_ours(file, &path)) {
            let target = ours.split("::").next().unwrap_or_default();
            if FLOORS.iter().any(|f| f.0 == target) && !allowed.contains(&target) {
                say("an import that runs upwards");
            } else if target.is_empty() {
                say("the root of the crate cannot be told apart; name the floor");
            }
        }
        let first = path.split("::").next().unwrap_or_default();
        let of_web = WEB.contains(&first) || first.starts_with("gloo_");
        if floor.is_some_and(|f| CORE.contains(&f)) || file.starts_with("src/bin/desk/") {
            if of_web {
                say("the core knows nothing of the web");
            }
            if floor.is_some() && MACHINE.iter().any(|m| begins_with(&path, m)) {
                say("the core asks the machine for nothing");
            }
            if floor.is_some() && first == CHANCE.0 && !file.starts_with(CHANCE.1) {
                say("the core leaves nothing to chance");
            }
        }
        if floor == Some("ui") {
            let through_the_screen = begins_with(&path, "leptos::web_sys")
                || begins_with(&path, "leptos::wasm_bindgen")
                || begins_with(&path, "leptos::js_sys");
            if (of_web && first != "leptos") || through_the_screen {
                say("only the device floor touches the browser");
            }
            if path == "leptos::task::spawn" || path == "leptos::task::spawn_local" {
                say("what waits for the browser goes on in its own time: device::spawn");
            }
            if begins_with(&path, "leptos::ev")
                && path != "leptos::ev"
                && !EVENTS.contains(&path.as_str())
            {
                say("an event that is not on the list in tests/layers.rs");
            }
        }
    }
    wrong
}

#[test]
fn imports_run_downwards_only() {
    let all: Vec<String> = sources("src").iter().flat_map(wrongs).collect();
    assert!(all.is_empty(), "{}", all.join("\n"));
}

/// A file that lies on no floor escapes the rule, so there is none but the root and the programs.
#[test]
fn every_file_lies_on_a_floor() {
    for source in sources("src") {
        let path = source.path.as_str();
        let known = floor_of(path).is_some()
            || path == "src/lib.rs"
            || PROGRAMS.iter().any(|p| path.starts_with(p.0));
        assert!(known, "{path} lies on no floor");
    }
    for (floor, _) in FLOORS {
        assert!(
            sources("src")
                .iter()
                .any(|s| floor_of(&s.path) == Some(floor)),
            "{floor} has no file"
        );
    }
}

#[track_caller]
fn planted(path: &str, text: &str, expected: &[&str]) {
    let source = Source {
        path: path.to_owned(),
        text: text.to_owned(),
    };
    let found = wrongs(&source);
    assert_eq!(found.len(), expected.len(), "{text}\n{found:?}");
    for (found, expected) in found.iter().zip(expected) {
        assert!(found.contains(expected), "{found} is not about {expected}");
    }
}

#[test]
fn an_import_that_runs_upwards_is_seen() {
    planted(
        "src/rules/team.rs",
        "use crate::game::State;",
        &["crate::game::State"],
    );
    planted(
        "src/game/set.rs",
        "use crate::{rules::Team, record};",
        &["crate::record"],
    );
    planted(
        "src/record/file.rs",
        "use super::super::sheet::Sheet;",
        &["sheet::Sheet"],
    );
    planted(
        "src/sheet/text.rs",
        "fn f() { crate::ui::start(); }",
        &["crate::ui::start"],
    );
    planted(
        "src/device/local.rs",
        "use crate::{\n    game::{self, Kind},\n    record::read,\n};",
        &[
            "crate::game::self",
            "crate::game::Kind",
            "crate::record::read",
        ],
    );
    planted(
        "src/sheet/mod.rs",
        "use super::device::clock;",
        &["device::clock"],
    );
    planted(
        "src/sheet/paper/mod.rs",
        "use super::super::ui::text;",
        &["ui::text"],
    );
    planted(
        "src/bin/desk/main.rs",
        "use dutystand::ui;",
        &["dutystand::ui"],
    );
    planted(
        "src/main.rs",
        "fn main() { dutystand::game::rehearse(); }",
        &["game"],
    );
    planted(
        "src/game/set.rs",
        "use crate as ours;",
        &["root of the crate"],
    );
}

#[test]
fn the_web_and_the_machine_are_seen_in_the_core() {
    planted("src/game/toss.rs", "use web_sys::Window;", &["web"]);
    planted(
        "src/rules/plan.rs",
        "let now = js_sys::Date::now();",
        &["web"],
    );
    planted(
        "src/record/file.rs",
        "use gloo_storage::LocalStorage;",
        &["web"],
    );
    planted("src/sheet/text.rs", "use leptos::prelude::*;", &["web"]);
    planted(
        "src/bin/desk/main.rs",
        "use wasm_bindgen::JsCast;",
        &["web"],
    );
    planted("src/game/rally.rs", "use std::time::Instant;", &["machine"]);
    planted("src/record/line.rs", "use std::{fmt, fs};", &["machine"]);
    planted(
        "src/game/state.rs",
        "use std::collections::{BTreeMap, HashMap};",
        &["machine"],
    );
    planted(
        "src/game/toss.rs",
        "let coin = fastrand::bool();",
        &["chance"],
    );
}

#[test]
fn the_browser_is_seen_in_the_screen() {
    planted("src/ui/shell.rs", "use web_sys::console;", &["device"]);
    planted(
        "src/ui/shell.rs",
        "use leptos::web_sys::Element;",
        &["device"],
    );
    planted(
        "src/ui/shell.rs",
        "use leptos::wasm_bindgen::JsCast;",
        &["device"],
    );
    planted(
        "src/ui/session.rs",
        "fn f() { leptos::task::spawn_local(async {}); }",
        &["device::spawn"],
    );
    planted(
        "src/ui/play/pad.rs",
        "use leptos::ev::{MouseEvent, WheelEvent};",
        &["WheelEvent"],
    );
}

#[test]
fn what_is_allowed_is_not_reported() {
    planted(
        "src/ui/shell.rs",
        "use leptos::prelude::*;\nuse crate::device::clock;",
        &[],
    );
    planted(
        "src/sheet/text.rs",
        "use crate::{game, record, rules};\nuse std::fmt::Write;",
        &[],
    );
    planted(
        "src/device/clock.rs",
        "use web_sys::window;\nuse super::trouble::Trouble;",
        &[],
    );
    planted(
        "src/game/set.rs",
        "use super::entry::Change;\nuse crate::rules::Team;",
        &[],
    );
    planted("src/game/rehearsal/mod.rs", "use fastrand::Rng;", &[]);
    planted(
        "src/game/mod.rs",
        "pub(crate) fn f() {}\npub(super) fn g() {}",
        &[],
    );
    planted(
        "src/bin/desk/main.rs",
        "let text = std::fs::read_to_string(name);",
        &[],
    );
    // In words it may stand.
    planted(
        "src/rules/mod.rs",
        "//! Unlike `crate::game`.\nconst A: &str = \"crate::ui\"; /* web_sys::x */ const B: char = '\"';\nlet r = r#\"use crate::ui\"#;",
        &[],
    );
}
