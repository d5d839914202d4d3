//! The words of the toss.

use crate::score_sheet::chosen;
use app::machine::Face;
use game::Choice;

/// First question.
pub const WHO_IS_HEADS: &str = "Each captain gets a side of the coin. Who gets heads?";
/// Throws it.
pub const TOSS_THE_COIN: &str = "Toss the coin";
/// The other way.
pub const TOSSED_ALREADY: &str = "We have tossed already";
/// Back to the coin.
pub const USE_THE_COIN: &str = "Use the coin here";
/// Where the browser has no chance to give.
pub const NO_COIN: &str =
    "This browser cannot toss a fair coin. Toss a real one and enter it here.";
/// Goes back to the winner's choice.
pub const CHOOSE_AGAIN: &str = "Choose again";
/// Makes the entry.
pub const RECORD_TOSS: &str = "Record the toss";
/// Changes a recorded toss.
pub const TOSS_AGAIN: &str = "Edit the toss";
/// First question by hand.
pub const WHO_SERVES_FIRST: &str = "Who serves first?";
/// Second question by hand.
pub const WHO_IS_LEFT: &str = "Who starts left, seen from the stand?";
/// Third question by hand.
pub const WHO_CHOSE: &str = "Who won, and what did that captain choose? (optional)";
/// On the half of the team that serves.
pub const SERVES_FIRST: &str = "serves first";
/// Under the drawn court.
pub const SEEN_FROM_THE_STAND: &str = "As seen from the stand";

/// A captain to give heads to.
#[must_use]
pub fn gets_heads(name: &str) -> String {
    format!("Heads: {name}")
}

/// Whose is which side of the coin.
#[must_use]
pub fn coin_sides(heads: &str, tails: &str) -> String {
    format!("Heads: {heads}. Tails: {tails}.")
}

/// A side of the coin.
#[must_use]
pub fn face(face: Face) -> &'static str {
    match face {
        Face::Heads => "Heads",
        Face::Tails => "Tails",
    }
}

/// What the coin says.
#[must_use]
pub fn won_the_toss(winner: &str) -> String {
    format!("{winner} won the toss")
}

/// Who is asked.
#[must_use]
pub fn what_does_choose(name: &str) -> String {
    format!("What does the captain of {name} choose?")
}

/// What can be chosen (7.1.2).
#[must_use]
pub fn toss_choice(choice: Choice) -> &'static str {
    match choice {
        Choice::Serve => "Serve",
        Choice::Receive => "Receive",
        Choice::Left => "Left side",
        Choice::Right => "Right side",
    }
}

/// The sentence below the toss where nobody held one.
pub const AS_SEEN: &str = "Sets were played here without a toss. Enter what you see on court.";
/// Records it.
pub const RECORD_AS_SEEN: &str = "Record who serves";

/// Who won a recorded toss, and what was chosen.
#[must_use]
pub fn won_and_chose(name: &str, choice: Choice) -> String {
    format!("{name} won the toss and chose {}.", chosen(choice))
}

/// What a captain chose.
#[must_use]
pub fn chose(name: &str, choice: Choice) -> String {
    format!("{name} chose {}.", chosen(choice))
}
