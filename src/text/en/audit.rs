//! The words of every finding of an audit.

use crate::audit::*;
use crate::score_sheet::span;
use crate::{problem, question, refusal, Teams};
use reports::audit::{Field, Finding, What};
use rules::Team;

/// In English.
pub static WORDS: AuditWords = AuditWords { finding };

fn finding(finding: &Finding, teams: Teams) -> String {
    let name = |team: &Team| teams.name(*team);
    match &finding.what {
        What::Form {
            unreadable: true,
            problem,
        } => format!(
            "This entry cannot be read and does not count: {}.",
            problem::kind(problem)
        ),
        What::Form { problem, .. } => sentence(&problem::kind(problem)),
        What::Broken(broken) => sentence(&problem::broken(broken)),
        What::Refused(why) => format!("This entry does not count. {}", refusal(why, teams)),
        What::Insisted { refusal: advice, why } => format!(
            "Entered on the first referee's decision ({why}). The advice was: {}",
            refusal(advice, teams)
        ),
        What::TakenBack { by, why: Some(why) } => {
            format!("Undone by entry {by}: {}", sentence(why))
        }
        What::TakenBack { by, why: None } => {
            format!("Undone by entry {by}, without a reason.")
        }
        What::ChangedAfterSigning => {
            "Changed after the match was signed. Ask who knows about it.".to_owned()
        }
        What::Missing(field) => missing(*field, &name),
        What::NotListed { team, set, number } => format!(
            "Number {number} played for {} in set {set} but is not on the final team list.",
            name(team)
        ),
        What::OverTimeOuts {
            team,
            set,
            taken,
            most,
        } => format!("{} took {taken} time-outs in set {set}. Only {most} are allowed.", name(team)),
        What::OverSubstitutions {
            team,
            set,
            made,
            most,
        } => format!(
            "{} made {made} substitutions in set {set}. Only {most} are allowed.",
            name(team)
        ),
        What::HadToLeave {
            team,
            set,
            number,
            libero,
        } => format!(
            "A rally in set {set} was played although {} number {number} of {} had to leave the court.",
            if *libero { "libero" } else { "player" },
            name(team)
        ),
        What::CourtsNotChanged { set } => {
            format!("The change of courts in set {set} was not recorded.")
        }
        What::BeganUnsafe { item } => format!(
            "The set began although this check had failed and nobody had cleared it: {}.",
            plain(item)
        ),
        What::CheckFailed { item, note } => {
            let note = note.as_ref().map(|n| format!(" ({n})")).unwrap_or_default();
            format!("This check failed and nobody cleared it: {}{note}.", plain(item))
        }
        What::OpenQuestion(asked) => format!("Never answered: {}", question(asked, teams).0),
        What::ProtestNotWritten { team } => format!(
            "{} announced a protest, but nothing was written about it after the match.",
            name(team)
        ),
        What::TakenOver {
            set,
            score: Some(score),
        } => format!(
            "The record was begun in set {set}, at {}. What was played before is not in it.",
            score.marked()
        ),
        What::TakenOver { set, score: None } => {
            format!("The record was begun before set {set}. What was played before is not in it.")
        }
        What::ScoreCorrected { score, why } => format!("The score was corrected to {}: {why}", score.marked()),
        What::WrongInformation { score, why } => {
            format!("Play went back to {} for wrong information by the officials: {why}", score.marked())
        }
        What::Unfinished => "The match is not over in this record.".to_owned(),
        What::NoTimes { entries } => match entries {
            1 => "One entry has no time.".to_owned(),
            n => format!("{n} entries have no time."),
        },
        What::TimeBackwards { seconds } => format!(
            "The clock was set back by {} here, so do not trust the times around it.",
            span(*seconds)
        ),
        What::TimeForward { seconds } => format!(
            "By the clock, nothing was entered for {} during the set. Was the clock set forward?",
            span(*seconds)
        ),
        What::SetsOverlap { set } => {
            format!("Set {set} begins before the last one ended. The clock was changed.")
        }
        What::ImplausibleTime {
            set,
            minutes,
            points,
        } => format!("Set {set}: {minutes} minutes for {points} points is hardly possible."),
    }
}

fn missing(field: Field, name: &impl Fn(&Team) -> String) -> String {
    match field {
        Field::Name(team) => format!("Team {team} has no name."),
        Field::Competition => "The competition is not named.".to_owned(),
        Field::Venue => "The hall is not named.".to_owned(),
        Field::Scheduled => "The date and the scheduled time are missing.".to_owned(),
        Field::List(team) => format!("The team list of {} is missing.", name(&team)),
        Field::Captain(team) => format!("Nobody is marked as captain of {}.", name(&team)),
        Field::Coach(team) => format!("No coach of {} is on the list.", name(&team)),
        Field::Toss(set) => format!("The toss before set {set} is missing."),
        Field::CaptainBefore(team) => {
            format!(
                "The captain of {} has not signed before the match.",
                name(&team)
            )
        }
        Field::CoachBefore(team) => {
            format!(
                "The coach of {} has not signed before the match.",
                name(&team)
            )
        }
        Field::CaptainAfter(team) => {
            format!(
                "The captain of {} has not signed after the match.",
                name(&team)
            )
        }
        Field::Scorer => "The scorer has not signed.".to_owned(),
        Field::SecondReferee => "The second referee has not signed.".to_owned(),
        Field::FirstReferee => "The first referee has not signed.".to_owned(),
    }
}

fn plain(item: &str) -> String {
    item.replace('_', " ")
}

/// With a capital and a full stop.
fn sentence(words: &str) -> String {
    let mut letters = words.chars();
    let first: String = letters
        .next()
        .into_iter()
        .flat_map(char::to_uppercase)
        .collect();
    let end = if words.ends_with(['.', '!', '?']) {
        ""
    } else {
        "."
    };
    format!("{first}{}{end}", letters.as_str())
}
