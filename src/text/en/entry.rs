//! Entries in words, for the last line of the court and the list of all entries.

use crate::entry::*;
use crate::{by_places, team_name};
use game::entry::{Change, Court, Fault, Forced, Level, ReplayWhy, Scope, TimerAction, Who};
use game::{Entry, Kind, Outcome, State};
use rules::Team;

/// In English.
pub static WORDS: EntryWords = EntryWords {
    entry,
    entered,
    outcome,
    one_change,
    replay_why,
    forced,
    level,
};

fn entry(entry: &Entry, state: &State) -> String {
    let line = state.sanction_of(entry.n);
    line.and_then(|line| crate::became(&entry.kind, line, state))
        .unwrap_or_else(|| entered(&entry.kind, state))
}

fn entered(kind: &Kind, state: &State) -> String {
    let name = |team: Team| team_name(state, team);
    match kind {
        Kind::Match(_) => "Match opened".into(),
        Kind::Heading(_) => "Match details corrected".into(),
        Kind::TeamList(list) => format!(
            "Team list of {}: {} players",
            name(list.team),
            list.players.len()
        ),
        Kind::Check(check) if check.ok => format!("Checked: {}", check.item.replace('_', " ")),
        Kind::Check(check) => format!("Problem: {}", check.item.replace('_', " ")),
        Kind::Toss(toss) => {
            let outcome = format!(
                "Toss: {} to serve first, {} on the left",
                name(toss.first_service),
                name(toss.left)
            );
            match toss.chosen() {
                Some((by, choice)) => {
                    let won = crate::setup::won_and_chose(&name(by), choice);
                    format!("{outcome}. {won}")
                }
                None => outcome,
            }
        }
        Kind::FirstService { team, left } => {
            format!("{} serve first, {} on the left", name(*team), name(*left))
        }
        Kind::Joined(joined) => match joined.score {
            Some(score) => format!(
                "Recorded from set {}, {}",
                joined.sets.len() + 1,
                score.marked()
            ),
            None => format!("Recorded from set {}", joined.sets.len() + 1),
        },
        Kind::ScoreCorrection { score, why, .. } => {
            format!("Score corrected to {}: {why}", score.marked())
        }
        Kind::WrongInformation { score, why } => {
            format!("Wrong information, back to {}: {why}", score.marked())
        }
        Kind::Discrepancy {
            team,
            changes,
            kept,
        } => {
            let changes = changes_in_words(changes);
            let end = if *kept {
                "kept by substitution"
            } else {
                "corrected"
            };
            match changes.is_empty() {
                true => format!("Line-up of {} checked: places corrected", name(*team)),
                false => format!("Line-up of {} checked: {changes}, {end}", name(*team)),
            }
        }
        Kind::LateReplacement { team } => format!("Late libero replacement {}", name(*team)),
        Kind::TimeUp => "Time up".into(),
        Kind::LineUp { team, positions } => {
            format!("Line-up of {}: {}", name(*team), by_places(positions))
        }
        Kind::BeginSet => "Set begun".into(),
        Kind::Rally { won_by, cause, .. } => match cause {
            Some(why) => format!(
                "Point {}: {}",
                name(*won_by),
                crate::cause(*why, state.rules())
            ),
            None => format!("Point {}", name(*won_by)),
        },
        Kind::Explain { cause, .. } => format!("Reason: {}", crate::cause(*cause, state.rules())),
        Kind::Replay {
            why,
            rally: Some(_),
            ..
        } => format!("Rally replayed, its point cancelled: {}", replay_why(*why)),
        Kind::Replay { why, .. } => format!("Replay: {}", replay_why(*why)),
        Kind::TimeOut { team } => format!("Time-out {}", name(*team)),
        Kind::Substitution { team, changes, .. } => {
            format!(
                "Substitution {}: {}",
                name(*team),
                changes_in_words(changes)
            )
        }
        Kind::LiberoReplacement { team, change } => {
            format!("Libero {}: {}", name(*team), one_change(change))
        }
        Kind::NewLibero { team, number, .. } => format!("New libero {}: {number}", name(*team)),
        Kind::ImproperRequest { team } => format!("Improper request {}", name(*team)),
        Kind::Delay { team, .. } => format!("Delay {}", name(*team)),
        Kind::Misconduct {
            team,
            who,
            sanction,
        } => format!("{} {}, {}", level(*sanction), name(*team), person(who)),
        Kind::LateFault(fault) => format!("{} {}", late(fault.fault), name(fault.team)),
        Kind::Recovery { team, number } => {
            format!("Recovery time {}, number {number}", name(*team))
        }
        Kind::Incomplete { team, scope } => format!(
            "{} incomplete for the {}",
            name(*team),
            match scope {
                Scope::Set => "set",
                Scope::Match => "match",
            }
        ),
        Kind::Default { team } => format!("{} in default", name(*team)),
        Kind::ChangeCourts => "Courts changed".into(),
        Kind::Suspend { why } if why.is_empty() => "Play interrupted".into(),
        Kind::Suspend { why } => format!("Play interrupted: {why}"),
        Kind::Resume { court: Court::Same } => "Play resumed".into(),
        Kind::Resume {
            court: Court::Other,
        } => "Play resumed on another court".into(),
        Kind::Timer(timer) => {
            let what = timer.what.code().replace('_', "-");
            match timer.action {
                TimerAction::Start => format!("Countdown started: {what}"),
                TimerAction::Stop => format!("Countdown ended: {what}"),
            }
        }
        Kind::Remark { text, .. } => format!("Remark: {text}"),
        Kind::GameCaptain { team, number } => {
            format!("Game captain of {}: {number}", name(*team))
        }
        Kind::Protest { team, text, .. } if text.is_empty() => {
            format!("Protest announced by {}", name(*team))
        }
        Kind::Protest { team, text, .. } => {
            format!("Protest announced by {}: {text}", name(*team))
        }
        Kind::ProtestStatement { text, .. } => format!("Protest written: {text}"),
        Kind::Sign { role, .. } => format!("Signed: {role}"),
        Kind::Strike { entry, .. } => format!("Entry {entry} undone"),
        Kind::Seal { code } => format!("Sealed: {}", record::spaced(code)),
        Kind::Reopen { why: None } => "Reopened".into(),
        Kind::Reopen { why: Some(why) } => format!("Reopened: {why}"),
        Kind::Answer { choice, .. } => format!("Answer: {}", choice.replace('_', " ")),
    }
}

fn outcome(outcome: &Outcome, state: &State) -> Option<String> {
    match outcome {
        Outcome::Accepted => None,
        Outcome::Insisted(advice) => Some(format!(
            "Recorded against advice: {}",
            crate::refusal(advice, state.into())
        )),
        Outcome::Refused(why) => Some(format!(
            "Does not count: {}",
            crate::refusal(why, state.into())
        )),
        Outcome::Struck(by) => Some(format!("Undone by entry {by}")),
    }
}

fn changes_in_words(changes: &[Change]) -> String {
    let words: Vec<String> = changes.iter().map(one_change).collect();
    words.join(", ")
}

fn one_change(change: &Change) -> String {
    format!("{} in for {}", change.into, change.out)
}

fn replay_why(why: ReplayWhy) -> &'static str {
    match why {
        ReplayWhy::DoubleFault => "both teams at fault",
        ReplayWhy::Interference => "something on court",
        ReplayWhy::Injury => "somebody hurt",
        ReplayWhy::Other => "another reason",
    }
}

fn forced(reason: Option<Forced>) -> &'static str {
    match reason {
        None => "Regular",
        Some(Forced::Injury) => "Injury or illness",
        Some(Forced::Expelled) => "Expelled",
        Some(Forced::Disqualified) => "Disqualified",
    }
}

fn level(level: Level) -> &'static str {
    match level {
        Level::Warning => "Warning",
        Level::Penalty => "Penalty",
        Level::Expulsion => "Expulsion",
        Level::Disqualification => "Disqualification",
    }
}

fn person(who: &Who) -> String {
    match who {
        Who::Player(number) => format!("number {number}"),
        Who::Staff(role) => role.clone(),
    }
}

fn late(fault: Fault) -> &'static str {
    match fault {
        Fault::Rotation => "Wrong server",
        Fault::IllegalSubstitution => "Illegal substitution",
        Fault::IllegalLibero => "Illegal libero replacement",
        Fault::WrongLineUp => "Wrong line-up",
        Fault::UnregisteredPlayer => "Player not on the list",
    }
}
