//! The words of handing over and taking in, in one place; a second language is a second file like this
//! one.

/// Before a record is handed over that could still change.
pub const NOT_SEALED: &str =
    "This record is not sealed. You can share it, but others will see that it is still open.";
/// The way to the seal.
pub const TO_SHEET: &str = "To the sheet";
/// Heading.
pub const FILE: &str = "As a file";
/// What goes with a record and what does not.
pub const WHAT_GOES: &str =
    "The names on the team lists and of those who signed are shared too. Drawn signatures are not: they \
     stay on this phone.";
/// Hands it over.
pub const FILE_GO: &str = "Share the file";
/// It went.
pub const SHARED: &str = "The file was shared.";
/// It did not.
pub const CANCELLED: &str = "Nothing was shared.";

/// Where the file goes.
#[must_use]
pub const fn file_goes(shares: bool, installed_on_ios: bool) -> &'static str {
    match (shares, installed_on_ios) {
        (_, true) => {
            "The phone shows its list of apps. To keep the file on this phone, choose \u{201c}Save to \
             Files\u{201d} there. An installed app on an iPhone or iPad has no downloads."
        }
        (true, false) => "The phone shows its list of apps and people. Nothing leaves the phone by itself.",
        (false, false) => "The file goes to this browser's downloads.",
    }
}

/// It is in the downloads.
#[must_use]
pub fn downloaded(name: &str) -> String {
    format!("{name} is in this browser's downloads.")
}

/// Heading.
pub const CODES: &str = "To another phone's camera";
/// What the other one does.
pub const CODES_MORE: &str =
    "You need no network. On the other phone, open this app and tap \u{201c}Scan a match\u{201d} on the \
     start page.";
/// Shows them.
pub const SHOW: &str = "Show the code";
/// Step.
pub const BEFORE: &str = "Previous";
/// Step.
pub const NEXT: &str = "Next";
/// Stops the change.
pub const HOLD: &str = "Pause";
/// Goes on with it.
pub const RUN: &str = "Play";
/// Other codes.
pub const SIMPLER: &str = "Hard to scan? Show more, simpler codes";
/// Other codes.
pub const FEWER: &str = "Show fewer, finer codes";
/// How they are read well.
pub const CODES_CARE: &str =
    "Turn the screen to full brightness. Scan the codes in any order. Scanning a code twice does no harm.";

/// Under a code.
#[must_use]
pub fn place(place: usize, count: usize) -> String {
    format!("Code {} of {count}", place + 1)
}

/// Name of the picture for whoever listens.
#[must_use]
pub fn label(at: usize, count: usize) -> String {
    format!("{}, for the camera of another phone", place(at, count))
}

/// What is done here.
pub const RECEIVE_MORE: &str =
    "On the other phone, open the match, tap \u{201c}Share\u{201d} and show the code. Hold this phone so \
     that the code fills the picture.";
/// Name of the picture.
pub const SIGHT: &str = "What the camera sees";
/// Starts it.
pub const CAMERA_ON: &str = "Camera on";
/// Ends it.
pub const CAMERA_OFF: &str = "Camera off";
/// The other way.
pub const PHOTO: &str = "From a photo";
/// Forgets what is there.
pub const ANEW: &str = "Start again";
/// Nothing yet.
pub const LOOKING: &str = "Looking for a code.";
/// Opens it.
pub const OPEN: &str = "Open the sheet";
/// Name of the field for digits.
pub const DIGITS: &str = "Digits of a code";
/// What it is for.
pub const DIGITS_MORE: &str =
    "For a hand scanner, or to paste. Put each code on a line of its own.";
/// Reads them.
pub const DIGITS_READ: &str = "Read the digits";
/// There are none.
pub const NO_DIGITS: &str = "The field is empty. Scan or paste the digits of a code first.";
/// About the camera.
pub const RECEIVE_CARE: &str =
    "This phone reads the picture and does not keep it. A record that is already here is not overwritten.";
/// Another one.
pub const OTHER_RECORD: &str =
    "This code belongs to another record. Continue with the first one, or start again.";

/// Notes of an observer came.
pub const NOTES_TAKEN: &str =
    "The notes of an observer are on this phone. Open the match and tap Review to see them beside it.";
/// There is no room for them.
pub const NOTES_NOT_KEPT: &str =
    "The notes could not be stored because the phone is full. Delete what you do not need and scan again.";

/// So far.
#[must_use]
pub fn part(have: usize, of: usize, missing: &[usize]) -> String {
    let missing: Vec<String> = missing.iter().map(usize::to_string).collect();
    format!(
        "{have} of {of} codes are here. Missing: {}.",
        missing.join(", ")
    )
}

/// A photo without a code.
#[must_use]
pub fn nothing_in(name: &str) -> String {
    format!(
        "No code was found in {name}. Take the photo from straight ahead, so that the code fills it."
    )
}
