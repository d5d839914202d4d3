//! A signal is found by a word or by what has just happened, spelled rightly or not.

use rules::{Cause, Preset, Signal};
use text::learn::find_signals;

/// What a pupil types, and the signal that must come first.
const FIRST: [(&str, Signal); 40] = [
    ("touched the net", Signal::NetTouch),
    ("net tuoch", Signal::NetTouch),
    ("he touched the net with his hand", Signal::NetTouch),
    ("serve into the net", Signal::NetTouch),
    ("stepped on the line", Signal::LineOrUnder),
    ("foot fault", Signal::LineOrUnder),
    ("under the net", Signal::LineOrUnder),
    ("penetraton", Signal::LineOrUnder),
    ("ball hit the antenna", Signal::BallOut),
    ("antena", Signal::BallOut),
    ("ceiling", Signal::BallOut),
    ("ball out", Signal::BallOut),
    ("ball in", Signal::BallIn),
    ("two players change", Signal::Substitution),
    ("substitusion", Signal::Substitution),
    ("time out", Signal::TimeOut),
    ("timeout", Signal::TimeOut),
    ("yellow card", Signal::Warning),
    ("red card", Signal::Penalty),
    ("caught", Signal::Catch),
    ("carried", Signal::Catch),
    ("lifted the ball", Signal::Catch),
    ("double", Signal::DoubleContact),
    ("dobule contact", Signal::DoubleContact),
    ("touched it twice", Signal::DoubleContact),
    ("four hits", Signal::FourHits),
    ("forth touch", Signal::FourHits),
    ("reached over the net", Signal::OverNet),
    ("back row attack", Signal::AttackFault),
    ("smash from the back row", Signal::AttackFault),
    ("rotation", Signal::Position),
    ("wrong server", Signal::Position),
    ("screen", Signal::BlockOrScreen),
    ("blocked the serve", Signal::BlockOrScreen),
    ("fingertips", Signal::BallTouched),
    ("swap sides", Signal::ChangeOfCourts),
    ("both at the same time", Signal::Replay),
    ("too slow serve", Signal::ServiceDelay),
    ("wasting time", Signal::DelayWarning),
    ("19", Signal::NetTouch),
];

#[test]
fn what_happened_leads_to_its_signal() {
    let wrong: Vec<String> = FIRST
        .into_iter()
        .filter_map(|(typed, wanted)| {
            let found = find_signals(typed);
            (found.first() != Some(&wanted))
                .then(|| format!("{typed:?}: {found:?}, not {wanted:?}"))
        })
        .collect();
    assert_eq!(wrong, [""; 0]);
}

#[test]
fn every_signal_is_found_by_its_name() {
    for signal in Signal::ALL {
        assert_eq!(
            find_signals(text::signal(signal)).first(),
            Some(&signal),
            "{signal:?}"
        );
    }
}

/// One slip in any place of a longer name still leads there: a letter left out, doubled, or swapped with the
/// next.
#[test]
fn a_slip_is_forgiven() {
    for signal in Signal::ALL {
        let name = text::signal(signal).to_lowercase();
        let letters: Vec<char> = name.chars().collect();
        for at in 0..letters.len() - 1 {
            let mut slips = vec![letters.clone(), letters.clone(), letters.clone()];
            slips[0].remove(at);
            slips[1].insert(at, letters[at]);
            slips[2].swap(at, at + 1);
            for slip in slips {
                let typed: String = slip.into_iter().collect();
                let found = find_signals(&typed);
                let place = found.iter().position(|one| *one == signal);
                assert!(place.is_some_and(|place| place < 4), "{typed:?}: {found:?}");
            }
        }
    }
}

#[test]
fn every_reason_leads_to_its_signal() {
    let rules = Preset::International.rules();
    for cause in Cause::ALL {
        if let Some(signal) = cause.signal() {
            let found = find_signals(&text::cause(cause, &rules));
            let place = found.iter().position(|one| *one == signal);
            assert!(place.is_some_and(|place| place < 3), "{cause:?}: {found:?}");
        }
    }
}

#[test]
fn nothing_typed_is_everything_and_nonsense_is_nothing() {
    assert_eq!(find_signals("").len(), Signal::ALL.len());
    assert_eq!(find_signals("  ,. ").len(), Signal::ALL.len());
    assert_eq!(find_signals("xylophone"), []);
    // A word that says little alone is searched all the same.
    assert!(!find_signals("ball").is_empty());
    for hint in text::learn::find_examples() {
        assert!(!find_signals(hint).is_empty(), "{hint}");
    }
}
