//! Takes matches in from files, one or a whole backup: the field, how far it is, and what came of it.

use leptos::prelude::*;

use super::library::Library;
use crate::shell::{use_shell, Screen};
use app::importer::{ImportEvent, ImportOutcome, Importer, OtherFiles, Progress};
use app::ports;
use device::PickedFile;
use text::setup::library as words;

/// The field, and what came of the last files.
#[component]
pub fn Import(
    /// Where what comes is kept.
    library: Library,
    /// What else is taken in here.
    #[prop(optional)]
    others: Option<OtherFiles>,
) -> impl IntoView {
    let shell = use_shell();
    let progress = RwSignal::new(None::<String>);
    let importer = Importer::new(library.app(), others, move |event| {
        // The screen may be gone by now: what was begun is brought to its end.
        match event {
            ImportEvent::Progress(far) => {
                progress.try_set(Some(text::import_progress(far)));
                if far == Progress::Reading {
                    library.arrived(Vec::new(), Vec::new());
                }
            }
            ImportEvent::Over(ImportOutcome { came, notes }) => {
                progress.try_set(None);
                if let Some(says) = library.arrived(came, text::import_notes(&notes)) {
                    shell.matches_came(says.join(" "));
                }
            }
        }
    });
    let importer = StoredValue::new_local(importer);
    let take_files = move |files: Vec<PickedFile>| {
        let boxed = |file| Box::new(file) as Box<dyn ports::PickedFile>;
        let files = files.into_iter().map(boxed).collect();
        importer.with_value(|importer| importer.take_files(files));
    };
    let take = move |event: leptos::ev::Event| take_files(device::picked_files(&event));
    let stop = move |_| importer.with_value(Importer::stop);
    // What is dropped anywhere onto the window comes the same way.
    let held = RwSignal::new(false);
    let dropped = device::on_files_dropped(
        move |over| {
            if held.get_untracked() != over {
                held.set(over);
            }
        },
        take_files,
    );
    let _listening = StoredValue::new_local(dropped);
    view! {
        <section class="stack">
            {move || held.get().then(|| view! {
                <p class="drop-here" aria-hidden="true">{text::desk_work::drop_here()}</p>
            })}
            <h2>{text::import()}</h2>
            <div class="row">
                <label class="button import">
                    <span>{text::import_choose()}</span>
                    <input type="file" id="import" multiple accept=".json,.pack,.txt,application/json,application/octet-stream,text/plain" on:change=take />
                </label>
                <button
                    type="button"
                    class="button"
                    id="receive"
                    on:click=move |_| shell.go(Screen::Receive)
                >
                    {text::receive()}
                </button>
            </div>
            {move || progress.get().map(|words| view! {
                <div class="row" id="import-progress">
                    <p role="status">{words}</p>
                    <button type="button" class="button" on:click=stop>
                        {words::stop()}
                    </button>
                </div>
            })}
            <div role="status" class="stack">
                <For each=move || library.said() key=Clone::clone let:sentence>
                    <p class="sentence">{sentence}</p>
                </For>
            </div>
        </section>
    }
}
