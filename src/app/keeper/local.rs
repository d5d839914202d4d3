//! The copy in local storage: this tab's mark there, and the lines that it has not taken yet.

use std::rc::Rc;

use super::{put, Change, Inner, StorageNotice};
use crate::ports::{line_key, mark_key, split_line_key, Lines, Put, StorageTrouble, LINES};

impl Inner {
    /// Puts this tab's mark into local storage.
    pub(super) fn mark(&self) {
        let outcome = self.storage().set(&mark_key(&self.id), &self.me);
        self.state.borrow_mut().marked = outcome.is_ok();
    }

    /// Whether the mark there is still this tab's. A strange one makes it read only; one that is gone
    /// means that local storage was emptied.
    pub(super) fn still_marked(self: &Rc<Self>) -> bool {
        match self.storage().get(&mark_key(&self.id)) {
            Ok(Some(mark)) if mark == self.me => true,
            Ok(Some(_)) if self.state.borrow().marked => {
                self.lose();
                false
            }
            Ok(None) if self.state.borrow().marked => {
                self.emptied();
                {
                    let mut state = self.state.borrow_mut();
                    // The database may be empty as well: nothing is called saved before it was read again.
                    state.is_read = false;
                    state.marked_there = false;
                    if state.local_wanted {
                        let all: Vec<Put> = state.lines.iter().map(|(n, l)| put(*n, l)).collect();
                        state.to_local = rules::gather(all.into_iter().map(|put| (put.n, put)));
                    }
                }
                self.mark();
                self.read();
                true
            }
            // It could not be put there, or storage cannot be read now.
            Ok(_) => {
                self.mark();
                true
            }
            Err(_) => true,
        }
    }

    /// The storage was emptied under this tab: what was kept beside the match is gone as well.
    pub(super) fn emptied(&self) {
        let mut state = self.state.borrow_mut();
        let gone = std::mem::take(&mut state.beside);
        state.beside_again.extend(gone);
        if !state.told.contains(&StorageNotice::Emptied) {
            state.told.push(StorageNotice::Emptied);
        }
    }

    pub(super) fn local_lines(&self) -> Result<Lines, StorageTrouble> {
        let mut lines = Lines::new();
        for key in self.storage().keys(&format!("{LINES}{}/", self.id))? {
            if let Some((of, n)) = split_line_key(&key) {
                if of == self.id {
                    if let Some(line) = self.storage().get(&key)? {
                        lines.insert(n, line);
                    }
                }
            }
        }
        Ok(lines)
    }

    /// Writes what local storage has not taken yet, up to the first that it refuses. What gives way goes from
    /// the last line back, and what is new comes in order: wherever this is cut off, the copy has no holes,
    /// and what is left of another log begins where that log parts.
    pub(super) fn write_local(self: &Rc<Self>) {
        if self.state.borrow().local_held {
            (self.on_change)(Change::Kept);
            return;
        }
        let mut outcome = Ok(());
        let mut strange = false;
        loop {
            let next = {
                let state = self.state.borrow();
                let mut puts = state.to_local.values();
                let gives_way = puts.clone().rev().find(|put| put.found.is_some());
                gives_way.or_else(|| puts.next()).cloned()
            };
            let Some(put) = next else {
                break;
            };
            let key = line_key(&self.id, put.n);
            outcome = self.storage().get(&key).and_then(|there| {
                if there == put.line {
                    Ok(())
                } else if there == put.found {
                    match &put.line {
                        Some(line) => self.storage().set(&key, line),
                        None => self.storage().remove(&key),
                    }
                } else {
                    strange = true;
                    Ok(())
                }
            });
            if outcome.is_err() || strange {
                break;
            }
            self.state.borrow_mut().to_local.remove(&put.n);
        }
        self.store.local_went(outcome);
        if strange {
            self.read();
        }
        (self.on_change)(Change::Kept);
    }
}
