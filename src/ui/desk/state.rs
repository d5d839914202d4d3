//! What the screens of the desk share: what lies on it, how it is shown, what is chosen. It stays as long as the
//! page, so that whoever comes back finds the desk as it was left.

use std::collections::BTreeMap;
use std::sync::Arc;

use leptos::prelude::*;

use super::table::kept_meetings;
use crate::shell::{use_shell, Shell};
use crate::start::Library;
use app::desk::{self, Filter, Order, Row, RowKind, Selection};
use app::setting::Setting;
use app::stored_match::{ListedMatch, StoredMatch};
use record::Reading;
use reports::list::Line;
use reports::paper::Draft;
use reports::standings::{self, Doubt, Played};
use reports::Weight;
use text::setup::library::date_words;

/// How the matches are shown where none is open.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum View {
    /// As cards, by pools.
    Cards,
    /// As a table.
    Table,
}

rules::codes!(View {
    Cards = "cards",
    Table = "table",
});

/// Matches that were read meanwhile are shown together with so many others.
const SHOWN_TOGETHER: usize = 16;

/// For so many milliseconds nobody has typed into a paper sheet before the list follows: our own choice, about the
/// time between two boxes.
const QUIET_MS: u32 = 500;

/// Lines that were made before, each with what its match was like then: a match is audited once, however often
/// the list is drawn.
type Made = StoredValue<BTreeMap<String, (String, Line)>>;

/// The desk. Copies are the same.
#[derive(Clone, Copy)]
pub struct Desk {
    shell: Shell,
    rows: RwSignal<Option<Vec<Arc<Row>>>>,
    /// Those that are read already, as long as the others are not.
    coming: RwSignal<Vec<Arc<Row>>>,
    made: Made,
    /// Grows with each reading, so that an older one ends.
    reading: StoredValue<u32>,
    /// Grows with each key that changes a paper sheet.
    typed: RwSignal<u32>,
    /// How many of how many matches have been read.
    pub progress: RwSignal<Option<(usize, usize)>>,
    /// What is left out.
    pub filter: RwSignal<Filter>,
    /// What it is sorted by.
    pub order: RwSignal<Order>,
    /// What is chosen.
    pub chosen: RwSignal<Selection>,
    view: RwSignal<Option<View>>,
    /// The id of the row to which the keys go.
    pub at: RwSignal<Option<String>>,
    /// Whether keys without a modifier do something.
    pub with_keys: RwSignal<bool>,
}

/// The desk of this page.
///
/// # Panics
/// Outside of the page's components.
#[must_use]
pub fn use_desk() -> Desk {
    expect_context::<Desk>()
}

impl Desk {
    /// Nothing of it is read yet.
    #[must_use]
    pub fn begin() -> Desk {
        let kept = |of| device::settings().get(of).unwrap_or_default();
        Desk {
            shell: use_shell(),
            rows: RwSignal::new(None),
            coming: RwSignal::new(Vec::new()),
            made: StoredValue::new(BTreeMap::new()),
            reading: StoredValue::new(0),
            typed: RwSignal::new(0),
            progress: RwSignal::new(None),
            filter: RwSignal::new(Filter::default()),
            order: RwSignal::new(Order::of_written(&kept(Setting::MatchesOrder))),
            chosen: RwSignal::new(Selection::of_written(&kept(Setting::MatchesChosen))),
            view: RwSignal::new(View::from_code(&kept(Setting::MatchesView))),
            at: RwSignal::new(None),
            with_keys: RwSignal::new(device::settings().get(Setting::NoKeys).is_none()),
        }
    }

    /// Everything that lies on it; none while the storage is being read for the first time.
    #[must_use]
    pub fn rows(self) -> Option<Vec<Arc<Row>>> {
        self.rows.get()
    }

    /// The same, without listening.
    #[must_use]
    pub fn rows_now(self) -> Vec<Arc<Row>> {
        self.rows.get_untracked().unwrap_or_default()
    }

    /// The rows that are shown, in the order in which they are.
    #[must_use]
    pub fn shown(self) -> Vec<Arc<Row>> {
        let (rows, coming) = (self.rows.read(), self.coming.read());
        let rows = rows.as_deref().unwrap_or(&coming);
        let shown = self
            .filter
            .with(|filter| desk::shown(rows, filter, self.order.get(), date_words()));
        match self.view() {
            View::Table => shown,
            View::Cards => desk::in_groups(&shown).concat(),
        }
    }

    /// Whether anything lies on it; none while nothing has been read yet.
    #[must_use]
    pub fn has_any(self) -> Option<bool> {
        match &*self.rows.read() {
            Some(rows) => Some(!rows.is_empty()),
            None => (!self.coming.read().is_empty()).then_some(true),
        }
    }

    /// How the matches are shown: as somebody chose, or as fits the room.
    #[must_use]
    pub fn view(self) -> View {
        let fits = || match self.shell.is_wide() {
            true => View::Table,
            false => View::Cards,
        };
        self.view.get().unwrap_or_else(fits)
    }

    /// Shows them so; kept on this device.
    pub fn show_as(self, view: View) {
        device::settings().set(Setting::MatchesView, view.code());
        self.view.set(Some(view));
    }

    /// Sorts; kept on this device.
    pub fn sort(self, order: Order) {
        device::settings().set(Setting::MatchesOrder, &order.written());
        self.order.set(order);
    }

    /// Changes what is chosen; without storage the choice lasts as long as the page.
    pub fn choose(self, change: impl FnOnce(&mut Selection)) {
        self.chosen.update(change);
        device::settings().set(
            Setting::MatchesChosen,
            &self.chosen.read_untracked().written(),
        );
    }

    /// Lets keys without a modifier do something, or no more; kept on this device.
    pub fn use_keys(self, with_keys: bool) {
        if with_keys {
            device::settings().forget(Setting::NoKeys);
        } else {
            device::settings().set(Setting::NoKeys, "");
        }
        self.with_keys.set(with_keys);
    }

    /// Keeps what lies on it as the library has it, as long as the screen is there that says so.
    pub fn follow(self, library: Library) {
        // Also where the list of matches is the same: a paper sheet may have come or gone.
        Effect::new(move |_| {
            if let Some(listed) = library.listed() {
                device::spawn(self.read(library, listed));
            }
        });
        Effect::new(move |before: Option<u32>| {
            let typed = self.typed.get();
            let listed = untrack(|| library.listed());
            if let (true, Some(listed)) = (before.is_some_and(|before| before != typed), listed) {
                device::spawn(async move {
                    device::pause(QUIET_MS).await;
                    if self.typed.get_untracked() == typed {
                        self.read(library, listed).await;
                    }
                });
            }
            typed
        });
    }

    /// Keeps a paper sheet; false where the phone did not.
    pub fn put_paper(self, id: &str, draft: &Draft) -> bool {
        let kept = device::settings().papers().put(id, &draft.written());
        self.typed.update(|typed| *typed = typed.wrapping_add(1));
        kept
    }

    /// Takes a paper sheet off the desk.
    pub fn forget_paper(self, id: &str) {
        device::settings().papers().forget(id);
        self.typed.update(|typed| *typed = typed.wrapping_add(1));
    }

    /// Reads what is not known yet. Between two matches the browser may draw.
    async fn read(self, library: Library, listed: Vec<Arc<ListedMatch>>) {
        let mine = self.reading.get_value().wrapping_add(1);
        self.reading.set_value(mine);
        let stale = move || self.reading.get_value() != mine;
        let is_match = |of: &&Arc<ListedMatch>| of.summary.is_readable && !of.summary.is_practice;
        let all = listed.iter().filter(is_match).count();
        let mut rows = Vec::new();
        for listed in listed.iter().filter(is_match) {
            let line = match self.known(listed) {
                Some(line) => line,
                None => {
                    self.progress.set(Some((rows.len(), all)));
                    device::pause(0).await;
                    if stale() {
                        return;
                    }
                    let kept = library.read(&listed.id).await;
                    self.made(listed, &kept)
                }
            };
            rows.push(of_record(listed, line));
            if rows.len() % SHOWN_TOGETHER == 0 && self.rows.read_untracked().is_none() {
                self.add_coming(&rows);
            }
        }
        device::pause(0).await;
        if stale() {
            return;
        }
        self.papers(&mut rows);
        rows.extend(pools());
        let rows: Vec<Arc<Row>> = rows.into_iter().map(Arc::new).collect();
        let again = desk::twice(&rows, kept_meetings());
        let before = match self.rows_now() {
            none if none.is_empty() => self.coming.get_untracked(),
            before => before,
        };
        let rows = rows.into_iter().map(|row| {
            let row = match again.contains(&row.id) {
                true => Arc::new(Row {
                    again: true,
                    ..Row::clone(&row)
                }),
                false => row,
            };
            // What is the same is drawn no second time.
            let same = before.iter().find(|known| **known == row);
            same.cloned().unwrap_or(row)
        });
        let rows: Vec<Arc<Row>> = rows.collect();
        self.progress.set(None);
        if self.chosen.with_untracked(|chosen| {
            chosen
                .ids()
                .iter()
                .any(|id| rows.iter().all(|r| r.id != *id))
        }) {
            self.choose(|chosen| {
                chosen.forget_gone(&rows);
            });
        }
        self.rows.set(Some(rows));
        self.coming.set(Vec::new());
    }

    /// Shows what has been read meanwhile.
    fn add_coming(self, rows: &[Row]) {
        self.coming.update(|coming| {
            let new = rows.iter().skip(coming.len());
            coming.extend(new.map(|row| Arc::new(row.clone())));
        });
    }

    /// The line of a match that is as it was when the line was made.
    fn known(self, listed: &ListedMatch) -> Option<Line> {
        self.made.with_value(|made| {
            let (state, line) = made.get(&listed.id)?;
            (*state == state_of(listed)).then(|| line.clone())
        })
    }

    fn made(self, listed: &ListedMatch, kept: &StoredMatch) -> Line {
        let mut line = Line::of_record(&reading(kept), kept.timeline());
        line.findings.add(Weight::Result, kept.problems.len());
        let is_damaged = !kept.problems.is_empty();
        line.doubt = line.doubt.or(is_damaged.then_some(Doubt::Damaged));
        self.remember(&listed.id, state_of(listed), &line);
        line
    }

    fn remember(self, id: &str, state: String, line: &Line) {
        self.made.update_value(|made| {
            made.insert(id.to_owned(), (state, line.clone()));
        });
    }

    /// The paper sheets. One does not say its pool: it belongs to that of the results around it.
    fn papers(self, rows: &mut Vec<Row>) {
        let result = |row: &Row| row.line.as_ref()?.result(String::new());
        let results: Vec<Played> = rows.iter().filter_map(result).collect();
        for id in device::settings().papers().ids() {
            let Some(written) = device::settings().papers().get(&id) else {
                continue;
            };
            let known = self.made.with_value(|made| {
                let known = made.get(&id).filter(|(state, _)| *state == written);
                known.map(|(_, line)| line.clone())
            });
            let line = known.unwrap_or_else(|| {
                let line = Line::of_paper(&Draft::of_written(&written));
                self.remember(&id, written, &line);
                line
            });
            let played = line.result(String::new());
            let pool = played.map(|played| played.pool_among(&results).to_owned());
            rows.push(Row {
                kind: RowKind::Paper,
                group: pool.unwrap_or_default(),
                words: Vec::new(),
                scheduled: line.day.clone(),
                day: line.day.clone().unwrap_or_default(),
                archived: device::settings().is_archived(&id),
                again: false,
                line: Some(line),
                id,
            });
        }
    }
}

/// What a match was like: the link stands for the whole log.
fn state_of(listed: &ListedMatch) -> String {
    let summary = &listed.summary;
    format!(
        "{} {} {}",
        summary.last,
        summary.link,
        listed.problems.len()
    )
}

fn of_record(listed: &ListedMatch, line: Line) -> Row {
    let mut row = Row {
        id: listed.id.clone(),
        kind: RowKind::Record,
        group: line.group.clone(),
        words: listed.summary.words.clone(),
        scheduled: listed.summary.scheduled.clone(),
        day: String::new(),
        archived: listed.archived,
        again: false,
        line: Some(line),
    };
    row.day = text::when(row.played_at().map(device::local_time));
    row
}

fn pools() -> Vec<Row> {
    let of_pool = |id: String| {
        let pool = standings::read(&device::settings().pools().get(&id)?).read?;
        Some(Row {
            kind: RowKind::Pool(pool.results.len()),
            line: None,
            group: String::new(),
            words: Vec::new(),
            scheduled: None,
            day: String::new(),
            archived: device::settings().is_archived(&id),
            again: false,
            id,
        })
    };
    device::settings()
        .pools()
        .ids()
        .into_iter()
        .filter_map(of_pool)
        .collect()
}

/// A kept match as a file would be read.
pub fn reading(kept: &StoredMatch) -> Reading {
    Reading {
        entries: kept.entries().len(),
        log: kept.log(),
        ..Reading::default()
    }
}
