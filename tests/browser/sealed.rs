//! The end of a record: signed, sealed, opened again, handed over by file and by codes.

use game::{simulate, Entry, Kind, Timeline};
use record::{frames, pack, seal_code, Code, Gathering, Log, Seen};
use reports::{Sheet, WallClock};
use rules::Preset;
use serde_json::json;

use crate::driver::Engine;
use crate::kept::begun;
use crate::referee::{Referee, Side};
use crate::stage::Stage;
use crate::{Ran, Test, BOTH};

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "a_match_is_signed_sealed_and_reopened",
        engines: &[Engine::Chromium],
        run: a_match_is_signed_sealed_and_reopened,
    },
    Test {
        name: "a_match_that_was_broken_off_and_sealed_is_not_continued",
        engines: &[Engine::Chromium],
        run: broken_off_and_sealed,
    },
    Test {
        name: "a_changed_byte_of_an_export_is_said_with_its_place",
        engines: &[Engine::Chromium],
        run: a_changed_byte_of_an_export_is_said_with_its_place,
    },
    Test {
        name: "a_file_leaves_by_the_list_of_apps_or_by_download",
        engines: &[Engine::Chromium],
        run: a_file_leaves_by_the_list_of_apps_or_by_download,
    },
    Test {
        name: "codes_on_the_screen_are_the_record",
        engines: &[Engine::Chromium],
        run: codes_on_the_screen_are_the_record,
    },
    Test {
        name: "a_record_comes_in_from_a_hand_scanner",
        engines: BOTH,
        run: a_record_comes_in_from_a_hand_scanner,
    },
    Test {
        name: "a_record_comes_in_from_photos_of_its_codes",
        engines: &[Engine::Chromium],
        run: a_record_comes_in_from_photos_of_its_codes,
    },
];

/// A match that was played and not signed yet.
pub fn played(preset: Preset, seed: u64) -> Vec<Entry> {
    let mut entries = simulate(preset, seed);
    let last = entries
        .iter()
        .rposition(|e| matches!(e.kind, Kind::Rally { .. }));
    entries.truncate(last.expect("a rally") + 1);
    entries
}

/// A name as a finger draws it.
fn draw_name(referee: &mut Referee) {
    let field = referee.browser().find(".drawer .sign-pad");
    referee.browser().over(&field);
    let place = referee.browser().value(
        "(({ left, top, width, height }) => [left + width / 4, top + height / 2, left + width / 2, \
         top + height / 4].map(Math.round))(document.querySelector('.drawer .sign-pad').getBoundingClientRect())",
    );
    let at = |i: usize| place[i].as_i64().expect("a place");
    let line = [(at(0), at(1)), (at(2), at(3)), (at(2), at(1))];
    referee.browser().draw(&line);
}

/// Nothing can be entered under a seal, so nobody is led back to the court; the sheet opens the record again.
fn broken_off_and_sealed(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    referee.go_on_with("broken-off", begun());
    referee.point(Side::Left);
    referee.tap("Menu");
    referee.tap("Sheet");
    referee.tap_at("#broken-off");
    referee.tap_at("#seal");
    referee.reads("Write this code on paper");
    referee.saved();
    referee.stage.open();
    referee.browser().find(".sheet-open");
    assert_eq!(
        referee
            .browser()
            .value("document.querySelector('#continue')"),
        json!(null)
    );
    referee.tap_at(".sheet-open");
    referee.tap_at("#reopen");
    referee.browser().find("#reopen-why, .drawer input");
    Ok(())
}

fn a_match_is_signed_sealed_and_reopened(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    referee.go_on_with("to-seal", played(Preset::SchoolJunior, 3));
    referee.reads("Sign and seal");
    referee.reads("Not signed yet: Captain A, Captain B, Scorer, Second referee, First referee.");
    for who in [
        "Captain A",
        "Captain B",
        "Scorer",
        "Second referee",
        "First referee",
    ] {
        referee.tap(&format!("{who}: not signed"));
        match who {
            "Scorer" => {
                let field = referee.browser().find("#sign-name-scorer");
                referee.browser().write(&field, "M. Teal");
            }
            // With a finger, from corner to corner.
            "Captain A" => draw_name(&mut referee),
            _ => {}
        }
        referee.tap_in(".drawer", "Save signature");
    }
    referee.reads("Scorer: M. Teal, signed");
    // The one that was drawn stands on the sheet and in its page, the others as words.
    let drawn = ".sign-box svg.pen path";
    referee.browser().find(drawn);
    let count = format!("document.querySelectorAll('{drawn}').length");
    assert_eq!(referee.browser().value(&count), json!(1));
    referee.reads_at(".signatures", "Scorer M. Teal");
    let downloads = referee.catch_downloads();
    referee.tap_at("#sheet-page");
    let (_, page) = referee.caught(&downloads);
    assert_eq!(page.matches("<svg class=\"pen\"").count(), 1);
    assert!(
        !page.contains("src=") && !page.contains("href="),
        "it asks for nothing"
    );
    let before = referee.kept().entries();
    referee.tap_at("#seal");
    referee.reads("Write this code on paper");
    let code = record::spaced(&seal_code(&before));
    assert_eq!(referee.browser().text("#check-code"), code);
    referee.reads_at(".sheet-seal", &code);
    referee.browser().picture("sealed");

    // Under a seal nothing is entered; the way out is said.
    referee.tap("Reopen");
    referee.tap_in(".drawer", "Reopen");
    referee.reads("Say in a few words why.");
    let field = referee.browser().find("#closing-field");
    referee.browser().write(&field, "wrong name");
    referee.tap_in(".drawer", "Reopen");
    referee.reads("Sign and seal");
    referee.reads_at(
        ".sheet-remarks",
        "The sealed record was reopened: wrong name.",
    );
    referee.tap_at("#seal");
    referee.reads("Write this code on paper");
    referee.reads_at(
        ".sheet-seal",
        "It was sealed 2 times and reopened in between.",
    );
    let entries = referee.kept().entries();
    let seals = record::seals(&entries);
    assert_eq!(seals.len(), 2);
    assert!(seals.iter().all(record::Seal::fits));
    assert_ne!(record::spaced(&seals[1].code), code);
    Ok(())
}

/// A match that was played and sealed.
pub fn sealed(preset: Preset, seed: u64, id: &str) -> Log {
    let mut entries = played(preset, seed);
    let code = seal_code(&entries);
    let n = entries.len() as u32 + 1;
    let at = entries.last().and_then(|e| e.at);
    entries.push(Entry {
        at,
        ..Entry::new(n, Kind::Seal { code })
    });
    Log {
        id: id.to_owned(),
        entries,
    }
}

/// The sheet as a page and its points are, to the byte, what the core prints on the command line.
fn saved_as_the_desk_prints(referee: &mut Referee, downloads: &std::path::Path, log: &Log) {
    let timeline = Timeline::of(log.entries.clone());
    let at = log.entries.iter().find_map(|e| e.at).expect("a time");
    let ahead = format!("-new Date({at}).getTimezoneOffset()");
    let ahead = referee.browser().value(&ahead).as_i64().expect("minutes");
    let clock = WallClock(i32::try_from(ahead).expect("a few hours"));
    referee.tap_at("#sheet-page");
    let (_, page) = referee.caught(downloads);
    assert_eq!(page, render::document(&Sheet::of(&timeline), clock));
    referee.tap_at("#sheet-points");
    let (_, points) = referee.caught(downloads);
    assert_eq!(points, render::points_csv(&[(&log.id, &timeline)], clock));
}

fn a_changed_byte_of_an_export_is_said_with_its_place(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let downloads = referee.catch_downloads();
    let log = sealed(Preset::SchoolJunior, 4, "to-change");
    referee.go_on_with("to-change", log.entries.clone());
    saved_as_the_desk_prints(&mut referee, &downloads, &log);
    referee.tap_at("#export-sheet");
    referee.tap("Share the file");
    let (_, text) = referee.caught(&downloads);
    assert_eq!(text, record::write(&log));
    referee.reads("in this browser's downloads");

    // The winner of the last rally is turned round.
    let line = text.rfind("\"won_by\":\"").expect("a rally") + "\"won_by\":\"".len();
    let mut bytes = text.clone().into_bytes();
    bytes[line] = if bytes[line] == b'A' { b'B' } else { b'A' };
    let entry = text[..line].matches('\n').count();
    referee.stage.open();
    referee.open_file("changed.json", &bytes);
    referee.reads(&format!(
        "changed.json, entry {entry}: the entry or its link was changed after it was written"
    ));
    referee.reads("what stands before the seal is not what was sealed");
    Ok(())
}

/// Stands in for a phone's list of apps, which no browser here has: it takes one file and remembers it,
/// or fails with an error of this name. With the second argument the page is an app installed on iOS.
const STAND_IN: &str = "const [error, onIos] = arguments;
    window.shared = null;
    const set = (name, value) => Object.defineProperty(navigator, name, { value, configurable: true });
    set('standalone', onIos);
    set('canShare', (data) => data.files.length === 1);
    set('share', async (data) => {
      if (error !== null) throw new DOMException('', error);
      const [file] = data.files;
      window.shared = [file.name, file.type, await file.text()];
    });";

fn a_file_leaves_by_the_list_of_apps_or_by_download(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let downloads = referee.catch_downloads();
    let log = sealed(Preset::SchoolJunior, 5, "to-share");
    referee.go_on_with("to-share", log.entries.clone());
    referee.tap_at("#export-sheet");
    let give = |referee: &mut Referee, error: serde_json::Value, on_ios: bool| {
        referee.browser().run(STAND_IN, json!([error, on_ios]));
        referee.tap("Share the file");
    };
    give(&mut referee, json!(null), false);
    referee.reads("The file was shared.");
    let shared = referee.browser().value("window.shared");
    assert_eq!(shared[1], "application/json");
    assert_eq!(shared[2], record::write(&log));
    // Closed again by the person: no error, and no download that nobody asked for.
    give(&mut referee, json!("AbortError"), false);
    referee.reads("Nothing was shared.");
    // Promised and then refused: it goes to the downloads.
    give(&mut referee, json!("DataError"), false);
    referee.reads("is in this browser's downloads.");
    assert_eq!(referee.caught(&downloads).1, record::write(&log));
    // In an app installed on iOS a download would be a page with no way back.
    give(&mut referee, json!("NotAllowedError"), true);
    referee.reads("The phone did not allow the file to be shared. Tap again.");
    give(&mut referee, json!("DataError"), true);
    referee.reads("Show the record as codes to another phone.");
    give(&mut referee, json!(null), true);
    referee.reads("The file was shared.");
    let left = std::fs::read_dir(&downloads).expect("the folder").count();
    assert_eq!(left, 0, "something was downloaded");
    Ok(())
}

/// The code on the screen as the browser has drawn it, in grey.
const DRAWN: &str = "const svg = document.querySelector('svg.code');
    const copy = svg.cloneNode(true);
    const side = svg.viewBox.baseVal.width * 4;
    copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg');
    copy.setAttribute('width', side);
    copy.setAttribute('height', side);
    const colour = (css) => getComputedStyle(svg.querySelector(css)).fill;
    copy.querySelector('.code-light').setAttribute('fill', colour('.code-light'));
    copy.querySelector('.code-dark').setAttribute('fill', colour('.code-dark'));
    const image = new Image();
    image.src = 'data:image/svg+xml,' + encodeURIComponent(copy.outerHTML);
    window.drawn = image.decode().then(() => {
      const canvas = document.createElement('canvas');
      canvas.width = canvas.height = side;
      const context = canvas.getContext('2d');
      context.drawImage(image, 0, 0);
      const pixels = context.getImageData(0, 0, side, side).data;
      let grey = '';
      for (let i = 0; i < pixels.length; i += 4) grey += pixels[i] > 127 ? '1' : '0';
      window.drawnGrey = grey;
    });
    window.drawnGrey = null;";

/// A code as the browser has drawn it.
pub struct Picture {
    /// Pixels along a side.
    pub side: usize,
    /// Their brightness.
    pub grey: Vec<u8>,
    /// What a decoder that is not ours reads in it.
    pub text: String,
}

fn read_drawn(referee: &mut Referee) -> Picture {
    referee.browser().run(DRAWN, json!([]));
    referee
        .browser()
        .wait_until("a drawing", "window.drawnGrey !== null");
    let grey = referee.browser().value("window.drawnGrey");
    let bits = grey.as_str().expect("a text").bytes();
    let grey: Vec<u8> = bits.map(|b| if b == b'1' { 240 } else { 20 }).collect();
    let side = grey.len().isqrt();
    let at = |x: usize, y: usize| grey[y * side + x];
    let mut picture = rqrr::PreparedImage::prepare_from_greyscale(side, side, at);
    let grids = picture.detect_grids();
    let text = grids[0].decode().expect("a code").1;
    Picture { side, grey, text }
}

/// All codes that the page shows one after the other, once round.
pub fn drawn_codes(referee: &mut Referee) -> Vec<Picture> {
    referee.browser().find("#codes-run");
    if referee.sees("Pause") {
        referee.tap("Pause");
    }
    let mut all: Vec<Picture> = Vec::new();
    loop {
        let picture = read_drawn(referee);
        if all.first().is_some_and(|first| first.text == picture.text) {
            return all;
        }
        assert!(all.len() < 12, "the codes do not come round");
        all.push(picture);
        referee.tap_at("#codes-next");
    }
}

fn codes_on_the_screen_are_the_record(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let log = sealed(Preset::SchoolJunior, 6, "to-show");
    referee.go_on_with("to-show", log.entries.clone());
    referee.tap_at("#export-sheet");
    referee.tap("Show the code");
    referee.browser().picture("code");
    let text = read_drawn(&mut referee).text;
    assert_eq!(
        Gathering::default().see(&text),
        Seen::Record(Box::new(log.clone()))
    );

    // The same in simpler codes, more of them.
    referee.tap("Hard to scan? Show more, simpler codes");
    let mut gathering = Gathering::default();
    let codes = drawn_codes(&mut referee);
    assert!(codes.len() > 1);
    let last = codes.iter().map(|code| gathering.see(&code.text)).last();
    assert_eq!(last, Some(Seen::Record(Box::new(log))));
    Ok(())
}

/// A picture of a code as a BMP of eight bits, grey.
pub fn photo(text: &str) -> Vec<u8> {
    let code = Code::of_digits(text).expect("it fits");
    let pixels = 4;
    // A multiple of four, as rows of this format are.
    let side = (code.size() + 8) * pixels;
    let size = u32::try_from(side).expect("small");
    let head = 14 + 40 + 1024u32;
    let mut bmp = b"BM".to_vec();
    for field in [head + size * size, 0, head, 40, size, size] {
        bmp.extend(field.to_le_bytes());
    }
    bmp.extend([1, 0, 8, 0]);
    for field in [0, size * size, 2835, 2835, 256, 0u32] {
        bmp.extend(field.to_le_bytes());
    }
    (0..=255u8).for_each(|grey| bmp.extend([grey, grey, grey, 0]));
    for y in (0..side).rev() {
        for x in 0..side {
            let field = |n: usize| (n / pixels).checked_sub(4);
            let dark = field(x)
                .zip(field(y))
                .is_some_and(|(x, y)| code.is_dark(x, y));
            bmp.push(if dark { 30 } else { 225 });
        }
    }
    bmp
}

/// A hand scanner types the digits of a code and ends them with a line; whoever pastes them presses the
/// button.
fn a_record_comes_in_from_a_hand_scanner(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let log = sealed(Preset::SchoolJunior, 7, "by-scanner");
    let texts = frames(&pack(&log).expect("it packs"), 500).expect("not too long");
    let (last, before) = texts.split_last().expect("codes");
    assert!(!before.is_empty());
    referee.tap("Scan a match");
    referee.tap_at("#digits-read");
    referee.reads("The field is empty.");
    let field = referee.browser().find("#digits");
    referee.browser().write(&field, "281474976710655\n");
    referee.reads("This is not a code of a match record.");
    for (i, text) in before.iter().enumerate() {
        referee.browser().write(&field, &format!("{text}\n"));
        referee.reads(&format!("{} of {} codes are here.", i + 1, texts.len()));
    }
    referee.browser().picture("scanned-by-hand");
    referee.browser().write(&field, last);
    referee.tap_at("#digits-read");
    referee.reads("The record is on this phone now.");
    referee.tap_at("#received-open");
    referee.reads("Write this code on paper");
    assert_eq!(referee.kept().entries(), log.entries);
    Ok(())
}

fn a_record_comes_in_from_photos_of_its_codes(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let log = sealed(Preset::SchoolJunior, 7, "by-photo");
    let texts = frames(&pack(&log).expect("it packs"), 500).expect("not too long");
    assert!(texts.len() > 1);
    referee.tap("Scan a match");
    let choose = |referee: &mut Referee, name: &str, content: &[u8]| {
        let file = referee.stage.scratch(name);
        std::fs::write(&file, content).expect("room for a photo");
        let field = referee.browser().find("#photo");
        referee.browser().choose_file(&field, &file);
    };
    let code_of_others = photo("281474976710655");
    choose(&mut referee, "other.bmp", &code_of_others);
    referee.reads("This is not a code of a match record.");
    for (i, text) in texts.iter().enumerate() {
        choose(&mut referee, &format!("part-{i}.bmp"), &photo(text));
        if i + 1 < texts.len() {
            referee.reads(&format!("{} of {} codes are here.", i + 1, texts.len()));
        }
    }
    referee.reads("The record is on this phone now.");
    referee.browser().picture("received");
    referee.tap_at("#received-open");
    referee.reads("Write this code on paper");
    assert_eq!(referee.kept().entries(), log.entries);
    Ok(())
}
