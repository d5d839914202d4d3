//! What the app is for, what it is not, and the careful words.

use crate::about::*;

/// In English.
pub static WORDS: AboutWords = AboutWords {
    about_title: "About",
    about: "What this app does not replace",
    care_stop: "Stop play at once. Get the adult in charge and first aid.",
    care_no_diagnosis: "Do not make a diagnosis. Do not touch or move anybody.",
    care_head:
        "After a blow to the head, or if there is any doubt: off the court. Nobody comes back \
         without clearance by a licensed medical person under your local rules.",
    care_not_replaced:
        "This app does not replace a qualified person or the rules of your competition. They \
         count first.",
    about_parts,
};

fn about_parts() -> [(&'static str, Vec<&'static str>); 5] {
    [
    (
        "The rules that count",
        vec![
            "Dutystand knows the Official Volleyball Rules and some common school limits. Your \
             competition may have rules of its own. They count first.",
            "The app advises. The first referee decides.",
        ],
    ),
    (
        "When somebody is hurt",
        vec![
            care_stop(),
            care_no_diagnosis(),
            care_head(),
            care_not_replaced(),
        ],
    ),
    (
        "What stays on this phone",
        vec![
            "Everything stays here. Names are optional: shirt numbers are enough. Nothing leaves the \
             phone unless you share it yourself.",
            "If the browser clears its data, the records go too. Export what matters.",
        ],
    ),
    (
        "Without a network",
        vec![
            "Once the app has been opened with a network, it works without one.",
            "The screen stays on during a match where the phone allows it.",
        ],
    ),
    (
        "With a keyboard",
        vec![
            "On the court, the left and right arrow keys choose a half, and Enter gives it the point. Tab \
             reaches everything else. Escape closes an open panel.",
        ],
    ),
]
}
