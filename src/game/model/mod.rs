//! What a match is: its entries, and the state that follows from them. Nothing here knows a rule of play.

pub(crate) mod count_down;
pub(crate) mod ending;
pub mod entry;
pub(crate) mod isolated;
pub(crate) mod joined;
pub(crate) mod protest;
pub(crate) mod question;
pub(crate) mod refusal;
pub(crate) mod sanction;
pub(crate) mod set;
pub(crate) mod set_to_come;
pub(crate) mod signer;
pub(crate) mod stage;
pub(crate) mod state;
pub(crate) mod team_state;
pub(crate) mod toss;
