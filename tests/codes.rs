//! A record handed over by QR codes: drawn by us, read by two decoders that are not ours, put together
//! in whatever order a camera saw them.

use std::process::Command;

use game::simulate;
use proptest::prelude::*;
use record::{frames, pack, Code, Gathering, Log, PackProblem, Seen, DIGITS_LARGE, DIGITS_SMALL};
use rules::Preset;

fn log(preset: Preset, seed: u64) -> Log {
    Log {
        id: format!("code-{seed}"),
        entries: simulate(preset, seed),
    }
}

fn texts(log: &Log, digits: usize) -> Vec<String> {
    frames(&pack(log).expect("it packs"), digits).expect("it is not too long")
}

/// A picture of a code as a camera would have it: grey, a margin, some pixels a field.
struct Picture {
    side: usize,
    grey: Vec<u8>,
}

fn picture(code: &Code, pixels: usize) -> Picture {
    let side = (code.size() + 8) * pixels;
    let mut grey = vec![235; side * side];
    for y in 0..code.size() {
        for x in 0..code.size() {
            if code.is_dark(x, y) {
                for py in 0..pixels {
                    let from = ((y + 4) * pixels + py) * side + (x + 4) * pixels;
                    grey[from..from + pixels].fill(25);
                }
            }
        }
    }
    Picture { side, grey }
}

fn read_by_rqrr(picture: &Picture) -> Vec<String> {
    let side = picture.side;
    let mut prepared =
        rqrr::PreparedImage::prepare_from_greyscale(side, side, |x, y| picture.grey[y * side + x]);
    let grids = prepared.detect_grids();
    grids
        .iter()
        .filter_map(|g| g.decode().ok().map(|d| d.1))
        .collect()
}

/// None where the decoder is not installed.
fn read_by_zbar(picture: &Picture, name: &str) -> Option<String> {
    let path = std::env::temp_dir().join(format!("dutystand-{}-{name}.pgm", std::process::id()));
    let mut file = format!("P5 {0} {0} 255\n", picture.side).into_bytes();
    file.extend(&picture.grey);
    std::fs::write(&path, file).expect("room for a picture");
    let ran = Command::new("zbarimg")
        .args(["--quiet", "--raw", "-Sdisable", "-Sqrcode.enable"])
        .arg(&path)
        .output();
    std::fs::remove_file(&path).expect("it was written just now");
    let ran = ran.ok()?;
    assert!(ran.status.success(), "zbarimg: {ran:?}");
    Some(
        String::from_utf8(ran.stdout)
            .expect("digits")
            .trim()
            .to_owned(),
    )
}

/// Two decoders of other origins read every code and give its text.
#[test]
fn two_foreign_decoders_read_every_code() {
    let mut without_zbar = false;
    for (seed, digits) in [(1, DIGITS_LARGE), (2, DIGITS_SMALL)] {
        let log = log(Preset::International, seed);
        let mut gathering = Gathering::default();
        let mut last = Seen::Again;
        for (i, text) in texts(&log, digits).iter().enumerate() {
            let code = Code::of_digits(text).expect("it fits");
            assert!(digits == DIGITS_LARGE || code.size() <= 57);
            let picture = picture(&code, 4);
            let read = read_by_rqrr(&picture);
            assert_eq!(read, std::slice::from_ref(text), "rqrr");
            match read_by_zbar(&picture, &format!("{seed}-{i}")) {
                Some(read) => assert_eq!(&read, text, "zbar"),
                None => without_zbar = true,
            }
            last = gathering.see(&read[0]);
        }
        assert_eq!(last, Seen::Record(Box::new(log)));
    }
    if without_zbar {
        println!(
            "skipped: zbarimg is not here (Debian: zbar-tools), rqrr alone has read the codes"
        );
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 40, failure_persistence: None, ..ProptestConfig::default() })]

    /// Lost, doubled and in any order: what was lost is named, and comes later.
    #[test]
    fn codes_come_in_any_order(
        seed in 1u64..6,
        order in Just((0..40usize).collect::<Vec<_>>()).prop_shuffle(),
        again in proptest::collection::vec(0..40usize, 0..12),
    ) {
        let log = log(Preset::SchoolJunior, seed);
        let texts = texts(&log, 160);
        let of = texts.len();
        prop_assume!(of > 3);
        let mut gathering = Gathering::default();
        let lost = order[0] % of;
        let seen = order.iter().chain(&again).map(|i| i % of).filter(|i| *i != lost);
        let mut first: Vec<bool> = vec![true; of];
        for i in seen {
            let got = gathering.see(&texts[i]);
            if std::mem::take(&mut first[i]) {
                let have = first.iter().filter(|f| !**f).count();
                prop_assert_eq!(got, Seen::Part { have, of });
            } else {
                prop_assert_eq!(got, Seen::Again);
            }
        }
        prop_assert_eq!(gathering.missing(), vec![lost + 1]);
        prop_assert_eq!(gathering.see(&texts[lost]), Seen::Record(Box::new(log)));
        prop_assert!(gathering.missing().is_empty());
    }

    #[test]
    fn whatever_a_camera_reads_is_told_apart(text in "[0-9]{0,60}|\\PC{0,40}") {
        let mut gathering = Gathering::default();
        let said = matches!(gathering.see(&text), Seen::Nothing(_) | Seen::Part { .. });
        prop_assert!(said);
    }

    /// Codes changed by hand: nothing panics, and a record comes only as it was.
    #[test]
    fn a_changed_code_gives_no_other_record(seed in 0u64..3, at in any::<prop::sample::Index>(), with in 1u8..10) {
        let log = log(Preset::SchoolJunior, seed);
        let mut texts = texts(&log, 300);
        let mut digits = texts[0].clone().into_bytes();
        let at = at.index(digits.len());
        digits[at] = b'0' + (digits[at] - b'0' + with) % 10;
        texts[0] = String::from_utf8(digits).expect("digits");
        let mut gathering = Gathering::default();
        for text in &texts {
            if let Seen::Record(found) = gathering.see(text) {
                prop_assert_eq!(&*found, &log);
            }
        }
    }
}

#[test]
fn a_part_of_another_record_is_left_out() {
    let (one, other) = (
        texts(&log(Preset::SchoolJunior, 1), 300),
        texts(&log(Preset::SchoolJunior, 2), 300),
    );
    let mut gathering = Gathering::default();
    assert!(matches!(gathering.see(&one[0]), Seen::Part { have: 1, .. }));
    assert_eq!(gathering.see(&other[1]), Seen::OtherRecord);
    assert!(matches!(gathering.see(&one[1]), Seen::Part { have: 2, .. }));
    gathering.clear();
    assert!(matches!(
        gathering.see(&other[1]),
        Seen::Part { have: 1, .. }
    ));
}

/// The number of something else altogether is not taken for a newer version.
#[test]
fn a_foreign_number_is_said_to_be_foreign() {
    let seen = Gathering::default().see("281474976710655");
    assert_eq!(seen, Seen::Nothing(PackProblem::ForeignCode));
}
