//! Laws of the reducer, on logs drawn at random: plausible ones and absurd ones.

mod support;

use game::{
    apply, check, legal, libero_replacements, Entry, Kind, Outcome, Phase, State, Timeline,
};
use proptest::prelude::*;
use record::Log;
use rules::{Preset, Shirt, Team};
use support::random;

/// So many cases of each law; `TIMES` multiplies them for a long run.
fn config(cases: u32) -> ProptestConfig {
    let times = std::env::var("TIMES")
        .ok()
        .and_then(|v| v.parse::<u32>().ok());
    ProptestConfig {
        cases: cases * times.unwrap_or(1),
        failure_persistence: None,
        ..ProptestConfig::default()
    }
}

/// What a state prints, as the measure of two states being the same.
fn print(timeline: &Timeline) -> String {
    let log = Log {
        id: "same".into(),
        entries: timeline.entries().to_vec(),
    };
    render::fold(&record::read(&record::write(&log))).to_string()
}

fn nobody_stands_twice(state: &State) {
    let Some(play) = state.shown() else { return };
    for team in Team::BOTH {
        let side = &play.sides[team];
        let mut all: Vec<Shirt> = side.slots.iter().map(|s| s.player).collect();
        all.extend(side.slots.iter().filter_map(|s| s.libero));
        let count = all.len();
        all.sort();
        all.dedup();
        assert_eq!(
            all.len(),
            count,
            "{team} has a player twice: {:?}",
            side.slots
        );
        if play.follows_places(team) {
            assert_eq!(
                side.slots.len(),
                usize::from(state.rules().players_on_court)
            );
        }
    }
}

/// Points on the board are those given less those cancelled, in every set that was decided by play.
fn points_add_up(state: &State) {
    let finished = state.sets().filter_map(|s| s.play.as_ref());
    for play in finished.chain(state.play()) {
        for team in Team::BOTH {
            let standing = play
                .points
                .iter()
                .filter(|p| p.to == team && p.cancelled_by.is_none())
                .count();
            assert_eq!(usize::from(play.score[team] - play.base[team]), standing);
        }
    }
}

/// Without insisting no count passes its limit.
fn counts_keep_limits(state: &State) {
    // A tally that grows into a match may have passed limits that were none.
    let Some(play) = state.shown() else {
        return;
    };
    for team in Team::BOTH {
        if !play.follows_places(team) {
            continue;
        }
        let side = &play.sides[team];
        let rules = state.rules();
        assert!(rules
            .time_outs
            .per_set
            .is_none_or(|most| side.time_outs <= most));
        assert!(rules
            .substitutions
            .per_set
            .is_none_or(|most| side.substitutions <= most));
    }
}

fn is_seal(log: &Log, n: u32) -> bool {
    let mut entries = log.entries.iter();
    entries.any(|e| e.n == n && matches!(e.kind, Kind::Seal { .. }))
}

proptest! {
    #![proptest_config(config(600))]

    #[test]
    fn any_log_folds_and_stays_sound(rules in random::rules(), drawn in random::entries(60)) {
        let log = random::log(rules, drawn);
        let timeline = Timeline::of(log);
        timeline.walk(|_, _, _, after| {
            nobody_stands_twice(after);
            points_add_up(after);
        });
        let most = usize::from(timeline.state().rules().sets_at_most());
        prop_assert!(timeline.state().sets().count() <= most);
    }

    #[test]
    fn step_by_step_equals_from_the_start(rules in random::rules(), drawn in random::entries(50)) {
        let log = random::log(rules, drawn);
        let mut steps = Timeline::new();
        for entry in &log {
            steps.push(entry.clone());
        }
        let whole = Timeline::of(log);
        let of = |r: &Timeline| r.outcomes().map(|(_, o)| o.clone()).collect::<Vec<_>>();
        prop_assert_eq!(of(&steps), of(&whole));
        prop_assert_eq!(format!("{:?}", steps.state()), format!("{:?}", whole.state()));
    }

    #[test]
    fn every_prefix_folds_to_the_state_before(rules in random::rules(), drawn in random::entries(30)) {
        // Strikes and the replay of a rally with a point reach back, so a prefix is compared without them.
        let reaches_back =
            |kind: &Kind| matches!(kind, Kind::Strike { .. } | Kind::Replay { rally: Some(_), .. });
        let log: Vec<Entry> = random::log(rules, drawn)
            .into_iter()
            .filter(|e| !reaches_back(&e.kind))
            .collect();
        let mut states = Vec::new();
        Timeline::of(log.clone()).walk(|_, _, _, after| states.push(format!("{after:?}")));
        for (i, state) in states.iter().enumerate() {
            let prefix = Timeline::of(log[..=i].to_vec());
            prop_assert_eq!(&format!("{:?}", prefix.state()), state);
        }
    }

    #[test]
    fn without_insisting_limits_hold(rules in random::rules(), drawn in random::entries(60)) {
        let log = random::log(rules, drawn.into_iter().map(|(k, _, at)| (k, false, at)).collect());
        Timeline::of(log).walk(|_, _, _, after| counts_keep_limits(after));
    }

    #[test]
    fn a_refused_entry_changes_nothing(rules in random::rules(), drawn in random::entries(30), last in random::kind()) {
        let timeline = Timeline::of(random::log(rules, drawn));
        let entry = Entry::new(timeline.next_number(), last);
        let refused = apply(timeline.state(), &entry);
        prop_assert_eq!(check(timeline.state(), &entry).is_err(), refused.is_err());
        let mut more = timeline.clone();
        if let Outcome::Refused(_) = more.push(entry) {
            prop_assert_eq!(support::counts(more.state()), support::counts(timeline.state()));
        }
    }

    #[test]
    fn striking_the_last_entry_equals_the_shorter_log(rules in random::rules(), drawn in random::entries(40)) {
        let shorter = Timeline::of(random::log(rules, drawn.clone()));
        let mut longer = shorter.clone();
        let n = longer.next_number();
        longer.push(Entry::new(n, Kind::Rally { won_by: Team::B, cause: None, by: None }));
        longer.push(Entry::new(n + 1, Kind::Strike { entry: n, why: None }));
        prop_assert_eq!(format!("{:?}", longer.state()), format!("{:?}", shorter.state()));
        // And striking the strike brings it back.
        let mut back = longer.clone();
        back.push(Entry::new(n + 2, Kind::Strike { entry: n + 1, why: None }));
        let mut once = shorter.clone();
        once.push(Entry::new(n, Kind::Rally { won_by: Team::B, cause: None, by: None }));
        prop_assert_eq!(format!("{:?}", back.state()), format!("{:?}", once.state()));
    }

    #[test]
    fn any_log_is_written_and_read_again(rules in random::rules(), drawn in random::entries(40)) {
        let log = Log { id: "round trip".into(), entries: random::log(rules, drawn) };
        let text = record::write(&log);
        let reading = record::read(&text);
        // The drawn seals have invented codes, and that is said.
        let of_seals = |p: &&record::Problem| p.entry.is_some_and(|n| is_seal(&log, n));
        prop_assert!(reading.problems.iter().all(|p| of_seals(&p)), "{:?}", reading.problems);
        prop_assert_eq!(&reading.log, &log);
        prop_assert_eq!(record::write(&reading.log), text);
    }

    #[test]
    fn reading_anything_never_fails_hard(text in "\\PC*") {
        let reading = record::read(&text);
        prop_assert!(reading.is_nothing());
    }
}

proptest! {
    #![proptest_config(config(120))]

    #[test]
    fn what_is_offered_is_taken_and_what_is_withheld_refused(
        rules in random::rules(),
        choices in proptest::collection::vec(any::<u16>(), 0..60),
        kinds in proptest::collection::vec(random::kind(), 30),
    ) {
        let timeline = random::legal_walk(rules, &choices);
        let state = timeline.state();
        let n = timeline.next_number();
        let offered = legal(state);
        for kind in &offered {
            prop_assert!(apply(state, &Entry::new(n, kind.clone())).is_ok(), "{:?}", kind);
        }
        for team in Team::BOTH {
            let of_team = libero_replacements(state, team).into_iter();
            let of_team: Vec<Kind> = of_team.map(|change| Kind::LiberoReplacement { team, change }).collect();
            // A tally follows no places, and takes a replacement of two who are no liberos as well.
            let liberos = &state.team(team).liberos;
            let of_all = offered.iter().filter(|kind| match kind {
                Kind::LiberoReplacement { team: of, change } =>
                    *of == team && [change.out, change.into].iter().any(|who| liberos.contains(who)),
                _ => false,
            });
            prop_assert_eq!(of_team, of_all.cloned().collect::<Vec<_>>());
        }
        for kind in kinds.into_iter().filter(|k| listed(k, state)) {
            let taken = apply(state, &Entry::new(n, kind.clone())).is_ok();
            prop_assert_eq!(taken, offered.contains(&kind), "{:?}", kind);
        }
        prop_assert!(timeline.outcomes().all(|(_, o)| *o == Outcome::Accepted));
    }

    #[test]
    fn a_legal_walk_prints_the_same_after_writing(rules in random::rules(), choices in proptest::collection::vec(any::<u16>(), 0..80)) {
        let timeline = random::legal_walk(rules, &choices);
        let log = Log { id: "same".into(), entries: timeline.entries().to_vec() };
        let again = Timeline::of(record::read(&record::write(&log)).log.entries);
        prop_assert_eq!(print(&again), print(&timeline));
    }
}

/// Whether the list of legal entries speaks of an entry at all: it carries no words, no whole list and
/// no moment of the past, and names players of the list.
fn listed(kind: &Kind, state: &State) -> bool {
    let on_list = |team: Team, s: Shirt| {
        state
            .team(team)
            .list
            .as_ref()
            .is_some_and(|l| l.player(s).is_some())
    };
    match kind {
        Kind::Rally { cause, by, .. } => cause.is_none() && by.is_none(),
        Kind::Substitution { team, changes, .. } => {
            changes.len() == 1
                && changes
                    .iter()
                    .all(|c| on_list(*team, c.out) && on_list(*team, c.into) && c.out != c.into)
        }
        Kind::LiberoReplacement { team, change } => {
            on_list(*team, change.out) && on_list(*team, change.into) && change.out != change.into
        }
        Kind::Replay { hurt, rally, .. } => hurt.is_none() && rally.is_none(),
        Kind::Toss(toss) => toss.won.is_none(),
        Kind::TimeOut { .. }
        | Kind::BeginSet
        | Kind::ImproperRequest { .. }
        | Kind::Delay { .. }
        | Kind::ChangeCourts
        | Kind::Resume { .. }
        | Kind::Incomplete { .. }
        | Kind::Default { .. } => true,
        Kind::Recovery { team, number } => on_list(*team, *number),
        _ => false,
    }
}

#[test]
fn a_plain_match_ends_finished_by_every_preset() {
    for preset in Preset::ALL {
        let rules = preset.rules();
        let mut kinds = support::opening(rules);
        let sets = rules.sets_to_win().expect("every preset is best of");
        for set in 1..=sets {
            kinds.extend(support::run(&"A".repeat(25)));
            if set < sets {
                kinds.extend(support::set_begins(&rules));
            }
        }
        let timeline = Timeline::of(support::numbered(kinds));
        assert_eq!(timeline.state().phase(), Phase::Finished, "{preset:?}");
        assert_eq!(timeline.state().winner(), Some(Team::A));
    }
}
