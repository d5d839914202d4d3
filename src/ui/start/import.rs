//! Takes a match in from a file. What cannot be read is said, what is here is never overwritten.

use leptos::prelude::*;

use super::library::Library;
use crate::device::{self, Journal};
use crate::game::{Entry, Kind};
use crate::record::{self, LineWriter, Log, Reading};
use crate::ui::session::use_session;
use crate::ui::text;

/// The field, and what came of the last file.
#[component]
pub fn Import(library: Library) -> impl IntoView {
    let session = use_session();
    let said = RwSignal::new(Vec::<String>::new());
    let take = move |event: leptos::ev::Event| {
        let files = device::picked_files(&event);
        let journal = session.journal();
        leptos::task::spawn_local(async move {
            let mut words = Vec::new();
            for file in files {
                let name = file.name();
                match file.read_text(record::MOST_BYTES as u64).await {
                    Err(trouble) => words.push(text::unreadable_file(&name, &trouble)),
                    Ok(content) => {
                        let reading = record::read(&content);
                        words.extend(text::reading_problems(&name, &reading));
                        if !reading.is_nothing() {
                            words.extend(keep(&name, reading, library, &journal).await.0);
                        }
                    }
                }
            }
            said.set(words);
            library.refresh();
        });
    };
    view! {
        <section class="stack">
            <h2>{text::IMPORT}</h2>
            <label class="button import">
                <span>{text::IMPORT_CHOOSE}</span>
                <input type="file" id="import" multiple accept=".json,application/json" on:change=take />
            </label>
            <div role="status" class="stack">
                <For each=move || said.get() key=Clone::clone let:sentence>
                    <p class="sentence">{sentence}</p>
                </For>
            </div>
        </section>
    }
}

/// Puts a record that came by codes beside those on this phone; says what became of it, and the id
/// under which it is here.
pub async fn take_in(
    log: Log,
    library: Library,
    journal: &Journal,
) -> (Vec<String>, Option<String>) {
    let reading = record::read(&record::write(&log));
    let mut words = text::reading_problems(text::THE_RECORD, &reading);
    let (more, id) = keep(text::THE_RECORD, reading, library, journal).await;
    words.extend(more);
    library.refresh();
    (words, id)
}

async fn keep(
    name: &str,
    reading: Reading,
    library: Library,
    journal: &Journal,
) -> (Vec<String>, Option<String>) {
    let mut words = Vec::new();
    let taken = Taken::of(reading, library);
    if taken.left_out > 0 {
        words.push(text::left_out(name, taken.left_out));
    }
    words.push(text::imported(name, taken.how));
    if !taken.lines.is_empty() && journal.repair(&taken.id, &taken.lines).await.is_err() {
        words.push(text::import_not_saved(name));
    }
    (words, Some(taken.id))
}

/// What became of a file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum How {
    /// It is on this phone now.
    New,
    /// The very same was here.
    Here,
    /// Another record of that match was here; both are now.
    Beside,
}

struct Taken {
    how: How,
    /// Entries with numbers that no match reaches.
    left_out: usize,
    /// Where it is, or is to be.
    id: String,
    /// What is to be written there.
    lines: Vec<(u32, String)>,
}

impl Taken {
    fn of(reading: Reading, library: Library) -> Taken {
        let far = |entry: &&Entry| !is_within_reach(entry);
        let left_out = reading.log.entries.iter().filter(far).count();
        let entries = whole(reading.log.entries);
        if let Some(id) = library.holds(&entries) {
            return Taken {
                how: How::Here,
                left_out,
                id,
                lines: Vec::new(),
            };
        }
        let given = reading.log.id;
        let (how, id) = if library.find(&given).is_some() {
            (How::Beside, device::new_id())
        } else if is_plain(&given) {
            (How::New, given)
        } else {
            (How::New, device::new_id())
        };
        let mut writer = LineWriter::default();
        let lines = entries.iter().map(|e| (e.n, writer.line(e))).collect();
        Taken {
            how,
            left_out,
            id,
            lines,
        }
    }
}

/// Whether an id can stand in an address as it is.
fn is_plain(id: &str) -> bool {
    (1..=64).contains(&id.len())
        && id
            .bytes()
            .all(|b| b.is_ascii_alphanumeric() || matches!(b, b'-' | b'_'))
}

/// A number from nowhere must not be reached by counting.
fn is_within_reach(entry: &Entry) -> bool {
    entry.n as usize <= record::MOST_ENTRIES
}

/// The same log without gaps: where an entry could not be read, a remark says so, and the numbers
/// that others refer to stay.
fn whole(entries: Vec<Entry>) -> Vec<Entry> {
    let mut whole: Vec<Entry> = Vec::new();
    for entry in entries.into_iter().take_while(is_within_reach) {
        for n in whole.len() as u32 + 1..entry.n {
            let text = text::unreadable_entry(n);
            whole.push(Entry::new(n, Kind::Remark { text, team: None }));
        }
        whole.push(entry);
    }
    whole
}
