//! The words of what comes last before a set: warm-up, line-ups, liberos, the last check.

use game::entry::Player;
use rules::{Shirt, WarmUp};

words! { SetOutWords in setup::set_out;
    /// Where the warm-up is shared.
    both_teams -> &'static str;
    /// Starts it.
    start_warm_up -> &'static str;
    /// Ends it early.
    end_warm_up -> &'static str;
    /// It is over.
    warm_up_over -> &'static str;
    /// Once more.
    warm_up_again -> &'static str;
    /// How it goes (7.2).
    warm_up_is(warm_up: WarmUp, tossed: bool) -> String;
    /// Name of a button of one team's warm-up.
    warm_up_of(words: &str, name: &str) -> String;
    /// Name of the choice of a team.
    whose_line_up -> &'static str;
    /// Before a list is there.
    list_first -> &'static str;
    /// After it was handed in.
    line_up_is_in -> &'static str;
    /// A mistake of the hand that typed.
    undo_line_up -> &'static str;
    /// Covers.
    hide_line_up -> &'static str;
    /// Uncovers.
    show_line_up -> &'static str;
    /// Fills in.
    same_as_last_set -> &'static str;
    /// Takes the number out of the chosen place.
    empty_place -> &'static str;
    /// Makes the entry.
    confirm_line_up -> &'static str;
    /// Where the next number goes.
    number_for_place(place: usize) -> String;
    /// Name of a number to put in.
    put_in(player: &Player, placed: bool, barred: bool) -> String;
    /// Heading.
    liberos_now -> &'static str;
    /// A replacement.
    libero_for(into: Shirt, out: Shirt) -> String;
    /// The same for whoever listens.
    libero_for_of(into: Shirt, out: Shirt, name: &str) -> String;
    /// Against a failed safety check.
    begin_all_the_same -> &'static str;
    /// Asked before that.
    begin_unsafe -> &'static str;
    /// The button.
    begin_set(set: u8) -> String;
    /// Who serves.
    serves_with(name: &str, number: Option<Shirt>) -> String;
    /// After a default.
    match_is_over -> &'static str;
    /// To its sheet.
    to_the_sheet -> &'static str;
    /// After the match has begun.
    match_has_begun -> &'static str;
    /// To the play screen.
    to_the_court -> &'static str;
}
