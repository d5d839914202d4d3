//! Everything on the desk, to be chosen from.

use leptos::prelude::*;

use super::items::{kind_of, of_all, Item, Source};
use super::papers::put_paper;
use super::{button, day, intake, save, table, way, DemoDay, Place};
use crate::desk_store::{DeskStore, PAPERS, POOLS};
use crate::shell::{use_shell, Screen};
use crate::start::{Also, Import, Library};
use render::list::csv;
use reports::list::Line;
use reports::one_match::instead;
use reports::paper::Draft;
use reports::standings::Doubt;
use reports::WallClock;
use rules::Preset;
use text::desk as words;

const CHOSEN: &str = "desk/chosen";

/// What was chosen last.
pub fn chosen() -> Vec<String> {
    let kept = device::setting(CHOSEN).unwrap_or_default();
    kept.lines().map(str::to_owned).collect()
}

/// Chooses these; without storage the choice lasts as long as the screen.
pub fn choose(ids: &[String]) {
    let _ = device::set_setting(CHOSEN, &ids.join("\n"));
}

/// Something that was deleted last, to be given back.
#[derive(Clone)]
struct Deleted {
    store: &'static DeskStore,
    id: String,
    title: String,
    text: String,
}

/// The list. Copies are the same.
#[derive(Clone, Copy)]
struct Desk {
    library: Library,
    chosen: RwSignal<Vec<String>>,
    deleted: RwSignal<Option<Deleted>>,
    /// Why what was asked for cannot be done with what is chosen.
    refused: RwSignal<Option<&'static str>>,
}

/// The screen.
pub fn list() -> AnyView {
    let desk = Desk {
        library: Library::begin_whole(),
        chosen: RwSignal::new(chosen()),
        deleted: RwSignal::new(None),
        refused: RwSignal::new(None),
    };
    Effect::new(move |_| {
        choose(&desk.chosen.read());
        desk.refused.set(None);
    });
    let shell = use_shell();
    let key_in = move || {
        let id = device::new_id();
        put_paper(&id, &Draft::new(Preset::SchoolJunior));
        shell.go(Screen::Desk(Place::Paper(id)));
    };
    let library = desk.library;
    let also: Also = intake::take_in;
    view! {
        <div class="desk stack">
            <div class="desk-in">
                <Import library also=also />
                <section class="stack">
                    <h2>{words::from_paper()}</h2>
                    {button(words::key_in(), "button", Box::new(key_in))}
                    <p class="muted">{words::key_in_more()}</p>
                </section>
                <section class="stack">
                    <h2>{words::look_around()}</h2>
                    <DemoDay library />
                </section>
            </div>
            {move || given_back(desk)}
            {of_all(library, move |items| groups(desk, &items))}
        </div>
    }
    .into_any()
}

/// What was deleted last, with the way back.
fn given_back(desk: Desk) -> Option<AnyView> {
    let Deleted {
        store,
        id,
        title,
        text,
    } = desk.deleted.get()?;
    let back = move || {
        store.put(&id, &text);
        desk.deleted.set(None);
        desk.library.refresh();
    };
    Some(
        view! {
            <div class="sentence row" role="status" id="desk-deleted">
                <p>{words::deleted(&title)}</p>
                {button(words::give_back(), "button", Box::new(back))}
            </div>
        }
        .into_any(),
    )
}

fn groups(desk: Desk, items: &[Item]) -> AnyView {
    // What is gone cannot be chosen any more.
    let gone = |id: &String| !items.iter().any(|i| &i.id == id);
    if desk.chosen.read_untracked().iter().any(gone) {
        desk.chosen.update(|c| c.retain(|id| !gone(id)));
    }
    if items.is_empty() {
        return view! { <p class="card">{words::nothing_here()}</p> }.into_any();
    }
    let mut groups: Vec<&str> = items.iter().map(|i| i.group.as_str()).collect();
    groups.sort_unstable();
    groups.dedup();
    let groups = groups
        .into_iter()
        .map(|group| {
            let of: Vec<&Item> = items.iter().filter(|i| i.group == group).collect();
            one_group(desk, group, &of)
        })
        .collect_view();
    view! {
        {day::tour(items)}
        {groups}
        {tools(desk, items)}
    }
    .into_any()
}

/// What can be done with the chosen ones.
fn tools(desk: Desk, items: &[Item]) -> AnyView {
    let shell = use_shell();
    let Desk {
        chosen, refused, ..
    } = desk;
    let pools: Vec<String> = items
        .iter()
        .filter(|i| matches!(i.source, Source::Pool(_)))
        .map(|i| i.id.clone())
        .collect();
    let compare = move |_| match &chosen.get_untracked()[..] {
        [first, second] if !pools.iter().any(|p| p == first || p == second) => {
            shell.go(Screen::Desk(Place::Compare(first.clone(), second.clone())));
        }
        _ => refused.set(Some(words::choose_two())),
    };
    let table = move |_| {
        if chosen.read_untracked().is_empty() {
            refused.set(Some(words::choose_some()));
        } else {
            shell.go(Screen::Desk(Place::Table));
        }
    };
    let lines: Vec<(String, Line)> = items
        .iter()
        .filter_map(|item| Some((item.id.clone(), item.line.clone()?)))
        .collect();
    // The clock of the hall: this phone's, on the day of the first match that has a time.
    let last_at = lines.iter().find_map(|(_, line)| line.last_at);
    let hall = WallClock(last_at.map_or(0, device::offset_minutes));
    let spreadsheet = move |_| save("desk.csv", csv(&lines, hall));
    view! {
        <div class="row">
            <button type="button" class="button" id="desk-csv" on:click=spreadsheet>
                {words::list_csv()}
            </button>
        </div>
        <div class="desk-tools" role="group" aria-label=words::chosen()>
            <p role="status" class="desk-refused" id="desk-refused">
                {move || {
                    let chosen = chosen.read().len();
                    let needs = match chosen {
                        0 => Some(words::choose_some()),
                        1 => Some(words::choose_two()),
                        _ => None,
                    };
                    refused.get().or(needs)
                }}
            </p>
            <p id="desk-chosen">{move || words::how_many_chosen(chosen.read().len())}</p>
            <button
                type="button"
                class="button"
                id="desk-compare"
                class:barred=move || chosen.read().len() != 2
                on:click=compare
            >
                {words::compare_them()}
            </button>
            <button
                type="button"
                class="button"
                id="desk-table"
                class:barred=move || chosen.read().is_empty()
                on:click=table
            >
                {words::table_of_them()}
            </button>
        </div>
    }
    .into_any()
}

fn one_group(desk: Desk, group: &str, items: &[&Item]) -> AnyView {
    let matches = items.iter().filter_map(|item| {
        let played = item.line.as_ref()?.result(String::new())?;
        let known = (played.known(), played.source.evidence);
        Some((item.id.as_str(), known))
    });
    let (of, known): (Vec<&str>, Vec<_>) = matches.unzip();
    let twice = of.iter().zip(instead(&known, Some(table::kept_meetings())));
    let twice: Vec<&str> = twice
        .filter(|(_, instead)| instead.is_some())
        .map(|(id, _)| *id)
        .collect();
    let counts = |item: &&&Item| item.played().is_some() && !twice.contains(&item.id.as_str());
    let ids: Vec<String> = items.iter().filter(counts).map(|i| i.id.clone()).collect();
    let shown = items
        .iter()
        .map(|item| one(desk, item, twice.contains(&item.id.as_str())))
        .collect_view();
    let name = match group {
        "" => words::no_competition().to_owned(),
        group => group.to_owned(),
    };
    let choose_all = (!ids.is_empty()).then(|| {
        let label = words::choose_all(&name);
        let tap = move |_| desk.chosen.set(ids.clone());
        view! {
            <button type="button" class="button quiet" aria-label=label on:click=tap>
                {words::choose_all_label()}
            </button>
        }
    });
    view! {
        <section class="stack">
            <div class="desk-group">
                <h2>{name}</h2>
                {choose_all}
            </div>
            <ul class="desk-items">{shown}</ul>
        </section>
    }
    .into_any()
}

fn one(desk: Desk, item: &Item, again: bool) -> AnyView {
    let id = item.id.clone();
    let way_on = match &item.source {
        Source::Record(_) => Place::Findings(id.clone()),
        Source::Paper(_) => Place::Paper(id.clone()),
        Source::Pool(_) => Place::Pool(id.clone()),
    };
    let more = match &item.source {
        Source::Record(_) => view! {
            {way(words::review(), Screen::Review { id: id.clone() })}
            {way(text::sheet(), Screen::Sheet { id: id.clone() })}
        }
        .into_any(),
        Source::Paper(_) => delete(desk, &PAPERS, item),
        Source::Pool(_) => delete(desk, &POOLS, item),
    };
    let count = item.line.as_ref().map_or(0, |line| line.findings);
    let (say, label) = match item.source {
        Source::Pool(_) => (
            words::table().to_owned(),
            text::of_teams(words::table(), &item.title),
        ),
        _ => (
            words::to_check(count),
            words::findings_of(count, &item.title),
        ),
    };
    let shell = use_shell();
    let open = move |_| shell.go(Screen::Desk(way_on.clone()));
    view! {
        <li class="card desk-item">
            {what(desk, item, again)}
            <div class="row">
                <button
                    type="button"
                    class="button"
                    class:found=count != 0
                    aria-label=label
                    on:click=open
                >
                    {say}
                </button>
                {more}
            </div>
        </li>
    }
    .into_any()
}

/// The words of an item; those of a match can be chosen.
fn what(desk: Desk, item: &Item, again: bool) -> AnyView {
    let Some(line) = &item.line else {
        return view! {
            <p class="desk-words">
                <strong>{item.title.clone()}</strong>
                <span class="muted">{words::pool_file()}</span>
            </p>
        }
        .into_any();
    };
    let chosen = desk.chosen;
    let (of, at) = (item.id.clone(), item.id.clone());
    let is_chosen = move || chosen.read().contains(&of);
    let choose = move |_| {
        chosen.update(|all| match all.iter().position(|known| *known == at) {
            Some(place) => {
                all.remove(place);
            }
            None => all.push(at.clone()),
        });
    };
    // A seal that does not fit is what is in doubt.
    let shows_seal = !line.on_paper && line.doubt != Some(Doubt::Seal);
    let seal = shows_seal.then(|| words::seal_state(line.seal));
    view! {
        <label class="desk-choose">
            <input type="checkbox" prop:checked=is_chosen on:change=choose />
            <span class="desk-words">
                <strong>{item.title.clone()}</strong>
                <span class="tabular">{words::result_of(line)}</span>
                <span class="muted">{kind_of(line)}</span>
                {words::in_doubt(line).map(|doubt| view! { <span class="sentence warn">{doubt}</span> })}
                {again.then(|| view! { <span>{words::again()}</span> })}
                {seal.map(|seal| view! { <span class="muted">{seal}</span> })}
            </span>
        </label>
    }
    .into_any()
}

/// Deletes what lies on a shelf, and keeps it at hand to be given back.
fn delete(desk: Desk, store: &'static DeskStore, item: &Item) -> AnyView {
    let (id, title) = (item.id.clone(), item.title.clone());
    let tap = move || {
        let text = store.get(&id).unwrap_or_default();
        store.forget(&id);
        desk.deleted.set(Some(Deleted {
            store,
            id: id.clone(),
            title: title.clone(),
            text,
        }));
        desk.library.refresh();
    };
    button(
        text::of_teams(text::delete(), &item.title),
        "button quiet",
        Box::new(tap),
    )
}
