//! The coordinator's desk: many records and paper sheets at once, what is to be looked at in each, two of
//! them side by side, and the table of a pool.

mod cards;
mod compare;
mod day;
mod filter_bar;
mod findings;
mod form;
mod items;
mod key_list;
mod matches;
mod papers;
mod record;
mod report;
mod sheets;
mod state;
mod table;
mod tools;
mod work;
mod workplace;

use leptos::prelude::*;

use day::DemoDay;
use text::desk as words;

use super::shell::{use_shell, Screen};
use crate::widgets::give::hand_over;
use app::desk::{Row, RowKind};
use device::ExportFile;
use reports::SheetBox;

pub use state::Desk;

/// The screens of the desk.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Place {
    /// Everything that lies on it.
    List,
    /// What is to be looked at in one record.
    Findings(String),
    /// Its sheet, perhaps at one of its boxes.
    Sheet(String, Option<SheetBox>),
    /// Its log, perhaps at one of its entries.
    Log(String, Option<u32>),
    /// Two records side by side.
    Compare(String, String),
    /// The table of the chosen matches.
    Table,
    /// The report of the day.
    Report,
    /// All chosen sheets, to be printed.
    Sheets,
    /// The table of a pool whose results came as a file.
    Pool(String),
    /// A paper sheet that is being keyed in.
    Paper(String),
}

impl Place {
    /// The part of the address after `#/desk`.
    #[must_use]
    pub fn hash(&self) -> String {
        match self {
            Place::List => String::new(),
            Place::Findings(id) => format!("/findings/{id}"),
            Place::Sheet(id, None) => format!("/sheet/{id}"),
            Place::Sheet(id, Some(at)) => format!("/sheet/{id}/{}", at.code()),
            Place::Log(id, None) => format!("/log/{id}"),
            Place::Log(id, Some(n)) => format!("/log/{id}/{n}"),
            Place::Compare(first, second) => format!("/compare/{first}/{second}"),
            Place::Table => "/table".into(),
            Place::Report => "/report".into(),
            Place::Sheets => "/sheets".into(),
            Place::Pool(id) => format!("/pool/{id}"),
            Place::Paper(id) => format!("/paper/{id}"),
        }
    }

    /// The place of such a part; the list for one that is none.
    #[must_use]
    pub fn of_hash(hash: &str) -> Place {
        let words: Vec<&str> = hash.split('/').filter(|w| !w.is_empty()).collect();
        match words[..] {
            ["findings", id] => Place::Findings(id.to_owned()),
            ["sheet", id] => Place::Sheet(id.to_owned(), None),
            ["sheet", id, at] => Place::Sheet(id.to_owned(), SheetBox::from_code(at)),
            ["log", id] => Place::Log(id.to_owned(), None),
            ["log", id, n] => Place::Log(id.to_owned(), n.parse().ok()),
            ["compare", first, second] => Place::Compare(first.to_owned(), second.to_owned()),
            ["table"] => Place::Table,
            ["report"] => Place::Report,
            ["sheets"] => Place::Sheets,
            ["pool", id] => Place::Pool(id.to_owned()),
            ["paper", id] => Place::Paper(id.to_owned()),
            _ => Place::List,
        }
    }

    /// Where a row is looked at first.
    #[must_use]
    pub fn of_row(row: &Row) -> Place {
        let id = row.id.clone();
        match row.kind {
            RowKind::Record => Place::Findings(id),
            RowKind::Paper => Place::Paper(id),
            RowKind::Pool(_) => Place::Pool(id),
        }
    }

    /// What of the desk is open beside the list.
    #[must_use]
    pub fn open_id(&self) -> Option<&str> {
        match self {
            Place::Findings(id)
            | Place::Sheet(id, _)
            | Place::Log(id, _)
            | Place::Pool(id)
            | Place::Paper(id) => Some(id),
            Place::List | Place::Compare(..) | Place::Table | Place::Report | Place::Sheets => None,
        }
    }

    /// Where the arrow in the bar leads.
    #[must_use]
    pub fn up(&self) -> Place {
        match self {
            Place::Sheet(id, _) | Place::Log(id, _) => Place::Findings(id.clone()),
            _ => Place::List,
        }
    }

    /// What the bar says.
    #[must_use]
    pub fn heading(&self) -> &'static str {
        match self {
            Place::List => words::desk(),
            Place::Findings(_) => words::findings(),
            Place::Sheet(..) => text::sheet(),
            Place::Log(..) => text::log(),
            Place::Compare(..) => words::compare(),
            Place::Table | Place::Pool(_) => words::table(),
            Place::Report => text::desk_work::report(),
            Place::Sheets => text::desk_work::sheets(),
            Place::Paper(_) => words::paper(),
        }
    }
}

/// A screen of the desk. What lies on it stays there while something of it is open.
pub fn show(place: &Place) -> AnyView {
    match place {
        Place::Compare(first, second) => compare::compare_two(first.clone(), second.clone()),
        Place::Table => table::table(),
        Place::Report => report::report(),
        Place::Sheets => sheets::sheets(),
        Place::List
        | Place::Findings(_)
        | Place::Sheet(..)
        | Place::Log(..)
        | Place::Pool(_)
        | Place::Paper(_) => workplace::workplace(),
    }
}

/// A button in words. One function for all of them, so that the page holds it once.
fn button(words: impl Into<String>, class: &'static str, tap: Box<dyn Fn()>) -> AnyView {
    let words: String = words.into();
    view! {
        <button type="button" class=class on:click=move |_| tap()>
            {words}
        </button>
    }
    .into_any()
}

/// Hands a table for a spreadsheet over.
fn save(name: &str, table: String) {
    save_as(name, "text/csv", table);
}

/// Hands a text over as a file.
fn save_as(name: &str, mime: &str, text: String) {
    hand_over(ExportFile {
        name: name.into(),
        mime: mime.into(),
        bytes: text.into_bytes(),
    });
}

/// A button that leads to another screen.
fn way(words: impl Into<String>, screen: Screen) -> AnyView {
    let shell = use_shell();
    button(words, "button", Box::new(move || shell.go(screen.clone())))
}

/// A button that prints what the screen shows, and says so where that cannot be.
fn print_button() -> AnyView {
    let cannot = RwSignal::new(false);
    let print = move || cannot.set(!device::print_page());
    view! {
        {button(text::desk_work::print(), "button primary", Box::new(print))}
        {move || cannot.get().then(|| view! {
            <p class="sentence bad" role="alert">{text::desk_work::cannot_print()}</p>
        })}
    }
    .into_any()
}

/// Something that is not on this phone.
fn not_here() -> AnyView {
    view! {
        <section class="card stack">
            <h2>{text::not_here()}</h2>
            <p>{text::not_here_more()}</p>
        </section>
    }
    .into_any()
}
