//! A rally that does not count: the one that was entered as a point, or a new one.

use leptos::prelude::*;

use super::court::{use_court, Panel};
use super::panel::Frame;
use crate::memo::Memo;
use crate::session::use_session;
use crate::widgets::picker::{asked, buttons, fixed, Choice, Layout};
use game::entry::ReplayWhy;
use game::{Kind, Phase};

const WHYS: [ReplayWhy; 4] = [
    ReplayWhy::DoubleFault,
    ReplayWhy::Interference,
    ReplayWhy::Injury,
    ReplayWhy::Other,
];

/// Which rally is meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Which {
    /// One that was stopped before anybody had a point.
    New,
    /// The last one, by its entry: its point goes.
    Last(u32),
}

impl Which {
    /// The entry.
    #[must_use]
    pub const fn kind(self, why: ReplayWhy, hurt: Option<game::entry::By>) -> Kind {
        Kind::Replay {
            why,
            hurt,
            rally: match self {
                Which::New => None,
                Which::Last(rally) => Some(rally),
            },
        }
    }
}

/// Which rally, where both can be meant, and why it does not count.
#[component]
pub fn Replayed() -> impl IntoView {
    let session = use_session();
    let court = use_court();
    let last = Memo::new(move |_| session.with_timeline(|replay| replay.replayable()));
    let playing = Memo::new(move |_| session.state().phase() == Phase::Playing);
    let chosen = RwSignal::new(None::<Which>);
    // Where only one can be meant nobody is asked.
    let which = Memo::new(move |_| match (last.get(), playing.get()) {
        (Some(_), true) => chosen.get(),
        (Some(rally), false) => Some(Which::Last(rally)),
        (None, _) => Some(Which::New),
    });
    let ways = move || {
        let rally = last.get()?;
        let ways = [Which::Last(rally), Which::New];
        let words = Signal::derive(move || {
            let score = text::score_from(&session.state(), court.team_at(true));
            vec![
                Choice::new(text::replay_last(&score)),
                Choice::new(text::replay_new()),
            ]
        });
        let is = Callback::new(move |i: usize| chosen.get() == Some(ways[i]));
        let tap = Callback::new(move |i: usize| chosen.set(Some(ways[i])));
        let both = playing.get();
        both.then(|| {
            asked(
                text::replay_which(),
                buttons(Layout::Lines, words, Some(is), tap),
            )
        })
    };
    let follows = move || {
        let lines = match which.get()? {
            Which::New => {
                return Some(view! { <p class="muted">{text::replay_more()}</p> }.into_any())
            }
            last @ Which::Last(_) => {
                let after = session.preview(&last.kind(ReplayWhy::Other, None)).ok()?;
                let order = court.score_order();
                session.with_untracked(|before| text::changes(before, &after, order))
            }
        };
        let lines = lines.into_iter().map(|line| view! { <li>{line}</li> });
        let lines = lines.collect_view();
        Some(view! { <ul class="follows" id="follows">{lines}</ul> }.into_any())
    };
    let choose = Callback::new(move |i: usize| {
        let Some(which) = which.get_untracked() else {
            return;
        };
        let why = WHYS[i];
        // A person comes before the entry.
        if why == ReplayWhy::Injury {
            return court.open(Panel::Hurt {
                replay: Some(which),
                team: None,
            });
        }
        court.submit(which.kind(why, None));
    });
    let whys = move || {
        let known = which.get().is_some();
        known.then(|| {
            asked(
                text::replay_why_label(),
                buttons(
                    Layout::Grid,
                    fixed(WHYS.map(text::replay_button)),
                    None,
                    choose,
                ),
            )
        })
    };
    view! {
        <Frame title=text::replay_title().to_owned()>
            {ways}
            {follows}
            {whys}
        </Frame>
    }
}
