//! Large keys to tap shirt numbers in.
