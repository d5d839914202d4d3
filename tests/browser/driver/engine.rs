//! The three engines that phones have, and how each is started here.

use std::io::{BufRead, BufReader};
use std::net::{Ipv4Addr, TcpListener};
use std::path::Path;
use std::process::{Command, Stdio};
use std::sync::{Mutex, PoisonError};
use std::time::Duration;

use serde_json::json;

use super::processes::Processes;
use super::wire::{insist, Wire};

/// How long a browser may take to start; a busy machine is slow.
const LONGEST_START: Duration = Duration::from_secs(60);

/// A browser engine.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Engine {
    /// Chrome, Edge and most Android browsers.
    Chromium,
    /// Firefox on Android and at the desk.
    Firefox,
    /// Every browser on an iPhone; here as WebKitGTK.
    WebKit,
}

/// A started browser: its processes and the line to it.
pub struct Running {
    pub processes: Processes,
    pub wire: Wire,
}

impl Engine {
    /// The name in the list of tests.
    pub fn name(self) -> &'static str {
        match self {
            Engine::Chromium => "chromium",
            Engine::Firefox => "firefox",
            Engine::WebKit => "webkit",
        }
    }

    /// What a finger is to this engine's driver. WebKitGTK's cannot make touches.
    pub fn finger(self) -> &'static str {
        match self {
            Engine::Chromium | Engine::Firefox => "touch",
            Engine::WebKit => "mouse",
        }
    }

    /// Whether a second browser on the same profile finds what the first one kept; else why not.
    pub fn keeps(self) -> Result<(), String> {
        match self {
            Engine::Chromium | Engine::Firefox => Ok(()),
            // Its MiniBrowser opens an ephemeral data store whenever a driver leads it.
            Engine::WebKit => {
                Err("WebKitGTK under a driver keeps nothing for the next start".into())
            }
        }
    }

    /// Whether the set-up has found all that this engine takes; else why not.
    pub fn present(self) -> Result<(), String> {
        let needed: &[&str] = match self {
            Engine::Chromium => &["BROWSER_CHROMIUM", "BROWSER_CHROMEDRIVER"],
            Engine::Firefox => &["BROWSER_FIREFOX"],
            Engine::WebKit => &["BROWSER_WEBKIT", "BROWSER_WEBKITDRIVER", "BROWSER_XVFB"],
        };
        match needed.iter().find(|variable| named(variable).is_none()) {
            None => Ok(()),
            Some(variable) => Err(format!(
                "no {} on this machine ({variable} is not set)",
                self.name()
            )),
        }
    }

    /// Starts the browser on a profile folder, which it may find used, with further switches
    /// (Chromium only).
    pub fn start(self, profile: &Path, switches: &[String]) -> Running {
        let mut processes = Processes::none();
        let wire = match self {
            Engine::Chromium => chromium(&mut processes, profile, switches),
            _ if !switches.is_empty() => Err(format!("it knows no {switches:?}")),
            Engine::Firefox => firefox(&mut processes, profile),
            Engine::WebKit => webkit(&mut processes, profile),
        };
        match wire {
            Ok(wire) => Running { processes, wire },
            Err(trouble) => panic!("{} did not start: {trouble}", self.name()),
        }
    }
}

fn chromium(
    processes: &mut Processes,
    profile: &Path,
    switches: &[String],
) -> Result<Wire, String> {
    let taken = PORTS.lock().unwrap_or_else(PoisonError::into_inner);
    let port = free_port()?;
    let driver = need("BROWSER_CHROMEDRIVER")?;
    processes.start(
        Command::new(driver)
            .arg(format!("--port={port}"))
            .stdout(Stdio::null()),
    )?;
    let mut wishes = json!({
        "browserName": "chrome",
        "goog:chromeOptions": {
            "binary": need("BROWSER_CHROMIUM")?,
            "args": [
                "--headless=new",
                // Tests may run as root in a container, where Chromium's sandbox cannot.
                "--no-sandbox",
                "--disable-gpu",
                "--disable-dev-shm-usage",
                "--disable-quic",
                "--no-first-run",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
                // No name leads anywhere: what is not on this machine cannot be reached.
                "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1",
                format!("--user-data-dir={}", profile.display()),
            ],
        },
        "goog:loggingPrefs": { "browser": "ALL", "performance": "ALL" },
    });
    if let Some(args) = wishes["goog:chromeOptions"]["args"].as_array_mut() {
        args.extend(switches.iter().map(|switch| json!(switch)));
    }
    await_port(port)?;
    drop(taken);
    Wire::http(port, &wishes)
}

fn firefox(processes: &mut Processes, profile: &Path) -> Result<Wire, String> {
    let told = profile.join("MarionetteActivePort");
    // The last browser on this profile may have left its port behind.
    let _ = std::fs::remove_file(&told);
    let preferences = "\
        user_pref(\"marionette.port\", 0);\n\
        user_pref(\"browser.shell.checkDefaultBrowser\", false);\n\
        user_pref(\"datareporting.policy.dataSubmissionEnabled\", false);\n\
        user_pref(\"toolkit.telemetry.reportingpolicy.firstRun\", false);\n\
        user_pref(\"network.captive-portal-service.enabled\", false);\n\
        user_pref(\"network.connectivity-service.enabled\", false);\n\
        user_pref(\"dom.w3c_touch_events.enabled\", 1);\n\
        user_pref(\"toolkit.startup.max_resumed_crashes\", -1);\n\
        user_pref(\"browser.sessionstore.resume_from_crash\", false);\n";
    std::fs::write(profile.join("user.js"), preferences).map_err(|e| e.to_string())?;
    processes.start(
        Command::new(need("BROWSER_FIREFOX")?)
            .args(["--headless", "--marionette", "--no-remote", "--profile"])
            .arg(profile)
            .env("HOME", profile)
            .stdout(Stdio::null()),
    )?;
    let port = insist(LONGEST_START, || {
        let text = std::fs::read_to_string(&told).map_err(|e| e.to_string())?;
        text.trim().parse::<u16>().map_err(|e| e.to_string())
    })?;
    insist(LONGEST_START, || Wire::marionette(port))
}

fn webkit(processes: &mut Processes, profile: &Path) -> Result<Wire, String> {
    // It has no mode without a screen; the server picks a free display and says which.
    let screen = processes.start(
        Command::new(need("BROWSER_XVFB")?)
            .args([
                "-displayfd",
                "1",
                "-screen",
                "0",
                "1280x1024x24",
                "-nolisten",
                "tcp",
            ])
            .stdout(Stdio::piped()),
    )?;
    let out = screen.stdout.take().ok_or("the screen says nothing")?;
    let mut display = String::new();
    BufReader::new(out)
        .read_line(&mut display)
        .map_err(|e| e.to_string())?;
    let taken = PORTS.lock().unwrap_or_else(PoisonError::into_inner);
    let port = free_port()?;
    processes.start(
        Command::new(need("BROWSER_WEBKITDRIVER")?)
            .arg(format!("--port={port}"))
            .env("DISPLAY", format!(":{}", display.trim()))
            .env("HOME", profile)
            .env("XDG_DATA_HOME", profile.join("data"))
            .env("XDG_CACHE_HOME", profile.join("cache"))
            .env("XDG_CONFIG_HOME", profile.join("config"))
            .stdout(Stdio::null()),
    )?;
    let wishes = json!({
        "browserName": "MiniBrowser",
        "webkitgtk:browserOptions": { "binary": need("BROWSER_WEBKIT")?, "args": ["--automation"] },
    });
    await_port(port)?;
    drop(taken);
    Wire::http(port, &wishes)
}

/// Held from the choice of a free port until somebody listens there, so that no two take the same.
static PORTS: Mutex<()> = Mutex::new(());

/// A port that is free now.
fn free_port() -> Result<u16, String> {
    let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, 0)).map_err(|e| e.to_string())?;
    listener
        .local_addr()
        .map(|address| address.port())
        .map_err(|e| e.to_string())
}

fn await_port(port: u16) -> Result<(), String> {
    insist(LONGEST_START, || {
        std::net::TcpStream::connect((Ipv4Addr::LOCALHOST, port))
            .map(drop)
            .map_err(|e| e.to_string())
    })
}

fn named(variable: &str) -> Option<String> {
    std::env::var(variable)
        .ok()
        .filter(|value| !value.is_empty())
}

fn need(variable: &str) -> Result<String, String> {
    named(variable).ok_or(format!("{variable} is not set"))
}
