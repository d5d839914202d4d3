//! The presets as they stood on 2026-11-28, when a record still wrote only what differed from one.
//!
//! A record of version 1 is read against these values for ever: they are data, and what becomes of
//! [`rules::Preset`] does not touch them. A record of version 2 writes every value itself.

use serde_json::{Map, Value};

use rules::Preset;

const INTERNATIONAL: &str = r#"{
    "edition": "2025",
    "sets": { "best_of": 5 },
    "set": { "target": 25, "lead": 2, "cap": null },
    "decider": { "target": 15, "lead": 2, "cap": null, "change_courts_at": 8 },
    "time_outs": { "per_set": 2, "seconds": 30 },
    "substitutions": { "policy": "paired", "per_set": 6, "entries_per_player": null },
    "liberos": 2,
    "line_ups": true,
    "players_on_court": 6,
    "roster": { "max": 14, "min_number": 1, "max_number": 99 },
    "warm_up": { "style": "shared", "minutes": 10 },
    "interval_seconds": 180,
    "service_seconds": 8,
    "under_net": "standard"
}"#;

const SCHOOL_SENIOR: &str = r#"{
    "substitutions": { "policy": "same_place", "per_set": 12, "entries_per_player": 3 },
    "liberos": 1,
    "warm_up": { "style": "separate", "minutes": 5 }
}"#;

const SCHOOL_JUNIOR: &str = r#"{
    "sets": { "best_of": 3 },
    "substitutions": { "policy": "same_place", "per_set": 12, "entries_per_player": 3 },
    "liberos": 0,
    "warm_up": { "style": "separate", "minutes": 3 },
    "under_net": "junior"
}"#;

const TALLY: &str = r#"{
    "time_outs": { "per_set": null, "seconds": 30 },
    "substitutions": { "policy": "free", "per_set": null, "entries_per_player": null },
    "line_ups": false,
    "roster": { "max": 99, "min_number": 0, "max_number": 999 }
}"#;

/// Every value of a preset as it stood then.
pub(super) fn preset(preset: Preset) -> Map<String, Value> {
    let mut all = read(INTERNATIONAL);
    all.extend(match preset {
        Preset::International => Map::new(),
        Preset::SchoolSenior => read(SCHOOL_SENIOR),
        Preset::SchoolJunior => read(SCHOOL_JUNIOR),
        Preset::Tally => read(TALLY),
    });
    all
}

fn read(json: &str) -> Map<String, Value> {
    // Constants of this file, each read by a test.
    serde_json::from_str(json).unwrap_or_default()
}
