//! Reading words aloud, where the phone has a voice of its own (W3C Web Speech API).
//!
//! Some browsers offer voices that send the words to a server. Those are left alone: after the page
//! has loaded, nothing leaves the phone.

use js_sys::{Array, Function, Reflect};
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Event, EventTarget};

use super::listen::{Listener, Listeners};
use super::reach::{method, property, window};

/// What reads: made once, kept while it may read. Falls silent when it is dropped.
pub struct Voice {
    synthesis: EventTarget,
    voice: JsValue,
    language: &'static str,
}

impl Voice {
    /// A voice on this phone that speaks a language, such as `en`. None at once may become one a
    /// moment later: see [`on_voices`].
    pub fn find(language: &'static str) -> Option<Voice> {
        let synthesis = synthesis()?;
        let all = method(&synthesis, "getVoices")?.call0(&synthesis).ok()?;
        let fits = |voice: &JsValue| {
            let speaks = property(voice, "lang").and_then(|lang| lang.as_string());
            let local = property(voice, "localService").and_then(|local| local.as_bool());
            local == Some(true) && speaks.is_some_and(|lang| lang.starts_with(language))
        };
        let voice = Array::from(&all).iter().find(fits)?;
        Some(Voice {
            synthesis,
            voice,
            language,
        })
    }

    /// Reads sentence after sentence; `done` is called when the last one is over or could not be read.
    /// It reads until the listeners are dropped.
    pub fn read(&self, sentences: &[String], done: impl Fn() + Clone + 'static) -> Listeners {
        self.hush();
        let mut held = Vec::new();
        for (i, sentence) in sentences.iter().enumerate() {
            let Some(utterance) = self.utterance(sentence) else {
                continue;
            };
            if i + 1 == sentences.len() {
                for kind in ["end", "error"] {
                    let done = done.clone();
                    held.push(Listener::new(&utterance, kind, move |_: Event| done()));
                }
            }
            if let Some(speak) = method(&self.synthesis, "speak") {
                // Throws only for something that is no utterance.
                let _ = speak.call1(&self.synthesis, &utterance);
            }
        }
        held.into()
    }

    /// Says nothing more.
    pub fn hush(&self) {
        if let Some(cancel) = method(&self.synthesis, "cancel") {
            // Has nothing to throw.
            let _ = cancel.call0(&self.synthesis);
        }
    }

    fn utterance(&self, words: &str) -> Option<EventTarget> {
        let make: Function = property(window()?.as_ref(), "SpeechSynthesisUtterance")?
            .dyn_into()
            .ok()?;
        let made = Reflect::construct(&make, &Array::of1(&words.into())).ok()?;
        for (name, value) in [("voice", &self.voice), ("lang", &self.language.into())] {
            // Both can be set on a fresh utterance.
            let _ = Reflect::set(&made, &name.into(), value);
        }
        made.dyn_into().ok()
    }
}

impl Drop for Voice {
    fn drop(&mut self) {
        self.hush();
    }
}

fn synthesis() -> Option<EventTarget> {
    property(window()?.as_ref(), "speechSynthesis")?
        .dyn_into()
        .ok()
}

/// Calls `f` when the list of voices is there or has changed.
pub fn on_voices(f: impl Fn() + 'static) -> Listeners {
    synthesis().map_or_else(Listeners::default, |synthesis| {
        vec![Listener::new(&synthesis, "voiceschanged", move |_| f())].into()
    })
}
