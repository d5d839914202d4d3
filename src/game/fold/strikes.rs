//! Which strikes and replays of a log hold, and what they take back.

use crate::model::entry::{Entry, Kind};
use crate::play::seal;
use crate::Refusal;

/// What the strikes of a log do with one of its entries.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum StrikeStatus {
    /// Nothing.
    Counts,
    /// It is taken back by that entry.
    Struck(u32),
    /// It is a strike and cannot take its entry back.
    Refused(Refusal),
}

/// The entry that an entry takes back, where it takes one back.
pub(super) const fn takes_back(kind: &Kind) -> Option<u32> {
    match kind {
        Kind::Strike { entry, .. } => Some(*entry),
        Kind::Replay { rally, .. } => *rally,
        _ => None,
    }
}

/// Whether an entry may stand between a rally and its replay: what begins no rally, gives no point and ends or
/// stops nothing. A time-out or a change may, since the first referee can decide for a replay after it
/// (Casebook 2024, 8.5).
const fn leaves_the_rally_last(kind: &Kind) -> bool {
    match kind {
        Kind::Explain { .. }
        | Kind::Timer(_)
        | Kind::Remark { .. }
        | Kind::Check(_)
        | Kind::Sign { .. }
        | Kind::Seal { .. }
        | Kind::Reopen { .. }
        | Kind::TeamList(_)
        | Kind::Toss(_)
        | Kind::FirstService { .. }
        | Kind::Discrepancy { .. }
        | Kind::LineUp { .. }
        | Kind::TimeOut { .. }
        | Kind::Substitution { .. }
        | Kind::LiberoReplacement { .. }
        | Kind::NewLibero { .. }
        | Kind::Recovery { .. }
        | Kind::GameCaptain { .. }
        | Kind::Protest { .. }
        | Kind::ProtestStatement { .. }
        | Kind::ChangeCourts
        | Kind::Strike { .. } => true,
        Kind::Match(_)
        | Kind::Heading(_)
        | Kind::BeginSet
        | Kind::Joined(_)
        | Kind::ScoreCorrection { .. }
        | Kind::WrongInformation { .. }
        | Kind::LateReplacement { .. }
        | Kind::TimeUp
        | Kind::Rally { .. }
        | Kind::Replay { .. }
        | Kind::ImproperRequest { .. }
        | Kind::Delay { .. }
        | Kind::Misconduct { .. }
        | Kind::LateFault(_)
        | Kind::Incomplete { .. }
        | Kind::Default { .. }
        | Kind::Suspend { .. }
        | Kind::Resume { .. }
        | Kind::Answer { .. } => false,
    }
}

/// Which entries are taken back, by a strike or because the rally is replayed, and which of those that take
/// back are refused: their target is taken back already, is a seal, or lies under one; or it is no rally that
/// can be replayed. A strike of a strike brings the entry back, and so does a strike of a replay.
///
/// Between a rally and its replay nothing stands that could end or stop the set, now and whatever is struck
/// later. So the replay is taken up exactly where the rally would have been, and no rally is lost to a replay
/// that is refused.
pub(super) fn strikes(entries: &[Entry]) -> Vec<StrikeStatus> {
    let mut statuses = vec![StrikeStatus::Counts; entries.len()];
    // For each entry the one it strikes, and the strikes in force against it, by place in the log.
    let mut targets: Vec<Option<usize>> = vec![None; entries.len()];
    let mut against: Vec<Vec<usize>> = vec![Vec::new(); entries.len()];
    // Each rally with its replay, by place in the log.
    let mut replayed: Vec<(usize, usize)> = Vec::new();
    let mut sealed = None;
    for (place, entry) in entries.iter().enumerate() {
        let target = match &entry.kind {
            Kind::Seal { .. } => {
                sealed = sealed.or(Some(entry.n));
                continue;
            }
            Kind::Reopen { .. } => {
                sealed = None;
                continue;
            }
            kind => match takes_back(kind) {
                Some(target) => target,
                None => continue,
            },
        };
        let earlier = &entries[..place];
        let found = earlier.binary_search_by_key(&target, |e| e.n).ok();
        let is_replay = matches!(entry.kind, Kind::Replay { .. });
        let is_rally = |at: &usize| matches!(earlier[*at].kind, Kind::Rally { .. });
        if let Some(entry) = sealed {
            statuses[place] = StrikeStatus::Refused(Refusal::Sealed { entry });
        } else if is_replay {
            let stands = |at: &usize| {
                against[*at].is_empty() && !matches!(statuses[*at], StrikeStatus::Refused(_))
            };
            let mut acts = (0..place).rev().filter(stands);
            let last = acts.find(|&at| !leaves_the_rally_last(&earlier[at].kind));
            let last = last.filter(is_rally);
            match last.filter(|last| Some(*last) == found) {
                Some(rally) => {
                    targets[place] = Some(rally);
                    replayed.push((rally, place));
                    take_force(&targets, &mut against, place, true);
                }
                None => {
                    statuses[place] = StrikeStatus::Refused(Refusal::NotLastRally { entry: target })
                }
            }
        } else if target <= 1 || target >= entry.n {
            // The reducer refuses it.
        } else if found.is_some_and(|struck| !against[struck].is_empty()) {
            statuses[place] = StrikeStatus::Refused(Refusal::AlreadyStruck { entry: target });
        } else if let Err(why) = seal::check_strike(found.map(|struck| &entries[struck])) {
            statuses[place] = StrikeStatus::Refused(why);
        } else if let Some(struck) = found {
            targets[place] = Some(struck);
            take_force(&targets, &mut against, place, true);
            let twice = matches!(entries[struck].kind, Kind::Strike { .. });
            let in_between = replayed.iter().find(|(rally, replay)| {
                let comes_back = |at: usize| {
                    against[at].is_empty()
                        && !matches!(statuses[at], StrikeStatus::Refused(_))
                        && !leaves_the_rally_last(&entries[at].kind)
                };
                twice && against[*replay].is_empty() && (rally + 1..*replay).any(comes_back)
            });
            if let Some((_, replay)) = in_between {
                let replay = entries[*replay].n;
                statuses[place] = StrikeStatus::Refused(Refusal::BeforeReplay { replay });
                take_force(&targets, &mut against, place, false);
                targets[place] = None;
            }
        }
    }
    for (fate, strikes) in statuses.iter_mut().zip(&against) {
        if let Some(&last) = strikes.iter().max() {
            *fate = StrikeStatus::Struck(entries[last].n);
        }
    }
    // What was said about a rally goes with it.
    let in_force = |replay: usize| against[replay].is_empty();
    for (rally, replay) in replayed.into_iter().filter(|(_, replay)| in_force(*replay)) {
        for place in rally + 1..replay {
            let about = matches!(entries[place].kind, Kind::Explain { entry, .. } if entry == entries[rally].n);
            if about && statuses[place] == StrikeStatus::Counts {
                statuses[place] = StrikeStatus::Struck(entries[replay].n);
            }
        }
    }
    statuses
}

/// A strike or a replay comes into force, or loses it. Where its target is one as well, that one then loses
/// its force, what it had struck is back, and so on.
fn take_force(
    targets: &[Option<usize>],
    against: &mut [Vec<usize>],
    strike: usize,
    in_force: bool,
) {
    let (mut strike, mut in_force) = (strike, in_force);
    while let Some(target) = targets[strike] {
        let strikes = &mut against[target];
        let was_struck = !strikes.is_empty();
        if in_force {
            strikes.push(strike);
        } else {
            strikes.retain(|&s| s != strike);
        }
        let is_struck = !strikes.is_empty();
        if was_struck == is_struck {
            return;
        }
        (strike, in_force) = (target, !is_struck);
    }
}
