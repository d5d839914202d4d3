//! The words of the signals that only learning needs: from where they are seen, what goes wrong with them, and
//! the flags of the line judges (FIVB Official Volleyball Rules 2025-2028, 29.2, diagrams 11 and 12).

use rules::{FlagSignal, Signal};

words! { LearnSignalsWords in learn::signals;
    /// From where a signal is seen.
    seen_from -> &'static str;
    /// As in a mirror, from the front as players see it, from behind as the referee feels it.
    views -> [&'static str; 3];
    /// Which side it is for.
    at_fault -> &'static str;
    /// The team on the referee's left, and the other one.
    sides -> [&'static str; 2];
    /// Before what goes wrong often.
    mistake_label -> &'static str;
    /// The decisions that lead to it.
    decided_by -> &'static str;
    /// Heading of the flags.
    flags -> &'static str;
    /// What goes wrong often with a signal. Common practice, no source, but for the rule numbers.
    mistake(signal: Signal) -> Option<&'static str>;
    /// The name of a flag signal.
    flag(flag: FlagSignal) -> &'static str;
    /// How it is made and what for.
    flag_how(flag: FlagSignal) -> &'static str;
}
