//! Words: letters guessed from the two before them, taught beforehand with what a record usually says.

use super::coder::{Chance, Coder};

/// Room for chances; contexts that fall together share one.
const ROOM: usize = 1 << 15;

/// Longer texts are not read; a remark has a few lines.
const LONGEST: usize = 20_000;

/// Ends a text; no byte of UTF-8 has this value.
const END: u8 = 0xFF;

/// What most records contain, so that the first of each is cheap.
const USUAL: [&str; 12] = [
    "match\",\"teams\":{\"A\":{\"name\":\"\"},\"B\":{\"name\":\"\"}},\"rules\":{\"preset\":\"school_junior\"}}",
    "match\",\"teams\":{\"A\":{\"name\":\"\"},\"B\":{\"name\":\"\"}},\"rules\":{\"preset\":\"school_senior\"}}",
    "match\",\"scheduled\":\"2026-05-09T14:00\",\"teams\":{\"A\":{\"name\":\"\"},\"B\":{\"name\":\"\"}},\"rules\":{\"preset\":\"international\"}}",
    "check\",\"item\":\"kit\",\"ok\":true}",
    "check\",\"item\":\"floor\",\"ok\":true}",
    "check\",\"item\":\"net\",\"ok\":true}",
    "sign\",\"role\":\"captain A\"}",
    "sign\",\"role\":\"first referee\"}",
    "sign\",\"role\":\"scorer\"}",
    "misconduct\",\"team\":\"A\",\"who\":{\"player\":7},\"sanction\":\"penalty\"}",
    "delay\",\"team\":\"B\"}",
    "replay\",\"why\":\"interference\"}",
];

/// The letters seen so far.
pub(super) struct Text {
    chances: Vec<Chance>,
}

impl Text {
    /// Taught with the usual words.
    pub fn new() -> Text {
        let mut text = Text {
            chances: vec![Chance::EVEN; ROOM],
        };
        let mut nowhere = super::coder::Writer::new();
        for usual in USUAL {
            // Known words always fit.
            let _ = text.code(&mut nowhere, Some(usual));
        }
        text
    }

    /// One text.
    ///
    /// # Errors
    /// A reader found no text.
    pub fn code<C: Coder>(&mut self, coder: &mut C, given: Option<&str>) -> Result<String, String> {
        let mut bytes = Vec::new();
        let mut source = given.unwrap_or_default().bytes();
        let (mut before, mut last) = (0u8, 0u8);
        loop {
            let byte = self.byte(coder, before, last, source.next().unwrap_or(END));
            if byte == END {
                break;
            }
            bytes.push(byte);
            (before, last) = (last, byte);
            if bytes.len() > LONGEST {
                return Err("a text that does not end".to_owned());
            }
        }
        String::from_utf8(bytes).map_err(|_| "a text that is none".to_owned())
    }

    fn byte<C: Coder>(&mut self, coder: &mut C, before: u8, last: u8, value: u8) -> u8 {
        let context = (usize::from(before) * 271 + usize::from(last) * 7919) * 31;
        let mut node = 1usize;
        for below in (0..8).rev() {
            let place = (context + node * 2_654_435) % ROOM;
            let bit = coder.bit(&mut self.chances[place], value >> below & 1 == 1);
            node = node << 1 | usize::from(bit);
        }
        u8::try_from(node - 256).unwrap_or(0)
    }
}
