//! Measures instead of testing: `cargo test --test browser -- --bench`.
//!
//! Every figure is a ratio against the smallest plain page that shows the same, taken on the
//! same machine in the same run, turn by turn; milliseconds alone say little about a phone.

use game::{simulate, Entry, Kind, Phase, Timeline};
use record::{KeptMatch, Log, OnDesk};
use rules::{Preset, Rules, Sets, Team};
use serde_json::{json, Value};

use crate::driver::{Browser, Engine};
use crate::referee::{Referee, Side};
use crate::stage::{built, Stage};
use crate::support::{numbered, opening, set_begins};
use crate::with_everything::five_sets_with_everything;

/// Loads of each page; the middle one counts.
const LOADS: usize = 21;

/// A page that shows as much as ours at first sight, by hand and with nothing behind it. It
/// comes from the server each time; ours comes from the service worker.
const PLAIN: &str = "<!doctype html><html lang=en><meta charset=utf-8>\
    <meta name=viewport content='width=device-width'><title>Dutystand</title>\
    <p id=starting>starting</p><script src=./plain.js></script>";

/// Builds a heading and a dozen buttons.
const PLAIN_SCRIPT: &str = "\
    const main = document.createElement('main');
    main.append(document.createElement('h1'));
    main.firstChild.textContent = 'Dutystand';
    for (let n = 0; n < 12; n++) {
      const button = document.createElement('button');
      button.textContent = 'Button ' + n;
      main.append(button);
    }
    document.body.append(main);
    document.getElementById('starting').remove();";

/// Notes when the first frame after the start has been handed to the screen.
const WATCH: &str = "
    new MutationObserver((_, watch) => {
      if (!document.body || document.querySelector('#starting') || !document.querySelector('h1')) return;
      watch.disconnect();
      requestAnimationFrame(() => setTimeout(() => {
        document.documentElement.dataset.shown = performance.now();
      }));
    }).observe(document, { childList: true, subtree: true });";

/// Taps of each kind; the middle one counts.
const TAPS: usize = 61;

/// Both halves in turn: each tap wins the service back.
const HALVES: [&str; 2] = ["#half-right", "#half-left"];

/// Times taps on a half, or clicks on another button. `work` is from the finger's lifting until the
/// page's own code has run and the page is laid out again; `frame` until the frame that shows it
/// has been handed to the screen, which comes at most sixty times a second.
const TIME: &str = "
    const [targets, times] = arguments;
    const soon = () => new Promise((done) => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => { port1.close(); done(); };
      port2.postMessage(0);
    });
    const frame = () => new Promise((done) => requestAnimationFrame(() => soon().then(done)));
    return (async () => {
      const work = [], shown = [];
      for (let n = 0; n < times; n++) {
        const target = document.querySelector(targets[n % targets.length]);
        await frame();
        await frame();
        const begun = performance.now();
        if (target.id.startsWith('half-')) {
          const finger = { bubbles: true, pointerType: 'touch', pointerId: 1, isPrimary: true };
          target.dispatchEvent(new PointerEvent('pointerdown', finger));
          target.dispatchEvent(new PointerEvent('pointerup', finger));
        }
        target.click();
        await soon();
        document.body.getBoundingClientRect();
        work.push(performance.now() - begun);
        await frame();
        shown.push(performance.now() - begun);
      }
      return { work, shown };
    })();";

/// What the page does on a tap, by hand: the same two writes, the same texts and marks changed, the
/// same reasons built anew, on a copy of the same screen with the same style. No rules, no library.
const BARE_SCRIPT: &str = "\
    const at = (css) => document.querySelector(css);
    const reasons = at('.reasons').cloneNode(true);
    let n = 100, last = null;
    const store = new Promise((done) => {
      const open = indexedDB.open('bare', 1);
      open.onupgradeneeded = () => open.result.createObjectStore('lines');
      open.onsuccess = () => done(open.result);
    });
    const put = (texts, values) => texts.forEach((e, i) => { e.firstChild.data = values[i]; });
    for (const side of ['left', 'right']) {
      const half = at('#half-' + side), other = at('#half-' + (side === 'left' ? 'right' : 'left'));
      const score = half.querySelector('.half-score'), name = half.querySelector('.half-name').innerText;
      half.addEventListener('pointerup', () => {
        const line = 'f'.repeat(16) + JSON.stringify({ n: ++n, at: Date.now(), kind: 'rally', won_by: side });
        localStorage.setItem('bare/' + n, line);
        store.then((db) => db.transaction('lines', 'readwrite', { durability: 'strict' })
          .objectStore('lines').put(line, n));
        score.firstChild.data = String(Number(score.innerText) + 1);
        if (last !== side) {
          const spots = [...half.querySelectorAll('.spot')], was = spots.map((e) => e.innerText);
          put(spots, [...was.slice(1), was[0]]);
          const ball = other.querySelector('.half-serves');
          half.querySelector('.half-serves').replaceChildren(...ball.childNodes);
          half.classList.add('serving');
          other.classList.remove('serving');
        }
        last = side;
        at('#last-entry').textContent = 'Point ' + name;
        at('#due').textContent = name + ' to serve: 7';
        at('#news').textContent = name + ' ' + score.innerText;
        at('.reasons').replaceWith(reasons.cloneNode(true));
      });
    }";

/// What is measured, each under the word that asks for it alone.
const ALL: [(&str, fn()); 8] = [
    ("start", start),
    ("taps", taps),
    ("tasks", tasks),
    ("day", day),
    ("length", length),
    ("many", many),
    ("desk", crate::bench_desk::print),
    ("trainer", crate::bench_trainer::print),
];

/// Prints the figures: all of them, or those that are asked for.
pub fn print() -> Result<(), String> {
    Engine::Chromium.present()?;
    let asked = |word: &str| std::env::args().any(|arg| arg == word);
    let some = ALL.iter().any(|(word, _)| asked(word));
    for (word, measure) in ALL {
        if !some || asked(word) {
            measure();
        }
    }
    Ok(())
}

fn start() {
    println!("start: from the address on, Chromium, median of {LOADS} loads");
    println!("{:<34} {:>9} {:>9} {:>7}", "", "page", "plain", "ratio");
    for (what, slower) in [
        ("kept on the phone", 1.0),
        ("the same, processor 4 times slower", 4.0),
    ] {
        let mut page = Stage::new(Engine::Chromium);
        let mut plain = Stage::new(Engine::Chromium);
        plain.hand_out("plain.js", PLAIN_SCRIPT.as_bytes());
        plain.hand_out("plain.html", PLAIN.as_bytes());
        page.open();
        page.ready_offline();
        let (here, there) = (page.url(), format!("{}plain.html", plain.url()));
        for stage in [&mut page, &mut plain] {
            let browser = stage.browser();
            browser.cdp(
                "Page.addScriptToEvaluateOnNewDocument",
                json!({ "source": WATCH }),
            );
            browser.slow_down(slower);
        }
        let (mut painted, mut live, mut theirs) = (Vec::new(), Vec::new(), Vec::new());
        for _ in 0..LOADS {
            live.push(shown(page.browser(), &here));
            painted.push(first_painted(page.browser()));
            theirs.push(shown(plain.browser(), &there));
        }
        let theirs = middle(theirs);
        println!("{what}");
        line("  the start is painted", middle(painted), theirs);
        line("  it is live", middle(live), theirs);
    }
}

fn line(what: &str, ours: f64, theirs: f64) {
    println!(
        "{what:<34} {ours:>6.1} ms {theirs:>6.1} ms {:>7.2}",
        ours / theirs
    );
}

/// A tap on a half, against a bare copy of the same screen.
fn taps() {
    println!("\na tap on a half that wins the next service, Chromium, median of {TAPS} taps");
    println!("{:<34} {:>9} {:>9} {:>7}", "", "page", "bare", "ratio");
    let mut page = Stage::new(Engine::Chromium);
    go_on(&mut page, long_set(8));
    let mut bare = bare_copy(&mut page);
    for (what, slower) in [("", 1.0), (", processor 4 times slower", 4.0)] {
        page.browser().slow_down(slower);
        bare.browser().slow_down(slower);
        let ours = timed(page.browser(), &HALVES);
        let theirs = timed(bare.browser(), &HALVES);
        line(&format!("work{what}"), ours.0, theirs.0);
        line(&format!("frame{what}"), ours.1, theirs.1);
    }
}

/// The screen as it is now, with the least that a tap must do behind it.
fn bare_copy(page: &mut Stage) -> Stage {
    let mut referee = Referee { stage: page };
    referee.point(Side::Left);
    referee.saved();
    let screen = referee
        .browser()
        .value("document.querySelector('.page').outerHTML");
    let (style, _) = built("style-", ".css");
    let bare_page = format!(
        "<!doctype html><html lang=en><meta charset=utf-8>\
         <meta name=viewport content='width=device-width'><title>Bare</title>\
         <link rel=stylesheet href=./{style}><body>{}<script src=./bare.js></script>",
        screen.as_str().expect("a page has text")
    );
    let mut bare = Stage::new(Engine::Chromium);
    bare.hand_out("bare.js", BARE_SCRIPT.as_bytes());
    bare.hand_out("bare.html", bare_page.as_bytes());
    let there = format!("{}bare.html", bare.url());
    bare.browser().goto(&there);
    bare
}

/// Gathers the lengths of tasks of the page's thread that took more than 50 ms, from now on.
pub const WATCH_TASKS: &str = "
    window.longTasks = [];
    new PerformanceObserver((list) => {
      for (const task of list.getEntries()) window.longTasks.push(task.duration);
    }).observe({ type: 'longtask' });";

/// Rounds of taps that are shared between both pages, so that whatever else the machine does meets both.
const ROUNDS: usize = 6;

/// How often the page keeps a finger waiting after its start, on a processor four times slower: taps
/// twenty a second and one by one, beside the bare copy; then reasons, a panel and a step back, which
/// the copy has not. A tap counts with the measuring script's own part of its task.
fn tasks() {
    println!("\ntasks over 50 ms, processor 4 times slower, Chromium");
    println!("{:<34} {:>9} {:>9}", "", "page", "bare");
    let mut page = Stage::new(Engine::Chromium);
    go_on(&mut page, long_set(400));
    let mut bare = bare_copy(&mut page);
    for stage in [&mut page, &mut bare] {
        stage.browser().slow_down(4.0);
        stage.browser().run(WATCH_TASKS, json!([]));
    }
    for _ in 0..ROUNDS {
        for stage in [&mut page, &mut bare] {
            let mut referee = Referee { stage };
            referee.points(&[Side::Left; 10], 50);
            referee.saved();
            timed_times(referee.browser(), &HALVES, 10);
        }
    }
    let halves = [&mut page, &mut bare].map(|stage| long_tasks(stage.browser()));
    let what = format!("{} taps on a half", ROUNDS * 20);
    let [(ours, longest), (theirs, their_longest)] = halves;
    println!("{what:<34} {ours:>9} {theirs:>9}");
    println!(
        "{:<34} {longest:>6.0} ms {their_longest:>6.0} ms",
        "the longest"
    );
    let others = [
        "#half-right",
        ".cause",
        "#half-left",
        "#take-back",
        "#more-left",
        "#panel-close",
    ];
    let rounds = TAPS / others.len();
    for _ in 0..rounds {
        timed_times(page.browser(), &others, others.len());
    }
    let (ours, longest) = long_tasks(page.browser());
    let what = format!("{} reasons, panels, steps back", rounds * others.len());
    println!("{what:<34} {ours:>9}");
    println!("{:<34} {longest:>6.0} ms", "the longest");
}

/// Keeps the lengths of tasks over 50 ms, each with what was pressed before it; those of the start are its
/// own matter.
const WATCH_DAY: &str = "
    let pressed = null;
    const told = (e) => e.closest('button, a, input, label, summary') ?? e;
    const press = (e) => {
      const one = told(e.target);
      pressed = one.getAttribute('aria-label') ?? one.innerText ?? one.localName;
    };
    addEventListener('pointerdown', press, true);
    addEventListener('click', press, true);
    addEventListener('keydown', (e) => { pressed = 'key ' + e.key; }, true);
    new PerformanceObserver((list) => {
      if (pressed === null) return;
      const all = JSON.parse(sessionStorage.getItem('long-tasks') ?? '[]');
      for (const task of list.getEntries()) all.push([task.duration, pressed.replace(/\\s+/g, ' ')]);
      sessionStorage.setItem('long-tasks', JSON.stringify(all));
    }).observe({ type: 'longtask' });";

/// A match of five sets in which everything happens, from the start screen to the sealed sheet, on a
/// processor four times slower.
fn day() {
    println!("\ntasks over 50 ms in a whole match, processor 4 times slower, Chromium");
    let mut page = Stage::new(Engine::Chromium);
    page.browser().cdp(
        "Page.addScriptToEvaluateOnNewDocument",
        json!({ "source": WATCH_DAY }),
    );
    page.browser().slow_down(4.0);
    page.browser().type_key_by_key();
    if five_sets_with_everything(&mut page).is_err() {
        return println!("the match did not come to its end");
    }
    let found = page
        .browser()
        .value("JSON.parse(sessionStorage.getItem('long-tasks') ?? '[]')");
    let all: Vec<(f64, String)> = serde_json::from_value(found).expect("lengths and words");
    let taps = page
        .browser()
        .value("performance.eventCounts.get('pointerdown')");
    println!("{:<34} {:>9}", format!("{taps} taps"), all.len());
    for (ms, pressed) in all {
        println!("{ms:>6.0} ms  {pressed:.60}");
    }
}

/// How many there were since the last look, and the longest in milliseconds.
pub fn long_tasks(browser: &mut Browser) -> (usize, f64) {
    let found = browser.value("window.longTasks.splice(0)");
    let all: Vec<f64> = serde_json::from_value(found).expect("a list of milliseconds");
    (all.len(), all.into_iter().fold(0.0, f64::max))
}

/// So many matches on a phone.
pub const MANY: u64 = 200;

/// Notes when the first buttons and the first screenful of the list have been handed to the screen, and
/// the tasks of the page's thread over 50 ms.
const WATCH_LIST: &str = "
    window.longTasks = [];
    new PerformanceObserver((list) => {
      for (const task of list.getEntries()) window.longTasks.push(task.duration);
    }).observe({ type: 'longtask' });
    const note = (name, ready) => new MutationObserver((_, watch) => {
      if (!document.body || !ready()) return;
      watch.disconnect();
      requestAnimationFrame(() => setTimeout(() => {
        document.documentElement.dataset[name] = performance.now();
      }));
    }).observe(document, { childList: true, characterData: true, subtree: true });
    note('buttons', () => document.querySelector('#new-match'));
    note('list', () => document.querySelector('.sheet-line') || document.body.innerText.includes('None yet.'));";

/// So many matches as a backup.
pub fn many_matches() -> String {
    let matches: Vec<KeptMatch> = (1..=MANY)
        .map(|seed| KeptMatch {
            log: Log {
                id: format!("m{seed}"),
                entries: simulate(Preset::SchoolJunior, seed),
            },
            ..KeptMatch::default()
        })
        .collect();
    record::write_backup(&matches, &OnDesk::default(), None)
}

/// The start with many matches against the start with none, and taking them in.
fn many() {
    println!("\n{MANY} matches on the phone, processor 4 times slower, Chromium");
    println!(
        "{:<34} {:>9} {:>9} {:>7}",
        "", "with them", "empty", "ratio"
    );
    let file = many_matches();
    let (mut full, mut empty) = (Stage::new(Engine::Chromium), Stage::new(Engine::Chromium));
    for stage in [&mut full, &mut empty] {
        stage.open();
        stage.ready_offline();
        let browser = stage.browser();
        browser.cdp(
            "Page.addScriptToEvaluateOnNewDocument",
            json!({ "source": WATCH_LIST }),
        );
        browser.slow_down(4.0);
    }
    full.reload();
    long_tasks(full.browser());
    let mut referee = Referee { stage: &mut full };
    referee.open_file("all.json", file.as_bytes());
    // Longer than a person would be asked to wait for anything else.
    for _ in 0..20 {
        let done = "document.body.innerText.includes('matches new') && !document.querySelector('#import-progress')";
        if referee.browser().value(done) == json!(true) {
            break;
        }
        std::thread::sleep(std::time::Duration::from_secs(5));
    }
    let (over, longest) = long_tasks(referee.browser());
    println!("taking them in: {over} tasks over 50 ms, the longest {longest:.0} ms");
    let address = [full.url(), empty.url()];
    let (mut with_them, mut without): ([Vec<f64>; 2], [Vec<f64>; 2]) = Default::default();
    let (mut tasks, mut their_tasks) = (Vec::new(), Vec::new());
    for _ in 0..LOADS {
        for (stage, address, times) in [
            (&mut full, &address[0], &mut with_them),
            (&mut empty, &address[1], &mut without),
        ] {
            let browser = stage.browser();
            browser.goto("about:blank");
            browser.goto(address);
            browser.wait_until(
                "the list is painted",
                "'list' in document.documentElement.dataset",
            );
            for (times, name) in times.iter_mut().zip(["buttons", "list"]) {
                let at = format!("Number(document.documentElement.dataset.{name})");
                times.push(browser.value(&at).as_f64().expect("a time"));
            }
        }
        tasks.push(long_tasks(full.browser()).1);
        their_tasks.push(long_tasks(empty.browser()).1);
    }
    let ([buttons, list], [empty_buttons, empty_list]) = (with_them, without);
    line("first buttons", middle(buttons), middle(empty_buttons));
    line(
        "first screenful of the list",
        middle(list),
        middle(empty_list),
    );
    // The program's own start is among them, on both.
    line(
        "longest task until then, median",
        middle(tasks),
        middle(their_tasks),
    );
}

/// The same tap and a step back in a short log and in a long one.
fn length() {
    println!("\nwork in a long log, Chromium, median of {TAPS} taps");
    println!("{:<34} {:>9} {:>9} {:>7}", "", "long", "short", "ratio");
    let mut long = Stage::new(Engine::Chromium);
    let mut short = Stage::new(Engine::Chromium);
    let most = 2000 - TAPS;
    go_on(&mut long, long_set(most));
    go_on(&mut short, long_set(8));
    let (ours, theirs) = (
        timed(long.browser(), &HALVES),
        timed(short.browser(), &HALVES),
    );
    line("a tap, entry 2,000 against 10", ours.0, theirs.0);

    let entries = five_sets();
    let what = format!("a step back, {} entries against 10", entries.len());
    let mut long = Stage::new(Engine::Chromium);
    go_on(&mut long, entries);
    // A point and a step back in turn: the step back folds the whole log.
    let (mut ours, mut theirs) = (Vec::new(), Vec::new());
    for _ in 0..TAPS / 4 {
        for (stage, times) in [(&mut long, &mut ours), (&mut short, &mut theirs)] {
            timed_times(stage.browser(), &["#half-left"], 1);
            times.push(timed_times(stage.browser(), &["#take-back"], 1).0);
        }
    }
    line(&what, middle(ours), middle(theirs));
}

fn go_on(stage: &mut Stage, entries: Vec<Entry>) {
    let mut referee = Referee::at(stage);
    referee.go_on_with("bench", entries);
    referee.browser().find("#half-left");
    referee.saved();
}

/// A match in the middle of one endless set, with so many entries.
fn long_set(entries: usize) -> Vec<Entry> {
    let mut rules: Rules = Preset::International.rules();
    rules.sets = Sets::BestOf(1);
    rules.set.target = 999;
    let mut kinds = opening(rules);
    kinds.extend(set_begins(&rules));
    let mut turn = Team::A;
    while kinds.len() < entries {
        turn = turn.other();
        kinds.push(Kind::Rally {
            won_by: turn,
            cause: None,
            by: None,
        });
    }
    numbered(kinds)
}

/// A simulated match in its fifth set, near the end.
fn five_sets() -> Vec<Entry> {
    (1..500)
        .find_map(|seed| {
            let mut timeline = Timeline::new();
            for entry in simulate(Preset::International, seed) {
                timeline.push(entry);
                let state = timeline.state();
                let late = state.set_number() == 5 && state.score().a + state.score().b > 20;
                if late && state.phase() == Phase::Playing {
                    return Some(timeline.entries().to_vec());
                }
            }
            None
        })
        .expect("a simulated match goes to five sets")
}

/// Medians of `work` and `frame`.
fn timed(browser: &mut Browser, targets: &[&str]) -> (f64, f64) {
    timed_times(browser, targets, TAPS)
}

fn timed_times(browser: &mut Browser, targets: &[&str], times: usize) -> (f64, f64) {
    let found = browser.run(TIME, json!([targets, times]));
    let all = |of: &Value| -> Vec<f64> {
        serde_json::from_value(of.clone()).expect("a list of milliseconds")
    };
    (middle(all(&found["work"])), middle(all(&found["shown"])))
}

/// Milliseconds from the address to the first frame.
fn shown(browser: &mut Browser, url: &str) -> f64 {
    browser.goto("about:blank");
    browser.goto(url);
    browser.wait_until(
        "the first screen is painted",
        "'shown' in document.documentElement.dataset",
    );
    browser
        .value("Number(document.documentElement.dataset.shown)")
        .as_f64()
        .expect("a time")
}

/// Milliseconds until the page itself was first painted, with the start screen in it.
fn first_painted(browser: &mut Browser) -> f64 {
    let painted = "performance.getEntriesByName('first-contentful-paint')[0].startTime";
    browser.value(painted).as_f64().expect("a time")
}

fn middle(mut times: Vec<f64>) -> f64 {
    times.sort_by(f64::total_cmp);
    times[times.len() / 2]
}
