//! The words of team lists and of the signatures under them.

use crate::setup::lists::*;
use game::entry::{Player, TeamList};
use game::{ListLack, Signer};
use rules::Shirt;

/// In English.
pub static WORDS: ListsWords = ListsWords {
    shirt_number: "Shirt number",
    number: "Number",
    delete_digit: "Delete the last digit",
    add: "Add",
    place_holds,
    whose_list: "Which team's list?",
    shirt_numbers: "Shirt numbers of the players",
    first_numbers,
    players_on_the_list: "Players on the list",
    mark_the_captain: "Tap a number to mark the captain.",
    staff_label: "Coach and others on the bench",
    captain: "Captain",
    libero: "Libero",
    remove: "Remove",
    name_optional: "Name (optional)",
    change_list: "Edit this list",
    write_it_anyway: "Record it anyway",
    player,
    player_in_full,
    number_is,
    list_in_short,
    hand_in_list,
    staff,
    staff_name,
    signatures: "Signatures under the team list (optional)",
    signed_list: "Once both have signed, nobody can be added to the list (Rule 4.1.3).",
    sign: "Sign",
    sign_again: "Sign again",
    signed_before_change: "signed, but the list was changed afterwards",
    signed: "signed",
    draw_here: "Sign here with a finger, or leave it empty",
    drawing_stays:
        "The drawing stays on this phone. You see it on the sheet when you print it or save it as \
         a page. Match files and codes do not hold the drawing. They only say that somebody \
         signed.",
    clear_drawing: "Clear",
    too_small: "That is only a dot. Clear it, then sign larger or leave the field empty.",
    save_signature: "Save signature",
    not_now: "Not now",
    signer,
    about_signer,
    list_lacks,
};

fn place_holds(place: usize, shown: &str) -> String {
    match shown {
        "" => format!("Place {place}, empty"),
        "\u{2022}" => format!("Place {place}, hidden"),
        shirt => format!("Place {place}, number {shirt}"),
    }
}

fn first_numbers(first: Shirt, last: Shirt) -> String {
    format!("Numbers {first} to {last}")
}

fn player(player: &Player) -> String {
    let mut words = player.number.to_string();
    if player.captain {
        words.push_str(" C");
    }
    if player.libero {
        words.push_str(" L");
    }
    words
}

fn player_in_full(player: &Player) -> String {
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

fn number_is(number: Shirt) -> String {
    format!("Number {number}")
}

fn list_in_short(list: &TeamList) -> String {
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

fn hand_in_list(players: usize) -> String {
    match players {
        1 => "Confirm the team list (1 player)".to_owned(),
        n => format!("Confirm the team list ({n} players)"),
    }
}

fn staff(role: &str) -> &'static str {
    match role {
        "coach" => "Coach",
        "assistant coach" => "Assistant coach",
        "therapist" => "Therapist",
        _ => "Doctor",
    }
}

fn staff_name(role: &str) -> String {
    format!("{}: name (optional)", staff(role))
}

fn signer(signer: Signer) -> &'static str {
    match signer {
        Signer::Captain(_) => "Captain",
        Signer::Coach(_) => "Coach",
        Signer::Scorer => "Scorer",
        Signer::SecondReferee => "Second referee",
        Signer::FirstReferee => "First referee",
    }
}

fn about_signer(what: &str, who: &str, team: Option<&str>) -> String {
    match team {
        Some(team) => format!("{what}: {}, {team}", who.to_lowercase()),
        None => format!("{what}: {}", who.to_lowercase()),
    }
}

fn list_lacks(lack: ListLack) -> String {
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
