//! The words about a match that was already being played, and about scores that are put right though no
//! team was at fault.

use rules::Shirt;

words! { CorrectedWords in corrected;
    /// Opens the form, and its title.
    running_already -> &'static str;
    /// What the form does.
    running_more -> &'static str;
    /// The running score.
    score_now -> &'static str;
    /// Below it.
    score_now_empty -> &'static str;
    /// A question.
    serves_next -> &'static str;
    /// A question.
    stands_left -> &'static str;
    /// The button.
    take_it_over -> &'static str;
    /// One field is empty or is no number.
    points_of_both -> &'static str;
    /// The label of a number of points.
    points_of(what: &str, team: &str) -> String;
    /// Adds the fields of a set.
    set_is_over(set: u8) -> String;
    /// The panel, and the line that opens it.
    correct_score -> &'static str;
    /// The panel, and the line that opens it.
    wrong_information -> &'static str;
    /// What becomes of it (FIVB Casebook 2024, case 2.3).
    wrong_information_more -> &'static str;
    /// A question.
    back_to_label -> &'static str;
    /// The button.
    go_back_to_it -> &'static str;
    /// A question.
    why -> &'static str;
    /// The label of a field.
    in_own_words -> &'static str;
    /// How a score gets wrong.
    miscounted -> &'static [&'static str];
    /// What can have been said.
    informed -> &'static [&'static str];
    /// The organiser's clock.
    time_is_up -> &'static str;
    /// Records it.
    end_set_by_time -> &'static str;
    /// Asked before; nobody leads where the teams are level.
    time_up_question(score: &str, leader: Option<&str>) -> String;
    /// The label of a score.
    back_to(score: &str) -> String;
    /// Opens the form, and its title.
    others_on_court -> &'static str;
    /// What it is for (7.3.5.1, 7.3.5.2).
    others_more -> &'static str;
    /// A question.
    whose_players -> &'static str;
    /// A question.
    who_is_missing -> &'static str;
    /// A question.
    who_stands_there -> &'static str;
    /// A number in the line-up.
    is_missing(number: Shirt) -> String;
    /// A number that is not in the line-up.
    stands_there(number: Shirt) -> String;
    /// The line-up holds.
    put_right -> &'static str;
    /// No other player, only other places (7.3.5.1).
    places_put_right -> &'static str;
    /// It counts as a substitution.
    kept -> &'static str;
}
