//! Names in letters that run from right to left, inside a sentence that runs from left to right.

/// First strong isolate, and pop directional isolate (Unicode Standard Annex 9, section 2.4).
const ISOLATE: (char, char) = ('\u{2068}', '\u{2069}');

/// A name as it stands in a sentence. Letters that run from right to left would take the numbers after
/// them to their other side, and a score of 25:20 would read as 20:25; an isolate keeps them apart. Any
/// other name stays as it is.
#[must_use]
pub fn isolated(name: &str) -> String {
    if name.chars().any(runs_from_right) {
        format!("{}{name}{}", ISOLATE.0, ISOLATE.1)
    } else {
        name.to_owned()
    }
}

/// Letters of the blocks whose direction is R or AL (Unicode Character Database 16.0, DerivedBidiClass,
/// the ranges of its defaults; from memory).
const fn runs_from_right(c: char) -> bool {
    matches!(
        c,
        '\u{0590}'..='\u{08FF}'
            | '\u{FB1D}'..='\u{FDFF}'
            | '\u{FE70}'..='\u{FEFF}'
            | '\u{10800}'..='\u{10FFF}'
            | '\u{1E800}'..='\u{1EFFF}'
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Unicode Standard Annex 9, section 6.1: an isolate keeps what it holds from turning what follows.
    #[test]
    fn only_a_name_that_runs_from_the_right_is_set_apart() {
        assert_eq!(isolated("Otters"), "Otters");
        assert_eq!(isolated("Śląsk 2"), "Śląsk 2");
        assert_eq!(isolated("שלום"), "\u{2068}שלום\u{2069}");
        assert_eq!(isolated("FC مرحبا"), "\u{2068}FC مرحبا\u{2069}");
    }
}
