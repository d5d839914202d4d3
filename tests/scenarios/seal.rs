//! The seal: what is closed stays closed until it is reopened for all to see (match-log contract).

use game::{Kind, Outcome, Refusal};
use rules::Team;
use Team::{A, B};

use crate::story::{strike, time_out, Story};

fn sealing() -> Kind {
    Kind::Seal {
        code: "23456789AC".to_owned(),
    }
}

fn reopening() -> Kind {
    Kind::Reopen {
        why: Some("a name was wrong".to_owned()),
    }
}

fn remark() -> Kind {
    Kind::Remark {
        text: "late bus".to_owned(),
        team: None,
    }
}

#[test]
fn log_nothing_is_entered_under_a_seal() {
    let mut story = Story::international();
    story.rallies("AB").enter(sealing());
    let entry = story.last();
    let sealed = || Refusal::Sealed { entry };
    story
        .refuses_even_so(remark(), "log", sealed())
        .refuses_even_so(time_out(A), "log", sealed())
        .refuses_even_so(strike(entry - 1), "log", sealed());
    story.enter(reopening()).enter(remark()).enter(time_out(B));
}

#[test]
fn log_a_record_is_sealed_once_and_reopened_once() {
    let mut story = Story::international();
    story.refuses_even_so(reopening(), "log", Refusal::NotSealed);
    story.enter(sealing());
    let entry = story.last();
    story
        .refuses_even_so(sealing(), "log", Refusal::Sealed { entry })
        .enter(reopening())
        .refuses_even_so(reopening(), "log", Refusal::NotSealed)
        .enter(sealing());
    assert_eq!(story.timeline().state().sealed(), Some(story.last()));
}

#[test]
fn log_seals_and_reopenings_stand() {
    let mut story = Story::international();
    story.enter(sealing()).enter(reopening());
    let last = story.last();
    for entry in [last - 1, last] {
        story.refuses_even_so(strike(entry), "log", Refusal::SealStands { entry });
    }
}

/// A strike that stands in a file under a seal strikes nothing.
#[test]
fn log_nothing_is_taken_back_under_a_seal() {
    let mut story = Story::international();
    story.rallies("AB").enter(sealing());
    let entry = story.last();
    let mut timeline = story.timeline().clone();
    let mut late = game::Entry::new(entry + 1, strike(entry - 1));
    assert_eq!(
        timeline.push(late.clone()),
        &Outcome::Refused(Refusal::Sealed { entry })
    );
    late.n += 1;
    late.insist = Some("it was wrong".to_owned());
    assert_eq!(
        timeline.push(late),
        &Outcome::Refused(Refusal::Sealed { entry })
    );
    assert_eq!(timeline.outcome(entry - 1), Some(&Outcome::Accepted));
    assert_eq!(timeline.state().score().b, 1);
}
