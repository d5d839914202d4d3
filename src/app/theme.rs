//! Light or dark, as chosen on this phone.

/// Light or dark.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Theme {
    /// As the phone has it.
    System,
    /// Light.
    Light,
    /// Dark.
    Dark,
}

impl Theme {
    /// All of them.
    pub const ALL: [Theme; 3] = [Theme::System, Theme::Light, Theme::Dark];

    /// The name in the settings and in the style sheets.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Theme::System => "system",
            Theme::Light => "light",
            Theme::Dark => "dark",
        }
    }
}
