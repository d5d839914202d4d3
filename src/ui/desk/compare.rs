//! Two records of one match side by side.

use leptos::prelude::*;

use super::items::{once_read, Item};
use crate::review::picture;
use game::Timeline;
use reports::compare::{compare, winners, Comparison};
use rules::Team;
use text::comparison::difference;
use text::desk as words;

/// Rallies shown before and after the one where the records part.
const BEFORE: usize = 4;
const AFTER: usize = 5;

/// The screen.
pub fn compare_two(first: String, second: String) -> AnyView {
    once_read(move |items| {
        let find = |id: &str| items.iter().find(|item| item.id == id);
        match (find(&first), find(&second)) {
            (Some(a), Some(b)) => both(a, b).unwrap_or_else(super::not_here),
            _ => super::not_here(),
        }
    })
}

fn both(a: &Item, b: &Item) -> Option<AnyView> {
    let (first, second) = (a.timeline()?, b.timeline()?);
    let (first, second): (&Timeline, &Timeline) = (&first, &second);
    let comparison = compare(first, second);
    let which = [(words::first(), a), (words::second(), b)].map(|(which, item)| {
        view! {
            <li>
                <strong>{which}</strong>
                " "
                {item.described()}
            </li>
        }
    });
    let count = comparison.within().count();
    let list = comparison
        .within()
        .map(|d| {
            view! {
                <li class="card finding">
                    <p>{difference(d, &comparison)}</p>
                    <p class="muted">{words::entries_of(d.entries)}</p>
                </li>
            }
        })
        .collect_view();
    let other_match = comparison
        .other_match()
        .map(|d| view! { <p class="sentence warn">{difference(d, &comparison)}</p> });
    let view = view! {
        <div class="desk stack">
            {other_match}
            <section class="card stack">
                <ul class="lines">{which}</ul>
                {parting(&comparison, [first, second])}
            </section>
            {(count > 0).then(|| view! { <h2>{words::differences(count)}</h2> })}
            <ol class="desk-findings">{list}</ol>
        </div>
    };
    Some(view.into_any())
}

/// The rally where the records part, and the rallies around it in both.
fn parting(comparison: &Comparison, replays: [&Timeline; 2]) -> AnyView {
    let point = comparison
        .parting()
        .and_then(|d| Some((d.set?, d.rally?, d.score?)));
    let Some((set, rally, score)) = point else {
        let agree = if comparison.within().next().is_some() {
            words::same_points()
        } else if comparison.other_match().is_some() {
            words::same_course()
        } else {
            words::they_agree()
        };
        return view! { <p id="parting">{agree}</p> }.into_any();
    };
    let exchanged = comparison.is_exchanged();
    let drawn = render::parting(comparison, replays).map(|drawn| {
        view! {
            <h2>{words::lead_of_both()}</h2>
            {picture(drawn, true)}
        }
    });
    let from = rally.saturating_sub(BEFORE + 1);
    let to = rally + AFTER;
    let rows = [(words::first(), false), (words::second(), exchanged)]
        .into_iter()
        .zip(replays)
        .map(|((which, turned), timeline)| {
            let winners = winners(timeline.state(), set);
            let cells = (from..to)
                .map(|i| {
                    let winner = winners.get(i).map(|w| if turned { w.other() } else { *w });
                    let class = match winner {
                        Some(Team::A) => "team-a",
                        Some(Team::B) => "team-b",
                        None => "none",
                    };
                    let letter = winner.map_or("–", Team::letter);
                    view! { <td class=class class:parted=i + 1 == rally>{letter}</td> }
                })
                .collect_view();
            view! {
                <tr>
                    <th scope="row">{which}</th>
                    {cells}
                </tr>
            }
        })
        .collect_view();
    let head = (from..to)
        .map(|i| view! { <th scope="col" class:parted=i + 1 == rally>{i + 1}</th> })
        .collect_view();
    view! {
        <p id="parting" class="parting">{words::they_part(set, rally, score)}</p>
        <div class="wide" tabindex="0" role="region" aria-label=words::rallies_around()>
            <table class="rallies tabular">
                <caption class="muted">{words::who_won(&comparison.names)}</caption>
                <thead>
                    <tr>
                        <th scope="col">{words::rally()}</th>
                        {head}
                    </tr>
                </thead>
                <tbody>{rows}</tbody>
            </table>
        </div>
        {drawn}
    }
    .into_any()
}
