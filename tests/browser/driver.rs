//! A browser, as a test wants it: go there, find that, tap it, wait until this is so.
//!
//! Our own small client: WebDriver (W3C Recommendation) over HTTP for Chromium and WebKit,
//! Firefox's Marionette (the same commands over a socket) for Firefox. It needs the standard
//! library and JSON, compiles in seconds and matches no version of anything.
//!
//! Every method panics when the browser does not do its part: the test has failed then.

mod command;
mod engine;
mod processes;
mod wire;

use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

use serde_json::{json, Value};

use command::Command;
pub use engine::Engine;
use engine::Running;

/// How long anything may take before it counts as never. Generous, because it decides nothing
/// but how soon a failure is seen.
const PATIENCE: Duration = Duration::from_secs(20);

/// The key of an element reference (WebDriver, "Elements").
const ELEMENT: &str = "element-6066-11e4-a52e-4f735466cecf";

/// Finds what can be operated and is called so: by `aria-label`, label, or its own text, without
/// what is hidden from whoever listens.
const BY_NAME: &str = "
    const wanted = arguments[0];
    const said = (e) => {
      const texts = document.createTreeWalker(e, NodeFilter.SHOW_TEXT);
      const words = [];
      while (texts.nextNode()) {
        const { parentElement: around, data } = texts.currentNode;
        if (!around.closest('[aria-hidden=true], script, style')) words.push(data);
      }
      return words.join(' ');
    };
    const called = (e) => (e.getAttribute('aria-label')
        ?? (e.getAttribute('aria-labelledby') ?? '').split(' ').filter(Boolean)
            .map((id) => document.getElementById(id)?.innerText).join(' '))
        || (e.labels?.[0] && said(e.labels[0])) || said(e) || e.value || '';
    const kinds = 'a[href], button, input, select, textarea, summary, [role], [tabindex]';
    const around = document.querySelector(arguments[1]);
    return [...around?.querySelectorAll(kinds) ?? []].filter((e) =>
        called(e).replace(/\\s+/g, ' ').trim() === wanted
        && e.getClientRects().length > 0 && !e.closest('[inert]'));
";

/// Brings an element into view, waits until it rests, and says what lies over its middle, if anything does.
const UNCOVER: &str = "
    const e = arguments[0];
    const place = () => {
        e.scrollIntoView({ block: 'nearest', inline: 'nearest', behavior: 'instant' });
        return e.getBoundingClientRect();
    };
    // A page that is not shown draws no frame.
    const frame = () => new Promise((done) => { requestAnimationFrame(done); setTimeout(done, 100); });
    return (async () => {
        let box = place();
        // What grows part by part may pause for a frame.
        let rests = 0;
        for (let tries = 0; tries < 60 && rests < 3; tries += 1) {
            await frame();
            const now = place();
            rests = now.left === box.left && now.top === box.top ? rests + 1 : 0;
            box = now;
        }
        // What has come up by itself lets a finger through for a moment; whoever aims at it is slower.
        for (let tries = 0; tries < 120 && getComputedStyle(e).pointerEvents === 'none'; tries += 1) await frame();
        const top = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
        if (top === null) return 'lies outside the screen';
        return e.contains(top) ? null : 'is covered by ' + top.outerHTML.slice(0, 200);
    })();
";

/// Of an element that the page has taken away.
const GONE: &str = "is gone";

/// A running browser with one page.
pub struct Browser {
    engine: Engine,
    running: Running,
    /// Whether it types as people do, one key after the other.
    by_key: bool,
    /// Where a finger was last, and when.
    finger: Option<((i64, i64), Instant)>,
}

/// One of the browser's open pages.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Tab(String);

/// Something on the page.
#[derive(Clone, serde::Serialize)]
pub struct Element(Value);

impl Browser {
    /// Starts a browser on a profile folder, on a phone-sized screen with a touch surface as far
    /// as the engine allows; with further switches, which only Chromium takes.
    pub fn start(engine: Engine, profile: &Path, switches: &[String]) -> Browser {
        let running = engine.start(profile, switches);
        let mut browser = Browser {
            engine,
            running,
            by_key: false,
            finger: None,
        };
        browser.screen(360, 740);
        browser
    }

    /// Which engine this is.
    pub fn engine(&self) -> Engine {
        self.engine
    }

    /// Opens an address.
    pub fn goto(&mut self, url: &str) {
        self.must(Command::Goto(url));
    }

    /// One step back in the history, as the phone's own button does.
    pub fn back(&mut self) {
        self.run("history.back(); return null;", json!([]));
    }

    /// Loads the page again, as a person would, and waits until the old one is gone. The
    /// drivers' own reload will not do: Firefox's goes past the service worker.
    pub fn reload(&mut self) {
        // A mark on the document, not a variable: Firefox's driver runs scripts beside the page.
        self.run(
            "document.documentElement.dataset.old = ''; location.reload();",
            json!([]),
        );
        self.wait_until(
            "the old page is gone",
            "!('old' in document.documentElement.dataset)",
        );
    }

    /// Runs the body of a function in the page, with `arguments`, and gives what it returns.
    pub fn run(&mut self, script: &str, arguments: Value) -> Value {
        self.must(Command::Run { script, arguments })
    }

    /// The value of an expression; a promise is waited for.
    pub fn value(&mut self, expression: &str) -> Value {
        self.run(&format!("return ({expression});"), json!([]))
    }

    /// Waits until an expression is true.
    pub fn wait_until(&mut self, what: &str, expression: &str) {
        let begun = Instant::now();
        let script = format!("return Boolean({expression});");
        loop {
            // While a page gives way to the next one, a question may find neither.
            let answer = self.try_to(Command::Run {
                script: &script,
                arguments: json!([]),
            });
            if matches!(answer, Ok(Value::Bool(true))) {
                return;
            }
            if begun.elapsed() > PATIENCE {
                let page = self.try_to(Command::Run {
                    script: "return location.href + '\\n' + document.body.innerText;",
                    arguments: json!([]),
                });
                panic!("waited in vain until {what}; last answer {answer:?}; the page: {page:?}");
            }
            std::thread::sleep(Duration::from_millis(20));
        }
    }

    /// The first element that a CSS selector finds; waits for it.
    pub fn find(&mut self, css: &str) -> Element {
        self.wait_until(
            &format!("there is a {css}"),
            &format!("document.querySelector({}) !== null", json!(css)),
        );
        Element(self.run("return document.querySelector(arguments[0]);", json!([css])))
    }

    /// The one element that can be operated and is called so; waits for it.
    pub fn find_named(&mut self, name: &str) -> Element {
        self.find_named_in("body", name)
    }

    /// The same within the first element that a CSS selector finds.
    pub fn find_named_in(&mut self, css: &str, name: &str) -> Element {
        let begun = Instant::now();
        loop {
            let mut found = self.named_in(css, name);
            match found.len() {
                1 => return found.remove(0),
                0 if begun.elapsed() < PATIENCE => std::thread::sleep(Duration::from_millis(20)),
                0 => panic!(
                    "nothing on the page is called {name:?}: {}",
                    self.value("document.body.innerText")
                ),
                many => panic!("{many} things on the page are called {name:?}"),
            }
        }
    }

    /// Everything visible that can be operated and is called so, now.
    pub fn named(&mut self, name: &str) -> Vec<Element> {
        self.named_in("body", name)
    }

    fn named_in(&mut self, css: &str, name: &str) -> Vec<Element> {
        match self.run(BY_NAME, json!([name, css])) {
            Value::Array(found) => found.into_iter().map(Element).collect(),
            other => panic!("a list of elements was expected, not {other}"),
        }
    }

    /// The visible text of the first element that a CSS selector finds.
    pub fn text(&mut self, css: &str) -> String {
        let Element(element) = self.find(css);
        let text = self.run("return arguments[0].innerText;", json!([element]));
        text.as_str().unwrap_or_default().to_owned()
    }

    /// Taps what is found. Where the page has taken it away meanwhile, as one that loads anew does, it is
    /// looked for once more, as a person would.
    pub fn tap(&mut self, find: impl Fn(&mut Browser) -> Element) {
        let begun = Instant::now();
        loop {
            let element = find(self);
            match self.over(&element) {
                None => return self.press(&element),
                Some(over) if over == GONE && begun.elapsed() < PATIENCE => {}
                Some(over) => panic!("what should be tapped {over}"),
            }
        }
    }

    fn press(&mut self, element: &Element) {
        let Element(reference) = element;
        self.aim(element);
        self.by_finger(json!([
            { "type": "pointerMove", "duration": 0, "x": 0, "y": 0, "origin": reference },
            { "type": "pointerDown", "button": 0 },
            { "type": "pointerUp", "button": 0 },
        ]));
        if let Some((_, when)) = &mut self.finger {
            *when = Instant::now();
        }
    }

    /// Whoever aims at something new at the very place of the last tap has looked first: quicker, and the
    /// page takes it for the second half of a double tap.
    fn aim(&mut self, element: &Element) {
        const LOOKS: Duration = Duration::from_millis(400);
        const NEAR: i64 = 26;
        let Element(reference) = element;
        let middle = self.run(
            "const box = arguments[0].getBoundingClientRect();
             return [(box.left + box.right) / 2, (box.top + box.bottom) / 2].map(Math.round);",
            json!([reference]),
        );
        let (x, y) = (
            middle[0].as_i64().unwrap_or(0),
            middle[1].as_i64().unwrap_or(0),
        );
        if let Some(((last_x, last_y), when)) = self.finger {
            let near = (x - last_x).abs() <= NEAR && (y - last_y).abs() <= NEAR;
            if let (true, Some(wait)) = (near, LOOKS.checked_sub(when.elapsed())) {
                std::thread::sleep(wait);
            }
        }
        self.finger = Some(((x, y), Instant::now()));
    }

    /// The finger was there until now, however late a busy machine has let it come down.
    fn lifted(&mut self) {
        if let Some((_, when)) = &mut self.finger {
            *when = Instant::now();
        }
    }

    /// Does with one finger what the steps say, and looks at what has become of the screen.
    fn by_finger(&mut self, steps: Value) {
        let kind = self.engine.finger();
        self.must(Command::Act(json!([
            { "type": "pointer", "id": "finger", "parameters": { "pointerType": kind }, "actions": steps },
        ])));
        self.must(Command::LetGo);
        self.lifted();
        self.see();
    }

    /// Waits, as whoever looks at the screen does, until the page has drawn what a tap has changed.
    fn see(&mut self) {
        // A tap may lead to another page, which nobody is there to tell of.
        let _ = self.try_to(Command::Run {
            script: "return new Promise((done) => {
                const { port1, port2 } = new MessageChannel();
                port1.onmessage = () => done(null);
                port2.postMessage(null);
            });",
            arguments: json!([]),
        });
    }

    /// Taps one element after the other, so many milliseconds apart, without looking in between
    /// at what the page has become.
    pub fn tap_quickly(&mut self, elements: &[Element], gap_ms: u32) {
        let mut steps = Vec::new();
        for element in elements {
            let Element(reference) = element;
            if let Some(over) = self.over(element) {
                panic!("what should be tapped {over}");
            }
            let middle = self.run(
                "const box = arguments[0].getBoundingClientRect();
                 return [(box.left + box.right) / 2, (box.top + box.bottom) / 2].map(Math.round);",
                json!([reference]),
            );
            steps.extend([
                json!({ "type": "pointerMove", "duration": 0, "x": middle[0], "y": middle[1], "origin": "viewport" }),
                json!({ "type": "pointerDown", "button": 0 }),
                json!({ "type": "pointerUp", "button": 0 }),
                json!({ "type": "pause", "duration": gap_ms }),
            ]);
        }
        self.by_finger(json!(steps));
    }

    /// Taps one place twice, whatever comes up there in between.
    pub fn tap_twice(&mut self, element: &Element, gap_ms: u32) {
        self.tap_quickly(&[element.clone(), element.clone()], gap_ms);
    }

    /// Puts a finger on a place of the screen, in CSS pixels, and lifts it.
    pub fn tap_place(&mut self, x: i64, y: i64) {
        self.by_finger(json!([
            { "type": "pointerMove", "duration": 0, "x": x, "y": y, "origin": "viewport" },
            { "type": "pointerDown", "button": 0 },
            { "type": "pointerUp", "button": 0 },
        ]));
    }

    /// Draws a line with a finger from one place of the screen to the next.
    pub fn draw(&mut self, places: &[(i64, i64)]) {
        let go = |&(x, y): &(i64, i64)| json!({ "type": "pointerMove", "duration": 30, "x": x, "y": y, "origin": "viewport" });
        let mut steps: Vec<Value> = places.iter().map(go).collect();
        steps.insert(1, json!({ "type": "pointerDown", "button": 0 }));
        steps.push(json!({ "type": "pointerUp", "button": 0 }));
        self.by_finger(json!(steps));
    }

    /// Brings an element into view and says what keeps a finger from its middle, if anything.
    pub fn over(&mut self, element: &Element) -> Option<String> {
        let Element(reference) = element;
        let script = UNCOVER;
        let arguments = json!([reference]);
        match self.try_to(Command::Run { script, arguments }) {
            Ok(over) => over.as_str().map(str::to_owned),
            // WebKit hands the script nothing where the others refuse.
            Err(trouble)
                if trouble.contains("stale element") || trouble.contains("null is not") =>
            {
                Some(GONE.to_owned())
            }
            Err(trouble) => panic!("{} refused: {trouble}", self.engine.name()),
        }
    }

    /// Taps the one thing that is called so.
    pub fn tap_named(&mut self, name: &str) {
        self.tap(|browser| browser.find_named(name));
    }

    /// Presses a key, by its code point in the table of WebDriver, on an element that takes keys.
    pub fn press_key(&mut self, element: &Element, key: char) {
        let Element(reference) = element;
        self.must(Command::Write {
            element: id(reference),
            text: key.encode_utf8(&mut [0; 4]),
        });
        self.see();
    }

    /// Types into a field, replacing what it holds.
    pub fn write(&mut self, element: &Element, text: &str) {
        let Element(reference) = element;
        self.must(Command::Clear(id(reference)));
        let strokes: Vec<&str> = if self.by_key {
            let keys = text.char_indices();
            keys.map(|(at, key)| &text[at..at + key.len_utf8()])
                .collect()
        } else {
            vec![text]
        };
        for text in strokes {
            self.must(Command::Write {
                element: id(reference),
                text,
            });
        }
    }

    /// Chooses a file in a field that takes one.
    pub fn choose_file(&mut self, element: &Element, file: &Path) {
        self.choose_files(element, &[file.to_owned()]);
    }

    /// Chooses files in a field that takes several.
    pub fn choose_files(&mut self, element: &Element, files: &[PathBuf]) {
        let Element(reference) = element;
        let paths = files
            .iter()
            .map(|f| f.to_str().expect("a path of plain letters"));
        let paths: Vec<&str> = paths.collect();
        self.must(Command::Write {
            element: id(reference),
            text: &paths.join("\n"),
        });
    }

    /// The page that everything goes to.
    pub fn tab(&mut self) -> Tab {
        let handle = self.must(Command::Tab);
        Tab(handle.as_str().expect("a page has a name").to_owned())
    }

    /// Opens an empty second page, with the same storage; everything goes to it from now on.
    pub fn open_tab(&mut self) -> Tab {
        let made = self.must(Command::NewTab);
        let tab = Tab(made["handle"]
            .as_str()
            .expect("a page has a name")
            .to_owned());
        self.switch_to(&tab);
        self.screen(360, 740);
        tab
    }

    /// From now on everything goes to this page.
    pub fn switch_to(&mut self, tab: &Tab) {
        self.must(Command::ToTab(&tab.0));
    }

    /// What the page does wrong by the rules of accessibility that a machine can check; `Err`
    /// says why they cannot be checked here.
    pub fn hindrances(&mut self) -> Result<Vec<String>, String> {
        let file = std::env::var("BROWSER_AXE").unwrap_or_default();
        if file.is_empty() {
            return Err("no axe-core on this machine (BROWSER_AXE is not set)".into());
        }
        let rules =
            std::fs::read_to_string(&file).map_err(|trouble| format!("{file}: {trouble}"))?;
        let script = format!(
            "{rules}
             // A half is called by its team and side, a tool by its team and count; the digits in
             // them are no labels, which that rule cannot know (WCAG 2.2, 2.5.3).
             const rules = {{ 'label-content-name-mismatch': {{ enabled: false }} }};
             return axe.run(document, {{ rules }}).then((result) => result.violations.flatMap((rule) =>
                 rule.nodes.map((node) => rule.id + ': ' + node.html.slice(0, 200))));"
        );
        match self.run(&script, json!([])) {
            Value::Array(all) => Ok(all
                .iter()
                .map(|one| one.as_str().unwrap_or_default().to_owned())
                .collect()),
            other => panic!("a list was expected, not {other}"),
        }
    }

    /// Sets the size of the page in CSS pixels. Firefox and WebKit have a least window size of
    /// their own and may stay wider.
    pub fn screen(&mut self, width: u32, height: u32) {
        if self.engine == Engine::Chromium {
            let lying = width > height;
            self.cdp(
                "Emulation.setDeviceMetricsOverride",
                json!({
                    "width": width, "height": height, "deviceScaleFactor": 2, "mobile": true,
                    "screenOrientation": {
                        "type": if lying { "landscapePrimary" } else { "portraitPrimary" },
                        "angle": if lying { 90 } else { 0 },
                    },
                }),
            );
            self.cdp(
                "Emulation.setTouchEmulationEnabled",
                json!({ "enabled": true, "maxTouchPoints": 5 }),
            );
        } else {
            self.must(Command::Window { width, height });
        }
    }

    /// Writes a picture of the page to `shots/NAME.png`, which is not kept under version control.
    pub fn picture(&mut self, name: &str) -> PathBuf {
        let picture = self.must(Command::Picture);
        keep_picture(name, &picture)
    }

    /// The same of all that can be scrolled to (Chromium only).
    pub fn full_picture(&mut self, name: &str) -> PathBuf {
        let picture = self.cdp(
            "Page.captureScreenshot",
            json!({ "captureBeyondViewport": true }),
        );
        keep_picture(name, &picture["data"])
    }

    /// The page as it goes to paper, A4 upright: a PDF (Chromium only).
    pub fn paper(&mut self) -> Vec<u8> {
        let made = self.cdp(
            "Page.printToPDF",
            json!({ "paperWidth": 8.27, "paperHeight": 11.69, "preferCSSPageSize": true }),
        );
        from_base64(made["data"].as_str().expect("a PDF as text"))
    }

    /// Speaks Chromium's own protocol.
    pub fn cdp(&mut self, method: &str, parameters: Value) -> Value {
        assert_eq!(
            self.engine,
            Engine::Chromium,
            "only Chromium knows {method}"
        );
        self.must(Command::Cdp { method, parameters })
    }

    /// From now on each key is pressed by itself; otherwise the page gets a whole sentence in one task.
    pub fn type_key_by_key(&mut self) {
        self.by_key = true;
    }

    /// Makes the processor this many times slower (Chromium only).
    pub fn slow_down(&mut self, times: f64) {
        self.cdp("Emulation.setCPUThrottlingRate", json!({ "rate": times }));
    }

    /// Errors and warnings in the browser's log since the last call (Chromium only); a violation
    /// of the page's policy is one of them.
    pub fn complaints(&mut self) -> Vec<String> {
        self.log("browser")
            .into_iter()
            .filter(|entry| matches!(entry["level"].as_str(), Some("SEVERE" | "WARNING")))
            .map(|entry| entry["message"].as_str().unwrap_or_default().to_owned())
            .collect()
    }

    /// The addresses that the page asked for since the last call (Chromium only), whoever
    /// answered; the browser's own pages and what a page holds in itself are left out.
    pub fn fetched(&mut self) -> Vec<String> {
        self.log("performance")
            .into_iter()
            .filter_map(|entry| serde_json::from_str::<Value>(entry["message"].as_str()?).ok())
            .filter(|entry| entry["message"]["method"] == "Network.requestWillBeSent")
            .filter_map(|entry| {
                Some(
                    entry["message"]["params"]["request"]["url"]
                        .as_str()?
                        .to_owned(),
                )
            })
            .filter(|url| {
                !["chrome:", "about:", "data:", "blob:"]
                    .iter()
                    .any(|own| url.starts_with(own))
            })
            .collect()
    }

    fn log(&mut self, kind: &str) -> Vec<Value> {
        match self.must(Command::Log(kind)) {
            Value::Array(entries) => entries,
            other => panic!("a log was expected, not {other}"),
        }
    }

    /// Kills every process of the browser and of its driver with SIGKILL.
    pub fn kill(&mut self) {
        self.running.processes.kill();
    }

    fn must(&mut self, command: Command) -> Value {
        let said = format!("{command:?}");
        self.try_to(command).unwrap_or_else(|trouble| {
            panic!("{} refused {said:.300}: {trouble}", self.engine.name())
        })
    }

    fn try_to(&mut self, command: Command) -> Result<Value, String> {
        self.running.wire.ask(&command)
    }
}

fn keep_picture(name: &str, picture: &Value) -> PathBuf {
    let bytes = from_base64(picture.as_str().expect("a picture as text"));
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("shots");
    std::fs::create_dir_all(&folder).expect("a folder for pictures");
    let file = folder.join(format!("{name}.png"));
    std::fs::write(&file, bytes).expect("room for a picture");
    file
}

fn id(reference: &Value) -> &str {
    reference[ELEMENT]
        .as_str()
        .expect("a reference to an element")
}

/// RFC 4648 base64; the drivers send no line breaks.
fn from_base64(text: &str) -> Vec<u8> {
    let mut bytes = Vec::with_capacity(text.len() * 3 / 4);
    let (mut held, mut bits) = (0_u32, 0);
    for c in text.bytes() {
        let six = match c {
            b'A'..=b'Z' => c - b'A',
            b'a'..=b'z' => c - b'a' + 26,
            b'0'..=b'9' => c - b'0' + 52,
            b'+' => 62,
            b'/' => 63,
            _ => continue,
        };
        held = held << 6 | u32::from(six);
        bits += 6;
        if bits >= 8 {
            bits -= 8;
            bytes.push((held >> bits & 0xff) as u8);
        }
    }
    bytes
}
