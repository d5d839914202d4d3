//! The record is opened, and its rules are settled once the match runs (the form of the log).

use game::entry::{Amendment, Heading};
use game::{Entry, Kind, Notice, Outcome, Phase, Refusal, Timeline};
use rules::{ByTeam, Invalid, Preset, Rules, SetTarget, Sets, Team};
use Team::{A, B};

use crate::before::international;
use crate::story::{libero, names_its_numbers, substitution, time_out, toss, Story};
use crate::support::{heading, list};

/// The log's form (match-log contract): entry 1 opens the match, once.
#[test]
fn log_nothing_comes_before_the_opening() {
    let timeline = Timeline::of(vec![Entry::new(1, time_out(A))]);
    let outcomes: Vec<&Outcome> = timeline.outcomes().map(|(_, o)| o).collect();
    assert_eq!(outcomes, [&Outcome::Refused(Refusal::NoMatch)]);
    assert_eq!(Refusal::NoMatch.rule(), "log");
    names_its_numbers(
        &Refusal::NoMatch,
        &text::refusal(&Refusal::NoMatch, timeline.state().into()),
    );
}

#[test]
fn log_a_match_is_opened_once() {
    Story::international().refuses_even_so(heading(international()), "log", Refusal::MatchOpen);
}

/// Rules nobody can play by are refused with the part that cannot be (project design).
#[test]
fn log_unplayable_rules_are_refused() {
    let with = |change: fn(&mut Rules)| {
        let mut rules = international();
        change(&mut rules);
        rules
    };
    let cases = [
        (with(|r| r.sets = Sets::BestOf(4)), Invalid::Sets),
        (with(|r| r.sets = Sets::BestOf(11)), Invalid::Sets),
        (with(|r| r.sets = Sets::Fixed(0)), Invalid::Sets),
        (with(|r| r.set.target = 0), Invalid::Target),
        (with(|r| r.set.lead = 0), Invalid::Target),
        (with(|r| r.set.cap = Some(24)), Invalid::Target),
        (with(|r| r.decider.to.cap = Some(14)), Invalid::Target),
        (with(|r| r.players_on_court = 3), Invalid::PlayersOnCourt),
        (with(|r| r.players_on_court = 7), Invalid::PlayersOnCourt),
        (with(|r| r.liberos = 3), Invalid::Liberos),
        (with(|r| r.roster.max = 5), Invalid::Roster),
        (with(|r| r.roster.min_number = 100), Invalid::Roster),
    ];
    for (rules, why) in cases {
        let timeline = Timeline::of(vec![Entry::new(1, heading(rules))]);
        let refused = Refusal::BadRules(why);
        let outcomes: Vec<&Outcome> = timeline.outcomes().map(|(_, o)| o).collect();
        assert_eq!(outcomes, [&Outcome::Refused(refused.clone())], "{why:?}");
        assert!(timeline.state().heading().is_none());
        assert_eq!(refused.rule(), "log");
        names_its_numbers(&refused, &text::refusal(&refused, timeline.state().into()));
    }
}

/// The names may be left for later (project design): letters stand in for them.
#[test]
fn log_a_match_can_be_opened_without_names() {
    let nameless = Kind::Match(Box::new(Heading::new(ByTeam::default(), international())));
    let timeline = Timeline::of(vec![Entry::new(1, nameless)]);
    assert_eq!(timeline.state().name(B), "B");
}

/// The heading with other rules.
fn amended(rules: Rules) -> Kind {
    Kind::Heading(Box::new(Amendment {
        rules: Some(rules),
        ..Amendment::default()
    }))
}

/// Before the match the rules may still be put right (project design).
#[test]
fn log_rules_may_change_before_the_match() {
    let junior = Preset::SchoolJunior.rules();
    let mut story = Story::listed(international(), &[]);
    story
        .enter(toss(A, A))
        .line_ups()
        .enter(amended(junior))
        .notices(&Notice::LineUp { team: A })
        .sets_out()
        .set_to(A)
        .sets_out()
        .set_to(A)
        .won_by(Some(A));
}

/// Once it runs they are settled.
#[test]
fn log_rules_are_settled_once_the_match_runs() {
    let junior = Preset::SchoolJunior.rules();
    let mut story = Story::international();
    story.refuses_even_so(amended(junior), "log", Refusal::RulesSettled);
    story
        .set_to(A)
        .refuses(amended(junior), "log", Refusal::RulesSettled);
    let mut unplayable = junior;
    unplayable.players_on_court = 9;
    Story::opened(international()).refuses(
        amended(unplayable),
        "log",
        Refusal::BadRules(Invalid::PlayersOnCourt),
    );
}

/// A tally grows into a match without losing a point (project design): the set that runs goes on as a
/// tally, the next one has line-ups.
#[test]
fn log_a_tally_grows_into_a_match() {
    let mut story = Story::opened(Preset::Tally.rules());
    story
        .enter(Kind::BeginSet)
        .rallies("AAB")
        .enter(amended(international()))
        .enter(list(A, 12, &[12]))
        .enter(list(B, 12, &[12]))
        .score(2, 1)
        .enter(substitution(A, &[(4, 8)]))
        .enter(libero(A, 5, 12))
        .set_to(A)
        .notices(&Notice::LineUp { team: A })
        .line_ups();
    let state = story.timeline().state();
    assert_eq!(state.sets().count(), 1);
    // Nobody tossed, so nobody is due to open; the toss is asked for now.
    story
        .notices(&Notice::Toss)
        .enter(toss(B, A))
        .enter(Kind::BeginSet)
        .serves(B, 1)
        .stand(A, &[1, 2, 3, 4, 5, 6]);
}

/// But not into rules by which what was played would be over.
#[test]
fn log_a_tally_does_not_grow_into_rules_it_has_outplayed() {
    let mut short = international();
    short.set.target = 5;
    let mut one = international();
    one.sets = Sets::BestOf(1);
    let mut story = Story::opened(Preset::Tally.rules());
    story
        .enter(Kind::BeginSet)
        .rallies("AAAAA")
        .refuses(amended(short), "log", Refusal::RulesSettled)
        .score(5, 0)
        .set_to(A)
        .refuses(amended(one), "log", Refusal::RulesSettled)
        .enter(amended(international()))
        .phase(Phase::BetweenSets);
}

/// A target that is no number of points cannot be reached; the widest one that is allowed can.
#[test]
fn log_the_widest_rules_are_playable() {
    let mut rules = international();
    rules.set = SetTarget {
        target: 999,
        lead: 99,
        cap: Some(999),
    };
    rules.sets = Sets::Fixed(9);
    assert_eq!(rules.check(), Ok(()));
}
