//! The situations that a learner changes: what the words have for each, and what can be reached in each.

use learn::{Call, Decided, Dial, Margin, Reading, Scale, Situation, Topic, Values};
use proptest::prelude::*;
use rules::{Cause, Signal};

/// Some settings of a dial, both ends among them.
fn settings(dial: Dial) -> Vec<f64> {
    match dial.scale() {
        Scale::Metres { from, to, .. } | Scale::Seconds { from, to, .. } => (0..=8)
            .map(|n| from + (to - from) * f64::from(n) / 8.0)
            .collect(),
        Scale::Choice(count) => (0..count).map(f64::from).collect(),
    }
}

/// Everything that is decided when one or two dials are changed from how they stand at first.
fn reached(situation: Situation) -> Vec<(Values, Decided)> {
    let start = situation.start();
    let dials: Vec<Dial> = start.dials().collect();
    let mut found = Vec::new();
    for (at, one) in dials.iter().enumerate() {
        for other in &dials[at..] {
            for first in settings(*one) {
                for second in settings(*other) {
                    let mut set = start.clone();
                    set.set(*one, first);
                    set.set(*other, second);
                    found.extend(situation.decide(&set).into_iter().map(|d| (set.clone(), d)));
                }
            }
        }
    }
    found
}

#[test]
fn every_rule_that_is_reached_has_its_reason_in_words() {
    for situation in Situation::ALL {
        for (set, decided) in reached(situation) {
            assert!(
                !text::learn::why(&decided).is_empty(),
                "{situation:?}: {decided:?} of {set:?}"
            );
        }
    }
}

/// Where no hand can change the answer there is nothing to learn: each situation has at least two.
#[test]
fn every_situation_has_both_answers() {
    for situation in Situation::ALL {
        let calls: Vec<Call> = reached(situation)
            .iter()
            .map(|(_, decided)| decided.ruling.call)
            .collect();
        let differs = calls.iter().any(|call| *call != calls[0]);
        assert!(differs || situation == Situation::Screen, "{situation:?}");
    }
}

/// Two tall players with hands up, close to the net and in the receiver's way, hide a flat service; the high
/// one is seen (12.5.2).
#[test]
fn f9_14_a_screen_can_be_set_up_and_taken_down() {
    let mut set = Situation::Screen.start();
    assert!(!Situation::Screen.decide(&set)[0].ruling.is_fault());
    for (dial, value) in [
        (Dial::PlayerDepth(1), 0.3),
        (Dial::PlayerRight(1), 0.0),
        (Dial::Tall, 2.05),
        (Dial::HandsUp, 1.0),
    ] {
        set.set(dial, value);
    }
    assert!(Situation::Screen.decide(&set)[0].ruling.is_fault());
    set.set(Dial::ServiceFlight, 1.0);
    assert!(!Situation::Screen.decide(&set)[0].ruling.is_fault());
}

/// Both services of the screen come over the net (12.6.2).
#[test]
fn both_services_come_over_the_net() {
    for flight in [0.0, 1.0] {
        let mut set = Situation::Screen.start();
        set.set(Dial::ServiceFlight, flight);
        let path = learn::service_path(&set);
        let last = path.last().expect("a way");
        assert!(last.x > -1.2 && last.x < 0.0, "{last:?}");
        let lowest = path.iter().map(|p| p.z).fold(f64::INFINITY, f64::min);
        assert!(lowest - learn::BALL_RADIUS > learn::CROSSED_NET, "{lowest}");
    }
}

#[test]
fn every_reason_has_its_page_and_every_page_something_to_try() {
    for cause in Cause::ALL {
        let page = Topic::of(cause);
        assert_eq!(page.is_none(), cause == Cause::NotSaid);
        assert_eq!(Topic::from_code(cause.code()), page.or(None));
    }
    let mut shown: Vec<Situation> = Vec::new();
    for topic in Topic::ALL {
        assert_eq!(Topic::from_code(topic.code()), Some(topic));
        assert!(!topic.situations().is_empty());
        shown.extend(topic.situations());
    }
    for situation in Situation::ALL {
        let on = shown.iter().filter(|one| **one == situation).count();
        assert_eq!(on, 1, "{situation:?} stands on one page");
    }
    assert_eq!(Topic::from_code("not_said"), None);
    assert_eq!(Topic::from_code("no such page"), None);
}

/// The later of two faults would not have been allowed a moment earlier: it would have been played again.
#[test]
fn what_is_missing_of_two_faults_is_the_other_answer() {
    let start = Situation::TwoFaults.start();
    let decided = Situation::TwoFaults.decide(&start)[0];
    assert_eq!(decided.ruling.rule, "6.1.2.1");
    let said = text::learn::margin(&decided);
    assert!(said.ends_with("away from the other answer"), "{said}");
}

/// A signal leads to each page once, wherever its reasons stand in their list.
#[test]
fn a_signal_names_each_of_its_pages_once() {
    let pages = |signal| Topic::of_signal(signal).collect::<Vec<Topic>>();
    assert_eq!(pages(Signal::BallOut), [Topic::InOut, Topic::Antenna]);
    assert_eq!(pages(Signal::NetTouch), [Topic::NetTouch, Topic::Service]);
    assert!(pages(Signal::TimeOut).is_empty());
}

/// The reason of a page can come out on it.
#[test]
fn the_fault_of_a_page_can_be_made_on_it() {
    for cause in Cause::ALL {
        let Some(topic) = Topic::of(cause) else {
            continue;
        };
        let made = topic.situations().iter().any(|situation| {
            let is = |d: &Decided| matches!(d.ruling.call, Call::Fault { cause: of, .. } if of == cause);
            // A player outside the court is signalled as one, and written as a fault of positions; a service
            // that goes over the antenna goes out.
            let stands_for = match cause {
                Cause::OutsideCourt => Some(Cause::PositionFault),
                _ => None,
            };
            reached(*situation).iter().any(|(_, d)| {
                is(d)
                    || matches!((d.ruling.call, stands_for), (Call::Fault { cause: of, .. }, Some(same)) if of == same)
            })
        });
        // A screen needs four dials: see above.
        assert!(made || cause == Cause::Screen, "{cause:?}");
    }
}

#[test]
fn every_choice_has_words_and_every_control_a_name() {
    for situation in Situation::ALL {
        for dial in situation.start().dials() {
            assert!(!text::learn::dial(dial).is_empty());
            let words = text::learn::choices(dial);
            let count = match dial.scale() {
                Scale::Choice(count) => usize::from(count),
                Scale::Metres { .. } | Scale::Seconds { .. } => 0,
            };
            assert_eq!(words.len(), count, "{dial:?}");
        }
    }
}

/// How a control stands is said in a way that tells its steps apart.
#[test]
fn every_step_of_a_control_sounds_different() {
    for situation in Situation::ALL {
        for dial in situation.start().dials() {
            let (Scale::Metres { from, to, step } | Scale::Seconds { from, to, step }) =
                dial.scale()
            else {
                continue;
            };
            let steps = ((to - from) / step).round() as u32;
            let mut before = String::new();
            for n in 0..=steps {
                let mut set = situation.start();
                set.set(dial, from + f64::from(n) * step);
                let words = text::learn::set_to(dial, set.get(dial));
                assert_ne!(words, before, "{dial:?}");
                before = words;
            }
        }
    }
}

/// The stricter form for juniors is never milder.
#[test]
fn f20_24_junior_is_at_least_as_strict() {
    for situation in [Situation::Foot, Situation::Body] {
        for (set, _) in reached(situation) {
            let all = situation.decide(&set);
            let by = |reading| {
                all.iter()
                    .find(|d| d.reading == reading)
                    .is_some_and(|d| d.ruling.is_fault())
            };
            assert!(by(Reading::Junior) || !by(Reading::Standard), "{set:?}");
        }
    }
}

proptest! {
    /// Whatever is set lies on the scale, and setting it once more changes nothing.
    #[test]
    fn a_setting_stays_on_its_scale(which in 0..Situation::ALL.len(), value in -20.0..20.0f64) {
        let situation = Situation::ALL[which];
        for dial in situation.start().dials() {
            let mut set = situation.start();
            set.set(dial, value);
            let is = set.get(dial);
            let (from, to) = match dial.scale() {
                Scale::Metres { from, to, .. } | Scale::Seconds { from, to, .. } => (from, to),
                Scale::Choice(count) => (0.0, f64::from(count) - 1.0),
            };
            prop_assert!((from..=to).contains(&is));
            let again = set.clone();
            set.set(dial, is);
            prop_assert_eq!(set, again);
        }
    }

    /// The nearer a measured margin comes to nothing, the nearer is the other answer: the foot.
    #[test]
    fn the_margin_of_the_foot_is_what_is_left(heel in -0.4..0.5f64) {
        let mut set = Situation::Foot.start();
        set.set(Dial::Heel, heel);
        let ruling = Situation::Foot.decide(&set)[0].ruling;
        let Margin::Metres(margin) = ruling.margin else {
            return Err(TestCaseError::fail("it is measured"));
        };
        let back = if ruling.is_fault() { margin + 0.01 } else { -margin - 0.01 };
        let mut other = set.clone();
        other.set(Dial::Heel, set.get(Dial::Heel) + back);
        if (other.get(Dial::Heel) - set.get(Dial::Heel) - back).abs() < 0.006 {
            prop_assert_ne!(Situation::Foot.decide(&other)[0].ruling.is_fault(), ruling.is_fault());
        }
    }
}

/// What wins at a service, by every combination of the three (7.5.2, 7.5.3, 12.7).
#[test]
fn the_page_of_two_faults_tells_the_precedence_at_the_service() {
    let lost_by = |server: bool, receivers: bool, wide: bool| {
        let mut set = Situation::AtTheService.start();
        for (dial, yes) in [
            (Dial::ServerOnLine, server),
            (Dial::ReceiversSwapped, receivers),
            (Dial::ServiceWide, wide),
        ] {
            set.set(dial, f64::from(u8::from(yes)));
        }
        match Situation::AtTheService.decide(&set)[0].ruling.call {
            Call::Fault { cause, .. } => Some(cause),
            Call::PlayOn | Call::Replay => None,
        }
    };
    for (receivers, wide) in [(false, false), (false, true), (true, false), (true, true)] {
        assert_eq!(lost_by(true, receivers, wide), Some(Cause::ServiceFoot));
    }
    for wide in [false, true] {
        assert_eq!(lost_by(false, true, wide), Some(Cause::PositionFault));
    }
    assert_eq!(lost_by(false, false, true), Some(Cause::ServiceOut));
    assert_eq!(lost_by(false, false, false), None);
    assert!(Topic::TwoFaults
        .situations()
        .contains(&Situation::AtTheService));
}
