//! The coordinator's desk: many records and paper sheets at once, what is to be looked at in each, two of
//! them side by side, and the table of a pool.

mod compare;
mod day;
mod findings;
mod form;
mod intake;
mod items;
mod list;
mod papers;
mod table;

use leptos::prelude::*;

use day::DemoDay;
use text::desk as words;

use super::shell::{use_shell, Screen};
use device::ExportFile;

/// The screens of the desk.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Place {
    /// Everything that lies on it.
    List,
    /// What is to be looked at in one record.
    Findings(String),
    /// Two records side by side.
    Compare(String, String),
    /// The table of the chosen matches.
    Table,
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
            Place::Compare(first, second) => format!("/compare/{first}/{second}"),
            Place::Table => "/table".into(),
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
            ["compare", first, second] => Place::Compare(first.to_owned(), second.to_owned()),
            ["table"] => Place::Table,
            ["pool", id] => Place::Pool(id.to_owned()),
            ["paper", id] => Place::Paper(id.to_owned()),
            _ => Place::List,
        }
    }

    /// What the bar says.
    #[must_use]
    pub fn heading(&self) -> &'static str {
        match self {
            Place::List => words::desk(),
            Place::Findings(_) => words::findings(),
            Place::Compare(..) => words::compare(),
            Place::Table | Place::Pool(_) => words::table(),
            Place::Paper(_) => words::paper(),
        }
    }
}

/// A screen of the desk.
pub fn show(place: &Place) -> AnyView {
    match place {
        Place::List => list::list(),
        Place::Findings(id) => findings::findings(id.clone()),
        Place::Compare(first, second) => compare::compare_two(first.clone(), second.clone()),
        Place::Table => table::table(),
        Place::Pool(id) => table::of_file(id.clone()),
        Place::Paper(id) => form::form(id),
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
    hand_over(name, "text/csv", table);
}

/// Hands a text over as a file: shares it where that is possible, and downloads it elsewhere.
fn hand_over(name: &str, mime: &str, text: String) {
    let parcel = ExportFile {
        name: name.into(),
        mime: mime.into(),
        bytes: text.into_bytes(),
    };
    device::spawn(async move {
        if device::hand_over(&parcel).await.is_err() {
            // Sharing was refused or broke down; a download asks nobody.
            let _ = device::download(&parcel);
        }
    });
}

/// A button that leads to another screen.
fn way(words: impl Into<String>, screen: Screen) -> AnyView {
    let shell = use_shell();
    button(words, "button", Box::new(move || shell.go(screen.clone())))
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
