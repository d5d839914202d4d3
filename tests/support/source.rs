//! The sources of the project as text, for tests that read them.

use std::path::Path;

/// A file: its path from the root of the project with `/`, and its text.
pub struct Source {
    /// As in `src/game/reducer.rs`.
    pub path: String,
    /// As it stands there.
    pub text: String,
}

/// All Rust files below a folder of the project, sorted by path.
pub fn sources(folder: &str) -> Vec<Source> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut found = Vec::new();
    gather(root, &root.join(folder), &mut found);
    found.sort_by(|a, b| a.path.cmp(&b.path));
    assert!(!found.is_empty(), "{folder} has no Rust files");
    found
}

fn gather(root: &Path, folder: &Path, found: &mut Vec<Source>) {
    let entries = std::fs::read_dir(folder).unwrap_or_else(|e| panic!("{}: {e}", folder.display()));
    for entry in entries {
        let path = entry.expect("a readable folder").path();
        if path.is_dir() {
            gather(root, &path, found);
        } else if path.extension().is_some_and(|e| e == "rs") {
            let text = std::fs::read_to_string(&path)
                .unwrap_or_else(|e| panic!("{}: {e}", path.display()));
            let below = path.strip_prefix(root).expect("below the root");
            let path = below.to_string_lossy().replace('\\', "/");
            found.push(Source { path, text });
        }
    }
}

/// The string literals of a source, without those of its tests.
pub fn literals(text: &str) -> Vec<String> {
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
                found.push(words);
            }
            _ => {}
        }
    }
    found
}

/// The code alone: comments and the insides of strings are blank, lines stay where they are.
pub fn code_of(text: &str) -> String {
    let chars: Vec<char> = text.chars().collect();
    let mut out = String::with_capacity(text.len());
    let mut i = 0;
    let blank = |c: char| if c == '\n' { '\n' } else { ' ' };
    while i < chars.len() {
        let rest = &chars[i..];
        let end = match rest {
            ['/', '/', ..] => rest.iter().position(|&c| c == '\n').unwrap_or(rest.len()),
            ['/', '*', ..] => end_of_block_comment(rest),
            ['"', ..] => end_of_string(rest),
            ['r', '"' | '#', ..] if !follows_a_word(&chars, i) => end_of_raw_string(rest),
            ['\'', ..] => end_of_char(rest),
            _ => 0,
        };
        if end == 0 {
            out.push(chars[i]);
            i += 1;
        } else {
            out.extend(rest[..end].iter().copied().map(blank));
            i += end;
        }
    }
    out
}

fn follows_a_word(chars: &[char], i: usize) -> bool {
    i > 0 && (chars[i - 1].is_alphanumeric() || chars[i - 1] == '_')
}

fn end_of_block_comment(rest: &[char]) -> usize {
    let mut depth = 0usize;
    let mut i = 0;
    while i < rest.len() {
        match rest[i..] {
            ['/', '*', ..] => {
                depth += 1;
                i += 2;
            }
            ['*', '/', ..] => {
                depth -= 1;
                i += 2;
                if depth == 0 {
                    return i;
                }
            }
            _ => i += 1,
        }
    }
    rest.len()
}

fn end_of_string(rest: &[char]) -> usize {
    let mut i = 1;
    while i < rest.len() {
        match rest[i] {
            '\\' => i += 2,
            '"' => return i + 1,
            _ => i += 1,
        }
    }
    rest.len()
}

/// Raw strings `r"…"`, `r#"…"#`; nothing for a raw name like `r#type`.
fn end_of_raw_string(rest: &[char]) -> usize {
    let hashes = rest[1..].iter().take_while(|&&c| c == '#').count();
    if rest.get(1 + hashes) != Some(&'"') {
        return 0;
    }
    let mut i = 2 + hashes;
    while i < rest.len() {
        let closes = rest[i] == '"'
            && rest.len() >= i + 1 + hashes
            && rest[i + 1..i + 1 + hashes].iter().all(|&c| c == '#');
        i += 1;
        if closes {
            return i + hashes;
        }
    }
    rest.len()
}

/// `'x'` and `'\n'`; nothing for a lifetime.
fn end_of_char(rest: &[char]) -> usize {
    match rest {
        ['\'', '\\', ..] => rest[2..]
            .iter()
            .position(|&c| c == '\'')
            .map_or(0, |i| i + 3)
            .max(if rest.get(2) == Some(&'\'') { 4 } else { 0 }),
        ['\'', _, '\'', ..] => 3,
        _ => 0,
    }
}
