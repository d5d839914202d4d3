//! What the core costs: one step, a whole fold, whether it grows with the log, the sheet, and a million
//! absurd logs. It prints figures and ratios of one run side by side and judges none of them; only a
//! panic, or a state that cannot be, ends it with an error.
//!
//! `cargo bench --bench core --profile native -- [--absurd N] [--entries N] [--seed S]`
//! (defaults: 1000000 logs of up to 40 absurd entries each, from seed 0; `--absurd 0` leaves them out).

mod absurd;

use std::hint::black_box;
use std::panic::{catch_unwind, AssertUnwindSafe};
use std::process::ExitCode;
use std::sync::atomic::{AtomicU64, Ordering};
use std::time::{Duration, Instant};

use game::{apply, legal, notices, simulate, simulate_by, Entry, Outcome, State, Timeline};
use reports::Sheet;
use rules::{Preset, Rules, Sets, Shirt, Team};

fn main() -> ExitCode {
    let wanted = match Wanted::from_args(std::env::args().skip(1)) {
        Ok(wanted) => wanted,
        Err(say) => {
            eprintln!("{say}");
            return ExitCode::from(2);
        }
    };
    let long = long_match();
    println!(
        "match of {} entries, every figure the median of its repeats\n",
        long.len()
    );
    steps(&long);
    folds(&long);
    sheets(&long);
    if wanted.absurd == 0 {
        return ExitCode::SUCCESS;
    }
    absurd_logs(&wanted)
}

/// What was asked for.
struct Wanted {
    absurd: u64,
    entries: usize,
    seed: u64,
}

impl Wanted {
    fn from_args(mut args: impl Iterator<Item = String>) -> Result<Wanted, String> {
        let mut wanted = Wanted {
            absurd: 1_000_000,
            entries: 40,
            seed: 0,
        };
        while let Some(arg) = args.next() {
            if arg == "--bench" {
                continue; // The build tool says so.
            }
            let value = args.next();
            let number = value.as_deref().and_then(|v| v.parse::<u64>().ok());
            match (arg.as_str(), number) {
                ("--absurd", Some(n)) => wanted.absurd = n,
                ("--seed", Some(n)) => wanted.seed = n,
                ("--entries", Some(n)) => wanted.entries = usize::try_from(n).unwrap_or(40),
                _ => {
                    return Err(format!(
                        "{arg} needs to be --absurd, --entries or --seed with a number."
                    ))
                }
            }
        }
        Ok(wanted)
    }
}

/// A simulated match of more than a thousand entries: nine sets, all played.
fn long_match() -> Vec<Entry> {
    let rules = Rules {
        sets: Sets::Fixed(9),
        ..Preset::International.rules()
    };
    let long = (0..).map(|seed| simulate_by(rules, seed));
    long.into_iter()
        .find(|log| log.len() >= 1100)
        .unwrap_or_default()
}

/// The median time of one call, over so many repeats; `make` is not timed.
fn median<T, R>(
    repeats: usize,
    mut make: impl FnMut() -> T,
    mut run: impl FnMut(T) -> R,
) -> Duration {
    let mut times: Vec<Duration> = (0..repeats)
        .map(|_| {
            let input = make();
            let start = Instant::now();
            let output = black_box(run(black_box(input)));
            let took = start.elapsed();
            drop(output);
            took
        })
        .collect();
    times.sort();
    times[times.len() / 2]
}

fn micros(time: Duration) -> f64 {
    time.as_secs_f64() * 1e6
}

/// The state before an entry that counts, at or behind a place in the log, and that entry.
fn at(log: &[Entry], place: usize) -> (State, Entry) {
    let whole = Timeline::of(log.to_vec());
    let counts = |e: &&Entry| whole.outcome(e.n) == Some(&Outcome::Accepted);
    let entry = log[place..].iter().find(counts).expect("one that counts");
    let before = usize::try_from(entry.n).map_or(0, |n| n - 1);
    (
        Timeline::of(log[..before].to_vec()).state().clone(),
        entry.clone(),
    )
}

/// One step with the copy of the state that `apply` makes; ten entries around each place.
fn steps(log: &[Entry]) {
    println!("a step                     entry 50      500     1000   500 : 50   1000 : 50");
    let row = |name: &str, call: &dyn Fn(&State, &Entry)| {
        let times = [50, 500, 1000].map(|place| {
            let mut times: Vec<f64> = (0..10)
                .map(|i| {
                    let (state, entry) = at(log, place + i);
                    // A thousand calls at a time: one is shorter than the clock can tell.
                    let many =
                        |(): ()| (0..1000).for_each(|_| call(black_box(&state), black_box(&entry)));
                    micros(median(15, || (), many)) / 1000.0
                })
                .collect();
            times.sort_by(f64::total_cmp);
            times[times.len() / 2]
        });
        println!(
            "{name:24} {:8.2} µs {:5.2} µs {:5.2} µs      {:5.2}       {:5.2}",
            times[0],
            times[1],
            times[2],
            times[1] / times[0],
            times[2] / times[0],
        );
    };
    row("apply (copy and step)", &|state, entry| {
        drop(black_box(apply(state, entry)));
    });
    row("copy of the state", &|state, _| {
        drop(black_box(state.clone()))
    });
    row("what is due", &|state, _| drop(black_box(notices(state))));
    let (state, _) = at(log, 500);
    let all = median(50, || (), |()| legal(&state));
    println!("everything legal, at 500 {:8.1} µs\n", micros(all));
}

/// The fold of the first so many entries, and what one of them costs in it.
fn folds(log: &[Entry]) {
    println!("a fold                          time    an entry   against 250");
    let mut first = None;
    for entries in [250, 500, 1000] {
        let prefix = &log[..entries];
        let time = median(200, || prefix.to_vec(), Timeline::of);
        let each = micros(time) / entries as f64;
        let first = *first.get_or_insert(each);
        println!(
            "{entries:5} entries            {:7.3} ms   {each:6.3} µs         {:5.2}",
            micros(time) / 1000.0,
            each / first,
        );
    }
    let usual: Vec<Vec<Entry>> = (0..20)
        .map(|seed| simulate(Preset::International, seed))
        .filter(|log| log.len() >= 500)
        .map(|mut log| {
            log.truncate(500);
            log
        })
        .collect();
    let mut times: Vec<f64> = usual
        .iter()
        .map(|log| micros(median(50, || log.clone(), Timeline::of)) / 1000.0)
        .collect();
    times.sort_by(f64::total_cmp);
    if let (Some(least), Some(most)) = (times.first(), times.last()) {
        println!(
            "500 entries of {} usual matches: {least:.3} to {most:.3} ms\n",
            times.len()
        );
    }
}

/// The walk that the sheet makes, and the sheet itself, against the fold of the same log.
fn sheets(log: &[Entry]) {
    let timeline = Timeline::of(log[..500].to_vec());
    let fold = median(200, || log[..500].to_vec(), Timeline::of);
    let walk = median(
        200,
        || (),
        |()| {
            let mut seen = 0usize;
            timeline.walk(|_, _, _, _| seen += 1);
            seen
        },
    );
    let sheet = median(200, || (), |()| Sheet::of(&timeline));
    let against = |time: Duration| micros(time) / micros(fold);
    println!("500 entries                     time   against the fold");
    for (name, time) in [("fold", fold), ("walk", walk), ("sheet", sheet)] {
        println!(
            "{name:24}   {:7.3} ms             {:5.2}",
            micros(time) / 1000.0,
            against(time),
        );
    }
    println!();
}

/// Folds absurd logs on all processors; every one that panics, or ends in a state that cannot be, is
/// named by its seed.
fn absurd_logs(wanted: &Wanted) -> ExitCode {
    let threads = std::thread::available_parallelism().map_or(1, usize::from);
    let (next, entries, refused) = (AtomicU64::new(0), AtomicU64::new(0), AtomicU64::new(0));
    let bad = AtomicU64::new(0);
    let start = Instant::now();
    std::thread::scope(|scope| {
        for _ in 0..threads {
            scope.spawn(|| loop {
                let i = next.fetch_add(1, Ordering::Relaxed);
                if i >= wanted.absurd {
                    break;
                }
                let seed = wanted.seed + i;
                match catch_unwind(AssertUnwindSafe(|| fold_absurd(seed, wanted.entries))) {
                    Ok((all, no)) => {
                        entries.fetch_add(all, Ordering::Relaxed);
                        refused.fetch_add(no, Ordering::Relaxed);
                    }
                    Err(_) => {
                        eprintln!("seed {seed} does not fold: --seed {seed} --absurd 1");
                        bad.fetch_add(1, Ordering::Relaxed);
                    }
                }
            });
        }
    });
    let took = start.elapsed();
    let (entries, refused) = (entries.into_inner(), refused.into_inner());
    println!(
        "{} absurd logs, {entries} entries ({refused} refused), in {:.1} s on {threads} threads: {} did not fold",
        wanted.absurd,
        took.as_secs_f64(),
        bad.load(Ordering::Relaxed),
    );
    if bad.into_inner() == 0 {
        ExitCode::SUCCESS
    } else {
        ExitCode::FAILURE
    }
}

/// Entries of the log, and how many of them were refused.
fn fold_absurd(seed: u64, most: usize) -> (u64, u64) {
    let log = absurd::log(seed, most);
    let entries = log.len() as u64;
    let timeline = Timeline::of(log);
    nobody_stands_twice(timeline.state());
    let no = |o: &Outcome| matches!(o, Outcome::Refused(_));
    let refused = timeline.outcomes().filter(|(_, o)| no(o)).count() as u64;
    black_box(notices(timeline.state()));
    (entries, refused)
}

/// However much somebody insists, a player has one place.
fn nobody_stands_twice(state: &State) {
    let Some(play) = state.shown() else { return };
    for team in Team::BOTH {
        let slots = &play.sides[team].slots;
        let mut all: Vec<Shirt> = slots.iter().map(|s| s.player).collect();
        all.extend(slots.iter().filter_map(|s| s.libero));
        let count = all.len();
        all.sort();
        all.dedup();
        assert_eq!(all.len(), count, "{team} has a player twice: {slots:?}");
    }
}
