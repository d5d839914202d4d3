//! Why something is decided as it is: a sentence for each rule that a decision names.

use learn::{Decided, Judged, Ruling};

words! { WhyWords in learn::why;
    /// The reason in plain words. Empty for a rule that no situation comes to.
    why(decided: &Decided) -> &'static str;
    /// The rule and the reason of a thing in a scene. Where a near miss is about one sort of hit, its own rule is
    /// named and not that of counting hits.
    why_in_scene(judged: &Judged) -> (&'static str, &'static str);
    /// The reason of a ruling.
    why_of(ruling: Ruling) -> &'static str;
}
