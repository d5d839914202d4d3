//! What the machine could not do, with the way out.

use app::machine::{CameraTrouble, HandOverTrouble};
use app::ports::StorageTrouble;

/// The browser's own words in brackets; nothing where it has none.
pub(crate) fn in_its_words(why: &str) -> String {
    match why {
        "" => String::new(),
        why => format!(" ({why})"),
    }
}

words! { MachineWords in machine;
    /// Storage that does not take a line.
    storage(trouble: &StorageTrouble) -> String;
    /// No picture to find a code in.
    camera(trouble: &CameraTrouble) -> String;
    /// A file that was not handed over.
    hand_over(trouble: &HandOverTrouble) -> String;
}
