//! The words around the sheet, in one place; a second language is a second file like this one.

use crate::sheet::*;

/// In English.
pub static WORDS: SheetWords = SheetWords {
    print: "Print",
    page: "Save as a page",
    points: "Points as a table",
    hand_over: "Share",
    talk: "Review",
    cannot_print:
        "This browser cannot print. Save the sheet as a page and print it on another device.",
    closing: "Sign and seal",
    not_over: "When the match is over, you sign and seal it here.",
    broken_off: "The match was abandoned: close it now",
    look_first:
        "Each person looks at the result below, then taps their own line. That is the signature.",
    sign_means: "Whoever signs here says: I have seen the result.",
    signed: "signed",
    not_signed: "not signed",
    seal: "Seal the record",
    seal_anyway: "Seal anyway",
    seal_anyway_more: "You can seal anyway. The sheet will say what was open.",
    result_so_far: "Not over. The result so far",
    still_open: "Still open",
    nothing_open: "The check found only what is listed below.",
    complete: "Complete it",
    details: "Match details",
    to_court: "To the court",
    to_log: "To the match log",
    remark: "Explain it in a remark",
    remark_field: "Remark for the sheet",
    remark_go: "Add remark",
    remark_needs_words: "Write a few words first. They go on the sheet.",
    clear: "All good now",
    clear_who: "Who says so",
    clear_go: "Clear the check",
    clear_needs_who: "Name the person who says so. It goes on the sheet.",
    clear_more,
    write_protest: "Write the protest",
    protest_more: "The captain may write down the announced protest, or drop it.",
    protest_field: "What the captain writes",
    protest_needs_words: "Write what the captain says. It goes on the sheet.",
    about_entry,
    way,
    open_count,
    sealed: "Sealed",
    write_down:
        "Write this code on paper, or read it out to both teams. A record that is changed later \
         has another code.",
    broken: "The seal does not fit",
    broken_more:
        "This record is not what was sealed. Ask for it again, and compare the code on paper.",
    reopen: "Reopen",
    reopen_ask: "Reopen the sealed record?",
    reopen_more:
        "The reopening and its reason go on the sheet. The code on paper will be out of date, so \
         seal the record again.",
    reopen_why: "Why do you reopen it?",
    reopen_needs_why: "Say in a few words why. It goes on the sheet.",
    missing,
    line,
};

fn clear_more(item: &str) -> String {
    format!("This check had failed: {}.", item.replace('_', " "))
}

fn about_entry(n: u32, words: &str) -> String {
    format!("Entry {n}: {words}")
}

fn way(words: &str, finding: &str) -> String {
    format!("{words}: {finding}")
}

fn open_count(count: usize) -> String {
    match count {
        1 => "One thing is still open. You see it on the sheet screen.".into(),
        n => format!("{n} things are still open. You see them on the sheet screen."),
    }
}

fn missing(who: &[String]) -> String {
    format!("Not signed yet: {}.", who.join(", "))
}

fn line(who: &str, name: Option<&str>, has_signed: bool) -> String {
    match (has_signed, name) {
        (true, Some(name)) => format!("{who}: {name}, {}", signed()),
        (true, None) => format!("{who}: {}", signed()),
        (false, _) => format!("{who}: {}", not_signed()),
    }
}
