//! The rally trainer, as a learner goes through it: what a scene shows is drawn natively from the same seed, so
//! that the story knows what is true of it.

use app::learner::Learner;
use learn::{draw, serves_next, whistle_from, Call, Drawn, Kind, Level};
use rules::Preset;
use serde_json::json;
use text::learn as words;

use crate::referee::Referee;
use crate::stage::Stage;
use crate::{Ran, Test, ALL};

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "trainer_in_steps_knows_right_from_wrong_and_forgets_on_a_tap",
        engines: ALL,
        run: in_steps,
    },
    Test {
        name: "trainer_as_it_happens_asks_after_a_whistle_and_answers_without_one",
        engines: ALL,
        run: as_it_happens,
    },
];

/// To the page.
fn open(referee: &mut Referee) {
    referee.tap_at("#to-learn");
    referee.tap(&format!("{} {}", words::trainer(), words::trainer_more()));
    referee.reads(words::trainer_how()[0]);
}

/// The scene at hand, drawn here from what it was drawn from there. It is another one than `before`.
fn at_hand(referee: &mut Referee, before: &mut String) -> Drawn {
    let shown = "(document.querySelector('.trainer-rally')?.dataset.scene ?? '')";
    referee.browser().wait_until(
        "another scene",
        &format!("{shown} && {shown} !== {}", json!(before)),
    );
    let from = referee.browser().value(shown);
    let from = from.as_str().expect("what it was drawn from");
    *before = from.to_owned();
    let parts: Vec<&str> = from.split(' ').collect();
    let kind = Kind::from_code(parts[0]).expect("a kind");
    let level = Level::ALL
        .into_iter()
        .find(|l| format!("{l:?}") == parts[1]);
    let seed = parts[2].parse().expect("a seed");
    draw(kind, level.expect("a level").band(kind), seed).expect("the scene")
}

/// Steps to the sentence after which it may be whistled, or through all of them.
fn step_through(referee: &mut Referee, drawn: &Drawn) {
    let all = words::told(&drawn.scene, &drawn.verdict);
    let from = whistle_from(&drawn.verdict);
    let mut step = 1;
    loop {
        referee.browser().wait_until(
            "the next sentence",
            &format!("document.querySelectorAll('.trainer-told li').length === {step}"),
        );
        let next = all.get(step).map_or(f64::INFINITY, |told| told.at);
        if from.is_some_and(|from| from < next) {
            referee.tap_at("#whistle");
            return;
        }
        referee.tap_at("#step");
        if step == all.len() {
            return;
        }
        step += 1;
    }
}

/// Answers the second and the third beat rightly.
fn decides(referee: &mut Referee, drawn: &Drawn) {
    match drawn.verdict.ruling.call {
        Call::PlayOn => {}
        Call::Replay => referee.tap(words::play_again()),
        Call::Fault { cause, .. } => {
            let side = serves_next(&drawn.scene, &drawn.verdict).expect("somebody serves");
            referee.tap(&words::arm_of(side));
            referee.tap(&text::cause(cause, &Preset::International.rules()));
        }
    }
}

fn in_steps(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    open(referee);
    referee.browser().picture("trainer");
    referee.tap(words::in_steps());
    referee.tap(words::begin());
    let mut scene = String::new();
    for _ in 0..4 {
        let drawn = at_hand(referee, &mut scene);
        step_through(referee, &drawn);
        decides(referee, &drawn);
        if drawn.verdict.ruling.call == Call::PlayOn {
            referee.reads("No whistle, and that is correct.");
        } else {
            referee.reads("Whistle: in time.");
            referee.reads(words::reason_said(true));
        }
        referee.reads(&words::decided(&drawn.verdict));
        referee
            .browser()
            .picture(&format!("trainer-steps-{}", drawn.kind.code()));
        referee.tap_at("#next");
    }
    // A whistle before anything happened is wrong whatever comes.
    let drawn = at_hand(referee, &mut scene);
    if whistle_from(&drawn.verdict)
        .is_none_or(|from| words::told(&drawn.scene, &drawn.verdict)[1].at < from)
    {
        referee.tap_at("#whistle");
    } else {
        step_through(referee, &drawn);
        decides(referee, &drawn);
    }
    referee.tap(words::stop());
    referee.reads(words::try_next());
    referee.reads("5 rallies, ");
    referee.browser().picture("trainer-over");
    let kept = "localStorage.getItem('dutystand/s/learner') ?? ''";
    let text = referee.browser().value(kept);
    let learner = Learner::read(text.as_str().expect("a text")).expect("what was practised");
    assert_eq!(learner.kinds().map(|(_, k)| k.shown).sum::<u32>(), 5);
    assert!(learner.kinds().map(|(_, k)| k.right).sum::<u32>() >= 4);
    // In steps no time is measured.
    assert_eq!(learner.median(), None);
    // It is still there after a reload, and gone with one tap.
    referee.browser().reload();
    referee.stage.started();
    referee.reads(words::practised());
    referee.tap(words::forget());
    referee.reads(words::forgotten());
    assert_eq!(referee.browser().value(kept).as_str(), Some(""));
    // A slip of the thumb costs nothing.
    referee.tap(text::undo());
    referee.reads(words::practised());
    assert_eq!(referee.browser().value(kept), text);
    referee.tap(words::forget());
    referee.reads(words::forgotten());
    assert_eq!(referee.browser().value(kept), json!(""));
    referee.browser().reload();
    referee.stage.started();
    referee.reads(words::trainer_how()[0]);
    assert!(!referee.sees(words::forget()));
    Ok(())
}

fn as_it_happens(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    open(referee);
    referee.tap(words::moving());
    referee.tap(words::begin());
    let mut scene = String::new();
    // Nobody whistles: the scene runs to its end and says whether that was right.
    let first = at_hand(referee, &mut scene);
    referee.browser().picture("trainer-runs");
    referee.reads(match whistle_from(&first.verdict) {
        Some(_) => "The rally was over, and you did not whistle.",
        None => "No whistle, and that is correct.",
    });
    referee.reads(&words::decided(&first.verdict));
    referee.browser().picture("trainer-answer");
    // A whistle after a fault leads on, whether it is in time or late. A machine that is so slow that the
    // scene is over before the tap comes to it gets another one.
    for _ in 0..12 {
        referee.tap_at("#next");
        let drawn = at_hand(referee, &mut scene);
        let Some(from) = whistle_from(&drawn.verdict) else {
            referee.reads("No whistle, and that is correct.");
            continue;
        };
        // In the page itself, so that a slow driver does not come too late: the first moment is held for 900 ms.
        referee.browser().run(
            "setTimeout(() => document.querySelector('#whistle')?.dispatchEvent(
               new PointerEvent('pointerdown', { bubbles: true, isPrimary: true })), arguments[0])",
            json!([(0.9 + from + 0.25) * 1000.0]),
        );
        referee.browser().wait_until(
            "the next beat, or the answer",
            "document.querySelector('.trainer-arms .arm') || document.querySelector('#next')",
        );
        let asks = "!!document.querySelector('.trainer-arms .arm')";
        if referee.browser().value(asks) == json!(true) {
            referee.browser().picture("trainer-side");
            let side = serves_next(&drawn.scene, &drawn.verdict).expect("somebody serves");
            referee.tap(&words::arm_of(side));
            referee.reads(words::why_label());
            referee.browser().picture("trainer-why");
            if let Call::Fault { cause, .. } = drawn.verdict.ruling.call {
                referee.tap(&text::cause(cause, &Preset::International.rules()));
                referee.reads(words::reason_said(true));
            }
            referee.reads(words::side_shown(true));
            referee.browser().picture("trainer-right");
            let text = referee
                .browser()
                .value("localStorage.getItem('dutystand/s/learner')");
            let learner =
                Learner::read(text.as_str().expect("a text")).expect("what was practised");
            let median = learner.median().expect("a time was measured");
            assert!((100..60_000).contains(&median), "{median}");
            return Ok(());
        }
    }
    panic!("no whistle came in time in twelve scenes");
}
