//! The machine as the program asks for it (`app::ports::Machine`): it carries out and decides nothing.

use std::rc::Rc;

use wasm_bindgen_futures::spawn_local;

use super::clock::Clock;
use super::lock::WriterLock;
use super::persist::ask_to_keep;
use super::tabs::Tabs;
use super::wake::Wake;
use app::ports::{Held, Lock, Machine, Peers, Pending};

struct Browser {
    clock: Clock,
    wake: Wake,
}

/// The machine that this page runs on.
#[must_use]
pub fn open_machine() -> Rc<dyn Machine> {
    Rc::new(Browser {
        clock: Clock::start(),
        wake: Wake::new(),
    })
}

impl Machine for Browser {
    fn now(&self) -> i64 {
        self.clock.stamp()
    }

    fn settle_clock(&self) {
        self.clock.settle();
    }

    fn keep_awake(&self, wanted: bool) {
        self.wake.want(wanted);
    }

    fn ask_to_keep(&self) {
        spawn_local(async {
            ask_to_keep().await;
        });
    }

    fn lock(&self, id: &str, on_answer: Box<dyn Fn(Held)>) -> Rc<dyn Lock> {
        Rc::new(WriterLock::request(id, on_answer))
    }

    fn lock_at_once(&self, id: &str) -> Pending<Option<Rc<dyn Lock>>> {
        let id = id.to_owned();
        Box::pin(async move {
            let lock = WriterLock::at_once(&id).await?;
            Some(Rc::new(lock) as Rc<dyn Lock>)
        })
    }

    fn join(&self, id: &str, on_written: Box<dyn Fn()>) -> Box<dyn Peers> {
        Box::new(Tabs::join(id, on_written))
    }
}
