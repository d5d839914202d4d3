//! What somebody chose on this phone, or what the page keeps for its next visit: each has one name in local storage,
//! and they all stand here.

use super::settings::Settings;

/// A text that is remembered.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Setting {
    /// Light, dark or sunlight ([`super::theme::Theme`]). `assets/early.js` reads it too.
    Theme,
    /// The language that was chosen by hand ([`super::language::Language`]). `assets/early.js` reads it too.
    Language,
    /// The running match: where it goes on, the teams, the standing. `assets/early.js` reads it too.
    Continue,
    /// How far the phone's clock was set back or forward meanwhile, in milliseconds.
    ClockSkew,
    /// Whether the court is shown as the table sees it.
    CourtTurned,
    /// Whether the court alone is shown, to be read at a glance.
    CourtAlone,
    /// Whether the seconds for the service are counted.
    ServiceClock,
    /// A point that is held back until somebody says that it was meant.
    HeldPoint,
    /// Whether two points at once are meant.
    QuickTaps,
    /// Whether the matches on the desk are shown as cards or as a table.
    MatchesView,
    /// What they are sorted by.
    MatchesOrder,
    /// Which of them are chosen.
    MatchesChosen,
    /// Stands there where keys without a modifier do nothing.
    NoKeys,
    /// The order of criteria of the last table.
    TableOrder,
    /// Its points for a match.
    TablePoints,
    /// How often two of its teams meet.
    TableMeetings,
}

const fn name(of: Setting) -> &'static str {
    match of {
        Setting::Theme => "theme",
        Setting::Language => "language",
        Setting::Continue => "continue",
        Setting::ClockSkew => "clock-skew",
        Setting::CourtTurned => "turn",
        Setting::CourtAlone => "glance",
        Setting::ServiceClock => "service-clock",
        Setting::HeldPoint => "held-points",
        Setting::QuickTaps => "quick-taps",
        Setting::MatchesView => "desk/view",
        Setting::MatchesOrder => "desk/sorted",
        Setting::MatchesChosen => "desk/chosen",
        Setting::NoKeys => "desk/no-keys",
        Setting::TableOrder => "desk/order",
        Setting::TablePoints => "desk/points",
        Setting::TableMeetings => "desk/meetings",
    }
}

impl Settings {
    /// As it was chosen last, if storage can be read.
    #[must_use]
    pub fn get(&self, of: Setting) -> Option<String> {
        self.text(name(of))
    }

    /// Whether it was switched on.
    #[must_use]
    pub fn is_on(&self, of: Setting) -> bool {
        self.get(of).as_deref() == Some(ON)
    }

    /// Remembers it. Without storage a choice lasts as long as the page.
    pub fn set(&self, of: Setting, value: &str) {
        self.keep_text(name(of), value);
    }

    /// Switches it on or off.
    pub fn switch(&self, of: Setting, on: bool) {
        self.set(of, if on { ON } else { OFF });
    }

    /// Forgets it.
    pub fn forget(&self, of: Setting) {
        self.forget_text(name(of));
    }
}

const ON: &str = "on";
const OFF: &str = "off";
