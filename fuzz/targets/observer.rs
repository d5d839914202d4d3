#![no_main]
#[path = "../readers.rs"]
#[allow(dead_code)] // Each target takes one of them.
mod readers;

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| readers::observer(bytes));
