//! Light, dark or sunlight, as chosen on this phone.

/// The colours of the page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Theme {
    /// As the phone has it.
    System,
    /// Light.
    Light,
    /// Dark.
    Dark,
    /// The highest contrast, for outdoor courts and weak screens.
    Sunlight,
}

rules::codes!(Theme {
    System = "system",
    Light = "light",
    Dark = "dark",
    Sunlight = "sunlight",
});
