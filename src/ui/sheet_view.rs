//! The sheet of the match: to read on the phone, to print on one page, to hand over.

mod words;

use leptos::prelude::*;

use super::before::time_of;
use super::session::use_session;
use super::start::export;
use super::text;
use crate::device::print_page;
use crate::game::entry::Heading;
use crate::game::{PointFor, State};
use crate::rules::{ByTeam, Shirt, Team};
use crate::sheet::{PointMark, ResultBox, Round, SetSheet, Sheet, TeamBlock};

/// The sheet of the match, to read, print and export.
#[component]
pub fn SheetScreen() -> impl IntoView {
    let session = use_session();
    let cannot_print = RwSignal::new(false);
    let print = move |_| cannot_print.set(!print_page());
    let hand_over = move |_| export(session.log(), &session.state_now());
    view! {
        <div class="sheet stack">
            <div class="row sheet-tools">
                <button id="print-sheet" type="button" class="button" on:click=print>
                    {words::PRINT}
                </button>
                <button id="export-sheet" type="button" class="button" on:click=hand_over>
                    {words::EXPORT}
                </button>
            </div>
            {move || cannot_print.get().then(|| view! {
                <p class="sentence bad" role="alert">{words::CANNOT_PRINT}</p>
            })}
            {move || {
                let sheet = session.with_replay(Sheet::of);
                paper(&sheet, &session.state())
            }}
        </div>
    }
}

/// Everything that is printed.
fn paper(sheet: &Sheet, state: &State) -> AnyView {
    let names = ByTeam::new(|team| text::team_name(state, team));
    let remarks = sheet
        .remarks
        .iter()
        .map(|line| {
            view! {
                <li>
                    <span class="sheet-at tabular">{words::remark_at(line.set, line.score)}</span>
                    " "
                    {line.text.clone()}
                </li>
            }
        })
        .collect_view();
    let sanctions = sheet
        .sanctions
        .iter()
        .map(|s| view! { <li>{words::sanction(s, &names[s.team])}</li> })
        .collect_view();
    let noted = !sheet.sanctions.is_empty() || !sheet.remarks.is_empty();
    view! {
        <article class="paper stack">
            {head(sheet.heading.as_ref(), &names)}
            {result(&sheet.result, &sheet.sets, &names)}
            {sheet.sets.is_empty().then(|| view! { <p>{words::NOTHING_PLAYED}</p> })}
            {sheet.sets.iter().map(|set| one_set(set, &names)).collect_view()}
            {noted.then(|| view! {
                <div class="sheet-notes stack">
                    {(!sheet.sanctions.is_empty()).then(|| view! {
                        <section class="sheet-part">
                            <h2>{words::SANCTIONS}</h2>
                            <ul class="lines">{sanctions}</ul>
                        </section>
                    })}
                    {(!sheet.remarks.is_empty()).then(|| view! {
                        <section class="sheet-part">
                            <h2>{words::REMARKS}</h2>
                            <ul class="lines">{remarks}</ul>
                        </section>
                    })}
                </div>
            })}
            {players(&sheet.teams, &names)}
            {signatures(sheet)}
        </article>
    }
    .into_any()
}

/// The match and the teams.
fn head(heading: Option<&Heading>, names: &ByTeam<String>) -> AnyView {
    let about = heading
        .map(|h| {
            [
                &h.competition,
                &h.division,
                &h.match_no,
                &h.venue,
                &h.court,
                &h.scheduled,
            ]
            .into_iter()
            .filter_map(|part| part.as_deref())
            .filter(|part| !part.is_empty())
            .map(|part| part.replace('T', " "))
            .collect::<Vec<_>>()
            .join(", ")
        })
        .filter(|about| !about.is_empty());
    view! {
        <header class="sheet-head">
            <p class="sheet-teams">
                <span>{team_mark(Team::A)} <span>{names.a.clone()}</span></span>
                <span>{team_mark(Team::B)} <span>{names.b.clone()}</span></span>
            </p>
            {about.map(|about| view! { <p class="muted">{about}</p> })}
        </header>
    }
    .into_any()
}

fn team_mark(team: Team) -> AnyView {
    view! { <super::part::team_mark::TeamMark team /> }.into_any()
}

/// The results box.
fn result(result: &ResultBox, sets: &[SetSheet], names: &ByTeam<String>) -> AnyView {
    let outcome = match (result.winner, result.ended) {
        (Some(winner), how) => {
            let mut words = words::won_by(&names[winner], result.sets, winner);
            if let Some(how) = how.and_then(words::how) {
                words.push_str(", ");
                words.push_str(how);
            }
            words
        }
        (None, Some(_)) => words::LEVEL_END.to_owned(),
        (None, None) => words::NOT_OVER.to_owned(),
    };
    let row = |set: &SetSheet| {
        let winner = set.won.map(|(team, _)| team);
        let cell = |team: Team| {
            let points = set.score[team].to_string();
            view! { <td class:won=winner == Some(team)>{points}</td> }
        };
        let count = |team: Team| set.time_outs.iter().filter(|t| t.team == team).count();
        let subs = |team: Team| set.substitutions.iter().filter(|s| s.team == team).count();
        let minutes = set.minutes().map(|m| m.to_string()).unwrap_or_default();
        view! {
            <tr>
                <th scope="row">{set.number.to_string()}</th>
                {cell(Team::A)}
                {cell(Team::B)}
                <td>{minutes}</td>
                <td>{format!("{} / {}", count(Team::A), count(Team::B))}</td>
                <td>{format!("{} / {}", subs(Team::A), subs(Team::B))}</td>
            </tr>
        }
    };
    let minutes = result.minutes.map(|m| m.to_string()).unwrap_or_default();
    view! {
        <section class="sheet-part sheet-result">
            <h2 id="outcome" class="outcome">{outcome}</h2>
            <div class="sheet-scrolls" tabindex="0" role="group" aria-label=words::RESULT>
            <table class="sheet-table tabular">
                <thead>
                    <tr>
                        <th scope="col">{words::SET}</th>
                        <th scope="col">"A"</th>
                        <th scope="col">"B"</th>
                        <th scope="col">{words::MINUTES}</th>
                        <th scope="col">{words::TIME_OUTS}</th>
                        <th scope="col">
                            <span aria-hidden="true">{words::SUBSTITUTIONS_SHORT}</span>
                            <span class="visually-hidden">{words::SUBSTITUTIONS}</span>
                        </th>
                    </tr>
                </thead>
                <tbody>{sets.iter().map(row).collect_view()}</tbody>
                <tfoot>
                    <tr>
                        <th scope="row">{words::TOTAL}</th>
                        <td>{result.points.a.to_string()}</td>
                        <td>{result.points.b.to_string()}</td>
                        <td>{minutes}</td>
                        <td>{format!("{} / {}", result.time_outs.a, result.time_outs.b)}</td>
                        <td>{format!("{} / {}", result.substitutions.a, result.substitutions.b)}</td>
                    </tr>
                </tfoot>
            </table>
            </div>
        </section>
    }
    .into_any()
}

/// One set: who started where, who served how long, every point, every interruption.
fn one_set(set: &SetSheet, names: &ByTeam<String>) -> AnyView {
    let began = set.began.map(time_of);
    let ended = set.ended.map(time_of);
    let times = words::times(began.as_deref(), ended.as_deref(), set.minutes());
    let name = |team: Team| names[team].as_str();
    let opening = words::opening(set.first_service.map(name), set.left.map(name));
    let how = set.won.and_then(|(_, how)| words::how(how));
    view! {
        <section class="sheet-part sheet-set">
            <div class="sheet-set-head">
                <h2>
                    {words::set_heading(set.number)} " "
                    <span class="tabular">{words::score(set.score)}</span>
                </h2>
                <p class="muted">{opening}</p>
                <p class="muted tabular">{times} {how.map(|how| format!(", {how}"))}</p>
            </div>
            <div class="sheet-sides">
                {Team::BOTH.map(|team| side(set, team, &names[team])).collect_view()}
            </div>
            {(!set.running.is_empty()).then(|| running(&set.running, names))}
        </section>
    }
    .into_any()
}

/// One team's half of a set.
fn side(set: &SetSheet, team: Team, name: &str) -> AnyView {
    let line_up = &set.line_ups[team];
    let rounds = set.rounds[team].iter().map(round).collect_view();
    let own = |of: Team| of == team;
    let time_outs: Vec<String> = set
        .time_outs
        .iter()
        .filter(|t| own(t.team))
        .map(|t| words::own_first(t.score, team))
        .collect();
    let substitutions: Vec<String> = set
        .substitutions
        .iter()
        .filter(|s| own(s.team))
        .map(|s| {
            let change = words::change(s.change.out, s.change.into);
            let at = words::own_first(s.score, team);
            if s.exceptional {
                format!("{change} {at} ({})", words::EXCEPTIONAL)
            } else {
                format!("{change} {at}")
            }
        })
        .collect();
    let liberos: Vec<String> = set
        .liberos
        .iter()
        .filter(|r| own(r.team))
        .map(|r| {
            let change = words::change(r.change.out, r.change.into);
            format!("{change} {}", words::own_first(r.score, team))
        })
        .collect();
    let class = match team {
        Team::A => "sheet-side team-a",
        Team::B => "sheet-side team-b",
    };
    view! {
        <div class=class>
            <h3>{team_mark(team)} <span>{name.to_owned()}</span></h3>
            {(!line_up.is_empty()).then(|| starters(line_up))}
            <h4>{words::SERVICE_ROUNDS}</h4>
            <ol class="rounds tabular">{rounds}</ol>
            {listed(words::TIME_OUTS, &time_outs)}
            {listed(words::SUBSTITUTIONS, &substitutions)}
            {listed(words::LIBEROS, &liberos)}
        </div>
    }
    .into_any()
}

fn listed(heading: &'static str, lines: &[String]) -> Option<AnyView> {
    (!lines.is_empty()).then(|| {
        view! {
            <p class="listed tabular">
                <span class="listed-what">{heading}": "</span>
                {lines.join(", ")}
            </p>
        }
        .into_any()
    })
}

/// The line-up in the order of the places.
fn starters(line_up: &[Shirt]) -> AnyView {
    let cells = line_up
        .iter()
        .enumerate()
        .map(|(i, shirt)| {
            view! {
                <li>
                    <span class="place-number">{super::text_before::roman(i + 1)}</span>
                    " "
                    <strong>{shirt.to_string()}</strong>
                </li>
            }
        })
        .collect_view();
    view! {
        <h4>{words::LINE_UP}</h4>
        <ol class="starters tabular">{cells}</ol>
    }
    .into_any()
}

fn round(round: &Round) -> AnyView {
    let server = round.server.map(|s| s.to_string());
    view! {
        <li>
            <span class="visually-hidden">{words::round(round.server, round.total)}</span>
            <span class="round-server" aria-hidden="true">{server}</span>
            <span class="round-total" aria-hidden="true">{round.total.to_string()}</span>
        </li>
    }
    .into_any()
}

/// Every point in its order, A's above, B's below.
fn running(points: &[PointMark], names: &ByTeam<String>) -> AnyView {
    let last = |team: Team| {
        let total = points.iter().rev().filter(|p| p.team == team);
        total.filter_map(|p| p.total).next().unwrap_or_default()
    };
    let marked = points
        .iter()
        .any(|p| p.given_for != PointFor::Rally || p.cancelled_by.is_some());
    let label = format!(
        "{}, {}",
        words::running(&names.a, last(Team::A)),
        words::running(&names.b, last(Team::B))
    );
    // A cancelled point shows the total it would have made.
    let mut stood = ByTeam::<u16>::default();
    let cells = points
        .iter()
        .map(|point| {
            let shown = match point.total {
                Some(total) => {
                    stood[point.team] = total;
                    total
                }
                None => stood[point.team] + 1,
            };
            let mut class = match point.team {
                Team::A => "point of-a".to_owned(),
                Team::B => "point of-b".to_owned(),
            };
            if point.given_for != PointFor::Rally {
                class.push_str(" penalty");
            }
            if point.cancelled_by.is_some() {
                class.push_str(" cancelled");
            }
            view! { <span class=class><span>{shown.to_string()}</span></span> }
        })
        .collect_view();
    view! {
        <h4 class="on-screen">{words::RUNNING_SCORE}</h4>
        <div class="running-score tabular" role="img" aria-label=label>{cells}</div>
        {marked.then(|| view! { <p class="muted">{words::RUNNING_KEY}</p> })}
    }
    .into_any()
}

/// Who was on the lists.
fn players(teams: &ByTeam<TeamBlock>, names: &ByTeam<String>) -> Option<AnyView> {
    let any = Team::BOTH.iter().any(|&t| !teams[t].players.is_empty());
    any.then(|| {
        let one = |team: Team| {
            let block = &teams[team];
            let players: Vec<String> = block
                .players
                .iter()
                .map(|player| {
                    let mut words = super::text_before::player(player);
                    if let Some(name) = &player.name {
                        words.push(' ');
                        words.push_str(name);
                    }
                    words
                })
                .collect();
            let staff: Vec<String> = block
                .staff
                .iter()
                .map(|s| match &s.name {
                    Some(name) => format!("{}: {name}", super::text_before::staff(&s.role)),
                    None => super::text_before::staff(&s.role).to_owned(),
                })
                .collect();
            let all = players.into_iter().chain(staff).collect::<Vec<_>>();
            view! {
                <p>
                    {team_mark(team)}
                    " "
                    <strong>{names[team].clone()}</strong>
                    ": "
                    <span class="tabular">{all.join(", ")}</span>
                </p>
            }
        };
        view! {
            <section class="sheet-part sheet-players">
                <h2>{words::PLAYERS}</h2>
                {Team::BOTH.map(one).collect_view()}
            </section>
        }
        .into_any()
    })
}

/// Signatures in the record, and lines for the pen on paper.
fn signatures(sheet: &Sheet) -> AnyView {
    let given = sheet
        .signatures
        .iter()
        .map(|s| {
            let words = match &s.name {
                Some(name) => format!("{}: {name}", s.role),
                None => s.role.clone(),
            };
            view! { <li>{words}</li> }
        })
        .collect_view();
    let lines = words::SIGNERS
        .map(|who| view! { <li class="pen-line">{who}</li> })
        .collect_view();
    view! {
        <section class="sheet-part signatures">
            <h2>{words::SIGNATURES}</h2>
            {if sheet.signatures.is_empty() {
                view! { <p class="muted on-screen">{words::NONE}</p> }.into_any()
            } else {
                view! { <ul class="lines">{given}</ul> }.into_any()
            }}
            <ul class="pen-lines">{lines}</ul>
        </section>
    }
    .into_any()
}
