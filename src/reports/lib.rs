//! What is computed from a log: the printed fold and the sheet.

pub mod audit;
mod clock;
mod clock_doubt;
pub mod compare;
mod csv;
pub mod demo;
mod file_kind;
mod find;
mod fold_print;
mod form;
mod html;
pub mod list;
mod logbook;
pub mod observed;
pub mod one_match;
pub mod paper;
mod picture;
mod places;
mod plausible;
mod remark;
pub mod review;
mod score_sheet;
mod spreadsheet;
pub mod standings;
mod text;
pub mod words;

pub use clock::WallClock;
pub use clock_doubt::{clock_doubts, ClockDoubt};
pub use csv::points_csv;
pub use file_kind::FileKind;
pub use find::fits;
pub use fold_print::fold_print;
pub use form::{Form, FormProblem};
pub use html::{document, parts};
pub use logbook::logbook_csv;
pub use picture::Picture;
pub use places::{libero_turns, Entered, Half, LiberoTurn, Place, Turn};
pub use remark::RemarkLine;
pub use score_sheet::{
    Named, PointMark, Replacement, Requested, ResultBox, Round, SealBox, SetSheet, Sheet, Signed,
    Substitution, TeamBlock,
};
pub use text::text;
