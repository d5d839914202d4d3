//! What is computed from a log: the printed fold and the sheet.

pub mod audit;
pub mod compare;
mod fold_print;
mod form;
pub mod paper;
mod plausible;
mod remark;
mod score_sheet;
pub mod standings;
mod text;

pub use fold_print::fold_print;
pub use form::{Form, FormProblem};
pub use remark::RemarkLine;
pub use score_sheet::{
    PointMark, Replacement, Requested, ResultBox, Round, SetSheet, Sheet, Substitution, TeamBlock,
};
pub use text::text;
