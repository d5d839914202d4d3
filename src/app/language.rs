//! The languages that the app speaks, and which of them a phone wants.

/// A language.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Language {
    /// English.
    English,
    /// Spanish.
    Spanish,
}

// The codes are language tags of BCP 47.
rules::codes!(Language {
    English = "en",
    Spanish = "es",
});

impl Language {
    /// The language that somebody chose by hand, else the first of the phone's own that the app speaks,
    /// else English. The phone names its languages by tags such as `es-MX`, the dearest first, a terminal
    /// by the like of `es_MX.UTF-8`.
    pub fn wanted<T: AsRef<str>>(
        chosen: Option<Language>,
        of_phone: impl IntoIterator<Item = T>,
    ) -> Language {
        let spoken = |tag: T| {
            let tag = tag.as_ref();
            let main = tag.split(['-', '_', '.', '@']).next().unwrap_or(tag);
            Language::ALL
                .into_iter()
                .find(|language| language.code().eq_ignore_ascii_case(main))
        };
        chosen
            .or_else(|| of_phone.into_iter().find_map(spoken))
            .unwrap_or(Language::English)
    }
}

#[cfg(test)]
mod tests {
    use super::Language;

    #[test]
    fn a_choice_by_hand_outweighs_the_phone() {
        let chosen = Some(Language::English);
        assert_eq!(Language::wanted(chosen, ["es-ES"]), Language::English);
    }

    #[test]
    fn the_first_language_of_the_phone_that_the_app_speaks_is_taken() {
        assert_eq!(
            Language::wanted(None, ["fr-FR", "es-MX", "en-US"]),
            Language::Spanish
        );
        assert_eq!(Language::wanted(None, ["ES"]), Language::Spanish);
        assert_eq!(Language::wanted(None, ["es.UTF-8"]), Language::Spanish);
    }

    #[test]
    fn a_phone_in_a_language_that_the_app_does_not_speak_gets_english() {
        assert_eq!(Language::wanted(None, ["fr", "est"]), Language::English);
        assert_eq!(Language::wanted(None, [""; 0]), Language::English);
    }
}
