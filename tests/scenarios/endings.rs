//! Default and incomplete (6.4).

use game::entry::{Fault, Found, Scope};
use game::{DecidedBy, Kind, Level, Phase, Refusal};
use rules::{Preset, Rules, Sets, Team};
use Team::{A, B};

use crate::story::{card, coach, incomplete, late, time_out, toss, Story};

fn forfeits(team: Team) -> Kind {
    Kind::Default { team }
}

fn with(change: impl FnOnce(&mut Rules)) -> Rules {
    let mut rules = Preset::International.rules();
    change(&mut rules);
    rules
}

/// 6.4.2: a team that does not appear: 0-3, 0-25 each.
#[test]
fn r6_4_2_a_team_that_does_not_appear_loses_three_sets_to_nothing() {
    let mut story = Story::listed(Preset::International.rules(), &[12]);
    story
        .enter(forfeits(A))
        .sets(&[(0, 25), (0, 25), (0, 25)])
        .won_by(Some(B));
    assert_eq!(story.timeline().state().ended(), Some(DecidedBy::Default));
}

/// 6.4.1: a refusal wipes what was won before.
#[test]
fn r6_4_1_a_refusal_wipes_the_sets_won() {
    Story::international()
        .set_to(A)
        .sets_out()
        .set_to(A)
        .sets_out()
        .rallies("AAAA")
        .enter(forfeits(A))
        .sets(&[(0, 25), (0, 25), (0, 25)])
        .won_by(Some(B))
        .refuses(time_out(B), "6.3.1", Refusal::MatchOver);
}

/// 6.4.1 in other formats: as many sets as win the match; all of them where all are played (the last
/// part is the contract's; no source).
#[test]
fn r6_4_1_the_sets_of_a_default_follow_the_format() {
    Story::by(with(|r| r.sets = Sets::BestOf(3)))
        .enter(forfeits(B))
        .sets(&[(25, 0), (25, 0)])
        .won_by(Some(A));
    Story::by(with(|r| r.sets = Sets::BestOf(1)))
        .enter(forfeits(B))
        .sets(&[(25, 0)]);
    Story::by(with(|r| r.sets = Sets::Fixed(3)))
        .set_to(B)
        .enter(forfeits(B))
        .sets(&[(25, 0), (25, 0), (25, 0)])
        .won_by(Some(A));
    Story::by(with(|r| r.set.target = 21))
        .enter(forfeits(A))
        .sets(&[(0, 21), (0, 21), (0, 21)]);
}

/// 6.4.3: incomplete for the set: the opponent gets the points that are missing, the team keeps its
/// own.
#[test]
fn r6_4_3_incomplete_for_the_set_keeps_the_points() {
    Story::international()
        .rallies(&"A".repeat(14))
        .rallies("BBB")
        .enter(incomplete(A, Scope::Set))
        .phase(Phase::BetweenSets)
        .sets(&[(14, 25)])
        .sets_out()
        .serves(B, 1);
}

/// 6.4.3 with 6.2: the lead of two is filled up as well.
#[test]
fn r6_4_3_the_lead_is_filled_up() {
    Story::international()
        .rallies(&"AB".repeat(22))
        .rallies("AA")
        .score(24, 22)
        .enter(incomplete(A, Scope::Set))
        .sets(&[(24, 26)]);
}

/// 6.4.3 with 6.3.2: to fifteen in the deciding set.
#[test]
fn r6_4_3_the_decider_is_filled_up_to_fifteen() {
    Story::international()
        .until_the_decider()
        .rallies("AAB")
        .enter(incomplete(A, Scope::Set))
        .sets(&[(25, 0), (0, 25), (25, 0), (0, 25), (2, 15)])
        .won_by(Some(B));
}

/// 6.4.3: incomplete for the match: points and sets won stay, the rest goes to the opponent.
#[test]
fn r6_4_3_incomplete_for_the_match_keeps_sets_and_points() {
    let mut story = Story::international();
    story.set_to(A).sets_out().set_to(B).sets_out().set_to(A);
    story
        .sets_out()
        .rallies(&"A".repeat(20))
        .rallies(&"B".repeat(15))
        .enter(incomplete(A, Scope::Match))
        .sets(&[(25, 0), (0, 25), (25, 0), (20, 25), (0, 15)])
        .won_by(Some(B));
    assert_eq!(
        story.timeline().state().ended(),
        Some(DecidedBy::Incomplete)
    );
    let won = story.timeline().state().sets_won();
    assert_eq!((won.a, won.b), (2, 3));
}

/// 6.4.3: a cap is reached with any lead.
#[test]
fn r6_4_3_a_cap_limits_the_points_filled_up() {
    Story::by(with(|r| r.set.cap = Some(27)))
        .rallies(&"AB".repeat(26))
        .enter(incomplete(A, Scope::Set))
        .sets(&[(26, 27)]);
}

/// 6.4.3: incomplete before a set: it is lost to nothing.
#[test]
fn r6_4_3_incomplete_before_a_set_loses_it_to_nothing() {
    Story::international()
        .set_to(A)
        .enter(incomplete(A, Scope::Set))
        .sets(&[(25, 0), (0, 25)])
        .sets_out()
        .serves(A, 1);
}

/// 6.4.3 with 21.5: a penalty point due to the incomplete team stays its own.
#[test]
fn r6_4_3_a_penalty_point_due_in_the_set_is_kept() {
    Story::international()
        .set_to(A)
        .enter(card(B, coach(), Level::Penalty))
        .enter(incomplete(A, Scope::Set))
        .sets(&[(25, 0), (1, 25)]);
}

/// 6.4.3: the third set lost so ends the match.
#[test]
fn r6_4_3_an_incomplete_team_can_lose_the_match_with_the_set() {
    Story::international()
        .set_to(B)
        .sets_out()
        .set_to(B)
        .sets_out()
        .rallies("AA")
        .enter(incomplete(A, Scope::Set))
        .sets(&[(0, 25), (0, 25), (2, 25)])
        .won_by(Some(B));
}

/// Where all sets are played, all that are left are lost (no source; match-log contract).
#[test]
fn r6_4_3_incomplete_for_the_match_in_fixed_sets() {
    Story::by(with(|r| r.sets = Sets::Fixed(3)))
        .set_to(A)
        .sets_out()
        .rallies("AAB")
        .enter(incomplete(A, Scope::Match))
        .sets(&[(25, 0), (2, 25), (0, 25)])
        .won_by(Some(B));
}

/// 6.4.3: a team that is incomplete for the match loses it, whatever sets it has won; a default too.
#[test]
fn r6_4_3_incomplete_for_the_match_loses_it_in_every_format() {
    let two_up = || {
        let mut story = Story::by(with(|r| r.sets = Sets::Fixed(3)));
        story.set_to(A).sets_out().set_to(A).sets_out();
        story
    };
    two_up()
        .rallies("AAB")
        .enter(incomplete(A, Scope::Match))
        .sets(&[(25, 0), (25, 0), (2, 25)])
        .won_by(Some(B));
    // For the set alone the sets decide.
    two_up()
        .rallies("AAB")
        .enter(incomplete(A, Scope::Set))
        .sets(&[(25, 0), (25, 0), (2, 25)])
        .won_by(Some(A));
}

/// 6.4: what was decided without play is not put right (match-log contract, settled points).
#[test]
fn r6_4_a_set_decided_without_play_is_not_put_right() {
    let fault = || late(A, Fault::Rotation, None, Found::AfterRally);
    Story::international()
        .rallies("AA")
        .enter(incomplete(A, Scope::Set))
        .refuses(fault(), "6.4", Refusal::NotByPlay { set: 1 });
    Story::international().enter(forfeits(B)).refuses(
        fault(),
        "6.4",
        Refusal::NotByPlay { set: 3 },
    );
}

/// A match that ended is over: a default after it is refused.
#[test]
fn r6_3_1_a_finished_match_is_not_defaulted() {
    let mut story = Story::international();
    story.set_to(A).sets_out().set_to(A).sets_out().set_to(A);
    story
        .refuses_even_so(forfeits(A), "6.3.1", Refusal::MatchOver)
        .refuses(incomplete(A, Scope::Match), "6.3.1", Refusal::MatchOver)
        .won_by(Some(A));
}

/// 12.1.2: a set that was lost before it began still counts for who opens the next.
#[test]
fn r12_1_2_a_set_without_play_keeps_the_order_of_opening() {
    let mut story = Story::listed(Preset::International.rules(), &[12]);
    story
        .enter(toss(A, A))
        .enter(incomplete(A, Scope::Set))
        .sets(&[(0, 25)])
        .sets_out()
        .serves(B, 1);
    assert_eq!(story.timeline().state().left(), Some(B));
}

/// 6.4.1: a default wipes the result; what was said about the rallies can still be put right.
#[test]
fn r6_4_1_rallies_before_a_default_keep_their_causes() {
    let story = &mut Story::international();
    story.rallies("A");
    let (first, cause) = (story.last(), rules::Cause::NetTouch);
    story.set_to(A).sets_out().rallies("B");
    let last = story.last();
    story
        .enter(Kind::Default { team: B })
        .enter(crate::story::explain(first, cause))
        .enter(crate::story::explain(last, cause));
}
