//! Spanish. The terms of the trade are those of the Spanish edition of the Official Volleyball Rules from memory;
//! they were not checked against its text.

use crate::{LearnWords, SetupWords, Words};
use app::language::Language;

mod about;
mod audit;
mod captains;
mod command_help;
mod command_line;
mod common;
mod comparison;
mod consequence;
mod corrected;
mod desk;
mod desk_work;
mod entry;
mod flows;
mod form;
mod hand_over;
mod intake;
mod learn;
mod machine;
mod paper;
mod play;
mod problem;
mod question;
mod refusal;
mod remark;
mod review;
mod sanctions;
mod score_sheet;
mod setup;
mod sheet;
mod sheet_text;
mod signals;
mod standings;
mod storage;

/// All of it.
pub static SPANISH: Words = Words {
    language: Language::Spanish,
    about: &about::WORDS,
    audit: &audit::WORDS,
    captains: &captains::WORDS,
    command_help: &command_help::WORDS,
    command_line: &command_line::WORDS,
    common: &common::WORDS,
    comparison: &comparison::WORDS,
    consequence: &consequence::WORDS,
    corrected: &corrected::WORDS,
    desk: &desk::WORDS,
    desk_work: &desk_work::WORDS,
    entry: &entry::WORDS,
    flows: &flows::WORDS,
    form: &form::WORDS,
    hand_over: &hand_over::WORDS,
    intake: &intake::WORDS,
    machine: &machine::WORDS,
    paper: &paper::WORDS,
    play: &play::WORDS,
    problem: &problem::WORDS,
    question: &question::WORDS,
    refusal: &refusal::WORDS,
    remark: &remark::WORDS,
    review: &review::WORDS,
    sanctions: &sanctions::WORDS,
    score_sheet: &score_sheet::WORDS,
    sheet: &sheet::WORDS,
    sheet_text: &sheet_text::WORDS,
    signals: &signals::WORDS,
    standings: &standings::WORDS,
    storage: &storage::WORDS,
    learn: LearnWords {
        book: &learn::book::WORDS,
        care: &learn::care::WORDS,
        court: &learn::court::WORDS,
        decisions: &learn::decisions::WORDS,
        dials: &learn::dials::WORDS,
        find: &learn::find::WORDS,
        logbook: &learn::logbook::WORDS,
        observer: &learn::observer::WORDS,
        practice: &learn::practice::WORDS,
        roles: &learn::roles::WORDS,
        scenes: &learn::scenes::WORDS,
        signals: &learn::signals::WORDS,
        trainer: &learn::trainer::WORDS,
        why: &learn::why::WORDS,
    },
    setup: SetupWords {
        briefing: &setup::briefing::WORDS,
        form: &setup::form::WORDS,
        late_team: &setup::late_team::WORDS,
        library: &setup::library::WORDS,
        lists: &setup::lists::WORDS,
        measure: &setup::measure::WORDS,
        plan: &setup::plan::WORDS,
        set_out: &setup::set_out::WORDS,
        step: &setup::step::WORDS,
        toss: &setup::toss::WORDS,
    },
};
