//! What several tests share: the standard opening of a match, the expander of the worked cases and
//! logs drawn at random.
#![allow(dead_code)] // Each test file uses its part.

pub mod case;
pub mod language;
pub mod perspicuity;
pub mod random;
pub mod readability;
pub mod source;

use game::entry::{Heading, Player, TeamList, Toss};
use game::{Entry, Kind, State, Timeline};
use rules::{ByTeam, Preset, Rules, Shirt, Team};

/// Numbers entries from 1 in their order.
pub fn numbered(kinds: impl IntoIterator<Item = Kind>) -> Vec<Entry> {
    (1..)
        .zip(kinds)
        .map(|(n, kind)| Entry::new(n, kind))
        .collect()
}

/// A match between the Otters and the Herons.
pub fn heading(rules: Rules) -> Kind {
    Kind::Match(Box::new(Heading::new(
        ByTeam {
            a: "Otters".into(),
            b: "Herons".into(),
        },
        rules,
    )))
}

/// Players 1 to `players`, captain 1, the given liberos.
pub fn list(team: Team, players: u16, liberos: &[u16]) -> Kind {
    let player = |n| Player {
        number: Shirt(n),
        name: None,
        captain: n == 1,
        libero: liberos.contains(&n),
    };
    Kind::TeamList(TeamList {
        team,
        players: (1..=players).map(player).collect(),
        staff: vec![],
    })
}

/// A line-up from place 1 on.
pub fn line_up(team: Team, numbers: &[u16]) -> Kind {
    Kind::LineUp {
        team,
        positions: numbers.iter().map(|&n| Shirt(n)).collect(),
    }
}

/// Both line-ups 1 to as many as play, and the beginning of the set.
pub fn set_begins(rules: &Rules) -> Vec<Kind> {
    let numbers: Vec<u16> = (1..=u16::from(rules.players_on_court)).collect();
    let mut kinds: Vec<Kind> = Team::BOTH.map(|team| line_up(team, &numbers)).into();
    kinds.push(Kind::BeginSet);
    kinds
}

/// The opening of a match up to its first service: A serves and stands left, players 1 to 12, and
/// number 12 the libero where there is one.
pub fn opening(rules: Rules) -> Vec<Kind> {
    let liberos: &[u16] = if rules.liberos > 0 { &[12] } else { &[] };
    let mut kinds = vec![
        heading(rules),
        list(Team::A, 12, liberos),
        list(Team::B, 12, liberos),
    ];
    kinds.push(Kind::Toss(Toss::new(Team::A, Team::A)));
    kinds.extend(set_begins(&rules));
    kinds
}

/// The rules of all presets.
pub fn presets() -> [Rules; 4] {
    Preset::ALL.map(Preset::rules)
}

/// Rallies, one for each letter, won by that team.
pub fn run(letters: &str) -> Vec<Kind> {
    letters
        .chars()
        .map(|c| Kind::Rally {
            won_by: if c == 'A' { Team::A } else { Team::B },
            cause: None,
            by: None,
        })
        .collect()
}

/// The fold of an international match with these entries behind its opening.
pub fn played(more: impl IntoIterator<Item = Kind>) -> Timeline {
    played_by(Preset::International.rules(), more)
}

/// The same by other rules.
pub fn played_by(rules: Rules, more: impl IntoIterator<Item = Kind>) -> Timeline {
    Timeline::of(numbered(opening(rules).into_iter().chain(more)))
}

/// All kinds of entry that the match-log contract names.
pub const EVERY_KIND: [&str; 34] = [
    "match",
    "heading",
    "team_list",
    "check",
    "toss",
    "line_up",
    "begin_set",
    "rally",
    "explain",
    "replay",
    "time_out",
    "substitution",
    "libero_replacement",
    "new_libero",
    "improper_request",
    "delay",
    "misconduct",
    "late_fault",
    "recovery",
    "incomplete",
    "default",
    "change_courts",
    "suspend",
    "resume",
    "timer",
    "game_captain",
    "protest",
    "protest_statement",
    "remark",
    "sign",
    "strike",
    "seal",
    "reopen",
    "answer",
];

/// The kind of an entry as the log names it.
pub fn code(kind: &Kind) -> String {
    let json = record::write_entry(&Entry::new(1, kind.clone()));
    let value: serde_json::Value = serde_json::from_str(&json).expect("written by us");
    value["kind"].as_str().expect("a kind").to_owned()
}

/// A state without what a refused request leaves open: its legal part (15.10.4).
pub fn counts(state: &State) -> String {
    let text = format!("{state:?}");
    let mut parts = text.split("open_part: [");
    let mut out = parts.next().unwrap_or_default().to_owned();
    for part in parts {
        out.push_str(part.split_once(']').map_or(part, |(_, behind)| behind));
    }
    out
}
