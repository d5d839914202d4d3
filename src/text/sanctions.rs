//! What a request, a delay or misconduct becomes, in words: before it is recorded, and in the log
//! afterwards. Rule numbers are those of the FIVB Official Volleyball Rules 2025-2028.

use crate::{differences, ScoreOrder};
use game::entry::Forced;
use game::{
    Conduct, Kind, Level, Sanction, SanctionEffect, SanctionKind, SanctionPreview, State,
    SubstitutionPreview, Timeline, Who,
};
use rules::{Arm, Shirt};

words! { SanctionsWords in sanctions;
    /// Takes over a number that was typed.
    this_player -> &'static str;
    /// What a line of the sanctions box is called.
    sanction(kind: SanctionKind) -> &'static str;
    /// The cards that show it (21.6, diagram 9b and signals 6 to 8 and 25).
    cards(kind: SanctionKind) -> &'static str;
    /// The same with the arm that shows it, where it is one arm alone (30.1: the side of the team at fault).
    cards_and_arm(kind: SanctionKind, arm: Option<Arm>) -> String;
    /// What it becomes, on one line; `before` is the state before it.
    becomes(preview: &SanctionPreview, before: &State) -> String;
    /// What it costs.
    cost(preview: &SanctionPreview, state: &State) -> String;
    /// The same in a few words, beside a level.
    row_cost(preview: &SanctionPreview, state: &State) -> String;
    /// One thing that it means for the team or the person.
    sanction_effect(effect: SanctionEffect, sanction: &Sanction, state: &State) -> String;
    /// Beside everybody who has to leave the hall: nobody young is left alone. Our own choice, no source.
    not_alone -> &'static str;
    /// How it is given to a person (Refereeing Guidelines 2024, rules 21 and 23).
    how_to_give(who: &Who) -> &'static str;
    /// What leads to a level for this person now, in the words of chapter 21.
    for_what(level: Level, conducts: &[Conduct]) -> String;
    /// The button that records it.
    record_it(preview: &SanctionPreview) -> String;
    /// Back to the levels.
    other_level -> &'static str;
    /// A request or a delay that was entered, as what it became.
    became(kind: &Kind, line: &Sanction, state: &State) -> Option<String>;
    /// What a substitution is (15.7).
    sort(preview: SubstitutionPreview) -> &'static str;
    /// What a substitution is, and what it means for whoever goes out (15.6, 15.7, 21.3).
    sort_means(preview: SubstitutionPreview, out: Shirt, reason: Option<Forced>) -> String;
}

/// Everything that follows from it, one line each.
#[must_use]
pub fn sanction_follows(
    preview: &SanctionPreview,
    before: &Timeline,
    after: &Timeline,
    order: ScoreOrder,
) -> Vec<String> {
    let state = before.state();
    let means = |effect| sanction_effect(effect, &preview.sanction, state);
    let mut lines = vec![cost(preview, state)];
    lines.extend(differences(before, after, order));
    lines.extend(preview.effects().into_iter().map(means));
    lines
}
