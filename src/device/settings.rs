//! Small things remembered between visits: one text a name, in local storage alone. Losing one
//! is a nuisance and no more, so nothing here is kept twice.

use super::local;
use super::trouble::StorageTrouble;

fn key(name: &str) -> String {
    format!("{}s/{name}", local::OURS)
}

/// The setting of this name, if there is one and storage can be read.
pub fn setting(name: &str) -> Option<String> {
    local::get(&key(name)).ok().flatten()
}

/// Remembers a setting.
///
/// # Errors
/// Where storage is refused or full: the setting then holds for this visit only.
pub fn set_setting(name: &str, value: &str) -> Result<(), StorageTrouble> {
    local::set(&key(name), value)
}

/// Forgets a setting. Where storage is refused there is nothing to forget.
pub fn forget_setting(name: &str) {
    let _ = local::remove(&key(name));
}
