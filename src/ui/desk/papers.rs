//! Paper sheets that are being keyed in, as they lie on the shelf.

use reports::paper::Draft;

/// A paper sheet.
pub fn paper(id: &str) -> Option<Draft> {
    device::settings()
        .papers()
        .get(id)
        .map(|kept| Draft::of_written(&kept))
}

/// Keeps a paper sheet; false where the phone did not.
pub fn put_paper(id: &str, draft: &Draft) -> bool {
    device::settings().papers().put(id, &draft.written())
}
