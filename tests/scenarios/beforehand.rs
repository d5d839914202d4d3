//! What is said before it is done: a preview names what the fold makes of the entry afterwards, and
//! nothing else (15.7, 15.11, 16.2, 21.1 to 21.4).

use game::entry::{Change, Forced};
use game::{
    level_for, preview_sanction, preview_substitution, Conduct, Kind, Level, MayReturn,
    SanctionKind, SanctionPreview, SubstitutionPreview,
};
use rules::{Preset, Shirt, Team};
use Team::{A, B};

use crate::story::{
    card, change, coach, delay, forced, improper, libero, player, rejected, substitution, Story,
};

#[track_caller]
fn becomes(story: &Story, kind: &Kind) -> SanctionPreview {
    preview_sanction(story.timeline().state(), kind)
        .expect("it is taken")
        .expect("it leaves a line in the sanctions box")
}

/// Previews an entry, makes it, and compares the line that it left.
#[track_caller]
fn then_is(story: &mut Story, kind: Kind) -> SanctionPreview {
    let before = becomes(story, &kind);
    story.enter(kind);
    let line = story.timeline().state().sanction_of(story.last());
    let line = line.expect("a line").clone();
    let entry = before.sanction.entry;
    assert_eq!(before.sanction, game::Sanction { entry, ..line });
    before
}

/// 15.11.2, 15.11.3, 16.2.2 and 16.2.3: noted, then the delay warning, then the delay penalty.
#[test]
fn r15_11_3_each_improper_request_is_foreseen_with_its_count() {
    let mut story = Story::international();
    story.rallies("A");
    let first = then_is(&mut story, improper(A));
    assert_eq!(first.sanction.kind, SanctionKind::ImproperRequest);
    assert_eq!((first.sanction.improper, first.point), (Some(1), None));
    assert_eq!(first.next, Some(SanctionKind::DelayWarning));
    assert!(!first.barred);
    let second = then_is(&mut story, improper(A));
    assert_eq!(second.sanction.kind, SanctionKind::DelayWarning);
    assert_eq!((second.sanction.improper, second.point), (Some(2), None));
    // 15.2.4: after the warning nothing more until a completed rally.
    assert!(second.barred);
    assert_eq!(second.next, Some(SanctionKind::DelayPenalty));
    let third = then_is(&mut story, improper(A));
    assert_eq!(third.sanction.kind, SanctionKind::DelayPenalty);
    assert_eq!((third.sanction.improper, third.point), (Some(3), Some(B)));
    assert!(!third.in_coming_set);
    story.score(1, 1).serves(B, 2);
}

/// 16.2: a delay that came from no request bars nobody; FIVB Casebook 2024, case 4.30: after a delay
/// warning the free improper request is still free, and a second one costs a point.
#[test]
fn r16_2_a_delay_is_foreseen() {
    let mut story = Story::international();
    let warning = then_is(&mut story, delay(B));
    assert_eq!(warning.sanction.kind, SanctionKind::DelayWarning);
    assert_eq!((warning.sanction.improper, warning.barred), (None, false));
    let noted = then_is(&mut story, improper(B));
    assert_eq!(noted.sanction.kind, SanctionKind::ImproperRequest);
    assert_eq!(noted.next, Some(SanctionKind::DelayPenalty));
    let penalty = then_is(&mut story, rejected(B));
    assert_eq!(penalty.sanction.kind, SanctionKind::DelayPenalty);
    assert_eq!(penalty.point, Some(A));
}

/// 16.2.4 and 21.5: between the sets it takes effect in the coming one.
#[test]
fn r16_2_4_between_sets_the_point_comes_with_the_coming_set() {
    let mut story = Story::international();
    story.enter(delay(A)).set_to(A);
    let penalty = then_is(&mut story, delay(A));
    assert_eq!((penalty.sanction.set, penalty.point), (2, Some(B)));
    assert!(penalty.in_coming_set);
    story.sets_out().score(0, 1);
}

/// 21.3.2.1, 15.8: whoever is expelled on court has to be substituted at once; the coach and a player on
/// the bench have not.
#[test]
fn r21_3_2_1_who_must_leave_is_foreseen() {
    let mut story = Story::international();
    let expelled = then_is(&mut story, card(A, player(3), Level::Expulsion));
    assert_eq!(expelled.must_leave, Some(Shirt(3)));
    assert_eq!(expelled.point, None);
    let next = SanctionKind::Misconduct(Level::Disqualification);
    assert_eq!(expelled.next, Some(next));
    let benched = then_is(&mut story, card(A, player(9), Level::Disqualification));
    assert_eq!((benched.must_leave, benched.next), (None, None));
    let of_staff = then_is(&mut story, card(B, coach(), Level::Penalty));
    assert_eq!((of_staff.must_leave, of_staff.point), (None, Some(A)));
}

/// FIVB Casebook 2024, case 6.11: a player on the bench whose place a libero holds has to be substituted
/// as well.
#[test]
fn r15_8_a_player_replaced_by_the_libero_must_be_substituted_too() {
    let mut story = Story::international();
    story.enter(libero(B, 5, 12));
    let expelled = becomes(&story, &card(B, player(5), Level::Expulsion));
    assert_eq!(expelled.must_leave, Some(Shirt(5)));
}

/// 21.1, 21.3, diagram 9a: without anything before, each conduct has its own level.
#[test]
fn r21_3_each_conduct_has_its_level() {
    let story = Story::international();
    let state = story.timeline().state();
    let levels = Conduct::ALL.map(|conduct| level_for(state, A, &player(4), conduct));
    assert_eq!(levels, Level::ALL.map(Some));
}

/// 21.1, 21.4.2: after the yellow card of the team minor misconduct is a penalty; each repetition by the
/// same person is sanctioned more heavily; nothing is left after a disqualification.
#[test]
fn r21_4_2_the_ladder_of_one_person() {
    let mut story = Story::international();
    let of = |story: &Story, number: u16| {
        let state = story.timeline().state();
        Conduct::ALL.map(|conduct| level_for(state, A, &player(number), conduct))
    };
    use Level::{Disqualification as D, Expulsion as E, Penalty as P, Warning as W};
    story.enter(card(A, player(4), W));
    assert_eq!(of(&story, 4), [P, P, E, D].map(Some));
    assert_eq!(of(&story, 5), [P, P, E, D].map(Some));
    story.enter(card(A, player(4), P));
    assert_eq!(of(&story, 4), [E, E, E, D].map(Some));
    // 21.4.1: the sanctions are those of a person.
    assert_eq!(of(&story, 5), [P, P, E, D].map(Some));
    story.enter(card(A, player(4), E));
    assert_eq!(of(&story, 4), [D, D, D, D].map(Some));
    story.enter(card(A, player(4), D));
    assert_eq!(of(&story, 4), [None; 4]);
    // A level that the ladder names is one that the reducer takes.
    for who in [player(5), coach()] {
        for conduct in Conduct::ALL {
            let level = level_for(story.timeline().state(), A, &who, conduct).expect("a level");
            becomes(&story, &card(A, who.clone(), level));
        }
    }
}

#[track_caller]
fn means(story: &Story, team: Team, change: Change, reason: Option<Forced>) -> SubstitutionPreview {
    preview_substitution(story.timeline().state(), team, change, reason).expect("it is taken")
}

/// 15.6.1, 15.6.2: a starter may come back in the set, a substitute may not, but in the next one.
#[test]
fn r15_6_who_may_come_back_is_foreseen() {
    let mut story = Story::international();
    let out = means(&story, A, change(4, 7), Some(Forced::Injury));
    assert_eq!(
        (out.exceptional, out.may_return),
        (false, MayReturn::ThisSet)
    );
    story.enter(substitution(A, &[(4, 7)])).rallies("A");
    let back = means(&story, A, change(7, 4), Some(Forced::Injury));
    assert_eq!(
        (back.exceptional, back.may_return),
        (false, MayReturn::NextSet)
    );
}

/// 15.7: exceptional where no regular one is legal, and then in this match no more; 21.3.3.1: whoever is
/// disqualified comes back in no case, 21.3.2.1: whoever is expelled in the next set.
#[test]
fn r15_7_an_exceptional_substitution_is_foreseen() {
    let mut story = Story::international();
    story.enter(substitution(A, &[(4, 7)])).rallies("A");
    story.enter(substitution(A, &[(7, 4)])).rallies("A");
    let exceptional = means(&story, A, change(4, 8), Some(Forced::Injury));
    assert_eq!(
        (exceptional.exceptional, exceptional.may_return),
        (true, MayReturn::Never)
    );
    story.enter(forced(A, 4, 8, Forced::Injury));
    story.substitutions(A, 2, 1);
    story.enter(card(B, player(2), Level::Expulsion));
    let expelled = means(&story, B, change(2, 8), None);
    assert_eq!(
        (expelled.exceptional, expelled.may_return),
        (false, MayReturn::NextSet)
    );
    story.enter(card(B, player(2), Level::Disqualification));
    let out = means(&story, B, change(2, 8), None);
    assert_eq!((out.exceptional, out.may_return), (false, MayReturn::Never));
}

/// A limit of entries of one player decides as well (a school's own rule).
#[test]
fn school_entries_decide_who_may_come_back() {
    let mut story = Story::by(Preset::SchoolJunior.rules());
    story.enter(substitution(A, &[(4, 7)])).rallies("A");
    story.enter(substitution(A, &[(7, 4)])).rallies("A");
    story.enter(substitution(A, &[(4, 7)])).rallies("A");
    story.enter(substitution(A, &[(7, 4)])).rallies("A");
    // Starting counts one, so 4 has come in three times.
    let last = means(&story, A, change(4, 7), None);
    assert_eq!(last.may_return, MayReturn::NextSet);
}
