//! The match that can be gone on with, as the start screen says it before the list of matches is read: three lines
//! kept in local storage, which `assets/early.js` shows as well while the program comes.

use leptos::prelude::*;

use super::library::Library;
use crate::memo::Memo;
use crate::session::Session;
use crate::shell::Screen;
use crate::widgets::deferred::after_the_frame;
use app::setting::Setting;
use app::summary::{Stage, Summary};
use game::Timeline;

/// Where it goes on, and what the button says.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Continued {
    hash: String,
    /// Both teams.
    pub teams: String,
    /// Sets and score.
    pub standing: String,
}

impl Continued {
    fn of(id: &str, summary: &Summary) -> Continued {
        Continued {
            hash: screen_of(id, summary).hash(),
            teams: text::listed_teams(summary),
            standing: text::listed_standing(summary),
        }
    }

    /// What was kept last; none where no match was running.
    fn kept() -> Option<Continued> {
        let kept = device::settings().get(Setting::Continue)?;
        let mut lines = kept.lines().map(str::to_owned);
        Some(Continued {
            hash: lines.next()?,
            teams: lines.next()?,
            standing: lines.next()?,
        })
    }

    /// Keeps it, unless it stands there already. Where storage is full the next start says it once the list is
    /// read.
    fn keep(&self) {
        let lines = format!("{}\n{}\n{}", self.hash, self.teams, self.standing);
        if device::settings().get(Setting::Continue).as_deref() != Some(&lines) {
            device::settings().set(Setting::Continue, &lines);
        }
    }

    /// Where it goes on.
    #[must_use]
    pub fn screen(&self) -> Screen {
        Screen::of_hash(&self.hash)
    }
}

/// Where a match goes on.
#[must_use]
pub fn screen_of(id: &str, summary: &Summary) -> Screen {
    let id = id.to_owned();
    match summary.stage {
        _ if summary.is_sealed => Screen::Sheet { id },
        Stage::Finished => Screen::Sheet { id },
        Stage::Preparation if summary.line_ups => Screen::Before { id },
        Stage::Preparation | Stage::Playing | Stage::BetweenSets => Screen::Play { id },
    }
}

/// What the start screen knows of the matches on this phone. Copies are the same.
#[derive(Clone, Copy)]
pub struct Known {
    /// The match to go on with.
    pub running: RwSignal<Option<Continued>>,
    /// The ids of the matches that are being played; none until the list is read.
    pub under_way: RwSignal<Option<Vec<String>>>,
}

impl Known {
    /// From what was kept last.
    #[must_use]
    pub fn begin() -> Known {
        Known {
            running: RwSignal::new(Continued::kept()),
            under_way: RwSignal::new(None),
        }
    }

    /// Takes from the list what it says as soon as it is read.
    pub fn follow(self, library: Library) {
        let read = Memo::new(move |_| library.is_read());
        let running = Memo::new(move |_| {
            let running = library.running()?;
            Some(Continued::of(&running.id, &running.summary))
        });
        let under_way = Memo::new(move |_| library.under_way());
        Effect::new(move |_| self.under_way.set(under_way.get()));
        Effect::new(move |_| {
            if !read.get() {
                return;
            }
            let running = running.get();
            match &running {
                Some(running) => running.keep(),
                None => device::settings().forget(Setting::Continue),
            }
            if self.running.with_untracked(|known| *known != running) {
                self.running.set(running);
            }
        });
    }
}

/// Whether nothing but the heading was entered: a slip of the thumb is not what somebody wants to go on with.
#[must_use]
pub fn is_untouched(timeline: &Timeline) -> bool {
    timeline.entries().len() <= 1
}

/// Keeps what the start screen will say of the open match, after the frame that shows an entry.
pub fn remember_open_match(session: Session) {
    let waits = StoredValue::new(false);
    Effect::new(move |_| {
        let state = session.state();
        if session.id().is_none() || state.heading().is_none() || waits.get_value() {
            return;
        }
        waits.set_value(true);
        after_the_frame(move || {
            waits.set_value(false);
            if session.with_untracked(is_untouched) {
                return;
            }
            let summary = Summary::of_state(&session.state_now());
            // A match that is over, or sealed, is taken out by the list.
            if let (Some(id), true) = (session.id_now(), summary.may_go_on()) {
                Continued::of(&id, &summary).keep();
            }
        });
    });
}
