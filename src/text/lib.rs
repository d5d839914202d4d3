//! Every word that a person reads, by topic. A topic declares what can be said (`words!`), and each language
//! says it in a folder of its own: `en`, `es`. English is part of the program; another language is
//! given to [`speak`] when it has come.

// The words say themselves what they are.
#![allow(missing_docs)]

#[macro_use]
mod language;

mod about;
pub mod audit;
mod captains;
pub mod command_help;
pub mod command_line;
mod common;
pub mod comparison;
mod consequence;
mod corrected;
pub mod desk;
pub mod desk_work;
mod en;
mod entry;
pub mod es;
mod flows;
mod form;
pub mod hand_over;
mod intake;
pub mod learn;
pub mod machine;
pub mod paper;
mod plain;
mod play;
pub mod problem;
mod question;
mod refusal;
mod remark;
pub mod review;
mod sanctions;
mod score;
pub mod score_sheet;
pub mod setup;
pub mod sheet;
pub mod sheet_text;
mod signals;
pub mod standings;
mod storage;
mod teams;

pub use about::*;
pub use captains::*;
pub use common::*;
pub use consequence::*;
pub use corrected::*;
pub use entry::*;
pub use flows::*;
pub use form::*;
pub use intake::*;
pub use language::*;
pub use plain::*;
pub use play::*;
pub use question::*;
pub use refusal::*;
pub use remark::*;
pub use sanctions::*;
pub use score::*;
pub use signals::*;
pub use storage::*;
pub use teams::Teams;
