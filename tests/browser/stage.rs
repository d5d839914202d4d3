//! What a test plays on: the built page on a server in this process, and a browser with a
//! profile of its own that outlives the browser.

use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicU32, Ordering};
use std::sync::{Arc, Mutex};
use std::time::Duration;

use serde_json::{json, Value};

use crate::driver::{Browser, Engine};
use crate::server::{Habits, Server, Site};
use crate::{Ran, Skipped};

/// The page is served from a folder below the host, as a school's web space would do it.
const PREFIX: &str = "/school/duty/";

/// What a browser has for a camera.
pub enum Camera<'a> {
    /// None.
    Missing,
    /// One that the person does not allow.
    Refused,
    /// One that sees this film (YUV4MPEG2) over and over.
    Shows(&'a Path),
}

/// A server, a browser, and the profile between one browser and the next.
pub struct Stage {
    engine: Engine,
    profile: PathBuf,
    browser: Option<Browser>,
    server: Option<Server>,
    port: u16,
    instead: Vec<(String, Vec<u8>)>,
    habits: Habits,
    asked: Arc<Mutex<Vec<String>>>,
}

impl Stage {
    /// Serves the build and starts a browser that has never seen it.
    pub fn new(engine: Engine) -> Stage {
        static COUNT: AtomicU32 = AtomicU32::new(0);
        let number = COUNT.fetch_add(1, Ordering::SeqCst);
        let profile =
            std::env::temp_dir().join(format!("dutystand-{}-{number}", std::process::id()));
        std::fs::create_dir_all(&profile).expect("a folder for the profile");
        let mut stage = Stage {
            engine,
            profile,
            browser: None,
            server: None,
            port: 0,
            instead: Vec::new(),
            habits: Habits::default(),
            asked: Arc::default(),
        };
        stage.network_on();
        stage.start_browser();
        stage
    }

    /// The browser; it must be running.
    pub fn browser(&mut self) -> &mut Browser {
        self.browser.as_mut().expect("the browser is running")
    }

    /// The address of the page, the same as long as the stage stands.
    pub fn url(&self) -> String {
        format!("http://127.0.0.1:{}{PREFIX}", self.port)
    }

    /// Opens the page and waits until it has started.
    pub fn open(&mut self) {
        let url = self.url();
        self.browser().goto(&url);
        self.started();
    }

    /// Loads the page again and waits until it has started.
    pub fn reload(&mut self) {
        self.browser().reload();
        self.started();
    }

    /// Waits until the page has taken the place of the line that says it is starting.
    pub fn started(&mut self) {
        // A browser's own error page has a text as well; only the place and title are ours.
        let here = self.url();
        self.browser().wait_until(
            "the page has started",
            &format!(
                "location.href.startsWith('{here}') && document.title.endsWith('Dutystand') \
                 && document.readyState === 'complete' && document.querySelector('#starting') === null \
                 && document.body.innerText.trim() !== ''"
            ),
        );
    }

    /// Waits until every answer comes from the phone itself.
    pub fn ready_offline(&mut self) {
        self.browser().wait_until(
            "the service worker answers for the page",
            "navigator.serviceWorker.controller !== null \
             && navigator.serviceWorker.controller.state === 'activated'",
        );
    }

    /// Takes the network away: connections are refused.
    pub fn network_off(&mut self) {
        self.server = None;
    }

    /// Brings the network back, at the same address.
    pub fn network_on(&mut self) {
        self.server = None;
        let site = Site {
            folder: build(),
            prefix: PREFIX.into(),
            instead: self.instead.clone(),
            habits: self.habits,
        };
        let asked = self.asked.clone();
        let watch = move |path: &str| {
            asked
                .lock()
                .expect("nobody panics here")
                .push(path.to_owned())
        };
        let server = Server::start(site, self.port, watch).expect("a port on 127.0.0.1");
        self.port = server.port;
        self.server = Some(server);
    }

    /// From now on the server hands out these bytes under this name.
    pub fn hand_out(&mut self, name: &str, bytes: &[u8]) {
        self.instead.retain(|(other, _)| other != name);
        self.instead.push((name.into(), bytes.into()));
        self.network_on();
    }

    /// From now on the server goes about it like this.
    pub fn hosted(&mut self, habits: Habits) {
        self.habits = habits;
        self.network_on();
    }

    /// The paths that the server was asked for since the last call.
    pub fn asked(&mut self) -> Vec<String> {
        std::mem::take(&mut *self.asked.lock().expect("nobody panics here"))
    }

    /// A path for a file that goes away with the stage.
    pub fn scratch(&self, name: &str) -> PathBuf {
        self.profile.join(name)
    }

    /// Skips a test that starts a second browser on the profile where that finds nothing.
    pub fn keeps(&self) -> Ran {
        self.engine.keeps().map_err(Skipped)
    }

    /// Kills every process of the browser at once, as an empty battery would.
    pub fn kill_browser(&mut self) {
        self.browser().kill();
        self.browser = None;
    }

    /// Starts the browser anew with all site data blocked, as a person can set it (Chromium only).
    pub fn forbid_storage(&mut self) {
        assert_eq!(self.engine, Engine::Chromium, "only there is it known how");
        self.kill_browser();
        let folder = self.profile.join("Default");
        let file = folder.join("Preferences");
        let mut all: Value = std::fs::read_to_string(&file)
            .ok()
            .and_then(|text| serde_json::from_str(&text).ok())
            .unwrap_or_else(|| json!({}));
        // Its own number for "blocked".
        all["profile"]["default_content_setting_values"]["cookies"] = json!(2);
        std::fs::create_dir_all(&folder).expect("a folder for the profile");
        std::fs::write(&file, all.to_string()).expect("room for the settings");
        self.start_browser();
    }

    /// Starts the browser anew before a camera (Chromium only, which can make one up).
    pub fn camera(&mut self, camera: Camera) {
        self.kill_browser();
        // The switches for tests of its own media code.
        let allowed = "--use-fake-ui-for-media-stream";
        let switches = match camera {
            Camera::Missing => vec![allowed.to_owned()],
            Camera::Refused => vec![
                "--use-fake-device-for-media-stream".to_owned(),
                format!("{allowed}=deny"),
            ],
            Camera::Shows(film) => vec![
                "--use-fake-device-for-media-stream".to_owned(),
                allowed.to_owned(),
                format!("--use-file-for-fake-video-capture={}", film.display()),
            ],
        };
        self.browser = Some(Browser::start(self.engine, &self.profile, &switches));
    }

    /// Starts the browser anew so that the page comes from a host of this name, over a connection that
    /// is not secure (Chromium only, which can be told where a host is). Gives the page's address there.
    pub fn insecure(&mut self, host: &str) -> String {
        self.kill_browser();
        let switches = [format!("--host-resolver-rules=MAP {host} 127.0.0.1")];
        self.browser = Some(Browser::start(self.engine, &self.profile, &switches));
        format!("http://{host}:{}{PREFIX}", self.port)
    }

    /// Starts the browser anew on a phone with these languages, the dearest first (Chromium only).
    pub fn phone_speaks(&mut self, tags: &str) {
        self.kill_browser();
        let switches = [format!("--accept-lang={tags}")];
        self.browser = Some(Browser::start(self.engine, &self.profile, &switches));
    }

    /// Starts the browser on the profile that the last one left.
    pub fn start_browser(&mut self) {
        self.browser = Some(Browser::start(self.engine, &self.profile, &[]));
    }
}

impl Drop for Stage {
    fn drop(&mut self) {
        self.browser = None;
        // A browser's last process may still write while its folder goes; a leftover harms nobody.
        for _ in 0..40 {
            if std::fs::remove_dir_all(&self.profile).is_ok() {
                break;
            }
            std::thread::sleep(Duration::from_millis(50));
        }
    }
}

/// The folder of the build that is to be tested.
fn build() -> PathBuf {
    let folder = std::env::var_os("BROWSER_DIST")
        .map(PathBuf::from)
        .expect("BROWSER_DIST names the build: cargo xtask dist --out FOLDER");
    assert!(
        folder.join("index.html").is_file(),
        "there is no build in {}",
        folder.display()
    );
    folder
}

/// The names of all files of the build.
pub fn built_names() -> Vec<String> {
    std::fs::read_dir(build())
        .expect("the build can be listed")
        .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
        .collect()
}

/// A file of the build, found by how its name begins and ends.
pub fn built(begins: &str, ends: &str) -> (String, Vec<u8>) {
    let name = built_names()
        .into_iter()
        .find(|name| name.starts_with(begins) && name.ends_with(ends))
        .unwrap_or_else(|| panic!("the build holds no {begins}…{ends}"));
    let bytes = std::fs::read(build().join(&name)).expect("the build can be read");
    (name, bytes)
}
