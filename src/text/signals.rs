//! The words of the signals: what they are called, how they are made, and who makes them (FIVB
//! Official Volleyball Rules 2025-2028, chapter 30 and diagram 11; in our own words).

use rules::{Arm, Signal};

words! { SignalsWords in signals;
    /// The screen.
    signals -> &'static str;
    /// What is on it.
    signals_more -> &'static str;
    /// One after the other, the name hidden.
    learn_one_by_one -> &'static str;
    /// Shows what a drawing means.
    show_name -> &'static str;
    /// The next drawing.
    next_signal -> &'static str;
    /// The drawing moves once more.
    again -> &'static str;
    /// Back to the list.
    all_signals -> &'static str;
    /// A drawing whose name is still hidden, for those who do not see it.
    hidden_signal -> &'static str;
    /// The first step of every decision.
    whistle_step -> &'static str;
    /// The name of a signal.
    signal(signal: Signal) -> &'static str;
    /// How it is made.
    signal_how(signal: Signal) -> &'static str;
    /// What it is made for, where the name does not say all of it.
    signal_for(signal: Signal) -> Option<&'static str>;
    /// Who makes it. Some of it is filled in from what each referee decides (23.3, 24.3).
    signal_by(signal: Signal) -> &'static str;
    /// Which arm.
    arm(arm: Arm) -> &'static str;
    /// The step that says who serves.
    to_serve(name: &str) -> String;
    /// The step that says why.
    signal_with_number(of: Signal) -> String;
}
