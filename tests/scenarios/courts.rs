//! The change of courts in the deciding set (18.2.2).

use game::entry::{Fault, Found};
use game::{InSet, Kind, Level, Notice, Phase, Refusal};
use rules::{Preset, Sets, Team};
use Team::{A, B};

use crate::story::{card, coach, late, since, toss, Story};

/// 18.2.2: the teams change when one of them has eight points; the score and the places stay.
#[test]
fn r18_2_2_courts_are_changed_at_eight() {
    let mut story = Story::international();
    story.until_the_decider().rallies("AAAAAAA");
    story
        .refuses(
            Kind::ChangeCourts,
            "18.2.2",
            Refusal::CourtsNotDue { at: 8 },
        )
        .without("change_courts")
        .rallies("A")
        .notices(&Notice::ChangeCourts)
        .enter(Kind::ChangeCourts)
        .score(8, 0)
        .serves(A, 2)
        .stand(A, &[2, 3, 4, 5, 6, 1])
        .without("change_courts");
    assert_eq!(story.timeline().state().left(), Some(B));
}

/// 18.2.2: once.
#[test]
fn r18_2_2_courts_are_changed_once() {
    Story::international()
        .until_the_decider()
        .rallies("BBBBBBBB")
        .enter(Kind::ChangeCourts)
        .refuses(Kind::ChangeCourts, "18.2.2", Refusal::CourtsChanged)
        .rallies("AAAAAAAA")
        .without("change_courts");
}

/// 18.2.2: a forgotten change is made as soon as it is noticed, the score stays.
#[test]
fn r18_2_2_a_forgotten_change_is_made_late() {
    let mut story = Story::international();
    story
        .until_the_decider()
        .rallies("BBBBBBBBBBA")
        .notices(&Notice::ChangeCourts)
        .enter(Kind::ChangeCourts)
        .score(1, 10);
    assert_eq!(story.timeline().state().left(), Some(B));
}

/// 18.2.2: a penalty point can be the eighth.
#[test]
fn r18_2_2_a_penalty_brings_the_change() {
    Story::international()
        .until_the_decider()
        .rallies("BBBBBBB")
        .enter(card(A, coach(), Level::Penalty))
        .score(0, 8)
        .notices(&Notice::ChangeCourts);
}

/// Only the deciding set has the change (18.2.2).
#[test]
fn r18_2_2_an_ordinary_set_has_no_change() {
    Story::international().rallies("AAAAAAAA").refuses(
        Kind::ChangeCourts,
        "18.2.2",
        Refusal::NotDecider,
    );
    let mut story = Story::listed(Preset::International.rules(), &[12]);
    story.enter(toss(A, A)).refuses_even_so(
        Kind::ChangeCourts,
        "18.2.2",
        Refusal::NoSetRunning {
            asked: InSet::ChangeOfCourts,
        },
    );
}

/// Where a competition plays the decider without a change, none is made.
#[test]
fn r18_2_2_a_competition_may_play_without_the_change() {
    let mut rules = Preset::SchoolJunior.rules();
    rules.decider.change_courts_at = None;
    let mut story = Story::by(rules);
    story.set_to(A).sets_out().set_to(B);
    story
        .enter(toss(A, A))
        .sets_out()
        .rallies("AAAAAAAAAA")
        .without("change_courts")
        .refuses(Kind::ChangeCourts, "18.2.2", Refusal::NotDecider);
}

/// The score of the change is the competition's: 13 of a decider to 25 (school tournament texts).
#[test]
fn r18_2_2_the_score_of_the_change_is_the_competition_s() {
    let mut rules = Preset::International.rules();
    rules.sets = Sets::BestOf(3);
    rules.decider.to.target = 25;
    rules.decider.change_courts_at = Some(13);
    let mut story = Story::by(rules);
    story.set_to(A).sets_out().set_to(B);
    story
        .enter(toss(A, A))
        .sets_out()
        .rallies(&"A".repeat(12))
        .refuses(
            Kind::ChangeCourts,
            "18.2.2",
            Refusal::CourtsNotDue { at: 13 },
        )
        .rallies("A")
        .enter(Kind::ChangeCourts)
        .phase(Phase::Playing);
}

/// Points cancelled after the change do not change courts back (match-log contract, settled points;
/// the rule is silent).
#[test]
fn r18_2_2_a_change_is_not_undone_by_cancelled_points() {
    let mut story = Story::international();
    story
        .until_the_decider()
        .rallies("BBBBBBBB")
        .enter(Kind::ChangeCourts)
        .enter(late(B, Fault::Rotation, since(0, 5), Found::Rally))
        .score(1, 5)
        .rallies("BBB")
        .score(1, 8)
        .without("change_courts");
    assert_eq!(story.timeline().state().left(), Some(B));
}

/// The referee may have them change early and say so (match-log contract: insist).
#[test]
fn r18_2_2_insisting_changes_courts_early() {
    let mut story = Story::international();
    story
        .until_the_decider()
        .rallies("BBBBBBB")
        .insists(Kind::ChangeCourts, Refusal::CourtsNotDue { at: 8 });
    assert_eq!(story.timeline().state().left(), Some(B));
}
