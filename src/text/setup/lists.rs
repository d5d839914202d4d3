//! The words of team lists and of the signatures under them.

use game::entry::{Player, TeamList};
use game::{ListLack, Signer};
use rules::Shirt;

/// Name of the field that shows the digits.
pub const SHIRT_NUMBER: &str = "Shirt number";
/// In the field while it is empty.
pub const NUMBER: &str = "Number";
/// Name of the key that takes a digit away.
pub const DELETE_DIGIT: &str = "Delete the last digit";
/// The key that takes a number over.
pub const ADD: &str = "Add";

/// Name of a place for whoever listens.
#[must_use]
pub fn place_holds(place: usize, shown: &str) -> String {
    match shown {
        "" => format!("Place {place}, empty"),
        "\u{2022}" => format!("Place {place}, hidden"),
        shirt => format!("Place {place}, number {shirt}"),
    }
}

/// Name of the choice of a team.
pub const WHOSE_LIST: &str = "Which team's list?";
/// Name of the pad.
pub const SHIRT_NUMBERS: &str = "Shirt numbers of the players";
/// Fills the list.
#[must_use]
pub fn first_numbers(first: Shirt, last: Shirt) -> String {
    format!("Numbers {first} to {last}")
}
/// Name of the list.
pub const PLAYERS_ON_THE_LIST: &str = "Players on the list";
/// While nobody is marked.
pub const MARK_THE_CAPTAIN: &str = "Tap a number to mark the captain.";
/// Opens the staff.
pub const STAFF: &str = "Coach and others on the bench";
/// A mark.
pub const CAPTAIN: &str = "Captain";
/// A mark.
pub const LIBERO: &str = "Libero";
/// Takes a player off the list.
pub const REMOVE: &str = "Remove";
/// Label of a name.
pub const NAME_OPTIONAL: &str = "Name (optional)";
/// Opens the editor again.
pub const CHANGE_LIST: &str = "Edit this list";
/// Against the advice of the rules.
pub const WRITE_IT_ANYWAY: &str = "Record it anyway";

/// A player by number and marks.
#[must_use]
pub fn player(player: &Player) -> String {
    let mut words = player.number.to_string();
    if player.captain {
        words.push_str(" C");
    }
    if player.libero {
        words.push_str(" L");
    }
    words
}

/// The same for whoever listens.
#[must_use]
pub fn player_in_full(player: &Player) -> String {
    let mut words = format!("Number {}", player.number);
    if let Some(name) = &player.name {
        words.push_str(", ");
        words.push_str(name);
    }
    if player.captain {
        words.push_str(", captain");
    }
    if player.libero {
        words.push_str(", libero");
    }
    words
}

/// Over the marks of one player.
#[must_use]
pub fn number_is(number: Shirt) -> String {
    format!("Number {number}")
}

/// A list that is in.
#[must_use]
pub fn list_in_short(list: &TeamList) -> String {
    let players = match list.players.len() {
        1 => "1 player".to_owned(),
        n => format!("{n} players"),
    };
    let captain = list.players.iter().find(|p| p.captain);
    let captain = match captain {
        Some(p) => format!("captain {}", p.number),
        None => "no captain marked".to_owned(),
    };
    let staff = if list.staff.is_empty() {
        String::new()
    } else {
        let roles: Vec<&str> = list.staff.iter().map(|s| s.role.as_str()).collect();
        format!(", {}", roles.join(", "))
    };
    format!("The team list is confirmed: {players}, {captain}{staff}.")
}

/// Makes the entry.
#[must_use]
pub fn hand_in_list(players: usize) -> String {
    match players {
        1 => "Confirm the team list (1 player)".to_owned(),
        n => format!("Confirm the team list ({n} players)"),
    }
}

/// A member of the staff.
#[must_use]
pub fn staff(role: &str) -> &'static str {
    match role {
        "coach" => "Coach",
        "assistant coach" => "Assistant coach",
        "therapist" => "Therapist",
        _ => "Doctor",
    }
}

/// Label of that person's name.
#[must_use]
pub fn staff_name(role: &str) -> String {
    format!("{}: name (optional)", staff(role))
}

/// Heading.
pub const SIGNATURES: &str = "Signatures under the team list (optional)";
/// What the list is after them (4.1.3).
pub const SIGNED_LIST: &str =
    "Once both have signed, nobody can be added to the list (Rule 4.1.3).";
/// Opens the field.
pub const SIGN: &str = "Sign";
/// Again.
pub const SIGN_AGAIN: &str = "Sign again";
/// The list is another one.
pub const SIGNED_BEFORE_CHANGE: &str = "signed, but the list was changed afterwards";
/// Given.
pub const SIGNED: &str = "signed";
/// Over the field.
pub const DRAW_HERE: &str = "Sign here with a finger, or leave it empty";
/// Where it stays.
pub const DRAWING_STAYS: &str =
    "The drawing stays on this phone. You see it on the sheet when you print it or save it as a page. \
     Match files and codes do not hold the drawing. They only say that somebody signed.";
/// Takes the drawing away.
pub const CLEAR_DRAWING: &str = "Clear";
/// A dot is no signature.
pub const TOO_SMALL: &str =
    "That is only a dot. Clear it, then sign larger or leave the field empty.";
/// Makes the entry.
pub const SAVE_SIGNATURE: &str = "Save signature";
/// Leaves it.
pub const NOT_NOW: &str = "Not now";

/// Who signs.
#[must_use]
pub fn signer(signer: Signer) -> &'static str {
    match signer {
        Signer::Captain(_) => "Captain",
        Signer::Coach(_) => "Coach",
        Signer::Scorer => "Scorer",
        Signer::SecondReferee => "Second referee",
        Signer::FirstReferee => "First referee",
    }
}

/// Name of a button about a signer.
#[must_use]
pub fn about_signer(what: &str, who: &str, team: Option<&str>) -> String {
    match team {
        Some(team) => format!("{what}: {}, {team}", who.to_lowercase()),
        None => format!("{what}: {}", who.to_lowercase()),
    }
}

/// What a list lacks.
#[must_use]
pub fn list_lacks(lack: ListLack) -> String {
    match lack {
        ListLack::Captain => {
            "Nobody is marked as captain. Ask the coach, and mark the captain under \u{201c}Edit this \
             list\u{201d}."
                .to_owned()
        }
        ListLack::Players { there, needed } => format!(
            "Only {there} can start, but {needed} must be on court. The team may be incomplete. Ask the \
             coach."
        ),
    }
}
