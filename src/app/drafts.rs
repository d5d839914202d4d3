//! What is half typed about a match, kept on the phone so that a reload or a wrong tap loses nothing.

use std::collections::BTreeMap;

use super::settings::Settings;
use game::{Entry, Kind};
use record::{read_drawn, write_drawn, Log, Strokes};
use rules::Team;

/// What may be half typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Draft {
    /// How far the toss has come.
    Toss,
    /// The list of a team.
    TeamList(Team),
    /// The line-up of a team.
    LineUp(Team),
    /// What was read aloud.
    Briefed,
    /// Signatures drawn with a finger: they stand beside the match, never in its log.
    Drawn,
    /// How far a practice match was told.
    Practice,
    /// A remark for the sheet, of a team's or of the whole match.
    Remark(Option<Team>),
    /// What a team protests against, also while it is written after the match.
    Protest(Team),
    /// Why play is interrupted.
    Suspend,
    /// Who has cleared a check.
    Clear,
    /// Why a sealed record is opened again.
    Reopen,
}

impl Draft {
    const fn code(self) -> &'static str {
        match self {
            Draft::Toss => "toss",
            Draft::TeamList(Team::A) => "list-A",
            Draft::TeamList(Team::B) => "list-B",
            Draft::LineUp(Team::A) => "line-up-A",
            Draft::LineUp(Team::B) => "line-up-B",
            Draft::Briefed => "briefed",
            Draft::Drawn => "drawn",
            Draft::Practice => "practice",
            Draft::Remark(None) => "remark",
            Draft::Remark(Some(Team::A)) => "remark-A",
            Draft::Remark(Some(Team::B)) => "remark-B",
            Draft::Protest(Team::A) => "protest-A",
            Draft::Protest(Team::B) => "protest-B",
            Draft::Suspend => "suspend",
            Draft::Clear => "clear",
            Draft::Reopen => "reopen",
        }
    }
}

/// The drafts of one match.
#[derive(Clone)]
pub struct Drafts {
    settings: Settings,
    id: String,
}

impl Settings {
    /// The drafts of a match.
    #[must_use]
    pub fn drafts(&self, id: &str) -> Drafts {
        Drafts {
            settings: self.clone(),
            id: id.to_owned(),
        }
    }
}

impl Drafts {
    fn key(&self, draft: Draft) -> String {
        self.below() + draft.code()
    }

    /// What the keys of all of them begin with.
    fn below(&self) -> String {
        format!("draft/{}/", self.id)
    }

    /// The text that was kept last.
    #[must_use]
    pub fn get(&self, draft: Draft) -> Option<String> {
        self.settings.text(&self.key(draft))
    }

    /// Keeps a text. Where storage is full the draft lives only as long as the page.
    pub fn keep(&self, draft: Draft, text: &str) {
        self.settings.keep_text(&self.key(draft), text);
    }

    /// It was handed in or given up.
    pub fn forget(&self, draft: Draft) {
        self.settings.forget_text(&self.key(draft));
    }

    /// The entry that was kept last; none where it cannot be read.
    #[must_use]
    pub fn entry(&self, draft: Draft) -> Option<Kind> {
        read_kind(&self.get(draft)?)
    }

    /// Keeps an entry that was not made yet, in the words of the match file.
    pub fn keep_entry(&self, draft: Draft, kind: Kind) {
        self.keep(draft, &write_kind(kind));
    }

    /// The drawings of a match, by the entry that signs.
    #[must_use]
    pub fn drawn(&self) -> BTreeMap<u32, Strokes> {
        read_drawn(&self.get(Draft::Drawn).unwrap_or_default())
    }

    /// Keeps them.
    pub fn keep_drawn(&self, all: &BTreeMap<u32, Strokes>) {
        self.keep(Draft::Drawn, &write_drawn(all));
    }

    /// How far a practice match was told.
    #[must_use]
    pub fn practice_step(&self) -> usize {
        let step = self.get(Draft::Practice);
        step.and_then(|step| step.parse().ok()).unwrap_or_default()
    }

    /// Keeps how far it was.
    pub fn keep_practice_step(&self, step: usize) {
        self.keep(Draft::Practice, &step.to_string());
    }

    /// Forgets all of them, the drawn signatures too.
    pub fn forget_all(&self) {
        self.settings.forget_below(&self.below());
    }
}

/// One entry as text.
pub(super) fn write_kind(kind: Kind) -> String {
    record::write(&Log {
        id: "draft".to_owned(),
        entries: vec![Entry::new(1, kind)],
    })
}

/// The entry of such a text.
pub(super) fn read_kind(text: &str) -> Option<Kind> {
    let entry = record::read(text).log.entries.into_iter().next()?;
    Some(entry.kind)
}
