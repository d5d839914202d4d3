//! What a competition plays by: formats, limits, presets, causes and signals, as data.
//!
//! Nothing here knows a match. Every value carries its source, where it is written.

mod ball;
mod cause;
mod coded;
mod decimal;
mod duty;
mod flag;
mod format;
mod net;
mod plan;
pub mod pose;
mod preset;
mod signal;
mod sorting;
mod team;

pub use ball::{Judged, Pressure, Unit};
pub use cause::{Cause, Group};
pub use coded::Coded;
pub use duty::Duty;
pub use flag::FlagSignal;
pub use format::{
    Decider, Edition, Invalid, Roster, Rules, SetLimit, SetTarget, Sets, SubstitutionPolicy,
    Substitutions, TimeOuts, UnderNet, WarmUp, WarmUpStyle, CALL_BACK_SECONDS, MAX_SETS,
};
pub use net::{AgeHeight, Height, Measured, NetFault, AGE_HEIGHTS, MEN, SIDE_MORE, WOMEN};
pub use plan::{is_tomorrow, plan, waited_until, Moment, Step, Timing, COURTSIDE_MINUTES};
pub use preset::Preset;
pub use signal::{Arm, Signal};
pub use sorting::{gather, sort_by, sort_by_key};
pub use team::{ByTeam, Score, Shirt, Team};
