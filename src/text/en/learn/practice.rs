//! The words of a practice match: what is told, and what the comparison is.

use super::super::comparison::words as entry_words;
use crate::learn::practice::*;
use crate::{one_change, team_name};
use app::practice::Told;
use game::entry::By;
use game::{Kind, State};
use reports::compare::{Comparison, Difference, What, Which};
use rules::{Cause, Preset, Team};

/// In English.
pub static WORDS: PracticeWords = PracticeWords {
    practice: "Practice match",
    practice_more: "One set is told to you. You keep it on the real court screen.",
    practice_how: [
        "Both teams are ready, and you are the first referee.",
        "Read what happens. Tap the half that gets the point, then the reason.",
        "Time-outs and substitutions come too. Enter them before you go on.",
        "At the end the app compares your record with what happened.",
    ],
    practice_marked:
        "The record is marked as practice. No table and no pool ever counts it. Delete it when \
         you like.",
    practice_begin: "Begin a practice match",
    practice_not_kept: "This phone could not store the match.",
    practice_next: "Next",
    practice_before: "Previous",
    practice_over: "The set is over. See how it went.",
    practice_compare: "Compare",
    practice_mark: "Practice",
    practice_same: "Everything you entered is what happened. Well kept!",
    practice_gone: "This practice match is not on this phone any more.",
    practice_changed:
        "The app was updated since this practice match began. It can no longer tell or compare \
         it. Begin a new one.",
    practice_back: "Back to the court",
    practice_step,
    practice_differs,
    practice_difference,
    practice_told,
};

fn practice_step(step: usize, of: usize) -> String {
    format!("{step} of {of}")
}

fn practice_differs(count: usize) -> String {
    match count {
        1 => "One thing is not as it happened.".to_owned(),
        n => format!("{n} things are not as they happened."),
    }
}

/// Said to the learner; what has no words of its own is said as of two records.
fn practice_difference(found: &Difference, comparison: &Comparison) -> String {
    let names = &comparison.names;
    let points = |count: usize| match count {
        1 => "1 point".to_owned(),
        n => format!("{n} points"),
    };
    let say = match &found.what {
        What::Point {
            first: Some((to, Kind::Rally { .. })),
            second: Some((given, Kind::Rally { .. })),
            ..
        } => {
            format!(
                "{} won the rally. You gave it to {}.",
                names[*to], names[*given]
            )
        }
        What::Point {
            first: Some((to, _)),
            second: None,
            ..
        } => {
            format!("A point for {} is missing in your record.", names[*to])
        }
        What::Point {
            first: None,
            second: Some((given, _)),
            ..
        } => {
            format!("You gave a point to {} that was not there.", names[*given])
        }
        What::Stops {
            which: Which::Second,
            more,
        } => {
            format!("Your record ends here. {} more were played.", points(*more))
        }
        What::Stops {
            which: Which::First,
            more,
        } => {
            format!(
                "The set goes on in your record: {} more than were played.",
                points(*more)
            )
        }
        What::Cause { first, second } => {
            format!(
                "The reason was: {}. You said: {}.",
                named(*first),
                named(*second)
            )
        }
        What::OnlyIn {
            which: Which::First,
            kind,
        } => {
            format!("Missing in your record: {}.", entry_words(kind, names))
        }
        What::OnlyIn {
            which: Which::Second,
            kind,
        } => {
            format!(
                "In your record, though it was not asked for: {}.",
                entry_words(kind, names)
            )
        }
        What::Otherwise { first, second } => format!(
            "It was {}. You entered {}.",
            entry_words(first, names),
            entry_words(second, names)
        ),
        What::Moved { kind, second } => format!(
            "It was then that there was {}. You entered it at {}.",
            entry_words(kind, names),
            second.marked()
        ),
        What::Point { .. }
        | What::OtherMatch { .. }
        | What::LettersExchanged
        | What::Rules
        | What::NeverIn { .. }
        | What::SetOnlyIn { .. } => return crate::comparison::difference(found, comparison),
    };
    match (found.rally, found.score) {
        (Some(rally), Some(score)) => format!("Rally {rally}, at {}: {say}", score.marked()),
        _ => say,
    }
}

fn named(cause: Cause) -> String {
    crate::cause(cause, &Preset::SchoolJunior.rules())
}

fn practice_told(told: &Told, state: &State) -> String {
    match told {
        Told::TimeOut { team } => format!(
            "The coach of {} asks for a time-out. Grant it.",
            team_name(state, *team)
        ),
        Told::Substitution { team, changes } => {
            let changes: Vec<String> = changes.iter().map(one_change).collect();
            format!(
                "{} ask for a substitution: {}.",
                team_name(state, *team),
                changes.join(", ")
            )
        }
        Told::Rally {
            serves,
            won_by,
            cause,
            by,
        } => {
            let ends = ends(*cause, *won_by, *by, state);
            match serves {
                Some(team) => format!("{} to serve. {ends}", team_name(state, *team)),
                None => ends,
            }
        }
    }
}

/// How a rally ends.
fn ends(cause: Cause, won_by: Team, by: Option<By>, state: &State) -> String {
    let winner = team_name(state, won_by);
    let loser = team_name(state, won_by.other());
    let who = match by.and_then(|by| by.number) {
        Some(number) => format!("Number {number} of {loser}"),
        None => format!("A player of {loser}"),
    };
    match cause {
        Cause::BallIn => format!("The ball comes down on the court of {loser}."),
        Cause::ServiceWinner => {
            format!("The service of {winner} comes down on the court of {loser}.")
        }
        Cause::BallOut => format!("{who} hits the ball, and it comes down outside."),
        Cause::BallTouched => format!("{who} touches the ball last, and it comes down outside."),
        Cause::FourHits => format!("{loser} hit the ball a fourth time."),
        Cause::DoubleContact => format!("{who} hits the ball twice in a row."),
        Cause::Catch => format!("{who} holds the ball and throws it."),
        Cause::AssistedHit => format!("A team-mate lifts a player of {loser} to the ball."),
        Cause::NetTouch => format!("{who} touches the net while playing the ball."),
        Cause::UnderNet => format!("{who} steps over the centre line with all of the foot."),
        Cause::OverNet => format!("{who} reaches over the net before the attack hit."),
        Cause::AttackFault => {
            format!(
                "{who} from the back row takes off in the front zone and hits a high ball over."
            )
        }
        Cause::BlockFault => format!("{who} from the back row takes part in a block."),
        Cause::LiberoFault => format!("The libero of {loser} attacks a ball above the net."),
        Cause::ServiceTime => format!("{who} has not served when the time is over."),
        Cause::ServiceFoot => format!("{who} steps on the end line at the service hit."),
        Cause::ServiceToss => format!("{who} serves without letting go of the ball first."),
        Cause::ServiceNet => format!("The service of {loser} goes into the net."),
        Cause::ServiceOut => format!("The service of {loser} comes down outside."),
        Cause::Screen => format!("Players of {loser} hide the service hit and the flight."),
        Cause::PositionFault => {
            format!("At the service hit two players of {loser} have changed places.")
        }
        Cause::RotationFault => format!("The wrong player of {loser} serves."),
        Cause::OutsideCourt => format!("At the service hit {who} stands outside the court."),
        Cause::Antenna => format!("{who} hits the ball against an antenna."),
        Cause::OutsideCrossing => format!("The ball from {loser} crosses outside the antenna."),
        Cause::NotSaid => format!("{winner} wins the rally."),
    }
}
