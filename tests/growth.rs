//! A tally begun in the stand grows into a match without losing a point (project design).

mod support;

use game::entry::{Amendment, Toss};
use game::{Entry, Kind, Outcome, Phase, Refusal, Timeline};
use rules::{ByTeam, Preset, Rules, Score, Shirt, Team};
use support::{heading, list, numbered, run, set_begins};

fn grow(rules: Rules) -> Kind {
    Kind::Heading(Box::new(Amendment {
        names: ByTeam {
            a: Some("Voles".into()),
            b: None,
        },
        rules: Some(rules),
        ..Amendment::default()
    }))
}

fn tally(rallies: &str) -> Timeline {
    let mut kinds = vec![heading(Preset::Tally.rules())];
    kinds.push(Kind::Toss(Toss::new(Team::A, Team::A)));
    kinds.push(Kind::BeginSet);
    kinds.extend(run(rallies));
    Timeline::of(numbered(kinds))
}

fn enter(timeline: &mut Timeline, kind: Kind) -> Outcome {
    let n = timeline.next_number();
    timeline.push(Entry::new(n, kind)).clone()
}

#[test]
fn points_and_sets_stay_and_the_next_set_is_a_full_one() {
    let mut timeline = tally(&format!("{}AAB", "A".repeat(25)));
    // The second set was never begun, so its rallies are refused; begin it and play on.
    let _ = enter(&mut timeline, Kind::BeginSet);
    for kind in run("BBA") {
        assert_eq!(enter(&mut timeline, kind), Outcome::Accepted);
    }
    assert_eq!(
        enter(&mut timeline, grow(Preset::SchoolSenior.rules())),
        Outcome::Accepted
    );
    assert_eq!(timeline.state().score(), Score { a: 1, b: 2 });
    assert_eq!(timeline.state().sets_won(), ByTeam { a: 1, b: 0 });
    assert_eq!(timeline.state().name(Team::A), "Voles");
    // The running set goes on as a tally, the lists come in meanwhile.
    for team in Team::BOTH {
        assert_eq!(
            enter(&mut timeline, list(team, 12, &[12])),
            Outcome::Accepted
        );
    }
    for kind in run(&"B".repeat(23)) {
        assert_eq!(enter(&mut timeline, kind), Outcome::Accepted);
    }
    assert_eq!(timeline.state().phase(), Phase::BetweenSets);
    for kind in set_begins(timeline.state().rules()) {
        assert_eq!(enter(&mut timeline, kind), Outcome::Accepted);
    }
    assert_eq!(timeline.state().serving(), Some((Team::A, Some(Shirt(1)))));
}

#[test]
fn rules_by_which_the_set_would_be_over_are_refused() {
    let mut timeline = tally(&"A".repeat(22));
    let mut short = Preset::SchoolJunior.rules();
    short.set.target = 21;
    let refused = Outcome::Refused(Refusal::RulesSettled);
    assert_eq!(enter(&mut timeline, grow(short)), refused);
    assert_eq!(timeline.state().score().a, 22);
}

#[test]
fn rules_by_which_the_match_would_be_over_are_refused() {
    let mut timeline = tally(&"A".repeat(25));
    let mut one_set = Preset::SchoolJunior.rules();
    one_set.sets = rules::Sets::BestOf(1);
    assert_eq!(
        enter(&mut timeline, grow(one_set)),
        Outcome::Refused(Refusal::RulesSettled)
    );
}

#[test]
fn a_full_match_keeps_its_rules_once_it_has_begun() {
    let mut timeline = support::played(run("A"));
    let refused = Outcome::Refused(Refusal::RulesSettled);
    assert_eq!(
        enter(&mut timeline, grow(Preset::SchoolJunior.rules())),
        refused
    );
}

#[test]
fn before_the_match_rules_change_and_line_ups_are_handed_in_again() {
    let rules = Preset::International.rules();
    let mut kinds = support::opening(rules);
    kinds.pop();
    let mut timeline = Timeline::of(numbered(kinds));
    assert!(timeline.state().ready().is_some());
    let mut five = rules;
    five.players_on_court = 5;
    assert_eq!(enter(&mut timeline, grow(five)), Outcome::Accepted);
    assert!(timeline.state().line_up_given(Team::A).is_none());
    for kind in set_begins(&five) {
        assert_eq!(enter(&mut timeline, kind), Outcome::Accepted);
    }
    assert_eq!(timeline.state().phase(), Phase::Playing);
}
