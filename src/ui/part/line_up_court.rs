//! A court half with the places of a line-up.
