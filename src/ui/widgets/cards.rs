//! The cards of a sanction, small: told apart by shape as well as by colour. The yellow card is round at
//! its corners and bears a ring, the red one is sharp and bears a cross; a delay's card lies on a wrist;
//! two cards in one hand overlap, one in each hand stand apart.

use leptos::prelude::*;

use game::{Level, SanctionKind};

const YELLOW: &str = "<g class='yellow'><rect x='1' y='1' width='16' height='22' rx='4'/>\
    <circle cx='9' cy='12' r='4'/></g>";
const RED: &str = "<g class='red'><rect x='1' y='1' width='16' height='22'/>\
    <path d='M5 8L13 16M13 8L5 16'/></g>";
/// A forearm with its hand, under the card.
const WRIST: &str = "<path class='wrist' d='M2 30H22C27 30 27 27 31 27H38'/>";

/// The drawing of what stands for a sanction; nothing where no card does.
fn drawing(kind: SanctionKind) -> Option<String> {
    let at = |card: &str, x: i32, y: i32| format!("<g transform='translate({x} {y})'>{card}</g>");
    let on_wrist = |card: &str| format!("{WRIST}{}", at(card, 11, 4));
    Some(match kind {
        SanctionKind::ImproperRequest => return None,
        SanctionKind::DelayWarning => on_wrist(YELLOW),
        SanctionKind::DelayPenalty => on_wrist(RED),
        SanctionKind::Misconduct(Level::Warning) => at(YELLOW, 11, 6),
        SanctionKind::Misconduct(Level::Penalty) => at(RED, 11, 6),
        SanctionKind::Misconduct(Level::Expulsion) => at(YELLOW, 5, 4) + &at(RED, 17, 9),
        SanctionKind::Misconduct(Level::Disqualification) => at(YELLOW, 0, 6) + &at(RED, 22, 6),
    })
}

/// The cards; what they are called stands beside them in words.
#[component]
pub fn Cards(
    /// Of what.
    kind: SanctionKind,
) -> impl IntoView {
    // Our own words and numbers only.
    drawing(kind).map(|inside| {
        view! { <svg viewBox="0 0 40 36" class="cards" aria-hidden="true" inner_html=inside></svg> }
    })
}
