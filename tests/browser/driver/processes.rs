//! The processes of one browser, from the first to those it started itself.

use std::process::{Child, Command, Stdio};
use std::sync::atomic::{AtomicU32, Ordering};
use std::time::{Duration, Instant};

/// Every process we start carries this variable, and so does every process that it starts.
const MARK: &str = "DUTYSTAND_BROWSER_TEST";

/// Processes that end together.
pub struct Processes {
    mark: String,
    children: Vec<Child>,
}

impl Processes {
    /// None yet.
    pub fn none() -> Processes {
        static COUNT: AtomicU32 = AtomicU32::new(0);
        let number = COUNT.fetch_add(1, Ordering::SeqCst);
        Processes {
            mark: format!("{MARK}={}-{number}", std::process::id()),
            children: Vec::new(),
        }
    }

    /// Starts one more; its output is heard only where the caller says so.
    pub fn start(&mut self, command: &mut Command) -> Result<&mut Child, String> {
        let value = self.mark.split_once('=').map_or("", |(_, value)| value);
        let child = command
            .env(MARK, value)
            // The stories are told in English, whatever is spoken on this machine.
            .env("LC_ALL", "C.UTF-8")
            .env("LANGUAGE", "en")
            .stdin(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .map_err(|trouble| format!("{command:?} does not start: {trouble}"))?;
        self.children.push(child);
        Ok(self.children.last_mut().expect("one was just added"))
    }

    /// Sends SIGKILL to all of them in one go and waits until none is left.
    pub fn kill(&mut self) {
        let begun = Instant::now();
        loop {
            let alive = self.alive();
            if alive.is_empty() || begun.elapsed() > Duration::from_secs(10) {
                break;
            }
            // The standard library can only kill a process's own children.
            let _ = Command::new("kill")
                .arg("-KILL")
                .args(&alive)
                .stderr(Stdio::null())
                .status();
            for child in &mut self.children {
                // Where there is no /proc, at least these end.
                let _ = child.kill();
                let _ = child.wait();
            }
        }
        self.children.clear();
    }

    /// The ids of all running processes that carry our mark.
    fn alive(&self) -> Vec<String> {
        let Ok(entries) = std::fs::read_dir("/proc") else {
            return self
                .children
                .iter()
                .map(|child| child.id().to_string())
                .collect();
        };
        entries
            .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
            .filter(|id| id.bytes().all(|b| b.is_ascii_digit()))
            .filter(|id| {
                // What has ended but was not yet waited for has no environment any more.
                std::fs::read(format!("/proc/{id}/environ")).is_ok_and(|all| {
                    all.split(|b| *b == 0)
                        .any(|one| one == self.mark.as_bytes())
                })
            })
            .collect()
    }
}

impl Drop for Processes {
    fn drop(&mut self) {
        self.kill();
    }
}
