//! Another language for a while.

/// What this says while Spanish is spoken.
pub fn in_spanish<T>(say: impl FnOnce() -> T) -> T {
    text::speak(Some(&text::es::SPANISH));
    let said = say();
    text::speak(None);
    said
}
