//! What can be done at the desk, by a button or by a key.

use std::sync::Arc;

use leptos::prelude::*;

use super::items::title_of;
use super::state::{use_desk, Desk, View};
use super::Place;
use crate::memo::Memo;
use crate::shell::{use_shell, Screen, Shell};
use crate::start::Library;
use crate::widgets::keys::go_on_at;
use app::desk::{neighbours, Command, Row, RowKind, Show};
use app::ports::KeyPress;
use text::desk as words;
use text::desk_work as more;

/// What was done last.
#[derive(Clone)]
pub enum Done {
    /// A paper sheet or the results of a pool were deleted.
    Deleted {
        kind: RowKind,
        id: String,
        title: String,
        text: String,
    },
    /// Matches were archived, or brought back.
    Archived { ids: Vec<String>, away: bool },
    /// What cannot be undone, in words.
    ForGood(String),
}

/// The desk while somebody works at it. Copies are the same.
#[derive(Clone, Copy)]
pub struct Work {
    pub desk: Desk,
    pub library: Library,
    pub shell: Shell,
    /// Where on the desk somebody is.
    pub place: Memo<Place>,
    pub done: RwSignal<Option<Done>>,
    /// Why what was asked for cannot be done with what is chosen.
    pub refused: RwSignal<Option<&'static str>>,
    /// Whether it is asked whether the chosen ones are to be deleted.
    pub asked: RwSignal<bool>,
    /// Whether the list of keys shows.
    pub keys: RwSignal<bool>,
}

impl Work {
    /// Begins to read what lies on the desk.
    pub fn begin() -> Work {
        let (desk, shell, library) = (use_desk(), use_shell(), Library::begin());
        desk.follow(library);
        // A screen that is left stays as it is until it is gone.
        let place = Memo::new(move |was: Option<&Place>| match shell.screen() {
            Screen::Desk(place) if place == Place::List || place.open_id().is_some() => place,
            _ => was.cloned().unwrap_or(Place::List),
        });
        Work {
            desk,
            library,
            shell,
            place,
            done: RwSignal::new(None),
            refused: RwSignal::new(None),
            asked: RwSignal::new(false),
            keys: RwSignal::new(false),
        }
    }

    /// What is open.
    pub fn open_id(self) -> Option<String> {
        self.place
            .with_untracked(|p| p.open_id().map(str::to_owned))
    }

    /// Shows a part of the desk: beside the list in the place of the one before, elsewhere as a screen to come back
    /// from.
    pub fn show(self, place: Place) {
        let beside = self.open_id().is_some() && untrack(|| self.shell.is_wide());
        if beside {
            self.shell.replace(Screen::Desk(place));
        } else {
            self.shell.go(Screen::Desk(place));
        }
    }

    /// Opens a row; in the place of the one that is open, and in the same part of it.
    pub fn open(self, row: &Row) {
        let place = match (row.kind, self.place.get_untracked()) {
            (RowKind::Record, Place::Sheet(..)) => Place::Sheet(row.id.clone(), None),
            (RowKind::Record, Place::Log(..)) => Place::Log(row.id.clone(), None),
            _ => Place::of_row(row),
        };
        if self.open_id().is_some() {
            self.shell.news(title_of(row));
            self.shell.replace(Screen::Desk(place));
        } else {
            self.shell.go(Screen::Desk(place));
        }
    }

    /// Lays the two chosen ones side by side.
    pub fn compare(self) {
        let pair = self
            .desk
            .chosen
            .with_untracked(|chosen| chosen.pair(&self.desk.rows_now()));
        match pair {
            Some((first, second)) => self.shell.go(Screen::Desk(Place::Compare(first, second))),
            None => self.refused.set(Some(words::choose_two())),
        }
    }

    /// Makes the table of the chosen ones.
    pub fn rank(self) {
        if self.desk.chosen.read_untracked().ids().is_empty() {
            self.refused.set(Some(words::choose_some()));
        } else {
            self.shell.go(Screen::Desk(Place::Table));
        }
    }

    /// Shows the sheets of the chosen ones, to be printed.
    pub fn sheets(self) {
        if self.chosen().is_empty() {
            self.refused.set(Some(more::choose_first()));
        } else {
            self.shell.go(Screen::Desk(Place::Sheets));
        }
    }

    fn chosen(self) -> Vec<Arc<Row>> {
        let rows = self.desk.rows_now();
        self.desk.chosen.with_untracked(|chosen| chosen.rows(&rows))
    }

    /// Archives the chosen ones; where only archived ones are shown, brings them back.
    pub fn archive(self) {
        let chosen = self.chosen();
        if chosen.is_empty() {
            self.refused.set(Some(more::choose_first()));
            return;
        }
        let away = self
            .desk
            .filter
            .with_untracked(|f| f.show != Show::Archived);
        let ids: Vec<String> = chosen.iter().map(|row| row.id.clone()).collect();
        self.library.archive(&ids, away);
        self.desk.choose(|chosen| chosen.clear());
        self.has_done(Done::Archived { ids, away });
    }

    /// Says what was done, with the way back, where nobody overlooks it.
    pub fn has_done(self, done: Done) {
        // The screen may be gone by now.
        self.done.try_set(Some(done));
        go_on_at("desk-done");
    }

    /// Undoes what was done last. Where the phone has no room for it any more it stays at hand.
    pub fn undo(self) {
        let undone = match self.done.get_untracked() {
            None | Some(Done::ForGood(_)) => return,
            Some(Done::Deleted { kind, id, text, .. }) => {
                let store = device::settings().desk_store(kind);
                let kept = store.is_some_and(|store| store.put(&id, &text));
                if kept {
                    self.library.refresh();
                }
                kept
            }
            Some(Done::Archived { ids, away }) => {
                self.library.archive(&ids, !away);
                true
            }
        };
        if undone {
            self.done.set(None);
        }
    }

    /// Asks whether the chosen ones are to be deleted.
    pub fn ask_to_delete(self) {
        if self.chosen().is_empty() {
            self.refused.set(Some(more::choose_first()));
        } else {
            self.asked.set(true);
        }
    }

    /// What is lost by it.
    pub fn delete_question(self) -> String {
        let rows = self.desk.rows_now();
        let chosen = self.desk.chosen.read();
        let mut counts = [0; 3];
        for row in chosen.rows(&rows) {
            counts[match row.kind {
                RowKind::Record => 0,
                RowKind::Paper => 1,
                RowKind::Pool(_) => 2,
            }] += 1;
        }
        more::delete_question(counts)
    }

    /// Deletes the chosen ones for good.
    pub fn delete(self) {
        let chosen = self.chosen();
        let settings = device::settings();
        let mut records = Vec::new();
        for row in &chosen {
            match settings.desk_store(row.kind) {
                None => records.push(row.id.clone()),
                Some(store) => {
                    store.forget(&row.id);
                    settings.set_archived(&row.id, false);
                }
            }
        }
        self.desk.choose(|chosen| chosen.clear());
        let all = chosen.len();
        self.library.delete(records, move |stay| {
            self.has_done(Done::ForGood(match stay {
                0 => more::all_deleted(all),
                stay => more::not_deleted(stay),
            }));
        });
    }

    /// To what comes next or before: opens it where something is open, else goes to it in the list.
    fn step(self, forward: bool, in_list: bool) {
        let shown = untrack(|| self.desk.shown());
        let at = self.open_id().or_else(|| self.desk.at.get_untracked());
        let (before, next) = neighbours(&shown, at.as_deref().unwrap_or_default());
        let Some(to) = (if forward { next } else { before }) else {
            return;
        };
        if self.open_id().is_some() {
            self.open(to);
        }
        self.desk.at.set(Some(to.id.clone()));
        if self.open_id().is_none() || in_list {
            go_to_row(&to.id);
        }
    }

    /// Does what a key is for; false where it is for nothing here.
    pub fn key(self, press: &KeyPress) -> bool {
        let Some(command) = Command::of(press) else {
            return false;
        };
        let is_letter = press.key.chars().count() == 1;
        if self.shell.opened.any_now() || is_letter && !self.desk.with_keys.get_untracked() {
            return false;
        }
        let open = self.open_id();
        let at = open.clone().or_else(|| self.desk.at.get_untracked());
        match (command, open, at) {
            (Command::Keys, ..) => self.keys.set(true),
            (Command::Search, ..) => return device::focus_on("desk-find"),
            (Command::Next, ..) => self.step(true, press.in_list),
            (Command::Previous, ..) => self.step(false, press.in_list),
            (Command::Close, Some(_), _) => self.shell.up(),
            (Command::Toggle, _, Some(at)) => self.desk.choose(|chosen| chosen.toggle(&at)),
            (Command::All, ..) => {
                let shown = untrack(|| self.desk.shown());
                self.desk.choose(|chosen| chosen.choose_all(&shown));
            }
            (Command::None, ..) => self.desk.choose(|chosen| chosen.clear()),
            (Command::Pool, _, Some(at)) => {
                let rows = self.desk.rows_now();
                if let Some(row) = rows.iter().find(|row| row.id == at) {
                    self.desk
                        .choose(|chosen| chosen.choose_pool(&rows, &row.group));
                }
            }
            (Command::Sheet, Some(id), _) if self.is_record(&id) => {
                self.show(Place::Sheet(id, None))
            }
            (Command::Log, Some(id), _) if self.is_record(&id) => self.show(Place::Log(id, None)),
            (Command::Findings, Some(id), _) if self.is_record(&id) => {
                if !untrack(|| self.shell.is_wide()) {
                    self.show(Place::Findings(id));
                }
                go_on_at("desk-found");
            }
            (Command::Compare, ..) => self.compare(),
            (Command::Rank, ..) => self.rank(),
            (Command::Report, ..) => self.shell.go(Screen::Desk(Place::Report)),
            (Command::Archive, ..) => self.archive(),
            (Command::Delete, ..) => self.ask_to_delete(),
            (Command::View, None, _) => self.desk.show_as(match untrack(|| self.desk.view()) {
                View::Cards => View::Table,
                View::Table => View::Cards,
            }),
            (Command::Sort(by), ..) => self.desk.sort(self.desk.order.get_untracked().pressed(by)),
            (
                Command::Close
                | Command::Toggle
                | Command::Pool
                | Command::Sheet
                | Command::Log
                | Command::Findings
                | Command::View,
                ..,
            ) => return false,
        }
        true
    }

    fn is_record(self, id: &str) -> bool {
        let rows = self.desk.rows_now();
        rows.iter()
            .any(|row| row.id == id && row.kind == RowKind::Record)
    }
}

/// The id in the page of what opens a row.
pub fn row_id(id: &str) -> String {
    format!("row-{id}")
}

/// Puts the keys on a row.
pub fn go_to_row(id: &str) {
    let of = row_id(id);
    crate::macrotask_executor::once_drawn(move || {
        device::focus_on(&of);
    });
}
