//! The head of a paper sheet: its rules, and the teams and lists that the records on the desk know already.

use leptos::prelude::*;

use super::Form;
use crate::desk::button;
use crate::memo::Memo;
use app::desk::known_list as known_list_of;
use reports::paper::{Cell, Part};
use rules::{Preset, Shirt, Team};
use text::desk_work as more;

/// The presets a paper sheet can be of.
const PRESETS: [Preset; 3] = [
    Preset::SchoolJunior,
    Preset::SchoolSenior,
    Preset::International,
];

/// The id of the list of known teams.
pub(super) const KNOWN_TEAMS: &str = "known-teams";

/// By which rules the match was played.
pub(super) fn rules(form: Form) -> AnyView {
    let buttons = PRESETS.map(|preset| {
        let chosen = move || form.draft.read().rules.preset == preset;
        let choose = move |_| form.change(|draft| draft.rules = preset.rules());
        view! {
            <button
                type="button"
                class="button"
                aria-pressed=move || chosen().to_string()
                on:click=choose
            >
                {text::setup::preset(preset)}
            </button>
        }
    });
    view! {
        <fieldset>
            <legend>{text::setup::rules()}</legend>
            <div class="row">{buttons}</div>
        </fieldset>
    }
    .into_any()
}

/// The teams of the records on the desk, to be chosen instead of typed.
pub(super) fn known_teams(form: Form) -> AnyView {
    let names = move || {
        let rows = form.work.desk.rows().unwrap_or_default();
        let names = rows.iter().filter_map(|row| row.line.as_ref());
        let mut names: Vec<String> = names
            .flat_map(|line| [line.teams.a.clone(), line.teams.b.clone()])
            .filter(|name| !name.is_empty())
            .collect();
        names.sort_unstable();
        names.dedup();
        let options = names
            .into_iter()
            .map(|name| view! { <option value=name></option> });
        options.collect_view()
    };
    view! { <datalist id=KNOWN_TEAMS aria-label=more::known_teams()>{names}</datalist> }.into_any()
}

/// The way to take the list of a team from its latest record, as long as none was keyed in.
pub(super) fn known_list(form: Form, team: Team) -> AnyView {
    let work = form.work;
    let known = RwSignal::new(None::<(Vec<Shirt>, Vec<Shirt>)>);
    let of = Memo::new(move |_| {
        let rows = work.desk.rows().unwrap_or_default();
        known_list_of(&rows, form.draft.read().name(team))
    });
    Effect::new(move |_| {
        known.set(None);
        if let Some((id, other)) = of.get() {
            device::spawn(async move {
                let kept = work.library.read(&id).await;
                let list = kept.state().team(other).list.clone();
                // The screen may be gone by now.
                known.try_set(list.map(|list| {
                    let numbers = |libero: bool| {
                        let players = list.players.iter().filter(|p| p.libero || !libero);
                        players.map(|player| player.number).collect::<Vec<_>>()
                    };
                    (numbers(false), numbers(true))
                }));
            });
        }
    });
    let is_empty = move || {
        let draft = form.draft.read();
        let of_list = |c: &Cell| c.part == Part::List && c.team == team;
        let mut cells = draft.cells(Cell::HEAD).into_iter().filter(of_list);
        cells.all(|cell| draft.get(cell).is_empty())
    };
    (move || {
        let (players, liberos) = known
            .get()
            .filter(|(players, _)| !players.is_empty() && is_empty())?;
        let say = more::take_list(form.draft.read().name(team), players.len());
        let take = move || form.change(|draft| draft.take_list(team, &players, &liberos));
        Some(button(say, "button", Box::new(take)))
    })
    .into_any()
}
