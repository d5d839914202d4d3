//! What is computed from a log: the printed fold, the sheet.

mod fold_print;

pub use fold_print::fold_print;
