//! The reducer: how an entry changes a match, one file for each part of the rules.
//!
//! Rule numbers without a name are those of the FIVB Official Volleyball Rules 2025-2028.
#![doc = include_str!("rules_table.md")]

mod double_tap;
mod effects;
mod fold;
mod legal;
mod model;
mod notice;
mod play;
mod prepared;
mod preview;
mod reducer;
mod simulator;
mod timers;

pub use model::entry;

pub use double_tap::{held_points, HeldPoint, NO_RALLY_MS};
pub use effects::{effects, no_longer_count, Effect};
pub use fold::{Outcome, Timeline};
pub use legal::{legal, legal_for, libero_at_hand, libero_replacements};
pub use model::count_down::{Timed, RECOVERY_SECONDS};
pub use model::ending::{DecidedBy, SetRecord};
pub use model::entry::{Entry, Kind, Level, Who};
pub use model::isolated::isolated;
pub use model::joined::Joined;
pub use model::protest::Protest;
pub use model::question::{Question, QuestionKind};
pub use model::refusal::{Asked, InSet, Refusal};
pub use model::sanction::{Sanction, SanctionKind};
pub use model::set::{CameBy, CameIn, Point, PointFor, SetPlay, Side, Slot};
pub use model::signer::Signer;
pub use model::stage::Phase;
pub use model::state::{RallyNote, RunningTimer, Signature, State};
pub use model::team_state::{Barred, OutFor, TeamState};
pub use model::toss::{Choice, Choosing};
pub use notice::{notices, Notice};
pub use play::game_captain::{
    can_be_named, captain, is_missing, last_speaker, named_before, requester, speaker, Requester,
    Speaker,
};
pub use play::line_up::may_start;
pub use prepared::{
    is_over, late_team, list_lacks, signed, standing, warm_up_running, warm_ups, warmed_up,
    ListLack, Signed, Standing,
};
pub use preview::{
    level_for, preview_sanction, preview_substitution, Absence, Conduct, MayReturn, SanctionEffect,
    SanctionPreview, SubstitutionPreview,
};
pub use reducer::{apply, check};
pub use simulator::{simulate, simulate_by};
pub use timers::{interval, timers_with};
