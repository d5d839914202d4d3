//! The remarks of a sheet in words.

use crate::remark::*;
use crate::score_sheet::{changes, clock_doubt};
use crate::{question, refusal, Teams};
use game::entry::Forced;
use game::{Joined, Protest};
use reports::{Corrected, Remark};

/// In English.
pub static WORDS: RemarkWords = RemarkWords { remark };

fn remark(remark: &Remark, teams: Teams) -> String {
    let name = |team| teams.name(team);
    match remark {
        Remark::Clock(doubt) => clock_doubt(*doubt),
        Remark::Refused {
            entry,
            refusal: why,
        } => format!(
            "Entry {entry} does not count ({}): {}",
            why.rule(),
            refusal(why, teams)
        ),
        Remark::Insisted { advice, why } => format!(
            "Recorded against rule {} on the first referee's decision: {why}. The advice was: {}",
            advice.rule(),
            refusal(advice, teams)
        ),
        Remark::TakenBack { entry, by, why } => {
            let why = why.as_ref().map(|w| format!(": {w}")).unwrap_or_default();
            format!("Entry {entry} was undone by entry {by}{why}.")
        }
        Remark::Written {
            team: Some(team),
            text,
        } => format!("{}: {text}", name(*team)),
        Remark::Written { team: None, text } => text.clone(),
        Remark::CheckFailed(check) => match &check.note {
            Some(note) => format!("Check failed: {} ({note}).", check.item),
            None => format!("Check failed: {}.", check.item),
        },
        Remark::CheckCleared(check) => format!(
            "Cleared: {} ({}).",
            check.item,
            check.note.as_deref().unwrap_or("no note")
        ),
        Remark::Forced {
            team,
            changes: made,
            reason,
            exceptional,
        } => {
            let sort = if *exceptional {
                "Exceptional substitution"
            } else {
                "Substitution"
            };
            let why = match reason {
                Forced::Injury => "injury",
                Forced::Expelled => "expulsion",
                Forced::Disqualified => "disqualification",
            };
            format!("{sort}, {}: {} ({why}).", name(*team), changes(made))
        }
        Remark::Recovery { team, number } => {
            format!("Recovery time, {}: number {number}.", name(*team))
        }
        Remark::NewLibero {
            team,
            number,
            replaces,
        } => {
            let old: Vec<String> = replaces.iter().map(ToString::to_string).collect();
            format!(
                "New libero, {}: number {number} for {}.",
                name(*team),
                old.join(", ")
            )
        }
        Remark::LateFault { team, corrected: all } => {
            let all: Vec<String> = all.iter().map(corrected).collect();
            let what = match all.is_empty() {
                true => "no score changes so far".to_owned(),
                false => all.join("; "),
            };
            format!("Fault found late, {}: {what}.", name(*team))
        }
        Remark::CauseDropped => {
            "Position fault of the serving team: the point counts, the reason does not (rule 7.4)."
                .to_owned()
        }
        Remark::Protest {
            protest: announced,
            unwritten,
        } => protest(announced, *unwritten, teams),
        Remark::ProtestWritten { team, text } => {
            format!("Protest as written after the match, {}: {text}", name(*team))
        }
        Remark::FirstService { set, team, left } => format!(
            "Set {set}: {} served first, {} stood on the left, as seen on court. No toss was recorded.",
            name(*team),
            name(*left)
        ),
        Remark::Joined(joined) => taken_over(joined),
        Remark::ScoreCorrected { from, to, why } => {
            format!("Score corrected from {} to {}: {why}", from.marked(), to.marked())
        }
        Remark::WrongInformation { from, to, why } => format!(
            "Wrong information by the officials: {why} Play went back from {} to {}.",
            from.marked(),
            to.marked()
        ),
        Remark::Discrepancy {
            team,
            changes: made,
            kept,
        } => {
            let wrong = match (made.is_empty(), kept) {
                (true, _) => "places corrected".to_owned(),
                (false, true) => format!("{} kept by substitution", changes(made)),
                (false, false) => format!("{} corrected", changes(made)),
            };
            format!("Line-up of {} checked before the set: {wrong}, no sanction.", name(*team))
        }
        Remark::LateReplacement { team, again } => {
            let then = if *again { "a delay" } else { "the captain was told" };
            format!("Late libero replacement, {}: {then}.", name(*team))
        }
        Remark::TimeUp { level: true } => {
            "Time was up with the teams level: one more rally decides.".to_owned()
        }
        Remark::TimeUp { level: false } => "Time was up: the set ended as it stood.".to_owned(),
        Remark::Suspended { why } => format!("Play was interrupted: {why}."),
        Remark::Resumed => "Play was resumed.".to_owned(),
        Remark::Incomplete(team) => format!("{} incomplete.", name(*team)),
        Remark::Default(team) => format!("{} in default.", name(*team)),
        Remark::Reopened { why: None } => "The sealed record was reopened.".to_owned(),
        Remark::Reopened { why: Some(why) } => format!("The sealed record was reopened: {why}."),
        Remark::Answered {
            question: asked,
            choice,
        } => {
            let (_, choices) = question(asked, teams);
            let chosen = choices.get(*choice).map_or("", String::as_str);
            format!("Decided by the first referee: {chosen}.")
        }
    }
}

fn corrected(corrected: &Corrected) -> String {
    let of = match corrected.earlier {
        true => format!("set {}", corrected.set),
        false => "score".to_owned(),
    };
    let was = corrected.was.marked();
    match corrected.is {
        Some(is) => format!("{of} {was} corrected to {}", is.marked()),
        None => format!("set {}, {was}, no longer counts", corrected.set),
    }
}

/// A protest that was announced (FIVB Official Volleyball Rules 2025-2028, 5.1.2.1), and that nothing
/// was written about it after the match.
fn protest(protest: &Protest, unwritten: bool, teams: Teams) -> String {
    let by = protest
        .number
        .map(|number| format!(" by number {number}"))
        .unwrap_or_default();
    let about = match protest.text.as_str() {
        "" => String::new(),
        text => format!(": {text}"),
    };
    let unwritten = if unwritten {
        " Nothing was written after the match."
    } else {
        ""
    };
    let stop = if about.ends_with(['.', '!', '?']) {
        ""
    } else {
        "."
    };
    let name = teams.name(protest.team);
    format!("Protest announced, {name}{by}{about}{stop}{unwritten}")
}

/// What was played before this record began.
fn taken_over(joined: &Joined) -> String {
    let sets: Vec<String> = joined.sets.iter().map(ToString::to_string).collect();
    let before = match sets.is_empty() {
        true => String::new(),
        false => format!(" Sets before: {}.", sets.join(", ")),
    };
    let set = joined.sets.len() + 1;
    match joined.score {
        Some(score) => format!(
            "This record was begun in set {set}, at {}.{before}",
            score.marked()
        ),
        None => format!("This record was begun before set {set}.{before}"),
    }
}
