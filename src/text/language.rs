//! The languages, and the one that is spoken.

use std::cell::Cell;

use app::language::Language;

/// All words of a language other than English, by topic.
pub struct Words {
    pub language: Language,
    pub about: &'static crate::about::AboutWords,
    pub audit: &'static crate::audit::AuditWords,
    pub captains: &'static crate::captains::CaptainsWords,
    pub command_help: &'static crate::command_help::CommandHelpWords,
    pub command_line: &'static crate::command_line::CommandLineWords,
    pub common: &'static crate::common::CommonWords,
    pub comparison: &'static crate::comparison::ComparisonWords,
    pub consequence: &'static crate::consequence::ConsequenceWords,
    pub corrected: &'static crate::corrected::CorrectedWords,
    pub desk: &'static crate::desk::DeskWords,
    pub desk_work: &'static crate::desk_work::DeskWorkWords,
    pub entry: &'static crate::entry::EntryWords,
    pub flows: &'static crate::flows::FlowsWords,
    pub form: &'static crate::form::FormWords,
    pub hand_over: &'static crate::hand_over::HandOverWords,
    pub intake: &'static crate::intake::IntakeWords,
    pub machine: &'static crate::machine::MachineWords,
    pub paper: &'static crate::paper::PaperWords,
    pub play: &'static crate::play::PlayWords,
    pub problem: &'static crate::problem::ProblemWords,
    pub question: &'static crate::question::QuestionWords,
    pub refusal: &'static crate::refusal::RefusalWords,
    pub remark: &'static crate::remark::RemarkWords,
    pub review: &'static crate::review::ReviewWords,
    pub sanctions: &'static crate::sanctions::SanctionsWords,
    pub score_sheet: &'static crate::score_sheet::ScoreSheetWords,
    pub sheet: &'static crate::sheet::SheetWords,
    pub sheet_text: &'static crate::sheet_text::SheetTextWords,
    pub signals: &'static crate::signals::SignalsWords,
    pub standings: &'static crate::standings::StandingsWords,
    pub storage: &'static crate::storage::StorageWords,
    pub learn: LearnWords,
    pub setup: SetupWords,
}

/// Those of [`crate::learn`].
pub struct LearnWords {
    pub book: &'static crate::learn::BookWords,
    pub care: &'static crate::learn::CareWords,
    pub court: &'static crate::learn::CourtWords,
    pub decisions: &'static crate::learn::DecisionsWords,
    pub dials: &'static crate::learn::DialsWords,
    pub find: &'static crate::learn::FindWords,
    pub logbook: &'static crate::learn::LogbookWords,
    pub observer: &'static crate::learn::ObserverWords,
    pub practice: &'static crate::learn::PracticeWords,
    pub roles: &'static crate::learn::RolesWords,
    pub scenes: &'static crate::learn::ScenesWords,
    pub signals: &'static crate::learn::LearnSignalsWords,
    pub trainer: &'static crate::learn::TrainerWords,
    pub why: &'static crate::learn::WhyWords,
}

/// Those of [`crate::setup`].
pub struct SetupWords {
    pub briefing: &'static crate::setup::BriefingWords,
    pub form: &'static crate::setup::SetupFormWords,
    pub late_team: &'static crate::setup::LateTeamWords,
    pub library: &'static crate::setup::library::LibraryWords,
    pub lists: &'static crate::setup::ListsWords,
    pub measure: &'static crate::setup::MeasureWords,
    pub plan: &'static crate::setup::PlanWords,
    pub set_out: &'static crate::setup::SetOutWords,
    pub step: &'static crate::setup::StepWords,
    pub toss: &'static crate::setup::TossWords,
}

thread_local! {
    /// None is English.
    static SPOKEN: Cell<Option<&'static Words>> = const { Cell::new(None) };
}

/// Speaks another language from now on; `None` is English.
pub fn speak(words: Option<&'static Words>) {
    SPOKEN.set(words);
}

/// The language that is spoken.
#[must_use]
pub fn language() -> Language {
    spoken().map_or(Language::English, |words| words.language)
}

/// The words of the language that is spoken, where it is not English.
#[must_use]
pub fn spoken() -> Option<&'static Words> {
    SPOKEN.get()
}

/// Declares the words of a topic: a structure that a language fills, and a function a word that asks the
/// language spoken. A word with arguments is a function in the language too.
///
/// English is called by name, so that a part of the page holds only the words it uses. The others
/// are reached through the table of their language, which comes as a part of its own.
macro_rules! words {
    ($table:ident in $($topic:ident)::+;
     $($(#[$doc:meta])* $word:ident $(($($arg:ident: $type:ty),*))? -> $given:ty;)*) => {
        /// The words of this topic in one language.
        pub struct $table {
            $($(#[$doc])* pub $word: words!(@field $(($($type),*))? -> $given),)*
        }
        const ENGLISH: &$table = &$crate::en::$($topic)::+::WORDS;
        fn another() -> Option<&'static $table> {
            Some($crate::spoken()?.$($topic).+)
        }
        $($(#[$doc])* #[must_use]
        pub fn $word($($($arg: $type),*)?) -> $given {
            match another() {
                None => (ENGLISH.$word)$(($($arg),*))?,
                Some(words) => (words.$word)$(($($arg),*))?,
            }
        })*
    };
    (@field ($($type:ty),*) -> $given:ty) => { fn($($type),*) -> $given };
    (@field -> $given:ty) => { $given };
}
