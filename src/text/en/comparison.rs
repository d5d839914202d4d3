//! The words of every difference between two records.

use super::refusal::level;
use crate::by_places;
use crate::comparison::*;
use crate::score_sheet::changes;
use game::entry::{ReplayWhy, Scope};
use game::{Kind, Who};
use reports::compare::{Comparison, Difference, What, Which};
use reports::one_match::Part;
use rules::{ByTeam, Score, Team};

/// In English.
pub static WORDS: ComparisonWords = ComparisonWords {
    no_difference: "The two records agree.",
    difference,
    parting,
};

fn difference(difference: &Difference, comparison: &Comparison) -> String {
    let names = &comparison.names;
    let when = when(difference);
    match &difference.what {
        What::OtherMatch {
            part,
            certain,
            first,
            second,
        } => other_match(*part, *certain, first, second),
        What::LettersExchanged => {
            "Team A of the first record is team B of the second. The comparison takes that into account."
                .to_owned()
        }
        What::Rules => "The two records are not played by the same rules.".to_owned(),
        What::Point {
            first,
            second,
            longer,
        } => {
            let mut say = point(&when, first.as_ref(), second.as_ref(), names);
            if let Some((which, more)) = longer {
                say.push_str(&format!(
                    " So the set is longer by {more} in the {} record.",
                    ordinal(*which)
                ));
            }
            say
        }
        What::Stops { which, more } => format!(
            "{when} the {} record has no more points of this set, the {} has {more} more.",
            ordinal(*which),
            ordinal(which.other())
        ),
        What::Cause { first, second } => format!(
            "{when} the first record says {}, the second {}.",
            first.code().replace('_', " "),
            second.code().replace('_', " ")
        ),
        What::OnlyIn { which, kind } => format!(
            "{when} only the {} record has {}.",
            ordinal(*which),
            words(kind, names)
        ),
        What::NeverIn { which, times } => format!(
            "The {} record never has this ({}), the {} has it {times} times.",
            ordinal(*which),
            difference.code.replace('_', " "),
            ordinal(which.other())
        ),
        What::Moved { kind, second } => format!(
            "{when} the first record has {}, the second has it at {}.",
            words(kind, names),
            second.marked()
        ),
        What::Otherwise { first, second } => format!(
            "{when} the first record has {}, the second {}.",
            words(first, names),
            words(second, names)
        ),
        What::SetOnlyIn { which, again: true } => format!(
            "Only the {} record begins set {} again, on another court.",
            ordinal(*which),
            difference.set.unwrap_or(0)
        ),
        What::SetOnlyIn {
            which,
            again: false,
        } => format!(
            "Set {} is only in the {} record.",
            difference.set.unwrap_or(0),
            ordinal(*which)
        ),
    }
}

/// Why two records are not of one match, or may not be.
fn other_match(part: Part, certain: bool, first: &str, second: &str) -> String {
    let why = match part {
        Part::Names | Part::Pool => {
            format!("the first record is of {first}, the second of {second}")
        }
        Part::Number => format!("the first record has number {first}, the second number {second}"),
        Part::Time => "the second record was played at another time".to_owned(),
        Part::Points => "the two records have other points".to_owned(),
    };
    if certain {
        format!("These are two different matches: {why}.")
    } else {
        format!("Check whether they are of one match: {why}.")
    }
}

fn when(difference: &Difference) -> String {
    let score = difference.score.unwrap_or_default().marked();
    match (difference.set, difference.rally) {
        (Some(set), Some(rally)) => format!("Set {set}, rally {rally}, at {score}:"),
        _ => String::new(),
    }
}

fn point(
    when: &str,
    first: Option<&(Team, Kind)>,
    second: Option<&(Team, Kind)>,
    names: &ByTeam<String>,
) -> String {
    let given = |told: &(Team, Kind)| {
        let (to, kind) = told;
        match kind {
            Kind::Rally { .. } => format!("the rally to {}", names[*to]),
            kind => format!("a point to {} for {}", names[*to], words(kind, names)),
        }
    };
    match (first, second) {
        (Some(first), Some(second)) => format!(
            "{when} the first record gives {}, the second {}.",
            given(first),
            given(second)
        ),
        (Some(first), None) => {
            format!("{when} the second record does not have {}.", given(first))
        }
        (None, Some(second)) => {
            format!("{when} the first record does not have {}.", given(second))
        }
        (None, None) => String::new(),
    }
}

fn ordinal(which: Which) -> &'static str {
    match which {
        Which::First => "first",
        Which::Second => "second",
    }
}

/// An entry in words that fit behind "has".
pub(super) fn words(kind: &Kind, names: &ByTeam<String>) -> String {
    let of = |what: &str, team: &Team| format!("{what} of {}", names[*team]);
    match kind {
        Kind::Toss(toss) => format!("{} serving first", names[toss.first_service]),
        Kind::LineUp { team, positions } => {
            format!("{}: {}", of("the line-up", team), by_places(positions))
        }
        Kind::Replay { why, .. } => match why {
            ReplayWhy::DoubleFault => "a rally replayed after a double fault".to_owned(),
            ReplayWhy::Interference => "a rally replayed after interference".to_owned(),
            ReplayWhy::Injury => "a rally replayed after an injury".to_owned(),
            ReplayWhy::Other => "a rally replayed".to_owned(),
        },
        Kind::TimeOut { team } => of("a time-out", team),
        Kind::Substitution {
            team, changes: c, ..
        } => format!("{} ({})", of("a substitution", team), changes(c)),
        Kind::LiberoReplacement { team, change } => {
            format!(
                "{} ({})",
                of("a libero replacement", team),
                changes(&[*change])
            )
        }
        Kind::NewLibero { team, number, .. } => {
            format!("{} ({number})", of("a new libero", team))
        }
        Kind::ImproperRequest { team } => of("an improper request", team),
        Kind::Delay { team, .. } => of("a delay", team),
        Kind::Misconduct {
            team,
            who,
            sanction,
        } => {
            let who = match who {
                Who::Player(number) => format!("number {number}"),
                Who::Staff(role) => role.clone(),
            };
            format!("{} ({who})", of(level(*sanction), team))
        }
        Kind::LateFault(fault) => of("a fault found late", &fault.team),
        Kind::LateReplacement { team } => of("a late libero replacement", team),
        Kind::ScoreCorrection { score, .. } => format!("the score corrected to {score}"),
        Kind::WrongInformation { score, .. } => {
            format!("play set back to {score} after wrong information")
        }
        Kind::TimeUp => "the end of the set by the clock".to_owned(),
        Kind::Recovery { team, number } => format!("{} ({number})", of("recovery time", team)),
        Kind::Incomplete { team, scope } => {
            let scope = match scope {
                Scope::Set => "the set",
                Scope::Match => "the match",
            };
            format!("{} incomplete for {scope}", names[*team])
        }
        Kind::Default { team } => format!("{} in default", names[*team]),
        Kind::ChangeCourts => "the change of courts".to_owned(),
        Kind::Suspend { .. } => "an interruption".to_owned(),
        Kind::Resume { .. } => "the resumption".to_owned(),
        _ => "another entry".to_owned(),
    }
}

fn parting(set: u8, together: usize, score: Score, points: [usize; 2]) -> String {
    let [first, second] = points;
    format!(
        "Set {set}: both records go together for {together} points, to {}. The first goes on to {first} \
         points in all, the second to {second}.",
        score.marked()
    )
}
