//! A paper sheet, keyed in as fast as it can be read: digits fill a box and the next one comes by itself;
//! Enter ends a box, and in the empty box at the end of a list leads on; Backspace in an empty box leads
//! back. What cannot be is said beside its box at once, and every key is kept.

use leptos::ev::KeyboardEvent;
use leptos::prelude::*;

use super::papers::{paper, put_paper};
use super::work::Work;
use super::{button, hand_over};
use crate::macrotask_executor::once_drawn;
use crate::memo::Memo;
use crate::widgets::deferred::after_the_frame;
use crate::widgets::team_mark::TeamMark;
use app::desk::known_list as known_list_of;
use reports::paper::{self, Cell, Draft, Mark, Part};
use rules::{Preset, Shirt, Team};
use text::desk as words;
use text::desk_work as more;
use text::score_sheet::roman;

/// The presets a paper sheet can be of.
const PRESETS: [Preset; 3] = [
    Preset::SchoolJunior,
    Preset::SchoolSenior,
    Preset::International,
];

/// The id of the list of known teams.
const KNOWN_TEAMS: &str = "known-teams";

/// The form. Copies are the same.
#[derive(Clone, Copy)]
struct Form {
    work: Work,
    id: StoredValue<String>,
    draft: RwSignal<Draft>,
    marks: RwSignal<Vec<Mark>>,
    /// The order of the rallies of the shown set, as letters.
    order: RwSignal<String>,
    /// The part of the sheet that shows.
    shown: RwSignal<u8>,
    /// Whether everything is said, and not only what can be said already.
    all: RwSignal<bool>,
    not_kept: RwSignal<bool>,
}

/// The screen.
pub fn form(work: Work, id: &str) -> AnyView {
    let Some(draft) = paper(id) else {
        return super::not_here();
    };
    let blank = draft.is_blank();
    let form = Form {
        work,
        id: StoredValue::new(id.to_owned()),
        all: RwSignal::new(!blank),
        draft: RwSignal::new(draft),
        marks: RwSignal::new(Vec::new()),
        order: RwSignal::new(String::new()),
        shown: RwSignal::new(u8::from(!blank)),
        not_kept: RwSignal::new(false),
    };
    Effect::new(move |_| form.check());
    // The first key belongs to the first box; a new screen leads to its heading with its first frame.
    let first = form
        .draft
        .with_untracked(|d| d.cells(form.shown.get_untracked()).first().copied());
    if let Some(first) = first {
        after_the_frame(move || {
            device::focus_on(&first.key());
        });
    }
    view! {
        <div class="desk keying stack">
            {move || form.not_kept.get().then(|| view! {
                <p class="sentence bad" role="alert">{words::not_kept()}</p>
            })}
            <nav class="row" aria-label=words::parts()>{move || tabs(form)}</nav>
            {move || part(form)}
            {move || marks_of_all(form)}
            <div class="row">
                {button(words::check_all(), "button", Box::new(move || form.all.set(true)))}
                {button(words::export_paper(), "button", Box::new(move || form.export()))}
            </div>
            <p class="muted">{words::keys()}</p>
        </div>
    }
    .into_any()
}

impl Form {
    fn check(self) {
        let shown = self.shown.get();
        let all = self.all.get();
        let checkup = self.draft.read().check(all);
        self.marks.set(checkup.marks);
        let set = usize::from(shown).checked_sub(1);
        let order = set.and_then(|set| checkup.checked.rallies.get(set));
        let order: String = order.into_iter().flatten().map(|t| t.letter()).collect();
        self.order.set(order);
    }

    fn keep(self) {
        let kept = self
            .id
            .with_value(|id| put_paper(id, &self.draft.read_untracked()));
        self.not_kept.set(!kept);
    }

    /// A key changed the text of a box.
    fn typed(self, cell: Cell, text: &str) {
        let longer = self
            .draft
            .with_untracked(|d| text.chars().count() > d.get(cell).chars().count());
        self.draft.update(|draft| draft.set(cell, text));
        self.keep();
        if longer && self.draft.with_untracked(|d| d.is_full(cell)) {
            self.advance(cell);
        }
    }

    fn key(self, cell: Cell, event: &KeyboardEvent) {
        match event.key().as_str() {
            "Enter" => {
                event.prevent_default();
                self.advance(cell);
            }
            " " if !cell.part.is_words() => {
                event.prevent_default();
                self.advance(cell);
            }
            "Backspace" if self.draft.with_untracked(|d| d.get(cell).is_empty()) => {
                if let Some(before) = self.draft.with_untracked(|d| d.previous(cell)) {
                    event.prevent_default();
                    focus(before);
                }
            }
            _ => {}
        }
    }

    /// To the next box; after the last one of a part, to the next part.
    fn advance(self, cell: Cell) {
        if let Some(next) = self.draft.with_untracked(|d| d.next(cell)) {
            focus(next);
            return;
        }
        let next = self.draft.with_untracked(|d| match cell.set {
            // After the last box of all everything is checked.
            Cell::RESULT => None,
            set if d.is_decided_after(set) => Some(Cell::RESULT),
            set => Some(set + 1),
        });
        match next {
            Some(next) => self.show(next),
            None => {
                self.all.set(true);
                once_drawn(|| {
                    device::focus_on("marks");
                });
            }
        }
    }

    fn show(self, set: u8) {
        self.shown.set(set);
        if let Some(first) = self.draft.with_untracked(|d| d.cells(set).first().copied()) {
            focus(first);
        }
    }

    fn export(self) {
        let sheet = self.draft.with_untracked(|d| d.check(true).sheet);
        hand_over("paper-sheet.json", "application/json", paper::write(&sheet));
    }
}

/// Puts the cursor into a box, once it is drawn: whoever types is quicker than the next turn, and each figure
/// must find its box open.
fn focus(cell: Cell) {
    once_drawn(move || {
        device::focus_on(&cell.key());
    });
}

fn tabs(form: Form) -> AnyView {
    let (last, done) = form
        .draft
        .with(|d| (d.sets().max(1), d.rules.sets_at_most()));
    let more = form
        .draft
        .with(|d| !d.is_decided_after(last) && last < done);
    let mut parts: Vec<u8> = (Cell::HEAD..=last + u8::from(more)).collect();
    parts.push(Cell::RESULT);
    parts
        .into_iter()
        .map(|set| {
            let wrong = move || form.marks.read().iter().any(|m| m.cell.set == set);
            view! {
                <button
                    type="button"
                    class="button"
                    class:found=wrong
                    aria-pressed=move || (form.shown.get() == set).to_string()
                    on:click=move |_| form.show(set)
                >
                    {words::part_of_sheet(set)}
                </button>
            }
        })
        .collect_view()
        .into_any()
}

/// The boxes of the part that shows.
fn part(form: Form) -> AnyView {
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

fn rules(form: Form) -> AnyView {
    let buttons = PRESETS.map(|preset| {
        let chosen = move || form.draft.read().rules.preset == preset;
        let choose = move |_| {
            form.draft.update(|d| d.rules = preset.rules());
            form.keep();
        };
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
fn known_teams(form: Form) -> AnyView {
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
fn known_list(form: Form, team: Team) -> AnyView {
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
        let take = move || {
            form.draft
                .update(|draft| draft.take_list(team, &players, &liberos));
            form.keep();
        };
        Some(button(say, "button", Box::new(take)))
    })
    .into_any()
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

fn says(cell: Cell) -> String {
    format!("says-{}", cell.key())
}

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

/// How much is marked on the whole sheet, with a way to each.
fn marks_of_all(form: Form) -> AnyView {
    let marks = form.marks.read();
    let all = form.all.get();
    let ways = marks
        .iter()
        .map(|m| {
            let cell = m.cell;
            let name = form.draft.with_untracked(|d| words::where_is(cell, d));
            let to = move || {
                form.shown.set(cell.set);
                focus(cell);
            };
            view! { <li>{button(name, "button quiet", Box::new(to))}</li> }
        })
        .collect_view();
    view! {
        <section class="stack" aria-live="polite">
            <p id="marks" tabindex="-1" class:mark-ok=marks.is_empty() && all>
                {words::marks(marks.len(), all)}
            </p>
            <ul class="row">{ways}</ul>
        </section>
    }
    .into_any()
}
