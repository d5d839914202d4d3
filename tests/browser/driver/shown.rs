//! What the browser shows and tells of itself: its screen, pictures, paper and log, and what a check of the page finds.

use std::path::{Path, PathBuf};

use serde_json::{json, Value};

use super::command::Command;
use super::engine::Engine;
use super::Browser;

impl Browser {
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
}

fn keep_picture(name: &str, picture: &Value) -> PathBuf {
    let bytes = from_base64(picture.as_str().expect("a picture as text"));
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("shots");
    std::fs::create_dir_all(&folder).expect("a folder for pictures");
    let file = folder.join(format!("{name}.png"));
    std::fs::write(&file, bytes).expect("room for a picture");
    file
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
