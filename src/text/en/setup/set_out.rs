//! The words of what comes last before a set: warm-up, line-ups, liberos, the last check.

use crate::setup::player_in_full;
use crate::setup::set_out::*;
use game::entry::Player;
use rules::{Shirt, WarmUp, WarmUpStyle};

/// In English.
pub static WORDS: SetOutWords = SetOutWords {
    both_teams: "Both teams",
    start_warm_up: "Start",
    end_warm_up: "End now",
    warm_up_over: "Warm-up is over.",
    warm_up_again: "Start again",
    warm_up_is,
    warm_up_of,
    whose_line_up: "Which team's line-up?",
    list_first: "The team list is missing. Enter it first, under \u{201c}Team lists\u{201d}.",
    line_up_is_in: "The line-up is confirmed.",
    undo_line_up: "Typing mistake: undo",
    hide_line_up: "Hide the line-up from the other team",
    show_line_up: "Show the line-up",
    same_as_last_set: "Same as last set",
    empty_place: "Clear this place",
    confirm_line_up: "Confirm the line-up",
    number_for_place,
    put_in,
    liberos_now: "A libero may go in now",
    libero_for,
    libero_for_of,
    begin_all_the_same: "Begin anyway",
    begin_unsafe:
        "A safety check failed and nobody has cleared it. Somebody may get hurt. Begin anyway?",
    begin_set,
    serves_with,
    match_is_over: "This match is over.",
    to_the_sheet: "To the sheet",
    match_has_begun: "This match has begun.",
    to_the_court: "To the court",
};

fn warm_up_is(warm_up: WarmUp, tossed: bool) -> String {
    let minutes = warm_up.minutes;
    match (warm_up.style, tossed) {
        (WarmUpStyle::Shared, _) => format!("{minutes} minutes, both teams together."),
        (WarmUpStyle::Separate, true) => {
            format!("{minutes} minutes each. The team that serves first begins.")
        }
        (WarmUpStyle::Separate, false) => {
            format!("{minutes} minutes each. The team that serves first begins: toss before it.")
        }
    }
}

fn warm_up_of(words: &str, name: &str) -> String {
    format!("{words}: warm-up, {name}")
}

fn number_for_place(place: usize) -> String {
    format!(
        "Tap the number for place {}.",
        crate::score_sheet::roman(place)
    )
}

fn put_in(player: &Player, placed: bool, barred: bool) -> String {
    let mut words = player_in_full(player);
    if placed {
        words.push_str(", in the line-up");
    }
    if barred {
        words.push_str(", cannot start");
    }
    words
}

fn libero_for(into: Shirt, out: Shirt) -> String {
    format!("{into} for {out}")
}

fn libero_for_of(into: Shirt, out: Shirt, name: &str) -> String {
    format!("{name}: {into} comes in for {out}")
}

fn begin_set(set: u8) -> String {
    format!("Begin set {set}")
}

fn serves_with(name: &str, number: Option<Shirt>) -> String {
    match number {
        Some(number) => format!("{name} serve, number {number}"),
        None => format!("{name} serve"),
    }
}
