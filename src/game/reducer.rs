//! The reducer: what an entry does to a state, or why it is refused.
//!
//! Each part of the rules answers two questions about its entries: `check`, which objects first where
//! nothing could be carried out at all and then where a rule is against it, and `carry_out`, which
//! cannot fail. An official who insists passes the second kind of objection, never the first.

use crate::model::entry::{Entry, Kind, Toss};
use crate::model::stage::Phase;
use crate::model::state::{RallyNote, State};
use crate::play::conduct;
use crate::play::correction;
use crate::play::courts;
use crate::play::discrepancy;
use crate::play::forfeit;
use crate::play::game_captain;
use crate::play::joined;
use crate::play::late_fault;
use crate::play::libero;
use crate::play::line_up;
use crate::play::new_libero;
use crate::play::notes;
use crate::play::opening;
use crate::play::protest;
use crate::play::questions;
use crate::play::rally;
use crate::play::request;
use crate::play::seal;
use crate::play::stop;
use crate::play::substitution;
use crate::play::time_out;
use crate::play::toss;
use crate::Refusal;

/// An entry that was taken up.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Accepted {
    /// The advice that the official insisted against.
    pub against: Option<Refusal>,
}

/// The state after an entry.
///
/// Pure and total: no clock, no chance, no storage; the same on every machine.
///
/// # Errors
/// Why the entry is refused; the given state stays as it is.
pub fn apply(state: &State, entry: &Entry) -> Result<State, Refusal> {
    let mut next = state.clone();
    step(&mut next, entry)?;
    Ok(next)
}

/// Takes an entry up in place; a refused one changes nothing but what part of it stays open (15.10.4).
pub(super) fn step(state: &mut State, entry: &Entry) -> Result<Accepted, Refusal> {
    let against = match check(state, entry) {
        Ok(()) => None,
        Err(refusal) if entry.insist.is_some() && !refusal.is_final() => Some(refusal),
        Err(refusal) => {
            substitution::keep_open(state, &entry.kind, &refusal);
            return Err(refusal);
        }
    };
    carry_out(state, entry);
    Ok(Accepted { against })
}

/// Whether an entry would be taken up without insisting.
///
/// # Errors
/// Why not.
pub fn check(state: &State, entry: &Entry) -> Result<(), Refusal> {
    if let Kind::Match(heading) = &entry.kind {
        return opening::check_match(state, heading);
    }
    if state.heading.is_none() {
        return Err(Refusal::NoMatch);
    }
    seal::check(state, &entry.kind)?;
    // What may be written down at any time, also on a finished sheet.
    match &entry.kind {
        Kind::Seal { .. } | Kind::Reopen { .. } => return Ok(()),
        Kind::Heading(given) => return opening::check_amendment(state, given),
        Kind::Check(_) | Kind::Timer(_) | Kind::Remark { .. } | Kind::Sign { .. } => return Ok(()),
        Kind::Explain { entry, cause, .. } => return rally::check_explain(state, *entry, *cause),
        Kind::Strike { entry: target, .. } => return check_strike(entry.n, *target),
        Kind::Answer { entry, choice } => return questions::check(state, *entry, choice),
        Kind::LateFault(fault) => return late_fault::check(state, fault),
        Kind::Protest { team, number, .. } => return protest::check(state, *team, *number),
        Kind::ProtestStatement { about, .. } => return protest::check_statement(state, *about),
        Kind::WrongInformation { score, .. } => {
            return correction::check_wrong_information(state, *score)
        }
        _ => {}
    }
    match state.phase() {
        Phase::Finished => return Err(Refusal::MatchOver),
        Phase::Suspended => match &entry.kind {
            Kind::Resume { .. } => return stop::check_resume(state, entry.at),
            Kind::Misconduct {
                team,
                who,
                sanction,
            } => return conduct::check(state, *team, who, *sanction),
            Kind::Incomplete { .. } | Kind::Default { .. } => return Ok(()),
            _ => return Err(Refusal::Suspended),
        },
        Phase::Preparation | Phase::BetweenSets | Phase::Playing => {}
    }
    match &entry.kind {
        Kind::TeamList(list) => opening::check_list(state, list),
        Kind::Toss(_) => toss::check(state),
        Kind::FirstService { .. } => joined::check_first_service(state),
        Kind::Joined(joined) => joined::check(state, joined),
        Kind::ScoreCorrection { score, serving, .. } => correction::check(state, *score, *serving),
        Kind::Discrepancy {
            team,
            changes,
            kept,
        } => discrepancy::check(state, *team, changes, *kept),
        Kind::LateReplacement { team } => request::check_late_replacement(state, *team),
        Kind::TimeUp => rally::check_time_up(state),
        Kind::LineUp { team, positions } => line_up::check(state, *team, positions),
        Kind::BeginSet => line_up::check_begin(state),
        Kind::Rally { .. } => rally::check(state),
        // What comes of `rally` is the fold's.
        Kind::Replay { .. } => rally::check(state),
        Kind::TimeOut { team } => time_out::check(state, *team),
        Kind::Substitution {
            team,
            changes,
            reason,
        } => substitution::check(state, *team, changes, *reason),
        Kind::LiberoReplacement { team, change } => libero::check(state, *team, *change),
        Kind::NewLibero {
            team,
            replaces,
            number,
            ..
        } => new_libero::check(state, *team, replaces, *number),
        Kind::ImproperRequest { .. } | Kind::Delay { .. } => Ok(()),
        Kind::Misconduct {
            team,
            who,
            sanction,
        } => conduct::check(state, *team, who, *sanction),
        Kind::Recovery { team, number } => stop::check_recovery(state, *team, *number),
        Kind::Incomplete { .. } | Kind::Default { .. } | Kind::Suspend { .. } => Ok(()),
        Kind::ChangeCourts => courts::check(state),
        Kind::Resume { .. } => Err(Refusal::NotSuspended),
        Kind::GameCaptain { team, number } => game_captain::check(state, *team, *number),
        Kind::Match(_)
        | Kind::Heading(_)
        | Kind::Check(_)
        | Kind::Timer(_)
        | Kind::Remark { .. }
        | Kind::Sign { .. }
        | Kind::Explain { .. }
        | Kind::Strike { .. }
        | Kind::Answer { .. }
        | Kind::Seal { .. }
        | Kind::Reopen { .. }
        | Kind::Protest { .. }
        | Kind::ProtestStatement { .. }
        | Kind::WrongInformation { .. }
        | Kind::LateFault(_) => Ok(()),
    }
}

/// What can be said of a strike without the log; whether its target is struck already, only a
/// [`super::Timeline`] knows.
fn check_strike(n: u32, target: u32) -> Result<(), Refusal> {
    if target <= 1 {
        Err(Refusal::StrikeFirst)
    } else if target >= n {
        Err(Refusal::StrikeLater { entry: target })
    } else {
        Ok(())
    }
}

fn carry_out(state: &mut State, entry: &Entry) {
    let n = entry.n;
    match &entry.kind {
        Kind::Match(heading) => opening::open(state, heading),
        Kind::Heading(given) => opening::amend(state, given),
        Kind::TeamList(list) => opening::take_list(state, list),
        Kind::Check(check) => notes::check(state, check),
        Kind::Toss(toss) => toss::take(state, *toss),
        Kind::FirstService { team, left } => toss::settle(state, Toss::new(*team, *left)),
        Kind::Joined(joined) => joined::take(state, n, joined),
        Kind::ScoreCorrection { score, serving, .. } => {
            correction::correct(state, n, *score, *serving);
        }
        Kind::WrongInformation { score, .. } => correction::go_back(state, n, *score),
        Kind::Discrepancy {
            team,
            changes,
            kept,
        } => discrepancy::settle(state, *team, changes, *kept),
        Kind::LateReplacement { team } => request::late_replacement(state, n, *team),
        Kind::TimeUp => rally::time_up(state),
        Kind::LineUp { team, positions } => line_up::hand_in(state, *team, positions),
        Kind::BeginSet => line_up::begin(state, n),
        Kind::Rally { won_by, cause, by } => rally::play(state, n, *won_by, *cause, *by),
        Kind::Explain {
            entry,
            cause,
            by,
            seen_by,
        } => rally::explain(
            state,
            *entry,
            RallyNote {
                cause: *cause,
                by: *by,
                seen_by: *seen_by,
            },
        ),
        Kind::Replay { hurt, .. } => rally::replay(state, *hurt),
        Kind::TimeOut { team } => time_out::take(state, *team),
        Kind::Substitution {
            team,
            changes,
            reason,
        } => {
            substitution::make(state, *team, changes, *reason);
        }
        Kind::LiberoReplacement { team, change } => libero::make(state, *team, *change),
        Kind::NewLibero {
            team,
            replaces,
            number,
            why,
        } => {
            new_libero::name(state, *team, replaces, *number, *why);
        }
        Kind::ImproperRequest { team } => request::improper(state, n, *team),
        Kind::Delay { team, request } => request::delay(state, n, *team, *request),
        Kind::Misconduct {
            team,
            who,
            sanction,
        } => {
            conduct::sanction(state, n, *team, who, *sanction);
        }
        Kind::LateFault(fault) => late_fault::correct(state, n, fault),
        Kind::Recovery { team, number } => stop::recover(state, *team, *number),
        Kind::Incomplete { team, scope } => forfeit::incomplete(state, *team, *scope),
        Kind::Default { team } => forfeit::default(state, *team),
        Kind::ChangeCourts => courts::change(state),
        Kind::Suspend { .. } => stop::suspend(state, entry.at),
        Kind::Resume { court } => stop::resume(state, *court, entry.at),
        Kind::Timer(timer) => notes::timer(state, entry, timer),
        Kind::Sign { role, name } => notes::sign(state, n, role, name.as_ref()),
        Kind::Answer { entry, choice } => questions::answer(state, *entry, choice),
        Kind::GameCaptain { team, number } => game_captain::name(state, *team, *number),
        Kind::Protest { team, number, text } => protest::announce(state, n, *team, *number, text),
        Kind::ProtestStatement { about, text } => protest::write(state, n, *about, text),
        Kind::Seal { .. } => seal::close(state, n),
        Kind::Reopen { .. } => seal::reopen(state),
        // A remark stands in the log alone; a strike is the fold's.
        Kind::Remark { .. } | Kind::Strike { .. } => {}
    }
    game_captain::settle(state);
}
