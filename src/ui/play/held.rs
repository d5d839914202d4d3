//! A second point that came too soon to be one: asked about beside the court, and nothing waits for the
//! answer.

use leptos::prelude::*;

use super::court::{use_court, Court};
use crate::memo::Memo;
use crate::session::{use_session, Session};
use game::{held_points, HeldPoint, Kind};

/// What is asked about now. Only a page that has held one back itself asks about earlier ones.
fn asked(session: Session, since: Option<u32>) -> Vec<HeldPoint> {
    session.with_timeline(|replay| held_points(replay, since))
}

/// Takes back what a tap after the last one has brought, without touching the point before it. Says whether
/// there was one.
pub fn leave_last_out(session: Session, court: Court) -> bool {
    let since = untrack(|| court.held_since());
    let held = session.with_untracked(|replay| held_points(replay, since));
    let last = session.with_untracked(|replay| replay.entries().last().map(|e| e.n));
    let is_last = held.last().map(|h| h.strike) == last && last.is_some();
    if is_last {
        court.held_answered();
    }
    is_last
}

/// The question.
#[component]
pub fn Held() -> impl IntoView {
    let session = use_session();
    let court = use_court();
    // Whoever lets quick taps count is asked about none.
    let held = Memo::new(move |_| match court.counts_quick_taps() {
        true => Vec::new(),
        false => asked(session, court.held_since()),
    });
    let count = move |points: &[HeldPoint]| {
        court.held_answered();
        for point in points {
            let back = Kind::Strike {
                entry: point.strike,
                why: None,
            };
            session.submit(back);
        }
        court.tell_score();
    };
    let shown = move || {
        let points = held.get();
        let first = *points.first()?;
        let state = session.state_now();
        let name = |team| text::team_name(&state, team);
        let all = points.clone();
        let instead = (points.len() == 1 && first.won_by != first.before_won_by)
            .then_some(first.before)
            .flatten();
        let question = text::held_question(&name(first.won_by), points.len(), instead.is_some());
        let yes = text::held_yes(points.len());
        let no = text::held_no(&name(first.before_won_by), points.len());
        let only_second = instead.map(|before| {
            let words = text::held_only(&name(first.won_by));
            let tap = move |_| {
                if session.submit(Kind::Strike {
                    entry: before,
                    why: None,
                }) {
                    count(&[first]);
                }
            };
            view! {
                <button type="button" class="button" on:click=tap>
                    {words}
                </button>
            }
        });
        Some(view! {
            <div class="prompt tall" role="alert" id="held">
                <strong>{question}</strong>
                <div class="row">
                    <button type="button" class="button" id="held-yes" on:click=move |_| count(&all)>
                        {yes}
                    </button>
                    {only_second}
                    <button
                        type="button"
                        class="button primary"
                        id="held-no"
                        on:click=move |_| court.held_answered()
                    >
                        {no}
                    </button>
                </div>
            </div>
        })
    };
    view! { {shown} }
}
