//! The questions that the rules leave to the first referee, and their choices, in words.

use crate::Teams;
use game::Question;

words! { QuestionWords in question;
    /// The question in words, and each choice in words.
    question(question: &Question, teams: Teams) -> (String, Vec<String>);
}
