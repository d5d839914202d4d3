//! What a user does: tap, draw, press keys, write and choose files.

use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

use serde_json::{json, Value};

use super::command::Command;
use super::{id, Browser, Element, GONE, PATIENCE};

/// Brings an element into view, waits until it rests, and says what lies over its middle, if anything does.
const UNCOVER: &str = "
    const e = arguments[0];
    const place = () => {
        e.scrollIntoView({ block: 'nearest', inline: 'nearest', behavior: 'instant' });
        return e.getBoundingClientRect();
    };
    // A page that is not shown draws no frame. One that is shown is asked for true ones: WebKit takes a page back to
    // its top with its first frame where it was scrolled before.
    const patience = document.hidden ? 100 : 3000;
    const frame = () => new Promise((done) => { requestAnimationFrame(done); setTimeout(done, patience); });
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

impl Browser {
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

    /// From now on each key is pressed by itself; otherwise the page gets a whole sentence in one task.
    pub fn type_key_by_key(&mut self) {
        self.by_key = true;
    }
}
