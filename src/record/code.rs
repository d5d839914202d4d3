//! A QR code as squares.

use super::PackProblem;
use qrcodegen::{QrCode, QrCodeEcc, QrSegment, Version};

/// The largest code that is made (see [`super::DIGITS_LARGE`]).
const LARGEST: u8 = 20;

/// A QR code: a square of light and dark fields.
#[derive(Clone, PartialEq, Eq)]
pub struct Code {
    code: QrCode,
}

impl Code {
    /// The code of a text of digits.
    ///
    /// # Errors
    /// Where it is longer than a code holds, or no digits.
    pub fn of_digits(text: &str) -> Result<Code, PackProblem> {
        if text.is_empty() || !text.bytes().all(|b| b.is_ascii_digit()) {
            return Err(PackProblem::NoDigits);
        }
        let segment = QrSegment::make_numeric(text);
        // What is left over of a code goes into more redundancy.
        let code = QrCode::encode_segments_advanced(
            &[segment],
            QrCodeEcc::Low,
            Version::MIN,
            Version::new(LARGEST),
            None,
            true,
        );
        code.map(|code| Code { code })
            .map_err(|_| PackProblem::TooManyDigits)
    }

    /// Fields along a side, without the light margin of four that belongs around it.
    #[must_use]
    pub fn size(&self) -> usize {
        usize::try_from(self.code.size()).unwrap_or(0)
    }

    /// Whether a field is dark; none outside is.
    #[must_use]
    pub fn is_dark(&self, x: usize, y: usize) -> bool {
        let place = |n: usize| i32::try_from(n).unwrap_or(-1);
        self.code.get_module(place(x), place(y))
    }

    /// The dark fields as the path of a drawing, one unit a field, the upper left one at 4, 4.
    #[must_use]
    pub fn path(&self) -> String {
        let mut path = String::new();
        for y in 0..self.size() {
            let mut x = 0;
            while x < self.size() {
                let from = x;
                while self.is_dark(x, y) {
                    x += 1;
                }
                if x > from {
                    let (left, top, long) = (from + 4, y + 4, x - from);
                    path.push_str(&format!("M{left} {top}h{long}v1h-{long}z"));
                } else {
                    x += 1;
                }
            }
        }
        path
    }
}
