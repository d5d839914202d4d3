//! Handing a file over, reading one that somebody picked, and paper.
//!
//! Nothing leaves the phone here but by a person's tap.

use app::machine::{HandOverTrouble, ReadTrouble};
use app::ports::{self, Pending};
use js_sys::{Array, Promise, Uint8Array};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{
    Blob, BlobPropertyBag, Event, File, FileList, FilePropertyBag, HtmlAnchorElement,
    HtmlInputElement, ShareData, Url,
};

use super::listen::after;
use super::reach::{error_name, error_words, method, of_navigator, window};

/// How long a downloaded file's address stays good: a browser may ask where to save it first. Our
/// own choice.
const ADDRESS_MS: u32 = 60_000;

/// A file to be handed over.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ExportFile {
    /// The file name that is proposed.
    pub name: String,
    /// Its media type, such as `application/json`.
    pub mime: String,
    /// What is in it.
    pub bytes: Vec<u8>,
}

/// What became of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Handed {
    /// Given to another app of the phone.
    Shared,
    /// The person closed the phone's list of apps; not an error.
    Cancelled,
    /// Given to the browser's downloads.
    Downloaded,
}

/// Hands a file over: through the phone's own list of apps where files can go there, else as a
/// download. Called from a tap with the bytes made before it, because the permission that a
/// tap gives is short.
///
/// In an installed app on iOS a download opens a page with no way back, so there it is the list
/// of apps or nothing.
///
/// # Errors
/// Where neither way works.
pub async fn hand_over(parcel: &ExportFile) -> Result<Handed, HandOverTrouble> {
    let file = file(parcel).map_err(|thrown| failed(&thrown))?;
    let data = share_data(&file);
    let only_way = is_ios_installed();
    if !only_way && !takes(&data) {
        return download(parcel);
    }
    let refused = match share(&data) {
        Some(Ok(sharing)) => match JsFuture::from(sharing).await {
            Ok(_) => return Ok(Handed::Shared),
            Err(thrown) => thrown,
        },
        Some(Err(thrown)) => thrown,
        None => JsValue::UNDEFINED,
    };
    match error_name(&refused).as_str() {
        "AbortError" => Ok(Handed::Cancelled),
        // Some kinds of file are promised and then refused.
        _ if !only_way => download(parcel),
        "NotAllowedError" => Err(HandOverTrouble::Refused),
        _ => Err(HandOverTrouble::NoWay),
    }
}

/// Hands a file to the browser's downloads.
///
/// # Errors
/// Where the browser has none.
pub fn download(parcel: &ExportFile) -> Result<Handed, HandOverTrouble> {
    save(parcel)
        .map(|()| Handed::Downloaded)
        .map_err(|thrown| failed(&thrown))
}

/// Whether the phone's own list of apps takes files.
pub fn can_share_files() -> bool {
    let probe = ExportFile {
        name: "probe.txt".into(),
        mime: "text/plain".into(),
        bytes: vec![b'-'],
    };
    file(&probe).is_ok_and(|file| takes(&share_data(&file)))
}

/// Whether the page runs as an installed app and not in a browser's tab.
pub fn is_installed() -> bool {
    is_ios_installed()
        || window()
            .and_then(|window| window.match_media("(display-mode: standalone)").ok()?)
            .is_some_and(|standalone| standalone.matches())
}

/// A file that somebody picked.
#[derive(Clone)]
pub struct PickedFile {
    file: File,
}

/// The files picked in a file input, from its change event; none for any other event. The
/// input is emptied, so that picking the same file again is a change again.
pub fn picked_files(event: &Event) -> Vec<PickedFile> {
    let Some(input) = event
        .target()
        .and_then(|target| target.dyn_into::<HtmlInputElement>().ok())
    else {
        return Vec::new();
    };
    let picked = files_of(input.files());
    input.set_value("");
    picked
}

/// The files of a list.
pub(super) fn files_of(list: Option<FileList>) -> Vec<PickedFile> {
    let files = list.iter().flat_map(|list| {
        let all = 0..list.length();
        all.filter_map(|index| list.get(index))
    });
    files.map(|file| PickedFile { file }).collect()
}

impl PickedFile {
    /// Its bytes, for whoever reads them.
    pub(super) fn blob(&self) -> &Blob {
        &self.file
    }

    /// Its size in bytes.
    fn size(&self) -> u64 {
        // A size in bytes is whole and far below what a u64 holds.
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        let size = self.file.size() as u64;
        size
    }
}

impl ports::PickedFile for PickedFile {
    fn name(&self) -> String {
        self.file.name()
    }

    fn read(&self, max_bytes: u64) -> Pending<Result<Vec<u8>, ReadTrouble>> {
        let (size, file) = (self.size(), self.file.clone());
        Box::pin(async move {
            if size > max_bytes {
                let cap = max_bytes;
                return Err(ReadTrouble::TooBig { size, cap });
            }
            let buffer = JsFuture::from(file.array_buffer())
                .await
                .map_err(|thrown| ReadTrouble::Unreadable(error_words(&thrown)))?;
            Ok(Uint8Array::new(&buffer).to_vec())
        })
    }
}

/// Opens the browser's printing. False where it has none.
pub fn print_page() -> bool {
    window().is_some_and(|window| window.print().is_ok())
}

fn file(parcel: &ExportFile) -> Result<File, JsValue> {
    let kind = FilePropertyBag::new();
    kind.set_type(&parcel.mime);
    File::new_with_u8_array_sequence_and_options(&parts(parcel), &parcel.name, &kind)
}

fn parts(parcel: &ExportFile) -> JsValue {
    Array::of1(&Uint8Array::from(parcel.bytes.as_slice())).into()
}

fn share_data(file: &File) -> ShareData {
    let data = ShareData::new();
    data.set_files(&Array::of1(file));
    data
}

fn takes(data: &ShareData) -> bool {
    let Some(navigator) = window().map(|window| window.navigator()) else {
        return false;
    };
    method(&navigator, "share").is_some()
        && method(&navigator, "canShare")
            .and_then(|can_share| can_share.call1(&navigator, data).ok())
            .is_some_and(|answer| answer.is_truthy())
}

fn share(data: &ShareData) -> Option<Result<Promise, JsValue>> {
    let navigator = window()?.navigator();
    let share = method(&navigator, "share")?;
    Some(share.call1(&navigator, data).map(JsCast::unchecked_into))
}

/// Whether the page runs as an installed app on iOS, where files leave through the phone's list of apps
/// or not at all.
pub fn is_ios_installed() -> bool {
    // Only iOS has this property, and only there does it say true.
    of_navigator("standalone").is_some_and(|standalone| standalone.is_truthy())
}

fn save(parcel: &ExportFile) -> Result<(), JsValue> {
    let document = window()
        .and_then(|window| window.document())
        .ok_or(JsValue::UNDEFINED)?;
    let kind = BlobPropertyBag::new();
    kind.set_type(&parcel.mime);
    let blob = Blob::new_with_u8_array_sequence_and_options(&parts(parcel), &kind)?;
    let address = Url::create_object_url_with_blob(&blob)?;
    let anchor: HtmlAnchorElement = document.create_element("a")?.unchecked_into();
    anchor.set_href(&address);
    anchor.set_download(&parcel.name);
    anchor.set_hidden(true);
    let body = document.body().ok_or(JsValue::UNDEFINED)?;
    body.append_child(&anchor)?;
    anchor.click();
    anchor.remove();
    // Let go of for good: nobody waits for this timer, and it must outlive the call.
    std::mem::forget(after(ADDRESS_MS, move || {
        let _ = Url::revoke_object_url(&address);
    }));
    Ok(())
}

fn failed(thrown: &JsValue) -> HandOverTrouble {
    HandOverTrouble::Failed(error_words(thrown))
}
