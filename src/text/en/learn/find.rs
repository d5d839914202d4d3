//! Finding a signal, in English.

use crate::learn::find::FindWords;
use rules::Signal;

/// In English.
pub static WORDS: FindWords = FindWords {
    find: "Find a signal",
    find_hint: "A word, or what happened",
    find_nothing: "No signal found. Try another word, or look through all of them.",
    find_examples: [
        "touched the net",
        "stepped on the line",
        "ball hit the antenna",
        "two players change",
    ],
    said,
    filler: &[
        "the", "a", "an", "was", "is", "it", "has", "had", "have", "and", "he", "she", "they",
        "his", "her", "player", "ball",
    ],
};

fn said(of: Signal) -> &'static str {
    match of {
        Signal::AuthoriseService => "serve allowed start whistle go begin play",
        Signal::TeamToServe => "point won who serves next side winner rally",
        Signal::ChangeOfCourts => "swap sides switch ends",
        Signal::TimeOut => "break pause timeout coach asks",
        Signal::Substitution => "swap player players change sub exchange comes in goes out",
        Signal::Warning => "yellow card misconduct first bad behaviour",
        Signal::Penalty => "red card misconduct rude swearing argues behaviour point",
        Signal::Expulsion => "sent off set both cards one hand offensive",
        Signal::Disqualification => "sent off match both cards two hands aggressive fight",
        Signal::EndOfSet => "over finished last point match set won",
        Signal::NotTossed => "toss released threw held out of the hand service serve",
        Signal::ServiceDelay => "too late slow seconds time waited service serve",
        Signal::BlockOrScreen => "blocked the serve back row blocker screen hides libero blocked hidden",
        Signal::Position => "rotation order wrong place wrong server out of position overlap",
        Signal::BallIn => "on the line inside landed floor good",
        Signal::BallOut => {
            "outside wide long antenna ceiling wall outside object hit the coach out of court"
        }
        Signal::Catch => "held carried lift lifted threw thrown hold caught rest",
        Signal::DoubleContact => "twice two touches double hit hits touched it two times bad set",
        Signal::FourHits => "fourth touch four touches too many hits",
        Signal::NetTouch => "touched the net touch hand net serve into the net did not cross",
        Signal::OverNet => "reached over the net across other side block too early beyond",
        Signal::AttackFault => {
            "spike smash back row attack attacked three metre line in front libero finger set attacked \
             the serve"
        }
        Signal::LineOrUnder => {
            "foot fault stepped on the line over under the net crossed centre penetration below outside \
             court at service"
        }
        Signal::Replay => "again both fault at once same time double fault ball on court interference repeat",
        Signal::BallTouched => "touched out tip fingertips off the block deflected brushed",
        Signal::DelayWarning => "slow wasting time late delay yellow card first",
        Signal::DelayPenalty => "slow wasting time late delay red card second repeated",
    }
}
