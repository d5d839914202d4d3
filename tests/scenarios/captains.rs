//! Who speaks for a team (5.1.2), and protests (5.1.2.1, 5.1.3).

use game::entry::{Forced, Player, Protested, Staff, TeamList};
use game::{
    can_be_named, named_before, notices, requester, speaker, Asked, Kind, Level, Notice, Phase,
    Refusal, Requester, Speaker,
};
use rules::{Preset, Rules, Score, Shirt, Team};
use Team::{A, B};

use crate::story::{card, coach, libero, player, substitution, toss, Story};

/// The captain is number 4 of twelve; 12 is the libero where there is one.
fn list(team: Team, captain: Option<u16>, staff: &[&str]) -> Kind {
    let one = |n: u16| Player {
        number: Shirt(n),
        name: None,
        captain: captain == Some(n),
        libero: n == 12,
    };
    Kind::TeamList(TeamList {
        team,
        players: (1..=12).map(one).collect(),
        staff: staff
            .iter()
            .map(|role| Staff {
                role: (*role).to_owned(),
                name: None,
            })
            .collect(),
    })
}

fn game_captain(team: Team, number: u16) -> Kind {
    let number = Shirt(number);
    Kind::GameCaptain { team, number }
}

fn protest(team: Team, number: Option<u16>) -> Kind {
    Kind::Protest {
        team,
        number: number.map(Shirt),
        text: "touched block".to_owned(),
    }
}

fn statement(about: Protested) -> Kind {
    let text = "It had touched the block.".to_owned();
    Kind::ProtestStatement { about, text }
}

/// Both captains, number 4, are on court, 1 to 6 start, A serves.
fn story() -> Story {
    with_captain(4)
}

fn with_captain(captain: u16) -> Story {
    let mut story = Story::opened(Preset::International.rules());
    for team in [A, B] {
        story.enter(list(team, Some(captain), &["coach"]));
    }
    story.enter(toss(A, A)).sets_out();
    story
}

#[track_caller]
fn speaks(story: &Story, team: Team, who: Option<Speaker>) {
    assert_eq!(speaker(story.timeline().state(), team), who, "speaks");
    let waits = notices(story.timeline().state()).contains(&Notice::GameCaptain { team });
    assert_eq!(waits, who.is_none(), "a notice exactly where nobody speaks");
}

const fn named(number: u16) -> Option<Speaker> {
    Some(Speaker::GameCaptain(Shirt(number)))
}

const CAPTAIN: Option<Speaker> = Some(Speaker::TeamCaptain(Shirt(4)));

/// While on court the team captain is the game captain; nobody else is named (5.1.2).
#[test]
fn r5_1_2_the_captain_on_court_speaks() {
    let mut story = story();
    speaks(&story, A, CAPTAIN);
    let captain = Shirt(4);
    story.refuses_even_so(
        game_captain(A, 5),
        "5.1.2",
        Refusal::CaptainSpeaks { captain },
    );
    assert!(can_be_named(story.timeline().state(), A).is_empty());
}

/// The captain is substituted: another player on court is named, who speaks until substituted (5.1.2).
#[test]
fn r5_1_2_another_player_speaks_until_substituted() {
    let mut story = story();
    story.enter(substitution(A, &[(4, 7)]));
    speaks(&story, A, None);
    speaks(&story, B, CAPTAIN);
    let offered: Vec<u16> = can_be_named(story.timeline().state(), A)
        .iter()
        .map(|s| s.0)
        .collect();
    assert_eq!(offered, [1, 2, 3, 5, 6, 7]);
    story.enter(game_captain(A, 2));
    speaks(&story, A, named(2));
    story.rallies("AB").enter(substitution(A, &[(2, 8)]));
    speaks(&story, A, None);
    // Back on court, number 2 has to be named anew, and is offered first.
    story.rallies("A").enter(substitution(A, &[(8, 2)]));
    speaks(&story, A, None);
    let state = story.timeline().state();
    assert_eq!(named_before(state, A), Some(Shirt(2)));
    assert_eq!(can_be_named(state, A)[0], Shirt(2));
}

/// When the captain comes back, he or she speaks again; who was named before does not after that (5.1.2).
#[test]
fn r5_1_2_the_captain_returns() {
    let mut story = story();
    story
        .enter(substitution(A, &[(4, 7)]))
        .enter(game_captain(A, 1))
        .rallies("AB")
        .enter(substitution(A, &[(7, 4)]));
    speaks(&story, A, CAPTAIN);
    story.enter(card(A, player(4), Level::Expulsion));
    speaks(&story, A, None);
}

/// The role ends with the set (5.1.2).
#[test]
fn r5_1_2_the_role_ends_with_the_set() {
    let mut story = story();
    story
        .enter(substitution(A, &[(4, 7)]))
        .enter(game_captain(A, 1))
        .set_to(A);
    assert_eq!(speaker(story.timeline().state(), A), None);
    story.refuses_even_so(game_captain(A, 1), "5.1.2", Refusal::NoSetForGameCaptain);
    story.line_ups();
    speaks(&story, A, CAPTAIN);
}

/// The libero comes in for the captain: the captain is not on court, and is again afterwards (5.1.2).
#[test]
fn r5_1_2_a_libero_for_the_captain() {
    let mut story = with_captain(5);
    story.enter(libero(A, 5, 12));
    speaks(&story, A, None);
    story.enter(game_captain(A, 12)).rallies("A");
    speaks(&story, A, named(12));
    story.enter(libero(A, 12, 5));
    speaks(&story, A, Some(Speaker::TeamCaptain(Shirt(5))));
}

/// A libero may be the captain (4.1.2, 5): somebody else speaks until he or she comes in.
#[test]
fn r5_1_2_a_libero_is_the_captain() {
    let mut story = with_captain(12);
    speaks(&story, B, None);
    story.enter(game_captain(B, 3)).enter(libero(B, 5, 12));
    speaks(&story, B, Some(Speaker::TeamCaptain(Shirt(12))));
    story.rallies("AB").enter(libero(B, 12, 5));
    speaks(&story, B, None);
}

/// The captain is not in the line-up: prompted once both line-ups are in, before the first service.
#[test]
fn r5_1_2_the_captain_does_not_start() {
    let mut story = Story::opened(Preset::International.rules());
    for team in [A, B] {
        story.enter(list(team, Some(9), &["coach"]));
    }
    story.enter(toss(A, A)).line_ups();
    speaks(&story, A, None);
    story.enter(game_captain(A, 6)).enter(Kind::BeginSet);
    speaks(&story, A, named(6));
    speaks(&story, B, None);
    // Nothing waits for it: a rally is played.
    story.rallies("AB").score(1, 1);
}

/// Who has to leave the court cannot be named, nor speak (5.1.2, 21.3.2.1, 21.3.3.1).
#[test]
fn r5_1_2_who_was_sent_off_does_not_speak() {
    let mut story = story();
    story.enter(card(B, player(4), Level::Disqualification));
    speaks(&story, B, None);
    let number = Shirt(4);
    story.refuses_even_so(game_captain(B, 4), "5.1.2", Refusal::LeavesCourt { number });
    story
        .enter(game_captain(B, 5))
        .enter(card(B, player(5), Level::Expulsion));
    speaks(&story, B, None);
    let (number, asked) = (Shirt(9), Asked::GameCaptain);
    story.refuses_even_so(
        game_captain(B, 9),
        "5.1.2",
        Refusal::NotOnCourt { number, asked },
    );
}

/// The captain is hurt and cannot play on (15.7, 5.1.2).
#[test]
fn r5_1_2_the_captain_is_hurt() {
    let mut story = story();
    let mut kind = substitution(A, &[(4, 9)]);
    if let Kind::Substitution { reason, .. } = &mut kind {
        *reason = Some(Forced::Injury);
    }
    story.enter(kind);
    speaks(&story, A, None);
}

/// Where captains or places are not kept nothing is asked; what is entered all the same stays.
#[test]
fn r5_1_2_nothing_is_asked_where_nobody_is_marked() {
    let quiet = |story: &Story| {
        let all = notices(story.timeline().state());
        assert!(!all.iter().any(|n| n.code() == "game_captain"), "{all:?}");
    };
    let mut story = Story::opened(Preset::International.rules());
    for team in [A, B] {
        story.enter(list(team, None, &[]));
    }
    story.enter(toss(A, A)).sets_out();
    quiet(&story);
    story.enter(game_captain(A, 2));
    assert_eq!(speaker(story.timeline().state(), A), named(2));
    let mut tally = Story::opened(Preset::Tally.rules());
    tally.enter(Kind::BeginSet).rallies("AB");
    quiet(&tally);
    tally.enter(game_captain(B, 31)).rallies("B");
    assert_eq!(speaker(tally.timeline().state(), B), named(31));
}

/// Naming can be taken back, and what it followed from too.
#[test]
fn r5_1_2_a_strike_asks_again() {
    let mut story = story();
    story
        .enter(substitution(A, &[(4, 7)]))
        .enter(game_captain(A, 1));
    let entry = story.last();
    story.enter(Kind::Strike { entry, why: None });
    speaks(&story, A, None);
    story.enter(Kind::Strike {
        entry: entry - 1,
        why: None,
    });
    speaks(&story, A, CAPTAIN);
}

/// Four on court (school): the same.
#[test]
fn r5_1_2_four_on_court() {
    let mut rules: Rules = Preset::SchoolJunior.rules();
    rules.players_on_court = 4;
    let mut story = Story::opened(rules);
    for team in [A, B] {
        let mut kind = list(team, Some(4), &[]);
        if let Kind::TeamList(list) = &mut kind {
            list.players.iter_mut().for_each(|p| p.libero = false);
        }
        story.enter(kind);
    }
    story.enter(toss(A, A)).sets_out();
    speaks(&story, A, CAPTAIN);
    story.enter(substitution(A, &[(4, 7)]));
    speaks(&story, A, None);
    let offered = can_be_named(story.timeline().state(), A);
    assert_eq!(offered, [1, 2, 3, 7].map(Shirt));
}

/// The game captain requests only where there is no coach, nor an assistant who has taken over (5.1.2.3,
/// 15.3.1).
#[test]
fn r5_1_2_3_the_game_captain_requests_without_a_coach() {
    let by = |staff: &[&str]| {
        let mut story = Story::opened(Preset::International.rules());
        for team in [A, B] {
            story.enter(list(team, Some(4), staff));
        }
        story.enter(toss(A, A)).sets_out();
        story
    };
    let asks = |story: &Story| requester(story.timeline().state(), A);
    assert_eq!(asks(&by(&["Coach", "assistant coach"])), Requester::Coach);
    assert_eq!(
        asks(&by(&["Head_Coach", "assistant coach"])),
        Requester::Coach
    );
    assert_eq!(asks(&by(&["Assistant_coach"])), Requester::AssistantCoach);
    assert_eq!(asks(&by(&["doctor"])), Requester::GameCaptain);
    assert_eq!(asks(&by(&[])), Requester::GameCaptain);
    // The coach is sent off: for the set, or for good.
    let mut story = by(&["coach", "assistant coach"]);
    story.enter(card(A, coach(), Level::Expulsion));
    assert_eq!(asks(&story), Requester::AssistantCoach);
    story.set_to(A).sets_out();
    assert_eq!(asks(&story), Requester::Coach);
    story.enter(card(A, coach(), Level::Disqualification));
    let mut alone = by(&["coach"]);
    alone.enter(card(A, coach(), Level::Disqualification));
    assert_eq!(asks(&alone), Requester::GameCaptain);
    alone.set_to(A).sets_out();
    assert_eq!(asks(&alone), Requester::GameCaptain);
}

/// A protest is announced by the game captain, with the moment at which it was (5.1.2.1).
#[test]
fn r5_1_2_1_the_game_captain_announces() {
    let mut story = story();
    story.rallies("AAB");
    let (number, speaker) = (Shirt(6), Shirt(4));
    story.refuses(
        protest(B, Some(6)),
        "5.1.2.1",
        Refusal::NotGameCaptain { number, speaker },
    );
    story.enter(protest(B, None));
    let entry = story.last();
    let announced = &story.timeline().state().protests()[0];
    assert_eq!(
        (
            announced.entry,
            announced.team,
            announced.number,
            announced.set,
            announced.score
        ),
        (entry, B, Some(Shirt(4)), 1, Score { a: 2, b: 1 })
    );
    assert_eq!(announced.written, None);
    // Taken back it never was.
    story.enter(Kind::Strike { entry, why: None });
    assert!(story.timeline().state().protests().is_empty());
}

/// The last point of the match can be protested against, and belongs to its set.
#[test]
fn r5_1_2_1_after_the_last_point() {
    let mut story = story();
    story.set_to(A).enter(protest(B, Some(4)));
    let state = story.timeline().state();
    assert_eq!(state.protests()[0].set, 1);
    assert_eq!(state.protests()[0].score, Score { a: 25, b: 0 });
    story.sets_out().set_to(A).sets_out().set_to(A);
    story.phase(Phase::Finished).enter(protest(B, Some(4)));
    assert_eq!(story.timeline().state().protests()[1].set, 3);
}

/// It is written on the sheet after the match, once (5.1.3).
#[test]
fn r5_1_3_written_after_the_match() {
    let mut story = story();
    story.rallies("A").enter(protest(A, None));
    let entry = story.last();
    let about = Protested::Entry(entry);
    story.refuses(statement(about), "5.1.3", Refusal::ProtestAfterMatch);
    story.set_to(A).sets_out().set_to(A).sets_out().set_to(A);
    story.enter(statement(about));
    let written = story.last();
    let protest = &story.timeline().state().protests()[0];
    let words = "It had touched the block.".to_owned();
    assert_eq!(protest.written, Some((written, words)));
    let entry = written;
    story.refuses_even_so(statement(about), "log", Refusal::ProtestWritten { entry });
    let entry = 2;
    story.refuses_even_so(
        statement(Protested::Entry(2)),
        "log",
        Refusal::NoSuchProtest { entry },
    );
}

/// What was not announced at the time is not written; the first referee may decide otherwise (5.1.2.1).
#[test]
fn r5_1_2_1_not_announced_not_written() {
    let mut story = story();
    story.set_to(A).sets_out().set_to(A).sets_out().set_to(A);
    let kind = statement(Protested::Unannounced(B));
    let team = B;
    story.refuses(kind.clone(), "5.1.2.1", Refusal::NotAnnounced { team });
    story.insists(kind, Refusal::NotAnnounced { team });
    assert!(story.timeline().state().protests().is_empty());
}
