//! What can be set in a situation, and how it stands, in words that can be heard as well.

use learn::{Dial, Situation};

words! { DialsWords in learn::dials;
    /// The name of a control.
    dial(dial: Dial) -> String;
    /// The letter on a player of a drawing, for the first to the third choice of what the player is.
    row_mark(row: usize) -> &'static str;
    /// The choices of a control that has some, in their order.
    choices(dial: Dial) -> &'static [&'static str];
    /// How a control stands.
    set_to(dial: Dial, value: f64) -> String;
    /// One of several things that the controls can be for: a touch, a player before the server or the receiver, a
    /// position.
    mover(of: Situation, n: u8) -> String;
}
