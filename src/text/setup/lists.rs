//! The words of team lists and of the signatures under them.

use game::entry::{Player, TeamList};
use game::{ListLack, Signer};
use rules::Shirt;

words! { ListsWords in setup::lists;
    /// Name of the field that shows the digits.
    shirt_number -> &'static str;
    /// In the field while it is empty.
    number -> &'static str;
    /// Name of the key that takes a digit away.
    delete_digit -> &'static str;
    /// The key that takes a number over.
    add -> &'static str;
    /// Name of a place for whoever listens.
    place_holds(place: usize, shown: &str) -> String;
    /// Name of the choice of a team.
    whose_list -> &'static str;
    /// Name of the pad.
    shirt_numbers -> &'static str;
    /// Fills the list.
    first_numbers(first: Shirt, last: Shirt) -> String;
    /// Name of the list.
    players_on_the_list -> &'static str;
    /// While nobody is marked.
    mark_the_captain -> &'static str;
    /// Opens the staff.
    staff_label -> &'static str;
    /// A mark.
    captain -> &'static str;
    /// A mark.
    libero -> &'static str;
    /// Takes a player off the list.
    remove -> &'static str;
    /// Label of a name.
    name_optional -> &'static str;
    /// Opens the editor again.
    change_list -> &'static str;
    /// Against the advice of the rules.
    write_it_anyway -> &'static str;
    /// A player by number and marks.
    player(player: &Player) -> String;
    /// The same for whoever listens.
    player_in_full(player: &Player) -> String;
    /// Over the marks of one player.
    number_is(number: Shirt) -> String;
    /// A list that is in.
    list_in_short(list: &TeamList) -> String;
    /// Makes the entry.
    hand_in_list(players: usize) -> String;
    /// A member of the staff.
    staff(role: &str) -> &'static str;
    /// Label of that person's name.
    staff_name(role: &str) -> String;
    /// Heading.
    signatures -> &'static str;
    /// What the list is after them (4.1.3).
    signed_list -> &'static str;
    /// Opens the field.
    sign -> &'static str;
    /// Again.
    sign_again -> &'static str;
    /// The list is another one.
    signed_before_change -> &'static str;
    /// Given.
    signed -> &'static str;
    /// Over the field.
    draw_here -> &'static str;
    /// Where it stays.
    drawing_stays -> &'static str;
    /// Takes the drawing away.
    clear_drawing -> &'static str;
    /// A dot is no signature.
    too_small -> &'static str;
    /// Makes the entry.
    save_signature -> &'static str;
    /// Leaves it.
    not_now -> &'static str;
    /// Who signs.
    signer(signer: Signer) -> &'static str;
    /// Name of a button about a signer.
    about_signer(what: &str, who: &str, team: Option<&str>) -> String;
    /// What a list lacks.
    list_lacks(lack: ListLack) -> String;
}
