//! The open match: one door, what it brings with it, and what is published.

use app::keeper::StorageNotice;
use app::ports::{line_key, Standing};
use app::snapshot::{NotEntered, SessionNotice, Wish};
use game::entry::TimerAction;
use game::{simulate_by, Entry, Kind, Phase, Refusal, Timed};
use rules::{Preset, Team};

use crate::hall::{point, tally, Hall, Screen};
use crate::world::poll;

fn strike(entry: u32) -> Kind {
    Kind::Strike { entry, why: None }
}

fn running(screen: &Screen) -> Vec<Timed> {
    screen.timeline(|timeline| {
        let timers = timeline.state().timers().iter();
        timers.map(|running| running.timer.what.clone()).collect()
    })
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
    assert_eq!((times, running(&screen)), (1, vec![Timed::TimeOut]));
    assert_eq!(screen.next(), time_out + 2);
    // Taken back, it is timed no more.
    screen
        .session
        .submit(strike(time_out))
        .expect("it is taken back");
    assert_eq!(running(&screen), []);
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
    assert_eq!(running(&screen), []);
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
    assert_eq!(running(&screen), [Timed::Interval]);
    screen
        .session
        .submit(strike(last))
        .expect("it is taken back");
    assert_eq!(running(&screen), [], "the set goes on");
    let struck = screen.timeline(|t| {
        let mut strikes = t.entries().iter().rev();
        strikes.find(|e| e.kind == strike(last)).map(|e| e.n)
    });
    screen
        .session
        .submit(strike(struck.expect("struck")))
        .expect("it comes back");
    assert_eq!(running(&screen), [Timed::Interval]);
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

/// FIVB Rules 2025-2028, 18.1: every interval is three minutes, also where the one before was cut short and its
/// count-down would still run.
#[test]
fn a_set_that_is_begun_early_ends_the_count_down_of_the_interval() {
    let hall = Hall::new();
    let screen = tally(&hall);
    let since = || screen.timeline(|t| t.state().timers().first().and_then(|t| t.since));
    let win = || (0..25).for_each(|_| screen.point(Team::A));
    win();
    assert_eq!(running(&screen), [Timed::Interval]);
    let first = since();
    hall.run(20_000);
    screen.session.submit(Kind::BeginSet).expect("it begins");
    assert_eq!(running(&screen), []);
    let time_out = Kind::TimeOut { team: Team::B };
    screen.session.submit(time_out).expect("it is taken");
    assert_eq!(running(&screen), [Timed::TimeOut]);
    win();
    assert_eq!(running(&screen), [Timed::Interval]);
    assert!(since() > first, "{:?}", since());
}
