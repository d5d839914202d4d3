//! The table of the chosen matches by the competition's own rule of order, or of the results of a file.

use leptos::prelude::*;

use std::sync::Arc;

use super::items::{kind_of, once_read, title_of};
use super::state::use_desk;
use super::{button, save};
use app::desk::Row;
use app::setting::Setting;
use reports::standings::{rank, Criterion, Finding, Played, Pool, Scheme, Standings, MAX_MEETINGS};
use text::desk as words;
use text::desk_work as more;
use text::standings as ranking;

/// The screen of the chosen matches.
pub fn table() -> AnyView {
    let order = RwSignal::new(kept_order());
    let scheme = device::settings()
        .get(Setting::TablePoints)
        .and_then(|code| Scheme::from_code(&code));
    let scheme = RwSignal::new(scheme.unwrap_or(Scheme::ByMargin));
    let meetings = RwSignal::new(kept_meetings());
    let desk = use_desk();
    once_read(move |rows| {
        let mut chosen = desk.chosen.with_untracked(|chosen| chosen.rows(&rows));
        chosen.retain(|row| row.line.is_some());
        let results = results(&chosen);
        let name = |row: &Row| match row.group.as_str() {
            "" => words::no_competition().to_owned(),
            group => group.to_owned(),
        };
        let mut groups: Vec<String> = chosen.iter().map(|row| name(row)).collect();
        groups.dedup();
        let heading = groups.join("; ");
        let shown = move || {
            let mut pool = scheme.get().pool(order.get(), results.clone());
            pool.meetings = Some(meetings.get());
            standings(&heading, &pool, &rank(&pool))
        };
        view! {
            <div class="desk stack">
                {shown}
                {rule(order, scheme, meetings)}
            </div>
        }
        .into_any()
    })
}

/// The table of the results of a file, by its own rule.
pub fn of_pool(pool: &Pool) -> AnyView {
    let order = pool.rank_by.iter().map(|c| {
        let name = ranking::criterion(*c);
        view! { <li>{name}</li> }
    });
    view! {
        <div class="stack">
            {standings("", pool, &rank(pool))}
            <section class="card stack">
                <h2>{words::rule_of_order()}</h2>
                <p class="muted">{words::rule_of_file()}</p>
                <ol class="numbered">{order.collect_view()}</ol>
            </section>
        </div>
    }
    .into_any()
}

/// The results of the chosen matches, each under a name that tells it from another record of its match.
fn results(chosen: &[Arc<Row>]) -> Vec<Played> {
    let result = |row: &Arc<Row>| {
        let line = row.line.as_ref()?;
        let name = format!("{} ({})", title_of(row), kind_of(line));
        let mut played = line.result(name)?;
        played.source.pool.clone_from(&row.group);
        Some(played)
    };
    chosen.iter().filter_map(result).collect()
}

fn standings(heading: &str, pool: &Pool, table: &Standings) -> AnyView {
    let with_points = pool.rank_by.contains(&Criterion::MatchPoints);
    let rows = table
        .rows
        .iter()
        .map(|row| {
            let t = &row.tally;
            view! {
                <tr>
                    <td>{row.place}</td>
                    <th scope="row">{row.team.clone()}</th>
                    <td>{t.played}</td>
                    <td>{t.wins}</td>
                    <td>{t.losses}</td>
                    {with_points.then(|| view! { <td>{t.match_points}</td> })}
                    <td>{words::pair(t.sets)}</td>
                    <td>{t.set_ratio().to_string()}</td>
                    <td>{words::pair(t.points)}</td>
                    <td>{t.point_ratio().to_string()}</td>
                </tr>
            }
        })
        .collect_view();
    let heads = words::columns()
        .into_iter()
        .filter(|head| with_points || *head != words::match_points())
        .map(|head| view! { <th scope="col">{head}</th> })
        .collect_view();
    // The last team stands where it does for the reason of the one before it.
    let mut reasons: Vec<String> = table.rows.iter().map(ranking::reason).collect();
    reasons.dedup();
    let reasons = reasons
        .into_iter()
        .map(|reason| view! { <li>{reason}</li> })
        .collect_view();
    let (doubts, findings): (Vec<&Finding>, Vec<&Finding>) =
        table.findings.iter().partition(|f| f.is_doubt());
    let doubts = (!doubts.is_empty()).then(|| {
        let doubts = doubts
            .into_iter()
            .map(|f| view! { <li class="sentence warn">{ranking::finding(f, pool)}</li> })
            .collect_view();
        view! { <ul class="stack" id="doubts">{doubts}</ul> }
    });
    let findings = findings
        .into_iter()
        .map(|f| view! { <li class="card finding"><p>{ranking::finding(f, pool)}</p></li> })
        .collect_view();
    let findings = view! { <ul class="desk-findings">{findings}</ul> };
    if pool.results.iter().all(|played| played.source.is_open) {
        return view! {
            <p class="card">{words::no_results()}</p>
            {doubts}
            {findings}
        }
        .into_any();
    }
    let table_csv = render::standings::csv(table);
    let to_file = move || save("table.csv", table_csv.clone());
    let print = move || {
        // A browser without a printer has its own menu.
        let _ = device::print_page();
    };
    view! {
        {doubts}
        <section class="card stack">
            <div class="wide" tabindex="0" role="region" aria-label=words::table()>
                <table class="standings tabular" id="standings">
                    <caption>
                        {(!heading.is_empty()).then(|| view! { <strong>{heading.to_owned()}</strong> })}
                        <span class="muted">{words::ranked_by(&pool.rank_by)}</span>
                    </caption>
                    <thead>
                        <tr>{heads}</tr>
                    </thead>
                    <tbody>{rows}</tbody>
                </table>
            </div>
            {grid(table)}
            <h2>{words::why()}</h2>
            <ul class="lines" id="reasons">{reasons}</ul>
            <div class="row no-print">
                {button(words::csv(), "button", Box::new(to_file))}
                {button(words::print(), "button", Box::new(print))}
            </div>
        </section>
        {findings}
    }
    .into_any()
}

/// Who played whom, and how.
fn grid(table: &Standings) -> AnyView {
    let heads = table.rows.iter().map(|row| {
        view! { <th scope="col">{row.team.clone()}</th> }
    });
    let heads = heads.collect_view();
    let lines = table.rows.iter().zip(&table.grid).enumerate();
    let lines = lines.map(|(at, (row, line))| {
        let cells = line.iter().enumerate().map(|(against, met)| {
            let sets: Vec<String> = met.iter().map(|sets| words::pair(*sets)).collect();
            let itself = against == at;
            let said = match (itself, sets.is_empty()) {
                (true, _) => "\u{2022}".to_owned(),
                (false, true) => "\u{2013}".to_owned(),
                (false, false) => sets.join(", "),
            };
            view! { <td class:itself=itself>{said}</td> }
        });
        let cells = cells.collect_view();
        view! {
            <tr>
                <th scope="row">{row.team.clone()}</th>
                {cells}
            </tr>
        }
    });
    let lines = lines.collect_view();
    view! {
        <h2>{more::grid()}</h2>
        <div class="wide" tabindex="0" role="region" aria-label=more::grid()>
            <table class="results-grid tabular" id="results-grid">
                <caption class="muted">{more::grid_more()}</caption>
                <thead>
                    <tr>
                        <td></td>
                        {heads}
                    </tr>
                </thead>
                <tbody>{lines}</tbody>
            </table>
        </div>
    }
    .into_any()
}

/// The rule of order, to be put together.
fn rule(
    order: RwSignal<Vec<Criterion>>,
    scheme: RwSignal<Scheme>,
    meetings: RwSignal<u8>,
) -> AnyView {
    let change = move |change: &dyn Fn(&mut Vec<Criterion>)| {
        order.update(|order| change(order));
        let codes: Vec<&str> = order.read_untracked().iter().map(|c| c.code()).collect();
        // Without storage the rule lasts as long as the screen.
        device::settings().set(Setting::TableOrder, &codes.join("\n"));
    };
    let chosen = move || {
        let all = order.get();
        let lines = all.iter().enumerate().map(|(i, criterion)| {
            let name = ranking::criterion(*criterion);
            let higher = (i > 0).then(|| {
                let tap = move || change(&|all| all.swap(i - 1, i));
                named(words::move_up(), words::put_higher(name), Box::new(tap))
            });
            let out = (all.len() > 1).then(|| {
                let tap = move || {
                    change(&|all| {
                        all.remove(i);
                    });
                };
                named(words::remove(), words::put_out(name), Box::new(tap))
            });
            view! {
                <li class="row">
                    <span class="criterion">{name}</span>
                    {higher}
                    {out}
                </li>
            }
        });
        let lines = lines.collect_view();
        let left = Criterion::ALL.into_iter().filter(|c| !all.contains(c));
        let left = left.map(|c| {
            let tap = move || change(&|all| all.push(c));
            button(words::add(ranking::criterion(c)), "button", Box::new(tap))
        });
        let left = left.collect_view();
        view! {
            <ol class="order" id="order">{lines}</ol>
            <div class="row">{left}</div>
        }
        .into_any()
    };
    let schemes = Scheme::ALL.map(|one| {
        let tap = move || {
            scheme.set(one);
            device::settings().set(Setting::TablePoints, one.code());
        };
        choice(
            ranking::scheme(one).to_owned(),
            Signal::derive(move || scheme.get() == one),
            Box::new(tap),
        )
    });
    let times = (1..=MAX_MEETINGS).map(|times| {
        let tap = move || {
            meetings.set(times);
            device::settings().set(Setting::TableMeetings, &times.to_string());
        };
        choice(
            words::times(times),
            Signal::derive(move || meetings.get() == times),
            Box::new(tap),
        )
    });
    let times = times.collect_view();
    view! {
        <section class="card stack no-print">
            <h2>{words::rule_of_order()}</h2>
            <p class="muted">{words::rule_of_order_more()}</p>
            {chosen}
            <fieldset class="stack">
                <legend>{words::points_for()}</legend>
                <div class="row">{schemes}</div>
            </fieldset>
            <fieldset class="stack">
                <legend>{words::meetings()}</legend>
                <div class="row">{times}</div>
            </fieldset>
        </section>
    }
    .into_any()
}

/// One of several, of which one holds.
fn choice(words: String, holds: Signal<bool>, tap: Box<dyn Fn()>) -> AnyView {
    view! {
        <button
            type="button"
            class="button"
            aria-pressed=move || holds.get().to_string()
            on:click=move |_| tap()
        >
            {words}
        </button>
    }
    .into_any()
}

fn named(words: &'static str, label: String, tap: Box<dyn Fn()>) -> AnyView {
    view! {
        <button type="button" class="button quiet" aria-label=label on:click=move |_| tap()>
            {words}
        </button>
    }
    .into_any()
}

/// How often two teams meet, as it was chosen last; without a choice once, as on a command line.
pub fn kept_meetings() -> u8 {
    let kept = device::settings()
        .get(Setting::TableMeetings)
        .and_then(|times| times.parse().ok());
    kept.filter(|times| (1..=MAX_MEETINGS).contains(times))
        .unwrap_or(1)
}

/// The order that was chosen last, or the usual one.
fn kept_order() -> Vec<Criterion> {
    let kept = device::settings()
        .get(Setting::TableOrder)
        .unwrap_or_default();
    let kept: Vec<Criterion> = kept.lines().filter_map(Criterion::from_code).collect();
    if kept.is_empty() {
        Criterion::USUAL.to_vec()
    } else {
        kept
    }
}
