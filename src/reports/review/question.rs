//! Three questions to oneself, chosen by what happened: they ask, they do not judge.

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
