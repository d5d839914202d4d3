//! A scene told in sentences: whoever only hears it can decide.

use super::{about, deciding, told};
use learn::{Call, Kind, Margin};
use text::learn::{fact, told as sentences, why_in_scene};

#[test]
fn every_kind_is_told_and_nobody_says_the_answer() {
    for kind in Kind::all() {
        for drawn in told(kind) {
            let all = sentences(&drawn.scene, &drawn.verdict);
            assert!(all.len() >= 3, "{kind:?} {all:?}");
            assert!(all.windows(2).all(|pair| pair[0].at <= pair[1].at));
            for told in &all {
                let say = &told.say;
                assert!(say.ends_with('.') && !say.contains("  "), "{say}");
                let longest = say.split(". ").map(|s| s.split_whitespace().count()).max();
                assert!(longest <= Some(20), "{say}");
                let words = say.to_lowercase();
                assert!(
                    !words.contains("fault") && !words.contains("allowed"),
                    "{say}"
                );
                assert!(told.at >= 0.0 && told.at <= drawn.scene.until());
            }
        }
    }
}

#[test]
fn what_decides_is_among_the_sentences() {
    for kind in Kind::all() {
        for drawn in told(kind) {
            if drawn.verdict.ruling.call == Call::PlayOn {
                // What is near in metres is spoken of.
                let Some(cause) = kind.cause() else { continue };
                let near = about(&drawn, cause);
                let near = near
                    .iter()
                    .filter(|j| matches!(j.ruling.margin, Margin::Metres(by) if by < 0.3));
                for judged in near {
                    assert!(fact(&drawn.scene, judged).is_some(), "{judged:?}");
                }
                continue;
            }
            let one = deciding(&drawn);
            let all = sentences(&drawn.scene, &drawn.verdict);
            // About the moment that decides something is said.
            assert!(
                all.iter().any(|told| (told.at - one.moment).abs() < 0.2),
                "{kind:?} {all:?}"
            );
        }
    }
}

#[test]
fn every_decision_of_a_scene_has_its_reason_in_words() {
    for kind in Kind::all() {
        for drawn in told(kind) {
            for judged in &drawn.verdict.all {
                let (rule, why) = why_in_scene(judged);
                assert!(!rule.is_empty() && !why.is_empty(), "{judged:?}");
            }
        }
    }
}
