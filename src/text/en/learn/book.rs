//! The words of the pages that lead to what there is to learn.

use crate::learn::book::*;

/// In English.
pub static WORDS: BookWords = BookWords {
    book_more: "Read it, then try it. Nothing counts against you, and nothing leaves this phone.",
    book_order: "New to it? Go from top to bottom.",
    decisions: "Decisions",
    decisions_more: "Drag feet, ball and players. See what is a fault and what is not.",
    court: "Court",
    court_more: "Tap a zone or a line. See what it is for.",
    roles: "Jobs",
    roles_more: "What each of the duty team does before, during and after.",
    care: "Safety",
    care_more: "Floor, posts, injuries, weather: when not to play, and whom to ask.",
    back_to_match: "Back to the match",
};
