//! Words: letters guessed from up to three before them, taught beforehand with what a record usually says.

use super::coder::{Chance, Coder};

/// Room for chances; contexts that fall together share one.
const ROOM: usize = 1 << 15;

/// Longer texts are not read; a remark has a few lines.
const LONGEST: usize = 20_000;

/// Ends a text; no byte of UTF-8 has this value.
const END: u8 = 0xFF;

/// What most records contain, so that the first of each is cheap.
const USUAL: [&str; 18] = [
    "match\",\"competition\":\"Cup\",\"court\":\"1\",\"match_no\":\"12\",\"teams\":{\"A\":{\"name\":\"\"},\"B\":{\"name\":\"\"}},\"rules\":{\"preset\":\"school_junior\"}}",
    "match\",\"teams\":{\"A\":{\"name\":\"\"},\"B\":{\"name\":\"\"}},\"rules\":{\"preset\":\"school_senior\"}}",
    "match\",\"scheduled\":\"2026-05-09T14:00\",\"teams\":{\"A\":{\"name\":\"\"},\"B\":{\"name\":\"\"}},\"rules\":{\"preset\":\"international\"}}",
    "heading\",\"venue\":\"Sports hall\"}",
    "remark\",\"text\":\"The captain of the team \",\"team\":\"A\"}",
    "misconduct\",\"team\":\"A\",\"who\":{\"player\":7},\"sanction\":\"penalty\"}",
    "misconduct\",\"team\":\"B\",\"who\":{\"staff\":\"coach\"},\"sanction\":\"warning\"}",
    "delay\",\"team\":\"B\"}",
    "delay\",\"team\":\"A\",\"request\":true}",
    "improper_request\",\"team\":\"A\"}",
    "replay\",\"why\":\"interference\"}",
    "replay\",\"why\":\"double_fault\"}",
    "suspend\",\"why\":\"\"}",
    "resume\",\"court\":\"same\"}",
    "The player of the team was hurt and is treated, the coach has asked for time. Captain protests",
    "the first referee has decided, both coaches agreed; late start, lights, wet floor, ball on court",
    "seen before the match, put right, cleared by the coach in charge",
    "late_fault\",\"team\":\"B\",\"fault\":\"rotation\",\"since\":{\"A\":12,\"B\":9},\"during\":\"after_rally\"}",
];

/// The letters seen so far.
pub(super) struct Text {
    /// By no, one, two and three letters before.
    by: [Vec<Chance>; 4],
}

impl Text {
    /// Taught with the usual words.
    pub fn new() -> Text {
        let mut text = Text {
            by: std::array::from_fn(|_| vec![Chance::EVEN; ROOM]),
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
        // The letters before, the last one lowest.
        let mut before = 0u32;
        loop {
            let byte = self.byte(coder, before, source.next().unwrap_or(END));
            if byte == END {
                break;
            }
            bytes.push(byte);
            before = before << 8 | u32::from(byte);
            if bytes.len() > LONGEST {
                return Err("a text that does not end".to_owned());
            }
        }
        String::from_utf8(bytes).map_err(|_| "a text that is none".to_owned())
    }

    fn byte<C: Coder>(&mut self, coder: &mut C, before: u32, value: u8) -> u8 {
        let contexts = [0, before & 0xFF, before & 0xFFFF, before & 0xFF_FFFF];
        let mut node = 1u32;
        for below in (0..8).rev() {
            let mut salt = 0;
            let places = contexts.map(|context| {
                salt += 1;
                // Multiplying by large odd numbers spreads contexts over the room.
                let mixed = (context ^ salt << 29).wrapping_mul(0x9E37_79B1)
                    ^ node.wrapping_mul(0x85EB_CA6B);
                (mixed.wrapping_mul(0xC2B2_AE35) >> 16) as usize % ROOM
            });
            let [none, one, two, three] = &mut self.by;
            let chances = &mut [
                &mut none[places[0]],
                &mut one[places[1]],
                &mut two[places[2]],
                &mut three[places[3]],
            ];
            let bit = coder.repeating(chances, value >> below & 1 == 1);
            node = node << 1 | u32::from(bit);
        }
        u8::try_from(node - 256).unwrap_or(0)
    }
}
