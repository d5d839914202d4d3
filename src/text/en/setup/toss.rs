//! The words of the toss.

use crate::score_sheet::chosen;
use crate::setup::toss::*;
use app::machine::Face;
use game::Choice;

/// In English.
pub static WORDS: TossWords = TossWords {
    who_is_heads: "Each captain gets a side of the coin. Who gets heads?",
    toss_the_coin: "Toss the coin",
    tossed_already: "We have tossed already",
    use_the_coin: "Use the coin here",
    no_coin: "This browser cannot toss a fair coin. Toss a real one and enter it here.",
    choose_again: "Choose again",
    record_toss: "Record the toss",
    toss_again: "Edit the toss",
    who_serves_first: "Who serves first?",
    who_is_left: "Who starts left, seen from the stand?",
    who_chose: "Who won, and what did that captain choose? (optional)",
    serves_first: "serves first",
    seen_from_the_stand: "As seen from the stand",
    gets_heads,
    coin_sides,
    face,
    won_the_toss,
    what_does_choose,
    toss_choice,
    as_seen: "Sets were played here without a toss. Enter what you see on court.",
    record_as_seen: "Record who serves",
    won_and_chose,
    chose,
};

fn gets_heads(name: &str) -> String {
    format!("Heads: {name}")
}

fn coin_sides(heads: &str, tails: &str) -> String {
    format!("Heads: {heads}. Tails: {tails}.")
}

fn face(face: Face) -> &'static str {
    match face {
        Face::Heads => "Heads",
        Face::Tails => "Tails",
    }
}

fn won_the_toss(winner: &str) -> String {
    format!("{winner} won the toss")
}

fn what_does_choose(name: &str) -> String {
    format!("What does the captain of {name} choose?")
}

fn toss_choice(choice: Choice) -> &'static str {
    match choice {
        Choice::Serve => "Serve",
        Choice::Receive => "Receive",
        Choice::Left => "Left side",
        Choice::Right => "Right side",
    }
}

fn won_and_chose(name: &str, choice: Choice) -> String {
    format!("{name} won the toss and chose {}.", chosen(choice))
}

fn chose(name: &str, choice: Choice) -> String {
    format!("{name} chose {}.", chosen(choice))
}
