//! A score that is put right though no team was at fault: it was miscounted, or the officials gave wrong
//! information (FIVB Casebook 2024, case 2.3).

use leptos::prelude::*;

use super::consequence::Consequence;
use super::court::use_court;
use super::late::{moments, scores};
use super::panel::Frame;
use crate::session::use_session;
use crate::widgets::picker::{asked, buttons, fixed, teams, Layout};
use crate::widgets::text_field::{named, text_field, FieldOptions, InputKind};
use game::Kind;
use rules::{Score, Team};

/// The score was miscounted.
#[component]
pub fn Correct() -> impl IntoView {
    let session = use_session();
    let state = session.state_now();
    let now = state.score();
    let typed = [now.a, now.b].map(|points| RwSignal::new(points.to_string()));
    let serving = RwSignal::new(None::<Team>);
    let why = RwSignal::new(String::new());
    // As the teams stand on the screen.
    let left = untrack(|| use_court().team_at(true));
    let fields = [left, left.other()].map(|team| {
        let label = text::points_of(text::score_now(), &text::team_name(&state, team));
        let typed = typed[usize::from(team == Team::B)];
        let id = format!("right-{}", team.letter());
        text_field(
            &id,
            Signal::stored(label),
            InputKind::Whole,
            typed,
            FieldOptions::default(),
        )
    });
    let score = move || {
        let [a, b] = typed.map(|field| field.with(|words| words.trim().parse().ok()));
        Some(Score { a: a?, b: b? })
    };
    let kind = Signal::derive(move || {
        let why = why.with(|why| why.trim().to_owned());
        (!why.is_empty()).then_some(())?;
        Some(Kind::ScoreCorrection {
            score: score()?,
            serving: serving.get(),
            why,
        })
    });
    view! {
        <Frame title=text::correct_score().to_owned()>
            <div class="pair">{fields}</div>
            {asked(text::serves_next(), teams(serving))}
            {because(why, text::miscounted())}
            <Consequence kind yes=Signal::stored(text::correct_score().to_owned()) />
        </Frame>
    }
}

/// The officials gave wrong information, and play goes back.
#[component]
pub fn WrongInformation() -> impl IntoView {
    let session = use_session();
    let court = use_court();
    let back_to = RwSignal::new(None::<Score>);
    let why = RwSignal::new(String::new());
    let kind = Signal::derive(move || {
        let why = why.with(|why| why.trim().to_owned());
        (!why.is_empty()).then_some(())?;
        let score = back_to.get()?;
        Some(Kind::WrongInformation { score, why })
    });
    let stood = Signal::derive(move || scores(&session.state(), None));
    let chosen = Callback::new(move |score: Score| back_to.get() == Some(score));
    let choose = Callback::new(move |score: Score| back_to.set(Some(score)));
    let order = Signal::derive(move || court.score_order());
    view! {
        <Frame title=text::wrong_information().to_owned()>
            <p>{text::wrong_information_more()}</p>
            {asked(text::back_to_label(), moments(stood, order, text::back_to, chosen, choose))}
            {because(why, text::informed())}
            <Consequence kind yes=Signal::stored(text::go_back_to_it().to_owned()) />
        </Frame>
    }
}

/// Why, with a tap or in own words.
fn because(why: RwSignal<String>, usual: &'static [&'static str]) -> AnyView {
    let is = Callback::new(move |i: usize| why.with(|why| why == usual[i]));
    let tap = Callback::new(move |i: usize| why.set(usual[i].to_owned()));
    let answers = view! {
        {buttons(Layout::Lines, fixed(usual.iter().copied()), Some(is), tap)}
        {text_field("why", named(text::in_own_words()), InputKind::Words(200), why, FieldOptions::default())}
    };
    asked(text::why(), answers.into_any())
}
