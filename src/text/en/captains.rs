//! The words about who speaks for a team, and about protests (Official Volleyball Rules 2025-2028, 5.1.2,
//! 5.1.3).

use crate::captains::*;
use crate::{team_name, ScoreOrder};
use game::{captain, requester, speaker, Protest, Requester, Speaker, State};
use rules::{Shirt, Team};

/// In English.
pub static WORDS: CaptainsWords = CaptainsWords {
    game_captain: "Game captain",
    name_somebody: "Choose one",
    who_speaks_label: "Ask the coach: who is game captain?",
    speaks_more:
        "Only the game captain speaks to the referees, and only while the ball is out of play. \
         The game captain may ask for an explanation or for a check of positions, floor, net or \
         ball. The game captain may announce a protest.",
    speaks_again,
    speaks_now,
    game_captain_missing,
    who_speaks,
    speaks_said,
    requests_by,
    protest: "Protest",
    protest_about: "What is it about? (optional)",
    protest_announced: "Record the protest",
    protest_needs_words: "Write what the captain says. It goes on the sheet.",
    protest_more:
        "A protest is announced at once, after the first referee has explained the decision. The \
         first referee must allow it. It is written on the sheet after the match. A protest that \
         was not announced is not written.",
    protest_by,
    protest_write,
    announced,
};

fn speaks_again(number: Shirt) -> String {
    format!("{number} again")
}

fn speaks_now(number: Shirt) -> String {
    format!("{number} is game captain")
}

fn game_captain_missing(state: &State, team: Team) -> String {
    let name = team_name(state, team);
    match captain(state, team) {
        Some(captain) => format!("{name}: captain {captain} is off. Who is game captain?"),
        None => format!("{name}: who is game captain?"),
    }
}

fn who_speaks(state: &State, team: Team) -> String {
    match (speaker(state, team), captain(state, team)) {
        (Some(Speaker::TeamCaptain(number)), _) => {
            format!("Captain {number} is on court and speaks for the team.")
        }
        (Some(Speaker::GameCaptain(number)), _) => format!(
            "Number {number} speaks for the team until substituted, until the captain is back or until \
             the set ends."
        ),
        (None, Some(captain)) => format!(
            "Captain {captain} is not on court. The coach or the captain names a game captain on court."
        ),
        (None, None) => "Nobody is marked as captain on the list.".into(),
    }
}

fn speaks_said(speaker: Option<Speaker>) -> String {
    match speaker {
        Some(Speaker::TeamCaptain(number)) => format!(", captain {number}"),
        Some(Speaker::GameCaptain(number)) => format!(", game captain {number}"),
        None => String::new(),
    }
}

fn requests_by(state: &State, team: Team) -> Option<String> {
    let name = team_name(state, team);
    match (requester(state, team), speaker(state, team)) {
        (Requester::Coach, _) => None,
        (Requester::AssistantCoach, _) => Some(format!(
            "No coach is listed for {name}. The assistant coach makes the requests."
        )),
        (Requester::GameCaptain, Some(speaker)) => Some(format!(
            "No coach is listed for {name}. The game captain, number {}, makes the requests.",
            speaker.number()
        )),
        (Requester::GameCaptain, None) => Some(format!(
            "No coach is listed for {name}. The game captain makes the requests."
        )),
    }
}

fn protest_by(number: Option<Shirt>) -> String {
    match number {
        Some(number) => format!("Announced by the game captain, number {number}."),
        None => "Announced by the game captain.".into(),
    }
}

fn protest_write(announced: bool) -> &'static str {
    if announced {
        "Write it on the sheet"
    } else {
        "Write one that was not announced"
    }
}

fn announced(protest: &Protest, order: ScoreOrder) -> String {
    let about = match protest.text.as_str() {
        "" => String::new(),
        text => format!(": {text}"),
    };
    let written = match &protest.written {
        Some((_, text)) => format!(" Written: {text}"),
        None => String::new(),
    };
    let score = order.write(&protest.score);
    format!(
        "Announced in set {} at {score}{about}.{written}",
        protest.set
    )
}
