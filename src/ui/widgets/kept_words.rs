//! A field for a few words about the open match. What is half typed stays with the match until it is entered, so
//! that a reload or the way back loses nothing.

use leptos::html;
use leptos::prelude::*;

use crate::session::use_session;
use app::drafts::{Draft, Drafts};

/// Most letters, as for any remark on a sheet: common practice, no source.
const MOST_LETTERS: &str = "300";

/// The field and where its words are kept meanwhile. Copies are the same.
#[derive(Clone, Copy)]
pub struct KeptWords {
    field: NodeRef<html::Input>,
    id: StoredValue<String>,
    draft: Draft,
}

impl KeptWords {
    /// For the open match.
    #[must_use]
    pub fn of(draft: Draft) -> KeptWords {
        let id = untrack(|| use_session().id()).unwrap_or_default();
        KeptWords {
            field: NodeRef::new(),
            id: StoredValue::new(id),
            draft,
        }
    }

    /// What stands in the field, without blanks around it.
    #[must_use]
    pub fn typed(self) -> String {
        let typed = self.field.get_untracked().map(|input| input.value());
        typed.unwrap_or_default().trim().to_owned()
    }

    /// The words stand in the log now.
    pub fn entered(self) {
        self.drafts().forget(self.draft);
    }

    fn drafts(self) -> Drafts {
        self.id.with_value(|id| device::settings().drafts(id))
    }

    /// The field with its label. `id` names it for the page.
    #[must_use]
    pub fn draw(self, id: &'static str, label: &'static str) -> AnyView {
        view! {
            <label class="field">
                <span>{label}</span>
                <input
                    type="text"
                    id=id
                    maxlength=MOST_LETTERS
                    autocomplete="off"
                    node_ref=self.field
                    value=self.drafts().get(self.draft)
                    on:input:target=move |event| {
                        self.drafts().keep(self.draft, &event.target().value());
                    }
                />
            </label>
        }
        .into_any()
    }
}
