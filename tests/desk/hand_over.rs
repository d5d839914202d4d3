//! A record is packed and unpacked on the command line, for a hand-over as codes.

use record::Log;
use rules::Preset;

use super::command::{desk, file, output, simulated};

/// A record through the hand-over and back, on the command line; how many bytes went.
fn there_and_back(name: &str, text: &str) -> usize {
    let packed = output(&["pack", &file(&format!("{name}.json"), text)]);
    assert_eq!(packed.status.code(), Some(0), "{name}: {packed:?}");
    let back = output(&["unpack", &file(&format!("{name}.pack"), &packed.stdout)]);
    assert_eq!(back.status.code(), Some(0), "{name}: {back:?}");
    assert_eq!(
        String::from_utf8(back.stdout).expect("text"),
        text,
        "{name}"
    );
    packed.stdout.len()
}

#[test]
fn pack_and_unpack_bring_every_record_back_to_the_byte() {
    for topic in [
        "libero",
        "late_faults",
        "misconduct",
        "strike_explain",
        "school_and_tally",
    ] {
        for (n, case) in super::support::case::cases(topic)
            .iter()
            .enumerate()
            .step_by(4)
        {
            let log = record::read(&case.input.to_string()).without_gaps();
            if !log.entries.is_empty() {
                there_and_back(&format!("{topic}-{n}"), &record::write(&log));
            }
        }
    }
    for preset in Preset::ALL {
        let log = Log {
            id: format!("handed over \u{e9} {}", preset.code()),
            entries: game::simulate(preset, 11),
        };
        let bytes = there_and_back(preset.code(), &record::write(&log));
        assert!(bytes < 1_500, "{bytes}");
    }
}

#[test]
fn a_bad_hand_over_is_said_with_the_way_out() {
    let record = file("to-pack.json", &simulated(5));
    let packed = output(&["pack", &record]).stdout;
    let spoilt = |name: &str, change: &dyn Fn(&mut Vec<u8>)| {
        let mut bytes = packed.clone();
        change(&mut bytes);
        let run = desk(&["unpack", &file(name, &bytes)]);
        assert_eq!((run.status, run.out.as_str()), (2, ""), "{name}");
        assert!(run.err.contains(name), "{}", run.err);
        run.err
    };
    let damaged = "The packed record is damaged. Share it again.";
    assert!(spoilt("cut.pack", &|b| b.truncate(b.len() / 2)).contains(damaged));
    assert!(spoilt("flipped.pack", &|b| b[20] ^= 4).contains(damaged));
    assert!(spoilt("newer.pack", &|b| b[0] += 1).contains("newer version"));
    assert!(spoilt("nothing.pack", &|b| b.clear()).contains("There is nothing in this file."));
    assert!(spoilt("long.pack", &|b| b.resize(100_000, 0)).contains("too long"));
    // A record is no hand-over.
    let err = desk(&["unpack", &record]).err;
    assert!(err.contains("This is a match record"), "{err}");
    assert_eq!(desk(&["pack", &record, &record]).status, 2);
    // A gap cannot be packed; the file can be handed over all the same.
    let gap = simulated(5)
        .lines()
        .filter(|l| !l.contains("\"n\":9,"))
        .collect::<Vec<_>>()
        .join("\n");
    let run = desk(&["pack", &file("gap.json", &gap)]);
    assert_eq!(run.status, 2);
    assert!(run.err.contains("Share the file."), "{}", run.err);
}
