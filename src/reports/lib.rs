//! What is computed from one log or many: sheet, audit, paper sheets, comparison, standings, review.

pub mod audit;
mod clock;
mod clock_doubt;
pub mod compare;
pub mod demo;
mod file_kind;
mod find;
mod form;
mod form_problem;
pub mod list;
pub mod observed;
pub mod one_match;
pub mod paper;
mod places;
mod plausible;
mod remark;
pub mod review;
mod score_sheet;
mod sheet_box;
pub mod standings;
mod weight;

pub use clock::WallClock;
pub use clock_doubt::{clock_doubts, ClockDoubt};
pub use file_kind::FileKind;
pub use find::{fits, DateWords};
pub use form::Form;
pub use form_problem::{FormProblem, FormProblemKind};
pub use places::{libero_turns, Entered, Half, LiberoTurn, Place, Turn};
pub use remark::{Corrected, Remark, RemarkLine};
pub use score_sheet::{
    Named, PointMark, Replacement, Requested, ResultBox, Round, SealBox, SetSheet, Sheet, Signed,
    Substitution, TeamBlock,
};
pub use sheet_box::SheetBox;
pub use weight::{Weight, Weights};
