//! What lies on the desk: match records of this phone, paper sheets, and the results of pools.

use std::borrow::Cow;
use std::collections::BTreeMap;

use leptos::prelude::*;

use crate::desk_store::{PAPERS, POOLS};
use crate::start::{Kept, Library};
use game::Timeline;
use record::Reading;
use reports::list::Line;
use reports::paper::Draft;
use reports::standings::{self, Doubt, Played, Pool};
use text::desk as words;

/// One record, paper sheet or pool.
pub struct Item {
    /// Its id.
    pub id: String,
    /// What is said of it in the list; none of a pool.
    pub line: Option<Line>,
    /// Both teams, or what it is.
    pub title: String,
    /// Competition and division.
    pub group: String,
    /// What it was made from.
    pub source: Source,
}

/// What an item was made from.
pub enum Source {
    /// A match record.
    Record(Kept),
    /// A paper sheet.
    Paper(Draft),
    /// The results of a pool.
    Pool(Pool),
}

/// What a line of the list is of, and when its last entry was made here.
pub fn kind_of(line: &Line) -> String {
    words::kind_of(line, line.last_at.map(device::local_time))
}

impl Item {
    /// What it is, among others.
    pub fn described(&self) -> String {
        match &self.line {
            Some(line) => {
                format!(
                    "{}, {}. {}.",
                    self.title,
                    text::desk::result_of(line),
                    kind_of(line)
                )
            }
            None => self.title.clone(),
        }
    }

    fn of_line(id: String, line: Line, source: Source) -> Item {
        Item {
            id,
            title: text::desk::teams_of(&line),
            group: line.group.clone(),
            line: Some(line),
            source,
        }
    }

    fn of_pool(id: String, pool: Pool) -> Item {
        Item {
            id,
            line: None,
            title: words::pool_of(pool.results.len()),
            group: String::new(),
            source: Source::Pool(pool),
        }
    }

    /// The result as a pool counts it; none where the match is not over.
    pub fn played(&self) -> Option<&Played> {
        self.line.as_ref()?.played.as_ref()
    }

    /// The log, folded; of a paper sheet as far as it can be rebuilt; none of a pool.
    pub fn timeline(&self) -> Option<Cow<'_, Timeline>> {
        match &self.source {
            Source::Record(kept) => Some(Cow::Borrowed(kept.timeline())),
            Source::Paper(draft) => {
                let entries = draft.check(true).checked.log.entries;
                Some(Cow::Owned(Timeline::of(entries)))
            }
            Source::Pool(_) => None,
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

/// Lines that were made before: a record of the same length with as much damage is the same, a paper sheet
/// by its text. Each
/// match is audited once, however often the list is drawn.
type Made = StoredValue<BTreeMap<String, (String, Line)>>;

fn line(made: Made, id: &str, state: String, make: impl FnOnce() -> Line) -> Line {
    let known = made.with_value(|made| made.get(id).filter(|m| m.0 == state).cloned());
    if let Some((_, line)) = known {
        return line;
    }
    let line = make();
    made.update_value(|made| {
        made.insert(id.to_owned(), (state, line.clone()));
    });
    line
}

/// Everything on the desk, the records first; none while the storage is being read.
fn all(library: Library, made: Made) -> Option<Vec<Item>> {
    let records = library.all()?;
    let records = records.into_iter();
    let mut items: Vec<Item> = records
        // Practice matches are nothing of a coordinator's.
        .filter(|kept| {
            kept.state()
                .heading()
                .is_some_and(|heading| !heading.practice)
        })
        .map(|kept| {
            let id = kept.id.clone();
            let state = format!("{} {}", kept.entries().len(), kept.problems.len());
            let line = line(made, &id, state, || {
                let mut line = Line::of_record(&reading(&kept), kept.timeline());
                line.findings += kept.problems.len();
                let is_damaged = !kept.problems.is_empty();
                line.doubt = line.doubt.or(is_damaged.then_some(Doubt::Damaged));
                line
            });
            Item::of_line(id, line, Source::Record(kept))
        })
        .collect();
    // A paper sheet does not say its pool.
    let results: Vec<Played> = items
        .iter()
        .filter_map(|item| item.line.as_ref()?.result(String::new()))
        .collect();
    for id in PAPERS.ids() {
        let Some(written) = PAPERS.get(&id) else {
            continue;
        };
        let draft = Draft::of_written(&written);
        let line = line(made, &id, written, || Line::of_paper(&draft));
        let played = line.result(String::new());
        let pool = played.map_or_else(String::new, |played| played.pool_among(&results).to_owned());
        let mut item = Item::of_line(id, line, Source::Paper(draft));
        item.group = pool;
        items.push(item);
    }
    for id in POOLS.ids() {
        let pool = POOLS.get(&id);
        if let Some(pool) = pool.and_then(|text| standings::read(&text).read) {
            items.push(Item::of_pool(id, pool));
        }
    }
    Some(items)
}

/// Shows something of all that lies on the desk, anew whenever that changes.
pub fn of_all(library: Library, show: impl Fn(Vec<Item>) -> AnyView + Send + 'static) -> AnyView {
    let made: Made = StoredValue::new(BTreeMap::new());
    let show: Box<dyn Fn(Vec<Item>) -> AnyView + Send> = Box::new(show);
    (move || match all(library, made) {
        None => view! { <p class="muted">{text::reading()}</p> }.into_any(),
        Some(items) => show(items),
    })
    .into_any()
}

/// A screen that shows something once the storage is read.
pub fn once_read(show: impl Fn(Vec<Item>) -> AnyView + Send + 'static) -> AnyView {
    of_all(Library::begin_whole(), show)
}
