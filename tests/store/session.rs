//! The open match: one door, what it brings with it, and what is published.

use std::cell::{Cell, RefCell};
use std::collections::BTreeMap;
use std::rc::{Rc, Weak};

use app::keeper::StorageNotice;
use app::ports::{line_key, Held, Lock, Machine, Peers, Pending, Standing};
use app::session::Session;
use app::snapshot::{NotEntered, SessionNotice, Snapshot, Wish};
use app::store::Store;
use game::entry::{Heading, TimerAction};
use game::{simulate_by, Entry, Kind, Phase, Refusal, Timed, Timeline};
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

struct Phone {
    world: Shared,
    locks: Rc<Locks>,
    awake: Cell<bool>,
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
struct Hall {
    world: Shared,
    locks: Rc<Locks>,
    tabs: Cell<usize>,
}

/// A tab, and everything that it has shown.
struct Screen {
    session: Session,
    phone: Rc<Phone>,
    shown: Rc<RefCell<Vec<Snapshot>>>,
}

impl Hall {
    fn new() -> Hall {
        let world = World::new(1);
        world.borrow_mut().now = 1_700_000_000_400;
        Hall {
            world,
            locks: Rc::default(),
            tabs: Cell::new(0),
        }
    }

    fn tab(&self) -> Screen {
        let tab = self.tabs.replace(self.tabs.get() + 1);
        let world = Rc::clone(&self.world);
        let store = Store::new(Rc::new(Tab { world, tab }), Ok(()));
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
            shown,
        }
    }

    /// Lets the browser do what it has to do, and time pass.
    fn run(&self, ms: u64) {
        for _ in 0..200 {
            carry_out(&self.world);
            deliver(&self.world);
            poll(&self.world);
            self.world.borrow_mut().now += ms / 200;
        }
    }
}

impl Screen {
    fn last(&self) -> Snapshot {
        self.shown
            .borrow()
            .last()
            .cloned()
            .expect("something is shown")
    }

    fn timeline<T>(&self, look: impl FnOnce(&Timeline) -> T) -> T {
        self.session.with_timeline(look)
    }

    fn score(&self) -> String {
        self.timeline(|timeline| timeline.state().score().to_string())
    }

    fn next(&self) -> u32 {
        self.timeline(Timeline::next_number)
    }

    fn point(&self, team: Team) {
        self.session
            .submit(point(team))
            .expect("a point is never refused in a running set");
    }

    /// How often something was published while `work` was done.
    fn published(&self, work: impl FnOnce()) -> usize {
        let before = self.shown.borrow().len();
        work();
        self.shown.borrow().len() - before
    }

    fn running(&self) -> Vec<Timed> {
        self.timeline(|timeline| {
            let timers = timeline.state().timers().iter();
            timers.map(|running| running.timer.what.clone()).collect()
        })
    }
}

fn point(team: Team) -> Kind {
    Kind::Rally {
        won_by: team,
        cause: None,
        by: None,
    }
}

fn strike(entry: u32) -> Kind {
    Kind::Strike { entry, why: None }
}

/// A tally of the first set, begun.
fn tally(hall: &Hall) -> Screen {
    let screen = hall.tab();
    let heading = Heading::new(ByTeam::default(), Preset::Tally.rules());
    screen.session.create(heading).expect("it begins");
    screen.session.submit(Kind::BeginSet).expect("a set begins");
    hall.run(1000);
    screen
}

#[test]
fn an_entry_is_kept_before_it_is_shown_and_shown_once() {
    let hall = Hall::new();
    let screen = tally(&hall);
    let next = screen.next();
    let id = screen.session.id().expect("it is open");
    let times = screen.published(|| screen.point(Team::A));
    assert_eq!(times, 1);
    assert_eq!(screen.score(), "1:0");
    assert!(hall.world.borrow().local.contains_key(&line_key(&id, next)));
    // Whole seconds, so that a log is small.
    let at = screen.timeline(|t| t.entry(next).and_then(|e| e.at));
    assert_eq!(at.map(|at| at % 1000), Some(0));
    assert!(
        screen.phone.awake.get(),
        "the screen stays on while a match runs"
    );
}

#[test]
fn the_same_tap_twice_makes_one_entry() {
    let hall = Hall::new();
    let screen = tally(&hall);
    let expected = Some(screen.next());
    let tap = || Wish {
        expected,
        ..point(Team::A).into()
    };
    assert_eq!(screen.session.submit(tap()), Ok(()));
    let times = screen.published(|| {
        assert_eq!(screen.session.submit(tap()), Err(NotEntered::Stale));
    });
    assert_eq!((times, screen.score()), (0, "1:0".to_owned()));
}

#[test]
fn a_refusal_keeps_nothing_and_publishes_nothing() {
    let hall = Hall::new();
    let screen = tally(&hall);
    let next = screen.next();
    let times = screen.published(|| {
        let refused = screen.session.submit(strike(next + 5));
        let why = Refusal::StrikeLater { entry: next + 5 };
        assert_eq!(refused, Err(NotEntered::Refused(why)));
    });
    assert_eq!((times, screen.next()), (0, next));
    let closed = hall.tab();
    assert_eq!(
        closed.session.submit(point(Team::A)),
        Err(NotEntered::NoMatch)
    );
}

/// FIVB Rules 2025-2028, 15.4.1: a time-out lasts 30 seconds. Its count-down comes and goes with it.
#[test]
fn a_time_out_brings_its_count_down_and_takes_it_along() {
    let hall = Hall::new();
    let screen = tally(&hall);
    screen.point(Team::A);
    let time_out = screen.next();
    let times = screen.published(|| {
        let asked = screen.session.submit(Kind::TimeOut { team: Team::B });
        assert_eq!(asked, Ok(()));
    });
    assert_eq!((times, screen.running()), (1, vec![Timed::TimeOut]));
    assert_eq!(screen.next(), time_out + 2);
    // Taken back, it is timed no more.
    screen
        .session
        .submit(strike(time_out))
        .expect("it is taken back");
    assert_eq!(screen.running(), []);
    // Brought back ten minutes later it does not run once more.
    hall.run(600_000);
    let strike_of_it = screen.timeline(|t| {
        let strikes = t.entries().iter().rev();
        strikes
            .clone()
            .find(|e| matches!(e.kind, Kind::Strike { .. }))
            .map(|e| e.n)
    });
    let back = strike(strike_of_it.expect("it was struck"));
    screen.session.submit(back).expect("it comes back");
    assert_eq!(screen.running(), []);
}

/// FIVB Rules 2025-2028, 18.1: three minutes between two sets, also where the point that ended the set was held
/// back at first.
#[test]
fn the_interval_runs_with_the_point_that_ends_the_set() {
    let hall = Hall::new();
    let screen = hall.tab();
    let rules = Preset::International.rules();
    let entries = simulate_by(rules, 3);
    let heading = entries.iter().find_map(|e| match &e.kind {
        Kind::Match(heading) => Some((**heading).clone()),
        _ => None,
    });
    screen
        .session
        .create(heading.expect("a heading"))
        .expect("it begins");
    // The simulated match again, without its count-downs, up to the point that ends its first set.
    let mut last = None;
    for entry in entries.iter().skip(1) {
        if matches!(entry.kind, Kind::Timer(_)) {
            continue;
        }
        if !matches!(
            entry.kind,
            Kind::Rally { .. }
                | Kind::BeginSet
                | Kind::LineUp { .. }
                | Kind::TeamList(_)
                | Kind::Toss(_)
                | Kind::Check(_)
        ) {
            continue;
        }
        let made = screen.session.submit(Wish {
            insist: Some("for the story".to_owned()),
            ..entry.kind.clone().into()
        });
        assert!(made.is_ok(), "{entry:?}: {made:?}");
        if screen.timeline(|t| t.state().phase()) == Phase::BetweenSets {
            last = screen.timeline(|t| t.last_rally().map(|e| e.n));
            break;
        }
    }
    let last = last.expect("the set ends");
    assert_eq!(screen.running(), [Timed::Interval]);
    screen
        .session
        .submit(strike(last))
        .expect("it is taken back");
    assert_eq!(screen.running(), [], "the set goes on");
    let struck = screen.timeline(|t| {
        let mut strikes = t.entries().iter().rev();
        strikes.find(|e| e.kind == strike(last)).map(|e| e.n)
    });
    screen
        .session
        .submit(strike(struck.expect("struck")))
        .expect("it comes back");
    assert_eq!(screen.running(), [Timed::Interval]);
    let starts = screen.timeline(|t| {
        let starts =
            |e: &&Entry| matches!(&e.kind, Kind::Timer(t) if t.action == TimerAction::Start);
        t.entries().iter().filter(starts).count()
    });
    assert_eq!(starts, 2);
}

#[test]
fn a_point_that_is_held_counts_once_somebody_says_so() {
    let hall = Hall::new();
    let screen = tally(&hall);
    screen.point(Team::A);
    let held = screen.next();
    let times = screen.published(|| {
        assert_eq!(screen.session.hold(held, point(Team::A)), Ok(()));
    });
    assert_eq!((times, screen.score()), (1, "1:0".to_owned()));
    screen.session.submit(strike(held + 1)).expect("it counts");
    assert_eq!(screen.score(), "2:0");
}

#[test]
fn a_tab_that_was_robbed_writes_nothing_more() {
    let hall = Hall::new();
    let first = tally(&hall);
    first.point(Team::A);
    hall.run(1000);
    let id = first.session.id().expect("it is open");
    let second = hall.tab();
    second.session.open(&id);
    hall.run(1000);
    assert_eq!(second.last().standing, Standing::ReadOnly { robbed: false });
    assert_eq!(
        second.session.submit(point(Team::B)),
        Err(NotEntered::ReadOnly)
    );
    second.session.take_over();
    assert_eq!(first.last().standing, Standing::ReadOnly { robbed: true });
    assert_eq!(
        first.session.submit(point(Team::B)),
        Err(NotEntered::ReadOnly)
    );
    hall.run(1000);
    assert_eq!(second.last().standing, Standing::Writer);
    second.point(Team::B);
    assert_eq!(
        (first.score(), second.score()),
        ("1:0".to_owned(), "1:1".to_owned())
    );
}

#[test]
fn a_match_that_is_being_put_away_is_opened_when_that_is_done() {
    let hall = Hall::new();
    let screen = tally(&hall);
    let id = screen.session.id().expect("it is open");
    hall.run(1000);
    screen.session.close();
    assert!(screen.last().id.is_none());
    let (session, of) = (screen.session.clone(), id.clone());
    let work = async move { session.tidy(&of).await };
    hall.world
        .borrow_mut()
        .tasks
        .entry(77)
        .or_default()
        .push(Box::pin(work));
    // The lock is asked for, and somebody opens the match before it is let go.
    poll(&hall.world);
    screen.session.open(&id);
    hall.run(2000);
    assert_eq!(screen.last().standing, Standing::Writer);
    screen.point(Team::A);
    assert_eq!(screen.score(), "1:0");
}

#[test]
fn an_emptied_storage_is_said_until_it_is_read() {
    let hall = Hall::new();
    let screen = tally(&hall);
    screen.point(Team::A);
    hall.run(1000);
    {
        let mut world = hall.world.borrow_mut();
        world.local.clear();
        world.database = Default::default();
    }
    screen.session.look_at_storage();
    hall.run(3000);
    let emptied = SessionNotice::Storage(StorageNotice::Emptied);
    assert_eq!(screen.last().notices, [emptied]);
    screen.session.notices_read();
    assert_eq!(screen.last().notices, []);
    let id = screen.session.id().expect("it is open");
    let lines = hall.world.borrow().database.lines[&id].len();
    assert_eq!(
        lines,
        screen.timeline(|t| t.entries().len()),
        "it is written again"
    );
}
