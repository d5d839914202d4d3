//! The words of the toss.

use app::machine::Face;
use game::Choice;

words! { TossWords in setup::toss;
    /// First question.
    who_is_heads -> &'static str;
    /// Throws it.
    toss_the_coin -> &'static str;
    /// The other way.
    tossed_already -> &'static str;
    /// Back to the coin.
    use_the_coin -> &'static str;
    /// Where the browser has no chance to give.
    no_coin -> &'static str;
    /// Goes back to the winner's choice.
    choose_again -> &'static str;
    /// Makes the entry.
    record_toss -> &'static str;
    /// Changes a recorded toss.
    toss_again -> &'static str;
    /// First question by hand.
    who_serves_first -> &'static str;
    /// Second question by hand.
    who_is_left -> &'static str;
    /// Third question by hand.
    who_chose -> &'static str;
    /// On the half of the team that serves.
    serves_first -> &'static str;
    /// Under the drawn court.
    seen_from_the_stand -> &'static str;
    /// A captain to give heads to.
    gets_heads(name: &str) -> String;
    /// Whose is which side of the coin.
    coin_sides(heads: &str, tails: &str) -> String;
    /// A side of the coin.
    face(face: Face) -> &'static str;
    /// What the coin says.
    won_the_toss(winner: &str) -> String;
    /// Who is asked.
    what_does_choose(name: &str) -> String;
    /// What can be chosen (7.1.2).
    toss_choice(choice: Choice) -> &'static str;
    /// The sentence below the toss where nobody held one.
    as_seen -> &'static str;
    /// Records it.
    record_as_seen -> &'static str;
    /// Who won a recorded toss, and what was chosen.
    won_and_chose(name: &str, choice: Choice) -> String;
    /// What a captain chose.
    chose(name: &str, choice: Choice) -> String;
}
