//! A browser with its tabs: their sessions over simulated stores and locks.

use std::cell::{Cell, RefCell};
use std::collections::BTreeMap;
use std::future::Future;
use std::rc::{Rc, Weak};

use app::ports::{Held, LocalStorage, Lock, Machine, Peers, Pending};
use app::session::Session;
use app::settings::{self, Settings};
use app::snapshot::Snapshot;
use app::store::Store;
use game::entry::Heading;
use game::{Kind, Timeline};
use rules::{ByTeam, Preset, Team};

use crate::world::{carry_out, deliver, poll, Shared, Tab, World};

/// The locks of one browser: who has which match.
#[derive(Default)]
struct Locks {
    holders: RefCell<BTreeMap<String, Weak<TabLock>>>,
}

struct TabLock {
    held: Cell<Held>,
    id: String,
    locks: Rc<Locks>,
    on_answer: Box<dyn Fn(Held)>,
}

impl TabLock {
    fn ask(locks: &Rc<Locks>, id: &str, on_answer: Box<dyn Fn(Held)>) -> Rc<TabLock> {
        let lock = Rc::new(TabLock {
            held: Cell::new(Held::Asking),
            id: id.to_owned(),
            locks: Rc::clone(locks),
            on_answer,
        });
        let taken = locks.holders.borrow().get(id).and_then(Weak::upgrade);
        if taken.is_some() {
            lock.turn(Held::Elsewhere { robbed: false });
        } else {
            lock.take();
        }
        lock
    }

    fn take(self: &Rc<Self>) {
        let mut holders = self.locks.holders.borrow_mut();
        let before = holders.insert(self.id.clone(), Rc::downgrade(self));
        drop(holders);
        if let Some(robbed) = before.and_then(|before| before.upgrade()) {
            robbed.turn(Held::Elsewhere { robbed: true });
        }
        self.turn(Held::Here);
    }

    fn turn(&self, held: Held) {
        self.held.set(held);
        (self.on_answer)(held);
    }
}

struct TabsLock(Rc<TabLock>);

impl Lock for TabsLock {
    fn held(&self) -> Held {
        self.0.held.get()
    }

    fn take_over(&self) {
        self.0.take();
    }
}

/// Nobody hears it: in these stories a tab is told by its lock.
struct Nobody;

impl Peers for Nobody {
    fn announce(&self, _last: u32) {}
}

pub struct Phone {
    world: Shared,
    locks: Rc<Locks>,
    pub awake: Cell<bool>,
}

impl Machine for Phone {
    fn now(&self) -> i64 {
        i64::try_from(self.world.borrow().now).expect("a time of this century")
    }

    fn settle_clock(&self) {}

    fn keep_awake(&self, wanted: bool) {
        self.awake.set(wanted);
    }

    fn ask_to_keep(&self) {}

    fn lock(&self, id: &str, on_answer: Box<dyn Fn(Held)>) -> Rc<dyn Lock> {
        Rc::new(TabsLock(TabLock::ask(&self.locks, id, on_answer)))
    }

    fn lock_at_once(&self, id: &str) -> Pending<Option<Rc<dyn Lock>>> {
        let lock = TabLock::ask(&self.locks, id, Box::new(|_| {}));
        let free = lock.held.get() == Held::Here;
        Box::pin(async move { free.then(|| Rc::new(TabsLock(lock)) as Rc<dyn Lock>) })
    }

    fn join(&self, _id: &str, _on_written: Box<dyn Fn()>) -> Box<dyn Peers> {
        Box::new(Nobody)
    }
}

/// One browser with its tabs.
pub struct Hall {
    pub world: Shared,
    locks: Rc<Locks>,
    tabs: Cell<usize>,
}

/// A tab, and everything that it has shown.
pub struct Screen {
    pub session: Session,
    pub phone: Rc<Phone>,
    pub settings: Settings,
    local: Rc<dyn LocalStorage>,
    shown: Rc<RefCell<Vec<Snapshot>>>,
}

impl Hall {
    pub fn new() -> Hall {
        let world = World::new(1);
        world.borrow_mut().now = 1_700_000_000_400;
        Hall {
            world,
            locks: Rc::default(),
            tabs: Cell::new(0),
        }
    }

    pub fn tab(&self) -> Screen {
        let tab = self.tabs.replace(self.tabs.get() + 1);
        let world = Rc::clone(&self.world);
        let stores = Rc::new(Tab { world, tab });
        let settings = Settings::new(stores.clone());
        let local: Rc<dyn LocalStorage> = stores.clone();
        let store = Store::new(stores, Ok(()));
        let phone = Rc::new(Phone {
            world: Rc::clone(&self.world),
            locks: Rc::clone(&self.locks),
            awake: Cell::new(false),
        });
        let shown: Rc<RefCell<Vec<Snapshot>>> = Rc::default();
        let to = Rc::clone(&shown);
        let machine: Rc<dyn Machine> = phone.clone();
        let session = Session::new(store, machine, move |s| to.borrow_mut().push(s.clone()));
        Screen {
            session,
            phone,
            settings,
            local,
            shown,
        }
    }

    /// Lets the browser do one thing.
    pub fn step(&self) {
        carry_out(&self.world);
        deliver(&self.world);
        poll(&self.world);
    }

    /// Lets the browser do what it has to do, and time pass.
    pub fn run(&self, ms: u64) {
        for _ in 0..200 {
            self.step();
            self.world.borrow_mut().now += ms / 200;
        }
    }
}

impl Screen {
    /// Puts a text into local storage under the name of a setting, as another version may.
    pub fn puts(&self, name: &str, text: &str) {
        let put = self.local.set(&settings::key(name), text);
        put.expect("local storage takes it");
    }

    pub fn last(&self) -> Snapshot {
        self.shown
            .borrow()
            .last()
            .cloned()
            .expect("something is shown")
    }

    pub fn timeline<T>(&self, look: impl FnOnce(&Timeline) -> T) -> T {
        self.session.with_timeline(look)
    }

    pub fn score(&self) -> String {
        self.timeline(|timeline| timeline.state().score().to_string())
    }

    pub fn next(&self) -> u32 {
        self.timeline(Timeline::next_number)
    }

    pub fn point(&self, team: Team) {
        self.session
            .submit(point(team))
            .expect("a point is never refused in a running set");
    }

    /// How often something was published while `work` was done.
    pub fn published(&self, work: impl FnOnce()) -> usize {
        let before = self.shown.borrow().len();
        work();
        self.shown.borrow().len() - before
    }

    /// Does something that waits for answers, and gives what came of it.
    pub fn wait_for<T: 'static>(&self, hall: &Hall, work: impl Future<Output = T> + 'static) -> T {
        let came = Rc::new(RefCell::new(None));
        let to = Rc::clone(&came);
        let work = async move {
            let outcome = work.await;
            *to.borrow_mut() = Some(outcome);
        };
        self.session.store().spawn(Box::pin(work));
        for _ in 0..100 {
            hall.run(1000);
            if let Some(outcome) = came.take() {
                return outcome;
            }
        }
        panic!("it does not come to an end");
    }
}

/// A point.
pub fn point(team: Team) -> Kind {
    Kind::Rally {
        won_by: team,
        cause: None,
        by: None,
    }
}

/// A tally of the first set, begun.
pub fn tally(hall: &Hall) -> Screen {
    let screen = hall.tab();
    let heading = Heading::new(ByTeam::default(), Preset::Tally.rules());
    screen.session.create(heading).expect("it begins");
    screen.session.submit(Kind::BeginSet).expect("a set begins");
    hall.run(1000);
    screen
}
