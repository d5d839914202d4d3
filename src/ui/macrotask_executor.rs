//! When the page draws what has changed: in a turn of its own, once the browser is done with the tap. It looks
//! after each tap what lies under the finger, and would lay out the whole page on the spot if that had
//! changed already; so a slow phone makes two short steps of it instead of a long one.

use std::cell::{Cell, RefCell};
use std::collections::VecDeque;
use std::future::Future;
use std::pin::Pin;

use any_spawner::{CustomExecutor, Executor};
use async_task::Runnable;

use device::Turn;

thread_local! {
    static WAITING: RefCell<VecDeque<Runnable>> = const { RefCell::new(VecDeque::new()) };
    static TURN: RefCell<Option<Turn>> = const { RefCell::new(None) };
    static ASKED: Cell<bool> = const { Cell::new(false) };
}

/// Puts it behind what waits already.
fn wait(task: Runnable) {
    WAITING.with_borrow_mut(|waiting| waiting.push_back(task));
    if !ASKED.replace(true) {
        TURN.with_borrow(|turn| turn.as_ref().map(Turn::ask));
    }
}

/// Does all that waits, and what comes to wait meanwhile.
fn work() {
    while let Some(task) = WAITING.with_borrow_mut(VecDeque::pop_front) {
        task.run();
    }
    ASKED.set(false);
}

struct Turns;

impl CustomExecutor for Turns {
    fn spawn(&self, task: Pin<Box<dyn Future<Output = ()> + Send>>) {
        self.spawn_local(task);
    }

    fn spawn_local(&self, task: Pin<Box<dyn Future<Output = ()>>>) {
        let (runnable, task) = async_task::spawn_local(task, wait);
        task.detach();
        runnable.schedule();
    }

    fn poll_local(&self) {}
}

/// Draws within this turn what has changed, then does this. For what the next key already needs.
pub fn once_drawn(then: impl FnOnce() + 'static) {
    if TURN.with_borrow(Option::is_some) {
        work();
        then();
    } else {
        device::spawn(async {
            leptos::task::tick().await;
            then();
        });
    }
}

/// From now on what has changed is drawn in turns; once, before anything is drawn. A browser without
/// channels draws within the tap.
pub fn install() {
    let Some(turn) = Turn::new(work) else {
        return;
    };
    TURN.set(Some(turn));
    // Fails only where somebody has begun to draw already.
    let _ = Executor::init_custom_executor(Turns);
}
