//! A team's mark: a filled disc for A, a ring for B, with the letter; never the colour alone.

use leptos::prelude::*;

use rules::Team;

/// The mark.
#[component]
pub fn TeamMark(
    /// Whose.
    team: Team,
) -> impl IntoView {
    let class = match team {
        Team::A => "team-mark disc",
        Team::B => "team-mark ring",
    };
    view! {
        <svg viewBox="0 0 24 24" class=class aria-hidden="true">
            <circle cx="12" cy="12" r="10" />
            <text x="12" y="16.5" text-anchor="middle">
                {team.letter()}
            </text>
        </svg>
    }
}
