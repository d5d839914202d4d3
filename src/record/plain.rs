//! Words of a file as they may be shown. The record keeps the bytes that were written (see
//! [`Entry::written`](game::Entry::written)); links, seals and exports stay with those.

/// The most letters of a name. The fields of this program take as many; a longer name of a file is cut, so
/// that it moves no court and no line of a sheet. (Our own choice, no source.)
const NAME_LETTERS: usize = 60;

/// Stands for what was cut off.
const CUT: char = '…';

/// Without characters that write nothing and move what stands around them: control characters act on a
/// terminal, and direction characters (Unicode Standard Annex 9, section 2) turn the words and numbers that
/// follow. A line break or a tab is a space.
#[must_use]
pub fn plain(text: &str) -> String {
    let shown = |c: char| match c {
        '\n' | '\r' | '\t' => Some(' '),
        c if c.is_control() || turns(c) => None,
        c => Some(c),
    };
    text.chars().filter_map(shown).collect()
}

/// A name, no longer than one may be.
pub(super) fn plain_name(text: &str) -> String {
    let name = plain(text);
    if name.chars().count() <= NAME_LETTERS {
        return name;
    }
    name.chars().take(NAME_LETTERS - 1).chain([CUT]).collect()
}

/// Marks, embeddings, overrides and isolates of direction, and the separators of lines and paragraphs.
const fn turns(c: char) -> bool {
    matches!(c, '\u{061C}' | '\u{200E}' | '\u{200F}' | '\u{2028}'..='\u{202E}' | '\u{2066}'..='\u{2069}')
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{read, write, Log};
    use game::entry::Heading;
    use game::{Entry, Kind, Timeline};
    use rules::{ByTeam, Preset, Team};

    /// What a record says of itself holds for the bytes that stand in it, not for what is shown of them.
    #[test]
    fn a_record_keeps_the_letters_that_are_not_shown() {
        let names = ByTeam {
            a: "\u{202E}Otters\u{1b}[2J".to_owned(),
            b: "Herons ".repeat(40),
        };
        let heading = Heading::new(names, Preset::International.rules());
        let file = write(&Log {
            id: "odd".to_owned(),
            entries: vec![Entry::new(1, Kind::Match(Box::new(heading)))],
        });
        let reading = read(&file);
        assert_eq!(reading.problems, []);
        assert_eq!(write(&reading.log), file);
        let timeline = Timeline::of(reading.log.entries);
        assert_eq!(timeline.state().name(Team::A), "Otters[2J");
        assert_eq!(timeline.state().name(Team::B).chars().count(), NAME_LETTERS);
    }

    #[test]
    fn what_writes_nothing_is_left_out() {
        assert_eq!(plain("Ot\u{1b}[31mters\u{7}"), "Ot[31mters");
        assert_eq!(plain("\u{202E}sretto\u{202C} 3"), "sretto 3");
        assert_eq!(plain("one\r\ntwo\tthree"), "one  two three");
        // Letters of every script stay, and what joins or accents them.
        for name in [
            "Śląsk",
            "नमस्ते",
            "שלום",
            "مرحبا",
            "👩\u{200D}🏫",
            "O\u{308}tters",
        ] {
            assert_eq!(plain(name), name);
        }
    }

    #[test]
    fn a_name_has_an_end() {
        let most = "n".repeat(NAME_LETTERS);
        assert_eq!(plain_name(&most), most);
        let longer = plain_name(&format!("{most}n"));
        assert_eq!(longer.chars().count(), NAME_LETTERS);
        assert!(longer.ends_with('…'));
    }
}
