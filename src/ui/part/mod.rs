//! Parts that several screens share.

pub mod count_down;
pub mod dialog;
pub mod line_up_court;
pub mod number_pad;
pub mod refusal;
pub mod team_mark;
