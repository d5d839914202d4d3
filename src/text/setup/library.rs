//! The words of the matches on the phone: finding, putting away, deleting, the backup of everything,
//! the storage.

use app::machine::{StoragePromise, StorageRoom};
use reports::DateWords;

words! { LibraryWords in setup::library;
    /// Label of the field.
    find -> &'static str;
    /// How people write the day that they look for.
    date_words -> &'static DateWords;
    /// Opens what else can be done with a match.
    more_of -> &'static str;
    /// Mark of a match that came from a file or by codes just now.
    just_came -> &'static str;
    /// To the look back on a match.
    review -> &'static str;
    /// Shows what was put away.
    show_archived -> &'static str;
    /// Where nothing fits.
    nothing_fits -> &'static str;
    /// Where all are put away.
    all_archived -> &'static str;
    /// Puts a match away.
    archive -> &'static str;
    /// Brings it back.
    unarchive -> &'static str;
    /// Mark of a match that was put away.
    is_archived -> &'static str;
    /// Ends it.
    stop -> &'static str;
    /// Heading.
    backup -> &'static str;
    /// What a backup is.
    backup_is -> &'static str;
    /// Makes it.
    make_backup -> &'static str;
    /// While it is made.
    backing_up -> &'static str;
    /// After it.
    backup_made -> &'static str;
    /// While the phone's list was closed.
    backup_not_made -> &'static str;
    /// Asks the browser.
    ask_to_keep -> &'static str;
    /// Wipes.
    wipe -> &'static str;
    /// It is done.
    wiped -> &'static str;
    /// Where the storage would not be wiped.
    not_wiped -> &'static str;
    /// Where a match would not go.
    /// Heading.
    move_title -> &'static str;
    /// In a browser's tab.
    move_in_tab -> &'static [&'static str];
    /// In the installed app.
    move_installed -> &'static [&'static str];
    /// Shows the rest of a long list.
    show_all(count: usize) -> String;
    /// So many matches.
    matches(count: usize) -> String;
    /// Before one is deleted: what goes.
    delete_question(teams: &str, standing: &str, entries: u32) -> String;
    /// Before everything is deleted: what goes.
    wipe_question(count: usize) -> String;
    /// The name of the backup's file.
    backup_name(day: &str) -> String;
    /// How much room is used.
    room(room: Option<StorageRoom>) -> String;
    /// Whether the browser keeps it.
    kept(kept: StoragePromise) -> &'static str;
}
