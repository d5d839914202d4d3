//! Logs without any sense: a beginning that could be, then any entry with any number, some with insisting
//! and some with times. The same seed gives the same log.

use fastrand::Rng;
use game::entry::{
    Amendment, By, Change, Check, Court, Fault, Forced, Found, LateFault, LiberoWhy, Player,
    ReplayWhy, Scope, SeenBy, Since, Staff, TeamList, Timer, TimerAction, Toss,
};
use game::{simulate_by, Entry, Kind, Level, Timed, Who};
use rules::{ByTeam, Cause, Preset, Rules, Score, Sets, Shirt, SubstitutionPolicy, Team};

/// A log of so many entries at most behind a plausible opening, or behind nothing but the heading.
pub fn log(seed: u64, most: usize) -> Vec<Entry> {
    let mut rng = Rng::with_seed(seed);
    let rules = rules(&mut rng);
    let mut log = simulated_opening(rules, seed);
    if rng.u8(0..8) == 0 {
        log.truncate(1);
    }
    for _ in 0..rng.usize(0..=most) {
        let n = log.last().map_or(1, |e: &Entry| e.n + 1);
        let at = (rng.u8(0..3) == 0).then(|| rng.i64(0..40_000_000));
        let insist = (rng.u8(0..5) == 0).then(|| "decided".to_owned());
        let kind = kind(&mut rng, n);
        log.push(Entry {
            at,
            insist,
            ..Entry::new(n, kind)
        });
    }
    log
}

/// A simulated match up to its first service.
fn simulated_opening(rules: Rules, seed: u64) -> Vec<Entry> {
    let mut log = OPENINGS.with(|known| {
        let mut known = known.borrow_mut();
        // Making a whole simulated match for every log would be most of the work.
        let place = usize::try_from(seed % 16).unwrap_or(0);
        if known.len() <= place {
            for s in known.len()..=place {
                let mut all = simulate_by(Preset::International.rules(), s as u64);
                let begun = all.iter().position(|e| e.kind == Kind::BeginSet);
                all.truncate(begun.map_or(all.len(), |i| i + 1));
                known.push(all);
            }
        }
        known[place].clone()
    });
    if let Some(Kind::Match(heading)) = log.first_mut().map(|e| &mut e.kind) {
        heading.rules = rules;
    }
    log
}

thread_local! {
    static OPENINGS: std::cell::RefCell<Vec<Vec<Entry>>> =
        const { std::cell::RefCell::new(Vec::new()) };
}

/// Short sets, and whatever a competition can choose.
fn rules(rng: &mut Rng) -> Rules {
    let mut rules = Preset::ALL[rng.usize(0..4)].rules();
    rules.set.target = rng.u16(1..7);
    rules.set.lead = rng.u16(1..3);
    rules.set.cap = rng.bool().then(|| rules.set.target + rng.u16(0..3));
    rules.decider.to.target = rng.u16(1..5);
    rules.decider.change_courts_at = rng.bool().then(|| rng.u16(0..4));
    rules.sets = match rng.u8(0..5) {
        0 => Sets::BestOf(1),
        1 => Sets::BestOf(3),
        2 => Sets::BestOf(5),
        3 => Sets::Fixed(2),
        _ => Sets::Fixed(3),
    };
    rules.substitutions.policy = [
        SubstitutionPolicy::Paired,
        SubstitutionPolicy::SamePlace,
        SubstitutionPolicy::Free,
    ][rng.usize(0..3)];
    if rng.u8(0..4) == 0 {
        rules.players_on_court = rng.u8(4..7);
    }
    rules
}

fn team(rng: &mut Rng) -> Team {
    Team::BOTH[rng.usize(0..2)]
}

fn shirt(rng: &mut Rng) -> Shirt {
    Shirt(match rng.u8(0..12) {
        0 => rng.u16(0..130),
        _ => rng.u16(1..13),
    })
}

fn shirts(rng: &mut Rng, most: usize) -> Vec<Shirt> {
    (0..rng.usize(0..=most)).map(|_| shirt(rng)).collect()
}

fn positions(rng: &mut Rng) -> Vec<Shirt> {
    if rng.u8(0..4) == 0 {
        return shirts(rng, 8);
    }
    let mut all: Vec<Shirt> = (1..13).map(Shirt).collect();
    rng.shuffle(&mut all);
    all.truncate(if rng.u8(0..4) == 0 {
        rng.usize(4..7)
    } else {
        6
    });
    all
}

fn by(rng: &mut Rng) -> Option<By> {
    rng.bool().then(|| By {
        team: team(rng),
        number: rng.bool().then(|| shirt(rng)),
    })
}

fn cause(rng: &mut Rng) -> Cause {
    Cause::ALL[rng.usize(0..Cause::ALL.len())]
}

fn who(rng: &mut Rng) -> Who {
    match rng.u8(0..4) {
        0 => Who::Staff("coach".to_owned()),
        _ => Who::Player(shirt(rng)),
    }
}

fn late_fault(rng: &mut Rng) -> LateFault {
    let faults = [
        Fault::Rotation,
        Fault::IllegalSubstitution,
        Fault::IllegalLibero,
        Fault::WrongLineUp,
        Fault::UnregisteredPlayer,
    ];
    let since = (rng.u8(0..4) > 0).then(|| Since {
        score: Score {
            a: rng.u16(0..5),
            b: rng.u16(0..5),
        },
        set: rng.bool().then(|| rng.u8(0..5)),
    });
    LateFault {
        team: team(rng),
        fault: faults[rng.usize(0..faults.len())],
        since,
        during: [Found::Rally, Found::AfterRally][rng.usize(0..2)],
        positions: rng.bool().then(|| positions(rng)),
    }
}

fn list(rng: &mut Rng) -> TeamList {
    let player = |rng: &mut Rng, number| Player {
        number,
        name: None,
        captain: rng.u8(0..8) == 0,
        libero: rng.u8(0..6) == 0,
    };
    let players = match rng.u8(0..4) {
        0 => shirts(rng, 16)
            .into_iter()
            .map(|n| player(rng, n))
            .collect(),
        _ => (1..=rng.u16(0..15))
            .map(|n| player(rng, Shirt(n)))
            .collect(),
    };
    TeamList {
        team: team(rng),
        players,
        staff: vec![Staff {
            role: "coach".to_owned(),
            name: None,
        }],
    }
}

/// Any entry whatever; `n` is its number.
fn kind(rng: &mut Rng, n: u32) -> Kind {
    match rng.u8(0..64) {
        0..=17 => Kind::Rally {
            won_by: team(rng),
            cause: rng.bool().then(|| cause(rng)),
            by: by(rng),
        },
        18..=22 => Kind::Substitution {
            team: team(rng),
            changes: (0..rng.u8(0..4))
                .map(|_| Change {
                    out: shirt(rng),
                    into: shirt(rng),
                })
                .collect(),
            reason: [
                None,
                None,
                Some(Forced::Injury),
                Some(Forced::Expelled),
                Some(Forced::Disqualified),
            ][rng.usize(0..5)],
        },
        23..=27 => Kind::LiberoReplacement {
            team: team(rng),
            change: Change {
                out: shirt(rng),
                into: shirt(rng),
            },
        },
        28..=30 => Kind::LineUp {
            team: team(rng),
            positions: positions(rng),
        },
        31..=33 => Kind::BeginSet,
        34..=36 => Kind::LateFault(late_fault(rng)),
        37..=39 => Kind::Misconduct {
            team: team(rng),
            who: who(rng),
            sanction: Level::ALL[rng.usize(0..4)],
        },
        40..=42 => Kind::Strike {
            entry: rng.u32(0..n + 3),
            why: None,
        },
        43..=44 => Kind::TimeOut { team: team(rng) },
        45..=46 => Kind::NewLibero {
            team: team(rng),
            replaces: shirts(rng, 2),
            number: shirt(rng),
            why: [None, Some(LiberoWhy::Unable), Some(LiberoWhy::Declared)][rng.usize(0..3)],
        },
        _ => seldom(rng, n),
    }
}

fn seldom(rng: &mut Rng, n: u32) -> Kind {
    match rng.u8(0..22) {
        0 => Kind::Toss(Toss::new(team(rng), team(rng))),
        1 => Kind::Replay {
            why: [
                ReplayWhy::DoubleFault,
                ReplayWhy::Interference,
                ReplayWhy::Injury,
                ReplayWhy::Other,
            ][rng.usize(0..4)],
            hurt: by(rng),
            rally: None,
        },
        2 => Kind::ImproperRequest { team: team(rng) },
        3 => Kind::Delay {
            team: team(rng),
            request: rng.bool(),
        },
        4 => Kind::Recovery {
            team: team(rng),
            number: shirt(rng),
        },
        5 => Kind::Incomplete {
            team: team(rng),
            scope: [Scope::Set, Scope::Set, Scope::Match][rng.usize(0..3)],
        },
        6 => Kind::Default { team: team(rng) },
        7 => Kind::ChangeCourts,
        8 => Kind::Suspend {
            why: "lights".to_owned(),
        },
        9 | 10 => Kind::Resume {
            court: [Court::Same, Court::Other][rng.usize(0..2)],
        },
        11 => Kind::Answer {
            entry: rng.u32(0..n + 1),
            choice: ["A", "B", "lose_set", "keep_set", "?"][rng.usize(0..5)].to_owned(),
        },
        12 => Kind::Explain {
            entry: rng.u32(0..n + 1),
            cause: cause(rng),
            by: by(rng),
            seen_by: [None, Some(SeenBy::LineJudge)][rng.usize(0..2)],
        },
        13 => Kind::TeamList(list(rng)),
        14 => Kind::Timer(Timer {
            what: [Timed::Interval, Timed::WarmUp, Timed::TimeOut][rng.usize(0..3)].clone(),
            team: rng.bool().then(|| team(rng)),
            seconds: rng.u32(0..600),
            action: [TimerAction::Start, TimerAction::Stop][rng.usize(0..2)],
        }),
        15 => Kind::Check(Check {
            item: "net".to_owned(),
            ok: rng.bool(),
            note: None,
        }),
        16 => Kind::Remark {
            text: "late bus".to_owned(),
            team: None,
        },
        // Seldom, or little would be tried behind it.
        18 if rng.u8(0..4) == 0 => Kind::Seal {
            code: "23456789AC".to_owned(),
        },
        19 | 20 => Kind::Reopen { why: None },
        17 => Kind::Heading(Box::new(Amendment {
            names: ByTeam {
                a: Some("Voles".to_owned()),
                b: None,
            },
            rules: rng.bool().then(|| rules(rng)),
            ..Amendment::default()
        })),
        _ => Kind::Sign {
            role: "scorer".to_owned(),
            name: None,
        },
    }
}
