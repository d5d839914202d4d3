//! What is said of a row, and what it was made from.

use std::borrow::Cow;
use std::sync::Arc;

use leptos::prelude::*;

use super::papers::paper;
use super::state::use_desk;
use crate::start::Library;
use app::desk::{Row, RowKind};
use app::stored_match::StoredMatch;
use game::Timeline;
use reports::list::Line;
use reports::paper::Draft;
use reports::standings::{self, Pool};
use text::desk as words;

/// What a line of the list is of, and when its last entry was made here.
pub fn kind_of(line: &Line) -> String {
    words::kind_of(line, line.last_at.map(device::local_time))
}

/// Both teams, or what it is.
pub fn title_of(row: &Row) -> String {
    match (&row.line, row.kind) {
        (Some(line), _) => words::teams_of(line),
        (None, RowKind::Pool(results)) => words::pool_of(results),
        (None, RowKind::Record | RowKind::Paper) => String::new(),
    }
}

/// What it is, among others.
pub fn described(row: &Row) -> String {
    let title = title_of(row);
    match &row.line {
        Some(line) => format!("{title}, {}. {}.", words::result_of(line), kind_of(line)),
        None => title,
    }
}

/// What a row was made from.
pub enum Source {
    /// A match record.
    Record(Box<StoredMatch>),
    /// A paper sheet.
    Paper(Draft),
    /// The results of a pool.
    Pool(Pool),
}

impl Source {
    /// Reads it; none where it is gone.
    pub async fn read(row: &Row, library: Library) -> Option<Source> {
        match row.kind {
            RowKind::Record => Some(Source::Record(Box::new(library.read(&row.id).await))),
            RowKind::Paper => paper(&row.id).map(Source::Paper),
            RowKind::Pool(_) => Some(Source::Pool(
                standings::read(&device::settings().pools().get(&row.id)?).read?,
            )),
        }
    }

    /// The log, folded; of a paper sheet as far as it can be rebuilt; none of a pool.
    pub fn timeline(&self) -> Option<Cow<'_, Timeline>> {
        match self {
            Source::Record(kept) => Some(Cow::Borrowed(kept.timeline())),
            Source::Paper(draft) => {
                let entries = draft.check(true).checked.log.entries;
                Some(Cow::Owned(Timeline::of(entries)))
            }
            Source::Pool(_) => None,
        }
    }
}

/// A screen that shows something once the desk is read, anew whenever what lies on it changes.
pub fn once_read(show: impl Fn(Vec<Arc<Row>>) -> AnyView + Send + 'static) -> AnyView {
    let desk = use_desk();
    desk.follow(Library::begin());
    (move || match desk.rows() {
        None => view! { <p class="muted">{text::reading()}</p> }.into_any(),
        Some(rows) => show(rows),
    })
    .into_any()
}
