//! Reports as documents: the sheet on paper, tables for a spreadsheet, JSON for scripts, lines to read and
//! pictures. The numbers are those of `reports`, the words those of `text`.

pub mod comparison;
mod comparison_picture;
pub mod findings;
mod fold;
mod html;
pub mod list;
mod logbook;
pub mod paper;
mod picture;
mod points;
pub mod review;
mod sheet_text;
mod spreadsheet;
pub mod standings;

pub use comparison_picture::parting;
pub use fold::fold;
pub use html::{document, parts, PaperPart};
pub use logbook::logbook_csv;
pub use picture::Picture;
pub use points::points_csv;
pub use sheet_text::sheet_text;
