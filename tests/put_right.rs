//! After a late fault has put a team right, its places go on like any others (FIVB Official Volleyball
//! Rules 2025-2028, 15.6.1 and 15.9.2).

mod support;

use dutystand::game::entry::{Change, Fault, Found, LateFault, Since};
use dutystand::game::{Entry, Kind, Outcome};
use dutystand::rules::{Score, Shirt, Team};
use support::{played, run};

fn change(out: u16, into: u16) -> Kind {
    Kind::Substitution {
        team: Team::B,
        changes: vec![Change {
            out: Shirt(out),
            into: Shirt(into),
        }],
        reason: None,
    }
}

fn put_right(fault: Fault, positions: [u16; 6]) -> Kind {
    Kind::LateFault(LateFault {
        team: Team::B,
        fault,
        since: Some(Since {
            score: Score { a: 1, b: 0 },
            set: None,
        }),
        during: Found::Rally,
        positions: Some(positions.map(Shirt).to_vec()),
    })
}

fn ends(kinds: Vec<Kind>) -> Outcome {
    let replay = played(kinds);
    let last = replay.entries().last().map(|e: &Entry| e.n);
    last.and_then(|n| replay.outcome(n))
        .cloned()
        .expect("an entry")
}

#[test]
fn the_starter_returns_for_a_player_who_was_put_in_his_place() {
    let mut kinds = run("AA");
    kinds.push(put_right(Fault::WrongLineUp, [1, 2, 3, 7, 5, 6]));
    kinds.push(change(7, 4));
    assert_eq!(ends(kinds), Outcome::Taken);
}

#[test]
fn an_illegal_change_that_was_undone_never_was() {
    let mut kinds = run("A");
    kinds.push(change(4, 7));
    kinds.extend(run("A"));
    kinds.push(put_right(Fault::IllegalSubstitution, [1, 2, 3, 4, 5, 6]));
    kinds.push(change(4, 8));
    assert_eq!(ends(kinds), Outcome::Taken);
}

/// 19.3.1.1: the other libero does not come in for one who stands in the front row.
#[test]
fn no_libero_follows_another_into_the_front_row() {
    let mut kinds = support::opening(dutystand::rules::Preset::International.rules());
    kinds[2] = support::list(Team::B, 12, &[11, 12]);
    let replace = |out: u16, into: u16| Kind::LiberoReplacement {
        team: Team::B,
        change: Change {
            out: Shirt(out),
            into: Shirt(into),
        },
    };
    kinds.push(replace(5, 12));
    kinds.extend(run("B"));
    let mut replay = dutystand::game::Replay::of(support::numbered(kinds));
    let mut enter = |kind| {
        let n = replay.next_number();
        replay.push(Entry::new(n, kind)).clone()
    };
    assert!(
        matches!(enter(replace(12, 11)), Outcome::Refused(why) if why.rule() == "19.3.1.1"),
        "place 4 is the front row"
    );
    assert_eq!(enter(replace(12, 5)), Outcome::Taken);
}
