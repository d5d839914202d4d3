//! The running program without a browser: what is kept where, how copies are put together, who writes.
//!
//! Everything here is plain Rust over the small traits of [`ports`], so that a test can stand in for
//! the browser and let it be slow, full, cut off or emptied. The device floor carries out what is
//! decided here and decides nothing itself.

pub mod delaying;
pub mod desk;
pub mod field;
pub mod keeper;
pub mod language;
pub mod learner;
pub mod lease;
pub mod lesson;
pub mod machine;
pub mod merge;
pub mod parts;
pub mod played;
pub mod ports;
pub mod practice;
pub mod session;
pub mod shown;
pub mod skew;
pub mod snapshot;
pub mod stamp;
pub mod store;
pub mod summary;
pub mod theme;
pub mod thumb;
