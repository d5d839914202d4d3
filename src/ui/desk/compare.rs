//! Two records of one match side by side.

use std::sync::Arc;

use leptos::prelude::*;

use super::items::{described, Source};
use super::state::use_desk;
use crate::review::picture;
use crate::start::Library;
use app::desk::Row;
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
    let (desk, library) = (use_desk(), Library::begin());
    desk.follow(library);
    // None while they are read; none within where one of them is gone.
    let read = RwSignal::new(None::<Option<[Arc<Read>; 2]>>);
    Effect::new(move |_| {
        let Some(rows) = desk.rows() else {
            return;
        };
        let find = |id: &str| rows.iter().find(|row| row.id == id).cloned();
        let wanted = find(&first).zip(find(&second));
        device::spawn(async move {
            let both = match wanted {
                Some((a, b)) => Read::both(a, b, library).await,
                None => None,
            };
            // The screen may be gone by now.
            read.try_set(Some(both));
        });
    });
    (move || match read.get() {
        None => view! { <p class="muted">{text::reading()}</p> }.into_any(),
        Some(both) => both
            .and_then(|[a, b]| show(&a, &b))
            .unwrap_or_else(super::not_here),
    })
    .into_any()
}

/// A row with what it was made from.
struct Read {
    row: Arc<Row>,
    source: Source,
}

impl Read {
    async fn both(a: Arc<Row>, b: Arc<Row>, library: Library) -> Option<[Arc<Read>; 2]> {
        let [first, second] = [
            Source::read(&a, library).await?,
            Source::read(&b, library).await?,
        ];
        let read = |row, source| Arc::new(Read { row, source });
        Some([read(a, first), read(b, second)])
    }
}

fn show(a: &Read, b: &Read) -> Option<AnyView> {
    let (first, second) = (a.source.timeline()?, b.source.timeline()?);
    let (first, second): (&Timeline, &Timeline) = (&first, &second);
    let comparison = compare(first, second);
    let which = [(words::first(), a), (words::second(), b)].map(|(which, read)| {
        view! {
            <li>
                <strong>{which}</strong>
                " "
                {described(&read.row)}
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
