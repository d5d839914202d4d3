//! The look back on a match: pictures first, each with the same in words, and a card for the talk.

mod observed;

use leptos::prelude::*;

use super::session::use_session;
use super::shell::{use_shell, Screen};
use game::{Phase, State};
use render::{review as pictures, Picture};
use reports::review::Review;
use rules::{ByTeam, Team};
use text::review as words;

/// The screen, for the open match.
pub fn review() -> AnyView {
    let session = use_session();
    (move || {
        let review = session.with_timeline(Review::of);
        let state = session.state();
        all(&review, &state)
    })
    .into_any()
}

fn all(review: &Review, state: &State) -> AnyView {
    let names = ByTeam::new(|team| text::team_name(state, team));
    if review.points() == 0 {
        return nothing();
    }
    let questions = review.questions().map(|q| {
        let question = words::question(&q, state.rules());
        view! { <li>{question}</li> }
    });
    let leads = review
        .sets
        .iter()
        .map(|s| picture(pictures::lead(s, &names), true))
        .collect();
    view! {
        <div class="review stack">
            {(state.phase() != Phase::Finished).then(|| sentence(words::so_far()))}
            <section class="card stack talk" id="talk">
                <h2>{words::card()}</h2>
                <p class="muted">{words::card_more()}</p>
                <ol class="questions">{questions}</ol>
            </section>
            {observed::observed()}
            {part(words::lead_heading(), words::lead_more(), leads)}
            {part(words::called(), words::called_more(), calls(review, state))}
            {part(words::pauses_heading(), "", pauses(review))}
            {part(words::rotations_heading(), words::rotations_more(), rotations(review, &names))}
            {part(words::time_outs(), words::time_outs_more(), time_outs(review, &names))}
            {part(words::taken_back_heading(), "", taken_back(review, state))}
            {(state.phase() == Phase::Finished).then(observed::to_logbook)}
        </div>
    }
    .into_any()
}

/// Before the first rally there is nothing to look back on.
fn nothing() -> AnyView {
    let shell = use_shell();
    let session = use_session();
    let to_match = move |_| {
        if let Some(id) = untrack(|| session.id()) {
            shell.go(Screen::Play { id });
        }
    };
    view! {
        <section class="card stack">
            <p>{words::nothing_played()}</p>
            <div class="row">
                <button type="button" class="button" on:click=to_match>
                    {words::to_match()}
                </button>
            </div>
        </section>
    }
    .into_any()
}

/// A part with its heading; none where there is nothing to show.
fn part(heading: &'static str, more: &'static str, shown: Vec<AnyView>) -> Option<AnyView> {
    (!shown.is_empty()).then(|| {
        view! {
            <section class="card stack">
                <h2>{heading}</h2>
                {(!more.is_empty()).then(|| view! { <p class="muted">{more}</p> })}
                {shown}
            </section>
        }
        .into_any()
    })
}

/// A drawing; in words below it, or for listeners alone.
pub fn picture(picture: Picture, in_words: bool) -> AnyView {
    let (wide, high) = picture.size;
    view! {
        <figure>
            <svg
                viewBox=format!("0 0 {wide} {high}")
                class="picture"
                role="img"
                aria-label=picture.say.clone()
                inner_html=picture.inside
            ></svg>
            {in_words.then(|| view! { <figcaption class="muted">{picture.say}</figcaption> })}
        </figure>
    }
    .into_any()
}

fn sentence(words: impl Into<String>) -> AnyView {
    let words: String = words.into();
    view! { <p>{words}</p> }.into_any()
}

fn calls(review: &Review, state: &State) -> Vec<AnyView> {
    if review.calls.is_empty() {
        return vec![sentence(words::nothing_called())];
    }
    let mut shown: Vec<AnyView> = review
        .calls
        .iter()
        .map(|c| {
            view! {
                <div class="called">
                    <span>{text::cause(c.cause, state.rules())}</span>
                    <strong class="tabular">{words::calls(c.when.len())}</strong>
                    {picture(pictures::when_called(review, c), false)}
                </div>
            }
            .into_any()
        })
        .collect();
    let by = review.shown_by();
    if !by.is_empty() {
        shown.push(sentence(words::shown_by(&by)));
    }
    shown.push(sentence(words::unsaid(review.unsaid(), review.points())));
    shown
}

fn pauses(review: &Review) -> Vec<AnyView> {
    match (pictures::pauses(review), review.usual_pause()) {
        (Some(drawn), Some(usual)) => {
            vec![picture(drawn, false), sentence(words::usual_pause(usual))]
        }
        _ => vec![sentence(words::no_times())],
    }
}

fn rotations(review: &Review, names: &ByTeam<String>) -> Vec<AnyView> {
    let sets = review.sets.iter().filter_map(|set| {
        let drawn: Vec<AnyView> = Team::BOTH
            .into_iter()
            .filter_map(|team| {
                let drawn = picture(pictures::rotation(set, team, &names[team])?, false);
                let name = names[team].clone();
                Some(view! { <div><p>{name}</p>{drawn}</div> }.into_any())
            })
            .collect();
        (!drawn.is_empty()).then(|| {
            view! {
                <h3>{words::set(set.number)}</h3>
                <div class="beside">{drawn}</div>
            }
            .into_any()
        })
    });
    sets.collect()
}

fn time_outs(review: &Review, names: &ByTeam<String>) -> Vec<AnyView> {
    let mut shown: Vec<AnyView> = Vec::new();
    for set in &review.sets {
        for t in &set.time_outs {
            let words = words::time_out(&names[t.team], set.number, t.score, t.run_before);
            shown.push(
                view! {
                    <div class="followed">
                        <span>{words}</span>
                        {picture(pictures::after_time_out(t), false)}
                    </div>
                }
                .into_any(),
            );
        }
    }
    if shown.is_empty() {
        shown.push(sentence(words::no_time_outs()));
    }
    shown
}

fn taken_back(review: &Review, state: &State) -> Vec<AnyView> {
    if review.taken_back.is_empty() {
        return vec![sentence(words::nothing_taken_back())];
    }
    let told = review.taken_back.iter().map(|t| {
        let entry = text::entered(&t.kind, state);
        sentence(words::taken_back(
            t.entry,
            &entry,
            t.after,
            t.why.as_deref(),
        ))
    });
    told.collect()
}
