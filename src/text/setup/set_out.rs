//! The words of what comes last before a set: warm-up, line-ups, liberos, the last check.

use super::player_in_full;
use game::entry::Player;
use rules::{Shirt, WarmUp, WarmUpStyle};

/// Where the warm-up is shared.
pub const BOTH_TEAMS: &str = "Both teams";
/// Starts it.
pub const START_WARM_UP: &str = "Start";
/// Ends it early.
pub const END_WARM_UP: &str = "End now";
/// It is over.
pub const WARM_UP_OVER: &str = "Warm-up is over.";
/// Once more.
pub const WARM_UP_AGAIN: &str = "Start again";

/// How it goes (7.2).
#[must_use]
pub fn warm_up_is(warm_up: WarmUp, tossed: bool) -> String {
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

/// Name of a button of one team's warm-up.
#[must_use]
pub fn warm_up_of(words: &str, name: &str) -> String {
    format!("{words}: warm-up, {name}")
}

/// Name of the choice of a team.
pub const WHOSE_LINE_UP: &str = "Which team's line-up?";
/// Before a list is there.
pub const LIST_FIRST: &str =
    "The team list is missing. Enter it first, under \u{201c}Team lists\u{201d}.";
/// After it was handed in.
pub const LINE_UP_IS_IN: &str = "The line-up is confirmed.";
/// A mistake of the hand that typed.
pub const UNDO_LINE_UP: &str = "Typing mistake: undo";
/// Covers.
pub const HIDE_LINE_UP: &str = "Hide the line-up from the other team";
/// Uncovers.
pub const SHOW_LINE_UP: &str = "Show the line-up";
/// Fills in.
pub const SAME_AS_LAST_SET: &str = "Same as last set";
/// Takes the number out of the chosen place.
pub const EMPTY_PLACE: &str = "Clear this place";
/// Makes the entry.
pub const CONFIRM_LINE_UP: &str = "Confirm the line-up";

/// Where the next number goes.
#[must_use]
pub fn number_for_place(place: usize) -> String {
    format!(
        "Tap the number for place {}.",
        crate::score_sheet::roman(place)
    )
}

/// Name of a number to put in.
#[must_use]
pub fn put_in(player: &Player, placed: bool, barred: bool) -> String {
    let mut words = player_in_full(player);
    if placed {
        words.push_str(", in the line-up");
    }
    if barred {
        words.push_str(", cannot start");
    }
    words
}

/// Heading.
pub const LIBEROS_NOW: &str = "A libero may go in now";

/// A replacement.
#[must_use]
pub fn libero_for(into: Shirt, out: Shirt) -> String {
    format!("{into} for {out}")
}

/// The same for whoever listens.
#[must_use]
pub fn libero_for_of(into: Shirt, out: Shirt, name: &str) -> String {
    format!("{name}: {into} comes in for {out}")
}

/// Against a failed safety check.
pub const BEGIN_ALL_THE_SAME: &str = "Begin anyway";
/// Asked before that.
pub const BEGIN_UNSAFE: &str =
    "A safety check failed and nobody has cleared it. Somebody may get hurt. Begin anyway?";

/// The button.
#[must_use]
pub fn begin_set(set: u8) -> String {
    format!("Begin set {set}")
}

/// Who serves.
#[must_use]
pub fn serves_with(name: &str, number: Option<Shirt>) -> String {
    match number {
        Some(number) => format!("{name} serve, number {number}"),
        None => format!("{name} serve"),
    }
}

/// After a default.
pub const MATCH_IS_OVER: &str = "This match is over.";
/// To its sheet.
pub const TO_THE_SHEET: &str = "To the sheet";

/// After the match has begun.
pub const MATCH_HAS_BEGUN: &str = "This match has begun.";
/// To the play screen.
pub const TO_THE_COURT: &str = "To the court";
