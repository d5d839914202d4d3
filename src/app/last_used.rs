//! What is remembered from match to match, so that it need not be entered again, and the form of a new one.

use super::drafts::{read_kind, write_kind};
use super::settings::Settings;
use game::entry::Heading;
use game::Kind;
use rules::{ByTeam, Rules};

/// What was entered for the last match.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LastUsed {
    /// The unit of the gauge.
    Gauge,
    /// The height of the net.
    Net,
    /// Minutes to wait for a team.
    Wait,
}

const NEW_MATCH: &str = "draft/new/form";
const LAST_RULES: &str = "draft/new/last-rules";

const fn key(of: LastUsed) -> &'static str {
    match of {
        LastUsed::Gauge => "draft/last/gauge",
        LastUsed::Net => "draft/last/net",
        LastUsed::Wait => "draft/last/wait",
    }
}

impl Settings {
    /// As it was entered last, or nothing.
    #[must_use]
    pub fn last_used(&self, of: LastUsed) -> String {
        self.text(key(of)).unwrap_or_default()
    }

    /// Remembers it for the next match.
    pub fn set_last_used(&self, of: LastUsed, text: &str) {
        self.keep_text(key(of), text);
    }

    /// The rules of the last match.
    #[must_use]
    pub fn last_rules(&self) -> Option<Rules> {
        match read_kind(&self.text(LAST_RULES)?)? {
            Kind::Match(heading) => Some(heading.rules),
            _ => None,
        }
    }

    /// Remembers them, in the words of the match file.
    pub fn set_last_rules(&self, rules: Rules) {
        let nameless = Heading::new(ByTeam::default(), rules);
        self.keep_text(LAST_RULES, &write_kind(Kind::Match(Box::new(nameless))));
    }

    /// The form of a new match as far as it was filled in.
    #[must_use]
    pub fn new_match_form(&self) -> Option<String> {
        self.text(NEW_MATCH)
    }

    /// Keeps it.
    pub fn keep_new_match_form(&self, written: &str) {
        self.keep_text(NEW_MATCH, written);
    }

    /// The match has begun.
    pub fn forget_new_match_form(&self) {
        self.forget_text(NEW_MATCH);
    }
}
