//! The screens and their addresses.

use crate::desk;
use rules::Cause;

/// The screens.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Screen {
    /// Continue, begin, look back.
    Start,
    /// The form for a new match.
    NewMatch,
    /// Before the first whistle.
    Before {
        /// The match.
        id: String,
    },
    /// The court.
    Play {
        /// The match.
        id: String,
    },
    /// Every entry in words.
    Log {
        /// The match.
        id: String,
    },
    /// The computed sheet.
    Sheet {
        /// The match.
        id: String,
    },
    /// The record leaves the phone.
    HandOver {
        /// The match.
        id: String,
    },
    /// A record comes in by camera.
    Receive,
    /// A page of what there is to learn; the part of the program that shows it reads which one.
    Learn {
        /// What stands behind `#/learn/`; empty for the first of them.
        place: String,
    },
    /// The look back on a match.
    Review {
        /// The match.
        id: String,
    },
    /// The coordinator's desk.
    Desk(desk::Place),
    /// What concerns the phone as a whole: colours, storage, backup.
    ThisPhone,
    /// What the app does not replace.
    About,
}

impl Screen {
    /// The official hand signals.
    #[must_use]
    pub fn signals() -> Screen {
        Screen::Learn {
            place: "signals".into(),
        }
    }

    /// What there is to read about injuries and other dangers.
    #[must_use]
    pub fn safety() -> Screen {
        Screen::Learn {
            place: "safety".into(),
        }
    }

    /// What there is to read and try about something that is decided in a rally.
    #[must_use]
    pub fn decision(cause: Cause) -> Screen {
        Screen::Learn {
            place: format!("decisions/{}", cause.code()),
        }
    }

    /// The part of the address after `#/`.
    #[must_use]
    pub fn hash(&self) -> String {
        match self {
            Screen::Start => "/start".into(),
            Screen::NewMatch => "/new".into(),
            Screen::Before { id } => format!("/before/{id}"),
            Screen::Play { id } => format!("/play/{id}"),
            Screen::Log { id } => format!("/log/{id}"),
            Screen::Sheet { id } => format!("/sheet/{id}"),
            Screen::HandOver { id } => format!("/hand-over/{id}"),
            Screen::Receive => "/receive".into(),
            Screen::Learn { place } if place.is_empty() => "/learn".into(),
            Screen::Learn { place } => format!("/learn/{place}"),
            Screen::Review { id } => format!("/review/{id}"),
            Screen::Desk(place) => format!("/desk{}", place.hash()),
            Screen::ThisPhone => "/phone".into(),
            Screen::About => "/about".into(),
        }
    }

    /// The screen of an address; the start screen for one that is none.
    #[must_use]
    pub fn of_hash(hash: &str) -> Screen {
        let mut words = hash.trim_start_matches('/').splitn(2, '/');
        let name = words.next().unwrap_or_default();
        match (name, words.next().map(str::to_owned)) {
            ("new", None) => Screen::NewMatch,
            ("learn", place) => Screen::Learn {
                place: place.unwrap_or_default(),
            },
            // As it stood in older addresses.
            ("signals", None) => Screen::signals(),
            ("phone", None) => Screen::ThisPhone,
            ("about", None) => Screen::About,
            ("receive", None) => Screen::Receive,
            ("hand-over", Some(id)) => Screen::HandOver { id },
            ("before", Some(id)) => Screen::Before { id },
            ("play", Some(id)) => Screen::Play { id },
            ("log", Some(id)) => Screen::Log { id },
            ("sheet", Some(id)) => Screen::Sheet { id },
            ("review", Some(id)) => Screen::Review { id },
            ("desk", place) => Screen::Desk(desk::Place::of_hash(&place.unwrap_or_default())),
            _ => Screen::Start,
        }
    }

    /// The match it shows.
    #[must_use]
    pub fn match_id(&self) -> Option<&str> {
        match self {
            Screen::Before { id }
            | Screen::Play { id }
            | Screen::Log { id }
            | Screen::HandOver { id }
            | Screen::Sheet { id }
            | Screen::Review { id } => Some(id),
            Screen::Start
            | Screen::NewMatch
            | Screen::Receive
            | Screen::Learn { .. }
            | Screen::Desk(_)
            | Screen::ThisPhone
            | Screen::About => None,
        }
    }

    /// The screen as which it is drawn: what lies on the desk stays there while one thing or another of it is
    /// looked at.
    pub(super) fn drawn_as(&self) -> Screen {
        match self {
            Screen::Desk(place) if place.open_id().is_some() => Screen::Desk(desk::Place::List),
            other => other.clone(),
        }
    }

    /// Where the arrow in the bar leads.
    pub(super) fn up(&self) -> Screen {
        match self {
            Screen::Log { id } | Screen::Sheet { id } => Screen::Play { id: id.clone() },
            Screen::HandOver { id } => Screen::Sheet { id: id.clone() },
            Screen::Review { id } => Screen::Sheet { id: id.clone() },
            Screen::Desk(place) if *place != desk::Place::List => Screen::Desk(place.up()),
            Screen::Learn { place } if !place.is_empty() => Screen::Learn {
                place: match place.rsplit_once('/') {
                    Some((above, _)) => above.to_owned(),
                    None => String::new(),
                },
            },
            Screen::About => Screen::ThisPhone,
            _ => Screen::Start,
        }
    }

    pub(super) const fn code(&self) -> &'static str {
        match self {
            Screen::Start => "start",
            Screen::NewMatch => "new",
            Screen::Before { .. } => "before",
            Screen::Play { .. } => "play",
            Screen::Log { .. } => "log",
            Screen::Sheet { .. } => "sheet",
            Screen::HandOver { .. } => "hand-over",
            Screen::Receive => "receive",
            Screen::Learn { .. } => "learn",
            Screen::Review { .. } => "review",
            Screen::Desk(_) => "desk",
            Screen::ThisPhone => "phone",
            Screen::About => "about",
        }
    }
}
