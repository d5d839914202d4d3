//! Records as releases have written them: they are read the same for ever, and their seals fit.

use game::Kind;
use record::{seals, LineWriter};
use render::fold;
use rules::{
    Decider, Edition, Preset, Roster, SetTarget, Sets, SubstitutionPolicy, UnderNet, WarmUpStyle,
};

/// The records of version 1, made by the program of 2026-11-28: one for each preset and one with rules of
/// its own, all of them sealed.
const VERSION_1: [(&str, &str); 5] = [
    ("international", "R36NYJJ9TN"),
    ("own_rules", "KCJFF7E4R2"),
    ("school_junior", "CF4WYW9M2T"),
    ("school_senior", "E89V972X7V"),
    ("tally", "76PNYWAWER"),
];

fn golden(path: &str) -> String {
    let path = format!("{}/tests/golden/{path}", env!("CARGO_MANIFEST_DIR"));
    std::fs::read_to_string(&path).unwrap_or_else(|e| panic!("{path}: {e}"))
}

#[test]
fn a_sealed_record_of_version_1_keeps_its_code_and_its_file() {
    for (name, code) in VERSION_1 {
        let file = golden(&format!("v1/{name}.json"));
        let reading = record::read(&file);
        assert_eq!(reading.problems, [], "{name}");
        let [seal] = &seals(&reading.log.entries)[..] else {
            panic!("{name} has one seal");
        };
        assert_eq!((seal.code.as_str(), seal.found.as_str()), (code, code));
        assert_eq!(record::write(&reading.log), file, "{name}");
    }
}

/// An editor that lays a file out anew changes nothing that was written, so nothing may be said to be changed.
#[test]
fn a_record_of_version_1_keeps_its_seal_in_another_layout() {
    for (name, code) in VERSION_1 {
        let file = golden(&format!("v1/{name}.json"));
        let value: serde_json::Value = serde_json::from_str(&file).expect("JSON");
        let anew = serde_json::to_string_pretty(&value).expect("JSON");
        let reading = record::read(&anew);
        assert_eq!(reading.problems, [], "{name}");
        assert_eq!(seals(&reading.log.entries)[0].found, code, "{name}");
        assert_eq!(record::write(&reading.log), file, "{name}");
    }
}

#[test]
fn a_record_of_version_1_is_folded_as_it_was() {
    for (name, _) in VERSION_1 {
        let file = golden(&format!("v1/{name}.json"));
        let printed = fold(&record::read(&file));
        let then: serde_json::Value =
            serde_json::from_str(&golden(&format!("v1/{name}.state"))).expect("JSON");
        // Later releases may say more; what was said stays.
        for (key, value) in then.as_object().expect("an object") {
            if key != "notices" {
                assert_eq!(&printed[key], value, "{name}: {key}");
            }
        }
    }
}

#[test]
fn stored_lines_of_version_1_go_on_in_their_chain() {
    for name in ["own_rules", "school_junior"] {
        let reading = record::read(&golden(&format!("v1/{name}.json")));
        let mut writer = LineWriter::default();
        let lines: String = reading
            .log
            .entries
            .iter()
            .map(|entry| writer.line(entry) + "\n")
            .collect();
        assert_eq!(lines, golden(&format!("v1/{name}.lines")), "{name}");
    }
}

/// Written out once more, so that a change of a preset or of its frozen copy is seen here.
#[test]
fn the_presets_of_version_1_have_the_values_of_that_day() {
    let rules = |name: &str| {
        let reading = record::read(&golden(&format!("v1/{name}.json")));
        let Kind::Match(heading) = &reading.log.entries[0].kind else {
            panic!("{name} begins with its heading");
        };
        heading.rules
    };
    let junior = rules("school_junior");
    assert_eq!(junior.preset, Preset::SchoolJunior);
    assert_eq!(junior.edition, Edition::E2025);
    assert_eq!(junior.sets, Sets::BestOf(3));
    let points = |target| SetTarget {
        target,
        lead: 2,
        cap: None,
    };
    assert_eq!(junior.set, points(25));
    let decider = Decider {
        to: points(15),
        change_courts_at: Some(8),
    };
    assert_eq!(junior.decider, decider);
    assert_eq!(
        (junior.time_outs.per_set, junior.time_outs.seconds),
        (Some(2), 30)
    );
    let limits = junior.substitutions;
    assert_eq!(limits.policy, SubstitutionPolicy::SamePlace);
    assert_eq!(
        (limits.per_set, limits.entries_per_player),
        (Some(12), Some(3))
    );
    assert_eq!(
        (junior.liberos, junior.line_ups, junior.players_on_court),
        (0, true, 6)
    );
    let roster = Roster {
        max: 14,
        min_number: 1,
        max_number: 99,
    };
    assert_eq!(junior.roster, roster);
    assert_eq!(
        (junior.warm_up.style, junior.warm_up.minutes),
        (WarmUpStyle::Separate, 3)
    );
    assert_eq!((junior.interval_seconds, junior.service_seconds), (180, 8));
    assert_eq!(junior.under_net, UnderNet::Junior);

    let senior = rules("school_senior");
    assert_eq!((senior.sets, senior.liberos), (Sets::BestOf(5), 1));
    assert_eq!(
        (senior.warm_up.minutes, senior.under_net),
        (5, UnderNet::Standard)
    );
    let international = rules("international");
    assert_eq!(international.liberos, 2);
    assert_eq!(
        international.substitutions.policy,
        SubstitutionPolicy::Paired
    );
    assert_eq!(international.substitutions.per_set, Some(6));
    assert_eq!(
        (international.warm_up.style, international.warm_up.minutes),
        (WarmUpStyle::Shared, 10)
    );
    let tally = rules("tally");
    assert_eq!((tally.line_ups, tally.time_outs.per_set), (false, None));
    assert_eq!((tally.roster.max, tally.roster.max_number), (99, 999));
    let own = rules("own_rules");
    assert_eq!((own.decider.to.cap, own.service_seconds), (Some(13), 5));
    assert_eq!((own.roster.max, own.sets), (12, Sets::BestOf(3)));
}

#[test]
fn in_version_2_the_preset_is_a_label_and_decides_nothing() {
    for preset in Preset::ALL {
        let rules = preset.rules();
        let written = record::write_rules(&rules);
        let written = written.as_object().expect("an object");
        for label in [
            "international",
            "school_junior",
            "tally",
            "one of a later day",
        ] {
            let mut other = written.clone();
            other.insert("preset".to_owned(), label.into());
            let read = record::read_rules(&other).expect("every value is there");
            let same = rules::Rules { preset, ..read };
            assert_eq!(same, rules, "{label}");
        }
    }
}
