//! The words of the pages on which decisions can be tried (FIVB Official Volleyball Rules 2025-2028; in our
//! own words).

use learn::{Decided, End, Reading, Ruling, Situation, Topic};
use rules::Signal;

words! { DecisionsWords in learn::decisions;
    /// The name of a page.
    topic(topic: Topic) -> &'static str;
    /// What a page is about, in a sentence.
    topic_more(topic: Topic) -> &'static str;
    /// What the referee looks at, before the drawing.
    look_for(topic: Topic) -> &'static [&'static str];
    /// The name of a situation, where its page has several.
    situation(situation: Situation) -> &'static str;
    /// What a drawing shows, for those who do not see it and above it for all.
    drawn(situation: Situation) -> &'static str;
    /// By which reading, where there are several.
    reading(reading: Reading) -> &'static str;
    /// A team of a drawing.
    side(end: End) -> &'static str;
    /// What is decided, in a line.
    call(decided: &Decided) -> String;
    /// Before the rule.
    rule(rule: &str) -> String;
    /// How far the other answer was away.
    margin(decided: &Decided) -> String;
    /// How far the answer other than this one was away.
    margin_of(ruling: Ruling) -> String;
    /// A length as somebody says it: below a metre in centimetres, in halves where it matters.
    length(metres: f64) -> String;
    /// The signal that follows, and the way to its page.
    show_signal(signal: Signal) -> String;
    /// Puts a drawing back as it was.
    as_at_first -> &'static str;
    /// A smaller value.
    less -> &'static str;
    /// A larger one.
    more_of_it -> &'static str;
    /// Which of several things the controls are for.
    which_mover(of: Situation) -> &'static str;
}
