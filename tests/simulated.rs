//! Rehearsals in every preset: nothing refused, every match finished, every kind of entry met, the
//! same after writing and reading, and the sheet in step with the fold.

mod support;

use std::collections::{BTreeMap, BTreeSet};
use std::sync::OnceLock;

use game::{simulate, DecidedBy, Entry, Outcome, Phase, PointFor, Timeline};
use record::{Log, Reading};
use reports::{SetSheet, Sheet};
use rules::{ByTeam, Preset, Score, Team};
use support::{code, EVERY_KIND};

/// Matches of each preset; `TIMES` multiplies them for a long run.
fn seeds() -> std::ops::Range<u64> {
    let times = std::env::var("TIMES").ok().and_then(|v| v.parse().ok());
    0..40 * times.unwrap_or(1)
}

/// One simulated match and its fold.
struct Rehearsed {
    name: String,
    preset: Preset,
    timeline: Timeline,
}

/// All of them, made once for all tests.
fn all() -> &'static [Rehearsed] {
    static ALL: OnceLock<Vec<Rehearsed>> = OnceLock::new();
    ALL.get_or_init(|| {
        let of = |preset: Preset, seed: u64| Rehearsed {
            name: format!("{} {seed}", preset.code()),
            preset,
            timeline: Timeline::of(simulate(preset, seed)),
        };
        let each = |preset| seeds().map(move |seed| of(preset, seed));
        Preset::ALL.into_iter().flat_map(each).collect()
    })
}

fn each(mut see: impl FnMut(&str, Preset, &[Entry], &Timeline)) {
    for Rehearsed {
        name,
        preset,
        timeline,
    } in all()
    {
        see(name, *preset, timeline.entries(), timeline);
    }
}

#[test]
fn nothing_is_refused_and_every_match_ends() {
    each(|name, _, _, timeline| {
        for (entry, outcome) in timeline.outcomes() {
            // A strike may leave a later entry without its ground; simulated matches take back the last only.
            assert!(
                !matches!(outcome, Outcome::Refused(_)),
                "{name}: entry {} {:?}: {outcome:?}",
                entry.n,
                entry.kind
            );
        }
        assert_eq!(timeline.state().phase(), Phase::Finished, "{name}");
        assert!(timeline.state().winner().is_some(), "{name}");
    });
}

#[test]
fn numbers_rise_by_one_and_times_never_fall() {
    each(|name, _, entries, _| {
        for (n, entry) in (1..).zip(entries) {
            assert_eq!(entry.n, n, "{name}");
        }
        let times: Vec<i64> = entries.iter().map(|e| e.at.expect("timed")).collect();
        assert!(times.windows(2).all(|w| w[0] <= w[1]), "{name}");
    });
}

/// The kinds of the contract that line-ups make possible; the tally can meet the others only.
const WITH_LINE_UPS: [&str; 6] = [
    "game_captain",
    "team_list",
    "line_up",
    "libero_replacement",
    "new_libero",
    "recovery",
];

/// A simulated match ends with the signatures.
const OF_THE_SEAL: [&str; 2] = ["seal", "reopen"];

#[test]
fn every_kind_of_entry_is_met() {
    let mut met: BTreeMap<&str, BTreeSet<String>> = BTreeMap::new();
    each(|_, preset, entries, _| {
        let kinds = entries.iter().map(|e| code(&e.kind));
        met.entry(preset.code()).or_default().extend(kinds);
    });
    let of_the_simulator = EVERY_KIND.iter().filter(|k| !OF_THE_SEAL.contains(k));
    let every: BTreeSet<String> = of_the_simulator.map(|&k| k.to_owned()).collect();
    let all: BTreeSet<String> = met.values().flatten().cloned().collect();
    assert_eq!(all, every, "over all presets");
    for kind in WITH_LINE_UPS {
        assert!(every.contains(kind), "{kind} is a kind");
        assert!(
            met["international"].contains(kind),
            "{kind} in a full match"
        );
    }
}

/// Somebody insists, too.
#[test]
fn somebody_insists() {
    let mut insisted = 0;
    each(|_, _, _, timeline| {
        insisted += timeline
            .outcomes()
            .filter(|(_, o)| matches!(o, Outcome::Insisted(_)))
            .count();
    });
    assert!(insisted > 0);
}

#[test]
fn the_same_seed_is_the_same_match() {
    for preset in Preset::ALL {
        assert_eq!(simulate(preset, 7), simulate(preset, 7));
        assert_ne!(simulate(preset, 7), simulate(preset, 8));
    }
}

#[test]
fn the_fold_prints_the_same_after_writing_and_reading() {
    each(|name, _, entries, _| {
        let log = Log {
            id: name.to_owned(),
            entries: entries.to_vec(),
        };
        let text = record::write(&log);
        let again = record::read(&text);
        assert_eq!(again.problems, [], "{name}");
        assert_eq!(again.log, log, "{name}");
        assert_eq!(record::write(&again.log), text, "{name}");
        let first = Reading {
            entries: log.entries.len(),
            log,
            ..Reading::default()
        };
        assert_eq!(render::fold(&again), render::fold(&first), "{name}");
    });
}

/// What the log says by itself, counted without the reducer's counts: entries that stand, in sets that
/// stand.
#[test]
fn the_sheet_agrees_with_the_fold() {
    each(|name, _, _, timeline| {
        let state = timeline.state();
        let sheet = Sheet::of(timeline);
        let by_record: Vec<_> = state.sets().map(|s| (s.number, s.score)).collect();
        let by_sheet: Vec<_> = sheet
            .sets
            .iter()
            .filter(|s| s.won.is_some())
            .map(|s| (s.number, s.score))
            .collect();
        assert_eq!(by_sheet, by_record, "{name}: sets");
        assert_eq!(sheet.result.sets, state.sets_won(), "{name}: sets won");
        assert_eq!(sheet.result.winner, state.winner(), "{name}: winner");
        assert_eq!(sheet.sanctions, state.sanctions(), "{name}: sanctions");
        for team in Team::BOTH {
            let points: u32 = state.sets().map(|s| u32::from(s.score[team])).sum();
            assert_eq!(
                sheet.result.points[team], points,
                "{name}: points of {team}"
            );
        }
        for set in state.sets() {
            let Some(play) = &set.play else { continue };
            let on_sheet = sheet.sets.iter().find(|s| s.number == set.number);
            let on_sheet = on_sheet.unwrap_or_else(|| panic!("{name}: set {}", set.number));
            for team in Team::BOTH {
                let side = &play.sides[team];
                let time_outs = on_sheet.time_outs.iter().filter(|t| t.team == team);
                assert_eq!(
                    time_outs.count(),
                    usize::from(side.time_outs),
                    "{name}: time-outs of {team} in set {}",
                    set.number
                );
                let made = |exceptional: bool| {
                    let own = on_sheet.substitutions.iter().filter(|s| s.team == team);
                    own.filter(|s| s.exceptional == exceptional).count()
                };
                assert_eq!(
                    (made(false), made(true)),
                    (
                        usize::from(side.substitutions),
                        usize::from(side.exceptional)
                    ),
                    "{name}: substitutions of {team} in set {}",
                    set.number
                );
            }
        }
    });
}

/// Points on the sheet that stand make the score, where a set was decided by play.
#[test]
fn the_running_score_ends_at_the_score() {
    each(|name, _, _, timeline| {
        let sheet = Sheet::of(timeline);
        for record in timeline.state().sets() {
            if record.how != DecidedBy::Played {
                continue;
            }
            let set = &sheet.sets[usize::from(record.number) - 1];
            let standing = ByTeam::new(|team| {
                let of_team = |p: &&reports::PointMark| p.team == team && p.cancelled_by.is_none();
                set.running.iter().filter(of_team).count()
            });
            assert_eq!(
                (standing.a, standing.b),
                (usize::from(record.score.a), usize::from(record.score.b)),
                "{name}: set {}",
                record.number
            );
        }
    });
}

/// The totals at each loss of service, counted from the points alone: the side that wins a rally serves
/// the next one; the winner of a set won on the opponent's service has its final total once more.
fn rounds_by_points(set: &SetSheet, opener: Team) -> ByTeam<Vec<u16>> {
    let mut rounds: ByTeam<Vec<u16>> = ByTeam::default();
    let (mut score, mut serving) = (Score::default(), opener);
    for point in &set.running {
        if point.team != serving {
            rounds[serving].push(score[serving]);
        }
        score = score.plus(point.team);
        serving = point.team;
    }
    rounds[serving].push(score[serving]);
    rounds
}

/// Service turns alternate, and each has the total that the points give. Left out: sets with cancelled
/// points, and those that both teams began with a penalty (who served them is asked).
#[test]
fn service_rounds_alternate() {
    let mut looked_at = 0;
    each(|name, _, _, timeline| {
        for set in &Sheet::of(timeline).sets {
            let began_with: BTreeSet<Team> = set
                .running
                .iter()
                .take_while(|p| p.given_for == PointFor::Penalty)
                .map(|p| p.team)
                .collect();
            let put_right = set
                .running
                .iter()
                .any(|p| p.cancelled_by.is_some() || p.given_for == PointFor::LateFault);
            let played = matches!(set.won, Some((_, DecidedBy::Played)));
            let (Some(opener), true) = (set.first_service, played) else {
                continue;
            };
            if put_right || began_with.len() == 2 {
                continue;
            }
            let totals = set
                .rounds
                .map(|_, r| r.iter().map(|r| r.total).collect::<Vec<_>>());
            assert_eq!(
                totals,
                rounds_by_points(set, opener),
                "{name}: set {}",
                set.number
            );
            assert!(totals.a.len().abs_diff(totals.b.len()) <= 1, "{name}");
            looked_at += 1;
        }
    });
    assert!(
        looked_at > 200,
        "only {looked_at} sets without cancelled points"
    );
}
