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

impl Theme {
    /// All of them.
    pub const ALL: [Theme; 4] = [Theme::System, Theme::Light, Theme::Dark, Theme::Sunlight];

    /// The name in the settings and in the style sheets.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Theme::System => "system",
            Theme::Light => "light",
            Theme::Dark => "dark",
            Theme::Sunlight => "sunlight",
        }
    }
}
