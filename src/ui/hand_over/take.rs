//! Taking a record in from the codes on another screen: by camera, from a photo, or as digits from a hand
//! scanner.

use leptos::html;
use leptos::prelude::*;

use crate::shell::{use_shell, Screen};
use app::learner_data::LearnerImport;
use app::ports::PickedFile;
use device::{after, codes_in_photo, Camera, Ticker};
use record::{Gathering, Log, Seen};
use text::hand_over as words;

/// Between two looks; a camera gives thirty pictures a second and a phone has other things to do.
const LOOK_MS: u32 = 120;

/// The screen that takes a record in.
#[component]
pub fn Receive() -> impl IntoView {
    let shell = use_shell();
    let gathering = StoredValue::new(Gathering::default());
    let camera = StoredValue::new_local(None::<std::rc::Rc<Camera>>);
    let next_look = StoredValue::new_local(None::<Ticker>);
    let on = RwSignal::new(false);
    let said = RwSignal::new(None::<(bool, String)>);
    let taken = RwSignal::new(None::<String>);
    let video = NodeRef::<html::Video>::new();
    let off = move || {
        on.set(false);
        camera.set_value(None);
        next_look.set_value(None);
    };
    on_cleanup(move || {
        // The screen goes, and the light of the camera with it.
        let _ = camera.try_update_value(Option::take);
        let _ = next_look.try_update_value(Option::take);
    });
    let found = move |log: Log| {
        off();
        let importer = shell.imports.importer();
        device::spawn(async move {
            let (notes, id) = importer.take_record(text::the_record(), &log).await;
            said.try_set(Some((false, text::import_notes(&notes).join(" "))));
            taken.try_set(id);
        });
    };
    // What the texts of a picture bring; true where there was anything at all.
    let see = move |texts: Vec<String>| -> bool {
        let mut any = false;
        for text in texts {
            any = true;
            let seen = gathering.try_update_value(|g| (g.see(&text), g.missing()));
            match seen {
                Some((Seen::Record(log), _)) => found(*log),
                Some((Seen::Notes(notes), _)) => {
                    off();
                    said.set(Some(
                        match device::settings().take_notes(*notes, 0, &device::new_id()) {
                            LearnerImport::NotKept => (true, words::notes_not_kept().to_owned()),
                            LearnerImport::Notes { .. }
                            | LearnerImport::Logbook { .. }
                            | LearnerImport::Newer
                            | LearnerImport::Foreign => (false, words::notes_taken().to_owned()),
                        },
                    ));
                }
                Some((Seen::Part { have, of }, missing)) => {
                    said.set(Some((false, words::part(have, of, &missing))));
                }
                Some((Seen::OtherRecord, _)) => {
                    said.set(Some((true, words::other_record().into())))
                }
                Some((Seen::Nothing(why), _)) => {
                    said.set(Some((true, text::problem::packed(&why))));
                }
                Some((Seen::Again, _)) | None => {}
            }
        }
        any
    };
    let start = move |_| {
        let Some(element) = video.get_untracked() else {
            return;
        };
        taken.set(None);
        said.set(Some((false, words::looking().into())));
        on.set(true);
        device::spawn(async move {
            match Camera::open(&element).await {
                Err(trouble) => {
                    on.try_set(false);
                    said.try_set(Some((true, text::machine::camera(&trouble))));
                }
                Ok(opened) if on.try_get_untracked() == Some(true) => {
                    camera.set_value(Some(std::rc::Rc::new(opened)));
                    look(camera, next_look, see, said, on);
                }
                // Somebody has left, or thought better of it.
                Ok(_) => {}
            }
        });
    };
    let photo = move |event: leptos::ev::Event| {
        let files = device::picked_files(&event);
        taken.set(None);
        device::spawn(async move {
            for file in files {
                match codes_in_photo(&file).await {
                    Ok(texts) => {
                        if !see(texts) {
                            said.set(Some((true, words::nothing_in(&file.name()))));
                        }
                    }
                    Err(trouble) => said.set(Some((true, text::machine::camera(&trouble)))),
                }
            }
        });
    };
    let digits = RwSignal::new(String::new());
    // A hand scanner ends each code with a line: what stands before the last end is whole.
    let typed = move |event: leptos::ev::Event| {
        let text = event_target_value(&event);
        let (whole, rest) = text.rsplit_once('\n').unwrap_or(("", &text));
        if !whole.trim().is_empty() {
            taken.set(None);
            see(lines(whole));
        }
        digits.set(rest.to_owned());
    };
    let read_digits = move |_| {
        let text = digits.get_untracked();
        taken.set(None);
        if text.trim().is_empty() {
            said.set(Some((true, words::no_digits().into())));
        }
        see(lines(&text));
        digits.set(String::new());
    };
    let again = move |_| {
        digits.set(String::new());
        gathering.update_value(Gathering::clear);
        said.set(None);
        taken.set(None);
    };
    let open = move |_| {
        if let Some(id) = taken.get_untracked() {
            shell.go(Screen::Sheet { id });
        }
    };
    view! {
        <div class="receive stack">
            <p>{words::receive_more()}</p>
            <video class="sight" class:on=move || on.get() node_ref=video playsinline muted aria-label=words::sight()></video>
            <p role="status" id="received" class="sentence"
                class:bad=move || said.read().as_ref().is_some_and(|s| s.0)
                class:waits=move || said.read().is_none()
            >
                {move || said.get().map(|s| s.1)}
            </p>
            <div class="row">
                {move || if on.get() {
                    view! {
                        <button type="button" class="button" on:click=move |_| off()>{words::camera_off()}</button>
                    }.into_any()
                } else if taken.read().is_some() {
                    view! {
                        <button type="button" class="button primary" id="received-open" on:click=open>
                            {words::open()}
                        </button>
                    }.into_any()
                } else {
                    view! {
                        <button type="button" class="button primary" id="camera-on" on:click=start>
                            {words::camera_on()}
                        </button>
                    }.into_any()
                }}
                <label class="button import">
                    <span>{words::photo()}</span>
                    <input type="file" id="photo" multiple accept="image/*" on:change=photo />
                </label>
                <button type="button" class="button quiet" on:click=again>{words::anew()}</button>
            </div>
            <div class="field">
                <label for="digits">{words::digits()}</label>
                <textarea id="digits" rows="2" inputmode="numeric" autocomplete="off" spellcheck="false"
                    aria-describedby="digits-more" prop:value=move || digits.get() on:input=typed
                ></textarea>
                <p class="muted" id="digits-more">{words::digits_more()}</p>
                <div class="row">
                    <button type="button" class="button" id="digits-read" on:click=read_digits>
                        {words::digits_read()}
                    </button>
                </div>
            </div>
            <p class="muted">{words::receive_care()}</p>
        </div>
    }
}

/// The codes of typed or pasted digits, one a line; whoever copies them by hand groups them.
fn lines(text: &str) -> Vec<String> {
    let lines = text
        .lines()
        .map(|line| line.split_whitespace().collect::<String>());
    lines.filter(|line| !line.is_empty()).collect()
}

/// Looks once, and again a little later, as long as the camera is on.
fn look(
    camera: StoredValue<Option<std::rc::Rc<Camera>>, LocalStorage>,
    next_look: StoredValue<Option<Ticker>, LocalStorage>,
    see: impl Fn(Vec<String>) -> bool + Copy + 'static,
    said: RwSignal<Option<(bool, String)>>,
    on: RwSignal<bool>,
) {
    device::spawn(async move {
        let Some(Some(now)) = camera.try_get_value() else {
            return;
        };
        match now.look().await {
            Ok(texts) => {
                see(texts);
            }
            Err(trouble) => {
                said.try_set(Some((true, text::machine::camera(&trouble))));
                on.try_set(false);
                let _ = camera.try_update_value(Option::take);
                return;
            }
        }
        let later = after(LOOK_MS, move || look(camera, next_look, see, said, on));
        next_look.try_set_value(Some(later));
    });
}
