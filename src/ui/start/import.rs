//! Takes matches in from files, one or a whole backup: the field, how far it is, and what came of it.

use leptos::prelude::*;

use super::library::Library;
use crate::shell::{use_shell, Screen};
use app::importer::OtherFiles;
use device::PickedFile;
use text::setup::library as words;

/// The field, and what came of the last files.
#[component]
pub fn Import(
    /// The matches among which they come.
    library: Library,
    /// What else is taken in here.
    #[prop(optional)]
    others: Option<OtherFiles>,
) -> impl IntoView {
    let shell = use_shell();
    let imports = shell.imports;
    let take_files = move |files: Vec<PickedFile>| imports.take_files(files, others);
    let take = move |event: leptos::ev::Event| take_files(device::picked_files(&event));
    // What has been read here is not said again on the next screen.
    on_cleanup(move || imports.forget_last());
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
    let said = move || {
        let mut said = imports.said();
        let stay = library.not_deleted();
        if stay > 0 {
            said.push(text::desk_work::not_deleted(stay));
        }
        said
    };
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
            {move || imports.progress().map(|words| view! {
                <div class="row" id="import-progress">
                    <p role="status">{words}</p>
                    <button type="button" class="button" on:click=move |_| imports.importer().stop()>
                        {words::stop()}
                    </button>
                </div>
            })}
            <div role="status" class="stack">
                <For each=said key=Clone::clone let:sentence>
                    <p class="sentence">{sentence}</p>
                </For>
            </div>
        </section>
    }
}
