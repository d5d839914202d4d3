//! Paper sheets that are being keyed in, as they lie on the shelf.

use crate::desk_store::PAPERS;
use reports::paper::Draft;

/// A paper sheet.
pub fn paper(id: &str) -> Option<Draft> {
    PAPERS.get(id).map(|kept| Draft::of_written(&kept))
}

/// Keeps a paper sheet; false where the phone did not.
pub fn put_paper(id: &str, draft: &Draft) -> bool {
    PAPERS.put(id, &draft.written())
}
