//! What may happen in a match, one file for each part of the rules. Each answers whether an entry is legal
//! (`check`) and carries it out; the reducer alone calls them.

pub(crate) mod announce;
pub(crate) mod conduct;
pub(crate) mod correction;
pub(crate) mod courts;
pub(crate) mod discrepancy;
pub(crate) mod forfeit;
pub(crate) mod game_captain;
pub(crate) mod joined;
pub(crate) mod late_fault;
pub(crate) mod libero;
pub(crate) mod line_up;
pub(crate) mod new_libero;
pub(crate) mod notes;
pub(crate) mod opening;
pub(crate) mod protest;
pub(crate) mod questions;
pub(crate) mod rally;
pub(crate) mod request;
pub(crate) mod seal;
pub(crate) mod stop;
pub(crate) mod substitution;
pub(crate) mod time_out;
pub(crate) mod toss;
