//! Finding a signal by a word, or by what has just happened, also where it is spelled wrongly.

use crate::{cause, signal, signal_for, signal_how};
use rules::{Cause, Preset, Signal};

/// The signals that a person may mean, the likeliest first. None where nothing is like it; all of them in
/// their order where nothing was typed.
#[must_use]
pub fn find_signals(typed: &str) -> Vec<Signal> {
    let typed = typed.to_lowercase();
    let all: Vec<&str> = words_of(&typed).collect();
    if all.is_empty() {
        return Signal::ALL.to_vec();
    }
    let mut wanted: Vec<&str> = all
        .iter()
        .copied()
        .filter(|w| !filler().contains(w))
        .collect();
    if wanted.is_empty() {
        wanted.clone_from(&all);
    }
    let mut found: Vec<(u32, Signal)> = Signal::ALL
        .into_iter()
        .filter_map(|of| {
            let likeness = likeness(of, &wanted) + whole_name(of, &all);
            (likeness > 0).then_some((likeness, of))
        })
        .collect();
    // Stable: those alike stay in the order of the diagram.
    rules::sort_by_key(&mut found, |(likeness, _)| std::cmp::Reverse(*likeness));
    // What is less than half as like as the first was not meant.
    let best = found.first().map_or(0, |(likeness, _)| *likeness);
    found.retain(|(likeness, _)| likeness * 2 >= best);
    found.into_iter().map(|(_, of)| of).collect()
}

/// More for a signal whose whole name was typed, with two slips at most; spaces do not count.
fn whole_name(of: Signal, typed: &[&str]) -> u32 {
    let name = signal(of).to_lowercase();
    let name: String = words_of(&name).collect();
    if strsim::osa_distance(&name, &typed.concat()) <= 2 {
        60
    } else {
        0
    }
}

fn words_of(text: &str) -> impl Iterator<Item = &str> {
    text.split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
}

/// How like a signal is to what was typed: a word of its name counts most.
fn likeness(of: Signal, wanted: &[&str]) -> u32 {
    if wanted == [of.number()] {
        return 100;
    }
    let rules = Preset::International.rules();
    let reasons: Vec<String> = Cause::ALL
        .into_iter()
        .filter(|one| one.signal() == Some(of))
        .map(|one| cause(one, &rules))
        .collect();
    let texts = [
        (4, signal(of).to_owned()),
        (3, said(of).to_owned()),
        (3, reasons.join(" ")),
        (1, signal_for(of).unwrap_or_default().to_owned()),
        (1, signal_how(of).to_owned()),
    ];
    let best_of = |word: &str| {
        let of_text = |(weight, text): &(u32, String)| {
            let text = text.to_lowercase();
            let best = words_of(&text).map(|other| alike(word, other)).max();
            weight * best.unwrap_or(0)
        };
        texts.iter().map(of_text).max().unwrap_or(0)
    };
    wanted.iter().map(|word| best_of(word)).sum()
}

/// How alike two words are: the same, the one the beginning of the other, or a slip or two apart. A short word
/// has no room for slips.
fn alike(typed: &str, word: &str) -> u32 {
    let long = typed.chars().count();
    if typed == word {
        return 6;
    }
    if long >= 3 && (word.starts_with(typed) || (word.len() >= 4 && typed.starts_with(word))) {
        return 4;
    }
    let slips = match long {
        0..=3 => return 0,
        4..=6 => 1,
        _ => 2,
    };
    // Insertions, deletions, changes and neighbours swapped.
    if strsim::osa_distance(typed, word) <= slips {
        3
    } else {
        0
    }
}

words! { FindWords in learn::find;
    /// The field.
    find -> &'static str;
    /// What may be typed.
    find_hint -> &'static str;
    /// Nothing was found.
    find_nothing -> &'static str;
    /// Examples to tap.
    find_examples -> [&'static str; 4];
    /// What people say when they mean a signal; its name, how it is made and the reasons that it announces
    /// are searched as well.
    said(of: Signal) -> &'static str;
    /// Words that say nothing about a signal.
    filler -> &'static [&'static str];
}
