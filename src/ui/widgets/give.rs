//! Files that leave the page by somebody's tap.

use device::{ExportFile, Handed};

/// Hands a file over by the phone's own way to share where it has one, else as a download, which asks nobody. None
/// where neither way works.
pub async fn give(file: &ExportFile) -> Option<Handed> {
    let handed = device::hand_over(file).await;
    handed.or_else(|_| device::download(file)).ok()
}

/// The same without waiting for what becomes of it.
pub fn hand_over(file: ExportFile) {
    device::spawn(async move {
        let _ = give(&file).await;
    });
}
