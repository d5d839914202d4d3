//! The running program without a browser: what is kept where, how copies are put together, who writes.
//!
//! Everything here is plain Rust over the small traits of [`ports`], so that a test can stand in for
//! the browser and let it be slow, full, cut off or emptied. The device floor carries out what is
//! decided here and decides nothing itself.

mod backup_scan;
pub mod delaying;
pub mod desk;
pub mod desk_store;
pub mod drafts;
pub mod field;
pub mod import_note;
pub mod importer;
pub mod keeper;
pub mod language;
pub mod last_used;
pub mod learner;
pub mod learner_data;
pub mod lease;
pub mod lesson;
pub mod library;
pub mod machine;
pub mod merge;
pub mod played;
pub mod ports;
pub mod practice;
pub mod session;
pub mod setting;
pub mod settings;
pub mod shown;
pub mod skew;
pub mod snapshot;
pub mod stamp;
pub mod store;
pub mod stored_match;
pub mod summary;
pub mod theme;
pub mod thumb;
