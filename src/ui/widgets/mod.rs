//! Parts that several screens share.

pub mod cards;
pub mod count_down;
pub mod deferred;
pub mod dialog;
mod figure;
pub mod give;
mod hand;
pub mod icon;
pub mod kept_words;
pub mod keys;
pub mod line_up_court;
pub mod log_lines;
pub mod number_pad;
pub mod paper_sheet;
pub mod picker;
pub mod refusal;
pub mod signal_figure;
pub mod team_mark;
pub mod text_field;
pub mod unfold;
