//! Paper sheets that are being keyed in, kept on the phone with every key.

use crate::device;
use crate::sheet::paper::Draft;

/// Under this name stand the ids of all of them.
const ALL: &str = "papers";

fn key(id: &str) -> String {
    format!("paper/{id}")
}

/// The ids of all of them, the oldest first.
pub fn ids() -> Vec<String> {
    let kept = device::setting(ALL).unwrap_or_default();
    kept.lines().map(str::to_owned).collect()
}

/// One of them.
pub fn get(id: &str) -> Option<Draft> {
    device::setting(&key(id)).map(|kept| Draft::of_written(&kept))
}

/// Keeps one; false where the phone did not.
pub fn put(id: &str, draft: &Draft) -> bool {
    let mut all = ids();
    let known = all.iter().any(|known| known == id);
    let kept = device::set_setting(&key(id), &draft.written()).is_ok();
    if known {
        return kept;
    }
    all.push(id.to_owned());
    kept && device::set_setting(ALL, &all.join("\n")).is_ok()
}

/// Takes one away.
pub fn forget(id: &str) {
    let mut all = ids();
    all.retain(|known| known != id);
    // Where storage is refused there is nothing to forget.
    let _ = device::set_setting(ALL, &all.join("\n"));
    device::forget_setting(&key(id));
}
