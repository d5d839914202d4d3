//! The colours of the page as figures: what is text has a contrast of 7:1 or more with the ground that it stands
//! on (Web Content Accessibility Guidelines 2.2, 1.4.6), in light, dark and sunlight.

use std::collections::BTreeMap;
use std::path::Path;

/// The name of a token and its colour.
type Tones = BTreeMap<String, String>;

fn sheet(name: &str) -> String {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("style")
        .join(name);
    std::fs::read_to_string(&path).unwrap_or_else(|e| panic!("{}: {e}", path.display()))
}

/// The sheets that only colour what goes onto paper have no themes.
const ON_PAPER: [&str; 2] = ["paper.css", "print.css"];

fn sheets() -> Vec<(String, String)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("style");
    let mut names: Vec<String> = std::fs::read_dir(folder)
        .expect("the folder of the sheets")
        .map(|entry| {
            entry
                .expect("a readable folder")
                .file_name()
                .into_string()
                .expect("a name")
        })
        .filter(|name| name.ends_with(".css") && !ON_PAPER.contains(&name.as_str()))
        .collect();
    names.sort();
    names
        .into_iter()
        .map(|name| (name.clone(), sheet(&name)))
        .collect()
}

/// Without comments.
fn bare(css: &str) -> String {
    let mut bare = String::new();
    let mut rest = css;
    while let Some((before, after)) = rest.split_once("/*") {
        bare.push_str(before);
        rest = after.split_once("*/").map_or("", |(_, behind)| behind);
    }
    bare + rest
}

/// Each rule that holds no other: its selector and its declarations.
fn rules(css: &str) -> Vec<(String, Vec<(String, String)>)> {
    let css = bare(css);
    let mut rules = Vec::new();
    let mut selector = String::new();
    for part in css.split_inclusive(['{', '}']) {
        if let Some(before) = part.strip_suffix('{') {
            selector = before.trim().to_owned();
        } else if let Some(inside) = part.strip_suffix('}') {
            let declared = inside.split(';').filter_map(|one| {
                let (name, value) = one.split_once(':')?;
                Some((name.trim().to_owned(), value.trim().to_owned()))
            });
            // The end of a rule that holds others closes nothing of its own.
            if !selector.is_empty() {
                rules.push((std::mem::take(&mut selector), declared.collect()));
            }
        }
    }
    rules
}

/// The colours in each light; what a theme does not say, it has from the light one.
fn themes() -> [(&'static str, Tones); 3] {
    let all = rules(&sheet("tokens.css"));
    let of = |selector: &str| -> Tones {
        let found: Vec<_> = all.iter().filter(|(of, _)| of == selector).collect();
        assert_eq!(found.len(), 1, "{selector} stands once");
        let is_colour =
            |(name, value): &&(String, String)| name.starts_with("--") && value.starts_with('#');
        found[0].1.iter().filter(is_colour).cloned().collect()
    };
    let light = of(":root");
    let with = |own: Tones| {
        let mut tones = light.clone();
        tones.extend(own);
        tones
    };
    let dark = of(":root[data-theme=\"dark\"]");
    let by_the_phone = of(":root:not([data-theme=\"light\"], [data-theme=\"sunlight\"])");
    assert_eq!(
        dark, by_the_phone,
        "dark by hand and dark by the phone are the same"
    );
    let sunlight = with(of(":root[data-theme=\"sunlight\"]"));
    [
        ("light", light.clone()),
        ("dark", with(dark)),
        ("sunlight", sunlight),
    ]
}

/// Of a colour `#rrggbb` (WCAG 2.2, relative luminance).
fn luminance(colour: &str) -> f64 {
    let channel = |at: usize| {
        let value = u8::from_str_radix(&colour[at..at + 2], 16)
            .unwrap_or_else(|_| panic!("{colour} is no #rrggbb"));
        let value = f64::from(value) / 255.0;
        if value <= 0.04045 {
            value / 12.92
        } else {
            ((value + 0.055) / 1.055).powf(2.4)
        }
    };
    0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5)
}

fn contrast(one: &str, other: &str) -> f64 {
    let (one, other) = (luminance(one), luminance(other));
    (one.max(other) + 0.05) / (one.min(other) + 0.05)
}

/// The tokens that a name stands for: a team's is either team's, what can be pressed is on the ground or on paper.
fn behind(token: &str) -> Vec<String> {
    let teams = |what: &str| vec![format!("--a-{what}"), format!("--b-{what}")];
    match token {
        "--tint" => vec!["--press".to_owned(), "--press-on-paper".to_owned()],
        "--team-ground" | "--team-tint" => teams("ground"),
        "--team-ink" => teams("ink"),
        "--team-line" => teams("line"),
        own => vec![own.to_owned()],
    }
}

/// Each colour of text with the grounds that it is meant for.
const MEANT: [(&str, &[&str]); 9] = [
    (
        "--ink",
        &["--ground", "--paper", "--press", "--press-on-paper"],
    ),
    (
        "--ink-soft",
        &["--ground", "--paper", "--press", "--press-on-paper"],
    ),
    ("--good", &["--ground", "--paper"]),
    ("--bad", &["--ground", "--paper", "--bad-ground"]),
    ("--warn", &["--warn-ground"]),
    ("--accent-ink", &["--accent"]),
    ("--a-ink", &["--a-ground"]),
    ("--b-ink", &["--b-ground"]),
    ("--card-ink", &["--card-yellow"]),
];

#[test]
fn text_has_a_contrast_of_seven_on_every_ground_that_it_is_meant_for() {
    for (theme, tones) in themes() {
        for (ink, grounds) in MEANT {
            for ground in grounds {
                let found = contrast(&tones[ink], &tones[*ground]);
                assert!(found >= 7.0, "{theme}: {ink} on {ground} has {found:.2}");
            }
        }
    }
}

/// What a rule says about text and the ground under it in one breath is a pair, whoever wrote it.
#[test]
fn every_rule_that_sets_both_keeps_the_contrast() {
    let themes = themes();
    let token = |value: &str| {
        let inside = value.strip_prefix("var(")?.strip_suffix(')')?;
        Some(inside.split(',').next()?.to_owned())
    };
    let mut pairs = 0;
    for (name, css) in sheets() {
        for (selector, declared) in rules(&css) {
            let of = |what: &str| {
                declared
                    .iter()
                    .rev()
                    .find(|(name, _)| name == what)
                    .and_then(|(_, value)| token(value))
            };
            let (Some(ink), Some(ground)) = (of("color"), of("background")) else {
                continue;
            };
            pairs += 1;
            for (theme, tones) in &themes {
                // Both of a team are the same team's.
                for (ink, ground) in behind(&ink).iter().flat_map(|ink| {
                    behind(&ground)
                        .into_iter()
                        .map(move |ground| (ink.clone(), ground))
                }) {
                    let team = |token: &str| {
                        token
                            .strip_prefix("--")?
                            .split_once('-')
                            .map(|(team, _)| team.to_owned())
                            .filter(|team| ["a", "b"].contains(&team.as_str()))
                    };
                    if team(&ink).is_some()
                        && team(&ground).is_some()
                        && team(&ink) != team(&ground)
                    {
                        continue;
                    }
                    let tone = |token: &String| {
                        let found = tones.get(token);
                        found.unwrap_or_else(|| panic!("{name}, {selector}: {token} is no colour"))
                    };
                    let found = contrast(tone(&ink), tone(&ground));
                    assert!(
                        found >= 7.0,
                        "{name}, {selector}, {theme}: {ink} on {ground} has {found:.2}"
                    );
                }
            }
        }
    }
    assert!(pairs > 20, "only {pairs} pairs were found");
}

/// The ring around what has the keys is seen against what it lies on (WCAG 2.2, 1.4.11): 3:1.
#[test]
fn the_ring_of_the_keys_is_seen_on_every_ground() {
    for (theme, tones) in themes() {
        for ground in [
            "--ground",
            "--paper",
            "--press",
            "--press-on-paper",
            "--a-ground",
            "--b-ground",
        ] {
            let found = contrast(&tones["--focus"], &tones[ground]);
            assert!(found >= 3.0, "{theme}: the ring on {ground} has {found:.2}");
        }
    }
}

/// No sheet of a screen has a colour of its own.
#[test]
fn colours_stand_in_the_tokens_alone() {
    for (name, css) in sheets() {
        if name == "tokens.css" {
            continue;
        }
        for (selector, declared) in rules(&css) {
            for (what, value) in declared {
                assert!(
                    !value.contains('#') && !value.contains("rgb("),
                    "{name}, {selector}: {what}: {value}"
                );
            }
        }
    }
}
