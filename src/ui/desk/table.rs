//! The table of the chosen matches, by the competition's own rule of order.

use std::collections::BTreeMap;

use leptos::prelude::*;

use super::items::{once_read, Item};
use super::{button, list, words};
use crate::device::{self, Parcel};
use crate::sheet::standings::{
    csv, rank, say_finding, say_reason, words as criterion_words, Criterion, Pool, Standings,
};

const ORDER: &str = "desk/order";
const POINTS: &str = "desk/points";

/// How match points are given.
const SCHEMES: [&str; 4] = ["3210", "21", "20", "310"];

/// The screen.
pub fn table() -> AnyView {
    let order = RwSignal::new(kept_order());
    let points = RwSignal::new(device::setting(POINTS).unwrap_or_else(|| SCHEMES[0].to_owned()));
    once_read(move |_, items| {
        let chosen = list::chosen();
        let of = |id: &String| items.iter().find(|item| item.id == *id);
        let chosen: Vec<&Item> = chosen.iter().filter_map(of).collect();
        let open: Vec<String> = chosen
            .iter()
            .filter(|i| i.played.is_none())
            .map(|i| i.teams.clone())
            .collect();
        let results: Vec<_> = chosen.iter().filter_map(|i| i.played.clone()).collect();
        let shown = move || {
            let pool = Pool {
                rank_by: order.read().iter().filter_map(|c| criterion(c)).collect(),
                restart: true,
                match_points: match_points(&points.read()),
                default_points: None,
                rules: None,
                teams: Vec::new(),
                results: results.clone(),
            };
            standings(&pool, &rank(&pool))
        };
        view! {
            <div class="desk stack">
                {open
                    .iter()
                    .map(|teams| view! { <p class="sentence warn">{words::not_over(teams)}</p> })
                    .collect_view()}
                {shown}
                {rule(order, points)}
            </div>
        }
        .into_any()
    })
}

fn standings(pool: &Pool, table: &Standings) -> AnyView {
    if table.rows.is_empty() {
        return view! { <p class="card">{words::NO_RESULTS}</p> }.into_any();
    }
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
    let heads = words::COLUMNS
        .into_iter()
        .filter(|head| with_points || *head != words::MATCH_POINTS)
        .map(|head| view! { <th scope="col">{head}</th> })
        .collect_view();
    // The last team stands where it does for the reason of the one before it.
    let mut reasons: Vec<String> = table.rows.iter().map(say_reason).collect();
    reasons.dedup();
    let reasons = reasons
        .into_iter()
        .map(|reason| view! { <li>{reason}</li> })
        .collect_view();
    let findings = table
        .findings
        .iter()
        .map(|f| view! { <li class="card finding"><p>{say_finding(f, pool)}</p></li> })
        .collect_view();
    let parcel = Parcel {
        name: "table.csv".into(),
        mime: "text/csv".into(),
        bytes: csv(table).into_bytes(),
    };
    let save = move || {
        let parcel = parcel.clone();
        leptos::task::spawn_local(async move {
            if device::hand_over(&parcel).await.is_err() {
                // Sharing was refused or broke down; a download asks nobody.
                let _ = device::download(&parcel);
            }
        });
    };
    view! {
        <section class="card stack">
            <div class="wide" tabindex="0" role="region" aria-label=words::TABLE>
                <table class="standings tabular" id="standings">
                    <thead>
                        <tr>{heads}</tr>
                    </thead>
                    <tbody>{rows}</tbody>
                </table>
            </div>
            <h2>{words::WHY}</h2>
            <ul class="lines" id="reasons">{reasons}</ul>
            <div class="row">{button(words::CSV, "button", Box::new(save))}</div>
        </section>
        <ul class="desk-findings">{findings}</ul>
    }
    .into_any()
}

/// The rule of order, to be put together.
fn rule(order: RwSignal<Vec<String>>, points: RwSignal<String>) -> AnyView {
    let keep = move || {
        // Without storage the rule lasts as long as the screen.
        let _ = device::set_setting(ORDER, &order.read_untracked().join("\n"));
    };
    let chosen = move || {
        let all = order.get();
        let lines = all.iter().enumerate().map(|(i, code)| {
            let name = criterion(code).map_or("", criterion_words);
            let higher = (i > 0).then(|| {
                let tap = move || {
                    order.update(|all| all.swap(i - 1, i));
                    keep();
                };
                named(words::HIGHER, words::put_higher(name), Box::new(tap))
            });
            let out = (all.len() > 1).then(|| {
                let tap = move || {
                    order.update(|all| {
                        all.remove(i);
                    });
                    keep();
                };
                named(words::LEAVE_OUT, words::put_out(name), Box::new(tap))
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
        let left = Criterion::ALL
            .into_iter()
            .filter(|c| !all.iter().any(|a| a == c.code()));
        let left = left.map(|c| {
            let tap = move || {
                order.update(|all| all.push(c.code().to_owned()));
                keep();
            };
            button(words::add(criterion_words(c)), "button", Box::new(tap))
        });
        let left = left.collect_view();
        view! {
            <ol class="order" id="order">{lines}</ol>
            <div class="row">{left}</div>
        }
        .into_any()
    };
    let scheme = SCHEMES.map(|code| {
        let tap = move || {
            points.set(code.to_owned());
            let _ = device::set_setting(POINTS, code);
        };
        view! {
            <button
                type="button"
                class="button"
                aria-pressed=move || (*points.read() == code).to_string()
                on:click=move |_| tap()
            >
                {words::scheme(code)}
            </button>
        }
        .into_any()
    });
    view! {
        <section class="card stack">
            <h2>{words::RULE_OF_ORDER}</h2>
            <p class="muted">{words::RULE_OF_ORDER_MORE}</p>
            {chosen}
            <fieldset class="stack">
                <legend>{words::POINTS_FOR}</legend>
                <div class="row">{scheme}</div>
            </fieldset>
        </section>
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

fn criterion(code: &str) -> Option<Criterion> {
    Criterion::ALL.into_iter().find(|c| c.code() == code)
}

/// The order that was chosen last; before that the international one without match points, because a
/// school's are its own (public regulations of 2017 to 2021).
fn kept_order() -> Vec<String> {
    let kept = device::setting(ORDER).unwrap_or_default();
    let kept: Vec<String> = kept
        .lines()
        .filter(|code| criterion(code).is_some())
        .map(str::to_owned)
        .collect();
    if !kept.is_empty() {
        return kept;
    }
    [
        Criterion::Wins,
        Criterion::SetRatio,
        Criterion::PointRatio,
        Criterion::HeadToHead,
    ]
    .map(|c| c.code().to_owned())
    .to_vec()
}

/// Points of winner and loser for every result in sets, the closest one being that which went to the last
/// set.
fn match_points(scheme: &str) -> BTreeMap<(u8, u8), (i32, i32)> {
    let results = (1..=5).flat_map(|won| (0..=won).map(move |lost| (won, lost)));
    results
        .map(|(won, lost)| {
            let close = won - lost == 1 && won > 1;
            let given = match (scheme, won == lost) {
                (_, true) => (1, 1),
                ("21", _) => (2, 1),
                ("20", _) => (2, 0),
                ("310", _) => (3, 0),
                _ if close => (2, 1),
                _ => (3, 0),
            };
            ((won, lost), given)
        })
        .collect()
}
