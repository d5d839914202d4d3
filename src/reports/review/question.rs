//! Three questions to oneself, chosen by what happened: they ask, they do not judge.

use super::draw::times;
use super::Review;
use rules::{Cause, Score};

/// Longer without anything entered is worth a question, in seconds. Our own choice, no source.
const LONG_PAUSE: i64 = 60;

/// A question for the talk afterwards.
#[derive(Clone, Debug, PartialEq, Eq)]
#[allow(missing_docs)] // The fields are what the question names.
pub enum Question {
    /// Something was taken back.
    TakenBack { times: usize },
    /// Something was entered against the advice of the rules.
    Insisted { times: usize },
    /// Somebody was sanctioned.
    Sanctioned { times: usize },
    /// Play stood for long and nothing says why.
    StoodStill { seconds: i64, set: u8, score: Score },
    /// The same was called often.
    Often { cause: Cause, times: usize },
    /// Many rallies have no reason.
    Unsaid { times: usize, of: usize },
    /// The set that was closest.
    Closest { set: u8, score: Score },
    /// What was seen first after a rally.
    Looked,
    /// What went well.
    Well,
}

impl Review {
    /// Three questions: two by what happened, and always what went well.
    #[must_use]
    pub fn questions(&self) -> [Question; 3] {
        let mut asked = self.by_what_happened().into_iter();
        let first = asked.next().unwrap_or(Question::Looked);
        let second = match asked.next() {
            Some(question) => question,
            None if first == Question::Looked => Question::Unsaid {
                times: self.unsaid(),
                of: self.points(),
            },
            None => Question::Looked,
        };
        [first, second, Question::Well]
    }

    fn by_what_happened(&self) -> Vec<Question> {
        let times = |n: usize| Some(n).filter(|n| *n > 0);
        let points = self.points();
        let often = self.calls.first().filter(|c| c.when.len() >= 4);
        let closest = self
            .sets
            .iter()
            .filter(|s| s.score.a.abs_diff(s.score.b) <= 2 && s.score.leader().is_some())
            .max_by_key(|s| s.score.a + s.score.b);
        [
            times(self.insisted).map(|times| Question::Insisted { times }),
            times(self.sanctions).map(|times| Question::Sanctioned { times }),
            times(self.taken_back.len()).map(|times| Question::TakenBack { times }),
            self.longest_pause()
                .filter(|(pause, _, _)| *pause > LONG_PAUSE)
                .map(|(seconds, set, score)| Question::StoodStill {
                    seconds,
                    set,
                    score,
                }),
            often.map(|c| Question::Often {
                cause: c.cause,
                times: c.when.len(),
            }),
            (self.unsaid() * 2 > points).then(|| Question::Unsaid {
                times: self.unsaid(),
                of: points,
            }),
            closest.map(|s| Question::Closest {
                set: s.number,
                score: s.score,
            }),
        ]
        .into_iter()
        .flatten()
        .collect()
    }
}

/// The words of a question; `called` gives the name of a reason.
#[must_use]
pub fn say(question: &Question, called: impl Fn(Cause) -> String) -> String {
    match question {
        Question::TakenBack { times: n } => format!(
            "You undid an entry {}. What did you see first, and what changed your mind?",
            times(*n)
        ),
        Question::Insisted { times: n } => format!(
            "You decided against the advice of the rules {}. Would you decide the same again, and how \
             would you explain it to a captain?",
            times(*n)
        ),
        Question::Sanctioned { times: n } => format!(
            "You gave a sanction {}. What came before it? Was there a moment when a word would have been \
             enough?",
            times(*n)
        ),
        Question::StoodStill { seconds, set, score: s } => format!(
            "Before {} in set {set} play stood for {} min {:02} s, and the record does not say why. What \
             held you up, and who could have helped?",
            s.marked(),
            seconds / 60,
            seconds % 60
        ),
        Question::Often { cause, times: n } => format!(
            "You called \"{}\" {}. Did you judge the first and the last one in the same way?",
            called(*cause),
            times(*n)
        ),
        Question::Unsaid { times: n, of } => format!(
            "{n} of {of} rallies have no reason. Which of them could you still explain, and to whom?"
        ),
        Question::Closest { set, score: s } => format!(
            "Set {set} ended {}. Where did you look at the end, and what did you do to stay calm?",
            s.marked()
        ),
        Question::Looked => {
            "After a rally, whom do you look at first, and whom last? Would a different order help?".to_owned()
        }
        Question::Well => {
            "What went well, what will you do the same way next time, and have you told your duty team?"
                .to_owned()
        }
    }
}
