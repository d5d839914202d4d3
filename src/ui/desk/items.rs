//! What lies on the desk: match records of this phone and paper sheets, each with its result.

use std::borrow::Cow;

use leptos::prelude::*;

use super::{papers, words};
use crate::game::entry::Detail;
use crate::game::Replay;
use crate::record::{seals, Reading};
use crate::rules::Team;
use crate::sheet::audit;
use crate::sheet::paper::{Draft, Fault, Finding};
use crate::sheet::standings::{self, Played};
use crate::ui::start::{Kept, Library};
use crate::ui::text;

/// One record or one paper sheet.
pub struct Item {
    /// Its id.
    pub id: String,
    /// Both teams.
    pub teams: String,
    /// Where it stands, on one line.
    pub result: String,
    /// Competition and division.
    pub group: String,
    /// When the last entry was made.
    pub when: String,
    /// The result as a pool counts it; none where the match is not over.
    pub played: Option<Played>,
    /// Number of the match and of the court, to tell two matches of the same teams apart.
    pub number: String,
    /// What it was made from.
    pub source: Source,
}

/// What an item was made from.
pub enum Source {
    /// A match record.
    Record(Kept),
    /// A paper sheet.
    Paper(Draft),
}

impl Item {
    fn of_record(kept: Kept) -> Item {
        let state = kept.state();
        let heading = state.heading();
        let part = |detail: Detail| {
            let part = heading.and_then(|h| h.details[detail].clone());
            part.unwrap_or_default()
        };
        let mut about = Vec::from([Detail::Competition, Detail::Division].map(part));
        about.retain(|p| !p.is_empty());
        Item {
            id: kept.id.clone(),
            teams: text::teams(state),
            result: text::standing(state),
            group: about.join(", "),
            when: text::when(kept.last_at),
            played: standings::of_match(state),
            number: part(Detail::MatchNo),
            source: Source::Record(kept),
        }
    }

    fn of_paper(id: String, draft: Draft) -> Item {
        let checkup = draft.check(true);
        let undecided = |f: &Finding| matches!(f.fault, Fault::MatchNotFinished);
        let decided = !checkup.checked.findings.iter().any(undecided);
        let played = standings::of_paper(&checkup.sheet).filter(|_| decided);
        Item {
            id,
            teams: words::against(draft.name(Team::A), draft.name(Team::B)),
            result: words::paper_result(&checkup.sheet),
            group: String::new(),
            when: String::new(),
            played,
            number: String::new(),
            source: Source::Paper(draft),
        }
    }

    /// Whether it was keyed in from paper.
    pub fn is_paper(&self) -> bool {
        matches!(self.source, Source::Paper(_))
    }

    /// The log, folded; of a paper sheet as far as it can be rebuilt.
    pub fn replay(&self) -> Cow<'_, Replay> {
        match &self.source {
            Source::Record(kept) => Cow::Borrowed(kept.replay()),
            Source::Paper(draft) => Cow::Owned(Replay::of(draft.check(true).checked.log.entries)),
        }
    }

    /// The last seal of a record: whether it fits, and whether anything came after it; none without one.
    pub fn sealed(&self) -> Option<(bool, bool)> {
        let Source::Record(kept) = &self.source else {
            return None;
        };
        let last = seals(kept.entries()).pop()?;
        let later = kept.entries().last().is_some_and(|e| e.n > last.entry);
        Some((last.fits(), later))
    }

    /// How many things are to be looked at.
    pub fn findings(&self) -> usize {
        match &self.source {
            Source::Record(kept) => {
                audit::audit(&reading(kept), kept.replay()).len() + kept.problems.len()
            }
            Source::Paper(draft) => draft.check(true).marks.len(),
        }
    }
}

/// A kept match as a file would be read.
pub fn reading(kept: &Kept) -> Reading {
    Reading {
        entries: kept.entries().len(),
        log: kept.log(),
        ..Reading::default()
    }
}

/// Everything on the desk, the records first; none while the storage is being read.
pub fn all(library: Library) -> Option<Vec<Item>> {
    let records = library.all()?;
    let mut items: Vec<Item> = records
        .into_iter()
        .filter(|kept| kept.state().heading().is_some())
        .map(Item::of_record)
        .collect();
    // A paper sheet belongs to the pool in which both its teams play.
    let groups: Vec<(String, String)> = items
        .iter()
        .map(|i| (i.group.clone(), i.teams.clone()))
        .collect();
    for id in papers::ids() {
        let Some(draft) = papers::get(&id) else {
            continue;
        };
        let mut item = Item::of_paper(id, draft);
        if let Some(played) = &item.played {
            let plays = |name: &str| {
                let of = groups
                    .iter()
                    .find(|(_, teams)| teams.split(" – ").any(|t| t == name));
                of.map(|(group, _)| group.clone())
            };
            item.group = plays(&played.home)
                .filter(|group| plays(&played.away).as_ref() == Some(group))
                .unwrap_or_default();
        }
        items.push(item);
    }
    Some(items)
}

/// A screen that shows something once the storage is read.
pub fn once_read(show: impl Fn(Library, Vec<Item>) -> AnyView + Send + 'static) -> AnyView {
    let library = Library::begin();
    let show: Box<dyn Fn(Library, Vec<Item>) -> AnyView + Send> = Box::new(show);
    (move || match all(library) {
        None => view! { <p class="muted">{text::READING}</p> }.into_any(),
        Some(items) => show(library, items),
    })
    .into_any()
}
