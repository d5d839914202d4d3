//! Live scanning: what one page shows on its screen is filmed and held before the camera of another.

use std::path::PathBuf;

use record::Log;
use rules::Preset;
use serde_json::json;

use crate::driver::Engine;
use crate::referee::Referee;
use crate::sealed::{drawn_codes, sealed, Picture};
use crate::stage::{Camera, Stage};
use crate::{Ran, Test};

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "a_camera_takes_a_record_from_another_screen",
        engines: &[Engine::Chromium],
        run: a_camera_takes_a_record_from_another_screen,
    },
    Test {
        name: "a_camera_that_is_refused_or_missing_is_said_with_the_way_out",
        engines: &[Engine::Chromium],
        run: a_camera_that_is_refused_or_missing_is_said_with_the_way_out,
    },
    Test {
        name: "a_stand_in_for_the_browser_s_own_reader_is_asked_and_replaced",
        engines: &[Engine::Chromium],
        run: a_stand_in_for_the_browser_s_own_reader_is_asked_and_replaced,
    },
];

/// The film, in pixels.
const WIDE: usize = 640;
const HIGH: usize = 480;
/// Pictures a second, and how many of them each scene has.
const PACE: usize = 10;
const SCENE: usize = 4;

/// One scene: what stands in the middle of the camera's view, in grey.
type Scene = Vec<u8>;

fn empty() -> Scene {
    vec![110; WIDE * HIGH]
}

fn before_the_camera(picture: &Picture) -> Scene {
    let mut scene = empty();
    let (left, top) = ((WIDE - picture.side) / 2, (HIGH - picture.side) / 2);
    for y in 0..picture.side {
        let row = &picture.grey[y * picture.side..][..picture.side];
        scene[(top + y) * WIDE + left..][..picture.side].copy_from_slice(row);
    }
    scene
}

/// A hand that shook: every pixel is the mean of a wide strip around it.
fn blurred(scene: &Scene) -> Scene {
    const REACH: usize = 9;
    let mean = |i: usize| {
        let strip = &scene[i.saturating_sub(REACH)..(i + REACH + 1).min(scene.len())];
        let sum: usize = strip.iter().map(|&p| usize::from(p)).sum();
        u8::try_from(sum / strip.len()).expect("a mean")
    };
    (0..scene.len()).map(mean).collect()
}

fn reads(scene: &Scene) -> Vec<String> {
    let at = |x: usize, y: usize| scene[y * WIDE + x];
    let mut prepared = rqrr::PreparedImage::prepare_from_greyscale(WIDE, HIGH, at);
    let grids = prepared.detect_grids();
    grids
        .iter()
        .filter_map(|g| g.decode().ok().map(|d| d.1))
        .collect()
}

/// The scenes as a film in the plainest format there is: grey, and no colour in a quarter of the size.
fn film(stage: &Stage, scenes: &[Scene]) -> PathBuf {
    let mut film = format!("YUV4MPEG2 W{WIDE} H{HIGH} F{PACE}:1 Ip A1:1 C420jpeg\n").into_bytes();
    for scene in scenes.iter().flat_map(|s| std::iter::repeat_n(s, SCENE)) {
        film.extend(b"FRAME\n");
        film.extend(scene);
        film.extend(vec![128; WIDE * HIGH / 2]);
    }
    let path = stage.scratch("film.y4m");
    std::fs::write(&path, film).expect("room for a film");
    path
}

/// The simpler codes of a record as a page shows them, one after the other.
fn shown(stage: &mut Stage, log: &Log) -> Vec<Picture> {
    let mut referee = Referee::at(stage);
    referee.go_on_with(&log.id, log.entries.clone());
    referee.tap_at("#export-sheet");
    referee.tap("Show the code");
    referee.tap("Hard to scan? Show more, simpler codes");
    drawn_codes(&mut referee)
}

fn a_camera_takes_a_record_from_another_screen(stage: &mut Stage) -> Ran {
    let log = sealed(Preset::International, 4, "by-camera");
    let pictures = shown(stage, &log);
    assert!(pictures.len() >= 3, "{} codes", pictures.len());
    // Out of order, one twice, empty and blurred pictures between.
    let mut scenes = vec![empty()];
    for picture in pictures.iter().rev() {
        let scene = before_the_camera(picture);
        assert_eq!(reads(&scene).len(), 1);
        let shaken = blurred(&scene);
        assert_eq!(
            reads(&shaken),
            Vec::<String>::new(),
            "it should be unreadable"
        );
        scenes.extend([shaken, scene.clone(), scene, empty()]);
    }
    let mut other = Stage::new(Engine::Chromium);
    let film = film(&other, &scenes);
    other.camera(Camera::Shows(&film));
    let mut receiver = Referee::at(&mut other);
    receiver.tap("Scan a match");
    receiver.tap_at("#camera-on");
    receiver.browser().wait_until(
        "the camera's picture is on the page",
        "document.querySelector('video').videoWidth > 0",
    );
    receiver.browser().picture("scanning");
    receiver.reads("The record is on this phone now.");
    // The camera is off, and it was our own reader that read.
    receiver.browser().wait_until(
        "the camera is off",
        "document.querySelector('video').srcObject === null",
    );
    assert_eq!(
        receiver.browser().value("'BarcodeDetector' in window"),
        json!(false)
    );
    assert_eq!(
        receiver.browser().value("typeof dutystandRead"),
        json!("function")
    );
    receiver.tap_at("#received-open");
    receiver.reads("Write this code on paper");
    assert_eq!(receiver.kept().entries(), log.entries);
    assert_eq!(receiver.browser().complaints(), Vec::<String>::new());
    Ok(())
}

fn a_camera_that_is_refused_or_missing_is_said_with_the_way_out(stage: &mut Stage) -> Ran {
    for (camera, words) in [
        (Camera::Refused, "The camera is not allowed for this page."),
        (
            Camera::Missing,
            "There is no camera that this browser can use.",
        ),
    ] {
        stage.camera(camera);
        let mut referee = Referee::at(stage);
        referee.tap("Scan a match");
        referee.tap_at("#camera-on");
        referee.reads(words);
        referee.reads("choose it here");
        // Nothing hangs: it can be tried again, or the other way be gone.
        referee.browser().find("#camera-on");
        referee.browser().find("#photo");
    }
    Ok(())
}

/// Stands in for the reader that browsers on phones have and none on this machine has. It reads
/// nothing: it gives out what it was told, and remembers how it was called. After `good` calls it fails,
/// as those do that lack a part of the system.
const STAND_IN: &str = "const [texts, good, formats] = arguments;
    window.standIn = { made: null, seen: [], calls: 0 };
    window.BarcodeDetector = class {
      static getSupportedFormats() { return Promise.resolve(formats); }
      constructor(wanted) { standIn.made = wanted.formats; }
      detect(picture) {
        standIn.seen.push(picture.constructor.name);
        const at = standIn.calls++;
        if (at >= good) return Promise.reject(new DOMException('no service', 'NotSupportedError'));
        return Promise.resolve(at < texts.length ? [{ rawValue: texts[at] }] : []);
      }
    };";

fn a_stand_in_for_the_browser_s_own_reader_is_asked_and_replaced(stage: &mut Stage) -> Ran {
    let log = sealed(Preset::SchoolJunior, 8, "by-stand-in");
    let pictures = shown(stage, &log);
    let texts: Vec<&str> = pictures.iter().map(|p| p.text.as_str()).collect();
    let mut scenes = vec![empty()];
    scenes.extend(pictures.iter().map(before_the_camera));

    // It is asked with the camera's picture, for these codes alone, and our module stays unloaded.
    let mut other = Stage::new(Engine::Chromium);
    let nothing = film(&other, &[empty()]);
    other.camera(Camera::Shows(&nothing));
    let mut receiver = Referee::at(&mut other);
    let formats = json!(["ean_13", "qr_code"]);
    receiver.tap("Scan a match");
    receiver
        .browser()
        .run(STAND_IN, json!([texts, 1000, formats]));
    receiver.tap_at("#camera-on");
    receiver.reads("The record is on this phone now.");
    let was = receiver.browser().value("standIn");
    assert_eq!(was["made"], json!(["qr_code"]));
    assert_eq!(was["seen"][0], "HTMLVideoElement");
    assert_eq!(
        receiver.browser().value("typeof dutystandRead"),
        json!("undefined")
    );

    // It fails after the first code: our own goes on where it stopped, and has the rest.
    let film = film(&other, &scenes);
    other.camera(Camera::Shows(&film));
    let mut receiver = Referee::at(&mut other);
    receiver.tap("Scan a match");
    receiver.browser().run(STAND_IN, json!([texts, 1, formats]));
    receiver.tap_at("#camera-on");
    receiver.reads("is already here. Nothing was changed");
    assert_eq!(receiver.browser().value("standIn.calls"), json!(2));
    assert_eq!(
        receiver.browser().value("typeof dutystandRead"),
        json!("function")
    );

    // One that knows other codes only is never asked.
    other.reload();
    let mut receiver = Referee::at(&mut other);
    receiver.tap("Scan a match");
    receiver
        .browser()
        .run(STAND_IN, json!([texts, 1000, ["ean_13"]]));
    receiver.tap_at("#camera-on");
    receiver.reads("is already here. Nothing was changed");
    assert_eq!(receiver.browser().value("standIn.made"), json!(null));
    Ok(())
}
