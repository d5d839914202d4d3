//! A static server for one folder on 127.0.0.1, small enough to read.
//!
//! It is used at the desk (`cargo xtask serve`) and, inside the test process, by the browser
//! tests, which count its requests, stop it to take the network away and start it again. Every
//! answer closes its connection: once stopped, nothing of it lingers.

use std::io::{BufRead, BufReader, Read, Result, Write};
use std::net::{Ipv4Addr, Shutdown, TcpListener, TcpStream};
use std::path::PathBuf;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex};
use std::thread::JoinHandle;
use std::time::Duration;

/// The policy of the page, sent as a header as well as standing in `index.html`; only here can
/// it also forbid being framed.
const POLICY: &str = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; \
    font-src 'self'; img-src 'self' blob: data:; connect-src 'self'; manifest-src 'self'; worker-src 'self'; \
    base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

/// What a server hands out.
pub struct Site {
    /// The folder that holds the files.
    pub folder: PathBuf,
    /// The path that the folder is found under; begins and ends with `/`.
    pub prefix: String,
    /// Files handed out instead of those in the folder: name and content.
    pub instead: Vec<(String, Vec<u8>)>,
    /// How it goes about it.
    pub habits: Habits,
}

/// What hosts do differently.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Habits {
    /// Sends the page's policy as a header, which alone can forbid to be framed.
    pub sends_policy: bool,
    /// Calls scripts what they are.
    pub types_scripts: bool,
    /// Answers an address that it does not know with the page instead of saying so.
    pub answers_everything: bool,
}

impl Default for Habits {
    /// Those of a good host.
    fn default() -> Habits {
        Habits {
            sends_policy: true,
            types_scripts: true,
            answers_everything: false,
        }
    }
}

/// A running server; it ends when dropped.
pub struct Server {
    /// The port that it listens on.
    pub port: u16,
    ending: Arc<AtomicBool>,
    thread: Option<JoinHandle<()>>,
    spare: Arc<Spare>,
}

/// Connections that have asked nothing yet. Browsers open them ahead of need.
#[derive(Default)]
struct Spare(Mutex<Vec<TcpStream>>);

impl Spare {
    fn opened(&self, stream: &TcpStream) {
        if let Ok(stream) = stream.try_clone() {
            self.0.lock().expect("nobody panics here").push(stream);
        }
    }

    /// The connection asks something, or has closed.
    fn taken(&self, stream: &TcpStream) {
        let its = |other: &TcpStream| other.peer_addr().ok() == stream.peer_addr().ok();
        self.0
            .lock()
            .expect("nobody panics here")
            .retain(|other| !its(other));
    }

    fn close(&self) {
        for stream in self.0.lock().expect("nobody panics here").drain(..) {
            let _ = stream.shutdown(Shutdown::Both);
        }
    }
}

impl Server {
    /// Serves on a port, or on a free one for 0, and tells `watch` the path of every request.
    pub fn start(
        site: Site,
        port: u16,
        watch: impl Fn(&str) + Send + Sync + 'static,
    ) -> Result<Server> {
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, port))?;
        let port = listener.local_addr()?.port();
        let ending = Arc::new(AtomicBool::new(false));
        let shared = Arc::new((site, watch));
        let spare = Arc::new(Spare::default());
        let thread = std::thread::spawn({
            let (ending, spare) = (ending.clone(), spare.clone());
            move || {
                for stream in listener.incoming() {
                    if ending.load(Ordering::SeqCst) {
                        break;
                    }
                    let Ok(stream) = stream else { continue };
                    spare.opened(&stream);
                    let (shared, spare) = (shared.clone(), spare.clone());
                    // A browser that hangs up early is no trouble of the server's.
                    std::thread::spawn(move || shared.0.answer(stream, &spare, &shared.1));
                }
            }
        });
        Ok(Server {
            port,
            ending,
            thread: Some(thread),
            spare,
        })
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        let Some(thread) = self.thread.take() else {
            return;
        };
        self.ending.store(true, Ordering::SeqCst);
        // Wakes the listener, which waits for a connection and nothing else.
        let _ = TcpStream::connect((Ipv4Addr::LOCALHOST, self.port));
        let _ = thread.join();
        self.spare.close();
    }
}

impl Site {
    fn answer(&self, mut stream: TcpStream, spare: &Spare, watch: &impl Fn(&str)) -> Result<()> {
        stream.set_read_timeout(Some(Duration::from_secs(10)))?;
        let mut lines = BufReader::new(stream.try_clone()?.take(16_384)).lines();
        let first = lines.next().transpose();
        spare.taken(&stream);
        let first = first?.unwrap_or_default();
        // A spare connection that was never used was no request.
        if first.is_empty() {
            return Ok(());
        }
        for line in lines {
            if line?.is_empty() {
                break;
            }
        }
        let mut words = first.split(' ');
        let (method, target) = (
            words.next().unwrap_or_default(),
            words.next().unwrap_or_default(),
        );
        watch(target);
        if method != "GET" && method != "HEAD" {
            return self.respond(
                &mut stream,
                "405 Method Not Allowed",
                "text/plain",
                "no-store",
                b"",
            );
        }
        let path = target.split('?').next().unwrap_or_default();
        let found = self.file(path).or_else(|| {
            let page = self.habits.answers_everything.then_some(&self.prefix)?;
            self.file(page)
        });
        let Some((name, bytes)) = found else {
            return self.respond(
                &mut stream,
                "404 Not Found",
                "text/plain",
                "no-store",
                b"There is no such file.",
            );
        };
        // What is handed out instead holds other bytes than its name promises.
        let as_built = !self.instead.iter().any(|(other, _)| *other == name);
        let keep = if as_built && hashed(&name) {
            "public, max-age=31536000, immutable"
        } else {
            "no-cache"
        };
        self.respond(
            &mut stream,
            "200 OK",
            self.kind(&name),
            keep,
            if method == "HEAD" { b"" } else { &bytes },
        )
    }

    /// The file behind a path. Only names of plain letters are looked for, so no path leads out.
    fn file(&self, path: &str) -> Option<(String, Vec<u8>)> {
        let name = path.strip_prefix(&self.prefix)?;
        let name = if name.is_empty() { "index.html" } else { name };
        let plain = |c: char| c.is_ascii_alphanumeric() || matches!(c, '-' | '_' | '.');
        if !name.chars().all(plain) || name.contains("..") {
            return None;
        }
        if let Some((_, bytes)) = self.instead.iter().find(|(other, _)| other == name) {
            return Some((name.to_owned(), bytes.clone()));
        }
        let bytes = std::fs::read(self.folder.join(name)).ok()?;
        Some((name.to_owned(), bytes))
    }

    fn respond(
        &self,
        stream: &mut TcpStream,
        status: &str,
        kind: &str,
        keep: &str,
        body: &[u8],
    ) -> Result<()> {
        let policy = if self.habits.sends_policy {
            format!("Content-Security-Policy: {POLICY}\r\n")
        } else {
            String::new()
        };
        write!(
            stream,
            "HTTP/1.1 {status}\r\nContent-Type: {kind}\r\nContent-Length: {}\r\nCache-Control: {keep}\r\n\
             {policy}X-Content-Type-Options: nosniff\r\n\
             Referrer-Policy: no-referrer\r\nConnection: close\r\n\r\n",
            body.len()
        )?;
        stream.write_all(body)?;
        stream.flush()
    }

    fn kind(&self, name: &str) -> &'static str {
        match kind(name) {
            SCRIPT if !self.habits.types_scripts => "text/plain",
            kind => kind,
        }
    }
}

/// Whether the name carries the hash of the content, as `dist` writes it: `name-0123456789ab.ext`.
fn hashed(name: &str) -> bool {
    name.rsplit_once('.')
        .and_then(|(stem, _)| stem.rsplit_once('-'))
        .is_some_and(|(_, hash)| hash.len() == 12 && hash.bytes().all(|b| b.is_ascii_hexdigit()))
}

const SCRIPT: &str = "text/javascript; charset=utf-8";

fn kind(name: &str) -> &'static str {
    match name.rsplit_once('.').map_or("", |(_, extension)| extension) {
        "html" => "text/html; charset=utf-8",
        "js" => SCRIPT,
        "css" => "text/css; charset=utf-8",
        "wasm" => "application/wasm",
        "svg" => "image/svg+xml",
        "woff2" => "font/woff2",
        "png" => "image/png",
        "webmanifest" => "application/manifest+json",
        _ => "application/octet-stream",
    }
}
