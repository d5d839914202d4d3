//! Libero replacements (19.1, 19.3).

use game::entry::{Forced, ReplayWhy};
use game::{libero_at_hand, Barred, Kind, Level, Notice, Refusal};
use rules::{Cause, Preset, Rules, Shirt, Team};
use Team::{A, B};

use crate::story::{
    card, change, coach, forced, hurt, libero, player, stopped, substitution, toss, Story,
};

fn must_leave(team: Team, number: u16) -> Notice {
    Notice::LiberoMustLeave {
        team,
        player: Shirt(number),
    }
}

/// 19.3.1.1 and 19.3.2.1: any back-row player, without counting.
#[test]
fn r19_3_1_1_the_libero_comes_in_for_a_back_row_player() {
    Story::international()
        .enter(libero(A, 5, 12))
        .stand(A, &[1, 2, 3, 4, 12, 6])
        .enter(libero(B, 1, 12))
        .stand(B, &[12, 2, 3, 4, 5, 6])
        .substitutions(A, 0, 0);
    Story::international()
        .enter(libero(A, 6, 12))
        .stand(A, &[1, 2, 3, 4, 5, 12]);
}

/// 19.3.1.1: nobody of the front row: places 2, 3 and 4 (7.4.1).
#[test]
fn r19_3_1_1_never_for_a_front_row_player() {
    let mut story = Story::international();
    for number in [2, 3, 4] {
        story.refuses(
            libero(A, number, 12),
            "19.3.1.1",
            Refusal::BackRowOnly {
                number: Shirt(number),
            },
        );
    }
}

/// 19.3.1.3: a libero may not serve, so the server stays.
#[test]
fn r19_3_1_3_never_for_the_server() {
    Story::international()
        .refuses(
            libero(A, 1, 12),
            "19.3.1.3",
            Refusal::LiberoServes { number: Shirt(12) },
        )
        .rallies("B")
        .enter(libero(A, 1, 12))
        .refuses(
            libero(B, 2, 12),
            "19.3.1.3",
            Refusal::LiberoServes { number: Shirt(12) },
        );
}

/// 19.3.1.3: a new toss can make a libero the server; he or she must leave before the service.
#[test]
fn r19_3_1_3_a_libero_about_to_serve_must_leave() {
    let mut story = Story::listed(Preset::International.rules(), &[12]);
    story
        .enter(toss(A, A))
        .line_ups()
        .enter(libero(B, 1, 12))
        .without("libero_must_leave")
        .enter(toss(B, A))
        .notices(&must_leave(B, 12));
}

/// 19.3.1.1: a libero whom rotation brings to place 4 must leave; a played rally is counted all the
/// same (match-log contract, settled points).
#[test]
fn r19_3_1_1_a_libero_in_the_front_row_must_leave() {
    Story::international()
        .enter(libero(B, 5, 12))
        .without("libero_must_leave")
        .rallies("B")
        .stand(B, &[2, 3, 4, 12, 6, 1])
        .notices(&must_leave(B, 12))
        .rallies("B")
        .score(0, 2)
        .enter(libero(B, 12, 5))
        .without("libero_must_leave")
        .stand(B, &[2, 3, 4, 5, 6, 1]);
}

/// 19.3.2.1: one completed rally between two replacements, out or in.
#[test]
fn r19_3_2_1_a_completed_rally_between_two_replacements() {
    Story::international()
        .enter(libero(A, 5, 12))
        .refuses(libero(A, 12, 5), "19.3.2.1", Refusal::RallyBetween)
        .rallies("A")
        .enter(libero(A, 12, 5))
        .refuses(libero(A, 6, 12), "19.3.2.1", Refusal::RallyBetween)
        .rallies("A")
        .enter(libero(A, 6, 12))
        .stand(A, &[1, 2, 3, 4, 5, 12]);
}

/// 19.3.2.1: the other team's replacements do not matter.
#[test]
fn r19_3_2_1_each_team_has_its_own_replacements() {
    Story::international()
        .enter(libero(A, 5, 12))
        .enter(libero(B, 5, 12));
}

/// FIVB Casebook 2024, case 5.14: a stopped rally is not a completed one.
#[test]
fn r19_3_2_1_a_stopped_rally_is_none() {
    Story::international()
        .enter(libero(A, 5, 12))
        .enter(stopped(ReplayWhy::Interference))
        .refuses(libero(A, 12, 5), "19.3.2.1", Refusal::RallyBetween);
}

/// FIVB Casebook 2024, case 5.22, and 6.1.3: the eight seconds missed, and any penalty, are one.
#[test]
fn r19_3_2_1_a_late_service_or_a_penalty_is_a_completed_rally() {
    let late = Kind::Rally {
        won_by: B,
        cause: Some(Cause::ServiceTime),
        by: None,
    };
    Story::international()
        .enter(libero(A, 5, 12))
        .enter(late)
        .enter(libero(A, 12, 5));
    Story::international()
        .enter(libero(A, 5, 12))
        .enter(card(B, coach(), Level::Penalty))
        .score(1, 0)
        .enter(libero(A, 12, 5));
}

/// 19.3.2.1: a penalty that rotates the libero to place 4: out at once.
#[test]
fn r19_3_2_1_a_penalty_brings_the_libero_to_place_four() {
    Story::international()
        .enter(libero(B, 5, 12))
        .enter(card(A, player(3), Level::Penalty))
        .score(0, 1)
        .notices(&must_leave(B, 12))
        .enter(libero(B, 12, 5))
        .stand(B, &[2, 3, 4, 5, 6, 1]);
}

/// 19.3.2.1 with 21.5: the same where the penalty was given before the set and counts at its start.
#[test]
fn r19_3_2_1_a_penalty_at_the_start_of_a_set_brings_the_libero_to_place_four() {
    let mut story = Story::listed(Preset::International.rules(), &[12]);
    story
        .enter(card(A, coach(), Level::Penalty))
        .enter(toss(A, A))
        .line_ups()
        .enter(libero(B, 5, 12))
        .enter(Kind::BeginSet)
        .score(0, 1)
        .serves(B, 2)
        .stand(B, &[2, 3, 4, 12, 6, 1])
        .notices(&must_leave(B, 12))
        .enter(libero(B, 12, 5))
        .stand(B, &[2, 3, 4, 5, 6, 1]);
}

/// 19.3.2.1: an acting libero who is hurt leaves at once, although no rally was completed.
#[test]
fn r19_3_2_1_a_hurt_libero_leaves_at_once() {
    Story::international()
        .enter(libero(A, 5, 12))
        .enter(hurt(A, 12))
        .enter(libero(A, 12, 5))
        .stand(A, &[1, 2, 3, 4, 5, 6])
        .refuses(libero(A, 6, 12), "19.3.2.1", Refusal::RallyBetween);
}

/// 19.3.2.1: hurt once is not hurt for ever: a libero who played on waits for a completed rally like
/// any other, in the next set at the latest.
#[test]
fn r19_3_2_1_a_libero_who_played_on_waits_again() {
    Story::international()
        .enter(libero(A, 5, 12))
        .enter(hurt(A, 12))
        .set_to(A)
        .sets_out()
        .enter(libero(A, 5, 12))
        .refuses(libero(A, 12, 5), "19.3.2.1", Refusal::RallyBetween);
}

/// 19.3.2.2: only the replaced player or the other libero comes in for a libero.
#[test]
fn r19_3_2_2_only_the_replaced_player_comes_back() {
    Story::international()
        .enter(libero(A, 5, 12))
        .rallies("A")
        .refuses(
            libero(A, 12, 8),
            "19.3.2.2",
            Refusal::NotForLibero {
                libero: Shirt(12),
                replaced: Shirt(5),
            },
        )
        .enter(libero(A, 12, 5));
}

/// 19.3.2.2: the second libero for the acting one, and the same player behind both.
#[test]
fn r19_3_2_2_the_second_libero_comes_in_for_the_first() {
    Story::two_liberos()
        .enter(libero(A, 5, 12))
        .refuses(libero(A, 12, 11), "19.3.2.1", Refusal::RallyBetween)
        .rallies("A")
        .enter(libero(A, 12, 11))
        .stand(A, &[1, 2, 3, 4, 11, 6])
        .rallies("A")
        .enter(libero(A, 11, 5))
        .stand(A, &[1, 2, 3, 4, 5, 6]);
}

/// 19.1.3: one libero on court.
#[test]
fn r19_1_3_one_libero_on_court() {
    Story::two_liberos()
        .enter(libero(A, 5, 12))
        .rallies("A")
        .refuses(
            libero(A, 6, 11),
            "19.1.3",
            Refusal::LiberoOnCourt { number: Shirt(12) },
        );
}

/// 19.1.2: only who is on the list as a libero.
#[test]
fn r19_1_2_only_a_libero_comes_in_so() {
    Story::international()
        .refuses_even_so(
            libero(A, 5, 8),
            "19.1.2",
            Refusal::NotALibero { number: Shirt(8) },
        )
        .refuses_even_so(
            libero(A, 5, 44),
            "19.1.2",
            Refusal::NotALibero { number: Shirt(44) },
        );
}

/// 4.1.3: nobody unlisted comes in for a libero.
#[test]
fn r4_1_3_nobody_unlisted_comes_in_for_a_libero() {
    Story::international()
        .enter(libero(A, 5, 12))
        .rallies("A")
        .refuses_even_so(
            libero(A, 12, 44),
            "4.1.3",
            Refusal::NotListed {
                team: A,
                number: Shirt(44),
            },
        );
}

/// Objections to a libero replacement come under chapter 19.
#[test]
fn r19_3_who_leaves_is_on_court_and_who_comes_is_not() {
    Story::international()
        .refuses_under(libero(A, 9, 12), "19.")
        .enter(libero(A, 5, 12))
        .rallies("A")
        .refuses_under(libero(A, 5, 12), "19.")
        .refuses_under(libero(A, 6, 12), "19.")
        .refuses_under(libero(A, 12, 6), "19.")
        .stand(A, &[1, 2, 3, 4, 12, 6]);
}

/// 19.3.1.1: the libero goes with the rotation in the place of the player he or she stands in for.
#[test]
fn r19_3_1_1_the_libero_goes_with_the_rotation() {
    Story::international()
        .rallies("B")
        .enter(libero(A, 1, 12))
        .rallies("A")
        .stand(A, &[2, 3, 4, 5, 6, 12])
        .rallies("BA")
        .stand(A, &[3, 4, 5, 6, 12, 2])
        .enter(libero(A, 12, 1))
        .stand(A, &[3, 4, 5, 6, 1, 2]);
}

/// 19.3.2.1: as often as one likes, for different players, a rally between.
#[test]
fn r19_3_2_1_replacements_are_unlimited() {
    let mut story = Story::international();
    for (out, into) in [
        (5, 12),
        (12, 5),
        (6, 12),
        (12, 6),
        (5, 12),
        (12, 5),
        (6, 12),
    ] {
        story.enter(libero(A, out, into)).rallies("A");
    }
    story.substitutions(A, 0, 0).score(7, 0);
}

/// FIVB Casebook 2024, case 5.5: a replacement and a substitution in the same interruption.
#[test]
fn r19_3_2_a_replacement_and_a_substitution_go_together() {
    Story::international()
        .enter(libero(A, 5, 12))
        .enter(substitution(A, &[(6, 8)]))
        .stand(A, &[1, 2, 3, 4, 12, 8])
        .enter(substitution(B, &[(5, 9)]))
        .enter(libero(B, 9, 12))
        .stand(B, &[1, 2, 3, 4, 12, 6]);
}

/// 21.3.2.1 and 19.3.2.1: an acting libero who is expelled leaves at once and stays out for the set.
#[test]
fn r21_3_2_1_an_expelled_libero_leaves_at_once() {
    let expelled = || Refusal::PlayerBarred {
        number: Shirt(12),
        why: Barred::Expelled,
    };
    Story::international()
        .enter(libero(A, 5, 12))
        .enter(card(A, player(12), Level::Expulsion))
        .notices(&must_leave(A, 12))
        .enter(libero(A, 12, 5))
        .without("libero_must_leave")
        .rallies("A")
        .refuses(libero(A, 5, 12), "21.3.2.1", expelled())
        .set_to(A)
        .sets_out()
        .enter(libero(A, 6, 12));
}

/// 19.5: or gives way at once to the second libero.
#[test]
fn r19_5_the_second_libero_comes_in_for_an_expelled_one() {
    Story::two_liberos()
        .enter(libero(A, 5, 12))
        .enter(card(A, player(12), Level::Disqualification))
        .enter(libero(A, 12, 11))
        .stand(A, &[1, 2, 3, 4, 11, 6])
        .without("libero_must_leave");
}

/// FIVB Casebook 2024, case 6.11: the player behind the libero is expelled: substituted at once, the
/// libero stays; until then he or she may not come back.
#[test]
fn r15_8_an_expelled_player_behind_the_libero_is_substituted() {
    Story::international()
        .enter(libero(A, 5, 12))
        .enter(card(A, player(5), Level::Expulsion))
        .notices(&Notice::MustSubstitute {
            team: A,
            player: Shirt(5),
        })
        .rallies("A")
        .refuses(
            libero(A, 12, 5),
            "21.3.2.1",
            Refusal::PlayerBarred {
                number: Shirt(5),
                why: Barred::Expelled,
            },
        )
        .enter(forced(A, 5, 8, Forced::Expelled))
        .without("must_substitute")
        .stand(A, &[1, 2, 3, 4, 12, 6])
        .enter(libero(A, 12, 8))
        .stand(A, &[1, 2, 3, 4, 8, 6]);
}

/// 15.8: a player who was sent off leaves by a substitution, not by a libero.
#[test]
fn r15_8_no_libero_comes_in_for_a_player_who_was_sent_off() {
    let by_substitution = || Refusal::LeavesBySubstitution { number: Shirt(5) };
    Story::international()
        .enter(card(A, player(5), Level::Expulsion))
        .refuses(libero(A, 5, 12), "15.8", by_substitution())
        .enter(forced(A, 5, 8, Forced::Expelled))
        .enter(libero(A, 8, 12))
        .stand(A, &[1, 2, 3, 4, 12, 6]);
    Story::international()
        .enter(card(A, player(5), Level::Disqualification))
        .insists(libero(A, 5, 12), by_substitution())
        .stand(A, &[1, 2, 3, 4, 12, 6])
        .notices(&Notice::MustSubstitute {
            team: A,
            player: Shirt(5),
        });
}

/// 19.3.2: the next set begins without a libero on court and without a wait.
#[test]
fn r19_3_2_a_new_set_begins_without_the_libero() {
    Story::international()
        .enter(libero(A, 5, 12))
        .set_to(A)
        .line_ups()
        .stand(A, &[1, 2, 3, 4, 5, 6])
        .enter(libero(A, 5, 12))
        .enter(Kind::BeginSet)
        .refuses(libero(A, 12, 5), "19.3.2.1", Refusal::RallyBetween)
        .rallies("A")
        .enter(libero(A, 12, 5));
}

/// The referee decides (match-log contract: insist).
#[test]
fn r19_3_insisting_replaces_all_the_same() {
    Story::international()
        .insists(libero(A, 4, 12), Refusal::BackRowOnly { number: Shirt(4) })
        .stand(A, &[1, 2, 3, 12, 5, 6])
        .notices(&must_leave(A, 12))
        .insists(libero(A, 12, 4), Refusal::RallyBetween)
        .insists(
            libero(A, 1, 12),
            Refusal::LiberoServes { number: Shirt(12) },
        )
        .serves(A, 12)
        .notices(&must_leave(A, 12));
}

/// 19.3.1.1: the other libero does not come in for one who stands in the front row.
#[test]
fn r19_3_1_1_no_libero_follows_another_into_the_front_row() {
    Story::two_liberos()
        .enter(libero(B, 5, 12))
        .rallies("B")
        .refuses(
            libero(B, 12, 11),
            "19.3.1.1",
            Refusal::BackRowOnly { number: Shirt(12) },
        )
        .enter(libero(B, 12, 5));
}

/// 19.3.2.1: a rally stopped for an injury frees a libero only where it was said who was hurt (match-log
/// contract); the official may insist.
#[test]
fn r19_3_2_1_an_injury_without_a_number_frees_no_libero() {
    let hurt_somebody = Kind::Replay {
        why: ReplayWhy::Injury,
        hurt: Some(game::entry::By {
            team: A,
            number: None,
        }),
        rally: None,
    };
    for stop in [stopped(ReplayWhy::Injury), hurt_somebody] {
        Story::international()
            .enter(libero(A, 5, 12))
            .enter(stop)
            .refuses(libero(A, 12, 5), "19.3.2.1", Refusal::RallyBetween)
            .insists(libero(A, 12, 5), Refusal::RallyBetween);
    }
}

/// 19.3.1.1 with fewer than six on court: places 2, 3 and 4 are the front row; place 6 falls away first, then
/// 5 (match-log contract; our choice, no source).
#[test]
fn r19_3_1_1_the_back_row_of_a_smaller_team() {
    for (players, back, words) in [
        (6, &[5, 6][..], "places 1, 6 and 5"),
        (5, &[5][..], "places 1 and 5"),
        (4, &[][..], "place 1"),
    ] {
        let mut rules = Preset::International.rules();
        rules.players_on_court = players;
        let mut story = Story::by(rules);
        for number in 2..=4 {
            let why = Refusal::BackRowOnly {
                number: Shirt(number),
            };
            let sentence = text::refusal(&why, story.timeline().state().into());
            assert!(sentence.contains(words), "{sentence}");
            let change = crate::story::change(number, 12);
            let kind = Kind::LiberoReplacement { team: B, change };
            let entry = game::Entry::new(99, kind);
            assert_eq!(story.timeline().check(&entry), Err(why));
        }
        for &number in back {
            let mut story = Story::by(rules);
            story.enter(libero(B, number, 12));
        }
        // Place 1 of the receiving team is back row too.
        story.enter(libero(B, 1, 12));
    }
}

/// 19.3.2.1: the replacement that would come next is known whether it is legal or not, so a screen can say why it is not.
#[test]
fn the_replacement_that_would_come_next() {
    let next = |story: &Story, team| libero_at_hand(story.timeline().state(), team);
    let mut story = Story::international();
    assert_eq!(next(&story, A), Some(change(6, 12)));
    story.enter(libero(A, 5, 12));
    assert_eq!(next(&story, A), Some(change(12, 5)));
    story.refuses(libero(A, 12, 5), "19.3.2.1", Refusal::RallyBetween);
    assert_eq!(next(&story, B), Some(change(6, 12)));
    let without = Story::by(Preset::SchoolJunior.rules());
    assert_eq!(next(&without, A), None);
    // Of four on court place 1 alone is the back row.
    let four = Story::by(Rules {
        players_on_court: 4,
        ..Preset::International.rules()
    });
    assert!(matches!(
        next(&four, A),
        Some(change) if change.out == Shirt(1)
    ));
    assert_eq!(next(&Story::opened(Preset::International.rules()), A), None);
}
