//! Before the first service: the record, lists, toss, line-ups (chapters 4 and 7, 19.1, 19.3.2.3).

use game::entry::{Amendment, Court, Heading, LiberoWhy, Player, TeamList};
use game::{Entry, InSet, Kind, Level, Notice, Outcome, Phase, Refusal, Timeline};
use rules::{ByTeam, Invalid, Preset, Roster, Rules, SetTarget, Sets, Shirt, Team};
use Team::{A, B};

use crate::story::{
    card, coach, libero, names_its_numbers, new_libero, player, resume, substitution, suspend,
    time_out, toss, Story,
};
use crate::support::{heading, line_up, list};

fn international() -> Rules {
    Preset::International.rules()
}

/// A list with these numbers and captains.
fn numbers(team: Team, numbers: &[u16], captains: &[u16]) -> Kind {
    let player = |&n: &u16| Player {
        number: Shirt(n),
        name: None,
        captain: captains.contains(&n),
        libero: false,
    };
    Kind::TeamList(TeamList {
        team,
        players: numbers.iter().map(player).collect(),
        staff: vec![],
    })
}

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

/// 4.1.1: a list has a longest length; 14 in the international preset.
#[test]
fn r4_1_1_a_list_may_be_full_but_not_longer() {
    Story::opened(international())
        .enter(list(A, 14, &[]))
        .refuses(
            list(B, 15, &[]),
            "4.1.1",
            Refusal::TooManyPlayers {
                players: 15,
                most: 14,
            },
        );
}

/// 4.1.2: one captain.
#[test]
fn r4_1_2_a_team_has_one_captain() {
    let two = Refusal::TwoCaptains {
        first: Shirt(3),
        second: Shirt(5),
    };
    Story::opened(international())
        .enter(numbers(A, &[1, 2, 3, 4, 5, 6], &[3]))
        .refuses(numbers(B, &[1, 2, 3, 4, 5, 6], &[3, 5]), "4.1.2", two);
}

/// 4.1.3: the composition is settled before the match; until then the last list counts.
#[test]
fn r4_1_3_a_list_may_be_sent_again_before_the_match() {
    let mut story = Story::listed(international(), &[12]);
    story
        .enter(numbers(A, &[21, 22, 23, 24, 25, 26, 27], &[21]))
        .refuses(
            line_up(A, &[1, 2, 3, 4, 5, 6]),
            "4.1.3",
            Refusal::NotListed {
                team: A,
                number: Shirt(1),
            },
        )
        .enter(line_up(A, &[21, 22, 23, 24, 25, 26]));
}

/// 4.1.3: once the match has begun the lists are closed, also between the sets.
#[test]
fn r4_1_3_lists_close_with_the_first_service() {
    let mut story = Story::international();
    story.refuses(list(A, 13, &[12]), "4.1.3", Refusal::ListClosed);
    story
        .set_to(A)
        .refuses(list(A, 13, &[12]), "4.1.3", Refusal::ListClosed);
}

/// 4.1.3 and 7.3.5.2: a player who is taken off the list cannot stay in a line-up handed in before.
#[test]
fn r4_1_3_a_new_list_takes_a_line_up_with_it_that_no_longer_fits() {
    let mut story = Story::listed(international(), &[12]);
    story.enter(toss(A, A)).line_ups();
    story
        .without("line_up")
        .enter(numbers(A, &[21, 22, 23, 24, 25, 26, 27], &[21]))
        .notices(&Notice::LineUp { team: A })
        .refuses(Kind::BeginSet, "7.3.2", Refusal::LineUpMissing { team: A })
        .enter(line_up(A, &[21, 22, 23, 24, 25, 26]))
        .enter(Kind::BeginSet)
        .serves(A, 21);
}

/// 19.3.2.3: the same where a starter is now marked as a libero; a list that still bears the line-up
/// leaves it alone.
#[test]
fn r19_3_2_3_a_new_list_can_make_a_starter_a_libero() {
    let mut story = Story::listed(international(), &[12]);
    story
        .enter(toss(A, A))
        .line_ups()
        .enter(list(A, 13, &[12]))
        .without("line_up")
        .enter(list(A, 13, &[6]))
        .notices(&Notice::LineUp { team: A })
        .refuses(
            line_up(A, &[1, 2, 3, 4, 5, 6]),
            "19.3.2.3",
            Refusal::LiberoInLineUp { number: Shirt(6) },
        );
}

/// 4.1.2 and 4.1.3: the official may have two captains, or a line-up before the list, all the same
/// (match-log contract: insist).
#[test]
fn r4_1_insisting_takes_a_list_or_a_line_up_as_it_is() {
    Story::opened(international())
        .insists(
            line_up(A, &[1, 2, 3, 4, 5, 6]),
            Refusal::NoTeamList { team: A },
        )
        .insists(
            numbers(B, &[1, 2, 3, 4, 5, 6], &[3, 5]),
            Refusal::TwoCaptains {
                first: Shirt(3),
                second: Shirt(5),
            },
        );
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

/// 4.1.3: without a list nobody can be checked against it.
#[test]
fn r4_1_3_a_line_up_needs_a_team_list() {
    Story::opened(international())
        .notices(&Notice::TeamList { team: B })
        .refuses(
            line_up(B, &[1, 2, 3, 4, 5, 6]),
            "4.1.3",
            Refusal::NoTeamList { team: B },
        );
}

/// 4.3.3: players are numbered, each with one number.
#[test]
fn r4_3_3_a_number_stands_once_on_the_list() {
    Story::opened(international()).refuses_even_so(
        numbers(A, &[1, 2, 3, 4, 5, 5], &[]),
        "4.3.3",
        Refusal::NumberTwice { number: Shirt(5) },
    );
}

/// 4.3.3: the range; 1 to 99 in the preset (FIVB Casebook 2024, case 9.3), 1 to 20 in the text.
#[test]
fn r4_3_3_numbers_stay_in_the_range() {
    let outside = |number: u16, highest| Refusal::NumberOutOfRange {
        number: Shirt(number),
        lowest: 1,
        highest,
    };
    Story::opened(international())
        .enter(numbers(A, &[1, 99], &[]))
        .refuses(numbers(A, &[1, 100], &[]), "4.3.3", outside(100, 99))
        .refuses(numbers(A, &[0, 1], &[]), "4.3.3", outside(0, 99));
    let mut narrow = international();
    narrow.roster = Roster {
        max: 12,
        min_number: 1,
        max_number: 20,
    };
    Story::opened(narrow).enter(numbers(A, &[20], &[])).refuses(
        numbers(A, &[21], &[]),
        "4.3.3",
        outside(21, 20),
    );
}

/// 19.1.1: up to two liberos.
#[test]
fn r19_1_1_no_more_liberos_than_two() {
    Story::opened(international())
        .enter(list(A, 12, &[11, 12]))
        .refuses(
            list(B, 12, &[10, 11, 12]),
            "19.1.1",
            Refusal::TooManyLiberos {
                liberos: 3,
                most: 2,
            },
        );
}

/// School presets: one libero for seniors, none for juniors (common practice, no source).
#[test]
fn r19_1_1_a_competition_may_allow_fewer_liberos() {
    Story::opened(Preset::SchoolSenior.rules())
        .enter(list(A, 12, &[12]))
        .refuses(
            list(A, 12, &[11, 12]),
            "19.1.1",
            Refusal::TooManyLiberos {
                liberos: 2,
                most: 1,
            },
        );
    Story::opened(Preset::SchoolJunior.rules()).refuses(
        list(A, 12, &[12]),
        "19.1.1",
        Refusal::TooManyLiberos {
            liberos: 1,
            most: 0,
        },
    );
}

/// 7.1: the toss decides the first service and the sides of the first set.
#[test]
fn r7_1_no_first_set_without_a_toss() {
    Story::listed(international(), &[12])
        .notices(&Notice::Toss)
        .line_ups()
        .refuses(Kind::BeginSet, "7.1", Refusal::TossMissing { set: 1 })
        .enter(toss(B, B))
        .without("toss")
        .enter(Kind::BeginSet)
        .serves(B, 1);
}

/// The last toss before a set counts (match-log contract, settled points).
#[test]
fn r7_1_a_second_toss_before_the_set_counts() {
    let mut story = Story::listed(international(), &[12]);
    story.enter(toss(A, A)).line_ups().enter(toss(B, B));
    story.enter(Kind::BeginSet).serves(B, 1);
    assert_eq!(story.timeline().state().left(), Some(B));
}

/// 7.1 and 12.1.2: no toss before the second set.
#[test]
fn r7_1_no_toss_before_an_ordinary_later_set() {
    Story::international().set_to(A).without("toss").refuses(
        toss(A, A),
        "7.1",
        Refusal::TossNotDue { set: 2 },
    );
}

/// 7.1: a new toss before the deciding set.
#[test]
fn r7_1_a_new_toss_before_the_deciding_set() {
    let mut story = Story::international();
    for team in [A, B, A] {
        story.set_to(team).sets_out();
    }
    story
        .set_to(B)
        .notices(&Notice::Toss)
        .line_ups()
        .refuses(Kind::BeginSet, "7.1", Refusal::TossMissing { set: 5 })
        .enter(toss(B, B))
        .enter(Kind::BeginSet)
        .serves(B, 1);
    assert_eq!(story.timeline().state().left(), Some(B));
}

/// 7.3.1: as many players as play, each once.
#[test]
fn r7_3_1_a_line_up_has_six_numbers() {
    let size = |numbers| Refusal::LineUpSize { numbers, needed: 6 };
    Story::listed(international(), &[12])
        .refuses(line_up(A, &[1, 2, 3, 4, 5]), "7.3.1", size(5))
        .refuses_even_so(line_up(A, &[1, 2, 3, 4, 5, 6, 7]), "7.3.1", size(7));
}

/// 7.3.1: six players, so six different numbers.
#[test]
fn r7_3_1_a_number_stands_once_in_a_line_up() {
    Story::listed(international(), &[12])
        .refuses_even_so(
            line_up(A, &[1, 2, 3, 4, 5, 5]),
            "7.3.1",
            Refusal::TwiceInLineUp { number: Shirt(5) },
        )
        .enter(line_up(A, &[1, 2, 3, 4, 5, 6]));
}

/// 7.3.2: both line-ups before the set.
#[test]
fn r7_3_2_no_service_without_both_line_ups() {
    Story::listed(international(), &[12])
        .enter(toss(A, A))
        .enter(line_up(A, &[1, 2, 3, 4, 5, 6]))
        .notices(&Notice::LineUp { team: B })
        .refuses(Kind::BeginSet, "7.3.2", Refusal::LineUpMissing { team: B });
}

/// 7.1 and 7.3.2: all that is missing is named at once, so that nothing is begun without because it was not seen.
#[test]
fn r7_3_2_all_that_is_missing_is_named() {
    let several = |line_ups: &[Team], toss_for| Refusal::SeveralMissing {
        line_ups: line_ups.to_vec(),
        toss_for,
    };
    let missing = several(&[A, B], Some(1));
    let mut story = Story::listed(international(), &[12]);
    let said = text::refusal(&missing, story.timeline().state().into());
    for word in ["both teams", "toss"] {
        assert!(said.contains(word), "{said}");
    }
    story
        .refuses(Kind::BeginSet, "7.3.2", missing)
        .enter(line_up(A, &[1, 2, 3, 4, 5, 6]))
        .refuses(Kind::BeginSet, "7.3.2", several(&[B], Some(1)))
        .enter(toss(A, A))
        .refuses(Kind::BeginSet, "7.3.2", Refusal::LineUpMissing { team: B });
    Story::listed(international(), &[12])
        .enter(toss(A, A))
        .insists(Kind::BeginSet, several(&[A, B], None))
        .phase(Phase::Playing);
}

/// 7.3.2, against the advice: the side whose line-up is in is followed, the other one counts its points
/// and its service only. (How far it is followed is our own choice; the rule knows no such set.)
#[test]
fn r7_3_2_a_set_begun_without_a_line_up_is_followed_as_far_as_it_is_known() {
    let mut story = Story::listed(international(), &[12]);
    story
        .enter(toss(A, A))
        .enter(line_up(A, &[1, 2, 3, 4, 5, 6]))
        .insists(Kind::BeginSet, Refusal::LineUpMissing { team: B })
        .phase(Phase::Playing)
        .stand(A, &[1, 2, 3, 4, 5, 6])
        .stand(B, &[])
        .rallies("BA")
        .score(1, 1)
        .serves(A, 2)
        .enter(substitution(A, &[(4, 8)]))
        .enter(substitution(B, &[(4, 8)]))
        .substitutions(B, 1, 0)
        .rallies("B")
        .stand(A, &[2, 3, 8, 5, 6, 1]);
    // The next set has line-ups again.
    story
        .rallies(&"A".repeat(24))
        .phase(Phase::BetweenSets)
        .line_ups()
        .enter(Kind::BeginSet)
        .stand(B, &[1, 2, 3, 4, 5, 6]);
}

/// 7.1 and 7.3.2, against the advice: without toss and line-ups nobody is said to serve until the first
/// point; from then on the winner of a rally serves (6.1.3).
#[test]
fn r7_1_a_set_begun_without_a_toss_knows_the_server_after_the_first_point() {
    let mut story = Story::opened(international());
    story
        .insists(
            Kind::BeginSet,
            Refusal::SeveralMissing {
                line_ups: vec![A, B],
                toss_for: Some(1),
            },
        )
        .phase(Phase::Playing);
    assert_eq!(story.timeline().state().serving(), None);
    story.rallies("BAA").score(2, 1).enter(time_out(B));
    let serving = story.timeline().state().serving();
    assert_eq!(serving, Some((A, None)));
}

/// 7.3.4: a line-up once handed in is changed by substitution only, before the set and in it.
#[test]
fn r7_3_4_a_line_up_is_handed_in_once() {
    let mut story = Story::listed(international(), &[12]);
    story.enter(toss(A, A)).line_ups();
    let other = || line_up(A, &[7, 2, 3, 4, 5, 6]);
    story.refuses(other(), "7.3.4", Refusal::LineUpGiven { team: A });
    story.enter(Kind::BeginSet);
    story.refuses_even_so(other(), "7.3.4", Refusal::LineUpPlayed { team: A });
    story.stand(A, &[1, 2, 3, 4, 5, 6]);
}

/// 4.1.3: only listed players may play.
#[test]
fn r4_1_3_only_listed_players_stand_in_a_line_up() {
    Story::listed(international(), &[12]).refuses_even_so(
        line_up(B, &[1, 2, 3, 4, 5, 13]),
        "4.1.3",
        Refusal::NotListed {
            team: B,
            number: Shirt(13),
        },
    );
}

/// 19.3.2.3: liberos are not on the line-up sheet.
#[test]
fn r19_3_2_3_no_libero_in_the_line_up() {
    Story::listed(international(), &[12]).refuses(
        line_up(A, &[1, 2, 3, 4, 5, 12]),
        "19.3.2.3",
        Refusal::LiberoInLineUp { number: Shirt(12) },
    );
}

/// 15.3.2 and 19.3.2.3: before the set players come and go only once both line-ups are in.
#[test]
fn r15_3_2_nobody_comes_or_goes_before_both_line_ups_are_in() {
    let mut story = Story::listed(international(), &[12]);
    story
        .enter(toss(A, A))
        .enter(line_up(A, &[1, 2, 3, 4, 5, 6]));
    story
        .refuses(substitution(A, &[(1, 7)]), "15.3.2", Refusal::NobodyOnCourt)
        .refuses_even_so(libero(A, 5, 12), "19.3.2.3", Refusal::LiberoBeforeLineUps)
        .enter(line_up(B, &[1, 2, 3, 4, 5, 6]))
        .enter(substitution(A, &[(1, 7)]))
        .enter(libero(A, 5, 12))
        .enter(Kind::BeginSet)
        .serves(A, 7)
        .stand(A, &[7, 2, 3, 4, 12, 6])
        .substitutions(A, 1, 0);
}

fn no_set(asked: InSet) -> Refusal {
    Refusal::NoSetRunning { asked }
}

/// 15.4.1: a time-out belongs between a completed rally and the whistle for the next service.
#[test]
fn r15_4_1_no_time_out_before_the_set() {
    Story::listed(international(), &[12])
        .enter(toss(A, A))
        .line_ups()
        .refuses_even_so(time_out(A), "15.4.1", no_set(InSet::TimeOut))
        .enter(Kind::BeginSet)
        .set_to(A)
        .refuses(time_out(A), "15.4.1", no_set(InSet::TimeOut));
}

/// 19.3.2.3: the libero comes in once the line-ups are in and checked.
#[test]
fn r19_3_2_3_no_libero_before_the_line_ups() {
    Story::listed(international(), &[12])
        .refuses_even_so(libero(A, 5, 12), "19.3.2.3", Refusal::LiberoBeforeLineUps)
        .enter(toss(A, A))
        .line_ups()
        .enter(libero(A, 5, 12));
}

/// 12.3: nothing is played before the first service is authorised.
#[test]
fn r12_3_no_rally_before_the_set() {
    let rally = Kind::Rally {
        won_by: A,
        cause: None,
        by: None,
    };
    Story::listed(international(), &[12])
        .enter(toss(A, A))
        .line_ups()
        .refuses_even_so(rally.clone(), "12.3", no_set(InSet::Rally))
        .enter(Kind::BeginSet)
        .set_to(A)
        .refuses(rally, "12.3", no_set(InSet::Rally));
}

/// 6.2: what belongs before a set is refused while one runs.
#[test]
fn r6_2_a_running_set_is_not_begun_again() {
    Story::international().refuses(Kind::BeginSet, "6.2", Refusal::SetRunning);
}

/// 7.1: the toss is held before a set.
#[test]
fn r7_1_no_toss_in_a_running_set() {
    Story::international().refuses_even_so(toss(B, B), "7.1", Refusal::TossInSet);
}

/// 21.3.3.1 and 21.5: disqualified before the match is out of every line-up.
#[test]
fn r21_3_3_1_a_disqualified_player_starts_no_set() {
    use game::{Barred, OutFor};
    let out = Refusal::PlayerBarred {
        number: Shirt(3),
        why: Barred::Out(OutFor::Disqualified),
    };
    let mut story = Story::listed(international(), &[12]);
    story.enter(card(A, player(3), Level::Disqualification));
    story.refuses(line_up(A, &[1, 2, 3, 4, 5, 6]), "21.3.3.1", out.clone());
    story
        .enter(toss(A, A))
        .enter(line_up(A, &[1, 2, 7, 4, 5, 6]))
        .enter(line_up(B, &[1, 2, 3, 4, 5, 6]))
        .enter(Kind::BeginSet)
        .set_to(A)
        .refuses(line_up(A, &[1, 2, 3, 4, 5, 6]), "21.3.3.1", out);
}

/// 21.5: a card for the coach before the match counts in the first set at 0-0.
#[test]
fn r21_5_a_sanction_before_the_match_carries_the_first_set() {
    Story::listed(international(), &[12])
        .enter(card(B, coach(), Level::Warning))
        .sanctions(&[(1, B, "warning", (0, 0))])
        .phase(Phase::Preparation);
}

/// A failed check for safety is a reason not to start (project design); a cleared one is none.
#[test]
fn a_failed_safety_check_says_do_not_start() {
    use game::entry::Check;
    let check = |ok| {
        Kind::Check(Check {
            item: "net".to_owned(),
            ok,
            note: None,
        })
    };
    Story::opened(international())
        .enter(check(false))
        .notices(&Notice::DoNotStart {
            item: "net".to_owned(),
        })
        .enter(check(true))
        .without("do_not_start");
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

/// 7.3.4: one team's line-up is changed by decision of the first referee; what the other has done on
/// its own stands.
#[test]
fn r7_3_4_a_changed_line_up_leaves_the_other_team_alone() {
    let mut story = Story::listed(Preset::International.rules(), &[12]);
    story
        .line_ups()
        .enter(substitution(B, &[(3, 8)]))
        .insists(
            line_up(A, &[2, 3, 4, 5, 6, 1]),
            Refusal::LineUpGiven { team: A },
        )
        .stand(A, &[2, 3, 4, 5, 6, 1])
        .stand(B, &[1, 2, 8, 4, 5, 6])
        .substitutions(B, 1, 0);
    // The same where a new list takes the line-up with it.
    let mut story = Story::listed(Preset::International.rules(), &[12]);
    story
        .line_ups()
        .enter(substitution(B, &[(3, 8)]))
        .enter(list(A, 12, &[6]))
        .enter(line_up(A, &[1, 2, 3, 4, 5, 7]))
        .stand(B, &[1, 2, 8, 4, 5, 6])
        .substitutions(B, 1, 0);
}

/// 4.1.3: the lists stay closed where the first set is played again on another court (17.3.2.2: the
/// same team members).
#[test]
fn r4_1_3_lists_stay_closed_on_another_court() {
    Story::international()
        .rallies("A")
        .enter(suspend())
        .enter(resume(Court::Other))
        .phase(Phase::Preparation)
        .refuses(list(A, 12, &[11]), "4.1.3", Refusal::ListClosed);
}

/// 19.4.2.2 with 4.1.3: before the match the last list names the liberos anew.
#[test]
fn r4_1_3_the_last_list_names_the_liberos_anew() {
    Story::listed(Preset::International.rules(), &[12])
        .enter(new_libero(A, &[12], 11, LiberoWhy::Unable))
        .enter(list(A, 12, &[]))
        .enter(line_up(A, &[1, 2, 3, 4, 5, 12]));
}
