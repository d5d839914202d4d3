//! The reducer: how an entry changes a match, one file for each part of the rules.
//!
//! Rule numbers without a name are those of the FIVB Official Volleyball Rules 2025-2028.
#![doc = include_str!("rules_table.md")]

mod announce;
mod ask;
mod conduct;
mod correction;
mod courts;
mod discrepancy;
mod double_tap;
mod ending;
pub mod entry;
mod fold;
mod forfeit;
mod game_captain;
mod isolated;
mod joined;
mod late_fault;
mod legal;
mod libero;
mod line_up;
mod new_libero;
mod notes;
mod notice;
mod opening;
mod prepared;
mod preview;
mod protest;
mod rally;
mod reducer;
mod refusal;
mod request;
mod sanction;
mod seal;
mod set;
mod signer;
mod simulator;
mod stage;
mod state;
mod stop;
mod substitution;
mod team_state;
mod time_out;
mod timed;
mod toss;

pub use ask::{Question, QuestionKind};
pub use double_tap::{held_points, HeldPoint, NO_RALLY_MS};
pub use ending::{DecidedBy, SetRecord};
pub use entry::{Entry, Kind, Level, Who};
pub use fold::{Outcome, Timeline};
pub use game_captain::{
    can_be_named, captain, is_missing, last_speaker, named_before, requester, speaker, Requester,
    Speaker,
};
pub use isolated::isolated;
pub use joined::Joined;
pub use legal::{legal, legal_for};
pub use line_up::may_start;
pub use notice::{notices, Notice};
pub use prepared::{
    is_over, late_team, list_lacks, signed, standing, warm_up_running, warm_ups, warmed_up,
    ListLack, Signed, Standing,
};
pub use preview::{
    level_for, preview_sanction, preview_substitution, Conduct, MayReturn, SanctionPreview,
    SubstitutionPreview,
};
pub use protest::Protest;
pub use reducer::{apply, check};
pub use refusal::{Asked, InSet, Refusal};
pub use sanction::{Sanction, SanctionKind};
pub use set::{CameBy, CameIn, Point, PointFor, SetPlay, Side, Slot};
pub use signer::Signer;
pub use simulator::{simulate, simulate_by};
pub use stage::Phase;
pub use state::{RallyNote, RunningTimer, Signature, State};
pub use stop::RECOVERY_SECONDS;
pub use team_state::{Barred, OutFor, TeamState};
pub use timed::{interval, timers_with, Timed};
pub use toss::{Choice, Choosing};
