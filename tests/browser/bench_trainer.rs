//! What the trainer costs on a processor four times slower: tasks over 50 ms while scenes are drawn, run and
//! answered, and how many frames come in time, beside a bare canvas that draws as many shapes.

use serde_json::json;
use text::learn as words;

use crate::driver::{Browser, Engine};
use crate::referee::Referee;
use crate::stage::Stage;

/// How many scenes are looked at.
const SCENES: usize = 6;

/// Notes tasks of the page's thread over 50 ms and the times between frames.
const WATCH: &str = "
    window.longTasks = [];
    window.gaps = [];
    new PerformanceObserver((list) => {
      for (const task of list.getEntries()) window.longTasks.push(task.duration);
    }).observe({ type: 'longtask' });
    let before = 0;
    const frame = (now) => {
      if (before && window.counts()) window.gaps.push(now - before);
      before = now;
      requestAnimationFrame(frame);
    };
    requestAnimationFrame(frame);";

/// A canvas as large as the trainer's that draws as many lines, discs and numbers in each frame.
const BARE: &str = "
    window.counts = () => true;
    document.body.replaceChildren();
    const canvas = document.createElement('canvas');
    document.body.append(canvas);
    const [wide, high, lines, discs, numbers] = arguments;
    canvas.width = wide; canvas.height = high;
    const pen = canvas.getContext('2d');
    pen.lineCap = 'round';
    const frame = (now) => {
      pen.clearRect(0, 0, wide, high);
      for (let i = 0; i < lines; i += 1) {
        pen.strokeStyle = i % 2 ? '#1d5a96' : '#9a4f0a';
        pen.lineWidth = 2 + i % 9;
        pen.beginPath();
        pen.moveTo((i * 37 + now / 9) % wide, (i * 53) % high);
        pen.lineTo((i * 37 + 40 + now / 9) % wide, (i * 53 + 30) % high);
        pen.stroke();
      }
      for (let i = 0; i < discs; i += 1) {
        pen.fillStyle = '#ffd23c';
        pen.beginPath();
        pen.arc((i * 91 + now / 9) % wide, (i * 71) % high, 9, 0, 7);
        pen.fill();
      }
      for (let i = 0; i < numbers; i += 1) {
        pen.font = '800 ' + (9 + i) + 'px system-ui';
        pen.fillText(String(i), (i * 61 + now / 9) % wide, (i * 47) % high);
      }
      requestAnimationFrame(frame);
    };
    requestAnimationFrame(frame);";

/// Prints the figures.
pub fn print() {
    println!("\nthe trainer, processor 4 times slower, Chromium");
    let mut stage = Stage::new(Engine::Chromium);
    let mut referee = Referee::at(&mut stage);
    referee.browser().screen(360, 740);
    referee.tap_at("#to-learn");
    referee.tap(&format!("{} {}", words::trainer(), words::trainer_more()));
    referee.tap(words::moving());
    referee.browser().run(
        "window.counts = () => !!document.querySelector('#whistle');",
        json!([]),
    );
    referee.browser().slow_down(4.0);
    referee.browser().run(WATCH, json!([]));
    referee.tap(words::begin());
    for _ in 0..SCENES {
        referee.browser().find("#next");
        referee.tap_at("#next");
    }
    referee.browser().find("#next");
    let browser = referee.browser();
    tasks(&format!("{} scenes", SCENES + 1), browser);
    frames("frames of the trainer", browser);
    let size = browser.value("[document.querySelector('.trainer-field').width, document.querySelector('.trainer-field').height]");
    let mut bare = Stage::new(Engine::Chromium);
    let browser = bare.browser();
    browser.screen(360, 740);
    // As many as a moment of a scene has: most are limbs.
    browser.run(BARE, json!([size[0], size[1], 230, 16, 12]));
    browser.slow_down(4.0);
    browser.run(WATCH, json!([]));
    std::thread::sleep(std::time::Duration::from_secs(15));
    tasks("a bare canvas", browser);
    frames("frames of a bare canvas", browser);
}

fn tasks(what: &str, browser: &mut Browser) {
    let tasks = numbers(&browser.value("window.longTasks"));
    let longest = tasks.iter().copied().fold(0.0, f64::max);
    println!(
        "{what}: {} tasks over 50 ms, the longest {longest:.0} ms",
        tasks.len()
    );
}

fn numbers(value: &serde_json::Value) -> Vec<f64> {
    serde_json::from_value(value.clone()).expect("a list of milliseconds")
}

/// A frame is in time that comes before a second one would have been due.
fn frames(what: &str, browser: &mut Browser) {
    let mut gaps = numbers(&browser.value("window.gaps.splice(0)"));
    gaps.sort_by(f64::total_cmp);
    let in_time = gaps
        .iter()
        .filter(|gap| **gap < 1000.0 / 60.0 * 1.5)
        .count();
    let median = gaps.get(gaps.len() / 2).copied().unwrap_or(0.0);
    let longest = gaps.last().copied().unwrap_or(0.0);
    println!(
        "{what:<26} {} frames, {in_time} in time, median {median:.1} ms, the longest {longest:.0} ms",
        gaps.len()
    );
}
