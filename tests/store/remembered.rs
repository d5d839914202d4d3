//! What the phone remembers beside the matches: drafts, texts of the desk, what belongs to the learner.

use app::desk_store::InsertOutcome;
use app::drafts::Draft;
use app::learner::Learner;
use app::learner_data::LearnerImport;
use game::Kind;
use record::Logbook;
use rules::Team;

use crate::hall::Hall;

#[test]
fn a_text_of_the_desk_is_kept_once_and_found_until_it_is_deleted() {
    let tab = Hall::new().tab();
    let papers = tab.settings.papers();
    assert_eq!(papers.insert("one", "a sheet"), InsertOutcome::New);
    assert_eq!(papers.insert("two", "a sheet"), InsertOutcome::Here);
    assert!(papers.put("one", "the sheet, one key later"));
    assert_eq!(papers.insert("three", "a sheet"), InsertOutcome::New);
    assert_eq!(papers.ids(), ["one", "three"]);
    // A pool is another kind of thing.
    assert!(tab.settings.pools().ids().is_empty());
    papers.forget("one");
    assert_eq!(papers.texts(), ["a sheet"]);
    assert_eq!(papers.get("one"), None);
}

#[test]
fn a_text_that_the_phone_has_no_room_for_leaves_nothing_behind() {
    let hall = Hall::new();
    let tab = hall.tab();
    let papers = tab.settings.papers();
    hall.world.borrow_mut().local_full = true;
    assert_eq!(papers.insert("one", "a sheet"), InsertOutcome::Refused);
    hall.world.borrow_mut().local_full = false;
    assert!(papers.ids().is_empty() && papers.get("one").is_none());
}

#[test]
fn drafts_of_one_match_go_and_those_of_another_stay() {
    let settings = Hall::new().tab().settings;
    let (mine, other) = (settings.drafts("m"), settings.drafts("m_2"));
    let line_up = Kind::LineUp {
        team: Team::B,
        positions: Vec::new(),
    };
    for drafts in [&mine, &other] {
        drafts.keep(Draft::Toss, "1 A H");
        drafts.keep_entry(Draft::LineUp(Team::B), line_up.clone());
        drafts.keep_practice_step(7);
        drafts.keep(Draft::Protest(Team::A), "touched block");
    }
    assert_eq!(mine.entry(Draft::LineUp(Team::B)), Some(line_up));
    assert_eq!(mine.entry(Draft::LineUp(Team::A)), None);
    mine.forget_all();
    assert_eq!((mine.get(Draft::Toss), mine.practice_step()), (None, 0));
    assert_eq!(mine.get(Draft::Protest(Team::A)), None);
    assert_eq!(other.practice_step(), 7);
    // What cannot be read counts as nothing.
    other.keep(Draft::Practice, "seven");
    other.keep(Draft::LineUp(Team::B), "{\"log\":");
    other.keep(Draft::Drawn, "scribble");
    assert_eq!(other.practice_step(), 0);
    assert_eq!(other.entry(Draft::LineUp(Team::B)), None);
    assert!(other.drawn().is_empty());
}

/// Its own choice: a tab of an older version may still be open when a newer one has written.
#[test]
fn what_a_newer_version_wrote_is_not_written_over() {
    let hall = Hall::new();
    let tab = hall.tab();
    let settings = &tab.settings;
    let newer = Logbook::default()
        .write()
        .replacen("\"version\":1", "\"version\":1000", 1);
    tab.puts("logbook", &newer);
    let goals = Logbook::default().write();
    assert_eq!(settings.merge_logbook(&goals), LearnerImport::NotKept);
    assert_eq!(settings.merge_logbook(&newer), LearnerImport::Newer);
    assert!(!settings.keep_logbook(&Logbook::default()));
    assert_eq!(settings.logbook_text(), Some(newer));

    let practised = Learner::default()
        .write()
        .replacen("\"learner\":1", "\"learner\":1000", 1);
    tab.puts("learner", &practised);
    assert!(!settings.merge_learner(&Learner::default().write()));
    assert!(!settings.keep_learner(&Learner::default()));
    assert_eq!(settings.learner_text(), Some(practised));
}
