//! Everything on the desk, to be chosen from.

use leptos::prelude::*;

use super::items::{once_read, Item, Source};
use super::{button, papers, way, words, DemoDay, Place};
use crate::device;
use crate::rules::Preset;
use crate::sheet::paper::Draft;
use crate::ui::shell::{use_shell, Screen};
use crate::ui::start::{Import, Library};
use crate::ui::text;

const CHOSEN: &str = "desk/chosen";

/// What was chosen last.
pub fn chosen() -> Vec<String> {
    let kept = device::setting(CHOSEN).unwrap_or_default();
    kept.lines().map(str::to_owned).collect()
}

/// The screen.
pub fn list() -> AnyView {
    let chosen = RwSignal::new(chosen());
    Effect::new(move |_| {
        // Without storage the choice lasts as long as the screen.
        let _ = device::set_setting(CHOSEN, &chosen.read().join("\n"));
    });
    once_read(move |library, items| desk(library, &items, chosen))
}

fn desk(library: Library, items: &[Item], chosen: RwSignal<Vec<String>>) -> AnyView {
    // What is gone cannot be chosen any more.
    chosen.update(|c| c.retain(|id| items.iter().any(|i| &i.id == id)));
    let shell = use_shell();
    let key_in = move || {
        let id = device::new_id();
        papers::put(&id, &Draft::new(Preset::SchoolJunior));
        shell.go(Screen::Desk(Place::Paper(id)));
    };
    let mut groups: Vec<&str> = items.iter().map(|i| i.group.as_str()).collect();
    groups.sort_unstable();
    groups.dedup();
    let groups = groups
        .into_iter()
        .map(|group| {
            let of: Vec<&Item> = items.iter().filter(|i| i.group == group).collect();
            one_group(library, group, &of, chosen)
        })
        .collect_view();
    view! {
        <div class="desk stack">
            <div class="desk-in">
                <Import library />
                <section class="stack">
                    <h2>{words::FROM_PAPER}</h2>
                    {button(words::KEY_IN, "button", Box::new(key_in))}
                </section>
                <section class="stack">
                    <h2>{words::LOOK_AROUND}</h2>
                    <DemoDay library />
                </section>
            </div>
            {items.is_empty().then(|| view! { <p class="card">{words::NOTHING_HERE}</p> })}
            {groups}
            {(!items.is_empty()).then(|| tools(chosen))}
        </div>
    }
    .into_any()
}

/// What can be done with the chosen ones.
fn tools(chosen: RwSignal<Vec<String>>) -> AnyView {
    let shell = use_shell();
    let compare = move |_| match &chosen.get_untracked()[..] {
        [first, second] => {
            shell.go(Screen::Desk(Place::Compare(first.clone(), second.clone())));
        }
        _ => shell.news(words::CHOOSE_TWO.to_owned()),
    };
    let table = move |_| {
        if chosen.read_untracked().is_empty() {
            shell.news(words::CHOOSE_SOME.to_owned());
        } else {
            shell.go(Screen::Desk(Place::Table));
        }
    };
    view! {
        <div class="desk-tools" role="group" aria-label=words::CHOSEN>
            <p id="desk-chosen">{move || words::how_many_chosen(chosen.read().len())}</p>
            <button
                type="button"
                class="button"
                id="desk-compare"
                aria-disabled=move || (chosen.read().len() != 2).then_some("true")
                on:click=compare
            >
                {words::COMPARE_THEM}
            </button>
            <button
                type="button"
                class="button"
                id="desk-table"
                aria-disabled=move || chosen.read().is_empty().then_some("true")
                on:click=table
            >
                {words::TABLE_OF_THEM}
            </button>
        </div>
    }
    .into_any()
}

fn one_group(
    library: Library,
    group: &str,
    items: &[&Item],
    chosen: RwSignal<Vec<String>>,
) -> AnyView {
    // Of two records of one match the first one counts.
    let mut seen: Vec<(&str, &str)> = Vec::new();
    let mut ids: Vec<String> = Vec::new();
    for item in items.iter().filter(|i| i.played.is_some()) {
        let same = (item.teams.as_str(), item.number.as_str());
        let again = !item.number.is_empty() && seen.contains(&same);
        if !again {
            seen.push(same);
            ids.push(item.id.clone());
        }
    }
    let name = match group {
        "" => words::NO_COMPETITION.to_owned(),
        group => group.to_owned(),
    };
    let choose = words::choose_all(&name);
    let choose_all = move |_| chosen.set(ids.clone());
    view! {
        <section class="stack">
            <div class="desk-group">
                <h2>{name}</h2>
                <button type="button" class="button quiet" aria-label=choose on:click=choose_all>
                    {words::CHOOSE_ALL}
                </button>
            </div>
            <ul class="desk-items">
                {items.iter().map(|item| one(library, item, chosen)).collect_view()}
            </ul>
        </section>
    }
    .into_any()
}

fn one(library: Library, item: &Item, chosen: RwSignal<Vec<String>>) -> AnyView {
    let id = item.id.clone();
    let (of, at) = (id.clone(), id.clone());
    let is_chosen = move || chosen.read().contains(&of);
    let choose = move |_| {
        chosen.update(|all| match all.iter().position(|known| *known == at) {
            Some(place) => {
                all.remove(place);
            }
            None => all.push(at.clone()),
        });
    };
    let count = item.findings();
    let findings = match item.source {
        Source::Paper(_) => Place::Paper(id.clone()),
        Source::Record(_) => Place::Findings(id.clone()),
    };
    let shell = use_shell();
    let to_findings = move |_| shell.go(Screen::Desk(findings.clone()));
    let more = match item.source {
        Source::Paper(_) => {
            let forget = id.clone();
            button(
                text::of_teams(text::DELETE, &item.teams),
                "button quiet",
                Box::new(move || {
                    papers::forget(&forget);
                    library.refresh();
                }),
            )
        }
        Source::Record(_) => view! {
            {way(words::REVIEW, Screen::Review { id: id.clone() })}
            {way(text::SHEET, Screen::Sheet { id: id.clone() })}
        }
        .into_any(),
    };
    let label = words::findings_of(count, &item.teams);
    view! {
        <li class="card desk-item">
            <label class="desk-choose">
                <input type="checkbox" prop:checked=is_chosen on:change=choose />
                <span class="desk-words">
                    <strong>{item.teams.clone()}</strong>
                    <span class="tabular">{item.result.clone()}</span>
                    <span class="muted">
                        {words::kind_of(item.is_paper(), &item.number, &item.when)}
                    </span>
                    <span class="muted">{words::sealed(item.sealed())}</span>
                </span>
            </label>
            <div class="row">
                <button
                    type="button"
                    class="button"
                    class:found=count != 0
                    aria-label=label
                    on:click=to_findings
                >
                    {words::findings(count)}
                </button>
                {more}
            </div>
        </li>
    }
    .into_any()
}
