//! Reading the match: both copies and the memory of this tab, put together, and what parts from them kept beside.

use std::collections::BTreeMap;
use std::rc::Rc;

use super::{Change, Inner, StorageNotice, RETRY_MS};
use crate::merge::{merge, Merged};
use crate::ports::{Claimed, Lines, Put, Standing, StorageTrouble};

impl Inner {
    /// Reads the match anew, after what is being read now.
    pub(super) fn read(self: &Rc<Self>) {
        if self.reading.replace(true) {
            self.read_again.set(true);
            return;
        }
        let this = Rc::clone(self);
        self.storage().spawn(Box::pin(async move {
            loop {
                this.read_again.set(false);
                let whole = this.read_once().await;
                if this.closed.get() || (whole && !this.read_again.get()) {
                    break;
                }
                if !whole {
                    this.storage().wait(RETRY_MS).await;
                }
                if this.closed.get() {
                    break;
                }
            }
            this.reading.set(false);
            this.pump();
        }));
    }

    /// Says whether the database was read, and all that was found is kept.
    async fn read_once(self: &Rc<Self>) -> bool {
        let turn = self.turn.get();
        let writes = self.state.borrow().has_lock;
        let found = if writes {
            self.storage().claim(&self.id, &self.me).await
        } else {
            let lines = self.storage().lines(&self.id).await;
            lines.map(|lines| Claimed {
                lines,
                was_marked: true,
            })
        };
        if turn != self.turn.get() {
            // Somebody else writes by now.
            self.read_again.set(true);
            return true;
        }
        let durable = match found {
            Ok(claimed) => {
                let marked = self.state.borrow().marked_there;
                if writes && marked && !claimed.was_marked {
                    self.emptied();
                }
                self.state.borrow_mut().marked_there = writes;
                claimed.lines
            }
            Err(trouble) => {
                self.store.durable_went(Err(trouble));
                self.show_without_database(writes);
                // Where storage is forbidden there is nothing to wait for.
                return self.store.health().durable == Err(StorageTrouble::Refused);
            }
        };
        self.store.durable_went(Ok(()));
        let local = self.local_lines();
        self.store
            .local_went(local.as_ref().map(|_| ()).map_err(Clone::clone));
        // What local storage would not say counts as not there for reading, and is not repaired.
        loop {
            let local_now = local.clone().unwrap_or_default();
            let merged = {
                let state = self.state.borrow();
                if writes {
                    merge(&[&durable, &state.lines, &local_now])
                } else {
                    merge(&[&durable, &local_now])
                }
            };
            let branch = self.not_kept(&merged, writes);
            let Some(branch) = branch else {
                self.adopt(merged, writes, Some(&durable), local.is_ok());
                return true;
            };
            if self.keep_beside(branch, &merged.lines).await.is_err() {
                return false;
            }
            if turn != self.turn.get() {
                self.read_again.set(true);
                return true;
            }
        }
    }

    /// A log that parts from the one that was read and is kept nowhere yet.
    fn not_kept(&self, merged: &Merged, writes: bool) -> Option<Lines> {
        let state = self.state.borrow();
        let mut branches = merged.branches.clone();
        branches.extend(state.beside_again.iter().cloned());
        if !writes && state.robbed {
            let mine = merge(&[&merged.lines, &state.lines]);
            // A line of this tab that stands nowhere else: the rest of its log is kept with it.
            let is_apart = state.lines.iter().any(|(n, line)| {
                merged.lines.get(n) != Some(line) && mine.lines.get(n) == Some(line)
            });
            if is_apart {
                branches.push(state.lines.clone());
            } else {
                branches.extend(mine.branches);
            }
        }
        branches.into_iter().find(|b| !state.beside.contains(b))
    }

    /// Keeps a log as a match of its own.
    async fn keep_beside(&self, branch: Lines, main: &Lines) -> Result<(), StorageTrouble> {
        let id = self.store.insert_beside(&self.id, &branch).await?;
        let apart = |(n, line): &(&u32, &String)| main.get(n) != Some(line);
        let entries = branch.iter().filter(apart).count();
        let mut state = self.state.borrow_mut();
        state.told.push(StorageNotice::Beside { id, entries });
        state.beside.push(branch);
        Ok(())
    }

    /// Shows what there is without the database.
    fn show_without_database(self: &Rc<Self>, writes: bool) {
        let shown = {
            let state = self.state.borrow();
            match state.standing {
                Standing::Asking => false,
                Standing::Waiting | Standing::Writer => true,
                Standing::ReadOnly { .. } => !writes && !state.lines.is_empty(),
            }
        };
        if shown {
            // The log in memory goes on.
            (self.on_change)(Change::Kept);
            return;
        }
        let local = self.local_lines();
        self.store
            .local_went(local.as_ref().map(|_| ()).map_err(Clone::clone));
        let merged = {
            let state = self.state.borrow();
            let local = local.clone().unwrap_or_default();
            merge(&[&state.lines, &local])
        };
        self.adopt(merged, writes, None, local.is_ok());
    }

    /// Takes over what was read.
    fn adopt(
        self: &Rc<Self>,
        mut merged: Merged,
        writes: bool,
        durable: Option<&Lines>,
        local_read: bool,
    ) {
        let to_local = merged.repairs.pop().unwrap_or_default();
        let to_durable = merged.repairs.into_iter().next().unwrap_or_default();
        {
            let mut state = self.state.borrow_mut();
            let shown = matches!(state.standing, Standing::Waiting | Standing::Writer);
            let late = durable.is_some() && !state.is_read && shown;
            let more = merged
                .lines
                .keys()
                .filter(|n| !state.lines.contains_key(n))
                .count();
            if late && writes && more > 0 && !state.lines.is_empty() {
                let more = u32::try_from(more).unwrap_or(u32::MAX);
                state.told.push(StorageNotice::CameLate(more));
            }
            if !merged.mended.is_empty() && durable.is_some() && writes {
                state.told.push(StorageNotice::Mended(merged.mended));
            }
            state.lines = merged.lines;
            state.entries = merged.entries;
            state.next = merged.next;
            state.writer = merged.writer;
            state.damage = merged.damage;
            state.is_read = durable.is_some();
            // What parts from this log is kept beside it as soon as the database answers.
            state.local_held = durable.is_none() && !merged.branches.is_empty();
            let by_number =
                |puts: Vec<Put>| rules::gather(puts.into_iter().map(|put| (put.n, put)));
            state.to_durable = match durable {
                Some(_) => by_number(to_durable),
                None => BTreeMap::new(),
            };
            let forbidden = self.store.health().durable == Err(StorageTrouble::Refused);
            state.standing = match (writes, durable) {
                (false, _) => Standing::ReadOnly {
                    robbed: state.robbed,
                },
                (true, None) if !state.goes_on && !forbidden => Standing::Waiting,
                (true, _) => Standing::Writer,
            };
            let may = state.standing.may_write() && local_read;
            state.to_local = if may {
                by_number(to_local)
            } else {
                BTreeMap::new()
            };
        }
        // Whoever reads the log says whether the match runs; what local storage lacks is written then.
        (self.on_change)(Change::Log);
        if self.state.borrow().standing.may_write() {
            self.write_local();
        } else {
            (self.on_change)(Change::Kept);
        }
    }
}
