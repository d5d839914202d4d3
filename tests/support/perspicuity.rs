//! How easy Spanish sentences are to read: the index of Szigriszt Pazos, Flesch's formula fitted to Spanish.
//!
//! F. Szigriszt Pazos: *Sistemas predictivos de legibilidad del mensaje escrito: fórmula de perspicuidad*, doctoral
//! thesis, Universidad Complutense de Madrid, 1993. Its steps are those of the INFLESZ scale (I. M. Barrio-Cantalejo
//! and others: *Validación de la Escala INFLESZ para evaluar la legibilidad de los textos dirigidos a pacientes*,
//! Anales del Sistema Sanitario de Navarra 31, 2008): below 40 very hard, from 40 somewhat hard, from 55 normal, from
//! 65 quite easy, from 80 very easy. Both from texts about them.

use super::readability::Counts;

/// The index.
pub fn perspicuity(of: Counts) -> f64 {
    let number = |n: usize| f64::from(u32::try_from(n).expect("few words"));
    let (sentences, words) = (number(of.sentences), number(of.words));
    206.835 - 62.3 * number(of.syllables) / words - words / sentences
}

/// How many syllables a Spanish word has; a number counts as one. Vowels beside each other are one syllable unless
/// both are strong: a, e, o, and i or u with an accent. A y counts as an i.
pub fn syllables(word: &str) -> usize {
    let strong = |c: &char| "aeoáéíóú".contains(*c);
    let word = word.to_lowercase();
    let vowels = word.split(|c: char| !"aeiouyáéíóúü".contains(c));
    let of_vowels = |vowels: &str| vowels.chars().filter(strong).count().max(1);
    let some = vowels.filter(|vowels| !vowels.is_empty());
    some.map(of_vowels).sum::<usize>().max(1)
}
