//! The logbook as a table for whoever signs it off, one line a match.

use super::spreadsheet::{number, quoted, Table};
use record::Logbook;

/// The columns of the table.
const COLUMNS: [&str; 7] = ["date", "role", "level", "teams", "minutes", "talk", "next"];

/// Every match of a logbook, the latest first.
#[must_use]
pub fn logbook_csv(logbook: &Logbook) -> String {
    let mut table = Table::new(&COLUMNS);
    for one in logbook.matches() {
        table.line(&[
            number(Some(one.day.as_str())),
            number(Some(one.duty.code())),
            quoted(&one.level),
            quoted(&one.teams),
            number(one.minutes),
            quoted(&one.talk),
            quoted(&one.next),
        ]);
    }
    table.finish()
}
