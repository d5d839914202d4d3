//! How well two names fit: whether they are those of one team, perhaps written in two ways.

/// How well two names, or two pairs of names, fit. The later one is the worse one.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Fit {
    Same,
    /// Somebody left a name out.
    Unknown,
    Alike,
    Other,
}

/// Whether two names are those of one team, perhaps written in two ways: other capitals, signs or spaces, or
/// one letter wrong in one word. A word of fewer than five letters, or with a digit, is a name of its own:
/// so are Otters A and Otters B, and teams under 14 and under 16.
#[must_use]
pub fn are_alike(one: &str, other: &str) -> bool {
    matches!(fit(&plain(one), &plain(other)), Fit::Same | Fit::Alike)
}

/// A text without capitals and signs, with one space between its words.
pub(super) fn plain(text: &str) -> String {
    let words = text.split(|c: char| !c.is_alphanumeric());
    let words: Vec<String> = words
        .filter(|word| !word.is_empty())
        .map(str::to_lowercase)
        .collect();
    if words.is_empty() {
        // A name of signs alone is one all the same.
        return text.trim().to_owned();
    }
    words.join(" ")
}

/// How well two plain names fit.
pub(super) fn fit(one: &str, other: &str) -> Fit {
    if one.is_empty() || other.is_empty() {
        return Fit::Unknown;
    }
    if one == other {
        return Fit::Same;
    }
    let letters = |name: &str| name.split(' ').flat_map(str::chars).collect::<String>();
    if letters(one) == letters(other) {
        return Fit::Alike;
    }
    if one.split(' ').count() != other.split(' ').count() {
        return Fit::Other;
    }
    let mut differ = one.split(' ').zip(other.split(' ')).filter(|w| w.0 != w.1);
    match (differ.next(), differ.next()) {
        (Some((one, other)), None) if is_slip(one, other) => Fit::Alike,
        _ => Fit::Other,
    }
}

/// Whether one word is the other with a letter more, fewer, changed, or two exchanged.
fn is_slip(one: &str, other: &str) -> bool {
    let [one, other] = [one, other].map(|word| word.chars().collect::<Vec<char>>());
    let digit = one.iter().chain(&other).any(|c| c.is_numeric());
    if digit || one.len().max(other.len()) < 5 {
        return false;
    }
    let same = one.iter().zip(&other).take_while(|(a, b)| a == b).count();
    let (one, other) = (&one[same..], &other[same..]);
    let ends = one.iter().rev().zip(other.iter().rev());
    let same = ends.take_while(|(a, b)| a == b).count();
    match (&one[..one.len() - same], &other[..other.len() - same]) {
        ([_], [] | [_]) | ([], [_]) => true,
        ([a, b], [c, d]) => a == d && b == c,
        _ => false,
    }
}

#[cfg(test)]
mod tests {
    use super::are_alike;

    #[test]
    fn names_are_alike_by_one_slip_and_no_more() {
        let alike = [
            ("Otters", "Oters"),
            ("Otters", "Ottres"),
            ("Otters", "OTTERS "),
            ("Red Otters", "Red-Otters"),
            ("Blue Jays", "Bluejays"),
            ("Herons", "Heron"),
        ];
        for (one, other) in alike {
            assert!(are_alike(one, other), "{one}, {other}");
        }
        let others = [
            ("Otters", "Herons"),
            ("Otters A", "Otters B"),
            ("Otters 1", "Otters 2"),
            ("Otters", "Otters 2"),
            ("Otters U14", "Otters U16"),
            ("East Otters", "West Otters"),
            ("Newts", "Swifts"),
            ("Otters", ""),
        ];
        for (one, other) in others {
            assert!(!are_alike(one, other), "{one}, {other}");
        }
    }
}
