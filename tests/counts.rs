//! All states of a tiny match, counted to a fixed depth and pinned.
//!
//! A number here moves whenever a rule of the reducer changes: something became legal or illegal, or two
//! states that were told apart no longer are. Nothing else moves it. So before a number is changed:
//! find the shortest history whose legal entries differ (print `legal` of both versions at the first
//! depth that differs), name the rule, tell it in `tests/scenarios`, and write both into the commit. Two
//! counts are kept of every depth. *Histories* are sequences of legal entries, one after the other
//! (what may be entered). *States* are those that print differently or offer different entries (what can
//! be told apart); they show a change of consequence even where every entry stays legal.

mod support;

use std::collections::BTreeMap;

use game::entry::{Change, Court, Fault, Forced, Found, LateFault, LiberoWhy, ReplayWhy, Scope};
use game::{legal, Entry, Kind, Level, Timeline, Who};
use record::{Log, Reading};
use rules::{Preset, Rules, SetTarget, Sets, Shirt, SubstitutionPolicy, Team};

/// One set to three points, six players and two substitutes a team.
fn tiny() -> Rules {
    Rules {
        sets: Sets::BestOf(1),
        set: SetTarget {
            target: 3,
            lead: 1,
            cap: None,
        },
        ..Preset::International.rules()
    }
}

fn opening(rules: Rules, players: u16, liberos: &[u16]) -> Timeline {
    let mut kinds = vec![support::heading(rules)];
    kinds.extend(Team::BOTH.map(|team| support::list(team, players, liberos)));
    kinds.push(Kind::Toss(game::entry::Toss::new(Team::A, Team::A)));
    kinds.extend(support::set_begins(&rules));
    Timeline::of(support::numbered(kinds))
}

/// What tells two states apart: what is printed of them, and what they offer.
fn looks(timeline: &Timeline) -> String {
    let reading = Reading {
        log: Log {
            id: String::new(),
            entries: timeline.entries().to_vec(),
        },
        ..Reading::default()
    };
    let mut print = render::fold(&reading);
    // Which entry it was is history, not state.
    for list in ["sanctions", "cancelled"] {
        for item in print[list].as_array_mut().into_iter().flatten() {
            for key in ["entry", "cancelled_by"] {
                item[key].take();
            }
        }
    }
    format!("{print} {:?}", legal(timeline.state()))
}

/// Histories and states at each depth, for entries that `wanted` lets through and that are legal.
fn count(start: Timeline, depth: usize, wanted: &[Kind]) -> Vec<(u64, usize)> {
    let mut level: BTreeMap<String, (Timeline, u64)> = BTreeMap::new();
    level.insert(looks(&start), (start, 1));
    let mut counts = Vec::new();
    for _ in 0..depth {
        let mut next: BTreeMap<String, (Timeline, u64)> = BTreeMap::new();
        for (timeline, histories) in level.values() {
            for kind in wanted {
                let entry = Entry::new(timeline.next_number(), kind.clone());
                if timeline.check(&entry).is_err() {
                    continue;
                }
                let mut after = timeline.clone();
                after.push(entry);
                next.entry(looks(&after))
                    .and_modify(|(_, sum)| *sum += histories)
                    .or_insert((after, *histories));
            }
        }
        counts.push((next.values().map(|(_, sum)| sum).sum(), next.len()));
        level = next;
    }
    counts
}

fn rallies() -> Vec<Kind> {
    let won_by = |won_by| Kind::Rally {
        won_by,
        cause: None,
        by: None,
    };
    Team::BOTH.map(won_by).into()
}

fn substitution(out: u16, into: u16, reason: Option<Forced>) -> Kind {
    Kind::Substitution {
        team: Team::A,
        changes: vec![Change {
            out: Shirt(out),
            into: Shirt(into),
        }],
        reason,
    }
}

/// Every change among the starters 1 and 2 and the substitutes 7 and 8 of A.
fn changes(reason: Option<Forced>) -> Vec<Kind> {
    let numbers = [1, 2, 7, 8];
    let mut all = Vec::new();
    for out in numbers {
        for into in numbers.into_iter().filter(|&n| n != out) {
            all.push(substitution(out, into, reason));
        }
    }
    all
}

fn libero(out: u16, into: u16) -> Kind {
    Kind::LiberoReplacement {
        team: Team::A,
        change: Change {
            out: Shirt(out),
            into: Shirt(into),
        },
    }
}

fn card(who: Who, sanction: Level) -> Kind {
    Kind::Misconduct {
        team: Team::A,
        who,
        sanction,
    }
}

/// Points and time-outs alone: 6.1, 6.2, 15.1. The first counts can be done by hand: four entries are
/// legal at first; of the 16 histories of two, four are two rallies, four a rally and a time-out in
/// either order, three two time-outs in either order: 11 states; of the 64 of three, two are a third
/// time-out of one team.
#[test]
fn points_and_time_outs() {
    let mut wanted = rallies();
    wanted.extend(Team::BOTH.map(|team| Kind::TimeOut { team }));
    let counts = count(opening(tiny(), 6, &[]), 7, &wanted);
    assert_eq!(
        counts,
        [
            (4, 4),
            (16, 11),
            (62, 23),
            (222, 38),
            (708, 50),
            (1920, 49),
            (4140, 36)
        ]
    );
}

/// Paired substitutions: 15.2.2, 15.6. By hand: two rallies and four changes; after a rally the same
/// six, after a change only the two rallies: 2 × 6 + 4 × 2 = 20.
#[test]
fn paired_substitutions() {
    let wanted = [rallies(), changes(None)].concat();
    let mut rules = tiny();
    rules.substitutions.per_set = Some(3);
    let counts = count(opening(rules, 8, &[]), 7, &wanted);
    assert_eq!(
        counts,
        [
            (6, 6),
            (20, 20),
            (72, 51),
            (228, 103),
            (612, 131),
            (1320, 105),
            (1968, 43)
        ]
    );
}

/// The same where a place may be shared.
#[test]
fn same_place_substitutions() {
    let wanted = [rallies(), changes(None)].concat();
    let mut rules = tiny();
    rules.substitutions.policy = SubstitutionPolicy::SamePlace;
    rules.substitutions.entries_per_player = Some(2);
    rules.substitutions.per_set = Some(3);
    let counts = count(opening(rules, 8, &[]), 7, &wanted);
    assert_eq!(
        counts,
        [
            (6, 6),
            (20, 20),
            (80, 59),
            (276, 135),
            (844, 183),
            (2120, 156),
            (3792, 70)
        ]
    );
}

/// Forced, exceptional, and nobody left: 15.7, 15.8, 17.1.2.
#[test]
fn forced_substitutions() {
    let mut wanted = rallies();
    wanted.extend(changes(Some(Forced::Injury)));
    wanted.push(Kind::Recovery {
        team: Team::A,
        number: Shirt(1),
    });
    wanted.push(card(Who::Player(Shirt(1)), Level::Expulsion));
    wanted.push(substitution(1, 7, Some(Forced::Expelled)));
    wanted.push(Kind::Incomplete {
        team: Team::A,
        scope: Scope::Set,
    });
    let counts = count(opening(tiny(), 8, &[]), 4, &wanted);
    assert_eq!(counts, [(8, 8), (48, 33), (259, 105), (1301, 278)]);
}

/// One libero, a second one, a new one: 19.3, 19.4. Of a libero on the bench it makes no difference whether he or
/// she is unable or only declared so, and without a replacement so far the new one comes in at once (19.4.2.1).
#[test]
fn liberos() {
    let mut wanted = rallies();
    for (out, into) in [
        (5, 8),
        (6, 8),
        (8, 5),
        (8, 6),
        (8, 7),
        (7, 5),
        (1, 8),
        (4, 8),
        (5, 7),
    ] {
        wanted.push(libero(out, into));
    }
    wanted.extend(
        [LiberoWhy::Unable, LiberoWhy::Declared].map(|why| Kind::NewLibero {
            team: Team::A,
            replaces: vec![Shirt(8)],
            number: Shirt(7),
            why: Some(why),
        }),
    );
    wanted.push(Kind::Replay {
        why: ReplayWhy::Injury,
        hurt: Some(game::entry::By {
            team: Team::A,
            number: Some(Shirt(8)),
        }),
        rally: None,
    });
    let counts = count(opening(tiny(), 8, &[8]), 6, &wanted);
    assert_eq!(
        counts,
        [
            (7, 6),
            (40, 28),
            (210, 94),
            (1020, 224),
            (4550, 403),
            (18653, 568)
        ]
    );
}

/// Requests, delays and cards: 15.2.4, 15.11, 16.2, 21.
#[test]
fn requests_delays_and_cards() {
    let mut wanted = rallies();
    wanted.push(Kind::ImproperRequest { team: Team::A });
    wanted.extend([false, true].map(|request| Kind::Delay {
        team: Team::A,
        request,
    }));
    wanted.push(Kind::TimeOut { team: Team::A });
    for sanction in Level::ALL {
        wanted.push(card(Who::Staff("coach".into()), sanction));
    }
    wanted.push(card(Who::Player(Shirt(1)), Level::Penalty));
    let counts = count(opening(tiny(), 6, &[]), 5, &wanted);
    assert_eq!(
        counts,
        [
            (11, 11),
            (109, 92),
            (1004, 643),
            (8650, 3842),
            (67413, 19410)
        ]
    );
}

/// Stops, late faults and the end: 6.1.2.2, 6.4, 7.7, 17.3. Of ten entries nine are legal at first: no wrong
/// server is found after a rally where none was completed (7.7.1.1), nor of a team that did not serve (7.7.1).
#[test]
fn stops_and_late_faults() {
    let mut wanted = rallies();
    wanted.push(Kind::Replay {
        why: ReplayWhy::DoubleFault,
        hurt: None,
        rally: None,
    });
    wanted.push(Kind::TimeOut { team: Team::A });
    wanted.push(Kind::Suspend { why: String::new() });
    wanted.extend([Court::Same, Court::Other].map(|court| Kind::Resume { court }));
    wanted.push(Kind::BeginSet);
    for fault in [Fault::Rotation, Fault::IllegalSubstitution] {
        for during in [Found::Rally, Found::AfterRally] {
            wanted.push(Kind::LateFault(LateFault {
                team: Team::A,
                fault,
                since: None,
                during,
                positions: None,
            }));
        }
    }
    wanted.push(Kind::Default { team: Team::B });
    let counts = count(opening(tiny(), 6, &[]), 5, &wanted);
    assert_eq!(
        counts,
        [(9, 6), (69, 23), (499, 58), (3203, 118), (18402, 196)]
    );
}

/// The counting itself: one rally more or less legal moves a number.
#[test]
fn a_change_of_rule_moves_a_number() {
    let wanted = [rallies(), vec![Kind::TimeOut { team: Team::A }]].concat();
    let one = |most| {
        let mut rules = tiny();
        rules.time_outs.per_set = Some(most);
        count(opening(rules, 6, &[]), 4, &wanted)
    };
    assert_ne!(one(1), one(2));
    assert_eq!(one(1), one(1));
}
