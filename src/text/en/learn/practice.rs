//! The words of a practice match: what is told, and what the comparison is.

use crate::learn::practice::*;
use crate::{one_change, team_name};
use app::practice::Told;
use game::entry::By;
use game::State;
use rules::{Cause, Team};

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
    practice_records: "First record: what happened. Second record: what you entered.",
    practice_same: "Everything you entered is what happened. Well kept!",
    practice_gone: "This practice match is not on this phone any more.",
    practice_changed:
        "The app was updated since this practice match began. It can no longer tell or compare \
         it. Begin a new one.",
    practice_back: "Back to the court",
    practice_step,
    practice_differs,
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
