//! A paper sheet, keyed in as fast as it can be read: digits fill a box and the next one comes by itself;
//! Enter ends a box, and in the empty box at the end of a list leads on; Backspace in an empty box leads
//! back. What cannot be is said beside its box at once, and every key is kept.

mod boxes;
mod head;

use leptos::ev::KeyboardEvent;
use leptos::prelude::*;

use super::papers::paper;
use super::work::Work;
use super::{button, save_as};
use crate::macrotask_executor::once_drawn;
use crate::widgets::deferred::after_the_frame;
use boxes::part;
use reports::paper::{self, Cell, Draft, Mark};
use text::desk as words;

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
    // Whoever comes back to a sheet that is not finished goes on in its last set.
    let first = match draft.sets() {
        _ if blank => Cell::HEAD,
        last if draft.is_decided_after(last) => 1,
        last => last.max(1),
    };
    let form = Form {
        work,
        id: StoredValue::new(id.to_owned()),
        all: RwSignal::new(!blank),
        draft: RwSignal::new(draft),
        marks: RwSignal::new(Vec::new()),
        order: RwSignal::new(String::new()),
        shown: RwSignal::new(first),
        not_kept: RwSignal::new(false),
    };
    Effect::new(move |_| form.check());
    // A sheet into which nobody has written leaves no line on the desk.
    on_cleanup(move || {
        if form.draft.try_with_untracked(Draft::is_blank) == Some(true) {
            form.id.with_value(|id| work.desk.forget_paper(id));
        }
    });
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

    /// Changes the sheet as it is kept, and keeps it.
    fn change(self, change: impl FnOnce(&mut Draft)) {
        self.draft.update(|draft| {
            // Another tab may have filled in another box meanwhile.
            let kept = self.id.with_value(|id| paper(id));
            if let (false, Some(kept)) = (self.not_kept.get_untracked(), kept) {
                *draft = kept;
            }
            change(draft);
        });
        let kept = self
            .id
            .with_value(|id| self.work.desk.put_paper(id, &self.draft.read_untracked()));
        self.not_kept.set(!kept);
    }

    /// A key changed the text of a box.
    fn typed(self, cell: Cell, text: &str) {
        let longer = self
            .draft
            .with_untracked(|d| text.chars().count() > d.get(cell).chars().count());
        self.change(|draft| draft.set(cell, text));
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
        save_as("paper-sheet.json", "application/json", paper::write(&sheet));
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

/// How much is marked on the whole sheet, with a way to each.
fn marks_of_all(form: Form) -> AnyView {
    let all = form.all.get();
    // Several things may be wrong with a box.
    let mut cells: Vec<Cell> = form.marks.read().iter().map(|m| m.cell).collect();
    cells.dedup();
    let marked = cells.len();
    let ways = cells
        .into_iter()
        .map(|cell| {
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
            <p id="marks" tabindex="-1" class:mark-ok=marked == 0 && all>
                {words::marks(marked, all)}
            </p>
            <ul class="row">{ways}</ul>
        </section>
    }
    .into_any()
}
