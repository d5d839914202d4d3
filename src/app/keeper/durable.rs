//! The copy in the database: the lines that it has not taken yet, and what its answers mean.

use std::rc::Rc;

use super::{Change, Inner, RETRY_MS};
use crate::ports::{Put, Standing, StorageTrouble, Written};

impl Inner {
    /// Writes what the database has not taken yet, unless that is under way.
    pub(super) fn pump(self: &Rc<Self>) {
        let idle = self.state.borrow().to_durable.is_empty();
        if !idle {
            self.write_durable();
        }
    }

    /// The same even where there is nothing to write: the answer says whose mark is there.
    pub(super) fn write_durable(self: &Rc<Self>) {
        let puts: Vec<Put> = {
            let state = self.state.borrow();
            if !state.is_read || !state.standing.may_write() {
                return;
            }
            state.to_durable.values().cloned().collect()
        };
        if self.reading.get() || self.pumping.replace(true) {
            return;
        }
        let (this, turn) = (Rc::clone(self), self.turn.get());
        let asked = self.storage().write(&self.id, &self.me, puts.clone());
        self.storage().spawn(Box::pin(async move {
            let outcome = asked.await;
            this.pumping.set(false);
            this.written(turn, puts, outcome);
        }));
    }

    fn written(
        self: &Rc<Self>,
        turn: u32,
        puts: Vec<Put>,
        outcome: Result<Written, StorageTrouble>,
    ) {
        let failed = outcome.as_ref().err().cloned();
        self.store.durable_went(failed.clone().map_or(Ok(()), Err));
        match outcome {
            Ok(Written::Done) => {
                {
                    let mut state = self.state.borrow_mut();
                    for put in puts {
                        if state.to_durable.get(&put.n) == Some(&put) {
                            state.to_durable.remove(&put.n);
                        }
                    }
                }
                (self.on_change)(Change::Kept);
                self.pump();
            }
            _ if turn != self.turn.get() => self.pump(),
            // A closed match leaves what it could not write to whoever opens it next.
            Ok(Written::Robbed | Written::Differs) if self.closed.get() => {}
            Ok(Written::Robbed) => self.lose(),
            Ok(Written::Differs) => self.read(),
            Ok(Written::Gone) => {
                self.state.borrow_mut().is_read = false;
                self.read();
            }
            Err(_) => {
                (self.on_change)(Change::Kept);
                self.try_later(failed.as_ref());
            }
        }
    }

    /// Tries again after a while; storage that is full or forbidden is tried with the next line.
    fn try_later(self: &Rc<Self>, trouble: Option<&StorageTrouble>) {
        let may_pass = matches!(
            trouble,
            Some(StorageTrouble::Lost | StorageTrouble::Unknown(_))
        );
        if !may_pass || self.retrying.replace(true) {
            return;
        }
        let this = Rc::clone(self);
        let wait = self.storage().wait(RETRY_MS);
        self.storage().spawn(Box::pin(async move {
            wait.await;
            this.retrying.set(false);
            this.pump();
        }));
    }

    /// Another tab writes now. Reading only comes first; what of this tab's lines the other one does not
    /// have is looked for afterwards.
    pub(super) fn lose(self: &Rc<Self>) {
        self.turn.set(self.turn.get() + 1);
        {
            let mut state = self.state.borrow_mut();
            state.has_lock = false;
            state.robbed = true;
            state.standing = Standing::ReadOnly { robbed: true };
            state.to_local.clear();
            state.to_durable.clear();
        }
        (self.on_change)(Change::Kept);
        self.read();
    }
}
