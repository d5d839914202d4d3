//! What stood as a notice while play went on, and counts beyond their limits.
//!
//! A rally that was played is never refused, so a player who had to leave is found here.

use super::{Finding, What};
use game::{notices, Kind, Notice, State, Timeline};
use rules::Team;

pub(super) fn findings(timeline: &Timeline) -> Vec<Finding> {
    let mut findings: Vec<Finding> = Vec::new();
    timeline.walk(|before, entry, outcome, after| {
        if !outcome.counts() {
            return;
        }
        let new = match &entry.kind {
            Kind::Rally { .. } => played_although(before),
            Kind::BeginSet => began(before),
            Kind::TimeOut { team } => over_time_outs(after, *team),
            Kind::Substitution { team, .. } => over_substitutions(after, *team),
            _ => Vec::new(),
        };
        for what in new {
            // Once, at the first rally, not at each that follows.
            if findings.iter().all(|f| f.what != what) {
                findings.push(Finding {
                    entry: Some(entry.n),
                    what,
                });
            }
        }
    });
    findings.extend(unlisted(timeline.state()));
    findings.extend(courts(timeline.state()));
    findings
}

fn played_although(before: &State) -> Vec<What> {
    let set = before.set_at_hand();
    let what = |notice| match notice {
        Notice::MustSubstitute { team, player } => Some((team, player, false)),
        Notice::LiberoMustLeave { team, player } => Some((team, player, true)),
        _ => None,
    };
    notices(before)
        .into_iter()
        .filter_map(what)
        .map(|(team, number, libero)| What::HadToLeave {
            team,
            set,
            number,
            libero,
        })
        .collect()
}

/// A failed check for safety that nobody had cleared (project design).
fn began(before: &State) -> Vec<What> {
    let failed = notices(before)
        .into_iter()
        .filter_map(|notice| match notice {
            Notice::DoNotStart { item } => Some(What::BeganUnsafe { item }),
            _ => None,
        });
    failed.collect()
}

/// Players of any set who are not on the list; an official may have insisted on another list since.
fn unlisted(state: &State) -> Vec<Finding> {
    let mut findings: Vec<Finding> = Vec::new();
    let plays = state.sets().filter_map(|s| s.play.as_ref());
    for play in plays.chain(state.play()) {
        for (team, side) in play.sides.iter() {
            let known = state.team(team);
            for came in side.entered.iter().filter(|e| !known.lists(e.player)) {
                let what = What::NotListed {
                    team,
                    set: play.number,
                    number: came.player,
                };
                if findings.iter().all(|f| f.what != what) {
                    findings.push(Finding { entry: None, what });
                }
            }
        }
    }
    findings
}

fn over_time_outs(after: &State, team: Team) -> Vec<What> {
    let over = || {
        let play = after.play()?;
        let (taken, most) = (play.sides[team].time_outs, after.rules().time_outs.per_set?);
        (taken > most).then_some(What::OverTimeOuts {
            team,
            set: play.number,
            taken,
            most,
        })
    };
    over().into_iter().collect()
}

fn over_substitutions(after: &State, team: Team) -> Vec<What> {
    let over = || {
        let play = after.on_floor()?;
        let made = play.sides[team].substitutions;
        let most = after.rules().substitutions.per_set?;
        (made > most).then_some(What::OverSubstitutions {
            team,
            set: play.number,
            made,
            most,
        })
    };
    over().into_iter().collect()
}

/// The change of courts within the deciding set (18.2.2), due and never entered.
fn courts(state: &State) -> Option<Finding> {
    let last = state.sets().last()?;
    let play = last.play.as_ref()?;
    play.change_of_courts_due(state.rules()).then_some(Finding {
        entry: None,
        what: What::CourtsNotChanged { set: last.number },
    })
}
