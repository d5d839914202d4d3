//! What stands before somebody signs or seals: the result, and what is open, each with the way to put it
//! right.

use leptos::prelude::*;

use super::closing::Asked;
use crate::session::use_session;
use crate::shell::{use_shell, Screen};
use crate::widgets::team_mark::TeamMark;
use game::{Kind, State, Timeline};
use reports::audit::{self, Finding, Remedy};
use rules::Team;
use text::sheet as words;

/// Teams, sets and points, as everybody who signs sees them.
pub(super) fn result(state: &State) -> AnyView {
    let won = state.sets_won();
    let team = |team: Team| {
        let class = match team {
            Team::A => "result-team team-a",
            Team::B => "result-team team-b",
        };
        view! {
            <span class=class>
                <TeamMark team />
                <span class="result-name">{text::team_name(state, team)}</span>
                <span class="result-sets tabular">{won[team]}</span>
            </span>
        }
    };
    let sets = state.sets().map(|set| {
        view! { <li>{text::set_number(set.number)} " " <span class="tabular">{set.score.marked()}</span></li> }
    });
    let over = state.ended().is_some();
    view! {
        <div class="result" id="result">
            <p class="result-teams">{team(Team::A)} {team(Team::B)}</p>
            <p><strong>{if over { text::match_over(state) } else { words::result_so_far().to_owned() }}</strong></p>
            <ul class="result-each">{sets.collect_view()}</ul>
        </div>
    }
    .into_any()
}

/// What the audit finds and somebody can still do something about, but for the signatures under the
/// result, which have lines of their own.
pub(super) fn open_things(timeline: &Timeline) -> Vec<Finding> {
    let mut findings = audit::of_log(timeline);
    findings.retain(|f| !matches!(f.remedy(), Remedy::Sign(_) | Remedy::Stands));
    findings
}

/// Each of them in words, with the way to put it right.
pub(super) fn still_open(
    findings: Vec<Finding>,
    timeline: &Timeline,
    may_write: bool,
    ask: Callback<Asked>,
) -> AnyView {
    if findings.is_empty() {
        return view! { <p class="mark-ok">{words::nothing_open()}</p> }.into_any();
    }
    let state = timeline.state();
    let count = findings.len();
    let one = |finding: Finding| {
        let say = text::audit::finding(&finding, state.into());
        let about = finding
            .entry
            .and_then(|n| timeline.entry(n))
            .map(|entry| words::about_entry(entry.n, &text::entry(entry, state)));
        let way = may_write.then(|| way(&finding, &say, state, ask));
        view! {
            <li class="open-thing">
                <p>{say}</p>
                {about.map(|about| view! { <p class="muted">{about}</p> })}
                {way}
            </li>
        }
    };
    view! {
        <section class="stack" id="still-open" aria-label=words::still_open()>
            <h3>{words::still_open()} " (" {count} ")"</h3>
            <ul class="open-things">{findings.into_iter().map(one).collect_view()}</ul>
        </section>
    }
    .into_any()
}

/// The button, or the buttons, that lead to where it is put right.
fn way(finding: &Finding, say: &str, state: &State, ask: Callback<Asked>) -> AnyView {
    let session = use_session();
    let shell = use_shell();
    let asks = |words: &'static str, what: Asked| {
        let what = StoredValue::new(what);
        view! {
            <button type="button" class="button small" aria-label=words::way(words, say)
                on:click=move |_| ask.run(what.get_value())
            >
                {words}
            </button>
        }
        .into_any()
    };
    let leads = |words: &'static str, to: fn(String) -> Screen| {
        view! {
            <button type="button" class="button small" aria-label=words::way(words, say)
                on:click=move |_| if let Some(id) = untrack(|| session.id()) { shell.go(to(id)) }
            >
                {words}
            </button>
        }
        .into_any()
    };
    match finding.remedy() {
        Remedy::Details => asks(words::complete(), Asked::Details),
        Remedy::Clear { item } => asks(words::clear(), Asked::Clear { item }),
        Remedy::Play => leads(words::to_court(), |id| Screen::Play { id }),
        Remedy::Log => leads(words::to_log(), |id| Screen::Log { id }),
        Remedy::Protest { entry, team } => {
            asks(words::write_protest(), Asked::Protest { entry, team })
        }
        Remedy::Remark => asks(
            words::remark(),
            Asked::Remark {
                about: say.to_owned(),
            },
        ),
        Remedy::Answer(entry) => {
            let questions = state.questions().iter();
            let question = questions.clone().find(|q| q.entry == entry);
            let answers = question.map(|q| {
                let (_, said) = text::question(q, state.into());
                said.into_iter()
                    .zip(q.ask.choices().iter().copied())
                    .map(|(said, choice)| {
                        view! {
                            <button type="button" class="button small"
                                on:click=move |_| {
                                    let choice = choice.to_owned();
                                    session.submit(Kind::Answer { entry, choice });
                                }
                            >
                                {said}
                            </button>
                        }
                    })
                    .collect_view()
            });
            view! { <div class="row">{answers}</div> }.into_any()
        }
        // These have lines of their own, or are decided.
        Remedy::Sign(_) | Remedy::Stands => ().into_any(),
    }
}
