//! What was practised on this phone, kept under one name.

use app::learner::Learner;

const NAME: &str = "learner";

/// What is kept; nothing where there is none, or where it cannot be read.
pub fn practised() -> Learner {
    practised_text()
        .and_then(|text| Learner::read(&text))
        .unwrap_or_default()
}

/// The same as the text that is kept.
pub fn practised_text() -> Option<String> {
    device::setting(NAME)
}

/// Keeps it; false where the phone did not.
pub fn keep(learner: &Learner) -> bool {
    device::set_setting(NAME, &learner.write()).is_ok()
}

/// Lays what another phone kept beside it; false where that cannot be read or kept.
pub fn merge(text: &str) -> bool {
    let Some(other) = Learner::read(text) else {
        return false;
    };
    let mut learner = practised();
    learner.merge(other);
    keep(&learner)
}

/// Forgets it.
pub fn forget() {
    device::forget_setting(NAME);
}
