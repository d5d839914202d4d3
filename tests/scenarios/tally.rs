//! The tally: points and the serving team, nothing else (match-log contract: `line_ups` false).

use game::entry::{Fault, Found};
use game::{InSet, Kind, Level, Phase, Refusal};
use rules::{Preset, Shirt, Team};
use Team::{A, B};

use crate::story::{card, coach, late, libero, player, since, substitution, time_out, toss, Story};

fn begun() -> Story {
    let mut story = Story::opened(Preset::Tally.rules());
    story
        .without("toss")
        .without("line_up")
        .without("team_list");
    story.enter(Kind::BeginSet);
    story
}

/// A whole match needs nothing but the beginnings of its sets.
#[test]
fn tally_a_match_needs_only_its_beginnings() {
    let mut story = begun();
    for _ in 0..2 {
        story.set_to(B).enter(Kind::BeginSet);
    }
    story
        .set_to(B)
        .sets(&[(0, 25), (0, 25), (0, 25)])
        .won_by(Some(B));
}

/// Without a toss nobody knows who opens; whoever wins a rally serves next (6.1.3).
#[test]
fn r6_1_3_the_winner_of_a_rally_serves_next() {
    let mut story = begun();
    assert_eq!(story.timeline().state().serving(), None);
    story.rallies("B");
    assert_eq!(story.timeline().state().serving(), Some((B, None)));
    story.rallies("A");
    assert_eq!(story.timeline().state().serving(), Some((A, None)));
    story.score(1, 1);
}

/// With a toss the opening service alternates as ever (12.1).
#[test]
fn r12_1_a_tally_with_a_toss_knows_who_opens() {
    let mut story = Story::opened(Preset::Tally.rules());
    story.enter(toss(B, A)).enter(Kind::BeginSet);
    assert_eq!(story.timeline().state().serving(), Some((B, None)));
    story.set_to(A).enter(Kind::BeginSet);
    assert_eq!(story.timeline().state().serving(), Some((A, None)));
    assert_eq!(story.timeline().state().left(), Some(B));
}

/// No limits: time-outs and substitutions are only counted.
#[test]
fn tally_nothing_is_limited() {
    let mut story = begun();
    for _ in 0..5 {
        story.enter(time_out(A));
    }
    for number in 1..=9 {
        story
            .rallies("A")
            .enter(substitution(B, &[(number, number + 20)]));
    }
    story.time_outs(A, 5).substitutions(B, 9, 0);
}

/// A substitution before a set counts in it; a time-out belongs into a running one (match-log contract).
#[test]
fn tally_a_substitution_before_a_set_counts_in_it() {
    Story::opened(Preset::Tally.rules())
        .enter(substitution(A, &[(1, 2)]))
        .substitutions(A, 1, 0)
        .refuses(
            time_out(A),
            "15.4.1",
            Refusal::NoSetRunning {
                asked: InSet::TimeOut,
            },
        )
        .phase(Phase::Preparation)
        .enter(Kind::BeginSet)
        .enter(substitution(A, &[(2, 3)]))
        .substitutions(A, 2, 0)
        .set_to(A)
        .enter(substitution(A, &[(3, 4)]))
        .substitutions(A, 1, 0)
        // A line-up and a list written down meanwhile follow nobody and lose nothing.
        .enter(crate::support::list(A, 6, &[]))
        .enter(crate::support::line_up(A, &[7, 7, 8]))
        .enter(toss(B, A))
        .enter(Kind::BeginSet)
        .substitutions(A, 1, 0)
        .enter(crate::support::line_up(A, &[1]));
}

/// 15.1: one beyond a stated limit is refused, before a set too.
#[test]
fn r15_1_a_stated_limit_holds_without_line_ups() {
    let mut rules = Preset::Tally.rules();
    rules.substitutions.per_set = Some(2);
    let over = |used, wanted| Refusal::NoSubstitutionLeft {
        used,
        wanted,
        most: 2,
    };
    Story::opened(rules)
        .refuses(
            substitution(A, &[(1, 7), (2, 8), (3, 9)]),
            "15.1",
            over(0, 3),
        )
        .enter(substitution(A, &[(1, 7), (2, 8)]))
        .refuses(substitution(A, &[(3, 9)]), "15.1", over(2, 1))
        .enter(Kind::BeginSet)
        .refuses(substitution(A, &[(3, 9)]), "15.1", over(2, 1))
        .enter(substitution(B, &[(3, 9)]));
}

/// A libero replacement is taken and nobody is followed, so there is no rally to wait for.
#[test]
fn tally_a_libero_replacement_is_written_down() {
    Story::opened(Preset::Tally.rules())
        .enter(libero(A, 5, 12))
        .enter(Kind::BeginSet)
        .enter(libero(A, 12, 5))
        .enter(libero(A, 6, 12))
        .substitutions(A, 0, 0);
}

/// Chapter 21 and 16 hold all the same.
#[test]
fn r21_3_1_a_tally_has_sanctions() {
    let mut story = begun();
    story
        .rallies("A")
        .enter(card(A, coach(), Level::Penalty))
        .score(1, 1)
        .refuses(
            card(A, coach(), Level::Penalty),
            "21.4.2",
            Refusal::NotHeavier {
                who: coach(),
                had: Level::Penalty,
            },
        )
        .enter(card(B, player(44), Level::Warning));
    assert_eq!(story.timeline().state().serving(), Some((B, None)));
}

/// 7.7.2: points can be put right.
#[test]
fn r7_7_2_a_tally_is_put_right() {
    begun()
        .rallies("AAAA")
        .enter(late(A, Fault::Rotation, since(2, 0), Found::Rally))
        .score(2, 1);
}

/// 18.2.2: the deciding set has its change of courts.
#[test]
fn r18_2_2_a_tally_changes_courts_in_the_decider() {
    let mut story = begun();
    for team in [A, B, A] {
        story.set_to(team).enter(Kind::BeginSet);
    }
    story
        .set_to(B)
        .enter(Kind::BeginSet)
        .rallies("AAAAAAAA")
        .enter(Kind::ChangeCourts)
        .rallies("AAAAAAA")
        .won_by(Some(A));
}

/// 18.2.1: before the deciding set the courts are not changed but tossed for; without a toss they stay.
#[test]
fn r18_2_1_a_tally_without_a_toss_keeps_the_courts_for_the_decider() {
    let mut story = begun();
    let drawn = |story: &Story| story.timeline().state().play().expect("begun").left;
    let mut left = Vec::new();
    for team in [A, B, A] {
        left.push(drawn(&story));
        story.set_to(team).enter(Kind::BeginSet);
    }
    left.push(drawn(&story));
    assert_eq!(left, [A, B, A, B]);
    story.set_to(B).enter(Kind::BeginSet);
    assert_eq!(drawn(&story), B);
    // Drawn so, and known to nobody (match-log contract).
    assert_eq!(story.timeline().state().left(), None);
}

/// A player may be named all the same.
#[test]
fn tally_a_substitution_names_whom_it_likes() {
    let mut story = begun();
    story.enter(substitution(A, &[(77, 78)]));
    let play = story.timeline().state().play().expect("playing");
    assert!(play.sides.a.on_court().all(|s| s != Shirt(78)));
    story.substitutions(A, 1, 0);
}

/// No limit to a list either: as many players and whatever numbers.
#[test]
fn tally_a_list_is_as_long_as_it_likes() {
    Story::opened(Preset::Tally.rules()).enter(crate::support::list(A, 40, &[]));
}

/// 15.2.4 and 6.1.3: what bars a request bars it also where nobody follows who stands on court.
#[test]
fn r15_2_4_a_bar_holds_without_line_ups() {
    let mut rules = Preset::International.rules();
    rules.line_ups = false;
    let barred = || Refusal::RequestBarred { team: B };
    Story::opened(rules)
        .enter(crate::story::rejected(B))
        .enter(Kind::BeginSet)
        .refuses(time_out(B), "15.2.4", barred())
        .refuses(substitution(B, &[(1, 7)]), "15.2.4", barred())
        .rallies("A")
        .enter(substitution(B, &[(1, 7)]))
        .enter(crate::story::stopped(game::entry::ReplayWhy::Other))
        .refuses(substitution(A, &[(1, 7)]), "15", Refusal::AfterReplay);
}

/// 15.2.3, 15.7 and 15.8: a change that was forced waits for no rally and no request, whoever follows the places.
#[test]
fn r15_2_3_a_forced_change_without_line_ups() {
    let injured = |out, into| crate::story::forced(A, out, into, game::entry::Forced::Injury);
    Story::opened(Preset::Tally.rules())
        .enter(Kind::BeginSet)
        .enter(crate::story::stopped(game::entry::ReplayWhy::Injury))
        .refuses(substitution(A, &[(1, 7)]), "15", Refusal::AfterReplay)
        .enter(injured(3, 8))
        .substitutions(A, 1, 0)
        .rallies("A")
        .enter(crate::story::rejected(A))
        .enter(injured(4, 9))
        .substitutions(A, 2, 0);
    Story::opened(Preset::Tally.rules())
        .enter(crate::story::rejected(A))
        .enter(injured(3, 8));
}

/// A line-up may be written down and is not followed; a hurt player has recovery time, for nobody knows
/// who could come in (17.1.2).
#[test]
fn tally_what_needs_places_is_only_written_down() {
    Story::opened(Preset::Tally.rules())
        .enter(crate::support::list(A, 12, &[]))
        .enter(crate::support::line_up(A, &[1, 2, 3, 4]))
        .enter(Kind::BeginSet)
        .enter(crate::story::recovery(A, 3))
        .refuses(
            crate::story::recovery(A, 3),
            "17.1.2",
            Refusal::RecoveryUsed { number: Shirt(3) },
        );
}
