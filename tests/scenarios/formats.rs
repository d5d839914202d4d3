//! Formats: sets, targets, caps, players on court, presets (6.2, 6.3, 7.3.1; school texts).

use game::{Kind, Notice, Phase, Refusal};
use rules::{
    Edition, Preset, Rules, SetLimit, SetTarget, Sets, SubstitutionPolicy, Team, UnderNet,
    WarmUpStyle,
};
use Team::{A, B};

use crate::story::{card, coach, libero, toss, Story};
use crate::support::line_up;
use game::Level;

fn with(change: impl FnOnce(&mut Rules)) -> Rules {
    let mut rules = Preset::International.rules();
    change(&mut rules);
    rules
}

/// Best of three: two sets win; the third is the deciding one.
#[test]
fn r6_3_1_two_sets_win_a_best_of_three() {
    let rules = with(|r| r.sets = Sets::BestOf(3));
    Story::by(rules)
        .set_to(A)
        .sets_out()
        .set_to(A)
        .won_by(Some(A));
    let mut story = Story::by(rules);
    story.set_to(A).sets_out().set_to(B);
    story
        .notices(&Notice::Toss)
        .enter(toss(B, B))
        .sets_out()
        .rallies(&"B".repeat(15))
        .sets(&[(25, 0), (0, 25), (0, 15)])
        .won_by(Some(B));
}

/// Best of one is one ordinary set, to 25 and without a change of courts (match-log contract).
#[test]
fn r6_2_one_set_alone_is_an_ordinary_one() {
    Story::by(with(|r| r.sets = Sets::BestOf(1)))
        .rallies(&"A".repeat(15))
        .phase(Phase::Playing)
        .without("change_courts")
        .refuses(Kind::ChangeCourts, "18.2.2", Refusal::NotDecider)
        .rallies(&"A".repeat(10))
        .sets(&[(25, 0)])
        .won_by(Some(A));
}

/// Fixed sets (school leagues): all are played, no decider, no toss for the last, level is level.
#[test]
fn school_fixed_sets_are_all_played() {
    let mut story = Story::by(with(|r| r.sets = Sets::Fixed(3)));
    story
        .set_to(A)
        .sets_out()
        .set_to(A)
        .phase(Phase::BetweenSets);
    story
        .refuses(toss(A, A), "7.1", Refusal::TossNotDue { set: 3 })
        .sets_out()
        .serves(A, 1)
        .rallies(&"B".repeat(15))
        .phase(Phase::Playing)
        .without("match_point")
        .rallies(&"B".repeat(10))
        .sets(&[(25, 0), (25, 0), (0, 25)])
        .won_by(Some(A));
}

#[test]
fn school_two_fixed_sets_can_end_level() {
    Story::by(with(|r| r.sets = Sets::Fixed(2)))
        .set_to(A)
        .sets_out()
        .set_to(B)
        .won_by(None);
}

/// A cap wins with any lead (youth tournament texts).
#[test]
fn school_a_cap_wins_with_any_lead() {
    Story::by(with(|r| r.set.cap = Some(27)))
        .rallies(&"AB".repeat(26))
        .phase(Phase::Playing)
        .notices(&Notice::SetPoint { team: A })
        .notices(&Notice::SetPoint { team: B })
        .rallies("B")
        .sets(&[(26, 27)]);
    // Below the cap the lead of two is needed.
    Story::by(with(|r| r.set.cap = Some(27)))
        .rallies(&"AB".repeat(24))
        .rallies("A")
        .phase(Phase::Playing)
        .rallies("A")
        .sets(&[(26, 24)]);
}

/// A penalty point reaches a cap like any other.
#[test]
fn school_a_cap_is_reached_by_a_penalty() {
    Story::by(with(|r| r.set.cap = Some(25)))
        .rallies(&"AB".repeat(24))
        .enter(card(A, coach(), Level::Penalty))
        .sets(&[(24, 25)]);
}

/// A target of its own, a lead of one (tournament texts).
#[test]
fn school_other_targets_and_a_lead_of_one() {
    Story::by(with(|r| {
        r.set = SetTarget {
            target: 15,
            lead: 1,
            cap: None,
        };
    }))
    .rallies(&"AB".repeat(14))
    .rallies("B")
    .sets(&[(14, 15)]);
    let decider = with(|r| {
        r.sets = Sets::BestOf(3);
        r.decider.to = SetTarget {
            target: 25,
            lead: 2,
            cap: Some(26),
        };
    });
    let mut story = Story::by(decider);
    story.set_to(A).sets_out().set_to(B);
    story
        .enter(toss(A, A))
        .sets_out()
        .rallies(&"AB".repeat(25))
        .phase(Phase::Playing)
        .rallies("A")
        .sets(&[(25, 0), (0, 25), (26, 25)]);
}

/// Four or five on court: the rotation goes round that many.
#[test]
fn r7_3_1_fewer_on_court_rotate_among_themselves() {
    for players in [4u16, 5] {
        let rules = with(|r| r.players_on_court = players as u8);
        let mut story = Story::listed(rules, &[12]);
        story.refuses(
            line_up(A, &[1, 2, 3, 4, 5, 6]),
            "7.3.1",
            Refusal::LineUpSize {
                numbers: 6,
                needed: players as u8,
            },
        );
        story.enter(toss(A, A)).sets_out();
        for turn in 1..=players {
            story.rallies("BA").serves(A, turn % players + 1);
        }
        let all: Vec<u16> = (1..=players).collect();
        story.stand(A, &all).stand(B, &all);
    }
}

/// Five on court: place 5 is in the back row (places 2, 3 and 4 are in front, 7.4.1).
#[test]
fn r7_4_1_of_five_place_five_is_in_the_back() {
    Story::by(with(|r| r.players_on_court = 5))
        .enter(libero(A, 5, 12))
        .stand(A, &[1, 2, 3, 4, 12]);
}

/// The presets as the contract has them.
#[test]
fn the_presets_are_those_of_the_contract() {
    let international = Preset::International.rules();
    assert_eq!(international.edition, Edition::E2025);
    assert_eq!(international.sets, Sets::BestOf(5));
    assert_eq!(
        (
            international.set.target,
            international.set.lead,
            international.set.cap
        ),
        (25, 2, None)
    );
    let decider = international.decider;
    assert_eq!(
        (decider.to.target, decider.to.lead, decider.to.cap),
        (15, 2, None)
    );
    assert_eq!(decider.change_courts_at, Some(8));
    assert_eq!(
        (
            international.time_outs.per_set,
            international.time_outs.seconds
        ),
        (Some(2), 30)
    );
    let limits = international.substitutions;
    assert_eq!(limits.policy, SubstitutionPolicy::Paired);
    assert_eq!((limits.per_set, limits.entries_per_player), (Some(6), None));
    assert_eq!(
        (international.liberos, international.players_on_court),
        (2, 6)
    );
    assert_eq!(
        (
            international.interval_seconds,
            international.service_seconds
        ),
        (180, 8)
    );
    assert_eq!(
        (international.warm_up.style, international.warm_up.minutes),
        (WarmUpStyle::Shared, 10)
    );

    let senior = Preset::SchoolSenior.rules();
    assert_eq!((senior.sets, senior.liberos), (Sets::BestOf(5), 1));
    assert_eq!(
        (senior.warm_up.style, senior.warm_up.minutes),
        (WarmUpStyle::Separate, 5)
    );
    let junior = Preset::SchoolJunior.rules();
    assert_eq!((junior.sets, junior.liberos), (Sets::BestOf(3), 0));
    assert_eq!(
        (junior.warm_up.style, junior.warm_up.minutes),
        (WarmUpStyle::Separate, 3)
    );
    assert_eq!(junior.under_net, UnderNet::Junior);
    for school in [senior, junior] {
        assert_eq!(school.substitutions.policy, SubstitutionPolicy::SamePlace);
        assert_eq!(school.substitutions.per_set, Some(12));
        assert_eq!(school.substitutions.entries_per_player, Some(3));
    }
    assert!(!Preset::Tally.rules().line_ups);
}

/// A set by the organiser's clock (school and club tournaments): whoever leads has won it, and where the
/// teams are level one more rally decides.
#[test]
fn school_the_clock_ends_a_set() {
    let rules = with(|r| r.set_limit = Some(SetLimit::Minutes(12)));
    Story::by(rules)
        .rallies("AAB")
        .enter(Kind::TimeUp)
        .sets(&[(2, 1)]);
    Story::by(rules)
        .rallies("AB")
        .enter(Kind::TimeUp)
        .phase(Phase::Playing)
        .notices(&Notice::SetPoint { team: B })
        .rallies("B")
        .sets(&[(1, 2)]);
    Story::international()
        .rallies("A")
        .refuses(Kind::TimeUp, "school", Refusal::NotByTime);
}

/// A set of so many rallies: the lead wins it, level teams play one more.
#[test]
fn school_a_set_ends_after_so_many_rallies() {
    let rules = with(|r| r.set_limit = Some(SetLimit::Rallies(4)));
    Story::by(rules).rallies("ABAA").sets(&[(3, 1)]);
    Story::by(rules)
        .rallies("ABAB")
        .phase(Phase::Playing)
        .rallies("B")
        .sets(&[(2, 3)]);
    Story::opened(Preset::Tally.rules()).refuses(
        crate::support::heading(with(|r| r.set_limit = Some(SetLimit::Rallies(0)))),
        "log",
        Refusal::MatchOpen,
    );
}

/// Time-outs may be counted over the whole match (school rules).
#[test]
fn school_time_outs_are_counted_over_the_match() {
    let mut story = Story::by(with(|r| r.time_outs.per_match = Some(3)));
    story
        .enter(crate::story::time_out(A))
        .enter(crate::story::time_out(A))
        .set_to(A)
        .sets_out()
        .enter(crate::story::time_out(A))
        .notices(&Notice::LastTimeOut { team: A })
        .refuses(
            crate::story::time_out(A),
            "school",
            Refusal::NoTimeOutLeftInMatch { team: A, most: 3 },
        );
}

/// 18.1: between sets 2 and 3 the interval may be ten minutes.
#[test]
fn r18_1_the_second_interval_may_be_longer() {
    let mut story = Story::by(with(|r| r.second_interval_seconds = Some(600)));
    let pause = |story: &Story| game::interval(story.timeline().state()).seconds;
    story.set_to(A);
    assert_eq!(pause(&story), 180);
    story.sets_out().set_to(B);
    assert_eq!(pause(&story), 600);
    story.sets_out().set_to(B);
    assert_eq!(pause(&story), 180);
}

/// A single short set can change courts as a deciding one does (match-log contract).
#[test]
fn school_a_short_set_changes_courts() {
    let rules = with(|r| {
        r.sets = Sets::BestOf(1);
        r.set_change_courts_at = Some(8);
    });
    Story::by(rules)
        .rallies("AAAAAAAA")
        .notices(&Notice::ChangeCourts)
        .enter(Kind::ChangeCourts)
        .without("change_courts");
}
