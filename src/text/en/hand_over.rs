//! The words of handing over and taking in, in one place; a second language is a second file like this
//! one.

use crate::hand_over::*;

/// In English.
pub static WORDS: HandOverWords = HandOverWords {
    not_sealed:
        "This record is not sealed. You can share it, but others will see that it is still open.",
    to_sheet: "To the sheet",
    file: "As a file",
    what_goes:
        "The names on the team lists and of those who signed are shared too. Drawn signatures are \
         not: they stay on this phone.",
    file_go: "Share the file",
    shared: "The file was shared.",
    cancelled: "Nothing was shared.",
    file_goes,
    downloaded,
    codes: "To another phone's camera",
    codes_more: "You need no network. On the other phone, open this app and tap \u{201c}Scan a \
         match\u{201d} on the start page.",
    show: "Show the code",
    before: "Previous",
    next: "Next",
    hold: "Pause",
    run: "Play",
    simpler: "Hard to scan? Show more, simpler codes",
    fewer: "Show fewer, finer codes",
    codes_care:
        "Turn the screen to full brightness. Scan the codes in any order. Scanning a code twice \
         does no harm.",
    place,
    label,
    receive_more:
        "On the other phone, open the match, tap \u{201c}Share\u{201d} and show the code. Hold \
         this phone so that the code fills the picture.",
    sight: "What the camera sees",
    camera_on: "Camera on",
    camera_off: "Camera off",
    photo: "From a photo",
    anew: "Start again",
    looking: "Looking for a code.",
    open: "Open the sheet",
    digits: "Digits of a code",
    digits_more: "For a hand scanner, or to paste. Put each code on a line of its own.",
    digits_read: "Read the digits",
    no_digits: "The field is empty. Scan or paste the digits of a code first.",
    receive_care:
        "This phone reads the picture and does not keep it. A record that is already here is not \
         overwritten.",
    other_record:
        "This code belongs to another record. Continue with the first one, or start again.",
    notes_taken:
        "The notes of an observer are on this phone. Open the match and tap Review to see them \
         beside it.",
    notes_not_kept:
        "The notes could not be stored because the phone is full. Delete what you do not need and \
         scan again.",
    part,
    nothing_in,
};

fn file_goes(shares: bool, installed_on_ios: bool) -> &'static str {
    match (shares, installed_on_ios) {
        (_, true) => {
            "The phone shows its list of apps. To keep the file on this phone, choose \u{201c}Save to \
             Files\u{201d} there. An installed app on an iPhone or iPad has no downloads."
        }
        (true, false) => "The phone shows its list of apps and people. Nothing leaves the phone by itself.",
        (false, false) => "The file goes to this browser's downloads.",
    }
}

fn downloaded(name: &str) -> String {
    format!("{name} is in this browser's downloads.")
}

fn place(place: usize, count: usize) -> String {
    format!("Code {} of {count}", place + 1)
}

fn label(at: usize, count: usize) -> String {
    format!("{}, for the camera of another phone", place(at, count))
}

fn part(have: usize, of: usize, missing: &[usize]) -> String {
    let missing: Vec<String> = missing.iter().map(usize::to_string).collect();
    format!(
        "{have} of {of} codes are here. Missing: {}.",
        missing.join(", ")
    )
}

fn nothing_in(name: &str) -> String {
    format!(
        "No code was found in {name}. Take the photo from straight ahead, so that the code fills it."
    )
}
