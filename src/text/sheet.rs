//! The words around the sheet, in one place; a second language is a second file like this one.

/// Makes a page of paper.
pub const PRINT: &str = "Print";
/// The sheet as a file that any browser shows.
pub const PAGE: &str = "Save as a page";
/// The points as a file for a table calculation.
pub const POINTS: &str = "Points as a table";
/// To the screen that hands the record over.
pub const HAND_OVER: &str = "Share";
/// To the talk about the match.
pub const TALK: &str = "Review";
/// Where the browser has no printing.
pub const CANNOT_PRINT: &str =
    "This browser cannot print. Save the sheet as a page and print it on another device.";

/// Heading.
pub const CLOSING: &str = "Sign and seal";
/// While the match runs.
pub const NOT_OVER: &str = "When the match is over, you sign and seal it here.";
/// The way for a match that was broken off.
pub const BROKEN_OFF: &str = "The match was abandoned: close it now";
/// Before the signatures.
pub const LOOK_FIRST: &str =
    "Each person looks at the result below, then taps their own line. That is the signature.";
/// What a signature here says.
pub const SIGN_MEANS: &str = "Whoever signs here says: I have seen the result.";
/// Signed.
pub const SIGNED: &str = "signed";
/// Not yet.
pub const NOT_SIGNED: &str = "not signed";
/// Seals.
pub const SEAL: &str = "Seal the record";
/// Seals though something is open.
pub const SEAL_ANYWAY: &str = "Seal anyway";
/// What that leaves on the sheet.
pub const SEAL_ANYWAY_MORE: &str = "You can seal anyway. The sheet will say what was open.";
/// The result of a match that is not over.
pub const RESULT_SO_FAR: &str = "Not over. The result so far";
/// Heading of what is open.
pub const STILL_OPEN: &str = "Still open";
/// Where nothing is.
pub const NOTHING_OPEN: &str = "The check found only what is listed below.";
/// Completes the heading.
pub const COMPLETE: &str = "Complete it";
/// What is completed.
pub const DETAILS: &str = "Match details";
/// To the court.
pub const TO_COURT: &str = "To the court";
/// To the list of entries.
pub const TO_LOG: &str = "To the match log";
/// What can be entered no more is told on the sheet.
pub const REMARK: &str = "Explain it in a remark";
/// The field.
pub const REMARK_FIELD: &str = "Remark for the sheet";
/// Enters it.
pub const REMARK_GO: &str = "Add remark";
/// Without words.
pub const REMARK_NEEDS_WORDS: &str = "Write a few words first. They go on the sheet.";
/// A check is in order now.
pub const CLEAR: &str = "All good now";
/// The field.
pub const CLEAR_WHO: &str = "Who says so";
/// Enters it.
pub const CLEAR_GO: &str = "Clear the check";
/// Without a person.
pub const CLEAR_NEEDS_WHO: &str = "Name the person who says so. It goes on the sheet.";

/// What is cleared.
#[must_use]
pub fn clear_more(item: &str) -> String {
    format!("This check had failed: {}.", item.replace('_', " "))
}

/// Writes the protest.
pub const WRITE_PROTEST: &str = "Write the protest";
/// What is written.
pub const PROTEST_MORE: &str = "The captain may write down the announced protest, or drop it.";
/// The field.
pub const PROTEST_FIELD: &str = "What the captain writes";
/// Without words.
pub const PROTEST_NEEDS_WORDS: &str = "Write what the captain says. It goes on the sheet.";

/// The entry of a finding.
#[must_use]
pub fn about_entry(n: u32, words: &str) -> String {
    format!("Entry {n}: {words}")
}

/// A way to put something right, for whoever does not see beside what it stands.
#[must_use]
pub fn way(words: &str, finding: &str) -> String {
    format!("{words}: {finding}")
}

/// Before somebody signs.
#[must_use]
pub fn open_count(count: usize) -> String {
    match count {
        1 => "One thing is still open. You see it on the sheet screen.".into(),
        n => format!("{n} things are still open. You see them on the sheet screen."),
    }
}
/// Heading, once it is sealed.
pub const SEALED: &str = "Sealed";
/// What to do with the code.
pub const WRITE_DOWN: &str =
    "Write this code on paper, or read it out to both teams. A record that is changed later has another \
     code.";
/// Heading, where the seal does not fit.
pub const BROKEN: &str = "The seal does not fit";
/// Says why.
pub const BROKEN_MORE: &str =
    "This record is not what was sealed. Ask for it again, and compare the code on paper.";
/// Opens it again.
pub const REOPEN: &str = "Reopen";
/// What is asked then.
pub const REOPEN_ASK: &str = "Reopen the sealed record?";
/// What happens then.
pub const REOPEN_MORE: &str =
    "The reopening and its reason go on the sheet. The code on paper will be out of date, so seal the \
     record again.";
/// What is asked for.
pub const REOPEN_WHY: &str = "Why do you reopen it?";
/// Without a reason.
pub const REOPEN_NEEDS_WHY: &str = "Say in a few words why. It goes on the sheet.";

/// Who has not signed.
#[must_use]
pub fn missing(who: &[&str]) -> String {
    format!("Not signed yet: {}.", who.join(", "))
}

/// The button of one who signs.
#[must_use]
pub fn line(who: &str, name: Option<&str>, signed: bool) -> String {
    match (signed, name) {
        (true, Some(name)) => format!("{who}: {name}, {SIGNED}"),
        (true, None) => format!("{who}: {SIGNED}"),
        (false, _) => format!("{who}: {NOT_SIGNED}"),
    }
}
