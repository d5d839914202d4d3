//! How hard sentences are to read: the Flesch-Kincaid grade level, in school years.
//!
//! J. P. Kincaid, R. P. Fishburne, R. L. Rogers, B. S. Chissom: *Derivation of New Readability Formulas
//! (Automated Readability Index, Fog Count and Flesch Reading Ease Formula) for Navy Enlisted Personnel*,
//! Research Branch Report 8-75, Naval Technical Training Command, 1975 (formula from memory). What it calls
//! syllables is counted here by the vowels as they are written, which is near enough for an average.

/// What the formula counts.
#[derive(Clone, Copy, Default)]
pub struct Counts {
    pub sentences: usize,
    pub words: usize,
    pub syllables: usize,
}

impl Counts {
    /// Puts one more sentence to it, whose language has syllables of its own.
    pub fn add(&mut self, sentence: &str, syllables: fn(&str) -> usize) {
        self.sentences += 1;
        for word in words(sentence) {
            self.words += 1;
            self.syllables += syllables(word);
        }
    }

    /// The grade level.
    pub fn grade(self) -> f64 {
        let of = |n: usize| f64::from(u32::try_from(n).expect("few words"));
        let (sentences, words) = (of(self.sentences), of(self.words));
        0.39 * words / sentences + 11.8 * of(self.syllables) / words - 15.59
    }
}

/// A string literal as a reader meets it: joined over its lines, whatever is filled in as a short word.
pub fn shown(literal: &str) -> String {
    let mut out = String::new();
    let mut chars = literal.chars().peekable();
    while let Some(c) = chars.next() {
        match c {
            '\\' => match chars.next() {
                Some('\n') => while chars.next_if(|c| c.is_whitespace()).is_some() {},
                // A sign by its number: quotes, dashes, spaces.
                Some('u') => {
                    while chars.next().is_some_and(|c| c != '}') {}
                    out.push('\'');
                }
                Some('n') => out.push(' '),
                Some(other) => out.push(other),
                None => {}
            },
            '{' => {
                while chars.next().is_some_and(|c| c != '}') {}
                out.push_str("it");
            }
            c => out.push(c),
        }
    }
    out
}

/// The sentences of a text, and what stands behind the last full stop, which is a label or a fragment.
pub fn split(text: &str) -> (Vec<&str>, &str) {
    let mut sentences = Vec::new();
    let mut from = 0;
    for (at, c) in text.char_indices() {
        let end = at + c.len_utf8();
        let is_last = text[end..]
            .chars()
            .next()
            .is_none_or(|c| !c.is_alphanumeric());
        if matches!(c, '.' | '!' | '?') && is_last {
            if words(&text[from..end]).count() > 0 {
                sentences.push(text[from..end].trim());
            }
            from = end;
        }
    }
    (sentences, text[from..].trim())
}

/// The words of a sentence: whatever has a letter or a digit.
pub fn words(sentence: &str) -> impl Iterator<Item = &str> {
    sentence
        .split(|c: char| c.is_whitespace() || c == '\u{2013}')
        .filter(|word| word.contains(char::is_alphanumeric))
}

/// How many syllables a word has, by its written vowels; a number counts as one.
pub fn syllables(word: &str) -> usize {
    if !word.contains(char::is_alphabetic) {
        return 1;
    }
    let plain: String = word.to_lowercase();
    plain
        .split(|c: char| !c.is_alphanumeric())
        .map(of_part)
        .sum::<usize>()
        .max(1)
}

fn of_part(part: &str) -> usize {
    if part.is_empty() {
        return 0;
    }
    let is_vowel = |c: char| "aeiouy".contains(c);
    let (mut count, mut before) = (0, false);
    for c in part.chars() {
        let vowel = is_vowel(c);
        count += usize::from(vowel && !before);
        before = vowel;
    }
    if ends_silent(part, is_vowel) {
        count -= 1;
    }
    count.max(1)
}

/// Whether the last e is not heard: in side, played and times, but not in be, table, handed and passes.
fn ends_silent(part: &str, is_vowel: impl Fn(char) -> bool) -> bool {
    let ending = ["es", "ed", "e"]
        .into_iter()
        .find(|end| part.ends_with(end));
    let Some((ending, stem)) = ending.and_then(|end| Some((end, part.strip_suffix(end)?))) else {
        return false;
    };
    let mut back = stem.chars().rev();
    let (last, one_before) = (back.next(), back.next());
    let is_table = last == Some('l') && one_before.is_some_and(|c| !is_vowel(c));
    let is_heard = match ending {
        "ed" => matches!(last, Some('t' | 'd')),
        "es" => {
            is_table
                || matches!(last, Some('s' | 'c' | 'g' | 'x' | 'z'))
                || stem.ends_with("ch")
                || stem.ends_with("sh")
        }
        _ => is_table,
    };
    // After a vowel the e was counted with it.
    !is_heard && last.is_some_and(|c| !is_vowel(c))
}
