//! Paper sheets that are being keyed in, as they lie on the desk.

use reports::paper::Draft;

/// A paper sheet.
pub fn paper(id: &str) -> Option<Draft> {
    device::settings()
        .papers()
        .get(id)
        .map(|kept| Draft::of_written(&kept))
}
