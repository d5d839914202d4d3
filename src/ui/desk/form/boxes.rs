//! The boxes of one part of a paper sheet: its head, a set or the result.

use leptos::prelude::*;

use super::head::{known_list, known_teams, rules, KNOWN_TEAMS};
use super::Form;
use crate::widgets::team_mark::TeamMark;
use reports::paper::{Cell, Part};
use rules::Team;
use text::desk as words;
use text::score_sheet::roman;

/// The boxes of the part that shows.
pub(super) fn part(form: Form) -> AnyView {
    let set = form.shown.get();
    match set {
        Cell::HEAD => view! {
            <section class="card stack">
                {rules(form)}
                <div class="times">
                    {[Part::Number, Part::Day].map(|part| line(form, set, part, Team::A))}
                </div>
                {both(form, set, Part::Name)}
                {known_teams(form)}
                {Team::BOTH.map(|team| known_list(form, team))}
                {both(form, set, Part::List)}
                {move || (form.draft.read().rules.liberos > 0).then(|| both(form, set, Part::Libero))}
                {named_boxes(form, set, Part::Official, "boxes named words")}
                {named_boxes(form, set, Part::Signed, "boxes named")}
            </section>
        }
        .into_any(),
        Cell::RESULT => view! {
            <section class="card stack">
                {line(form, set, Part::Winner, Team::A)}
                {[Part::Sets, Part::AllPoints, Part::AllTimeOuts, Part::AllChanges]
                    .map(|part| both(form, set, part))}
                {line(form, set, Part::AllMinutes, Team::A)}
            </section>
        }
        .into_any(),
        _ => {
            let line_ups = form.draft.with_untracked(|d| d.rules.line_ups);
            view! {
                <section class="card stack">
                    {line(form, set, Part::First, Team::A)}
                    {line_ups.then(|| both(form, set, Part::LineUp))}
                    {both(form, set, Part::Round)}
                    <p class="muted" id="rally-order">
                        {move || words::rally_order(&form.order.read())}
                    </p>
                    {both(form, set, Part::Final)}
                    {both(form, set, Part::TimeOut)}
                    {both(form, set, Part::Change)}
                    {both(form, set, Part::Sanction)}
                    <div class="times">
                        {[Part::Start, Part::End, Part::Minutes]
                            .map(|part| line(form, set, part, Team::A))}
                    </div>
                </section>
            }
            .into_any()
        }
    }
}

/// Boxes that are nobody's, each with its name above it.
fn named_boxes(form: Form, set: u8, part: Part, class: &'static str) -> AnyView {
    let cells = form.draft.with_untracked(|draft| draft.cells(set));
    let boxes = cells
        .into_iter()
        .filter(|cell| cell.part == part)
        .map(|cell| {
            let name = form
                .draft
                .with_untracked(|draft| words::name_of(cell, draft));
            view! {
                <div class="named-box">
                    <span aria-hidden="true">{name}</span>
                    {one(form, cell)}
                </div>
            }
        });
    let boxes = boxes.collect_view();
    view! {
        <fieldset class="keyed">
            <legend>{words::part(part)}</legend>
            <div class=class>{boxes}</div>
        </fieldset>
    }
    .into_any()
}

/// The boxes of one part of the sheet, of both teams.
fn both(form: Form, set: u8, part: Part) -> AnyView {
    let letters = words::letters_of(part);
    view! {
        <fieldset class="keyed">
            <legend>{words::part(part)}</legend>
            {letters.map(|letters| view! { <p class="letters muted">{letters}</p> })}
            {Team::BOTH.map(|team| line(form, set, part, team))}
        </fieldset>
    }
    .into_any()
}

/// The boxes of one part and team, with what is said about them.
fn line(form: Form, set: u8, part: Part, team: Team) -> AnyView {
    let single = part.is_nobodys();
    let of = move |c: &Cell| c.part == part && c.team == team;
    let cells = move || {
        let cells = form.draft.read().cells(set);
        cells.into_iter().filter(of).collect::<Vec<_>>()
    };
    let said = move || {
        let marks = form.marks.read();
        let said: Vec<AnyView> = marks
            .iter()
            .filter(|m| m.cell.set == set && of(&m.cell))
            .map(|m| {
                let place = words::place_of(m.cell, &form.draft.read());
                let rule = m.rule().map(words::rule);
                view! {
                    <li id=says(m.cell) class="sentence bad">
                        {place.map(|p| view! { <strong>{p}</strong> ": " })}
                        {text::paper::mark(m, (&*form.draft.read()).into())}
                        {rule.map(|r| view! { " " <span class="muted">{r}</span> })}
                    </li>
                }
                .into_any()
            })
            .collect();
        (!said.is_empty()).then(|| view! { <ul class="said">{said}</ul> })
    };
    let head = if single {
        view! { <span class="keyed-name">{words::part(part)}</span> }.into_any()
    } else {
        view! {
            <span class="keyed-name">
                <TeamMark team />
                <span>{move || form.draft.read().name(team).to_owned()}</span>
            </span>
        }
        .into_any()
    };
    let columns = match part {
        Part::Round | Part::LineUp => "boxes sixes",
        Part::TimeOut => "boxes pairs",
        Part::Change => "boxes fives",
        Part::Sanction => "boxes fours",
        Part::Name => "boxes names",
        _ => "boxes",
    };
    view! {
        <div class="keyed-line" class:team-a=team == Team::A class:team-b=team == Team::B>
            {head}
            <div class=columns style:--columns=form.draft.with_untracked(|d| d.rules.players_on_court.to_string())>
                {matches!(part, Part::Round | Part::LineUp).then(|| columns_of(form, set, part, team))}
                <For each=cells key=|cell| cell.key() children=move |cell| one(form, cell) />
            </div>
            {said}
        </div>
    }
    .into_any()
}

/// Above the line-up and the totals of the turns: the columns of the paper, and a cross where a team has no first
/// turn.
fn columns_of(form: Form, set: u8, part: Part, team: Team) -> AnyView {
    let columns = form.draft.with_untracked(|d| d.rules.players_on_court);
    let left_out = move || match part {
        Part::Round => form.draft.read().turns_left_out(set, team),
        _ => 0,
    };
    view! {
        {(1..=columns)
            .map(|column| view! { <span class="column" aria-hidden="true">{roman(column.into())}</span> })
            .collect_view()}
        {move || (0..left_out())
            .map(|_| view! { <span class="column" aria-hidden="true">{words::no_first_turn()}</span> })
            .collect_view()}
    }
    .into_any()
}

/// The id of what is said about a box.
fn says(cell: Cell) -> String {
    format!("says-{}", cell.key())
}

/// One box.
fn one(form: Form, cell: Cell) -> AnyView {
    let first = Cell { column: 0, ..cell };
    let marked = move || form.marks.read().iter().any(|m| m.cell == first);
    let name = move || words::name_of(cell, &form.draft.read());
    let mode = if cell.takes_letters() {
        "text"
    } else {
        "numeric"
    };
    view! {
        <input
            type="text"
            id=cell.key()
            class="box"
            class:first=cell.column == 0
            list=(cell.part == Part::Name).then_some(KNOWN_TEAMS)
            inputmode=mode
            autocomplete="off"
            aria-label=name
            placeholder=words::short_column(cell)
            aria-invalid=move || marked().then_some("true")
            aria-describedby=move || marked().then(|| says(first))
            prop:value=move || form.draft.read().get(cell).to_owned()
            on:input:target=move |ev| {
                let input = ev.target();
                form.typed(cell, &input.value());
                // What does not belong there is gone again at once.
                input.set_value(form.draft.read_untracked().get(cell));
            }
            on:keydown=move |ev| form.key(cell, &ev)
        />
    }
    .into_any()
}
