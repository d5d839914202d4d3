//! The long form of the storage trials: many kills and many days of bad luck in real browsers, with figures.
//!
//! `cargo test --test browser -- --trials` runs them (`KILLS=300 DAYS=100` an engine unless said otherwise);
//! a word behind it chooses an engine. Each kill and each day says its outcome as soon as it is over, so a
//! run that is broken off has figures too. A day draws its mishaps from a seed of its own: `DAY=7` plays
//! that day alone.

use std::any::Any;
use std::panic::{catch_unwind, AssertUnwindSafe};
use std::time::{Duration, Instant};

use game::{Entry, Timeline};
use record::Log;

use crate::driver::Engine;
use crate::kept::begun;
use crate::referee::Referee;
use crate::stage::Stage;
use crate::trials::{
    behind, damage, empty, in_turn, on_court, on_court_again, open_with, shown, take_over, unlucky,
};
use crate::BOTH;

/// What came of one kill or one day.
#[derive(Default)]
struct Outcome {
    /// What went wrong on purpose, in its order.
    mishaps: Vec<String>,
    /// Entries that were shown as saved.
    saved: usize,
    /// How many of them are gone.
    lost: usize,
    /// What should not be.
    faults: Vec<String>,
    /// Why it was not played to its end.
    broken_off: Option<String>,
}

/// What came of many.
#[derive(Default)]
struct Figures {
    runs: usize,
    saved: usize,
    lost: usize,
    faults: usize,
    broken_off: usize,
}

impl Figures {
    /// Counts one in and says what came of it.
    fn take(&mut self, name: &str, outcome: &Outcome, begun: Instant) {
        self.runs += 1;
        self.saved += outcome.saved;
        self.lost += outcome.lost;
        self.faults += outcome.faults.len();
        self.broken_off += usize::from(outcome.broken_off.is_some());
        let mut line = format!(
            "{name}: {}; {} saved, {} lost, {} s",
            outcome.mishaps.join(", "),
            outcome.saved,
            outcome.lost,
            begun.elapsed().as_secs()
        );
        for fault in &outcome.faults {
            line += &format!("; FAULT {fault}");
        }
        if let Some(why) = &outcome.broken_off {
            line += &format!("; BROKEN OFF {why}");
        }
        println!("{line}");
    }

    fn print(&self, engine: Engine, what: &str) {
        println!(
            "{}: {} {what}, {} entries shown as saved, {} of them lost, {} other faults, {} broken off",
            engine.name(),
            self.runs,
            self.saved,
            self.lost,
            self.faults,
            self.broken_off
        );
    }

    fn is_good(&self) -> bool {
        self.lost + self.faults + self.broken_off == 0
    }
}

fn number(name: &str) -> Option<usize> {
    std::env::var(name).ok()?.parse().ok()
}

/// Prints the figures of these engines; whether nothing was lost and all was played to its end.
pub fn print(words: &[String]) -> bool {
    let begun = Instant::now();
    let engines = BOTH
        .iter()
        .copied()
        .filter(|engine| words.is_empty() || words.iter().any(|word| engine.name() == word));
    let outcomes: Vec<bool> = std::thread::scope(|scope| {
        let all: Vec<_> = engines
            .map(|engine| scope.spawn(move || tried(engine)))
            .collect();
        all.into_iter()
            .map(|one| one.join().expect("a fault is caught"))
            .collect()
    });
    println!("in {} s", begun.elapsed().as_secs());
    outcomes.into_iter().all(|good| good)
}

fn tried(engine: Engine) -> bool {
    if let Err(why) = engine.present() {
        println!("{}: not tried: {why}", engine.name());
        return false;
    }
    if let Some(day) = number("DAY") {
        let days = bad_days(engine, day..day + 1);
        days.print(engine, "bad days");
        return days.is_good();
    }
    let kills = kill_again_and_again(engine, number("KILLS").unwrap_or(300));
    kills.print(engine, "kills");
    let days = bad_days(engine, 1..number("DAYS").unwrap_or(100) + 1);
    days.print(engine, "bad days");
    kills.is_good() && days.is_good()
}

/// Runs it and says why it came to no end, where it did not.
fn to_its_end(run: impl FnOnce()) -> Option<String> {
    let why: Box<dyn Any + Send> = catch_unwind(AssertUnwindSafe(run)).err()?;
    let words = match why.downcast_ref::<String>() {
        Some(words) => words.as_str(),
        None => why.downcast_ref::<&str>().copied().unwrap_or("no words"),
    };
    Some(words.to_owned())
}

/// A match that is played on after each kill; a new one after so many, or reading it would take longer and
/// longer.
const KILLS_A_MATCH: usize = 20;

fn kill_again_and_again(engine: Engine, kills: usize) -> Figures {
    let mut figures = Figures::default();
    while figures.runs < kills {
        let mut stage = Stage::new(engine);
        let id = format!("kill{}", figures.runs);
        let mut promised = 0;
        on_court(&mut stage, &id).saved();
        for _ in 0..KILLS_A_MATCH.min(kills - figures.runs) {
            let begun = Instant::now();
            let mut outcome = Outcome::default();
            let name = format!("{} kill {}", engine.name(), figures.runs + 1);
            let mut random = fastrand::Rng::with_seed(11_000 + figures.runs as u64);
            outcome.broken_off =
                to_its_end(|| kill_once(&mut stage, &id, &mut promised, &mut random, &mut outcome));
            figures.take(&name, &outcome, begun);
            if outcome.broken_off.is_some() {
                break;
            }
        }
    }
    figures
}

/// Some points, a kill, and what is there afterwards.
fn kill_once(
    stage: &mut Stage,
    id: &str,
    promised: &mut usize,
    random: &mut fastrand::Rng,
    outcome: &mut Outcome,
) {
    let mut referee = Referee { stage };
    let taps = random.usize(1..8);
    let from = shown(&mut referee).1;
    referee.points(&in_turn(from, taps), random.u32(5..60));
    std::thread::sleep(Duration::from_millis(random.u64(0..120)));
    if let (true, points) = shown(&mut referee) {
        outcome.saved += points.saturating_sub(*promised);
        *promised = points;
    }
    referee.stage.kill_browser();
    referee.stage.start_browser();
    let luck = ["", "late=1500", "late=4600", "fails=2"][random.usize(0..4)];
    outcome.mishaps.push(format!("killed, then {luck:?}"));
    open_with(&mut referee, luck, id);
    on_court_again(&mut referee);
    referee.saved();
    let (_, points) = shown(&mut referee);
    if points < *promised {
        outcome.lost += *promised - points;
        outcome.faults.push(format!("{points} of {promised}"));
    }
    *promised = points;
    let kept = referee.kept();
    if kept.local != kept.durable {
        outcome.faults.push("the copies differ".to_owned());
    }
}

/// So many days of one browser's life; a day that came to no end is its last.
const DAYS_A_LIFE: usize = 10;

fn bad_days(engine: Engine, days: std::ops::Range<usize>) -> Figures {
    let mut figures = Figures::default();
    let mut days = days.peekable();
    while days.peek().is_some() {
        let mut stage = Stage::new(engine);
        unlucky(&mut stage);
        for day in days.by_ref().take(DAYS_A_LIFE) {
            let begun = Instant::now();
            let mut outcome = Outcome::default();
            outcome.broken_off = to_its_end(|| bad_day(&mut stage, day, &mut outcome));
            figures.take(&format!("{} day {day}", engine.name()), &outcome, begun);
            if outcome.broken_off.is_some() {
                let picture = format!("broken-off-{}-{day}", engine.name());
                let _ = to_its_end(|| drop(stage.browser().picture(&picture)));
                break;
            }
        }
    }
    figures
}

/// One match with several mishaps, each after some points.
fn bad_day(stage: &mut Stage, day: usize, outcome: &mut Outcome) {
    let mut random = fastrand::Rng::with_seed(12_000 + day as u64);
    let id = format!("day{day}");
    let mut referee = Referee::at(stage);
    let log = Log {
        id: id.clone(),
        entries: begun(),
    };
    referee.open_file("day.json", record::write(&log).as_bytes());
    referee.reads("day.json is on this phone now.");
    // The start screen would go on with the match of the day before, which was played later.
    open_with(&mut referee, "", &id);
    referee.browser().find("#half-left");
    let mut known = begun().len();
    for _ in 0..4 {
        let from = shown(&mut referee).1;
        let taps = random.usize(1..6);
        referee.points(&in_turn(from, taps), random.u32(10..50));
        referee.saved();
        let entries: Vec<Entry> = referee.timeline().entries().to_vec();
        outcome.saved += entries.len() - known;
        known = entries.len();
        befall(&mut referee, &id, &entries, &mut random, outcome);
        on_court_again(&mut referee);
        referee.saved();
        let kept = referee.kept();
        if kept.local != kept.durable {
            outcome.faults.push("the copies differ".to_owned());
        }
        let now = Timeline::of(kept.entries());
        let there = entries
            .iter()
            .filter(|e| now.entry(e.n) == Some(*e))
            .count();
        if there < entries.len() {
            outcome.lost += entries.len() - there;
            outcome.faults.push(format!("{there} of {}", entries.len()));
        }
    }
}

/// One mishap to a match with these entries.
fn befall(
    referee: &mut Referee,
    id: &str,
    entries: &[Entry],
    random: &mut fastrand::Rng,
    outcome: &mut Outcome,
) {
    let n = entries.len() as u32;
    let mishaps = &mut outcome.mishaps;
    match random.usize(0..6) {
        0 => {
            let (lines, late) = (random.usize(1..6), random.u32(500..6_000));
            mishaps.push(format!("{lines} lines behind, database {late} ms late"));
            behind(referee, id, lines);
            open_with(referee, &format!("late={late}"), id);
        }
        1 => {
            let (lines, fails) = (random.usize(1..6), random.u32(1..4));
            mishaps.push(format!(
                "{lines} lines behind, database fails {fails} times"
            ));
            behind(referee, id, lines);
            open_with(referee, &format!("fails={fails}"), id);
        }
        2 => {
            let (one, other) = (random.u32(2..n), random.u32(2..n));
            mishaps.push(format!("lines {one} and {other} of {n} damaged"));
            damage(referee, id, one, true, false);
            if one != other {
                damage(referee, id, other, false, true);
            }
            referee.stage.reload();
        }
        3 => {
            mishaps.push("emptied".to_owned());
            empty(referee);
            referee.browser().wait_until(
                "it is written again",
                "document.querySelector('#damaged')?.innerText.includes('saved again') ?? false",
            );
            // Or the next emptied storage would seem to be said already.
            referee.tap("Understood");
        }
        4 => {
            mishaps.push("two tabs".to_owned());
            let first = referee.browser().tab();
            let second = referee.browser().open_tab();
            open_with(referee, "", id);
            referee.browser().find("#stands-still");
            take_over(referee);
            referee.browser().goto("about:blank");
            referee.browser().switch_to(&first);
            referee.browser().find("#stands-still");
            take_over(referee);
            drop(second);
        }
        _ => {
            mishaps.push("killed".to_owned());
            referee.stage.kill_browser();
            referee.stage.start_browser();
            open_with(referee, "", id);
        }
    }
}
