//! Which language the page speaks: the one chosen on this phone, or that of the phone itself. English is part of
//! the program; another language is a part that is loaded when it is wanted.

use app::language::Language;
use app::setting::Setting;
use leptos::prelude::*;
use wasm_split_helpers::{wasm_split, SplitLoaderError};

use crate::widgets::keys::go_on_at;

/// The language of the page. Copies are the same.
#[derive(Clone, Copy)]
pub struct Languages {
    /// Chosen by hand on this phone.
    chosen: RwSignal<Option<Language>>,
    /// What is spoken; the page is drawn anew when it changes.
    spoken: RwSignal<Language>,
    /// A language that did not come.
    missing: RwSignal<Option<Language>>,
    /// Where whoever uses keys goes on when the page has been drawn anew.
    go_on: StoredValue<Option<&'static str>>,
}

impl Languages {
    /// As it was chosen on this phone; nothing but English is spoken yet.
    pub fn begin() -> Languages {
        let kept = device::settings().get(Setting::Language);
        Languages {
            chosen: RwSignal::new(kept.as_deref().and_then(Language::from_code)),
            spoken: RwSignal::new(Language::English),
            missing: RwSignal::new(None),
            go_on: StoredValue::new(None),
        }
    }

    /// What was chosen by hand on this phone.
    #[must_use]
    pub fn chosen(self) -> Option<Language> {
        self.chosen.get()
    }

    /// Asks to be called again when another language is spoken.
    pub fn track(self) {
        self.spoken.track();
    }

    /// A language that did not come; the page goes on in the one before.
    #[must_use]
    pub fn missing(self) -> Option<Language> {
        self.missing.get()
    }

    /// Chooses a language, or that of the phone; kept on this phone. The page is drawn anew in it, and whoever
    /// uses keys goes on at the element of this id.
    pub fn choose(self, language: Option<Language>, go_on: &'static str) {
        match language {
            // Without storage the choice lasts as long as the page.
            Some(language) => {
                device::settings().set(Setting::Language, language.code());
            }
            None => device::settings().forget(Setting::Language),
        }
        self.chosen.set(language);
        self.go_on.set_value(Some(go_on));
        device::spawn(self.speak());
    }

    /// The page has been drawn anew.
    pub fn drawn(self) {
        if let Some(id) = self.go_on.get_value() {
            self.go_on.set_value(None);
            go_on_at(id);
        }
    }

    /// Speaks what is wanted now, as soon as it is there.
    pub async fn speak(self) {
        let wanted = || {
            let chosen = self.chosen.get_untracked();
            Language::wanted(chosen, device::languages())
        };
        let language = wanted();
        let words = match language {
            Language::English => Ok(None),
            Language::Spanish => spanish().await.map(Some),
        };
        // Another one may have been chosen while this one was on its way.
        if language != wanted() {
            return;
        }
        self.missing.set(words.is_err().then_some(language));
        let comes = words.map(text::speak).is_ok();
        // `assets/early.js` has named what is wanted already, whether it comes or not.
        let spoken = if comes {
            language
        } else {
            self.spoken.get_untracked()
        };
        device::set_root_attribute("lang", spoken.code());
        if comes {
            self.spoken.set(spoken);
        }
    }
}

#[wasm_split(spanish, fallible)]
fn spanish() -> Result<&'static text::Words, SplitLoaderError> {
    Ok(&text::es::SPANISH)
}
