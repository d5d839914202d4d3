//! The logbook as it goes to paper, which no screen shows.

use leptos::prelude::*;

use super::Open;
use text::learn as words;

/// All matches as a table, the goals, and a line to sign on.
pub(super) fn paper(open: Open) -> AnyView {
    let row = |one: &record::Officiated| {
        let said = [&one.talk, &one.next].map(String::as_str);
        let said: Vec<&str> = said.into_iter().filter(|said| !said.is_empty()).collect();
        view! {
            <tr>
                <td>{one.day.as_str().to_owned()}</td>
                <td>{words::duty(one.duty)}</td>
                <td>{one.level.clone()}</td>
                <td>{one.teams.clone()}</td>
                <td class="tabular">{one.minutes}</td>
                <td>{said.join(" / ")}</td>
            </tr>
        }
    };
    let all = move || {
        let logbook = open.logbook.read();
        let heads = words::logbook_columns().map(|name| view! { <th scope="col">{name}</th> });
        let goals = logbook.goals().iter().map(|goal| {
            let far = words::progress(goal, logbook.progress(goal));
            view! { <li>{words::goal(goal)} ": " {far}</li> }
        });
        view! {
            <h1>{words::logbook()}</h1>
            <p>{words::by_duty(&logbook.by_duty())}</p>
            <table>
                <thead>
                    <tr>{heads.into_iter().collect_view()}</tr>
                </thead>
                <tbody>{logbook.matches().iter().map(row).collect_view()}</tbody>
            </table>
            <ul>{goals.collect_view()}</ul>
            <p class="sign-off">{words::signed_off()}</p>
        }
    };
    view! { <div class="logbook-paper">{all}</div> }.into_any()
}
