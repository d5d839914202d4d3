//! Finding a signal by a word, or by what has just happened, also where it is spelled wrongly.

use rules::{Cause, Preset, Signal};

use crate::{cause, signal, signal_for, signal_how};

/// The field.
pub const FIND: &str = "Find a signal";
/// What may be typed.
pub const FIND_HINT: &str = "A word, or what happened";
/// Nothing was found.
pub const FIND_NOTHING: &str = "No signal found. Try another word, or look through all of them.";

/// Examples to tap.
pub const FIND_EXAMPLES: [&str; 4] = [
    "touched the net",
    "stepped on the line",
    "ball hit the antenna",
    "two players change",
];

/// What people say when they mean a signal; its name, how it is made and the reasons that it announces are
/// searched as well.
const fn said(of: Signal) -> &'static str {
    match of {
        Signal::AuthoriseService => "serve allowed start whistle go begin play",
        Signal::TeamToServe => "point won who serves next side winner rally",
        Signal::ChangeOfCourts => "swap sides switch ends",
        Signal::TimeOut => "break pause timeout coach asks",
        Signal::Substitution => "swap player players change sub exchange comes in goes out",
        Signal::Warning => "yellow card misconduct first bad behaviour",
        Signal::Penalty => "red card misconduct rude swearing argues behaviour point",
        Signal::Expulsion => "sent off set both cards one hand offensive",
        Signal::Disqualification => "sent off match both cards two hands aggressive fight",
        Signal::EndOfSet => "over finished last point match set won",
        Signal::NotTossed => "toss released threw held out of the hand service serve",
        Signal::ServiceDelay => "too late slow seconds time waited service serve",
        Signal::BlockOrScreen => "blocked the serve back row blocker screen hides libero blocked hidden",
        Signal::Position => "rotation order wrong place wrong server out of position overlap",
        Signal::BallIn => "on the line inside landed floor good",
        Signal::BallOut => {
            "outside wide long antenna ceiling wall outside object hit the coach out of court"
        }
        Signal::Catch => "held carried lift lifted threw thrown hold caught rest",
        Signal::DoubleContact => "twice two touches double hit hits touched it two times bad set",
        Signal::FourHits => "fourth touch four touches too many hits",
        Signal::NetTouch => "touched the net touch hand net serve into the net did not cross",
        Signal::OverNet => "reached over the net across other side block too early beyond",
        Signal::AttackFault => {
            "spike smash back row attack attacked three metre line in front libero finger set attacked \
             the serve"
        }
        Signal::LineOrUnder => {
            "foot fault stepped on the line over under the net crossed centre penetration below outside \
             court at service"
        }
        Signal::Replay => "again both fault at once same time double fault ball on court interference repeat",
        Signal::BallTouched => "touched out tip fingertips off the block deflected brushed",
        Signal::DelayWarning => "slow wasting time late delay yellow card first",
        Signal::DelayPenalty => "slow wasting time late delay red card second repeated",
    }
}

/// Words that say nothing about a signal.
const EMPTY: [&str; 17] = [
    "the", "a", "an", "was", "is", "it", "has", "had", "have", "and", "he", "she", "they", "his",
    "her", "player", "ball",
];

/// The signals that a person may mean, the likeliest first. None where nothing is like it; all of them in
/// their order where nothing was typed.
#[must_use]
pub fn find_signals(typed: &str) -> Vec<Signal> {
    let typed = typed.to_lowercase();
    let all: Vec<&str> = words_of(&typed).collect();
    if all.is_empty() {
        return Signal::ALL.to_vec();
    }
    let mut wanted: Vec<&str> = all.iter().copied().filter(|w| !EMPTY.contains(w)).collect();
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
